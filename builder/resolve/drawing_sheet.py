"""A drawing: views to scale on default cells, and under them the table they are drawn from.

The table has the quantities of the type drawn, then two columns for each kind of thing, along and
up, with blank rows between shapes: a chart draws no line over a blank cell.
"""

from __future__ import annotations

from builder.language import Row, Sheet
from builder.language.rows import Block, Mark, Note, Shapes, View
from builder.language.texts import symbols
from builder.language.units import TEXT

from .cells import Figure
from .frame import HEAD, TOP, Page, letter
from .places import Places, Where, style_of

COLUMNS = 16
"""Columns that the views are wide."""
PIXELS = 64 * COLUMNS
"""Width of all default columns [px].

Columns and rows under the views keep their default sizes: programs differ by 6 % in what they
make of a width that is given, and agree to 0.5 % on the default (tried)."""
VIEW_ROWS = 76
"""Rows kept for the views; the table begins below."""
VALUE, UNIT, FORMULA = 4, 5, 6
"""Columns of the quantities: label in the first, then symbol, value, unit, formula."""
SYMBOL = 3


def place_drawing(sheet: Sheet, places: Places) -> None:
    """Give every row of a drawing its place: quantities, words, coordinates."""
    y = TOP + VIEW_ROWS
    for item in sheet.items:
        if isinstance(item, Row):
            places.rows[item] = (sheet.name, y, VALUE)
        elif isinstance(item, Mark):
            for x, row in zip((0, VALUE, UNIT), item.rows, strict=True):
                places.rows[row] = (sheet.name, y, x)
        if isinstance(item, Row | Mark | Block | Note):
            y += 1
    y += 3
    for number, item in enumerate(_shapes(sheet)):
        at = y
        for shape in item.shapes:
            for point in shape:
                for x, row in enumerate(point):
                    places.rows[row] = (sheet.name, at, 2 * number + x)
                at += 1
            at += 1


def _shapes(sheet: Sheet) -> list[Shapes]:
    return [item for item in sheet.items if isinstance(item, Shapes)]


class DrawingMaker:
    """Builds a drawing; ``written`` turns a row into its formula."""

    def __init__(self, places: Places, written):
        self.places, self.written = places, written

    def fill(self, page: Page, sheet: Sheet, state: str, title_block: list[tuple[str, str]]):
        """Put views, title block, quantities and coordinates on a page."""
        where = Where(self.places, sheet.name, section=False)
        for item in sheet.items:
            if isinstance(item, View):
                page.plan.charts.append(self._figure(item, sheet))
                page.text(item.top, item.left * COLUMNS // item.parts, item.title, "drawing.title")
        for x, (label, formula) in enumerate(title_block):
            page.text(HEAD - 2, 3 * x, label, "drawing.label")
            page.formula(HEAD - 1, 3 * x, formula, "text")
        y = TOP + VIEW_ROWS
        page.text(y - 2, 0, "What the views are drawn from", "block")
        for item in sheet.items:
            if isinstance(item, Block):
                page.text(y, 0, item.title, "drawing.title")
            elif isinstance(item, Note):
                page.text(y, 0, item.text, "subtitle")
            elif isinstance(item, Mark):
                self._mark(page, item, where, state)
            elif isinstance(item, Row):
                self._quantity(page, y, item, where, state)
            else:
                continue
            y += 1
        self._table(page, sheet, where, state)

    def _guarded(self, row: Row, where: Where, state: str, otherwise: str) -> str:
        return f"IF({state}=2,{self.written(row, where)},{otherwise})"

    def _quantity(self, page: Page, y: int, row: Row, where: Where, state: str) -> None:
        page.text(y, 0, row.label, "text")
        page.text(y, SYMBOL, row.symbol, "symbol")
        page.formula(y, VALUE, self._guarded(row, where, state, "0"),
                     style_of(row))
        page.text(y, UNIT, "" if row.unit == TEXT else row.unit, "unit")
        page.text(y, FORMULA, symbols(row.expr), "text")

    def _mark(self, page: Page, item: Mark, where: Where, state: str) -> None:
        for row, otherwise in zip(item.rows, ('" "', "0", "0"), strict=True):
            _, y, x = self.places.rows[row]
            page.formula(y, x, self._guarded(row, where, state, otherwise),
                         "text" if row.unit == TEXT else style_of(row))

    def _table(self, page: Page, sheet: Sheet, where: Where, state: str) -> None:
        for item in _shapes(sheet):
            _, y, x = self.places.rows[item.rows[0]]
            page.text(y - 2, x, item.name, "drawing.title")
            page.text(y - 1, x, "along", "head.n")
            page.text(y - 1, x + 1, "up", "head.n")
            for row in item.rows:
                _, y, x = self.places.rows[row]
                page.formula(y, x, self._guarded(row, where, state, "0"), style_of(row))

    def _figure(self, view: View, sheet: Sheet) -> Figure:
        lines = []
        for thing in view.things:
            spots = [self.places.rows[row] for row in thing.rows]
            first, last = spots[0][1] + 1, spots[-1][1] + 1
            along, up = (f"{sheet.name}!${letter(x)}${first}:${letter(x)}${last}"
                         for x in (spots[0][2], spots[0][2] + 1))
            lines.append((thing.look, along, up))
        marks = []
        for mark in view.marks:
            cells = []
            for row in mark.rows:
                _, y, x = self.places.rows[row]
                cells.append(f"{sheet.name}!${letter(x)}${y + 1}")
            marks.append(tuple(cells))
        left = view.left * COLUMNS // view.parts
        return Figure(view.top + 1, left, PIXELS // view.parts, view.wide, view.title,
                      tuple(lines), tuple(marks), view.about)
