"""Where pages begin: each page whole on either paper, no heading alone at the foot of one.

Programs break a page where the paper ends, be it under a heading or within a check.  So every
page is begun here, and is as long as both papers take.
"""

from __future__ import annotations

from collections.abc import Mapping

from builder.resolve.cells import Figure, SheetPlan
from builder.workbook.heights import LINE, column_pixels

PAPERS = ((8.5, 11.0), (8.27, 11.69))
"""Width and height of letter and of A4, standing [in] (ANSI Y14.1 size A and ISO 216; memory)."""

# Margins [in]: room for a punched edge at the left, header and footer clear of the cells.
MARGINS = {"left": 0.6, "right": 0.4, "top": 0.65, "bottom": 0.55}
DRAWN = {"left": 0.95, "right": 0.85, "top": 0.65, "bottom": 0.55}
"""Margins of a sheet of drawings [in].

A page of A4 lying is wider and lower than one of letter, so that what fills the width of both
runs over the foot of A4.  With these the tallest page of drawings, 42 rows of 721 px in all under
1024 px of width, stands on either: 6.96 in high by 9.89 in wide on A4, 6.48 by 9.2 in on letter.
"""

FULL = 0.99
"""Share of a page that is filled: programs round the scale of a page to whole hundredths, and the
heights of rows to pixels (our judgement)."""

FOLLOW = 3
"""Lines that stand under a heading before a page may end (our judgement)."""

TITLES = ("block", "master")
LEADING = (*TITLES, "subtitle", "caution.line", "head")
"""Styles of rows that lead to what stands below them; every kind of head is another."""


def margins(sheet: SheetPlan) -> dict[str, float]:
    """Return the margins of a sheet's pages [in]."""
    return DRAWN if any(isinstance(chart, Figure) for chart in sheet.charts) else MARGINS


def page_breaks(sheet: SheetPlan, heights: Mapping[int, float]) -> list[int]:
    """Return the rows that begin a page, those the sheet itself asks for among them.

    ``heights`` holds the height of every row that differs from the default [pt].
    """
    high = [heights.get(row, LINE) for row in range(sheet.last[0] + 1)]
    first, last = sheet.repeat_rows
    repeated, room = sum(high[first : last + 1]), FULL * _room(sheet)
    asked, held = set(sheet.page_breaks), _held(sheet)
    filled = {cell.row for cell in sheet.cells} | {chart.row for chart in sheet.charts}
    if sheet.whole_blocks:
        whole, longer = _blocks(sheet, high, room - repeated)
        asked, held = asked | longer, held | whole
    found: list[int] = []
    start = row = 0
    used = 0.0
    while row < len(high):
        used += high[row]
        if (row in asked or used > room) and row > start:
            start = row = row if row in asked else _back(row, start, held)
            found.append(start)
            # A page of nothing but the blank rows before a page that is asked for is no page.
            asked.discard(next((y for y in range(start, len(high)) if y in filled), None))
            used = repeated + high[start]
        row += 1
    return found


def _room(sheet: SheetPlan) -> float:
    """Return the height that the lower of both papers has for rows, at the sheet's size [pt]."""
    edge = margins(sheet)
    wide = sum(column_pixels(sheet, col) for col in range(sheet.last[1] + 1)) / 96
    rooms = []
    for paper in PAPERS:
        across, down = reversed(paper) if sheet.landscape else paper
        scale = min(1.0, (across - edge["left"] - edge["right"]) / wide)
        rooms.append((down - edge["top"] - edge["bottom"]) * 72 / scale)
    return min(rooms)


def _held(sheet: SheetPlan) -> set[int]:
    """Return the rows that stay on the page of the row above them.

    They are the rows under a heading, the last ones of a block, a verdict under what it judges,
    and the rows that a chart covers.
    """
    styles: dict[int, set[str]] = {}
    for cell in sheet.cells:
        styles.setdefault(cell.row, set()).add(cell.style)
    leading = {row for row, found in styles.items() if found & set(TITLES) or all(
        style in LEADING or style.startswith("head.") for style in found)}
    held = {row for chart in sheet.charts for row in range(chart.row + 1, chart.row + chart.rows)}
    for row, found in styles.items():
        if row in leading:
            held.add(row + 1)
            for follow in range(row + 2, row + 1 + FOLLOW):
                if follow - 1 in leading or follow not in styles or follow in leading:
                    break
                held.add(follow)
        elif row + 1 not in styles or row + 1 in leading:
            held.add(row)
            if row - 1 in styles and row - 1 not in leading:
                held.add(row - 1)
        elif "verdict" in found and "verdict" not in styles.get(row - 1, {"verdict"}):
            held.add(row)
    # What leads to nothing, as a caution at the end, belongs to what stands above it.
    closing: set[int] = set()
    for row in sorted(leading, reverse=True):
        if row + 1 not in styles or row + 1 in closing:
            closing.add(row)
    return held | closing


def _blocks(sheet: SheetPlan, high: list[float], room: float) -> tuple[set[int], set[int]]:
    """Return the rows but the first of blocks that a page holds, and the first rows of longer ones.

    ``high`` holds the height of each row, ``room`` the room for rows of a block on a page [pt].
    """
    filled = {cell.row for cell in sheet.cells}
    tops = sorted({cell.row for cell in sheet.cells if cell.style == "block" or (
        cell.style.startswith("head") and cell.row - 1 not in filled)})
    whole: set[int] = set()
    longer: set[int] = set()
    for top, end in zip(tops, [*tops[1:], len(high)], strict=True):
        if sum(high[top:end]) <= room:
            whole |= set(range(top + 1, end))
        else:
            longer.add(top)
    return whole, longer


def _back(row: int, start: int, held: set[int]) -> int:
    """Return the last row up to ``row`` that may begin a page after the one begun at ``start``."""
    return next((one for one in range(row, start, -1) if one not in held), row)
