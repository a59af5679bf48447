"""Units: every conversion and rule of ours proved a second time with pint, pounds as force."""

from __future__ import annotations

import math
import random
from collections import Counter
from fractions import Fraction

import pint
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from builder.language import (
    Ask,
    Constant,
    Fault,
    Series,
    Sheet,
    absolute,
    all_of,
    any_of,
    arc_cosine,
    arc_tangent,
    bare,
    choose,
    cosine,
    degrees,
    exponential,
    greatest,
    largest,
    least,
    logarithm,
    nearest,
    no,
    radians,
    remainder,
    root,
    sine,
    sum_over,
    tally,
    tangent,
    to_cent,
    total,
    when,
    whole_down,
    whole_up,
)
from builder.language.expressions import Call, Convert, Negative, Num, Op
from builder.language.functions import FUNCTIONS
from builder.language.proofs import unit_fault, unit_of
from builder.language.rows import Calculated
from builder.language.units import (
    BASES,
    CONVERSIONS,
    NONE,
    TEXT,
    UNITS,
    conversion,
    dimension,
    power,
    spelled,
    times,
)
from builder.language.values import value_of
from tests.language.trees import COLOUR, PARTS

ureg = pint.UnitRegistry()
ureg.define("dollar = [money]")
# Board feet are counted by nominal size: no volume comes of them.
ureg.define("board_foot_bought = [lumber]")
NAMES = {"lb": "force_pound", "ft": "foot", "in": "inch", "$": "dollar", "deg": "degree",
         "mile": "mile", "h": "hour", "s": "second", "psf": "force_pound/foot**2",
         "pcf": "force_pound/foot**3", "psi": "force_pound/inch**2", "mph": "mile/hour",
         "bd ft": "board_foot_bought", "day": "day", "each": "", "": ""}
RAISED = {"": 1, "²": 2, "³": 3, "⁴": 4}


def by_name(unit: str) -> pint.Quantity:
    """Read a unit of ours by its name alone: products by ·, one quotient by /."""
    made = ureg.Quantity(1.0)
    for place, side in enumerate(unit.split("/")):
        for part in side.split("·"):
            name = part.rstrip("²³⁴")
            raised = RAISED[part[len(name):]]
            made *= ureg.Quantity(1.0, NAMES[name]) ** (raised if place == 0 else -raised)
    return made


def by_powers(powers) -> pint.Quantity:
    """Read a dimension of ours by its exponents."""
    made = ureg.Quantity(1.0)
    for base, exponent in zip(BASES, powers, strict=True):
        made *= ureg.Quantity(1.0, NAMES[base]) ** float(exponent)
    return made


def alike(a: pint.Quantity, b: pint.Quantity) -> bool:
    """Say whether two quantities are the same physical one."""
    a, b = a.to_base_units(), b.to_base_units()
    wide = {d: a.dimensionality.get(d, 0) - b.dimensionality.get(d, 0)
            for d in {*a.dimensionality, *b.dimensionality}}
    return (all(abs(float(d)) < 1e-9 for d in wide.values())
            and math.isclose(a.magnitude, b.magnitude, rel_tol=1e-9, abs_tol=1e-12))


@pytest.mark.parametrize("unit", UNITS)
def test_the_exponents_of_a_unit_are_those_of_its_name(unit):
    assert alike(by_powers(UNITS[unit]), by_name(unit))


@pytest.mark.parametrize(("old", "new"), CONVERSIONS)
def test_a_conversion_keeps_the_quantity(old, new):
    sign, factor, text = CONVERSIONS[old, new]
    assert isinstance(factor, int)
    number = 7.0 * factor if sign == "*" else 7.0 / factor
    assert alike(7.0 * by_name(old), number * by_name(new))
    assert text.startswith(f"{factor} ")


def test_every_conversion_goes_both_ways():
    assert {(b, a) for a, b in CONVERSIONS} == set(CONVERSIONS)
    for (old, new), (sign, factor, text) in CONVERSIONS.items():
        back = CONVERSIONS[new, old]
        assert back == ("/" if sign == "*" else "*", factor, text)


def test_a_conversion_outside_the_list_is_a_fault():
    for old, new in (("ft", "psf"), ("pcf", "psi"), ("ft", "ft"), ("lb", "in"), ("mph", "ft/s")):
        with pytest.raises(Fault, match=f"no conversion from {old} to {new} in the list"):
            conversion(dimension(old), new)


def test_an_unknown_unit_is_a_fault():
    with pytest.raises(Fault, match="unit 'furlong' is not in the list of units"):
        dimension("furlong")


@pytest.mark.parametrize("unit", UNITS)
def test_a_dimension_is_spelled_by_a_name_of_its_own(unit):
    name = spelled(UNITS[unit])
    assert name == "a bare number" if UNITS[unit] == NONE else UNITS[name] == UNITS[unit]


def test_a_dimension_without_a_name_is_spelled_by_its_powers():
    assert spelled(times(dimension("lb"), dimension("$"))) == "lb·$"
    assert spelled(power(dimension("lb·in"), 2)) == "lb^2·in^2"


exponents = st.tuples(*[st.integers(-4, 4)] * len(BASES))


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(exponents, exponents, st.sampled_from([-3, -1, 0, 1, 2, Fraction(1, 2)]))
def test_products_and_powers_of_dimensions(a, b, n):
    assert alike(by_powers(times(a, b)), by_powers(a) * by_powers(b))
    assert alike(by_powers(power(a, n)), by_powers(a) ** float(n))


def quantity(unit: str, value: float = 2.0) -> Ask:
    return Ask(None, f"In {unit or 'numbers'}", f"x_{unit}", unit, least=value, most=value)


X = {unit: quantity(unit, 1.25 + k / 8) for k, unit in enumerate(UNITS)}
KNOWN = {row: row.least for row in X.values()}


def physical(e) -> pint.Quantity:
    """Return the physical quantity of a tree, as pint reckons it from units and values."""
    if isinstance(e, Ask):
        return e.least * by_name(e.unit)
    if isinstance(e, Num):
        return ureg.Quantity(float(e.value))
    if isinstance(e, Negative):
        return -physical(e.a)
    if isinstance(e, Convert):
        return physical(e.a)
    if isinstance(e, Op):
        a, b = physical(e.a), physical(e.b)
        if e.op == "^":
            return a ** b.to("").magnitude
        return {"+": a.__add__, "-": a.__sub__, "*": a.__mul__, "/": a.__truediv__}[e.op](b)
    assert isinstance(e, Call)
    args = [physical(a) for a in e.args]
    return {"root": lambda x: x**0.5, "absolute": abs, "least": min, "greatest": max}[e.name](
        *args)


class Quantities:
    """Grows trees over quantities of every unit, right and wrong."""

    def __init__(self, pick):
        self.pick = pick

    def grow(self, depth: int):
        """Return a tree."""
        if depth == 0 or self.pick(5) == 0:
            return list(X.values())[self.pick(len(X))]
        less = depth - 1
        a = self.grow(less)
        kind = self.pick(9)
        if kind == 0:
            return a * self.grow(less)
        if kind == 1:
            return a / absolute(self.grow(less))
        if kind == 2:
            return a ** [2, 3, -1, -2][self.pick(4)]
        if kind == 3:
            return root(absolute(a))
        if kind == 4:
            return a + self.pick(3) * [a, -a, self.grow(less)][self.pick(3)]
        if kind == 5:
            return a - self.grow(less)
        if kind == 6:
            return [least, greatest][self.pick(2)](a, self.grow(less), 3 * a)
        if kind == 7:
            return -a
        try:
            return a.in_([new for old, new in CONVERSIONS
                          if dimension(old) == unit_of(a)][self.pick(2)])
        except (Fault, IndexError):
            return a


def compared(tree) -> str:
    """Compare a tree with pint; say whether it was alike, a fault of ours, or has no value."""
    try:
        value = value_of(tree, dict(KNOWN))
    except ArithmeticError:
        return "no value"
    try:
        ours = unit_of(tree)
    except Fault:
        ours = "fault"
    try:
        theirs = physical(tree)
    except pint.DimensionalityError:
        assert ours == "fault"
        return "fault of both"
    if ours == "fault":
        # Feet beside inches, degrees beside a bare number: pint turns one into the other.
        return "fault"
    if abs(value) >= 1e200:
        return "no value"
    assert alike(value * by_powers(ours or NONE), theirs)
    return "alike"


@settings(max_examples=200, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.randoms(use_true_random=False))
def test_random_trees_as_pint_reckons_them(source):
    compared(Quantities(source.randrange).grow(4))


def test_enough_trees_are_alike_and_enough_are_faults():
    grower = Quantities(random.Random(5).randrange)
    found = Counter(compared(grower.grow(3)) for _ in range(400))
    assert found["alike"] > 100
    assert found["fault of both"] > 50


FT, IN, LB, PLAIN, DEG, USD = (X[u] for u in ("ft", "in", "lb", "", "deg", "$"))
YES = FT > FT
RULES = {
    "least": ([(least(FT, FT, 0), "ft")], [lambda: least(FT, IN)]),
    "greatest": ([(greatest(FT, 0), "ft")], [lambda: greatest(FT, 1), lambda: greatest(LB, "a")]),
    "absolute": ([(absolute(LB), "lb")], [lambda: absolute(COLOUR)]),
    "root": ([(root(FT * FT), "ft"), (root(PLAIN), "")], [lambda: FT + root(FT)]),
    "when": ([(when(YES, FT, 0), "ft"), (when(YES, "a", COLOUR), TEXT)],
             [lambda: when(FT, 1, 2), lambda: when(YES, FT, IN), lambda: when(YES, "a", 1),
              lambda: when(COLOUR, FT, FT), lambda: when(FT, "a", "b")]),
    "choose": ([(choose(PLAIN, FT, 0, FT), "ft")],
               [lambda: choose(FT, 1, 2), lambda: choose(PLAIN, FT, IN)]),
    "all_of": ([(all_of(YES, YES), "")], [lambda: all_of(YES, FT)]),
    "any_of": ([(any_of(YES, YES), "")], [lambda: any_of(YES, FT)]),
    "no": ([(no(YES), "")], [lambda: no(FT)]),
    "whole_up": ([(whole_up(PLAIN), ""), (whole_up(IN), "in")], [lambda: whole_up("a")]),
    "whole_down": ([(whole_down(IN), "in")], [lambda: whole_down(COLOUR)]),
    "nearest": ([(nearest(IN, IN), "in")], [lambda: nearest(IN, FT), lambda: nearest(IN, 2)]),
    "remainder": ([(remainder(PLAIN, 12), ""), (remainder(IN, IN), "in")],
                  [lambda: remainder(IN, 12), lambda: remainder(COLOUR, 2)]),
    "to_cent": ([(to_cent(USD), "$")], [lambda: to_cent(COLOUR)]),
    "exponential": ([(exponential(PLAIN), "")], [lambda: exponential(FT)]),
    "logarithm": ([(logarithm(FT / FT), "")], [lambda: logarithm(FT)]),
    "sine": ([(sine(PLAIN), "")], [lambda: sine(DEG), lambda: sine(FT)]),
    "cosine": ([(cosine(PLAIN), "")], [lambda: cosine(DEG)]),
    "tangent": ([(tangent(PLAIN), "")], [lambda: tangent(DEG)]),
    "arc_tangent": ([(arc_tangent(FT / FT), "")], [lambda: arc_tangent(FT / IN)]),
    "arc_cosine": ([(arc_cosine(PLAIN), "")], [lambda: arc_cosine(LB)]),
    "degrees": ([(degrees(PLAIN), "deg")], [lambda: degrees(DEG), lambda: degrees(FT)]),
    "radians": ([(radians(DEG), "")], [lambda: radians(PLAIN), lambda: radians(FT)]),
}


def test_every_function_has_its_unit_rule_tried():
    assert set(RULES) == set(FUNCTIONS)


@pytest.mark.parametrize("name", RULES)
def test_the_unit_rule_of_a_function(name):
    right, wrong = RULES[name]
    for tree, unit in right:
        assert unit_of(tree) == (TEXT if unit == TEXT else dimension(unit))
    for make in wrong:
        with pytest.raises(Fault):
            unit_of(make())


def fault(unit, tree):
    return unit_fault(Calculated(Sheet("S", "S"), "Row", "r", unit, tree))


@pytest.mark.parametrize(("unit", "tree"), [
    ("ft", FT), ("in", FT.in_("in")), ("in", (FT * 3).in_("in") + IN), ("lb·ft", LB * FT),
    ("lb·in", (LB * FT).in_("lb·in")), ("psi", LB / IN**2), ("psf", (LB / IN**2).in_("psf")),
    ("lb/ft", X["psf"] * FT), ("lb/in", (X["psf"] * FT).in_("lb/in")), ("in⁴", IN * IN**3 / 12),
    ("ft²", (IN * IN).in_("ft²")), ("lb·in²", X["psi"] * X["in⁴"]), ("in", root(X["in⁴"] / IN**2)),
    ("", FT / FT), ("each", FT / FT), ("", 1), ("ft", 0), ("lb", 0), ("", FT > 0),
    ("", COLOUR.is_("red")), (TEXT, when(COLOUR.is_("red"), "a", "b")), ("", bare(FT, "ft") ** 1.5),
    ("lb", X["pcf"] * X["ft³"]), ("ft³", LB / X["pcf"]), ("in", IN ** Constant(
        "n", "n", "n", "", 1, "", "", "")),
    ("ft", PARTS.at(1)["length"]), (TEXT, PARTS.at(1)["colour"]),
    ("", tally(PARTS, length_below=FT, colour=COLOUR)), ("lb", sum_over(
        Series("W", [LB, LB]) * Series("N", [PLAIN, PLAIN]))), ("lb", largest(Series("W", [LB]))),
    ("lb·ft", total(LB, FT)),
])
def test_a_unit_that_is_right(unit, tree):
    assert fault(unit, tree) is None


@pytest.mark.parametrize(("unit", "tree", "says"), [
    ("in", FT, "its formula comes out in ft, declared is in"),
    ("ft", IN, "its formula comes out in in, declared is ft"),
    ("in", FT + IN, "ft stands beside in"),
    ("lb·in", LB * FT, "comes out in lb·ft, declared is lb·in"),
    ("psf", X["psi"], "comes out in psi, declared is psf"),
    ("", FT, "comes out in ft, declared is a bare number"),
    ("ft", FT / FT, "comes out in a bare number, declared is ft"),
    ("ft", FT + 1, "ft stands beside a bare number"),
    ("", FT > IN, "ft stands beside in"),
    ("", FT > 3, "ft stands beside a bare number"),
    ("", FT.is_(IN), "ft stands beside in"),
    ("", COLOUR.is_(3), "a word is compared with a number"),
    ("", FT.is_("red"), "a word is compared with a number"),
    ("ft", when(FT > IN, FT, FT), "ft stands beside in"),
    ("ft", when(FT > FT, FT, IN), "ft stands beside in"),
    ("", COLOUR + 1, "a word stands where a number is due"),
    ("", -1 * COLOUR, "a word stands where a number is due"),
    ("", COLOUR > 1, "a word stands where a number is due"),
    (TEXT, FT, "comes out in ft, declared is text"),
    ("ft", COLOUR, "comes out in text, declared is ft"),
    ("", 2**FT, "an exponent is in ft"),
    ("ft", FT**1.5, "ft to a power that is no whole number"),
    ("ft", FT**PLAIN, "ft to a power that is no whole number"),
    ("in", bare(FT, "in"), "its bare number is asked in in, it is in ft"),
    ("in", LB.in_("in"), "no conversion from lb to in in the list"),
    ("ells", FT, "unit 'ells' is not in the list of units"),
    ("ft", PARTS.at(FT)["length"], "a line number is in ft"),
    ("in", PARTS.at(1)["length"], "comes out in ft, declared is in"),
    ("", PARTS.below("length", IN).number, "column length of table parts is in ft, a number in in"),
    ("", PARTS.find(PLAIN).number, "the key of table parts is in text, a number in a bare number"),
    ("", PARTS.find(0).number, "the key of table parts is in words, a number is looked for"),
    ("", tally(PARTS, length_below=IN), "column length of table parts is in ft, a number in in"),
    ("", tally(PARTS, colour=FT), "column colour of table parts is in text, a number in ft"),
    ("", tally(PARTS, length=COLOUR), "column length of table parts is in ft, a word is looked"),
    ("", 2 * Series("N", [PLAIN]), "the series N stands alone"),
    ("", Series("N", [PLAIN]), "the series N stands alone"),
])
def test_a_unit_that_is_wrong_is_a_fault_with_words(unit, tree, says):
    assert says in (fault(unit, tree) or "no fault")


def test_a_series_of_several_units_is_a_fault():
    with pytest.raises(Fault, match="series W: its rows have several units"):
        Series("W", [FT, IN])
