"""What Python would decide while a sheet is declared is refused with a sentence."""

from __future__ import annotations

import math

import pytest

from builder.language import Fault, greatest, least, sum_over, when
from builder.language.expressions import Num, Text, lift
from tests.language.trees import FIRST, NUMBERS

A, B, C, _, _ = NUMBERS

DECIDED = {
    "if": lambda: 1 if A > B else 2,
    "bool()": lambda: bool(A),
    "bool() of a formula": lambda: bool(A + B),
    "not": lambda: not A,
    "and": lambda: A > B and B > C,
    "or": lambda: A > B or B > C,
    "a < b < c": lambda: A < B < C,
    "min()": lambda: min(A, B),
    "max()": lambda: max(A, B),
    "max() of a series": lambda: max(FIRST),
    "sorted()": lambda: sorted([A, B]),
    "any()": lambda: any([A > B]),
    "all()": lambda: all([A > B]),
    "while": lambda: [None for _ in iter(lambda: A > B, True) if A],
}


@pytest.mark.parametrize("trap", DECIDED.values(), ids=DECIDED.keys())
def test_a_comparison_is_not_decided_in_python(trap):
    with pytest.raises(Fault, match=r"decided in the sheet.*when\(\), all_of\(\)"):
        trap()


def test_nothing_is_rounded_in_python():
    with pytest.raises(Fault, match=r"rounded inside a calculation; whole_up\(\)"):
        round(A / B)
    with pytest.raises(Fault, match=r"rounded inside a calculation"):
        round(A, 2)


def test_abs_points_to_absolute():
    with pytest.raises(Fault, match=r"use absolute\(\)"):
        abs(A - B)


@pytest.mark.parametrize("function", [math.sqrt, math.floor, math.ceil, float, int])
def test_functions_of_python_take_no_rows(function):
    with pytest.raises(TypeError):
        function(A)


@pytest.mark.parametrize("thing", [True, None, [1], {}, object(), math.nan, math.inf, -math.inf])
def test_what_is_no_quantity_is_refused(thing):
    with pytest.raises(Fault, match="no quantity"):
        lift(thing)
    with pytest.raises(Fault, match="no quantity"):
        A + thing
    with pytest.raises(Fault, match="no quantity"):
        when(A > 1, thing, 2)


def test_numbers_and_words_are_taken_from_both_sides():
    assert isinstance(lift(2), Num)
    assert isinstance(lift("red"), Text)
    for e in (2 + A, 2 - A, 2 * A, 2 / A):
        assert isinstance(e.a, Num)
        assert e.b is A


def test_a_row_can_be_a_key_and_equals_itself_only():
    assert {A: 1, B: 2}[A] == 1
    assert A == A
    assert A != B


@pytest.mark.parametrize(("sum_of", "says"), [
    (lambda: sum_over(A), "wants series of one length, is given none"),
    (lambda: sum_over(FIRST * greatest(FIRST, 0)), "row by row"),
    (lambda: sum_over(least(FIRST, A)), "row by row"),
    (lambda: sum_over(FIRST * type(FIRST)("K", FIRST.rows[:2])), r"given \[2, 4\]"),
])
def test_a_sum_over_series_takes_what_a_spreadsheet_takes_row_by_row(sum_of, says):
    with pytest.raises(Fault, match=says):
        sum_of()


@pytest.mark.parametrize("rows", [[], [A, A + B], [A, 2]])
def test_a_series_is_made_of_rows(rows):
    with pytest.raises(Fault, match="wants rows"):
        type(FIRST)("K", rows)
