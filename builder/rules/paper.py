"""Rules P: how sheets are set out on paper and on the screen."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator

from builder.rules import layout
from builder.rules.engineering import header
from builder.rules.findings import Found, rule
from builder.rules.looks import kept_name, looks, print_area, used
from builder.rules.reading import MAIN, File, Sheet
from builder.workbook.heights import DEFAULT_WIDTH, column_room, text_width
from builder.workbook.limits import FROZEN_ROWS, HEADER, units16
from builder.workbook.styles import BODY, FONT

SCREEN = 40
"""Rows that stand on a screen (our judgement)."""
FONTS = {FONT}
HEADING = 12
"""Least size of the letters of a title [pt]."""


@rule("P01", "Set print area, repeated rows, letter paper, one page wide.")
def set_out_for_paper(file: File) -> Iterator[Found]:
    """Yield sheets that are not set out for paper, or whose print area leaves cells out."""
    for sheet in file.sheets:
        area, page = print_area(file, sheet.name), sheet.first("pageSetup")
        good = (area is not None and kept_name(file, sheet.name, "_xlnm.Print_Titles")
                and page.get("paperSize") == "1" and page.get("fitToWidth", "1") == "1"
                and page.get("fitToHeight") == "0"
                and page.get("orientation") in ("landscape", "portrait")
                and sheet.first("pageSetUpPr").get("fitToPage") == "1"
                and sheet.first("pageMargins"))
        if not good:
            yield sheet.name, "not set out for paper"
        elif sheet.name not in layout.BESIDE:
            for row, col in sheet.held:
                if row > area[2] or col > area[3]:
                    yield (sheet.name, row, col), "stands outside the print area"


def width(sheet: Sheet, col: int) -> float:
    """Return the width of a column [digits]."""
    for one in sheet.all("col"):
        if int(one.get("min", 0)) <= col + 1 <= int(one.get("max", 0)):
            return float(one.get("width", DEFAULT_WIDTH))
    return DEFAULT_WIDTH


@rule("P02", "Make the column wider or show fewer decimals.")
def no_number_cut_off(file: File) -> Iterator[Found]:
    """Yield numbers that are wider than their column.

    That no page is blank and none too many is tried by the tests, on printed pages.
    """
    shapes = [(re.match(r"#,##0(?:\.(0+))?", look.number), look) for look in looks(file)]
    for sheet in file.sheets:
        room: dict[int, float] = {}
        for at, held in sheet.held.items():
            shape, look = shapes[sheet.look[at]]
            if shape is None or not isinstance(held.value, float):
                continue
            if at[1] not in room:
                room[at[1]] = column_room(width(sheet, at[1]))
            shown = f"{held.value:,.{len(shape[1] or '')}f}"
            if not look.shrink and text_width(shown, look.size, look.bold) > room[at[1]]:
                yield (sheet.name, *at), f"{shown} is wider than its column"


@rule("P03", "Shorten it to 255 letters, and say it in a cell too.")
def headers_repeat_cells(file: File) -> Iterator[Found]:
    """Yield headers and footers that are too long, or say what stands in no cell.

    The foot's title of the job is the document's subject; the cells name the job as it is typed.
    """
    core = file.xml("docProps/core.xml")
    said = {str(h.value) for h in file.sheets[0].held.values()}
    said |= set() if core is None else {e.text for e in core if e.tag.endswith("}subject")}
    for sheet in file.sheets:
        for tag in ("oddHeader", "oddFooter"):
            found = sheet.root.find(f".//{MAIN}{tag}")
            if found is not None and units16(found.text or "") > HEADER:
                yield sheet.name, f"the {tag} has {units16(found.text or '')} letters"
            for piece in re.split("&[LCR]", header(sheet, tag)):
                text = re.sub("&&", "&", piece)
                if text and "&P" not in text and text not in said \
                        and text != file.text(sheet.name, 0):
                    yield sheet.name, f"{text!r} stands in no cell"


@rule("P04", "Freeze the rows of title and heads: two to six of them.")
def heads_stay(file: File) -> Iterator[Found]:
    """Yield sheets longer than a screen whose heads do not stay in view."""
    for sheet in file.sheets:
        last = max((int(row["r"]) for row in sheet.rows), default=0)
        pane = sheet.first("pane")
        rows = int(float(pane.get("ySplit", 0))) if pane.get("state") == "frozen" else 0
        if last > SCREEN and not 2 <= rows <= FROZEN_ROWS:
            yield sheet.name, f"{rows} rows are frozen"


@rule("P05", "Open on the first sheet at A1; give each sheet a title of its own in A1.")
def begins_at_the_top(file: File) -> Iterator[Found]:
    """Yield sheets without a title of their own, not opened at A1, or blank."""
    views = file.book.findall(f".//{MAIN}workbookView")
    if any(view.get("activeTab", "0") != "0" for view in views):
        yield file.sheets[0].name, "does not open on the first sheet"
    titles = Counter(file.value(s.name, 0, 0) for s in file.sheets)
    for sheet in file.sheets:
        title = file.value(sheet.name, 0, 0)
        if not isinstance(title, str) or titles[title] != 1:
            yield (sheet.name, 0, 0), f"the title is {title!r}"
        pane = sheet.first("pane").get("activePane")
        at = [s.get("activeCell", "A1") for s in sheet.all("selection")
              if pane is None or s.get("pane") == pane]
        if len({row for row, _ in sheet.held}) < 2 or (at or ["A1"]) != ["A1"]:
            yield sheet.name, "blank, or not opened at A1"


@rule("P06", "One font without serifs, at least 10 pt, titles at least 12, nothing in italics.")
def one_font(file: File) -> Iterator[Found]:
    """Yield other fonts, small letters, italics, and titles that are no larger."""
    known = looks(file)
    for number, place in used(file).items():
        look = known[number]
        if look.font not in FONTS:
            yield place, f"the font {look.font}"
        if look.size < BODY:
            yield place, f"letters of {look.size:g} pt"
        if look.italic:
            yield place, "italics"
    for sheet in file.sheets:
        look = known[sheet.look.get((0, 0), 0)]
        if look.size < HEADING:
            yield (sheet.name, 0, 0), f"a title of {look.size:g} pt"

