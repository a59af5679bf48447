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
from .frame import TOP, Page, letter
from .places import Places, Where, style_of

COLUMNS = 16
"""Columns that the views are wide."""
PIXELS = 64 * COLUMNS
"""Width of all default columns [px].

Columns and rows under the views keep their default sizes: programs differ by 6 % in what they
make of a width that is given, and agree to 0.5 % on the default (tried)."""
OFF = "2"
"""A place off the paper, for points of what cannot be drawn: both axes end at 1."""
VIEW_ROWS = 108
"""Rows kept for the views; the table begins below."""
LONGEST = 38
"""Letters of a text of the title block that stands beside another (our judgement)."""
BLOCK = ((3, 0, 1), (3, 5, 6), (4, 0, 1), (4, 5, 6), (4, 10, 11))
"""Where the texts of the title block stand: row, column of the label, column of the text."""
VALUE, UNIT, FORMULA = 4, 5, 6
"""Columns of the quantities: label in the first, then symbol, value, unit, formula."""
SYMBOL = 3


def place_drawing(sheet: Sheet, places: Places) -> None:
    """Give every row of a drawing its place: quantities, words, coordinates.

    The first row of words names the drawing in the title block; those declared after it stand
    over the view that follows them.
    """
    _place_words(sheet, places)
    y = TOP + VIEW_ROWS
    for item in sheet.items:
        if isinstance(item, Mark):
            for x, row in zip((0, VALUE, UNIT), item.rows, strict=True):
                places.rows[row] = (sheet.name, y, x)
        elif _is_quantity(item):
            places.rows[item] = (sheet.name, y, VALUE)
        if isinstance(item, Mark | Block | Note) or _is_quantity(item):
            y += 1
    y += 3
    for number, item in enumerate(_shapes(sheet), start=1):
        at = y
        for shape in item.shapes:
            for point in shape:
                for x, row in enumerate(point):
                    places.rows[row] = (sheet.name, at, 2 * number + x)
                at += 1
            at += 1


def _place_words(sheet: Sheet, places: Places) -> None:
    named, waiting = False, []
    for item in sheet.items:
        if _is_words(item) and not named:
            (y, _, x), named = BLOCK[0], True
            places.rows[item] = (sheet.name, y, x)
        elif _is_words(item):
            waiting.append(item)
        elif isinstance(item, View):
            for y, row in enumerate(waiting, start=item.top + 1):
                places.rows[row] = (sheet.name, y, item.left * COLUMNS // item.parts)
            waiting = []


def _is_words(item) -> bool:
    return isinstance(item, Row) and item.unit == TEXT


def _is_quantity(item) -> bool:
    return isinstance(item, Row) and item.unit != TEXT


def _shapes(sheet: Sheet) -> list[Shapes]:
    return [item for item in sheet.items if isinstance(item, Shapes)]


class DrawingMaker:
    """Builds a drawing; ``written`` turns a row into its formula."""

    def __init__(self, places: Places, written):
        self.places, self.written = places, written

    def fill(self, page: Page, sheet: Sheet, state: str, title_block: list[tuple[str, str]]):
        """Put views, title block, quantities and coordinates on a page."""
        where = Where(self.places, sheet.name, section=False)
        words = 0
        for item in sheet.items:
            if _is_words(item):
                _, y, x = self.places.rows[item]
                page.formula(y, x, self._guarded(item, where, state, "0"), "text")
                words += y != BLOCK[0][0]
            elif isinstance(item, View):
                page.plan.charts.append(self._figure(item, words))
                page.text(item.top, item.left * COLUMNS // item.parts, item.title, "drawing.title")
                words = 0
        self._title_block(page, title_block)
        y = TOP + VIEW_ROWS
        page.text(y - 2, 0, "What the views are drawn from", "block")
        for item in sheet.items:
            if isinstance(item, Block):
                page.text(y, 0, item.title, "drawing.title")
            elif isinstance(item, Note):
                page.text(y, 0, item.text, "subtitle")
            elif isinstance(item, Mark):
                for row in item.rows:
                    self._cell(page, row, where, state)
            elif _is_quantity(item):
                self._quantity(page, y, item, where, state)
            else:
                continue
            y += 1
        self._table(page, sheet, where, state)

    def _title_block(self, page: Page, said: list[tuple[str, str]]) -> None:
        """Put the title block; the line above it names the job already."""
        page.text(*BLOCK[0][:2], "Drawing", "subtitle")
        texts = [t for t in said if t[0] != "Job"]
        for (y, label, at), (name, cell) in zip(BLOCK[1:], texts, strict=True):
            page.text(y, label, name, "subtitle")
            page.formula(y, at, f'IF(LEN({cell})>{LONGEST},LEFT({cell},{LONGEST - 1})&"…",{cell})',
                         "text")

    def _guarded(self, row: Row, where: Where, state: str, otherwise: str) -> str:
        otherwise = '" "' if row.unit == TEXT else otherwise
        return f"IF({state}=2,{self.written(row, where)},{otherwise})"

    def _cell(self, page: Page, row: Row, where: Where, state: str, otherwise: str = OFF) -> None:
        _, y, x = self.places.rows[row]
        page.formula(y, x, self._guarded(row, where, state, otherwise),
                     "text" if row.unit == TEXT else style_of(row))

    def _quantity(self, page: Page, y: int, row: Row, where: Where, state: str) -> None:
        page.text(y, 0, row.label, "text")
        page.text(y, SYMBOL, row.symbol, "symbol")
        self._cell(page, row, where, state, "0")
        page.text(y, UNIT, row.unit, "unit")
        page.text(y, FORMULA, symbols(row.expr), "text")

    def _table(self, page: Page, sheet: Sheet, where: Where, state: str) -> None:
        first, last = TOP, TOP
        for item in _shapes(sheet):
            _, first, x = self.places.rows[item.rows[0]]
            page.text(first - 2, x, item.name, "drawing.title")
            page.text(first - 1, x, "along", "head.n")
            page.text(first - 1, x + 1, "up", "head.n")
            for row in item.rows:
                self._cell(page, row, where, state)
            last = max(last, self.places.rows[item.rows[-1]][1])
        for number, y in enumerate(range(first, last + 1), start=1):
            page.text(y, 0, f"Point {number}", "text")

    def _figure(self, view: View, words: int) -> Figure:
        lines = [(thing.look, self._range(thing, 0), self._range(thing, 1))
                 for thing in view.things]
        marks = [tuple(self._spot(row) for row in mark.rows) for mark in view.marks]
        left = view.left * COLUMNS // view.parts
        return Figure(view.top + 1 + words, left, PIXELS // view.parts, view.wide, view.title,
                      tuple(lines), tuple(marks), view.about)

    def _range(self, thing: Shapes, part: int) -> str:
        """Return the range of a part of all points: 0 along, 1 up."""
        spots = [self.places.rows[row] for row in thing.rows]
        sheet, first, x = spots[0]
        x = letter(x + part)
        return f"{sheet}!${x}${first + 1}:${x}${spots[-1][1] + 1}"

    def _spot(self, row: Row) -> str:
        sheet, y, x = self.places.rows[row]
        return f"{sheet}!${letter(x)}${y + 1}"
