"""The core of the workbook, which the benchmarks measure by itself, is a whole workbook."""

from __future__ import annotations

from builder.engine.ironcalc_engine import evaluate
from builder.jobs import Job
from builder.workbook.writer import to_bytes
from tests.bench.core import WANTED, core
from tests.second.drawn import random_jobs


def test_the_core_by_itself_is_written_and_shows_no_error():
    given = random_jobs(5, 1)[0]
    made = core()
    book = made.book(Job("core", "Core", "Core alone", given.created, {}, ()))
    values = evaluate(book, names=False)
    assert set(WANTED) < {sheet.name for sheet in book.sheets}
    assert not [v for v in values.values() if isinstance(v, str) and v.startswith("#")]
    assert len(to_bytes(book, values)) > 100_000
