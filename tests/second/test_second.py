"""The whole chain reckoned twice: the workbook against a second calculation, on random jobs.

The second calculation is written from the standards and from statics, in numpy and plain
Python, and shares no formula with the workbook.  A job is typed into a workbook kept in memory.
"""

from __future__ import annotations

import re
from collections import defaultdict
from pathlib import Path

import pytest

from builder.sheets.book import model
from tests.second import chain, stability_laid
from tests.second.against import (
    LETTERS,
    Workbook,
    compare,
    places,
    random_jobs,
    value,
    values_of,
)

SEED = 20260117
BOOKS = {False: 84, True: 500}
"""How many books of six section types, in the normal run and with --long."""
FEWEST_RESULTS = 1500
"""Results of a section type and of the whole dock there must be at least, by name."""
PLANTED = ("Parts.stringers", "Parts.deck_area", "Weight.service", "Weight.launch_kg",
           "Buoyancy.free_service", "Buoyancy.KM", "Buoyancy.test_c_ratio", "Framing.uniform",
           "Hardware.V")


@pytest.fixture(scope="module")
def reckoned(pytestconfig):
    """Every job reckoned twice: what was found, and the differences by name."""
    found, wrong = chain.Found(), defaultdict(list)
    for job in random_jobs(SEED, BOOKS[pytestconfig.getoption("--long")]):
        values = values_of(job)
        types = chain.work(job, values)
        for letter, what in chain.differences(types, values, found):
            wrong[what[0]].append(f"{job.name} {letter}: {what[1]!r}, workbook {what[2]!r}")
        for one in types:
            found.plates += one.done["Stability.half_people"] > 0
            found.overloaded += [f"{job.name} {one.letter} {fault}"
                                 for fault in stability_laid.faults(one)]
    return found, wrong


def test_the_people_of_a_load_plate_keep_every_limit(reckoned):
    """What the plate says is laid on as a load, on every side."""
    found, _ = reckoned
    assert found.plates > 100
    assert found.overloaded == []


def test_every_result_is_reckoned_alike(reckoned):
    found, wrong = reckoned
    assert not wrong, f"{len(wrong)} rows\n" + "\n".join(
        f"{name}: {len(cases)} times; {cases[0]}" for name, cases in wrong.items())
    assert found.results > 10_000


def test_jobs_are_such_that_there_is_something_to_judge(reckoned, pytestconfig):
    """All sections are judged, most stand up under a crowd, and every verdict is met often."""
    found, _ = reckoned
    sections = len(LETTERS) * BOOKS[pytestconfig.getoption("--long")]
    assert sections >= 500
    assert found.ready == sections
    assert found.stable > 0.5 * sections
    for word in ("OK", "LOOK", "NOT OK"):
        assert found.verdicts[word] > 5 * sections
    several = [name for name, words in found.words.items() if len(words & {"OK", "LOOK", "NOT OK"})
               > 1]
    assert len(several) > 0.8 * len(found.words)


def test_known_differences_are_still_met(reckoned):
    """What no longer differs is taken off the lists."""
    found, _ = reckoned
    known = set(chain.DOUBTED) | set(chain.AT_FAULT)
    assert known - found.doubts == set()


def test_rows_are_covered(reckoned):
    """Of the first four sheets every named row is reckoned twice; of the others most are."""
    found, _ = reckoned
    named = {sheet: [name for name in places() if name.partition(".")[0] == sheet]
             for sheet in chain.covered() & chain.section_sheets()}
    for sheet, names in named.items():
        share = len([name for name in names if name in found.names]) / len(names)
        least = 1 if sheet in ("Parts", "Decking", "Weight", "Buoyancy") else 0.9
        assert share >= least, f"{sheet}: {share:.0%}"
    may = {f"{ask.sheet.name}.{ask.key}" for ask in model().typing.typed
           if ask.default is not None and ask.sheet.name in ("Inputs", "Sections")}
    assert may - found.names == set(), "defaults that are not reckoned"
    verdicts = [name for names in named.values() for name in names if name.endswith("_verdict")]
    assert [name for name in verdicts if name not in found.names] == []
    assert len(found.names) >= FEWEST_RESULTS


@pytest.fixture(scope="module")
def one():
    """A random job, reckoned twice."""
    job = random_jobs(SEED, 1)[0]
    values = values_of(job)
    return job, values, chain.work(job, values)


@pytest.mark.parametrize("name", PLANTED)
def test_a_small_error_is_found(one, name):
    _, values, types = one
    ours = types[0].done
    assert compare({name: ours[name]}, values, "A") == []
    least = 2e-9 * max(1.0, abs(ours[name]))
    for wrong in (ours[name] + least, ours[name] - least, str(ours[name]), float("nan")):
        assert [what[0] for what in compare({name: wrong}, values, "A")] == [name]


def test_a_result_that_no_row_has_is_found(one):
    _, values, _ = one
    assert [what[0] for what in compare({"Weight.nothing": 1.0}, values, "A")] == [
        "Weight.nothing"]


@pytest.mark.parametrize("name", ["Parts.stringers", "Weight.heights_9", "Buoyancy.draft_service"])
def test_a_wrong_formula_shows_in_all_that_rests_on_it(one, name):
    """The workbook is given a wrong cell, and is worked out again: verdicts included."""
    job, values, types = one
    spoilt = Workbook()
    spoilt.values_of(job)
    sheet, y, x = places()[name][0]
    after = spoilt.spoilt((sheet, y, x), 1.01 * value(name, values, "A"))
    wrong = [what[0] for letter, what in chain.differences(types, after) if letter == "A"]
    assert name in wrong and len(wrong) > 10
    assert any(found.endswith("_ratio") for found in wrong)


def test_what_is_typed_is_what_is_used(one):
    _, _, types = one
    for each in types:
        for used, typed in ((each.job, each.entered_job), (each.sec, each.entered_sec)):
            assert {key: used[key] for key in typed} == pytest.approx(typed)
    typed = [entered for each in types for entered in each.entered_sec]
    assert len(set(typed)) > 40


def test_jobs_are_the_same_for_the_same_seed_and_differ_otherwise():
    first, again, other = (random_jobs(seed, 2) for seed in (5, 5, 6))
    assert first == again
    assert first[0].sections != first[1].sections and first != other
    assert len({tuple(sorted(section.items(), key=str)) for section in first[0].sections}) == 6


def test_nothing_of_the_workbook_s_arithmetic_is_used():
    """No module of the calculation imports a sheet, an expression or the builder at all."""
    chosen = [path for path in Path(__file__).parent.glob("*.py") if not re.search(
        "test_|against|drawn|chain|trade_worked|trade_names", path.name)]
    assert len(chosen) > 15
    for path in chosen:
        assert not re.search(r"^\s*(from|import) builder", path.read_text("utf-8"), re.M), path


def test_blank_sheets_are_read_by_nothing_that_is_compared(one):
    """A book with nothing left blank gives the same results."""
    from builder.engine.ironcalc_engine import evaluate

    job, values, _ = one
    whole = evaluate(model().book(job), names=False)
    for name, (place, by_type) in places().items():
        spots = [(place[0], place[1], place[2] + k) for k in range(6)] if by_type else [place]
        assert [values.get(spot) for spot in spots] == [whole.get(spot) for spot in spots], name
