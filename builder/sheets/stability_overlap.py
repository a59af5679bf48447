"""Stability: do extra floats stand where a float of the rows, or another extra one, stands?

A gap of 1 is a float's own size between centres; below 1 along and across at once two floats
overlap.
"""

from __future__ import annotations

from builder.language import Series, absolute, greatest, least, nearest, smallest, when

from . import parts
from . import sections as sec
from .reference import own
from .stability_group import (
    HERE,
)
from .stability_sheet import (
    STATICS,
    block,
    check,
    row,
)

FAR = 99
"""Gap of an extra float that is not fitted."""

block("Extra floats: room beside the others")


def _off(i: int, axis: str, place, outer, pitch):
    """Declare how far an extra float's centre is from the nearest row or column [ft]."""
    away = absolute(place)
    inner = least(away, outer) + outer
    return row(f"Extra float {i}: {axis}, to the nearest of the rows", f"d_{axis[0]}{axis[1]}{i}",
               "ft", absolute(away + outer
                              - nearest(inner, greatest(pitch, own.least_length))), STATICS)


off_y = [_off(i, "across", sec.extra_y[i - 1], parts.row_y, parts.float_y_pitch)
         for i in (1, 2, 3, 4)]
off_x = [_off(i, "along", sec.extra_x[i - 1], parts.end_x, parts.float_x_pitch)
         for i in (1, 2, 3, 4)]
_pairs = [(i, j) for i in range(4) for j in range(i)]
gap = [
    *(row(f"Extra float {i + 1}: gap to the floats of the rows", f"g_{i + 1}", "",
          when(HERE[i] > 0, greatest(off_y[i] / parts.float_b, off_x[i] / parts.float_l), FAR),
          STATICS) for i in range(4)),
    *(row(f"Extra floats {j + 1} and {i + 1}: gap", f"g_{j + 1}{i + 1}", "",
          when(HERE[i] > 0,
               greatest(absolute(sec.extra_y[i] - sec.extra_y[j]) / parts.float_b,
                        absolute(sec.extra_x[i] - sec.extra_x[j]) / parts.float_l), FAR),
          STATICS) for i, j in _pairs),
]
gap_least = row("Least gap of an extra float", "g", "", smallest(Series("g_i", gap)), STATICS)
overlap_check = check("Extra floats clear of the others", gap_least, at_least=1, look_at=1,
                      source=STATICS, group="Floats",
                      cure="An extra float overlaps another float: the lines above say which. "
                      "Move it.")
