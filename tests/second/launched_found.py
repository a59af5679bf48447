"""AsBuilt, second calculation: what the readings on the water say of one section type.

Four corner freeboards give a plane, its list and trim, and what is left over, the twist.  The
draft at the centre of flotation F gives the weight afloat.  On the leaning axes the moment of
the weight about F is (S + J) v: S the righting moment a unit of slope, J what the wall-sided
rule adds as the centre of buoyancy rises, v the tangent of the lean.
"""

from __future__ import annotations

from math import atan, degrees, hypot, radians, tan

import numpy as np

from tests.second.given import Given, constants, table
from tests.second.launched_afloat import (
    afloat,
    inside,
    off_axes,
    on_axes,
    share_at,
    water_of_a_foot,
)
from tests.second.launched_checks import at_most
from tests.second.trade_names import column, shown

Results = dict[str, float | str]
NOT_READ = "–"
CORNERS = (("near end, left", -1, -1), ("near end, right", -1, 1), ("far end, right", 1, 1),
           ("far end, left", 1, -1))
"""Corner, far end 1 or near -1, right side 1 or left -1; in the order of the readings."""
AT_LAUNCH = ("mean", "tan_list", "tan_trim", "list_deg", "trim_deg", "draft", "full", "line",
             "share", "found", "excess", "dip", "breadth", "KB", "water_foot", "waterplane_a",
             "waterplane_b", "righting_a", "righting_b", "lean_a", "lean_b", "stiffening",
             "moment_a", "moment_b", "moment_y", "moment_x", "centre_y", "centre_x", "holds",
             "high", "arm_y", "arm_x", "for_list", "for_trim", "add_corner", "add_edge", "edge",
             "advice", "shift_y", "shift_x", "float_y", "float_x", "mean_off", "corner_off",
             "tilt", "twist")
AT_TEST = ("test_list", "test_GM")
LATER = ("sunk", "taken", "timber", "verdict")


def work(g: Given, done: Results) -> Results:
    """Return the results of AsBuilt; what was not read leaves dashes."""
    at_launch = [g.sec[f"launch_corner_{k}"] for k in (1, 2, 3, 4)]
    at_month = [g.sec[f"month_corner_{k}"] for k in (1, 2, 3, 4)]
    drops = [g.sec["drop_side"], g.sec["drop_corner"]]
    gates = {"at_launch": _gate(at_launch), "at_test": _gate(drops),
             "later": _gate([*at_launch, *at_month])}
    found: Results = {key: float(gate) for key, gate in gates.items()}
    if gates["at_launch"] == 2:
        found |= _afloat(g, done, at_launch)
        found |= _to_level(g, done, found)
        found |= _against_predicted(g, done, found, at_launch)
    else:
        found |= _not_read(AT_LAUNCH, ("mean", "corner", "level", "twist"), gates["at_launch"])
    if gates["at_test"] == 2:
        found |= _weight_test(g, done, *drops)
    else:
        found |= _not_read(AT_TEST, ("side", "corner_drop"), gates["at_test"])
    if gates["later"] == 2:
        found |= _month(done, sum(at_launch) / 4, sum(at_month) / 4)
    else:
        found |= _not_read(LATER, (), gates["later"])
    return {f"AsBuilt.{key}": value for key, value in found.items()}


def _gate(readings: list) -> int:
    """Return 0 where none of the readings is typed, 1 where some are, 2 where all are."""
    typed = sum(isinstance(reading, int | float) for reading in readings)
    return 0 if not typed else 1 + (typed == len(readings))


def _not_read(keys: tuple[str, ...], checks: tuple[str, ...], gate: int) -> Results:
    word = "NEEDS INPUT" if gate else "not used"
    return {**dict.fromkeys(keys, NOT_READ),
            **{f"{check}_check_ratio": NOT_READ for check in checks},
            **{f"{check}_check_verdict": word for check in checks}}


def _afloat(g: Given, done: Results, read: list[float]) -> Results:
    """Return the plane through the readings, the weight afloat and its moments about F."""
    F_y, F_x = done["Buoyancy.flotation_y"], done["Buoyancy.flotation_x"]
    half_b, half_l = 12 * done["Stability.half_width"], 12 * done["Stability.half_length"]
    # The plane free = mean - x tan(trim) - y tan(list) that fits four corners best.
    sides = np.array([[1, -end * half_l, -side * half_b] for _, end, side in CORNERS])
    mean, tan_trim, tan_list = (float(v) for v in np.linalg.lstsq(sides, np.array(read))[0])
    free = mean - 12 * (F_x * tan_trim + F_y * tan_list)
    # House choice: readings above the floats' bottom count as a draft of 0.
    draft = max(12 * done["Parts.deck_top"] - free, 0.0)
    share = share_at(g, done, draft)
    weight = share * done["Buoyancy.box_water"]
    now = afloat(g, done, weight, done["Weight.launch_kg"], share)
    foot = water_of_a_foot(done, now.breadth)
    planes = [foot * k for k in now.square]
    stiff = [plane + weight * (now.KB - now.kg) for plane in planes]
    lean = on_axes(done, tan_list, tan_trim)
    rise = sum(plane * v ** 2 for plane, v in zip(planes, lean, strict=True)) / 2
    moments = [(S + rise) * v for S, v in zip(stiff, lean, strict=True)]
    moment_y, moment_x = off_axes(done, *moments)
    dip = 12 * (abs(tan_trim) * done["Stability.reach_x"]
                + abs(tan_list) * done["Stability.reach_y"])
    depth = done["Parts.float_depth"]
    holds = min(stiff) > 0 and draft - dip >= 0 and draft + dip <= depth
    divisor = max(weight, constants("own")["least_weight"])
    return {
        "mean": mean, "tan_list": tan_list, "tan_trim": tan_trim,
        "list_deg": degrees(atan(tan_list)), "trim_deg": degrees(atan(tan_trim)),
        "draft": draft, "full": min(draft, depth), "line": _line_of_circle(draft / depth),
        "share": share,
        "found": weight, "excess": weight - done["Weight.launch"], "dip": dip,
        "breadth": now.breadth, "KB": now.KB, "water_foot": foot,
        "waterplane_a": planes[0], "waterplane_b": planes[1], "righting_a": stiff[0],
        "righting_b": stiff[1], "lean_a": lean[0], "lean_b": lean[1], "stiffening": rise,
        "moment_a": moments[0], "moment_b": moments[1], "moment_y": moment_y,
        "moment_x": moment_x,
        "centre_y": moment_y / divisor - (done["Weight.launch_y"] - F_y),
        "centre_x": moment_x / divisor - (done["Weight.launch_x"] - F_x),
        "holds": "hold" if holds else "OUT OF RANGE: float corner out or under, or unstable"}


def _line_of_circle(part: float) -> float:
    """Return the line of the part-full circle at or before a depth over diameter."""
    depths = [float(column(row, "T/d")) for row in table("circle_segments")]
    inside = sum(depth <= part + 1e-9 for depth in depths)
    return float(min(max(inside, 1), len(depths) - 1))


def _to_level(g: Given, done: Results, found: Results) -> Results:
    """Return weight at the corner opposite to the heavy one, and the rest at a side or end."""
    moment_y, moment_x = float(found["moment_y"]), float(found["moment_x"])
    end, side = 1 if moment_x < 0 else -1, 1 if moment_y < 0 else -1
    number = next(k for k, (_, far, right) in enumerate(CORNERS) if (far, right) == (end, side))
    least = constants("own")["least_length"]
    arm_y = max(done["Stability.half_width"] - inside() - side * done["Buoyancy.flotation_y"],
                least)
    arm_x = max(done["Stability.half_length"] - inside() - end * done["Buoyancy.flotation_x"],
                least)
    for_list, for_trim = abs(moment_y) / arm_y, abs(moment_x) / arm_x
    corner, rest = min(for_list, for_trim), abs(for_list - for_trim)
    words = next(row for row in table("launch_corners")
                 if column(row, "corner") == CORNERS[number][0])
    edge = str(column(words, "side" if for_list >= for_trim else "end"))
    # A float moved by a foot moves its own lift less its weight.
    lift = max(float(found["found"]) - done["Parts.floats"]
               * g.catalog["floats"][g.sec["float_model"]]["own weight"],
               constants("own")["least_weight"]) / done["Parts.floats"]
    return {"high": number + 1.0, "arm_y": arm_y, "arm_x": arm_x, "for_list": for_list,
            "for_trim": for_trim, "add_corner": corner, "add_edge": rest, "edge": edge,
            "advice": f"{shown(corner, 0)} lb at the {CORNERS[number][0]}; {shown(rest, 0)} lb at "
                      f"the middle of the {edge}",
            "shift_y": abs(moment_y) / g.sec["shift_weight"],
            "shift_x": abs(moment_x) / g.sec["shift_weight"],
            "float_y": abs(moment_y) / lift, "float_x": abs(moment_x) / lift}


def _against_predicted(g: Given, done: Results, found: Results, read: list[float]) -> Results:
    """Return readings against what Launch predicts, tilt and twist, with their checks."""
    tolerance = constants("lake_guidelines")["built_tolerance"]
    mean_off = abs(float(found["mean"]) - done["Launch.mean"])
    corner_off = max(abs(f - done[f"Launch.corner_{k}"]) for k, f in enumerate(read, start=1))
    tilt = degrees(atan(hypot(float(found["tan_list"]), float(found["tan_trim"]))))
    twist = abs(read[0] + read[2] - read[1] - read[3]) / 2
    most = g.job["tilt_rest_most"]
    if g.job["accessible"] == "yes":
        ada = constants("ada_2010")
        most = degrees(atan(ada["cross_slope_rise"] / ada["cross_slope_run"]))
    return {
        "mean_off": mean_off, "corner_off": corner_off, "tilt": tilt, "twist": twist,
        **at_most("mean_check", mean_off, tolerance),
        **at_most("corner_check", corner_off, tolerance),
        **at_most("level_check", tilt, most, look=g.job["tilt_rest_ok"] / most),
        **at_most("twist_check", twist, constants("own_launch")["twist_most"], worst="LOOK")}


def _weight_test(g: Given, done: Results, side: float, corner: float) -> Results:
    """Return the drops read against those predicted, and the inclining test at the side."""
    own = constants("own_launch")
    found: Results = {}
    for key, read, predicted in (("side", side, done["Launch.drop_side"]),
                                 ("corner_drop", corner, done["Launch.drop_corner"])):
        allowed = max(own["test_share"] * predicted, own["test_least"])
        found |= at_most(f"{key}_check", abs(read - predicted), allowed, worst="LOOK")
    least = constants("own")
    sunk = done["Launch.test_draft"] - done["Buoyancy.draft_launch"]
    tilted = max(side - sunk, 0) / 12
    list_read = min(degrees(atan(tilted / max(abs(done["Launch.read_y"]),
                                              least["least_length"]))), own["list_read_most"])
    moment = g.sec["test_weight"] * abs(done["Launch.test_y"] - done["Buoyancy.flotation_y"])
    GM = moment / (done["Launch.test_total"] * max(tan(radians(list_read)),
                                                   least["least_share"]))
    return found | {"test_list": list_read, "test_GM": GM}


def _month(done: Results, launched: float, later: float) -> Results:
    """Return the water taken up, by the change of the mean reading."""
    sunk = launched - later
    taken = sunk * done["Launch.inch"]
    timber = done["Weight.lifted"] - done["Weight.launch"]
    more = taken > timber + constants("own_launch")["soak_allowed"] * done["Launch.inch"]
    return {"sunk": sunk, "taken": taken, "timber": timber, "verdict": (
        "LOOK: more than wet timber; look for a float that holds water" if more
        else "as wet timber, or less")}
