"""Stability, second calculation: load cases, where their loads stand, how the section leans.

The pair of loadpath.md 12 comes apart on the leaning axes: (GM + e) v = y on each, where e is the
rise of the centre of buoyancy that the lean itself brings, e = (BM_a v_a² + BM_b v_b²)/2.  It is
found by six fixed passes, whose rule the sheet states; house choice, since the four plain passes
of the basis reach 1e-4 only.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from math import atan, degrees, hypot

import numpy as np

from tests.second.framing_basis import figure, own
from tests.second.given import Given, Results
from tests.second.stability_group import INCHES
from tests.second.stability_weights import Afloat

CASES = {
    "launch": "launch", "service": "service", "flotation": "flotation", "capacity": "capacity",
    "half_across": "half", "half_along": "half", "edge": "point", "end": "point",
    "corner": "point", "gangway": "gangway", "lost": "lost", "snow": "snow_half"}
"""Load case → weight afloat."""
STATES = ("holds", "NEAR UNSTABLE", "CORNER OUT", "FLOAT UNDER", "DECK UNDER", "UNSTABLE")
CORNERS = {"far right": (1, 1), "far left": (-1, 1), "near right": (1, -1), "near left": (-1, -1)}
"""Deck corner, as one walks out along +x → its side across and along."""
DASH = "–"
LEVEL = 1e-12
"""A slope smaller than this is none."""


@dataclass
class Case:
    """A load case: its weight afloat, arms on the leaning axes [ft], passes and lean."""

    state: Afloat
    arms: np.ndarray
    passes: list[float] = field(default_factory=list)
    rise: float = 0.0
    slopes: np.ndarray = field(default_factory=lambda: np.zeros(2))
    low: float = 0.0
    wet: float = 0.0
    dry: float = 0.0

    @property
    def tilt(self) -> float:
        """Tilt, list and trim together [deg]."""
        return degrees(atan(hypot(*self.slopes)))


def on_axes(state: Afloat, done: Results, load: float, at: np.ndarray) -> np.ndarray:
    """Return the arms of the section in service with a load at a place (y, x) on deck [ft]."""
    own_place = np.array([done["Weight.service_y"], done["Weight.service_x"]])
    moment = done["Weight.service"] * (own_place - state.group.centre) + load * (
        at - state.group.centre)
    return moment @ state.group.axes / (done["Weight.service"] + load)


def first_order(state: Afloat, arms: np.ndarray) -> np.ndarray:
    """Return the slopes of list and trim by the straight line; axis b is kept from turning over."""
    floor = [-np.inf, own("least_length")]
    return state.group.axes @ (arms / np.maximum(state.GM, floor))


def side(state: Afloat, done: Results, load: float, base: np.ndarray, step: np.ndarray,
         ) -> np.ndarray:
    """Return where a load stands that tilts most, a step one way or the other from ``base``.

    To the first order the tilt grows on the side to which the section leans with the load at
    ``base``; if it leans to neither, the load goes the way of the step.
    """
    leans = first_order(state, on_axes(state, done, load, base))
    more = first_order(state, step @ state.group.axes)
    return base + step * (1 if leans @ more >= -LEVEL * np.hypot(*more) else -1)


def places(g: Given, done: Results, afloat: dict[str, Afloat], f: Results,
           ) -> tuple[dict[str, np.ndarray], Results]:
    """Return where loads off the middle stand, by case (y, x) [ft]."""
    deck = np.array([done["Parts.overall_width"], done["Parts.overall_length"]])
    edge = deck / 2 - own("point_from_edge") / INCHES
    ways, middle = np.eye(2), np.zeros(2)
    P, half, snow = g.sec["point_load"], f["half_load"], f["snow_half_load"]
    at = {}
    for name, of, load, size in (("edge", "point", P, edge[0] * ways[0]),
                                 ("end", "point", P, edge[1] * ways[1]),
                                 ("half_across", "half", half, deck[0] / 4 * ways[0]),
                                 ("half_along", "half", half, deck[1] / 4 * ways[1]),
                                 ("snow_across", "snow_half", snow, deck[0] / 4 * ways[0]),
                                 ("snow_along", "snow_half", snow, deck[1] / 4 * ways[1])):
        at[name] = side(afloat[of], done, load, middle, size)
    at["corner"] = side(afloat["point"], done, P, at["edge"], at["end"])
    # House choice: the half across where, from level, its corner comes at least as low.
    GM = afloat["snow_half"].GM
    is_across = int((deck[0] ** 2) * GM[1] >= (deck[1] ** 2) * GM[0])
    at["snow"] = at["snow_across"] if is_across else at["snow_along"]
    ratios = {}
    for name in ("point", "half", "snow_half"):
        GM = afloat[name].GM
        ratios[f"ratios_{name}"] = float(GM[0] / max(GM[1], own("least_length"))) ** 2
    return at, ratios | {
        "edge_y": at["edge"][0], "end_x": at["end"][1], "corner_x": at["corner"][1],
        "half_y": at["half_across"][0], "half_x": at["half_along"][1],
        "snow_across": is_across, "snow_y": at["snow"][0], "snow_x": at["snow"][1]}


def cases(g: Given, done: Results, afloat: dict[str, Afloat], f: Results,
          ) -> tuple[dict[str, Case], Results]:
    """Return every load case worked out, and the rows of where loads stand."""
    at, found = places(g, done, afloat, f)
    middle = np.zeros(2)
    foot = np.array([g.sec["gangway_y"], g.sec["gangway_x"]])
    loads = {"service": (0.0, middle), "lost": (0.0, middle),
             "flotation": (done["Buoyancy.live_flotation"], middle),
             "capacity": (done["Buoyancy.live_capacity"], middle),
             "gangway": (f["gangway_more"], foot), "snow": (f["snow_half_load"], at["snow"]),
             **{name: (f["half_load"], at[name]) for name in ("half_across", "half_along")},
             **{name: (g.sec["point_load"], at[name]) for name in ("edge", "end", "corner")}}
    out = {}
    for name, of in CASES.items():
        state = afloat[of]
        if name == "launch":
            place = np.array([done["Weight.launch_y"], done["Weight.launch_x"]])
            arms = (place - state.group.centre) @ state.group.axes
        else:
            arms = on_axes(state, done, *loads[name])
        case = Case(state, arms)
        lean(case)
        out[name] = case
    return out, found


def lean(case: Case) -> None:
    """Work out rise and slopes of a case; one that is unstable is worked as if upright."""
    # House choice: a hair's breadth above unstable is taken as a hundredth of a foot.
    BM, GM = case.state.BM, np.maximum(case.state.GM, own("least_length"))
    if not case.state.stable:
        return

    def again(e: float) -> float:
        return float(BM @ (case.arms / (GM + e)) ** 2 / 2)

    least, tiny = float(GM.min()), figure("own_afloat", "least_rise")
    e1 = again(0.0)
    e2 = again(e1)
    ratio = max(e2 / max(e1, tiny), figure("own_afloat", "least_ratio"))
    e3 = e1 * ratio ** ((least + e1) / (least + 3 * e1))
    e4 = again(e3)
    # Where the line through both pairs meets e = g(e).
    slope = (e4 - e2) / min(e3 - e1, -tiny)
    e5 = (e2 - slope * e1) / (1 - slope)
    case.passes = [e1, e2, e3, e4, e5]
    case.rise = min(e5, again(e5))
    case.slopes = case.state.group.axes @ (case.arms / (GM + case.rise))


def lowest(done: Results, state: Afloat, slopes: np.ndarray) -> float:
    """Return the height of the lowest deck corner above water [in]."""
    half = np.array([done["Parts.overall_width"], done["Parts.overall_length"]]) / 2
    return min(state.free - INCHES * float((side * half - state.group.centre) @ slopes)
               for side in np.array(list(CORNERS.values())))


def ranges(done: Results, found: dict[str, Case]) -> Results:
    """Work out low corners and what is left of the floats' range; return the band of drafts."""
    depth = done["Parts.float_depth"]
    band = np.array([0.0, depth])
    if done["Parts.float_round"]:
        off = own("round_band")
        band = depth * np.array([0.5 - off, 0.5 + off])
    for case in found.values():
        dip = INCHES * float(np.abs(case.slopes) @ case.state.group.reach)
        # House choice: the low corner of a case that turns over reads 0.
        case.low = lowest(done, case.state, case.slopes) if case.state.stable else 0.0
        case.wet = case.state.draft - dip - band[0]
        case.dry = band[1] - case.state.draft - dip
    return {"band_low": band[0], "band_high": band[1]}


def rows(found: dict[str, Case]) -> Results:
    """Return the rows of every case that are worked with."""
    out: Results = {}
    for name, case in found.items():
        if not case.state.group.tied:
            out |= {f"arm_a_{name}": case.arms[0], f"arm_b_{name}": case.arms[1]}
        out |= {f"tan_list_{name}": case.slopes[0],
                f"tan_trim_{name}": case.slopes[1], f"tilt_{name}": case.tilt,
                f"low_{name}": case.low, f"wet_{name}": case.wet, f"dry_{name}": case.dry}
        if case.state.stable:  # else there is no rise
            out |= {f"rise_{k}_{name}": e for k, e in enumerate(case.passes, 1)}
            out[f"rise_{name}"] = case.rise
    return out


def number(case: Case) -> int:
    """Return the number of the state that a case comes to, from 1."""
    if not case.state.stable:
        return 6
    if case.low < 0:
        return 5
    if case.dry < 0:
        return 4
    if case.wet < 0:
        return 3
    most = figure("own_afloat", "stiffening_most") * float(case.state.GM.min())
    return 2 if case.passes[0] > most else 1


def shown(done: Results, found: dict[str, Case]) -> Results:
    """Return state, angles [deg] and corner heights [in] of every case; a dash where unstable."""
    half = np.array([done["Parts.overall_width"], done["Parts.overall_length"]]) / 2
    out: Results = {}
    for name, case in found.items():
        out[f"state_{name}"] = STATES[number(case) - 1]
        angles = [degrees(atan(slope)) for slope in case.slopes] + [case.tilt]
        heights = {corner: case.state.free - INCHES * float(
            (np.array(side) * half - case.state.group.centre) @ case.slopes)
            for corner, side in CORNERS.items()}
        values = dict(zip((f"shown_list_{name}", f"shown_trim_{name}", f"shown_tilt_{name}"),
                          angles, strict=True))
        values |= {f"corner_{name}_{corner}": height for corner, height in heights.items()}
        out |= values if case.state.stable else dict.fromkeys(values, DASH)
    return out
