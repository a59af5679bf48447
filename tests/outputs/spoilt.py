"""What happens when a typed cell is spoilt: the cells, the ways to spoil, the faults found.

Which verdicts and which paper rest on a typed cell is read from the formulas of the file.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache, cached_property

from builder.engine.values import Value, address
from builder.resolve.cells import InputRule, Place
from builder.resolve.frame import STATE
from tests.outputs.reading import DASH, Read, delivered, read
from tests.outputs.worked import resolved
from tests.outputs.worlds import Entry, Shown, World

JOB = "walkway_t_head"
USED, EMPTY = (4, 5, 6), 9
"""Columns of the section types that the job uses, and of the last one, which it does not."""
FILLED = USED[0]
OF_JOB, OF_TYPES, OF_LINES = ("Inputs", "Rates"), ("Sections", "Readings"), ("Catalog", "Proof")
"""Sheets with one typed column; with one a section type; where a whole line has one state."""
SHEETS = (*OF_JOB, *OF_TYPES, "Orders", *OF_LINES)
MASTER: Place = ("Checks", 1, 1)
JUDGED = ("OK", "LOOK", "NOT OK")
FOR_TEXT = ("blank", "zero", "huge", "formula as text", "truth", "no letter", "space", "date",
            "error as text", "error")
"""Ways to spoil a cell that takes any words."""
GATES = ("State: 0 ", "Inputs wanting")
"""How the labels begin of the rows that count usable inputs: not ways by which a value passes."""
SUMMARIES = ("Start", "Checks")
"""Sheets that sum up; what passes by way of them is the verdict of the whole job."""


@dataclass(frozen=True)
class Typed:
    """A cell that may be typed in, its rule, and what stands in it."""

    place: Place
    rule: InputRule
    held: Value | None

    def entries(self) -> dict[str, Entry]:
        """Return what is typed, by the way it is wrong (or, at the end, right)."""
        rule = self.rule
        found: dict[str, Entry] = {
            "blank": None, "text": "abc", "zero": 0, "negative": -1, "tiny": 1e-12,
            "huge": 1e15, "wildcard": "*", "number as text": "12", "formula as text": "=1/0",
            "truth": True, "no letter": "", "space": " ", "percent as text": "25%",
            "date": 46037, "date as text": "2026-01-15", "error as text": "#N/A",
            "error": Shown("#N/A")}
        if rule.kind == "list":
            words = self.words()
            found |= {"part of a word": words[0][:-1] + "?", "other capitals": words[0].swapcase(),
                      "space behind": words[0] + " "}
            found |= {"first word": words[0], "last word": words[-1]}
        elif rule.kind == "text":
            # All words are as good as these, and none is calculated with.
            found = {way: found[way] for way in FOR_TEXT} | {"longest": "W" * int(rule.most)}
        else:
            least, most = rule.least, rule.most
            span = (most - least) or 1
            found |= {"just below": least - span * 1e-6, "just above": most + span * 1e-6,
                      "least": least, "most": most}
            held = self.held if isinstance(self.held, int | float) else (least + most) / 2
            found |= {"percent": held / 100, "not in percent": held * 100}
            if rule.kind == "whole":
                found["half"] = least + 0.5
        return found

    def words(self) -> tuple[str, ...]:
        """Return the words of the list, from the file."""
        return words_of(self.rule.source)

    def allows(self, entry: Entry) -> bool:
        """Say whether the rule takes an entry.

        Case does not count in a list, as in the compare of a formula: ``steel`` is ``Steel``.
        """
        rule = self.rule
        if rule.kind == "text":
            return True
        if rule.kind == "list":
            return isinstance(entry, str) and entry.lower() in [w.lower() for w in self.words()]
        if isinstance(entry, bool | str) or not rule.least <= entry <= rule.most:
            return False
        return rule.kind != "whole" or entry == int(entry)

    def due(self, entry: Entry) -> int | None:
        """Return the state an entry must have; None: free words, or a blank that may do."""
        if self.rule.kind == "text" or (entry is None and self.rule.blank):
            return None
        return 0 if entry is None else int(self.allows(entry))


@cache
def words_of(source: str) -> tuple[str, ...]:
    """Return the words in the range of a list's rule, from the file."""
    file = read(delivered(JOB))
    sheet, _, span = source.removeprefix("=").partition("!")
    first, last = (int(cell.rpartition("$")[2]) for cell in span.split(":"))
    return tuple(file.text(sheet, row) for row in range(first - 1, last))


@cache
def all_typed(sheet: str) -> list[Typed]:
    """Return the typed cells of a sheet."""
    plan = next(s for s in resolved(JOB).sheets if s.name == sheet)
    held = {(c.row, c.col): c.content for c in plan.cells}
    return [Typed((sheet, *spot), rule, held.get(spot))
            for rule in plan.rules for spot in rule.spots()]


@cache
def typed_cells(sheet: str) -> list[Typed]:
    """Return the cells that are spoilt: of section types those of the used ones, one unused."""
    return [one for one in all_typed(sheet)
            if sheet not in OF_TYPES or one.place[2] in (*USED, EMPTY)]


def some(sheet: str, share: int) -> list[Typed]:
    """Return every ``share``-th of the cells of a sheet that are spoilt one at a time."""
    cells = typed_cells(sheet)
    return cells[share // 2::share]


@cache
def ways_on(sheet: str) -> list[str]:
    """Return the ways in which cells of a sheet can be spoilt."""
    return list(dict.fromkeys(w for one in typed_cells(sheet) for w in one.entries()))


@cache
def rounds() -> list[list[Typed]]:
    """Return all typed cells in rounds, so that no two of a round have one state between them.

    Cells with a state of their own are in every round, cells of a line take turns.
    """
    own = [one for s in SHEETS if s not in OF_LINES for one in all_typed(s)]
    lines: dict[Place | None, list[Typed]] = {}
    for sheet in OF_LINES:
        for one in all_typed(sheet):
            lines.setdefault(book().state(one.place), []).append(one)
    longest = max(map(len, lines.values()))
    return [own + [line[k] for line in lines.values() if k < len(line)] for k in range(longest)]


class Book:
    """What the checks need to know of the file: verdicts, paper, and what rests on what."""

    def __init__(self, file: Read):
        """Find the verdicts (the links on Checks, and the cells they lead to) and the paper."""
        self.file = file
        self.verdicts: dict[Place, Place] = {}
        self.gated: set[int] = set()
        for place in file.formulas:
            if place[0] == "Checks" and place[1] > 5 and FILLED <= place[2] <= EMPTY:
                areas = file.areas[place]
                assert file.formulas[place].count("!") == 1 and len(areas) == 1, place
                self.verdicts[place] = areas[0][:3]
                # The worst ratio waits for the state of the sheet, or for that of a block.
                states = file.areas["Checks", place[1], 2][0]
                if states[1] != STATE:
                    self.gated.add(place[1])
        assert self.verdicts and self.gated
        self.gates = {p[:2] for p, c in file.cells.items()
                      if isinstance(c.value, str) and c.value.startswith(GATES)}
        self.papers = {p[0] for p, c in file.cells.items()
                       if isinstance(c.value, str) and c.value.startswith(GATES[0] + "nothing")}
        self.after = cache(self._after)

    def _passes(self, place: Place) -> bool:
        """Say whether a formula passes a value on: gates and summaries do not."""
        return place[0] not in SUMMARIES and not (place[:2] in self.gates and place[2] >= 2)

    def _after(self, place: Place) -> set[Place]:
        """Return the formula cells that rest on a typed cell by value."""
        return self.file.after(place, self._passes)

    def resting_on(self, place: Place) -> list[Place]:
        """Return the verdicts, as they stand on Checks, that rest on a typed cell by value."""
        after = self.after(place)
        return [shown for shown, worked in self.verdicts.items() if worked in after]

    def paper_on(self, place: Place) -> list[Place]:
        """Return what rests on a typed cell by value on lists, prices, paper and drawings.

        The state beside an entry is none of it: it stands in a column of whole 0 and 1.
        """
        state = self.state(place)
        return [p for p in self.after(place) if p[0] in self.papers and p != state]

    def state(self, place: Place) -> Place | None:
        """Return the cell that says whether a typed cell, or its line, is usable."""
        sheet, row, col = place
        near = [p for p in self.file.readers.get(place, ()) if p[0] == sheet]
        if sheet in OF_JOB:
            near = [p for p in near if p[1] == row and p[2] == 7]
        elif sheet == "Orders":
            near = [p for p in near if p == (sheet, row, col + 1)]
        elif sheet == "Catalog":
            near = [p for p in near if p[1] == row]
        elif sheet in OF_TYPES:
            label = self.file.text(sheet, row)
            near = [p for p in near if p[2] == col and p[1] > row
                    and self.file.text(sheet, p[1]) == label]
        else:
            near = [p for p in near if self.file.text(sheet, p[1]).startswith("Ready")
                    and p[2] == col]
        return near[0] if near else None

    @cached_property
    def start_rows(self) -> dict[str, int]:
        """Return the row of Start that has a label."""
        return {self.file.text(*p): p[1] for p in self.file.cells if p[0] == "Start" and not p[2]}

    def table_of(self, row: int) -> str:
        """Return the title of the catalog table in which a line stands: above its heads."""
        while self.file.text("Catalog", row) != "Least":
            row -= 1
        return self.file.text("Catalog", row - 3)

    def worked_on_proof(self, place: Place) -> list[Place]:
        """Return what is worked out on Proof from a typed cell of a case, its state left out."""
        state = self.state(place)
        return [p for p in self.after(place) if p[0] == "Proof" and p != state]

    def shown_at_start(self, label: str, values: Mapping[Place, Value]) -> list[Value]:
        """Return what stands in the row of Start that has a label."""
        row = self.start_rows[label]
        return [values[p] for col in range(1, 12) if (p := ("Start", row, col)) in values]


@cache
def book() -> Book:
    """Return the delivered workbook that is spoilt."""
    return Book(read(delivered(JOB)))


def error_lines(world: World) -> Iterator[str]:
    """Yield a line for each cell that shows an error value."""
    for place in world.errors:
        yield f"{address(place)} shows {world.values[place]}"


def faults(one: Typed, entry: Entry, world: World, alone: bool = True) -> list[str]:
    """Return what is wrong after an entry, each with the cell that was spoilt.

    Not ``alone``: other cells are spoilt too, and Start may name another first.
    """
    known, sheet, values = book(), one.place[0], world.values
    # Free words that look like an error are words all the same where they are shown.
    found = [line for line in error_lines(world) if one.rule.kind != "text"
             or type(entry) is not str or not line.endswith(f"shows {entry}")]
    # Free words are never calculated with: no state, nothing rests on them.
    state = None if one.rule.kind == "text" else known.state(one.place)
    if state is None and one.rule.kind != "text":
        found.append("no state cell reads it")
    due = one.due(entry)
    if state is not None and (values[state] not in (0, 1) or due not in (None, values[state])):
        found.append(f"its state is {values[state]!r}")
    if sheet in OF_TYPES and one.place[2] == EMPTY:
        found += _unused_column(sheet, entry, values)
    elif state is not None and values[state] == 0:
        found += _not_usable(one, known, values)
        if alone:
            found += _not_named(one, known, values)
    return [f"{address(one.place)} = {entry!r}: {what}" for what in found]


def _master_wrong(values: Mapping[Place, Value]) -> Iterator[str]:
    """Yield a line unless the whole job needs input, or a check that stands does not pass."""
    due = "NOT OK" if "NOT OK" in [values[p] for p in book().verdicts] else "NEEDS INPUT"
    if values[MASTER] != due:
        yield f"the whole job reads {values[MASTER]}, not {due}"


def _not_usable(one: Typed, known: Book, values: Mapping[Place, Value]) -> Iterator[str]:
    """Yield the faults of a book in which one typed cell is not usable.

    A drawing loses its words, its quantities are 0, its points lie off the paper (at 2, where axes
    end at 1); all other paper shows dashes.
    A case of the reader's own on Proof is no part of the job: its own results are dashes.
    """
    sheet = one.place[0]
    if sheet == "Proof":
        for place in known.worked_on_proof(one.place):
            if values[place] != DASH:
                yield f"{address(place)} still shows {values[place]!r}"
        return
    for place in known.resting_on(one.place):
        if values[place] in JUDGED:
            label = known.file.text("Checks", place[1])
            yield f"{address(place)} ({label}) still reads {values[place]}"
    for place in known.paper_on(one.place):
        if values[place] != DASH and not (place[0] == "Drawing" and values[place] in (0, 2, " ")):
            yield f"{address(place)} still shows {values[place]!r}"
    yield from _master_wrong(values)


def _not_named(one: Typed, known: Book, values: Mapping[Place, Value]) -> Iterator[str]:
    """Yield a line if Start does not tell which cell, or which line, is not usable.

    A case on Proof has its own line that says whether it is ready.
    """
    sheet, row, _ = one.place
    if sheet == "Proof":
        return
    label, of = known.file.text(sheet, row), sheet
    if sheet == "Catalog":
        of = f"Catalog, {known.table_of(row)}"
        wanted = f"{of}: first line wanted"
    elif sheet == "Orders":
        label, wanted = f"row {row + 1}", f"{of}: first price wanted"
    else:
        wanted = f"{of}: first input wanted"
    if known.shown_at_start("Is an input still wanted?", values) != ["see below"]:
        yield "Start says that no input is wanted"
    if label not in known.shown_at_start(wanted, values):
        yield f"Start does not name {label!r}"


def _unused_column(sheet: str, entry: Entry, values: Mapping[Place, Value]) -> Iterator[str]:
    """Yield the faults of a book in whose empty section column one cell is typed.

    It begins a type if it stands on Sections.  A check of a gated block is not used until
    something is read; no reading begins a type.
    """
    begun = sheet == "Sections" and entry is not None
    for place in book().verdicts:
        due = ("NEEDS INPUT", "not used") if place[1] in book().gated else ("NEEDS INPUT",)
        if place[2] == EMPTY and values[place] not in (due if begun else ("not used",)):
            yield f"{address(place)} of the column reads {values[place]}"
    if begun:
        yield from _master_wrong(values)
        if values["Sections", 3, EMPTY] == DASH:
            yield "Sections does not say what is wanted"
