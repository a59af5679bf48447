"""The workbook's own results for a job, by the names the second calculation gives to its."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import cache

from builder.engine.ironcalc_engine import Live
from builder.engine.values import Values
from builder.jobs import Job
from builder.language import Row
from builder.resolve.cells import Place
from builder.resolve.frame import FIRST
from builder.sheets.book import model
from tests.second import trade_names
from tests.second.drawn import LETTERS, random_jobs
from tests.second.given import Given, Results, Value, catalog

__all__ = ["Workbook", "compare", "givens", "places", "random_jobs", "values_of"]

UNREAD = ("Start", "Quote", "Tape", "Yard", "LaunchForm", "Upkeep", "SiteVisit", "Drawing",
          "Curves", "Worked", "Checks", "Proof", "Names", "Terms", "Free", "Sources")
"""Sheets that only show or sum up; they are left blank, which saves a third of the time."""
CLOSE = 1e-9
Difference = tuple[str, Value, Value | None, float]
"""Name, ours, the workbook's, relative difference."""


class Workbook:
    """One workbook kept in memory, into which one job after another is typed."""

    def __init__(self, unread: tuple[str, ...] = UNREAD) -> None:
        """Load it, for a job that has nothing typed; the sheets ``unread`` are left blank."""
        blank = Job("blank", "Blank", "Nothing typed", random_jobs(0, 1)[0].created)
        book = model().book(blank)
        sheets = [replace(plan, cells=[]) if plan.name in unread else plan
                  for plan in book.sheets]
        self._live = Live(replace(book, sheets=sheets), names=False)
        self._catalog: dict[Place, float] = {}

    def values_of(self, job: Job) -> Values:
        """Return the value of every formula cell for a job."""
        for row, place in model().typing.typed.items():
            if row in model().places.sections:
                for number in range(len(LETTERS)):
                    given = job.sections[number] if number < len(job.sections) else {}
                    self._live.set(_shifted(place, number), given.get(row.key))
            else:
                self._live.set(place, job.inputs.get(row.key))
        self._type_catalog(job)
        self._live.evaluate()
        return self._live.values()

    def spoilt(self, place: Place, wrong: float) -> Values:
        """Return the values for the job that was typed last, with one formula put out of use.

        The workbook stays spoilt.
        """
        self._live.set(place, wrong)
        self._live.evaluate()
        return self._live.values()

    def _type_catalog(self, job: Job) -> None:
        for place, value in self._catalog.items():
            self._live.set(place, value)
        self._catalog = {}
        for table in model().editable:
            sheet, y, x = model().places.tables[table.name]
            for key, columns in job.catalog.get(table.name, {}).items():
                for column, value in columns.items():
                    place = (sheet, y + table.keys.index(key),
                             x + 1 + list(table.columns).index(column))
                    self._catalog[place] = catalog()[table.name][key][column]
                    self._live.set(place, value)


@cache
def _workbook() -> Workbook:
    return Workbook()


def values_of(job: Job) -> Values:
    """Return the value of every formula cell of the workbook for a job."""
    return _workbook().values_of(job)


def _shifted(place: Place, number: int) -> Place:
    return place[0], place[1], FIRST + number


def givens(job: Job, values: Mapping[Place, Value]) -> list[Given]:
    """Return the section types of a job, with the values of the inputs that the workbook uses."""
    inputs = list(model().typing.typed)
    of_job = [row for row in inputs if row not in model().places.sections]
    of_type = [row for row in inputs if row in model().places.sections]
    whole = {row.key: values[model().places.rows[row]] for row in of_job}
    products = catalog(job.catalog)
    found = [Given(LETTERS[number], whole,
                   {row.key: values[_shifted(model().places.rows[row], number)]
                    for row in of_type}, products, dict(job.inputs), dict(given))
             for number, given in enumerate(job.sections)]
    for one in found:
        one.all = found
    return found


@cache
def places() -> dict[str, tuple[Place, bool]]:
    """Return name → where it stands (of type A) and whether it has six columns."""
    found = {f"{row.sheet.name}.{row.key}": (model().places.rows[row], True)
             for row in _keyed()}
    for sheet in trade_names.LEDGERS:
        found |= {name: (place, False) for name, place in trade_names.cells_of(sheet).items()}
    for row in model().typing.typed:
        by_type = row in model().places.sections
        found[f"{row.sheet.name}.{row.key}"] = (model().places.rows[row], by_type)
    return found


def _keyed() -> list[Row]:
    return [row for sheet in model().calculation if sheet.scope == "section"
            for row in sheet.rows if row.key]


def value(name: str, values: Mapping[Place, Value], letter: str) -> Value | None:
    """Return what the workbook makes of a name for a section type; None if it has no such row."""
    place, by_type = places().get(name, (("", 0, 0), False))
    return values.get(_shifted(place, LETTERS.index(letter)) if by_type else place)


def standing(values: Mapping[Place, Value], letter: str, sheets: set[str]) -> Results:
    """Return the workbook's results for a section type on sheets that nobody works out again."""
    return {name: found for name in places() if name.partition(".")[0] in sheets
            and (found := value(name, values, letter)) is not None}


def compare(results: Results, values: Mapping[Place, Value], letter: str) -> list[Difference]:
    """Return what differs: numbers by more than 1e-9 of the larger (or of 1), words at all."""
    found = []
    for name, ours in results.items():
        theirs = value(name, values, letter)
        if isinstance(ours, str) or isinstance(theirs, str) or theirs is None:
            if ours != theirs:
                found.append((name, ours, theirs, float("inf")))
            continue
        size = max(1.0, abs(ours), abs(theirs))
        if not abs(ours - theirs) <= CLOSE * size:
            found.append((name, float(ours), theirs, abs(ours - theirs) / size))
    return found
