"""Setout, second calculation: how a section is set out and drilled, and its way to the water.

A frame is L long over its headers and B wide over its rails; headers stand between the rails.
Marks are centres in one run from the outside of the first end member.
"""

from __future__ import annotations

from math import ceil, hypot

from tests.second.given import Given, constants
from tests.second.launched_checks import at_least, at_most

Results = dict[str, float | str]


def work(g: Given, done: Results) -> Results:
    """Return the results of Setout for one section type."""
    found = _square(g)
    found |= _marks(g, done)
    found |= _drill(g, done)
    found |= _rules(g, done, found)
    found |= _clear_of_one_another(g, done, found)
    found |= _floats(g, done)
    found |= _kits(g, done)
    return {f"Setout.{key}": value for key, value in (found | _road(g, done)).items()}


def across(g: Given) -> bool:
    """Return whether stringers run from rail to rail."""
    return g.sec["run"] == "across"


def _square(g: Given) -> Results:
    """Return diagonals: an end that leans by an angle makes them differ by 2 L B angle / D."""
    own = constants("own_yard")
    long, wide = g.sec["length"], g.sec["width"]
    diagonal = hypot(long, wide)
    lean = own["square_out"] / (12 * own["square_over"])
    return {"diagonal": diagonal, "lean": lean,
            "diagonals_apart": 12 * 2 * long * wide * lean / diagonal}


def _marks(g: Given, done: Results) -> Results:
    """Return stringer marks and places of cross-beams [in]."""
    lines, spacing = done["Parts.stringer_lines"], g.sec["spacing"]
    run = 12 * (g.sec["length"] if across(g) else g.sec["width"])
    beams = g.sec["cross_beams"]
    clear = 12 * g.sec["length"] - 2 * done["Parts.header_t"] - beams * done["Parts.cross_t"]
    piece = clear / (beams + 1)
    return {"lines": lines, "first_space": spacing, "last_mark": lines * spacing,
            "last_out": run - lines * spacing, "half_stringer": done["Parts.stringer_t"] / 2,
            "odd_lines": lines % 2, "cross_piece": piece, "beamed": float(beams > 0),
            # House choice: 0 where there is no cross-beam.
            "cross_first": (beams > 0) * (
                done["Parts.header_t"] + piece + done["Parts.cross_t"] / 2),
            "cross_step": (beams > 0) * (piece + done["Parts.cross_t"])}


def _drill(g: Given, done: Results) -> Results:
    """Return places of holes in stringer ends and corners [in], heights below the top edge."""
    angle = g.catalog["angles"][g.job["stringer_angle"]]
    inside = g.catalog["corner_brackets"][g.job["corner_inside"]]
    plies = g.sec["rail_plies"] * done["Parts.rail_t"]
    rail = done["Parts.header_t"] + inside["corner to rail bolts"]
    return {
        "drill": done["Hardware.D"] + constants("nds_2018")["hole_over_most"],
        "hole_upper": done["Hardware.y_1"], "hole_lowest": done["Hardware.y_2"],
        "hole_step": angle["hole spacing"], "hole_end": angle["rail face to stringer bolts"],
        "stringer_below": done["Parts.stringer_d"] - done["Hardware.y_2"],
        "against_below": done["Hardware.d_n"] - done["Hardware.y_2"],
        "corner_upper": done["Hardware.y_c1"], "corner_lowest": done["Hardware.y_c2"],
        "corner_step": inside["hole spacing"], "corner_rail": rail,
        "corner_header": inside["corner to header bolts"],
        "off_mark": done["Parts.stringer_t"] / 2 + angle["rail face to stringer bolts"],
        "corner_out": rail if across(g) else plies + inside["corner to header bolts"]}


def _rules(g: Given, done: Results, found: Results) -> Results:
    """Return the distances that NDS 2018 asks of the pattern, and the least room over them [in].

    Either edge may be the loaded one.  House choices: to an end and apart the least distances of
    the table count here, since the geometry factor takes what the full ones would give; the room
    is held against the corner's inside bracket and the depth of header or rail, the lesser.
    """
    nds = constants("placement")
    D = done["Hardware.D"]
    edge, end, apart = (D * nds[key] for key in (
        "edge_loaded", "end_perp_least", "spacing_perp_least"))
    depth = min(done["Parts.header_d"], done["Parts.rail_d"])
    stringer = [done["Hardware.edge_least"] - edge, found["hole_end"] - end]
    corner = [found["corner_upper"] - edge, depth - found["corner_lowest"] - edge,
              found["corner_header"] - end]
    if done["Parts.bolts_a_leg"] > 1:
        stringer.append(found["hole_step"] - apart)
    if done["Parts.corner_bolts_a_leg"] > 1:
        corner.append(found["corner_step"] - apart)
    room = min(stringer), min(corner)
    return {"edge_rule": edge, "end_rule": end, "apart_rule": apart, "stringer_room": room[0],
            "corner_room": room[1], "pattern": (
                "yes" if min(room) >= -1e-9 else "NO: see Hardware before drilling")}


def _clear_of_one_another(g: Given, done: Results, found: Results) -> Results:
    """Return how far holes of angles and corners stand apart in the member they share [in].

    Angles sit on opposite sides from stringer to stringer, and the last one faces the space
    before it: two angles face one another wherever there are two stringers.
    """
    lines = found["lines"]
    first = found["first_space"] + (-1 if found["odd_lines"] else 1) * found["off_mark"]
    start = first - found["corner_out"]
    pair = g.sec["spacing"] - (2 * found["off_mark"] if lines > 1 else 0)
    end = found["last_out"] + found["off_mark"] - found["corner_out"]
    apart = min(start, pair, end)
    rule = constants("own_yard")["row_apart"] * done["Hardware.D"]
    if not lines:
        apart = rule
    return {"start_gap": start, "pair_gap": pair, "end_gap": end, "holes_clear": apart,
            "row_rule": rule, **at_least("clear_check", apart, rule, worst="LOOK")}


def _floats(g: Given, done: Results) -> Results:
    return {"row_first": g.sec["width"] / 2 - done["Parts.row_y"],
            "column_first": g.sec["length"] / 2 - done["Parts.end_x"]}


def _kits(g: Given, done: Results) -> Results:
    """Return what goes in a bag: both legs, a nut each; a washer under head and nut."""
    corner, leg = 2 * done["Parts.corner_bolts_a_leg"], done["Parts.bolts_a_leg"]
    plate = g.catalog["washer_plates"][g.job["washer_plate"]]
    return {"corner_nuts": corner, "corner_washers": 2 * corner,
            "end_nuts": 2 * leg, "end_plates": 2 * ceil(leg / plate["holes"])}


def lifted_whole(done: Results) -> float:
    """Return the weight on the hook: house choice, the heavier of as launched and lifted wet."""
    return max(done["Weight.launch"], done["Weight.lifted"])


def _road(g: Given, done: Results) -> Results:
    """Return widest, longest and heaviest thing on the road, whole or in pieces."""
    job = g.job
    over = done["Parts.overall_length"], done["Parts.overall_width"]
    if job["carried"] == "whole":
        wide, long = min(over), max(over)
    else:
        wide = min(done["Parts.float_l"], done["Parts.float_b"])
        long = done["Parts.longest_piece"]
    hook = job["lift_factor"] * (lifted_whole(done) if job["carried"] == "whole"
                                 else done["Weight.heaviest_piece"])
    limit = job["trailer_length"] + job["trailer_overhang"]
    return {
        "piece_width": wide, "piece_length": long, "load": done["Weight.launch"], "hook": hook,
        "long_limit": limit,
        **at_most("road_check", wide, job["road_width"] / 12, worst="LOOK"),
        **at_most("access_check", wide, job["access_width"] / 12, worst="LOOK"),
        **at_most("long_check", long, limit, worst="LOOK"),
        **at_most("payload_check", done["Weight.launch"], job["trailer_payload"], worst="LOOK"),
        **at_most("crane_check", hook, job["crane_limit"], worst="LOOK")}
