"""The quick engine: what goes in, what comes out, and what it refuses."""

from __future__ import annotations

import subprocess
import sys

import pytest

from builder.engine.ironcalc_engine import Live, evaluate
from builder.engine.values import EngineError
from tests.engine import handmade

X = ("Data", 0, 6)
DOUBLE, TEXT, EMPTY, JOIN, NAMED = (("Work", row, 1) for row in range(5))
CASES = [
    ("Data!$G$1*2", 0),
    ("ISTEXT(Data!$G$1)*1", 0),
    ("ISBLANK(Data!$G$1)*1", 0),
    ('Data!$G$1&"!"', ""),
    ("x_in+1", 0),
]


@pytest.fixture
def live():
    return Live(handmade.made_book(CASES))


def after(live, value, **how):
    live.set(X, value, **how)
    live.evaluate()
    return [live.value(place) for place in (DOUBLE, TEXT, EMPTY, JOIN)]


def test_a_changed_number_is_followed(live):
    assert after(live, 4)[0] == 8.0
    assert after(live, 5.5)[0] == 11.0
    assert live.value(NAMED) == 6.5


def test_none_empties_a_cell(live):
    assert after(live, None) == [0.0, 0.0, 1.0, "!"]
    assert live.value(X) is None


@pytest.mark.parametrize("text", ["=1+1", "12", "TRUE", "'quoted", "1E3", "=", ""])
def test_a_text_stays_a_text(live, text):
    assert after(live, text)[1:] == [1.0, 0.0, text + "!"]
    assert live.value(X) == text


def test_a_text_is_read_as_typed_only_if_asked(live):
    assert after(live, "12", as_typed=True) == [24.0, 0.0, 0.0, "12!"]


def test_a_truth_value_is_no_number(live):
    live.set(X, True)
    assert live.value(X) is True


def test_numbers_come_out_with_15_digits(live):
    assert after(live, 0.1 + 0.2)[0] == 0.6
    assert live.value(X) == 0.3


def test_values_gives_every_formula_cell_and_no_other(live):
    live.evaluate()
    assert list(live.values()) == [DOUBLE, TEXT, EMPTY, JOIN, NAMED]
    assert live.values([X]) == {X: 7.25}


@pytest.mark.parametrize("number", [float("nan"), float("inf")])
def test_a_number_no_cell_can_hold_is_refused(live, number):
    with pytest.raises(EngineError, match="Data!G1"):
        live.set(X, number)


def test_an_unreadable_formula_is_refused():
    with pytest.raises(EngineError, match=r"Work!B2: cannot be read as a formula: =1\+\*2"):
        evaluate(handmade.made_book([("1+2", 3), ("1+*2", 0)]))


def test_a_formula_without_its_sign_is_refused():
    book = handmade.made_book()
    cell = book.sheets[2].cells[1]
    object.__setattr__(cell, "content", cell.content[1:])
    with pytest.raises(EngineError, match="Work!B1: a formula must begin with '='"):
        evaluate(book)


@pytest.mark.parametrize("name", ["DCR1", "two words", "TRUE"])
def test_a_name_that_is_no_name_is_refused(name):
    book = handmade.made_book()
    book.names[name] = X
    with pytest.raises(EngineError, match=name):
        evaluate(book)


def test_an_error_in_the_arithmetic_is_what_the_cell_shows():
    assert evaluate(handmade.made_book([("1/Data!$G$7", 0)])) == {DOUBLE: "#DIV/0!"}


def test_the_quick_engine_loads_none_of_the_slow_libraries():
    slow = ["pandas", "numpy", "pint", "formulas", "openpyxl", "pytest"]
    program = (
        "import sys, builder.engine.ironcalc_engine, builder.engine.stored,"
        "builder.engine.compare, builder.engine.libreoffice, builder.engine.formulas_engine;"
        f"print([m for m in {slow} if m in sys.modules])"
    )
    ended = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True
    )
    assert ended.stdout.strip() == "[]"
