"""Starting jobs: TOML files that say what is typed in the input cells.

A file has ``title``, ``about`` and ``created`` (a date), a table ``[job]`` with the job's inputs
by name, one ``[[section]]`` for each section type, and, where wanted, ``[catalog.TABLE."KEY"]``
with numbers of a product.  Inputs that come in fours are lists.  What is left out stays blank.
"""

from __future__ import annotations

import difflib
import re
import stat
import tomllib
from dataclasses import dataclass, field
from datetime import date, datetime
from pathlib import Path
from typing import Any

from builder.language import Ask, Faults, Table
from builder.language.units import TEXT

MOST_SECTIONS = 6
LARGEST_FILE = 200_000
"""A job file of more bytes is refused unread."""
LONGEST_ABOUT = 110
ERROR_WORD = re.compile(r"#(N/A|[A-Z0-9/]+[!?])")
FIRST_YEAR, LAST_YEAR = 1980, 2107
"""Years that the dates of a compressed file can hold."""
HEAD = {"title": str, "about": str, "created": date, "job": dict, "section": list,
        "catalog": dict}


@dataclass(frozen=True)
class Job:
    """What is typed in the inputs of one workbook.

    ``inputs`` maps an input's name to its value; ``sections`` holds one such map for each
    section type, at most six; ``catalog`` maps table → key → column → value.
    """

    name: str
    title: str
    about: str
    created: datetime
    inputs: dict[str, float | str] = field(default_factory=dict)
    sections: tuple[dict[str, float | str], ...] = ()
    catalog: dict[str, dict[str, dict[str, float]]] = field(default_factory=dict)


def read_job(path: Path, job_inputs: list[Ask], section_inputs: list[Ask],
             tables: list[Table]) -> Job:
    """Read a job file against the inputs there are.

    Raises:
        Faults: every fault of the file at once: what, where, what was given, what is allowed.
    """
    data = _toml(path)
    wrong = [f"{path.name}: there is no '{_shown(key)[1:-1]}'; a job file has {', '.join(HEAD)}"
             for key in data if key not in HEAD]
    for key, kind in HEAD.items():
        if key in ("title", "about", "created") and key not in data:
            wrong.append(f"{path.name}: '{key}' is missing")
        elif key in data and not isinstance(data[key], kind):
            wrong.append(f"{path.name}, {key}: given {_shown(data[key])}; allowed is "
                         f"a {_kind(kind)}")
    data = {k: v for k, v in data.items() if k in HEAD and isinstance(v, HEAD[k])}
    for key in ("title", "about"):
        if key in data:
            wrong += [f"{path.name}, {key}: {w}" for w in _text_faults(data[key], LONGEST_ABOUT)]
    inputs, found = _typed(data.get("job", {}), job_inputs, f"{path.name}, [job]")
    wrong += found
    listed = data.get("section", [])
    if len(listed) > MOST_SECTIONS:
        wrong.append(f"{path.name}: {len(listed)} [[section]] tables; allowed is {MOST_SECTIONS}")
    sections = []
    for number, given in enumerate(listed, start=1):
        where = f"{path.name}, [[section]] {number}"
        if not isinstance(given, dict):
            wrong.append(f"{where}: given {_shown(given)}; allowed is a table of inputs")
            continue
        values, found = _typed(given, section_inputs, where)
        sections.append(values)
        wrong += found
    catalog, found = _catalog(data.get("catalog", {}), tables, path.name)
    wrong += found
    day = data.get("created")
    if day is not None and not FIRST_YEAR <= day.year <= LAST_YEAR:
        wrong.append(f"{path.name}, created: given {day}; allowed is a date from {FIRST_YEAR} "
                     f"to {LAST_YEAR}")
    if wrong:
        raise Faults(wrong)
    return Job(path.stem, data["title"], data["about"], datetime(day.year, day.month, day.day),
               inputs, tuple(sections), catalog)


def _toml(path: Path) -> dict[str, Any]:
    try:
        found = path.stat()
        if not stat.S_ISREG(found.st_mode) and not stat.S_ISDIR(found.st_mode):
            # A pipe waits for ever, a device never ends.
            raise Faults([f"{path}: cannot be read: it is no file"])
        size = found.st_size
        if size > LARGEST_FILE:
            raise Faults([f"{path.name}: {size:,} bytes; allowed is {LARGEST_FILE:,}"])
        return tomllib.loads(path.read_bytes().decode("utf-8-sig"))
    except OSError as fault:
        raise Faults([f"{path}: cannot be read: {fault.strerror}"]) from None
    except UnicodeDecodeError as fault:
        raise Faults([f"{path.name}: byte {fault.start} is not UTF-8; save the file as UTF-8"]
                     ) from None
    except tomllib.TOMLDecodeError as fault:
        raise Faults([f"{path.name}: {fault}; a line reads: name = value"]) from None
    except (ValueError, RecursionError):
        # What the reader gives up on: a number of thousands of digits, brackets without end.
        raise Faults([f"{path.name}: a number is too long or lists are too deep to be read"]
                     ) from None


def _kind(kind: type) -> str:
    return {str: "text in quotes", date: "date such as 2026-01-31", dict: "table",
            list: "list of [[section]] tables"}[kind]


def _shown(value) -> str:
    text = repr(value)
    return text if len(text) <= 60 else f"{text[:57]}…"


def _typed(given: dict, inputs: list[Ask], where: str) -> tuple[dict, list[str]]:
    known = {row.key: row for row in inputs}
    flat: dict[str, Any] = {}
    wrong: list[str] = []
    for key, value in given.items():
        listed = isinstance(value, list) and f"{key}_1" in known
        named = {f"{key}_{k}": v for k, v in enumerate(value, 1)} if listed else {key: value}
        wrong += [f"{where}, {name}: is given twice" for name in named if name in flat]
        flat |= named
    for key, value in flat.items():
        if key not in known:
            near = difflib.get_close_matches(key, known, 1)
            hint = f"; did you mean {near[0]}?" if near else ""
            wrong.append(f"{where}, {_shown(key)[1:-1]}: no such input{hint}")
        else:
            wrong += [f"{where}, {key}: {w}" for w in value_faults(known[key], value)]
    return flat, wrong


def value_faults(row: Ask, value) -> list[str]:
    """Return what is wrong with a value for an input: what was given, what is allowed."""
    if row.free:
        if not isinstance(value, str):
            return [f"given {_shown(value)}; allowed is text in quotes"]
        return _text_faults(value, int(row.most))
    if row.choices is not None:
        if value in row.choices.keys and isinstance(value, str):
            return []
        return [f"given {_shown(value)}; allowed is one of: {', '.join(row.choices.keys)}"]
    unit = "" if row.unit in ("", TEXT) else f" {row.unit}"
    allowed = f"allowed is {row.least:g} to {row.most:g}{unit}" + (", whole" if row.whole else "")
    return _number_faults(value, row.least, row.most, allowed, row.whole)


def _number_faults(value, low: float, high: float, allowed: str, whole=False) -> list[str]:
    good = isinstance(value, int | float) and not isinstance(value, bool)
    # A comparison with NaN is false, with infinity outside any limits.
    if not good or not low <= value <= high or (whole and value != int(value)):
        return [f"given {_shown(value)}; {allowed}"]
    return []


def _text_faults(value: str, most: int) -> list[str]:
    if not value.strip():
        return ["given an empty text; leave the line out instead"]
    if len(value) > most:
        return [f"given {len(value):,} letters; allowed is {most}"]
    if any(not c.isprintable() for c in value):
        return [f"given {_shown(value)}; allowed are letters on one line"]
    if ERROR_WORD.fullmatch(value.upper()):
        return [f"given {_shown(value)}; a cell that shows this reads as an error"]
    return []


def _catalog(given: dict, tables: list[Table], name: str) -> tuple[dict, list[str]]:
    known = {t.name: t for t in tables}
    wrong: list[str] = []
    for table, lines in given.items():
        where = f"{name}, [catalog.{_shown(table)[1:-1]}]"
        if table not in known:
            wrong.append(f"{where}: no such table; there are {', '.join(known)}")
            continue
        if not isinstance(lines, dict):
            wrong.append(f"{where}: given {_shown(lines)}; allowed is a table of products")
            continue
        for key, columns in lines.items():
            wrong += _product(known[table], key, columns, f"{where}, {_shown(key)[1:-1]}")
    return given, wrong


def _product(table: Table, key: str, columns, where: str) -> list[str]:
    if key not in table.keys:
        return [f"{where}: no such product; there are {', '.join(table.keys)}"]
    if not isinstance(columns, dict):
        return [f"{where}: given {_shown(columns)}; allowed is a table of numbers"]
    wrong = []
    for column, value in columns.items():
        if column not in table.allowed:
            wrong.append(f"{where}, {_shown(column)[1:-1]}: no such number; there are "
                         f"{', '.join(table.allowed)}")
            continue
        low, high = table.allowed[column]
        wrong += [f"{where}, {column}: {w}" for w in
                  _number_faults(value, low, high, f"allowed is {low:g} to {high:g}")]
    return wrong
