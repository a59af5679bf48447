"""What a resolved workbook is: plain records, with no expression and no file format in them.

The trade is declared in ``builder/sheets``; ``builder/resolve`` turns it into these records;
``builder/workbook`` writes them to a file and ``builder/engine`` works them out.
Rows and columns count from 0, as XlsxWriter counts them.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import datetime

Place = tuple[str, int, int]
"""Sheet name, row, column."""


# Not frozen: a hundred thousand are made, and a frozen one takes three times as long to make.
@dataclass(slots=True)
class Cell:
    """One cell: where it stands, what it holds, how it looks.

    ``kind`` is ``text``, ``number``, ``formula`` (content begins with ``=``), ``blank`` (an
    input left empty, or a styled empty cell) or ``link`` (content is ``target|text``, the
    target an address inside the workbook such as ``Checks!A12``).
    ``style`` is a name of ``builder.workbook.styles``.  ``alike`` marks a formula that is the
    first of its run, to its left in the row, moved some columns; the file then holds it once.
    """

    row: int
    col: int
    kind: str
    content: str | float | None
    style: str = "text"
    alike: bool = False


@dataclass(frozen=True, slots=True)
class InputRule:
    """What may be typed in an unlocked cell, or in ``rows`` by ``cols`` of them, and in what words.

    ``kind`` is ``decimal``, ``whole``, ``list`` or ``text``.  For numbers ``least`` and ``most``
    are numbers; for a list ``source`` is a range such as ``=Data!$A$5:$A$20``; for text
    ``most`` is the largest length.  ``blank`` says whether an empty cell is usable.
    """

    row: int
    col: int
    kind: str
    title: str
    message: str
    error: str
    least: float | None = None
    most: float | None = None
    source: str = ""
    blank: bool = False
    rows: int = 1
    cols: int = 1

    def spots(self):
        """Yield (row, column) of every cell the rule holds for."""
        for row in range(self.row, self.row + self.rows):
            for col in range(self.col, self.col + self.cols):
                yield row, col


@dataclass(frozen=True, slots=True)
class ChartLine:
    """A line of a chart: its name, and the ranges (with sheet) along and up."""

    name: str
    along: str
    up: str


@dataclass(frozen=True, slots=True)
class Chart:
    """A chart over cells: ``kind`` is ``curves`` (both axes are numbers) or ``bars``.

    ``rows`` is how many rows it covers from (``row``, ``col``) down; ``about`` is read out to
    who cannot see it; ``most`` is where the axis of values ends, None for the largest.
    """

    row: int
    col: int
    rows: int
    kind: str
    title: str
    along: str
    up: str
    lines: tuple[ChartLine, ...]
    about: str
    most: float | None = None


@dataclass(frozen=True, slots=True)
class Figure:
    """A drawing to scale: lines from −1 to 1 along and ±1/``wide`` up.

    ``lines`` are (look, range along, range up); ``marks`` (cell of the words, cell along, cell
    up).  ``width`` and ``height`` are in pixels, as ``wide`` to 1.
    """

    row: int
    col: int
    width: int
    wide: int
    title: str
    lines: tuple[tuple[str, str, str], ...]
    marks: tuple[tuple[str, str, str], ...]
    about: str

    @property
    def height(self) -> int:
        """Height of the drawing [px]."""
        return self.width // self.wide

    @property
    def rows(self) -> int:
        """How many rows of a drawing it covers."""
        return -(-self.height // 17)


@dataclass(slots=True)
class SheetPlan:
    """One sheet: what it is for, its cells, and how it is set out on screen and paper.

    ``widths`` holds column widths in characters, from column A; ``heights`` row heights in
    points where they differ from the default; ``frozen`` is the first row and column that
    scroll; ``repeat_rows`` the first and last row repeated on each page; ``last`` the last
    row and column of the print area; ``page_breaks`` rows that begin a new page;
    ``whole_blocks`` says that a block is not broken between pages if one page holds it;
    ``longest`` the longest words that a cell may come to, for the height of its row;
    ``verdicts`` ranges (first row, first column, last row, last column) whose words take the
    verdict colours.
    """

    name: str
    title: str
    cells: list[Cell] = field(default_factory=list)
    rules: list[InputRule] = field(default_factory=list)
    widths: list[float] = field(default_factory=list)
    heights: dict[int, float] = field(default_factory=dict)
    frozen: tuple[int, int] = (0, 0)
    repeat_rows: tuple[int, int] = (0, 0)
    last: tuple[int, int] = (0, 0)
    landscape: bool = True
    page_breaks: list[int] = field(default_factory=list)
    whole_blocks: bool = False
    charts: list[Chart | Figure] = field(default_factory=list)
    verdicts: list[tuple[int, int, int, int]] = field(default_factory=list)
    protect: bool = True
    about: str = ""
    longest: dict[tuple[int, int], str] = field(default_factory=dict)


@dataclass(slots=True)
class Book:
    """A resolved workbook: sheets from left to right, workbook names, document properties."""

    sheets: list[SheetPlan]
    names: dict[str, Place]
    title: str
    subject: str
    author: str
    created: datetime
    version: str
    inputs_hash: str

    def cells(self):
        """Yield (place, cell) for every cell of every sheet, in reading order."""
        for sheet in self.sheets:
            for cell in sheet.cells:
                yield (sheet.name, cell.row, cell.col), cell
