"""Sheets of other kinds: one value column, paper, readings behind a gate, prices typed in a ledger.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime
from types import ModuleType

import pytest

from builder.engine.ironcalc_engine import Live
from builder.jobs import Job
from builder.language import (
    Faults,
    Series,
    Sheet,
    at_place,
    feet_inches,
    joined,
    nth_largest,
    of_type,
    or_dash,
    picked,
    place_of,
    shown,
    sixteenths,
    sum_over,
    total,
    when,
)
from builder.resolve.book import Model
from builder.resolve.frame import DASH, FIRST
from builder.workbook.limits import faults
from tests.resolve.tiny import INPUTS, NEEDS, NOT_OK, OK, SECTION, UNUSED, constant, declared, words
from tests.resolve.tiny import modules as tiny_modules


def extended():
    """Return the tiny workbook's modules and five more sheets."""
    m = tiny_modules()
    rates, prices, readings, found, paper = (
        ModuleType(n) for n in ("rates", "prices", "readings", "found", "paper"))
    s = prices.sheet = Sheet("Prices", "Prices", scope="ledger", columns={
        "piece": "Piece", "order": "Order", "own": "Typed", "own_state": "State",
        "own_used": "Used", "cost": "Cost"})
    prices.lines = []
    for key, price in (("a", 3), ("b", 7), ("c", 5)):
        line = s.ledger(f"Piece {key}", joined("for ", shown(total(m.sec.floats, m.sec.count))),
                        "each", order=(total(m.sec.floats, m.sec.count), "", 0))
        asked = line.ask("own", 0, 100, "$", 2, "yours",
                         default=constant(f"price_{key}", "", "$", price))
        line.add("cost", line["order"] * asked, "$", 2)
        prices.lines.append(line)
    s.block("In all")
    s.heads({"cost": "Sum"})
    costs = Series("cost", [line["cost"] for line in prices.lines])
    prices.all = s.ledger("All", "", "$", cost=(sum_over(costs), "$", 2))
    prices.second = s.ledger("Second", "", "$", cost=(nth_largest(costs, 2), "$", 2))
    prices.at = s.ledger("Where it stands", "", "", cost=(
        place_of(costs, prices.second["cost"]), "", 0))
    prices.again = s.ledger("And what stands there", "", "$", cost=(
        at_place(costs, prices.at["cost"]), "$", 2))

    s = rates.sheet = Sheet("Rates", "Rates", scope="job inputs")
    s.block("Rates")
    rates.crew = s.ask("Rate", "r", "$/ft²", 0, 90, "own", default=constant("rate", "", "$/ft²", 4))
    rates.chosen = s.choose("Type shown", words("letters", *"ABCDEF"), "own", default="A")

    s = readings.sheet = Sheet("Readings", "Readings", scope="section inputs")
    s.block("Read on the water")
    readings.left = s.ask("Left", "f_1", "in", 1, 40, "read", optional=True)
    readings.right = s.ask("Right", "f_2", "in", 1, 40, "read", optional=True)

    s = found.sheet = Sheet("Found", "As found")
    s.block("Predicted")
    found.predicted = s.row("Freeboard", "F", "in", m.floating.free, "own")
    found.gate = s.gate("Both read", [readings.left, readings.right])
    s.block("As read", gate=found.gate)
    found.mean = s.row("Mean", "f", "in", (readings.left + readings.right) / 2, "own")
    found.check = s.check("Mean freeboard", found.mean, at_least=constant("f", "", "in", 6),
                          source="own 9", look_at=constant("g", "", "in", 6))

    s = paper.sheet = Sheet("Paper", "A page", scope="page", large=True)
    s.block("Steps")
    number = words("letters", *"ABCDEF").find(rates.chosen).number
    paper.said = s.say(joined("Type ", rates.chosen, " is ",
                              shown(picked(m.sec.length, number), 1), " ft long"))
    paper.length = s.show("Length", picked(m.sec.length, number), "ft", 1, tick=True, blank=True)
    paper.six = s.show("Sixteenths", sixteenths(picked(m.sec.length, number).in_("in")), "", 0)
    paper.text = s.show("In feet and inches", feet_inches(paper.six), "text")
    paper.b = s.show("Length of B", of_type(m.sec.length, "B"), "ft", 1)
    s.page_break()
    s.note("A note on the second page.")
    paper.cost = s.show("Cost", prices.all["cost"], "$", 2)

    work = ModuleType("work_rate")
    s = work.sheet = Sheet("Sums", "Sums", scope="job")
    s.block("Money")
    work.sum = s.row("Money", "M", "$", rates.crew * total(m.work.area, m.sec.count), "own")
    work.twice = s.row("Twice", "M_2", "$", 2 * work.sum, "own")
    m.more = (prices, rates, readings, found, paper, work)
    m.prices, m.rates, m.readings, m.found, m.paper, m.sums = m.more
    return m


class Wide:
    """The extended workbook at work."""

    def __init__(self, sections=(SECTION,), none_left=False):
        self.m = m = extended()
        meant = declared(m, calculation=(m.work, m.floating, m.takeoff, m.prices, m.rates,
                                         m.readings, m.found, m.paper, m.sums))
        left = (m.sums.sum,) if none_left else ()
        self.model = Model(replace(meant, none_left=left))
        self.book = self.model.book(Job("wide", "Wide", "About.", datetime(2026, 5, 1),
                                        dict(INPUTS), tuple(dict(s) for s in sections)))
        self.live = Live(self.book)
        self.live.evaluate()

    def put(self, row, value, section=0):
        sheet, y, x = self.model.typing.typed[row]
        self.live.set((sheet, y, x + (section if row in self.model.places.sections else 0)), value)
        self.live.evaluate()

    def __getitem__(self, row):
        return self.live.value(self.model.places.rows[row])

    def column(self, row, section):
        sheet, y, _ = self.model.places.rows[row]
        return self.live.value((sheet, y, FIRST + section))

    @property
    def master(self):
        return self.live.value(("Checks", 1, 1))

    def errors(self):
        return [p for p, v in self.live.values().items()
                if isinstance(v, str) and v.startswith("#")]


@pytest.fixture
def wide():
    return Wide()


def test_the_sheets_stand_in_the_order_declared_and_can_be_written(wide):
    assert [s.name for s in wide.book.sheets] == [
        "Start", "Inputs", "Sections", "Catalog", "Data", "Work", "Floating", "Takeoff", "Prices",
        "Rates", "Readings", "Found", "Paper", "Sums", "Checks", "Proof", "Names", "Free",
        "Sources"]
    assert faults(wide.book, wide.live.values()) == []
    assert wide.errors() == []
    assert wide.master == OK


def test_a_price_that_is_typed_overrules_and_moves_the_sum(wide):
    lines, all_of_it = wide.m.prices.lines, wide.m.prices.all["cost"]
    assert wide[all_of_it] == 8 * (3 + 7 + 5)
    wide.put(lines[1]["own"], 2.5)
    assert wide[all_of_it] == 8 * (3 + 2.5 + 5)
    assert wide[lines[1]["own"]] == 2.5


@pytest.mark.parametrize("bad", ["abc", "7", -1.0, 1e9, "*", DASH])
def test_a_price_that_cannot_be_dashes_all_that_rests_on_it(wide, bad):
    wide.put(wide.m.prices.lines[2]["own"], bad)
    assert wide[wide.m.prices.all["cost"]] == DASH
    assert wide[wide.m.paper.cost] == DASH
    assert wide.errors() == []
    assert wide.master == NEEDS


def test_ranked_and_found_again(wide):
    prices = wide.m.prices
    assert wide[prices.second["cost"]] == 40
    assert wide[prices.at["cost"]] == 3
    assert wide[prices.again["cost"]] == 40


def test_one_value_of_the_whole_job(wide):
    assert wide[wide.m.sums.twice] == 2 * 4 * 10 * 6 * 2
    wide.put(wide.m.rates.crew, 5)
    assert wide[wide.m.sums.sum] == 5 * 10 * 6 * 2
    wide.put(wide.m.rates.crew, "abc")
    assert wide[wide.m.sums.sum] == DASH and wide.master == NEEDS
    assert wide.column(wide.m.work.area, 0) == 60


def test_paper_says_what_holds_for_the_type_that_is_chosen():
    wide = Wide([SECTION, {**SECTION, "length": 12.349}])
    paper = wide.m.paper
    assert wide[paper.said] == "Type A is 10.0 ft long" and wide[paper.text] == "10' 0\""
    assert wide[paper.b] == 12.349
    wide.put(wide.m.rates.chosen, "B")
    assert wide[paper.said] == "Type B is 12.3 ft long"
    assert wide[paper.text] == "12' 4 3/16\""
    assert wide[paper.length] == 12.349


@pytest.mark.parametrize("choice", ["C", "G", 2.0, None])
def test_a_type_that_is_not_used_shows_dashes_and_no_error(wide, choice):
    wide.put(wide.m.rates.chosen, choice)
    assert wide.errors() == []
    assert wide[wide.m.paper.length] == (10 if choice is None else DASH)
    assert wide[wide.m.paper.b] == (0 if choice is None else DASH)


def test_readings_are_not_used_then_wanted_then_judged(wide):
    found, readings = wide.m.found, wide.m.readings
    assert wide[found.gate] == 0 and wide[found.check.verdict] == UNUSED
    assert wide[found.mean] == DASH and wide.master == OK
    wide.put(readings.left, 10)
    assert wide[found.gate] == 1 and wide[found.check.verdict] == NEEDS
    wide.put(readings.right, 14)
    assert wide[found.gate] == 2 and wide[found.mean] == 12
    assert wide[found.check.verdict] == OK
    wide.put(readings.right, 1.5)
    assert wide[found.check.verdict] == NOT_OK and wide.master == NOT_OK
    assert wide.column(found.check.verdict, 1) == UNUSED


@pytest.mark.parametrize("bad", ["abc", 0.0, -3.0, 1e9, "12"])
def test_a_reading_that_cannot_be_is_told(wide, bad):
    wide.put(wide.m.readings.left, 10)
    wide.put(wide.m.readings.right, bad)
    assert wide[wide.m.found.check.verdict] == NEEDS
    assert wide.master == NEEDS
    assert wide.errors() == []


def test_what_may_be_a_dash_is_read_by_nothing_that_does_not_wait():
    m = extended()
    s = m.found.sheet
    s.block("Out of the gate")
    s.row("Reads a gated row", "x", "in", 2 * m.found.mean, "own")
    s.row("Reads a reading", "y", "in", 2 * m.readings.left, "own")
    dash = s.row("May be a dash", "z", "in", or_dash(m.found.predicted > 0, m.found.predicted),
                 "own")
    s.row("Reads a dash", "z_2", "in", when(dash > 0, 1, 2) * m.found.predicted, "own")
    with pytest.raises(Faults) as caught:
        Model(declared(m, calculation=(m.work, m.floating, m.takeoff, m.prices, m.rates,
                                       m.readings, m.found, m.paper, m.sums)))
    told = str(caught.value)
    assert "waits for 'Both read'; it does not" in told
    assert "may stay blank, and waits for no gate" in told
    assert "'Reads a dash'" in told and "may be a dash" in told
    assert len(caught.value.found) == 3, told


def test_what_could_not_be_dealt_with_keeps_the_job_from_passing():
    wide = Wide(none_left=True)
    assert wide.master == NEEDS
    wide.put(wide.m.rates.crew, 0)
    assert wide[wide.m.sums.sum] == 0 and wide.master == OK


def test_paper_says_when_the_job_does_not_pass(wide):
    warned = "Paper", 3, 0
    assert wide.live.value(warned) == " "
    wide.put(wide.m.rates.crew, "abc")
    assert wide.live.value(warned) == ("Whole job: NEEDS INPUT. Not to be built from as it "
                                       "stands.")
