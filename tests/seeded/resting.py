"""Which cell of the resolved workbook reads which, from the text of its formulas."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable
from functools import cache

from builder.engine.values import row_col
from builder.resolve.cells import Book, Place
from builder.resolve.frame import FIRST, STATE
from builder.sheets.book import model

REFERENCE = re.compile(r"\"[^\"]*\"|(?:([A-Za-z]+)!)?(\$?[A-Z]{1,3}\$?\d+)"
                       r"(?::(\$?[A-Z]{1,3}\$?\d+))?(?![\w(])")


@cache
def _spot(cell: str) -> tuple[int, int]:
    return row_col(cell)


def areas(formula: str, sheet: str) -> list[tuple[str, int, int, int, int]]:
    """Return what a formula reads: sheet, first row and column, last row and column."""
    found = []
    for name, first, last in REFERENCE.findall(formula):
        if first:
            top, left = _spot(first.replace("$", ""))
            bottom, right = _spot((last or first).replace("$", ""))
            found.append((name or sheet, top, left, bottom, right))
    return found


def is_body(place: Place) -> bool:
    """Say whether a cell is of a sheet's body: below its head, or on the first line of a page."""
    return place[1] > STATE or (place[1] == STATE and place[0] in pages() and place[2] in (1, 2))


@cache
def pages() -> set[str]:
    """Return the sheets that are paper for people: their lines begin beside the state."""
    return {sheet.name for sheet in model().calculation if sheet.scope == "page"}


class Resting:
    """The readers of each cell, and all that rests on it at any depth."""

    def __init__(self, book: Book):
        """Read every formula of the book once."""
        self.readers: dict[Place, list[Place]] = defaultdict(list)
        self.reads: dict[str, set[str]] = defaultdict(set)
        """Sheet → the sheets that the rows of its body read."""
        self.across: set[str] = set()
        """Sheets of section types on which a column's body reads other columns as well."""
        by_type = {s.name for s in model().calculation if s.scope == "section"}
        by_type |= {part.sheet.name for part in model().typing.of(True)}
        for place, cell in book.cells():
            if cell.kind != "formula":
                continue
            seen = set()
            for name, top, left, bottom, right in areas(str(cell.content), place[0]):
                seen |= {(name, y, x) for y in range(top, bottom + 1)
                         for x in range(left, right + 1)}
                if is_body(place):
                    self.reads[place[0]].add(name)
                    if name in by_type and place[0] in by_type and (left, right) != (
                            place[2], place[2]) and left >= FIRST:
                        self.across.add(place[0])
            for spot in seen:
                self.readers[spot].append(place)

    def after(self, place: Place) -> set[Place]:
        """Return the cells that rest on a cell, not itself."""
        return self.after_all([place])

    def after_all(self, places: Iterable[Place]) -> set[Place]:
        """Return the cells that rest on any of some cells."""
        found: set[Place] = set()
        waiting = list(places)
        while waiting:
            for reader in self.readers.get(waiting.pop(), ()):
                if reader not in found:
                    found.add(reader)
                    waiting.append(reader)
        return found
