"""The gangway, second calculation, for one section type: slope, foot, width, hold on the shore.

From hydro.md 8 and loadpath.md 10 of the basis.  House choices are those that the sheet states.
"""

from __future__ import annotations

from math import atan, degrees, hypot, pi, sqrt

import numpy as np

from tests.second.framing_basis import at_least, at_most, figure, own
from tests.second.given import Given, Results, constants, line_of
from tests.second.site import ours

INCHES = 12
LEVEL, ALWAYS = 1.0, -1.0
"""Ratios from which a verdict reads LOOK."""


def work(g: Given, done: Results) -> Results:
    """Return the results of Gangway."""
    found = typed_weight(g, done)
    found |= slopes(g, done)
    found |= accessible(g, done, found)
    found |= foot(g, done, found)
    found |= further_lean(g, done, found)
    found |= foot_checks(g, done, found)
    found |= shore(g, done)
    lands = done["SiteLoads.lands"]
    found["level_words"] = ("deck above the hinge at high water"
                            if lands and found["rise_high"] < 0 else "deck below the hinge")
    return {f"Gangway.{key}": value for key, value in found.items()}


def typed_weight(g: Given, done: Results) -> Results:
    """Return the weight at rest typed against half the gangway's [lb]; a landing has one."""
    has = done["SiteLoads.lands"] or (g.sec["purpose"] == "landing"
                                      and g.job["gangway_length"] > 0)
    expected = g.job["gangway_weight"] / 2 if has else 0.0
    off = abs(g.sec["gangway_rest"] - expected)
    limit = max(ours("gangway_match") * expected, ours("gangway_match_least"))
    return {"expected": expected, "mismatch": off,
            **at_most("match_check", off, limit, look=LEVEL, worst="LOOK")}


def slopes(g: Given, done: Results) -> Results:
    """Return drops from hinge to deck [ft], level reaches [ft] and slopes at three levels.

    House choice: low water with the flotation load on, high and highest water as launched.
    """
    loaded, light = (done[f"Buoyancy.free_{name}"] / INCHES for name in ("flotation", "launch"))
    high, hinge = g.job["high_water"], g.job["hinge_height"]
    rises = {"low": hinge - loaded, "high": hinge - high - light,
             "flood": hinge - max(high, g.job["flood"]) - light}
    G, lands = g.job["gangway_length"], done["SiteLoads.lands"]
    runs = {name: sqrt(max(G ** 2 - R ** 2, ours("least_square"))) for name, R in rises.items()}
    slope = {name: abs(rises[name]) / runs[name] for name in rises}
    steepest = lands * max(slope["low"], slope["high"])
    drop = max(abs(rises["low"]), abs(rises["high"]))
    most, in_flood = 1 / g.job["gangway_run"], lands * slope["flood"]
    return {"deck_loaded": loaded, "deck_light": light,
            **{f"rise_{name}": R for name, R in rises.items()},
            **{f"run_{name}": u for name, u in runs.items()},
            "slope_low": slope["low"], "slope_high": slope["high"], "slope": steepest,
            "drop_most": drop, "length_needed": drop * hypot(1, g.job["gangway_run"]),
            "slope_flood": in_flood,
            **at_most("slope_check", steepest, most,
                      look=ALWAYS if in_flood > most else LEVEL)}


def accessible(g: Given, done: Results, f: Results) -> Results:
    """Return length [ft] and width [in] that an accessible route asks."""
    ada, lands = constants("ada_2010"), done["SiteLoads.lands"]
    needed = f["drop_most"] * hypot(1, ada["ramp_run"])
    small = g.job["slips"] < ada["small_facility_slips"]
    waiver = ada["gangway_waiver_small" if small else "gangway_waiver"]
    route = g.job["accessible"] == "yes"
    length = lands * route * min(needed, waiver)
    width = max(g.job["gangway_width_least"], ada["clear_width"] * route)
    has = max(g.job["gangway_length"], own("least_length"))
    return {"access_needed": needed, "access_waiver": waiver, "access_length": length,
            **at_most("access_check", length, has, look=LEVEL),
            "width_least": width, "width_short": lands * width,
            **at_most("width_check", lands * width, g.job["gangway_width"], look=LEVEL)}


def foot(g: Given, done: Results, f: Results) -> Results:
    """Return the travel of the foot, and the room that the landing has for it [ft].

    A gangway that passes the level of its hinge reaches furthest there.
    """
    runs = [f["run_low"], f["run_high"], f["run_flood"]]
    passes = f["rise_low"] * f["rise_flood"] < 0
    travel = (g.job["gangway_length"] if passes else max(runs)) - min(runs)
    along = done["Parts.deck_length"] / 2 - abs(g.sec["gangway_x"])
    across = done["Parts.deck_width"] / 2 - abs(g.sec["gangway_y"])
    room = min(along, across) if g.sec["gangway_y"] else min(along, done["Parts.deck_length"])
    lands = done["SiteLoads.lands"]
    asked = lands * (max(travel, 0.0) + ours("foot_past")) / 2
    return {"travel": travel, "room": room, "travel_asked": asked,
            **at_most("travel_check", asked, max(room, own("least_length"))),
            "foot_off": lands * max(travel, 0.0) / 2}


def further_lean(g: Given, done: Results, f: Results) -> Results:
    """Return what more it leans and dips with the foot at the end of its travel, by case."""
    # On each leaning axis the foot, and a corner, count with the sum of sizes: the worse side.
    turn = abs(done["Stability.turn"])
    spin = np.array([[1.0, turn], [turn, 1.0]]) / done["Stability.turn_length"]
    at = spin @ (np.array([1.0, 0.0]) if g.sec["gangway_y"] else np.array([0.0, 1.0]))
    at = at * f["foot_off"]
    corner = spin @ np.array([
        done["Stability.half_width"] + abs(done["Buoyancy.flotation_y"]),
        done["Stability.half_length"] + abs(done["Buoyancy.flotation_x"])])
    found = {"foot_a": at[0], "foot_b": at[1], "corner_a": corner[0], "corner_b": corner[1]}
    weights = {"service": done["Weight.service"], "flotation": done["Buoyancy.weight_flotation"],
               "gangway": done["Stability.weight_afloat_gangway"],
               "half": done["Stability.weight_afloat_half"]}
    for name, weight in weights.items():
        load = done["SiteLoads.gangway_25" if name == "gangway" else "SiteLoads.gangway_dead"]
        GM = np.maximum([done[f"Stability.GM_{axis}_{name}"] for axis in "ab"],
                        own("least_length"))
        slopes = load * at / (weight * GM)
        found |= {f"lean_{name}": float(np.hypot(*slopes)),
                  f"dip_{name}": INCHES * float(slopes @ corner)}
    return found


def foot_checks(g: Given, done: Results, f: Results) -> Results:
    """Return the checks of tilt, low corner and wheels with the foot at its worse end."""
    lands = done["SiteLoads.lands"]

    def tilt(case: str, weight: str) -> float:
        return done[f"Stability.tilt_{case}"] + degrees(atan(f[f"lean_{weight}"]))

    rest = lands * tilt("service", "service")
    most = done["Stability.rest_most"]
    half_most, point = g.job["tilt_half_most"], g.sec["point_load"]
    halves = (("gangway", "gangway"), ("half_across", "half"), ("half_along", "half"))
    tilted = lands * max(tilt(*names) for names in halves)
    low = min(done[f"Stability.low_{case}"] - f[f"dip_{weight}"]
              for case, weight in (*halves, ("flotation", "flotation")))
    judged = low if lands else 2 * INCHES * done["Parts.deck_top"]
    least = g.job["corner_least"]
    # A plate over n stringers leaves 2/(n + 1) of a wheel on one; two wheels, a width apart.
    share = 2 / (g.job["plate_stringers"] + 1)
    apart = g.job["gangway_width"] / INCHES / max(done["Parts.clear_span"], own("least_length"))
    wheel = done["SiteLoads.gangway_75"] * share * max(1 - apart, ours("wheel_middle"))
    return {
        "foot_rest": rest, **at_most("foot_rest_check", rest, most,
                                     look=min(g.job["tilt_rest_ok"], most) / most),
        "foot_tilt": tilted, **at_most("foot_tilt_check", tilted, half_most,
                                       look=min(g.job["tilt_half_ok"], half_most) / half_most),
        "foot_corner": low, "foot_low": judged,
        **at_least("foot_low_check", judged, least,
                   look=least / max(done["Stability.good_corner"], least)),
        "foot_point": wheel, **at_most("foot_point_check", wheel, point, look=LEVEL,
                                       worst="LOOK")}


def bolt_shear(g: Given) -> float:
    """Return what a bolt of the frame's size carries in shear, steel alone [lb]."""
    steel = constants("aisc_360_10")
    area = pi * line_of("bolts", g.job["bolt"])["D"] ** 2 / 4
    return steel["Fnv_A307"] * area / steel["omega"]


def shore(g: Given, done: Results) -> Results:
    """Return the pull and weight on a bolt of the abutment [lb]."""
    lands, limit = done["SiteLoads.lands"], g.job["anchor_limit"]
    weight = (g.job["gangway_weight"] + figure("ufc_4_152_01", "gangway_uniform")
              * done["SiteLoads.gangway_area"]) / 2
    bolt = lands * hypot(weight, done["SiteLoads.gangway_push"]) / g.job["abutment_bolts"]
    steel = bolt_shear(g)
    carries = min(steel, limit) if limit > 0 else steel
    unknown = lands and limit <= 0
    return {"shore": weight, "shore_bolt": bolt, "bolt_shear": steel, "bolt_holds": carries,
            **at_most("shore_check", bolt, carries, look=ALWAYS if unknown else None)}
