"""Hardware, first part: the bolted stringer end, in both directions.

Hung, the rail holds the stringer end up; over the floats the rail pulls it down.  The angle is
pinned at the bolts of its stringer leg; the leg on the rail takes the same force and is pried
off by it.
"""

from __future__ import annotations

from builder.language import (
    Sheet,
    arc_tangent,
    bare,
    greatest,
    least,
    when,
    whole_up,
)

from . import catalog, framing, parts, weight
from . import hardware_dowels as dowels
from . import inputs as job
from . import sections as sec
from .reference import BOLTS, WOODS, aisc, nds, own, placement, supplement

sheet = Sheet("Hardware", "Bolts, lags and connections",
              about="Strength of every joint, edge and end distances, bolt lengths, finish.")
row, check, block, find = sheet.row, sheet.check, sheet.block, sheet.find
note, caution = sheet.note, sheet.caution

STATICS, OURS, CATALOG = "statics", "own judgement", "catalog"
NDS_FACTORS, PLACING = "NDS 2018 11.3.1", "NDS 2018 12.5.1"
ACROSS = sec.run.is_("across")
FLOOR = own.least_length.in_("in")
QUARTER_PI = arc_tangent(1)
"""A round hole's area is π/4 times its diameter squared, and atan(1) is π/4."""

note("Pieces are counted on Parts; here stands what they carry. Wet service throughout. "
     "Reactions come from Framing; a hinge's upright force at a corner from Mooring.")

block("Wood and bolts")
bolt = find("Bolt, line of its size", BOLTS, job.bolt)
D = row("Bolt diameter", "D", "in", bolt["D"], "NDS 2018 Table I1", digits=3)
Fyb = row("Bending yield of the bolt", "F_yb", "psi", bolt["Fyb"], "NDS 2018 Table I1", digits=0)
wood = find("Wood 2 to 4 in thick, its first line", WOODS, job.wood)
timber = find("Wood 5 x 5 in and larger, its line", WOODS, job.timber_wood)
timbers = row("A frame member is a timber: 1, else 0", "k_5", "",
              greatest(parts.stringer_line["timber"], parts.rail_line["timber"],
                       parts.header_line["timber"], parts.cross_line["timber"]), STATICS,
              digits=0)
G = row("Specific gravity, least in the frame", "G", "",
        when(timbers > 0, least(wood["G"], timber["G"]), wood["G"]),
        "NDS Supplement 2018 Tables 4A, 4B, 4D")
Fc_perp = row("Bearing across the grain, least in the frame", "F_c⊥", "psi",
              when(timbers > 0, least(wood["Fc_perp"], timber["Fc_perp"]), wood["Fc_perp"]),
              "NDS Supplement 2018 Tables 4A, 4B, 4D", digits=0)
Fe_along = row("Dowel bearing along the grain", "F_e∥", "psi", dowels.bearing_along(G),
               dowels.FE, digits=0)
Fe_across = row("Dowel bearing across the grain", "F_e⊥", "psi", dowels.bearing_across(G, D),
                dowels.FE, digits=0)
theta = row("Load to grain, stringer ends and corners", "θ", "deg", nds.K_theta_angle, STATICS,
            digits=0)
Fe = row("Dowel bearing at that angle", "F_e", "psi",
         dowels.at_angle(Fe_along, Fe_across, theta), dowels.ANGLE, digits=0)
K_theta = row("Direction term", "K_θ", "", dowels.k_theta(theta), dowels.REDUCTION)
CD = row("Load duration: people", "C_D", "", nds.CD_live, "NDS 2018 Table 2.3.2")
CM = row("Wet service, lateral", "C_M", "", nds.CM_connection_wet, "NDS 2018 Table 11.3.3")
Ct = row("Temperature", "C_t", "", nds.Ct_normal, "NDS 2018 Table 11.3.4")

block("Stringer end: sizes and loads")
note("A cross-beam's end takes the same angle, so the greater reaction and the thinner, "
     "shallower piece of the two are taken.")
angle = find("Angle, line in the catalog", catalog.ANGLES, job.stringer_angle)
n = parts.bolts_a_leg
t_p = row("Plate thickness", "t_p", "in", angle["plate thickness"], CATALOG, digits=4)
beamed = sec.cross_beams > 0
t_m = row("Piece that ends here, thickness", "t_m", "in",
          when(beamed, least(parts.stringer_t, parts.cross_t), parts.stringer_t), STATICS)
d_m = row("Piece that ends here, depth", "d_m", "in",
          when(beamed, least(parts.stringer_d, parts.cross_d), parts.stringer_d), STATICS)
t_n = row("Member it stands against, thickness", "t_n", "in",
          when(ACROSS, sec.rail_plies * parts.rail_t, parts.header_t), STATICS)
d_n = row("Member it stands against, depth", "d_n", "in",
          when(ACROSS, parts.rail_d, parts.header_d), STATICS)
R_hung = row("Hung: the rail holds the end up", "R", "lb",
             greatest(framing.stringer_R, framing.cross_R), STATICS, digits=0)
edge_area = row("Rail or header and skirt, cross section", "A_e", "in²",
                t_n * d_n + parts.skirt_t * parts.skirt_d, STATICS)
edge_weight = row("Edge's own weight, with the deck past it", "w_e", "lb/ft",
                  edge_area.in_("ft²") * job.density_frame
                  + greatest(weight.deck_dead, 0) * sec.deck_overhang.in_("ft"), STATICS, digits=1)
R_floats = row("Over the floats: the rail pulls it down", "R_F", "lb",
               sec.point_load / 2 + edge_weight * sec.spacing.in_("ft"), STATICS, digits=0)
V = row("Force of the end, greater direction", "V", "lb", greatest(R_hung, R_floats), STATICS,
        digits=0)

block("Stringer end: one bolt in either leg")
note("Both legs carry the same force on the same plate, across the grain of the wood behind it, "
     "so the thinner wood of the two decides for both. Through the rail a bolt passes every ply.")
Fe_steel = row("Dowel bearing of the plate", "F_es", "psi", dowels.steel_bearing(t_p),
               "NDS 2018 Table 12B, 12K", digits=0)
l_m = row("Bearing length, thinner wood of the two legs", "l_m", "in", least(t_m, t_n), STATICS)
leg = dowels.single_shear(sheet, "s", l_m, t_p, D, Fyb, Fe, Fe_steel, dowels.bolt_terms(K_theta))

block("Stringer end: adjusted values")
spacing = row("Bolts apart in a leg", "s_b", "in", angle["hole spacing"], CATALOG)
strip = row("Strip of each member that counts: 3 D", "b_g", "in", nds.Cg_perp_width * D,
            "NDS 2018 11.3.6.3")
EA_m = row("Wood's stiffness", "EA_m", "lb", wood["E"] * l_m * strip, dowels.GROUP, digits=0)
EA_s = row("Plate's stiffness, the same strip", "EA_s", "lb", nds.E_steel * t_p * strip,
           dowels.GROUP, digits=0)
gamma = row("Slip modulus of one bolt, wood to steel", "γ_g", "lb/in",
            nds.gamma_wood_metal * bare(D, "in") ** nds.gamma_exponent * own.one_pound_an_inch,
            dowels.GROUP, digits=0)
group = dowels.group_action(sheet, "s", n, spacing, gamma, EA_m, EA_s)
end_distance = row("End distance: rail face to the bolts", "e_g", "in",
                   angle["rail face to stringer bolts"], CATALOG)
C_delta = row("Geometry factor, end distance", "C_Δ", "",
              dowels.geometry_factor(end_distance, placement.end_perp_full * D),
              "NDS 2018 12.5.1.2", digits=3)
Z_leg = row("One bolt, adjusted", "Z′_s", "lb",
            leg["Z"] * CD * CM * Ct * group["Cg"] * C_delta, NDS_FACTORS, digits=1)
leg_bolts_check = check(
    "Bolts in each leg of the angle", V, at_most=n * Z_leg, source=NDS_FACTORS,
    group="Connections", cure="Closer stringers, a thicker bolt, or an angle with more bolts.",
    amount=("bolts a leg that would do", "each", whole_up(V / Z_leg)))

block("Stringer end: where the bolts stand")
note("The angle is centred on the depth of the piece that ends here; frame tops are flush.")
angle_top = row("Angle's top below the top edge", "a_t", "in", (d_m - angle["height"]) / 2,
                STATICS)
y_1 = row("Upper bolt below the top edge", "y_1", "in", angle_top + angle["top hole from its top"],
          STATICS)
y_2 = row("Lowest bolt below the top edge", "y_2", "in", y_1 + (n - 1) * spacing, STATICS)
angle_height = row("Angle's height", "h_a", "in", angle["height"], CATALOG)
edge_least = row("Bolt to the nearest edge, both members", "e_e", "in",
                 least(y_1, d_m - y_2, d_n - y_2), STATICS)
outermost = row("Outermost bolts of a leg apart", "s_o", "in", (n - 1) * spacing, STATICS)
fit_check = check(
    "Angle fits the depth", angle_height, at_most=least(d_m, d_n), source=STATICS,
    group="Connections", cure="A lower angle or a deeper stringer and rail.")
edge_check = check(
    "Edge distance, either edge loaded", edge_least, at_least=placement.edge_loaded * D,
    look_at=placement.edge_loaded * D, source="NDS 2018 Table 12.5.1C", group="Connections",
    cure="A thinner bolt, an angle with its holes closer together, or a deeper stringer.",
    amount=("inches missing", "in", greatest(placement.edge_loaded * D - edge_least, 0)))
spread_check = check(
    "Outermost bolts across the grain", outermost, at_most=nds.cross_grain_bolts_most,
    look_at=nds.cross_grain_bolts_most, source="NDS 2018 12.5.1.3", group="Connections",
    cure="An angle with its holes closer together: wood that dries splits between them.")
spacing_check = check(
    "Bolts apart in a leg", spacing, at_least=placement.spacing_perp_least * D,
    source="NDS 2018 Table 12.5.1B", group="Connections",
    cure="An angle with its holes farther apart, or a thinner bolt.")
end_check = check(
    "End distance of the stringer bolts", end_distance,
    at_least=placement.end_perp_least * D,
    source="NDS 2018 Table 12.5.1A", group="Connections",
    cure="An angle with its bolts farther from the rail, or a thinner bolt.")

block("Stringer end: shear in the wood at the bolts")
Fv = row("Shear, adjusted, least of the pieces that end here", "F′_v", "psi", framing.end_Fv,
         "NDS 2018 4.3.1", digits=1)


def end_shear(Fv, b, d, d_e):
    """Return the shear [lb] a member end carries, with ``d_e`` of its depth above the bolts."""
    return nds.end_shear_factor * Fv * b * d_e * (d_e / d) ** 2


d_hung = row("Depth that works, hung", "d_e,h", "in", greatest(y_2, FLOOR), "NDS 2018 3.4.3.3")
V_hung = row("Shear allowed, hung", "V′_h", "lb", end_shear(Fv, t_m, d_m, d_hung),
             "NDS 2018 3.4.3.3", digits=0)
d_floats = row("Depth that works, over the floats", "d_e,f", "in", greatest(d_m - y_1, FLOOR),
               "NDS 2018 3.4.3.3")
V_floats = row("Shear allowed, over the floats", "V′_f", "lb", end_shear(Fv, t_m, d_m, d_floats),
               "NDS 2018 3.4.3.3", digits=0)
shear_share = row("Shear at the bolts: greater share of what is allowed", "r_v", "",
                  greatest(R_hung / V_hung, R_floats / V_floats), "NDS 2018 3.4.3.3", digits=3)
shear_check = check(
    "Shear in the wood at the bolts, both directions", shear_share, at_most=1,
    source="NDS 2018 3.4.3.3", group="Connections",
    cure="Closer stringers, a deeper size, or an angle whose bolts reach nearer both edges.")

block("Stringer end: pull on the rail leg")
lever = row("Upper bolt to the lower edge, or the reverse", "z_a", "in",
            least(angle["upper hole to lower edge"],
                  angle["top hole from its top"] + (n - 1) * spacing), STATICS)
T = row("Pull in the upper or lowest bolt", "T", "lb", V * end_distance / lever, STATICS, digits=0)
plate = find("Washer plate, line in the catalog", catalog.PLATES, job.washer_plate)
plate_b = row("Washer plate, along the grain of the rail", "l_b", "in", plate["width"], CATALOG)
plate_h = row("Washer plate, up and down", "h_w", "in", plate["length"], CATALOG)
plate_holes = row("Holes in it", "n_w", "each", plate["holes"], CATALOG, digits=0)
plate_hole = row("Hole", "d_w", "in", plate["hole"], CATALOG, digits=4)
A_net = row("Bearing area for one bolt", "A_n", "in²",
            greatest(plate_b * plate_h / plate_holes - QUARTER_PI * plate_hole**2, FLOOR**2),
            "NDS 2018 12.1.3.3", digits=3)
Cb = row("Bearing area factor", "C_b", "",
         when(plate_b < nds.Cb_length_most, (plate_b + nds.Cb_add) / plate_b, 1),
         "NDS 2018 3.10.4", digits=4)
CM_bearing = row("Wet service, bearing across the grain", "C_M⊥", "", supplement.CM_Fc_perp,
                 "NDS Supplement 2018 Tables 4A, 4B")
Fc_adjusted = row("Bearing across the grain, adjusted", "F′_c⊥", "psi",
                  Fc_perp * CM_bearing * Ct * supplement.Ci_Fc_perp, "NDS 2018 4.3.1", digits=1)
pull_plate = row("Pull one bolt's share of a washer plate takes", "T′_w", "lb",
                 Fc_adjusted * Cb * A_net, "NDS 2018 3.10.4", digits=0)
pull_check = check(
    "Pull on the washers", T, at_most=pull_plate, source="NDS 2018 3.10.4", group="Connections",
    cure="A larger washer plate, or a taller angle.")
hole_over = row("Washer plate's hole over the bolt", "Δd_w", "in", plate_hole - D,
                "NDS 2018 12.1.3.2", digits=4)
hole_check = check(
    "Washer plate passes the bolt", hole_over, at_least=nds.hole_over_least,
    source="NDS 2018 12.1.3.2", group="Connections",
    cure="Choose a washer plate drilled 1/16 in over the bolt.")

block("Steel of the stringer end")
clear_end = row("Hole's edge to the plate's edge", "l_e", "in",
                greatest(angle["top hole from its top"] - (D + nds.hole_over_most) / 2, FLOOR),
                "AISC 360-10 J3.10", digits=4)
plate_bearing = row("Bearing of the plate, one bolt", "R_b", "lb",
                    least(aisc.bearing_clear * clear_end, aisc.bearing_most * D) * t_p
                    * aisc.Fu_A36 / aisc.omega, "AISC 360-10 J3.10", digits=0)
bolt_area = row("Bolt's area", "A_b", "in²", QUARTER_PI * D**2, STATICS, digits=4)
bolt_grip = row("Grip, longer leg: angle, wood and washer plate", "g_b", "in",
                t_p + greatest(t_m, t_n) + plate["thickness"], STATICS, digits=3)
long_grip = row("Strength left in a long bolt, A307", "k_g", "", greatest(
    1 - aisc.A307_grip_loss / aisc.A307_grip_step
    * greatest(bolt_grip - aisc.A307_grip_free * D, 0), own.least_share),
                "AISC 360-10 Table J3.2", digits=3)
bolt_shear = row("Shear of the bolt", "R_v", "lb",
                 aisc.Fnv_A307 * long_grip * bolt_area / aisc.omega,
                 "AISC 360-10 J3.6", digits=0)
bolt_tension = row("Tension of the bolt", "R_t", "lb",
                   aisc.Fnt_A307 * long_grip * bolt_area / aisc.omega,
                   "AISC 360-10 J3.6", digits=0)
steel_share = row("Steel: greatest share of what it carries", "r_st", "",
                  greatest(V / n / least(plate_bearing, bolt_shear), T / bolt_tension),
                  "AISC 360-10 J3.6, J3.10", digits=3)
steel_check = check(
    "Steel of plate and bolt", steel_share, at_most=1, source="AISC 360-10 J3.6, J3.10",
    group="Connections", cure="A thicker plate or a thicker bolt.")
