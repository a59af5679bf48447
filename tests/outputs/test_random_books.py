"""The engines agree on every formula cell of the workbooks of fifty random jobs.

The ``formulas`` library takes some of them in the normal run; with --long it takes all.

The answers are held against the values the program stores in a file.
"""

from __future__ import annotations

import pytest

from builder.engine.compare import differences
from builder.sheets.book import model
from tests.outputs.random_books import (
    JOBS,
    SEED,
    THROUGH_FORMULAS,
    planted,
    retyped,
    typed_by_jobs,
    unlocked,
    untyped,
)
from tests.second.drawn import random_jobs

LIBREOFFICE = pytest.param("libreoffice", marks=pytest.mark.needs("uno"))
GNUMERIC = pytest.param("gnumeric", marks=pytest.mark.needs("ssconvert"))
EACH = pytest.mark.parametrize("engine", ["stored", "ironcalc", LIBREOFFICE, GNUMERIC])


def formulas_in(book):
    return [place for place, cell in book.cells() if cell.kind == "formula"]


@EACH
def test_engine_agrees_on_random_jobs(random_answers, engine):
    found = random_answers[engine]
    assert not found.wrong, f"{len(found.wrong)} cells\n" + "\n".join(found.wrong[:40])
    assert found.jobs == JOBS
    assert found.compared == found.jobs * len(formulas_in(untyped()))


@EACH
def test_a_value_a_little_wrong_is_found(random_answers, engine):
    """And so is another job's workbook: an engine that works nothing out would not pass."""
    assert len(random_answers[engine].caught) == 1
    assert random_answers[engine].mixed > 5000


def test_the_formulas_library_agrees_on_random_jobs(formulas_random, pytestconfig):
    assert len(formulas_random) == THROUGH_FORMULAS[pytestconfig.getoption("--long")]
    for number, (stored, answer) in enumerate(formulas_random):
        assert set(answer) == set(formulas_in(untyped()))
        found = differences(stored, answer)
        assert not found, f"job {number}: {len(found)} cells\n" + "\n".join(found[:40])
        place, wrong = planted(stored)
        assert [line.partition(":")[0] for line in differences(wrong, answer)] == [
            differences(wrong, stored)[0].partition(":")[0]]
    assert len(differences(formulas_random[0][0], formulas_random[1][1])) > 5000


def test_books_differ_in_what_is_typed_and_in_nothing_else():
    """So one file stands for all jobs; the title on Start is the one word that is not typed."""
    before, may_differ = untyped(), set(unlocked(untyped()))
    held = dict(before.cells())
    for job, typed in zip(random_jobs(SEED, 5), typed_by_jobs(), strict=False):
        book = model().book(job)
        assert [place for place, _ in book.cells()] == list(held)
        other = {place for place, cell in book.cells()
                 if (cell.kind, cell.content) != (held[place].kind, held[place].content)}
        assert other - may_differ == {("Start", 2, 0)}
        assert {p for p, value in typed.items() if value != held[p].content} == other & may_differ
        assert len(other) > 200
        assert [sheet.rules for sheet in book.sheets] == [sheet.rules for sheet in before.sheets]


def test_a_retyped_copy_holds_what_is_typed(tmp_path):
    from builder.engine.ironcalc_engine import evaluate
    from builder.engine.stored import read_cells
    from builder.workbook import write

    book, typed = untyped(), typed_by_jobs()[0]
    path, copy = tmp_path / "untyped.xlsx", tmp_path / "typed.xlsx"
    write(book, evaluate(book, names=False), path)
    retyped(path, copy, typed)
    old, new = read_cells(path), read_cells(copy)
    assert {p: c for p, c in old.items() if p not in typed} == {
        p: c for p, c in new.items() if p not in typed}
    assert {p: new[p].value if p in new else None for p in typed} == {
        p: float(f"{v:.16g}") if isinstance(v, float) else v for p, v in typed.items()}
    with pytest.raises(LookupError, match="lacks"):
        retyped(path, copy, {("Inputs", 5000, 0): 1.0})
