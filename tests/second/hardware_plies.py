"""Bolts that join the plies of a rail, and a skirt to it: wood to wood."""

from __future__ import annotations

from tests.second.framing_basis import Results, at_most, own
from tests.second.given import Given
from tests.second.hardware_joint import Joint
from tests.second.hardware_yield import Dowel, direction, usual_terms


def work(g: Given, done: Results, joint: Joint, load: float, legs: float) -> Results:
    """Return the rows of bolts between plies and of a skirt bolted to count.

    ``load`` is the force of one stringer end [lb], ``legs`` the bolts of its rail leg.
    """
    counted = g.sec["skirt"] == "bolted to count"
    ply = done["Parts.rail_t"]
    side = min(ply, done["Parts.skirt_t"]) if counted else ply
    theta = 90.0
    dowel = Dowel(joint.d, joint.bolt["Fyb"], ply, side, joint.across, joint.across,
                  usual_terms(theta))
    modes = dowel.single()
    value = modes["Z"] * joint.factors
    # House choice: the pieces that end at the rail load one ply; its share passes to the others
    # through the bolts of the angle and those between two stringers.
    plies, spacing = g.sec["rail_plies"], g.sec["spacing"]
    here = legs + spacing / own("ply_bolt_spacing")
    ply_force = load * (plies - 1) / plies / here
    rail, skirt = (done[f"Parts.{part}_t"] * done[f"Parts.{part}_d"] ** 3
                   for part in ("rail", "skirt"))
    share = skirt / (skirt + plies * rail) if counted else 0
    skirt_force = load * share * own("skirt_fastener_spacing") / spacing
    force = max(ply_force, skirt_force)
    rows = {f"ply_{key}": v for key, v in modes.items()} | {
        "counted": int(counted), "l_side": side, "theta_main": theta, "theta_side": theta,
        "Fe_main": joint.across, "Fe_side": joint.across, "K_wood": direction(theta),
        "Z_ply": value, "ply_force": ply_force, "skirt_share": share, "skirt_force": skirt_force,
        "wood_force": force}
    return ({f"Hardware.{key}": v for key, v in rows.items()}
            | at_most("Hardware.wood_check", force, value))
