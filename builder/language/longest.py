"""The longest words that a row, or the line with the numbers put in, can come to.

Row heights are fixed when the file is written, and the words change with what is typed: so a row
is made as high as its longest words take, whatever stands there now.
"""

from __future__ import annotations

from collections.abc import Iterable

from .expressions import (
    AtPlace,
    Call,
    Column,
    Expr,
    Joined,
    Key,
    OfType,
    OrDash,
    Picked,
    Shown,
    Text,
)
from .rows import Ask, Constant, Row, Series
from .texts import Base, counted, digits_of, fixed_text, pieces
from .units import TEXT

FIGURE, WHOLE = "0,000.00", "00,000,000"
"""Numbers as wide as most on the worked page, and as most without decimals: loads, stiffness (our
judgement, from looking)."""
COUNT, AMONG_WORDS, WEIGHT = "00", "000", "00,000"
"""A count or a place as wide as most; among words a number without its decimals, and pounds."""
FREE = 45
"""Letters of what the reader may write freely that are made room for (our judgement)."""
BRANCHES = {"when": 1, "choose": 1}
"""Functions that come to one of their arguments, and from which of them on."""


def longest_words(e: Expr) -> str:
    """Return the longest words that an expression of words can come to."""
    if isinstance(e, Text):
        return e.value
    if isinstance(e, Ask):
        return "n" * min(int(e.most), FREE) if e.choices is None else _longest(e.choices.keys)
    if isinstance(e, Constant):
        return str(e.value)
    if isinstance(e, Row):
        return longest_words(e.expr)
    if isinstance(e, Series):
        return _longest(map(longest_words, e.rows))
    if isinstance(e, Key):
        return _longest(e.table.keys)
    if isinstance(e, Column):
        return _longest(e.table.keys if e.column is None else e.table.entries(e.column))
    if isinstance(e, Call):
        return _longest(map(longest_words, e.args[BRANCHES[e.name]:]))
    if isinstance(e, Joined):
        return "".join(map(longest_words, e.parts))
    if isinstance(e, Shown):
        whole = WEIGHT if getattr(e.a, "unit", None) == "lb" else AMONG_WORDS
        return whole + ("." + "0" * e.digits if e.digits else "")
    if isinstance(e, OrDash | Picked | OfType):
        return longest_words(e.a)
    if isinstance(e, AtPlace):
        return longest_words(e.series)
    raise TypeError(f"{type(e).__name__} comes to no words")


def longest_numbers(e: Expr) -> str:
    """Return the line with the numbers put in, with every number as wide as most are."""
    return "".join(piece if isinstance(piece, str) else _operand(piece) for piece in pieces(e))


def _operand(e: Expr | Base) -> str:
    if (text := fixed_text(e)) is not None:
        return text
    if isinstance(e, Base):
        return _operand(e.a)
    if getattr(e, "unit", None) == TEXT or isinstance(e, Key):
        return f"“{longest_words(e)}”"
    if counted(e):
        return COUNT
    places = digits_of(e)
    return WHOLE if places == 0 else max(FIGURE, f"0.{'0' * (places + 2)}", key=len)


def _longest(words: Iterable[str]) -> str:
    return max(words, key=len, default="")
