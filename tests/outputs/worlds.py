"""What a workbook shows after one entry, worked out whole only where it must be.

Few formulas read a typed cell: its state, the value used, a look-up.  If these show after an
entry what they show in a book already worked out, with all else they read held as it is there,
then the whole book is as it is there: every formula agrees with what it reads, and formulas
without a circle agree in one way only.  So an entry costs a few formulas, and the whole book is
worked out once for all the entries that come to the same.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime

from builder.engine.ironcalc_engine import Live
from builder.engine.values import Value, Values
from builder.resolve.cells import Book, Cell, Place, SheetPlan
from builder.rules.reading import File, spots

ERRORS = ("#DIV/0!", "#N/A", "#NAME?", "#NULL!", "#NUM!", "#REF!", "#VALUE!", "#ERROR!",
          "#SPILL!", "#CALC!", "#CIRC!", "#N/IMPL!")


class Shown(str):
    """An entry that a program makes something else of than words, such as ``#N/A``."""


Entry = Value | Shown | None


def put(live: Live, place: Place, entry: Entry) -> None:
    """Type an entry in a cell; None empties it."""
    if isinstance(entry, Shown):
        live.set(place, str(entry), as_typed=True)
    else:
        live.set(place, entry)


@dataclass(eq=False)
class World:
    """A whole book as it is after an entry: every formula cell, and those that show an error."""

    values: Values
    errors: list[Place] = field(default_factory=list)

    def __post_init__(self) -> None:
        """Look for error values, once."""
        self.errors = [p for p, v in self.values.items()
                       if isinstance(v, str) and v.startswith(ERRORS)]


class Few:
    """The formulas that read one cell, with all else that they read held as in one world."""

    def __init__(self, cells: Mapping[Place, Cell], file: File, typed: Place, world: World):
        """Take the cells of the book, and which formula reads what."""
        self.typed, self.world = typed, world
        self.readers = file.readers.get(typed, [])
        held = dict.fromkeys(p for r in self.readers for a in file.areas[r] for p in spots(a))
        plans: dict[str, SheetPlan] = {}
        for place in dict.fromkeys([typed, *self.readers, *held]):
            sheet, row, col = place
            plan = plans.setdefault(sheet, SheetPlan(sheet, sheet))
            cell = cells.get(place)
            if place == typed or cell is None or cell.content is None:
                continue
            if place not in self.readers and cell.kind == "formula":
                cell = Cell(row, col, "number", world.values[place])
            plan.cells.append(cell)
        self._live = Live(Book(list(plans.values()), {}, "", "", "", datetime(2026, 1, 15), "",
                               ""), names=False)

    def agree(self, entry: Entry) -> bool:
        """Say whether the whole book after an entry is this world."""
        put(self._live, self.typed, entry)
        self._live.evaluate()
        return all(self._live.value(r) == self.world.values[r] for r in self.readers)


class Worlds:
    """One workbook, and what it shows after an entry in one cell or in several at once."""

    def __init__(self, book: Book, file: File):
        """Load a resolved book; ``file`` is the same book as written, which tells what reads what.
        """
        self.cells = dict(book.cells())
        self.file = file
        self._live = Live(book, names=False)
        self.solved = 0
        """How many times the whole book was worked out."""
        self.base = self.whole({})
        self._known: list[Few] = []
        self._at: Place | None = None

    def held(self, place: Place) -> Value | None:
        """Return what stands in a typed cell."""
        cell = self.cells.get(place)
        return None if cell is None else cell.content

    def whole(self, entries: Mapping[Place, Entry]) -> World:
        """Work the whole book out after some entries."""
        for place, entry in entries.items():
            put(self._live, place, entry)
        self._live.evaluate()
        self.solved += 1
        world = World(self._live.values())
        for place in entries:
            self._live.set(place, self.held(place))
        return world

    def after(self, place: Place, entry: Entry) -> World:
        """Return what the book shows after one entry."""
        if self._at != place:
            self._at, self._known = place, [Few(self.cells, self.file, place, self.base)]
        for few in self._known:
            if few.agree(entry):
                return few.world
        world = self.whole({place: entry})
        self._known.append(Few(self.cells, self.file, place, world))
        return world
