"""Data against the files of published values, read here a second time."""

from __future__ import annotations

import csv
from collections.abc import Mapping
from functools import cache
from pathlib import Path

from builder.resolve.cells import Cell, Place
from builder.sheets.book import model
from tests.second.given import TEMPLATES
from tests.seeded.bench import Bench


@cache
def lines(path: Path) -> list[list[str]]:
    """Return the lines of a file, its heads first, without what is said about it."""
    text = path.read_text(encoding="utf-8").splitlines()
    return list(csv.reader(line for line in text if not line.startswith("#")))


@cache
def constants() -> dict[tuple[str, str, str, str], set[float]]:
    """Return what, symbol, unit, clause → values, of all files of constants."""
    found: dict[tuple[str, str, str, str], set[float]] = {}
    for path in sorted((TEMPLATES / "tables").glob("*.csv")):
        head, *rest = lines(path)
        if "value" in head and "what" in head:
            for line in rest:
                named = dict(zip(head, line, strict=True))
                key = tuple(named[k] for k in ("what", "symbol", "unit", "clause"))
                found.setdefault(key, set()).add(float(named["value"]))
    return found


def on_file(place: Place, number: float) -> bool:
    """Say whether a number of Data stands so in the file of its table or constant."""
    for constant in model().data.constants:
        if model().places.rows[constant] == place:
            known = [values for (what, symbol, unit, clause), values in constants().items()
                     if (what, unit, clause) == (constant.label, constant.unit, constant.clause)]
            return any(abs(number - v) < 1e-12 for values in known for v in values)
    for table in model().data.tables:
        sheet, y, x = model().places.tables[table.name]
        if y <= place[1] < y + len(table.keys) and x < place[2] <= x + len(table.columns):
            folder = next(f for f in ("tables", "catalog")
                          if (TEMPLATES / f / f"{table.name}.csv").exists())
            line = lines(TEMPLATES / folder / f"{table.name}.csv")[1 + place[1] - y]
            return abs(float(line[place[2] - x]) - number) < 1e-12
    raise KeyError(place)


def numbers(bench: Bench) -> Mapping[Place, Cell]:
    """Return the numbers of Data that are constants or stand in tables."""
    first = model().places.rows[model().data.constants[0]][1]
    spots = {model().places.rows[c] for c in model().data.constants}
    for table in model().data.tables:
        sheet, y, x = model().places.tables[table.name]
        spots |= {(sheet, y + k, x + 1 + n) for k in range(len(table.keys))
                  for n in range(len(table.columns))}
    return {p: c for p, c in bench.cells.items()
            if p[0] == "Data" and p[1] >= first and c.kind == "number" and p in spots}


def marks(bench: Bench) -> list[Place]:
    """Return the cells of Data that say which input feeds which sheet, marked or blank."""
    return [model().data.mark(sheet, part, k)
            for part in model().typing.parts
            for k, item in enumerate(part.lines) if hasattr(item, "default")
            for sheet in model().calculation]


@cache
def examples() -> dict[Place, float]:
    """Return the numbers of the published examples on Proof: given, printed, half their step."""
    found: dict[Place, float] = {}
    for one, case, row, (sheet, y, x), _, _ in model().proof.results:
        found |= {(sheet, y, x): case.printed[row], (sheet, y + 2, x): case.step[row] / 2}
        if row in case.wrong:
            found[sheet, y + 4, x] = case.wrong[row]
        for given, place in model().proof.free[one.key].given.items():
            if not isinstance(case.given[given], str):
                found[sheet, place[1], x] = case.given[given]
    return found


def is_example(place: Place, number: float) -> bool:
    """Say whether a number on Proof is that of its example, or the factor of a source's unit."""
    if place in examples():
        return abs(examples()[place] - number) < 1e-12 * max(1.0, abs(number))
    factors = {factor for one in model().declared.families for _, factor in one.units.values()}
    return any(abs(number - f) <= 1e-12 * f for f in factors)
