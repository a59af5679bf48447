"""Parts, second calculation: brackets, bolts, lags, the deck."""

from __future__ import annotations

from tests.second.framing_basis import own
from tests.second.given import Given, Results
from tests.second.parts_lumber import INCHES, across, down, up


def work(g: Given, p: Results) -> Results:
    """Return counts of hardware and of decking."""
    found = brackets(g, p) | panels(g, p)
    found |= boards(g, {**p, **found})
    return found | bolts(g, p, found)


def brackets(g: Given, p: Results) -> Results:
    """Return corner brackets, angles, washer plates.

    House choices: a corner has one bracket inside and one outside on the same bolts; an end has
    one angle, and plates behind both its legs, as many as its bolts need holes.
    """
    ends = 2 * (p["stringers"] + g.sec["cross_beams"])
    leg = g.catalog["angles"][g.job["stringer_angle"]]["bolts a leg"]
    holes = g.catalog["washer_plates"][g.job["washer_plate"]]["holes"]
    corner = max(g.catalog["corner_brackets"][g.job[f"corner_{side}"]]["bolts a leg"]
                 for side in ("inside", "outside"))
    return {"corner_inside": 4, "corner_outside": 4, "stringer_ends": ends, "angles": ends,
            "bolts_a_leg": leg, "washer_plates": 2 * ends * up(leg / holes),
            "stringer_bolts": 2 * ends * leg, "corner_bolts_a_leg": corner,
            "corner_bolts": 4 * 2 * corner}


def bolts(g: Given, p: Results, c: Results) -> Results:
    """Return bolts in all; each has a nut, and a washer at either side without a plate.

    House choice: plies are joined by one row of bolts a rail, a bolt at each end of it.
    """
    ply = 0
    if g.sec["rail_plies"] > 1:
        ply = 2 * (up(g.sec["length"] * INCHES / own("ply_bolt_spacing")) + 1)
    places = up(p["uses_5_4"] * INCHES / own("skirt_fastener_spacing"))
    screws = 2 * places if g.sec["skirt"] == "hung" else 0
    skirt = places if g.sec["skirt"] == "bolted to count" else 0
    every = c["stringer_bolts"] + c["corner_bolts"] + ply + skirt
    lags = p["floats"] * g.catalog["floats"][g.sec["float_model"]]["lags each"]
    return {"ply_bolts": ply, "skirt_places": places, "skirt_screws": screws,
            "skirt_bolts": skirt, "bolts": every,
            "washers": 2 * every - c["stringer_bolts"], "lags": lags}


def panels(g: Given, p: Results) -> Results:
    """Return panels that cover the deck, cut at its edges; their length lies across stringers."""
    panel = g.catalog["panels"][g.sec["panel"]]
    sides = (panel["length"], panel["width"])
    along, broad = sides if across(g) else sides[::-1]
    columns, rows = up(p["deck_length"] / along), up(p["deck_width"] / broad)
    return {"panel_x": along, "panel_y": broad, "panel_columns": columns, "panel_rows": rows,
            "panels": columns * rows if g.sec["deck"] == "panels" else 0}


def boards(g: Given, p: Results) -> Results:
    """Return lines of boards, laid across the stringers; their pieces end on stringers.

    House choice: no board is longer than whole bays, even where a whole line would be.
    """
    board = g.catalog["boards"][g.sec["board"]]
    wood, used = board["wood"], g.sec["deck"] == "boards"
    gap = g.job["board_gap"] if wood else board["gap"]
    plan = (p["deck_width"], p["deck_length"])
    over, length = plan if across(g) else plan[::-1]
    pitch = board["width"] + gap
    # n boards have n - 1 gaps.
    lines = up((over * INCHES + gap) / pitch) if used else 0
    spacing = g.sec["spacing"] / INCHES
    reach = spacing * down(g.job["longest_stock"] / spacing)
    pieces = lines * up(length / reach)
    crossings, butts = lines * (p["stringer_lines"] + 2), pieces - lines
    a_crossing = g.job["screws_a_crossing"] if wood else board["screws a crossing"]
    screws = (crossings + butts) * a_crossing
    if not used:
        panel = g.catalog["panels"][g.sec["panel"]]
        screws = p["panels"] * panel["screws each"]
    return {"board_line": list(g.catalog["boards"]).index(g.sec["board"]) + 1, "board_gap": gap,
            "boards_over": over, "board_length": length, "board_pitch": pitch, "boards": lines,
            "board_reach": reach, "board_pieces": pieces, "board_butts": butts,
            "crossings": crossings, "screws_a_crossing": a_crossing, "deck_screws": screws,
            "board_feet": lines * length}
