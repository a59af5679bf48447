"""Framing: strength and stiffness of every member, and the sizes that would do.

The sheet is declared in parts, read in this order: loads, common factors and the wood of a member
(:mod:`.framing_wood`); stringers, cross-beams and headers (:mod:`.framing_spans`); rails between
floats (:mod:`.framing_rails`); the whole section as a beam on the water (:mod:`.framing_water`);
lifting (:mod:`.framing_lifting`); what would do (:mod:`.framing_sizes`).  Here their rows get the
names by which other sheets know them.
"""

from __future__ import annotations

from . import (
    framing_lifting,
    framing_rails,
    framing_sizes,
    framing_spans,
    framing_water,
    framing_wood,
)

sheet = framing_wood.sheet


def _rows_of(*modules) -> dict:
    """Return the public names of the parts that hold rows or groups of rows."""
    found: dict = {}
    for module in modules:
        for name, thing in vars(module).items():
            rows = getattr(thing, "rows_of", None)
            holds = isinstance(thing, list | dict) or (rows and not isinstance(thing, type))
            if holds and not name.startswith("_"):
                found.setdefault(name, thing)
    return found


globals().update(_rows_of(framing_wood, framing_spans, framing_rails, framing_water,
                          framing_lifting, framing_sizes))
stringer_R = framing_spans.stringer.R  # noqa: N816
"""End reaction of a stringer, cross-beam, header [lb], for the hardware."""
cross_R = framing_spans.cross.R  # noqa: N816
header_R = framing_spans.header.R  # noqa: N816
header_Fv = framing_spans.header.Fv_adj  # noqa: N816
