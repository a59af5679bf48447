"""The measurements: each returns plain numbers; nothing is printed or judged here."""

from __future__ import annotations

import json
import os
import pickle
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from builder.engine.ironcalc_engine import evaluate
from builder.jobs import Job
from builder.resolve.book import Model
from builder.resolve.cells import Book
from builder.workbook import write
from builder.workbook.heights import row_heights
from builder.workbook.rules_in_cells import validation
from builder.workbook.styles import DEFAULT, STYLES, VERDICT_LOOKS
from builder.workbook.writer import OPTIONS

ROOT = Path(__file__).resolve().parents[2]
BARE, ALONE = (Path(__file__).with_name(name) for name in ("bare.py", "alone.py"))


@dataclass(frozen=True)
class Run:
    """How a process went: seconds on the clock, processor seconds, peak memory [MB]."""

    seconds: float
    processor: float
    peak: float


def run(command: list[str], compiled: str) -> Run:
    """Run a program to its end and measure it, its peak memory by itself.

    Python keeps the modules it has compiled in the folder ``compiled``.
    """
    around = {k: v for k, v in os.environ.items() if k != "PYTHONDONTWRITEBYTECODE"}
    told = subprocess.run([sys.executable, str(ALONE), *command], cwd=ROOT, check=True,
                          stdout=subprocess.PIPE, env={**around, "PYTHONPYCACHEPREFIX": compiled})
    *found, code = json.loads(told.stdout)
    if code:
        raise subprocess.CalledProcessError(code, command)
    return Run(*found)


def turns(commands: list[list[str]], times: int) -> list[list[Run]]:
    """Run programs in turn, several times each; return the runs of each.

    In turn, so that a machine that is busy for a while slows all of them.  The first run of each,
    which compiles its modules, is not counted.
    """
    kept: list[list[Run]] = [[] for _ in commands]
    with tempfile.TemporaryDirectory() as compiled:
        for command in commands:
            run(command, compiled)
        for _ in range(times):
            for runs, command in zip(kept, commands, strict=True):
                runs.append(run(command, compiled))
    return kept


def whole_program(job: Path, target: Path) -> list[str]:
    """Return the command that writes one workbook, from the job file on."""
    return [sys.executable, "-m", "builder", "-q", str(job), "-o", str(target)]


def bare_program(cells: Path, target: Path) -> list[str]:
    """Return the command of the bare program that writes the same cells."""
    return [sys.executable, str(BARE), str(cells), str(target)]


def pickle_cells(book: Book, path: Path) -> None:
    """Write down what the bare program is to write: plain lists, numbers and words."""
    values = evaluate(book)
    sheets = []
    for plan in book.sheets:
        cells = []
        for c in plan.cells:
            content = tuple(c.content.split("|", 1)) if c.kind == "link" else c.content
            cells.append((c.row, c.col, c.kind, content, c.style,
                          values.get((plan.name, c.row, c.col))))
        rules = [((r.row, r.col, r.row + r.rows - 1, r.col + r.cols - 1), validation(r))
                 for r in plan.rules]
        sheets.append({
            "name": plan.name, "cells": cells, "rules": rules, "widths": plan.widths,
            "heights": row_heights(plan, values), "verdicts": plan.verdicts,
            "last": plan.last, "repeat": plan.repeat_rows, "frozen": plan.frozen,
            "protect": plan.protect})
    names = {name: f"={sheet}!${_letters(col)}${row + 1}"
             for name, (sheet, row, col) in book.names.items()}
    data = {
        "options": {**OPTIONS, "default_format_properties": dict(DEFAULT)},
        "properties": {"title": book.title, "created": book.created},
        "styles": STYLES, "words": VERDICT_LOOKS, "sheets": sheets, "names": names}
    with path.open("wb") as stream:
        pickle.dump(data, stream)


def _letters(col: int) -> str:
    from builder.engine.values import letters

    return letters(col)


def making(m: Model, job: Job, path: Path) -> float:
    """Fill in a job, work it out and write it; return the time it took [s]."""
    def make() -> None:
        book = m.book(job)
        write(book, evaluate(book, names=False), path)

    return timed(make)


def timed(work: Callable[[], object]) -> float:
    """Return how long something takes [s]."""
    begun = time.perf_counter()
    work()
    return time.perf_counter() - begun
