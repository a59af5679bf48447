"""The angle at a stringer's end: bolts, distances, shear in the wood, washers, steel."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi

from tests.second.framing_basis import (
    INCHES,
    Results,
    at_least,
    at_most,
    figure,
    nds,
    own,
)
from tests.second.framing_spans import across
from tests.second.framing_wood import incised, supplement
from tests.second.given import Given
from tests.second.hardware_joint import Joint, share_of_full
from tests.second.hardware_yield import (
    Dowel,
    bearing_steel,
    end_shear,
    group_action,
)


def placed(key: str) -> float:
    """Return a rule of placement, times the diameter."""
    return figure("placement", key)


def steel(key: str) -> float:
    """Return a constant of structural steel."""
    return figure("aisc_360_10", key)


@dataclass(frozen=True)
class End:
    """A piece hung on a rail or header by an angle; lengths in inches, forces in pounds."""

    g: Given
    done: Results
    joint: Joint

    @property
    def angle(self) -> dict:
        """The angle of the catalog."""
        return self.g.catalog["angles"][self.g.job["stringer_angle"]]

    def _pieces(self, size: str) -> list[float]:
        """Return a size of the pieces that end here."""
        found = [self.done[f"Parts.stringer_{size}"]]
        if self.g.sec["cross_beams"] > 0:
            found.append(self.done[f"Parts.cross_{size}"])
        return found

    @property
    def piece(self) -> tuple[float, float]:
        """Thickness and depth of the piece that ends here, the least."""
        return min(self._pieces("t")), min(self._pieces("d"))

    @property
    def against(self) -> tuple[float, float]:
        """Thickness and depth of the member it stands against."""
        part, plies = ("rail", self.g.sec["rail_plies"]) if across(self.g) else ("header", 1)
        return self.done[f"Parts.{part}_t"] * plies, self.done[f"Parts.{part}_d"]

    @property
    def hung(self) -> float:
        """Force where the rail holds the end up."""
        ends = [self.done["Framing.stringer_R"]]
        if self.g.sec["cross_beams"] > 0:
            ends.append(self.done["Framing.cross_R"])
        return max(ends)

    @property
    def edge_area(self) -> float:
        """Cross section of rail or header, and skirt [in²]."""
        thick, deep = self.against
        return thick * deep + self.done["Parts.skirt_t"] * self.done["Parts.skirt_d"]

    @property
    def edge_weight(self) -> float:
        """Weight of the edge, with the deck past it [lb/ft]."""
        wood = self.edge_area / INCHES ** 2 * self.g.job["density_frame"]
        return wood + self.done["Framing.dead"] * self.g.sec["deck_overhang"] / INCHES

    @property
    def over_floats(self) -> float:
        """Force where the rail pulls the end down."""
        return self.g.sec["point_load"] / 2 + self.edge_weight * self.g.sec["spacing"] / INCHES

    @property
    def force(self) -> float:
        """Greater force."""
        return max(self.hung, self.over_floats)

    @property
    def bolts(self) -> float:
        """Bolts in a leg."""
        return self.angle["bolts a leg"]

    @property
    def reach(self) -> float:
        """Rail face to the bolts of the piece: its end distance."""
        return self.angle["rail face to stringer bolts"]


def value_of_bolt(end: End) -> Results:
    """Return the rows of one bolt of a leg."""
    joint, plate = end.joint, end.angle["plate thickness"]
    thin = min(end.piece[0], end.against[0])
    dowel = Dowel(joint.d, joint.bolt["Fyb"], thin, plate, joint.across, bearing_steel(plate),
                  joint.terms)
    modes = dowel.single()
    strip = nds("Cg_perp_width") * joint.d
    wood = joint.stiffness * strip * thin
    iron = nds("E_steel") * strip * plate
    slip = nds("gamma_wood_metal") * joint.d ** nds("gamma_exponent")
    group = group_action(end.bolts, end.angle["hole spacing"], slip, wood, iron)
    delta = share_of_full(end.reach, placed("end_perp_full") * joint.d)
    adjusted = modes["Z"] * joint.factors * group["Cg"] * delta
    return ({f"leg_{key}": value for key, value in modes.items()}
            | {f"group_{key}": value for key, value in group.items()}
            | {"Fe_steel": dowel.fes, "l_m": thin, "spacing": end.angle["hole spacing"],
               "strip": strip, "EA_m": wood, "EA_s": iron, "gamma": slip,
               "end_distance": end.reach, "C_delta": delta, "Z_leg": adjusted})


def placing(end: End) -> tuple[Results, Results]:
    """Return rows and checks of where the bolts stand."""
    d, (_, deep), (_, other) = end.joint.d, end.piece, end.against
    height = end.angle["height"]
    top = (deep - height) / 2  # house choice: centred on the piece, tops of both members level
    upper = top + end.angle["top hole from its top"]
    outermost = (end.bolts - 1) * end.angle["hole spacing"]
    lowest = upper + outermost
    edge = min(upper, min(deep, other) - lowest)
    rows = {"angle_top": top, "y_1": upper, "y_2": lowest, "angle_height": height,
            "edge_least": edge, "outermost": outermost}
    checks = at_most("Hardware.fit_check", height, min(deep, other))
    checks |= at_least("Hardware.edge_check", edge, placed("edge_loaded") * d, look=1)
    checks |= at_most("Hardware.spread_check", outermost, nds("cross_grain_bolts_most"), look=1)
    checks |= at_least("Hardware.spacing_check", end.angle["hole spacing"],
                       placed("spacing_perp_least") * d)
    return rows, checks | at_least("Hardware.end_check", end.reach, placed("end_perp_least") * d)


def shear_at_bolts(end: End, upper: float, lowest: float) -> Results:
    """Return the rows of shear in the wood at the bolts, both directions."""
    thick, deep = end.piece
    shear = end.done["Framing.end_Fv"]
    hung = end_shear(shear, thick, deep, lowest)
    floats = end_shear(shear, thick, deep, deep - upper)
    return {"Fv": shear, "d_hung": lowest, "V_hung": hung, "d_floats": deep - upper,
            "V_floats": floats, "shear_share": max(end.hung / hung, end.over_floats / floats)}


def washers(end: End) -> tuple[Results, Results]:
    """Return rows and checks of the pull on the washer plates."""
    d, plate = end.joint.d, end.g.catalog["washer_plates"][end.g.job["washer_plate"]]
    # The force may be reversed: then the leg's upper edge is what it turns on.
    lever = min(end.angle["upper hole to lower edge"],
                end.angle["top hole from its top"] + (end.bolts - 1) * end.angle["hole spacing"])
    pull = end.force * end.reach / lever
    along, up, holes = plate["width"], plate["length"], plate["holes"]
    net = along * up / holes - pi / 4 * plate["hole"] ** 2
    area_factor = (along + nds("Cb_add")) / along if along < nds("Cb_length_most") else 1
    bearing = (end.joint.least("Fc_perp") * supplement("CM_Fc_perp") * nds("Ct_normal")
               * (supplement("Ci_Fc_perp") if incised(end.g) else 1))
    over = plate["hole"] - d
    rows = {"lever": lever, "T": pull, "plate_b": along, "plate_h": up, "plate_holes": holes,
            "plate_hole": plate["hole"], "A_net": net, "Cb": area_factor, "Fc_adjusted": bearing,
            "pull_plate": bearing * area_factor * net, "hole_over": over}
    return rows, (at_most("Hardware.pull_check", pull, rows["pull_plate"])
                  | at_least("Hardware.hole_check", over, nds("hole_over_least")))


def steel_parts(end: End, pull: float) -> Results:
    """Return the rows of plate and bolt as steel."""
    d, plate = end.joint.d, end.angle["plate thickness"]
    clear = end.angle["top hole from its top"] - (d + nds("hole_over_most")) / 2
    bearing = min(steel("bearing_clear") * clear, steel("bearing_most") * d) * plate
    bearing *= steel("Fu_A36") / steel("omega")
    washer = end.g.catalog["washer_plates"][end.g.job["washer_plate"]]["thickness"]
    grip = plate + max(end.piece[0], end.against[0]) + washer
    # A307: one percent for every sixteenth of an inch past five diameters.
    beyond = max(0.0, grip - steel("A307_grip_free") * d) / steel("A307_grip_step")
    left = max(1 - steel("A307_grip_loss") * beyond, own("least_share"))
    shear = left * steel("Fnv_A307") * end.joint.area / steel("omega")
    tension = left * steel("Fnt_A307") * end.joint.area / steel("omega")
    one = end.force / end.bolts
    return {"bolt_grip": grip, "long_grip": left, "clear_end": clear, "plate_bearing": bearing,
            "bolt_shear": shear, "bolt_tension": tension,
            "steel_share": max(one / bearing, one / shear, pull / tension)}


def work(g: Given, done: Results, joint: Joint) -> Results:
    """Return the rows of stringer ends."""
    end = End(g, done, joint)
    bolt = value_of_bolt(end)
    places, checks = placing(end)
    shear = shear_at_bolts(end, places["y_1"], places["y_2"])
    pulls, more = washers(end)
    iron = steel_parts(end, pulls["T"])
    rows = bolt | places | shear | pulls | iron | {
        "t_p": end.angle["plate thickness"], "t_m": end.piece[0], "d_m": end.piece[1],
        "t_n": end.against[0], "d_n": end.against[1], "R_hung": end.hung,
        "edge_area": end.edge_area, "edge_weight": end.edge_weight, "R_floats": end.over_floats,
        "V": end.force}
    checks |= more | at_most("Hardware.leg_bolts_check", end.force / end.bolts, bolt["Z_leg"])
    checks |= at_most("Hardware.shear_check", shear["shear_share"], 1)
    checks |= at_most("Hardware.steel_check", iron["steel_share"], 1)
    return {f"Hardware.{key}": value for key, value in rows.items()} | checks
