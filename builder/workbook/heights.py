"""Row heights for wrapped text, worked out when the file is written.

Programs do not agree on fitting rows by themselves: LibreOffice leaves them at the default when
it opens such a file (tried), and wrapped lines then lie over each other.  So every row without
a height of its own gets one that holds its longest text, measured with the widths of the font.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache

from builder.resolve.cells import Cell, Place, SheetPlan
from builder.workbook.styles import BODY, STYLES, Look

LINE = 12.75
"""Height of one line of body text [pt], the default row of Arial 10."""

DIGIT = 7
"""Width of a digit of Arial 10 [px at 96 px an inch]: the unit of column widths."""

PADDING = 6
"""What a cell keeps free at its two sides [px] (our judgement, a pixel over the format's 5)."""

INDENT = 9
"""One step of indent [px] (our judgement, from looking)."""

SLACK = 1.03
"""Programs round letters to whole pixels on the screen, so lines come out longer than on paper
(our judgement)."""

DEFAULT_WIDTH = 8.43
"""Width of a column that is not set [digits]."""

# Advance widths of the printable ASCII letters from space to tilde [1/1000 of the size], those
# of the metrics shared by Helvetica and Arial (Adobe core font metrics; memory).
_WIDTHS = [
    *(278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278),
    *(556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556),
    *(1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778),
    *(667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556),
    *(333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556),
    *(556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584),
]
# Signs of the formulas, seen in the metrics of Liberation Sans, which are Arial's.
_SIGNS = {"“”²³¹": 333, "′": 188, "°": 400, "≤≥√÷": 549, "ℓ": 323, "·": 278, "–γ": 556, "×−": 584,
          "τ": 395, "θβδ": 557, "ρμ": 576, "α": 578, "Σσ": 618, "φΔ": 668, "π": 690, "ω": 781,
          "½¾⅜": 834}
_OTHER = 600
_WIDEST = chr(32 + _WIDTHS.index(max(_WIDTHS)))
"""No letter is wider."""


class _Advances(dict):
    """Widths by letter; a letter that is not in the list has a middling one."""

    def __missing__(self, letter: str) -> int:
        return _OTHER


_ADVANCE = _Advances({chr(32 + i): width for i, width in enumerate(_WIDTHS)}
                     | {sign: width for signs, width in _SIGNS.items() for sign in signs})
_BOLD = 1.07
"""Bold letters against plain ones, on average (our judgement, from the two sets of widths)."""

_WORDS = re.compile(r"[^ -]+-*|-+| +")


def text_width(text: str, size: float = BODY, bold: bool = False) -> float:
    """Return the width of a text on one line [px at 96 px an inch]; ``size`` in [pt]."""
    units = sum(map(_ADVANCE.__getitem__, text))
    return units / 1000 * size * 96 / 72 * SLACK * (_BOLD if bold else 1)


_word_width = cache(text_width)
"""The same few thousand words make up all texts."""


@cache
def lines(text: str, room: float, size: float = BODY, bold: bool = False) -> int:
    """Return how many lines a text takes, wrapped at blanks and hyphens in ``room`` [px]."""
    return sum(_lines_of(part, room, size, bold) for part in text.split("\n"))


def _lines_of(text: str, room: float, size: float, bold: bool) -> int:
    if text_width(text, size, bold) <= room:
        return 1
    count, used = 1, 0.0
    for word in _WORDS.findall(text):
        width = _word_width(word, size, bold)
        if used + width <= room:
            used += width
        elif word.isspace():
            used = room  # a blank at the end of a line takes no room in the next
        elif width <= room:
            count, used = count + 1, width
        else:  # a word longer than the line is cut between letters
            for letter in word:
                width = text_width(letter, size, bold)
                count, used = (count, used + width) if used + width <= room else (count + 1, width)
    return count


def pixels(width: float) -> int:
    """Return how wide a column of ``width`` [digits] stands [px at 96 px an inch]."""
    return int(width * DIGIT + 0.5) + 5


def column_pixels(sheet: SheetPlan, col: int) -> int:
    """Return how wide a column of a sheet stands [px at 96 px an inch]."""
    return pixels(sheet.widths[col] if col < len(sheet.widths) else DEFAULT_WIDTH)


def column_room(width: float, indent: int = 0) -> float:
    """Return what a column of ``width`` [digits] leaves for text [px]."""
    return pixels(width) - PADDING - indent * INDENT


_ONE_LINE = {name for name, look in STYLES.items()
             if not look.get("text_wrap") and look.get("font_size", BODY) <= BODY}
"""Styles that keep to one line of body text."""


def row_heights(sheet: SheetPlan, values: Mapping[Place, float | str]) -> dict[int, float]:
    """Return the height [pt] of every row that differs from the default.

    A row has room for what its cells show and for the longest they may come to; a height the plan
    gives stands.
    """
    found: dict[int, float] = {}
    rooms: dict[tuple[str, int], tuple[float, float]] = {}
    for cell in sheet.cells:
        if cell.style in _ONE_LINE:
            continue
        look = STYLES[cell.style]
        size, count = look.get("font_size", BODY), 1
        if look.get("text_wrap"):
            key = cell.style, cell.col
            if key not in rooms:
                room = _room(sheet, cell, look)
                rooms[key] = room, room / text_width(_WIDEST, size, bold=True)
            room, letters = rooms[key]
            for text in (_shown(sheet, cell, values), sheet.longest.get((cell.row, cell.col), "")):
                # Most texts are short enough whatever their letters are.
                if len(text) > letters or "\n" in text:
                    count = max(count, lines(text, room, size, look.get("bold", False)))
        height = count * LINE * size / BODY
        if height > LINE:
            found[cell.row] = max(found.get(cell.row, 0), _whole_pixels(height))
    return {**found, **sheet.heights}


def _whole_pixels(points: float) -> float:
    return -(-points * 4 // 3) * 3 / 4


def _room(sheet: SheetPlan, cell: Cell, look: Look) -> float:
    width = sheet.widths[cell.col] if cell.col < len(sheet.widths) else DEFAULT_WIDTH
    return column_room(width, look.get("indent", 0))


def _shown(sheet: SheetPlan, cell: Cell, values: Mapping[Place, float | str]) -> str:
    shown = values[sheet.name, cell.row, cell.col] if cell.kind == "formula" else cell.content
    if not isinstance(shown, str):
        return ""  # a number does not wrap
    return shown.partition("|")[2] if cell.kind == "link" else shown
