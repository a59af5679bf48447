"""The published examples on Proof: they agree, they could disagree, and the reader can add one.

The places come from the resolved workbook, the values from engines that read the file.
"""

from __future__ import annotations

from collections.abc import Iterable

import pytest

from builder.engine.ironcalc_engine import Live
from builder.engine.values import address
from builder.resolve.cells import Place
from builder.resolve.proof_sheet import AGREES, BAND, DIFFERS, FIRST, YOURS
from builder.sheets.book import model
from builder.workbook.limits import lawful_name
from tests.outputs.reading import OUTPUTS, delivered, opened, read, spots
from tests.outputs.worked import resolved

pytestmark = pytest.mark.outputs
EACH = pytest.mark.parametrize("path", OUTPUTS, ids=lambda p: p.stem)
JOB = OUTPUTS[-1].stem
PUSHES = (1.02, 0.9, 1.5, 0.4, 3.0)
"""Factors on a given number, tried in turn until a printed answer no longer agrees."""


def results():
    """Return every printed value: family, case, row, places of print, difference and verdict."""
    found = model().proof.results
    assert found, "no family on Proof"
    return found


def told(one, case, row, place) -> str:
    return f"{one.key}, {case.name}, {row.label} ({address(place)})"


def disagreeing(values) -> list[str]:
    """Return a line for each printed value that does not read ``agrees``."""
    return [f"{told(one, case, row, verdict)}: {values.get(verdict)}, off by {values.get(off)}"
            for one, case, row, _, off, verdict in results() if values.get(verdict) != AGREES]


@EACH
def test_every_published_value_agrees_as_stored(engines, path):
    assert disagreeing(engines.answer("stored", path)) == []


@pytest.mark.long
def test_every_published_value_agrees_in_the_formulas_library(formulas_values):
    assert disagreeing(formulas_values(OUTPUTS[-1])) == []


def test_a_value_that_differs_is_told():
    first, *rest = results()
    values = {verdict: AGREES for *_, verdict in rest} | {first[-1]: DIFFERS}
    assert len(disagreeing(values)) == 1


def test_every_family_stands_on_proof_with_every_case_and_answer():
    shown = {(one.key, case.name, row) for one, case, row, *_ in results()}
    for one in model().declared.families:
        for case in one.cases:
            assert case.printed, f"{one.key}, {case.name} prints nothing"
            assert {(one.key, case.name, row) for row in case.printed} <= shown


def test_the_difference_is_that_of_result_and_print():
    """The printed value and the step are numbers of the file, the verdict weighs them."""
    file = read(delivered(JOB))
    for one, case, row, printed, off, verdict in results():
        what = told(one, case, row, printed)
        assert printed not in file.formulas and file.cells[printed].value == case.printed[row], what
        half = (printed[0], printed[1] + 2, printed[2])
        assert half not in file.formulas, what
        assert file.cells[half].value == pytest.approx(case.step[row] / 2, rel=1e-12), what
        assert printed in set(cells_read(file, off)), what
        assert {off, half} <= set(cells_read(file, verdict)), what


def cells_read(file, place: Place) -> Iterable[Place]:
    return (spot for area in file.areas[place] for spot in spots(area))


def given_cells(file, place: Place, apart: set[Place]) -> list[Place]:
    """Return the typed cells of its own column that a cell of Proof rests on, in sheet order."""
    found: dict[Place, None] = {}
    todo, seen = [place], set()
    while todo:
        one = todo.pop()
        for spot in cells_read(file, one):
            if spot in seen or spot in apart or spot[0] != place[0] or spot[2] != place[2]:
                continue
            seen.add(spot)
            if spot in file.formulas:
                todo.append(spot)
            elif spot in file.cells:
                found[spot] = None
    return sorted(found)


@pytest.fixture(scope="module")
def live():
    made = Live(resolved(JOB))
    made.evaluate()
    return made


def test_every_published_value_can_disagree(live):
    """Push the given values of all cases at once, one row at a time: each answer must move."""
    file = read(delivered(JOB))
    before = live.values([r[-1] for r in results()])
    apart = {printed for _, _, _, printed, _, _ in results()}
    given = {r[-1]: [p for p in given_cells(file, r[-2], apart)
                     if isinstance(file.cells[p].value, float)] for r in results()}
    moved: set[Place] = set()
    for factor in PUSHES:
        for number in range(max(map(len, given.values()))):
            pushed = {}
            for verdict, cells in given.items():
                if verdict not in moved and number < len(cells):
                    old = file.cells[cells[number]].value
                    pushed[cells[number]] = old * factor if old else factor - 1
            for place, value in pushed.items():
                live.set(place, value)
            live.evaluate()
            now = live.values(given)
            for place in pushed:
                live.set(place, file.cells[place].value)
            moved |= {v for v in given if now[v] == DIFFERS}
    live.evaluate()
    assert live.values(before) == before
    stuck = [told(one, case, row, verdict) for one, case, row, *_, verdict in results()
             if verdict not in moved]
    assert stuck == []


def test_a_value_printed_wrongly_is_kept_apart_from_the_right_one():
    file = read(delivered(JOB))
    traps = 0
    for one, case, row, printed, off, _ in results():
        if row not in case.wrong:
            continue
        traps += 1
        spot = (printed[0], printed[1] + 4, printed[2])
        label = file.text(printed[0], spot[1])
        assert label == "Printed wrongly in the source"
        assert file.cells[spot].value == case.wrong[row]
        found = file.cells[printed].value + file.cells[off].value
        what = told(one, case, row, spot)
        assert abs(found - case.printed[row]) <= case.step[row] / 2 + 1e-9, what
        assert abs(found - case.wrong[row]) > case.step[row] / 2 + 1e-9, what
    assert traps == sum(len(case.wrong) for one in model().declared.families
                        for case in one.cases)


@EACH
def test_every_family_has_a_named_column_for_the_reader(path):
    book = opened(path)
    for one in model().declared.families:
        for row in one.given:
            name = f"try_{one.key}_{row.key}"
            assert lawful_name(name) is None, name
            sheet, cell = book.defined_names[name].attr_text.split("!")
            cell = book[sheet.strip("'")][cell.replace("$", "")]
            assert cell.column - 1 == YOURS and not cell.protection.locked
            assert cell.parent.cell(cell.row, 1).value == row.label


def columns_of_first_bands() -> dict[str, tuple[int, int]]:
    """Return the first and last row of each family's first band: from free cells to answers."""
    names = model().proof.names
    found = {}
    for one in model().declared.families:
        mine = [place[1] for name, place in names.items()
                if name in {f"try_{one.key}_{row.key}" for row in one.given}]
        last = max(printed[1] for other, case, _, printed, *_ in results()
                   if other is one and case in one.cases[:BAND])
        found[one.key] = min(mine), last
    return found


def test_a_case_typed_in_the_reader_s_column_gives_that_case(live):
    """Each case of a first band in turn, the first last: the column ends as it was delivered."""
    file = read(delivered(JOB))
    bands, wrong, tried = columns_of_first_bands(), [], 0
    for number in reversed(range(BAND)):
        families = [one for one in model().declared.families if number < len(one.cases[:BAND])]
        for one in families:
            for row in one.given:
                live.set(model().proof.names[f"try_{one.key}_{row.key}"],
                         one.cases[number].given[row])
        live.evaluate()
        for one in families:
            first, last = bands[one.key]
            for y in range(first, last):
                case, yours = ("Proof", y, FIRST + number), ("Proof", y, YOURS)
                if yours not in file.formulas or case not in file.formulas:
                    continue
                tried += 1
                a, b = live.value(case), live.value(yours)
                if a != b:
                    wrong.append(f"{one.key}, case {number + 1}: {address(yours)} {b!r}, "
                                 f"{address(case)} {a!r}")
    assert wrong == []
    assert tried >= len(model().declared.families)
