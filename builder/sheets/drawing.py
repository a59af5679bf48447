"""Drawing: the chosen section type to scale, seen from above, from the side and from the end.

The views stand in further modules, in reading order: the type drawn, the plan, the section
afloat, all types, the joints.  Tests and other sheets take their rows from here.
"""

from __future__ import annotations

from builder.language import adopt

from . import drawing_afloat, drawing_base, drawing_joints, drawing_plan, drawing_types
from .drawing_base import sheet

__all__ = ["afloat", "base", "joints", "plan", "sheet", "types"]

base, plan, afloat = drawing_base, drawing_plan, drawing_afloat
types, joints = drawing_types, drawing_joints

for _part in (drawing_base, drawing_plan, drawing_afloat, drawing_types, drawing_joints):
    adopt(_part)
