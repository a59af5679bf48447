"""What is seen first, worked out from the written file: on a small laptop and on a phone.

Sizes of columns and rows are those of the file at 100 %; no program is asked.
"""

from __future__ import annotations

import pytest

from builder.resolve.frame import HEAD
from builder.workbook.heights import DEFAULT_WIDTH
from tests.outputs.reading import OUTPUTS, opened, read

pytestmark = pytest.mark.outputs
EACH = pytest.mark.parametrize("path", OUTPUTS, ids=lambda p: p.stem)
WIDE, HIGH = 1280 - 40, 720 - 250
"""Room for cells on a screen of 1280 x 720, less the program's own frames [px] (our judgement)."""
PHONE = 400
"""Width of a phone held upright [px] (our judgement)."""
LINES = 8
"""Lines with something in them that a first screen shows below its frozen rows."""
DEFAULT_HEIGHT = 17
VERDICTS = {"OK", "LOOK", "NOT OK", "NEEDS INPUT", "not used"}


def width(page, col: int) -> float:
    """Return the width of a column, counted from 1 [px]; the file's has the cell's edges in it."""
    for held in page.column_dimensions.values():
        if held.min and held.min <= col <= held.max:
            return held.width * 7
    return DEFAULT_WIDTH * 7 + 5


def height(page, row: int) -> float:
    """Return the height of a row, counted from 1 [px]."""
    held = page.row_dimensions.get(row) if row in page.row_dimensions else None
    return held.height * 96 / 72 if held is not None and held.height else DEFAULT_HEIGHT


def frozen(page) -> tuple[int, int]:
    """Return how many rows and columns stay in view."""
    pane = page.sheet_view.pane
    return (int(pane.ySplit or 0), int(pane.xSplit or 0)) if pane is not None else (0, 0)


def seen(page) -> tuple[int, int]:
    """Return the last row and the last column that the first screen shows whole."""
    row = col = 0
    down = right = 0.0
    while (down := down + height(page, row + 1)) <= HIGH:
        row += 1
    while (right := right + width(page, col + 1)) <= WIDE:
        col += 1
    return row, col


@EACH
def test_frozen_panes_leave_most_of_a_small_screen(path):
    wrong = []
    for page in opened(path):
        rows, cols = frozen(page)
        high = sum(height(page, r) for r in range(1, rows + 1))
        wide = sum(width(page, c) for c in range(1, cols + 1))
        if high > HIGH / 2 or wide > WIDE / 3:
            wrong.append((page.title, round(high), round(wide)))
    assert not wrong


@EACH
def test_first_screen_of_each_sheet_shows_its_title_and_its_first_lines(path):
    """Title, what the sheet is for, and eight lines, or all that there are."""
    wrong, file = [], read(path)
    for page in opened(path):
        rows, _ = frozen(page)
        last, right = seen(page)
        at = {place[1] + 1 for place, cell in file.cells.items()
              if place[0] == page.title and place[2] < right and cell.value not in (None, "")}
        at |= {row for chart in page._charts for row in range(
            chart.anchor._from.row + 1, chart.anchor.to.row + 2)}
        below = {row for row in at if row > rows}
        shown = {row for row in below if row <= last}
        if 1 not in at or len(shown) < min(LINES, len(below)):
            wrong.append((page.title, len(shown)))
    assert not wrong


@EACH
def test_a_calculation_shows_the_value_of_the_first_section_type_at_once(path):
    """Label, symbol, formula, unit and type A stand beside one another on a small screen."""
    file, tried = read(path), 0
    for page in opened(path):
        if file.text(page.title, HEAD, 4) == "A":
            tried += 1
            assert seen(page)[1] >= 5, page.title
    assert tried > 12


@EACH
def test_start_answers_on_a_phone_from_stored_values(path):
    """Verdict, the four questions, what is wanted, weight and cost: two columns, 25 rows."""
    page, file = opened(path)["Start"], read(path)
    assert width(page, 1) + width(page, 2) <= PHONE
    said = {file.text("Start", row, 0): file.value("Start", row, 1) for row in range(25)}
    questions = [said[words] for words in said if str(words).endswith("?") and "input" not in words]
    assert said["Whole job"] in VERDICTS and len(questions) == 4
    assert all(word in VERDICTS for word in questions)
    total = next(value for label, value in said.items() if str(label).startswith("Client's total"))
    weight = said["Weight of all sections as launched"]
    if path.stem == "blank_start":
        assert said["Whole job"] == "NEEDS INPUT" and weight == total == "–"
        assert said["Is an input still wanted?"] == "see below"
    else:
        assert total > 1000 and weight > 1000
        assert said["Is an input still wanted?"] == "none"
    row = next(r for r in range(25) if file.text("Start", r, 0) == "Check that reads NOT OK")
    assert file.text("Start", row + 1, 0), "the first that fails is not told"


def test_charts_of_a_phone_are_not_needed_for_the_answer():
    """No chart stands over the answer on Start."""
    for path in OUTPUTS:
        page = opened(path)["Start"]
        assert page._charts and all(chart.anchor._from.row > 25 for chart in page._charts)
