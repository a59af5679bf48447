"""Buoyancy, second calculation: waterplane, metacentric height, empty and under a crowd."""

from __future__ import annotations

import numpy as np

from tests.second.floated import circle, draft
from tests.second.framing_basis import at_least, at_most, own
from tests.second.given import Given, Results
from tests.second.parts_lumber import INCHES

EXTRAS = range(1, 5)


def work(g: Given, p: Results, w: Results, f: Results) -> Results:
    """Return the further rows of Buoyancy, without the sheet's name."""
    found = spread(g, p)
    empty = plane(g, p, {**f, **found}, w["service"])
    found |= empty
    found["GM"] = empty["KM"] - w["service_kg"]
    found |= judged(g, p, w, found)
    return found | crowd(g, p, w, {**f, **found})


def spread(g: Given, p: Results) -> Results:
    """Return mean squares of the places of all floats about their own centre [ft²]."""
    def evenly(outer: float, count: int) -> np.ndarray:
        return np.linspace(-outer, outer, int(count)) if count > 1 else np.zeros(1)

    x, y = (array.ravel() for array in np.meshgrid(
        evenly(p["end_x"], g.sec["floats_a_row"]), evenly(p["row_y"], g.sec["float_rows"])))
    here = [k for k in EXTRAS if p[f"extra_here_{k}"]]
    all_x = np.concatenate([x, [g.sec[f"extra_x_{k}"] for k in here]])
    all_y = np.concatenate([y, [g.sec[f"extra_y_{k}"] for k in here]])
    return {"flotation_x": all_x.mean(), "flotation_y": all_y.mean(),
            "grid_yy": np.mean(y ** 2), "grid_xx": np.mean(x ** 2), "spread_yy": all_y.var(),
            "spread_xx": all_x.var(),
            "spread_xy": np.mean((all_x - all_x.mean()) * (all_y - all_y.mean()))}


def plane(g: Given, p: Results, f: Results, weight: float) -> Results:
    """Return the waterplane of all floats at a weight, and the metacentre above K [ft]."""
    long, broad, place, across = p["float_l"], p["float_b"], 0.0, 0.0
    T, line = draft(p, f, weight)
    KB = T / 2 / INCHES
    if p["float_round"]:
        depth, c = p["float_depth"], circle()
        across = float(np.interp(T / depth, c["T/d"], c["w/d"])) * depth / INCHES
        KB = float(np.interp(T / depth, c["T/d"], c["z_B/d"])) * depth / INCHES
        place = T / depth * (len(c["T/d"]) - 1) - line + 1
        if g.sec["float_turned"] == "along":
            broad = across
        else:
            long = across
    each = long * broad * f["fullness"]
    area = p["floats"] * each
    against_list = p["floats"] * each * (broad ** 2 / 12 + f["spread_yy"])
    against_trim = p["floats"] * each * (long ** 2 / 12 + f["spread_xx"])
    product = area * f["spread_xy"]
    least = float(np.linalg.eigvalsh([[against_list, product], [product, against_trim]])[0])
    displaced = weight / g.job["water_weight"]
    return {"displaced": displaced, "place_round": place, "waterline_round": across,
            "waterline_l": long, "waterline_b": broad, "waterplane": area,
            "sinkage": g.job["water_weight"] * area / INCHES, "inertia_across": against_list,
            "inertia_along": against_trim, "inertia": least, "KB": KB, "BM": least / displaced,
            "KM": KB + least / displaced}


def judged(g: Given, p: Results, w: Results, f: Results) -> Results:
    """Return whether the empty section stands up by itself."""
    alone = int(g.sec["held_by"] == "none")
    return {"alone": alone,
            **at_least("stable_check", f["KM"], max(w["service_kg"] * alone, own("least_length")))}


def crowd(g: Given, p: Results, w: Results, f: Results) -> Results:
    """Return whether it stands up under an even crowd of standing people."""
    weight, people = f["weight_capacity"], f["live_capacity"]
    KG = (w["service_moment"] + people * (p["deck_top"] + g.job["person_height"])) / weight
    state = plane(g, p, f, weight)
    GM, share = state["KM"] - KG, weight / f["capacity"]
    off = abs(f["draft_capacity"] / p["float_depth"] - 0.5) if p["float_round"] else 0.0
    alone, least = f["alone"], own("least_length")
    return {"crowd_kg": KG, "KB_crowd": state["KB"], "BM_crowd": state["BM"],
            "KM_crowd": state["KM"], "GM_crowd": GM,
            **at_least("crowd_stable", state["KM"], max(KG * alone, least)),
            **at_least("GM_crowd_check", GM, g.job["gm_least"], worst="LOOK"),
            "crowd_share": share,
            "crowd_words": "holds" if share <= 1 else "OUT OF RANGE: floats under",
            **at_most("crowd_holds", share, 1.0), "round_off": off,
            **at_most("round_check", off, own("round_band"), worst="LOOK")}
