"""Setout, Launch and AsBuilt, second calculation, for one section type.

Launch: what a section weighs on the hook, and what its four corners should read on the water.
x runs along to the far end, y across to the right hand; a positive list puts the right side
down, a positive trim the far end.
"""

from __future__ import annotations

from math import atan, cos, degrees, radians, sin

from tests.second import launched_found, launched_setout
from tests.second.given import Given, constants
from tests.second.launched_afloat import Afloat, afloat, inside, off_axes, on_axes
from tests.second.launched_checks import at_most

Results = dict[str, float | str]
NOT_READ = "–"
DOUBTED: dict[str, str] = {}
"""Result, or check, in which the second calculation stands against the workbook, and why."""
CORNERS = {"near end, left": (-1, -1), "near end, right": (-1, 1), "far end, right": (1, 1),
           "far end, left": (1, -1)}
"""Corner → far or near end, right or left side; in this order round the section."""


def work(g: Given, done: Results) -> Results:
    """Return the results of Setout, Launch and AsBuilt for one section type."""
    found = launched_setout.work(g, done)
    found |= {f"Launch.{key}": value for key, value in launch(g, done).items()}
    return found | launched_found.work(g, {**done, **found})


def launch(g: Given, done: Results) -> Results:
    """Return the results of Launch, by their keys."""
    found = _hook(g, done)
    found |= _gear(g, found)
    found |= _predicted(g, done)
    found |= _pencil(g, done)
    return found | _with_test_weight(g, done)


def _hook(g: Given, done: Results) -> Results:
    """Return weights to lift and the tension in a sling leg, two of four legs carrying."""
    own = constants("own_launch")
    load = g.job["lift_factor"] * max(done["Weight.launch"], done["Weight.lifted"])
    found: Results = {
        "dry": done["Weight.launch"], "frame": done["Weight.frame_only"],
        "soaked": done["Weight.service"] - g.sec["gangway_rest"] - g.sec["chain_weight"],
        "pick": g.job["sling_share"] * g.sec["length"],
        "hook_x": done["Weight.launch_x"], "hook_y": done["Weight.launch_y"],
        "hook_load": load}
    for name in ("steep", "middle", "flat"):
        factor = 1 / sin(radians(own[f"angle_{name}"]))
        found[f"factor_{name}"] = factor
        found[f"tension_{name}"] = load / 2 * factor
    return found


def _gear(g: Given, found: Results) -> Results:
    """Return the checks of sling and machine, once both are typed."""
    sling, machine = g.sec["sling_limit"], g.sec["machine_limit"]
    typed = sum(isinstance(limit, int | float) for limit in (sling, machine))
    if typed < 2:
        word = "NEEDS INPUT" if typed else "not used"
        return {"gear": float(typed > 0), **{
            f"{check}_check_{part}": value for check in ("sling", "machine")
            for part, value in (("ratio", NOT_READ), ("verdict", word))}}
    return {"gear": 2.0, **at_most("sling_check", found["tension_middle"], sling),
            **at_most("machine_check", found["hook_load"], machine)}


def _predicted(g: Given, done: Results) -> Results:
    """Return list, trim and the four corners of the deck above water as launched [in]."""
    tan_list, tan_trim = done["Stability.tan_list_launch"], done["Stability.tan_trim_launch"]
    free = 12 * done["Parts.deck_top"] - done["Buoyancy.draft_launch"]
    corners = [free - 12 * ((end * done["Stability.half_length"] - done["Buoyancy.flotation_x"])
                            * tan_trim
                            + (side * done["Stability.half_width"]
                               - done["Buoyancy.flotation_y"]) * tan_list)
               for end, side in CORNERS.values()]
    return {"state": done["Stability.state_launch"],
            "list_deg": degrees(atan(tan_list)), "trim_deg": degrees(atan(tan_trim)),
            **{f"corner_{k}": value for k, value in enumerate(corners, start=1)},
            "mean": sum(corners) / 4}


def _pencil(g: Given, done: Results) -> Results:
    """Return pounds for an inch: sunk, or one side or end lower than the other."""
    now = afloat(g, done, done["Weight.launch"], done["Weight.launch_kg"])
    # Righting moments against list alone and against trim alone, the axes turned back upright.
    turn = atan(done["Stability.turn"])
    on_a, on_b = now.GM
    across = now.weight * max(on_a * cos(turn) ** 2 + on_b * sin(turn) ** 2, 0.0)
    along = now.weight * max(on_b * cos(turn) ** 2 + on_a * sin(turn) ** 2, 0.0)
    half_b, half_l = done["Stability.half_width"], done["Stability.half_length"]
    return {"inch": now.weight / now.depth / 12,
            "level_side": across / (12 * 2 * half_b) / (half_b - inside()),
            "level_end": along / (12 * 2 * half_l) / (half_l - inside())}


def _with_test_weight(g: Given, done: Results) -> Results:
    """Return drops of the deck beside the test weight, at the side and at the corner [in]."""
    weight = g.sec["test_weight"]
    total = done["Weight.launch"] + weight
    kg = (done["Weight.launch"] * done["Weight.launch_kg"]
          + weight * done["Parts.deck_top"]) / total
    now = afloat(g, done, total, kg)
    end, side = CORNERS[g.sec["test_corner"]]
    y, x = side * (done["Stability.half_width"] - inside()), end * (
        done["Stability.half_length"] - inside())
    read_y = side * done["Stability.half_width"] - done["Buoyancy.flotation_y"]
    read_x = end * done["Stability.half_length"] - done["Buoyancy.flotation_x"]
    found: Results = {
        "test_total": total, "test_kg": kg, "test_draft": now.draft,
        "KB_launch_test": now.KB, "breadth_launch_test": now.breadth,
        "depth_launch_test": now.depth, "test_y": y, "test_x": x, "read_y": read_y,
        "read_x": read_x, "test_line": list(CORNERS).index(g.sec["test_corner"]) + 1.0}
    for axis, BM, GM in zip("ab", now.BM, now.GM, strict=True):
        found[f"BM_{axis}_launch_test"], found[f"GM_{axis}_launch_test"] = BM, GM
    found["test_state"] = "yes" if min(now.GM) > 0 else "NO: do not put it on"
    found["drop_side"] = _drop(done, now, weight, (y, 0.0),
                               (read_y, -done["Buoyancy.flotation_x"]))
    found["drop_corner"] = _drop(done, now, weight, (y, x), (read_y, read_x))
    tan_list, tan_trim = off_axes(done, *leans(done, now, weight, (y, x)))
    corner = 12 * (abs(tan_trim) * done["Stability.reach_x"]
                   + abs(tan_list) * done["Stability.reach_y"])
    found["test_range"] = (
        "hold" if corner <= min(now.draft, done["Parts.float_depth"] - now.draft) + 1e-9
        else "OUT OF RANGE: a float corner out or under; it drops more")
    return found


def _drop(done: Results, now: Afloat, weight: float, at: tuple[float, float],
          read: tuple[float, float]) -> float:
    """Return how far the deck goes down where it is read, from F, with a weight at a place."""
    lean = leans(done, now, weight, at)
    tan_list, tan_trim = off_axes(done, *lean)
    sunk = now.draft - done["Buoyancy.draft_launch"]
    return sunk + 12 * (read[0] * (tan_list - done["Stability.tan_list_launch"])
                        + read[1] * (tan_trim - done["Stability.tan_trim_launch"]))


def leans(done: Results, now: Afloat, weight: float, at: tuple[float, float],
          ) -> tuple[float, float]:
    """Return the tangents of the leans on axes a and b with a weight at a place.

    The centre of buoyancy rises by half the sum of BM times tangent squared; house choice: the
    tangents of the rise are those of the straight line.
    """
    empty = now.weight - weight
    y = (empty * (done["Weight.launch_y"] - done["Buoyancy.flotation_y"])
         + weight * (at[0] - done["Buoyancy.flotation_y"])) / now.weight
    x = (empty * (done["Weight.launch_x"] - done["Buoyancy.flotation_x"])
         + weight * (at[1] - done["Buoyancy.flotation_x"])) / now.weight
    arms = on_axes(done, y, x)
    # House choice: an unstable section counts as barely stable, and is said to be unstable.
    GMs = [max(GM, constants("own")["least_length"]) for GM in now.GM]
    first = [arm / GM for arm, GM in zip(arms, GMs, strict=True)]
    rise = sum(BM * v ** 2 for BM, v in zip(now.BM, first, strict=True)) / 2
    return tuple(arm / (GM + rise) for arm, GM in zip(arms, GMs, strict=True))
