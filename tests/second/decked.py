"""Decking, second calculation: layout of panels or boards, and the strength of one board."""

from __future__ import annotations

from math import floor

import numpy as np

from tests.second.framing_basis import at_least, at_most, figure, nds, own
from tests.second.given import Given, Results, line_of, table
from tests.second.parts_lumber import INCHES, across, down, up

WIDTHS = ("2x4", "2x6", "2x8", "2x10", "2x12")
"""Sizes that stand for the width classes of the reference design values."""


def work(g: Given, p: Results) -> Results:
    """Return the rows of Decking, without the sheet's name; ``p`` are those of Parts."""
    found = panels(g, p) | cut(g, p)
    found |= joints(g, p) | open_area(g, p)
    return found | board(g, p)


def panels(g: Given, p: Results) -> Results:
    """Return how many panels stay whole, and how many are cut which way."""
    used = int(g.sec["deck"] == "panels")
    whole = np.array([down(p["deck_length"] / p["panel_x"]), down(p["deck_width"] / p["panel_y"])])
    cut_off = np.array([p["panel_columns"], p["panel_rows"]]) - whole
    panel = g.catalog["panels"][g.sec["panel"]]
    tabs = panel["tabs each"] * (p["deck_length"] + p["deck_width"]) / (
        panel["length"] + panel["width"])
    return {"columns_whole": used * whole[0], "rows_whole": used * whole[1],
            "panels_whole": used * whole.prod(), "panels_cut_length": used * cut_off[0] * whole[1],
            "panels_cut_width": used * whole[0] * cut_off[1],
            "panels_cut_both": used * cut_off.prod(), "tabs_off": used * up(tabs)}


def cut(g: Given, p: Results) -> Results:
    """Return the sizes of the last pieces [in]; a narrow one has little to be fixed by."""
    boards = g.sec["deck"] == "boards"
    last = [INCHES * (side - (count - 1) * size) for side, count, size in (
        (p["deck_length"], p["panel_columns"], p["panel_x"]),
        (p["deck_width"], p["panel_rows"], p["panel_y"]))]
    width = g.catalog["boards"][g.sec["board"]]["width"]
    rip = INCHES * p["boards_over"] - (p["boards"] - 1) * p["board_pitch"]
    rip = min(rip, width) if boards else 0.0
    narrowest = rip if boards else min(last)
    last = [0.0, 0.0] if boards else last
    return {"last_column": last[0], "last_row": last[1], "last_rip": rip, "narrowest": narrowest,
            **at_least("narrow_check", narrowest, own("rip_least"), worst="LOOK")}


def joints(g: Given, p: Results) -> Results:
    """Return how far panel joints stand off the middle of their stringers [in]."""
    used = int(g.sec["deck"] == "panels")
    spacing = g.sec["spacing"]
    panel = g.catalog["panels"][g.sec["panel"]]["length"] * INCHES
    count = (p["panel_columns"] if across(g) else p["panel_rows"]) - 1
    bays = max(floor(panel / spacing + 0.5), 1)
    step = panel - bays * spacing
    # Joint k stands k panels from the deck's edge, the stringer k times the bays from the frame's.
    at = np.arange(1, count + 1)
    off = np.abs(at * step - g.sec["deck_overhang"])
    furthest = used * float(off.max(initial=0.0))
    return {"panel_length": panel, "joints": count, "bays_a_panel": bays,
            "joint_step": step, "joint_off": furthest,
            **at_most("joint_check", furthest, p["stringer_t"] / 2,
                      look=own("joint_tolerance") / (p["stringer_t"] / 2))}


def open_area(g: Given, p: Results) -> Results:
    """Return largest spacing, open area and gaps against their rules."""
    boards = g.sec["deck"] == "boards"
    panel, product = g.catalog["panels"][g.sec["panel"]], g.catalog["boards"][g.sec["board"]]
    largest = (product if boards else panel)["largest spacing"]
    share = p["board_gap"] / p["board_pitch"] if boards else panel["open share"]
    public = p["board_gap"] if boards and g.job["use"] == "public" else 0.0
    return {"largest_spacing": largest,
            **at_most("spacing_check", g.sec["spacing"], largest, look=1), "open_share": share,
            **at_least("open_check", share, max(g.job["open_area_rule"], own("least_share"))),
            "gap_public": public,
            **at_most("gap_check", public, figure("ada_2010", "gap_most"), worst="LOOK")}


def board(g: Given, p: Results) -> Results:
    """Return bending of one wood board on its flat, over one simple span."""
    product = g.catalog["boards"][g.sec["board"]]
    thick, wide, spacing = product["thickness"], product["width"], g.sec["spacing"]
    # House choice: thinner boards and composite rest on their maker's largest spacing.
    figured = int(g.sec["deck"] == "boards" and bool(product["wood"]) and thick >= 1.5)
    density = g.job["density_deck"] if product["wood"] else product["weight"]
    dead = density * thick / INCHES
    snow = g.job["ground_snow"] if g.job["stays_in"] == "yes" else 0.0
    # Snow lies for a shorter time than people's load: its stress may be as much greater.
    lying = (dead + snow) * nds("CD_live") / nds("CD_snow")
    load = max(dead + g.sec["strength_load"], lying) * wide / INCHES
    uniform = load / INCHES * spacing ** 2 / 8
    share = 1.0 if wide >= own("wide_board") else own("two_boards_share")
    point = share * g.sec["point_load"]
    from_point = point * spacing / 4 + dead * wide / INCHES / INCHES * spacing ** 2 / 8
    modulus = wide * thick ** 2 / 6
    stress = figured * max(uniform, from_point) / modulus
    found = {"figured": figured, "board_dead": dead, "board_load": load,
             "snow": snow, "snow_not_figured": 0 if figured else snow,
             "moment_uniform": uniform, "board_point": point, "moment_point": from_point,
             "section_modulus": modulus, "board_stress": stress, **values(g, wide)}
    return (found | at_most("board_check", stress, found["Fb_adjusted"])
            | at_most("snow_check", found["snow_not_figured"], g.sec["strength_load"],
                      worst="LOOK"))


def values(g: Given, wide: float) -> Results:
    """Return the bending value of a board with its factors: wet, ten-year load, on the flat."""
    steps = [int(wide >= line_of("lumber_sizes", size)["width dressed"]) for size in WIDTHS[1:]]
    size = line_of("lumber_sizes", WIDTHS[sum(steps)])
    names = [line["wood"] for line in table("woods")]
    first = names.index(g.job["wood"])
    by_width = bool(table("woods")[first]["by width"])
    at = first + (int(size["width class"]) - 1 if by_width else 0)
    wood = table("woods")[at]
    column = "stud Fb" if wood["stud"] else "Fb 2 and 3 in thick"
    other = table("size_factors")[int(size["width class"]) - 1][column]
    pine = table("size_factors_pine")[int(size["width class"]) - 1]["Fb 2 and 3 in thick"]
    factor = pine if by_width else other
    wet = 1.0 if wood["Fb"] * factor <= figure("nds_supplement_2018", "CM_Fb_limit") else figure(
        "nds_supplement_2018", "CM_Fb")
    flat = table("flat_use_factors")[int(size["flat use row"]) - 1]["2 and 3 in thick"]
    incised = figure("nds_supplement_2018", "Ci_strength") if g.job["incised"] == "yes" else 1.0
    part = wood["Fb"] * nds("CD_live") * wet * nds("Ct_normal")
    lumber = [line["size"] for line in table("lumber_sizes")]
    return {"narrow_steps": sum(steps[:2]), "wide_steps": sum(steps[2:]),
            "size_line": lumber.index(size["size"]) + 1, "wood_first": first + 1,
            "wood_line": at + 1, "Fb": wood["Fb"], "CF_other": other, "CF": factor,
            "CD": nds("CD_live"), "CM": wet, "Ct": nds("Ct_normal"), "CL": 1.0, "Cfu": flat,
            "Ci": incised, "Cr": nds("Cr_single"), "Fb_part": part,
            "Fb_adjusted": part * factor * flat * incised}
