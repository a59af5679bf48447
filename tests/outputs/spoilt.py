"""What happens when a typed cell is spoilt: the cells, the ways to spoil, the faults found.

Which verdicts rest on a typed cell is read from the formulas of the file.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache

from builder.engine.values import Value, Values, address
from builder.resolve.cells import InputRule, Place
from tests.outputs.reading import Read, delivered, read
from tests.outputs.worked import resolved

JOB = "walkway_t_head"
FILLED, EMPTY = 4, 9
"""Columns of the first section type, which the job uses, and of the last, which it does not."""
MASTER: Place = ("Checks", 1, 1)
JUDGED = ("OK", "LOOK", "NOT OK")
ERRORS = ("#DIV/0!", "#N/A", "#NAME?", "#NULL!", "#NUM!", "#REF!", "#VALUE!", "#ERROR!",
          "#SPILL!", "#CALC!", "#CIRC!", "#N/IMPL!")
GATES = ("State: 0 ", "Inputs wanting")
"""How the labels begin of the rows that count usable inputs: not ways by which a value passes."""


@dataclass(frozen=True)
class Typed:
    """A cell that may be typed in, its rule, and what stands in it."""

    place: Place
    rule: InputRule
    held: Value | None

    def entries(self) -> dict[str, Value | None]:
        """Return what is typed, by the way it is wrong (or, at the end, right)."""
        rule = self.rule
        found: dict[str, Value | None] = {
            "blank": None, "text": "abc", "zero": 0, "negative": -1, "tiny": 1e-12,
            "huge": 1e15, "wildcard": "*", "number as text": "12", "formula as text": "=1/0",
            "truth": True}
        if rule.kind == "list":
            words = self.words()
            found |= {"part of a word": words[0][:-1] + "?", "other capitals": words[0].swapcase()}
            found |= {"first word": words[0], "last word": words[-1]}
        elif rule.kind == "text":
            found["longest"] = "W" * int(rule.most)
        else:
            least, most = rule.least, rule.most
            span = (most - least) or 1
            found |= {"just below": least - span * 1e-6, "just above": most + span * 1e-6,
                      "least": least, "most": most}
            if rule.kind == "whole":
                found["half"] = least + 0.5
        return found

    def words(self) -> list[str]:
        """Return the words of the list, from the file."""
        file = read(delivered(JOB))
        sheet, _, span = self.rule.source.removeprefix("=").partition("!")
        first, last = (int(cell.rpartition("$")[2]) for cell in span.split(":"))
        return [file.text(sheet, row) for row in range(first - 1, last)]


@cache
def typed_cells(sheet: str) -> list[Typed]:
    """Return the typed cells of a sheet: of Sections those of a used and an unused column."""
    book = resolved(JOB)
    plan = next(s for s in book.sheets if s.name == sheet)
    held = {(c.row, c.col): c.content for c in plan.cells}
    found = []
    for rule in plan.rules:
        for row, col in rule.spots():
            if sheet != "Sections" or col in (FILLED, EMPTY):
                found.append(Typed((sheet, row, col), rule, held.get((row, col))))
    return found


def cases(sheet: str, way: str, share: int) -> list[Typed]:
    """Return the cells of a sheet to be spoilt in one way: every ``share``-th, in turn by way."""
    ways = ways_on(sheet)
    if way not in ways:
        return []
    able = [one for one in typed_cells(sheet) if way in one.entries()]
    return able[ways.index(way) % share::share]


def ways_on(sheet: str) -> list[str]:
    """Return the ways in which cells of a sheet can be spoilt."""
    return list(dict.fromkeys(w for one in typed_cells(sheet) for w in one.entries()))


def is_gate(file: Read, place: Place) -> bool:
    """Say whether a cell counts usable inputs and passes no value on."""
    return place[2] >= 2 and file.text(place[0], place[1]).startswith(GATES)


class Book:
    """What the checks need to know of the file: verdicts, and what rests on what."""

    def __init__(self, file: Read):
        """Find the verdicts: the links on Checks, and the cells they lead to."""
        self.file = file
        self.verdicts: dict[Place, Place] = {}
        for place, formula in file.formulas.items():
            areas = file.areas[place]
            if place[0] == "Checks" and place[1] > 5 and FILLED <= place[2] <= EMPTY:
                assert formula.count("!") == 1 and len(areas) == 1, formula
                self.verdicts[place] = areas[0][:3]
        assert self.verdicts

    def resting_on(self, place: Place) -> list[Place]:
        """Return the verdicts, as they stand on Checks, that rest on a typed cell by value."""
        after = self.file.after(place, lambda p: not is_gate(self.file, p))
        return [shown for shown, worked in self.verdicts.items() if worked in after]

    def state(self, place: Place) -> Place | None:
        """Return the cell that says whether a typed cell, or its line, is usable."""
        sheet, row, col = place
        near = [p for p in self.file.readers.get(place, ()) if p[0] == sheet]
        if sheet == "Inputs":
            near = [p for p in near if p[1] == row and p[2] == 7]
        elif sheet == "Catalog":
            near = [p for p in near if p[1] == row]
        elif sheet == "Sections":
            label = self.file.text(sheet, row)
            near = [p for p in near if p[2] == col and p[1] > row
                    and self.file.text(sheet, p[1]) == label]
        else:
            near = [p for p in near if self.file.text(sheet, p[1]).startswith("Ready")
                    and p[2] == col]
        return near[0] if near else None


@cache
def book() -> Book:
    """Return the delivered workbook that is spoilt."""
    return Book(read(delivered(JOB)))


def error_cells(values: Values) -> Iterator[str]:
    """Yield a line for each cell that shows an error value."""
    for place, value in values.items():
        if isinstance(value, str) and value.startswith(ERRORS):
            yield f"{address(place)} shows {value}"


def faults(one: Typed, entry: Value | None, values: Mapping[Place, Value]) -> list[str]:
    """Return what is wrong after one entry, each with the cell that was spoilt."""
    known, sheet = book(), one.place[0]
    found = list(error_cells(values))
    # Free words are never calculated with: no state, nothing rests on them.
    state = None if one.rule.kind == "text" else known.state(one.place)
    if state is None and one.rule.kind != "text":
        found.append("no state cell reads it")
    if sheet == "Sections" and one.place[2] == EMPTY:
        found += _column_begun(entry, values)
    elif state is not None and values[state] == 0:
        found += _not_usable(one, known, values)
    elif state is not None and values[state] != 1:
        found.append(f"its state is {values[state]!r}")
    return [f"{address(one.place)} = {entry!r}: {what}" for what in found]


def _not_usable(one: Typed, known: Book, values: Mapping[Place, Value]) -> Iterator[str]:
    """Yield the faults of a book in which one typed cell is not usable."""
    sheet, row, _ = one.place
    resting = known.resting_on(one.place)
    for place in resting:
        if values[place] in JUDGED:
            label = known.file.text("Checks", place[1])
            yield f"{address(place)} ({label}) still reads {values[place]}"
    if sheet == "Proof":
        return
    if (sheet != "Catalog" or resting) and values[MASTER] not in ("NOT OK", "NEEDS INPUT"):
        yield f"the whole job reads {values[MASTER]}"
    shown = [v for p, v in values.items() if p[0] == "Start"]
    label = known.file.text(sheet, row)
    if sheet == "Catalog":
        line = next(p for p in known.file.cells
                    if known.file.text(*p) == "Catalog lines that are not usable")
        if [v for p, v in values.items() if p[:2] == line[:2]] != [1]:
            yield "Start does not count the line"
    elif label not in shown:
        yield f"Start does not name {label!r}"


def _column_begun(entry: Value | None, values: Mapping[Place, Value]) -> Iterator[str]:
    """Yield the faults of a book in whose empty section column one cell is typed."""
    column = {values[p] for p in book().verdicts if p[2] == EMPTY}
    wanted = {"not used"} if entry is None else {"NEEDS INPUT"}
    if column != wanted:
        yield f"the verdicts of the column read {sorted(column)}"
    if entry is not None and values[MASTER] not in ("NOT OK", "NEEDS INPUT"):
        yield f"the whole job reads {values[MASTER]}"
    if entry is not None and values["Sections", 3, EMPTY] == "–":
        yield "Sections does not say what is wanted"
