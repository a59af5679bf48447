"""Gangway: its slope, the travel of its foot, its width, and its hold on the shore.

The hinge is fixed to the shore and the foot rides on the deck.  It is steepest downward at low
water with the float loaded and lies highest at high water with the float light; in a flood it may
slope up from the shore.  The foot wanders with the level, so that the load cases G0 to G3 of
Stability are worked here again with the foot at either end of its travel.
"""

from __future__ import annotations

from builder.language import (
    Sheet,
    absolute,
    again,
    all_of,
    arc_tangent,
    degrees,
    greatest,
    least,
    root,
    when,
)

from . import buoyancy, parts, stability
from . import inputs as job
from . import inputs_afloat as limits
from . import inputs_site as site
from . import sections as sec
from . import site_loads as loads
from . import stability_checks as judged
from . import stability_group as group
from .reference import BOLTS, own

sheet = Sheet("Gangway", "Slope, travel and shore end of the gangway",
              about="Slope at both levels, foot travel, accessible route, width, shore bolts.")
row, check, block, note, caution = (sheet.row, sheet.check, sheet.block, sheet.note,
                                    sheet.caution)

STATICS, OURS = "statics", "own judgement"
ours, ada, aisc = site.ours, site.ada, site.aisc
lands = loads.lands

block("Does it land here")
note("It is judged where a weight of the gangway at rest is typed on Sections; elsewhere the "
     "demands below read 0.")
expected = row("Gangway at rest, found", "R_e", "lb",
               site.gangway_weight / 2 * greatest(lands, sec.purpose.is_("landing"))
               * (site.gangway_length > 0), STATICS, digits=0)
mismatch = row("Typed on Sections against found", "ΔR", "lb",
               absolute(sec.gangway_rest - expected), STATICS, digits=0)
match_check = check("Gangway's weight at rest as typed on Sections", mismatch,
                    at_most=greatest(ours.gangway_match * expected, ours.gangway_match_least),
                    look_at=greatest(ours.gangway_match * expected, ours.gangway_match_least),
                    source=OURS, worst="LOOK", group="Gangway",
                    cure="Type half the gangway's weight on Sections where it lands, and its "
                    "length and weight on Inputs.")

block("Slope at low and high water")
deck_loaded = row("Deck above water, in service under the flotation load", "f_l", "ft",
                  buoyancy.free_flotation.in_("ft"), STATICS)
deck_light = row("Deck above water, as launched", "f_0", "ft", buoyancy.free_launch.in_("ft"),
                 STATICS)
rise_low = row("Drop from hinge to deck, low water, float loaded", "R_L", "ft",
               site.hinge_height - deck_loaded, STATICS)
rise_high = row("Drop from hinge to deck, high water, float light", "R_H", "ft",
                site.hinge_height - site.high_water - deck_light, STATICS)
run_low = row("Level reach at low water", "u_L", "ft",
              root(greatest(site.gangway_length ** 2 - rise_low ** 2, ours.least_square)),
              STATICS)
run_high = again(sheet, run_low, {rise_low: rise_high}, "high water")
slope_low = row("Rise over run at low water", "i_L", "", absolute(rise_low) / run_low, STATICS,
                digits=3)
slope_high = row("Rise over run at high water", "i_H", "", absolute(rise_high) / run_high,
                 STATICS, digits=3)
slope = row("Steepest, where it lands", "i_g", "", lands * greatest(slope_low, slope_high),
            STATICS, digits=3)
drop_most = row("Largest drop or rise", "R_m", "ft",
                greatest(absolute(rise_low), absolute(rise_high)), STATICS)
length_needed = row("Gangway as long as that slope asks", "G_s", "ft",
                    drop_most * root(1 + site.gangway_run ** 2), "statics; length along the "
                    "slope", digits=1)
note("At the highest water the gangway may stand up from the shore, and then pushes outward: its "
     "maker checks members and hinge for that slope too. Too steep only then reads LOOK.")
rise_flood = row("Drop from hinge to deck, highest water, float light", "R_X", "ft",
                 site.hinge_height - greatest(site.high_water, site.flood) - deck_light, STATICS)
run_flood = again(sheet, run_low, {rise_low: rise_flood}, "highest water")
slope_flood = row("Rise over run at the highest water, where it lands", "i_X", "",
                  lands * absolute(rise_flood) / run_flood, STATICS, digits=3)
slope_check = check("Gangway slope", slope, at_most=1 / site.gangway_run,
                    look_at=when(slope_flood > 1 / site.gangway_run, -1, 1 / site.gangway_run),
                    source="own judgement: 3 to 1 at lowest water; UFC 4-152-01 7-4.1: 1.5",
                    group="Gangway", cure="A longer gangway, or a lower or movable hinge. LOOK: "
                    "too steep at the highest water; close it in a flood.",
                    amount=("feet longer", "ft",
                            lands * greatest(length_needed - site.gangway_length, 0)))

block("Accessible route")
note("The slope limit of 1 to 12 is lifted for gangways of 80 ft, or of 30 ft where the whole "
     "facility has fewer than 25 slips. Width, edges, handrails and the walk's cross slope of "
     "1 to 48 remain: a certified gangway maker or an engineer looks at those.")
access_needed = row("Length that 1 to 12 asks", "G_12", "ft",
                    drop_most * root(1 + ada.ramp_run ** 2), "ADA 2010 405.2", digits=2)
access_waiver = row("Length that lifts the limit", "G_80", "ft",
                    when(site.slips < ada.small_facility_slips, ada.gangway_waiver_small,
                         ada.gangway_waiver), "ADA 2010 1003.2.1 exceptions 3, 4", digits=0)
access_length = row("Least length, where accessible and landing", "G_acc", "ft",
                    lands * site.accessible.is_("yes") * least(access_needed, access_waiver),
                    "ADA 2010 1003.2.1", digits=1)
access_check = check("Accessible route: length of the gangway", access_length,
                     at_most=greatest(site.gangway_length, own.least_length),
                     look_at=greatest(site.gangway_length, own.least_length),
                     source="ADA 2010 1003.2.1", group="Gangway",
                     cure="A longer gangway; or no accessible route can be claimed.",
                     amount=("feet longer", "ft",
                             greatest(access_length - site.gangway_length, 0)))
width_least = row("Clear width asked", "b_need", "in",
                  greatest(site.gangway_width_least,
                           ada.clear_width * site.accessible.is_("yes")), "ADA 2010 405.5")
width_short = row("Clear width asked, where it lands", "b_d", "in", lands * width_least, STATICS,
                  digits=1)
width_check = check("Gangway clear width", width_short, at_most=site.gangway_width,
                    look_at=site.gangway_width,
                    source="UFC 4-152-01 7-4.2; ADA 2010 405.5", group="Gangway",
                    cure="A wider gangway: 36 in clear one way, 48 in where people meet.")

block("Travel of the foot")
travel = row("Travel of the foot from low to highest water", "e_g", "ft",
             when(rise_low * rise_flood < 0, site.gangway_length,
                  greatest(run_low, run_high, run_flood))
             - least(run_low, run_high, run_flood), STATICS)
room = row("From the foot to the nearer edge of the landing", "a_g", "ft",
           least(parts.deck_length / 2 - absolute(sec.gangway_x),
                 when(absolute(sec.gangway_y) > 0,
                      parts.deck_width / 2 - absolute(sec.gangway_y), parts.deck_length)),
           STATICS)
travel_asked = row("Half the travel and half a foot, where it lands", "a_n", "ft",
                   lands * (greatest(travel, 0) + ours.foot_past) / 2, OURS)
travel_check = check("Room for the foot on the landing", travel_asked,
                     at_most=greatest(room, own.least_length), source=OURS, group="Gangway",
                     cure="Move the foot in from the edge of the landing, or a longer landing; "
                     "fit an end stop and a safety chain.",
                     amount=("feet short", "ft", greatest(travel_asked - room, 0)))
note("The foot on Sections is taken as the middle of its travel, along the section unless a place "
     "across is typed. Wheels need a plate over three stringers or more.")

block("The foot at either end of its travel")
note("G0 to G3 of Stability again, with the foot half its travel off its place, toward the lower "
     "corner: the tilt and the dip that adds, to the first order on both leaning axes. A section "
     "stiffens as it leans, so that this is a little more than there is. Any section where a "
     "gangway lands is judged as a landing.")
foot_off = row("Foot off its place, most", "e_h", "ft", lands * greatest(travel, 0) / 2, STATICS)
_across = absolute(sec.gangway_y) > 0
_turn, _length = stability.turn, stability.turn_length
foot_a = row("The same on leaning axis a", "e_a", "ft",
             foot_off * when(_across, 1, absolute(_turn)) / _length, STATICS, digits=3)
foot_b = row("The same on leaning axis b", "e_b", "ft",
             foot_off * when(_across, absolute(_turn), 1) / _length, STATICS, digits=3)
_far_y = group.half_width + absolute(buoyancy.flotation_y)
_far_x = group.half_length + absolute(buoyancy.flotation_x)
corner_a = row("Deck corner from the centre of flotation, axis a", "c_a", "ft",
               (_far_y + absolute(_turn) * _far_x) / _length, STATICS)
corner_b = row("Deck corner from the centre of flotation, axis b", "c_b", "ft",
               (_far_x + absolute(_turn) * _far_y) / _length, STATICS)
CASES = {"service": ("G0", loads.gangway_dead), "gangway": ("G1", loads.gangway_25),
         "flotation": ("G2", loads.gangway_dead), "half": ("G3", loads.gangway_dead)}
lean, dip = {}, {}
for _key, (_name, _weight) in CASES.items():
    _share = _weight / greatest(stability.weight_afloat[_key], own.least_weight)
    _a = foot_a / greatest(stability.GM_a[_key], own.least_length)
    _b = foot_b / greatest(stability.GM_b[_key], own.least_length)
    lean[_key] = row(f"Further lean, tangent: {_name}", f"Δv[{_name}]", "ft/ft",
                     _share * root(_a ** 2 + _b ** 2), STATICS, digits=5)
    dip[_key] = row(f"Corner further down: {_name}", f"Δc[{_name}]", "in",
                    (_share * (_a * corner_a + _b * corner_b)).in_("in"), STATICS, digits=2)


def _tilted(case: str, key: str):
    """Return the tilt of a case of Stability with the foot at the end of its travel [deg]."""
    return stability.tilt[case] + degrees(arc_tangent(lean[key]))


foot_rest = row("Tilt at rest, foot at the worse end (G0)", "τ_g0", "deg",
                lands * _tilted("service", "service"), STATICS, digits=2)
foot_rest_check = check("Level at rest, foot at the worse end (G0)", foot_rest,
                        at_most=judged.rest_most,
                        look_at=least(limits.tilt_rest_ok, judged.rest_most),
                        source="Lake guidelines; ADA 2010 405.3", group="Gangway",
                        cure="Move the foot toward the middle, shift fixed items, or add a float "
                        "under the low side.")
foot_tilt = row("Tilt, foot at the worse end (G1, G3)", "τ_g", "deg",
                lands * greatest(_tilted("gangway", "gangway"), _tilted("half_across", "half"),
                                 _tilted("half_along", "half")), STATICS, digits=2)
foot_tilt_check = check("Tilt, foot at the worse end (G1, G3)", foot_tilt,
                        at_most=limits.tilt_half_most,
                        look_at=least(limits.tilt_half_ok, limits.tilt_half_most),
                        source="HSC Code 2000 2.11; own judgement", group="Gangway",
                        cure="Wider, floats further out, or the foot nearer the middle.")
foot_corner = row("Lowest corner, foot at the worse end (G1, G2, G3)", "F_g", "in",
                  least(stability.low["gangway"] - dip["gangway"],
                        stability.low["flotation"] - dip["flotation"],
                        stability.low["half_across"] - dip["half"],
                        stability.low["half_along"] - dip["half"]), STATICS, digits=1)
foot_low = row("The same where it lands; elsewhere twice the deck's height", "F_gj", "in",
               when(lands > 0, foot_corner, 2 * parts.deck_top.in_("in")), STATICS, digits=1)
foot_low_check = check("Lowest corner, foot at the worse end (G1, G2, G3)", foot_low,
                       at_least=limits.corner_least,
                       look_at=greatest(judged.good_corner, limits.corner_least), source=OURS,
                       group="Gangway",
                       cure="Wider, floats further out, deeper floats, or the foot nearer the "
                       "middle.")

block("Wheels on the stringers")
note("A plate shares a wheel over the stringers it covers: of 3, half of it on one. Both wheels "
     "may stand on one stringer. Framing has judged the point load in the middle of a stringer, "
     "and no more.")
foot_point = row("Wheels as one load in the middle of a stringer", "P_g", "lb",
                 2 * loads.gangway_75 / (site.plate_stringers + 1)
                 * greatest(1 - site.gangway_width.in_("ft")
                            / greatest(parts.clear_span, own.least_length), ours.wheel_middle),
                 OURS, digits=0)
foot_point_check = check("Gangway wheels against the point load of Framing", foot_point,
                         at_most=sec.point_load, look_at=sec.point_load, worst="LOOK",
                         source=OURS, group="Gangway",
                         cure="A longer plate, over more stringers; or doubled stringers and "
                         "blocking under the whole travel of the foot.",
                         amount=("stringers under the plate, in all", "each",
                                 greatest(foot_point * (site.plate_stringers + 1)
                                          / sec.point_load - 1, 0)))

block("Shore end")
shore = row("Weight on the hinge, 75 psf on the walk", "R_s", "lb",
            site.gangway_weight / 2 + loads.ufc.gangway_uniform * loads.gangway_area / 2,
            "UFC 4-152-01 7-4.4", digits=0)
shore_bolt = row("Pull and weight on one abutment bolt, where it lands", "B_s", "lb",
                 lands * root(shore ** 2 + loads.gangway_push ** 2) / site.abutment_bolts,
                 STATICS, digits=0)
bolt_shear = row("A bolt in shear, steel alone", "V_b", "lb",
                 aisc.Fnv_A307 * arc_tangent(1) * BOLTS.find(job.bolt)["D"] ** 2 / aisc.omega,
                 "AISC 360-10 J3.6, Table J3.2", digits=0)
note("What a bolt carries in its concrete is in its maker's table, for that concrete, depth and "
     "edge. Where it is not typed on Inputs an engineer or the maker says it: the check reads "
     "LOOK.")
bolt_holds = row("What an abutment bolt carries, steel and concrete where known", "V_c", "lb",
                 when(site.anchor_limit > 0, least(bolt_shear, site.anchor_limit), bolt_shear),
                 "AISC 360-10 J3.6; anchor maker", digits=0)
shore_check = check("Abutment bolts, in steel and concrete", shore_bolt,
                    at_most=greatest(bolt_holds, own.least_weight),
                    look_at=bolt_holds * when(all_of(lands > 0, site.anchor_limit <= 0), -1,
                                              own.look_from),
                    source="AISC 360-10 J3.6; anchor maker", group="Gangway",
                    cure="More bolts, thicker or deeper ones, or farther from the edge of the "
                    "concrete. LOOK: type what the anchor maker's table gives; not known: "
                    "engineer required.")
level_words = row("Deck and hinge", "", "text",
                  when(all_of(lands > 0, rise_high < 0),
                       "deck above the hinge at high water", "deck below the hinge"), STATICS)
caution("Fit an end stop and a safety chain. The gangway's own members, its rails and the ground "
        "behind the abutment are not judged here: its maker or an engineer does that.")
