"""AsBuilt: what the readings on the water say: weight, list and trim as found, how to level it.

Four corner freeboards give a plane: mean, list, trim, and what is left over, the twist.  With the
draft at the centre of flotation F comes the weight afloat.  On the leaning axes a and b of
Stability the moment of the weight about F is

    m_a = (S_a + J) v_a        m_b = (S_b + J) v_b        J = (γA k_a v_a² + γA k_b v_b²)/2

S = γA k + W (KB − KG) is the righting moment a unit of slope, k the mean square of the waterplane,
v the tangent of the lean, J the wall-sided rule's stiffening: exact for box floats.  KG is the
predicted one; four freeboards do not tell it, the weight test does.
"""

from __future__ import annotations

from builder.language import (
    Row,
    Sheet,
    absolute,
    all_of,
    arc_tangent,
    degrees,
    greatest,
    joined,
    least,
    radians,
    root,
    shown,
    tangent,
    when,
    whole_down,
)

from . import buoyancy, launch, parts, readings, weight
from . import inputs_afloat as limits
from . import stability as st
from .readings import CORNERS, launch_own
from .reference import SEGMENTS, lake, own
from .stability_group import (
    F_X,
    F_Y,
    half_length,
    half_width,
    reach_x,
    reach_y,
    round_b,
    round_l,
    square_a,
    square_b,
    turn,
    turn_length,
)

sheet = Sheet("AsBuilt", "As built: weight, list and trim as found, and how to level it",
              about="What the readings on the water say, against what was predicted.")
row, check, block, note = sheet.row, sheet.check, sheet.block, sheet.note

ARCHIMEDES, STATICS, OURS = "Archimedes", "statics", "own judgement"
GROUP = "As built"
ROUND, STEPS = parts.float_round, buoyancy.STEPS
BUILT = "Lake guidelines, dead load"

note("Readings that are not typed leave their part of this sheet empty. x along, y across, from "
     "the middle; a positive list puts the right side down, a positive trim the far end.")
at_launch = sheet.gate("Four corners at launch: 0 none typed, 1 some, 2 all",
                       readings.launch_corner)
at_test = sheet.gate("Both drops of the weight test", [readings.drop_side, readings.drop_corner])
later = sheet.gate("Four corners at launch and four after a month",
                   [*readings.launch_corner, *readings.month_corner])

f = readings.launch_corner
block("As found at launch", gate=at_launch)
mean = row("Deck above water, mean of the four", "f", "in", sum(f[1:], f[0]) / 4, STATICS)
tan_list = row("List, tangent", "tan φ_f", "ft/ft",
               (f[0] + f[3] - f[1] - f[2]).in_("ft") / (2 * parts.overall_width), STATICS,
               digits=4)
tan_trim = row("Trim, tangent", "tan θ_f", "ft/ft",
               (f[0] + f[1] - f[2] - f[3]).in_("ft") / (2 * parts.overall_length), STATICS,
               digits=4)
list_deg = row("List", "φ_f", "deg", degrees(arc_tangent(tan_list)), STATICS)
trim_deg = row("Trim", "θ_f", "deg", degrees(arc_tangent(tan_trim)), STATICS)
draft = row("Draft at the centre of flotation F", "T_f", "in",
            greatest((parts.deck_top + tan_trim * F_X + tan_list * F_Y).in_("in") - mean, 0),
            STATICS)
full = row("Depth of float under water: the draft, at most the float's depth", "T_u", "in",
           least(draft, parts.float_depth), STATICS)
line = sheet.line("Line of the part-full circle", SEGMENTS,
                  least(whole_down(STEPS * full / parts.float_depth) + 1, STEPS))


def _between(column: str):
    """Return an entry of the part-full circle at the draft found, between two lines."""
    low = SEGMENTS.at(line)[column]
    return low + ((STEPS * full / parts.float_depth - line + 1)
                  * (SEGMENTS.at(line + 1)[column] - low))


share = row("Share of the floats' box under water", "u_f", "",
            when(ROUND, _between("A/d²"), full / parts.float_depth), STATICS, digits=4)
found = row("Weight afloat, found", "W_f", "lb", buoyancy.box_water * share, ARCHIMEDES, digits=0)
excess = row("Found less predicted", "ΔW_f", "lb", found - weight.launch, STATICS, digits=0)
dip = row("Float corners up or down from the mean draft", "d_f", "in",
          (absolute(tan_trim) * reach_x + absolute(tan_list) * reach_y).in_("in"), STATICS)

block("Where the weight is", gate=at_launch)
breadth = row("Breadth at the waterline over the float's own; 1 for a box", "ω_f", "",
              when(ROUND, _between("w/d"), 1), STATICS, digits=4)
KB = row("Centre of buoyancy above K, upright", "KB_f", "ft",
         when(ROUND, parts.float_depth.in_("ft") * _between("z_B/d"), (full / 2).in_("ft")),
         STATICS, digits=3)
water_foot = row("Water a foot of draft takes", "γA_f", "lb/ft",
                 buoyancy.box_water * breadth / parts.float_depth.in_("ft"), ARCHIMEDES, digits=0)
waterplane_a, waterplane_b = (
    row(f"Waterplane against leaning on axis {axis}", f"γI_{axis}", "lb·ft",
        water_foot * greatest(square + own_part * breadth ** 2, 0), STATICS, digits=0)
    for axis, square, own_part in (("a", square_a, round_b), ("b", square_b, round_l)))
righting_a, righting_b = (
    row(f"Righting moment a unit of slope, axis {axis}", f"S_{axis}", "lb·ft",
        plane + found * (KB - weight.launch_kg), ARCHIMEDES, digits=0)
    for axis, plane in (("a", waterplane_a), ("b", waterplane_b)))
lean_a = row("Lean on axis a, tangent", "v_a", "ft/ft", (tan_list + turn * tan_trim) / turn_length,
             STATICS, digits=4)
lean_b = row("Lean on axis b, tangent", "v_b", "ft/ft", (tan_trim - turn * tan_list) / turn_length,
             STATICS, digits=4)
stiffening = row("Stiffening by the tilt itself", "J", "lb·ft",
                 (waterplane_a * lean_a ** 2 + waterplane_b * lean_b ** 2) / 2, STATICS, digits=1)
moment_a = row("Moment about F on axis a", "m_a", "lb·ft", (righting_a + stiffening) * lean_a,
               ARCHIMEDES, digits=1)
moment_b = row("Moment about F on axis b", "m_b", "lb·ft", (righting_b + stiffening) * lean_b,
               ARCHIMEDES, digits=1)
moment_y = row("Moment about F across; the heavy side is right where positive", "M_y", "lb·ft",
               (moment_a - turn * moment_b) / turn_length, STATICS, digits=1)
moment_x = row("Moment about F along; the heavy end is far where positive", "M_x", "lb·ft",
               (moment_b + turn * moment_a) / turn_length, STATICS, digits=1)
centre_y = row("Centre of gravity across, found less predicted", "Δy", "ft",
               F_Y + moment_y / greatest(found, own.least_weight) - weight.launch_y, STATICS)
centre_x = row("Centre of gravity along, found less predicted", "Δx", "ft",
               F_X + moment_x / greatest(found, own.least_weight) - weight.launch_x, STATICS)
holds = row("The formulas", "", "text",
            when(all_of(least(righting_a, righting_b) > 0, draft - dip >= 0,
                        draft + dip <= parts.float_depth), "hold",
                 "OUT OF RANGE: float corner out or under, or unstable"), ARCHIMEDES, digits=0)

block("To level it", gate=at_launch)
note("Weight at the corner that rides high, and the rest at the middle of its side or end, abreast "
     "of the middle of the floats; centres 6 in inside the edge. Or shift the ballast named on "
     "Readings toward that side and end; or shift one float toward the low side or end.")
high = sheet.line("Corner that rides high", CORNERS,
                  least(1 + (moment_y < 0) * (1 - (moment_x < 0))
                        + (moment_x < 0) * (3 - (moment_y < 0)), 4))
_inside = own.point_from_edge.in_("ft")
arm_y = row("Arm of weight at that corner, across, from F", "Y_h", "ft",
            greatest(half_width - _inside - high["right"] * F_Y, own.least_length), STATICS)
arm_x = row("Arm of weight at that corner, along, from F", "X_h", "ft",
            greatest(half_length - _inside - high["far"] * F_X, own.least_length), STATICS)
for_list = row("Pounds against the list alone", "w_φ", "lb", absolute(moment_y) / arm_y, STATICS,
               digits=0)
for_trim = row("Pounds against the trim alone", "w_θ", "lb", absolute(moment_x) / arm_x, STATICS,
               digits=0)
add_corner = row("Pounds at the corner", "w_c", "lb", least(for_list, for_trim), STATICS, digits=0)
add_edge = row("Pounds at the middle of the side or end", "w_e", "lb",
               greatest(for_list, for_trim) - add_corner, STATICS, digits=0)
edge = row("Which side or end", "", "text",
           when(for_list >= for_trim, high["side"], high["end"]), STATICS, digits=0)
advice = row("Add", "", "text",
             joined(shown(add_corner, 0), " lb at the ", high.table.at(high).key, "; ",
                    shown(add_edge, 0), " lb at the middle of the ", edge), STATICS, digits=0)
shift_y = row("Or shift the ballast across, feet", "s_y", "ft",
              absolute(moment_y) / readings.shift_weight, STATICS, digits=1)
shift_x = row("Or shift the ballast along, feet", "s_x", "ft",
              absolute(moment_x) / readings.shift_weight, STATICS, digits=1)
_free = greatest(found - parts.floats * parts.float_line["own weight"], own.least_weight)
float_y = row("Or shift one float to the low side, feet", "n_y", "ft",
              absolute(moment_y) * parts.floats / _free, STATICS, digits=1)
float_x = row("Or shift one float to the low end, feet", "n_x", "ft",
              absolute(moment_x) * parts.floats / _free, STATICS, digits=1)

block("Against predicted", gate=at_launch)
mean_off = row("Mean freeboard, found against predicted", "Δf", "in",
               absolute(mean - launch.mean), STATICS)
mean_check = check("Mean freeboard as built", mean_off, at_most=lake.built_tolerance,
                   source=BUILT, group=GROUP,
                   cure="Weigh the parts: what is heavier or lighter than drawn, or a float that "
                   "holds water. More or fewer floats, or draw it as it is.")
corner_off = row("Corner that is farthest off", "Δf_c", "in",
                 greatest(*(absolute(r - p) for r, p in zip(f, launch.corner, strict=True))),
                 STATICS)
corner_check = check("Every corner as built", corner_off, at_most=lake.built_tolerance,
                     source=BUILT, group=GROUP,
                     cure="Level it as worked out above: weight at the corner named, or shift "
                     "ballast or a float.")
tilt = row("Tilt as found", "τ_f", "deg",
           degrees(arc_tangent(root(tan_list ** 2 + tan_trim ** 2))), STATICS)
level_check = check("Level as found", tilt, at_most=st.rest_most,
                    look_at=limits.tilt_rest_ok, source="Lake guidelines; ADA 2010 405.3",
                    group=GROUP, cure="Level it as worked out above: weight at the corner named, "
                    "or shift ballast or a float.")
twist = row("Twist: half of (corners 1 and 3 less corners 2 and 4)", "q", "in",
            absolute(f[0] + f[2] - f[1] - f[3]) / 2, STATICS)
twist_check = check("Frame twist", twist, at_most=launch_own.twist_most, source=OURS, worst="LOOK",
                    group=GROUP, cure="Twisted or misread: measure again in calm water, nobody "
                    "aboard. If it stays, look for a float out of place, and square the frame.")

block("Weight test", gate=at_test)


def _drop_check(name: str, symbol: str, read: Row, predicted: Row, cure: str):
    """Declare the check of a drop read against the one predicted."""
    off = row(f"Drop at the {name}, read against predicted", symbol, "in",
              absolute(read - predicted), STATICS)
    return check(f"Weight test at the {name}", off,
                 at_most=greatest(launch_own.test_share * predicted, launch_own.test_least),
                 source=OURS, worst="LOOK", group=GROUP, cure=cure)


side_check = _drop_check("side", "Δd_s", readings.drop_side, launch.drop_side,
                         "Read it again; more drop than predicted: look for a float that holds "
                         "water or stands farther in than drawn.")
corner_drop_check = _drop_check("corner", "Δd_c", readings.drop_corner, launch.drop_corner,
                                "More drop than predicted: the frame twists. Square it: a diagonal "
                                "or corner plates; post fewer people at a corner.")
test_list = row("List that the test weight makes", "φ_t", "deg",
                least(degrees(arc_tangent(
                    greatest(readings.drop_side - launch.test_draft + st.afloat["launch"].draft,
                             0).in_("ft") / greatest(absolute(launch.read_y),
                                                     own.least_length))),
                    launch_own.list_read_most), STATICS)
test_GM = row("Metacentric height by the weight test", "GM_w", "ft",
              readings.test_weight * absolute(launch.test_y - F_Y)
              / (greatest(launch.test_total, own.least_weight)
                 * greatest(tangent(radians(test_list)), own.least_share)), STATICS)
note("The second line is the inclining test, its arm from F; predicted is the metacentric height "
     "with the test weight on Launch. Less than predicted: it is heavier up high, or narrower, "
     "than drawn.")

block("Water taken up in a month", gate=later)
note("By the change of the mean reading; nothing else may have come aboard or gone.")
_m = readings.month_corner
sunk = row("Mean of the four corners lower by", "Δm", "in",
           (f[0] + f[1] + f[2] + f[3] - _m[0] - _m[1] - _m[2] - _m[3]) / 4, STATICS)
taken = row("Water taken up", "ΔW_m", "lb", sunk * launch.inch, ARCHIMEDES, digits=0)
timber = row("Wet timber and growth take up, predicted", "ΔW_p", "lb",
             weight.lifted - weight.launch, OURS, digits=0)
verdict = row("What it says", "", "text",
              when(taken > timber + launch_own.soak_allowed * launch.inch,
                   "LOOK: more than wet timber; look for a float that holds water",
                   "as wet timber, or less"), OURS, digits=0)
