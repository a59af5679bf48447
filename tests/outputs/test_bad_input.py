"""No wrong entry in any typed cell shows an error value or lets a verdict stand.

Each case puts one entry in one cell of a finished job, in memory; others spoil two at once, or
all that have a state of their own.  The normal run takes some cells of each sheet, each spoilt
in every way; ``--long`` takes every cell.
"""

from __future__ import annotations

import random

import pytest

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
    Typed,
    all_typed,
    error_lines,
    faults,
    rounds,
    some,
    typed_cells,
    ways_on,
)
from tests.outputs.worked import resolved
from tests.outputs.worlds import World, Worlds

pytestmark = pytest.mark.outputs
SHARES = {"Inputs": 27, "Sections": 43, "Catalog": 45, "Rates": 21, "Readings": 17, "Orders": 33,
          "Proof": 41}
"""One in so many cells of each sheet is spoilt in every way, in the normal run."""
WAYS = ("blank", "text", "zero", "negative", "tiny", "huge", "wildcard", "number as text",
        "formula as text", "truth", "no letter", "space", "percent as text", "date",
        "date as text", "error as text", "error", "part of a word", "other capitals",
        "space behind", "first word", "last word", "longest", "just below", "just above", "least",
        "most", "percent", "not in percent", "half")
LAWFUL = ("first word", "last word", "least", "most")
VECTORS = {False: 16, True: 200}
"""How many books of random lawful entries are worked out, in the normal run and with --long."""
PAIRS = {False: 16, True: 1500}
"""How many pairs of wrong entries are tried, in the normal run and with --long."""
FEWEST = {False: 1_000, True: 20_000}
"""How many cases there are at least, in the normal run and with --long."""


@pytest.fixture(scope="module")
def worlds():
    return Worlds(resolved(JOB), spoilt.book().file)


def chosen(sheet, long):
    return typed_cells(sheet) if long else some(sheet, SHARES[sheet])


@pytest.mark.parametrize("sheet", SHEETS)
def test_a_wrong_entry_is_told_and_lets_nothing_pass(worlds, pytestconfig, sheet):
    long = pytestconfig.getoption("--long")
    found = []
    for one in chosen(sheet, long):
        for entry in one.entries().values():
            found += faults(one, entry, worlds.after(one.place, entry))
    assert not found, f"{len(found)} faults\n" + "\n".join(found[:30])


@pytest.mark.parametrize("long", [False, True])
def test_there_are_cases_enough(long):
    cells = [one for sheet in SHEETS for one in chosen(sheet, long)]
    assert sum(len(one.entries()) for one in cells) >= FEWEST[long]
    assert {way for one in cells for way in one.entries()} == set(WAYS)


def test_what_few_formulas_decide_is_what_the_whole_book_shows(worlds, pytestconfig):
    """The short way against the long one: an entry judged by a book worked out for another."""
    choose = random.Random(20260117)
    cells = [choose.choice(typed_cells(sheet)) for sheet in SHEETS]
    seen = 0
    for one in cells:
        for way, entry in one.entries().items():
            before = worlds.solved
            world = worlds.after(one.place, entry)
            if worlds.solved == before and (seen < 8 or pytestconfig.getoption("--long")):
                seen += 1
                assert worlds.whole({one.place: entry}).values == world.values, (one.place, way)
    assert seen >= 8


@pytest.mark.parametrize("way", WAYS)
def test_every_state_tells_a_wrong_entry_from_a_right_one(worlds, pytestconfig, way):
    """All cells at once, in all section types; of a line with one state, one after the other."""
    turns = rounds()
    if not pytestconfig.getoption("--long"):
        turns = [turns[WAYS.index(way) % len(turns)]]
    wrong, count = [], 0
    for turn in turns:
        typed = [(one, one.entries()[way]) for one in turn if way in one.entries()]
        world = worlds.whole({one.place: entry for one, entry in typed})
        wrong += error_lines(world) if way != "error as text" else []
        refused = [one for one, entry in typed if one.due(entry) == 0]
        needed = [one for one in refused if one.place[0] != "Proof"]
        if needed and world.values[MASTER] not in ("NEEDS INPUT", "NOT OK"):
            wrong.append(f"the whole job reads {world.values[MASTER]}")
        for one, entry in typed:
            due = one.due(entry)
            if due is not None and world.values[spoilt.book().state(one.place)] != due:
                wrong.append(f"{address(one.place)} = {entry!r}: its state is not {due}")
            count += 1
    assert count
    assert not wrong, f"{len(wrong)} faults\n" + "\n".join(wrong[:30])


def test_two_wrong_entries_at_once_let_nothing_pass(worlds, pytestconfig):
    """One entry wrong must not hide that another is: each is judged as if it stood alone."""
    choose, found = random.Random(20260116), []
    sheets = [s for s in SHEETS if s != "Proof"]
    for _ in range(PAIRS[pytestconfig.getoption("--long")]):
        pair = {}
        for sheet in choose.choices(sheets, k=2):
            one = choose.choice([c for c in typed_cells(sheet) if c.place[2] != EMPTY
                                 or sheet not in OF_TYPES])
            way = choose.choice([w for w in one.entries() if w not in (*LAWFUL, "error as text")])
            pair[one.place] = (one, one.entries()[way])
        world = worlds.whole({place: entry for place, (_, entry) in pair.items()})
        for one, entry in pair.values():
            found += faults(one, entry, world, alone=False)
    assert not found, f"{len(found)} faults\n" + "\n".join(found[:30])


def test_the_ways_are_all_that_there_are():
    assert {way for sheet in SHEETS for way in ways_on(sheet)} == set(WAYS)


def test_every_typed_cell_is_among_the_cases():
    """With ``--long`` the cases are all cells of a used type and of an empty one."""
    assert {s.name for s in resolved(JOB).sheets if s.rules} == set(SHEETS) == set(SHARES)
    for sheet in SHEETS:
        cells = [one.place for one in chosen(sheet, True)]
        assert len(cells) == len(set(cells)) > 40
    for sheet in OF_TYPES:
        assert {one.place[2] for one in typed_cells(sheet)} == {*USED, EMPTY}
        assert {one.place[2] for one in some(sheet, SHARES[sheet])} == {*USED, EMPTY}
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
    assert all(known.worked_on_proof(c.place) for c in typed_cells("Proof"))


def test_every_word_of_every_list_is_usable(worlds, pytestconfig):
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
        world = worlds.whole({one.place: word for one, word in entries})
        wrong += [f"{address(one.place)} refuses {word!r}" for one, word in entries
                  if world.values[spoilt.book().state(one.place)] != 1]
        wrong += error_lines(world)
    assert wrong == []


def test_random_lawful_entries_never_show_an_error(worlds, pytestconfig):
    """Every cell of the job, of all six section columns and of the reader's cases at once."""
    choose, found = random.Random(20260115), []
    for number in range(VECTORS[pytestconfig.getoption("--long")]):
        world = worlds.whole({one.place: lawful(choose, one) for sheet in SHEETS
                              for one in all_typed(sheet)})
        assert world.values[MASTER] in JUDGED
        found += [f"book {number}: {line}" for line in error_lines(world)]
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


def doctored(world, wrong):
    return World(world.values | wrong)


def test_each_kind_of_fault_is_found(worlds):
    """The judge of all these cases, on books doctored to be wrong."""
    one = next(c for c in typed_cells("Inputs") if c.rule.kind == "list" and not c.rule.blank)
    assert spoilt.book().resting_on(one.place), "a typed cell on which verdicts rest"
    world = worlds.after(one.place, None)
    assert faults(one, None, world) == []
    resting = spoilt.book().resting_on(one.place)[0]
    label = spoilt.book().file.text("Inputs", one.place[1])
    named = [p for p, v in world.values.items() if p[0] == "Start" and v == label]
    for wrong, words in [
        ({resting: "OK"}, "still reads OK"),
        ({MASTER: "LOOK"}, "the whole job reads LOOK"),
        ({resting: "#DIV/0!"}, "shows #DIV/0!"),
        ({spoilt.book().state(one.place): 1}, "its state is 1"),
        (dict.fromkeys(named, "–"), "Start does not name"),
    ]:
        assert any(words in line for line in faults(one, None, doctored(world, wrong))), words
    column = next(c for c in typed_cells("Sections") if c.place[2] == EMPTY)
    entry = column.entries()["zero"]
    world = worlds.after(column.place, entry)
    assert faults(column, entry, world) == []
    shown = next(p for p in spoilt.book().verdicts if p[2] == EMPTY)
    assert faults(column, entry, doctored(world, {shown: "OK"})) != []
    own: Typed = typed_cells("Proof")[0]
    world = worlds.after(own.place, "abc")
    assert faults(own, "abc", world) == []
    shown = spoilt.book().worked_on_proof(own.place)[0]
    assert any("still shows 1" in f for f in faults(own, "abc", doctored(world, {shown: 1.0})))


@pytest.mark.parametrize("sheet", ["Rates", "Orders", "Catalog"])
def test_a_spoilt_price_that_shows_on_paper_is_found(worlds, sheet):
    one = next(c for c in reversed(typed_cells(sheet)) if c.rule.kind == "decimal"
               and spoilt.book().paper_on(c.place))
    world = worlds.after(one.place, "abc")
    assert faults(one, "abc", world) == []
    assert world.values[MASTER] == "NEEDS INPUT"
    shown = spoilt.book().paper_on(one.place)[0]
    assert any("still shows 1" in line
               for line in faults(one, "abc", doctored(world, {shown: 1.0})))
    assert any("the whole job reads LOOK" in line
               for line in faults(one, "abc", doctored(world, {MASTER: "LOOK"})))
