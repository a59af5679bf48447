"""The range a row can take for any accepted input, by interval arithmetic.

It proves that no divisor can be 0 and no root of a negative number, whatever the reader types
within the limits of the inputs.  Ranges are wide, since an interval forgets which quantities
move together; a divisor that cannot be proved gets a floor with ``greatest()``.
"""

from __future__ import annotations

import itertools
import math

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
    Rules,
    Shown,
    SumOver,
    Tally,
    Text,
    Total,
    children,
)
from .faults import Fault
from .functions import FUNCTIONS
from .proofs import unit_of
from .rows import Ask, Constant, Row, Series, series_in
from .texts import symbols
from .units import TEXT, conversion

INF = math.inf
Span = tuple[float, float]
ANY: Span = (-INF, INF)
COUNTED: Span = (0.0, INF)
SECTION_TYPES = 6
"""A section quantity has a column for each of so many types."""


class Ranges:
    """Ranges of rows, each worked out once.

    ``given`` overrides the range of some rows: the cases of a family, a row replaced.
    """

    def __init__(self, given: dict[Row, Span] | None = None):
        self.known: dict[Row, Span] = dict(given or {})
        self.faults: list[str] = []
        self._spans: dict[Series, Span] = {}

    def of(self, row: Row) -> Span:
        """Return (least, most) of a row; what cannot be proved is noted in ``faults``."""
        if row not in self.known:
            self.known[row] = ANY
            self.known[row] = self._row(row)
        return self.known[row]

    def _row(self, row: Row) -> Span:
        if row.unit == TEXT:
            # A word has no range, but what decides it may divide.
            e = getattr(row, "expr", None)
            e = getattr(row, "default", None) if e is None else e
            if e is not None:
                self._proved(row, e)
            return (0.0, 0.0)
        if isinstance(row, Constant):
            return (row.value, row.value)
        if isinstance(row, Ask):
            span = (float(row.least), float(row.most))
            if row.default is not None:
                other = self._proved(row, row.default)
                span = (min(span[0], other[0]), max(span[1], other[1]))
            return span
        if getattr(row, "expr", None) is not None:
            return self._proved(row, row.expr)
        return ANY

    def _proved(self, row: Row, e: Expr) -> Span:
        try:
            return self.span(e)
        except Fault as fault:
            self.faults.append(f"{row.where}: {fault}")
            return ANY

    def span(self, e: Expr) -> Span:
        """Return (least, most) of an expression.

        Raises:
            Fault: a divisor that may be 0, a root or logarithm out of its range.
        """
        return _RULES[type(e)](self, e)

    def _series(self, e: Series) -> Span:
        # A series is read by many rows and may hold hundreds.
        if e not in self._spans:
            spans = [self.of(r) for r in e.rows]
            self._spans[e] = (min(s[0] for s in spans), max(s[1] for s in spans))
        return self._spans[e]

    def _negative(self, e: Negative) -> Span:
        low, high = self.span(e.a)
        return (-high, -low)

    def _converted(self, e: Convert) -> Span:
        sign, factor, _ = conversion(unit_of(e.a), e.unit)
        factor = factor if sign == "*" else 1 / factor
        low, high = self.span(e.a)
        return (low * factor, high * factor)

    def _tally(self, e: Tally) -> Span:
        for _, _, value in e.tests:
            self.span(value)
        return (0.0, float(len(e.table.keys)))

    def _sum_over(self, e: SumOver) -> Span:
        count = max(len(s) for s in series_in(e.a))
        return _product((count, count), self.span(e.a))

    def _total(self, e: Total) -> Span:
        low, high = self.span(e.a)
        return (min(0.0, low) * INF if low < 0 else 0.0, INF if high > 0 else 0.0)

    def _words(self, e: Shown | Joined) -> Span:
        for part in children(e):
            self.span(part)
        return (0.0, 0.0)

    def _or_dash(self, e: OrDash) -> Span:
        self.span(e.test)
        return self.span(e.a)

    def _place_of(self, e: PlaceOf) -> Span:
        self.span(e.x)
        return (1.0, float(len(e.series)))

    def _at_number(self, e: Picked | Ranked | AtPlace) -> Span:
        low, high = self.span(e.number)
        most = SECTION_TYPES if isinstance(e, Picked) else len(e.series)
        if low < 1 or high > most:
            raise Fault(f"the place {symbols(e.number)} runs {low:g} to {high:g}; there are "
                        f"{most}")
        return _with_zero(self.span(e.a)) if isinstance(e, Picked) else self.span(e.series)

    def _unknown(self, e: object) -> Span:
        raise Fault(f"{type(e).__name__} has no range rule")

    def _column(self, e: Column) -> Span:
        low, high = self.span(e.line)
        if low < 1 or high > len(e.table.keys):
            raise Fault(f"the line {symbols(e.line)} runs {low:g} to {high:g}; "
                        f"table {e.table.name} has {len(e.table.keys)}")
        if e.column is None or e.table.columns[e.column] == TEXT:
            return (0.0, 0.0)
        if e.column in e.table.allowed:
            return e.table.allowed[e.column]
        values = e.table.entries(e.column)
        return (float(min(values)), float(max(values)))

    def _match(self, e: Match) -> Span:
        count = float(len(e.table.keys))
        if not e.below:
            for part in e.parts:
                self.span(part)
            _prove_keys(e)
            return (1.0, count)
        low, _ = self.span(e.parts[0])
        entries = e.table.entries(e.column)
        if low < entries[0]:
            raise Fault(f"{symbols(e.parts[0])} may be {low:g}, below the first entry "
                        f"{entries[0]:g} of {e.column}")
        if e.column in e.table.allowed:
            raise Fault(f"column {e.column} of table {e.table.name} may be typed over, "
                        "so it need not rise")
        if any(b <= a for a, b in zip(entries, entries[1:], strict=False)):
            raise Fault(f"column {e.column} of table {e.table.name} does not rise")
        return (1.0, count)

    def _function(self, e: Call) -> Span:
        spans = [self.span(a) for a in e.args]
        try:
            return FUNCTIONS[e.name].span(spans)
        except Fault as fault:
            raise Fault(f"{symbols(e)}: {fault}") from None

    def _operation(self, e: Op) -> Span:
        a, b = self.span(e.a), self.span(e.b)
        if e.op == "+":
            return (a[0] + b[0], a[1] + b[1])
        if e.op == "-":
            return (a[0] - b[1], a[1] - b[0])
        if e.op == "*":
            if e.a is e.b:
                squared = _product(a, a)
                return (0.0 if a[0] <= 0 <= a[1] else max(0.0, squared[0]), squared[1])
            return _product(a, b)
        if e.op == "/":
            if b[0] <= 0 <= b[1]:
                raise Fault(f"the divisor {symbols(e.b)} may be 0 (it runs {b[0]:.4g} to "
                            f"{b[1]:.4g})")
            return _product(a, (_inverse(b[1]), _inverse(b[0])))
        if e.op == "^":
            return _power(a, b, e)
        return (0.0, 1.0)


_RULES = Rules({
    Row: Ranges.of, Num: lambda ranges, e: (e.value, e.value), Text: lambda ranges, e: (0.0, 0.0),
    Key: lambda ranges, e: (0.0, 0.0), Op: Ranges._operation, Call: Ranges._function,
    Series: Ranges._series, Negative: Ranges._negative, Convert: Ranges._converted,
    Bare: lambda ranges, e: ranges.span(e.a), Column: Ranges._column, Match: Ranges._match,
    Tally: Ranges._tally,
    SumOver: Ranges._sum_over, Extreme: lambda ranges, e: ranges.span(e.series),
    Total: Ranges._total, Shown: Ranges._words, Joined: Ranges._words, OrDash: Ranges._or_dash,
    PlaceOf: Ranges._place_of, OfType: lambda ranges, e: _with_zero(ranges.span(e.a)),
    Picked: Ranges._at_number, Ranked: Ranges._at_number, AtPlace: Ranges._at_number,
    object: Ranges._unknown,
})


def _with_zero(span: Span) -> Span:
    """Return a range widened to 0, which stands for a type that is not used."""
    return (min(0.0, span[0]), max(0.0, span[1]))


def words_of(e: Expr) -> set[str] | None:
    """Return every word an expression may give, or None where that cannot be told."""
    if isinstance(e, Text):
        return {e.value}
    if isinstance(e, Key):
        return {e.table.keys[e.number]}
    if isinstance(e, Ask) and e.choices is not None:
        usual = set() if e.default is None else words_of(e.default)
        return None if usual is None else {*e.choices.keys, *usual}
    if isinstance(e, Column):
        entries = e.table.keys if e.column is None else e.table.entries(e.column)
        return {str(v) for v in entries}
    if isinstance(e, Call) and e.name == "when":
        arms = [words_of(a) for a in e.args[1:]]
        return None if None in arms else set().union(*arms)
    if isinstance(e, Row) and getattr(e, "expr", None) is not None:
        return words_of(e.expr)
    return None


def _prove_keys(e: Match) -> None:
    """Prove that whatever word may be looked for stands in the table.

    Raises:
        Fault: a word that does not, or words that cannot be told beforehand.
    """
    parts = [words_of(p) for p in e.parts]
    if None in parts:
        raise Fault(f"the words looked for in table {e.table.name} cannot be told beforehand")
    keys = {k.lower() for k in e.table.keys}
    for words in itertools.product(*map(sorted, parts)):
        if "".join(words).lower() not in keys:
            raise Fault(f"'{''.join(words)}' may be looked for in table {e.table.name}, "
                        "which has no such key")


def _inverse(x: float) -> float:
    return 0.0 if math.isinf(x) else 1 / x


def _product(a: Span, b: Span) -> Span:
    ends = [0.0 if x == 0 or y == 0 else x * y for x in a for y in b]
    return (min(ends), max(ends))


def _raised(x: float, n: float) -> float:
    try:
        return x**n
    except OverflowError:
        return -INF if x < 0 and n % 2 else INF


def _power(a: Span, b: Span, e: Op) -> Span:
    if b[0] != b[1]:
        if a[0] <= 0:
            raise Fault(f"{symbols(e)}: the base may be 0 or less ({a[0]:g})")
        ends = [_raised(x, n) for x in a for n in b]
        return (min(ends), max(ends))
    n = b[0]
    if n != int(n) and a[0] < 0:
        raise Fault(f"{symbols(e)}: the base may be negative ({a[0]:g})")
    if n <= 0 and a[0] <= 0 <= a[1]:
        raise Fault(f"{symbols(e)}: the base may be 0")
    if n < 0:
        ends = [_raised(x, n) if not math.isinf(x) else 0.0 for x in a]
        return (min(ends), max(ends))
    if a[0] >= 0 or int(n) % 2:
        return (_raised(a[0], n), _raised(a[1], n))
    high = max(_raised(a[0], n), _raised(a[1], n))
    return (0.0 if a[1] >= 0 else min(_raised(a[0], n), _raised(a[1], n)), high)
