"""How a sheet is set out on the screen and on paper."""

from __future__ import annotations

import re
from collections.abc import Mapping

from xlsxwriter.worksheet import Worksheet

from builder.resolve.cells import Book, SheetPlan
from builder.workbook.limits import HEADER, WorkbookError, units16
from builder.workbook.paging import margins, page_breaks
from builder.workbook.styles import FONT

LETTER = 1
"""Paper number of letter size, 8.5 x 11 in (ECMA-376 Part 1, 18.3.1.63 pageSetup; memory)."""

HEADER_MARGIN = 0.35
_CODE = f'&"{FONT},Regular"'


def literal(text: str) -> str:
    """Return text so that a header shows it as it stands: an ampersand is doubled.

    The library takes ``&G`` for a picture even after a doubled ampersand; a font code between
    the two keeps them apart and shows nothing.
    """
    return re.sub(r"&(?=([G\[])?)", lambda found: "&&" + (_CODE if found[1] else ""), text)


def header_and_footer(book: Book, sheet: SheetPlan) -> tuple[str, str]:
    """Return header and footer: workbook and sheet title; job and revision, page of pages.

    Raises WorkbookError when one is longer than the format takes.
    """
    header = f"&L{_CODE}{literal(book.title)}&R{_CODE}{literal(sheet.title)}"
    footer = f"&L{_CODE}{literal(book.subject)}&R{_CODE}Page &P of &N"
    long = [
        f"sheet {sheet.name}: the {what} has {units16(text)} characters, more than {HEADER}"
        for what, text in (("header", header), ("footer", footer))
        if units16(text) > HEADER
    ]
    if long:
        raise WorkbookError(long)
    return header, footer


def set_up(book: Book, sheet: SheetPlan, page: Worksheet, heights: Mapping[int, float]) -> None:
    """Set screen and paper of one sheet: one page wide, as many high as it takes.

    ``heights`` holds the height of every row that differs from the default [pt].
    """
    page.hide_gridlines(2)
    page.set_zoom(100)
    if any(sheet.frozen):
        page.freeze_panes(*sheet.frozen)
    page.set_paper(LETTER)
    if sheet.landscape:
        page.set_landscape()
    else:
        page.set_portrait()
    page.set_margins(**margins(sheet))
    page.fit_to_pages(1, 0)
    page.print_area(0, 0, *sheet.last)
    page.repeat_rows(*sheet.repeat_rows)
    page.set_h_pagebreaks(page_breaks(sheet, heights))
    header, footer = header_and_footer(book, sheet)
    page.set_header(header, {"margin": HEADER_MARGIN})
    page.set_footer(footer, {"margin": HEADER_MARGIN})
    if sheet.protect:
        # No password: it hides nothing and would lock the checker out.
        page.protect("", {"select_locked_cells": True, "format_columns": True})
