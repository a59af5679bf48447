"""Gangway: its slope, the travel of its foot, its width, and its hold on the shore.

The hinge is fixed to the shore and the foot rides on the deck.  It is steepest downward at low
water with the float loaded and lies highest at high water with the float light.
"""

from __future__ import annotations

from builder.language import (
    Sheet,
    absolute,
    again,
    all_of,
    arc_tangent,
    greatest,
    least,
    root,
    when,
)

from . import buoyancy, parts
from . import inputs as job
from . import inputs_site as site
from . import sections as sec
from . import site_loads as loads
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
slope_check = check("Gangway slope", slope, at_most=1 / site.gangway_run,
                    look_at=1 / site.gangway_run,
                    source="own judgement: 3 to 1 at lowest water; UFC 4-152-01 7-4.1: 1.5",
                    group="Gangway", cure="A longer gangway, or a lower or movable hinge.",
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
travel = row("Travel of the foot between the levels", "e_g", "ft",
             when(rise_low * rise_high < 0, site.gangway_length, greatest(run_low, run_high))
             - least(run_low, run_high), STATICS)
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
shore_check = check("Abutment bolts in shear, steel alone", shore_bolt, at_most=bolt_shear,
                    source="AISC 360-10 J3.6", group="Gangway",
                    cure="More bolts, or thicker ones. The concrete round them is for the anchor "
                    "maker's table.")
level_words = row("Deck and hinge", "", "text",
                  when(all_of(lands > 0, rise_high < 0),
                       "deck above the hinge at high water", "deck below the hinge"), STATICS)
caution("Fit an end stop and a safety chain. The gangway's own members, its rails and the ground "
        "behind the abutment are not judged here: its maker or an engineer does that.")
