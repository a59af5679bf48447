"""The same rows once more: what is copied, what is shared, what is refused."""

from __future__ import annotations

from types import ModuleType

import pytest

from builder.language import (
    Case,
    Constant,
    Fault,
    Series,
    Sheet,
    Table,
    adopt,
    again,
    family,
    largest,
    sum_over,
    tally,
)
from builder.language.expressions import dependencies
from builder.language.values import value_of

TABLE = Table("sizes", "Sizes", "own", "size", {"area": "ft²"}, ["a", "b"], [(2,), (5,)])
HEAVY = Constant("heavy", "Heavy", "h_0", "pcf", 3, "own", "1", "")


def declared():
    """Return a little sheet: length → area → volume → weight, and a price beside it."""
    module = ModuleType("little")
    sheet = module.sheet = Sheet("Little", "Little", about="little")
    m = module
    m.length = sheet.ask("Length", "L", "ft", 1, 60, "own")
    m.width = sheet.ask("Width", "B", "ft", 1, 60, "own")
    m.depth = sheet.ask("Depth", "d", "ft", 1, 9, "own")
    m.usual = sheet.ask("Usual", "u", "ft", 0, 99, "own", default=m.length * 2)
    m.area = sheet.row("Area", "A", "ft²", m.length * m.width, "geometry")
    m.volume = sheet.row("Volume", "V", "ft³", m.area * m.depth, "geometry", digits=1)
    m.weight = sheet.row("Weight", "W", "lb", m.volume * HEAVY, "statics", chief=True)
    m.price = sheet.row("Price", "p", "ft²", m.width * m.depth, "own")
    m.both = sheet.row("Both", "k", "ft²", m.area + m.price, "own")
    m.line = sheet.line("Line", TABLE, 1 + (m.length > m.depth))
    m.found = sheet.row("Found", "f", "ft²", m.line["area"], "own")
    m.counted = sheet.row("Counted", "n", "", tally(TABLE, area_below=m.area), "own")
    m.summed = sheet.row("Summed", "s", "ft²", sum_over(Series("A", [m.area, m.price])), "own")
    m.most = sheet.row("Most", "m", "ft²", largest(Series("A", [m.area, m.price])), "own")
    m.check = sheet.check("Held", m.area, at_most=m.price, source="own")
    adopt(module)
    return module


@pytest.fixture
def little():
    return declared()


@pytest.fixture
def case():
    sheet = Sheet("Cases", "Cases")
    sheet.longer = sheet.ask("Longer", "L_1", "ft", 1, 60, "own")
    return sheet


def values(little, case):
    return {little.length: 10.0, little.width: 4.0, little.depth: 2.0, case.longer: 30.0}


def test_only_what_rests_on_the_change_is_copied(little, case):
    new = again(case, little.weight, {little.length: case.longer}, "longer")
    copies = case.rows[1:]
    assert [r.label for r in copies] == ["Area (longer)", "Volume (longer)", "Weight (longer)"]
    assert new is copies[-1]
    assert dependencies(copies[0].expr) == [case.longer, little.width]
    assert dependencies(copies[1].expr) == [copies[0], little.depth]
    assert dependencies(copies[2].expr) == [copies[1], HEAVY]
    known = values(little, case)
    assert value_of(new, known) == 30 * 4 * 2 * 3
    assert value_of(little.weight, known) == 10 * 4 * 2 * 3


def test_a_copy_keeps_unit_source_digits_and_line_and_gets_a_symbol_and_key_of_its_own(little,
                                                                                       case):
    again(case, little.weight, {little.length: case.longer}, "longer")
    volume = case.rows[2]
    assert (volume.symbol, volume.unit, volume.source, volume.digits) == (
        "V[longer]", "ft³", "geometry", 1)
    assert volume.key == "volume_longer"
    assert volume.origin == little.volume.origin
    assert volume.sheet is case
    assert not case.rows[3].chief


def test_what_does_not_rest_on_the_change_is_returned_itself(little, case):
    assert again(case, little.price, {little.length: case.longer}, "longer") is little.price
    assert case.rows == [case.longer]


def test_the_changed_row_itself_is_what_stands_in_its_place(little, case):
    assert again(case, little.length, {little.length: case.longer}, "longer") is case.longer


def test_made_is_shared_between_wants(little, case):
    made = {}
    change = {little.length: case.longer}
    weight = again(case, little.weight, change, "longer", made)
    both = again(case, little.both, change, "longer", made)
    assert [r.label for r in case.rows[1:]] == [
        "Area (longer)", "Volume (longer)", "Weight (longer)", "Both (longer)"]
    assert dependencies(both.expr) == [made[little.area], little.price]
    assert made[little.weight] is weight
    assert again(case, little.weight, change, "longer", made) is weight
    assert len(case.rows) == 5


def test_an_expression_may_stand_in_the_place_of_a_row(little, case):
    new = again(case, little.weight, {little.length: case.longer * 2}, "twice")
    assert value_of(new, values(little, case)) == 60 * 4 * 2 * 3


def test_a_row_between_may_be_changed(little, case):
    other = case.row("Other area", "A_2", "ft²", case.longer * case.longer, "own")
    new = again(case, little.weight, {little.area: other}, "square")
    assert [r.label for r in case.rows[2:]] == ["Volume (square)", "Weight (square)"]
    assert value_of(new, values(little, case)) == 900 * 2 * 3


@pytest.mark.parametrize(("want", "value"), [
    ("found", 5), ("counted", 2), ("summed", 120 + 8), ("most", 120)])
def test_tables_and_series_are_followed(little, case, want, value):
    new = again(case, getattr(little, want), {little.length: case.longer}, "longer")
    assert value_of(new, values(little, case)) == value
    assert new.sheet is case


def test_a_line_of_a_table_stays_one(little, case):
    again(case, little.found, {little.length: case.longer}, "longer")
    line = case.rows[1]
    assert line.label == "Line (longer)"
    assert line.table is TABLE


def test_an_input_that_rests_on_the_change_is_refused(little, case):
    over = little.sheet.row("Over", "o", "ft", little.usual + 1, "own")
    with pytest.raises(Fault, match=r"again\(longer\): Little, 'Usual' .* is an input"):
        again(case, over, {little.length: case.longer}, "longer")


def test_an_expression_cannot_stand_in_a_series(little, case):
    with pytest.raises(Fault, match="series A: it wants rows"):
        again(case, little.summed, {little.area: little.area * 2}, "twice")


def test_the_rows_of_a_check_can_be_had_again(little, case):
    ratio = again(case, little.check.ratio, {little.length: case.longer}, "longer")
    assert value_of(ratio, values(little, case)) == 120 / 8
    with pytest.raises(Fault, match=r"again\(longer\): Little, 'Held: verdict' .* is a verdict"):
        again(case, little.check.verdict, {little.length: case.longer}, "longer")


def worked(little, name="Example 1", **change):
    given = {little.length: 10, little.width: 4, little.depth: 2}
    settings = {"printed": {little.weight: 240}, "step": {little.weight: 1}} | change
    return Case(name, settings.pop("given", given), source="own 1", **settings)


def test_a_family_holds_the_rows_between_given_and_wanted_in_order(little):
    made = family("weights", "Weights", [little.weight], [worked(little)])
    assert [r.label for r in made.rows] == ["Area", "Volume", "Weight"]
    assert list(made.given) == [little.length, little.width, little.depth]
    assert value_of(little.weight, dict(made.cases[0].given)) == 240


def test_a_calculated_row_may_be_given(little):
    case = worked(little, given={little.area: 40, little.depth: 2})
    made = family("weights", "Weights", [little.weight], [case])
    assert [r.label for r in made.rows] == ["Volume", "Weight"]


@pytest.mark.parametrize(("cases", "says"), [
    (lambda m: [], "family weights: no cases"),
    (lambda m: [worked(m), worked(m, "Example 2", given={m.length: 1, m.width: 2})],
     "family weights, Example 2: gives other rows than the first case"),
    (lambda m: [worked(m, given={m.length: 1, m.depth: 2})],
     r"family weights: Little, 'Width' \(test_again.py line \d+\) is neither given nor calculated"),
    (lambda m: [worked(m, printed={m.weight: 1, m.price: 2})],
     r"family weights, Example 1: Little, 'Price' \(.*\) is printed but not wanted"),
    (lambda m: [worked(m, printed={})],
     r"family weights: Little, 'Weight' \(.*\) is wanted, no case prints it"),
    (lambda m: [worked(m), worked(m, "Example 2", printed={}, wrong={m.weight: 1})],
     r"family weights, Example 2: Little, 'Weight' \(.*\) has no right value"),
])
def test_what_is_wrong_with_a_family(little, cases, says):
    with pytest.raises(Fault, match=says):
        family("weights", "Weights", [little.weight], cases(little))
