"""What is wrong with a declaration is found before a cell is written: all of it at once."""

from __future__ import annotations

from datetime import datetime
from types import ModuleType

import pytest

from builder.engine.ironcalc_engine import Live
from builder.jobs import Job
from builder.language import (
    Case,
    Fault,
    Faults,
    Series,
    Sheet,
    again,
    family,
    root,
    sum_over,
    total,
    when,
)
from builder.resolve.book import Model
from tests.resolve.tiny import INPUTS, SECTION, constant, declared, modules, words

JOB = Job("tiny", "Tiny", "About it.", datetime(2026, 5, 1), dict(INPUTS), (dict(SECTION),))


@pytest.fixture
def m(monkeypatch):
    monkeypatch.setattr(Sheet, "look", constant("look", "", "", 0.9))
    return modules()


def found(m, **settings):
    with pytest.raises(Faults) as told:
        Model(declared(m, **settings))
    return told.value.found


def told(faults, label, says):
    """Return the faults of a row, told with sheet, label and source line, that say something."""
    row = f", '{label}' (test_declaration_faults.py line "
    return [f for f in faults if row in f and says in f]


def test_a_sound_declaration_has_none(m):
    Model(declared(m))


def test_a_reference_to_the_right_is_a_fault(m):
    m.work.early = m.work.sheet.row("Early", "x", "in", m.floating.free, "own")
    faults = found(m)
    assert told(faults, "Early", "refers to Floating, 'Freeboard'")
    assert told(faults, "Early", "to the right or below")


def test_a_reference_downward_is_a_fault(m):
    m.work.early = m.work.sheet.row("Early", "x", "ft²", 0, "own")
    m.work.late = m.work.sheet.row("Late", "y", "ft²", m.work.area, "own")
    m.work.early.expr = m.work.late + m.work.area
    assert told(found(m), "Early", "refers to Work, 'Late'")


def test_a_circle_is_a_fault(m):
    a = m.work.a = m.work.sheet.row("First of a circle", "x", "", 1, "own")
    b = m.work.b = m.work.sheet.row("Second of a circle", "y", "", a + 1, "own")
    a.expr = b + 1
    assert told(found(m), "First of a circle", "to the right or below")


def test_a_reference_to_itself_is_a_fault(m):
    a = m.work.a = m.work.sheet.row("Itself", "x", "", 1, "own")
    a.expr = a + 1
    assert told(found(m), "Itself", "to the right or below")


def test_a_reference_to_a_sheet_that_is_left_out_is_a_fault(m):
    faults = found(m, calculation=(m.floating, m.takeoff))
    assert any("refers to Work, 'Load'" in f and f.endswith("stands on no sheet") for f in faults)


def test_a_symbol_used_twice_on_a_sheet_is_a_fault(m):
    m.work.other = m.work.sheet.row("Other area", "A", "ft²", m.work.area, "own")
    assert told(found(m), "Other area", "the symbol A is that of 'Area' too")


def test_two_operands_of_one_symbol_are_a_fault(m):
    m.floating.other = m.floating.sheet.row("Length again", "L", "ft", m.sec.length * 2, "own")
    m.floating.sum = m.floating.sheet.row("Sum", "y", "ft", m.floating.other + m.sec.length, "own")
    assert told(found(m), "Sum", "L stands for 'Length again' and 'Length'")


def test_a_limit_without_a_source_is_a_fault(m):
    m.work.sheet.check("Unfounded", m.work.weight, at_most=m.work.strength)
    assert told(found(m), "Unfounded: at most", "the limit has no source")


@pytest.mark.parametrize("kind", ["at_most", "at_least"])
def test_a_limit_that_may_be_0_is_a_fault(m, kind):
    value = m.work.sheet.row("Counted", "y", "", m.sec.floats + 1, "own")
    m.work.sheet.check("Zero", value, source="own", **{kind: m.sec.floats})
    assert told(found(m), f"Zero: {kind.replace('_', ' ')}", "the limit may be 0; it must be above")


def test_an_at_most_value_that_may_be_negative_is_a_fault(m):
    m.work.sheet.check("Leaning", m.sec.lean, at_most=constant("l", "l", "in", 10), source="own")
    faults = found(m)
    assert told(faults, "Leaning: value", "may be negative and is held to be at most something")


def test_an_at_least_value_may_be_negative(m):
    m.work.sheet.check("Leaning", m.sec.lean, at_least=constant("l", "l", "in", 10), source="own")
    Model(declared(m))


def test_a_limit_in_another_unit_than_the_value_is_a_fault(m):
    m.work.sheet.check("Feet", m.work.weight, at_most=m.work.area, source="own")
    assert told(found(m), "Feet: at most", "comes out in ft², declared is lb")


@pytest.mark.parametrize(("limits", "says"), [
    ({}, "give at_most or at_least, one of them"),
    ({"at_most": 1, "at_least": 1}, "give at_most or at_least, one of them"),
    ({"at_most": 1, "worst": "BAD"}, "worst is 'BAD'; allowed is LOOK or NOT OK")])
def test_a_check_with_no_or_two_limits_is_a_fault(m, limits, says):
    with pytest.raises(Fault, match=says):
        m.work.sheet.check("Odd", m.work.area, **limits)


def test_the_value_of_a_check_has_a_row_of_its_own(m):
    with pytest.raises(Fault, match="check 'Odd': give the value a row of its own"):
        m.work.sheet.check("Odd", m.work.area * 2, at_most=1)


def test_a_default_of_another_kind_or_unit_is_a_fault(m):
    m.sec.odd = m.sec.sheet.ask("Odd number", "x", "in", 0, 9, "own", default=m.sec.length)
    m.sec.word = m.sec.sheet.ask("Odd word", "y", "in", 0, 9, "own", default="wide")
    faults = found(m)
    assert told(faults, "Odd number", "comes out in ft, declared is in")
    assert told(faults, "Odd word", "its default is a word where a number is due")


def test_a_default_that_may_divide_by_0_is_a_fault(m):
    m.sec.odd = m.sec.sheet.ask("Odd", "x", "", 0, 9, "own", default=1 / m.sec.floats)
    assert told(found(m), "Odd", "the divisor n_f may be 0")


def test_an_input_or_a_chief_result_without_a_name_is_a_fault(m):
    m.sec.sheet.ask("Nameless", "x", "", 0, 9, "own", default=0)
    m.work.sheet.row("Chief", "y", "", 1, "own", chief=True)
    faults = found(m)
    assert told(faults, "Nameless", "has no name")
    assert told(faults, "Chief", "has no name")


def test_rows_in_lists_and_groups_take_their_names_from_them(m):
    sheet = m.work.sheet
    m.work.steps = [sheet.row(f"Step {k}", f"x_{k}", "", k, "own") for k in (1, 2)]
    m.work.ends = {"left": sheet.row("Left", "x_l", "", 1, "own")}
    Model(declared(m))
    assert [r.key for r in (*m.work.steps, m.work.ends["left"], m.work.stress.ratio,
                            m.work.stress.verdict)] == [
        "steps_1", "steps_2", "ends_left", "stress_ratio", "stress_verdict"]


def test_a_choice_from_a_table_with_a_key_twice_is_a_fault(m):
    with pytest.raises(Fault, match="'Pick': a key of table twice is given twice"):
        m.sec.sheet.choose("Pick", words("twice", "red", "Red"), "own")


def test_a_series_whose_rows_do_not_stand_together_is_a_fault(m):
    sheet = m.work.sheet
    m.work.one = sheet.row("One", "x_1", "", 1, "own")
    sheet.block("Between")
    m.work.two = sheet.row("Two", "x_2", "", 2, "own")
    m.work.sum = sheet.row("Sum", "x", "", sum_over(Series("x", [m.work.one, m.work.two])), "own")
    assert told(found(m), "Sum", "series x: its rows do not stand one below the other")


def test_a_section_row_on_a_ledger_without_its_total_is_a_fault(m):
    m.takeoff.sheet.ledger("Odd", quantity=(m.work.area, "ft²", 1))
    says = "differs by section; take its total()"
    assert [f for f in found(m) if "Work, 'Area'" in f and says in f]


def test_a_total_keeps_its_unit(m):
    m.takeoff.sheet.ledger("Odd", quantity=(total(m.work.area, m.sec.count), "ft", 1))
    assert [f for f in found(m) if "comes out in ft², declared is ft" in f]


def test_everything_wrong_is_told_at_once(m):
    sheet = m.work.sheet
    m.work.a = sheet.row("Wrong unit", "x_1", "in", m.sec.length, "own")
    m.work.b = sheet.row("No divisor", "x_2", "", 1 / m.sec.floats, "own")
    m.work.c = sheet.row("No root", "x_3", "in", root(m.sec.lean * m.sec.lean * m.sec.lean
                                                     / m.sec.lean), "own")
    m.work.d = sheet.row("Same", "A", "ft²", m.work.area, "own")
    m.work.e = sheet.row("To the right", "x_4", "in", m.floating.free, "own")
    m.work.f = sheet.row("Two units", "x_5", "", when(m.sec.length > m.sec.lean, 1, 0), "own")
    sheet.check("Unfounded", m.sec.lean, at_most=m.sec.floats)
    faults = found(m)
    for label, says in [
        ("Wrong unit", "comes out in ft"), ("No divisor", "may be 0"), ("No root", "may be 0"),
        ("Same", "the symbol A"), ("To the right", "refers to Floating"),
        ("Two units", "ft stands beside in"), ("Unfounded: at most", "has no source"),
        ("Unfounded: at most", "must be above 0"), ("Unfounded: value", "may be negative"),
    ]:
        assert told(faults, label, says), (label, says)


def worked(m, **change):
    settings = {"given": {m.sec.length: 10, m.sec.width: 6}, "printed": {m.work.area: 60.04},
                "step": {m.work.area: 0.1}} | change
    return Case("Example", source="own", **settings)


def proof(m, *cases, **settings):
    """Return the book, at work, with one family on Proof."""
    return Model(declared(m, families=[family("areas", "Areas", [m.work.area], cases,
                                              **settings)]))


def test_a_published_example_agrees_within_half_its_rounding_step(m):
    model = proof(m, worked(m), worked(m, printed={m.work.area: 60.06}),
                  worked(m, printed={m.work.area: 59.95}))
    live = Live(model.book(JOB))
    live.evaluate()
    words_found = [live.value(verdict) for *_, verdict in model.proof.results]
    assert words_found == ["agrees", "differs", "agrees"]


def test_an_example_in_other_units_is_turned_by_its_factor(m):
    case = worked(m, given={m.sec.length: 3.048, m.sec.width: 1.8288},
                  printed={m.work.area: 5.574})
    model = proof(m, Case("Metric", case.given, case.printed, "own", step={m.work.area: 0.001}),
                  units={m.sec.length: ("m", 1 / 0.3048), m.sec.width: ("m", 1 / 0.3048),
                         m.work.area: ("m²", 1 / 0.3048**2)})
    live = Live(model.book(JOB))
    live.evaluate()
    [(*_, difference, verdict)] = model.proof.results
    assert live.value(verdict) == "agrees"
    assert abs(live.value(difference)) < 0.0005


def test_an_example_without_its_rounding_step_is_a_fault(m):
    with pytest.raises(Faults, match="family areas, Example: no rounding step"):
        proof(m, worked(m, step={}))


def test_rows_made_again_are_rows_like_others(m):
    sheet = m.floating.sheet
    m.floating.longer = sheet.row("Longer", "L_1", "ft", m.sec.length * 2, "own")
    m.floating.more = again(sheet, m.work.weight, {m.sec.length: m.floating.longer}, "longer")
    Model(declared(m))
    m.floating.odd = sheet.row("Odd", "W", "ft", m.floating.more, "own")
    assert told(found(m), "Odd", "comes out in lb, declared is ft")


def test_a_row_made_again_to_the_left_is_a_fault(m):
    other = ModuleType("other")
    other.sheet = Sheet("Other", "Other")
    other.longer = other.sheet.row("Longer", "L_1", "ft", m.sec.length * 2, "own")
    other.more = again(other.sheet, m.floating.free, {m.sec.length: other.longer}, "longer")
    faults = found(m, calculation=(other, m.work, m.floating, m.takeoff))
    assert any("refers to Floating, 'Float, its line'" in f or "refers to Floating" in f
               for f in faults)
