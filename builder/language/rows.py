"""Rows, the sheets they stand on, and the checks made of them."""

from __future__ import annotations

import sys
from collections.abc import Iterator, Sequence
from types import ModuleType

from .expressions import (
    Bare,
    Convert,
    Expr,
    Extreme,
    Key,
    Match,
    Negative,
    Op,
    SumOver,
    Total,
    children,
    lift,
)
from .faults import Fault
from .functions import greatest
from .units import TEXT

VERDICTS = ("not used", "NEEDS INPUT", "OK", "LOOK", "NOT OK")
"""The words of a verdict, in the order its formula counts them."""

SMALL_SHARE = 99
"""An at-least check reads at most this ratio, so that zero or less is never small."""


class Row(Expr):
    """A quantity with a label, a symbol, a unit and a source; its value differs by section.

    ``digits`` is how many decimals are shown.  ``origin`` is the line of the sheet's module.
    """

    def __init__(self, sheet, label, symbol, unit, source="", digits=2):
        self.sheet, self.label, self.symbol, self.unit = sheet, label, symbol, unit
        self.source, self.digits = source, digits
        self.key, self.origin = "", ""

    def rows_of(self):
        """Return this row."""
        return (self,)

    def __repr__(self):
        return f"<{type(self).__name__} {self.where}>"

    @property
    def where(self) -> str:
        """Sheet, label and source line, for messages."""
        name = self.sheet.name if self.sheet else "Data"
        return f"{name}, '{self.label}'" + (f" ({self.origin})" if self.origin else "")

    @property
    def shown(self) -> str:
        """The symbol, or the label where there is none."""
        return self.symbol or self.label


class Calculated(Row):
    """A row worked out from others."""

    def __init__(self, sheet, label, symbol, unit, expr, source="", digits=2):
        super().__init__(sheet, label, symbol, unit, source, digits)
        self.expr = lift(expr)
        self.chief = False


class Find(Calculated):
    """The line number of a table at which a choice stands; ask it for a column."""

    def __init__(self, sheet, label, table, expr):
        super().__init__(sheet, label, f"line in {table.title}", "", expr, "", 0)
        self.table = table

    def __getitem__(self, column: str):
        """Return the entry of a column in the line found."""
        return self.table.at(self)[column]


class Ask(Row):
    """A cell the reader fills in.

    Attributes:
        least, most: what a number may be, in ``unit``.
        whole: only whole numbers are usable.
        choices: the table whose keys may be chosen, for a list.
        default: what a blank cell stands for, worked out from rows to the left or above; None
            when the cell has to be filled.
        free: any words, never calculated with.
        basis: where the usual value comes from.
    """

    def __init__(self, sheet, label, symbol, unit, *, least=None, most=None, whole=False,
                 choices=None, default=None, free=False, basis="", digits=2):
        super().__init__(sheet, label, symbol, unit, basis, digits)
        self.least, self.most, self.whole, self.choices = least, most, whole, choices
        self.default = None if default is None else lift(default)
        self.free = free


class Constant(Row):
    """A value of a constants file; one without a symbol prints as its number."""

    def __init__(self, key, what, symbol, unit, value, source, clause, status):
        number = f"{value:,g}" if abs(value) < 1e6 else f"{value:g}"
        super().__init__(None, what, symbol or (f"{number} {unit}".strip()), unit,
                         f"{source} {clause}".strip())
        self.key, self.value, self.status, self.clause = key, value, status, clause
        self.plain = not symbol


class Verdict(Row):
    """The word a ratio earns: state and ratio decide it, and nothing else."""

    def __init__(self, sheet, label, ratio, look, worst):
        super().__init__(sheet, label, "", TEXT, "", 0)
        self.ratio, self.look, self.worst = ratio, look, worst


class Series(Expr):
    """Rows that stand one below the other, taken together."""

    def __init__(self, symbol: str, rows: Sequence[Row]):
        self.symbol, self.rows = symbol, tuple(rows)
        if not self.rows or not all(isinstance(r, Row) for r in self.rows):
            raise Fault(f"series {symbol}: it wants rows, one or more")
        self.unit = self.rows[0].unit
        if any(r.unit != self.unit for r in self.rows):
            raise Fault(f"series {symbol}: its rows have several units")

    def rows_of(self):
        """Return the rows of the series."""
        return self.rows

    def __getitem__(self, place) -> Row:
        """Return one row of the series."""
        return self.rows[place]

    def __len__(self):
        return len(self.rows)

    def __iter__(self):
        return iter(self.rows)


def sum_over(e) -> SumOver:
    """Return the sum of an expression over the rows of the series in it.

    Raises:
        Fault: no series, series of several lengths, or a function of a series, which a
            spreadsheet would not take row by row.
    """
    e = lift(e)
    lengths = {len(series) for series in series_in(e)}
    if len(lengths) != 1:
        raise Fault(f"sum_over() wants series of one length, is given {sorted(lengths) or 'none'}")
    _prove_row_by_row(e)
    return SumOver(e)


def series_in(e: Expr) -> Iterator[Series]:
    """Yield the series an expression takes row by row: not those summed inside it."""
    if isinstance(e, Series):
        yield e
    elif not isinstance(e, SumOver | Extreme):
        for part in children(e):
            yield from series_in(part)


def _prove_row_by_row(e: Expr) -> None:
    if isinstance(e, Op | Negative | Convert | Bare):
        for part in children(e):
            _prove_row_by_row(part)
    elif children(e) and next(series_in(e), None) is not None:
        raise Fault("sum_over() takes a series row by row through + − × / ^ and comparisons only")


def largest(series: Series) -> Extreme:
    """Return the largest of a series."""
    return Extreme("MAX", series)


def smallest(series: Series) -> Extreme:
    """Return the smallest of a series."""
    return Extreme("MIN", series)


def total(x: Row, by: Row, where: tuple[Row, Key] | None = None) -> Total:
    """Return a section quantity times the number of sections built, added over all types.

    With ``where`` only the types whose word is that key are counted.
    """
    return Total(x, by, where)


def find(table, *parts):
    """Return the line of a table whose key is the parts joined."""
    return table.find(*parts)


class Check:
    """A group of rows that ends in a verdict.

    ``value`` is held against ``limit``; ``cure`` says in words what would mend it and
    ``amount`` is the row that says by how much.
    """

    def __init__(self, label, kind, value, limit, ratio, verdict, source, cure, amount, group):
        self.label, self.kind, self.value, self.limit = label, kind, value, limit
        self.ratio, self.verdict, self.source = ratio, verdict, source
        self.cure, self.amount, self.group = cure, amount, group
        self.of: Row | None = None
        self.look: Row | None = None

    def rows_of(self):
        """Return the rows the group added to its sheet."""
        made = (self.value, self.limit, self.ratio, self.look, self.verdict, self.amount)
        return [r for r in made if r is not None]


class Block:
    """The heading of a block of rows."""

    def __init__(self, title: str):
        self.title = title


class Note:
    """A sentence to the reader between the rows; ``caution`` sets it apart."""

    def __init__(self, text: str, caution: bool = False):
        self.text, self.caution = text, caution


class Sheet:
    """A sheet as it is declared: its name, its title, and what stands on it in order.

    ``scope`` is ``section`` (six section columns), ``job`` (one value) or ``ledger`` (lines
    with the columns given, each its own quantity).
    """

    look = None
    """The ratio above which a passing check still says LOOK; a constant, set by the data."""

    def __init__(self, name: str, title: str, scope: str = "section", about: str = "",
                 columns: dict[str, str] | None = None):
        self.name, self.title, self.scope, self.about = name, title, scope, about
        self.columns = columns or {}
        self.items: list = []
        self.checks: list[Check] = []

    @property
    def rows(self) -> list[Row]:
        """The rows, from top to bottom; those of a ledger line from left to right."""
        found = []
        for item in self.items:
            if isinstance(item, Row):
                found.append(item)
            elif isinstance(item, LedgerLine):
                found.extend(item.rows.values())
        return found

    @property
    def inputs(self) -> list[Ask]:
        """The cells the reader fills in."""
        return [r for r in self.rows if isinstance(r, Ask)]

    def _add(self, row: Row, depth: int = 2) -> Row:
        frame = sys._getframe(depth)
        row.origin = f"{frame.f_code.co_filename.rpartition('/')[2]} line {frame.f_lineno}"
        self.items.append(row)
        return row

    def block(self, title: str) -> None:
        """Begin a block."""
        self.items.append(Block(title))

    def note(self, text: str) -> None:
        """Say a sentence to the reader."""
        self.items.append(Note(text))

    def caution(self, text: str) -> None:
        """Warn the reader where the work can hurt someone."""
        self.items.append(Note(text, caution=True))

    def row(self, label, symbol, unit, expr, source="", digits=2, chief=False) -> Calculated:
        """Declare a row worked out from others; ``chief`` gives it a workbook name."""
        made = Calculated(self, label, symbol, unit, expr, source, digits)
        made.chief = chief
        return self._add(made)

    def ask(self, label, symbol, unit, least, most, basis, *, default=None, whole=False,
            digits=2) -> Ask:
        """Declare a number to be filled in."""
        return self._add(Ask(self, label, symbol, unit, least=least, most=most, basis=basis,
                             default=default, whole=whole, digits=0 if whole else digits))

    def choose(self, label, choices, basis, *, default=None) -> Ask:
        """Declare a choice from the keys of a table.

        Raises:
            Fault: a key stands twice, so that a choice would not say which.
        """
        if len({k.lower() for k in choices.keys}) < len(choices.keys):
            raise Fault(f"'{label}': a key of table {choices.name} is given twice")
        return self._add(Ask(self, label, "", TEXT, choices=choices, basis=basis,
                             default=default, digits=0))

    def write(self, label, basis="", most=120) -> Ask:
        """Declare words to be filled in, up to ``most`` characters."""
        return self._add(Ask(self, label, "", TEXT, free=True, most=most, basis=basis, digits=0))

    def find(self, label, table, *choice) -> Find:
        """Declare the line of a table at which a choice stands."""
        return self._add(Find(self, label, table, Match(table, tuple(lift(c) for c in choice))))

    def below(self, label, table, column, x) -> Find:
        """Declare the last line whose entry in a rising column is not above ``x``."""
        return self._add(Find(self, label, table, Match(table, (lift(x),), column, below=True)))

    def line(self, label, table, expr) -> Find:
        """Declare a calculated line number of a table."""
        return self._add(Find(self, label, table, lift(expr)))

    def ledger(self, label: str, spec: str = "", unit: str = "", source: str = "",
               digits: int = 0, **columns) -> LedgerLine:
        """Declare a line of a ledger sheet: an expression for each of its columns."""
        made = LedgerLine(self, label, spec, unit, source)
        for name, (expr, column_unit, places) in columns.items():
            made.add(name, expr, column_unit, places)
        self.items.append(made)
        return made

    def check(self, label, value, *, at_most=None, at_least=None, source="", look_at=None,
              worst="NOT OK", cure="", amount=None, group="") -> Check:
        """Declare a check: value against limit, ratio, verdict, and what would mend it.

        ``look_at`` is the value from which a pass says LOOK (without it, the house ratio);
        ``worst`` is ``LOOK`` where breaking the limit is no more than that.  ``amount`` is
        (label, unit, expression): how much of the cure.

        Raises:
            Fault: neither or both of ``at_most`` and ``at_least``, or an unknown ``worst``.
        """
        if (at_most is None) == (at_least is None):
            raise Fault(f"check '{label}': give at_most or at_least, one of them")
        if worst not in ("LOOK", "NOT OK"):
            raise Fault(f"check '{label}': worst is '{worst}'; allowed is LOOK or NOT OK")
        value, bound = lift(value), lift(at_most if at_least is None else at_least)
        kind = "at most" if at_least is None else "at least"
        made = None
        if not isinstance(value, Row):
            raise Fault(f"check '{label}': give the value a row of its own")
        if value.sheet is not self:
            made = Calculated(self, f"{label}: value", "value", value.unit, value, source,
                              value.digits)
            value = self._add(made)
        limit = self._add(Calculated(self, f"{label}: {kind}", "limit", value.unit, bound, source,
                                     value.digits))
        small = greatest(value, Op("/", limit, lift(SMALL_SHARE)))
        ratio = self._add(Calculated(
            self, f"{label}: ratio", "r", "",
            Op("/", value, limit) if at_least is None else Op("/", limit, small)))
        look = Sheet.look
        if look_at is not None:
            start = lift(look_at)
            look = self._add(Calculated(
                self, f"{label}: LOOK above", "r_look", "",
                Op("/", start, limit) if at_least is None else Op("/", limit, start)))
        verdict = self._add(Verdict(self, f"{label}: verdict", ratio, look, worst))
        mend = None
        if amount is not None:
            name, unit, expr = amount
            mend = self._add(Calculated(self, f"{label}: {name}", "cure", unit, expr, "",
                                        0 if unit == "each" else 1))
        check = Check(label, kind, made, limit, ratio, verdict, source, cure, mend, group)
        check.of, check.look = value, look if look_at is not None else None
        self.checks.append(check)
        return check


class LedgerLine:
    """A line of a ledger sheet: a label, words, and a row for each column filled."""

    def __init__(self, sheet, label, spec, unit, source):
        self.sheet, self.label, self.spec, self.unit, self.source = sheet, label, spec, unit, source
        self.rows: dict[str, Calculated] = {}

    def add(self, column: str, expr, unit: str, digits: int = 0) -> Calculated:
        """Fill a column of the line."""
        made = Calculated(self.sheet, f"{self.label}: {self.sheet.columns[column]}", "", unit,
                          expr, self.source, digits)
        frame = sys._getframe(1)
        made.origin = f"{frame.f_code.co_filename.rpartition('/')[2]} line {frame.f_lineno}"
        self.rows[column] = made
        return made

    def __getitem__(self, column: str) -> Calculated:
        """Return the quantity of a column."""
        return self.rows[column]


def _name(thing, name: str, sheet: Sheet) -> None:
    if isinstance(thing, Row):
        if thing.sheet is sheet and not thing.key:
            thing.key = name
    elif isinstance(thing, Series | list | tuple):
        for place, part in enumerate(thing, start=1):
            _name(part, f"{name}_{place}", sheet)
    elif isinstance(thing, dict):
        for key, part in thing.items():
            _name(part, f"{name}_{key}", sheet)
    elif isinstance(thing, Check):
        _name(thing.verdict, f"{name}_verdict", sheet)
        _name(thing.ratio, f"{name}_ratio", sheet)


def nameless(sheet: Sheet) -> list[str]:
    """Return a fault for every input and chief result that has no name."""
    return [
        f"{r.where}: has no name" for r in sheet.rows
        if not r.key and (isinstance(r, Ask) or getattr(r, "chief", False))
    ]


def adopt(module: ModuleType, sheet: Sheet | None = None) -> Sheet:
    """Give the rows of a sheet, the module's own ``sheet`` by default, their names in the module.

    A sheet declared over several modules is adopted from each of them.
    """
    sheet = sheet or module.sheet
    for name, thing in list(vars(module).items()):
        if not name.startswith("_") and not isinstance(thing, ModuleType | type):
            _name(thing, name, sheet)
    return sheet
