"""Stability, seventh part: the load plate: N people spread out, M people on any one half.

Both are on the safe side.  The moment that rights a section per unit of slope is W·GM; with
standing people put on it falls by the height of their centre over the waterline a pound, a little
less as the section sinks, and it grows with tilt.  Both gains are left out:

    S(w) = S₀ − k w,  k = z_p − T          v = (|m| + w a) / S(w) on each leaning axis

Own moments and all arms count as if they leaned it the same way.  What is used of a limit, of
tilt, of the height of float tops and deck corners, of the draft of the float corner that stands
highest, is then a convex function of w; so is the largest of them, u(w).  A chord of it lies above
it: where the chord from a load that passes to one that does not reaches 1, u is not above 1.  Two
chords come within a few hundredths of the load that just passes.  With a float corner out of the
water the true tilt would be more than these formulas give, so that this is a limit too.
"""

from __future__ import annotations

from dataclasses import dataclass

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
from .stability_cases import band_high, band_low
from .stability_group import (
    F_X,
    F_Y,
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
    turn_length,
)
from .stability_held import water_foot
from .stability_loads import fall
from .stability_sheet import (
    ARCHIMEDES,
    OURS,
    STATICS,
    block,
    note,
    row,
)
from .stability_weights import BM_a, BM_b, GM_a, GM_b, breadth

BOUNDS = table("plate_bounds")
LEAST_STIFF = own.least_weight * own.least_length

block("Load plate: what rights it, and what is left of each limit")
note("People stand on it as weight at their own height; all that leans it is taken to lean it the "
     "same way. Limits: the most tilt with one half loaded, no float top under, no deck corner "
     "below the least, no float corner out with one half loaded; a round float within its range.")
plate_breadth = row("Breadth at the waterline, all aboard over in service, 1 at most", "r_ω", "",
                    least(breadth["capacity"] / greatest(breadth["service"], own.least_share), 1),
                    STATICS, digits=4)


def _righting(axis: str, height, radius) -> Row:
    """Declare what rights the section a unit of slope, with the least breadth of the range."""
    return row(f"Righting moment a unit of slope, nobody aboard, axis {axis}", f"S_{axis}",
               "lb·ft", greatest(weight.service * (height - radius * (1 - plate_breadth ** 3)), 0),
               ARCHIMEDES, digits=0)


righting_a = _righting("a", GM_a["service"], BM_a["service"])
righting_b = _righting("b", GM_b["service"], BM_b["service"])
plate_foot = row("Water a foot of draft takes, at that breadth", "γA_r", "lb/ft",
                 water_foot * plate_breadth, ARCHIMEDES, digits=0)
plate_slope = row("Most slope", "t_m", "ft/ft", tangent(radians(limits.tilt_half_most)), OURS,
                  digits=4)


@dataclass
class Limit:
    """A height that may go: load that sinks it [lb], and its shares a unit of slope on a, b."""

    load: Row
    on_a: Row
    on_b: Row


def _limit(name: str, tag: str, height, across, along) -> Limit:
    """Declare what there is of a height [in] at places so far from F across and along [ft]."""
    sinks = row(f"Load to sink it to the {name}", f"D_{tag}", "lb",
                greatest(height.in_("ft") * plate_foot, own.least_weight), ARCHIMEDES, digits=0)

    def share(axis: str, near, far):
        return row(f"Share of the {name} a unit of slope, axis {axis}", f"p_{tag}{axis}", "",
                   (near + absolute(turn) * far) / turn_length * plate_foot / sinks, STATICS)

    return Limit(sinks, share("a", across, along), share("b", along, across))


float_limit = _limit("float top", "f", band_high - buoyancy.draft_service, reach_y, reach_x)
corner_limit = _limit("least low corner", "c", buoyancy.free_service - limits.corner_least,
                      half_width + absolute(F_Y), half_length + absolute(F_X))
out_load = row("Float corners: load that the draft stands for", "D_o", "lb",
               greatest((buoyancy.draft_service - band_low).in_("ft") * plate_foot,
                        own.least_weight), ARCHIMEDES, digits=0)


def _slope(words: str, symbol: str, load, moment, arm, righting) -> Row:
    """Declare the slope on an axis that a load at an arm from F and the own moment give."""
    return row(words, symbol, "ft/ft", (absolute(moment) + load * arm)
               / greatest(righting - fall * load, LEAST_STIFF), STATICS, digits=4)


def _tilted(a, b):
    return root(a ** 2 + b ** 2) / plate_slope


def _used(limit: Limit, a, b):
    return a * limit.on_a + b * limit.on_b


rest_a = row("Slope by itself, axis a", "v_a0", "ft/ft",
             absolute(moment_a) / greatest(righting_a, LEAST_STIFF), STATICS, digits=4)
rest_b = row("Slope by itself, axis b", "v_b0", "ft/ft",
             absolute(moment_b) / greatest(righting_b, LEAST_STIFF), STATICS, digits=4)
rest_used = row("Share used by itself, the most of all limits", "u_0", "",
                greatest(_tilted(rest_a, rest_b), _used(float_limit, rest_a, rest_b),
                         _used(corner_limit, rest_a, rest_b)), STATICS)
rest_half = row("The same, with no float corner out", "u_0h", "",
                greatest(rest_used, _used(float_limit, rest_a, rest_b)
                         * float_limit.load / out_load), STATICS)


def _chord(used, start):
    """Return the share of a step up to a load at which a chord reaches 1; 0 to 1."""
    return least(1, greatest(1 - start, 0) / greatest(used - start, own.least_share))


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
spread_most = row("The least of these", "w_e", "lb",
                  greatest(least(load_volume, load_height, load_stable, load_strength), 0),
                  OURS, digits=0)
even_a = _slope("Slope with it aboard, evenly, axis a", "v_ae", spread_most, moment_a,
                absolute(centre_a), righting_a)
even_b = _slope("Slope with it aboard, evenly, axis b", "v_be", spread_most, moment_b,
                absolute(centre_b), righting_b)
even_used = row("Share used then, float tops and tilt", "u_e", "",
                greatest(_tilted(even_a, even_b), _used(float_limit, even_a, even_b)
                         + spread_most / float_limit.load), STATICS)
even_corner = row("Share used then, low corner", "u_ec", "",
                  _used(corner_limit, even_a, even_b) + spread_most / corner_limit.load, STATICS)
spread_load = row("People spread out: weight", "w_N", "lb",
                  spread_most * _chord(greatest(even_used, even_corner), rest_used), OURS, digits=0)
people = row("People spread out", "N", "each", whole_down(spread_load / job.person_weight), OURS,
             digits=0, chief=True)
people_psf = row("The same, a square foot of deck", "N_q", "psf",
                 people * job.person_weight / parts.deck_area, OURS, digits=1)
_bounds = [(bound > spread_load) for bound in (load_volume, load_height, load_stable,
                                               load_strength)]
people_number = row("Bound that sets it, number", "i_N", "",
                    1 + _bounds[0] * (1 + _bounds[1] * (1 + _bounds[2] * (1 + _bounds[3]))),
                    OURS, digits=0)
people_bound = row("Set by", "", TEXT, BOUNDS.at(people_number)["set by"], OURS, 0)

block("Load plate: people on any one half")


def _arms(way: str, half, near: str, centres: dict) -> dict[str, Row]:
    """Declare the arms from F of a load on one half, on both axes [ft]."""
    return {axis: row(f"Load on one half {way}: arm from F, axis {axis}", f"a_{way[:2]}{axis}",
                      "ft", half / 2 * (1 if axis == near else absolute(turn)) / turn_length
                      + absolute(centres[axis]), STATICS) for axis in "ab"}


_centres = {"a": centre_a, "b": centre_b}
arm_across = _arms("across", half_width, "a", _centres)
arm_along = _arms("along", half_length, "b", _centres)
half_most = row("Load on one half to begin with", "w_h2", "lb",
                least(spread_load, load_strength / 2,
                      righting_a / (fall + arm_across["a"] / plate_slope),
                      righting_b / (fall + arm_along["b"] / plate_slope)), OURS, digits=0)
OWN = {"a": (moment_a, righting_a), "b": (moment_b, righting_b)}


def _tried(number: int, load) -> tuple[Row, Row, Row, Row]:
    """Declare the shares used with a load on one half: tilt, float dip, low corner, the most."""
    v = [[_slope(f"Trial {number}: slope, one half {way}, axis {axis}",
                 f"v_{way[:2]}{axis}{number}", load, OWN[axis][0], arms[axis], OWN[axis][1])
          for axis in "ab"] for way, arms in (("across", arm_across), ("along", arm_along))]
    tilt = row(f"Trial {number}: share used, tilt", f"u_t{number}", "",
               root(greatest(v[0][0] ** 2 + v[0][1] ** 2, v[1][0] ** 2 + v[1][1] ** 2))
               / plate_slope, STATICS)
    dip = row(f"Trial {number}: share used, float top, by the slope alone", f"u_f{number}", "",
              greatest(_used(float_limit, *v[0]), _used(float_limit, *v[1])), STATICS)
    corner = row(f"Trial {number}: share used, low corner", f"u_c{number}", "",
                 greatest(_used(corner_limit, *v[0]), _used(corner_limit, *v[1]))
                 + load / corner_limit.load, STATICS)
    return tilt, dip, corner, row(
        f"Trial {number}: the most, float corners among them", f"u_{number}", "",
        greatest(tilt, dip + load / float_limit.load,
                 (dip * float_limit.load - load) / out_load, corner), STATICS)


first_tilt, first_dip, first_corner, first_used = _tried(1, half_most)
half_less = row("Where the first chord reaches 1", "w_h3", "lb",
                half_most * _chord(first_used, rest_half), STATICS, digits=0)
second_tilt, second_dip, second_corner, second_used = _tried(2, half_less)
half_weight = row("People on any one half: weight", "w_M", "lb",
                  half_less + (half_most - half_less) * _chord(
                      first_used, second_used),
                  OURS, digits=0)
half_people = row("People on any one half", "M", "each",
                  whole_down(half_weight / job.person_weight), OURS, digits=0, chief=True)
half_psf = row("The same, a square foot of that half", "M_q", "psf",
               2 * half_people * job.person_weight / parts.deck_area, OURS, digits=1)
half_number = row("Bound that sets it, number", "i_M", "",
                  when(half_weight >= least(spread_load, load_strength / 2), 9,
                       6 + (second_tilt < second_used) * (1 + (second_corner >= second_used))),
                  OURS, digits=0)
half_bound = row("Set by", "", TEXT, BOUNDS.at(half_number)["set by"], OURS, 0)
