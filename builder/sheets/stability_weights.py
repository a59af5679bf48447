"""Stability, second part: weights afloat, how deep they float, metacentric heights on both axes.

A weight afloat is shared by the cases that have it: the point load at edge, end and corner.
"""

from __future__ import annotations

from dataclasses import dataclass

from builder.language import Row, again, greatest, least, when
from builder.language.units import TEXT

from . import buoyancy, parts, weight
from . import sections as sec
from .reference import SEGMENTS, own
from .stability_group import (
    ROUND,
    lost_square_a,
    lost_square_b,
    lost_water,
    round_b,
    round_l,
    square_a,
    square_b,
)
from .stability_loads import (
    gangway_more,
    half_load,
    people_z,
    snow_half_load,
    snow_load,
    snow_z,
)
from .stability_sheet import (
    ARCHIMEDES,
    STABLE,
    STATICS,
    TURNS,
    block,
    note,
    row,
    sheet,
)

STEPS = buoyancy.STEPS
NAMES = {
    "launch": "as launched", "service": "in service", "flotation": "flotation load",
    "capacity": "capacity load", "half": "half the flotation load", "point": "point load",
    "gangway": "gangway loaded", "snow_half": "snow on one half",
    "snow_all": "snow all over", "lost": "one float lost",
}

@dataclass
class Afloat:
    """One weight afloat: what floats, how high its centre is, how deep it lies.

    Attributes:
        total: weight [lb]; kg: its centre above K [ft].
        line: line of the part-full circle; draft, free: draft and deck above water [in].
    """

    total: Row
    kg: Row
    line: Row
    draft: Row
    free: Row


def _floating(key: str, total: Row, kg: Row, water=None) -> Afloat:
    """Declare draft and freeboard of a weight that Buoyancy does not have."""
    made: dict = {}
    change = {weight.launch: total}
    if water is not None:
        change[buoyancy.box_water] = water
    free = again(sheet, buoyancy.free_launch, change, key, made)
    return Afloat(total, kg, made[buoyancy.line_launch], made[buoyancy.draft_launch], free)


def _with_load(key: str, load, z) -> tuple[Row, Row]:
    """Declare the weight in service with a load put on, and its centre; return both."""
    total = row(f"Weight afloat: {NAMES[key]}", f"W[{key}]", "lb", weight.service + load, STATICS,
                digits=0)
    kg = row(f"Centre of gravity above K: {NAMES[key]}", f"KG[{key}]", "ft",
             (weight.service * weight.service_kg + load * z)
             / greatest(total, own.least_weight), STATICS, digits=3)
    return total, kg


block("Weights afloat and their drafts")
_flotation_kg = row("Centre of gravity above K: flotation load", "KG[flotation]", "ft",
                    (weight.service * weight.service_kg + buoyancy.live_flotation * people_z)
                    / greatest(buoyancy.weight_flotation, own.least_weight), STATICS, digits=3)
afloat = {
    "launch": Afloat(weight.launch, weight.launch_kg, buoyancy.line_launch,
                     buoyancy.draft_launch, buoyancy.free_launch),
    "service": Afloat(weight.service, weight.service_kg, buoyancy.line_service,
                      buoyancy.draft_service, buoyancy.free_service),
    "flotation": Afloat(buoyancy.weight_flotation, _flotation_kg, buoyancy.line_flotation,
                        buoyancy.draft_flotation, buoyancy.free_flotation),
    "capacity": Afloat(buoyancy.weight_capacity, buoyancy.crowd_kg, buoyancy.line_capacity,
                       buoyancy.draft_capacity, buoyancy.free_capacity),
}
_put_on = {"half": (half_load, people_z), "point": (sec.point_load, people_z),
           "gangway": (gangway_more, parts.deck_top), "snow_half": (snow_half_load, snow_z),
           "snow_all": (snow_load, snow_z)}
for _key, (_load, _z) in _put_on.items():
    afloat[_key] = _floating(_key, *_with_load(_key, _load, _z))
afloat["lost"] = _floating("lost", weight.service, weight.service_kg, lost_water)
mean_draft = [row(f"Mean draft ({NAMES[_key]})", f"T[{_key}]", "in", afloat[_key].draft, ARCHIMEDES)
              for _key in ("launch", "service", "flotation", "capacity")]
weight_afloat = {key: at.total for key, at in afloat.items()}
centre_afloat = {key: at.kg for key, at in afloat.items()}
draft_afloat = {key: at.draft for key, at in afloat.items()}
free_afloat = {key: at.free for key, at in afloat.items()}
"""By weight: lb; centre above K [ft]; mean draft and deck above water at F [in]."""
WATER = {key: lost_water if key == "lost" else buoyancy.box_water for key in afloat}


def _between(at: Afloat, column: str):
    """Return an entry of the part-full circle at a draft, between two lines."""
    low = SEGMENTS.at(at.line)[column]
    return low + ((STEPS * at.draft / parts.float_depth - at.line + 1)
                  * (SEGMENTS.at(at.line + 1)[column] - low))


block("Breadth at the waterline over the float's own; 1 for a box")
breadth = {key: row(f"Breadth share: {NAMES[key]}", f"ω[{key}]", "",
                    when(ROUND, _between(at, "w/d"), 1), STATICS, digits=4)
           for key, at in afloat.items()}

block("Volume displaced over waterplane: the draft of a box")
depth = {key: row(f"Volume over waterplane: {NAMES[key]}", f"T_e[{key}]", "ft",
                  greatest((parts.float_depth * at.total / WATER[key]).in_("ft")
                           / greatest(breadth[key], own.least_share), own.least_length),
                  ARCHIMEDES, digits=4)
         for key, at in afloat.items()}

block("Centre of buoyancy above K")
KB = {key: row(f"Centre of buoyancy: {NAMES[key]}", f"KB[{key}]", "ft",
               when(ROUND, parts.float_depth.in_("ft") * _between(at, "z_B/d"),
                    (at.draft / 2).in_("ft")), STATICS, digits=4)
      for key, at in afloat.items()}

block("Metacentric radius on both leaning axes")
note("Mean square of the waterplane over volume over waterplane.")


def _radii(axis: str, mean, lost, own_part) -> dict[str, Row]:
    return {key: row(f"Metacentric radius, axis {axis}: {NAMES[key]}", f"BM_{axis}[{key}]", "ft",
                     greatest((lost if key == "lost" else mean) + own_part * breadth[key] ** 2, 0)
                     / depth[key], ARCHIMEDES, digits=3)
            for key in afloat}


BM_a = _radii("a", square_a, lost_square_a, round_b)
BM_b = _radii("b", square_b, lost_square_b, round_l)

block("Metacentric height on both leaning axes")
note("Held in roll, the neighbour's righting moment is in them. Stable when both are above 0.")


def _heights(axis: str, radii: dict[str, Row]) -> dict[str, Row]:
    return {key: row(f"Metacentric height, axis {axis}: {NAMES[key]}", f"GM_{axis}[{key}]", "ft",
                     KB[key] + radii[key] - at.kg, ARCHIMEDES, digits=3)
            for key, at in afloat.items()}


GM_a = _heights("a", BM_a)
GM_b = _heights("b", BM_b)

block("Stable or not, before any angle")
stable = {key: row(f"Stable or not: {NAMES[key]}", f"Stable[{key}]", TEXT,
                   when(least(GM_a[key], GM_b[key]) > 0, STABLE, TURNS), ARCHIMEDES, digits=0)
          for key in afloat}
