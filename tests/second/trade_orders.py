"""Orders, second calculation: what to order by supplier, in whole boards and packs, and its cost.

Spare boards come on top of the boards of the cut list, to the nearest board.  A price that the
yard gave overrules the catalog's: it stands in ``job`` under "yard_price_<group>_<line>", where
nothing typed means the catalog's own price.
"""

from __future__ import annotations

from dataclasses import dataclass

from tests.second.given import Given, constants, table
from tests.second.trade_boards import lumber_lines
from tests.second.trade_cutting import deck_cuts
from tests.second.trade_names import DASH, column, nearest_whole
from tests.second.trade_takeoff import materials, specs

GROUPS = ("lumber", "floats", "decking", "hardware", "anchors", "sundries")
TREATED_TO = {"air": ("UC4B", "UC4A"), "water": ("UC5", "UC4A")}


@dataclass
class Bought:
    """A line of Orders: what is ordered, in all, catalog price, and by what it is multiplied."""

    group: str
    number: int
    label: str
    packs: float
    count: float | None
    catalog: float
    priced: float


def lines(g: Given, done: dict[str, float | str]) -> list[Bought]:
    """Return every line that is bought, as it is numbered within its group."""
    found = [_board(g, "lumber", n, done[f"CutList.Lumber {n}: Boards"],
                    done[f"CutList.Lumber {n}: Feet"],
                    done[f"CutList.Lumber {n}: Price, a foot"], "lumber_waste")
             for n in lumber_lines(done)]
    for n, (_, board, _, _, feet, boards) in enumerate(deck_cuts(g), start=1):
        price = g.catalog["boards"][board]["price per foot"] if boards else 0.0
        found.append(_board(g, "deck_boards", n, boards, boards * feet, price, "deck_waste"))
    numbers = dict.fromkeys(GROUPS, 0)
    for item in materials(g):
        numbers[item.group] += 1
        count = item.packs * item.pack if item.pack is not None else None
        found.append(Bought(item.group, numbers[item.group], item.label, item.packs, count,
                            item.price, item.packs))
    return found


def _board(g: Given, group: str, number: int, boards: float, feet: float, price: float,
           spare: str) -> Bought:
    """Return a line of boards, spare ones on top, priced by the foot."""
    ordered = boards + nearest_whole(boards * g.job[spare])
    in_all = ordered * feet / boards if boards else 0.0
    return Bought(group, number, f"{group}, line {number}", ordered, in_all, price, in_all)


def yard_prices(g: Given) -> dict[str, float]:
    """Return what the yard gave, by "<group>_<line>"; a blank is left out where it is known."""
    typed = getattr(g, "typed", None)
    source = g.job if typed is None else typed
    start = "yard_price_"
    return {key[len(start):]: value for key, value in source.items()
            if key.startswith(start) and isinstance(value, int | float)}


def work(g: Given, done: dict[str, float | str]) -> dict[str, float | str]:
    """Return the results of Orders, for the whole dock."""
    found: dict[str, float | str] = _words(g) | _line_words(g, done)
    cost = dict.fromkeys(GROUPS, 0.0)
    given = yard_prices(g)
    for line in lines(g, done):
        name, key = f"Orders.{line.label}", f"{line.group}_{line.number}"
        found[f"{name}: To order"] = line.packs
        if line.count is not None:
            found[f"{name}: In all"] = line.count
        found[f"{name}: Catalog price"] = line.catalog
        paid = given.get(key, line.catalog)
        found[f"Orders.yard_price_{key}"] = paid
        found[f"Orders.costs_{key}"] = line.priced * paid
        cost["decking" if line.group == "deck_boards" else line.group] += line.priced * paid
    for group, amount in cost.items():
        if group != "lumber" or lumber_lines(done):
            found[f"Orders.group_cost_{group}"] = amount
    if lumber_lines(done):
        found["Orders.materials"] = sum(cost.values())
        found["Orders.missing"] = sum(float(done[f"CutList.{key}"])
                                      for key in ("not_listed", "not_reached"))
    found["Orders.longest_lead"] = max(g.job[f"lead_time_{group}"] for group in GROUPS)
    return found


def _words(g: Given) -> dict[str, float | str]:
    """Return the words that lines take up: use categories of AWPA U1, finishes of IRC R317.3."""
    salt = next(row for row in table("waters") if column(row, "water") == g.job["water"])
    in_salt = float(column(salt, "salt")) > 0
    reach = constants("irc_2015")["salt_distance"]
    near = in_salt or g.job["salt_distance"] <= reach
    air, water = (words[not sure] for words, sure in zip(
        TREATED_TO.values(), (near, in_salt), strict=True))
    finish = next(row for row in table("finishes")
                  if column(row, "finish") == g.job["finish"])
    treated = f", {g.job['sawn']}, pressure treated to {air}, tag on every board"
    words = {
        "use_above": air, "use_below": water, "lumber_words_1": DASH,
        "lumber_words_2": g.job["wood"] + treated,
        "lumber_words_3": g.job["timber_wood"] + treated,
        "deck_words": f"deck board; if treated, to {air}, tagged",
        "fastener_words": f"{g.job['finish']}, {column(finish, 'fasteners')}",
        "connector_words": f"{g.job['finish']}, {column(finish, 'connectors')}",
        "pile_words": f"pressure treated to {water}, tagged",
    }
    return {f"Orders.{key}": text for key, text in words.items()}


def _line_words(g: Given, done: dict[str, float | str]) -> dict[str, float | str]:
    """Return names and words of the lines: size and stock, what each group asks of it."""
    asked = _words(g)
    heavy = {column(row, "size") for row in table("lumber_sizes") if float(column(row, "timber"))}
    found: dict[str, float | str] = {}
    for n in lumber_lines(done):
        size, stock = (done[f"CutList.Lumber {n}: {part}"] for part in ("Size", "Stock"))
        line, bought = f"Orders.lumber, line {n}", done[f"CutList.Lumber {n}: Boards"]
        kind = 1 if not bought else 3 if size in heavy else 2
        found |= {line: f"{size}, {stock}" if bought else DASH}
        found[f"{line}: words"] = asked[f"Orders.lumber_words_{kind}"]
    for n, (_, board, _, _, feet, boards) in enumerate(deck_cuts(g), start=1):
        line = f"Orders.deck_boards, line {n}"
        found[line] = f"{board}, {feet:g} ft" if boards else DASH
        found[f"{line}: words"] = asked["Orders.deck_words"] if boards else DASH
    words = specs(g)
    for item in materials(g):
        more = asked.get(f"Orders.{item.kind}_words", "")
        spec = words.get(item.label) or _fixed_spec(g, item.label)
        if more and spec:
            found[f"Orders.{item.label}: words"] = f"{spec}; {more}"
    return found


def _fixed_spec(g: Given, label: str) -> str:
    """Return the words of a line that stand on Takeoff as they are typed or known."""
    return {"Stringer-end angle": g.job["stringer_angle"],
            "Corner bracket, inside": g.job["corner_inside"],
            "Corner bracket, outside": g.job["corner_outside"],
            "Washer plate": g.job["washer_plate"], "Nuts": g.job["bolt"],
            "Round washers": g.job["bolt"], "Washers under float lags": g.job["lag"],
            "Skirt screws": "No.14", "Section hinges": "Section hinge",
            "Hinge pins": "Hinge pin 3/4", "Mooring brackets": "Mooring bracket"}.get(label, "")
