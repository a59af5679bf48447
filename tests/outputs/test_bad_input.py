"""No wrong entry in any typed cell shows an error value or lets a verdict stand.

Each case puts one entry in one cell of a finished job, in memory; cells that stand apart (one of
each section type, some lines of a list) are spoilt at once and judged one by one.  Others spoil
two at once, or all that have a state of their own.  The normal run takes a fixed choice: each way
of spoiling on some cells of each sheet, other cells for each way.  ``--long`` takes every one.
"""

from __future__ import annotations

import random

import pytest

from builder.engine.ironcalc_engine import Live
from builder.engine.values import address
from tests.outputs import spoilt
from tests.outputs.spoilt import (
    EMPTY,
    JOB,
    JUDGED,
    MASTER,
    OF_LINES,
    OF_TYPES,
    SHEETS,
    USED,
    all_typed,
    faults,
    packs,
    rounds,
    typed_cells,
    ways_on,
)
from tests.outputs.worked import resolved

pytestmark = pytest.mark.outputs
SHARES = {"Inputs": 43, "Sections": 15, "Catalog": 30, "Rates": 50, "Readings": 17,
          "Orders": 14}
"""One in so many packs of each sheet, for each way of spoiling it, in the normal run."""
LEAST = {False: 1000, True: 20_000}
"""Entries judged one by one, at least, in the normal run and with --long."""
WAYS = ("blank", "text", "zero", "negative", "tiny", "huge", "wildcard", "number as text",
        "formula as text", "truth", "part of a word", "other capitals", "first word", "last word",
        "longest", "just below", "just above", "least", "most", "half")
LAWFUL = ("first word", "last word", "least", "most")
VECTORS = {False: 16, True: 200}
"""How many books of random lawful entries are worked out, in the normal run and with --long."""
PAIRS = {False: 12, True: 1000}
"""How many pairs of wrong entries are tried, in the normal run and with --long."""


@pytest.fixture(scope="module")
def live():
    made = Live(resolved(JOB), names=False)
    made.evaluate()
    return made


def worked(live, one, entry):
    return worked_all(live, [(one, entry)])


def worked_all(live, entries):
    for one, entry in entries:
        live.set(one.place, entry)
    live.evaluate()
    values = live.values()
    for one, _ in entries:
        live.set(one.place, one.held)
    return values


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("sheet", SHARES)
def test_a_wrong_entry_is_told_and_lets_nothing_pass(live, pytestconfig, sheet, way):
    share = 1 if pytestconfig.getoption("--long") else SHARES[sheet]
    found = []
    for pack in packs(sheet, way, share):
        entries = [(one, one.entries()[way]) for one in pack]
        values = worked_all(live, entries)
        lines = sum(values.get(spoilt.book().state(one.place)) == 0 for one in pack)
        for one, entry in entries:
            found += faults(one, entry, values, lines=lines)
            if way in LAWFUL and values[spoilt.book().state(one.place)] != 1:
                found.append(f"{address(one.place)} refuses {entry!r}")
    assert not found, f"{len(found)} faults\n" + "\n".join(found[:30])


@pytest.mark.parametrize("way", WAYS)
def test_every_state_tells_a_wrong_entry_from_a_right_one(live, pytestconfig, way):
    """All cells at once, in all section types; of a line with one state, one after the other."""
    turns = rounds()
    if not pytestconfig.getoption("--long"):
        turns = [turns[WAYS.index(way) % len(turns)]]
    wrong, count = [], 0
    for turn in turns:
        typed = [(one, one.entries()[way]) for one in turn if way in one.entries()]
        values = worked_all(live, typed)
        wrong += spoilt.error_cells(values)
        refused = [(one, entry) for one, entry in typed if due(one, entry) == 0]
        needed = [one for one, _ in refused if one.place[0] != "Proof"]
        if needed and values[MASTER] not in ("NEEDS INPUT", "NOT OK"):
            wrong.append(f"the whole job reads {values[MASTER]}")
        for one, entry in typed:
            state = None if one.rule.kind == "text" else values[spoilt.book().state(one.place)]
            if due(one, entry) not in (None, state):
                wrong.append(f"{address(one.place)} = {entry!r}: its state is {state}")
            count += 1
    assert count
    assert not wrong, f"{len(wrong)} faults\n" + "\n".join(wrong[:30])


def due(one, entry):
    """Return the state that an entry must have; None: free words, or a blank that may do."""
    if one.rule.kind == "text" or (entry is None and one.rule.blank):
        return None
    return 0 if entry is None else int(one.allows(entry))


def test_two_wrong_entries_at_once_let_nothing_pass(live, pytestconfig):
    """One entry wrong must not hide that another is: each is judged as if it stood alone."""
    choose, found = random.Random(20260116), []
    sheets = [s for s in SHEETS if s != "Proof"]
    for _ in range(PAIRS[pytestconfig.getoption("--long")]):
        pair = []
        for sheet in choose.sample(sheets, 2):
            one = choose.choice([c for c in typed_cells(sheet) if c.place[2] != EMPTY
                                 or sheet not in OF_TYPES])
            way = choose.choice([w for w in one.entries() if w not in LAWFUL])
            pair.append((one, one.entries()[way]))
        values = worked_all(live, pair)
        for one, entry in pair:
            found += faults(one, entry, values, alone=False)
    assert not found, f"{len(found)} faults\n" + "\n".join(found[:30])


@pytest.mark.parametrize("long", [False, True])
def test_so_many_entries_are_judged_one_by_one(long):
    judged = {(one.place, way) for sheet, share in SHARES.items() for way in WAYS
              for pack in packs(sheet, way, 1 if long else share) for one in pack}
    assert len(judged) >= LEAST[long]


def test_the_ways_are_all_that_there_are():
    assert {way for sheet in SHEETS for way in ways_on(sheet)} == set(WAYS)


def test_every_typed_cell_is_among_the_cases():
    """With a share of 1 the cases are all cells; with the normal share, each gets its turn."""
    assert {s.name for s in resolved(JOB).sheets if s.rules} == set(SHEETS)
    assert set(SHARES) == set(SHEETS) - {"Proof"}
    for sheet in SHARES:
        cells = [one.place for one in typed_cells(sheet)]
        assert len(cells) == len(set(cells)) > 40
        packed = [one.place for pack in packs(sheet, "blank", 1) for one in pack]
        assert len(packed) == len(cells) and set(packed) == set(cells)
    for sheet in OF_TYPES:
        assert {one.place[2] for one in typed_cells(sheet)} == {*USED, EMPTY}
    assert {one.place for turn in rounds() for one in turn} == {
        one.place for sheet in SHEETS for one in all_typed(sheet)}
    for turn in rounds():
        states = [spoilt.book().state(c.place) for c in turn if c.rule.kind != "text"]
        assert None not in states and len(states) == len(set(states))


def test_what_rests_on_a_price_and_on_a_reading_is_known():
    """The judge has something to judge: paper behind Rates and Orders, gates behind Readings."""
    known = spoilt.book()
    for sheet in ("Rates", "Orders"):
        bare = [address(c.place) for c in typed_cells(sheet) if not known.paper_on(c.place)]
        assert bare == []
    assert {"Price", "Quote", "Orders"} <= known.papers
    gated = {p[1] for c in typed_cells("Readings") for p in known.resting_on(c.place)}
    assert known.gated <= gated


def test_every_word_of_every_list_is_usable(live, pytestconfig):
    """Each word of the lists, in all lists at once; with --long in one list after the other."""
    lists = [c for s in SHEETS if s not in OF_LINES for c in typed_cells(s)
             if c.rule.kind == "list" and c.place[2] != EMPTY]
    if pytestconfig.getoption("--long"):
        books = [[(one, word)] for one in lists for word in one.words()]
    else:
        longest = max(len(one.words()) for one in lists)
        books = [[(one, one.words()[k % len(one.words())]) for one in lists]
                 for k in range(longest)]
    wrong = []
    for entries in books:
        values = worked_all(live, entries)
        wrong += [f"{address(one.place)} refuses {word!r}" for one, word in entries
                  if values[spoilt.book().state(one.place)] != 1]
        wrong += spoilt.error_cells(values)
    assert wrong == []


def test_random_lawful_entries_never_show_an_error(pytestconfig):
    """Every cell of the job, of all six section columns and of the reader's cases at once."""
    choose, found = random.Random(20260115), []
    made = Live(resolved(JOB), names=False)
    for number in range(VECTORS[pytestconfig.getoption("--long")]):
        for one in (one for sheet in SHEETS for one in all_typed(sheet)):
            made.set(one.place, lawful(choose, one))
        made.evaluate()
        values = made.values()
        assert values[MASTER] in JUDGED
        found += [f"book {number}: {line}" for line in spoilt.error_cells(values)]
    assert not found, f"{len(found)} errors\n" + "\n".join(found[:30])


def lawful(choose, one):
    """Return an entry the rule takes, at its limits as often as between them."""
    rule = one.rule
    if rule.kind == "list":
        return choose.choice(one.words())
    if rule.kind == "text":
        return "x" * choose.randint(1, int(rule.most))
    least, most = rule.least, rule.most
    value = choose.choice([least, most, *[choose.uniform(least, most)] * 4])
    return round(value) if rule.kind == "whole" else value


def test_each_kind_of_fault_is_found(live):
    """The judge of all these cases, on books doctored to be wrong."""
    one = next(c for c in typed_cells("Inputs") if c.rule.kind == "list" and not c.rule.blank)
    assert spoilt.book().resting_on(one.place), "a typed cell on which verdicts rest"
    values = worked(live, one, None)
    assert faults(one, None, values) == []
    resting = spoilt.book().resting_on(one.place)[0]
    label = spoilt.book().file.text("Inputs", one.place[1])
    named = [p for p, v in values.items() if p[0] == "Start" and v == label]
    for wrong, words in [
        ({resting: "OK"}, "still reads OK"),
        ({MASTER: "LOOK"}, "the whole job reads LOOK"),
        ({resting: "#DIV/0!"}, "shows #DIV/0!"),
        (dict.fromkeys(named, "–"), "Start does not name"),
    ]:
        assert any(words in line for line in faults(one, None, values | wrong)), words
    column = next(c for c in typed_cells("Sections") if c.place[2] == EMPTY)
    entry = column.entries()["zero"]
    values = worked(live, column, entry)
    assert faults(column, entry, values) == []
    shown = next(p for p in spoilt.book().verdicts if p[2] == EMPTY)
    assert faults(column, entry, values | {shown: "OK"}) != []


@pytest.mark.parametrize("sheet", ["Rates", "Orders"])
def test_a_spoilt_price_that_shows_on_paper_is_found(live, sheet):
    one = next(c for c in typed_cells(sheet) if c.rule.kind == "decimal")
    values = worked(live, one, "abc")
    assert faults(one, "abc", values) == []
    assert values[MASTER] == "NEEDS INPUT"
    shown = spoilt.book().paper_on(one.place)[0]
    assert any("still shows 1" in line for line in faults(one, "abc", values | {shown: 1.0}))
    assert any("the whole job reads LOOK" in line
               for line in faults(one, "abc", values | {MASTER: "LOOK"}))
