"""Names of the cells of the ledger sheets, and the roundings that the trade sheets agree on.

A ledger cell with a key is named "<Sheet>.<key>".  One without is named by what stands beside
and above it, "<Sheet>.<line>: <column>", such as "Takeoff.Nuts: Packs"; live words beside a line
are "<Sheet>.<line>: words".  A name that comes again on the sheet ends in " #2", " #3".

Roundings are house choices: a count goes up only past 1e-9 over a whole number, a half goes up.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from functools import cache
from math import floor, gcd
from typing import Any

from builder.resolve.cells import Place
from builder.sheets.book import model

LEDGERS = ("Takeoff", "Cutting", "CutList", "Orders", "Price")
DASH = "–"
SIXTEENTHS_IN_FOOT = 192


@cache
def cells_of(sheet: str) -> dict[str, Place]:
    """Return name → (sheet, row, column) of every cell of a ledger sheet."""
    found: dict[str, Place] = {}
    times: Counter[str] = Counter()
    line = ""
    for row in next(s for s in model().calculation if s.name == sheet).rows:
        if row.label == "words":
            label = f"{line}: words"
        else:
            label, line = row.label, row.label.rsplit(": ", 1)[0]
        name = row.key or label
        times[name] += 1
        again = f" #{times[name]}" if times[name] > 1 else ""
        found[f"{sheet}.{name}{again}"] = model().places.rows[row]
    return found


def cell(name: str) -> Place:
    """Return where the cell of a name stands.

    Raises:
        KeyError: no cell of a ledger sheet has that name.
    """
    return cells_of(name.partition(".")[0])[name]


def ledger_values(values: Mapping[Place, float | str]) -> dict[str, float | str]:
    """Return name → value of all cells of the ledger sheets, from values by place."""
    return {name: values[place] for sheet in LEDGERS
            for name, place in cells_of(sheet).items() if place in values}


def whole_up(value: float) -> int:
    """Return the whole number at or above a value."""
    return -floor(-(value - 1e-9))


def whole_down(value: float) -> int:
    """Return the whole number at or below a value."""
    return floor(value + 1e-9)


def nearest_whole(value: float) -> int:
    """Return the nearest whole number, a half going up."""
    return floor(value + 0.5 + 1e-9)


def cents(dollars: float) -> float:
    """Return an amount of money to the nearest cent, half a cent going up."""
    return floor(dollars * 100 + 0.5 + 1e-6) / 100


def column(row: Mapping[str, Any], name: str) -> Any:
    """Return a column of a published line, with or without the unit that its head may carry.

    Raises:
        KeyError: the line has no such column.
    """
    for head, value in row.items():
        if head == name or head.startswith((f"{name} [", f"{name} {{")):
            return value
    raise KeyError(name)


def shown(value: float, digits: int) -> str:
    """Return a number as words show it: a comma at thousands, a half going up."""
    return f"{value + 1e-9:,.{digits}f}"


def feet_and_inches(sixteenths: int) -> str:
    """Return the words of a length given in whole sixteenths of an inch, such as 12' 4 3/16"."""
    feet, rest = divmod(int(sixteenths), SIXTEENTHS_IN_FOOT)
    inches, part = divmod(rest, 16)
    if not part:
        return f"{feet}' {inches}\""
    shared = gcd(part, 16)
    return f"{feet}' {inches} {part // shared}/{16 // shared}\""
