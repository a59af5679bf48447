"""Run as ``python -m tests.bench``: measures, prints a table, returns 1 if a limit is passed."""

from __future__ import annotations

import argparse
import statistics
import sys
import tempfile
from dataclasses import replace
from pathlib import Path

from builder.engine import applications, formulas_engine, gnumeric, libreoffice
from builder.engine.stored import formulas_of
from builder.jobs import Job, read_job
from builder.resolve.book import Model
from builder.sheets.book import model
from tests.bench import measure
from tests.bench.core import core

JOB = measure.ROOT / "templates" / "jobs" / "walkway_t_head.toml"
RATIO, MEMORY, SIZE, SETTLE, FORCED = 1.0, 150.0, 500.0, 50.0, 100.0
"""Limits: time against the bare program [-], peak memory [MB], file [KB], LibreOffice after one
edit and for every formula anew [ms].  File and formulas anew are held for the core sheets alone."""
TYPES = (1, 3, 6)
"""Section types in use whose growth is shown."""


class Table:
    """Lines of what, value, limit; remembers whether a limit was passed."""

    def __init__(self) -> None:
        self.passed = True

    def line(self, what: str, value: float, unit: str, limit: float | None = None) -> None:
        """Print one line."""
        held = "" if limit is None else f"limit {limit:8,.2f}"
        word = "" if limit is None else ("ok" if value <= limit else "OVER")
        self.passed = self.passed and (limit is None or value <= limit)
        print(f"{what:58} {value:10,.2f} {unit:4} {held:15} {word}", flush=True)

    def skipped(self, what: str, why: str) -> None:
        """Print that something was not measured, and why."""
        print(f"{what:58} not measured: {why}", flush=True)


def writing(table: Table, folder: Path, times: int) -> Path:
    """Measure the whole program against the bare one; return the workbook written."""
    book = model().book(_job(model()))
    cells, ours, bare = folder / "cells.pickle", folder / "ours.xlsx", folder / "bare.xlsx"
    measure.pickle_cells(book, cells)
    whole, plain = measure.turns(
        [measure.whole_program(JOB, ours), measure.bare_program(cells, bare)], times)
    if formulas_of(ours) != formulas_of(bare):
        raise RuntimeError("the bare program writes other formulas")
    table.line("formulas", len(formulas_of(ours)), "")
    table.line("one workbook, whole process, on the clock", whole.seconds, "s")
    table.line("the bare program, the same cells and formats", plain.seconds, "s")
    table.line("ratio on the clock", whole.seconds / plain.seconds, "x", RATIO)
    table.line("ratio of processor time", whole.processor / plain.processor, "x", RATIO)
    table.line("peak memory", whole.peak, "MB", MEMORY)
    table.line("peak memory of the bare program", plain.peak, "MB")
    table.line("file", ours.stat().st_size / 1000, "KB")
    table.line("file of the bare program", bare.stat().st_size / 1000, "KB")
    table.line("ironcalc, every formula anew", measure.in_memory(book), "ms")
    return ours


def growing(table: Table, path: Path, times: int) -> None:
    """Measure size and time against the number of section types in use, in this process."""
    m = model()
    job = _job(m)
    for count in TYPES:
        types = [job.sections[k % len(job.sections)] for k in range(count)]
        seconds = measure.making(m, replace(job, sections=tuple(types)), path, times)
        words = f"{count} section type{'s' if count > 1 else ''} in use"
        table.line(f"{words}: file", path.stat().st_size / 1000, "KB")
        table.line(f"{words}: fill in, work out, write", seconds, "s")


def core_alone(table: Table, path: Path) -> None:
    """Measure the core sheets as a workbook of their own."""
    m = core()
    print("core sheets: " + ", ".join(sheet.name for sheet in m.sheets))
    measure.making(m, _job(m), path, 1)
    table.line("core sheets alone: formulas", len(formulas_of(path)), "")
    table.line("core sheets alone: file", path.stat().st_size / 1000, "KB", SIZE)
    in_libreoffice(table, "core sheets alone: ", m, path, SETTLE, FORCED)


def in_libreoffice(table: Table, what: str, m: Model, path: Path, settle: float | None = None,
                   forced: float | None = None) -> None:
    """Measure an edit of a length and a recalculation of everything, in an open file."""
    label = f"{what}LibreOffice, one length edited and settled"
    try:
        place = next(place for row, place in m.typing.typed.items() if row.key == "length")
        steps = [{place: 10.0 + k / 8} for k in range(6)]
        found = libreoffice.edit_steps(path, steps, [("Checks", 1, 1)])[1:]
    except applications.MissingApplicationError as missing:
        table.skipped(label, str(missing))
        return
    table.line(label, statistics.median(r.change_ms for r in found), "ms", settle)
    table.line(f"{what}LibreOffice, every formula anew",
               statistics.median(r.all_ms for r in found), "ms", forced)


def whole_processes(table: Table, path: Path, folder: Path, slow: bool) -> None:
    """Measure what programs take to open the workbook, work it out and save it."""
    for what, module in (("LibreOffice", libreoffice), ("Gnumeric", gnumeric)):
        label = f"{what}, whole process: open, work out, save"
        try:
            seconds = measure.timed(lambda m=module: m.evaluate_files([path], folder))
            table.line(label, seconds, "s")
        except applications.MissingApplicationError as missing:
            table.skipped(label, str(missing))
    if slow:
        seconds = measure.timed(lambda: formulas_engine.evaluate_file(path))
        table.line("formulas library, load and work out", seconds, "s")


def _job(m: Model) -> Job:
    return read_job(JOB, m.job_inputs(), m.section_inputs(), m.editable)


def main() -> int:
    """Measure and print; return 1 if a limit is passed."""
    parser = argparse.ArgumentParser(prog="python -m tests.bench", description=__doc__)
    parser.add_argument("-n", "--times", type=int, default=5, help="runs of each program")
    parser.add_argument("--slow", action="store_true", help="the formulas library too")
    given = parser.parse_args()
    table = Table()
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder)
        path = writing(table, place, given.times)
        in_libreoffice(table, "", model(), path, SETTLE)
        growing(table, place / "grown.xlsx", given.times)
        core_alone(table, place / "core.xlsx")
        whole_processes(table, path, place, given.slow)
    return 0 if table.passed else 1


if __name__ == "__main__":
    sys.exit(main())
