"""Run as ``python -m tests.bench``: measures, prints a table as it stands in README.

Ratios are against a floor or a peer measured in the same run, in turn with it, so that a machine
that is busy for a while slows both.  Returns 1 if a limit is passed.
"""

from __future__ import annotations

import argparse
import statistics
import sys
import tempfile
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from builder.engine.applications import MissingApplicationError
from builder.engine.stored import formulas_of
from builder.jobs import Job, read_job
from builder.resolve.book import Model
from builder.sheets.book import model
from tests.bench import batch, engines, measure
from tests.bench.core import core

RATIO, MEMORY, SIZE, SETTLE, FORCED = 1.0, 150.0, 500.0, 50.0, 100.0
"""Limits: time against the bare program [-], peak memory [MB], file [KB], LibreOffice after one
edit and for every formula anew [ms].  File and LibreOffice are held for the core sheets alone."""
TYPES = (1, 3, 6)
"""Section types in use whose growth is shown."""
BATCHES = (1, 2, 4, 8)
"""Workbooks written in one process."""
DOCKS = 25
"""Random docks whose cut list is held against the optimum."""


class Table:
    """Lines of what, seen, limit; remembers whether a limit was passed."""

    def __init__(self) -> None:
        self.passed = True

    def head(self) -> None:
        """Print the head of the table."""
        print("| what | seen | limit |\n|---|---|---|", flush=True)

    def line(self, what: str, seen: str, *limits: tuple[float, float, str]) -> None:
        """Print one line; each limit is (value, limit, words for the limit)."""
        words = []
        for value, limit, text in limits:
            self.passed = self.passed and value <= limit
            words.append(text if value <= limit else f"{text}: over")
        print(f"| {what} | {seen} | {'; '.join(words)} |", flush=True)

    def tried(self, what: str, work: Callable[[], None]) -> None:
        """Do what prints a line; print why it was not measured where a program is missing."""
        try:
            work()
        except MissingApplicationError as missing:
            self.line(what, f"not measured: {missing}")


def writing(table: Table, folder: Path, times: int) -> Path:
    """Measure the whole program against the bare one; return the workbook written."""
    book = model().book(_job(model()))
    cells, ours, bare = folder / "cells.pickle", folder / "ours.xlsx", folder / "bare.xlsx"
    measure.pickle_cells(book, cells)
    whole, plain = measure.turns(
        [measure.whole_program(batch.JOB, ours), measure.bare_program(cells, bare)], times)
    if formulas_of(ours) != formulas_of(bare):
        raise RuntimeError("the bare program writes other formulas")
    clock, processor = (
        statistics.median(getattr(a, what) / getattr(b, what)
                          for a, b in zip(whole, plain, strict=True))
        for what in ("seconds", "processor"))
    table.line("one workbook, whole process, against a bare XlsxWriter program that writes the "
               "same cells and formats: on the clock; of processor time",
               f"{clock:.2f} times; {processor:.2f} times",
               (clock, RATIO, f"{RATIO}"), (processor, RATIO, f"{RATIO}"))
    peak, floor = (statistics.median(r.peak for r in runs) for runs in (whole, plain))
    table.line("peak memory; of the bare program", f"{peak:.0f} MB; {floor:.0f} MB",
               (peak, MEMORY, f"{MEMORY:.0f} MB"))
    table.line("file, all sheets; of the bare program",
               f"{_kb(ours)} KB, {len(formulas_of(ours)):,} formulas; {_kb(bare)} KB")
    return ours


def in_each_engine(table: Table, path: Path, core_path: Path, times: int) -> None:
    """Measure a recalculation in each engine, as a ratio to ironcalc."""
    def in_libreoffice() -> None:
        settled, forced = engines.edited(core(), core_path, times)
        all_settled, all_forced = engines.edited(model(), path, times)
        table.line("LibreOffice, one edited length settled: core sheets alone; all sheets",
                   f"{_ms(settled)}; {_ms(all_settled)}",
                   (settled.engine * 1000, SETTLE, f"{SETTLE:.0f} ms for the core"))
        table.line("LibreOffice, every formula anew: core sheets alone; all sheets",
                   f"{_ms(forced)}; {_ms(all_forced)}",
                   (forced.engine * 1000, FORCED, f"{FORCED:.0f} ms for the core"))
        table.line("ironcalc, every formula anew: core sheets alone; all sheets",
                   f"{forced.ironcalc * 1000:.0f} ms; {all_forced.ironcalc * 1000:.0f} ms")

    def opened() -> None:
        one = engines.whole_libreoffice(path)
        table.line("LibreOffice started, file opened, worked out, saved; against ironcalc",
                   f"{one.engine:.1f} s; {one.ratio:.1f} times")

    def in_gnumeric() -> None:
        one = engines.whole_gnumeric(path, min(times, 3))
        table.line("Gnumeric started, file opened, worked out, written as text; against ironcalc",
                   f"{one.engine:.1f} s; {one.ratio:.1f} times")

    table.tried("LibreOffice, an edit and every formula anew", in_libreoffice)
    table.tried("LibreOffice started, file opened, worked out, saved", opened)
    table.tried("Gnumeric started, file opened, worked out, written as text", in_gnumeric)
    one = engines.formulas_library(core_path)
    table.line("formulas library, core sheets alone loaded and worked out; against ironcalc",
               f"{one.engine:.0f} s; {one.ratio:.0f} times")


def growing(table: Table, path: Path, times: int) -> None:
    """Measure size and time against the number of section types in use, in this process."""
    m, job = model(), _job(model())
    jobs = [replace(job, sections=tuple(job.sections[k % len(job.sections)]
                                        for k in range(count))) for count in TYPES]
    kept: list[list[float]] = [[] for _ in jobs]
    sizes = [0] * len(jobs)
    for _ in range(times):
        for number, one in enumerate(jobs):
            kept[number].append(measure.making(m, one, path))
            sizes[number] = _kb(path)
    ratios = [statistics.median(a / b for a, b in zip(seconds, kept[0], strict=True))
              for seconds in kept]
    table.line(f"{_listed(TYPES)} section types in use: file; filled in, worked out and written, "
               "against one", f"{_listed(sizes)} KB; " + _listed(f"{r:.2f}" for r in ratios))


def in_batches(table: Table, folder: Path) -> None:
    """Measure workbooks written in one process against as many processes of one."""
    runs = measure.turns([[sys.executable, "-m", "tests.bench.batch", str(count), str(folder)]
                          for count in BATCHES], 1)
    one = runs[0][0].processor
    shares = [run[0].processor / (count * one)
              for run, count in zip(runs, BATCHES, strict=True)]
    table.line(f"{_listed(BATCHES)} workbooks in one process: processor time of each, against "
               "one alone; peak memory", _listed(f"{s:.2f}" for s in shares) + "; "
               + _listed(f"{run[0].peak:.0f}" for run in runs) + " MB")


def cutting(table: Table) -> None:
    """Measure how much more lumber the cut list buys than the proven optimum."""
    what = (f"lumber bought over the proven optimum, {DOCKS} docks of whole feet; {DOCKS} of odd "
            "sizes: on average, at worst")
    try:
        import ortools  # noqa: F401
    except ModuleNotFoundError:
        table.line(what, "not measured: OR-tools is not installed (pip install -e '.[bench]')")
        return
    from tests.bench import cut_waste

    found = [cut_waste.excess(odd, DOCKS, cut_waste.FRESH[0])[0] for odd in (False, True)]
    means, worsts = [sum(over) / len(over) for over in found], [max(over) for over in found]
    table.line(what, "; ".join(f"{mean:.2%}, {worst:.2%}"
                               for mean, worst in zip(means, worsts, strict=True)),
               (max(means), cut_waste.MEAN_MOST, f"{cut_waste.MEAN_MOST:.0%}"),
               (max(worsts), cut_waste.WORST_MOST, f"{cut_waste.WORST_MOST:.0%}"))


def _job(m: Model) -> Job:
    return read_job(batch.JOB, m.job_inputs(), m.section_inputs(), m.editable)


def _kb(path: Path) -> int:
    return round(path.stat().st_size / 1000)


def _ms(timing: engines.Timing) -> str:
    return f"{timing.engine * 1000:.0f} ms, {timing.ratio:.1f} times ironcalc"


def _listed(words) -> str:
    return ", ".join(map(str, words))


def main() -> int:
    """Measure and print; return 1 if a limit is passed."""
    parser = argparse.ArgumentParser(prog="python -m tests.bench", description=__doc__)
    parser.add_argument("-n", "--times", type=int, default=5, help="runs of each program")
    given = parser.parse_args()
    table = Table()
    table.head()
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder)
        path, core_path, small = writing(table, place, given.times), place / "core.xlsx", core()
        measure.making(small, _job(small), core_path)
        table.line("file, core sheets alone",
                   f"{_kb(core_path)} KB, {len(formulas_of(core_path)):,} formulas",
                   (core_path.stat().st_size / 1000, SIZE, f"{SIZE:.0f} KB"))
        growing(table, place / "grown.xlsx", min(given.times, 3))
        in_batches(table, place)
        in_each_engine(table, path, core_path, given.times)
        cutting(table)
    return 0 if table.passed else 1


if __name__ == "__main__":
    sys.exit(main())
