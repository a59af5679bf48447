"""Workbook files recalculated by Gnumeric."""

from __future__ import annotations

import csv
import tempfile
from collections.abc import Iterable
from pathlib import Path

from builder.engine import applications
from builder.engine.stored import formulas_of, read_cells, sheet_names
from builder.engine.values import EngineError, Values, address
from builder.resolve.cells import Place

SECONDS = 300.0
"""Longest time for one file [s]."""


def evaluate_files(paths: Iterable[str | Path], workdir: str | Path) -> dict[Path, Values]:
    """Recalculate .xlsx files; return for each file the value of every formula cell.

    The recalculated copies stay in ``workdir``.  Raises ``MissingApplicationError`` without the
    program and ``EngineError`` if it writes no file or leaves a formula cell without a value.
    """
    Path(workdir).mkdir(parents=True, exist_ok=True)
    answers = {}
    for number, path in enumerate(map(Path, paths)):
        target = Path(workdir) / f"gnumeric_{number:03d}_{path.name}"
        target.unlink(missing_ok=True)
        _recalculate(path, target, ["--export-type=Gnumeric_Excel:xlsx2"])
        if not target.exists():
            raise EngineError(f"{path}: not converted by Gnumeric")
        answers[path] = read_back(target, formulas_of(path))
    return answers


def texts_of(path: str | Path) -> dict[Place, str]:
    """Recalculate an .xlsx file; return what each of its cells reads, a number in all its digits.

    Half the time of ``evaluate_files``, but a number and a text of the same digits read alike,
    and so do an empty cell and an empty text, which are left out.  Raises as that does.
    """
    path, found = Path(path), {}
    options = ["--export-type=Gnumeric_stf:stf_assistant", "--export-file-per-sheet",
               "--export-options=format=raw"]
    with tempfile.TemporaryDirectory() as folder:
        _recalculate(path, Path(folder) / "%n.csv", options)
        for number, sheet in enumerate(sheet_names(path)):
            written = Path(folder) / f"{number}.csv"
            if not written.exists():
                raise EngineError(f"{path}: the sheet {sheet} is not written by Gnumeric")
            with written.open(encoding="utf-8", newline="") as lines:
                for row, texts in enumerate(csv.reader(lines)):
                    found |= {(sheet, row, col): text for col, text in enumerate(texts) if text}
    return found


def _recalculate(path: Path, target: Path, options: list[str]) -> None:
    """Run the program on a file.  Raises ``EngineError`` if it says that it failed."""
    # The name in the target is a pattern: as an address its % would be escaped.
    command = [applications.find("ssconvert"), "--recalc", *options, path.absolute().as_uri()]
    ended = applications.run([*command, str(target.absolute())], SECONDS)
    if ended.returncode:
        raise EngineError(f"{path}: not converted by Gnumeric: {ended.stderr.strip()}")


def read_back(recalculated: Path, places: Iterable[Place]) -> Values:
    """Return the values of ``places`` in a file another program wrote.

    Raises ``EngineError`` if one of them is missing there.
    """
    cells = read_cells(recalculated)
    values: Values = {}
    for place in places:
        cell = cells.get(place)
        if cell is None or cell.value is None:
            raise EngineError(f"{recalculated}: no value in {address(place)}")
        values[place] = cell.value
    return values
