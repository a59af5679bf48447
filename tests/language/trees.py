"""Random formulas over a few rows and tables, and the sheets on which they are worked out.

A ``Grower`` grows trees from any source of choices: a seeded ``random.Random``, or the one that
hypothesis gives, which it can shrink.  Units are kept right on the way: all is bare numbers but
for lengths, which come in by ``in_()`` and ``bare()``.
"""

from __future__ import annotations

import cmath
from collections.abc import Callable
from datetime import datetime

from builder.language import (
    Ask,
    Constant,
    Expr,
    Series,
    Table,
    Text,
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
    smallest,
    sum_over,
    tally,
    tangent,
    to_cent,
    when,
    whole_down,
    whole_up,
)
from builder.language.cells import cell_formula
from builder.language.expressions import Op
from builder.language.units import TEXT
from builder.language.values import value_of
from builder.resolve.cells import Book, Cell, SheetPlan
from builder.resolve.places import Places, Where

COLOURS = Table("colours", "Colours", "own", "colour", {}, ["red", "green", "blue"], [(), (), ()])
PARTS = Table(
    "parts", "Parts", "own", "part",
    {"size": "", "rise": "", "colour": TEXT, "length": "ft"},
    ["red small", "red large", "green small", "green large", "blue small", "blue large"],
    [(0.5, -2, "red", 1.5), (2.25, 0, "blue", 3), (-1, 1.25, "red", 0.25), (4, 3, "green", 10),
     (0.125, 7.5, "green", 2), (3, 20, "blue", 6)],
)
PLAIN = Constant("plain", "A plain constant", "", "", 1.15, "own", "", "")
NAMED = Constant("named", "A named constant", "k_0", "", 0.375, "own", "", "")


def ask(symbol: str, low: float, high: float, unit: str = "") -> Ask:
    """Return a number to be filled in, shown to six decimals."""
    return Ask(None, f"Input {symbol}", symbol, unit, least=low, most=high, digits=6)


NUMBERS = [ask("a", -3, 3), ask("b", 0.5, 8), ask("c", 0, 100), ask("d", -40, -0.25),
           ask("w", 1, 12)]
LENGTHS = [ask("L", 0.5, 40, "ft"), ask("B", -2, 24, "ft")]
FIRST = Series("M", [ask(f"M{k}", -5, 9) for k in range(4)])
SECOND = Series("N", [ask(f"N{k}", 0.25, 6) for k in range(4)])
COLOUR = Ask(None, "Colour", "", TEXT, choices=COLOURS)
SIZE = Ask(None, "Size", "", TEXT, choices=Table("sizes", "Sizes", "own", "size", {},
                                                 ["small", "large"], [(), ()]))
ROWS = [*NUMBERS, *LENGTHS, *FIRST, *SECOND, COLOUR, SIZE]

Choices = Callable[[int], int]
"""Picks one of so many."""


def values_in_limits(pick: Choices) -> dict:
    """Return a value for every row: the ends of its limits, 0, a whole number, a fraction."""
    known: dict = {}
    for row in ROWS:
        if row.choices is not None:
            known[row] = row.choices.keys[pick(len(row.choices.keys))]
            continue
        low, high = row.least, row.most
        step = (high - low) / 1000
        some = [low, high, round(low + pick(1001) * step, 4), float(round((low + high) / 2))]
        some += [0.0] if low <= 0 <= high else []
        known[row] = some[pick(len(some))]
    return known


class Grower:
    """Grows trees; ``plain`` leaves out all but arithmetic, roots and conversions."""

    def __init__(self, pick: Choices, plain: bool = False):
        self.pick, self.plain = pick, plain

    def one(self, *makers: Callable[[], Expr]) -> Expr:
        """Return what one of some makers makes."""
        return makers[self.pick(len(makers))]()

    def of(self, things):
        """Return one of some things."""
        return things[self.pick(len(things))]

    def number(self, depth: int) -> Expr:
        """Return a formula whose value is a bare number."""
        if depth <= 0:
            return self.leaf()
        less = depth - 1
        arithmetic = [self.leaf, lambda: self.sums(less), lambda: self.sums(less),
                      lambda: self.power(less), lambda: -self.number(less),
                      lambda: root(self.number(less)), lambda: self.from_length(less)]
        if self.plain:
            return self.one(*arithmetic)
        return self.one(*arithmetic, lambda: self.call(less), lambda: self.call(less),
                        lambda: self.call(less), lambda: self.looked_up(less),
                        lambda: self.over_series(less),
                        lambda: self.test(less) * self.number(less))

    def leaf(self) -> Expr:
        """Return a row, a constant or a whole number."""
        return self.one(lambda: self.of(NUMBERS), lambda: self.of(NUMBERS),
                        lambda: self.of([PLAIN, NAMED]),
                        lambda: self.of([1, 2, 3, 12, 0.5, 0, -1, -4]) + Op("*", NAMED, NAMED)
                        if self.pick(3) else self.of(NUMBERS) * self.of([2, 3, 12, -4, 0.5]))

    def sums(self, depth: int) -> Expr:
        """Return a sum, difference, product or quotient."""
        return Op(self.of("+-*/"), self.number(depth), self.number(depth))

    def power(self, depth: int) -> Expr:
        """Return a power: of whole and broken exponents, and of a row as exponent."""
        base = self.number(depth)
        if self.pick(4) == 0:
            return Op("^", base, self.of([PLAIN, NAMED, NUMBERS[0]]))
        return base ** self.of([2, 3, 2, -1, -2, 0.5, 1])

    def from_length(self, depth: int) -> Expr:
        """Return the bare number of a length, in inches or feet."""
        length = self.length(depth)
        return self.one(lambda: bare(length.in_("in"), "in"), lambda: bare(length, "ft"),
                        lambda: bare((length.in_("in") / 2).in_("ft"), "ft"),
                        lambda: bare((length * self.of(LENGTHS)).in_("in²"), "in²"))

    def length(self, depth: int) -> Expr:
        """Return a length in feet."""
        if depth <= 0:
            return self.of(LENGTHS)
        less = depth - 1
        return self.one(lambda: self.of(LENGTHS),
                        lambda: self.length(less) + self.length(less),
                        lambda: self.length(less) - self.length(less),
                        lambda: -self.length(less),
                        lambda: self.length(less) * self.number(less),
                        lambda: self.length(less) / self.number(less))

    def test(self, depth: int) -> Expr:
        """Return a test."""
        if depth <= 0:
            return self.word(0).is_(self.of(COLOURS.keys))
        less = depth - 1
        return self.one(lambda: self.compared(less), lambda: self.compared(less),
                        lambda: self.word(less).is_(self.word(less)),
                        lambda: all_of(self.test(less), self.test(less)),
                        lambda: any_of(self.test(less), self.test(less)),
                        lambda: no(self.test(less)))

    def compared(self, depth: int) -> Expr:
        """Return the comparison of two numbers."""
        a, b = self.number(depth), self.number(depth)
        return self.one(lambda: a < b, lambda: a <= b, lambda: a > b, lambda: a >= b,
                        lambda: whole_up(a).is_(whole_down(b)))

    def word(self, depth: int) -> Expr:
        """Return a word."""
        if depth <= 0:
            return COLOUR
        return self.one(lambda: COLOUR, lambda: Text(self.of(COLOURS.keys)),
                        lambda: self.line()["colour"],
                        lambda: when(self.test(depth - 1), COLOUR, "green"))

    def line(self):
        """Return a line of the table of parts."""
        place = least(greatest(whole_down(self.number(1)), 1), len(PARTS.keys))
        return self.of([PARTS.find(COLOUR, " ", SIZE), PARTS.find("blue ", SIZE), PARTS.at(place),
                        PARTS.below("rise", greatest(self.number(1), -2))])

    def looked_up(self, depth: int) -> Expr:
        """Return an entry of a table, a line number, or a count of lines."""
        line = self.line()
        return self.one(lambda: line["size"], lambda: line["rise"], lambda: line.number,
                        lambda: bare(line["length"].in_("in"), "in"),
                        lambda: tally(PARTS, colour=self.word(depth)),
                        lambda: tally(PARTS, colour=COLOUR, rise_below=self.number(depth)),
                        lambda: tally(PARTS, size_below=self.number(depth)))

    def over_series(self, depth: int) -> Expr:
        """Return a sum over series, or the largest or smallest of one."""
        return self.one(lambda: largest(self.of([FIRST, SECOND])),
                        lambda: smallest(self.of([FIRST, SECOND])),
                        lambda: sum_over(self.in_series(depth) * SECOND),
                        lambda: sum_over(self.in_series(depth) + FIRST),
                        lambda: sum_over(FIRST > self.number(depth)))

    def in_series(self, depth: int) -> Expr:
        """Return a formula taken row by row."""
        if depth <= 0:
            return self.of([FIRST, SECOND, NUMBERS[1]])
        less = depth - 1
        return self.one(lambda: self.of([FIRST, SECOND]), lambda: self.number(less),
                        lambda: Op(self.of("+-*"), self.in_series(less), self.in_series(less)),
                        lambda: self.in_series(less) / SECOND,
                        lambda: self.in_series(less) ** self.of([2, 3]),
                        lambda: -self.in_series(less),
                        lambda: (FIRST > self.number(less)) * self.in_series(less))

    def call(self, depth: int) -> Expr:
        """Return a call of one function of the closed list."""
        return self.calls(depth)[self.of(sorted(self.calls(0)))]()

    def calls(self, depth: int) -> dict[str, Callable[[], Expr]]:
        """Return a maker of a call for every function of the closed list."""
        x = lambda: self.number(depth)  # noqa: E731
        return {
            "least": lambda: least(x(), x()),
            "greatest": lambda: greatest(x(), x(), x()),
            "absolute": lambda: absolute(x()),
            "root": lambda: root(absolute(x())),
            "choose": lambda: choose(least(greatest(whole_down(x()), 1), 3), x(), x(), x()),
            "when": lambda: when(self.test(depth), x(), x()),
            "all_of": lambda: all_of(self.test(depth), self.test(depth)) * x(),
            "any_of": lambda: x() + any_of(self.test(depth), self.test(depth), self.test(depth)),
            "no": lambda: x() - no(self.test(depth)),
            "whole_up": lambda: whole_up(x()),
            "whole_down": lambda: whole_down(x()),
            "nearest": lambda: nearest(x(), self.of([NUMBERS[1], NAMED, 2 * NUMBERS[4]])),
            "remainder": lambda: remainder(whole_down(absolute(least(x(), 99999))), 12),
            "to_cent": lambda: to_cent(x()),
            "exponential": lambda: exponential(least(x(), 9)),
            "logarithm": lambda: logarithm(greatest(x(), NAMED)),
            "sine": lambda: sine(x()),
            "cosine": lambda: cosine(x()),
            "tangent": lambda: tangent(arc_tangent(x())),
            "arc_tangent": lambda: arc_tangent(x()),
            "arc_cosine": lambda: arc_cosine(greatest(-1, least(1, x()))),
            "degrees": lambda: bare(degrees(x()), "deg"),
            "radians": lambda: radians(degrees(x())),
        }


def worth(e: Expr, known: dict) -> float | str | None:
    """Return the value in Python; None where there is none, or where none can be compared.

    None is told for a division by 0 and its like, for a value past 1E12, and where a change of
    the inputs in their thirteenth digit shows in the ninth of the value, since then the last
    bits of two engines may too.
    """
    found = []
    for nudge in (0.0, 1e-13, -1e-13):
        near = {r: v if isinstance(v, str) else v * (1 + nudge) for r, v in known.items()}
        try:
            value = value_of(e, near)
        except (ArithmeticError, ValueError):
            return None
        if isinstance(value, str):
            return value
        if isinstance(value, complex) or not cmath.isfinite(value) or abs(value) > 1e12:
            return None
        found.append(float(value))
    spread = max(found) - min(found)
    return found[0] if spread <= 1e-10 * max(1.0, abs(found[0])) else None


def placed() -> Places:
    """Return the places of all rows and tables on the sheet Data: a column of rows, two tables."""
    places = Places()
    for y, row in enumerate(ROWS, start=1):
        places.rows[row] = ("Data", y, 1)
    for y, row in enumerate((PLAIN, NAMED), start=len(ROWS) + 1):
        places.rows[row] = ("Data", y, 1)
    places.tables["parts"] = ("Data", 1, 3)
    return places


PLACES = placed()


def formulas_book(formulas: list[str], known: dict) -> Book:
    """Return a workbook: the values on Data, formulas (without ``=``) down column A of Work."""
    data, work = SheetPlan("Data", "Data"), SheetPlan("Work", "Work")
    data.cells.append(Cell(0, 0, "text", "Data", "title"))
    work.cells.append(Cell(0, 0, "text", "Work", "title"))
    for row, (_, y, x) in PLACES.rows.items():
        value = row.value if isinstance(row, Constant) else known[row]
        kind, style = ("text", "text") if isinstance(value, str) else ("number", "num.4")
        data.cells.append(Cell(y, x, kind, value, style))
    _, top, left = PLACES.tables["parts"]
    for y, (key, line) in enumerate(zip(PARTS.keys, PARTS.lines, strict=True), start=top):
        for x, value in enumerate((key, *line), start=left):
            kind, style = ("text", "text") if isinstance(value, str) else ("number", "num.4")
            data.cells.append(Cell(y, x, kind, value, style))
    for y, formula in enumerate(formulas, start=1):
        work.cells.append(Cell(y, 0, "formula", f"={formula}", "num.4"))
    for plan in (data, work):
        plan.last = (max(c.row for c in plan.cells), 8)
    return Book([data, work], {}, "Trees", "Trees", "Trees", datetime(2026, 1, 2), "0", "0")


def place_of(number: int) -> tuple[str, int, int]:
    """Return the place of a formula of ``formulas_book``, counted from 0."""
    return ("Work", 1 + number, 0)


def written(e: Expr) -> str:
    """Return the cell formula of a tree, as it stands on Work."""
    return cell_formula(e, Where(PLACES, "Work", section=False))
