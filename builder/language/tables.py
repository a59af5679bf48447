"""Published tables and constants, read from CSV files that name their source.

A table file starts with ``# title:`` and ``# source:`` lines; its first column is the key, the
header of every other column ends in its unit in square brackets, or in ``{text}`` for words.
A constants file has one value a line.  Numbers stand in these files and nowhere else.
"""

from __future__ import annotations

import csv
import math
import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from .expressions import Column, Expr, Key, Match, Tally, lift
from .faults import Fault, Faults
from .rows import Constant
from .units import TEXT, UNITS

NOTES = ("clause", "status", "note")
"""Columns that say where a line comes from; they are shown, never calculated with."""

CONSTANT = ("key", "symbol", "value", "unit", "clause", "status", "what")
"""Columns of a constants file."""

WILD = ("*", "?", "~")
"""Letters that a look-up would take for others."""


@dataclass(eq=False)
class Table:
    """A table of lines found by a key.

    ``columns`` maps a column's name to its unit (or ``text``); ``lines`` holds the values in
    that order; ``notes`` holds clause, status and note of each line.  ``allowed`` is given for
    tables the reader may edit: column → (least, most).
    """

    name: str
    title: str
    source: str
    key: str
    columns: dict[str, str]
    keys: list[str]
    lines: list[tuple]
    notes: list[tuple[str, str, str]] = field(default_factory=list)
    allowed: dict[str, tuple[float, float]] = field(default_factory=dict)

    def find(self, *parts) -> Line:
        """Return the line whose key is the parts joined: words, or rows holding words."""
        return Line(self, Match(self, tuple(lift(p) for p in parts)))

    def below(self, column: str, x) -> Line:
        """Return the last line whose entry in a rising column is not above ``x``."""
        return Line(self, Match(self, (lift(x),), column, below=True))

    def at(self, line) -> Line:
        """Return the line of a calculated number, counted from 1."""
        return Line(self, lift(line))

    def key_of(self, number: int) -> Key:
        """Return the key of a line, counted from 0."""
        return Key(self, number)

    def entries(self, column: str) -> list:
        """Return all values of a column, top to bottom."""
        place = list(self.columns).index(column)
        return [line[place] for line in self.lines]

    def editable(self, **allowed: tuple[float, float]) -> Table:
        """Let the reader change the numbers of some columns, each within (least, most).

        Keyword names are column names with ``_`` for a blank; other columns stay locked.

        Raises:
            Faults: a limit without a number column, a value outside its limits, a key twice.
        """
        self.allowed = {name.replace("_", " "): span for name, span in allowed.items()}
        numbers = {c for c, unit in self.columns.items() if unit != TEXT}
        found = [f"table {self.name}: no number column '{c}'" for c in set(self.allowed) - numbers]
        for column in numbers & set(self.allowed):
            low, high = self.allowed[column]
            found += [
                f"table {self.name}, {key}: {column} is {value:g}; allowed is {low:g} to {high:g}"
                for key, value in zip(self.keys, self.entries(column), strict=True)
                if not low <= value <= high
            ]
        found += [f"table {self.name}: {key} is given twice" for key in dict.fromkeys(self.keys)
                  if self.keys.count(key) > 1]
        if found:
            raise Faults(sorted(found))
        return self


def tally(table: Table, **tests) -> Tally:
    """Return how many lines of a table pass every test.

    Keyword names are column names with ``_`` for a blank; a name ending in ``_below`` asks for
    entries strictly below the value, any other for entries equal to it.

    Raises:
        Fault: a column the table does not have.
    """
    parts = []
    for name, value in tests.items():
        column = name.removesuffix("_below").replace("_", " ")
        if column not in table.columns:
            raise Fault(f"table {table.name} has no column '{column}'")
        parts.append((column, "<" if name.endswith("_below") else "=", lift(value)))
    return Tally(table, tuple(parts))


class Line:
    """One line of a table, not yet asked for a column."""

    def __init__(self, table: Table, number: Expr):
        self.table, self.number = table, number

    @property
    def key(self) -> Column:
        """The line's key."""
        return Column(self.table, self.number, None)

    def __getitem__(self, column: str) -> Column:
        """Return the line's entry in a column."""
        if column not in self.table.columns:
            raise Fault(
                f"table {self.table.name} has no column '{column}'; "
                f"it has {', '.join(self.table.columns)}"
            )
        return Column(self.table, self.number, column)


class Constants:
    """The rows of a constants file, by key: ``nds.wet_shear``."""

    def __init__(self, source: str, title: str, rows: dict[str, Constant]):
        self.source, self.title, self.rows = source, title, rows

    def __getattr__(self, key: str) -> Constant:
        try:
            return self.__dict__["rows"][key]
        except KeyError:
            raise AttributeError(f"constants of {self.source} have no '{key}'") from None


@dataclass
class _File:
    """A file as read: what its head says, its header, its lines with their numbers, its faults."""

    name: str
    about: dict[str, str]
    header: list[str]
    lines: list[tuple[int, list[str]]]
    wrong: list[str]


def _text(path: Path) -> str:
    """Return a file's text, without the mark that some programs put first.

    Raises:
        Faults: it cannot be read, or is not UTF-8.
    """
    try:
        return path.read_bytes().decode("utf-8-sig")
    except OSError as fault:
        raise Faults([f"{path}: cannot be read: {fault.strerror}"]) from None
    except UnicodeDecodeError as fault:
        raise Faults([f"{path.name}: byte {fault.start} is not UTF-8; save the file as CSV in "
                      "UTF-8"]) from None


def _fields(reader, start: int, name: str) -> Iterator[tuple[int, list[str]]]:
    """Yield number and fields of each line.

    Raises:
        Faults: a line that cannot be taken apart.
    """
    try:
        for fields in reader:
            yield start + reader.line_num, fields
    except csv.Error as fault:
        raise Faults([f"{name} line {start + reader.line_num}: {fault}"]) from None


def _read(path: Path) -> _File:
    """Read head, header and lines; note what is missing or ragged.

    Raises:
        Faults: the file cannot be read or is empty.
    """
    text = _text(path).splitlines()
    about: dict[str, str] = {}
    start = 0
    while start < len(text) and text[start].startswith("#"):
        name, _, value = text[start][1:].partition(":")
        about[name.strip()] = value.strip()
        start += 1
    wrong = [f"{path.name}: no '# {n}:' line" for n in ("title", "source") if not about.get(n)]
    reader = csv.reader(text[start:])
    header = next(reader, None)
    if not header:
        raise Faults([*wrong, f"{path.name}: no header line"])
    header = [h.strip() for h in header]
    lines = []
    for number, fields in _fields(reader, start, path.name):
        if len(fields) != len(header):
            wrong.append(f"{path.name} line {number}: {len(fields)} fields, "
                         f"the header has {len(header)}")
            continue
        lines.append((number, [f.strip() for f in fields]))
    return _File(path.name, about, header, lines, wrong)


def _number(text: str, where: str, wrong: list[str]) -> float:
    try:
        value = float(text)
    except ValueError:
        value = math.nan
    if not math.isfinite(value):
        shown = repr(text) if len(text) <= 40 else f"{text[:37]!r}…"
        wrong.append(f"{where}: {shown} is no number")
        return 0.0
    return int(value) if value.is_integer() else value


def _columns(file: _File) -> dict[str, str]:
    """Return name → unit of the columns after the key."""
    columns: dict[str, str] = {}
    for text in file.header[1:]:
        match = re.fullmatch(r"(.+?)(?: \[(.+)\]| \{(text)\})?", text)
        if match is None:
            file.wrong.append(f"{file.name}: a column has no name")
            continue
        name, unit = match[1], match[3] or match[2] or ""
        if unit not in UNITS and unit != TEXT:
            file.wrong.append(f"{file.name}: column '{name}' has unit '{unit}', not in the list")
        if name in columns:
            file.wrong.append(f"{file.name}: column '{name}' is given twice")
        columns[name] = unit
    return columns


def read_table(path: Path) -> Table:
    """Read a table file.

    Raises:
        Faults: a missing heading, an unknown unit, a value that is no number; all at once.
    """
    file = _read(path)
    columns = _columns(file)
    if len(columns) != len(file.header) - 1:
        raise Faults(file.wrong)
    if not file.lines:
        file.wrong.append(f"{file.name}: no line below the header")
    kept = {name: unit for name, unit in columns.items() if name not in NOTES}
    keys, values, notes = [], [], []
    for number, fields in file.lines:
        where = f"{path.name} line {number}"
        if any(c in fields[0] for c in WILD):
            file.wrong.append(f"{where}: key '{fields[0]}' holds a wildcard: {' '.join(WILD)}")
        if not fields[0]:
            file.wrong.append(f"{where}: the line has no key")
        # A wood has a line for each size class, one directly below the other.
        if fields[0] in keys and fields[0] != keys[-1]:
            file.wrong.append(f"{where}: key '{fields[0]}' is given twice, with others between")
        entry = dict(zip(columns, fields[1:], strict=True))
        keys.append(fields[0])
        values.append(tuple(
            entry[name] if unit == TEXT else _number(entry[name], f"{where}, {name}", file.wrong)
            for name, unit in kept.items()
        ))
        notes.append(tuple(entry.get(n, "") for n in NOTES))
    if file.wrong:
        raise Faults(file.wrong)
    return Table(path.stem, file.about["title"], file.about["source"], file.header[0], kept, keys,
                 values, notes)


def read_constants(path: Path) -> Constants:
    """Read a constants file: key, symbol, value, unit, clause, status, what.

    Raises:
        Faults: a missing heading, an unknown unit, a value that is no number; all at once.
    """
    file = _read(path)
    file.wrong += [f"{path.name}: no column '{c}'" for c in CONSTANT if c not in file.header]
    if not set(CONSTANT) <= set(file.header):
        raise Faults(file.wrong)
    rows = {}
    for number, fields in file.lines:
        where = f"{path.name} line {number}"
        line = dict(zip(file.header, fields, strict=True))
        if line["unit"] not in UNITS:
            file.wrong.append(f"{where}: unit '{line['unit']}' is not in the list")
        if not line["key"].isidentifier():
            file.wrong.append(f"{where}: key '{line['key']}' is no name")
        if line["key"] in rows:
            file.wrong.append(f"{where}: key '{line['key']}' is given twice")
        rows[line["key"]] = Constant(
            line["key"], line["what"], line["symbol"], line["unit"],
            _number(line["value"], f"{where}, value", file.wrong), file.about.get("source", ""),
            line["clause"], line["status"],
        )
    if file.wrong:
        raise Faults(file.wrong)
    return Constants(file.about["source"], file.about["title"], rows)
