"""Parts, second calculation: stringers, lengths of lumber, splices."""

from __future__ import annotations

from math import ceil, floor

import numpy as np

from tests.second.framing_basis import at_least, at_most, own
from tests.second.given import Given, Results

INCHES = 12
SLACK = 1e-9
"""House choice: a count goes up only past a billionth over a whole number."""
USES = {"Rails": "rail_size", "Headers": "header_size", "Stringers": "stringer_size",
        "Cross-beams": "cross_beam_size", "Skirts": "skirt_size"}


def up(x: float) -> int:
    """Return the whole number at or above x."""
    return ceil(x - SLACK)


def down(x: float) -> int:
    """Return the whole number at or below x."""
    return floor(x + SLACK)


def across(g: Given) -> bool:
    """Return whether stringers run from rail to rail."""
    return g.sec["run"] == "across"


def work(g: Given, p: Results) -> Results:
    """Return pieces and lengths of lumber."""
    found = stringers(g, p)
    found |= lengths(g, p, found)
    return found | by_size(g, {**p, **found})


def stringers(g: Given, p: Results) -> Results:
    """Return how stringers are laid out.

    House choice: a deck piece begins at the outside of the frame, so spacings count from there
    and the first joint lands on a stringer's middle; the last end member takes what is left.
    """
    plies, beams, spacing = g.sec["rail_plies"], g.sec["cross_beams"], g.sec["spacing"]
    end = p["header_t"] if across(g) else plies * p["rail_t"]
    layout = g.sec["length"] if across(g) else g.sec["width"]
    to_last_member = layout * INCHES - end / 2
    bays = up(to_last_member / spacing)
    at = spacing * np.arange(1, bays)
    last = to_last_member - (at[-1] if len(at) else 0.0)
    # Without a stringer the row still has a middle: half a bay from the outside.
    shift = (spacing * bays / 2 - layout * INCHES / 2) / INCHES
    parts, piece = 1, p["clear_span"]
    if not across(g):
        parts = beams + 1
        piece = max((p["header_clear"] - beams * p["cross_t"] / INCHES) / parts,
                    own("least_length"))
    return {"rails": 2 * plies, "headers": 2, "end_t": end, "layout_length": layout,
            "bays": bays, "stringer_lines": len(at), "last_space": last,
            **at_least("last_check", last, (end + p["stringer_t"]) / 2),
            "stringer_shift": shift, "stringers": len(at) * parts, "stringer_length": piece}


def lengths(g: Given, p: Results, s: Results) -> Results:
    """Return skirts, the longest piece of the frame (a skirt is none), splices of rails.

    House choice: the long skirts cover the ends of the short ones.
    """
    fitted, length = p["skirted"], g.sec["length"]
    long, short = (length + 2 * p["skirt_t"] / INCHES) * fitted, g.sec["width"] * fitted
    stock = g.job["longest_stock"]
    longest = max(length, p["clear_span"], s["stringer_length"])
    return {"skirt_long": long, "skirt_short": short, "uses_5_4": 2 * (long + short),
            "rail_splices": s["rails"] * (up(length / stock) - 1), "longest_piece": longest,
            **at_most("stock_check", longest, stock, look=1, worst="LOOK")}


def by_size(g: Given, p: Results) -> Results:
    """Return lengths of lumber by use and by size [ft]."""
    feet = [p["rails"] * g.sec["length"], p["headers"] * p["clear_span"],
            p["stringers"] * p["stringer_length"], g.sec["cross_beams"] * p["clear_span"],
            p["uses_5_4"]]
    sizes = [g.sec[entry] for entry in USES.values()]
    found: Results = {f"sizes_{k}": size for k, size in enumerate(sizes, 1)}
    found |= {f"feet_{k}": length for k, length in enumerate(feet, 1)}
    return found | {
        f"by_size_{k}": sum(length for length, at in zip(feet, sizes, strict=True) if at == size)
        for k, size in enumerate(g.catalog["lumber_prices"], 1)}
