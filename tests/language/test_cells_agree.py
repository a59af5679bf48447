"""The cell formula and the value in Python are two readings of one tree: they must agree."""

from __future__ import annotations

import random
import re

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from openpyxl.formula import Tokenizer

from builder.engine import gnumeric, libreoffice
from builder.engine.compare import same
from builder.engine.ironcalc_engine import evaluate
from builder.language import (
    all_of,
    greatest,
    least,
    nearest,
    sum_over,
    to_cent,
    when,
    whole_down,
    whole_up,
)
from builder.language.functions import FUNCTIONS
from builder.workbook import write
from tests.language import trees
from tests.language.trees import FIRST, NUMBERS, Grower, place_of, values_in_limits, worth, written

TREES_IN_A_BATCH = 10
A, B, C, D, W = NUMBERS
KNOWN = {**dict.fromkeys(trees.ROWS, 1.0), A: -1.5, B: 2.0, C: 9.0, D: -0.25, W: 3.0,
         trees.COLOUR: "blue", trees.SIZE: "large"}


def batch(pick, count):
    """Return values of the rows, and (formula, value) of the trees that have one."""
    known, grower = values_in_limits(pick), Grower(pick)
    grown = [grower.number(1 + k % 4) for k in range(count - 2)]
    grown += [grower.test(2), grower.word(2)]
    pairs = [(written(e), worth(e, known)) for e in grown]
    return known, [(formula, value) for formula, value in pairs if value is not None]


def wrong(pairs, found):
    return [f"={formula} gives {found[place_of(k)]}, Python {value}"
            for k, (formula, value) in enumerate(pairs) if not same(found[place_of(k)], value)]


@settings(max_examples=120, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.randoms(use_true_random=False))
def test_random_trees_in_ironcalc(source):
    known, pairs = batch(source.randrange, TREES_IN_A_BATCH)
    found = evaluate(trees.formulas_book([f for f, _ in pairs], known))
    assert wrong(pairs, found) == []


@pytest.fixture(scope="module")
def seeded():
    """Some hundreds of trees from a fixed seed, over one set of values."""
    return batch(random.Random(20260115).randrange, 700)


def test_most_trees_can_be_compared(seeded):
    # Otherwise the comparisons would be of little but nothing.
    assert len(seeded[1]) > 0.75 * 700


def test_the_trees_hold_every_form(seeded):
    text = " ".join(formula for formula, _ in seeded[1])
    for entry in FUNCTIONS.values():
        assert f"{re.search('[A-Z]+', entry.cell)[0]}(" in text
    for form in ("INDEX(", "MATCH(", "SUMPRODUCT(", "MAX(Data", "MIN(Data", "+1E-9,Data", "*12",
                 "*144", "/12", "^2", "^(-1)", "-1E-9", '&" "&', "(-Data"):
        assert form in text
    assert set(Grower(lambda n: 0).calls(0)) == set(FUNCTIONS)


def test_seeded_trees_in_ironcalc(seeded):
    known, pairs = seeded
    assert wrong(pairs, evaluate(trees.formulas_book([f for f, _ in pairs], known))) == []


@pytest.mark.parametrize("engine", [
    pytest.param(libreoffice, marks=pytest.mark.needs("soffice"), id="libreoffice"),
    pytest.param(gnumeric, marks=pytest.mark.needs("ssconvert"), id="gnumeric"),
])
def test_seeded_trees_in_other_programs(engine, seeded, tmp_path):
    known, pairs = seeded
    book = trees.formulas_book([f for f, _ in pairs], known)
    path = tmp_path / "trees.xlsx"
    # What is stored is wrong on purpose: a program that believes it is caught.
    write(book, {place_of(k): 4321.0 for k in range(len(pairs))}, path)
    found = engine.evaluate_files([path], tmp_path / "recalculated")[path]
    assert wrong(pairs, found) == []


def test_every_formula_is_one_that_can_be_taken_apart(seeded):
    for formula, _ in seeded[1]:
        parts = Tokenizer(f"={formula}").items
        assert "".join(p.value for p in parts) == formula
        depth = 0
        for part in parts:
            depth += {"OPEN": 1, "CLOSE": -1}.get(part.subtype, 0)
            assert depth >= 0
        assert depth == 0
        assert all(p.subtype != "ERROR" and p.type != "WHITE-SPACE" for p in parts)


GOLDEN = [
    (-(A**2), "(-(Data!$B$2^2))", -2.25),
    ((-A) ** 2, "(-Data!$B$2)^2", 2.25),
    (0 - A**2, "0-Data!$B$2^2", -2.25),
    ((B**W) ** 2, "(Data!$B$3^Data!$B$6)^2", 64),
    (B ** (W**2), "Data!$B$3^(Data!$B$6^2)", 512),
    (B**W**2, "Data!$B$3^(Data!$B$6^2)", 512),
    (B**-2, "Data!$B$3^(-2)", 0.25),
    (B ** (-W), "Data!$B$3^(-Data!$B$6)", 0.125),
    (C - (B - W), "Data!$B$4-(Data!$B$3-Data!$B$6)", 10),
    (C - B - W, "Data!$B$4-Data!$B$3-Data!$B$6", 4),
    (C / (B * W), "Data!$B$4/(Data!$B$3*Data!$B$6)", 1.5),
    (C / B * W, "Data!$B$4/Data!$B$3*Data!$B$6", 13.5),
    (C / (B / W), "Data!$B$4/(Data!$B$3/Data!$B$6)", 13.5),
    (C - -A, "Data!$B$4-(-Data!$B$2)", 7.5),
    (C / nearest(B, W), "Data!$B$4/(INT(Data!$B$3/Data!$B$6+0.500000001)*Data!$B$6)", 3),
    (B * to_cent(C), "Data!$B$3*INT(Data!$B$4*100+0.500001)/100", 18),
    (B > W, "(Data!$B$3>Data!$B$6+1E-9)*1", 0),
    ((B > W) * C, "(Data!$B$3>Data!$B$6+1E-9)*Data!$B$4", 0),
    (sum_over(FIRST > 0), "SUMPRODUCT((Data!$B$9:$B$12>0+1E-9)*1)", 4),
    (when(B < W, 1, 0), "IF(Data!$B$3<Data!$B$6-1E-9,1,0)", 1),
]


@pytest.mark.parametrize(("tree", "formula", "value"), GOLDEN, ids=[g[1] for g in GOLDEN])
def test_brackets_stand_where_a_spreadsheet_needs_them(tree, formula, value):
    assert written(tree) == formula
    assert worth(tree, KNOWN) == value
    assert evaluate(trees.formulas_book([formula], KNOWN)) == {place_of(0): value}


@pytest.mark.parametrize(("x", "up", "down"), [
    (0, 0, 0), (3, 3, 3), (3 + 1e-12, 3, 3), (3 - 1e-12, 3, 3), (3.001, 4, 3), (2.999, 3, 2),
    (-2.5, -2, -3), (-3, -3, -3), (1e-6, 1, 0), (0.1 + 0.2 - 0.3, 0, 0)])
def test_pieces_are_counted_past_the_last_bit(x, up, down):
    known = {**KNOWN, A: x}
    book = trees.formulas_book([written(whole_up(A)), written(whole_down(A))], known)
    found = evaluate(book)
    assert [found[place_of(0)], found[place_of(1)]] == [up, down]
    assert [worth(whole_up(A), known), worth(whole_down(A), known)] == [up, down]


@pytest.mark.parametrize(("x", "line"), [(1.25, 3), (1.25 - 1e-12, 3), (1.249, 2), (99, 6)])
def test_the_line_not_above_a_value_is_found_past_the_last_bit(x, line):
    found = trees.PARTS.below("rise", A).number
    assert evaluate(trees.formulas_book([written(found)], {**KNOWN, A: x})) == {place_of(0): line}
    assert worth(found, {**KNOWN, A: x}) == line


def test_a_test_among_quantities_is_written_as_a_number():
    """Gnumeric passes over TRUE in MAX and MIN, the other engines count it as 1."""
    assert written(greatest(0, A > 1)) == "MAX(0,(Data!$B$2>1+1E-9)*1)"
    assert written(least(A, all_of(A > 1, A < 3))) == (
        "MIN(Data!$B$2,(AND(Data!$B$2>1+1E-9,Data!$B$2<3-1E-9))*1)")


def test_a_tree_of_one_row_and_floor():
    assert written(greatest(A, 0)) == "MAX(Data!$B$2,0)"
