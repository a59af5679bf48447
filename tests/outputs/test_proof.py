"""The published examples on Proof: they agree, they could disagree, and the reader can add one.

The places come from the resolved workbook, the values from engines that read the file.
"""

from __future__ import annotations

from collections.abc import Iterable

import pytest

from builder.engine.ironcalc_engine import Live
from builder.engine.values import address
from builder.resolve.cells import Place
from builder.resolve.proof_sheet import AGREES, DIFFERS, SHOWN, YOURS, shown_cases
from builder.sheets.book import model
from builder.workbook.limits import lawful_name
from tests.outputs.reading import OUTPUTS, delivered, opened, read, spots
from tests.outputs.spoilt import Typed
from tests.outputs.worked import name_of, resolved

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


def test_every_family_stands_on_proof_with_its_cases_and_answers():
    """A family of more cases than columns shows some; the others are typed in below."""
    shown = {(one.key, case.name, row) for one, case, row, *_ in results()}
    for one in model().declared.families:
        cases = shown_cases(one)
        assert len(cases) == min(len(one.cases), SHOWN), one.key
        for case in cases:
            assert case.printed, f"{one.key}, {case.name} prints nothing"
            assert {(one.key, case.name, row) for row in case.printed} <= shown
        assert all(case in cases for case in one.cases if case.wrong), f"{one.key}: no trap"


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
    made = Live(resolved(JOB), names=False)
    made.evaluate()
    return made


def words_of_rows() -> dict[int, list[str]]:
    """Return the words that may be given in a row of Proof, by row."""
    plan = next(s for s in resolved(JOB).sheets if s.name == "Proof")
    return {rule.row: Typed(("Proof", rule.row, rule.col), rule, None).words()
            for rule in plan.rules if rule.kind == "list"}


def other(value, step: int, words: list[str] | None):
    """Return another value than the given one: a number pushed, a word further down its list."""
    if isinstance(value, str):
        return words[(words.index(value) + step + 1) % len(words)]
    return value * PUSHES[step] if value else PUSHES[step] - 1


def test_every_published_value_can_disagree(live):
    """Push the given values of all cases at once, one row at a time: each answer must move."""
    file = read(delivered(JOB))
    before = live.values([r[-1] for r in results()])
    apart = {printed for _, _, _, printed, _, _ in results()}
    given = {r[-1]: given_cells(file, r[-2], apart) for r in results()}
    words = words_of_rows()
    moved: set[Place] = set()
    for step in range(len(PUSHES)):
        for number in range(max(map(len, given.values()))):
            pushed = {}
            for verdict, cells in given.items():
                if verdict not in moved and number < len(cells):
                    spot = cells[number]
                    pushed[spot] = other(file.cells[spot].value, step, words.get(spot[1]))
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
        found = file.cells[printed].value * (1 + file.cells[off].value)
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


def type_in(live, number: int) -> list:
    """Type the case of a number in the reader's column of every family that has so many."""
    families = [one for one in model().declared.families if number < len(one.cases)]
    for one in families:
        for row, place in model().proof.free[one.key].given.items():
            live.set(place, one.cases[number].given[row])
    live.evaluate()
    return families


def test_every_case_typed_in_the_reader_s_column_gives_its_printed_answer(live):
    """All cases, shown in a column of their own or not; the first ones last."""
    wrong, tried = [], 0
    most = max(len(one.cases) for one in model().declared.families)
    for number in reversed(range(most)):
        for one in type_in(live, number):
            case = one.cases[number]
            for row, printed in case.printed.items():
                tried += 1
                found = live.value(model().proof.free[one.key].want[row])
                factor = one.units.get(row, (row.unit, 1))[1]
                if isinstance(found, str) or not (
                        abs(found / factor - printed) <= case.step[row] / 2 + 1e-9):
                    wrong.append(f"{told(one, case, row, ('Proof', 0, 0))}: {found!r} "
                                 f"over {factor}, printed {printed}")
    assert wrong == []
    assert tried == sum(len(c.printed) for f in model().declared.families for c in f.cases)


@pytest.mark.long
def test_every_case_gives_its_printed_answer_in_the_formulas_library(formulas_cases):
    """Every published case, typed in the reader's column and worked out by the library."""
    wrong, tried = [], 0
    for one in model().declared.families:
        for number, case in enumerate(one.cases):
            for row, printed in case.printed.items():
                tried += 1
                found = formulas_cases[one.key, number, name_of(row)]
                factor = one.units.get(row, (row.unit, 1))[1]
                if isinstance(found, str) or not (
                        abs(found / factor - printed) <= case.step[row] / 2 + 1e-9):
                    wrong.append(f"{one.key}, {case.name}: {found!r}, printed {printed}")
    assert wrong == []
    assert tried == len(formulas_cases)


def test_a_shown_case_typed_in_the_reader_s_column_gives_its_own_column(live):
    """Row by row the same numbers as in the column where the case stands."""
    file, wrong, tried = read(delivered(JOB)), [], 0
    columns = {(one.key, case.name): printed[2] for one, case, _, printed, *_ in results()}
    for number in reversed(range(YOURS - 4)):
        for one in type_in(live, number):
            col = columns.get((one.key, one.cases[number].name))
            free = model().proof.free[one.key]
            rows = [place[1] for place in (*free.given.values(), *free.want.values())]
            for y in range(min(rows), max(rows) + 1) if col is not None else ():
                case, yours = ("Proof", y, col), ("Proof", y, YOURS)
                if yours in file.formulas and case in file.formulas:
                    tried += 1
                    if live.value(case) != live.value(yours):
                        wrong.append(f"{one.key}, case {number + 1}: {address(yours)} "
                                     f"{live.value(yours)!r}, {address(case)} {live.value(case)!r}")
    assert wrong == []
    assert tried >= len(model().declared.families)
