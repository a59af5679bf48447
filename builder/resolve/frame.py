"""Where things stand on every sheet: the section columns, the head rows, the widths.

Section types A to F stand in columns E to J of every sheet that has them.
"""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Sequence
from functools import cache

from .cells import Cell, SheetPlan

COLUMN = "¤"
"""Stands for its own column in a formula that is written once for several."""

SECTIONS = "ABCDEF"
FIRST = 4
"""Column of section type A."""
SOURCE = FIRST + len(SECTIONS)
TITLE, MASTER, HEAD, WANTING, STATE, ABOUT, TOP = range(7)
"""Rows: title, whole-job verdict and job, column heads, which stay in view and stand on each
page; then inputs wanting, state, what the sheet is for, and the first of all others."""
UNDER = 2
"""The row of what a sheet is for where it has no column heads."""
LISTED = 4
"""The first line of a list that is typed nowhere: names, terms, sources."""

WIDTHS = [39, 17, 49, 7, *[9.5] * len(SECTIONS), 22]
"""Label, symbol, formula, unit, A to F, source: fits letter landscape."""

DASH = "–"
ALLOWED_TEXT = 165
"""Letters of a note on one line across the page."""


@cache
def letter(col: int) -> str:
    """Return the letters of a column counted from 0."""
    letters = ""
    col += 1
    while col:
        col, rest = divmod(col - 1, 26)
        letters = chr(65 + rest) + letters
    return letters


SECTION_COLUMNS = range(FIRST, SOURCE)
SECTION_LETTERS = [letter(x) for x in SECTION_COLUMNS]


class Page:
    """A sheet being filled: puts cells, keeps count of the last row and column."""

    def __init__(self, name: str, title: str, widths: list[float], about: str = "",
                 about_row: int = ABOUT):
        self.plan = SheetPlan(name, title, widths=list(widths), about=about)
        self.text(TITLE, 0, title, "title")
        if about:
            self.text(about_row, 0, about, "subtitle")

    def put(self, row: int, col: int, kind: str, content, style: str) -> None:
        """Put one cell."""
        self.plan.cells.append(Cell(row, col, kind, content, style))

    def longest(self, row: int, cols: Iterable[int], words: str) -> None:
        """Note the longest words that cells may come to; their row is made high enough."""
        for col in cols:
            self.plan.longest[row, col] = words

    def text(self, row: int, col: int, content: str, style: str = "text") -> None:
        """Put words; an empty text is left out."""
        if content:
            self.put(row, col, "text", content, style)

    def number(self, row: int, col: int, content: float, style: str) -> None:
        """Put a number."""
        self.put(row, col, "number", content, style)

    def formula(self, row: int, col: int, content: str, style: str) -> None:
        """Put a formula, given without its equals sign."""
        self.put(row, col, "formula", "=" + content, style)

    def across(self, row: int, cols: Sequence[int], content: str, style: str) -> None:
        """Put a formula written once, with ``COLUMN`` for its column, in several columns."""
        for number, col in enumerate(cols):
            text = "=" + content.replace(COLUMN, letter(col))
            self.plan.cells.append(Cell(row, col, "formula", text, style, alike=number > 0))

    def link(self, row: int, col: int, target: str, text: str) -> None:
        """Put a link to a cell of the workbook."""
        self.put(row, col, "link", f"{target}|{text}", "link")

    def heads(self, row: int, names: list[str], style: str = "head") -> None:
        """Put the heads of columns from A on."""
        for col, name in enumerate(names):
            self.text(row, col, name, style)

    def lines(self, row: int, text: str, style: str = "subtitle", width: int = ALLOWED_TEXT) -> int:
        """Put a sentence over as many rows as it needs; return the next free row."""
        for line in textwrap.wrap(text, width):
            self.text(row, 0, line, style)
            row += 1
        return row

    def done(self, last_col: int, *, frozen=(WANTING, 1), repeat=(TITLE, HEAD), landscape=True,
             whole_blocks=False) -> SheetPlan:
        """Close the sheet: print area, frozen panes, repeated rows, what a page may break."""
        plan = self.plan
        rows = [*(c.row for c in plan.cells), *(c.row + c.rows for c in plan.charts)]
        plan.last = (max(rows), last_col)
        plan.frozen, plan.repeat_rows, plan.landscape = frozen, repeat, landscape
        plan.whole_blocks = whole_blocks
        return plan
