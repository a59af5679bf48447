"""Parts, second calculation: sizes of members, the deck, the frame and its floats in plan."""

from __future__ import annotations

import numpy as np

from tests.second.framing_basis import at_least, at_most, own
from tests.second.given import Given, Results, line_of, table

INCHES = 12
SAWN = ("dressed", "rough", "full sawn")
COLUMNS = {"dressed": "dressed", "rough": "rough", "full sawn": "sawn"}
MEMBERS = {"rail": "rail_size", "stringer": "stringer_size", "header": "header_size",
           "cross": "cross_beam_size", "skirt": "skirt_size"}
EXTRAS = range(1, 5)


def place_of(name: str, key: str) -> int:
    """Return the place, from 1, of the first line of a published table with a key."""
    return [next(iter(line.values())) for line in table(name)].index(key) + 1


def work(g: Given) -> Results:
    """Return the rows that say how large everything is, without the sheet's name."""
    found = members(g)
    found |= frame(g, found)
    found |= heights(g, found)
    found |= floats(g, found)
    return found | reach(g, found)


def members(g: Given) -> Results:
    """Return thickness and depth of every member [in], as it is sawn."""
    found: Results = {"sawn": SAWN.index(g.job["sawn"]) + 1}
    kind = COLUMNS[g.job["sawn"]]
    fitted = int(g.sec["skirt"] != "none")
    for member, entry in MEMBERS.items():
        size = line_of("lumber_sizes", g.sec[entry])
        there = fitted if member == "skirt" else 1
        found |= {f"{member}_line": place_of("lumber_sizes", g.sec[entry]),
                  f"{member}_t": size[f"thickness {kind}"] * there,
                  f"{member}_d": size[f"width {kind}"] * there}
    return found | {"skirted": fitted}


def frame(g: Given, p: Results) -> Results:
    """Return the frame in plan [ft]; length and width are outside of headers and rails."""
    length, width = g.sec["length"], g.sec["width"]
    rails = 2 * g.sec["rail_plies"] * p["rail_t"] / INCHES
    deck = np.array([length, width]) + 2 * g.sec["deck_overhang"] / INCHES
    skirts = np.array([length, width]) + 2 * p["skirt_t"] / INCHES
    overall = np.maximum(deck, skirts)
    left = width - rails
    least = own("least_length")
    return {"between_rails": left, "clear_span": max(left, least),
            **at_least("width_check", left, least),
            "header_clear": max(length - 2 * p["header_t"] / INCHES, least),
            "deck_length": deck[0], "deck_width": deck[1], "deck_area": deck.prod(),
            "overall_length": overall[0], "overall_width": overall[1]}


def heights(g: Given, p: Results) -> Results:
    """Return heights above the underside of the floats [ft], depths [in]."""
    deepest = ["rail_d", "stringer_d", "header_d"] + ["cross_d"] * (g.sec["cross_beams"] > 0)
    depth = g.catalog["floats"][g.sec["float_model"]]["depth"]
    frame_depth = max(p[name] for name in deepest)
    product = (g.catalog["panels"][g.sec["panel"]] if g.sec["deck"] == "panels"
               else g.catalog["boards"][g.sec["board"]])
    levels = np.cumsum([depth + g.sec["float_gap"], frame_depth, product["thickness"]]) / INCHES
    return {"frame_depth": frame_depth, "float_depth": depth,
            "float_line": list(g.catalog["floats"]).index(g.sec["float_model"]) + 1,
            "deck_thickness": product["thickness"],
            **dict(zip(("frame_underside", "frame_top", "deck_top"), levels, strict=True))}


def floats(g: Given, p: Results) -> Results:
    """Return the grid of floats: how many, how large [ft], where they stand."""
    model = g.catalog["floats"][g.sec["float_model"]]
    size = np.array([model["length"], model["width"]]) / INCHES
    along, across = size if g.sec["float_turned"] == "along" else size[::-1]
    rows, a_row = g.sec["float_rows"], g.sec["floats_a_row"]
    found: Results = {"float_round": int(model["shape"] == 2), "float_l": along,
                      "float_b": across, "grid_floats": rows * a_row,
                      "floats": rows * a_row + g.sec["extra_floats"]}
    for name, outer, pitch, room, count, side, inset, own_size in (
            ("across", "row_y", "float_y_pitch", "room_across", rows, g.sec["width"],
             g.sec["inset_side"], across),
            ("along", "end_x", "float_x_pitch", "room_along", a_row, g.sec["length"],
             g.sec["inset_end"], along)):
        # One row, or one float in a row, stands on the middle.
        off = side / 2 - inset / INCHES - own_size / 2 if count > 1 else 0.0
        step = 2 * off / (count - 1) if count > 1 else 0.0
        free = step if count > 1 else side
        found |= {outer: off, pitch: step, room: free,
                  **at_least(f"{name}_check", free, own_size, look=1)}
    return found


def reach(g: Given, p: Results) -> Results:
    """Return how far floats reach, as a share of half the frame; past 1 they stand outside."""
    half = np.array([g.sec["length"], g.sec["width"]]) / 2
    size = np.array([p["float_l"], p["float_b"]]) / 2
    found: Results = {}
    for k in EXTRAS:
        here = int(g.sec["extra_floats"] >= k)
        at = np.abs([g.sec[f"extra_x_{k}"], g.sec[f"extra_y_{k}"]])
        found |= {f"extra_here_{k}": here,
                  f"extra_reach_{k}": here * float(np.max((at + size) / half))}
    found["grid_reach"] = float(np.max((np.array([p["end_x"], p["row_y"]]) + size) / half))
    found["reach"] = max(found["grid_reach"], *(found[f"extra_reach_{k}"] for k in EXTRAS))
    return found | at_most("inside_check", found["reach"], 1.0, look=1)
