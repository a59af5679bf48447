"""Workbooks of random jobs, worked out by each engine.

The workbooks of two jobs differ in what is typed and in nothing else, formulas least of all (a
test sees to it).  So one file is written, for a job with nothing typed, and each engine is given
that file and what a job types.  Its stored values are those of the untyped job: an engine that
handed them back would be caught by every cell.
"""

from __future__ import annotations

import re
import tempfile
import zipfile
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from xml.sax.saxutils import escape

from builder.engine import gnumeric, libreoffice
from builder.engine.applications import MissingApplicationError
from builder.engine.compare import differences
from builder.engine.ironcalc_engine import Live, evaluate
from builder.engine.stored import formulas_of, sheet_names, stored_values
from builder.engine.values import Value, Values, a1, row_col
from builder.jobs import Job
from builder.resolve.cells import Book, Place
from builder.sheets.book import model
from builder.workbook import write
from tests.second.drawn import random_jobs

SEED = 20260118
JOBS = 50
THROUGH_FORMULAS = {False: 3, True: JOBS}
"""How many jobs go through the ``formulas`` library, in the normal run and with --long: each
takes it half a minute or more."""
OFF = 2e-9
"""Share by which a planted value is wrong: twice what may differ."""
Typed = Mapping[Place, Value | None]

_CELL = re.compile(r'<c(?: t="[a-z]+")?(?P<style>(?: s="\d+")?) r="(?P<at>[A-Z]+\d+)"'
                   r'(?:/>|>(?:(?!</c>).)*</c>)')


def untyped() -> Book:
    """Return the resolved workbook of a job with nothing typed."""
    return model().book(Job("blank", "Blank", "Nothing typed", random_jobs(SEED, 1)[0].created))


def unlocked(book: Book) -> list[Place]:
    """Return every cell a reader may type in."""
    return [(sheet.name, rule.row + down, rule.col + right) for sheet in book.sheets
            for rule in sheet.rules for down in range(rule.rows) for right in range(rule.cols)]


@cache
def typed_by_jobs() -> list[Typed]:
    """Return for each random job what stands in every cell that may be typed in."""
    found, places = [], unlocked(untyped())
    for job in random_jobs(SEED, JOBS):
        held = {place: cell.content for place, cell in model().book(job).cells()}
        found.append({place: held.get(place) for place in places})
    return found


def retyped(path: Path, copy: Path, typed: Typed) -> None:
    """Write a copy of an .xlsx file with other contents in some cells, and nothing else changed.

    Raises ``LookupError`` if the file lacks one of the cells.
    """
    left, names = dict(typed), sheet_names(path)
    parts = {f"xl/worksheets/sheet{number}.xml": name for number, name in enumerate(names, 1)}

    def put(found: re.Match, sheet: str) -> str:
        place = (sheet, *row_col(found["at"]))
        if place not in left:
            return found[0]
        value, start = left.pop(place), f'<c{found["style"]} r="{found["at"]}"'
        if value is None:
            return start + "/>"
        if isinstance(value, str):
            return f'{start} t="inlineStr"><is><t xml:space="preserve">{escape(value)}</t></is></c>'
        return f"{start}><v>{value:.16g}</v></c>"

    with zipfile.ZipFile(path) as old, zipfile.ZipFile(copy, "w") as new:
        for name in old.namelist():
            content = old.read(name)
            sheet = parts.get(name)
            if sheet in {place[0] for place in left}:
                text = content.decode()
                content = _CELL.sub(lambda found, s=sheet: put(found, s), text).encode()
            new.writestr(name, content)
    if left:
        raise LookupError(f"{path.name} lacks {[(p[0], a1(*p[1:])) for p in left]}")


def by_ironcalc(path: Path, jobs: list[Typed]) -> Iterator[Values]:
    """Yield the values for each job by ironcalc, which reads the file with its own reader."""
    return retyping(Live.of_file(path), jobs)


def retyping(live: Live, jobs: list[Typed]) -> Iterator[Values]:
    """Yield the values of a workbook kept in memory, with one job after another typed in."""
    for typed in jobs:
        for place, value in typed.items():
            live.set(place, value)
        live.evaluate()
        yield live.values()


def by_libreoffice(path: Path, jobs: list[Typed]) -> Iterator[Values]:
    """Yield the values for each job by LibreOffice, started once, the file opened once."""
    formulas = formulas_of(path)
    for reading in libreoffice.edit_steps(path, jobs, formulas, settle=False):
        yield reading.values


def by_gnumeric(path: Path, jobs: list[Typed], stored: list[Values]) -> Iterator[Values]:
    """Yield the values for each job by Gnumeric, a file for each.

    It hands out texts: where ``stored`` has a number, the text is read as one if it can be.
    """
    with tempfile.TemporaryDirectory() as folder:
        for typed, due in zip(jobs, stored, strict=False):
            copy = Path(folder) / "typed.xlsx"
            retyped(path, copy, typed)
            texts = gnumeric.texts_of(copy)
            yield {place: _as(value, texts.get(place, "")) for place, value in due.items()}


def _as(due: Value, text: str) -> Value:
    if isinstance(due, str):
        return text
    try:
        return float(text)
    except ValueError:
        return {"TRUE": True, "FALSE": False}.get(text, text)


@dataclass
class Answer:
    """How an engine's values compare with those of the engine of every build.

    ``wrong`` are the differences, ``compared`` counts cells, ``jobs`` jobs.  ``caught`` is what is
    found when one stored value is made a little wrong, ``mixed`` how many cells differ when the
    values of one job are held against those of another.
    """

    wrong: list[str] = field(default_factory=list)
    compared: int = 0
    jobs: int = 0
    caught: list[str] = field(default_factory=list)
    mixed: int = 0


def planted(values: Values) -> tuple[Place, Values]:
    """Return a place, and values in which the number of that formula cell is a little wrong."""
    numbers = [p for p, v in values.items() if isinstance(v, float) and abs(v) > 1]
    place = numbers[len(numbers) // 2]
    return place, {**values, place: values[place] * (1 + OFF)}


def compared(stored: list[Values], answers: Iterator[Values]) -> Answer:
    """Hold an engine's values for every job against the stored ones."""
    found = Answer()
    for number, (due, values) in enumerate(zip(stored, answers, strict=False)):
        lines = differences(due, values)
        found.wrong += [f"job {number}: {line}" for line in lines]
        found.compared += len(values)
        found.jobs += 1
        if number == 0:
            found.caught = differences(planted(due)[1], values)
            found.mixed = len(differences(stored[1], values))
    return found


def answers() -> dict[str, Answer]:
    """Return how each engine answers for all jobs; "stored" is what files written for them store.

    An engine whose program is not installed is left out.
    """
    jobs, book = typed_by_jobs(), untyped()
    stored = list(retyping(Live(book, names=False), jobs))
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "untyped.xlsx"
        write(book, evaluate(book, names=False), path)
        work = {"stored": by_files(Path(folder) / "own.xlsx", stored),
                "ironcalc": by_ironcalc(path, jobs),
                "libreoffice": by_libreoffice(path, jobs),
                "gnumeric": by_gnumeric(path, jobs, stored)}
        found = {}
        for engine, values in work.items():
            try:
                found[engine] = compared(stored, values)
            except MissingApplicationError:
                continue
    return found


def by_files(path: Path, values: list[Values]) -> Iterator[Values]:
    """Yield what a file written for each job, with the values worked out for it, stores."""
    for job, found in zip(random_jobs(SEED, JOBS), values, strict=True):
        write(model().book(job), found, path)
        yield stored_values(path)


def own_files(folder: Path, count: int) -> list[Path]:
    """Write the workbooks of the first jobs as the program does; return the files."""
    found = []
    for number, job in enumerate(random_jobs(SEED, JOBS)[:count]):
        book = model().book(job)
        found.append(folder / f"random_{number:02d}.xlsx")
        write(book, evaluate(book, names=False), found[-1])
    return found
