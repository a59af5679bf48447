"""A section held in roll by another, in a whole workbook: the neighbour is another column."""

from __future__ import annotations

import pytest

from builder.engine.ironcalc_engine import Live
from builder.jobs import read_job
from builder.sheets import buoyancy, mooring, sections_afloat
from builder.sheets import sections as sec
from builder.sheets import stability as st
from builder.sheets.book import model
from tests.outputs.reading import ROOT

FINGER = 1
"""Column of the finger, from 0, in the tidal job; the landing is type A."""


@pytest.fixture(scope="module")
def book():
    m = model()
    job = read_job(ROOT / "templates" / "jobs" / "tidal_finger.toml", m.job_inputs(),
                   m.section_inputs(), m.editable)
    return Live(m.book(job), names=False)


def held_by(book, word, **more):
    typed = model().typing.typed
    for ask, value in ((sections_afloat.held_by, word),
                       *((getattr(sections_afloat, k), v) for k, v in more.items())):
        sheet, y, x = typed[ask]
        book.set((sheet, y, x + FINGER), value)
    book.evaluate()
    return [p for p, v in book.values().items() if isinstance(v, str) and v.startswith("#")]


def value(book, row, column=FINGER):
    sheet, y, x = model().places.rows[row]
    return book.value((sheet, y, x + column))


def test_the_neighbour_takes_most_of_the_lean_and_only_from_the_finger(book):
    assert held_by(book, "none") == []
    alone = value(book, st.tilt["half_across"])
    landing = value(book, st.tilt["half_across"], 0)
    assert alone > 8 and value(book, buoyancy.alone) == 1
    assert held_by(book, "A", hinge_apart=5.0) == []
    assert 0.5 < value(book, st.tilt["half_across"]) < 2
    assert value(book, st.tilt["half_across"], 0) == pytest.approx(landing, rel=1e-12)
    assert value(book, buoyancy.alone) == 0


@pytest.mark.parametrize("word", ["D", "B"])
def test_a_neighbour_that_is_not_there_or_is_itself_holds_nothing(book, word):
    assert held_by(book, "none") == []
    alone = value(book, st.tilt["half_across"])
    assert held_by(book, word) == []
    assert value(book, st.tilt["half_across"]) == pytest.approx(alone, rel=1e-9)
    assert book.value(("Checks", 1, 1)) == "NOT OK"
    assert held_by(book, "none") == []


def test_a_joint_is_judged_though_no_hinge_is_typed(book):
    """The hinges are typed on no type; that one is held in roll tells of the joint."""
    sheet, y, x = model().typing.typed[sec.hinges]
    before = [book.value((sheet, y, x + k)) for k in range(2)]
    for k in range(2):
        book.set((sheet, y, x + k), 0)
    assert held_by(book, "A", hinge_apart=5.0) == []
    assert value(book, mooring.hinge_all) > 0 and value(book, mooring.hinge_all, 0) > 0
    assert held_by(book, "none") == []
    for k, was in enumerate(before):
        book.set((sheet, y, x + k), was)


def test_the_neighbour_may_have_the_same_floats(book):
    """Every entry of type B is made that of type A: it is another type all the same."""
    typed = model().typing.typed
    spots = [place for ask, place in typed.items() if ask in model().places.sections]
    for sheet, y, x in spots:
        book.set((sheet, y, x + FINGER), book.value((sheet, y, x)) or None)
    assert held_by(book, "A") == []
    assert value(book, st.holder_trim) == pytest.approx(value(book, st.alone_trim), rel=1e-12)
    assert value(book, st.holder_there) == 1
