"""Verdicts: where they flip, what they wait for, and the one verdict of the whole job."""

from __future__ import annotations

import pytest

from tests.resolve.tiny import DASH, INPUTS, LOOK, NEEDS, NOT_OK, OK, SECTION, UNUSED, Tiny


@pytest.fixture
def tiny():
    return Tiny()


def live_load(ratio):
    """Return the load at which the load check has this ratio: strength is 0.8 × 50 psf."""
    return ratio * 40


@pytest.mark.parametrize(("ratio", "word"), [
    (0.5, OK), (0.9, OK), (0.9001, LOOK), (0.99999, LOOK), (1.0, LOOK), (1 + 5e-10, LOOK),
    (1 + 1e-8, NOT_OK), (1.00001, NOT_OK), (4, NOT_OK)])
def test_an_at_most_check_flips_at_its_limit(tiny, ratio, word):
    tiny.put(tiny.m.sec.live, live_load(ratio))
    assert tiny.ratio(tiny.m.work.stress) == pytest.approx(ratio, rel=1e-12)
    assert tiny.verdict(tiny.m.work.stress) == word


@pytest.mark.parametrize(("lean", "word"), [
    (0, OK), (4.999, OK), (5, OK), (5.001, LOOK), (-5.001, LOOK), (10, LOOK), (-10, LOOK),
    (10.001, NOT_OK), (-10.001, NOT_OK), (20, NOT_OK)])
def test_a_check_may_say_from_which_value_it_looks(tiny, lean, word):
    tiny.put(tiny.m.sec.lean, lean)
    assert tiny.ratio(tiny.m.floating.leaning) == pytest.approx(abs(lean) / 10)
    assert tiny.verdict(tiny.m.floating.leaning) == word


SUNK = 20 * 60 / (62.4 * 48) * 12
"""How deep the floats of the tiny section sink [in]; they are 20 in deep."""


@pytest.mark.parametrize(("free", "ratio", "word"), [
    (12, 0.5, OK), (8.001, 6 / 8.001, OK), (7.999, 6 / 7.999, LOOK), (6.001, 6 / 6.001, LOOK),
    (6 - 1e-10, 1, LOOK), (5.999, 6 / 5.999, NOT_OK), (1, 6, NOT_OK), (0.1, 60, NOT_OK),
    (0.01, 99, NOT_OK), (0, 99, NOT_OK), (-0.01, 99, NOT_OK), (-4, 99, NOT_OK)])
def test_an_at_least_check_flips_at_its_limit_and_never_reads_small(tiny, free, ratio, word):
    tiny.put(tiny.m.sec.lean, 20 - SUNK - free)
    assert tiny.value(tiny.m.floating.free) == pytest.approx(free, abs=1e-9)
    assert tiny.ratio(tiny.m.floating.check) == pytest.approx(ratio)
    assert tiny.verdict(tiny.m.floating.check) == word


@pytest.mark.parametrize(("free", "word"), [
    (12.001, OK), (11.999, NOT_OK), (10, NOT_OK), (7, NOT_OK)])
def test_a_broken_limit_is_not_ok_where_the_good_one_is_looser(tiny, free, word):
    tiny.put(tiny.m.job.least_free, 12)
    tiny.put(tiny.m.sec.lean, 20 - SUNK - free)
    assert tiny.verdict(tiny.m.floating.check) == word


@pytest.mark.parametrize(("length", "word"), [(30, OK), (30.001, LOOK), (60, LOOK)])
def test_a_check_of_good_practice_is_never_worse_than_look(tiny, length, word):
    tiny.put(tiny.m.sec.length, length)
    assert tiny.ratio(tiny.m.work.slender) == pytest.approx(length / 6 / 5)
    assert tiny.verdict(tiny.m.work.slender) == word


def test_the_worst_word_stands_over_the_whole_job():
    tiny = Tiny(sections=[dict(SECTION, live=10) for _ in range(4)])
    live = tiny.m.sec.live
    assert tiny.master == OK
    tiny.put(live, live_load(0.95), 1)
    assert tiny.master == LOOK
    tiny.put(live, "abc", 2)
    assert tiny.master == NEEDS
    tiny.put(live, live_load(2), 3)
    assert tiny.master == NOT_OK
    assert [tiny.verdict(tiny.m.work.stress, k) for k in range(6)] == [
        OK, LOOK, NEEDS, NOT_OK, UNUSED, UNUSED]
    tiny.put(tiny.m.job.idle, None)
    assert tiny.master == NOT_OK
    tiny.put(live, 10, 3)
    assert tiny.master == NEEDS
    tiny.put(live, 10, 2)
    assert tiny.master == NEEDS
    tiny.put(tiny.m.job.idle, 0)
    assert tiny.master == LOOK
    tiny.put(live, 10, 1)
    assert tiny.master == OK
    assert set(tiny.masters().values()) == {OK}


def line_of(tiny, sheet, label):
    """Return the values of the first line with this label, by column."""
    plan = next(s for s in tiny.book.sheets if s.name == sheet)
    y = next(c.row for c in plan.cells if c.col == 0 and c.content == label)
    return {c.col: tiny.live.value((sheet, c.row, c.col)) for c in plan.cells if c.row == y}


def test_checks_names_the_worst_ratio_its_section_and_its_cure():
    tiny = Tiny(sections=[dict(SECTION, live=10), dict(SECTION, live=60), dict(SECTION, live=30)])
    line = line_of(tiny, "Checks", "Load on it")
    assert line[1] == "at most R lb"
    assert line[2] == pytest.approx(1.5)
    assert line[3] == "B"
    assert [line[k] for k in range(4, 10)] == [OK, NOT_OK, OK, UNUSED, UNUSED, UNUSED]
    assert line[10] == "Less load. Or more floats."
    assert line[11] == pytest.approx(60 * 60 - 40 * 60)
    assert "own 1" in line.values()
    group = line_of(tiny, "Start", "Strength")
    assert [group[k] for k in (1, 2, 4)] == [NOT_OK, pytest.approx(1.5), "Less load."]


def test_start_answers_by_the_worst_group_and_names_what_fails_with_its_cure():
    tiny = Tiny(sections=[dict(SECTION, live=10), dict(SECTION, live=60, lean=12)])
    assert line_of(tiny, "Start", "Is it strong?")[1] == NOT_OK
    assert line_of(tiny, "Start", "Is all well?")[1] == NOT_OK
    plan = next(s for s in tiny.book.sheets if s.name == "Start")
    top = next(c.row for c in plan.cells if c.content == "Check that reads NOT OK")
    said = [[tiny.live.value(("Start", top + k, x)) for x in range(3)] for k in (1, 2, 3)]
    assert said == [["Load on it", "B", "Less load."], ["Freeboard", "B", "More floats."],
                    ["Lean", "B", ""]]


def test_start_says_that_nothing_fails_and_which_look_comes_first():
    tiny = Tiny(sections=[dict(SECTION, live=10, lean=6)])
    assert line_of(tiny, "Start", "Is it strong?")[1] == OK
    assert line_of(tiny, "Start", "Is all well?")[1] == LOOK
    assert line_of(tiny, "Start", "Strength")[4] == DASH
    assert line_of(tiny, "Start", "NOT OK number 1, its line on Checks")[9] == 0
    assert line_of(tiny, "Start", "Is an input still wanted?")[1] == "none"
    tiny.put(tiny.m.job.load, None)
    assert line_of(tiny, "Start", "Is an input still wanted?")[1] == "see below"


def test_checks_waits_for_a_section_that_is_ready(tiny):
    tiny.put(tiny.m.sec.length, None)
    line = line_of(tiny, "Checks", "Load on it")
    assert [line[k] for k in (2, 3, 11)] == [DASH] * 3
    assert line[4] == NEEDS


def test_a_ledger_adds_up_what_is_ready_and_waits_for_what_is_not(tiny):
    m = tiny.m
    quantity, cost = m.takeoff.floats["quantity"], m.takeoff.floats["cost"]
    twice = m.takeoff.twice["quantity"]
    assert (tiny.value(quantity), tiny.value(cost), tiny.value(twice)) == (8, 4 * 180.5 * 2, 240)
    for row, value in ((m.sec.model, "small"), (m.sec.count, 3)):
        tiny.put(row, value, 1)
    # The second type has no length yet: a total without it would look right.
    assert (tiny.value(quantity), tiny.value(cost), tiny.value(twice)) == (DASH,) * 3
    tiny.put(m.sec.length, 5, 1)
    assert (tiny.value(quantity), tiny.value(cost), tiny.value(twice)) == (
        8 + 12, 4 * 180.5 * 2 + 4 * 50 * 3, 2 * (2 * 60 + 3 * 30))
    for row in (m.sec.model, m.sec.count, m.sec.length):
        tiny.put(row, None, 1)
    assert tiny.value(quantity) == 8


def test_a_ledger_waits_for_an_input_that_only_it_reads(tiny):
    tiny.put(tiny.m.sec.count, None)
    assert tiny.value(tiny.m.takeoff.floats["quantity"]) == DASH
    tiny.put(tiny.m.sec.count, 2)
    assert tiny.value(tiny.m.takeoff.floats["quantity"]) == 8


def test_typing_over_the_catalog_is_followed():
    tiny = Tiny(catalog={"floats": {"large": {"price": 10.25, "plan": 24}}})
    assert tiny.value(tiny.m.takeoff.floats["cost"]) == 4 * 10.25 * 2
    assert tiny.value(tiny.m.floating.plan) == 96


def test_names_lead_to_inputs_and_chief_results(tiny):
    names = tiny.book.names
    for name, row, section in [("load", tiny.m.job.load, 0), ("length_A", tiny.m.sec.length, 0),
                               ("length_F", tiny.m.sec.length, 5)]:
        assert names[name] == tiny.typed(row, section)
    assert tiny.live.value(names["work_area_A"]) == 60
    assert "floating_free_F" in names
    assert "work_weight_A" not in names


def test_the_same_job_gives_the_same_cells_and_another_does_not(tiny):
    again = Tiny()
    assert [s.cells for s in again.book.sheets] == [s.cells for s in tiny.book.sheets]
    assert again.book.inputs_hash == tiny.book.inputs_hash
    assert Tiny(inputs={**INPUTS, "load": 21}).book.inputs_hash != tiny.book.inputs_hash
