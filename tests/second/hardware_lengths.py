"""Bolt lengths by use, from the stock of the catalog; finish and treatment by the water."""

from __future__ import annotations

from tests.second.framing_basis import (
    Results,
    at_least,
    at_most,
    figure,
    line_of,
    own,
    place_of,
)
from tests.second.given import Given
from tests.second.hardware_joint import Joint

LENGTHS = 15
"""Lengths of one diameter that the sheet has room for."""
USES = ("leg", "rail", "header", "corner", "ply", "skirt")


def needed(g: Given, done: Results, joint: Joint, found: Results) -> dict[str, float]:
    """Return the length each use needs under the head [in]."""
    bolt = joint.bolt
    washer = bolt["washer thickness"]
    past = bolt["nut height"] + own("stack_projection")
    plate = g.catalog["washer_plates"][g.job["washer_plate"]]["thickness"]
    angle = found["Hardware.t_p"]
    brackets = sum(g.catalog["corner_brackets"][g.job[f"corner_{side}"]]["plate thickness"]
                   for side in ("inside", "outside"))
    rail = g.sec["rail_plies"] * done["Parts.rail_t"]
    wood = {"leg": angle + found["Hardware.t_m"] + plate + washer,
            "rail": angle + found["Hardware.t_n"] + plate + washer,
            "header": brackets + done["Parts.header_t"] + 2 * washer,
            "corner": brackets + rail + 2 * washer, "ply": rail + 2 * washer,
            "skirt": done["Parts.skirt_t"] + rail + 2 * washer}
    return {use: length + past for use, length in wood.items()}


def from_stock(g: Given, joint: Joint, needs: dict[str, float]) -> Results:
    """Return the rows of stock lines and bolts to order, with their checks.

    A use longer than every bolt of the diameter takes the longest, and the check says so.
    """
    stock = list(g.catalog["bolt_stock"].values())
    before = sum(line["D"] < joint.d for line in stock)
    same = [line["length"] for line in stock if line["D"] == joint.d]
    last = max(1, min(before + len(same), len(stock)))
    rows = {"before": before, "stocked": len(same), "longest_line": last,
            "longest": max(needs.values())}
    for use, need in needs.items():
        place = max(1, min(before + sum(length < need for length in same) + 1, last))
        rows |= {f"{use}_need": need, f"{use}_line": place,
                 f"{use}_bolt": stock[place - 1]["length"]}
    checks = at_most("Hardware.length_check", rows["longest"], stock[last - 1]["length"])
    checks |= at_least("Hardware.stock_check", len(same), 1)
    return {f"Hardware.{key}": value for key, value in rows.items()} | checks


def by_length(done: Results, rows: Results) -> Results:
    """Return the bolts of each stock line; half of an angle's or corner's go through each leg."""
    counts = dict(zip(USES, (
        done["Parts.stringer_bolts"] / 2, done["Parts.stringer_bolts"] / 2,
        done["Parts.corner_bolts"] / 2, done["Parts.corner_bolts"] / 2, done["Parts.ply_bolts"],
        done["Parts.skirt_bolts"]), strict=True))
    found: Results = {}
    for n, use in enumerate(USES, start=1):
        found |= {f"Hardware.counts_{n}": counts[use],
                  f"Hardware.lines_{n}": rows[f"Hardware.{use}_line"]}
    for k in range(1, LENGTHS + 1):
        line = rows["Hardware.before"] + k
        found[f"Hardware.by_length_{k}"] = sum(
            count for use, count in counts.items() if rows[f"Hardware.{use}_line"] == line)
    return found


def water(g: Given) -> Results:
    """Return the rows of finish and treatment."""
    salt = line_of("waters", g.job["water"])["salt"]
    near = salt or g.job["salt_distance"] <= figure("irc_2015", "salt_distance")
    finish = line_of("finishes", g.job["finish"])
    proof = finish["good in salt water"]
    score = 2 if proof or not near else 0 if salt else 1
    return {
        "Hardware.salt": salt, "Hardware.near_salt": int(near),
        "Hardware.finish_line": place_of("finishes", g.job["finish"]),
        "Hardware.finish_score": score, "Hardware.fasteners": finish["fasteners"],
        "Hardware.connectors": finish["connectors"],
        "Hardware.treat_above": "UC4B" if near else "UC4A",
        "Hardware.treat_below": "UC5" if salt else "UC4A",
    } | at_least("Hardware.finish_check", score, 1, look=1 / 2)


def work(g: Given, done: Results, joint: Joint, found: Results) -> Results:
    """Return the rows of bolt lengths, finish and treatment."""
    needs = needed(g, done, joint, found)
    rows = from_stock(g, joint, needs)
    rows |= {"Hardware.washer_t": joint.bolt["washer thickness"],
             "Hardware.past": joint.bolt["nut height"] + own("stack_projection"),
             "Hardware.brackets": sum(
                 g.catalog["corner_brackets"][g.job[f"corner_{side}"]]["plate thickness"]
                 for side in ("inside", "outside"))}
    return rows | by_length(done, rows) | water(g)
