"""Hardware, second part: corners, squareness, and the plies bolted together."""

from __future__ import annotations

from builder.language import absolute, all_of, greatest, least, total, when

from . import catalog, framing, parts
from . import hardware_bolts as ends
from . import hardware_dowels as dowels
from . import inputs as job
from . import sections as sec
from . import sections_afloat as afloat
from . import sections_site as held
from .hardware_bolts import (
    CATALOG,
    FLOOR,
    NDS_FACTORS,
    OURS,
    STATICS,
    block,
    caution,
    check,
    find,
    note,
    row,
    sheet,
)
from .reference import nds, own, placement

block("Upright force at a joint of sections")
note("Where one type has hinges, holds neighbours or names one that holds it in roll, every "
     "section is taken to be hinged. Where no gangway lands on the dock, a joint to the shore is "
     "counted too.")
tied = row("This type tells of a joint: 1 yes, 0 no", "k_ti", "",
           when(all_of(sec.hinges <= 0, held.carried <= 1, afloat.held_by.is_("none")), 0, 1),
           STATICS, digits=0)
joined = row("Sections are hinged: 1 yes, 0 no", "k_hi", "",
             when(total(tied, sec.quantity) > 0, 1, 0), STATICS, digits=0)
hinge_up = row("Upright force at a joint of two sections, at most", "V_j", "lb",
               greatest(sec.point_load, job.flotation_load * parts.deck_area / 8), STATICS,
               digits=0)
shore_up = row("Upright force at a joint to the shore, at most", "V_s", "lb",
               greatest(sec.point_load, job.flotation_load * parts.deck_area / 4), STATICS,
               digits=0)
one_up = row("Upright force on one hinge of two, at most", "V_hi", "lb", joined * when(
    total(sec.gangway_rest, sec.quantity) > 0, hinge_up, greatest(hinge_up, shore_up)) / 2,
             STATICS, digits=0)

block("Corner: loads and one bolt")
note("Each bolt passes the outside bracket, the wood and the inside bracket: two shear planes. "
     "The load is the header's reaction and the upright force of a hinge beside the corner. "
     "Group action is taken as at the stringer ends.")
caution("The level pull of a hinge or of a mooring bracket is not in this load: its own plate and "
        "bolts have to carry it into the rail. Mooring shows how much it is.")
inside = find("Inside bracket, line in the catalog", catalog.CORNERS, job.corner_inside)
outside = find("Outside bracket, line in the catalog", catalog.CORNERS, job.corner_outside)
n_c = row("Bolts in a leg, fewer of the two brackets", "n_c", "each",
          least(inside["bolts a leg"], outside["bolts a leg"]), CATALOG, digits=0)
t_c = row("Bracket plate, thinner of the two", "t_pc", "in",
          least(inside["plate thickness"], outside["plate thickness"]), CATALOG, digits=4)
t_corner = row("Wood between the brackets, header or rail", "t_hr", "in",
               least(parts.header_t, sec.rail_plies * parts.rail_t), STATICS)
V_corner = row("Force down at the corner", "V_c", "lb",
               greatest(framing.header_R, 0) + one_up, STATICS, digits=0)
Fe_bracket = row("Dowel bearing of the brackets", "F_ec", "psi", dowels.steel_bearing(t_c),
                 "NDS 2018 Table 12B, 12K", digits=0)
corner = dowels.double_shear(sheet, "c", t_corner, t_c, ends.D, ends.Fyb, ends.Fe, Fe_bracket,
                             dowels.bolt_terms(ends.K_theta))
corner_end = row("End of the header to the bolts", "e_c", "in", inside["corner to header bolts"],
                 CATALOG)
corner_delta = row("Geometry factor, end distance", "C_Δc", "",
                   dowels.geometry_factor(corner_end, placement.end_perp_full * ends.D),
                   "NDS 2018 12.5.1.2", digits=3)
Z_corner = row("One corner bolt, adjusted", "Z′_c", "lb",
               corner["Z"] * ends.CD * ends.CM * ends.Ct * ends.group["Cg"] * corner_delta,
               NDS_FACTORS, digits=1)
corner_check = check(
    "Corner bolts", V_corner, at_most=n_c * Z_corner, source=NDS_FACTORS, group="Connections",
    cure="A thicker bolt, brackets with more bolts, or more stringers to share the load.")

block("Corner: where the bolts stand")
d_c = row("Header or rail, shallower", "d_hr", "in", least(parts.header_d, parts.rail_d),
          STATICS)
y_c1 = row("Upper bolt below the top edge, bracket centred", "y_c1", "in",
           (d_c - inside["height"]) / 2 + inside["top hole from its top"], STATICS)
y_c2 = row("Lowest bolt below the top edge", "y_c2", "in",
           y_c1 + (n_c - 1) * inside["hole spacing"], STATICS)
corner_edge = row("Bolt to the nearest edge", "e_ce", "in", least(y_c1, d_c - y_c2), STATICS)
corner_edge_check = check(
    "Edge distance at the corner", corner_edge, at_least=placement.edge_loaded * ends.D,
    look_at=placement.edge_loaded * ends.D, source="NDS 2018 Table 12.5.1C",
    group="Connections", cure="A thinner bolt, brackets with closer holes, or a deeper header.")
V_header = row("Shear allowed in the header at the bolts", "V′_c", "lb",
               ends.end_shear(framing.header_Fv, parts.header_t, parts.header_d,
                              greatest(y_c2, FLOOR)), "NDS 2018 3.4.3.3", digits=0)
corner_shear_check = check(
    "Shear in the header at the bolts", V_corner, at_most=V_header, source="NDS 2018 3.4.3.3",
    group="Connections", cure="A deeper or thicker header, or bolts nearer its bottom edge.")
holes_apart = row("Holes of the two brackets apart, greater leg", "Δ_c", "in", greatest(
    absolute(outside["corner to rail bolts"] - inside["corner to rail bolts"] - parts.header_t),
    absolute(outside["corner to header bolts"] - inside["corner to header bolts"]
             - sec.rail_plies * parts.rail_t)), STATICS, digits=3)
holes_check = check(
    "Holes of the two brackets meet", holes_apart, at_most=nds.hole_over_most,
    source="NDS 2018 12.1.3.2", worst="LOOK", group="Connections",
    cure="Order brackets drilled for this rail and header, or drill the outside one to suit.")

block("Square")
held_square = row("Things that hold the frame square", "n_sq", "each",
                  sec.squaring.is_("boards, two screws a crossing") * sec.deck.is_("boards")
                  * (parts.screws_a_crossing >= 2)
                  + sec.squaring.is_("diagonal brace") + sec.squaring.is_("corner plates"), OURS,
                  digits=0)
square_check = check(
    "Frame held square", held_square, at_least=1, look_at=1, source=OURS, worst="LOOK",
    group="Connections",
    cure="Add a diagonal, corner plates, or boards with two screws at every crossing. Panels "
         "hold nothing square; wind, current and boats push sideways.")
note("Corner sinkage on the stability sheet takes the frame as rigid: test with a weight at a "
     "corner.")

block("Wood bolted to wood: rail plies, and a skirt that counts")
note("A line load on the rail is shared between plies, and with a skirt bolted to count, by "
     "their stiffness; the bolts carry each board's share across.")
counted = row("Skirt bolted to count: 1, else 0", "k_b", "",
              when(sec.skirt.is_("bolted to count"), 1, 0), STATICS, digits=0)
l_side = row("Ply or skirt the bolt bears in, side", "l_s", "in",
             greatest(parts.rail_t - counted * greatest(parts.rail_t - parts.skirt_t, 0), FLOOR),
             STATICS)
theta_main = row("Load to grain, main", "θ_m", "deg", nds.K_theta_angle, STATICS, digits=0)
theta_side = row("Load to grain, side", "θ_s", "deg", nds.K_theta_angle, STATICS, digits=0)
Fe_main = row("Dowel bearing, main", "F_em", "psi",
              dowels.at_angle(ends.Fe_along, ends.Fe_across, theta_main), dowels.ANGLE, digits=0)
Fe_side = row("Dowel bearing, side", "F_e,s", "psi",
              dowels.at_angle(ends.Fe_along, ends.Fe_across, theta_side), dowels.ANGLE, digits=0)
K_wood = row("Direction term", "K_θw", "", dowels.k_theta(greatest(theta_main, theta_side)),
             dowels.REDUCTION)
ply = dowels.single_shear(sheet, "w", parts.rail_t, l_side, ends.D, ends.Fyb, Fe_main, Fe_side,
                          dowels.bolt_terms(K_wood))
Z_ply = row("One bolt, adjusted", "Z′_w", "lb", ply["Z"] * ends.CD * ends.CM * ends.Ct,
            NDS_FACTORS, digits=1)
ply_force = row("Force in a bolt between plies", "V_p", "lb",
                ends.V * (sec.rail_plies - 1) / sec.rail_plies
                / (ends.n + sec.spacing / own.ply_bolt_spacing), STATICS, digits=0)
skirt_share = row("Share of the load the skirt takes", "q_k", "", counted / (
    1 + sec.rail_plies * parts.rail_t * parts.rail_d**3
    / greatest(parts.skirt_t * parts.skirt_d**3, FLOOR**4)), STATICS, digits=3)
skirt_force = row("Force in a bolt of the skirt", "V_k", "lb",
                  skirt_share * ends.V * own.skirt_fastener_spacing / sec.spacing, STATICS,
                  digits=0)
wood_force = row("Greater of the two", "V_w", "lb", greatest(ply_force, skirt_force), STATICS,
                 digits=0)
wood_check = check(
    "Bolts between plies and skirt", wood_force, at_most=Z_ply, source=NDS_FACTORS,
    group="Connections", cure="A thicker bolt, closer bolts, or a skirt that does not count.")
