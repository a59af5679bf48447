"""Stability, second calculation: weights afloat, drafts, metacentric heights on both axes."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from tests.second.floated import circle
from tests.second.framing_basis import own
from tests.second.given import Given, Results
from tests.second.stability_group import INCHES, Group

WEIGHTS = ("launch", "service", "flotation", "capacity", "half", "point", "gangway", "snow_half",
           "snow_all", "lost")
AFLOAT = ("launch", "service", "flotation", "capacity")
"""Weights whose drafts Buoyancy has worked out."""
TURNS_OVER = "UNSTABLE: it turns over"


@dataclass
class Afloat:
    """A weight [lb] on a group of floats: drafts [in], heights [ft], by leaning axis where two."""

    weight: float
    centre: float
    group: Group
    draft: float = 0.0
    free: float = 0.0
    breadth: float = 1.0
    depth: float = 0.0
    KB: float = 0.0
    BM: np.ndarray | None = None
    GM: np.ndarray | None = None

    @property
    def stable(self) -> bool:
        """Whether it stands up on both leaning axes."""
        return bool((self.GM > 0).all())


def loads(g: Given, done: Results) -> Results:
    """Return loads on the deck [lb], and their heights above K [ft]."""
    area, top = done["Parts.deck_area"], done["Parts.deck_top"]
    snow = g.job["ground_snow"] * area if g.job["stays_in"] == "yes" else 0.0
    people = top + g.job["person_height"]
    return {"half_load": g.job["flotation_load"] * area / 2, "people_z": people,
            "fall": people - done["Buoyancy.draft_service"] / INCHES,
            "gangway_more": done["SiteLoads.gangway_25"] - done["SiteLoads.gangway_dead"],
            "snow_load": snow, "snow_half_load": snow / 2,
            "snow_z": top + g.job["ground_snow"] / g.job["snow_density"] / 2}


def states(g: Given, done: Results, group: Group, short: Group, f: Results) -> dict[str, Afloat]:
    """Return every weight afloat, by name."""
    service, KG = done["Weight.service"], done["Weight.service_kg"]

    def on_top(load: float, height: float, on: Group = group) -> Afloat:
        weight = service + load
        return Afloat(weight, (service * KG + load * height) / weight, on)

    people = f["people_z"]
    found = {
        "launch": Afloat(done["Weight.launch"], done["Weight.launch_kg"], group),
        "service": on_top(0.0, 0.0),
        "flotation": on_top(done["Buoyancy.live_flotation"], people),
        "capacity": on_top(done["Buoyancy.live_capacity"], people),
        "half": on_top(f["half_load"], people), "point": on_top(g.sec["point_load"], people),
        "gangway": on_top(f["gangway_more"], done["Parts.deck_top"]),
        "snow_half": on_top(f["snow_half_load"], f["snow_z"]),
        "snow_all": on_top(f["snow_load"], f["snow_z"]),
        "lost": on_top(0.0, 0.0, short)}
    for name, state in found.items():
        water = f["lost_water"] if name == "lost" else done["Buoyancy.box_water"]
        floating(done, state, water)
    return found


def floating(done: Results, state: Afloat, water: float) -> None:
    """Work out how a weight floats; ``water`` is what the boxes of its floats displace [lb]."""
    depth, share = done["Parts.float_depth"], state.weight / water
    if not done["Parts.float_round"]:
        state.draft = share * depth
        state.depth, state.KB = share * depth / INCHES, share * depth / INCHES / 2
    else:
        c = circle()
        part = float(np.interp(share, c["A/d²"], c["T/d"]))
        state.draft = part * depth
        state.breadth = float(np.interp(part, c["T/d"], c["w/d"]))
        # Volume over waterplane: what the weight displaces, over the breadth it cuts.
        state.depth = share * depth / INCHES / max(state.breadth, own("least_share"))
        state.KB = float(np.interp(part, c["T/d"], c["z_B/d"])) * depth / INCHES
    state.free = INCHES * done["Parts.deck_top"] - state.draft
    squares = state.group.squares + state.breadth ** 2 * state.group.thin
    state.BM = squares / state.depth
    state.GM = state.KB + state.BM - state.centre


def rows(found: dict[str, Afloat]) -> Results:
    """Return the rows of every weight afloat."""
    out: Results = {}
    for name, state in found.items():
        out |= {f"breadth_{name}": state.breadth, f"depth_{name}": state.depth,
                f"KB_{name}": state.KB,
                f"stable_{name}": "stable" if state.stable else TURNS_OVER}
        if not state.group.tied:
            out |= {f"{what}_{axis}_{name}": getattr(state, what)[k]
                    for what in ("BM", "GM") for k, axis in enumerate("ab")}
        if name not in AFLOAT:
            out |= {f"draft_afloat_{name}": state.draft, f"free_afloat_{name}": state.free}
            if name != "lost":
                out |= {f"weight_afloat_{name}": state.weight,
                        f"centre_afloat_{name}": state.centre}
    out |= {f"mean_draft_{k}": found[name].draft for k, name in enumerate(AFLOAT, 1)}
    return out | {"centre_afloat_flotation": found["flotation"].centre}
