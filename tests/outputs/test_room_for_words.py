"""Rows are high enough for whatever their words come to, not only for those of the delivered job.

A program leaves a row as high as the file says: what is typed later must find its room.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from builder.jobs import Job
from builder.resolve.frame import FIRST, STATE
from builder.sheets.book import model
from builder.workbook.heights import LINE, row_heights
from tests.outputs.test_drawing_pixels import jobs
from tests.second.against import Workbook

CHOSEN = ("Worked", STATE, 4)
"""The number of the section type of the worked page."""
RANDOM = 20
"""Random jobs that are typed into the blank start, beside the demos."""


@pytest.fixture(scope="module")
def filled():
    """The blank workbook, its values, and those with one job after another typed in."""
    given, workbook = jobs(RANDOM), Workbook(unread=())
    blank = Job("blank", "Blank", "Nothing typed", given[0].created)
    return (model().book(blank), workbook.values_of(blank),
            [workbook.values_of(job) for job in given])


def too_low(sheet, empty, values) -> list[str]:
    """Return the rows that are high enough for some values, but not for others."""
    given = row_heights(sheet, empty)
    return [f"{sheet.name} row {row + 1}: {high:g} pt in {given.get(row, LINE):g}"
            for row, high in row_heights(sheet, values).items()
            if high > given.get(row, LINE) + 1e-9]


def turns_over(values) -> bool:
    """Return whether the section type of the worked page turns over in some case."""
    column = FIRST + int(values[CHOSEN]) - 1
    return any(sheet == "Stability" and col == column and str(value).startswith("UNSTABLE")
               for (sheet, _, col), value in values.items())


def test_the_blank_start_has_room_for_what_any_job_shows(filled):
    book, empty, others = filled
    wrong: dict[str, str] = {}
    for values in others:
        for sheet in book.sheets:
            if sheet.name == "Worked" and turns_over(values):
                continue  # with numbers of ten digits
            wrong |= {line.partition(":")[0]: line for line in too_low(sheet, empty, values)}
    assert sum(not turns_over(values) for values in others) >= 6
    assert not wrong, f"{len(wrong)} rows\n" + "\n".join(list(wrong.values())[:60])


def test_without_the_longest_words_rows_are_too_low(filled):
    book, empty, others = filled
    sheet = next(s for s in book.sheets if s.name == "Worked")
    assert too_low(replace(sheet, longest={}), empty, others[0])
