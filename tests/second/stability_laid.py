"""The load plate laid on: do all limits hold with its people aboard, by the cases' own rules?"""

from __future__ import annotations

import numpy as np

from tests.second import stability_cases, stability_group
from tests.second.given import Given
from tests.second.stability_cases import Case
from tests.second.stability_weights import Afloat, floating

HOLDS, NEAR = 1, 2
"""Numbers of the states in which no angle is told too small."""
LEAST = 0.999
"""A share of a limit may be over it by rounding alone: people are counted whole."""


def faults(g: Given) -> list[str]:
    """Return the limits that are broken with the people of the plate aboard a section type."""
    done = g.done
    f = {key.removeprefix("Stability."): value for key, value in done.items()
         if key.startswith("Stability.")}
    group, _ = stability_group.whole(g, done, f["held_square"])
    person = g.job["person_weight"]
    deck = np.array([done["Parts.overall_width"], done["Parts.overall_length"]]) / 4
    spots = {"evenly": (f["people"], [np.zeros(2)]),
             "on one half": (f["half_people"],
                             [side * way * deck for way in np.eye(2) for side in (1, -1)])}
    return [f"{name}: {fault}" for name, (people, places) in spots.items() if people
            for place in places
            for fault in _broken(g, group, person * people, place, f, name == "evenly")]


def _broken(g: Given, group: stability_group.Group, load: float, place: np.ndarray, f: dict,
            even: bool) -> list[str]:
    """Return the limits that a load of standing people at a place breaks."""
    done = g.done
    weight = done["Weight.service"] + load
    centre = (done["Weight.service"] * done["Weight.service_kg"] + load * f["people_z"]) / weight
    state = Afloat(weight, centre, group)
    floating(done, state, done["Buoyancy.box_water"])
    case = Case(state, stability_cases.on_axes(state, done, load, place))
    stability_cases.lean(case)
    stability_cases.ranges(done, {"laid": case})
    if not state.stable:
        return ["it turns over"]
    states = (HOLDS, NEAR) if not even else (HOLDS, NEAR, 3)
    kept = {"tilt": case.tilt * LEAST <= g.job["tilt_half_most"],
            "low corner": case.low >= LEAST * g.job["corner_least"],
            f"state {stability_cases.number(case)}": stability_cases.number(case) in states,
            "metacentric height": not even or state.GM.min() >= LEAST * g.job["gm_least"],
            "float volume": not even or (
                done["Weight.launch"] + load
                <= g.job["immersed_most"] * done["Buoyancy.capacity"] / LEAST)}
    return [name for name, holds in kept.items() if not holds]
