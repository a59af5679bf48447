"""No wrong entry in any typed cell shows an error value or lets a verdict stand.

Each case puts one entry in one cell of a finished job, in memory.  The normal run takes a fixed
choice of cases: each way of spoiling on some cells of each sheet, other cells for each way.
``--long`` takes every one of them.
"""

from __future__ import annotations

import random

import pytest

from builder.engine.ironcalc_engine import Live
from builder.engine.values import address
from tests.outputs import spoilt
from tests.outputs.spoilt import EMPTY, FILLED, JOB, MASTER, cases, faults, typed_cells
from tests.outputs.worked import resolved

pytestmark = pytest.mark.outputs
SHARES = {"Inputs": 8, "Sections": 13, "Catalog": 130, "Proof": 60}
"""One in so many cells of each sheet, for each way of spoiling it, in the normal run."""
WAYS = ("blank", "text", "zero", "negative", "tiny", "huge", "wildcard", "number as text",
        "formula as text", "truth", "part of a word", "other capitals", "first word", "last word",
        "longest", "just below", "just above", "least", "most", "half")
LAWFUL = ("first word", "last word", "least", "most")
VECTORS = {False: 20, True: 200}
"""How many books of random lawful entries are worked out, in the normal run and with --long."""


@pytest.fixture(scope="module")
def live():
    made = Live(resolved(JOB))
    made.evaluate()
    return made


def worked(live, one, entry):
    live.set(one.place, entry)
    live.evaluate()
    values = live.values()
    live.set(one.place, one.held)
    return values


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("sheet", SHARES)
def test_a_wrong_entry_is_told_and_lets_nothing_pass(live, pytestconfig, sheet, way):
    share = 1 if pytestconfig.getoption("--long") else SHARES[sheet]
    found = []
    for one in cases(sheet, way, share):
        entry = one.entries()[way]
        values = worked(live, one, entry)
        found += faults(one, entry, values)
        if way in LAWFUL and values[spoilt.book().state(one.place)] != 1:
            found.append(f"{address(one.place)} refuses {entry!r}")
    assert not found, f"{len(found)} faults\n" + "\n".join(found[:30])


def test_the_ways_are_all_that_there_are():
    found = {way for sheet in SHARES for one in typed_cells(sheet) for way in one.entries()}
    assert found == set(WAYS)


def test_every_typed_cell_is_among_the_cases():
    """With a share of 1 the cases are all cells; with the normal share, each gets its turn."""
    for sheet in SHARES:
        cells = [one.place for one in typed_cells(sheet)]
        assert len(cells) == len(set(cells)) > 50
        assert [one.place for one in cases(sheet, "blank", 1)] == cells
    assert {one.place[2] for one in typed_cells("Sections")} == {FILLED, EMPTY}


def test_every_word_of_every_list_is_usable(live, pytestconfig):
    """The words of the lists; in the normal run every ninth list."""
    lists = [c for s in ("Inputs", "Sections") for c in typed_cells(s)
             if c.rule.kind == "list" and c.place[2] != EMPTY]
    wrong = []
    for one in lists if pytestconfig.getoption("--long") else lists[::9]:
        for word in one.words():
            values = worked(live, one, word)
            if values[spoilt.book().state(one.place)] != 1:
                wrong.append(f"{address(one.place)} refuses {word!r}")
            wrong += spoilt.error_cells(values)
    assert wrong == []


def test_random_lawful_entries_never_show_an_error(pytestconfig):
    """Every cell of the job, of all six section columns and of the reader's cases at once."""
    choose, found = random.Random(20260115), []
    made = Live(resolved(JOB))
    plans = {s.name: s for s in resolved(JOB).sheets}
    for number in range(VECTORS[pytestconfig.getoption("--long")]):
        for sheet in SHARES:
            for rule in plans[sheet].rules:
                for row, col in rule.spots():
                    made.set((sheet, row, col), lawful(choose, rule))
        made.evaluate()
        values = made.values()
        assert values[MASTER] in ("NOT OK", "LOOK", "OK")
        found += [f"book {number}: {line}" for line in spoilt.error_cells(values)]
    assert not found, f"{len(found)} errors\n" + "\n".join(found[:30])


def lawful(choose, rule):
    """Return an entry the rule takes, at its limits as often as between them."""
    if rule.kind == "list":
        return choose.choice(spoilt.Typed(("", 0, 0), rule, None).words())
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
