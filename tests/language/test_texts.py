"""What the inspector reads: the formula in symbols, and the live line with the numbers put in."""

from __future__ import annotations

import math
import random
import re

import pytest

from builder.engine.compare import same
from builder.engine.ironcalc_engine import evaluate
from builder.language import (
    Ask,
    Constant,
    absolute,
    all_of,
    any_of,
    bare,
    greatest,
    largest,
    least,
    nearest,
    no,
    root,
    smallest,
    sum_over,
    tally,
    to_cent,
    when,
    whole_down,
    whole_up,
)
from builder.language.texts import numbers, symbols
from builder.resolve.places import Where
from tests.language import trees
from tests.language.trees import (
    COLOUR,
    FIRST,
    LENGTHS,
    NAMED,
    NUMBERS,
    PARTS,
    PLAIN,
    SECOND,
    Grower,
    place_of,
    values_in_limits,
    worth,
)

A, B, C, D, W = NUMBERS
L, WIDE = LENGTHS
KNOWN = {**dict.fromkeys(trees.ROWS, 1.0), A: -1.5, B: 2.0, C: 1234.5, D: -0.25, W: 3.0, L: 20.0,
         COLOUR: "blue", trees.SIZE: "large"}
HERE = Where(trees.PLACES, "Work", section=False)

SYMBOLS = [
    (B * W**3 / 12, "b × w³ / 12"),
    (5 * B * L**4 / (384 * C * W), "5 × b × L⁴ / (384 × c × w)"),
    (C / B / W, "c / b / w"),
    (C - (B - W), "c − (b − w)"),
    (C - B + W, "c − b + w"),
    (C * (B + W), "c × (b + w)"),
    (-(B**2), "−b²"),
    ((-B) ** 2, "(−b)²"),
    (-(B + W), "−(b + w)"),
    (-(B * W), "−(b × w)"),
    (C - -B, "c − (−b)"),
    (-B * W, "(−b) × w"),
    (B**-2, "b⁻²"),
    (B**0.5, "b⁰·⁵"),
    (B**PLAIN, "b¹·¹⁵"),
    (B**NAMED, "b^k_0"),
    ((B**W) ** 2, "(b^w)²"),
    (B ** (W**2), "b^(w²)"),
    (B**-W, "b^(−w)"),
    (PLAIN * B, "1.15 × b"),
    (L.in_("in"), "L × 12 in/ft"),
    ((L + WIDE).in_("in"), "(L + B) × 12 in/ft"),
    ((L * WIDE).in_("in²"), "L × B × 144 in²/ft²"),
    (C / bare(L.in_("in"), "in"), "c / (L × 12 in/ft)"),
    (root(B / W), "√(b / w)"),
    (absolute(B - W), "|b − w|"),
    (least(B, W + 1), "least of (b, w + 1)"),
    (greatest(B, 0) / W, "greatest of (b, 0) / w"),
    (whole_up(B / W), "⌈b / w⌉"),
    (whole_down(B + W) * 2, "⌊b + w⌋ × 2"),
    (when(B > W, B, W), "b if b > w, else w"),
    (C * when(B > W, B, W), "c × (b if b > w, else w)"),
    (when(all_of(B > W, C <= 1), 1, 0), "1 if b > w and c ≤ 1, else 0"),
    (when(all_of(any_of(B > W, C < 1), A >= 2), 1, 0), "1 if (b > w or c < 1) and a ≥ 2, else 0"),
    (no(COLOUR.is_("red")), "not (“Colour” is “red”)"),
    ((B > W) * C, "(b > w) × c"),
    (nearest(B, W), "b to the nearest w"),
    (C * nearest(B, W), "c × (b to the nearest w)"),
    (to_cent(B) + to_cent(W), "(b to the cent) + (w to the cent)"),
    (sum_over(FIRST * SECOND), "Σ(M × N)"),
    (largest(FIRST), "largest M"),
    (smallest(FIRST) / B, "(smallest M) / b"),
    (largest(FIRST) ** 2, "(largest M)²"),
    (PARTS.find(COLOUR, " small")["size"] * B, "“size” of Parts × b"),
    (PARTS.at(B + 1)["rise"] - PARTS.at(B)["rise"], "“rise” a line on − “rise”"),
    (tally(PARTS, colour=COLOUR, rise_below=B + 1) - 1,
     "(lines of Parts with colour is “Colour” and rise < b + 1) − 1"),
]


@pytest.mark.parametrize(("tree", "text"), SYMBOLS, ids=[s[1] for s in SYMBOLS])
def test_in_symbols(tree, text):
    assert symbols(tree) == text


def shown(*some, known=None):
    """Return what the lines with the numbers put in show."""
    found = evaluate(trees.formulas_book([numbers(e, HERE) for e in some], known or KNOWN))
    return [found[place_of(k)] for k in range(len(some))]


def test_with_the_numbers_put_in():
    rough = Ask(None, "Rough", "q", "", least=0, most=9, digits=1)
    trees.PLACES.rows[rough] = trees.PLACES.rows[W]
    try:
        lines = shown(B * W**3 / 12, C - A, A**2, L.in_("in"), rough * PLAIN * NAMED,
                      when(COLOUR.is_("blue"), B, W), whole_up(C), B - COLOUR.is_("red"),
                      known={**KNOWN, rough: 3.0})
    finally:
        del trees.PLACES.rows[rough]
    assert lines == [
        "2.000000 × 3.000000³ / 12", "1,234.500000 − -1.500000", "(-1.500000)²",
        "20.000000 × 12 in/ft", "3.0 × 1.15 × 0.375",
        "2.000000 if “blue” is “blue”, else 3.000000", "⌈1,234.500000⌉",
        "2.000000 − (“blue” is “red”)",
    ]


def test_series_and_tables_show_what_they_come_to():
    lines = shown(2 * sum_over(FIRST * SECOND), largest(FIRST) ** 2, tally(PARTS, colour=COLOUR),
                  PARTS.find(COLOUR, " large")["length"] / L, PARTS.find(COLOUR, " large").number)
    assert lines == ["2 × 4.00", "(1.000000)²", "2", "6.00 / 20.000000", "6"]


def test_a_negative_value_under_a_power_takes_brackets_and_no_other_does():
    assert shown(D**2, FIRST[0] ** 2, B**2) == ["(-0.250000)²", "1.000000²", "2.000000²"]


def test_a_plain_constant_with_a_unit_takes_brackets_under_a_power():
    weight = Constant("w", "Weight of water", "", "pcf", 62.4, "own", "", "")
    assert symbols(weight * B) == "62.4 pcf × b"
    assert symbols(weight**2) == "(62.4 pcf)²"


@pytest.mark.parametrize(("value", "text"), [(0.375, "0.375"), (1e-5, "0.000010"), (12, "12"),
                                             (1600000.0, "1,600,000"), (2 / 3, "0.666667")])
def test_a_named_constant_shows_its_decimals(value, text):
    named = Constant("k", "Constant", "k", "", value, "own", "", "")
    text = text.rstrip("0") if "." in text else text
    trees.PLACES.rows[named] = trees.PLACES.rows[B]
    try:
        formula = numbers(named, HERE)
    finally:
        del trees.PLACES.rows[named]
    found = evaluate(trees.formulas_book([formula], {**KNOWN, B: value}))
    assert found[place_of(0)] == text


def test_a_long_line_is_cut_into_texts_that_a_formula_may_hold():
    constant = Constant("k", "Constant", 'so "named" ' * 50, "", 1, "own", "", "")
    constant.plain = True
    formula = numbers(constant + B, HERE)
    assert all(len(t.replace('""', '"')) <= 252 for t in re.findall(r'"(?:[^"]|"")*"', formula))
    found = evaluate(trees.formulas_book([formula], KNOWN))[place_of(0)]
    assert found == 'so "named" ' * 50 + " + 2.000000"


RAISED = {"⁰": "0", "¹": "1", "²": "2", "³": "3", "⁴": "4", "⁵": "5", "⁶": "6", "⁷": "7",
          "⁸": "8", "⁹": "9", "·": ".", "⁻": "-"}
SIGNS = {"×": "*", "−": "-", ",": "", "√": "sqrt", "^": "**"}


def as_python(line: str) -> str:
    """Read a line of plain arithmetic as Python: it binds signs and powers as a reader does."""
    line = re.sub(r" in[²³⁴]?/ft[²³⁴]?", "", line)
    line = re.sub(f"[{''.join(RAISED)}]+",
                  lambda m: f"**({''.join(RAISED[c] for c in m[0])})", line)
    return "".join(SIGNS.get(c, c) for c in line)


@pytest.fixture(scope="module")
def arithmetic():
    """Values of the rows, and trees of plain arithmetic with their values."""
    pick = random.Random(7).randrange
    known, grower = values_in_limits(pick), Grower(pick, plain=True)
    known |= {A: -1.5, B: 2.25, C: 40.125, D: -0.375, W: 3.0}
    grown = [grower.number(1 + k % 4) for k in range(500)]
    return known, [(e, v) for e in grown if (v := worth(e, known)) is not None]


def test_symbols_read_as_arithmetic_give_the_value(arithmetic):
    known, pairs = arithmetic
    names = {row.symbol: value for row, value in known.items() if not isinstance(value, str)}
    names |= {"k_0": NAMED.value, "sqrt": math.sqrt}
    assert len(pairs) > 350
    wrong = [f"{symbols(e)} is {value}" for e, value in pairs
             if not same(eval(as_python(symbols(e)), dict(names)), value)]
    assert wrong == []


def test_numbers_read_as_arithmetic_give_the_value(arithmetic):
    known, pairs = arithmetic
    found = evaluate(trees.formulas_book([numbers(e, HERE) for e, _ in pairs], known))
    lines = [found[place_of(k)] for k in range(len(pairs))]
    wrong = [f"{line} is {value}" for line, (_, value) in zip(lines, pairs, strict=True)
             if not same(eval(as_python(line), {"sqrt": math.sqrt}), value)]
    assert wrong == []


def test_every_random_tree_has_a_live_line():
    pick = random.Random(11).randrange
    known, grower = values_in_limits(pick), Grower(pick)
    grown = [e for e in (grower.number(1 + k % 3) for k in range(300))
             if worth(e, known) is not None]
    found = evaluate(trees.formulas_book([numbers(e, HERE) for e in grown], known))
    assert [found[place_of(k)] for k in range(len(grown))
            if found[place_of(k)].startswith("#")] == []
