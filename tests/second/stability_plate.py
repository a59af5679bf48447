"""Stability, second calculation: the load plate, and room for extra floats.

What rights a section falls by the height of each pound of people over the waterline; that it
sinks and stiffens is left out, so that both numbers are on the safe side: house choices of the
sheet.  S(w) = S₀ − k w on each leaning axis, and all that leans it is taken to lean it one way:
v = (|m| + w a)/S(w).
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import combinations
from math import hypot, radians, sqrt, tan

import numpy as np

from tests.second.framing_basis import at_least, own
from tests.second.given import Given, Results, table
from tests.second.parts_lumber import down
from tests.second.stability_checks import FAR
from tests.second.stability_group import EXTRAS, INCHES, SLACK, Group
from tests.second.stability_weights import Afloat

EVENLY = 5
"""Bound of people spread out where it leans too far by itself."""
TILT, FLOAT, CORNER, ELSE = 6, 7, 8, 9
"""Bounds of people on one half; the last where none of its own governs."""


@dataclass
class Plate:
    """What rights a section on both leaning axes, and what may go under or come out.

    Attributes:
        rights: at rest [lb·ft a unit of slope]; fall: lost a pound of people [ft].
        foot: water a foot of draft takes, at the least breadth [lb/ft].
        own: own moments on the axes [lb·ft]; steepest: tangent of the most tilt.
        floats, deck: levers of the float corner and of the deck corner on the axes [ft].
        tops, corner, keel: water of the height of float tops, of deck corners, and of the
            draft [lb].
    """

    rights: np.ndarray
    fall: float
    foot: float
    own: np.ndarray
    steepest: float
    floats: np.ndarray
    deck: np.ndarray
    tops: float
    corner: float
    keel: float

    def leans(self, w: float, arms: np.ndarray) -> np.ndarray:
        """Return slopes on both axes under a load at arms from F."""
        least = own("least_weight") * own("least_length")
        return (self.own + w * arms) / np.maximum(self.rights - self.fall * w, least)

    def used(self, w: float, arms: np.ndarray) -> dict[int, float]:
        """Return what is used of each limit, by its bound; of an even load EVENLY is asked."""
        v = self.leans(w, arms)
        dips, deck = self.foot * float(v @ self.floats), self.foot * float(v @ self.deck)
        return {TILT: hypot(*v) / self.steepest, CORNER: (deck + w) / self.corner,
                FLOAT: max((dips + w) / self.tops, (dips - w) / self.keel),
                EVENLY: (dips + w) / self.tops}


def work(g: Given, done: Results, afloat: dict[str, Afloat], f: Results) -> Results:
    """Return both numbers of the load plate and what sets them."""
    area, person = done["Parts.deck_area"], g.job["person_weight"]
    names = [line["set by"] for line in table("plate_bounds")]
    plate, found = limits(g, done, afloat, f)
    found |= spread_out(g, done, afloat, f, plate)
    halves = one_half(done, afloat["service"].group, plate, found)
    count = down(halves["half_weight"] / person)
    return found | halves | {
        "half_people": count, "half_psf": 2 * count * person / area,
        "half_bound": names[int(halves["half_number"]) - 1]}


def limits(g: Given, done: Results, afloat: dict[str, Afloat], f: Results,
           ) -> tuple[Plate, Results]:
    """Return what a plate is held against.

    House choice: a round float counts with the breadth at its waterline in service or with the
    capacity load, whichever is less; its inertia never falls by more than the cube of it.
    """
    rest, group = afloat["service"], afloat["service"].group
    slim = min(afloat["capacity"].breadth / max(rest.breadth, own("least_share")), 1.0)
    rights = np.maximum(rest.weight * (rest.GM - rest.BM * (1 - slim ** 3)), 0.0)
    foot, least = f["water_foot"] * slim, own("least_weight")
    half = np.array([done["Parts.overall_width"], done["Parts.overall_length"]]) / 2
    across = np.abs(group.axes)
    heights = [(f["band_high"] - rest.draft) / INCHES,
               (rest.free - g.job["corner_least"]) / INCHES,
               (rest.draft - f["band_low"]) / INCHES]
    tops, corner, keel = (max(height * foot, least) for height in heights)
    moments = np.abs([f["moment_a"], f["moment_b"]])
    moments[moments < SLACK * rest.weight] = 0.0
    plate = Plate(rights, f["fall"], foot, moments,
                  tan(radians(g.job["tilt_half_most"])), group.reach @ across,
                  (half + np.abs(group.centre)) @ across, tops, corner, keel)
    nobody = plate.used(0.0, np.zeros(2))
    slopes = plate.leans(0.0, np.zeros(2))
    level = max(nobody[TILT], nobody[EVENLY], nobody[CORNER])
    return plate, {
        "plate_breadth": slim, "righting_a": rights[0], "righting_b": rights[1],
        "plate_foot": foot, "plate_slope": plate.steepest, "out_load": keel,
        "rest_a": slopes[0], "rest_b": slopes[1], "rest_used": level,
        "rest_half": max(level, nobody[FLOAT])}


def chord(most: float, used: float, start: float) -> float:
    """Return the share of a step at which the chord from ``start`` to ``used`` reaches 1."""
    return min(1.0, max(1 - start, 0.0) / max(used - start, own("least_share"))) * most


def spread_out(g: Given, done: Results, afloat: dict[str, Afloat], f: Results,
               plate: Plate) -> Results:
    """Return the people that may stand all over the deck, and each bound on their weight [lb]."""
    whole, launch = done["Buoyancy.capacity"], done["Weight.launch"]
    volume = min(g.job["immersed_most"] * whole - launch, (whole - launch) / g.job["reserve_ok"])
    height = done["Buoyancy.lift_allowed"] * done["Parts.floats"] - launch
    service, good = afloat["service"], g.job["gm_least"]
    spare = service.weight * (float(service.GM.min()) - good)
    # spare − (k + GM) w + w²/2γA = 0: the first load at which GM is short, if there is one.
    foot, fall = f["water_foot"], f["fall"] + good
    inside = fall ** 2 - 2 * spare / foot
    box = foot * (fall - sqrt(inside)) if inside > 0 else whole
    stable = box
    if done["Parts.float_round"]:
        crowd = done["Buoyancy.live_capacity"]
        stable = crowd if float(afloat["capacity"].GM.min()) >= good else 0.0
    area = done["Parts.deck_area"]
    bounds = [volume, height, stable, g.sec["strength_load"] * area]
    most = max(min(bounds), 0.0)
    middle = np.abs(service.group.centre @ service.group.axes)
    used, slopes = plate.used(most, middle), plate.leans(most, middle)
    worst = max(used[TILT], used[EVENLY], used[CORNER])
    nobody = plate.used(0.0, middle)
    load = chord(most, worst, max(nobody[TILT], nobody[EVENLY], nobody[CORNER]))
    governs = next((k for k, bound in enumerate(bounds, 1) if bound <= load), EVENLY)
    count = down(load / g.job["person_weight"])
    return {"load_volume": volume, "load_height": height, "spare_GM": spare,
            "load_root": sqrt(max(inside, 0.0)), "load_box": box, "load_stable": stable,
            "load_strength": bounds[3], "spread_most": most, "even_a": slopes[0],
            "even_b": slopes[1], "even_used": max(used[TILT], used[EVENLY]),
            "even_corner": used[CORNER], "spread_load": load, "people": count,
            "people_psf": count * g.job["person_weight"] / area,
            "people_number": governs, "people_bound": table("plate_bounds")[governs - 1]["set by"]}


def one_half(done: Results, group: Group, plate: Plate, f: Results) -> Results:
    """Return the load that any one half may carry [lb]: by two chords, from below."""
    half = np.array([done["Parts.overall_width"], done["Parts.overall_length"]]) / 2
    centre = np.abs(group.centre @ group.axes)
    arms = [half[k] / 2 * np.abs(group.axes[k]) + centre for k in (0, 1)]
    alone = [plate.rights[k] / (plate.fall + arms[k][k] / plate.steepest) for k in (0, 1)]
    whole = min(f["spread_load"], f["load_strength"] / 2)
    most = min(whole, *alone)

    def tried(w: float) -> dict[int, float]:
        each = [plate.used(w, arm) for arm in arms]
        return {bound: max(used[bound] for used in each) for bound in (TILT, FLOAT, CORNER)}

    first = tried(most)
    less = chord(most, max(first.values()), f["rest_half"])
    second = tried(less)
    weight = less + chord(most - less, max(first.values()), max(second.values()))
    worst = max(second.values())
    governs = ELSE
    if weight < whole * (1 - 1e-12):
        governs = next(bound for bound in (TILT, CORNER, FLOAT)
                       if second[bound] >= worst * (1 - 1e-12))
    names = {"a": 0, "b": 1}
    return {**{f"arm_across_{axis}": arms[0][k] for axis, k in names.items()},
            **{f"arm_along_{axis}": arms[1][k] for axis, k in names.items()},
            "half_most": most, "first_tilt": first[TILT], "first_corner": first[CORNER],
            "first_used": max(first.values()), "half_less": less, "second_tilt": second[TILT],
            "second_corner": second[CORNER], "second_used": worst, "half_weight": weight,
            "half_number": governs}


def overlaps(g: Given, done: Results) -> Results:
    """Return how far extra floats stand from the rows and from one another, in float sizes."""
    def nearest(place: float, outer: float, count: float) -> float:
        rows = np.linspace(-outer, outer, int(count)) if count > 1 else np.zeros(1)
        return float(np.abs(rows - place).min())

    size = np.array([done["Parts.float_b"], done["Parts.float_l"]])
    at = {k: np.array([g.sec[f"extra_y_{k}"], g.sec[f"extra_x_{k}"]]) for k in EXTRAS}
    off = {k: np.array([
        nearest(at[k][0], done["Parts.row_y"], g.sec["float_rows"]),
        nearest(at[k][1], done["Parts.end_x"], g.sec["floats_a_row"])]) for k in EXTRAS}
    gaps = [(k, off[k]) for k in EXTRAS]
    pairs = sorted(combinations(EXTRAS, 2), key=lambda pair: pair[::-1])
    gaps += [(later, np.abs(at[later] - at[first])) for first, later in pairs]
    values = [float((apart / size).max()) if k <= g.sec["extra_floats"] else FAR
              for k, apart in gaps]
    least = min(values)
    return {**{f"off_y_{k}": off[k][0] for k in EXTRAS},
            **{f"off_x_{k}": off[k][1] for k in EXTRAS},
            **{f"gap_{k}": value for k, value in enumerate(values, 1)}, "gap_least": least,
            **at_least("overlap_check", least, 1.0, look=1.0)}
