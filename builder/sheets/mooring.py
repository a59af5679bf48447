"""Mooring: chains and dead weights, guide piles, or shore arms, by choice.

Only the rows of the kind chosen on Inputs carry a demand; those of the other kinds read 0.  A
section with legs, piles or arms takes its own force and that of the neighbours it holds.  What
chains and hoops pull down in the wind, beyond the weight typed on Sections, is judged here: the
sheet stands right of Stability and cannot feed it.
"""

from __future__ import annotations

from builder.language import (
    Sheet,
    absolute,
    again,
    all_of,
    any_of,
    arc_cosine,
    arc_tangent,
    bare,
    cosine,
    greatest,
    least,
    logarithm,
    radians,
    root,
    sine,
    total,
    when,
    whole_down,
)

from . import buoyancy, gangway, parts, stability, weight
from . import hardware_corners as corners
from . import inputs as job
from . import inputs_afloat as limits
from . import inputs_site as site
from . import sections as sec
from . import sections_afloat as hinges
from . import sections_site as held
from . import site_loads as loads
from . import stability_checks as judged
from . import stability_group as group
from .reference import nds, own, practice

sheet = Sheet("Mooring", "Chains, piles or arms that hold the dock",
              about="What holds each section: chain and weight, guide pile, or shore arm.")
row, check, block, note, caution = (sheet.row, sheet.check, sheet.block, sheet.note,
                                    sheet.caution)

STATICS, OURS, POST = "statics", "own judgement", "IBC 2015 1807.3.2.1"
HELD = "IBC 2015 1807.3.2.2"
ours, ufc, ibc, FOOT = site.ours, site.ufc_moorings, loads.constants("ibc_1807"), loads.FOOT
CHAINED, PILED, ARMED = (site.mooring.is_(key) for key in site.MOORINGS.keys)
SLAB, FLOOR = site.slab.is_("yes"), own.least_length

block("What this sheet can judge")
engineer = row("Site within these rules", "", "text",
               when(any_of(site.current > ours.current_fast, loads.rough > site.wave_most),
                    "ENGINEER REQUIRED: waves or current", "yes, as far as they go"), OURS)
note("Engineer required in any case: soft or layered bed, scour, ice left in place, surge, roofs, "
     "piles in unknown soil, chains on a dock with waves over the limit.")
ice = row("Winter", "", "text",
          when(job.stays_in.is_("yes"), "ENGINEER REQUIRED where ice forms", "taken out"), OURS)
held_check = check("Two or more legs, piles or arms hold this section", held.holds, at_least=2,
                   look_at=2, worst="LOOK", source=OURS, group="Mooring",
                   cure="Type its legs, piles or arms; or let a neighbour count it among the "
                   "sections it holds.")
here = row("Held here: 1 yes, 0 by neighbours", "k_h", "", when(held.holds > 0, 1, 0), STATICS,
           digits=0)
carried_y = row("Force to hold, across", "Q_y", "lb", here * held.carried * loads.force_across,
                STATICS, digits=0)
carried_x = row("Force to hold, along", "Q_x", "lb", here * held.carried * loads.force_along,
                STATICS, digits=0)
turn_y = row("Turn to hold, force across", "Z_y", "lb·ft",
             here * held.carried * loads.yaw_across, STATICS, digits=0)
turn_x = row("Turn to hold, force along", "Z_x", "lb·ft",
             here * held.carried * loads.yaw_along, STATICS, digits=0)
points = row("Legs, piles or arms, not below 1", "n_k", "each", greatest(held.holds, 1), STATICS,
             digits=0)
sin_a = row("Sine of the plan angle", "sin α", "",
            greatest(sine(radians(site.leg_angle)), own.least_share), STATICS, digits=3)
cos_a = row("Cosine of the plan angle", "cos α", "",
            greatest(cosine(radians(site.leg_angle)), own.least_share), STATICS, digits=3)

block("The whole dock")
note("Sections times number built, all types. A section is taken to hold its neighbours as if each "
     "had its own force: where a neighbour has the boats, count it as more than one.")
all_y = row("Force across, whole dock", "ΣF_y", "lb",
            total(loads.force_across, sec.quantity), STATICS, digits=0)
all_x = row("Force along, whole dock", "ΣF_x", "lb", total(loads.force_along, sec.quantity),
            STATICS, digits=0)
held_y = row("Force held across, whole dock", "ΣQ_y", "lb", total(carried_y, sec.quantity),
             STATICS, digits=0)
held_x = row("Force held along, whole dock", "ΣQ_x", "lb", total(carried_x, sec.quantity),
             STATICS, digits=0)
unheld = row("Force on the dock over force held", "k_u", "",
             greatest(all_y / greatest(held_y, own.least_weight),
                      all_x / greatest(held_x, own.least_weight), 0), STATICS)
unheld_check = check("Every section's force is held somewhere", unheld, at_most=1, look_at=1,
                     source=STATICS, group="Mooring",
                     cure="More sections with legs, piles or arms, or a higher count of the "
                     "sections they hold.")

block("Chains: pull on a leg")
note("Legs lead from the corners, all at the plan angle, outward or crossed under the dock. Only "
     "those that pull against the force count: half of them. Legs in line with the middle hold "
     "nothing from turning.")
against = row("Legs that pull against the force", "n_w", "each",
              greatest(whole_down(points / 2), 1), STATICS, digits=0)
lead = row("Legs cross: 1 yes, −1 no", "k_x", "", when(site.crossed.is_("yes"), 1, -1), STATICS,
           digits=0)
lever = row("Lever of a leg about the middle", "r_l", "ft",
            greatest(absolute(sec.length * sin_a + lead * sec.width * cos_a) / 2, FLOOR), STATICS)
pull_y = row("Level pull of a leg, force across", "H_y", "lb",
             (carried_y / sin_a + turn_y / lever) / against, STATICS, digits=0)
pull_x = row("Level pull of a leg, force along", "H_x", "lb",
             (carried_x / cos_a + turn_x / lever) / against, STATICS, digits=0)
leg_H = row("Level pull of the worst leg", "H", "lb", CHAINED * greatest(pull_y, pull_x), STATICS,
            digits=0, chief=True)

block("Chains: catenary without uplift at the anchor, highest water")
chain_line = sheet.find("Chain, line of its size", site.CHAINS, site.chain)
w = row("Chain under water", "w", "lb/ft",
        chain_line["weight in air"] * (1 - job.water_weight / practice.steel), "Archimedes; NACM "
        "chain", digits=3)
height = row("Fairlead to bed, highest water", "h", "ft",
             greatest(job.low_water_depth + site.flood + buoyancy.under_service.in_("ft"), FLOOR),
             STATICS, digits=1)
leg_pull = row("Level pull, not below a small one", "H_k", "lb", greatest(leg_H, own.least_weight),
               STATICS, digits=0)
s = row("Chain lifted off the bed", "s", "ft", height * root(1 + 2 * leg_pull / (w * height)),
        "catenary", digits=1)
T_max = row("Largest pull in the chain", "T_max", "lb", leg_pull + w * height, "catenary",
            digits=0)
T_v = row("Its upright part, at the fairlead", "T_v", "lb", w * s, "catenary", digits=0)
steepness = row("Upright over level pull at the fairlead", "u", "", w * s / leg_pull, "catenary",
                digits=3)
x_s = row("Level reach of the lifted chain", "x_s", "ft",
          leg_pull / w * logarithm(steepness + root(1 + steepness ** 2)), "catenary", digits=1)
reach = row("Anchor from the fairlead, chain pulled out", "a", "ft",
            x_s + greatest(site.chain_length - s, 0), "catenary", digits=1)
scope = row("Chain over depth", "k_s", "", site.chain_length / height, STATICS, digits=1)
chain_needed = row("Chain needed", "L_n", "ft", CHAINED * here * s, "catenary", digits=1)
chain_check = check("Chain long enough that the anchor is not lifted", chain_needed,
                    at_most=greatest(site.chain_length, FLOOR), source="catenary",
                    group="Mooring", cure="A longer chain: the anchor must not be lifted.",
                    amount=("feet longer", "ft", greatest(chain_needed - site.chain_length, 0)))
chain_pull = row("Pull in the chain", "T_c", "lb", CHAINED * here * T_max, "catenary", digits=0)
chain_working = row("Chain may pull", "T_w", "lb",
                    chain_line["breaking force"] / site.chain_factor,
                    "UFC 4-159-03 Table 3-7; 49 CFR 393.108", digits=0)
chain_strength_check = check("Chain strength", chain_pull, at_most=chain_working,
                             source="UFC 4-159-03 Table 3-7; 49 CFR 393.108", group="Mooring",
                             cure="A larger chain, or more legs.")
fitting = row("Shackle and fitting to break at not less than", "T_f", "lb",
              ours.fitting_factor * chain_pull, OURS, digits=0)

block("Chains: drift at low water")
height_low = row("Fairlead to bed, low water", "h_L", "ft",
                 greatest(job.low_water_depth + buoyancy.under_service.in_("ft"), FLOOR), STATICS,
                 digits=1)
reach_low = again(sheet, reach, {height: height_low}, "low water")
height_set = row("Fairlead to bed, high water", "h_H", "ft",
                 greatest(loads.dock_depth + buoyancy.under_service.in_("ft"), FLOOR), STATICS,
                 digits=1)
_set: dict = {}
reach_set = again(sheet, reach, {leg_pull: site.set_pull, height: height_set}, "as set", _set)
drift = row("Drift at low water under the design pull", "Δa", "ft",
            CHAINED * here * greatest(reach_low - reach_set, 0), STATICS, digits=1)
drift_check = check("Drift at low water", drift, at_most=ours.drift_ok, look_at=ours.drift_ok,
                    source=OURS, worst="LOOK", group="Mooring",
                    cure="Heavier chain, or weights on it; adjust chains with the level; keep "
                    "that much room round the dock.")
hanging = row("Chain hanging on the section at high water, as set", "W_h", "lb",
              CHAINED * here * points * w * _set[s], STATICS, digits=0)
hanging_off = row("Typed on Sections against found", "ΔW", "lb",
                  absolute(sec.chain_weight - hanging), STATICS, digits=0)
hanging_check = check("Hanging chain as typed on Sections", hanging_off,
                      at_most=greatest(ours.gangway_match * hanging, ours.gangway_match_least),
                      look_at=greatest(ours.gangway_match * hanging, ours.gangway_match_least),
                      source=OURS, worst="LOOK", group="Mooring",
                      cure="Type the weight found on Sections: it is part of the dock's weight.")
note("The weight typed on Sections is what Weight and Stability carry of these chains, in every "
     "case; it must not be under the weight found. What they pull down beyond it in the wind is "
     "judged below, under the wind case.")
windward = row("Upright pull of the windward legs under the design pull", "W_w", "lb",
               CHAINED * here * against * T_v, STATICS, digits=0)

block("Dead weight")
note("Friction on the bed only: no suction, no burial; the lower figure of the bed. Reduce it on "
     "a slope. The friction table is for concrete on land.")
friction = row("Friction of the bed, lower figure", "μ", "",
               site.BEDS.find(site.bed)["low"], "ETL 1110-3-446 Table C-1")
weight_sunk = row("Dead weight under water", "W′", "lb",
                  site.block_weight * (1 - job.water_weight / practice.concrete), "Archimedes",
                  digits=0)
sliding = row("What the dead weight holds", "N_b", "lb", friction * weight_sunk, STATICS, digits=0)
swim = row("Private platform on a short fetch: 1 yes, 0 no", "k_f", "",
           when(all_of(site.sheltered, sec.purpose.is_("platform")), 1, 0), OURS, digits=0)
factor_ok = row("Factor on sliding, good", "f_g", "",
                when(swim, least(ours.swim_factor_ok, site.sliding_factor),
                     site.sliding_factor), OURS)
factor_least = row("Factor on sliding, least", "f_l", "",
                   when(swim, least(ours.swim_factor_least, site.sliding_factor),
                        site.sliding_factor), OURS)
slide_asked = row("Hold asked of the dead weight, least", "H_f", "lb",
                  here * leg_H * factor_least, OURS, digits=0)
block_needed = row("Dead weight needed, dry", "W_n", "lb",
                   here * leg_H * factor_ok
                   / (friction * (1 - job.water_weight / practice.concrete)), STATICS, digits=0)
slide_check = check("Dead weight against sliding", slide_asked,
                    at_most=greatest(sliding, own.least_weight),
                    look_at=greatest(sliding, own.least_weight) * factor_least / factor_ok,
                    source="own judgement; UFC 4-159-03 Table 3-7 gives none", group="Mooring",
                    cure="A heavier block, or more legs. LOOK: it may drag in a storm.",
                    amount=("pounds more, dry", "lb",
                            greatest(block_needed - site.block_weight, 0)))
caution("Chains drift and need adjusting as the level changes. Do not tie to trees. Setting "
        "blocks is work for a barge: cold water, moving weights, life jackets.")

block("Guide piles: force and bending")
note("A screening of a solid round timber pile in even ground that bears. Soft mud bears nothing: "
     "engineer required. Ice can lift piles: engineer required where it stays.")
pile_y = row("Push on a pile or arm line, force across", "P_y", "lb",
             (carried_y + 2 * turn_y / sec.length) / points, STATICS, digits=0)
pile_x = row("Push on a pile or arm line, force along", "P_x", "lb",
             (carried_x + 2 * turn_x / sec.width) / points, STATICS, digits=0)
pile_P = row("Push on the worst pile", "P_p", "lb", PILED * greatest(pile_y, pile_x), STATICS,
             digits=0, chief=True)
pile_h = row("Hoop above the bed, highest water, bed washed out", "h_p", "ft",
             job.low_water_depth + site.flood + site.scour
             + greatest(buoyancy.under_service + parts.frame_depth / 2, 0).in_("ft"), STATICS,
             digits=1)
pile_b = row("Pile, diameter", "b_p", "ft", site.pile_diameter.in_("ft"), STATICS)
soil_m = row("Isolated poles: factor on the bearing", "m", "",
             when(site.isolated.is_("yes"), ibc.isolated, 1), "IBC 2015 1806.3.4", digits=0)
bed_rate = row("Push of the bed on the pile, a foot deeper", "p_b", "psf",
               soil_m * site.soil_bearing * pile_b, POST, digits=0)
turn_depth = row("Depth where the shear turns; 0 under a slab", "z_0", "ft",
                 when(SLAB, 0, root(2 * pile_P / bed_rate)), STATICS, digits=2)
pile_M = row("Bending moment in the pile", "M_p", "lb·ft",
             pile_P * (pile_h + 2 * turn_depth / 3), STATICS, digits=0)
pile_f = row("Bending stress in the pile", "f_b", "psi",
             8 * pile_M.in_("lb·in") / (arc_tangent(1) * site.pile_diameter ** 3), STATICS,
             digits=0)
pile_check = check("Guide pile in bending", pile_f, at_most=site.pile_Fb * nds.CD_wind,
                   source="NDS 2018 Table 6A, Table 2.3.2", group="Mooring",
                   cure="Thicker piles, or more of them.")

block("Guide piles: depth in the bed")
note("The code's two equations with the pressure at a third of the depth make a cubic, "
     "d³ = k(d + 1.09 h), solved here in closed form; the code's own equation is worked at that "
     "depth beside it. Where the piles stand through a stiff slab at the bed the code's shorter "
     "depth counts.")
post_k = row("k of the cubic", "k", "ft²", 3 * ibc.post_A * pile_P / bed_rate, POST, digits=2)
cubic_p = row("A third of k", "p_3", "ft²", post_k / 3, POST)
cubic_q = row("Half the last term of the cubic", "q_3", "ft³", ibc.post_h / 8 * post_k * pile_h,
              POST)
cubic_u = row("Root of the discriminant; 0 where it is negative", "u_3", "ft³",
              root(greatest(cubic_q ** 2 - cubic_p ** 3, 0)), POST)
cubic_c = row("Cube root", "c_3", "ft",
              bare(cubic_q + cubic_u, "ft³") ** site.THIRD * FOOT, POST)
cubic_angle = row("Angle of the cubic's three-root case", "φ_3", "",
                  arc_cosine(least(bare(cubic_q, "ft³")
                                   / greatest(bare(root(cubic_p) * cubic_p, "ft³"),
                                              own.least_share), 1)) / 3, POST)
embed = row("Depth in the bed needed", "d", "ft",
            when(cubic_u > 0, cubic_c + cubic_p / greatest(cubic_c, FLOOR),
                 2 * root(cubic_p) * greatest(cosine(cubic_angle), 0)), POST, digits=2)
S_1 = row("Bearing at a third of the depth", "S_1", "psf",
          soil_m * site.soil_bearing * embed / 3, POST, digits=0)
post_A = row("A of the code", "A", "ft", ibc.post_A * pile_P
             / greatest(S_1 * pile_b, ours.least_line), POST)
embed_code = row("Depth by the code's equation", "d_c", "ft",
                 post_A / 2 + root(post_A ** 2 + ibc.post_h * pile_h * post_A) / 2, POST)
held_cube = row("Cube of the depth with a slab at the bed", "d_s³", "ft³",
                loads.constants("ibc_held_posts").post_held * pile_P * pile_h / bed_rate, HELD)
held_short = row("Depth with a slab, bearing growing all the way", "d_s", "ft",
                 bare(held_cube, "ft³") ** site.THIRD * FOOT, HELD)
embed_held = row("Depth in the bed needed with a slab", "d_h", "ft",
                 when(held_short > ibc.post_deepest, root(held_cube / ibc.post_deepest),
                      held_short), HELD)
S_3 = row("Bearing at the depth, with a slab", "S_3", "psf",
          soil_m * site.soil_bearing * least(embed_held, ibc.post_deepest), HELD, digits=0)
embed_asked = row("Depth in the bed needed, as the pile stands", "d_n", "ft",
                  when(SLAB, embed_held, embed), OURS)
embed_check = check("Guide pile, depth in the bed", embed_asked,
                    at_most=greatest(site.pile_embedded, FLOOR), source=POST, group="Mooring",
                    cure="Deeper or thicker piles, or more of them; this is a screening.",
                    amount=("feet deeper", "ft", greatest(embed_asked - site.pile_embedded, 0)))
deep_check = check("Guide pile, depth within the rule", embed_asked, at_most=ibc.post_deepest,
                   look_at=ibc.post_deepest, worst="LOOK", source=POST, group="Mooring",
                   cure="Engineer required: past 12 ft the bearing may not grow with depth.")
top_needed = row("Pile top above low water, needed", "z_n", "ft",
                 PILED * here * (site.flood
                                 + greatest(buoyancy.free_launch, own.least_inches).in_("ft")
                                 + ours.pile_top_clear), OURS, digits=1)
top_check = check("Guide pile, top above the highest water", top_needed,
                  at_most=greatest(site.pile_top, FLOOR),
                  look_at=greatest(site.pile_top, FLOOR), source=OURS, group="Mooring",
                  cure="Longer piles, or the dock floats off them in a flood.",
                  amount=("feet higher", "ft", greatest(top_needed - site.pile_top, 0)))

block("Guide piles: hoops")
note("Hoops or rollers with play, free at 6°; no chain or flat bar round a pile: it hangs up. "
     "Two piles or more, or the section turns about one.")
hoop_arm = row("Push from the frame's face", "e_h", "in",
               site.pile_diameter / 2 + site.hoop_play + ours.hoop_bracket, OURS)
hoop_squares = row("Bolt squares", "Σr²", "in²",
                   ours.hoop_bolts * (ours.hoop_bolt_along ** 2 + ours.hoop_bolt_up ** 2),
                   STATICS, digits=1)
hoop_turn = row("Turn on the bolts", "M_h", "lb·in", pile_P * hoop_arm, STATICS, digits=0)
hoop_bolt = row("Worst hoop bolt", "B_h", "lb",
                root((pile_P / ours.hoop_bolts + hoop_turn * ours.hoop_bolt_up / hoop_squares) ** 2
                     + (hoop_turn * ours.hoop_bolt_along / hoop_squares) ** 2), STATICS, digits=0)
hoop_check = check("Hoop bolts in shear, steel alone", hoop_bolt, at_most=gangway.bolt_shear,
                   source="AISC 360-10 J3.6", group="Mooring",
                   cure="Thicker bolts, a larger bracket, or more piles. Then judge the wood.")
rub = row("Rub of the hoop on the pile, up or down", "V_h", "lb", ours.rub_share * pile_P, OURS,
          digits=0)

block("Wind case: what chains and hoops pull down")
note("The windward legs pull down more than the weight typed on Sections; a hoop rubs down on one "
     "side. Taken at a corner, added to the section in service, to the first order.")
pulled_down = row("Pull down at one side, beyond the weight typed", "V_w", "lb",
                  greatest(windward - sec.chain_weight * against / points, 0) + against * rub,
                  STATICS, digits=0)
corner_soft = row("Corner's lever squared over the metacentric height", "c_w", "ft",
                  greatest(group.half_width ** 2
                           / greatest(stability.GM_a["service"], own.least_length),
                           group.half_length ** 2
                           / greatest(stability.GM_b["service"], own.least_length)), STATICS)
wind_dip = row("Corner further down in the wind", "Δc_w", "in",
               pulled_down / greatest(buoyancy.sinkage, own.one_pound_an_inch)
               + (pulled_down / greatest(weight.service, own.least_weight) * corner_soft)
               .in_("in"), STATICS, digits=2)
wind_corner = row("Lowest corner in the wind", "F_w", "in", stability.low["service"] - wind_dip,
                  STATICS, digits=1)
wind_check = check("Lowest corner with chains or hoops pulling down", wind_corner,
                   at_least=limits.corner_least,
                   look_at=greatest(judged.good_corner, limits.corner_least), source=OURS,
                   group="Mooring",
                   cure="Longer or more legs, so that each pulls less and flatter; deeper floats; "
                   "or the whole weight of hanging chain on Sections.")

block("Shore arms, or lines in their place")
note("A stiff arm pushes and pulls; a wire or line pulls only, so that half of them hold. Nylon "
     "is weaker wet. Lines stretch, chafe and slip: look at them often.")
lined = row("Wire or line: 1, stiff arm: 0", "k_w", "",
            when(site.arm_kind.is_(site.ARMS.keys[0]), 0, 1), STATICS, digits=0)
arm = row("Push or pull in an arm, pull in a line", "N_a", "lb",
          ARMED * greatest(pile_y / sin_a, pile_x / cos_a)
          * (1 + lined * (points / against - 1)), STATICS, digits=0)
arm_bolt = row("Push or pull on an arm's bolt", "B_a", "lb", arm / ours.arm_bolts, STATICS,
               digits=0)
arm_check = check("Arm bolts in shear, steel alone", arm_bolt, at_most=gangway.bolt_shear,
                  source="AISC 360-10 J3.6", group="Mooring",
                  cure="Thicker or more bolts, or more arms. The shore anchor is for an engineer.")
line_needed = row("Wire or line to break at not less than", "N_w", "lb",
                  lined * site.line_factor * arm, "UFC 4-159-03 Table 3-7", digits=0)
line_check = check("Wire or line strength", line_needed,
                   at_most=greatest(site.line_break, own.least_weight),
                   source="UFC 4-159-03 Table 3-7", group="Mooring",
                   cure="A stronger wire or line, or more of them.")
arm_range = row("Range of water with arms", "h_a", "ft", ARMED * here * site.flood, OURS, digits=1)
range_check = check("Range of water that arms follow", arm_range, at_most=ours.levels_fixed,
                    worst="LOOK", source=OURS, group="Mooring",
                    cure="Engineer required: arms swing far; guide piles or chains suit better.")

block("Joints between sections")
note("The sections between two that are held act as a beam lying flat, under their force evenly "
     "and under its turn at the middle. These are the forces a hinge must take, with the upright "
     "force of Hardware. In waves a hinge takes more: engineer required above the limit.")
plan_M = row("Plan bending between held sections", "M_n", "lb·ft",
             carried_y * held.carried * sec.length / 8 + greatest(turn_y, turn_x) / 2, STATICS,
             digits=0)
hinge_pull = row("Pull on a hinge", "N_h", "lb",
                 carried_x / 2 + plan_M / hinges.hinge_apart, STATICS,
                 digits=0)
hinge_shear = row("Sideways shear on a hinge", "S_h", "lb",
                  carried_y / 4 + greatest(turn_y, turn_x) / (2 * held.carried * sec.length),
                  STATICS, digits=0)
chord = row("Push or pull along a rail", "C_r", "lb",
            plan_M / greatest(sec.width - parts.rail_t.in_("ft"), FLOOR), STATICS, digits=0)
hinge_all = row("Force on one hinge and its pin, all ways", "T_h", "lb",
                corners.joined * root(hinge_pull ** 2 + hinge_shear ** 2 + corners.one_up ** 2),
                STATICS, digits=0)
hinge_check = check("Hinge and pin", hinge_all, at_most=site.hinge_limit,
                    source="AISC 360-10 J3.6; hinge maker", group="Mooring",
                    cure="Thicker pins, sheared in two places, or fewer sections between those "
                    "that are held. The hinge's plates and welds are its maker's.")
