"""Stability, fourth part: the righting arm on axis a, with the point load aboard.

Wall-sided: GZ = sin φ (GM + ½ BM tan² φ), exact for box floats until a float corner leaves the
water or a float top goes under.
"""

from __future__ import annotations

from builder.language import (
    absolute,
    arc_tangent,
    cosine,
    degrees,
    greatest,
    least,
    radians,
    sine,
    tangent,
)

from . import parts
from . import sections as sec
from .inputs_afloat import ours
from .reference import own
from .stability_cases import edge_y
from .stability_group import (
    F_Y,
    reach_y,
)
from .stability_sheet import (
    ARCHIMEDES,
    STATICS,
    block,
    note,
    row,
)
from .stability_weights import BM_a, GM_a, afloat

STEPS = 6
_at = afloat["point"]

block("Righting arm against list, the point load aboard")
note("The load's lever is that of the point load at mid edge: where it crosses the righting arm "
     "the section comes to rest, if it was level before. Upright, at step 0, the arm is 0.")
emerge = row("A float corner leaves the water at", "φ_e", "deg",
             degrees(arc_tangent(_at.draft.in_("ft") / greatest(reach_y, own.least_length))),
             STATICS)
immerse = row("A float top goes under at", "φ_i", "deg",
              degrees(arc_tangent(greatest(parts.float_depth - _at.draft, 0).in_("ft")
                                  / greatest(reach_y, own.least_length))), STATICS)
range_end = row("The formula holds, and is shown, up to", "φ_m", "deg",
                greatest(least(emerge, immerse, ours.arm_shown), 0), STATICS)
arm_angle = [row(f"List, step {k}", f"φ_{k}", "deg", range_end * k / STEPS, STATICS)
             for k in range(1, STEPS + 1)]
arm_GZ = [row(f"Righting arm, step {k}", f"GZ_{k}", "ft",
              sine(radians(angle)) * (GM_a["point"]
                                      + BM_a["point"] * tangent(radians(angle)) ** 2 / 2),
              ARCHIMEDES, digits=4) for k, angle in enumerate(arm_angle, 1)]
arm_load = [row(f"Lever of the load, step {k}", f"HZ_{k}", "ft",
                sec.point_load * absolute(edge_y - F_Y)
                / greatest(_at.total, own.least_weight) * cosine(radians(angle)), STATICS,
                digits=4) for k, angle in enumerate(arm_angle, 1)]
