"""What rests on what: the rows, inputs and tables behind a sheet, and the faults of its rows."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from typing import NamedTuple

from builder.language import (
    Ask,
    Constant,
    Expr,
    Fault,
    Gate,
    Row,
    Series,
    Sheet,
    Table,
    Verdict,
)
from builder.language.expressions import (
    Column,
    Key,
    Match,
    OfType,
    OrDash,
    Picked,
    Tally,
    Total,
    children,
)
from builder.language.proofs import unit_fault, unit_of
from builder.language.ranges import Ranges
from builder.language.units import TEXT

LOOKS = (Column, Key, Match, Tally)
"""Expressions that look into a table."""
ACROSS = (Total, Picked, OfType)
"""Expressions of a section's quantity that stands in other columns."""


def formula_of(row: Row) -> Expr | None:
    """Return what a row is worked out from: its formula, or an input's default."""
    e = getattr(row, "expr", None)
    return e if e is not None else getattr(row, "default", None)


class Met(NamedTuple):
    """What a row's formula is made of, in reading order.

    ``needs`` are the rows it refers to, each once; ``tables`` those it looks into, as often as it
    does; ``across`` the parts that take a section's quantity from another column than their own.
    """

    needs: tuple[Row, ...] = ()
    tables: tuple[Table, ...] = ()
    across: tuple[Total | Picked | OfType, ...] = ()


@cache
def met(row: Row) -> Met:
    """Return what a row's formula is made of; a declared row does not change."""
    if isinstance(row, Verdict):
        return Met((row.ratio,) if row.look is None else (row.ratio, row.look))
    if isinstance(row, Gate):
        return Met(row.readings)
    needs: dict[Row, None] = {}
    tables, across = [], []
    waiting = [e] if (e := formula_of(row)) is not None else []
    while waiting:
        part = waiting.pop()
        if inner := children(part):
            waiting.extend(reversed(inner))
        else:
            needs.update(dict.fromkeys(part.rows_of()))
        if isinstance(part, LOOKS):
            tables.append(part.table)
        elif isinstance(part, ACROSS):
            across.append(part)
    return Met(tuple(needs), tuple(tables), tuple(across))


def needs_of(row: Row) -> tuple[Row, ...]:
    """Return the rows a row refers to, each once, in reading order."""
    return met(row).needs


class Graph:
    """The rows of all sheets and what lies behind each.

    What lies behind a row is kept as a whole number, a bit for each thing: as sets, those of ten
    thousand rows would take 25 MB.
    """

    def __init__(self, sheets: list[Sheet]):
        self.sheets = sheets
        self._bits: dict[Row | Table, int] = {}
        self._behind: dict[Row, int] = {}
        self._feeds: dict[str, set] = {}
        self._tables: list[Table] | None = None
        self._totals: dict[str, bool] = {}

    def _bit(self, thing: Row | Table) -> int:
        return self._bits.setdefault(thing, 1 << len(self._bits))

    def behind(self, row: Row) -> int:
        """Return the bits of every input, constant and table at any depth behind a row."""
        if row in self._behind:
            return self._behind[row]
        self._behind[row] = found = 0
        for need in needs_of(row):
            found |= self.behind(need)
            if isinstance(need, Ask | Constant):
                found |= self._bit(need)
        for table in met(row).tables:
            found |= self._bit(table)
        if isinstance(row, Ask) and row.choices is not None:
            found |= self._bit(row.choices)
        self._behind[row] = found
        return found

    def feeds(self, sheet: Sheet) -> set:
        """Return every input and table that a sheet waits for.

        They are those behind its rows, and all that the sheets it reads wait for: a sheet that
        is not ready shows dashes, and nothing can be worked out from a dash.
        """
        if sheet.name not in self._feeds:
            bits = 0
            read: dict[str, Sheet] = {}
            for row in sheet.rows:
                bits |= self.behind(row)
                for need in needs_of(row):
                    if need.sheet is not sheet and not isinstance(need, Ask | Constant):
                        read[need.sheet.name] = need.sheet
            found = {thing for thing, bit in self._bits.items() if bits & bit}
            self._feeds[sheet.name] = found.union(*map(self.feeds, read.values()))
        return self._feeds[sheet.name]

    def totals(self, sheet: Sheet) -> bool:
        """Return whether a sheet adds up over the sections, or reads one that does."""
        if sheet.name not in self._totals:
            self._totals[sheet.name] = any(met(row).across for row in sheet.rows) or any(
                self.totals(need.sheet) for row in sheet.rows for need in needs_of(row)
                if not isinstance(need, Ask | Constant) and need.sheet is not sheet)
        return self._totals[sheet.name]

    def tables(self) -> list[Table]:
        """Return the tables in use, in the order they are first met."""
        if self._tables is None:
            self._tables = self._tables_met()
        return self._tables

    def _tables_met(self) -> list[Table]:
        found: dict[str, Table] = {}
        for sheet in self.sheets:
            for row in sheet.rows:
                used = [*met(row).tables]
                if isinstance(row, Ask) and row.choices is not None:
                    used.append(row.choices)
                for table in used:
                    found.setdefault(table.name, table)
        return list(found.values())

    def constants(self) -> list[Constant]:
        """Return the constants in use, in the order they are first met."""
        found: dict[Constant, None] = {}
        for sheet in self.sheets:
            for row in sheet.rows:
                for need in needs_of(row):
                    if isinstance(need, Constant):
                        found[need] = None
        return list(found)


def _read_as_they_are(e: Expr) -> Iterable[Row]:
    """Yield the rows read as they stand, not through a sum that makes 0 of a dash."""
    if isinstance(e, Row):
        yield e
    elif isinstance(e, Series):
        yield from e.rows
    elif isinstance(e, Picked):
        yield from _read_as_they_are(e.number)
    elif not isinstance(e, OfType | Total):
        for part in children(e):
            yield from _read_as_they_are(part)


def _may_be_dash(row: Row) -> bool:
    """Return whether a row may be a dash although its sheet is ready."""
    return (row.gate is not None or isinstance(getattr(row, "expr", None), OrDash)
            or (isinstance(row, Ask) and row.optional))


def _dash_faults(row: Row) -> list[str]:
    """Return what a row reads that may be a dash although its sheet is ready."""
    found = []
    for need in _read_as_they_are(formula_of(row)):
        readings = row.gate.readings if row.gate is not None else ()
        if isinstance(getattr(need, "expr", None), OrDash):
            found.append(f"{row.where}: reads {need.where}, which may be a dash")
        elif need.gate is not None and need.gate is not row.gate:
            found.append(f"{row.where}: reads {need.where}, which waits for "
                         f"'{need.gate.label}'; it does not")
        elif isinstance(need, Ask) and need.optional and need not in readings:
            found.append(f"{row.where}: reads {need.where}, which may stay blank, and waits for "
                         "no gate that it belongs to")
    return found


def _symbol_faults(sheet: Sheet) -> list[str]:
    found, seen = [], {}
    checked = {r for c in sheet.checks for r in c.rows_of()}
    for row in sheet.rows:
        if row in checked or not row.symbol or row.unit == TEXT or hasattr(row, "table"):
            continue
        if row.symbol in seen:
            found.append(f"{row.where}: the symbol {row.symbol} is that of "
                         f"'{seen[row.symbol].label}' too")
        seen[row.symbol] = row
    return found


def _stands_for(row: Row) -> str | None:
    """Return what a formula in symbols shows for a row; None where it may show it for another."""
    if isinstance(row, Constant) or row.unit == TEXT or hasattr(row, "table"):
        return None
    return row.shown


def _operand_faults(row: Row, names: dict[Row, str | None]) -> list[str]:
    seen: dict[str, Row] = {}
    for need in needs_of(row):
        name = names.get(need)
        if name is not None and seen.setdefault(name, need) is not need and "r" != need.symbol:
            return [f"{row.where}: {need.shown} stands for '{seen[name].label}' and "
                    f"'{need.label}'"]
    return []


def _order_faults(sheets: list[Sheet]) -> list[str]:
    """Return references to the right or downward."""
    rows = [row for sheet in sheets for row in sheet.rows]
    rank = {row: number for number, row in enumerate(rows)}
    found = []
    for row, here in rank.items():
        for need in needs_of(row):
            there = rank.get(need)
            if there is not None and there < here or isinstance(need, Constant):
                continue
            found.append(f"{row.where}: refers to {need.where}, which stands on no sheet"
                         if there is None else
                         f"{row.where}: refers to {need.where}, to the right or below")
    return found


def faults_of(sheets: list[Sheet], ranges: Ranges) -> list[str]:
    """Return all that is wrong with the rows: units, ranges, symbols, sources, order.

    ``ranges`` holds the proved range of every row afterwards.
    """
    found = _order_faults(sheets)
    rows = [row for sheet in sheets for row in sheet.rows]
    names = {row: _stands_for(row) for row in rows}
    dashes = {row for row in rows if _may_be_dash(row)}
    for sheet in sheets:
        found += _symbol_faults(sheet)
        for row in sheet.rows:
            e = formula_of(row)
            if e is not None:
                wrong = unit_fault(row) if not isinstance(row, Ask) else _default_fault(row)
                found += [f"{row.where}: {wrong}"] if wrong else []
                found += _operand_faults(row, names)
                # Most rows rest on nothing that may be a dash.
                found += [] if dashes.isdisjoint(needs_of(row)) else _dash_faults(row)
            ranges.of(row)
        found += _check_faults(sheet, ranges)
    return found + ranges.faults


def _default_fault(row: Ask) -> str | None:
    try:
        unit = unit_of(row.default)
    except Fault as fault:
        return str(fault)
    if (unit == TEXT) != (row.unit == TEXT):
        return "its default is a word where a number is due, or the other way round"
    if row.unit == TEXT:
        return None
    row.expr = row.default
    wrong = unit_fault(row)
    del row.expr
    return wrong


def _check_faults(sheet: Sheet, ranges: Ranges) -> list[str]:
    found = []
    for check in sheet.checks:
        if not check.source and not check.limit.source:
            found.append(f"{check.limit.where}: the limit has no source")
        low, _ = ranges.of(check.limit)
        if low <= 0:
            found.append(f"{check.limit.where}: the limit may be {low:g}; it must be above 0")
        if check.kind == "at most" and ranges.of(check.of)[0] < 0:
            found.append(f"{check.of.where}: may be negative and is held to be at most something; "
                         "take its absolute() or greatest(…, 0) in a row above")
    return found


def series_rows(e: Expr) -> Iterable[Series]:
    """Yield the series in an expression."""
    if isinstance(e, Series):
        yield e
    for part in children(e):
        yield from series_rows(part)
