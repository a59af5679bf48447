"""Buoyancy, second calculation: volumes, drafts, flotation tests, floats needed."""

from __future__ import annotations

from functools import cache
from math import pi

import numpy as np

from tests.second.framing_basis import at_least, at_most, figure, own
from tests.second.given import Given, Results, table
from tests.second.parts_lumber import INCHES, SLACK, up

FRESH = "fresh"
QUARTERS = range(5)


@cache
def circle() -> dict[str, np.ndarray]:
    """Return the table of the part-full circle of diameter 1, by column."""
    return {name: np.array([line[name] for line in table("circle_segments")])
            for name in ("T/d", "A/d²", "w/d", "z_B/d")}


def work(g: Given, p: Results, w: Results) -> Results:
    """Return rows of Buoyancy, without the sheet's name; ``p`` of Parts, ``w`` of Weight."""
    found = volumes(g, p)
    found |= loads(g, p, w, found)
    found |= drafts(g, p, w, found)
    found |= needed(g, p, w, found)
    found |= flotation_tests(g, p, w, found)
    found |= heights(g, p, found)
    return found | curve(g, p, w, found)


def volumes(g: Given, p: Results) -> Results:
    """Return the usable volume of a float [ft³] by its size and by its maker's rating.

    A rating is for fresh water; house choice: it is held against the outline, fullness apart.
    """
    model = g.catalog["floats"][g.sec["float_model"]]
    box = model["length"] * model["width"] * model["depth"] / INCHES ** 3
    filled = pi / 4 if p["float_round"] else 1.0
    by_size = box * filled
    gross = model["rated buoyancy"] + model["own weight"] * model["rating is net"]
    rated = gross / figure("water", FRESH) if model["rated buoyancy"] > 0 else 0.0
    usable = by_size * model["fullness"]
    each = min(usable, rated) if rated > 0 else usable
    water = g.job["water_weight"] * p["floats"]
    return {"fullness": model["fullness"], "section_share": filled, "size_volume": by_size,
            "rated_volume": rated, **at_most("rating_check", rated, by_size, worst="LOOK"),
            "volume_each": each, "capacity": water * each,
            "box_water": water * box * model["fullness"]}


def loads(g: Given, p: Results, w: Results, f: Results) -> Results:
    """Return live loads on the whole deck, and what floats with them [lb]."""
    psf = max(g.sec["capacity_load"], g.job["flotation_load"])
    flotation, capacity = g.job["flotation_load"] * p["deck_area"], psf * p["deck_area"]
    return {"live_flotation": flotation, "capacity_psf": psf, "live_capacity": capacity,
            "weight_flotation": w["service"] + flotation,
            "weight_capacity": w["service"] + capacity,
            "launch_flotation": w["launch"] + flotation,
            "launch_capacity": w["launch"] + capacity}


def draft(p: Results, f: Results, weight: float) -> tuple[float, int]:
    """Return the mean draft [in], and the line of the circle table at or below it (from 1)."""
    share = weight / f["box_water"]
    areas, parts = circle()["A/d²"], circle()["T/d"]
    line = min(int(np.searchsorted(areas, share, side="right")), len(areas) - 1)
    part = float(np.interp(share, areas, parts)) if p["float_round"] else share
    return part * p["float_depth"], line


def drafts(g: Given, p: Results, w: Results, f: Results) -> Results:
    """Return drafts, and the heights of deck and frame above water [in], for every weight."""
    found: Results = {}
    for name, weight in (("launch", w["launch"]), ("service", w["service"]),
                         ("flotation", f["weight_flotation"]),
                         ("capacity", f["weight_capacity"]),
                         ("test_flotation", f["launch_flotation"]),
                         ("test_capacity", f["launch_capacity"])):
        T, line = draft(p, f, weight)
        found |= {f"draft_{name}": T, f"free_{name}": INCHES * p["deck_top"] - T}
        if not name.startswith("test"):
            found |= {f"under_{name}": INCHES * p["frame_underside"] - T, f"line_{name}": line}
    return found


def needed(g: Given, p: Results, w: Results, f: Results) -> Results:
    """Return how many floats each of the three tests needs, and whole rows of them."""
    most = INCHES * p["deck_top"] - g.sec["deck_flotation"]
    most = min(max(most, 0.0), p["float_depth"])
    share, parts = most / p["float_depth"], circle()["T/d"]
    line = min(int(np.searchsorted(parts, share + SLACK, side="right")), len(parts) - 1)
    if p["float_round"]:
        share = float(np.interp(share, parts, circle()["A/d²"]))
    own_weight, least = w["float_weight"], own("least_weight")
    whole = g.job["water_weight"] * f["volume_each"]
    lift = min(share * f["box_water"] / p["floats"], whole)
    needs = [
        (w["frame_only"] + f["live_flotation"]) / max(lift - own_weight, least),
        (w["frame_only"] + f["live_capacity"])
        / max(g.job["immersed_most"] * whole - own_weight, least),
        (w["frame_only"] + g.job["reserve_ok"] * f["live_capacity"])
        / max(whole - own_weight, least)]
    count = up(max(needs))
    rows = g.sec["float_rows"] * up(count / g.sec["float_rows"])
    names = ("need_height", "need_share", "need_reserve")
    return {"draft_allowed": most, "line_allowed": line, "share_allowed": share,
            "lift_allowed": lift, **dict(zip(names, needs, strict=True)),
            "floats_needed": count, "floats_whole": rows,
            "floats_to_add": rows - p["floats"] if count > p["floats"] else 0}


def flotation_tests(g: Given, p: Results, w: Results, f: Results) -> Results:
    """Return the tests on the launch weight, the aged test and snow."""
    least = own("least_inches")
    under = f["launch_capacity"] / f["capacity"]
    full = (f["capacity"] - w["launch"]) / p["deck_area"]
    aged = (w["aged"] + f["live_capacity"]) / f["capacity"]
    snow = g.job["ground_snow"] * p["deck_area"]
    snowed = (w["service"] + snow) / f["capacity"] if g.job["stays_in"] == "yes" else 0.0
    return {
        **at_least("test_a", f["free_test_flotation"], g.sec["deck_flotation"]),
        "share_capacity": under, **at_most("test_b", under, g.job["immersed_most"]),
        "live_full": full,
        **at_least("test_c", full, g.job["reserve_least"] * f["capacity_psf"],
                   look=g.job["reserve_least"] / g.job["reserve_ok"]),
        **at_least("test_deck_capacity", f["free_test_capacity"],
                   max(g.sec["deck_capacity"], least)),
        "share_aged": aged,
        **at_most("aged_check", aged, g.job["aged_most"],
                  look=g.job["aged_ok"] / g.job["aged_most"]),
        "share_snow": snowed, **at_most("snow_check", snowed, g.job["snow_most"])}


def heights(g: Given, p: Results, f: Results) -> Results:
    """Return heights of the empty section, clearance over the bed, the floats' shell.

    House choices: the deck is lowest in service and highest as launched; the bed is cleared
    with the flotation load on the deck.
    """
    highest = max(f["free_launch"], 0.0)
    rule = g.job["frame_least"] if g.job["frame_rule"] == "yes" else own("least_inches")
    clear = g.job["low_water_depth"] - f["draft_flotation"] / INCHES
    least = own("least_length")
    shell = g.catalog["floats"][g.sec["float_model"]]["shell"]
    thick = max(g.job["shell_rule"], own("least_inches"))
    return {
        **at_least("low_check", f["free_service"], g.sec["deck_low"], worst="LOOK"),
        "free_highest": highest,
        **at_most("high_check", highest, g.sec["deck_high"], worst="LOOK"),
        **at_least("frame_check", f["under_service"], g.job["frame_least"], worst="LOOK"),
        **at_least("frame_rule_check", f["under_service"], rule),
        "clearance": clear,
        **at_least("bed_check", clear, least, look=least / g.job["clearance_least"]),
        "shell": shell, **at_least("shell_check", shell, thick, worst="LOOK")}


def curve(g: Given, p: Results, w: Results, f: Results) -> Results:
    """Return live load [psf] and deck height [in] with 0 to 4 quarters of the floats under.

    House choice: a point that would need a load below 0 falls on the empty section.
    """
    shares = np.array(QUARTERS) / 4
    fills = np.interp(shares, circle()["T/d"], circle()["A/d²"]) if p["float_round"] else shares
    live = (fills * f["box_water"] - w["service"]) / p["deck_area"]
    free = INCHES * p["deck_top"] - shares * p["float_depth"]
    return {**{f"curve_load_{k + 1}": max(live[k], 0.0) for k in QUARTERS},
            **{f"curve_free_{k + 1}": min(free[k], f["free_service"]) for k in QUARTERS}}
