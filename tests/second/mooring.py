"""The mooring, second calculation, for one section type: chains, dead weights, piles, arms, joints.

From hydro.md 7 and loadpath.md 9c and 11 of the basis.  House choices are those that the sheet
states: legs at one plan angle, half of them pull; no uplift at the anchor.
"""

from __future__ import annotations

from math import asinh, cos, radians, sin, sqrt

import numpy as np

from tests.second.framing_basis import at_least, at_most, figure, own
from tests.second.gangway import bolt_shear
from tests.second.given import Given, Results, line_of, table
from tests.second.mooring_piles import piles
from tests.second.site import ours

INCHES = 12
CHAINS, PILES, ARMS = "chains and dead weights", "guide piles", "shore arms or cables"
LEVEL = 1.0


def work(g: Given, done: Results) -> Results:
    """Return the results of Mooring."""
    found = to_hold(g, done)
    found |= whole_dock(g)
    found |= legs(g, found)
    found |= catenaries(g, done, found)
    found |= chain_checks(g, done, found)
    found |= dead_weight(g, found)
    found |= piles(g, done, found)
    found |= in_the_wind(g, done, found)
    found |= arms(g, found)
    found |= joints(g, done, found)
    return {f"Mooring.{key}": value for key, value in found.items()}


def kind(g: Given, name: str) -> int:
    """Return 1 where the dock is held in the way named, else 0."""
    return int(g.job["mooring"] == name)


def to_hold(g: Given, done: Results) -> Results:
    """Return forces [lb] and turns [lb·ft] that this section's legs, piles or arms take."""
    holds, here = g.sec["holds"], int(g.sec["holds"] > 0)
    beyond = (g.job["current"] > ours("current_fast")
              or done["SiteLoads.rough"] > g.job["wave_most"])
    count = here * g.sec["carried"]
    angle = radians(g.job["leg_angle"])
    return {
        "engineer": ("ENGINEER REQUIRED: waves or current" if beyond
                     else "yes, as far as they go"),
        "ice": ("ENGINEER REQUIRED where ice forms" if g.job["stays_in"] == "yes"
                else "taken out"),
        **at_least("held_check", holds, 2.0, look=LEVEL, worst="LOOK"), "here": here,
        "carried_y": count * done["SiteLoads.force_across"],
        "carried_x": count * done["SiteLoads.force_along"],
        "turn_y": count * done["SiteLoads.yaw_across"],
        "turn_x": count * done["SiteLoads.yaw_along"], "points": max(holds, 1),
        "sin_a": sin(angle), "cos_a": cos(angle)}


def whole_dock(g: Given) -> Results:
    """Return forces on all sections as built, and those held [lb]; both ways must be held."""
    built = np.array([one.sec["quantity"] for one in g.all])
    counts = np.array([one.sec["carried"] * (one.sec["holds"] > 0) for one in g.all])
    forces = np.array([[one.done[f"SiteLoads.force_{way}"] for one in g.all]
                       for way in ("across", "along")])
    on, held = forces @ built, (forces * counts) @ built
    most = max(float((on / np.maximum(held, own("least_weight"))).max()), 0.0)
    return {"all_y": on[0], "all_x": on[1], "held_y": held[0], "held_x": held[1],
            "unheld": most, **at_most("unheld_check", most, 1.0, look=LEVEL)}


def legs(g: Given, f: Results) -> Results:
    """Return the level pull of the worst leg [lb]: its share of the force, and of the turn.

    A leg leads from a corner; its lever is the distance of the middle from its line.
    """
    against = max(f["points"] // 2, 1)
    corner = np.array([g.sec["length"], g.sec["width"]]) / 2
    lead = 1 if g.job["crossed"] == "yes" else -1
    lever = max(abs(corner @ [f["sin_a"], lead * f["cos_a"]]), own("least_length"))
    across = (f["carried_y"] / f["sin_a"] + f["turn_y"] / lever) / against
    along = (f["carried_x"] / f["cos_a"] + f["turn_x"] / lever) / against
    return {"against": against, "lead": lead, "lever": lever, "pull_y": across, "pull_x": along,
            "leg_H": kind(g, CHAINS) * max(across, along)}


def catenary(H: float, w: float, h: float, length: float) -> Results:
    """Return a chain that leaves the bed level: lifted length, pulls, reach of the whole."""
    lifted = h * sqrt(1 + 2 * H / (w * h))
    reach = H / w * asinh(w * lifted / H)
    return {"s": lifted, "T_max": H + w * h, "T_v": w * lifted, "steepness": w * lifted / H,
            "x_s": reach, "reach": reach + max(length - lifted, 0.0)}


def catenaries(g: Given, done: Results, f: Results) -> Results:
    """Return the chain of a leg at highest, low and high water."""
    least, steel = own("least_length"), figure("practice", "steel")
    sort = line_of("chain", g.job["chain"])
    w = sort["weight in air"] * (1 - g.job["water_weight"] / steel)
    fairlead = g.job["low_water_depth"] + done["Buoyancy.under_service"] / INCHES
    levels = {"": g.job["flood"], "_low": 0.0, "_set": g.job["high_water"]}
    heights = {name: max(fairlead + level, least) for name, level in levels.items()}
    H = max(f["leg_H"], own("least_weight"))
    length = g.job["chain_length"]
    worst = catenary(H, w, heights[""], length)
    low = catenary(H, w, heights["_low"], length)
    at_set = catenary(g.job["set_pull"], w, heights["_set"], length)
    line = [one["chain"] for one in table("chain")].index(g.job["chain"]) + 1
    return {"chain_line": line, "w": w, "height": heights[""], "leg_pull": H, **worst,
            "scope": length / heights[""], "height_low": heights["_low"],
            "height_set": heights["_set"], "reach_low": low["reach"],
            "reach_set": at_set["reach"],
            "drift": kind(g, CHAINS) * f["here"] * max(low["reach"] - at_set["reach"], 0.0),
            "hanging": kind(g, CHAINS) * f["here"] * f["points"] * at_set["T_v"],
            "windward": kind(g, CHAINS) * f["here"] * f["against"] * worst["T_v"]}


def chain_checks(g: Given, done: Results, f: Results) -> Results:
    """Return the checks of the chain's length, strength, drift and weight."""
    on = kind(g, CHAINS) * f["here"]
    needed, pull = on * f["s"], on * f["T_max"]
    working = line_of("chain", g.job["chain"])["breaking force"] / g.job["chain_factor"]
    off = abs(g.sec["chain_weight"] - f["hanging"])
    near = max(ours("gangway_match") * f["hanging"], ours("gangway_match_least"))
    return {"chain_needed": needed,
            **at_most("chain_check", needed, max(g.job["chain_length"], own("least_length"))),
            "chain_pull": pull, "chain_working": working,
            **at_most("chain_strength_check", pull, working),
            "fitting": ours("fitting_factor") * pull,
            **at_most("drift_check", f["drift"], ours("drift_ok"), look=LEVEL, worst="LOOK"),
            "hanging_off": off,
            **at_most("hanging_check", off, near, look=LEVEL, worst="LOOK")}


def dead_weight(g: Given, f: Results) -> Results:
    """Return what a dead weight holds on the bed [lb], and the factor asked of it."""
    friction = line_of("bed_friction", g.job["bed"])["low"]
    floats = g.job["water_weight"] / figure("practice", "concrete")
    sunk = g.job["block_weight"] * (1 - floats)
    swims = (g.job["use"] == "private" and g.job["fetch"] < ours("swim_fetch")
             and g.sec["purpose"] == "platform")
    good = least = g.job["sliding_factor"]
    if swims:
        good, least = (min(ours(f"swim_factor_{name}"), good) for name in ("ok", "least"))
    holds, pull = friction * sunk, f["here"] * f["leg_H"]
    limit = max(holds, own("least_weight"))
    return {"friction": friction, "weight_sunk": sunk, "sliding": holds, "swim": int(swims),
            "factor_ok": good, "factor_least": least, "slide_asked": pull * least,
            "block_needed": pull * good / (friction * (1 - floats)),
            **at_most("slide_check", pull * least, limit, look=least / good)}


def in_the_wind(g: Given, done: Results, f: Results) -> Results:
    """Return how chains and hoops pull a side down in the wind [in], to the first order."""
    typed = g.sec["chain_weight"] * f["against"] / f["points"]
    down = max(f["windward"] - typed, 0.0) + f["against"] * f["rub"]
    half = np.array([done["Stability.half_width"], done["Stability.half_length"]])
    GM = np.array([done["Stability.GM_a_service"], done["Stability.GM_b_service"]])
    soft = float((half ** 2 / np.maximum(GM, own("least_length"))).max())
    dip = down / max(done["Buoyancy.sinkage"], 1.0) + (
        INCHES * down / done["Weight.service"] * soft)
    low, least = done["Stability.low_service"] - dip, g.job["corner_least"]
    return {"pulled_down": down, "corner_soft": soft, "wind_dip": dip, "wind_corner": low,
            **at_least("wind_check", low, least,
                       look=least / max(done["Stability.good_corner"], least))}


def arms(g: Given, f: Results) -> Results:
    """Return the pull in shore arms, or in the half of the lines that pull [lb]."""
    lined = int(g.job["arm_kind"] != "stiff arms")
    share = f["points"] / f["against"] if lined else 1.0
    pull = kind(g, ARMS) * share * max(f["pile_y"] / f["sin_a"], f["pile_x"] / f["cos_a"])
    bolt = pull / ours("arm_bolts")
    line, range_ = lined * g.job["line_factor"] * pull, (
        kind(g, ARMS) * f["here"] * g.job["flood"])
    return {"lined": lined, "arm": pull, "arm_bolt": bolt,
            **at_most("arm_check", bolt, bolt_shear(g)), "line_needed": line,
            **at_most("line_check", line, max(g.job["line_break"], own("least_weight"))),
            "arm_range": range_,
            **at_most("range_check", range_, ours("levels_fixed"), worst="LOOK")}


def joints(g: Given, done: Results, f: Results) -> Results:
    """Return the forces on hinges and rails [lb]: sections between two held ones as a flat beam.
    """
    turn, length, width = max(f["turn_y"], f["turn_x"]), g.sec["length"], g.sec["width"]
    span = g.sec["carried"] * length
    M = f["carried_y"] * span / 8 + turn / 2
    N, S = f["carried_x"], f["carried_y"] / 2 + turn / span
    pull, shear = N / 2 + M / g.sec["hinge_apart"], S / 2
    every = done["Hardware.joined"] * sqrt(
        pull ** 2 + shear ** 2 + done["Hardware.one_up"] ** 2)
    between = max(width - done["Parts.rail_t"] / INCHES, own("least_length"))
    return {"plan_M": M, "hinge_pull": pull, "hinge_shear": shear, "chord": M / between,
            "hinge_all": every,
            **at_most("hinge_check", every, g.job["hinge_limit"])}


