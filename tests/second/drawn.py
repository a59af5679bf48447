"""Random lawful jobs such as a builder might type: six section types, most of them sound."""

from __future__ import annotations

import random
from datetime import datetime

from builder.jobs import Job, value_faults
from builder.language import Ask
from builder.sheets.book import model
from tests.second.given import Products, catalog

LETTERS = "ABCDEF"
OVERRULED = 0.2
"""Share of the defaults that a job overrules."""
NEEDED = {
    "low_water_depth": (3, 14), "salt_distance": (0, 500000), "longest_stock": (12, 24),
    "lag_length": (2, 4), "wind_speed": (80, 150), "fetch": (300, 20000), "fetch_depth": (5, 40),
    "current": (0, 3), "high_water": (0.5, 8)}
"""Numbers that every job must give: from, to."""
NEAR = {
    "water_weight": (62.2, 64.2), "ground_snow": (5, 60), "flotation_load": (15, 30),
    "person_weight": (150, 250), "person_height": (2.5, 3.6), "density_built": (30, 60),
    "density_frame": (45, 60), "density_deck": (35, 60), "density_aged": (45, 62),
    "lag_grip": (0.1, 1), "deck_screw_length": (2, 4), "open_area_rule": (0, 0.6),
    "shell_rule": (0.05, 0.3), "growth_load": (0.5, 4), "immersed_most": (0.6, 1),
    "reserve_ok": (1, 1.6), "reserve_least": (1, 1.4), "aged_ok": (0.7, 1), "aged_most": (0.8, 1),
    "float_water": (0, 5), "snow_most": (0.7, 1), "frame_least": (3, 12),
    "clearance_least": (0.5, 3), "gm_least": (0.5, 2), "deflection_live": (180, 480),
    "deflection_total": (180, 360), "lift_factor": (1, 2), "sling_share": (0.1, 0.3),
    "bumper_length": (5, 25), "lumber_waste": (0, 0.2), "deck_waste": (0, 0.2),
    "hardware_spare": (0, 0.2), "screws_a_crossing": (1, 4), "board_gap": (0.1, 0.7),
    "tilt_rest_ok": (0.3, 5), "tilt_rest_most": (0.5, 5), "tilt_point_ok": (2, 6),
    "tilt_point_most": (4, 10), "tilt_half_ok": (3, 8), "tilt_half_most": (5, 14),
    "tilt_lost": (2, 10), "corner_share": (0.2, 0.8), "corner_least": (1, 4), "lost_ok": (2, 8),
    "lost_least": (1, 4), "snow_density": (8, 30), "even_least": (0.1, 3), "finger_most": (2, 8),
    "hinge_load": (300, 4000), "terrain": (1, 1.5), "force_coefficient": (1.2, 2),
    "side_pressure": (5, 25), "line_pull": (0, 2000), "wind_mean": (30, 80),
    "wave_most": (1, 3), "current_coefficient": (0.8, 2), "hull_coefficient": (0.3, 1.5),
    "wake": (0.2, 2), "flood": (2, 12), "gangway_length": (8, 60), "gangway_width": (30, 60),
    "gangway_width_least": (30, 50), "gangway_weight": (200, 2500), "hinge_height": (2, 14),
    "gangway_run": (2, 12), "slips": (1, 60), "abutment_bolts": (2, 8),
    "anchor_limit": (500, 6000), "plate_stringers": (1, 6), "leg_angle": (25, 65),
    "chain_length": (15, 150), "chain_factor": (2, 5), "set_pull": (20, 200),
    "block_weight": (500, 12000), "sliding_factor": (1, 2.5), "pile_diameter": (8, 16),
    "pile_Fb": (1000, 2500), "pile_embedded": (6, 25), "pile_top": (5, 20),
    "soil_bearing": (60, 300), "scour": (0, 3), "hoop_play": (1, 2), "line_factor": (3, 6),
    "line_break": (3000, 40000), "hinge_pin": (0.5, 1.25), "hinge_planes": (1, 2),
    "hinge_limit": (500, 9000), "kerf": (0.06, 0.25), "end_trim": (0, 2), "road_width": (96, 144),
    "access_width": (80, 300), "trailer_length": (12, 40), "trailer_overhang": (0, 6),
    "trailer_payload": (2000, 15000), "crane_limit": (1500, 15000), "crane_reach": (8, 50)}
"""Numbers that a job may overrule: from, to."""
OFTEN = ("ground_snow", "growth_load", "flood", "gangway_length", "chain_length", "block_weight",
         "pile_embedded", "pile_top", "line_break", "anchor_limit", "line_pull")
"""What most builders fill in."""
OF_SECTION = {
    "deck_overhang": (0.5, 2), "cross_beams": (1, 4), "float_gap": (0, 2), "bumper": (8, 60),
    "capacity_load": (15, 60), "strength_load": (40, 110), "point_load": (250, 600),
    "deck_low": (10, 16), "deck_high": (18, 30), "deck_flotation": (4, 12),
    "deck_capacity": (1, 6), "holder_holds": (1, 4), "hinge_apart": (2, 6),
    "boat_draft_1": (1, 3), "boat_draft_2": (1, 3), "debris": (2, 40), "carried": (1, 4),
    "hinges": (1, 4), "mooring_brackets": (1, 4), "cleats": (1, 6), "corner_wheels": (1, 4),
    "ladders": (1, 2), "chain_weight": (20, 200)}
"""Numbers of a section type that may be given: from, to."""
CORNER_SIZES = ("6 1/4", "4 1/2", "8")


def random_jobs(seed: int, count: int) -> list[Job]:
    """Return jobs of six section types each, the same for the same seed."""
    return [_job(random.Random(f"{seed} {number}"), number) for number in range(count)]


def _job(draw: random.Random, number: int) -> Job:
    """Return a job; all its entries are such as a job file may give.

    Raises:
        ValueError: an entry that no input takes.
    """
    changes = _changes(draw)
    inputs = _of_job(draw)
    products = catalog(changes)
    sections = tuple(_section(draw, k, products) for k in range(len(LETTERS)))
    wrong = [f"{ask.key} = {given[ask.key]!r}: {fault}"
             for given, asks in [(inputs, model().job_inputs()),
                                 *((s, model().section_inputs()) for s in sections)]
             for ask in asks if ask.key in given
             for fault in value_faults(ask, given[ask.key])]
    if wrong:
        raise ValueError("; ".join(wrong))
    return Job(f"random_{number}", "Random", "Invented by chance", datetime(2026, 1, 15),
               inputs, sections, changes)


def _number(draw: random.Random, ask: Ask, span: tuple[float, float]) -> float:
    low, high = span
    if ask.whole:
        return draw.randint(round(low), round(high))
    return round(draw.uniform(low, high), draw.choice([0, 1, 3]) if high > 10 else 3)


def _of_job(draw: random.Random) -> dict[str, float | str]:
    found: dict[str, float | str] = {}
    for ask in model().job_inputs():
        may = ask.default is not None
        share = 0.6 if ask.key in OFTEN else OVERRULED
        if ask.free or (may and draw.random() > share):
            continue
        if ask.choices is not None:
            found[ask.key] = draw.choice(list(ask.choices.keys))
        elif ask.key in NEEDED or ask.key in NEAR:
            found[ask.key] = _number(draw, ask, {**NEEDED, **NEAR}[ask.key])
        else:  # rates and permit data: small numbers oftener
            value = ask.least + (ask.most - ask.least) * draw.random() ** 4
            found[ask.key] = round(value) if ask.whole else round(value, 3)
    return found | _hardware(draw)


def _hardware(draw: random.Random) -> dict[str, float | str]:
    """Return brackets of one height, and a lag that is sold."""
    high = draw.choice(CORNER_SIZES)
    outside = f"Corner outside {high} high" + draw.choice(["", ", two-ply rail"])
    return {"stringer_angle": f"Angle {high} high", "corner_inside": f"Corner inside {high} high",
            "corner_outside": outside, "lag": draw.choice(["1/4", "5/16", "3/8", "1/2"]),
            "deck_screw": draw.choice(["No.8", "No.10", "No.12"])}


def _changes(draw: random.Random) -> Products:
    """Return a few products that the builder has changed."""
    found: Products = {}
    for table in model().editable:
        if table.allowed and draw.random() < 0.3:
            key = draw.choice(table.keys)
            column = draw.choice(list(table.allowed))
            least, most = table.allowed[column]
            now = catalog()[table.name][key][column]
            if column in ("shape", "rating is net", "wood") or not least <= now <= most:
                continue
            value = min(max(now * draw.uniform(0.8, 1.25), least), most)
            whole = column.endswith(("each", "a leg", "a crossing", "pack", "holes"))
            found[table.name] = {key: {column: max(round(value), least) if whole
                                       else round(value, 4)}}
    return found


def _section(draw: random.Random, number: int, products: Products) -> dict[str, float | str]:
    length = draw.choice([8, 10, 12, 14, 16, 18, 20, 20, 24, 24, 28, 32, 36, 40,
                          round(draw.uniform(8, 40), 3)])
    width = draw.choice([4, 5, 6, 6, 8, 8, 8, 10, 10, 12, 12, round(draw.uniform(4, 12), 3)])
    run = draw.choice(["across", "across", "along"])
    deep = draw.choice(["2x8", "2x10", "2x10", "2x12", "3x10", "4x12", "6x8"])
    found: dict[str, float | str] = {
        "purpose": draw.choice(["walkway", "finger", "platform", "landing", "launch"]),
        "quantity": draw.randint(1, 6), "length": length, "width": width, "run": run,
        "stringer_size": draw.choice(["2x6", "2x8", "2x8", "2x10", "3x8", "4x6"]),
        "spacing": draw.choice([12, 16, 16, 24, round(draw.uniform(10, 24), 2)]),
        "rail_size": deep, "rail_plies": draw.choice([1, 2, 2, 3]),
        "header_size": draw.choice([deep, deep, "2x8", "2x10"]),
        "skirt": draw.choice(["none", "hung", "bolted to count"]),
        "deck": draw.choice(["panels", "boards"])}
    if run == "along":
        found["cross_beams"] = draw.randint(1, max(1, round(length / 6)))
    found |= _floats(draw, length, width, products["floats"])
    found |= _standing(draw, length, width) | _by_chance(draw, found)
    if draw.random() < 0.25:
        found["held_by"] = draw.choice(LETTERS.replace(LETTERS[number], ""))
    return found | _readings(draw)


def _floats(draw: random.Random, length: float, width: float,
            floats: dict[str, dict[str, float]]) -> dict[str, float | str]:
    """Return floats in rows that fit in the frame and carry most of what stands on it."""
    turned = draw.choice(["along", "along", "across"])
    side, end = draw.choice([0, 0, 2.5, 6]), draw.choice([0, 0, 3, 8])

    def size(name: str) -> tuple[float, float]:
        along, across = floats[name]["length"] / 12, floats[name]["width"] / 12
        return (along, across) if turned == "along" else (across, along)

    def most(name: str) -> tuple[int, int]:
        along, across = size(name)
        return int((length - end / 6) / along), int((width - side / 6) / across)

    fit = [name for name in floats if min(most(name)) >= 1] or list(floats)
    two = [name for name in fit if most(name)[1] >= 2] or fit
    name = draw.choice(two if draw.random() < 0.9 else fit)
    a_row, rows = (max(1, count) for count in most(name))
    rows = draw.choice([min(rows, 6), min(rows, 2), min(rows, 2)])
    a_row = max(1, min(20, a_row) - draw.choice([0, 0, 0, 1, 2]))
    found = {"float_model": name, "float_rows": rows, "floats_a_row": a_row,
             "float_turned": turned, "inset_side": side, "inset_end": end}
    extra = draw.choice([0, 0, 0, 1, 2, 4])
    if extra:
        found["extra_floats"] = extra
        for k in range(1, 5):  # more places given than floats: the last ones must not count
            found[f"extra_x_{k}"] = round(draw.uniform(-0.4, 0.4) * length, 2)
            found[f"extra_y_{k}"] = round(draw.uniform(-0.35, 0.35) * width, 2)
    return found


def _standing(draw: random.Random, length: float, width: float) -> dict[str, float]:
    """Return fixed items, the gangway's foot and boats."""
    found: dict[str, float] = {}

    def spot(x: str, y: str) -> None:
        found[x] = round(draw.uniform(-0.45, 0.45) * length, 2)
        found[y] = round(draw.uniform(-0.4, 0.4) * width, 2)

    for k in range(1, draw.choice([0, 0, 1, 2, 4]) + 1):
        found[f"item_weight_{k}"] = round(draw.uniform(20, 200), 1)
        found[f"item_z_{k}"] = round(draw.uniform(-1, 4), 2)
        spot(f"item_x_{k}", f"item_y_{k}")
    if draw.random() < 0.3:
        found["gangway_rest"] = round(draw.uniform(80, 500))
        spot("gangway_x", "gangway_y")
    for k in range(1, draw.choice([0, 1, 2]) + 1):
        found[f"boat_length_{k}"] = round(draw.uniform(12, 35), 1)
        found[f"boat_height_{k}"] = round(draw.uniform(2, 8), 1)
        found[f"boat_beam_{k}"] = round(draw.uniform(5, 11), 1)
        spot(f"boat_x_{k}", f"boat_y_{k}")
    if draw.random() < 0.6:
        found["holds"] = draw.choice([1, 2, 2, 4])
    return found


def _by_chance(draw: random.Random, already: dict[str, float | str]) -> dict[str, float | str]:
    """Return what else may be given for a section type."""
    found: dict[str, float | str] = {}
    for ask in model().section_inputs():
        if ask.free or ask.key in already or ask.key == "held_by" or draw.random() > 0.3:
            continue
        if ask.key in OF_SECTION:
            found[ask.key] = _number(draw, ask, OF_SECTION[ask.key])
        elif ask.choices is not None and ask.sheet.name == "Sections":
            found[ask.key] = draw.choice(list(ask.choices.keys))
    return found


def _readings(draw: random.Random) -> dict[str, float | str]:
    """Return what was read on the water: all of it, some, or nothing."""
    found: dict[str, float | str] = {}
    level = draw.uniform(10, 24)
    for name, corners in (("launch", draw.choice([0, 2, 4, 4])), ("month", draw.choice([0, 4]))):
        found |= {f"{name}_corner_{k}": round(level + draw.uniform(-2, 2), 6)
                  for k in range(1, corners + 1)}
    if draw.random() < 0.6:
        found |= {"drop_side": round(draw.uniform(0.5, 8), 3),
                  "drop_corner": round(draw.uniform(0.5, 12), 3), "test_weight":
                  round(draw.uniform(100, 600)), "shift_weight": round(draw.uniform(20, 300))}
    if draw.random() < 0.5:
        found |= {"sling_limit": round(draw.uniform(500, 9000)),
                  "machine_limit": round(draw.uniform(1000, 20000))}
    return found
