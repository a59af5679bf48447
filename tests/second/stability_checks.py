"""Stability, second calculation: the checks of criteria.md 4, and the righting arm's curve.

A case that turns over is NOT OK; one in which a float corner comes out, a float top goes under,
or the formulas are near their end, is LOOK at best.
"""

from __future__ import annotations

from collections.abc import Iterable
from math import atan, cos, degrees, radians, sin, tan

import numpy as np

from tests.second.framing_basis import at_least, at_most, figure, own
from tests.second.given import Given, Results
from tests.second.stability_cases import Case, number
from tests.second.stability_group import INCHES, Group
from tests.second.stability_weights import Afloat

FAR = 99
STEPS = 6
NEVER, ALWAYS = 1.0, -1.0
"""Ratios from which a verdict reads LOOK."""


def holds(cases: Iterable[Case]) -> bool:
    """Return whether the formulas are exact in all cases."""
    return all(number(case) == 1 for case in cases)


def leaning(cases: list[Case], most: float) -> float:
    """Return the largest tilt over the most allowed; far beyond it where one turns over."""
    if not all(case.state.stable for case in cases):
        return FAR
    return max(case.tilt for case in cases) / most


def tilts(name: str, share: float, cases: list[Case], good: float, most: float) -> Results:
    """Return a check of tilt."""
    return at_most(name, share, 1.0, look=good / most if holds(cases) else ALWAYS)


def low_corner(name: str, low: float, cases: list[Case], good: float, least: float) -> Results:
    """Return a check of a low corner [in]."""
    look = least / max(good, own("least_inches"))
    return at_least(name, low, least, look=look if holds(cases) else ALWAYS)


def work(g: Given, done: Results, afloat: dict[str, Afloat], cases: dict[str, Case],
         f: Results) -> Results:
    """Return all checks of list, trim and low corners."""
    found = stands_up(afloat)
    at_rest = [cases["launch"], cases["service"]]
    steepest = g.job["tilt_rest_most"]
    if g.job["accessible"] == "yes":
        ada = figure("ada_2010", "cross_slope_rise") / figure("ada_2010", "cross_slope_run")
        steepest = degrees(atan(ada))
    share = leaning(at_rest, steepest)
    found |= {"rest_most": steepest, "rest_share": share,
              **tilts("rest_check", share, at_rest, g.job["tilt_rest_ok"], steepest)}
    even, least = [cases["flotation"], cases["capacity"]], g.job["even_least"]
    low = min(case.low for case in even)
    found |= {"even_low": low, **low_corner("even_check", low, even, least, least)}
    good = g.job["corner_share"] * done["Buoyancy.free_service"]
    point = [cases[name] for name in ("edge", "end", "corner")]
    share, low = leaning(point, g.job["tilt_point_most"]), min(case.low for case in point)
    found |= {"point_share": share, "good_corner": good, "point_low": low,
              **tilts("point_check", share, point, g.job["tilt_point_ok"],
                      g.job["tilt_point_most"]),
              **low_corner("point_low_check", low, point, good, g.job["corner_least"])}
    found |= finger(g, done, afloat["service"], f)
    found |= one_half(g, [cases[name] for name in ("half_across", "half_along", "gangway")], good)
    lost = cases["lost"]
    share = lost.tilt / g.job["tilt_lost"] if holds([lost]) else FAR
    found |= {"lost_share": share, **at_most("lost_check", share, 1.0, worst="LOOK"),
              **low_corner("lost_low_check", lost.low, [lost], g.job["lost_ok"],
                           g.job["lost_least"])}
    snow = cases["snow"]
    return found | low_corner("snow_low_check", snow.low, [snow], least, least)


def stands_up(afloat: dict[str, Afloat]) -> Results:
    """Return the least metacentric height of all weights afloat."""
    worst = min(float(state.GM.min()) for state in afloat.values())
    return {"GM_worst": worst,
            **at_least("stable_check", worst, own("least_length"), look=NEVER)}


def finger(g: Given, done: Results, service: Afloat, f: Results) -> Results:
    """Return the freeboard lost at the outer end under a load near it [in].

    House choices: the load is that of the guidelines, on the centreline; straight-line lean.
    """
    group: Group = service.group
    load, half = figure("lake_guidelines", "live_point"), done["Parts.overall_length"] / 2
    end = (np.array([0.0, half]) - group.centre) @ group.axes
    at = (np.array([0.0, half - figure("lake_guidelines", "finger_load_from_end")])
          - group.centre) @ group.axes
    righting = np.maximum(service.weight * service.GM - load * f["fall"],
                          own("least_weight") * own("least_length"))
    loss = INCHES * load * (1 / f["water_foot"] + float((end * at / righting).sum()))
    judged = max(loss, 0.0) if g.sec["purpose"] == "finger" else 0.0
    most = g.job["finger_most"]
    asked = g.job["finger_rule"] == "yes"
    limit = most if asked else max(most, INCHES * done["Parts.deck_top"])
    return {"end_a": end[0], "end_b": end[1], "load_a": at[0], "load_b": at[1],
            "end_S_a": righting[0], "end_S_b": righting[1], "end_loss": loss,
            "finger_loss": judged, **at_most("finger_check", judged, limit, look=most / limit)}


def one_half(g: Given, cases: list[Case], good: float) -> Results:
    """Return the checks with one half loaded, and with the gangway loaded."""
    most = g.job["tilt_half_most"]
    tilt = leaning(cases, most)
    strict = g.sec["purpose"] in ("platform", "landing") or tilt >= FAR
    share = tilt if strict else min(tilt, 1.0)
    low = min(case.low for case in cases)
    return {"half_tilt": tilt, "half_share": share, "half_low": low,
            **tilts("half_check", share, cases, g.job["tilt_half_ok"], most),
            **low_corner("half_low_check", low, cases, good, g.job["corner_least"])}


def arm_curve(g: Given, done: Results, point: Afloat, f: Results) -> Results:
    """Return the righting arm under the point load [ft] in six steps, and the load's lever.

    Wall-sided: GZ = sin φ (GM + ½ BM tan² φ), up to where a float corner leaves the water or a
    float top goes under, or 30 degrees.
    """
    depth, reach = done["Parts.float_depth"], max(point.group.reach[0], own("least_length"))
    emerge = degrees(atan(point.draft / INCHES / reach))
    immerse = degrees(atan(max(depth - point.draft, 0.0) / INCHES / reach))
    last = max(min(emerge, immerse, figure("own_afloat", "arm_shown")), 0.0)
    lever = g.sec["point_load"] * abs(f["edge_y"] - point.group.centre[0]) / point.weight
    found: Results = {"emerge": emerge, "immerse": immerse, "range_end": last}
    for k, angle in enumerate(np.linspace(0.0, last, STEPS + 1)[1:], 1):
        turn = radians(angle)
        arm = sin(turn) * (point.GM[0] + point.BM[0] * tan(turn) ** 2 / 2)
        found |= {f"arm_angle_{k}": angle, f"arm_GZ_{k}": arm, f"arm_load_{k}": lever * cos(turn)}
    return found
