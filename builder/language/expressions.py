"""The parts a formula is made of.

Arithmetic on rows makes trees of these parts.  ``and``, ``or``, ``if``, ``min()`` and chained
comparisons would be decided by Python while the sheet is being declared, and not by the
spreadsheet, so they raise a sentence instead.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from .faults import Fault


class Expr:
    """Anything a formula can hold: a row, a number, a text, or operations on them."""

    __slots__ = ()

    def rows_of(self) -> tuple:
        """Return the rows this leaf stands for: none, unless it is a row or a series."""
        return ()

    def __add__(self, other):
        return Op("+", self, lift(other))

    def __radd__(self, other):
        return self if isinstance(other, int) and other == 0 else Op("+", lift(other), self)

    def __sub__(self, other):
        return Op("-", self, lift(other))

    def __rsub__(self, other):
        return Op("-", lift(other), self)

    def __mul__(self, other):
        return Op("*", self, lift(other))

    def __rmul__(self, other):
        return Op("*", lift(other), self)

    def __truediv__(self, other):
        return Op("/", self, lift(other))

    def __rtruediv__(self, other):
        return Op("/", lift(other), self)

    def __pow__(self, other):
        return Op("^", self, lift(other))

    def __rpow__(self, other):
        return Op("^", lift(other), self)

    def __neg__(self):
        return Negative(self)

    def __lt__(self, other):
        return Op("<", self, lift(other))

    def __le__(self, other):
        return Op("<=", self, lift(other))

    def __gt__(self, other):
        return Op(">", self, lift(other))

    def __ge__(self, other):
        return Op(">=", self, lift(other))

    def is_(self, other):
        """Return the test that this equals a word or a whole number."""
        return Op("=", self, lift(other))

    def in_(self, unit: str):
        """Return this quantity in another unit; the factor shows in the formula."""
        return Convert(self, unit)

    def __bool__(self):
        raise Fault(
            "a comparison of quantities is decided in the sheet, not in Python: "
            "use when(), all_of(), any_of(), least(), greatest()"
        )

    def __round__(self, digits=None):
        raise Fault("nothing is rounded inside a calculation; whole_up() where pieces are bought")

    def __abs__(self):
        raise Fault("use absolute()")

    __hash__ = object.__hash__


class Num(Expr):
    """A whole number of statics or geometry."""

    __slots__ = ("value",)

    def __init__(self, value: float):
        self.value = value


class Text(Expr):
    """A word."""

    __slots__ = ("value",)

    def __init__(self, value: str):
        self.value = value


class Op(Expr):
    """Two operands and the sign between them."""

    __slots__ = ("a", "b", "op")

    def __init__(self, op: str, a: Expr, b: Expr):
        self.op, self.a, self.b = op, a, b


class Negative(Expr):
    """The same with its sign turned."""

    __slots__ = ("a",)

    def __init__(self, a: Expr):
        self.a = a


class Call(Expr):
    """A function of the closed list and its arguments."""

    __slots__ = ("args", "name")

    def __init__(self, name: str, args: tuple[Expr, ...]):
        self.name, self.args = name, args


class Convert(Expr):
    """A quantity turned into another unit."""

    __slots__ = ("a", "unit")

    def __init__(self, a: Expr, unit: str):
        self.a, self.unit = a, unit


class Bare(Expr):
    """The bare number of a quantity in a stated unit, for an empirical equation."""

    __slots__ = ("a", "unit")

    def __init__(self, a: Expr, unit: str):
        self.a, self.unit = a, unit


class Column(Expr):
    """The entry of a table's column at a line number; without a column, the line's key."""

    __slots__ = ("column", "line", "table")

    def __init__(self, table, line: Expr, column: str | None):
        self.table, self.line, self.column = table, line, column


class Match(Expr):
    """The line number of a table at which a word stands.

    ``parts`` are joined to the word looked for.  ``column`` is the column searched; with
    ``below`` it is a rising column of numbers and the last line not above the value is taken.
    """

    __slots__ = ("below", "column", "parts", "table")

    def __init__(self, table, parts: tuple[Expr, ...], column: str | None = None, below=False):
        self.table, self.parts, self.column, self.below = table, parts, column, below


class Tally(Expr):
    """How many lines of a table pass some tests; each is (column, ``=`` or ``<``, value)."""

    __slots__ = ("table", "tests")

    def __init__(self, table, tests: tuple[tuple[str, str, Expr], ...]):
        self.table, self.tests = table, tests


class SumOver(Expr):
    """The sum, over the rows of one or more series of equal length, of an expression."""

    __slots__ = ("a",)

    def __init__(self, a: Expr):
        self.a = a


class Extreme(Expr):
    """The largest or smallest of a series (``MAX`` or ``MIN``)."""

    __slots__ = ("name", "series")

    def __init__(self, name: str, series: Expr):
        self.name, self.series = name, series


class Total(Expr):
    """A quantity of every section times how many of it are built, added up.

    ``where`` is None, or a row of words and the word it must be for a section to count.
    """

    __slots__ = ("a", "by", "where")

    def __init__(self, a: Expr, by: Expr, where: tuple[Expr, Expr] | None = None):
        self.a, self.by, self.where = a, by, where


class Key(Expr):
    """The key of one line of a table: the cell in which it stands."""

    __slots__ = ("number", "table")

    def __init__(self, table, number: int):
        self.table, self.number = table, number


class Picked(Expr):
    """A section quantity in the column of one section type, by its number (1 is A)."""

    __slots__ = ("a", "number")

    def __init__(self, a: Expr, number: Expr):
        self.a, self.number = a, number


class OfType(Expr):
    """A section quantity in the column of one section type, by its letter."""

    __slots__ = ("a", "letter")

    def __init__(self, a: Expr, letter: str):
        self.a, self.letter = a, letter


class Ranked(Expr):
    """The largest but some of a series: its ``number``-th, counted from 1."""

    __slots__ = ("number", "series")

    def __init__(self, series: Expr, number: Expr):
        self.series, self.number = series, number


class AtPlace(Expr):
    """The row of a series at a calculated place, counted from 1."""

    __slots__ = ("number", "series")

    def __init__(self, series: Expr, number: Expr):
        self.series, self.number = series, number


class PlaceOf(Expr):
    """The place, counted from 1, at which a value first stands in a series."""

    __slots__ = ("series", "x")

    def __init__(self, series: Expr, x: Expr):
        self.series, self.x = series, x


class Shown(Expr):
    """A number as text, with a fixed count of decimals."""

    __slots__ = ("a", "digits")

    def __init__(self, a: Expr, digits: int):
        self.a, self.digits = a, digits


class Joined(Expr):
    """Words one after another."""

    __slots__ = ("parts",)

    def __init__(self, parts: tuple[Expr, ...]):
        self.parts = parts


class OrDash(Expr):
    """A number where a test holds, else a dash; nothing may be worked out from it."""

    __slots__ = ("a", "test")

    def __init__(self, test: Expr, a: Expr):
        self.test, self.a = test, a


def lift(x) -> Expr:
    """Make an expression of a number or a word; leave an expression as it is.

    Raises:
        Fault: it is neither.
    """
    if isinstance(x, Expr):
        return x
    if isinstance(x, bool):
        raise Fault("True or False is no quantity")
    if isinstance(x, int | float) and math.isfinite(x):
        return Num(x)
    if isinstance(x, str):
        return Text(x)
    raise Fault(f"{x!r} is no quantity")


def bare(a, unit: str) -> Bare:
    """Return the bare number of a quantity in ``unit``, for an equation that is not in units."""
    return Bare(lift(a), unit)


def picked(a, number) -> Picked:
    """Return a section quantity in the column of the type of a number proved 1 to 6."""
    return Picked(lift(a), lift(number))


def of_type(a, letter: str) -> OfType:
    """Return a section quantity in the column of one type, ``A`` to ``F``.

    A number is 0, a word a dash where that type is not used.

    Raises:
        Fault: there is no such type.
    """
    if letter not in tuple("ABCDEF"):
        raise Fault(f"there is no section type '{letter}'")
    return OfType(lift(a), letter)


def nth_largest(series, number) -> Ranked:
    """Return the ``number``-th largest of a series."""
    return Ranked(series, lift(number))


def at_place(series, number) -> AtPlace:
    """Return the row of a series at a calculated place, proved to be one of its own."""
    return AtPlace(series, lift(number))


def place_of(series, x) -> PlaceOf:
    """Return where in a series a value stands that is one of the series, the first of equals."""
    return PlaceOf(series, lift(x))


def shown(a, digits: int = 0) -> Shown:
    """Return a number as text with a fixed count of decimals and commas at thousands."""
    return Shown(lift(a), digits)


def joined(*parts) -> Joined:
    """Return words one after another: texts, rows of words, ``shown()`` numbers."""
    return Joined(tuple(lift(p) for p in parts))


def or_dash(test, a) -> OrDash:
    """Return a number where a test holds, else a dash, for a row that nothing reads."""
    return OrDash(lift(test), lift(a))


def _two(e):
    return (e.a, e.b)


def _one(e):
    return (e.a,)


_PARTS = {
    Op: _two,
    Call: lambda e: e.args,
    Convert: _one,
    Bare: _one,
    Negative: _one,
    SumOver: _one,
    Column: lambda e: (e.line,),
    Match: lambda e: e.parts,
    Tally: lambda e: tuple(value for _, _, value in e.tests),
    Extreme: lambda e: (e.series,),
    Total: lambda e: (e.a, e.by, *(e.where or ())),
    Picked: lambda e: (e.a, e.number),
    OfType: _one,
    Ranked: lambda e: (e.series, e.number),
    AtPlace: lambda e: (e.series, e.number),
    PlaceOf: lambda e: (e.series, e.x),
    Shown: _one,
    Joined: lambda e: e.parts,
    OrDash: lambda e: (e.test, e.a),
}


class Rules(dict):
    """What is done with each kind of expression: class → function of it.

    A class that is not listed takes the rule of its nearest parent; ``object`` may be listed for
    the others.  A long row of ``isinstance`` takes several times as long.
    """

    def __missing__(self, kind: type):
        rule = self[kind] = next(self[parent] for parent in kind.__mro__ if parent in self)
        return rule


def children(e: Expr) -> tuple[Expr, ...]:
    """Return the parts an expression is made of; a row has none."""
    parts = _PARTS.get(type(e))
    return parts(e) if parts else ()


def leaves(e: Expr) -> Iterator[Expr]:
    """Yield the leaves of a tree from left to right: rows, series, numbers, words."""
    parts = children(e)
    if not parts:
        yield e
    for part in parts:
        yield from leaves(part)


def dependencies(e: Expr) -> list:
    """Return the rows an expression rests on directly, each once, in reading order."""
    found: dict = {}
    waiting = [e]
    while waiting:
        part = waiting.pop()
        inner = children(part)
        if inner:
            waiting.extend(reversed(inner))
        else:
            for row in part.rows_of():
                found[row] = None
    return list(found)


def rebuilt(e: Expr, swap) -> Expr:
    """Return the tree with every leaf replaced by ``swap(leaf)``."""
    if isinstance(e, Op):
        return Op(e.op, rebuilt(e.a, swap), rebuilt(e.b, swap))
    if isinstance(e, Call):
        return Call(e.name, tuple(rebuilt(a, swap) for a in e.args))
    if isinstance(e, Convert | Bare):
        return type(e)(rebuilt(e.a, swap), e.unit)
    if isinstance(e, Negative | SumOver):
        return type(e)(rebuilt(e.a, swap))
    if isinstance(e, Column):
        return Column(e.table, rebuilt(e.line, swap), e.column)
    if isinstance(e, Match):
        return Match(e.table, tuple(rebuilt(p, swap) for p in e.parts), e.column, e.below)
    if isinstance(e, Tally):
        return Tally(e.table, tuple((c, op, rebuilt(v, swap)) for c, op, v in e.tests))
    if isinstance(e, Extreme):
        return Extreme(e.name, rebuilt(e.series, swap))
    if isinstance(e, Ranked | AtPlace):
        return type(e)(rebuilt(e.series, swap), rebuilt(e.number, swap))
    if isinstance(e, PlaceOf):
        return PlaceOf(rebuilt(e.series, swap), rebuilt(e.x, swap))
    if isinstance(e, Picked):
        return Picked(rebuilt(e.a, swap), rebuilt(e.number, swap))
    if isinstance(e, OfType):
        return OfType(rebuilt(e.a, swap), e.letter)
    if isinstance(e, Shown):
        return Shown(rebuilt(e.a, swap), e.digits)
    if isinstance(e, Joined):
        return Joined(tuple(rebuilt(p, swap) for p in e.parts))
    if isinstance(e, OrDash):
        return OrDash(rebuilt(e.test, swap), rebuilt(e.a, swap))
    if isinstance(e, Total):
        where = None if e.where is None else tuple(rebuilt(w, swap) for w in e.where)
        return Total(rebuilt(e.a, swap), rebuilt(e.by, swap), where)
    return swap(e)
