"""Framing: strength and stiffness of every member, and the sizes that would do.

The sheet is declared in parts, read in this order: loads, common factors and the wood of a member
(:mod:`.framing_wood`); stringers, cross-beams and headers (:mod:`.framing_spans`); rails between
floats (:mod:`.framing_rails`); the whole section as a beam on the water (:mod:`.framing_water`);
lifting (:mod:`.framing_lifting`); what would do (:mod:`.framing_sizes`).  Other sheets take their
rows from here.
"""

from __future__ import annotations

from builder.language import adopt

from . import (
    framing_lifting,
    framing_rails,
    framing_sizes,
    framing_spans,
    framing_water,
    framing_wood,
)
from .framing_sizes import largest_spacing, largest_span, smallest_rail, smallest_stringer
from .framing_spans import cross, end_Fv, header, stringer
from .framing_wood import sheet, snow

stringer_R, cross_R, header_R = stringer.R, cross.R, header.R
"""End reactions of a stringer, a cross-beam and a header [lb]."""
header_Fv = header.Fv_adj
"""Adjusted shear value of the header [psi]."""

__all__ = [
    "cross", "cross_R", "end_Fv", "header", "header_Fv", "header_R", "largest_spacing",
    "largest_span", "sheet", "smallest_rail", "smallest_stringer", "snow", "stringer",
    "stringer_R",
]

for _part in (framing_wood, framing_spans, framing_rails, framing_water, framing_lifting,
              framing_sizes):
    adopt(_part, sheet)
