"""The value of an expression in Python: the independent reading that the tests hold cells to."""

from __future__ import annotations

import math
from collections.abc import Callable

from .cells import DASH
from .expressions import (
    AtPlace,
    Bare,
    Call,
    Column,
    Convert,
    Expr,
    Extreme,
    Joined,
    Key,
    Match,
    Negative,
    Num,
    OfType,
    Op,
    OrDash,
    Picked,
    PlaceOf,
    Ranked,
    Shown,
    SumOver,
    Tally,
    Text,
)
from .faults import Fault
from .functions import FUNCTIONS, TINY
from .proofs import unit_of
from .rows import Constant, Row, Series, series_in
from .units import conversion


def _power(a, b):
    """Return a power, where a spreadsheet has one: not 0 to 0, nor the root of a negative."""
    if a == 0 and b == 0:
        raise ZeroDivisionError("0 to the power 0")
    if a < 0 and b != int(b):
        raise ValueError(f"{a:g} to the power {b:g}")
    return a**b


OPERATIONS: dict[str, Callable] = {
    "+": lambda a, b: a + b,
    "-": lambda a, b: a - b,
    "*": lambda a, b: a * b,
    "/": lambda a, b: a / b,
    "^": _power,
    "=": lambda a, b: a == b,
    "<": lambda a, b: a < b - TINY,
    "<=": lambda a, b: a <= b + TINY,
    ">": lambda a, b: a > b + TINY,
    ">=": lambda a, b: a >= b - TINY,
}


def value_of(e: Expr, known: dict[Row, float | str], place: int | None = None):
    """Return the value of an expression.

    Args:
        e: the expression.
        known: values of rows; a calculated row, or an input with a default, that is missing is
            worked out and added.
        place: which row of a series is meant, inside a sum.

    Raises:
        Fault: an input that is not given.
    """
    if isinstance(e, Row):
        if isinstance(e, Constant):
            return e.value
        if e not in known:
            formula = getattr(e, "expr", None)
            formula = getattr(e, "default", None) if formula is None else formula
            if formula is None:
                raise Fault(f"{e.where} is not given")
            known[e] = value_of(formula, known)
        return known[e]
    if isinstance(e, Num | Text):
        return e.value
    if isinstance(e, Op):
        return OPERATIONS[e.op](value_of(e.a, known, place), value_of(e.b, known, place))
    if isinstance(e, Call):
        return FUNCTIONS[e.name].python(*(value_of(a, known, place) for a in e.args))
    if isinstance(e, Convert):
        sign, factor, _ = conversion(unit_of(e.a), e.unit)
        return OPERATIONS[sign](value_of(e.a, known, place), factor)
    if isinstance(e, Bare):
        return value_of(e.a, known, place)
    if isinstance(e, Negative):
        return -value_of(e.a, known, place)
    return _looked_up(e, known, place)


def _looked_up(e: Expr, known, place):
    if isinstance(e, Column):
        entries = e.table.keys if e.column is None else e.table.entries(e.column)
        return entries[int(value_of(e.line, known, place)) - 1]
    if isinstance(e, Match) and e.below:
        x = value_of(e.parts[0], known, place)
        return sum(entry <= x + TINY for entry in e.table.entries(e.column))
    if isinstance(e, Match):
        key = "".join(str(value_of(p, known, place)) for p in e.parts)
        return e.table.keys.index(key) + 1
    if isinstance(e, Tally):
        tests = [(e.table.entries(c), OPERATIONS[op], value_of(v, known, place))
                 for c, op, v in e.tests]
        return sum(all(test(entries[i], v) for entries, test, v in tests)
                   for i in range(len(e.table.keys)))
    if isinstance(e, Key):
        return e.table.keys[e.number]
    if isinstance(e, Series):
        return value_of(e.rows[place], known)
    if isinstance(e, Extreme):
        pick = max if e.name == "MAX" else min
        return pick(value_of(r, known) for r in e.series.rows)
    if isinstance(e, SumOver):
        count = max(len(s) for s in series_in(e.a))
        return sum(value_of(e.a, known, i) for i in range(count))
    return _placed(e, known)


def _placed(e: Expr, known):
    """Return the value of what stands in one column of several; there is one column here."""
    if isinstance(e, Picked | OfType):
        return value_of(e.a, known)
    if isinstance(e, Ranked):
        ranked = sorted((value_of(r, known) for r in e.series.rows), reverse=True)
        return ranked[int(value_of(e.number, known)) - 1]
    if isinstance(e, AtPlace):
        return value_of(e.series.rows[int(value_of(e.number, known)) - 1], known)
    if isinstance(e, PlaceOf):
        return [value_of(r, known) for r in e.series.rows].index(value_of(e.x, known)) + 1
    if isinstance(e, Shown):
        shift = 10.0**e.digits
        number = value_of(e.a, known) + TINY
        whole = math.copysign(math.floor(abs(number) * shift + 0.5), number) / shift
        return f"{whole:,.{e.digits}f}"
    if isinstance(e, Joined):
        return "".join(str(value_of(p, known)) for p in e.parts)
    if isinstance(e, OrDash):
        return value_of(e.a, known) if value_of(e.test, known) else DASH
    raise TypeError(f"{type(e).__name__} has no value of its own")
