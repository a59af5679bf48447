"""The cell formula of an expression.

Brackets stand only where the spreadsheet's precedence asks for them, and always around a
negative number and both sides of ``^`` where they are not single cells, since ``-x^2`` is
(−x)² in a spreadsheet.  A deciding comparison carries a billionth.
"""

from __future__ import annotations

from typing import Protocol

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
    Total,
)
from .functions import FUNCTIONS
from .proofs import unit_of
from .rows import Row, Series
from .units import TEXT, conversion

LEVEL = {"=": 1, "<": 1, "<=": 1, ">": 1, ">=": 1, "&": 2, "+": 3, "-": 3, "*": 4, "/": 4, "^": 6}
TOUCH = {"<": "-1E-9", "<=": "+1E-9", ">": "+1E-9", ">=": "-1E-9"}
ATOM = 9
DASH = "–"
"""What stands where there is no value."""


class Addresses(Protocol):
    """Where rows stand, as seen from the cell that is being written."""

    def row(self, row: Row) -> str:
        """Return the address of a row."""

    def series(self, series: Series) -> str:
        """Return the range of a series."""

    def across(self, row: Row) -> str:
        """Return the range of a row over all section columns."""

    def type_numbers(self) -> str:
        """Return the range of the numbers of the section types, side by side."""

    def of_type(self, row: Row, letter: str) -> str:
        """Return the address of a section row in the column of one type."""

    def key(self, table, number: int) -> str:
        """Return the cell of a table's key, counted from 0."""

    def column(self, table, column: str | None) -> str:
        """Return the range of a table's column; None is its key column."""


def number(value: float) -> str:
    """Write a number as a formula holds it."""
    if float(value).is_integer() and abs(value) < 1e15:
        return str(int(value))
    return repr(float(value)).upper()


def quoted(text: str) -> str:
    """Write a word as a formula holds it."""
    return '"' + text.replace('"', '""') + '"'


def cell_formula(e: Expr, at: Addresses) -> str:
    """Return the formula of an expression, without the equals sign."""
    return _as_number(e, at)


def is_test(e: Expr) -> bool:
    """Return whether an expression comes out true or false, and not as a number."""
    if isinstance(e, Call) and e.name == "when":
        return any(is_test(a) for a in e.args[1:])
    return (isinstance(e, Op) and LEVEL[e.op] == 1) or (
        isinstance(e, Call) and e.name in ("all_of", "any_of", "no"))


def _as_number(e: Expr, at: Addresses) -> str:
    """Write what stands alone in a cell or is summed: SUM, MAX and SUMPRODUCT pass over TRUE."""
    text = _write(e, at)[0]
    return f"({text})*1" if is_test(e) else text


def _bracketed(e: Expr, at: Addresses, level: int, strict: bool = False) -> str:
    text, own = _write(e, at)
    return f"({text})" if own < level or (strict and own == level) else text


def _write(e: Expr, at: Addresses) -> tuple[str, int]:
    if isinstance(e, Row):
        return at.row(e), ATOM
    if isinstance(e, Num):
        return (number(e.value), ATOM) if e.value >= 0 else (f"({number(e.value)})", ATOM)
    if isinstance(e, Text):
        return quoted(e.value), ATOM
    if isinstance(e, Op):
        return _operation(e, at)
    if isinstance(e, Call):
        return _function(e, at)
    if isinstance(e, Convert):
        sign, factor, _ = conversion(unit_of(e.a), e.unit)
        return f"{_bracketed(e.a, at, LEVEL['*'])}{sign}{factor}", LEVEL["*"]
    if isinstance(e, Bare):
        return _write(e.a, at)
    if isinstance(e, Joined):
        return "&".join(_bracketed(p, at, LEVEL["+"]) for p in e.parts), LEVEL["&"]
    if isinstance(e, Negative):
        return f"(-{_bracketed(e.a, at, ATOM)})", ATOM
    return _lookup(e, at), ATOM


def _operation(e: Op, at: Addresses) -> tuple[str, int]:
    level = LEVEL[e.op]
    left = _bracketed(e.a, at, level, strict=e.op in ("^", "=", *TOUCH))
    right = _bracketed(e.b, at, level, strict=e.op not in ("+", "*"))
    if e.op in TOUCH:
        right = _bracketed(e.b, at, LEVEL["+"]) + TOUCH[e.op]
    return f"{left}{e.op}{right}", level


def _function(e: Call, at: Addresses) -> tuple[str, int]:
    entry = FUNCTIONS[e.name]
    if e.name in ("least", "greatest"):  # Gnumeric passes over TRUE even where it stands alone
        return entry.cell.replace("{*}", ",".join(_as_number(a, at) for a in e.args)), ATOM
    args = [_bracketed(a, at, entry.inner) for a in e.args]
    if "{*}" in entry.cell:
        return entry.cell.replace("{*}", ",".join(args)), entry.level or ATOM
    return entry.cell.format(*args), entry.level or ATOM


def _lookup(e: Expr, at: Addresses) -> str:
    if isinstance(e, Column):
        return f"INDEX({at.column(e.table, e.column)},{_write(e.line, at)[0]})"
    if isinstance(e, Match):
        key = "&".join(_bracketed(p, at, LEVEL["+"]) for p in e.parts)
        column = at.column(e.table, e.column)
        return f"MATCH({key}+1E-9,{column},1)" if e.below else f"MATCH({key},{column},0)"
    if isinstance(e, Tally):
        tests = [f"({at.column(e.table, c)}{op}{_bracketed(v, at, LEVEL['+'])}{TOUCH.get(op, '')})"
                 for c, op, v in e.tests]
        return f"SUMPRODUCT({'*'.join(tests)}*1)"
    if isinstance(e, SumOver):
        return f"SUMPRODUCT({_as_number(e.a, at)})"
    if isinstance(e, Extreme):
        return f"{e.name}({at.series(e.series)})"
    if isinstance(e, Total):
        where = ""
        if e.where is not None:
            row, word = e.where
            where = f"({at.across(row)}={_write(word, at)[0]})*1,"
        return f"SUMPRODUCT({where}{at.across(e.by)},{at.across(e.a)})"
    if isinstance(e, Key):
        return at.key(e.table, e.number)
    if isinstance(e, Series):
        return at.series(e)
    return _placed(e, at)


def _placed(e: Expr, at: Addresses) -> str:
    """Write what stands in one column of several, or at one place of a series."""
    # SUM and SUMIF make 0 of the dash that stands where a type is not used; SUM(INDEX()) does
    # not in every engine.
    if isinstance(e, Picked):
        number = _write(e.number, at)[0]
        if unit_of(e.a) == TEXT:
            return f"INDEX({at.across(e.a)},1,{number})"
        return f"SUMIF({at.type_numbers()},{number},{at.across(e.a)})"
    if isinstance(e, OfType):
        text = at.of_type(e.a, e.letter)
        return text if unit_of(e.a) == TEXT else f"SUM({text})"
    if isinstance(e, Ranked):
        return f"LARGE({at.series(e.series)},{_write(e.number, at)[0]})"
    if isinstance(e, AtPlace):
        return f"INDEX({at.series(e.series)},{_write(e.number, at)[0]})"
    if isinstance(e, PlaceOf):
        return f"MATCH({_write(e.x, at)[0]},{at.series(e.series)},0)"
    if isinstance(e, Shown):
        return f"FIXED({_bracketed(e.a, at, LEVEL['+'])}+1E-9,{e.digits})"
    if isinstance(e, OrDash):
        return f'IF({_write(e.test, at)[0]},{_as_number(e.a, at)},"{DASH}")'
    raise TypeError(type(e).__name__)
