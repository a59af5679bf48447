"""Typed cells: what is taken and what is not, what waits for it, by the rules of the cells.

The rule of a cell (its least, most, list, whether blank will do) is what the program that shows
the workbook keeps to while one types; the state beside the cell must come to the same.
"""

from __future__ import annotations

import random
from collections.abc import Iterable
from dataclasses import replace
from functools import cache

from builder.engine.values import Value, Values
from builder.jobs import Job
from builder.language import Ask
from builder.resolve.cells import Place
from builder.resolve.frame import FIRST, STATE
from builder.resolve.input_sheets import LEAST, MOST, S_LEAST, S_MOST
from builder.sheets.book import model
from tests.second.drawn import LETTERS
from tests.seeded.bench import Bench, Case
from tests.seeded.resting import is_body

DASH = "–"
WAYS = ("blank", "text", "least", "most", "just below", "just above", "half", "first word",
        "last word", "part of a word", "inside", "a hundredth", "truth")
FEW_WAYS = ("blank", "least", "most", "just below", "just above")


def entry(ask: Ask, way: str) -> Value | None:
    """Return what is typed for an input in one way; None where the way leaves it blank."""
    if ask.free or way == "blank":
        return None
    if ask.choices is not None:
        words = ask.choices.keys
        return {"first word": words[0], "last word": words[-1], "inside": words[len(words) // 2],
                "part of a word": words[0][:-1] + "?", "least": 1.0}.get(way, "abc")
    span = (ask.most - ask.least) or 1
    near = 1 if ask.whole else span * 1e-6
    return {"least": ask.least, "most": ask.most, "just below": ask.least - near,
            "just above": ask.most + near, "half": ask.least + 0.5, "truth": True,
            "inside": round(ask.least + span * 0.6),
            "a hundredth": round(ask.least + span / 100, 4)}.get(way, "abc")


def allowed(ask: Ask, value: Value) -> bool:
    """Say whether an input takes an entry."""
    if ask.choices is not None:
        return isinstance(value, str) and value.lower() in [k.lower() for k in ask.choices.keys]
    if isinstance(value, bool | str) or not ask.least <= value <= ask.most:
        return False
    return not ask.whole or value == int(value)


def edge_cases(job: Job, whole: bool = True) -> list[Case]:
    """Return books in which every input of every section type holds an entry of one way."""
    found = []
    for way in WAYS if whole else FEW_WAYS:
        inputs = {a.key: v for a in model().job_inputs() if (v := entry(a, way)) is not None}
        section = {a.key: v for a in model().section_inputs()
                   if (v := entry(a, way)) is not None}
        found.append(Case(f"every entry: {way}", replace(
            job, inputs=inputs, sections=(section,) * len(LETTERS), catalog={}), kind="edge",
            entries=catalog_entries(way) | {
                place: entry(ask, way) for ask, place in model().typing.typed.items()
                if ask.sheet.name == "Orders"}))
    return found


@cache
def catalog_numbers() -> list[tuple[Place, float, float, tuple[Place, ...]]]:
    """Return each number that may be typed on Catalog: place, least, most, its line's places."""
    found = []
    for table in model().editable:
        sheet, y, x = model().places.tables[table.name]
        for k in range(len(table.keys)):
            line = tuple((sheet, y + k, x + 1 + n) for n in range(len(table.columns)))
            for n, name in enumerate(table.columns):
                if name in table.allowed:
                    found.append((line[n], *table.allowed[name], line))
    return found


def catalog_entries(way: str) -> dict[Place, Value | None]:
    """Return one entry a line of the catalog, in turn along the line by the way."""
    lines: dict[tuple, list] = {}
    for place, least, most, line in catalog_numbers():
        lines.setdefault(line, []).append((place, least, most))
    found: dict[Place, Value | None] = {}
    for line in lines.values():
        place, least, most = line[WAYS.index(way) % len(line)]
        span = (most - least) or 1
        found[place] = {"blank": None, "text": "abc", "least": least, "most": most,
                        "just below": least - span * 1e-6, "truth": True}.get(
                            way, most + span * 1e-6)
    return found


def spots(ask: Ask) -> Iterable[tuple[Place, Place, Place]]:
    """Yield the typed cell, the state and the used value of an input, for each section type."""
    typing = model().typing
    typed, state, used = typing.typed[ask], typing.states.get(ask), model().places.rows[ask]
    if ask.sheet.name == "Orders":
        state = (typed[0], typed[1], typed[2] + 1)
    columns = range(len(LETTERS)) if ask in model().places.sections else range(1)
    for k in columns:
        yield tuple(None if p is None else (p[0], p[1], p[2] + k) for p in (typed, state, used))


def states(case: Case, values: Values) -> Iterable[Place]:
    """Where the state beside a typed cell, or the value used, is not what the rule says."""
    held = case.notes["typed"]
    for ask in model().typing.typed:
        for typed, state, used in spots(ask):
            entered = held.get(typed)
            if ask.free:
                if values[used] != (DASH if entered is None else entered):
                    yield used
                continue
            if entered is None:
                may = ask.default is not None or getattr(ask, "optional", False)
                # A blank that may be is right where what its default rests on is there.
                sure = case.kind == "sound" and (
                    ask not in model().places.sections or values["Sections", STATE, typed[2]])
                if state in values and values[state] not in (
                        (0,) if not may else (1,) if sure else (0, 1)):
                    yield state
                if not may and values[used] != DASH and ask.sheet.name != "Orders":
                    yield used
                continue
            good = allowed(ask, entered)
            if state is not None and bool(values.get(state, good)) != good:
                yield state
            if ask.sheet.name != "Orders" and values[used] != (entered if good else DASH):
                yield used
    yield from _catalog_states(case, values)


def _catalog_states(case: Case, values: Values) -> Iterable[Place]:
    held = case.notes["typed"]
    wrong: dict[tuple, bool] = {}
    for place, least, most, line in catalog_numbers():
        entered = held.get(place, 0 if place not in held else None)
        bad = place in held and (isinstance(entered, bool | str) or entered is None
                                 or not least <= entered <= most)
        wrong[line] = wrong.get(line, False) or bad
    for line, bad in wrong.items():
        sheet, y, x = line[-1]
        if bool(values[sheet, y, x + 1]) == bad:
            yield sheet, y, x + 1


def in_use(case: Case, values: Values) -> Iterable[Place]:
    """Where a section column is not said to be in use, or names another input as wanting."""
    held = case.notes["typed"]
    for part in model().typing.of(True):
        asks = [i for i in part.lines if isinstance(i, Ask)]
        for k in range(len(LETTERS)):
            column = FIRST + k
            if part.sheet.name == "Sections":
                used = any(held.get((p[0], p[1], column)) is not None for a in asks
                           for p in [model().typing.typed[a]])
                if values["Sections", STATE, column] != int(used):
                    yield "Sections", STATE, column
            used = values["Sections", STATE, column]
            wanting = [a.label for a in asks if a in model().typing.states and used
                       for p in [model().typing.states[a]]
                       if values.get((p[0], p[1], column)) == 0]
            if values[part.sheet.name, STATE - 1, column] != (wanting or [DASH])[0]:
                yield part.sheet.name, STATE - 1, column


def limits(bench: Bench) -> dict[Place, float]:
    """Return the limits that stand beside typed cells, as their rules have them."""
    found: dict[Place, float] = {}
    for ask, place in model().typing.typed.items():
        if ask.free or ask.choices is not None or ask.sheet.name == "Orders":
            continue
        low, high = (S_LEAST, S_MOST) if ask in model().places.sections else (LEAST, MOST)
        found |= {(place[0], place[1], low): ask.least, (place[0], place[1], high): ask.most}
    return found


def wide_job(job: Job, number: int) -> Job:
    """Return a job in which every list gives a word of its own, in turn, the last and first too.

    Numbers are left as they are; what belongs together is not, so that few such docks would be
    built, but every sheet must reckon them right.
    """
    def word(ask: Ask, k: int) -> str:
        keys = ask.choices.keys
        return (keys[-1], keys[0], keys[(number * 7 + k) % len(keys)])[min(number % 4, 2)]

    of_job = {a.key: word(a, k) for k, a in enumerate(model().job_inputs())
              if a.choices is not None}
    of_type = [a for a in model().section_inputs()
               if a.choices is not None
               # Floats that do not go into the frame are another matter.
               and a.key not in ("held_by", "float_model", "float_turned")]
    sections = tuple({**s, **{a.key: word(a, k + n) for k, a in enumerate(of_type)}}
                     for n, s in enumerate(job.sections))
    return replace(job, inputs={**job.inputs, **of_job}, sections=sections)


def wanting_cases(bench: Bench, job: Job, count: int) -> list[Case]:
    """Return sound jobs in which a few entries are blank or wrong, and what rests on those."""
    draw, found = random.Random(count), []
    of_job = [a for a in model().job_inputs() if not a.free and a.sheet.name != "Orders"]
    of_type = [a for a in model().section_inputs() if not a.free]
    for number in range(count):
        wrong: dict[Place, Value | None] = {}
        for ask in draw.sample(of_job, 2 if number else 1):
            wrong[model().typing.typed[ask]] = "abc"
        for ask in draw.sample(of_type, 2):
            sheet, y, x = model().typing.typed[ask]
            wrong[sheet, y, x + draw.randrange(len(LETTERS))] = "abc"
        found.append(Case(f"wanting {number}", job, wrong, "wanting",
                          notes={"wrong": list(wrong)}))
    return found


def waits(bench: Bench, case: Case, values: Values) -> Iterable[Place]:
    """Where a sheet does not wait for a wrong entry behind it, or waits though there is none.

    What is behind a sheet is read from the text of the formulas: a sheet waits for what its own
    rows read, and for what the sheets they read wait for.
    """
    if case.kind != "wanting":
        return
    reached = case.notes.setdefault("reached", _reached(bench, case))
    for place in bench.counts:
        if isinstance(values[place], str) or values[place] < 0:
            yield place
    for sheet in model().calculation:
        if sheet.scope == "section":
            for k in range(len(LETTERS)):
                column = FIRST + k
                if (values[sheet.name, STATE, column] == 2) == ((sheet.name, k) in reached):
                    yield sheet.name, STATE, column
        else:
            waiting = any((sheet.name, k) in reached for k in range(len(LETTERS)))
            place = bench.states[sheet.name]
            if (values[place] == 2) == waiting:
                yield place


def _reached(bench: Bench, case: Case) -> set[tuple[str, int]]:
    """Return sheet and number of the column of all that waits for the wrong entries."""
    used = {typed: use for ask in model().typing.typed for typed, _, use in spots(ask)}
    found: set[tuple[str, int]] = set()
    for typed in case.notes["wrong"]:
        columns = ({typed[2] - FIRST} if typed[0] in ("Sections", "Readings")
                   else set(range(len(LETTERS))))
        found |= _behind(bench, _direct(bench, used[typed]), columns)
    return found


def _direct(bench: Bench, used: Place) -> set[str]:
    """Return the sheets that read the value used of an input, or of a default that rests on it."""
    inputs = {part.sheet.name for part in model().typing.parts}
    direct, waiting, seen = set(), [used], {used}
    while waiting:
        for reader in bench.resting.readers.get(waiting.pop(), ()):
            if reader[0] not in inputs:
                if is_body(reader):
                    direct.add(reader[0])
            elif reader not in seen:
                seen.add(reader)
                waiting.append(reader)
    return direct


def _behind(bench: Bench, direct: set[str], columns: set[int]) -> set[tuple[str, int]]:
    """Return what waits when some sheets read a wrong entry of some columns."""
    reach: dict[str, set[int]] = {}
    for sheet in model().calculation:  # from left to right: each reads only to its left
        others = [reach[name] for name in bench.resting.reads[sheet.name] if name in reach]
        own = set(columns) if sheet.name in direct else set()
        own = own.union(*others)
        if own and sheet.name in bench.resting.across:
            own = set(range(len(LETTERS)))
        if own:
            reach[sheet.name] = own
    return {(name, k) for name, own in reach.items() for k in own}


def expected_marks(bench: Bench) -> set[Place]:
    """Return the cells of Data that must be marked: an input, and a sheet that reads it."""
    found, sheets = set(), {sheet.name: sheet for sheet in model().calculation}
    for part in model().typing.parts:
        for k, item in enumerate(part.lines):
            if not isinstance(item, Ask):
                continue
            direct = _direct(bench, model().places.rows[item])
            for name in {name for name, _ in _behind(bench, direct, {0})}:
                found.add(model().data.mark(sheets[name], part, k))
    return found
