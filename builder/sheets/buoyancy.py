"""Buoyancy: how deep a section floats, how high its deck stands, what it carries, how many floats.

Heights are above K, the underside of the floats.  A float's box is its length, breadth and depth;
the share of the box under water is the weight over the weight of water in all boxes.  For a box
float that share is the draft over the depth.  For a round float it is the area of the wetted
segment over d², and the table of the part-full circle turns it into a draft.
"""

from __future__ import annotations

from builder.language import (
    Series,
    Sheet,
    absolute,
    again,
    greatest,
    least,
    root,
    sum_over,
    when,
    whole_down,
    whole_up,
)

from . import inputs as job
from . import parts, weight
from . import sections as sec
from . import sections_afloat as afloat
from .reference import SEGMENTS, own
from .reference import water as waters

sheet = Sheet("Buoyancy", "Draft, freeboard and reserve",
              about="How deep each section floats, how high its deck stands, what it carries.")
row, check, block, note = sheet.row, sheet.check, sheet.block, sheet.note

ARCHIMEDES, STATICS, OURS = "Archimedes", "statics", "own judgement"
STEPS = len(SEGMENTS.keys) - 1
"""Steps of the table of the part-full circle: its depths are evenly spaced from 0 to 1."""
ROUND = parts.float_round
YES = "yes"


def _area(line):
    """Return the area over d² in a line of the part-full circle."""
    return SEGMENTS.at(line)["A/d²"]


block("Floats")
note("Usable volume: the least of size × fullness and the maker's rating, which is a fresh-water "
     "figure; a rating of 0 is unknown, and the size alone counts.")
fullness = row("Fullness: share of its outline that a float displaces", "f", "",
               parts.float_line["fullness"], OURS)
section_share = row("Share of its box that the section of a float fills", "σ", "",
                    when(ROUND, greatest(_area(STEPS + 1), own.least_share), 1), STATICS, digits=4)
size_volume = row("Volume of a float by its size", "V_s", "ft³",
                  parts.float_l * parts.float_b * parts.float_depth.in_("ft") * section_share,
                  STATICS)
rated_volume = row("Volume of a float by its rating; 0 unknown", "V_r", "ft³",
                   (parts.float_line["rated buoyancy"] + parts.float_line["own weight"]
                    * parts.float_line["rating is net"] * (parts.float_line["rated buoyancy"] > 0))
                   / waters.fresh, ARCHIMEDES)
rating_check = check("Float rating against its size", rated_volume, at_most=size_volume,
                     source=ARCHIMEDES, worst="LOOK", group="Flotation",
                     cure="The maker's rating is more than the size can displace: ask the maker. "
                     "The size counts here.")
volume_each = row("Usable volume of a float", "v", "ft³",
                  least(fullness * size_volume,
                        when(rated_volume > 0, rated_volume, size_volume)), OURS)
capacity = row("Weight at full immersion, usable volume", "W_max", "lb",
               greatest(job.water_weight * parts.floats * volume_each, own.least_weight),
               ARCHIMEDES, digits=0, chief=True)
box_water = row("Water in the boxes of all floats, × fullness", "W_b", "lb",
                job.water_weight * parts.floats * fullness * parts.float_l * parts.float_b
                * parts.float_depth.in_("ft"), ARCHIMEDES, digits=0)

block("Live loads on the deck")
live_flotation = row("Flotation load", "Q_f", "lb", job.flotation_load * parts.deck_area, STATICS,
                     digits=0)
capacity_psf = row("Capacity load, not below the flotation load", "q_cf", "psf",
                   greatest(sec.capacity_load, job.flotation_load), OURS, digits=0)
live_capacity = row("Capacity load", "Q_c", "lb", capacity_psf * parts.deck_area, STATICS,
                    digits=0)

block("Afloat as launched")
line_launch = sheet.line("Line of the part-full circle", SEGMENTS,
                         least(SEGMENTS.below("A/d²", greatest(weight.launch / box_water, 0))
                               .number, STEPS))
draft_launch = row(
    "Mean draft", "T", "in",
    parts.float_depth
    * when(ROUND,
           (line_launch - 1 + (least(weight.launch / box_water, section_share)
                               - _area(line_launch))
            / greatest(_area(line_launch + 1) - _area(line_launch), own.least_share)) / STEPS,
           weight.launch / box_water), ARCHIMEDES)
free_launch = row("Deck above water", "F", "in", parts.deck_top.in_("in") - draft_launch, STATICS)
under_launch = row("Frame underside above water", "F_u", "in",
                   parts.frame_underside.in_("in") - draft_launch, STATICS)


def _case(load, tag: str, frame: bool = True):
    """Repeat line, draft and freeboards under another weight; return them."""
    made: dict = {}
    change = {weight.launch: load}
    free = again(sheet, free_launch, change, tag, made)
    under = again(sheet, under_launch, change, tag, made) if frame else None
    return made[line_launch], made[draft_launch], free, under


block("Afloat in service")
line_service, draft_service, free_service, under_service = _case(weight.service, "service")

block("In service, under the flotation load")
weight_flotation = row("Weight afloat", "W_sf", "lb", weight.service + live_flotation, STATICS,
                       digits=0)
line_flotation, draft_flotation, free_flotation, under_flotation = _case(weight_flotation,
                                                                         "service, q_f")

block("In service, under the capacity load")
weight_capacity = row("Weight afloat", "W_sc", "lb", weight.service + live_capacity, STATICS,
                      digits=0)
line_capacity, draft_capacity, free_capacity, under_capacity = _case(weight_capacity,
                                                                     "service, q_c")

block("As launched, under the flotation load")
launch_flotation = row("Weight afloat", "W_0f", "lb", weight.launch + live_flotation, STATICS,
                       digits=0)
_, draft_test_flotation, free_test_flotation, _ = _case(launch_flotation, "launch, q_f", False)

block("As launched, under the capacity load")
launch_capacity = row("Weight afloat", "W_0c", "lb", weight.launch + live_capacity, STATICS,
                      digits=0)
_, draft_test_capacity, free_test_capacity, _ = _case(launch_capacity, "launch, q_c", False)

block("Floats needed")
note("For guidance: it feeds nothing. The least number that passes flotation tests (a), (b) and "
     "(c) on the launch weight, filled up to whole rows.")
draft_allowed = row("Draft at which the deck is just high enough", "T_a", "in",
                    greatest(least(parts.deck_top.in_("in") - sec.deck_flotation,
                                   parts.float_depth), 0), STATICS)
line_allowed = sheet.line("Line of the part-full circle at that draft", SEGMENTS,
                          least(whole_down(STEPS * draft_allowed / parts.float_depth) + 1, STEPS))
share_allowed = row("Share of the box under water at that draft", "u_a", "",
                    when(ROUND, _area(line_allowed)
                         + (STEPS * draft_allowed / parts.float_depth - line_allowed + 1)
                         * (_area(line_allowed + 1) - _area(line_allowed)),
                         draft_allowed / parts.float_depth), STATICS, digits=4)
lift_allowed = row("Lift of a float at that draft", "B_a", "lb",
                   least(box_water * share_allowed / parts.floats,
                         job.water_weight * volume_each), ARCHIMEDES, digits=0)
need_height = row("Floats for (a) deck height", "n_a", "each",
                  (weight.frame_only + live_flotation)
                  / greatest(lift_allowed - parts.float_line["own weight"], own.least_weight),
                  ARCHIMEDES)
need_share = row("Floats for (b) immersed share", "n_b", "each",
                 (weight.frame_only + live_capacity)
                 / greatest(job.immersed_most * job.water_weight * volume_each
                            - parts.float_line["own weight"], own.least_weight), ARCHIMEDES)
need_reserve = row("Floats for (c) reserve", "n_c", "each",
                   (weight.frame_only + job.reserve_ok * live_capacity)
                   / greatest(job.water_weight * volume_each - parts.float_line["own weight"],
                              own.least_weight), ARCHIMEDES)
floats_needed = row("Floats needed", "n_min", "each",
                    whole_up(greatest(need_height, need_share, need_reserve)), ARCHIMEDES,
                    digits=0, chief=True)
floats_whole = row("Floats needed, whole rows", "n_rows", "each",
                   sec.float_rows * whole_up(floats_needed / sec.float_rows), STATICS, digits=0)
floats_to_add = row("Whole rows: floats to add", "Δn", "each",
                    when(floats_needed > parts.floats,
                         greatest(floats_whole - parts.floats, 1), 0), STATICS, digits=0)

block("Flotation tests, as launched")
test_a = check("(a) Deck above water under the flotation load", free_test_flotation,
               at_least=sec.deck_flotation, source="Lake town code (4)(b); own judgement",
               cure="More floats, deeper floats, or a lighter frame.", group="Flotation")
share_capacity = row("Usable volume under water at the capacity load, share", "i", "",
                     greatest(launch_capacity / capacity, 0), ARCHIMEDES)
test_b = check("(b) Floats under water at the capacity load", share_capacity,
               at_most=job.immersed_most, source=OURS, cure="More floats, or larger ones.",
               group="Flotation")
live_full = row("Live load that puts the floats under", "q_max", "psf",
                (capacity - weight.launch) / parts.deck_area, ARCHIMEDES, digits=1)
test_c = check("(c) Live load that puts the floats under", live_full,
               at_least=job.reserve_least * capacity_psf, look_at=job.reserve_ok * capacity_psf,
               source=OURS, cure="More floats, or larger ones.", group="Flotation")
test_deck_capacity = check("Deck above water under the capacity load", free_test_capacity,
                           at_least=greatest(sec.deck_capacity, own.least_inches), source=OURS,
                           cure="More floats, or deeper floats.", group="Flotation")
for _test in (test_a, test_b, test_c):
    _test.amount = floats_to_add

block("Flotation, aged and in winter")
share_aged = row("Aged, at the capacity load: usable volume under water, share", "i_a", "",
                 greatest((weight.aged + live_capacity) / capacity, 0), ARCHIMEDES)
aged_check = check("Floats under water at the capacity load, aged", share_aged,
                   at_most=job.aged_most, look_at=job.aged_ok,
                   source="own judgement; Lake guidelines, flotation", group="Flotation",
                   cure="More floats, so that wet timber and water in the foam are carried too.")
share_snow = row("Under ground snow, if it stays in: share", "i_s", "",
                 when(job.stays_in.is_(YES),
                      greatest((weight.service + job.ground_snow * parts.deck_area) / capacity,
                               0), 0),
                 ARCHIMEDES)
snow_check = check("Floats under water with snow on the deck", share_snow, at_most=job.snow_most,
                   source=OURS, group="Flotation",
                   cure="Take it out for the winter, clear the snow, or add floats.")

block("Heights, empty")
note("The least height is judged in service, when it floats lowest; the most as launched, when it "
     "floats highest.")
low_check = check("Deck height empty, least", free_service, at_least=sec.deck_low, worst="LOOK",
                  source="Marina guidelines 2005; own judgement", group="Flotation",
                  cure="More floats, deeper floats, or a deeper frame.")
free_highest = row("Deck above water, as launched, not below 0", "F_up", "in",
                   greatest(free_launch, 0), STATICS)
high_check = check("Deck height empty, most", free_highest, at_most=sec.deck_high, worst="LOOK",
                   source="Marina guidelines 2005; own judgement", group="Flotation",
                   cure="Shallower floats, or a shallower frame; mind the step down to a boat.")
frame_check = check("Frame above water, empty", under_service, at_least=job.frame_least,
                    source="Lake guidelines, dead load", worst="LOOK", group="Flotation",
                    cure="Some lakes ask 7 in: ask the authority. More floats, or deeper ones.")
frame_rule_check = check("Frame above water where the authority asks for it", under_service,
                         at_least=when(job.frame_rule.is_(YES), job.frame_least,
                                       own.least_inches),
                         source="Lake guidelines, dead load", group="Flotation",
                         cure="More floats, or deeper ones.")
clearance = row("Clearance over the bed at low water", "c", "ft",
                job.low_water_depth - draft_flotation.in_("ft"), STATICS)
bed_check = check("Clearance over the bed at low water", clearance, at_least=own.least_length,
                  look_at=job.clearance_least, source="own judgement; local rule first",
                  cure="It will ground; frame and floats are not designed for it. Move it out to "
                  "deeper water, or take it out at low water.", group="Flotation",
                  amount=("feet deeper", "ft", greatest(job.clearance_least - clearance, 0)))
note("The clearance is under the draft in service with the flotation load on the deck.")
shell = row("Shell of the float", "t_s", "in", parts.float_line["shell"], "maker", digits=3)
shell_check = check("Shell of the float", shell,
                    at_least=greatest(job.shell_rule, own.least_inches), source="Foam float law",
                    worst="LOOK", group="Flotation", cure="For plastic floats: ask what the law "
                    "of this water asks, and choose a float with a thicker shell.")

block("Freeboard against live load")
note("Points of a curve, in service: quarters of the float depth under water. Points that would "
     "need a load below 0 fall on the empty freeboard.")
_UNDER = ("not", "a quarter", "half", "three quarters", "all")
curve_load = Series("q", [
    row(f"Live load, floats {_UNDER[k]} under", f"q_{k}", "psf",
        greatest((box_water * when(ROUND, 4 * _area(1 + STEPS // 4 * k), k) / 4 - weight.service)
                 / parts.deck_area, 0), ARCHIMEDES, digits=1) for k in range(5)])
curve_free = Series("F_q", [
    row(f"Deck above water, floats {_UNDER[k]} under", f"F_{k}", "in",
        least(free_service, parts.deck_top.in_("in") - parts.float_depth * k / 4), STATICS,
        digits=1) for k in range(5)])

block("Where the floats are")
note("Mean squares about the centre of flotation, over all floats. Rows evenly spaced from −Y to Y "
     "have the mean square Y²(R + 1)/(3(R − 1)).")
_here = Series("e", parts.extra_here)
_x, _y = Series("x", sec.extra_x), Series("y", sec.extra_y)
flotation_x = row("Centre of flotation, along", "x_F", "ft", sum_over(_here * _x) / parts.floats,
                  STATICS)
flotation_y = row("Centre of flotation, across", "y_F", "ft", sum_over(_here * _y) / parts.floats,
                  STATICS)
grid_yy = row("Mean square of the rows, across", "m_yy", "ft²",
              parts.row_y ** 2 * (sec.float_rows + 1) / (3 * greatest(sec.float_rows - 1, 1))
              * (sec.float_rows > 1), STATICS)
grid_xx = row("Mean square of the floats in a row, along", "m_xx", "ft²",
              parts.end_x ** 2 * (sec.floats_a_row + 1)
              / (3 * greatest(sec.floats_a_row - 1, 1)) * (sec.floats_a_row > 1), STATICS)
spread_yy = row("Mean square of all floats, across", "s_yy", "ft²",
                (parts.grid_floats * grid_yy + sum_over(_here * _y * _y)) / parts.floats
                - flotation_y ** 2, STATICS)
spread_xx = row("Mean square of all floats, along", "s_xx", "ft²",
                (parts.grid_floats * grid_xx + sum_over(_here * _x * _x)) / parts.floats
                - flotation_x ** 2, STATICS)
spread_xy = row("Mean product of all floats", "s_xy", "ft²",
                sum_over(_here * _x * _y) / parts.floats - flotation_x * flotation_y, STATICS)

block("Waterplane and stability, in service")
note("I is the least inertia of the waterplane about any axis through the centre of flotation, so "
     "that one test covers list, trim and both together.")
displaced = row("Volume displaced", "∇", "ft³",
                greatest(weight.service, own.least_weight) / job.water_weight, ARCHIMEDES)
place_round = row("Place past the line of the part-full circle; 0 for a box", "t", "",
                  when(ROUND, STEPS * draft_service / parts.float_depth - line_service + 1, 0),
                  STATICS)
waterline_round = row("Waterline breadth of a round float; 0 for a box", "w", "ft",
                      parts.float_depth.in_("ft")
                      * when(ROUND, SEGMENTS.at(line_service)["w/d"] + place_round
                             * (SEGMENTS.at(line_service + 1)["w/d"]
                                - SEGMENTS.at(line_service)["w/d"]), 0), STATICS)
waterline_l = row("Waterline of a float, along", "l_w", "ft",
                  when(ROUND * sec.float_turned.is_("across"), waterline_round, parts.float_l),
                  STATICS)
waterline_b = row("Waterline of a float, across", "b_w", "ft",
                  when(ROUND * sec.float_turned.is_("along"), waterline_round, parts.float_b),
                  STATICS)
waterplane = row("Waterplane of all floats", "A_w", "ft²",
                 parts.floats * fullness * waterline_l * waterline_b, STATICS, digits=1)
sinkage = row("Load that sinks it an inch", "PPI", "lb/in",
              (job.water_weight * waterplane).in_("lb/in"), ARCHIMEDES, digits=0)
inertia_across = row("Inertia of the waterplane against list", "I_T", "ft⁴",
                     waterplane * (waterline_b ** 2 / 12 + spread_yy), STATICS, digits=1)
inertia_along = row("Inertia of the waterplane against trim", "I_L", "ft⁴",
                    waterplane * (waterline_l ** 2 / 12 + spread_xx), STATICS, digits=1)
inertia = row("Inertia of the waterplane, least", "I", "ft⁴",
              (inertia_across + inertia_along) / 2
              - root(((inertia_across - inertia_along) / 2) ** 2 + (waterplane * spread_xy) ** 2),
              STATICS, digits=1)
KB = row("Centre of buoyancy above K", "KB", "ft",
         when(ROUND, parts.float_depth.in_("ft")
              * (SEGMENTS.at(line_service)["z_B/d"] + place_round
                 * (SEGMENTS.at(line_service + 1)["z_B/d"]
                    - SEGMENTS.at(line_service)["z_B/d"])), (draft_service / 2).in_("ft")),
         STATICS)
BM = row("Metacentre above the centre of buoyancy, least", "BM", "ft", inertia / displaced,
         ARCHIMEDES)
KM = row("Metacentre above K", "KM", "ft", KB + BM, STATICS)
GM = row("Metacentric height", "GM", "ft", KM - weight.service_kg, STATICS)
alone = row("Stands alone: 1 judged here, 0 held in roll and judged on Stability", "k_1", "",
            when(afloat.held_by.is_("none"), 1, 0), STATICS, digits=0)
stable_check = check("Stable empty: metacentre above the centre of gravity", KM,
                     at_least=greatest(weight.service_kg * alone, own.least_length),
                     source=ARCHIMEDES,
                     cure="Unstable: wider, or floats further out.", group="Stability",
                     amount=("feet missing", "ft", greatest(-GM, 0)))

block("Stability under an even full load of standing people")
note("The crowd is the capacity load, or the flotation load where that is more: with people "
     "standing higher than the draft, fewer of them are never worse for box floats.")
crowd_kg = row("Centre of gravity with the crowd, above K", "KG_c", "ft",
               (weight.service * weight.service_kg
                + live_capacity * (parts.deck_top + job.person_height))
               / greatest(weight_capacity, own.least_weight), "IS Code 2008 3.5.2.7; statics")
_crowd: dict = {}
_people = {weight.service: weight_capacity, weight.service_kg: crowd_kg,
           draft_service: draft_capacity, line_service: line_capacity}
GM_crowd = again(sheet, GM, _people, "crowd", _crowd)
KB_crowd, BM_crowd, KM_crowd = (_crowd[_row] for _row in (KB, BM, KM))
crowd_stable = check("Stable under standing people: metacentre above the centre of gravity",
                     KM_crowd, at_least=greatest(crowd_kg * alone, own.least_length),
                     source=ARCHIMEDES,
                     cure="Unstable: it turns over. Wider, or floats further out; or allow fewer "
                     "people.", group="Stability",
                     amount=("feet missing", "ft", greatest(-GM_crowd, 0)))
GM_crowd_check = check("Metacentric height under standing people", GM_crowd,
                       at_least=job.gm_least, source=OURS, worst="LOOK", group="Stability",
                       cure="It will feel unsteady: wider, or floats further out.")
crowd_share = row("Usable volume under water with the crowd, share", "i_p", "",
                  greatest(weight_capacity / capacity, 0), ARCHIMEDES)
crowd_words = row("Stability formula with the crowd", "", "text",
                  when(crowd_share > 1, "OUT OF RANGE: floats under", "holds"), ARCHIMEDES)
crowd_holds = check("Floats not under with the crowd, so that the stability formula holds",
                    crowd_share, at_most=1, source=ARCHIMEDES,
                    cure="The crowd puts the floats under: its stability cannot be vouched for. "
                    "More floats.", group="Stability")
round_off = row("Round floats: draft off mid-diameter, share of the diameter", "t_o", "",
                when(ROUND, absolute(2 * draft_capacity / parts.float_depth - 1) / 2, 0), STATICS)
round_check = check("Round floats neither nearly dry nor nearly under with the crowd", round_off,
                    at_most=own.round_band, source=OURS, worst="LOOK", group="Stability",
                    cure="The small-angle rule is rough here: choose another float size.")
