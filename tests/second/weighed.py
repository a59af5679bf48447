"""Weight, second calculation: what every part weighs and where, as launched, in service, aged."""

from __future__ import annotations

from math import pi

import numpy as np

from tests.second.framing_basis import at_least, figure, own
from tests.second.framing_wood import supplement
from tests.second.given import Given, Results, line_of
from tests.second.parts_lumber import INCHES, across

FITTINGS = {"hinges": ("Section hinge", "Hinge pin 3/4"), "mooring_brackets": ("Mooring bracket",),
            "cleats": ("Cleat 10 in", "Cleat backing plate"), "bumper": ("Bumper, a foot",),
            "corner_wheels": ("Corner wheel",), "ladders": ("Ladder, 4 steps",)}
"""Entry of a section type → what one of it is made of."""
LUMBER = ("rail", "header", "stringer", "cross", "skirt")
STRINGERS, DECK, FLOATS = 2, 5, 14
"""Places in the list of parts."""
ITEMS = range(1, 5)


def work(g: Given, p: Results) -> Results:
    """Return the rows of Weight, without the sheet's name; ``p`` are those of Parts."""
    found = density(g) | volumes(g, p)
    found |= pieces(g, p, found)
    found |= bolts(g, p)
    launched = np.array(parts(g, p, found))
    found |= _listed("launch_parts", launched)
    gained = gains(g, p, found, launched)
    levels = heights(g, p)
    found |= _listed("heights", levels)
    found |= {"soak": g.job["density_frame"] - g.job["density_built"], "chain": gained[0],
              "growth": gained[1], "gangway": gained[2], **_listed("gain_parts", gained, 3)}
    found |= arms(g, p, found["float_weight"])
    found |= totals(g, found, launched, gained, levels)
    return found | aged(g, p, found, launched)


def _listed(name: str, values: np.ndarray, first: int = 0) -> Results:
    return {f"{name}_{k}": float(value) for k, value in enumerate(values, 1) if k > first}


def density(g: Given) -> Results:
    """Return what the frame's wood weighs just dry [pcf], and the delivered weight against it."""
    G, m = line_of("woods", g.job["wood"])["G"], supplement("moisture_limit")
    swollen = 1 + supplement("density_swelling") * G * m
    dry = supplement("density_water") * G / swollen * (1 + m / supplement("density_percent"))
    return {"gravity": G, "moisture": m, "density_moist": dry,
            **at_least("density_check", g.job["density_built"], dry, look=1, worst="LOOK")}


def _composite(g: Given) -> float | None:
    """Return the weight of boards that are no wood [pcf], None for wood."""
    board = g.catalog["boards"][g.sec["board"]]
    return None if board["wood"] else board["weight"]


def volumes(g: Given, p: Results) -> Results:
    """Return volumes of timber [ft³], and the density of deck boards [pcf]."""
    lengths = (g.sec["length"], p["clear_span"], p["stringer_length"], p["clear_span"],
               p["uses_5_4"])
    found: Results = {
        f"{part}_volume": p[f"{part}_t"] * p[f"{part}_d"] * length / INCHES ** 2
        for part, length in zip(LUMBER, lengths, strict=True)}
    gaps = (p["boards"] - 1) * p["board_gap"] / INCHES
    found["board_volume"] = 0.0 if g.sec["deck"] == "panels" else (
        p["board_length"] * (p["boards_over"] - gaps) * p["deck_thickness"] / INCHES)
    other = _composite(g)
    return found | {"board_built": g.job["density_built"] if other is None else other,
                    "board_wet": g.job["density_deck"] if other is None else other}


def pieces(g: Given, p: Results, v: Results) -> Results:
    """Return what one piece weighs [lb]."""
    found: Results = {f"{part}_weight": v[f"{part}_volume"] * g.job["density_built"]
                      for part in LUMBER[:4]}
    panel, goods = g.catalog["panels"][g.sec["panel"]], g.catalog["sundries"]
    found |= {
        "panel_weight": panel["weight"] * panel["length"] * panel["width"],
        "float_weight": g.catalog["floats"][g.sec["float_model"]]["own weight"]}
    return found | {
        "heaviest_piece": max(found.values()),
        "corner_weight": sum(g.catalog["corner_brackets"][g.job[f"corner_{side}"]]["weight"]
                             for side in ("inside", "outside")),
        "angle_weight": g.catalog["angles"][g.job["stringer_angle"]]["weight"],
        "plate_weight": g.catalog["washer_plates"][g.job["washer_plate"]]["weight"],
        "screw_weight": goods[f"Deck screw {g.job['deck_screw']}"]["weight"],
        # House choice: a lag weighs what one 4 in long does, its washer what a 3/8 one does.
        "lag_weight": goods[f"Lag {g.job['lag']}"]["weight"] + goods["Washer 3/8"]["weight"]}


def bolts(g: Given, p: Results) -> Results:
    """Return what a bolt weighs [lb] by the wood and steel it goes through [in].

    House choices: a head weighs as much as a nut; legs of one bracket take the same bolt, as
    long as the mean of the two need.
    """
    size, goods = line_of("bolts", g.job["bolt"]), g.catalog["sundries"]
    foot = figure("practice", "steel") * pi * (size["D"] / INCHES) ** 2 / 4
    stack = size["nut height"] + own("stack_projection")
    nuts, washer = 2 * goods[f"Nut {g.job['bolt']}"]["weight"], (
        goods[f"Washer {g.job['bolt']}"]["weight"])
    rail = g.sec["rail_plies"] * p["rail_t"]
    hung = rail if across(g) else p["header_t"]
    steel = [g.catalog["angles"][g.job["stringer_angle"]]["plate thickness"],
             g.catalog["washer_plates"][g.job["washer_plate"]]["thickness"]]
    brackets = [g.catalog["corner_brackets"][g.job[f"corner_{side}"]]["plate thickness"]
                for side in ("inside", "outside")]
    end, corner = (np.mean([p["stringer_t"], hung]) + sum(steel),
                   np.mean([p["header_t"], rail]) + sum(brackets))
    weights = [foot * (grip + stack) / INCHES + nuts + count * washer
               for grip, count in ((end, 1), (corner, 2), (rail + p["skirt_t"], 2))]
    names = ("end_bolt_weight", "corner_bolt_weight", "rail_bolt_weight")
    return {"bolt_foot": foot, "bolt_stack": stack, "head_nut": nuts, "washer_weight": washer,
            "rail_thick": rail, "hung_on": hung, "end_grip": end, "corner_grip": corner,
            **dict(zip(names, weights, strict=True))}


def parts(g: Given, p: Results, w: Results) -> list[float]:
    """Return all parts as launched [lb], fixed items apart."""
    goods = g.catalog["sundries"]
    deck = w["board_volume"] * w["board_built"] if g.sec["deck"] == "boards" else (
        g.catalog["panels"][g.sec["panel"]]["weight"] * p["deck_area"])
    found = [p["rails"] * w["rail_weight"], p["headers"] * w["header_weight"],
             p["stringers"] * w["stringer_weight"], g.sec["cross_beams"] * w["cross_weight"],
             w["skirt_volume"] * g.job["density_built"], deck,
             p["corner_inside"] * w["corner_weight"], p["angles"] * w["angle_weight"],
             p["washer_plates"] * w["plate_weight"],
             p["stringer_bolts"] * w["end_bolt_weight"],
             p["corner_bolts"] * w["corner_bolt_weight"],
             (p["ply_bolts"] + p["skirt_bolts"]) * w["rail_bolt_weight"]
             + p["skirt_screws"] * goods["Skirt screw No.14"]["weight"],
             p["deck_screws"] * w["screw_weight"], p["lags"] * w["lag_weight"],
             p["floats"] * w["float_weight"]]
    return found + [g.sec[entry] * sum(goods[name]["weight"] for name in names)
                    for entry, names in FITTINGS.items()]


def gains(g: Given, p: Results, w: Results, launched: np.ndarray) -> np.ndarray:
    """Return what comes on in service [lb]: chain, growth, gangway, wet timber below, deck."""
    wet = launched[:5] * (g.job["density_frame"] / g.job["density_built"] - 1)
    growth = g.job["growth_load"] * p["floats"] * p["float_l"] * p["float_b"]
    deck = w["board_volume"] * (w["board_wet"] - w["board_built"])
    return np.array([g.sec["chain_weight"], growth, g.sec["gangway_rest"], *wet, deck])


def heights(g: Given, p: Results) -> np.ndarray:
    """Return heights above K [ft]: chain, growth, gangway, then the parts as launched.

    Members hang from the frame's top.  House choices: hardware stands at the middle of what it
    joins, fittings at the frame's top, chain at its underside.
    """
    top, under = p["frame_top"], p["frame_underside"]
    middle = p["float_depth"] / 2 / INCHES
    lumber = [top - p[f"{part}_d"] / 2 / INCHES for part in LUMBER]
    rail, _, stringer, _, _ = lumber
    return np.array([under, middle, p["deck_top"], *lumber, (top + p["deck_top"]) / 2,
                     rail, stringer, stringer, stringer, rail, rail, top, under, middle,
                     *[top] * len(FITTINGS)])


def arms(g: Given, p: Results, float_weight: float) -> Results:
    """Return moments of fixed items and extra floats about the middle [lb·ft]."""
    weight, x, y, z = (np.array([g.sec[f"item_{name}_{k}"] for k in ITEMS])
                       for name in ("weight", "x", "y", "z"))
    here, far, out = (np.array([p[f"extra_here_{k}"] for k in ITEMS]),
                      *(np.array([g.sec[f"extra_{axis}_{k}"] for k in ITEMS]) for axis in "xy"))
    shift = p["stringer_shift"] * np.array([across(g), not across(g)])
    return {"items": weight.sum(), "items_moment": weight @ (p["deck_top"] + z),
            "items_x": weight @ x, "items_y": weight @ y,
            "extras_x": float_weight * (here @ far), "extras_y": float_weight * (here @ out),
            "stringers_x": shift[0], "stringers_y": shift[1]}


def totals(g: Given, w: Results, launched: np.ndarray, gained: np.ndarray,
           levels: np.ndarray) -> Results:
    """Return weights and centres of gravity, as launched and in service.

    House choice: chain, growth, lags and hardware count at the middle of the section.
    """
    launch = launched.sum() + w["items"]
    moment = np.array([
        w["items_x"] + w["extras_x"] + launched[STRINGERS] * w["stringers_x"],
        w["items_y"] + w["extras_y"] + launched[STRINGERS] * w["stringers_y"],
        w["items_moment"] + launched @ levels[3:]])
    wet_stringers = gained[3 + STRINGERS]
    more = np.array([
        wet_stringers * w["stringers_x"] + gained[2] * g.sec["gangway_x"],
        wet_stringers * w["stringers_y"] + gained[2] * g.sec["gangway_y"], gained @ levels[:9]])
    service = launch + gained.sum()
    at_launch, in_service = moment / launch, (moment + more) / service
    names = ("x", "y", "kg")
    return {"launch": launch, "launch_moment": moment[2], "launch_moment_x": moment[0],
            "launch_moment_y": moment[1], "service": service,
            "service_moment": (moment + more)[2],
            **{f"launch_{name}": value for name, value in zip(names, at_launch, strict=True)},
            **{f"service_{name}": value for name, value in zip(names, in_service, strict=True)},
            "frame_only": launch - launched[FLOATS],
            "lifted": service - g.sec["gangway_rest"] - g.sec["chain_weight"]}


def aged(g: Given, p: Results, w: Results, launched: np.ndarray) -> Results:
    """Return dead load on members [psf], and the weight once timber and floats are soaked."""
    frame = launched[:5].sum() / g.job["density_built"]
    dead = (launched[STRINGERS] * g.job["density_frame"] / g.job["density_built"]
            + launched[DECK] + w["gain_parts_9"] + w["items"]) / p["deck_area"]
    model = g.catalog["floats"][g.sec["float_model"]]
    fills = pi / 4 if p["float_round"] else model["fullness"]
    volume = p["floats"] * model["length"] * model["width"] * model["depth"] / INCHES ** 3 * fills
    timber = frame * (g.job["density_aged"] - g.job["density_frame"])
    wooden = _composite(g) is None
    deck = w["board_volume"] * (g.job["density_aged"] - g.job["density_deck"]) * wooden
    taken = g.job["float_water"] * volume
    return {"deck_dead": dead, "frame_volume": frame, "float_volume": volume,
            "aged_timber": timber, "aged_deck": deck, "aged_floats": taken,
            "aged": w["service"] + timber + deck + taken}
