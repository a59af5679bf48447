"""The closed list of functions, one entry each.

An entry says how a function is written in a cell, how it reads in symbols, what it means in
Python, what it does to units and what to ranges.  The cell forms are those on which all the
engines that the workbook is tried with agree; rounding carries a billionth against the last bit.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from .expressions import Call, Expr, lift
from .faults import Fault
from .units import NONE, dimension, power, spelled

INF = math.inf
TINY = 1e-9


@dataclass(frozen=True)
class Function:
    """One function.

    ``cell`` and ``symbol`` are patterns with ``{0}``, ``{1}``; ``{*}`` is all arguments.
    ``inner`` is how tightly an argument must bind to stand without brackets, ``level`` how
    tightly the result binds.
    """

    cell: str
    symbol: str
    python: Callable
    unit: Callable
    span: Callable
    inner: int = 0
    level: int = 9


def same_unit(units):
    """Return the one unit of all arguments; a bare 0 fits any."""
    known = [u for u in units if u is not None]
    for unit in known[1:]:
        if unit != known[0]:
            raise Fault(f"{spelled(known[0])} stands beside {spelled(unit)}")
    return known[0] if known else None


def _bare_number(units):
    for unit in units:
        if unit is not None and unit != NONE:
            raise Fault(f"wants a bare number, is given {spelled(unit)}")
    return NONE


def _angle(units):
    if units[0] not in (None, NONE):
        raise Fault(f"wants an angle as a bare number, is given {spelled(units[0])}")
    return NONE


def _to_degrees(units):
    _bare_number(units)
    return dimension("deg")


def _from_degrees(units):
    if units[0] is not None and units[0] != dimension("deg"):
        raise Fault(f"wants degrees, is given {spelled(units[0])}")
    return NONE


def _half_power(units):
    from fractions import Fraction

    if units[0] is None:
        return None
    halved = power(units[0], Fraction(1, 2))
    return tuple(int(p) if p == int(p) else p for p in halved)


def _choice(units):
    _bare_number(units[:1])
    return same_unit(units[1:])


def _step(units):
    return same_unit(units)


def _monotone(f):
    def span(a):
        return f(a[0][0]), f(a[0][1])

    return span


def _root_span(a):
    low, high = a[0]
    if low < 0:
        raise Fault(f"the root may be of a negative number ({low:g})")
    return math.sqrt(low), math.sqrt(high)


def _log_span(a):
    low, high = a[0]
    if low <= 0:
        raise Fault(f"the logarithm may be of 0 or less ({low:g})")
    return math.log(low), math.log(high) if high < INF else INF


def _exp_span(a):
    return math.exp(min(a[0][0], 700)), math.exp(a[0][1]) if a[0][1] < 700 else INF


def _absolute_span(a):
    low, high = a[0]
    if low <= 0 <= high:
        return 0.0, max(-low, high)
    return min(abs(low), abs(high)), max(abs(low), abs(high))


def _arc_cosine_span(a):
    low, high = a[0]
    if low < -1 or high > 1:
        raise Fault(f"the arc cosine may be of a number outside -1 to 1 ({low:g} to {high:g})")
    return math.acos(high), math.acos(low)


def _tangent_span(a):
    low, high = a[0]
    if low <= -1.5 or high >= 1.5:
        raise Fault(f"the tangent may be of an angle near a right angle ({low:g} to {high:g})")
    return math.tan(low), math.tan(high)


def _truth(a):
    return 0.0, 1.0


def _unit_circle(a):
    return -1.0, 1.0


def _cent(x):
    return math.floor(x * 100 + 0.500001) / 100 if abs(x) < INF else x


def _whole_up(x):
    return math.ceil(x - TINY) if abs(x) < INF else x


def _whole_down(x):
    return math.floor(x + TINY) if abs(x) < INF else x


def _nearest_span(a):
    (low, high), (least, most) = a
    if least <= 0:
        raise Fault(f"the step may be 0 or less ({least:g})")
    return (max(0.0, low - most) if low >= 0 else low - most), high + most


def _remainder_span(a):
    (low, high), (least, most) = a
    if low < 0 or least < 1:
        raise Fault(f"wants whole numbers, 0 or more by 1 or more, is given {low:g} by {least:g}")
    return 0.0, min(high, most - 1)


def _numbered(units):
    _bare_number(units[:1])
    return same_unit(units[1:])


def _choose_span(a):
    low, high = a[0]
    if low < 1 or high > len(a) - 1:
        raise Fault(f"the number runs {low:g} to {high:g}, there are {len(a) - 1} to choose from")
    return min(p[0] for p in a[1:]), max(p[1] for p in a[1:])


FUNCTIONS: dict[str, Function] = {
    "least": Function(
        "MIN({*})", "least of ({*})", min, same_unit,
        lambda a: (min(p[0] for p in a), min(p[1] for p in a)),
    ),
    "greatest": Function(
        "MAX({*})", "greatest of ({*})", max, same_unit,
        lambda a: (max(p[0] for p in a), max(p[1] for p in a)),
    ),
    "absolute": Function("ABS({0})", "|{0}|", abs, same_unit, _absolute_span),
    "root": Function("SQRT({0})", "√({0})", math.sqrt, _half_power, _root_span),
    "when": Function(
        "IF({0},{1},{2})", "{1} if {0}, else {2}", lambda t, a, b: a if t else b, _choice,
        lambda a: (min(a[1][0], a[2][0]), max(a[1][1], a[2][1])), level=0,
    ),
    "choose": Function(
        "CHOOSE({*})", "choose ({*})", lambda n, *a: a[int(n) - 1],
        _numbered, _choose_span,
    ),
    "all_of": Function("AND({*})", "{* and }", lambda *a: all(a), _bare_number, _truth, level=0),
    "any_of": Function("OR({*})", "{* or }", lambda *a: any(a), _bare_number, _truth, level=0),
    "no": Function("NOT({0})", "not ({0})", lambda a: not a, _bare_number, _truth),
    # Not ROUNDUP({0}-1E-9,0): it rounds away from 0, so that no pieces at all would be −1.
    "whole_up": Function(
        "(0-INT(1E-9-{0}))", "⌈{0}⌉", _whole_up, same_unit, _monotone(_whole_up), inner=4,
    ),
    "whole_down": Function(
        "INT({0}+1E-9)", "⌊{0}⌋", _whole_down, same_unit, _monotone(_whole_down), inner=3,
    ),
    "nearest": Function(
        "INT({0}/{1}+0.500000001)*{1}", "{0} to the nearest {1}",
        lambda a, s: math.floor(a / s + 0.500000001) * s, _step,
        _nearest_span,
        inner=6, level=4,
    ),
    # Of whole numbers: the remainder is then at most one below the divisor.
    "remainder": Function(
        "({0}-{1}*INT({0}/{1}+1E-9))", "remainder of {0} / {1}",
        lambda n, s: n - s * math.floor(n / s + TINY), same_unit, _remainder_span, inner=6,
    ),
    "to_cent": Function(
        "INT({0}*100+0.500001)/100", "{0} to the cent", _cent, same_unit,
        _monotone(_cent),
        inner=5, level=4,
    ),
    "exponential": Function("EXP({0})", "exp({0})", math.exp, _bare_number, _exp_span),
    "logarithm": Function("LN({0})", "ln({0})", math.log, _bare_number, _log_span),
    "sine": Function("SIN({0})", "sin({0})", math.sin, _angle, _unit_circle),
    "cosine": Function("COS({0})", "cos({0})", math.cos, _angle, _unit_circle),
    "tangent": Function("TAN({0})", "tan({0})", math.tan, _angle, _tangent_span),
    "arc_tangent": Function(
        "ATAN({0})", "atan({0})", math.atan, _bare_number, _monotone(math.atan)
    ),
    "arc_cosine": Function("ACOS({0})", "acos({0})", math.acos, _bare_number, _arc_cosine_span),
    "degrees": Function(
        "DEGREES({0})", "degrees({0})", math.degrees, _to_degrees, _monotone(math.degrees)
    ),
    "radians": Function(
        "RADIANS({0})", "radians({0})", math.radians, _from_degrees, _monotone(math.radians)
    ),
}


def _call(name: str, *args) -> Call:
    return Call(name, tuple(lift(a) for a in args))


def least(*quantities) -> Expr:
    """Return the smallest of some quantities of one unit."""
    return _call("least", *quantities)


def greatest(*quantities) -> Expr:
    """Return the largest of some quantities of one unit."""
    return _call("greatest", *quantities)


def absolute(x) -> Expr:
    """Return a quantity without its sign."""
    return _call("absolute", x)


def root(x) -> Expr:
    """Return the square root of a quantity that is proved not to be negative."""
    return _call("root", x)


def when(test, then, otherwise) -> Expr:
    """Return ``then`` where the test holds, else ``otherwise``; decided in the sheet."""
    return _call("when", test, then, otherwise)


def all_of(*tests) -> Expr:
    """Return the test that every one of some tests holds."""
    return _call("all_of", *tests)


def any_of(*tests) -> Expr:
    """Return the test that at least one of some tests holds."""
    return _call("any_of", *tests)


def no(test) -> Expr:
    """Return the test that another does not hold."""
    return _call("no", test)


def whole_up(x) -> Expr:
    """Return the next whole number up, for pieces that are bought or built."""
    return _call("whole_up", x)


def whole_down(x) -> Expr:
    """Return the next whole number down."""
    return _call("whole_down", x)


def nearest(x, step) -> Expr:
    """Return a quantity to the nearest multiple of a step of the same unit."""
    return _call("nearest", x, step)


def remainder(n, divisor) -> Expr:
    """Return what is left of a whole number, 0 or more, over a whole divisor."""
    return _call("remainder", n, divisor)


def to_cent(x) -> Expr:
    """Return an amount of money to the cent."""
    return _call("to_cent", x)


def exponential(x) -> Expr:
    """Return e to the power of a bare number."""
    return _call("exponential", x)


def logarithm(x) -> Expr:
    """Return the natural logarithm of a bare number that is proved positive."""
    return _call("logarithm", x)


def choose(number, *quantities) -> Expr:
    """Return the quantity of a number, counted from 1, that is proved to be one of them."""
    return _call("choose", number, *quantities)


def sine(x) -> Expr:
    """Return the sine of an angle in radians."""
    return _call("sine", x)


def cosine(x) -> Expr:
    """Return the cosine of an angle in radians."""
    return _call("cosine", x)


def tangent(x) -> Expr:
    """Return the tangent of an angle in radians that is proved far from a right angle."""
    return _call("tangent", x)


def arc_tangent(x) -> Expr:
    """Return the angle, in radians, whose tangent a bare number is."""
    return _call("arc_tangent", x)


def arc_cosine(x) -> Expr:
    """Return the angle, in radians, whose cosine a number proved within -1 to 1 is."""
    return _call("arc_cosine", x)


def degrees(x) -> Expr:
    """Return an angle in degrees from one in radians."""
    return _call("degrees", x)


def radians(x) -> Expr:
    """Return an angle in radians from one in degrees."""
    return _call("radians", x)
