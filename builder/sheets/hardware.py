"""Hardware: strength and placing of every joint, bolt lengths, finish.

The blocks stand in four modules, in reading order: the stringer end, corners and plies, the
floats' lags, lengths and finish.  Other sheets take their rows from here.
"""

from __future__ import annotations

from builder.language import adopt

from . import hardware_bolts, hardware_corners, hardware_floats, hardware_lengths
from .hardware_bolts import Z_leg, angle, leg_bolts_check, plate, sheet
from .hardware_corners import Z_corner, corner_check, square_check
from .hardware_floats import W_lag, W_screw, Z_lag, ways_check
from .hardware_lengths import (
    before,
    by_length,
    corner_bolt,
    corner_line,
    finish_check,
    header_bolt,
    header_line,
    leg_bolt,
    leg_line,
    ply_bolt,
    ply_line,
    rail_bolt,
    rail_line,
    skirt_bolt,
    skirt_line,
    treat_above,
    treat_below,
)

__all__ = [
    "W_lag", "W_screw", "Z_corner", "Z_lag", "Z_leg", "angle", "before", "by_length", "corner_bolt",
    "corner_check", "corner_line", "finish_check", "header_bolt", "header_line",
    "leg_bolt", "leg_bolts_check", "leg_line", "plate", "ply_bolt", "ply_line", "rail_bolt",
    "rail_line", "sheet", "skirt_bolt", "skirt_line", "square_check",
    "treat_above", "treat_below", "ways_check",
]

for _part in (hardware_bolts, hardware_corners, hardware_floats, hardware_lengths):
    adopt(_part)
