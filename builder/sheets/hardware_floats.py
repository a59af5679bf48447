"""Hardware, third part: the lags that hold the floats, by direction, and the deck screws."""

from __future__ import annotations

from builder.language import bare, greatest, least, when, whole_down

from . import buoyancy, parts, weight
from . import hardware_dowels as dowels
from . import inputs as job
from . import sections as sec
from . import site_loads as loads
from .hardware_bolts import (
    ACROSS,
    FLOOR,
    NDS_FACTORS,
    OURS,
    STATICS,
    Ct,
    Fe_along,
    G,
    block,
    caution,
    check,
    find,
    note,
    row,
    sheet,
)
from .reference import LAG_THREADS, LAGS, SCREWS, nds, own, placement

block("Float lags: pull when the section is lifted")
note("Up, the float bears on the frame. Down, each lag takes its share of the float's weight "
     "while the section is lifted out, with growth and with what water the float has taken up.")
lag = find("Lag, line of its size", LAGS, job.lag)
D_g = row("Lag diameter", "D_g", "in", lag["D"], "NDS 2018 Table L2", digits=4)
Dr = row("Root diameter", "D_r", "in", lag["root diameter Dr"], "NDS 2018 Table L2", digits=3)
tip = row("Tip", "E_t", "in", lag["tip E"], "NDS 2018 Table L2", digits=4)
Fyb_g = row("Bending yield of the lag", "F_yb,g", "psi", lag["Fyb"], "NDS 2018 Table I1",
            digits=0)
thread_line = sheet.below("Thread length, line of the lag's length", LAG_THREADS, "length",
                          job.lag_length)
thread = row("Thread with the tip", "T_g", "in", thread_line["thread T"], "NDS 2018 Table L2")
p_g = row("In the wood, tip left out", "p", "in",
          greatest(job.lag_length - job.lag_grip - tip, FLOOR), "NDS 2018 12.1.4.6", digits=4)
p_thread = row("Thread in the wood, tip left out", "p_t", "in", least(thread - tip, p_g),
               "NDS 2018 12.2.1", digits=4)
W = row("Withdrawal of an inch of thread", "W", "lb/in",
        nds.lag_withdrawal * G**nds.lag_withdrawal_G_exponent
        * bare(D_g, "in") ** nds.lag_withdrawal_D_exponent * own.one_pound_an_inch,
        "NDS 2018 12.2.1", digits=1)
CD_lift = row("Load duration: lifting", "C_D,l", "", own.CD_lifting, OURS)
CM_pull = row("Wet service, withdrawal", "C_M,w", "", nds.CM_withdrawal_wet,
              "NDS 2018 Table 11.3.3")
W_lag = row("Withdrawal of one lag, adjusted", "W′", "lb",
            W * p_thread * CD_lift * CM_pull * Ct, NDS_FACTORS, digits=0)
lags_each = row("Lags of one float", "n_g", "each", parts.float_line["lags each"],
                "catalog", digits=0)
float_weight = row("Weight of one float", "w_f", "lb", parts.float_line["own weight"], "catalog",
                   digits=0)
float_held = row("Growth and water on one float, aged", "w_h", "lb",
                 (weight.growth + weight.aged_floats) / greatest(parts.floats, 1), STATICS,
                 digits=1)
U = row("Pull on one lag in lifting", "U", "lb",
        job.lift_factor * (float_weight + float_held) / lags_each, STATICS, digits=1)
lag_pull_check = check(
    "Float lags, lifting", U, at_most=W_lag, source="NDS 2018 12.2.1", group="Float fastening",
    cure="Longer or thicker lags, or more of them.")
lag_depth_check = check(
    "Float lags' depth in the wood", p_g, at_least=nds.lag_penetration_least * D_g,
    source="NDS 2018 12.1.4.6", group="Float fastening", cure="Longer lags.",
    amount=("inches longer", "in", greatest(nds.lag_penetration_least * D_g - p_g, 0)))
lag_edge = row("Lag to the nearer edge, in the middle of the thinnest member", "e_l", "in",
               least(parts.rail_t, parts.stringer_t) / 2, STATICS, digits=3)
lag_edge_check = check(
    "Float lags' edge distance", lag_edge, at_least=placement.withdrawal_edge * D_g,
    source="NDS 2018 Table 12.5.1E",
    group="Float fastening", cure="Thinner lags, or thicker members over the floats.")

block("Float lags: one lag pushed sideways")
note("No dowel bearing strength of plastic is published. The flange is taken to bear no more "
     "than wood across the grain of its thickness (our judgement); the float maker's own figure "
     "for his flange comes first.")
theta_lag = row("Load to grain, member above: along it", "θ_gm", "deg", 0, STATICS, digits=0)
theta_flange = row("Load to grain, flange taken as wood", "θ_gs", "deg", nds.K_theta_angle, OURS,
                   digits=0)
Fe_across_g = row("Dowel bearing across the grain", "F_e⊥,g", "psi",
                  dowels.bearing_across(G, D_g), dowels.FE, digits=0)
Fe_small = row("Dowel bearing under dowels below 1/4 in", "F_e,d", "psi",
               dowels.to_table_step(nds.Fe_small * G**nds.Fe_small_exponent), dowels.FE,
               digits=0)
Fe_lag = row("Dowel bearing, member above", "F_em,g", "psi",
             dowels.small_or_large(D_g, Fe_small, Fe_along, Fe_across_g, theta_lag),
             dowels.ANGLE, digits=0)
Fe_flange = row("Dowel bearing, flange", "F_es,g", "psi",
                dowels.small_or_large(D_g, Fe_small, Fe_along, Fe_across_g, theta_flange),
                dowels.ANGLE, digits=0)
l_lag = row("Bearing length: in the wood and half the tip", "l_g", "in", p_g + tip / 2,
            "NDS 2018 12.3.5", digits=4)
l_flange = row("Flange", "l_fl", "in", greatest(job.lag_grip, FLOOR), STATICS, digits=3)
terms = dowels.screw_terms(sheet, "g", D_g, Dr, greatest(theta_lag, theta_flange))
sideways = dowels.single_shear(sheet, "g", l_lag, l_flange, Dr, Fyb_g, Fe_lag, Fe_flange,
                               (terms["I"], terms["II"], terms["III"]))
Z_lag = row("One lag, adjusted", "Z′_g", "lb",
            sideways["Z"] * nds.CD_live * nds.CM_connection_wet * Ct, NDS_FACTORS, digits=1)

block("Float lags: held both ways")
note("A lag in the narrow edge of a 2x carries nothing across its thickness: 4 D of wood is "
     "asked toward the loaded edge and half the thickness is there. So only lags in members "
     "that run the way of the push count. Half of a float's lags are taken to stand in the "
     "rail, the rest in stringers that cross it (our judgement).")
rail_over = row("Outer floats reach under the rail: 1, else 0", "k_r", "",
                when(2 * parts.row_y + parts.float_b > parts.clear_span, 1, 0), STATICS,
                digits=0)
rail_thick = row("Rail ply thick enough to hold across: 1, else 0", "k_t", "",
                 when(parts.rail_t / 2 >= placement.edge_loaded * D_g, 1, 0),
                 "NDS 2018 Table 12.5.1C", digits=0)
in_rail = row("Lags of one float in the rail", "n_gr", "each",
              rail_over * whole_down(lags_each / 2), OURS, digits=0)
crossing = row("Stringers over one float", "n_gs", "each", whole_down(
    when(ACROSS, parts.float_l, parts.float_b).in_("in") / sec.spacing), STATICS, digits=0)
in_stringers = row("Lags of one float in stringers", "n_gc", "each",
                   least(crossing, lags_each - in_rail), OURS, digits=0)
hold_along = row("Lags that hold it along the section", "n_g,x", "each",
                 in_rail + when(ACROSS, 0, in_stringers), OURS, digits=0)
hold_across = row("Lags that hold it across the section", "n_g,y", "each",
                  when(ACROSS, in_stringers, 0) + in_rail * rail_thick, OURS, digits=0)
ways = row("Ways a float is held", "n_way", "each", (hold_along >= 1) + (hold_across >= 1), OURS,
           digits=0)
ways_check = check(
    "Floats held both ways", ways, at_least=2, look_at=2, source=OURS, worst="LOOK",
    group="Float fastening",
    cure="Add a stop block, or bolt through blocking 3 in thick, against the push that nothing "
         "holds.")
drag = row("Push on a float dragged ashore", "F_s", "lb", own.float_side_share * float_weight,
           OURS, digits=0)
stream = row("Push of the current on its longer side", "F_s,c", "lb",
             loads.current_pressure * loads.current_C * greatest(parts.float_l, parts.float_b)
             * buoyancy.draft_flotation.in_("ft"), STATICS, digits=0)
caution("Waves on a float are not reckoned: where they come in, use stop blocks as well.")
lag_push = row("Push on one lag, the weaker way", "V_g", "lb",
               greatest(drag, stream) / greatest(least(hold_along, hold_across), 1), STATICS,
               digits=1)
sideways_check = check(
    "Float lags pushed sideways", lag_push, at_most=Z_lag, source="NDS 2018 12.3.1",
    group="Float fastening", cure="Thicker lags, more of them, or a stop block.")
caution("Nobody stands under a section while floats are fitted or while it is lifted.")

block("Deck screws")
screw = find("Deck screw, line of its size", SCREWS, job.deck_screw)
D_s = row("Screw diameter", "D_s", "in", screw["D"], "NDS 2018 Table L3", digits=3)
W_s = row("Withdrawal of an inch of thread", "W_s", "lb/in",
          nds.screw_withdrawal * G**nds.screw_withdrawal_G_exponent * bare(D_s, "in")
          * own.one_pound_an_inch, "NDS 2018 12.2.2", digits=1)
p_s = row("Screw in the support, tip included", "p_s", "in",
          greatest(job.deck_screw_length - parts.deck_thickness, 0), "NDS 2018 12.1.5.6")
W_screw = row("Withdrawal of one screw, adjusted", "W′_s", "lb",
              W_s * least(nds.screw_thread_share * job.deck_screw_length, p_s)
              * nds.CD_live * CM_pull * Ct, NDS_FACTORS, digits=0)
screw_check = check(
    "Deck screws' depth in the support", p_s, at_least=nds.screw_penetration_least * D_s,
    source="NDS 2018 12.1.5.6", worst="LOOK", group="Connections", cure="Longer deck screws.")
