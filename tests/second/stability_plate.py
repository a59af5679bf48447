"""Stability, second calculation: the load plate, and room for extra floats.

What rights a section falls by the height of each pound of people over the waterline; that it
sinks and stiffens is left out on one half, so that M is on the safe side: house choices of the
sheet.  S(w) = S₀ − k w on each leaning axis, tan φ = (m₀ + w a)/S(w).
"""

from __future__ import annotations

from itertools import combinations
from math import radians, sqrt, tan

import numpy as np

from tests.second.framing_basis import at_least, own
from tests.second.given import Given, Results, table
from tests.second.parts_lumber import down
from tests.second.stability_cases import Case
from tests.second.stability_checks import FAR
from tests.second.stability_group import EXTRAS, INCHES, Group
from tests.second.stability_weights import Afloat

ELSE = 9
"""Bound of people on one half where none of its own governs."""


def work(g: Given, done: Results, afloat: dict[str, Afloat], cases: dict[str, Case],
         f: Results) -> Results:
    """Return both numbers of the load plate and what sets them."""
    found = spread_out(g, done, afloat, f)
    area, person = done["Parts.deck_area"], g.job["person_weight"]
    names = [line["set by"] for line in table("plate_bounds")]
    bounds = one_half(g, done, cases["service"], f, found)
    weight = max(min(*bounds, found["spread_load"], found["load_strength"] / 2), 0.0)
    count = down(weight / person)
    governs = next((k for k, bound in enumerate(bounds, 5) if bound <= weight), ELSE)
    return found | {
        **{f"half_bounds_{k}": bound for k, bound in enumerate(bounds, 1)},
        "half_weight": weight, "half_people": count, "half_psf": 2 * count * person / area,
        "half_number": governs, "half_bound": names[governs - 1]}


def spread_out(g: Given, done: Results, afloat: dict[str, Afloat], f: Results) -> Results:
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
    load = max(min(bounds), 0.0)
    governs = next(k for k, bound in enumerate(bounds) if bound <= load)
    count = down(load / g.job["person_weight"])
    return {"load_volume": volume, "load_height": height, "spare_GM": spare,
            "load_root": sqrt(max(inside, 0.0)), "load_box": box, "load_stable": stable,
            "load_strength": bounds[3], "spread_load": load, "people": count,
            "people_psf": count * g.job["person_weight"] / area,
            "people_bound": table("plate_bounds")[governs]["set by"]}


def one_half(g: Given, done: Results, rest: Case, f: Results, found: Results) -> list[float]:
    """Return loads on one half [lb]: tilt and float under across, then both along.

    House choices: what a section leans the other way counts twice; arms are from F, more where
    the turn of the axes makes it lean the other way too.
    """
    group: Group = rest.state.group
    stiff = np.maximum(rest.state.GM, 0.0)
    half = np.array([done["Parts.overall_width"], done["Parts.overall_length"]]) / 2
    centre = np.abs(group.centre @ group.axes)
    moments = np.abs([f["moment_a"], f["moment_b"]])
    turn, least = abs(f["turn"]), own("least_length")
    height = (f["band_high"] - rest.state.draft) / INCHES
    bounds = []
    for k in (0, 1):
        other = 1 - k
        reach, further = group.reach[k], group.reach[other]
        sway = 2 * turn * stiff[k] / max(rest.state.GM[other], least)
        arm = (half[k] / 2 + centre[k]) * (1 + sway * max(1.0, further / max(reach, least)))
        leans = 2 * abs(rest.slopes[other])
        slope = max(tan(radians(g.job["tilt_half_most"])) - leans, own("least_share"))
        S, fall = rest.state.weight * stiff[k], f["fall"]
        bounds.append((S - moments[k] / slope) / (fall + arm / slope))
        dry = max(height - leans * further, 0.0)
        bounds.append(float_under(S, fall, dry, f["water_foot"], reach, moments[k], arm))
    return bounds


def float_under(S: float, fall: float, dry: float, foot: float, reach: float, moment: float,
                arm: float) -> float:
    """Return the load at which a float top goes under [lb]: the lower root in w of

    (S − k w)(d − w/γA) = R (m + w a).
    """
    last = max(S * dry - reach * moment, 0.0)
    middle = S / foot + fall * dry + reach * arm
    first = fall / foot
    inside = sqrt(max(middle ** 2 - 4 * first * last, 0.0))
    # The lower root as the quotient of the last term and the upper one: no small difference.
    return 2 * last / max(middle + inside, own("least_weight") * own("least_length") / foot)


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
