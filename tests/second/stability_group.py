"""Stability, second calculation: a neighbour that holds in roll, the float group, a float lost.

Ways are in the order (across, along) in every array: y, then x.  A section leans on two axes, a
and b, on which list and trim no longer pull on one another (loadpath.md 12): the eigenvectors of
the mean squares of the waterplane.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from tests.second import afloat
from tests.second.framing_basis import at_most, own
from tests.second.given import Given, Results

INCHES = 12
LETTERS = "ABCDEF"
EXTRAS = range(1, 5)
LEVEL = 1e-12
"""Share under which two mean squares are alike."""
SLACK = 1e-9
"""A moment under a billionth of a foot times the weight leans to neither side."""
EVEN = 1e-9
"""Two places that go down alike to this [ft] are taken to go down alike."""


@dataclass
class Group:
    """Floats in plan: centre of flotation F, leaning axes, mean squares on them, reach.

    ``axes`` has a column for axis a and one for axis b; ``squares`` are those of the waterplane
    less what a round float's own breadth adds, which is ``thin`` at mid-depth.  Where the axes
    lie at an eighth of a turn (``tied``) rounding alone says which of them is called a.
    """

    centre: np.ndarray
    axes: np.ndarray
    squares: np.ndarray
    thin: np.ndarray
    reach: np.ndarray
    spread: np.ndarray
    tied: bool


def held(g: Given, done: Results, f: Results) -> Results:
    """Return what a neighbour's floats do against roll, and what its hinges carry."""
    alone = righting_alone(g, done)
    name = g.sec["held_by"]
    number = 0 if name == "none" else LETTERS.index(name)
    other = next((one for one in g.all if one.letter == LETTERS[number]), None)
    stiff, trim, theirs = 0.0, 0.0, 0
    if other is not None:
        there = righting_alone(other, other.done or afloat.work(other, {}))
        trim = float(there[1])
        stiff = float(there[1 if g.sec["holder_lies"] == "across" else 0])
        stiff /= g.sec["holder_holds"]
        by = other.sec["held_by"]
        theirs = 1 if by == "none" else LETTERS.index(by) + 2
    # House choice: a type that names itself, or a neighbour that does, is no neighbour.
    there = int(stiff > 0 and name not in (
        "none", g.letter, other.sec["held_by"] if other is not None else "none"))
    lists, rows = rolling(g, done, alone[0] + stiff, f)
    share, limit = max(lists.values()) * max(stiff, 0.0), g.job["hinge_load"]
    pin = there * (max(g.sec["point_load"], f["half_load"] / 4, f["gangway_more"])
                   + share / g.sec["hinge_apart"])
    if name != "none" and not there:
        pin = 99 * limit
    foot = max(done["Buoyancy.sinkage"], 1.0) * INCHES
    counts = there and pin <= limit
    return {"held_line": number + 2 if name != "none" else 1, "held_number": number + 1,
            "alone_list": alone[0], "alone_trim": alone[1], "holder_trim": trim,
            "holder_stiff": stiff, "holder_there": there, "holder_line": theirs,
            "roll_share": share, "pin_load": pin, **rows,
            **at_most("pin_check", pin, limit), "water_foot": foot,
            "held_square": stiff / foot if counts else 0.0}


def righting_alone(g: Given, done: Results) -> np.ndarray:
    """Return the righting moment a unit of list, and of trim, in service [lb·ft]."""
    inertia = np.array([done["Buoyancy.inertia_across"], done["Buoyancy.inertia_along"]])
    return g.job["water_weight"] * inertia - done["Weight.service"] * (
        done["Weight.service_kg"] - done["Buoyancy.KB"])


def rolling(g: Given, done: Results, rights: float, f: Results,
            ) -> tuple[dict[str, float], Results]:
    """Return the straight-line list [ft/ft] by each thing that rolls it, and the rows to it.

    ``rights`` [lb·ft] is what rights it at rest, the neighbour's share in it.  House choice: its
    own moment counts as if it leaned to the side of the load.
    """
    breadth, floats = done["Parts.overall_width"], done["Parts.floats"]
    left, y = max(floats - 1, 1), done["Parts.row_y"]
    weight, draft = done["Weight.service"], done["Buoyancy.draft_service"] / INCHES
    alone = abs(weight * (done["Weight.service_y"] - done["Buoyancy.flotation_y"]))
    # A float's water about the new centre: its own inertia, and y² and what the centre moves.
    water = g.job["water_weight"] * done["Buoyancy.waterplane"]
    gone = water * (done["Parts.float_b"] ** 2 / 12 / floats + y ** 2 / left)
    P, half, snow, more = (g.sec["point_load"], f["half_load"], f["snow_half_load"],
                           f["gangway_more"])
    foot = abs(g.sec["gangway_y"] - done["Buoyancy.flotation_y"])
    moments = {"point": (P * (breadth / 2 - own("point_from_edge") / INCHES), P * f["fall"]),
               "half": (half * breadth / 4, half * f["fall"]),
               "snow": (snow * breadth / 4, snow * (f["snow_z"] - draft)),
               "gangway": (more * foot, more * f["fall"]), "lost": (weight * y / left, gone)}
    nil = own("least_weight") * own("least_length")
    lists = {name: (alone + moment) / max(rights - lost, nil)
             for name, (moment, lost) in moments.items()}
    return lists, {"lists_alone": alone, "held_rights": rights, "lost_rights": gone,
                   **{f"held_{name}": value for name, value in lists.items()}}


def places(g: Given, done: Results) -> np.ndarray:
    """Return the place (y, x) of every float [ft]."""
    def evenly(outer: float, count: float) -> np.ndarray:
        return np.linspace(-outer, outer, int(count)) if count > 1 else np.zeros(1)

    grid = [(y, x) for y in evenly(done["Parts.row_y"], g.sec["float_rows"])
            for x in evenly(done["Parts.end_x"], g.sec["floats_a_row"])]
    more = [(g.sec[f"extra_y_{k}"], g.sec[f"extra_x_{k}"]) for k in EXTRAS
            if k <= g.sec["extra_floats"]]
    return np.array(grid + more, dtype=float)


def gathered(done: Results, at: np.ndarray, held_square: float, lies: int) -> Group:
    """Return the group of floats that stand at places; round ones lie along the way ``lies``.

    House choice: leaning axes of round floats are those of the waterline in service, and their
    own mean square, which changes with draft, is added to those on the axes without a turn.
    """
    centre = at.mean(axis=0)
    spread = (at - centre).T @ (at - centre) / len(at) + np.diag([held_square, 0.0])
    size = np.array([done["Parts.float_b"], done["Parts.float_l"]])
    line = np.array([done["Buoyancy.waterline_b"], done["Buoyancy.waterline_l"]])
    plane = spread + np.diag(line ** 2 / 12)
    _, axes = np.linalg.eigh(plane)
    alike = LEVEL * plane.max()
    tied = bool(abs(plane[0, 0] - plane[1, 1]) < alike < abs(plane[0, 1]))
    # Axis a is the one nearer to that of list; neither is turned by more than an eighth.
    if abs(axes[0, 0]) < abs(axes[0, 1]):
        axes = axes[:, ::-1]
    axes = axes * np.sign([axes[0, 0], axes[1, 1]])
    half, thin = size / 2, np.zeros(2)
    if done["Parts.float_round"]:
        half[lies], thin[lies] = 0.0, size[lies] ** 2 / 12
    # A row of the eigenvector's equation gives its value: M₁₁ + M₁₂ t, and M₂₂ − M₁₂ t.
    t = axes[1, 0] / axes[0, 0]
    squares = np.diag(spread) + spread[0, 1] * t * np.array([1, -1]) + size ** 2 / 12 - thin
    return Group(centre, axes, squares, thin, np.abs(at - centre).max(axis=0) + half, spread,
                 tied)


def lies_along(g: Given) -> int:
    """Return the way across which a round float is round: 0 across, 1 along the section."""
    return 0 if g.sec["float_turned"] == "along" else 1


def whole(g: Given, done: Results, held_square: float) -> tuple[Group, Results]:
    """Return the group of all floats, and its rows."""
    group = gathered(done, places(g, done), held_square, lies_along(g))
    moments = done["Weight.service"] * (
        np.array([done["Weight.service_y"], done["Weight.service_x"]]) - group.centre)
    sides = np.array([done["Parts.overall_width"], done["Parts.overall_length"]]) / 2
    on_axes, centre = moments @ group.axes, group.centre @ group.axes
    return group, {
        **outlines(done, group), "reach_x": group.reach[1], "reach_y": group.reach[0],
        "half_length": sides[1], "half_width": sides[0],
        "square_a": group.squares[0], "square_b": group.squares[1],
        **turned(group), "centre_a": centre[0], "centre_b": centre[1],
        "moment_a": on_axes[0], "moment_b": on_axes[1]}


def outlines(done: Results, group: Group) -> Results:
    """Return half a float either way [ft], and the own mean squares of a round one [ft²]."""
    half = np.array([done["Parts.float_b"], done["Parts.float_l"]]) / 2
    half = np.where(group.thin > 0, 0.0, half)
    return {"half_b": half[0], "half_l": half[1], "round_b": group.thin[0],
            "round_l": group.thin[1], "difference": unlike(done, group)}


def unlike(done: Results, group: Group) -> float:
    """Return half the difference of the waterplane's mean squares, across less along [ft²]."""
    line = np.array([done["Buoyancy.waterline_b"], done["Buoyancy.waterline_l"]])
    squares = np.diag(group.spread) + line ** 2 / 12
    return float(squares[0] - squares[1]) / 2


def turned(group: Group, before: str = "") -> Results:
    """Return the turn of the leaning axes."""
    return {f"{before}turn": group.axes[1, 0] / group.axes[0, 0],
            f"{before}turn_length": 1 / group.axes[0, 0]}


def goes_down(g: Given, done: Results, group: Group, f: Results) -> tuple[np.ndarray, Results]:
    """Return the side (across, along) of the corner float that is tried, and the rows to it.

    House choice: with one float's water gone its place goes down by d·v, where the righting
    moment K, as a matrix, has lost c d dᵀ: v = (K − c d dᵀ)⁻¹(m + W d/(n − 1)).  By the rule for
    a matrix changed by one product, d·v = (d·K⁻¹m + q W/γA)/(1 − q) with q = c d·K⁻¹d.
    """
    weight, foot = done["Weight.service"], f["water_foot"]
    rights = np.maximum(foot * group.squares + weight * (
        done["Buoyancy.KB"] - done["Weight.service_kg"]),
        own("least_weight") * own("least_length"))
    moments = np.array([f["moment_a"], f["moment_b"]])
    # What rounding leaves of a moment is none: over next to no righting moment it would be a lean.
    leans = np.where(np.abs(moments) < EVEN, 0, moments) / rights
    left = max(len(places(g, done)) - 1, own("least_share"))
    out, taken, down = np.array([done["Parts.row_y"], done["Parts.end_x"]]), {}, {}
    for side in ((1, 1), (1, -1), (-1, 1), (-1, -1)):
        d = (np.array(side) * out - group.centre) @ group.axes
        taken[side] = float((d ** 2 / rights).sum()) * foot / left
        down[side] = (float(d @ leans) + taken[side] * weight / foot) / max(
            1 - taken[side], own("least_share"))
    even = EVEN * max(1, *map(abs, down.values()))
    right = max(down[1, 1], down[1, -1]) >= max(down[-1, 1], down[-1, -1]) - even
    across = 1 if right else -1
    along = 1 if down[across, 1] >= down[across, -1] - even else -1
    names = {"right_far": (1, 1), "right_near": (1, -1), "left_far": (-1, 1),
             "left_near": (-1, -1)}
    return np.array([across, along]), {
        "whole_depth": weight / foot, "rights_a": rights[0], "rights_b": rights[1],
        "lean_a": leans[0], "lean_b": leans[1], "lost_right": int(right),
        **{f"down_{name}": down[side] for name, side in names.items()}}


def one_lost(g: Given, done: Results, group: Group, f: Results) -> tuple[Group, Results]:
    """Return the group without the corner float of the rows whose place then goes down most.

    House choices: of two sides alike it is the one to the right and the far one; outlines of all
    floats stay those of the group; an extra float is not tried.
    """
    side, rows = goes_down(g, done, group, f)
    lost = np.array([done["Parts.row_y"], done["Parts.end_x"]]) * side
    at = places(g, done)
    gone = np.abs(at - lost).sum(axis=1).argmin()
    # The neighbour's stiffness stays while the waterplane falls.
    left = max(len(at) - 1, own("least_share"))
    held_square = f["held_square"] * len(at) / left
    short = gathered(done, np.delete(at, gone, axis=0) if len(at) > 1 else at, held_square,
                     lies_along(g))
    short.reach = group.reach + np.abs(short.centre - group.centre)
    axes = {**turned(short, "lost_"), "lost_square_a": short.squares[0],
            "lost_square_b": short.squares[1]}
    return short, rows | ({} if short.tied else axes) | {
        "lost_y": lost[0], "lost_x": lost[1], "left": left, "lost_F_y": short.centre[0],
        "lost_F_x": short.centre[1], "lost_yy": short.spread[0, 0],
        "lost_xx": short.spread[1, 1], "lost_xy": short.spread[0, 1],
        "lost_difference": unlike(done, short), "lost_reach_x": short.reach[1],
        "lost_reach_y": short.reach[0], "lost_water": done["Buoyancy.box_water"] * left / len(at)}
