"""What is typed: whatever stands in an input, no error value comes of it, and the sheets say so."""

from __future__ import annotations

import pytest

from builder.resolve.frame import SECTIONS, STATE
from builder.workbook.limits import faults
from tests.resolve.tiny import DASH, INPUTS, NEEDS, OK, SECTION, UNUSED, Tiny

BAD = {
    "blank": None, "text": "abc", "zero": 0.0, "negative": -1.0, "huge": 1e300, "tiny": 1e-6,
    "minus huge": -1e300, "fraction": 5.5, "number as text": "5", "star": "*", "question mark": "?",
    "part of a word and a star": "l*", "empty text": "", "space": " ", "formula as text": "=1/0",
    "dash": DASH, "true": True, "inside": 10.0, "a word": "public", "a word in capitals": "LARGE",
}
ALL = {"Work", "Floating", "Takeoff"}
FEEDS = {
    "use": {"Floating"}, "load": ALL, "share": ALL, "least_free": {"Floating"},
    "idle": set(), "model": ALL, "count": {"Takeoff"}, "length": ALL, "width": ALL, "floats": ALL,
    "lean": {"Floating"}, "turned": ALL, "live": ALL,
}
"""Input → the sheets that wait for it, by hand.

Floating and Takeoff read Work, and wait for all that Work waits for: it shows dashes till then."""
FREE = ("job_name", "site", "designer", "checker", "job_date", "revision", "note")


def usable(row, value):
    """Say whether a value is one that an input takes, read apart from the workbook."""
    if value is None:
        return row.default is not None
    if row.choices is not None:
        return isinstance(value, str) and value.lower() in [k.lower() for k in row.choices.keys]
    if isinstance(value, str | bool):
        return False
    return row.least <= value <= row.most and (not row.whole or value == int(value))


@pytest.fixture(scope="module")
def tiny():
    return Tiny()


def inputs(tiny):
    return {r.key: r for r in [*tiny.model.job_sheet.inputs, *tiny.model.section_sheet.inputs]}


def good(key):
    return SECTION.get(key, INPUTS.get(key))


def test_every_input_is_listed_here(tiny):
    assert set(inputs(tiny)) == {*FEEDS, *FREE}


def test_a_good_job_has_no_error_value_and_can_be_written(tiny):
    assert tiny.errors() == {}
    assert tiny.master == OK
    assert tiny.job_wanted == tiny.wanted() == DASH
    assert faults(tiny.book, tiny.live.values()) == []


@pytest.mark.parametrize("value", BAD.values(), ids=BAD.keys())
@pytest.mark.parametrize("key", FEEDS)
def test_whatever_is_typed_in_an_input(tiny, key, value):
    row = inputs(tiny)[key]
    section = row in tiny.model.places.sections
    tiny.put(row, value)
    try:
        assert tiny.errors() == {}
        well = usable(row, value)
        assert tiny.state(row) == (1 if well else 0)
        fed = set() if well else FEEDS[key]
        checks = {"Work": tiny.m.work.stress, "Floating": tiny.m.floating.check}
        for sheet, check in checks.items():
            word = tiny.verdict(check)
            assert (word == NEEDS) == (sheet in fed)
            assert (tiny.ratio(check) == DASH) == (sheet in fed)
            assert tiny.sheet_state(sheet) == (1 if sheet in fed else 2)
        assert (tiny.value(tiny.m.takeoff.floats["quantity"]) == DASH) == ("Takeoff" in fed)
        if well:
            assert tiny.job_wanted == tiny.wanted() == DASH
        else:
            assert tiny.master == NEEDS
            assert set(tiny.masters().values()) == {NEEDS}
            assert (tiny.wanted() if section else tiny.job_wanted) == row.label
            assert tiny.value(row) == DASH
    finally:
        tiny.put(row, good(key))
    assert tiny.master == OK


@pytest.mark.parametrize("value", BAD.values(), ids=BAD.keys())
@pytest.mark.parametrize("key", FREE)
def test_whatever_is_written_in_words_disturbs_nothing(tiny, key, value):
    row = inputs(tiny)[key]
    tiny.put(row, value)
    try:
        assert tiny.errors() == {}
        assert tiny.master == OK
        assert tiny.value(row) == (DASH if value is None else value)
    finally:
        tiny.put(row, good(key))


@pytest.mark.parametrize("end", [0, 1])
@pytest.mark.parametrize("key", [k for k in FEEDS if k not in ("use", "model", "turned")])
def test_both_ends_of_a_limit_are_allowed_and_a_step_past_them_is_not(tiny, key, end):
    row = inputs(tiny)[key]
    edge, step = ((row.least, -1e-9), (row.most, 1e-9))[end]
    try:
        tiny.put(row, edge)
        assert tiny.state(row) == 1
        assert tiny.errors() == {}
        tiny.put(row, edge + step)
        assert tiny.state(row) == 0
        tiny.put(row, edge + 1e6 * step)
        assert tiny.state(row) == 0
    finally:
        tiny.put(row, good(key))


def test_a_blank_takes_the_default(tiny):
    m = tiny.m
    assert [tiny.value(r) for r in (m.job.share, m.sec.width, m.sec.floats, m.sec.turned,
                                    m.sec.live, m.job.least_free)] == [0.8, 6, 4, "along", 20, 6]
    tiny.put(m.job.use, "public")
    tiny.put(m.sec.turned, "across")
    try:
        assert tiny.value(m.job.least_free) == 12
        assert tiny.value(m.sec.live) == 40
        tiny.put(m.sec.live, 33)
        assert tiny.value(m.sec.live) == 33
    finally:
        for row, value in ((m.job.use, "private"), (m.sec.turned, None), (m.sec.live, None)):
            tiny.put(row, value)


def test_a_default_waits_for_what_it_rests_on(tiny):
    m = tiny.m
    tiny.put(m.sec.turned, "slantwise")
    try:
        assert tiny.state(m.sec.live) == 0
        assert tiny.wanted() == "Turned"
        tiny.put(m.sec.live, 25)
        assert tiny.state(m.sec.live) == 1
        # What is typed rests on nothing, but the other input is still wanting.
        assert tiny.wanted() == "Turned"
        assert tiny.errors() == {}
    finally:
        tiny.put(m.sec.live, None)
        tiny.put(m.sec.turned, None)


def test_the_first_of_several_wanted_is_named(tiny):
    m = tiny.m
    tiny.put(m.sec.length, None)
    tiny.put(m.sec.count, 0)
    tiny.put(m.job.idle, "x")
    try:
        assert tiny.wanted() == "How many"
        assert tiny.job_wanted == "Feeds nothing"
    finally:
        for row in (m.sec.length, m.sec.count, m.job.idle):
            tiny.put(row, good(row.key))


def test_all_wrong_at_once_gives_no_error_value():
    for value in (None, "abc", -1e300, 0.0, "*"):
        tiny = Tiny()
        for row in inputs(tiny).values():
            for section in range(len(SECTIONS) if row in tiny.model.places.sections else 1):
                tiny.put(row, value, section)
        assert tiny.errors() == {}
        assert tiny.master == NEEDS


@pytest.mark.parametrize("value", [None, "abc", 0.0, -1.0, 1e300, "5", "*", True])
def test_whatever_is_typed_in_the_catalog(tiny, value):
    sheet, y, x = tiny.model.places.tables["floats"]
    for line in range(2):
        place, held = (sheet, y + line, x + 1), tiny.live.value((sheet, y + line, x + 1))
        tiny.live.set(place, value)
        tiny.live.evaluate()
        assert tiny.errors() == {}
        assert tiny.verdict(tiny.m.floating.check) == NEEDS
        assert tiny.value(tiny.m.takeoff.floats["quantity"]) == DASH
        assert tiny.master == NEEDS
        tiny.live.set(place, held)
        tiny.live.evaluate()
    assert tiny.master == OK


def test_a_column_that_is_not_used_says_so(tiny):
    for section in range(1, len(SECTIONS)):
        assert tiny.wanted(section) == DASH
        for name in ("Work", "Floating"):
            assert tiny.sheet_state(name, section) == 0
        for sheet in (tiny.m.work.sheet, tiny.m.floating.sheet):
            for row in sheet.rows:
                word = UNUSED if row in [c.verdict for c in sheet.checks] else DASH
                assert tiny.value(row, section) == word


def test_a_column_is_in_use_once_anything_is_typed_in_it(tiny):
    for row, value in ((tiny.m.sec.note, "wide"), (tiny.m.sec.lean, 0.0),
                       (tiny.m.sec.model, "nonsense")):
        tiny.put(row, value, 3)
        assert tiny.live.value(("Sections", STATE, 4 + 3)) == 1
        assert tiny.verdict(tiny.m.work.stress, 3) == NEEDS
        assert tiny.master == NEEDS
        assert tiny.wanted(3) == "Float"
        tiny.put(row, None, 3)
        assert tiny.verdict(tiny.m.work.stress, 3) == UNUSED
    assert tiny.master == OK


def test_no_section_at_all_needs_input():
    tiny = Tiny(sections=[])
    assert tiny.errors() == {}
    assert tiny.verdict(tiny.m.work.stress) == UNUSED
    assert tiny.value(tiny.m.takeoff.floats["quantity"]) == DASH
    assert tiny.master == NEEDS


def test_nothing_typed_at_all_needs_input():
    tiny = Tiny(inputs={"revision": "0"}, sections=[])
    assert tiny.errors() == {}
    assert tiny.master == NEEDS
    assert tiny.job_wanted == "Use"
