"""Stability, seventh part: the load plate: N people spread out, M people on any one half.

M is on the safe side.  The moment that rights a section per unit of tan φ is W·GM; with standing
people put on it falls by the height of their centre over the waterline a pound, a little less as
the section sinks, and it grows with tilt.  Both gains are left out:

    S(w) = S₀ − k w,  k = z_p − T          tan φ = (m₀ + w a) / S(w)

What a section leans the other way, by itself or by the turn of its leaning axes, counts twice,
since it grows as people come aboard; without extra floats or items off the middle it is 0.
The tilt bound is then linear in w, and the bound at which a float top goes under is a quadratic,
(S₀ − k w)(d₀ − w/γA) = R (m₀ + w a), whose lower root is taken.
"""

from __future__ import annotations

from builder.language import (
    Row,
    absolute,
    greatest,
    least,
    radians,
    root,
    tangent,
    when,
    whole_down,
)
from builder.language.units import TEXT

from . import buoyancy, parts, weight
from . import inputs as job
from . import inputs_afloat as limits
from . import sections as sec
from .reference import own, table
from .stability_cases import band_high, tan_list, tan_trim
from .stability_group import (
    ROUND,
    centre_a,
    centre_b,
    half_length,
    half_width,
    moment_a,
    moment_b,
    reach_x,
    reach_y,
    turn,
)
from .stability_held import water_foot
from .stability_sheet import (
    ARCHIMEDES,
    OURS,
    STATICS,
    block,
    note,
    row,
)
from .stability_weights import GM_a, GM_b, fall

BOUNDS = table("plate_bounds")
_draft = buoyancy.draft_service

block("Load plate: people spread out")
note("Strength enters as the strength load on the whole deck: Framing stands to the right, so "
     "that its result cannot enter here; it says whether the frame carries that load. Stability: "
     "a metacentric height not below the good one, all aboard.")
load_volume = row("Float volume: tests (b) and (c)", "w_1", "lb",
                  least(job.immersed_most * buoyancy.capacity - weight.launch,
                        (buoyancy.capacity - weight.launch) / job.reserve_ok), ARCHIMEDES,
                  digits=0)
load_height = row("Deck height: test (a)", "w_2", "lb",
                  buoyancy.lift_allowed * parts.floats - weight.launch, ARCHIMEDES, digits=0)
spare_GM = row("Righting moment past the good metacentric height, nobody aboard", "S_g", "lb·ft",
               weight.service * (least(GM_a["service"], GM_b["service"]) - job.gm_least),
               ARCHIMEDES, digits=0)
load_root = row("Root of the stability bound", "s", "ft",
                root(greatest((fall + job.gm_least) ** 2 - 2 * spare_GM / water_foot, 0)),
                STATICS, digits=3)
load_box = row("Stability: the first load at which it is short", "w_b", "lb",
               when((fall + job.gm_least) ** 2 > 2 * spare_GM / water_foot,
                    water_foot * (fall + job.gm_least - load_root), buoyancy.capacity),
               ARCHIMEDES, digits=0)
load_stable = row("Stability; a round float is tried at the capacity load alone", "w_3", "lb",
                  when(ROUND, buoyancy.live_capacity
                       * (least(GM_a["capacity"], GM_b["capacity"]) >= job.gm_least), load_box),
                  ARCHIMEDES, digits=0)
load_strength = row("Strength load on the whole deck; Framing judges it", "w_4", "lb",
                    sec.strength_load * parts.deck_area, STATICS, digits=0)
spread_load = row("People spread out: weight", "w_N", "lb",
                  greatest(least(load_volume, load_height, load_stable, load_strength), 0),
                  OURS, digits=0)
people = row("People spread out", "N", "each", whole_down(spread_load / job.person_weight), OURS,
             digits=0, chief=True)
people_psf = row("The same, a square foot of deck", "N_q", "psf",
                 people * job.person_weight / parts.deck_area, OURS, digits=1)
people_bound = row("Set by", "", TEXT,
                   BOUNDS.at(1 + (load_volume > spread_load)
                             * (1 + (load_height > spread_load)
                                * (1 + (load_stable > spread_load))))["set by"], OURS, 0)

block("Load plate: people on any one half")


def _bounds(way: str, axis: str, stiff, moment, arm, reach, reach_other, other) -> tuple:
    """Declare the loads on one half at which it tilts too far, and a float top goes under.

    Args:
        way: the half is one across or along; axis: its leaning axis.
        stiff: metacentric height in service [ft]; moment: own moment about F [lb·ft].
        arm: of the load from F; reach: of the floats; reach_other: of the other way [ft].
        other: tangent of the section's own lean the other way.
    """
    S = row(f"Righting moment a unit of slope, {way}", f"S_{axis}", "lb·ft",
            greatest(weight.service * stiff, 0), ARCHIMEDES, digits=0)
    slope = row(f"Most slope {way}, less the lean it has the other way", f"t_{axis}", "ft/ft",
                greatest(tangent(radians(limits.tilt_half_most)) - absolute(other),
                         own.least_share), OURS, digits=4)
    a = row(f"Arm of the load from F, {way}, with what the turn of the axes adds", f"a_{axis}",
            "ft", greatest(arm, 0), STATICS)
    tilts = row(f"Tilt {way}: load on one half", f"w_t{axis}", "lb",
                (S - absolute(moment) / slope) / (fall + a / slope), ARCHIMEDES, digits=0)
    spare = row(f"Load to sink it to the float top at its low side, {way}", f"D_{axis}", "lb",
                greatest((band_high - _draft).in_("ft") - absolute(other) * reach_other, 0)
                * water_foot, ARCHIMEDES, digits=0)
    middle = row(f"Float under {way}: middle term", f"b_{axis}", "lb·ft",
                 S + fall * spare + water_foot * reach * a, STATICS, digits=0)
    last = row(f"Float under {way}: last term over the weight in service", f"c_{axis}", "lb·ft",
               greatest(S * spare - water_foot * reach * absolute(moment), 0)
               / greatest(weight.service, own.least_weight), STATICS, digits=1)
    under = row(f"Float under {way}: load on one half", f"w_u{axis}", "lb",
                2 * last * weight.service
                / greatest(middle + root(greatest(middle ** 2 - 4 * fall * last * weight.service,
                                                  0)),
                           own.least_weight * own.least_length), ARCHIMEDES, digits=0)
    return tilts, under


def _arm(half, centre, stiff, other, reach, reach_other):
    """Return the arm of a load on one half [ft], more where it leans the other way too."""
    return (half / 2 + absolute(centre)) * (
        1 + 2 * absolute(turn) * greatest(stiff, 0) / greatest(other, own.least_length)
        * greatest(1, reach_other / greatest(reach, own.least_length)))


_stiff = GM_a["service"], GM_b["service"]
half_bounds: list[Row] = [
    *_bounds("across", "a", _stiff[0], moment_a,
             _arm(half_width, centre_a, *_stiff, reach_y, reach_x),
             reach_y, reach_x, 2 * tan_trim["service"]),
    *_bounds("along", "b", _stiff[1], moment_b,
             _arm(half_length, centre_b, *_stiff[::-1], reach_x, reach_y),
             reach_x, reach_y, 2 * tan_list["service"]),
]
half_weight = row("People on any one half: weight", "w_M", "lb",
                  greatest(least(*half_bounds, spread_load, load_strength / 2), 0), OURS,
                  digits=0)
half_people = row("People on any one half", "M", "each",
                  whole_down(half_weight / job.person_weight), OURS, digits=0, chief=True)
half_psf = row("The same, a square foot of that half", "M_q", "psf",
               2 * half_people * job.person_weight / parts.deck_area, OURS, digits=1)
_more = [(bound > half_weight) for bound in half_bounds]
half_number = row("Bound that sets it, number", "i_M", "",
                  5 + _more[0] * (1 + _more[1] * (1 + _more[2] * (1 + _more[3]))), OURS, digits=0)
half_bound = row("Set by", "", TEXT, BOUNDS.at(half_number)["set by"], OURS, 0)
