"""Stability: stable or not, list and trim, tilt and low corner in every case, and the load plate.

The sheet is declared in parts, read in this order: loads on the deck (:mod:`.stability_loads`); a
neighbour that holds it in roll (:mod:`.stability_held`); the float group and its leaning axes
(:mod:`.stability_group`); weights afloat, metacentric heights, stable or not
(:mod:`.stability_weights`); the load cases (:mod:`.stability_cases`); the righting arm
(:mod:`.stability_arm`); what each case comes to (:mod:`.stability_shown`); checks
(:mod:`.stability_checks`); floats that overlap (:mod:`.stability_overlap`); the load plate
(:mod:`.stability_plate`).  Other sheets take their
rows from here.
"""

from __future__ import annotations

from builder.language import adopt

from . import (
    stability_arm,
    stability_cases,
    stability_checks,
    stability_group,
    stability_held,
    stability_loads,
    stability_overlap,
    stability_plate,
    stability_sheet,
    stability_shown,
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
    dry,
    low,
    rise_1,
    tan_list,
    tan_trim,
    tilt,
    wet,
)
from .stability_checks import (
    end_loss,
    even_check,
    finger_check,
    finger_loss,
    half_low_check,
    lost_check,
    lost_low_check,
    point_check,
    point_low_check,
    rest_check,
    rest_most,
    stable_check,
)
from .stability_group import (
    reach_x,
    reach_y,
    round_b,
    turn,
    turn_length,
)
from .stability_held import (
    alone_list,
    alone_trim,
    held_square,
    holder_line,
    holder_stiff,
    holder_there,
    holder_trim,
    pin_check,
    pin_load,
    roll_share,
)
from .stability_loads import gangway_more, snow_half_load, snow_load
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
from .stability_shown import (
    corner,
    shown_list,
    shown_tilt,
    shown_trim,
    state,
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
    stable,
    weight_afloat,
)

sheet = stability_sheet.sheet

__all__ = [
    "alone_list",
    "alone_trim",
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
    "corner",
    "depth",
    "dry",
    "emerge",
    "end_loss",
    "even_check",
    "finger_check",
    "finger_loss",
    "free_afloat",
    "gangway_more",
    "half_low_check",
    "half_people",
    "held_square",
    "holder_line",
    "holder_stiff",
    "holder_there",
    "holder_trim",
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
    "pin_check",
    "pin_load",
    "point_check",
    "point_low_check",
    "reach_x",
    "reach_y",
    "rest_check",
    "rest_most",
    "rise_1",
    "roll_share",
    "round_b",
    "sheet",
    "shown_list",
    "shown_tilt",
    "shown_trim",
    "snow_half_load",
    "snow_load",
    "stable",
    "stable_check",
    "state",
    "tan_list",
    "tan_trim",
    "tilt",
    "turn",
    "turn_length",
    "weight_afloat",
    "wet",
]

for _part in (stability_loads, stability_held, stability_group, stability_weights,
              stability_cases, stability_arm, stability_shown, stability_checks,
              stability_overlap, stability_plate):
    adopt(_part, sheet)
