"""What framing and hardware read: tables by name, constants by key; and the two kinds of check."""

from __future__ import annotations

import csv
from collections.abc import Iterator
from functools import cache
from pathlib import Path

TABLES = Path(__file__).resolve().parents[2] / "templates" / "tables"
Results = dict[str, float | str]
INCHES = 12
"""Inches in a foot."""
SLACK = 1e-9
"""House choice: a step is taken only past a billionth over it."""


def _lines(name: str) -> Iterator[str]:
    text = (TABLES / f"{name}.csv").read_text(encoding="utf-8")
    return iter(line for line in text.splitlines() if not line.startswith("#"))


def _read(text: str) -> float | str:
    try:
        return float(text)
    except ValueError:
        return text


@cache
def lines(name: str) -> tuple[dict[str, float | str], ...]:
    """Return the lines of a published table, its column names without their units."""
    return tuple({head.split(" [")[0].split(" {")[0]: _read(text) for head, text in line.items()}
                 for line in csv.DictReader(_lines(name)))


@cache
def line_of(name: str, key: str) -> dict[str, float | str]:
    """Return the first line of a published table whose first column reads ``key``.

    Raises:
        KeyError: no line reads so.
    """
    for text, line in zip(_first_column(name), lines(name), strict=True):
        if text == key:
            return line
    raise KeyError(f"{name}.csv: {key}")


@cache
def place_of(name: str, key: str) -> int:
    """Return the place, from 1, of the first line that reads ``key``."""
    return _first_column(name).index(key) + 1


@cache
def _first_column(name: str) -> tuple[str, ...]:
    return tuple(line[0] for line in csv.reader(_lines(name)))[1:]


@cache
def figure(source: str, key: str) -> float:
    """Return a constant of a source."""
    return float(next(line["value"] for line in csv.DictReader(_lines(source))
                      if line["key"] == key))


def own(key: str) -> float:
    """Return one of the project's own judgements."""
    return figure("own", key)


def nds(key: str) -> float:
    """Return a constant of the National Design Specification for Wood Construction."""
    return figure("nds_2018", key)


def at_most(name: str, value: float, limit: float, look: float | None = None,
            worst: str = "NOT OK") -> Results:
    """Return ratio and verdict of a value that may be ``limit`` at most."""
    return _judged(name, value / limit, look, worst)


def at_least(name: str, value: float, limit: float, look: float | None = None,
             worst: str = "NOT OK") -> Results:
    """Return ratio and verdict of a value that must be ``limit`` at least; 0 and less read 99."""
    return _judged(name, limit / max(value, limit / 99), look, worst)


def _judged(name: str, ratio: float, look: float | None, worst: str) -> Results:
    if look is None:  # a rule of good practice says LOOK only when it is broken
        look = 1 + SLACK if worst == "LOOK" else own("look_from")
    word = worst if ratio > 1 + SLACK else "LOOK" if ratio > look + SLACK else "OK"
    return {f"{name}_ratio": ratio, f"{name}_verdict": word}
