"""The worked page: every line of a section type multiplies out to the result beside it."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from builder.engine.ironcalc_engine import Live
from builder.engine.values import Values
from builder.resolve.worked_sheet import FORMULA, NAME, NUMBERS, RESULT, WorkedSheet
from builder.sheets.book import model
from tests.outputs.arithmetic import Unreadable, worth
from tests.outputs.reading import NAMES
from tests.outputs.worked import resolved

LETTERS = "ABCDEF"
SHARE = 0.01
"""A line may differ from its result by its last digit or by this share of it."""
DASH = "–"


def differs(line: str, result: object, digits: int) -> bool:
    """Return whether a line does not come to the result shown beside it."""
    try:
        found = worth(line)
    except (Unreadable, ZeroDivisionError, TypeError, ValueError, IndexError):
        return True
    if isinstance(found, str) or isinstance(result, str):
        return found != result
    return abs(found - result) > max(10.0**-digits, SHARE * abs(result)) + 1e-9


def lines(page: WorkedSheet, values: Values) -> Iterator[tuple[object, str, object]]:
    """Yield row, line with the numbers put in, and result."""
    for row, y in page.lines.items():
        line = values.get((NAME, y, NUMBERS))
        if line is not None:
            yield row, line, values[NAME, y, RESULT]


def choose(live: Live, letter: str) -> Values:
    """Return the values with another section type chosen for the page."""
    m = model()
    live.set(m.typing.typed[m.input("worked_type")], letter)
    live.evaluate()
    return live.values()


@pytest.fixture(scope="module", params=NAMES)
def books(request):
    live = Live(resolved(request.param), names=False)
    return request.param, live


def test_every_line_multiplies_out(books):
    name, live = books
    page, wrong, tried = model().worked, [], 0
    for letter in LETTERS:
        values = choose(live, letter)
        used = values["Sections", 4, 4 + LETTERS.index(letter)]
        for row, line, result in lines(page, values):
            if line == DASH:
                assert result == DASH
                continue
            tried += 1
            if differs(line, result, row.digits):
                wrong.append(f"{letter} {row.where}: {line} is shown as {result}")
        assert used or all(line == DASH for _, line, _ in lines(page, values))
    assert wrong == []
    assert tried > 2000 or name == "blank_start"


def test_the_page_holds_every_row_of_the_section_sheets():
    m = model()
    rows = [r for s in m.calculation if s.scope == "section" for r in s.rows]
    assert [r for r in rows if r not in m.worked.lines] == []
    assert len(rows) > 2000


def test_the_page_shows_what_the_sheet_shows(books):
    _, live = books
    m = model()
    values = choose(live, "A")
    for row, y in m.worked.lines.items():
        sheet, line, col = m.places.rows[row]
        assert values[NAME, y, RESULT] == values.get((sheet, line, col), DASH), row.where


def test_the_formula_in_symbols_is_that_of_the_sheet():
    cells = {(c.row, c.col): c.content for c in _plan(NAME).cells}
    own = {}
    for plan in model().fixed:
        own |= {(plan.name, c.row, c.col): c.content for c in plan.cells if c.col == FORMULA}
    for row, y in model().worked.lines.items():
        sheet, line, _ = model().places.rows[row]
        if (sheet, line, FORMULA) in own:
            assert cells[y, FORMULA] == own[sheet, line, FORMULA]


@pytest.mark.parametrize(("line", "value"), [
    ("1,234.50 × 2 / 12", 205.75), ("2 + 3 × 4²", 50.0), ("−(2 + 1) / 3", -1.0),
    ("3.00 if 2.00 > 1.00 and “a” is “a”, else 4.00", 3.0), ("⌈2.10⌉ × ⌊2.90⌋", 6.0),
    ("least of (3.00, 1,400.00, 5.00)", 3.0), ("√(16.00) × |-2.00|", 8.0),
    ("2.00 × 12 in/ft", 24.0), ("7.30 to the nearest 0.50", 7.5), ("“wood”", "wood"),
    ("(2 if 1 ≥ 2, else 3) × 2^0.5", 3 * 2**0.5), ("62.4 pcf × 2.00", 124.8)])
def test_a_line_is_read_as_a_reader_does(line, value):
    assert worth(line) == (value if isinstance(value, str) else pytest.approx(value))


@pytest.mark.parametrize(("line", "result", "digits", "wrong"), [
    ("2.00 × 3.00", 6.0, 2, False), ("2.00 × 3.00", 6.07, 2, True),
    ("2.00 × 3.00", 6.05, 2, False), ("2.00 + 3.00", 6.0, 2, True), ("two", 2.0, 2, True),
    ("“a” if 1 > 2, else “b”", "b", 0, False), ("“a” if 1 > 2, else “b”", "a", 0, True)])
def test_a_line_that_does_not_come_out_is_found(line, result, digits, wrong):
    assert differs(line, result, digits) is wrong


def _plan(name: str):
    return next(plan for plan in model().fixed if plan.name == name)
