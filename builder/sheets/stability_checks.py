"""Stability, sixth part: the checks.

A case that is unstable is NOT OK, and one outside the range of the formulas is LOOK at best.

A tilt is judged as a share of the most allowed, so that an unstable case, which has no angle, can
read as far beyond it.
"""

from __future__ import annotations

from builder.language import (
    Series,
    absolute,
    all_of,
    any_of,
    arc_tangent,
    degrees,
    greatest,
    least,
    radians,
    root,
    smallest,
    tangent,
    when,
)
from builder.language.rows import SMALL_SHARE

from . import buoyancy, parts, weight
from . import inputs_afloat as limits
from . import inputs_site as site
from . import sections as sec
from .reference import constants, lake, own
from .stability_cases import CASES, arm_a, low, tilt
from .stability_group import (
    along_axes,
    centre_a,
    centre_b,
    half_length,
    turn,
    turn_length,
)
from .stability_held import water_foot
from .stability_loads import fall
from .stability_sheet import (
    ARCHIMEDES,
    GROUP,
    OURS,
    STATICS,
    TURNS,
    block,
    check,
    note,
    row,
)
from .stability_shown import HOLDS, state
from .stability_weights import GM_a, GM_b, depth, stable

ada = constants("ada_2010")
YES = buoyancy.YES


def _holds(keys):
    return all_of(*(state[k].is_(HOLDS) for k in keys))


def _share(label: str, symbol: str, keys, most):
    """Declare the greatest tilt of some cases over the most allowed; 99 where unstable."""
    weights = list(dict.fromkeys(CASES[k].weight for k in keys))
    return row(label, symbol, "",
               when(any_of(*(stable[w].is_(TURNS) for w in weights)), SMALL_SHARE,
                    greatest(0, *(tilt[k] for k in keys)) / most), STATICS)


def _tilt_check(label: str, share, keys, good, most, **words):
    """Declare a check of tilt: LOOK from the good tilt on, and out of range always."""
    return check(label, share, at_most=1, look_at=when(_holds(keys), good / most, -1), **words)


def _low_check(label: str, lowest, keys, good, most, **words):
    """Declare a check of a low corner: LOOK below the good one, and out of range always."""
    return check(label, lowest, at_least=most, group=GROUP,
                 look_at=greatest(when(_holds(keys), good, 2 * parts.deck_top.in_("in")),
                                  own.least_inches), **words)


def _outward(missing, key: str):
    """Return how much farther out the floats need to stand for more metacentric height [ft]."""
    square = greatest(buoyancy.spread_yy, 0)
    return root(square + greatest(missing, 0) * depth[key]) - root(square)


def _short(case: str, good):
    """Return the metacentric height that is wanting for a good tilt, by the straight line [ft]."""
    return (absolute(arm_a[case]) / tangent(radians(good)) - GM_a[CASES[case].weight])


block("Stable in every case")
GM_worst = row("Least metacentric height of all cases, both axes", "GM_min", "ft",
               least(smallest(Series("GM_a", list(GM_a.values()))),
                     smallest(Series("GM_b", list(GM_b.values())))), ARCHIMEDES,
               digits=3, chief=True)
stable_check = check("Stable in every case", GM_worst, at_least=own.least_length,
                     look_at=own.least_length, source=ARCHIMEDES, group=GROUP,
                     cure="Unstable: it turns over. Wider, or floats further out; the states above "
                     "name the case. Where it is one float lost: more, smaller floats.",
                     amount=("feet further out, each side", "ft",
                             _outward(own.least_length - GM_worst, "capacity")))

block("Level at rest")
rest_most = row("Tilt at rest, most; 1:48 on an accessible route", "τ_r", "deg",
                when(site.accessible.is_(YES),
                     degrees(arc_tangent(ada.cross_slope_rise / ada.cross_slope_run)),
                     limits.tilt_rest_most), "ADA 2010 405.3; own judgement")
_REST = ("launch", "service")
rest_share = _share("Tilt at rest over the most allowed", "r_0", _REST, rest_most)
rest_check = _tilt_check("Level at rest, launched and in service (G0)", rest_share, _REST,
                         limits.tilt_rest_ok, rest_most,
                         source="Lake guidelines; ADA 2010 405.3", group=GROUP,
                         cure="Shift fixed items or the gangway foot, or add a float under the "
                         "low side.")

block("Even loads")
_EVEN = ("flotation", "capacity")
even_low = row("Lowest corner under even loads; 0 where unstable", "F_e", "in",
               least(*(low[k] for k in _EVEN)), STATICS, digits=1)
even_check = _low_check("Lowest corner under even loads", even_low, _EVEN, limits.even_least,
                        limits.even_least, source=OURS,
                        cure="More floats; it floats low or out of level: see level at rest.")

block("Point load at edge, end and corner")
note("Standing people: the load acts at their height above the deck.")
_POINT = ("edge", "end", "corner")
point_share = _share("Tilt under the point load over the most allowed", "r_P", _POINT,
                     limits.tilt_point_most)
point_check = _tilt_check(
    "Tilt under the point load", point_share, _POINT, limits.tilt_point_ok,
    limits.tilt_point_most, source="UFC 4-152-01 7-3.3; own judgement", group=GROUP,
    cure="Wider, or floats further out.",
    amount=("feet further out, each side", "ft",
            _outward(_short("edge", limits.tilt_point_ok), "point")))
good_corner = row("Low corner, good: share of the freeboard in service", "F_g", "in",
                  limits.corner_share * buoyancy.free_service, OURS, digits=1)
point_low = row("Lowest corner under the point load; 0 where unstable", "F_P", "in",
                least(*(low[k] for k in _POINT)), STATICS, digits=1, chief=True)
point_low_check = _low_check("Lowest corner under the point load", point_low, _POINT, good_corner,
                             limits.corner_least, source=OURS,
                             cure="Wider, floats further out, or deeper floats.")

block("Finger rule: the load near its outer end")
note("The outer end is the far one, +x. The load stands on the centreline, as standing people do; "
     "straight-line lean in service, which is a little more than the true one; with extra floats "
     "off the middle it may be a tenth out. Where the authority does not ask for the rule, only a "
     "loss of the whole deck height is NOT OK.")
_a, _b = along_axes(0, half_length, turn, turn_length)
end_a = row("Outer end, from F on axis a", "a_E", "ft", _a - centre_a, STATICS)
end_b = row("Outer end, from F on axis b", "b_E", "ft", _b - centre_b, STATICS)
_a, _b = along_axes(0, half_length - lake.finger_load_from_end, turn, turn_length)
load_a = row("Load near the outer end, from F on axis a", "a_F", "ft", _a - centre_a, STATICS)
load_b = row("Load near the outer end, from F on axis b", "b_F", "ft", _b - centre_b, STATICS)


def _righting(axis: str, height):
    return row(f"Righting moment a unit of slope, that load aboard, axis {axis}", f"S_F{axis}",
               "lb·ft", greatest(weight.service * height - lake.live_point * fall,
                                 own.least_weight * own.least_length), ARCHIMEDES, digits=0)


end_S_a, end_S_b = _righting("a", GM_a["service"]), _righting("b", GM_b["service"])
end_loss = row("Freeboard lost at the middle of the outer end", "Δ_E", "in",
               (lake.live_point * (1 / water_foot + load_a * end_a / end_S_a
                                   + load_b * end_b / end_S_b)).in_("in"), STATICS, digits=2)
finger_loss = row("The same for a finger; 0 for other sections", "Δ", "in",
                  when(sec.purpose.is_("finger"), greatest(end_loss, 0), 0), STATICS, digits=2)
finger_check = check("Freeboard lost at the end of a finger", finger_loss,
                     at_most=when(limits.finger_rule.is_(YES), limits.finger_most,
                                  greatest(limits.finger_most, parts.deck_top.in_("in"))),
                     look_at=limits.finger_most, source="Lake guidelines, loads", group=GROUP,
                     cure="Floats nearer the end, more floats, or larger ones.")

block("One half loaded, and the gangway loaded")
note("Over the most allowed tilt a platform or landing is NOT OK, another section LOOK.")
_HALF = ("half_across", "half_along", "gangway")
half_tilt = _share("Tilt with one half loaded over the most allowed", "r_h1", _HALF,
                   limits.tilt_half_most)
half_share = row("The same; no more than 1 but for platform, landing or an unstable case", "r_h",
                 "", when(any_of(sec.purpose.is_("platform"), sec.purpose.is_("landing"),
                                 half_tilt >= SMALL_SHARE), half_tilt, least(half_tilt, 1)),
                 OURS)
half_check = _tilt_check(
    "Tilt with one half loaded", half_share, _HALF, limits.tilt_half_ok, limits.tilt_half_most,
    source="HSC Code 2000 2.11; own judgement", group=GROUP,
    cure="Wider, floats further out, or rate it for fewer people.",
    amount=("feet further out, each side", "ft",
            _outward(_short("half_across", limits.tilt_half_ok), "half")))
half_low = row("Lowest corner with one half loaded; 0 where unstable", "F_h", "in",
               least(*(low[k] for k in _HALF)), STATICS, digits=1)
half_low_check = _low_check("Lowest corner with one half loaded", half_low, _HALF, good_corner,
                            limits.corner_least, source=OURS,
                            cure="Wider, floats further out, or deeper floats.")

block("One float lost, nobody on deck")
lost_share = row("Tilt with one float lost over the good one; 99 unless the state holds", "r_1",
                 "", when(state["lost"].is_(HOLDS), tilt["lost"] / limits.tilt_lost, SMALL_SHARE),
                 STATICS)
lost_check = check("Tilt with one float lost", lost_share, at_most=1, source=OURS, worst="LOOK",
                   group=GROUP, cure="More, smaller floats, so that one counts for less.")
lost_low_check = _low_check("Lowest corner with one float lost", low["lost"], ("lost",),
                            limits.lost_ok, limits.lost_least, source=OURS,
                            cure="More, smaller floats, so that one counts for less.")

block("Snow on one half, if it stays in")
snow_low_check = _low_check("Lowest corner with snow on one half", low["snow"], ("snow",),
                            limits.even_least, limits.even_least, source=OURS,
                            cure="Take it out for the winter, or clear the snow evenly.")
