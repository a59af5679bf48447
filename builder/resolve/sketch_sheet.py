"""Sketches: pictures of terms, two beside one another, and under them the points they join."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from .cells import Figure, SheetPlan
from .drawing_sheet import COLUMNS, PIXELS
from .frame import UNDER, Page

NAME, TITLE = "Sketches", "Terms in pictures"
BESIDE, WIDE = 2, 2
"""Sketches beside one another; how many times as wide as high each is."""
TOP, LINE = 4, 18
"""The first row of sketches, and how many rows of the sheet it takes with its titles."""
LINES_ON_A_PAGE = 2
HALF = 100
"""Half the width of a sketch in its own points."""


@dataclass(frozen=True)
class Sketch:
    """A picture of some terms: lines by the pen they are drawn with, words at points.

    Points run from −100 to 100 along and from −50 to 50 up; ``about`` is read out to who cannot
    see it; ``shows`` are the terms it explains.
    """

    title: str
    shows: tuple[str, ...]
    about: str
    lines: Mapping[str, Sequence[Sequence[tuple[float, float]]]]
    words: tuple[tuple[str, float, float], ...]


def place_of(number: int) -> tuple[int, int]:
    """Return row and column of the title of a sketch, counted from 0."""
    return TOP + number // BESIDE * LINE, number % BESIDE * (COLUMNS // BESIDE)


def sketch_sheet(sketches: Sequence[Sketch]) -> SheetPlan:
    """Build the sheet: what is printed are the sketches, the points stand below them."""
    page = Page(NAME, TITLE, [], "Not to scale, and not of this job: they show what a word means.",
                UNDER)
    lines = -(-len(sketches) // BESIDE)
    y = below = TOP + lines * LINE + 2
    page.text(y - 1, 0, "What the sketches are drawn from", "block")
    for number, sketch in enumerate(sketches):
        row, col = place_of(number)
        page.text(row, col, f"{number + 1}. {sketch.title}", "drawing.title")
        page.text(y, 0, f"{number + 1}. {sketch.title}", "drawing.title")
        y, drawn = _points(page, y + 1, sketch)
        y, marks = _words(page, y, sketch)
        page.plan.charts.append(Figure(row + 1, col, PIXELS // BESIDE, WIDE, sketch.title, drawn,
                                       marks, sketch.about))
    plan = page.done(COLUMNS - 1, frozen=(UNDER, 0), repeat=(0, UNDER))
    plan.last = (below - 3, COLUMNS - 1)
    plan.page_breaks = [TOP + k * LINE for k in range(LINES_ON_A_PAGE, lines, LINES_ON_A_PAGE)]
    return plan


def _points(page: Page, y: int, sketch: Sketch):
    """Put the points of the lines, a blank row after each shape; return where each pen's stand."""
    drawn = []
    for look, shapes in sketch.lines.items():
        page.text(y, 0, look, "text")
        first = y
        for shape in shapes:
            for along, up in shape:
                _pair(page, y, along, up)
                y += 1
            y += 1
        drawn.append((look, *(f"{NAME}!${x}${first + 1}:${x}${y - 1}" for x in "DE")))
    return y, tuple(drawn)


def _words(page: Page, y: int, sketch: Sketch):
    """Put the words and where they stand; return their cells."""
    marks = []
    for words, along, up in sketch.words:
        page.text(y, 0, words, "text")
        _pair(page, y, along, up)
        marks.append((f"{NAME}!$A${y + 1}", f"{NAME}!$D${y + 1}", f"{NAME}!$E${y + 1}"))
        y += 1
    return y + 1, tuple(marks)


def _pair(page: Page, y: int, along: float, up: float) -> None:
    page.number(y, 3, round(along / HALF, 4), "num.3")
    page.number(y, 4, round(up / HALF, 4), "num.3")
