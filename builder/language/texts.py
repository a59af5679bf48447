"""The formula in symbols, and the live line with the numbers put in.

Both come from one walk over the expression: pieces of text, and between them the operands.
In symbols an operand is its symbol; in numbers it is its value, shown to the row's decimals.
"""

from __future__ import annotations

import re
from functools import cache

from .cells import ATOM, LEVEL, Addresses, cell_formula, number, quoted
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
from .rows import Ask, Constant, Row, Series
from .units import TEXT, conversion

SIGNS = {"*": " × ", "/": " / ", "+": " + ", "-": " − ", "<=": " ≤ ", ">=": " ≥ ", "<": " < ",
         ">": " > ", "=": " is "}
RAISED = str.maketrans("0123456789.-", "⁰¹²³⁴⁵⁶⁷⁸⁹·⁻")
LONGEST_PIECE = 250
"""A text inside a formula may have 255 characters."""
FINE = 1000
"""A value below this, in steps of its last decimal, is small: rounding it is felt."""


OPERANDS = (Row, Series, Column, Match, Total, Key, SumOver, OfType)
"""What stands for itself, however it is written."""
WORDED = (Picked, Ranked, AtPlace, PlaceOf, Shown, Joined, Tally, Extreme)
"""What stands for itself and reads in words, so that it takes brackets beside a sign."""


@cache
def symbols(e: Expr) -> str:
    """Return an expression as the inspector reads it, in symbols.

    Two sheets show each row's, so it is kept.
    """
    return "".join(p if isinstance(p, str) else _symbol(p) for p in pieces(e))


def numbers(e: Expr, at: Addresses, fine: bool = False) -> str:
    """Return a formula (without ``=``) that gives the symbols' line with the values put in.

    ``fine`` shows a small value to two decimals more than its row does, so that the line can be
    multiplied out by hand.
    """
    joined: list = []
    for piece in pieces(e):
        text = piece if isinstance(piece, str) else fixed_text(piece)
        if text is None:
            joined.append(piece)
        elif joined and isinstance(joined[-1], str):
            joined[-1] += text
        else:
            joined.append(text)
    out = []
    for piece in joined:
        if isinstance(piece, str):
            out += [quoted(piece[i : i + LONGEST_PIECE])
                    for i in range(0, len(piece), LONGEST_PIECE)]
        else:
            out.append(_value(piece, at, fine))
    return "&".join(out)


def _symbol(e: Expr) -> str:
    if isinstance(e, Row | Series):
        return e.symbol or f"“{e.label}”"
    if isinstance(e, Column):
        return f"“{e.column or e.table.key}”{_where(e)}"
    if isinstance(e, Match):
        return f"line of {e.table.title}"
    if isinstance(e, Total):
        where = f" where {e.where[0].shown} is {_symbol(e.where[1])}" if e.where else ""
        return f"Σ {e.by.shown}·{e.a.shown}{where}"
    if isinstance(e, Key):
        return e.table.keys[e.number]
    if isinstance(e, Tally):
        tests = [f"{column}{SIGNS[op]}{symbols(value)}" for column, op, value in e.tests]
        return f"lines of {e.table.title} with {' and '.join(tests)}"
    if isinstance(e, SumOver):
        return f"Σ({symbols(e.a)})"
    if isinstance(e, Extreme):
        return f"{'largest' if e.name == 'MAX' else 'smallest'} {e.series.symbol}"
    if isinstance(e, Base):
        return _symbol(e.a)
    return _symbol_of_place(e)


def _where(e: Column) -> str:
    """Say which line an entry comes from, where the entry's name alone leaves it open."""
    if isinstance(e.line, Match):
        return f" of {e.table.title}"
    nextline = isinstance(e.line, Op) and e.line.op == "+" and isinstance(e.line.b, Num)
    return " a line on" if nextline and e.line.b.value == 1 else ""


def _symbol_of_place(e: Expr) -> str:
    if isinstance(e, Picked):
        return f"{_symbol(e.a)} of type {symbols(e.number)}"
    if isinstance(e, OfType):
        return f"{_symbol(e.a)} of {e.letter}"
    if isinstance(e, Ranked):
        return f"largest but some of {e.series.symbol}, number {symbols(e.number)}"
    if isinstance(e, AtPlace):
        return f"{e.series.symbol} at {symbols(e.number)}"
    if isinstance(e, PlaceOf):
        return f"place of {symbols(e.x)} in {e.series.symbol}"
    if isinstance(e, Shown):
        return symbols(e.a)
    if isinstance(e, Joined):
        return " ".join(symbols(p).strip() for p in e.parts)
    raise TypeError(type(e).__name__)


class Base:
    """An operand raised to a power: its value takes brackets where it is negative."""

    def __init__(self, a: Expr):
        self.a = a


def fixed_text(e: Expr | Base) -> str | None:
    """Return how an operand reads that is the same in symbols and in numbers; None for others."""
    if isinstance(e, Base):
        return fixed_text(e.a)
    return e.symbol if isinstance(e, Constant) and e.plain else None


def _value(e: Expr | Base, at: Addresses, fine: bool) -> str:
    if isinstance(e, Base):
        shown, below = _value(e.a, at, fine), f"({cell_formula(e.a, at)}<0)*1"
        if isinstance(e.a, Ask | Constant) and (getattr(e.a, "least", 0) or 0) >= 0:
            return shown
        return f'LEFT("(",{below})&{shown}&LEFT(")",{below})'
    formula = cell_formula(e, at)
    if unit_of(e) == TEXT:
        return f'"“"&{formula}&"”"'
    digits = str(digits_of(e))
    if fine and not counted(e):
        digits += f"+2*(ABS({formula})+1E-9<{number(max(1, FINE / 10 ** digits_of(e)))})"
    return f"FIXED({formula}+1E-9,{digits})"


def counted(e: Expr) -> bool:
    """Return whether a value is a count, a place, a line number: whole as it is."""
    if isinstance(e, Picked | OfType):
        return counted(e.a)
    unit = e.unit if isinstance(e, Row) else None
    return digits_of(e) == 0 and (unit in ("", "each", None) or getattr(e, "whole", False))


def digits_of(e: Expr) -> int:
    """Return the decimals with which a number is shown, the least."""
    if isinstance(e, Match | Tally | PlaceOf) or getattr(e, "whole", False):
        return 0
    if isinstance(e, Constant):
        return len(f"{e.value:.6f}".rstrip("0").partition(".")[2])
    if isinstance(e, Extreme | Ranked | AtPlace):
        return e.series.rows[0].digits
    if isinstance(e, Picked | OfType):
        return digits_of(e.a)
    return e.digits if isinstance(e, Row) else 2


def pieces(e: Expr) -> list:
    """Return text pieces and operands in reading order."""
    return _pieces(e)[0]


def _pieces(e: Expr) -> tuple[list, int]:
    """Return text pieces and operands in reading order, and how tightly they bind."""
    if isinstance(e, OPERANDS):
        return [e], ATOM
    if isinstance(e, WORDED):
        return [e], 0
    if isinstance(e, Num):
        return [number(e.value) if e.value >= 0 else f"({number(e.value)})"], ATOM
    if isinstance(e, Text):
        return [f"“{e.value}”"], ATOM
    if isinstance(e, Op):
        return _operation(e)
    if isinstance(e, Call):
        return _function(e)
    if isinstance(e, Convert):
        sign, _, text = conversion(unit_of(e.a), e.unit)
        return [*_wrapped(e.a, LEVEL["*"]), f"{SIGNS[sign]}{text}"], LEVEL["*"]
    if isinstance(e, Bare):
        return _pieces(e.a)
    if isinstance(e, OrDash):
        return [*_pieces(e.a)[0], " if ", *_pieces(e.test)[0], ", else a dash"], 0
    if isinstance(e, Negative):
        return ["−", *_wrapped(e.a, LEVEL["*"], strict=True)], LEVEL["+"]
    raise TypeError(type(e).__name__)


def _wrapped(e: Expr, level: int, strict: bool = False) -> list:
    pieces, own = _pieces(e)
    return ["(", *pieces, ")"] if own < level or (strict and own == level) else pieces


def _operation(e: Op) -> tuple[list, int]:
    level = LEVEL[e.op]
    if e.op == "^":
        base = _wrapped(e.a, level, strict=True)
        if isinstance(e.a, Constant) and e.a.plain and (e.a.unit or e.a.value < 0):
            base = ["(", *base, ")"]
        elif len(base) == 1 and not isinstance(base[0], str):
            base = [Base(base[0])]
        if isinstance(e.b, Num) or (isinstance(e.b, Constant) and e.b.plain):
            return [*base, number(e.b.value).translate(RAISED)], level
        return [*base, "^", *_wrapped(e.b, level, strict=True)], level
    right = _wrapped(e.b, level, strict=e.op not in ("+", "*"))
    left = _wrapped(e.a, level, strict=level == LEVEL["="])
    return [*left, SIGNS[e.op], *right], level


@cache
def _parts_of(pattern: str) -> list[str]:
    """Return the words of a function's pattern, and between them its arguments in braces."""
    return re.split(r"(\{[^}]*\})", pattern)


def _function(e: Call) -> tuple[list, int]:
    entry = FUNCTIONS[e.name]
    words = entry.level < ATOM
    # What reads in words binds less than any sign.
    args = [_wrapped(a, max(1, entry.inner) if words else 1) for a in e.args]
    if e.name == "when":
        args[0] = _pieces(e.args[0])[0]
    out: list = []
    for part in _parts_of(entry.symbol):
        if part[1:-1].isdigit():
            out += args[int(part[1])]
        elif part.startswith("{*"):
            between = part[2:-1] or ", "
            for place, arg in enumerate(args):
                out += ([between] if place else []) + arg
        elif part:
            out.append(part)
    return out, 0 if words else ATOM
