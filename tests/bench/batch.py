"""Writes one job's workbook several times in one process: ``python -m tests.bench.batch N FOLDER``.

As ``python -m builder`` writes all jobs, the collector of rubbish is left off.
"""

from __future__ import annotations

import gc
import sys
from pathlib import Path

from builder.engine.ironcalc_engine import evaluate
from builder.jobs import read_job
from builder.sheets.book import model
from builder.workbook import write

JOB = Path(__file__).resolve().parents[2] / "templates" / "jobs" / "walkway_t_head.toml"


def main() -> None:
    """Read the job and write it as often as asked."""
    gc.disable()
    count, folder = int(sys.argv[1]), Path(sys.argv[2])
    m = model()
    for number in range(count):
        book = m.book(read_job(JOB, m.job_inputs(), m.section_inputs(), m.editable))
        write(book, evaluate(book, names=False), folder / f"batch_{number}.xlsx")


if __name__ == "__main__":
    main()
