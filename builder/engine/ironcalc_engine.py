"""Resolved cells worked out in memory by ironcalc.

This is the engine of every build: its answers are stored in the file.  It must stay quick to
import, so no other engine is loaded here.

Numbers go in with 16 digits, as the file holds them, and come out with 15, as desktop programs
keep them; with more, the last digit would depend on which program wrote the file last.
"""

from __future__ import annotations

import ctypes
from collections.abc import Iterable
from pathlib import Path

import ironcalc

from builder.engine.values import EngineError, Value, Values, absolute, address
from builder.resolve.cells import Book, Place, SheetPlan


class Live:
    """A workbook kept in memory: change what is typed, work it out again, read any cell."""

    def __init__(self, book: Book, names: bool = True) -> None:
        """Load every cell of ``book``; nothing is worked out until ``evaluate``.

        ``names`` says whether the workbook's names are defined: a thousand take as long as all
        the cells, and a book whose formulas use none does without.

        Raises ``EngineError`` if a name or cell is refused.
        """
        self._model = ironcalc.create("book")
        self._sheets: dict[str, int] = {}
        self.formulas: list[Place] = []
        for number, sheet in enumerate(book.sheets):
            if number == 0:
                self._model.rename_sheet(0, sheet.name)
            else:
                self._model.add_sheet(sheet.name)
            self._sheets[sheet.name] = number
        for name, place in book.names.items() if names else ():
            self._name(name, absolute(place))
        for sheet in book.sheets:
            self._load(sheet)

    @classmethod
    def of_file(cls, path: str | Path) -> Live:
        """Load an .xlsx file with the engine's own reader; nothing is worked out yet.

        Raises ``EngineError`` if the file is no workbook.
        """
        # Loaded here, so that a build, which has the cells in memory, stays quick.
        from builder.engine.stored import formulas_of

        made = cls.__new__(cls)
        made.formulas = list(formulas_of(path))
        made._model = ironcalc.load_from_xlsx(str(path), "en", "UTC", "en")
        names = [sheet["name"] for sheet in made._model.get_worksheets_properties()]
        made._sheets = {name: number for number, name in enumerate(names)}
        return made

    def _name(self, name: str, target: str) -> None:
        try:
            self._model.new_defined_name(name, None, target)
        except ironcalc.WorkbookError as fault:
            raise EngineError(f"the name {name!r} for {target} is refused: {fault}") from fault

    def _load(self, sheet: SheetPlan) -> None:
        number = self._sheets[sheet.name]
        put_formula = self._model.update_cell_with_formula
        put_text = self._model.update_cell_with_text
        for cell in sheet.cells:
            kind, content = cell.kind, cell.content
            if kind == "formula":
                place = sheet.name, cell.row, cell.col
                if content[:1] != "=":
                    raise EngineError(f"{address(place)}: a formula must begin with '=': "
                                      f"{content!r}")
                put_formula(number, cell.row + 1, cell.col + 1, content)
                self.formulas.append(place)
            elif kind == "text":
                put_text(number, cell.row + 1, cell.col + 1, content)
            elif kind == "link":
                put_text(number, cell.row + 1, cell.col + 1, content.partition("|")[2])
            elif content is not None:
                self.set((sheet.name, cell.row, cell.col), content)

    def set(self, place: Place, value: Value | None, *, as_typed: bool = False) -> None:
        """Put ``value`` in a cell: a number as number, a text as text, None to empty it.

        A text is never read as a formula or a number, unless ``as_typed`` asks that it be read
        as if a person had typed it.  Raises ``KeyError`` for an unknown sheet and
        ``EngineError`` for a number that no cell can hold.
        """
        sheet, row, col = place
        at = (self._sheets[sheet], row + 1, col + 1)
        if value is None:
            self._model.clear_cell_contents(*at)
        elif isinstance(value, str) and as_typed:
            self._model.set_user_input(*at, value)
        elif isinstance(value, str):
            self._model.update_cell_with_text(*at, value)
        elif isinstance(value, bool):
            self._model.update_cell_with_bool(*at, value)
        else:
            try:
                self._model.update_cell_with_number(*at, float(f"{value:.16g}"))
            except ironcalc.WorkbookError as fault:
                raise EngineError(f"{address(place)}: {fault}") from fault

    def evaluate(self) -> None:
        """Work out every formula of the workbook."""
        self._model.evaluate()

    def value(self, place: Place) -> Value | None:
        """Return what a cell shows after the last ``evaluate``; None if it is empty.

        Raises ``EngineError`` if the cell holds a formula that could not be read.
        """
        sheet, row, col = place
        at = (self._sheets[sheet], row + 1, col + 1)
        found = self._model.get_cell_value(*at)
        if isinstance(found, float):
            return float(f"{found:.15g}")
        if found == "#ERROR!":
            formula = self._model.get_cell_formula(*at)
            raise EngineError(f"{address(place)}: cannot be read as a formula: {formula}")
        return found

    def values(self, places: Iterable[Place] | None = None) -> Values:
        """Return the values of ``places``, of all formula cells if none are named.

        Raises ``EngineError`` if one of them shows nothing.
        """
        found: Values = {}
        for place in self.formulas if places is None else places:
            value = self.value(place)
            if value is None:
                raise EngineError(f"{address(place)} shows nothing")
            found[place] = value
        return found


def evaluate(book: Book, names: bool = True) -> Values:
    """Return the value of every formula cell of ``book``, and of no other cell.

    ``names`` is as for :class:`Live`.

    Raises ``EngineError`` if a formula cannot be read.  An error in the arithmetic, such as a
    division by zero, is not raised: it is the text the cell shows.
    """
    live = Live(book, names)
    live.evaluate()
    found = live.values()
    del live
    _give_back()
    return found


def _give_back() -> None:
    """Give freed memory back to the system, where the C library can be asked to.

    What the engine held, half of all memory, lies scattered; Python could use little of it.
    """
    try:
        ctypes.CDLL(None).malloc_trim(0)
    except (AttributeError, OSError, TypeError):  # no GNU C library
        pass
