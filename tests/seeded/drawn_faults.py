"""The faults to be seeded: drawn by chance, the same every time, so many on each sheet."""

from __future__ import annotations

import random
import re
from collections import defaultdict
from dataclasses import dataclass

from builder.engine.values import a1, row_col
from builder.resolve.cells import Cell, Place
from builder.resolve.frame import FIRST, STATE
from builder.resolve.proof_sheet import YOURS
from tests.seeded import filed, typed
from tests.seeded.bench import Bench
from tests.seeded.changes import changes, moved

SEED = 20260217
FORMULAS = {
    "Start": 14, "Inputs": 18, "Sections": 26, "Catalog": 8, "Data": 1, "Parts": 26,
    "Decking": 16, "Weight": 22, "Buoyancy": 26, "SiteLoads": 20, "Stability": 52,
    "Gangway": 20, "Framing": 56, "Mooring": 28, "Hardware": 44, "Takeoff": 18, "Cutting": 26,
    "CutList": 20, "Orders": 22, "Rates": 12, "Price": 26, "Quote": 16, "Setout": 18,
    "Tape": 22, "Yard": 18, "Readings": 12, "Launch": 18, "AsBuilt": 20, "LaunchForm": 14,
    "Upkeep": 10, "SiteVisit": 8, "Drawing": 34, "Curves": 12, "Checks": 26, "Worked": 36,
    "Proof": 40, "Names": 1, "Terms": 1, "Free": 1, "Sources": 1, "Sketches": 1}
"""How many formulas of each sheet are changed."""
NUMBERS = {"published value": 60, "mark": 10, "limit": 16, "published example": 12}
"""How many numbers that stand in the workbook are changed, by what they are."""
GUARDS = 0.04
"""Share of the changes that may fall on what guards a cell until its inputs are there."""
SIX = range(FIRST, FIRST + 6)
"""Columns of the six section types."""
EVERY = 13
"""The normal run tries one in so many."""


@dataclass(frozen=True)
class Fault:
    """One change in the resolved workbook: where, of what kind, from what to what."""

    place: Place
    kind: str
    before: str | float | None
    after: str | float | None

    @property
    def sheet(self) -> str:
        """The sheet on which it stands."""
        return self.place[0]

    def across(self, cells: dict[Place, Cell]) -> list[Fault]:
        """Return the fault in each column of the section types that holds the same formula."""
        found = [self]
        if not str(self.after).startswith("=") or self.place[2] not in SIX:
            return found
        sheet, y, x = self.place
        for column in SIX:
            cell = cells.get((sheet, y, column))
            if column == x or cell is None or cell.kind != "formula":
                continue
            before, after = (moved(str(text), column - x) for text in (self.before, self.after))
            if before == cell.content and after is not None:
                found.append(Fault((sheet, y, column), self.kind, before, after))
        return found

    def __str__(self) -> str:
        spot = f"{self.sheet}!{a1(*self.place[1:])}"
        return f"{spot}, {self.kind}: {self.before} becomes {self.after}"


def all_faults(bench: Bench) -> list[Fault]:
    """Return every fault of the long run."""
    found = [fault for sheet, count in FORMULAS.items() for fault in of_sheet(bench, sheet, count)]
    return found + of_numbers(bench)


def some_faults(bench: Bench) -> list[Fault]:
    """Return the faults of the normal run."""
    return all_faults(bench)[::EVERY]


def of_sheet(bench: Bench, sheet: str, count: int) -> list[Fault]:
    """Return so many changed formulas of a sheet, of different lines while there are enough."""
    draw = random.Random(f"{SEED} {sheet}")
    by_line: dict[int, list[tuple[Place, Cell]]] = defaultdict(list)
    for place, cell in bench.cells.items():
        if place[0] == sheet and cell.kind == "formula":
            by_line[place[1]].append((place, cell))
    found: dict[tuple[Place, object], Fault] = {}
    while len(found) < count:
        order = list(by_line)
        draw.shuffle(order)
        for y in order:
            if len(found) < count and (fault := _changed(bench, *draw.choice(by_line[y]), draw)):
                found[fault.place, fault.after] = fault
    return list(found.values())


def _changed(bench: Bench, place: Place, cell: Cell, draw: random.Random) -> Fault | None:
    """Return one change of a formula, each kind as likely as another; None if there is none."""
    def is_filled(address: str) -> bool:
        name, _, spot = address.rpartition("!")
        other = bench.cells.get((name or place[0], *row_col(spot)))
        return other is not None and other.kind in ("formula", "number")

    formula = str(cell.content)
    able = changes(formula, is_filled, draw, guard=draw.random() < GUARDS)
    if not able:
        return None
    kind = draw.choice(sorted(able))
    return Fault(place, kind, formula, draw.choice(able[kind]).after)


def of_numbers(bench: Bench) -> list[Fault]:
    """Return the changed numbers: published values, marks, limits, published examples."""
    draw = random.Random(f"{SEED} numbers")
    spots = {
        "published value": sorted(filed.numbers(bench)),
        "limit": sorted(typed.limits(bench)),
        "published example": sorted(
            p for p, c in bench.cells.items()
            if p[0] == "Proof" and FIRST <= p[2] < YOURS and c.kind == "number"),
    }
    found = []
    for kind, places in spots.items():
        for place in draw.sample(places, NUMBERS[kind]):
            now = float(bench.cells[place].content)
            found.append(Fault(place, kind, now, _other(bench, place, now, draw)))
    marked, blank = [], []
    for place in filed.marks(bench):
        (marked if place in bench.cells else blank).append(place)
    for places, now, then in ((marked, 1.0, None), (blank, None, 1.0)):
        found += [Fault(p, "mark", now, then) for p in draw.sample(places, NUMBERS["mark"] // 2)]
    return found


def _other(bench: Bench, place: Place, now: float, draw: random.Random) -> float:
    """Return another number such as a slip of the pen gives."""
    sheet, y, x = place
    able = [now * 1.1 if now else 1.0, now + 1, now * 12 if abs(now) < 1000 else now / 12]
    for step in (1, -1):  # the number of the line above or below
        other = bench.cells.get((sheet, y + step, x))
        if other is not None and other.kind == "number" and other.content != now:
            able.append(float(other.content))
    digits = re.sub(r"^(\d*?)(\d)(\d)", r"\1\3\2", f"{abs(now):g}", count=1)
    try:
        able.append(float(digits) if now >= 0 else -float(digits))
    except ValueError:
        pass
    able = [value for value in able if value != now]
    return float(f"{draw.choice(able):.12g}")


def head_or_typed(fault: Fault, inputs: set[str]) -> bool:
    """Say whether a fault stands where only blank or wrong entries may show it."""
    return fault.sheet in inputs or fault.place[1] <= STATE or fault.kind in ("limit", "mark")
