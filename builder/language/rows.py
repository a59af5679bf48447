"""Rows, the sheets they stand on, and the checks made of them."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from types import ModuleType

from .expressions import (
    AtPlace,
    Bare,
    Convert,
    Expr,
    Extreme,
    Key,
    Match,
    Negative,
    Op,
    PlaceOf,
    Ranked,
    Rules,
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
        self.gate: Gate | None = None

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
        optional: blank is usable and means that nothing is known; a gate guards what reads it.
        basis: where the usual value comes from.
    """

    def __init__(self, sheet, label, symbol, unit, *, least=None, most=None, whole=False,
                 choices=None, default=None, free=False, optional=False, basis="", digits=2):
        super().__init__(sheet, label, symbol, unit, basis, digits)
        self.optional = optional
        self.least, self.most, self.whole, self.choices = least, most, whole, choices
        self.default = None if default is None else lift(default)
        self.free = free


class Gate(Row):
    """The state of the rows that rest on some readings: 0 none typed, 1 some, 2 all and ready."""

    def __init__(self, sheet, label, readings: Sequence[Ask]):
        super().__init__(sheet, label, "", "", "", 0)
        self.readings = tuple(readings)


def _plainly(value: float) -> str:
    """Return a number as it is read and typed: with commas, without an exponent."""
    whole, point, rest = f"{value:,.12f}".partition(".")
    rest = rest.rstrip("0")
    return f"{whole}{point}{rest}" if rest else whole


class Constant(Row):
    """A value of a constants file; one without a symbol prints as its number."""

    def __init__(self, key, what, symbol, unit, value, source, clause, status):
        number = _plainly(value)
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


def series_in(e: Expr) -> list[Series]:
    """Return the series an expression takes row by row: not those summed inside it."""
    found, waiting = [], [e]
    while waiting:
        part = waiting.pop()
        if isinstance(part, Series):
            found.append(part)
        elif not isinstance(part, Row):  # most leaves are rows
            waiting.extend(reversed(_BY_ROW[type(part)](part)))
    return found


_BY_ROW = Rules({Ranked: lambda e: (e.number,), AtPlace: lambda e: (e.number,),
                 PlaceOf: lambda e: (e.x,), SumOver: lambda e: (), Extreme: lambda e: (),
                 object: children})
"""The parts in which a series is still taken row by row."""


def _prove_row_by_row(e: Expr) -> None:
    if isinstance(e, Op | Negative | Convert | Bare):
        for part in children(e):
            _prove_row_by_row(part)
    elif children(e) and series_in(e):
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
        self.gate: Gate | None = None

    def rows_of(self):
        """Return the rows the group added to its sheet."""
        made = (self.value, self.limit, self.ratio, self.look, self.verdict, self.amount)
        return [r for r in made if r is not None]


class Block:
    """The heading of a block of rows, and the gate they wait for."""

    def __init__(self, title: str, gate: Gate | None = None):
        self.title, self.gate = title, gate


class Heads:
    """New heads over the columns of a ledger, for the ``lines`` below.

    Lines with more columns than stand side by side are written in banks one below the other,
    each with its heads, its columns of all lines, and a blank line.
    """

    def __init__(self, names: dict[str, str]):
        self.names = names
        self.lines: list[LedgerLine] = []

    @property
    def step(self) -> int:
        """Rows from a bank to the next."""
        return len(self.lines) + 2

    @property
    def banks(self) -> int:
        """How many banks the lines take."""
        return 1 + max((line.sheet.bank(name)[0] for line in self.lines for name in line.rows),
                       default=0)


class PageBreak:
    """What follows begins a new page."""


class Curve:
    """A line of a chart: what it is called, and the series along and up."""

    def __init__(self, name: str, along: Series, up: Series):
        self.name, self.along, self.up = name, along, up

    @property
    def series(self) -> tuple[Series, Series]:
        """Both series."""
        return self.along, self.up


class Picture:
    """A chart that follows the cells: ``kind`` is ``curves`` or ``bars``.

    ``about`` says in words what it shows, for who cannot see it; ``lines`` is how many rows of
    the sheet it covers.
    """

    def __init__(self, title, kind, along, up, curves: Sequence[Curve], about, lines=22):
        self.title, self.kind, self.along, self.up = title, kind, along, up
        self.curves, self.about, self.lines = tuple(curves), about, lines


class Shapes:
    """Things of one kind on a drawing: shapes, each a list of points, each a pair of rows.

    ``look`` is a name of the looks that the workbook draws with.
    """

    def __init__(self, name: str, look: str, shapes: list[list[tuple[Row, Row]]]):
        self.name, self.look, self.shapes = name, look, shapes

    @property
    def rows(self) -> list[Row]:
        """The coordinates, along before up, point by point."""
        return [row for shape in self.shapes for point in shape for row in point]


class Mark:
    """Live words at a point of a drawing."""

    def __init__(self, words: Row, along: Row, up: Row):
        self.words, self.along, self.up = words, along, up

    @property
    def rows(self) -> list[Row]:
        """The words and where they stand."""
        return [self.words, self.along, self.up]


class View:
    """A drawing to scale: what is on it, and the paper it takes.

    Points run from −1 to 1 along; up they run over as much less as the paper is lower than it
    is wide (``wide`` times).  ``span`` is how many parts of the sheet's width it takes, of
    ``parts``; ``about`` says in words what it shows.
    """

    def __init__(self, title, about, things: Sequence[Shapes], marks: Sequence[Mark], wide: int,
                 top: int, left: int = 0, parts: int = 1, new_page: bool = False):
        self.new_page = new_page
        self.title, self.about, self.things, self.marks = title, about, things, marks
        self.wide, self.top, self.left, self.parts = wide, top, left, parts


class PageLine:
    """A line of a page of paper: a box to tick, words, a value, its unit, a blank to fill in.

    ``words`` is a text or a row of words; ``value`` a row or None.
    """

    def __init__(self, words, value, unit="", tick=False, blank=False, wide=False):
        self.words, self.value, self.unit = words, value, unit
        self.tick, self.blank, self.wide = tick, blank, wide

    @property
    def rows(self) -> list[Row]:
        """The rows of the line."""
        return [r for r in (self.words, self.value) if isinstance(r, Row)]


class Note:
    """A sentence to the reader between the rows; ``caution`` sets it apart."""

    def __init__(self, text: str, caution: bool = False):
        self.text, self.caution = text, caution


class Sheet:
    """A sheet as it is declared: its name, its title, and what stands on it in order.

    ``widths`` are those of a ledger's labels, specifications and columns, in characters;
    ``beside`` is how many of its columns stand side by side, 0 for all.

    ``scope`` is ``section`` (six section columns), ``job`` (one value), ``ledger`` (lines
    with the columns given, each its own quantity), ``page`` (paper for people, ``large`` in
    large type), ``job inputs`` or ``section inputs`` (what the reader types).
    """

    look = None
    """The ratio above which a passing check still says LOOK; a constant, set by the data."""

    def __init__(self, name: str, title: str, scope: str = "section", about: str = "",
                 columns: dict[str, str] | None = None, large: bool = False,
                 widths: tuple[float, float, float] = (38, 38, 12.5), beside: int = 0):
        self.widths, self.beside = widths, beside or len(columns or {})
        self._heads: Heads | None = None
        self.name, self.title, self.scope, self.about = name, title, scope, about
        self.columns, self.large = columns or {}, large
        self._gate: Gate | None = None
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
                found.extend(item.words)
            elif isinstance(item, PageLine | Shapes | Mark):
                found.extend(item.rows)
        return found

    @property
    def inputs(self) -> list[Ask]:
        """The cells the reader fills in."""
        return [r for r in self.rows if isinstance(r, Ask)]

    def _add(self, row: Row, depth: int = 2) -> Row:
        frame = sys._getframe(depth)
        row.origin = f"{frame.f_code.co_filename.rpartition('/')[2]} line {frame.f_lineno}"
        row.gate = self._gate
        self.items.append(row)
        return row

    def block(self, title: str, gate: Gate | None = None) -> None:
        """Begin a block; with a ``gate`` its rows wait until the gate's readings are all there."""
        self._gate, self._heads = gate, None
        self.items.append(Block(title, gate))

    def gate(self, label: str, readings: Sequence[Ask]) -> Gate:
        """Declare the state of the rows that rest on optional readings."""
        return self._add(Gate(self, label, readings))

    def heads(self, names: dict[str, str]) -> None:
        """Put new heads over columns of a ledger, by the columns' names.

        Raises:
            Fault: a column the sheet does not have.
        """
        wrong = [name for name in names if name not in self.columns]
        if wrong:
            raise Fault(f"{self.name}: heads for {wrong}; its columns are {list(self.columns)}")
        self._heads = Heads(names)
        self.items.append(self._heads)

    def bank(self, column: str) -> tuple[int, int]:
        """Return in which bank a column of a ledger stands, and at which place there, from 0."""
        return divmod(list(self.columns).index(column), self.beside)

    def page_break(self) -> None:
        """Begin a new page of paper."""
        self.items.append(PageBreak())

    def shapes(self, name: str, look: str, shapes: list[list[tuple]]) -> Shapes:
        """Declare shapes of one kind; a point is (along, up), bare numbers from −1 to 1."""
        made = Shapes(name, look, [
            [tuple(self._placed(Calculated(self, f"{name} {k}", "", "", x, "", 4))
                   for x in point) for point in shape] for k, shape in enumerate(shapes, 1)])
        self.items.append(made)
        return made

    def mark(self, words, along, up) -> Mark:
        """Declare live words at a point of a drawing."""
        said = self._placed(Calculated(self, "words", "", TEXT, words, "", 0))
        at = [self._placed(Calculated(self, "place of words", "", "", x, "", 4))
              for x in (along, up)]
        made = Mark(said, *at)
        self.items.append(made)
        return made

    def view(self, title, about, things, marks, *, wide, top, left=0, parts=1,
             new_page=False) -> None:
        """Put a drawing of the things and marks declared."""
        self.items.append(View(title, about, things, marks, wide, top, left, parts, new_page))

    def picture(self, title: str, kind: str, along: str, up: str, curves: Sequence[Curve],
                about: str, lines: int = 22) -> None:
        """Put a chart; ``along`` and ``up`` name its axes.

        Raises:
            Fault: an unknown kind.
        """
        if kind not in ("curves", "bars"):
            raise Fault(f"picture '{title}': kind is '{kind}'; allowed is curves or bars")
        self.items.append(Picture(title, kind, along, up, curves, about, lines))

    def say(self, words) -> Row | str:
        """Say a sentence over the width of a page; an expression of words stays live."""
        words = self._words(words)
        self.items.append(PageLine(words, None, wide=True))
        return words

    def show(self, label, value=None, unit="", digits=2, *, tick=False,
             blank=False) -> Row | None:
        """Put a line on a page: box, words, value, unit, blank; return the value's row."""
        words = self._words(label)
        made = None
        if value is not None:
            name = label if isinstance(label, str) else "value"
            made = self._placed(Calculated(self, name, "", unit, value, "", digits))
        self.items.append(PageLine(words, made, unit, tick, blank))
        return made

    def _words(self, words):
        if isinstance(words, str):
            return words
        return self._placed(Calculated(self, "words", "", TEXT, words, "", 0))

    def _placed(self, row: Row, depth: int = 3) -> Row:
        """Note where a row that stands inside a line was declared."""
        frame = sys._getframe(depth - 1)
        while frame.f_code.co_filename == __file__:
            frame = frame.f_back
        row.origin = f"{frame.f_code.co_filename.rpartition('/')[2]} line {frame.f_lineno}"
        return row

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
            optional=False, digits=2) -> Ask:
        """Declare a number to be filled in; an ``optional`` one may stay blank."""
        return self._add(Ask(self, label, symbol, unit, least=least, most=most, basis=basis,
                             default=default, whole=whole, optional=optional,
                             digits=0 if whole else digits))

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

    def ledger(self, label, spec="", unit: str = "", source: str = "", **columns) -> LedgerLine:
        """Declare a line of a ledger sheet: an expression for each of its columns.

        ``label`` and ``spec`` are texts, rows of words or expressions of words.
        """
        made = LedgerLine(self, label, spec, unit, source)
        for name, (expr, column_unit, places) in columns.items():
            made.add(name, expr, column_unit, places)
        self.items.append(made)
        made.heads = self._heads
        if self._heads is not None:
            self._heads.lines.append(made)
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
        check.gate = self._gate
        self.checks.append(check)
        return check


class LedgerLine:
    """A line of a ledger sheet: a label, words, and a row for each column filled.

    ``words`` are the rows of a live label and specification; ``heads`` what stands over it.
    """

    heads: Heads | None = None

    def __init__(self, sheet, label, spec, unit, source):
        self.sheet, self.unit, self.source = sheet, unit, source
        self.rows: dict[str, Row] = {}
        self.words: list[Row] = []
        self.label, self.spec = self._live(label), self._live(spec)

    def _live(self, words):
        if isinstance(words, str | Row):
            return words
        row = self.sheet._placed(Calculated(self.sheet, "words", "", TEXT, words, "", 0))
        self.words.append(row)
        return row

    @property
    def name(self) -> str:
        """What the line is called in messages."""
        return self.label if isinstance(self.label, str) else self.label.label

    def add(self, column: str, expr, unit: str, digits: int = 0) -> Calculated:
        """Fill a column of the line."""
        made = Calculated(self.sheet, f"{self.name}: {self.sheet.columns[column]}", "", unit,
                          expr, self.source, digits)
        self.rows[column] = self.sheet._placed(made)
        return made

    def ask(self, column: str, least, most, unit: str, digits: int, basis: str, *,
            default=None) -> Ask:
        """Let the reader type in a column; blank takes the default.

        The sheet has two more columns for it, ``column_state`` and ``column_used``.

        Raises:
            Fault: one of those columns is missing, or there is no default.
        """
        for name in (column, f"{column}_state", f"{column}_used"):
            if name not in self.sheet.columns:
                raise Fault(f"{self.sheet.name} has no column '{name}'")
        if default is None:
            raise Fault(f"{self.name}: what is typed in a ledger wants a default")
        made = Ask(self.sheet, f"{self.name}: {self.sheet.columns[column]}", "", unit, least=least,
                   most=most, default=default, basis=basis, digits=digits)
        self.rows[column] = self.sheet._placed(made)
        return made

    def __getitem__(self, column: str) -> Row:
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
    typed = [(column, row) for item in sheet.items if isinstance(item, LedgerLine)
             for column, row in item.rows.items() if isinstance(row, Ask)]
    for number, (column, row) in enumerate(typed, start=1):
        row.key = row.key or f"{sheet.name.lower()}_{column}_{number}"
    return sheet
