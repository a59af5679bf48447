"""Ranges: what is proved holds for every input within its limits, and what is not is a fault."""

from __future__ import annotations

import math
import random
from types import ModuleType

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from builder.language import (
    Ask,
    Constant,
    Fault,
    Series,
    Sheet,
    Table,
    absolute,
    adopt,
    arc_cosine,
    arc_tangent,
    choose,
    exponential,
    greatest,
    largest,
    least,
    logarithm,
    nearest,
    root,
    smallest,
    sum_over,
    tally,
    tangent,
    to_cent,
    when,
    whole_down,
    whole_up,
)
from builder.language.ranges import Ranges
from builder.language.rows import Calculated
from builder.language.units import TEXT
from builder.language.values import value_of
from builder.resolve.graph import faults_of
from tests.language.trees import COLOUR, COLOURS, PARTS, SIZE, Grower, values_in_limits

INF = math.inf


def proved(e):
    """Return the range of a tree, or None where it cannot be proved."""
    ranges = Ranges()
    try:
        span = ranges.span(e)
    except Fault:
        return None
    assert ranges.faults == []
    return span


def outside(e, span, known):
    """Return the value of a tree where it leaves its range; None where it keeps to it."""
    value = value_of(e, dict(known))
    if isinstance(value, str):
        return None
    room = 1e-9 * max(1.0, *(abs(s) for s in span if math.isfinite(s)), 0.0)
    return None if span[0] - room <= value <= span[1] + room else value


@settings(max_examples=250, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.randoms(use_true_random=False))
def test_random_trees_keep_to_their_range(source):
    pick = source.randrange
    e = Grower(pick).number(1 + pick(4))
    span = proved(e)
    if span is not None:
        for _ in range(4):
            assert outside(e, span, values_in_limits(pick)) is None


def test_thousands_of_seeded_trees_keep_to_their_range():
    pick = random.Random(3).randrange
    grower = Grower(pick)
    grown = [(e, proved(e)) for e in (grower.number(1 + k % 4) for k in range(4000))]
    kept = [(e, span) for e, span in grown if span is not None]
    assert 1500 < len(kept) < 3900
    left = [(span, found) for e, span in kept for _ in range(5)
            if (found := outside(e, span, values_in_limits(pick))) is not None]
    assert left == []


def ask(low, high, symbol="x", unit=""):
    return Ask(None, f"Input {symbol}", symbol, unit, least=low, most=high)


def rows(low, high, count=3):
    return Series("M", [ask(low, high, f"M{k}") for k in range(count)])


X = ask(-2, 3)
Y = ask(1, 4, "y")
Z = ask(0, 9, "z")
WIDE = ask(-1e200, 1e200, "q")

SPANS = [
    (X + Y, (-1, 7)), (X - Y, (-6, 2)), (X * Y, (-8, 12)), (X / Y, (-2, 3)), (-X, (-3, 2)),
    (Y / -Y, (-4, -0.25)), (X * X, (0, 9)), (X**2, (0, 9)), (X**3, (-8, 27)), ((-Y) ** 2, (1, 16)),
    (Y**-1, (0.25, 1)), ((-Y) ** -1, (-1, -0.25)), ((-Y) ** -2, (1 / 16, 1)), (Z**0.5, (0, 3)),
    (Y**X, (1 / 16, 64)), (Y**0, (1, 1)), (WIDE**3, (-INF, INF)), (WIDE**2, (0, INF)),
    ((X > 1) * Y, (0, 4)), (absolute(X), (0, 3)), (absolute(-Y), (1, 4)),
    (least(X, Y), (-2, 3)), (greatest(X, Y), (1, 4)), (greatest(X, 0), (0, 3)), (root(Z), (0, 3)),
    (when(X > 0, Y, Z), (0, 9)), (choose(least(greatest(whole_down(X), 1), 2), Y, Z), (0, 9)),
    (whole_up(X / 4), (0, 1)), (whole_up(Z), (0, 9)), (whole_up(Y + 0.5), (2, 5)),
    (whole_down(X / 4), (-1, 0)), (whole_down(Y + 0.5), (1, 4)), (nearest(Z, Y), (0, 13)),
    (to_cent(X), (-2, 3)), (exponential(X), (math.exp(-2), math.exp(3))),
    (logarithm(Y), (0, math.log(4))), (arc_tangent(X), (math.atan(-2), math.atan(3))),
    (arc_cosine(X / 4), (math.acos(0.75), math.acos(-0.5))),
    (tangent(X / 4), (math.tan(-0.5), math.tan(0.75))),
    (sum_over(rows(1, 2) * rows(-1, 3)), (-6, 18)), (sum_over(rows(1, 2)), (3, 6)),
    (largest(rows(1, 2)), (1, 2)), (smallest(rows(-4, 2)), (-4, 2)),
    (PARTS.find(COLOUR, " ", SIZE)["size"], (-1, 4)),
    (PARTS.find(COLOUR, " ", SIZE).number, (1, 6)),
    (PARTS.below("rise", X)["length"], (0.25, 10)), (tally(PARTS, rise_below=X), (0, 6)),
    (ask(4, 8, unit="ft").in_("in"), (48, 96)), (ask(12, 24, unit="in").in_("ft"), (1, 2)),
    (Constant("k", "k", "k", "", 1.5, "", "", "") * Y, (1.5, 6)),
    (Ask(None, "With a default", "d", "", least=1, most=4, default=Z), (0, 9)),
]


@pytest.mark.parametrize(("tree", "span"), SPANS)
def test_the_range_is_as_reckoned_by_hand(tree, span):
    assert proved(tree) == pytest.approx(span)


def test_a_sum_within_a_sum_does_not_shorten_it():
    short = Calculated(None, "Short", "s", "", sum_over(rows(1, 2, 2)))
    long = rows(0, 3, 40)
    assert proved(sum_over(long * short)) == (0, 40 * 3 * 4)
    assert proved(sum_over(short * long)) == (0, 40 * 3 * 4)


def test_what_the_reader_may_type_over_ranges_as_far_as_he_may():
    table = Table("t", "T", "own", "k", {"size": ""}, ["a"], [(2,)])
    assert proved(table.at(1)["size"]) == (2, 2)
    assert proved(table.editable(size=(0, 5)).at(1)["size"]) == (0, 5)


FREE = Ask(None, "Free", "", TEXT, free=True, most=9)
ODD = Table("odd", "Odd", "own", "k", {"size": ""}, ["a", "b"], [(2,), (1,)])
EDITED = Table("edited", "E", "own", "k", {"size": ""}, ["a", "b"], [(1,), (2,)]).editable(
    size=(0, 9))
UNPROVED = [
    (Y / X, "the divisor x may be 0 (it runs -2 to 3)"),
    (Y / Z, "the divisor z may be 0 (it runs 0 to 9)"),
    (Y / (Z - 1), "the divisor z − 1 may be 0"),
    (Y / (Y - Y), "the divisor y − y may be 0"),
    (root(X), "√(x): the root may be of a negative number (-2)"),
    (logarithm(Z), "ln(z): the logarithm may be of 0 or less (0)"),
    (arc_cosine(Y), "the arc cosine may be of a number outside -1 to 1 (1 to 4)"),
    (tangent(X), "the tangent may be of an angle near a right angle (-2 to 3)"),
    (X**-1, "x⁻¹: the base may be 0"),
    (X**0, "x⁰: the base may be 0"),
    (X**0.5, "the base may be negative (-2)"),
    (Z**X, "z^x: the base may be 0 or less (0)"),
    (nearest(Y, Z), "the step may be 0 or less (0)"),
    (choose(Y, 1, 2, 3), "the number runs 1 to 4, there are 3 to choose from"),
    (PARTS.at(Z)["size"], "the line z runs 0 to 9; table parts has 6"),
    (PARTS.at(Y + 3)["colour"].is_("red"), "the line y + 3 runs 4 to 7; table parts has 6"),
    (PARTS.below("rise", X - 1)["size"], "x − 1 may be -3, below the first entry -2 of rise"),
    (PARTS.below("size", Y)["rise"], "column size of table parts does not rise"),
    (ODD.below("size", Y + 2)["size"], "column size of table odd does not rise"),
    (EDITED.below("size", Y)["size"], "column size of table edited may be typed over"),
    (PARTS.find(COLOUR)["size"], "'blue' may be looked for in table parts, which has no such key"),
    (PARTS.find(COLOUR, " ", COLOUR)["size"], "which has no such key"),
    (PARTS.find(FREE)["size"], "the words looked for in table parts cannot be told beforehand"),
    (tally(PARTS, rise_below=1 / Z), "the divisor z may be 0"),
    (PARTS.find(when(1 / Z > 2, "red", "blue"), " small")["size"], "the divisor z may be 0"),
    (when(Z > 0, 1 / Z, 0), "the divisor z may be 0"),
    (sum_over(rows(1, 2) / rows(0, 2)), "the divisor M may be 0"),
]


@pytest.mark.parametrize(("tree", "says"), UNPROVED, ids=[u[1] for u in UNPROVED])
def test_what_cannot_be_proved_is_a_fault(tree, says):
    ranges = Ranges()
    row = Calculated(Sheet("Sheet1st", "S"), "Row", "r", "", tree)
    row.origin = "own.py line 7"
    assert ranges.of(row) == (-INF, INF)
    assert len(ranges.faults) == 1
    assert ranges.faults[0].startswith("Sheet1st, 'Row' (own.py line 7): ")
    assert says in ranges.faults[0]


@pytest.mark.parametrize("tree", [
    Y / greatest(Z, 0.5), Y / (1 + absolute(X)), root(X**2), logarithm(Z + 0.1), (X - 3.1) ** -1,
    arc_cosine(least(1, greatest(-1, X))), PARTS.at(least(greatest(whole_down(Z), 1), 6))["size"],
    PARTS.find(COLOUR, " ", SIZE)["size"], PARTS.find(PARTS.find(COLOUR, " small")["colour"],
                                                      " large")["size"],
    COLOURS.find(when(X > 0, COLOUR, "red")).number,
])
def test_a_floor_proves_it(tree):
    assert proved(tree) is not None


def test_a_word_that_rests_on_a_division_is_proved_too():
    ranges = Ranges()
    ranges.of(Calculated(None, "Word", "", TEXT, when(1 / Z > 2, "a", "b")))
    ranges.of(Ask(None, "Usual", "", TEXT, choices=COLOURS, default=when(1 / X > 2, "red", "blue")))
    assert [f.rpartition(": ")[2][:24] for f in ranges.faults] == [
        "the divisor z may be 0 (", "the divisor x may be 0 ("]


def test_given_ranges_take_the_place_of_rows():
    ranges = Ranges({Z: (2.0, 3.0)})
    assert ranges.span(6 / Z) == (2, 3)


def test_all_faults_of_a_sheet_come_at_once_with_sheet_row_and_line():
    module = ModuleType("wrong_sheet")
    sheet = module.sheet = Sheet("Wrong", "Wrong")
    module.z = sheet.ask("Zero to nine", "z", "ft", 0, 9, "own")
    module.a = sheet.row("Quotient", "a", "", 2 / module.z, "own")
    module.b = sheet.row("Root", "b", "", root(module.a - 5), "own")
    module.c = sheet.row("Inches", "c", "in", module.z, "own")
    module.d = sheet.row("Line", "d", "", PARTS.at(module.z)["size"], "own")
    module.e = sheet.row("Same symbol", "a", "ft", module.z, "own")
    adopt(module)
    found = faults_of([sheet], Ranges())
    for label, says in [
        ("Quotient", "may be 0"), ("Quotient", "comes out in ft^-1, declared is a bare number"),
        ("Root", "root may be of a negative number"), ("Inches", "comes out in ft, declared is in"),
        ("Line", "a line number is in ft"), ("Line", "the line z runs 0 to 9"),
        ("Same symbol", "the symbol a is that of 'Quotient' too"),
    ]:
        assert [f for f in found if says in f
                and f.startswith(f"Wrong, '{label}' (test_ranges.py line ")], says


def test_a_row_proved_once_is_not_told_twice():
    wrong = Calculated(None, "Wrong", "w", "", 1 / X)
    ranges = Ranges()
    for row in (wrong, Calculated(None, "On it", "o", "", wrong + 1), wrong):
        ranges.of(row)
    assert len(ranges.faults) == 1
