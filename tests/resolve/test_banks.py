"""Lines of a ledger with more columns than stand side by side: banks, one below the other."""

from __future__ import annotations

from datetime import datetime
from types import ModuleType

import pytest

from builder.engine.ironcalc_engine import evaluate
from builder.jobs import Job
from builder.language import Fault, Series, Sheet, sum_over, total
from builder.resolve.book import Model
from builder.resolve.frame import HEAD
from builder.workbook.limits import faults
from tests.resolve.tiny import INPUTS, NEEDS, SECTION, declared
from tests.resolve.tiny import modules as tiny_modules

COLUMNS = {"a": "First", "b": "Second", "c": "Third", "d": "Fourth", "e": "Fifth"}


def book_of(beside: int):
    """Return the module of the ledger, the resolved book, and its values."""
    m = tiny_modules()
    made = ModuleType("sums")
    s = made.sheet = Sheet("Sums", "Sums", scope="ledger", columns=COLUMNS, beside=beside)
    s.block("Line by line")
    s.heads(COLUMNS)
    made.lines = []
    for number in range(1, 4):
        line = s.ledger(f"Line {number}", "", "", "own")
        before = made.lines[-1]["e"] if made.lines else total(m.sec.floats, m.sec.count)
        line.add("a", before + number, "", 0)
        for x, y in zip("abcd", "bcde", strict=True):
            line.add(y, 2 * line[x], "", 0)
        made.lines.append(line)
    s.block("In all")
    s.heads({"a": "Sum"})
    made.all = s.ledger("All", "", "", "own", a=(
        sum_over(Series("e", [line["e"] for line in made.lines])), "", 0))
    model = Model(declared(m, calculation=(m.work, m.floating, m.takeoff, made)))
    book = model.book(Job("sums", "Sums", "About.", datetime(2026, 5, 1), dict(INPUTS),
                          (dict(SECTION),)))
    return made, model.places, book, evaluate(book)


def test_the_numbers_are_those_of_one_bank():
    found = []
    for beside in (0, 2, 3):
        made, places, book, values = book_of(beside)
        assert faults(book, values) == []
        rows = [row for line in (*made.lines, made.all) for row in line.rows.values()]
        found.append([values[places.rows[row]] for row in rows])
    assert found[0] == found[1] == found[2] and NEEDS not in found[0]
    assert all(isinstance(value, float | int) and value > 0 for value in found[0])


def test_each_bank_has_its_heads_labels_and_columns_under_one_another():
    made, places, book, _ = book_of(2)
    sheet = next(s for s in book.sheets if s.name == "Sums")
    cells = {(c.row, c.col): c.content for c in sheet.cells if c.kind == "text"}
    for bank, names in enumerate((("First", "Second"), ("Third", "Fourth"), ("Fifth",))):
        _, top, _ = places.rows[made.lines[0][list(COLUMNS)[2 * bank]]]
        assert [cells.get((top - 1, 2 + k)) for k in range(2)] == [*names, None][:2]
        assert [cells[top + k, 0] for k in range(3)] == ["Line 1", "Line 2", "Line 3"]
        assert (top + 3, 0) not in cells or bank == 2
    for column in COLUMNS:
        spots = [places.rows[line[column]] for line in made.lines]
        assert [y - spots[0][1] for _, y, _ in spots] == [0, 1, 2]
        assert {x for _, _, x in spots} == {2 + list(COLUMNS).index(column) % 2}
    # The heads of the page name no column of one bank.
    assert [cells[HEAD, x] for x in (2, 3)] == ["Column 1", "Column 2"]


def test_a_sheet_without_banks_names_its_columns_in_its_heads():
    _, _, book, _ = book_of(0)
    sheet = next(s for s in book.sheets if s.name == "Sums")
    heads = [c.content for c in sheet.cells if c.row == HEAD and c.col in range(2, 7)]
    assert heads == list(COLUMNS.values())


def test_heads_of_a_column_that_is_not_there_are_a_fault():
    sheet = Sheet("Sums", "Sums", scope="ledger", columns=COLUMNS, beside=2)
    with pytest.raises(Fault, match="heads for"):
        sheet.heads({"f": "Sixth"})
