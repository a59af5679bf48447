"""The command line: write every starting job's workbook, or one job's to a chosen place."""

from __future__ import annotations

import argparse
import os
import sys
from pathlib import Path

from builder.language import Faults

CHECK = "check"
"""First word of the command that checks written workbooks."""
UNREAD = 141
"""Returned where the reader of the printed lines has gone: what shells give for a broken pipe."""
ROOT = Path(__file__).resolve().parents[1]
JOBS, OUTPUTS = ROOT / "templates" / "jobs", ROOT / "outputs"


def parser() -> argparse.ArgumentParser:
    """Return the parser of the command line."""
    made = argparse.ArgumentParser(
        prog="python -m builder",
        description="Writes calculation workbooks (.xlsx) for timber-framed floating docks. "
                    "Without arguments it writes the workbook of every job in templates/jobs "
                    "into outputs.",
        epilog="A job file says what is typed in the input cells; copy one of templates/jobs "
               "and change it. Nothing is written when a job file has a fault. "
               "python -m builder check FILE [FILE ...] checks written workbooks by the rules.")
    made.add_argument("job", nargs="?", type=Path, help="a job file (.toml); all when left out")
    made.add_argument("-o", "--output", type=Path,
                      help="the workbook to write, or the folder to write into "
                           "(default: the outputs folder)")
    made.add_argument("-q", "--quiet", action="store_true", help="no line for each workbook")
    return made


def check_parser() -> argparse.ArgumentParser:
    """Return the parser of the command that checks written workbooks."""
    made = argparse.ArgumentParser(
        prog=f"python -m builder {CHECK}",
        description="Checks written workbooks by the rules of a trustworthy workbook: says the "
                    "rule, sheet and cell of each breach, what it is and how to mend it. Ends "
                    "with 1 when a breach stands that is not waived with a reason.")
    made.add_argument("file", nargs="+", type=Path, help="a workbook (.xlsx) written here")
    return made


def _check(arguments: list[str]) -> int:
    """Check workbooks; openpyxl is loaded here alone, a workbook is written without it."""
    given = check_parser().parse_args(arguments)
    try:
        from builder.rules.checking import command
    except ModuleNotFoundError as missing:
        if missing.name is None or not missing.name.startswith("openpyxl"):
            raise
        print("cannot check: openpyxl is not installed (pip install openpyxl==3.1.5)",
              file=sys.stderr)
        return 1
    return command(given.file)


def main(arguments: list[str] | None = None) -> int:
    """Run the command line; return 0, or 1 with every fault told on standard error.

    Where what it prints is no longer read (``python -m builder check FILE | head``) it ends
    quietly with ``UNREAD``.
    """
    try:
        try:
            return _run(sys.argv[1:] if arguments is None else arguments)
        finally:
            sys.stdout.flush()
    except BrokenPipeError:
        # Else the interpreter would write what is left once more as it ends, and say so.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return UNREAD


def _run(words: list[str]) -> int:
    """Do what the words of the command line ask for."""
    if words[:1] == [CHECK]:
        return _check(words[1:])
    made = parser()
    given = made.parse_args(words)
    if given.job is None and given.output is not None and _names_workbook(given.output):
        made.error(f"argument -o/--output: {given.output} is one workbook; name a job file too, "
                   "or a folder for the workbooks of all jobs")
    try:
        for job, target in _work(given):
            _write(job, target, given.quiet)
    except Faults as faults:
        count = "1 fault" if len(faults.found) == 1 else f"{len(faults.found)} faults"
        print(f"{count}, nothing written:", file=sys.stderr)
        print("\n".join(f"  {fault}" for fault in faults.found), file=sys.stderr)
        return 1
    except BrokenPipeError:
        raise
    except OSError as fault:
        where = f" {fault.filename}" if fault.filename else ""
        print(f"cannot write{where}: {fault.strerror}", file=sys.stderr)
        return 1
    return 0


def _work(given) -> list:
    """Read every job asked for before anything is written."""
    from builder.jobs import read_job
    from builder.sheets.book import model

    paths = [given.job] if given.job else sorted(JOBS.glob("*.toml"))
    if not paths:
        raise Faults([f"{JOBS}: there is no job file (.toml) in it"])
    m = model()
    jobs, wrong = [], []
    for path in paths:
        try:
            jobs.append(read_job(path, m.job_inputs(), m.section_inputs(), m.editable))
        except Faults as faults:
            wrong += faults.found
    if wrong:
        raise Faults(wrong)
    return [(job, _target(given.output, job.name)) for job in jobs]


def _names_workbook(output: Path) -> bool:
    return output.suffix.lower() == ".xlsx" and not output.is_dir()


def _target(output: Path | None, name: str) -> Path:
    if output is None:
        return OUTPUTS / f"{name}.xlsx"
    if _names_workbook(output):
        return output
    return output / f"{name}.xlsx"


def _write(job, target: Path, quiet: bool) -> None:
    from builder.engine.ironcalc_engine import evaluate
    from builder.sheets.book import model

    target.parent.mkdir(parents=True, exist_ok=True)
    book = model().book(job)
    values = evaluate(book, names=False)
    # Loaded when the engine, which takes most memory, has given its own back.
    from builder.workbook import write

    write(book, values, target)
    if not quiet:
        master = values["Checks", 1, 1]
        print(f"{target.name:28} {len(values):6,} formulas   whole job: {master}", flush=True)
