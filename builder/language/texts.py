"""The formula in symbols, and the live line with the numbers put in.

Both come from one walk over the expression: pieces of text, and between them the operands.
In symbols an operand is its symbol; in numbers it is its value, shown to the row's decimals.
"""

from __future__ import annotations

import re

from .cells import ATOM, LEVEL, Addresses, cell_formula, number, quoted
from .expressions import (
    Bare,
    Call,
    Column,
    Convert,
    Expr,
    Extreme,
    Key,
    Match,
    Negative,
    Num,
    Op,
    SumOver,
    Tally,
    Text,
    Total,
)
from .functions import FUNCTIONS
from .proofs import unit_of
from .rows import Constant, Row, Series
from .units import TEXT, conversion

SIGNS = {"*": " × ", "/": " / ", "+": " + ", "-": " − ", "<=": " ≤ ", ">=": " ≥ ", "<": " < ",
         ">": " > ", "=": " is "}
RAISED = str.maketrans("0123456789.-", "⁰¹²³⁴⁵⁶⁷⁸⁹·⁻")
LONGEST_PIECE = 250
"""A text inside a formula may have 255 characters."""


def symbols(e: Expr) -> str:
    """Return an expression as the inspector reads it, in symbols."""
    return "".join(p if isinstance(p, str) else _symbol(p) for p in _pieces(e)[0])


def numbers(e: Expr, at: Addresses) -> str:
    """Return a formula (without ``=``) that gives the symbols' line with the values put in."""
    joined: list = []
    for piece in _pieces(e)[0]:
        text = piece if isinstance(piece, str) else _fixed_text(piece)
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
            out.append(_value(piece, at))
    return "&".join(out)


def _symbol(e: Expr) -> str:
    if isinstance(e, Row | Series):
        return e.symbol or f"“{e.label}”"
    if isinstance(e, Column):
        where = f" of {e.table.title}" if isinstance(e.line, Match) else ""
        return f"“{e.column}”{where}"
    if isinstance(e, Match):
        return f"line of {e.table.title}"
    if isinstance(e, Total):
        where = f" where {e.where[0].shown} is {_symbol(e.where[1])}" if e.where else ""
        return f"Σ {e.by.shown}·{e.a.shown}{where}"
    if isinstance(e, Key):
        return e.table.keys[e.number]
    raise TypeError(type(e).__name__)


def _fixed_text(e: Expr) -> str | None:
    return e.symbol if isinstance(e, Constant) and e.plain else None


def _value(e: Expr, at: Addresses) -> str:
    formula = cell_formula(e, at)
    if unit_of(e) == TEXT:
        return formula
    digits = e.digits if isinstance(e, Row) else 2
    if isinstance(e, Match) or getattr(e, "whole", False):
        digits = 0
    if isinstance(e, Constant):
        digits = max(0, len(repr(e.value).partition(".")[2]))
    return f"FIXED({formula}+1E-9,{digits})"


def _pieces(e: Expr) -> tuple[list, int]:
    """Return text pieces and operands in reading order, and how tightly they bind."""
    if isinstance(e, Row | Series | Column | Match | Total | Key):
        return [e], ATOM
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
    if isinstance(e, Negative):
        return ["−", *_wrapped(e.a, LEVEL["*"], strict=True)], LEVEL["+"]
    if isinstance(e, Tally):
        out: list = [f"lines of {e.table.title} with "]
        for place, (column, op, value) in enumerate(e.tests):
            out += [" and "] * (place > 0) + [f"{column}{SIGNS[op]}", *_pieces(value)[0]]
        return out, 1
    if isinstance(e, SumOver):
        return ["Σ(", *_pieces(e.a)[0], ")"], ATOM
    if isinstance(e, Extreme):
        return ["largest " if e.name == "MAX" else "smallest ", e.series], ATOM
    raise TypeError(type(e).__name__)


def _wrapped(e: Expr, level: int, strict: bool = False) -> list:
    pieces, own = _pieces(e)
    return ["(", *pieces, ")"] if own < level or (strict and own == level) else pieces


def _operation(e: Op) -> tuple[list, int]:
    level = LEVEL[e.op]
    if e.op == "^":
        base = _wrapped(e.a, level, strict=True)
        if isinstance(e.b, Num) or (isinstance(e.b, Constant) and e.b.plain):
            return [*base, number(e.b.value).translate(RAISED)], level
        return [*base, "^", *_wrapped(e.b, level, strict=True)], level
    right = _wrapped(e.b, level, strict=e.op not in ("+", "*"))
    return [*_wrapped(e.a, level), SIGNS[e.op], *right], level


def _function(e: Call) -> tuple[list, int]:
    entry = FUNCTIONS[e.name]
    args = [_wrapped(a, entry.inner) for a in e.args]
    out: list = []
    for part in re.split(r"(\{[^}]*\})", entry.symbol):
        if re.fullmatch(r"\{\d\}", part):
            out += args[int(part[1])]
        elif part.startswith("{*"):
            between = part[2:-1] or ", "
            for place, arg in enumerate(args):
                out += ([between] if place else []) + arg
        elif part:
            out.append(part)
    return out, entry.level if entry.level else 1
