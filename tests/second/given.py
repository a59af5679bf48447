"""What the second calculation starts from: entries, products, published tables and constants.

Everything is read from the CSV files themselves; numbers become floats, words stay words.
"""

from __future__ import annotations

import copy
import csv
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

TEMPLATES = Path(__file__).resolve().parents[2] / "templates"
Value = float | str
Results = dict[str, Value]
Products = dict[str, dict[str, dict[str, Value]]]
"""Table → product → column → value."""


@dataclass(eq=False)
class Given:
    """One section type: what was entered (a default where the cell is blank) and is for sale.

    ``job`` and ``sec`` map the name of an input to the value used; ``entered_job`` and
    ``entered_sec`` hold what was typed and nothing else; ``all`` lists all types of the job that
    are in use; ``done`` holds the results so far; ``typed`` the yard's prices that were typed.
    """

    letter: str
    job: dict[str, Value]
    sec: dict[str, Value]
    catalog: Products
    entered_job: dict[str, Value] = field(default_factory=dict)
    entered_sec: dict[str, Value] = field(default_factory=dict)
    all: list[Given] = field(default_factory=list)
    done: Results = field(default_factory=dict)
    typed: dict[str, float] = field(default_factory=dict)


def _lines(path: Path) -> list[list[str]]:
    text = path.read_text(encoding="utf-8").splitlines()
    return list(csv.reader(line for line in text if not line.startswith("#")))


def _value(text: str) -> Value:
    try:
        return float(text)
    except ValueError:
        return text


def _rows(path: Path) -> list[dict[str, Value]]:
    """Return the lines of a table; the first column, its key, stays a word."""
    heads, *lines = _lines(path)
    names = [head.split(" [")[0].split(" {")[0] for head in heads]
    return [{name: text if number == 0 else _value(text)
             for number, (name, text) in enumerate(zip(names, line, strict=True))}
            for line in lines]


@cache
def table(name: str) -> list[dict[str, Value]]:
    """Return the lines of a published table, by column; units are left off the column's name."""
    return _rows(TEMPLATES / "tables" / f"{name}.csv")


@cache
def line_of(name: str, key: str) -> dict[str, Value]:
    """Return the first line of a published table with a key in its first column.

    Raises:
        KeyError: no line has the key.
    """
    for line in table(name):
        if next(iter(line.values())) == key:
            return line
    raise KeyError(f"{name}: {key}")


@cache
def constants(name: str) -> dict[str, float]:
    """Return the constants of a source, by key."""
    return {line["key"]: line["value"] for line in table(name)}


@cache
def _catalog() -> Products:
    found: Products = {}
    for path in sorted((TEMPLATES / "catalog").glob("*.csv")):
        lines = _rows(path)
        head = next(iter(lines[0]))
        found[path.stem] = {line[head]: {k: v for k, v in line.items() if k != head}
                            for line in lines}
    return found


def catalog(changes: Mapping[str, Mapping[str, Mapping[str, float]]] | None = None) -> Products:
    """Return all products by table, name and column, with a job's ``changes`` in place."""
    found = copy.deepcopy(_catalog())
    for name, products in (changes or {}).items():
        for product, columns in products.items():
            found[name][product] |= columns
    return found
