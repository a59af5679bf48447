"""The tests that stand apart from the formulas, as functions of the values of a book.

Each returns the places at which something is wrong; a place with row −1 is the whole sheet.
None of them knows a value that the workbook gave before.
"""

from __future__ import annotations

import inspect
from collections.abc import Callable, Iterable
from types import ModuleType

from builder.engine.compare import same
from builder.engine.values import Values
from builder.language import Row
from builder.resolve.cells import Place
from builder.resolve.frame import FIRST
from builder.resolve.proof_sheet import AGREES, DIFFERS, YOURS, shown_cases
from builder.resolve.worked_sheet import NAME as WORKED
from builder.resolve.worked_sheet import NUMBERS, RESULT
from builder.sheets.book import model
from tests.outputs.test_worked import differs
from tests.second import chain, trade_boards, trade_names
from tests.second.against import compare, places
from tests.second.drawn import LETTERS
from tests.seeded.bench import Case
from tests.trade import test_drawing

DASH = "–"
Finder = Callable[[Case, Values], Iterable[Place]]


def whole_sheet(name: str) -> Place:
    """Return the place that stands for a sheet as a whole."""
    return (name, -1, -1)


def second(case: Case, values: Values) -> Iterable[Place]:
    """Where the second calculation of a job comes to something else."""
    if case.kind != "sound":
        return
    outside = chain.section_sheets() - chain.covered()
    for one in case.types:
        ours = {name: value for name, value in one.done.items()
                if name.partition(".")[0] not in outside and not chain.doubted(name)}
        for name, *_ in compare(ours, values, one.letter):
            place, by_type = places()[name]
            column = FIRST + LETTERS.index(one.letter) if by_type else place[2]
            yield place[0], place[1], column


def ledgers(case: Case, values: Values) -> Iterable[Place]:
    """Where takeoff, cut list, orders and price, worked out again, come to something else."""
    if case.kind != "sound":
        return
    try:
        ours = chain.whole(case.types, values)
    except (ValueError, KeyError, ZeroDivisionError, IndexError, TypeError, AttributeError):
        # The boards that the sheet chose, which are taken from it, cannot be read as boards.
        yield whole_sheet("CutList")
        return
    for name, *_ in compare(ours, values, case.types[0].letter):
        yield places()[name][0]


def boards(case: Case, values: Values) -> Iterable[Place]:
    """Whether the boards chosen, sawn one by one, give every piece and fit the stock."""
    if case.kind != "sound":
        return
    try:
        wrong = trade_boards.faults(case.types[0], trade_names.ledger_values(values))
    except (ValueError, KeyError, ZeroDivisionError, IndexError, TypeError, AttributeError):
        wrong = ["unreadable"]
    if wrong:
        yield whole_sheet("CutList")


def printed(case: Case, values: Values) -> Iterable[Place]:
    """Where a published example does not come to what its source prints."""
    for one, example, row, place, off, verdict in model().proof.results:
        _, factor = one.units.get(row, (row.unit, 1))
        answer, half = example.printed[row], example.step[row] / 2
        found = values.get((place[0], _row_of(one, row), place[2]))
        good = isinstance(found, float) and abs(found / factor - answer) <= half + 1e-9
        if not good:
            yield place[0], _row_of(one, row), place[2]
        if values.get(verdict) != (AGREES if good else DIFFERS):
            yield verdict
        if isinstance(found, float) and not same(
                values.get(off, DASH), found / factor / answer - 1):
            yield off
    number = case.notes.get("proof")
    if number is None:
        return
    for one in model().declared.families:
        example = one.cases[number % len(one.cases)]
        for row, answer in example.printed.items():
            place = model().proof.free[one.key].want[row]
            _, factor = one.units.get(row, (row.unit, 1))
            found = values[place]
            if isinstance(found, str) or not (
                    abs(found / factor - answer) <= example.step[row] / 2 + 1e-9):
                yield place


def _row_of(one, row: Row) -> int:
    return model().proof.free[one.key].want[row][1]


def twin(case: Case, values: Values) -> Iterable[Place]:
    """Where the reader's column, with a case typed, differs from the column of that case."""
    number = case.notes.get("proof")
    if number is None:
        return
    columns = {(one.key, id(example)): place[2]
               for one, example, _, place, *_ in model().proof.results}
    for one in model().declared.families:
        example = one.cases[number % len(one.cases)]
        column = columns.get((one.key, id(example)))
        if column is None or not any(example is c for c in shown_cases(one)):
            continue
        free = model().proof.free[one.key]
        rows = [place[1] for place in (*free.given.values(), *free.want.values())]
        for y in range(min(rows) - 1, max(rows) + 1):
            a, b = ("Proof", y, column), ("Proof", y, YOURS)
            if a in values and b in values and not same(values[a], values[b]):
                yield a
                yield b


def drawing(case: Case, values: Values) -> Iterable[Place]:
    """Whether the drawing keeps to plane geometry: each test of it, on these values."""
    letter = case.job.inputs.get("yard_type")
    if case.kind != "sound" or letter is None:
        return
    section = case.job.sections[LETTERS.index(letter)]
    drawn = test_drawing.Drawn(values, letter, dict(section))
    if failing(test_drawing, drawn):
        yield whole_sheet("Drawing")


def failing(tests: ModuleType, drawn: object) -> list[str]:
    """Return the tests of a module that take a drawing and do not hold for it."""
    found = []
    for name, test in vars(tests).items():
        if name.startswith("test_") and list(inspect.signature(test).parameters) == ["drawn"]:
            try:
                test(drawn)
            # A point that is a word, or a shape that is none, fails a test as an assert does.
            except (AssertionError, TypeError, ValueError, KeyError, IndexError,
                    ZeroDivisionError) as wrong:
                found.append(f"{name}: {wrong}")
    return found


def multiplied_out(case: Case, values: Values) -> Iterable[Place]:
    """Where a line of the worked page does not multiply out to the result beside it."""
    if case.kind != "sound":
        return
    for row, y in model().worked.lines.items():
        line, result = values.get((WORKED, y, NUMBERS)), values[WORKED, y, RESULT]
        if line is None:
            continue
        if line == DASH:
            if result != DASH:
                yield WORKED, y, NUMBERS
        elif differs(line, result, row.digits):
            yield WORKED, y, NUMBERS


def shown_again(case: Case, values: Values) -> Iterable[Place]:
    """Where the worked page shows another result than the sheet of the section type chosen."""
    letter = case.job.inputs.get("worked_type")
    if case.kind != "sound" or letter is None:
        return
    for row, y in model().worked.lines.items():
        sheet, line, col = model().places.rows[row]
        column = col + LETTERS.index(letter) if row in model().places.sections else col
        if values[WORKED, y, RESULT] != values.get((sheet, line, column), DASH):
            yield WORKED, y, RESULT


