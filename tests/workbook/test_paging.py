"""Where pages begin: on a plan made for it, and on the sheets of a whole workbook."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.engine.ironcalc_engine import evaluate
from builder.jobs import read_job
from builder.resolve.cells import Cell, Chart, SheetPlan
from builder.sheets.book import model
from builder.workbook.heights import LINE, column_pixels, row_heights
from builder.workbook.paging import FOLLOW, LEADING, MARGINS, PAPERS, TITLES, page_breaks

JOBS = Path(__file__).parents[2] / "templates" / "jobs"
WIDTHS = [40.0] * 4
WIDE = sum(column_pixels(SheetPlan("S", "S", widths=WIDTHS), col) for col in range(4)) / 96


def room(across: float, down: float) -> float:
    """Return what lying paper of a width and height [in] holds of rows, by hand [pt]."""
    scale = min(1, (across - MARGINS["left"] - MARGINS["right"]) / WIDE)
    return (down - MARGINS["top"] - MARGINS["bottom"]) / scale * 72


ROWS = int(0.99 * min(room(11, 8.5), room(11.69, 8.27)) / LINE)
"""Rows of the first page."""


def plan(styles: dict[int, str], last: int, **more) -> SheetPlan:
    """Return a sheet of rows up to ``last``, each a label but where a style is given."""
    cells = [Cell(row, 0, "text", f"row {row}", styles.get(row, "label"))
             for row in range(last + 1) if styles.get(row) != "nothing"]
    return SheetPlan("S", "S", cells, widths=WIDTHS, last=(last, 3), **more)


def test_a_page_is_filled_as_far_as_both_papers_take():
    assert 30 < ROWS < 60
    # Row 0 is repeated on each page.
    assert page_breaks(plan({}, 3 * ROWS), {}) == [ROWS, 2 * ROWS - 1, 3 * ROWS - 2]
    assert page_breaks(plan({}, ROWS - 1), {}) == []
    assert page_breaks(plan({}, ROWS), {}) == [ROWS - 2], "three rows stay together at the end"


def test_a_tall_row_takes_its_height():
    assert page_breaks(plan({}, ROWS + 10), {5: 11 * LINE})[0] == ROWS - 10


@pytest.mark.parametrize("style", [*LEADING, "head.n"])
@pytest.mark.parametrize("over", range(1, FOLLOW + 1))
def test_a_heading_goes_with_three_lines_below_it(style, over):
    assert page_breaks(plan({ROWS - over: style}, 2 * ROWS - 20), {}) == [ROWS - over]
    assert page_breaks(plan({ROWS - 1 - FOLLOW: style}, 2 * ROWS - 20), {}) == [ROWS]


def test_headings_one_below_the_other_go_together():
    styles = {ROWS - 3: "block", ROWS - 2: "subtitle", ROWS - 1: "head"}
    assert page_breaks(plan(styles, 2 * ROWS - 20), {}) == [ROWS - 3]


def test_a_heading_over_fewer_lines_holds_no_more():
    styles = {ROWS - 3: "block", ROWS - 1: "block"}
    assert page_breaks(plan(styles, 2 * ROWS - 20), {}) == [ROWS - 1]


def test_a_caution_at_the_end_stays_with_what_it_is_about():
    styles = {ROWS: "caution.line", ROWS + 1: "caution.line"}
    assert page_breaks(plan(styles, ROWS + 1), {}) == [ROWS - 3]


def test_a_verdict_stays_with_what_it_judges():
    assert page_breaks(plan({ROWS: "verdict"}, 2 * ROWS - 20), {}) == [ROWS - 1]
    rows = {row: "verdict" for row in range(2 * ROWS)}
    assert page_breaks(plan(rows, 2 * ROWS - 20), {}) == [ROWS], "a list of verdicts is broken"


def test_what_a_sheet_asks_for_is_kept():
    assert page_breaks(plan({}, 2 * ROWS - 20, page_breaks=[10]), {}) == [10, 10 + ROWS - 1]


def test_blank_rows_before_a_page_that_is_asked_for_are_no_page_of_their_own():
    styles = {ROWS: "nothing", ROWS + 1: "nothing"}
    found = page_breaks(plan(styles, ROWS + 20, page_breaks=[ROWS + 2]), {})
    assert found == [ROWS], "the page begins with the blank rows"
    assert page_breaks(plan({}, ROWS + 20, page_breaks=[ROWS + 2]), {}) == [ROWS, ROWS + 2]


def test_a_chart_stands_on_one_page():
    chart = Chart(ROWS - 5, 0, 20, "bars", "t", "a", "u", (), "about")
    bare = {row: "nothing" for row in range(ROWS - 5, ROWS + 15)}
    assert page_breaks(plan(bare, 2 * ROWS - 20, charts=[chart]), {}) == [ROWS - 5]


def test_tables_are_not_broken_if_a_page_holds_them():
    styles = {5: "block", 25: "block", ROWS + 9: "nothing", ROWS + 10: "block"}
    assert page_breaks(plan(styles, ROWS + 40, whole_blocks=True), {}) == [25, ROWS + 10]
    assert page_breaks(plan(styles, ROWS + 40), {})[0] == ROWS
    longer = {5: "block", 25: "block"}
    assert page_breaks(plan(longer, 25 + 2 * ROWS, whole_blocks=True), {})[0] == 25


def test_pages_of_a_whole_workbook_begin_well():
    """No page ends with a heading."""
    found = model()
    job = read_job(JOBS / "walkway_t_head.toml", found.job_inputs(), found.section_inputs(),
                   found.editable)
    book = found.book(job)
    values = evaluate(book, names=False)
    tried = 0
    for sheet in book.sheets:
        styles: dict[int, set[str]] = {}
        for cell in sheet.cells:
            styles.setdefault(cell.row, set()).add(cell.style)
        heights = row_heights(sheet, values)
        for row in page_breaks(sheet, heights):
            tried += 1
            above = styles.get(row - 1, {"nothing"})
            assert not above & set(TITLES), (sheet.name, row)
            if row not in sheet.page_breaks and not sheet.whole_blocks:
                assert not above <= set(LEADING), (sheet.name, row)
    assert tried > 200


def test_both_papers_are_those_of_the_standards():
    """A4 is 210 by 297 mm, letter 8 1/2 by 11 in."""
    assert PAPERS == ((8.5, 11), (pytest.approx(210 / 25.4, abs=0.01),
                                  pytest.approx(297 / 25.4, abs=0.01)))
