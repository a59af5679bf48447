"""Stability: stable or not, list and trim, tilt and low corner in every case, and the load plate.

The sheet is declared in parts, read in this order: the float group and its leaning axes
(:mod:`.stability_group`); floats that overlap (:mod:`.stability_overlap`); weights afloat and
metacentric heights (:mod:`.stability_weights`); the load cases (:mod:`.stability_cases`); checks
(:mod:`.stability_checks`); the righting arm (:mod:`.stability_arm`); the load plate
(:mod:`.stability_plate`).  Other sheets take their rows from here.
"""

from __future__ import annotations

from builder.language import adopt

from . import (
    stability_arm,
    stability_cases,
    stability_checks,
    stability_group,
    stability_overlap,
    stability_plate,
    stability_weights,
)
from .stability_arm import (
    arm_angle,
    arm_GZ,
    arm_load,
    emerge,
    immerse,
)
from .stability_cases import (
    arm_a,
    arm_b,
    dip,
    low,
    rise_1,
    state,
    tan_list,
    tan_trim,
    tilt,
)
from .stability_checks import (
    even_check,
    half_low_check,
    lost_check,
    lost_low_check,
    point_check,
    point_low_check,
    rest_check,
    rest_most,
    snow_GM,
    stable_check,
)
from .stability_group import (
    reach_x,
    reach_y,
    round_b,
    turn,
    turn_length,
)
from .stability_overlap import (
    overlap_check,
)
from .stability_plate import (
    half_people,
    load_box,
    load_height,
    load_strength,
    load_volume,
    people,
)
from .stability_weights import (
    KB,
    BM_a,
    BM_b,
    GM_a,
    GM_b,
    afloat,
    breadth,
    depth,
    free_afloat,
    gangway_more,
    snow_half_load,
    snow_load,
    weight_afloat,
)

sheet = stability_group.sheet

__all__ = [
    "BM_a",
    "BM_b",
    "GM_a",
    "GM_b",
    "KB",
    "afloat",
    "arm_GZ",
    "arm_a",
    "arm_angle",
    "arm_b",
    "arm_load",
    "breadth",
    "depth",
    "dip",
    "emerge",
    "even_check",
    "free_afloat",
    "gangway_more",
    "half_low_check",
    "half_people",
    "immerse",
    "load_box",
    "load_height",
    "load_strength",
    "load_volume",
    "lost_check",
    "lost_low_check",
    "low",
    "overlap_check",
    "people",
    "point_check",
    "point_low_check",
    "reach_x",
    "reach_y",
    "rest_check",
    "rest_most",
    "rise_1",
    "round_b",
    "sheet",
    "snow_GM",
    "snow_half_load",
    "snow_load",
    "stable_check",
    "state",
    "tan_list",
    "tan_trim",
    "tilt",
    "turn",
    "turn_length",
    "weight_afloat",
]

for _part in (stability_group, stability_overlap, stability_weights, stability_cases,
              stability_checks, stability_arm, stability_plate):
    adopt(_part, sheet)
