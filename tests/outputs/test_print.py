"""The delivered workbooks on paper: nothing cut off, nothing blank, every sheet one page wide.

Printed by LibreOffice from the stored values, as a reader gets them who only opens the file.
"""

from __future__ import annotations

import re
import subprocess
from collections import Counter
from functools import cache
from zipfile import ZIP_DEFLATED, ZipFile

import numpy as np
import pytest
from openpyxl.utils import get_column_letter, range_boundaries

from builder.engine import applications, libreoffice
from builder.engine.values import address
from builder.rules.layout import PAPER
from builder.workbook.heights import DEFAULT_WIDTH, column_room, text_width
from tests.outputs.reading import OUTPUTS, opened, read
from tests.outputs.test_screen import width

pytestmark = pytest.mark.outputs
NEEDS = pytest.mark.needs("soffice", "pdftotext")
EACH = pytest.mark.parametrize("path", OUTPUTS, ids=lambda p: p.stem)
ROWS_ON_A_PAGE = 20
"""Rows of a page at the least, when every row wraps once (our judgement)."""
USUAL_ROWS = 28
"""Rows of a page at the least over the whole workbook (our judgement)."""
SMALLEST = 6.5
"""The least size of letters on paper [pt] (our judgement: that of a newspaper's tables)."""
LETTERS = 100
"""Letters on a page, heads and foot among them, below which it counts as blank."""


@pytest.fixture(scope="module")
def printed(tmp_path_factory):
    """A function of (file): the text of each of its printed pages."""
    folder = tmp_path_factory.mktemp("printed")

    @cache
    def give(path):
        pdf = libreoffice.to_pdf(path, folder)
        command = [applications.find("pdftotext"), "-layout", str(pdf), "-"]
        pages = applications.run(command, 60).stdout.split("\f")
        assert pages[-1].strip() == ""
        return pages[:-1]

    give.folder = folder
    return give


def on_a4(path, copy) -> None:
    """Write a copy of a workbook for A4, as a reader's print window does."""
    with ZipFile(path) as given, ZipFile(copy, "w", ZIP_DEFLATED) as made:
        for part in given.infolist():
            content = given.read(part)
            if part.filename.startswith("xl/worksheets/sheet"):
                content, count = re.subn(rb'(<pageSetup[^>]*?)paperSize="1"', rb'\1paperSize="9"',
                                         content)
                assert count == 1, part.filename
            made.writestr(part, content)


@pytest.fixture(scope="module")
def a4(printed, tmp_path_factory):
    """The text of each page of a demo printed on A4."""
    copy = tmp_path_factory.mktemp("a4") / "a4.xlsx"
    on_a4(next(p for p in OUTPUTS if p.stem == "tidal_finger"), copy)
    return printed(copy)


def asked_for(pages: list[str]) -> list[str]:
    """Return the pages that a sheet asks for: each has at least header and footer.

    LibreOffice at times puts one page more behind a sheet, without header and footer, where its
    count of the pages and its printing round the scale differently (seen on A4 and on letter).
    """
    found = [page for page in pages if page.strip()]
    assert len(pages) - len(found) <= 1
    return found


@NEEDS
def test_on_a4_nothing_is_cut_off_and_no_page_is_blank(a4):
    for number, page in enumerate(asked_for(a4), start=1):
        assert re.search(rf"Page\d+of{len(a4)}", plain(page)), f"page {number}"
        assert "##" not in page, f"page {number}"
        assert len(plain(page)) > LETTERS, f"page {number} is blank:\n{page}"


@NEEDS
def test_pages_are_the_same_on_a4_and_on_letter(a4, printed):
    """Every sheet begins a page where the file says so and nowhere else, on either paper."""
    path = next(p for p in OUTPUTS if p.stem == "tidal_finger")
    book = opened(path)
    titles = {page["A1"].value: page for page in book}
    for pages in (a4, printed(path)):
        count = Counter(sheet_of(page, list(titles)) for page in asked_for(pages))
        for title, page in titles.items():
            assert count[title] == len(page.row_breaks.brk) + 1, page.title


def plain(text: str) -> str:
    return "".join(text.split())


def sheet_of(page: str, titles: list[str]) -> str:
    """Return the title in the header of a page: the last words of its first line."""
    first = plain(next(line for line in page.splitlines() if line.strip()))
    found = [t for t in titles if first.endswith(plain(t))]
    assert found, f"no sheet is called {first!r}"
    return max(found, key=len)


@NEEDS
@EACH
def test_p02_no_number_is_cut_off(printed, path):
    wrong = [line.strip() for page in printed(path) for line in page.splitlines() if "##" in line]
    assert wrong == []


@NEEDS
@EACH
def test_p02_no_page_is_blank_and_pages_are_counted(printed, path):
    pages = printed(path)
    for number, page in enumerate(pages, start=1):
        assert f"Page {number} of {len(pages)}" in " ".join(page.split()), f"page {number}"
        assert len(plain(page)) > LETTERS, f"page {number} is blank:\n{page}"
    book = opened(path)
    rows = sum(page.max_row for page in book)
    assert len(book.sheetnames) <= len(pages) <= len(book.sheetnames) + rows / USUAL_ROWS


@NEEDS
@EACH
def test_p01_every_sheet_is_one_page_wide(printed, path):
    """Each page begins with the sheet's own title, which stands in column A alone."""
    book = opened(path)
    titles = {page["A1"].value: page for page in book}
    count: Counter[str] = Counter()
    for number, page in enumerate(printed(path), start=1):
        title = sheet_of(page, list(titles))
        count[title] += 1
        body = plain(page).partition(plain(title))[2]
        assert plain(title) in body, f"page {number} of {title} does not begin at column A"
    for title, page in titles.items():
        rows = range_boundaries(page.print_area.rpartition("!")[2])[3]
        assert 1 <= count[title] <= 1 + rows / ROWS_ON_A_PAGE, (title, count[title])


@EACH
def test_no_sheet_is_printed_in_letters_too_small_to_read(path):
    """Body letters of 10 pt, at the size at which the sheet's width fills letter paper."""
    for page in opened(path):
        right = range_boundaries(page.print_area.rpartition("!")[2])[2]
        wide = sum(width(page, col) for col in range(1, right + 1)) / 96
        edge = page.page_margins
        across = (11 if page.page_setup.orientation == "landscape" else 8.5)
        assert 10 * min(1, (across - edge.left - edge.right) / wide) >= SMALLEST, page.title


@EACH
def test_symbols_and_units_stand_whole_and_in_full_size(path):
    """No word in the middle of its cell is cut between letters or shrunk to fit."""
    wrong, tried = [], 0
    for page in opened(path):
        for cell in (cell for row in page.iter_rows() for cell in row):
            how = cell.alignment
            if how.horizontal != "center" or not isinstance(cell.value, str) or (
                    cell.data_type == "f" or not (how.wrap_text or how.shrink_to_fit)):
                continue
            tried += 1
            has = column_room(width(page, cell.column) / 7)
            for word in cell.value.split() if how.wrap_text else [cell.value]:
                wide = text_width(word, cell.font.size, cell.font.bold) / 1.03
                if wide > has:
                    wrong.append(f"{page.title}!{cell.coordinate}: {wide:.0f} px in {has:.0f}: "
                                 f"{word!r}")
    assert tried > 10_000 and not wrong, f"{tried} tried\n" + "\n".join(wrong[:40])


def grey(pdf, page: int) -> np.ndarray:
    """Return a page of a PDF as greys from 0, black, to 255."""
    made = subprocess.run(
        [applications.find("pdftoppm"), "-r", "150", "-gray", "-f", str(page), "-l", str(page),
         str(pdf)], capture_output=True, check=True, timeout=60).stdout
    kind, size, _, points = made.split(b"\n", 3)
    assert kind == b"P5"
    wide, high = map(int, size.split())
    return np.frombuffer(points, np.uint8).reshape(high, wide)


def ends(dark: np.ndarray, share: float) -> tuple[float, float]:
    """Return the middles of the first and the last line, each a run of dark rows."""
    at = np.flatnonzero(dark.mean(axis=1) > share)
    runs = np.split(at, np.flatnonzero(np.diff(at) > 1) + 1)
    return float(runs[0].mean()), float(runs[-1].mean())


@pytest.mark.needs("soffice", "pdftotext", "pdftoppm")
@pytest.mark.parametrize("path", [p for p in OUTPUTS if p.stem != "blank_start"],
                         ids=lambda p: p.stem)
def test_the_plan_is_true_to_scale_on_paper(printed, path):
    """The frame's outer lines, measured in the picture, stand as length to width, to 1 %."""
    title = opened(path)["Drawing"]["A1"].value
    number = next(k for k, page in enumerate(printed(path), 1)
                  if sheet_of(page, [s["A1"].value for s in opened(path)]) == title)
    # Frame and floats alone are as dark as this; floats may lie under the frame's edges.
    dark = grey(printed.folder / f"{path.stem}.pdf", number) < 85
    top, bottom = ends(dark, 0.3)
    left, right = ends(dark.T, 0.3)
    typed = resolved_section(path)
    assert (right - left) / (bottom - top) == pytest.approx(
        typed["length"] / typed["width"], rel=0.01)


def resolved_section(path) -> dict[str, float]:
    """Return length and width of type A as they are typed, read from the file."""
    page = opened(path)["Sections"]
    rows = {page.cell(r, 1).value: page.cell(r, 5).value for r in range(100, 6, -1)}
    return {"length": rows["Length, outside of headers"],
            "width": rows["Width, outside of rails"]}


@NEEDS
def test_every_label_of_the_calculation_sheets_is_on_paper(printed):
    path = OUTPUTS[-1]
    text = plain("".join(printed(path)))
    words = [v.value for (s, _, c), v in read(path).cells.items()
             if c == 0 and isinstance(v.value, str) and s in ("Inputs", "Sections", "Parts")]
    missing = [w for w in words if not all(plain(part) in text for part in w.split())]
    assert len(words) > 200 and missing == []


def room(page, row: int, col: int, right: int, held) -> float:
    """Return the room of a text that runs on over the empty cells beside it [px]."""
    room = 0.0
    for at in range(col, right + 1):
        if at > col and (page.title, row, at) in held:
            break
        width = page.column_dimensions[get_column_letter(at + 1)].width or DEFAULT_WIDTH
        room += column_room(width) if at == col else width * 7
    return room


def clipped(path) -> list[str]:
    """Return the texts on one line that run into a filled cell or off the print area."""
    file, found = read(path), []
    for page in opened(path):
        _, _, right, _ = range_boundaries(page.print_area.rpartition("!")[2])
        for place, cell in file.cells.items():
            if place[0] != page.title or not isinstance(cell.value, str):
                continue
            if page.title in PAPER and place[2] >= right:
                continue  # beside the paper, with nothing to its right
            shown = page.cell(place[1] + 1, place[2] + 1)
            if shown.alignment.wrap_text or shown.alignment.shrink_to_fit:
                continue
            wide = text_width(cell.value, shown.font.size, shown.font.bold) / 1.03
            has = room(page, place[1], place[2], right - 1, file.cells)
            if wide > has:
                found.append(f"{address(place)}: {wide:.0f} px in {has:.0f}: {cell.value!r}")
    return found


@EACH
def test_no_line_of_words_runs_into_its_neighbour(path):
    found = clipped(path)
    assert not found, f"{len(found)} texts\n" + "\n".join(found[:40])


def decimals(number_format: str) -> int:
    tail = re.search(r"\.(0+)", number_format)
    return len(tail[1]) if tail else 0


@EACH
def test_no_number_is_wider_than_its_column(path):
    """Every stored number, as its format shows it, fits with a margin of nothing but its cell."""
    file, wrong, tried = read(path), [], 0
    for page in opened(path):
        # Neighbours of one width stand as one entry, under the first one's letter; an entry that
        # was only asked for has no place.
        widths = {col: held.width for held in page.column_dimensions.values() if held.min
                  for col in range(held.min, held.max + 1)}
        for place, cell in file.cells.items():
            if place[0] != page.title or not isinstance(cell.value, float):
                continue
            shown = page.cell(place[1] + 1, place[2] + 1).number_format
            if shown == "General":
                continue
            tried += 1
            text = f"{cell.value:,.{decimals(shown)}f}" if "," in shown else \
                f"{cell.value:.{decimals(shown)}f}"
            width = widths.get(place[2] + 1, DEFAULT_WIDTH)
            if text_width(text) / 1.03 > column_room(width):
                wrong.append(f"{address(place)}: {text} in a column of {width}")
    assert wrong == [] and tried > 1000
