"""Workbook files worked out by the ``formulas`` library, a Python reading of each formula.

It is slow (a file of 16,000 formulas takes more than a minute) and wholly independent of the
engine whose values are stored, which is its worth.  ``Ranges`` loads only what the wanted cells
rest on, for odd cases worked out many times.

A text that reads as a number, such as "12", is a number to this library even where it should
not be (ISNUMBER, SUM over a range): test such inputs with another engine.
"""

from __future__ import annotations

import os
import re
from collections.abc import Iterable, Mapping
from pathlib import Path
from types import SimpleNamespace

from builder.engine.stored import formulas_of
from builder.engine.values import EngineError, Value, Values, a1, address, row_col
from builder.resolve.cells import Place


def _library():
    """Import the library without the progress bar it would draw on every load.

    Its models are told of the names that stand in a formula, not of every name of the workbook
    for every formula: with hundreds of names that is a third of the time of loading.
    """
    os.environ.setdefault("TQDM_DISABLE", "1")
    import formulas

    class ExcelModel(formulas.ExcelModel):
        @property
        def references(self):
            found = [book["references"] for book in self.books.values() if book.get("references")]
            return found[0] if len(found) == 1 else super().references

        _known = (None, 0, {})

        def _by_name(self, references):
            """Return name → its (key, value) pairs, kept while the references stay as they are."""
            held, count, found = self._known
            if held is not references or count != len(references):
                found = {}
                for key, value in references.items():
                    found.setdefault(str(key).rpartition("!")[2], []).append((key, value))
                self._known = (references, len(references), found)
            return found

        def compile_cell(self, cell, context, references, formula_references):
            met = {}
            if cell.data_type == "f":
                text = str(getattr(cell.value, "text", cell.value)).upper()
                named = self._by_name(references)
                for word in set(re.findall(r"[\w.\\]+", text)):
                    met.update(named.get(word, ()))
            return super().compile_cell(cell, context, met, formula_references)

    return SimpleNamespace(ExcelModel=ExcelModel)


def _node(path: Path, place: Place) -> str:
    """Return the library's own name of a cell: file and sheet in the case it keeps them."""
    sheet, row, col = place
    doubled = sheet.upper().replace("'", "''")
    return f"'[{path.name}]{doubled}'!{a1(row, col)}"


def _area(path: Path, node: str) -> tuple[str, int, int, int, int] | None:
    """Return sheet, first row, first column, last row, last column; None if ``node`` is no area."""
    sheet, mark, cells = node.rpartition("'!")
    start = f"'[{path.name}]"
    if not mark or not sheet.startswith(start):
        return None
    first, _, last = cells.partition(":")
    if not re.fullmatch(r"\$?[A-Z]{1,3}\$?[0-9]+", first):
        return None  # a name of the workbook
    name = sheet[len(start) :].replace("''", "'")
    return name, *row_col(first), *row_col(last or first)


def _value(found: object, place: Place) -> Value:
    """Return one cell's value in plain Python; the library hands out ranges of one cell."""
    import numpy
    import schedula

    held = found.value[0, 0] if hasattr(found, "ranges") else found
    if isinstance(held, bool | numpy.bool_):
        return bool(held)
    if isinstance(held, str) and held is not schedula.EMPTY:
        return str(held)  # an error is a text here too
    try:
        return float(held)
    except (TypeError, ValueError) as fault:
        raise EngineError(f"{address(place)}: {held!r} is no value of a cell") from fault


def evaluate_file(path: str | Path) -> Values:
    """Load an .xlsx file and return the worked-out value of every formula cell.

    Raises ``EngineError`` if the library has no answer for one of them.
    """
    path = Path(path)
    places = list(formulas_of(path))
    model = _library().ExcelModel().loads(str(path)).finish()
    solution = model.calculate()
    values: Values = {}
    for place in places:
        node = _node(path, place)
        if node not in solution:
            raise EngineError(f"{path}: {address(place)} was not worked out")
        values[place] = _value(solution[node], place)
    return values


class Ranges:
    """A few cells of a file and what they rest on, worked out again for other inputs."""

    def __init__(self, path: str | Path, wanted: Iterable[Place]) -> None:
        """Load what ``wanted`` rests on from an .xlsx file."""
        self._path = Path(path)
        self.wanted = list(wanted)
        folder = self._path.absolute().parent
        starts = []
        for place in self.wanted:
            node = _node(self._path, place)
            starts.append(node.replace("'[", f"'[{folder}/", 1))
        self._model = _library().ExcelModel().from_ranges(*starts).finish(complete=False)
        self._areas = [
            area for node in self._model.dsp.data_nodes if (area := _area(self._path, str(node)))
        ]

    def calculate(self, changes: Mapping[Place, Value | None] | None = None) -> Values:
        """Return the wanted values with the cells of ``changes`` put to other values.

        Each call begins from the file: changes do not add up.  None empties a cell.  Raises
        ``EngineError`` if nothing wanted rests on a changed cell, or if there is no answer.
        """
        import schedula

        given = {}
        for place, value in (changes or {}).items():
            node = _node(self._path, place)
            if not self._is_read(place):
                raise EngineError(f"nothing wanted rests on {address(place)}")
            # As a range of one cell: only so is an emptied cell told from one not changed.
            given[node] = [[schedula.EMPTY if value is None else value]]
        solution = self._model.calculate(given)
        values: Values = {}
        for place in self.wanted:
            node = _node(self._path, place)
            if node not in solution:
                raise EngineError(f"{self._path}: {address(place)} was not worked out")
            values[place] = _value(solution[node], place)
        return values

    def _is_read(self, place: Place) -> bool:
        sheet, row, col = place
        return any(
            sheet.upper() == name and top <= row <= bottom and left <= col <= right
            for name, top, left, bottom, right in self._areas
        )
