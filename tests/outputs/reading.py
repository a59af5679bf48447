"""A delivered workbook as a checker reads it: its cells, and which cell reads which.

All of it comes from the file.  Nothing here asks the language what depends on what.
"""

from __future__ import annotations

import warnings
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from functools import cache, lru_cache
from pathlib import Path

from openpyxl import Workbook, load_workbook
from openpyxl.formula import Tokenizer

from builder.engine.stored import StoredCell, read_cells
from builder.engine.values import row_col
from builder.resolve.cells import Place

ROOT = Path(__file__).resolve().parents[2]
OUTPUTS = sorted((ROOT / "outputs").glob("*.xlsx"))
NAMES = [path.stem for path in OUTPUTS]
DEMOS = [name for name in NAMES if name != "blank_start"]
DASH = "–"

Area = tuple[str, int, int, int, int]
"""Sheet, first row, first column, last row, last column, counted from 0."""


@lru_cache(maxsize=200_000)
def tokens(formula: str) -> tuple[tuple[str, str, str], ...]:
    """Return (value, type, subtype) of the tokens of a formula."""
    return tuple((t.value, t.type, t.subtype) for t in Tokenizer(formula).items)


def references(formula: str) -> list[str]:
    """Return what a formula refers to, as it is written, in order."""
    return [value for value, kind, sub in tokens(formula) if (kind, sub) == ("OPERAND", "RANGE")]


def area(reference: str, sheet: str) -> Area:
    """Return what a reference covers, for a formula that stands on ``sheet``.

    Raises ``ValueError`` if it is not a cell or a closed range of cells, a name for instance.
    """
    on, _, cells = reference.rpartition("!")
    first, _, last = cells.partition(":")
    top, left = row_col(first)
    bottom, right = row_col(last or first)
    return on.strip("'") or sheet, top, left, bottom, right


def spots(where: Area) -> Iterable[Place]:
    """Yield the cells of an area."""
    sheet, top, left, bottom, right = where
    for row in range(top, bottom + 1):
        for col in range(left, right + 1):
            yield sheet, row, col


@dataclass(frozen=True)
class Read:
    """A workbook file: cells, formulas, and for each cell the formulas that read it."""

    path: Path
    cells: dict[Place, StoredCell]
    formulas: dict[Place, str]
    areas: dict[Place, list[Area]]
    readers: dict[Place, list[Place]] = field(repr=False)

    def text(self, sheet: str, row: int, col: int = 0) -> str:
        """Return the words that stand in a cell, or nothing."""
        held = self.cells.get((sheet, row, col))
        return held.value if held is not None and isinstance(held.value, str) else ""

    def after(self, start: Place, passes: Callable[[Place], bool]) -> set[Place]:
        """Return the formula cells that rest on a cell, by way of cells that ``passes`` lets by."""
        found: set[Place] = set()
        todo = [start]
        while todo:
            for reader in self.readers.get(todo.pop(), ()):
                if reader not in found and passes(reader):
                    found.add(reader)
                    todo.append(reader)
        return found


def _areas(formula: str, sheet: str) -> Iterable[Area]:
    """Yield what a formula refers to; a rule of its own finds what is no closed range."""
    for reference in references(formula):
        try:
            yield area(reference, sheet)
        except ValueError:
            continue


@cache
def read(path: Path) -> Read:
    """Read a workbook file, once a session."""
    cells = read_cells(path)
    formulas = {p: c.formula for p, c in cells.items() if c.formula is not None}
    areas = {p: list(_areas(f, p[0])) for p, f in formulas.items()}
    readers: dict[Place, list[Place]] = {}
    for place, read_there in areas.items():
        for one in dict.fromkeys(read_there):
            for spot in spots(one):
                readers.setdefault(spot, []).append(place)
    return Read(path, cells, formulas, areas, readers)


@cache
def opened(path: Path) -> Workbook:
    """Open a workbook file with openpyxl, once a session; its warnings are errors."""
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        return load_workbook(path)


def delivered(name: str) -> Path:
    """Return the delivered workbook of a starting job."""
    return next(path for path in OUTPUTS if path.stem == name)
