"""Rows are tall enough for what they hold."""

from __future__ import annotations

import pytest

from builder.resolve.cells import Cell, SheetPlan
from builder.workbook.heights import LINE, column_room, lines, row_heights, text_width
from builder.workbook.styles import STYLES


def plan(*cells: Cell, widths=(28.0,), heights=None) -> SheetPlan:
    return SheetPlan("S", "S", list(cells), widths=list(widths), heights=heights or {})


def test_ten_digits_fill_ten_digits_of_width():
    # 5.56 pt = 7.41 px a digit on paper, and some slack.
    assert text_width("0123456789") == pytest.approx(74.1 * 1.03, abs=0.2)


def test_the_widths_cover_the_printable_letters():
    assert text_width("~") != text_width("é") == text_width("ж")
    assert text_width("“A”") < text_width("éAé"), "signs of the formulas have widths of their own"
    assert text_width("WWWW") > text_width("iiii") * 4
    assert text_width("OK", bold=True) > text_width("OK")


def test_room_of_a_column():
    assert column_room(28) == 195
    assert column_room(28, indent=1) == 186


@pytest.mark.parametrize(
    ("text", "count"),
    [
        ("short", 1),
        ("one two three", 2),
        ("one\ntwo", 2),
        ("one-two-three", 2),
        ("w" * 30, 5),
        ("a b", 1),
        ("aaaaaaaaaa bbbbbbbbbb", 2),
    ],
)
def test_lines_in_a_narrow_column(text, count):
    assert lines(text, 78.0) == count


def test_a_long_label_makes_its_row_taller():
    label = "Weight of the walkway with everything on it, in service"
    short = Cell(1, 0, "text", "Weight", "label")
    assert row_heights(plan(Cell(0, 0, "text", label, "label"), short), {}) == {0: 2 * LINE}


def test_text_that_does_not_wrap_does_not():
    assert row_heights(plan(Cell(0, 0, "text", "word " * 50, "text")), {}) == {}


def test_a_title_has_the_height_of_its_letters():
    assert row_heights(plan(Cell(0, 0, "text", "T", "title")), {}) == {0: 18.0}


def test_the_plan_s_own_height_stands():
    cell = Cell(0, 0, "text", "word " * 50, "label")
    assert row_heights(plan(cell, heights={0: 20, 5: 30}), {}) == {0: 20, 5: 30}


def test_a_verdict_keeps_to_one_line():
    """The word changes with the inputs and the row does not follow: the word is shrunk."""
    cell = Cell(0, 0, "formula", "=A2", "verdict")
    assert row_heights(plan(cell, widths=[8.5]), {("S", 0, 0): "NEEDS INPUT"}) == {}
    assert STYLES["verdict"]["shrink"] and not STYLES["verdict"].get("text_wrap")


def test_a_formula_s_text_is_measured():
    cell = Cell(0, 0, "formula", "=A2", "wrap")
    # Five words of 36 px stand in 195 px.
    assert row_heights(plan(cell), {("S", 0, 0): "word " * 20}) == {0: 4 * LINE}
    assert row_heights(plan(cell), {("S", 0, 0): 12345.678}) == {}


def test_a_link_s_text_is_measured_without_its_target():
    cell = Cell(0, 0, "link", "Checks!A1000|See the verdict on Checks", "link")
    assert row_heights(plan(cell), {}) == {}
