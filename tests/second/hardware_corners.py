"""Corners: a header between two rails, an inside and an outside bracket bolted through it."""

from __future__ import annotations

from tests.second.framing_basis import Results, at_least, at_most, nds
from tests.second.framing_wood import member
from tests.second.given import Given
from tests.second.hardware_ends import placed
from tests.second.hardware_joint import Joint, share_of_full
from tests.second.hardware_yield import Dowel, bearing_steel, end_shear

SCREWED = "boards, two screws a crossing"
NOTHING = "nothing more"


def held_square(g: Given, done: Results) -> int:
    """Return how many things hold the frame square; boards do so with two screws a crossing."""
    way = g.sec["squaring"]
    if way == SCREWED:
        return int(g.sec["deck"] == "boards" and done["Parts.screws_a_crossing"] >= 2)
    return int(way != NOTHING)


def bolt_value(g: Given, done: Results, joint: Joint, group: float) -> Results:
    """Return the rows of one corner bolt, wood between two brackets.

    House choice: the group action factor is the one of the stringer ends.
    """
    inside, outside = (g.catalog["corner_brackets"][g.job[f"corner_{side}"]]
                       for side in ("inside", "outside"))
    rail = done["Parts.rail_t"] * g.sec["rail_plies"]
    plate = min(inside["plate thickness"], outside["plate thickness"])
    wood = min(done["Parts.header_t"], rail)
    dowel = Dowel(joint.d, joint.bolt["Fyb"], wood, plate, joint.across, bearing_steel(plate),
                  joint.terms)
    modes = dowel.double()
    reach = inside["corner to header bolts"]  # house choice: the outside one must match it
    delta = share_of_full(reach, placed("end_perp_full") * joint.d)
    header = abs(outside["corner to header bolts"] - rail - inside["corner to header bolts"])
    along_rail = abs(outside["corner to rail bolts"] - done["Parts.header_t"]
                     - inside["corner to rail bolts"])
    return {f"corner_{key}": value for key, value in modes.items()} | {
        "t_c": plate, "t_corner": wood, "Fe_bracket": dowel.fes, "corner_end": reach,
        "corner_delta": delta, "Z_corner": modes["Z"] * joint.factors * delta * group,
        "n_c": min(inside["bolts a leg"], outside["bolts a leg"]),
        "holes_apart": max(header, along_rail)}


def lifted(g: Given, done: Results) -> Results:
    """Return the upright force of a joint between two sections, and of one of its two hinges [lb].

    House choice: a dock with hinges, or with a section that holds another or names one that holds
    it, has them at every section; without a gangway one joint is at the shore.
    """
    crowd = g.job["flotation_load"] * done["Parts.deck_area"]
    joint, at_shore = (max(g.sec["point_load"], crowd / share) for share in (8, 4))
    tied = {one.letter: one.sec["hinges"] > 0 or one.sec["carried"] > 1
            or one.sec["held_by"] != "none" for one in g.all}
    ashore = not any(one.sec["gangway_rest"] for one in g.all)
    return {"tied": int(tied[g.letter]), "joined": int(any(tied.values())), "hinge_up": joint,
            "shore_up": at_shore,
            "one_up": any(tied.values()) * max(joint, at_shore * ashore) / 2}


def work(g: Given, done: Results, joint: Joint, group: float) -> Results:
    """Return the rows of corners.

    Half the force of a joint comes down beside the header's reaction.
    """
    rows = bolt_value(g, done, joint, group) | lifted(g, done)
    header = member(g, "header", "header_size", done, "header")
    inside = g.catalog["corner_brackets"][g.job["corner_inside"]]
    force = done["Framing.header_R"] + rows["one_up"]
    deep = min(header.deep, done["Parts.rail_d"])
    spread = (rows["n_c"] - 1) * inside["hole spacing"]
    upper = (deep - inside["height"]) / 2 + inside["top hole from its top"]
    lowest = upper + spread
    edge = min(upper, deep - lowest)
    shear = end_shear(header.shear, header.thick, header.deep, lowest)
    square = held_square(g, done)
    rows |= {"V_corner": force, "d_c": deep, "y_c1": upper, "y_c2": lowest, "corner_edge": edge,
             "V_header": shear, "held_square": square}
    found = {f"Hardware.{key}": value for key, value in rows.items()}
    found |= at_most("Hardware.corner_check", force / rows["n_c"], rows["Z_corner"])
    found |= at_least("Hardware.corner_edge_check", edge, placed("edge_loaded") * joint.d, look=1)
    found |= at_most("Hardware.corner_shear_check", force, shear)
    found |= at_most("Hardware.holes_check", rows["holes_apart"], nds("hole_over_most"),
                     worst="LOOK")
    return found | at_least("Hardware.square_check", square, 1, look=1, worst="LOOK")
