"""Workbook files recalculated by Gnumeric."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from builder.engine import applications
from builder.engine.stored import formulas_of, read_cells
from builder.engine.values import EngineError, Values, address
from builder.resolve.cells import Place

SECONDS = 300.0
"""Longest time for one file [s]."""


def evaluate_files(paths: Iterable[str | Path], workdir: str | Path) -> dict[Path, Values]:
    """Recalculate .xlsx files; return for each file the value of every formula cell.

    The recalculated copies stay in ``workdir``.  Raises ``MissingApplicationError`` without the
    program and ``EngineError`` if it writes no file or leaves a formula cell without a value.
    """
    program = applications.find("ssconvert")
    Path(workdir).mkdir(parents=True, exist_ok=True)
    answers = {}
    for number, path in enumerate(map(Path, paths)):
        target = Path(workdir) / f"gnumeric_{number:03d}_{path.name}"
        target.unlink(missing_ok=True)
        form = "--export-type=Gnumeric_Excel:xlsx2"
        ended = applications.run(
            [program, "--recalc", form, path.absolute().as_uri(), target.absolute().as_uri()],
            SECONDS,
        )
        if ended.returncode or not target.exists():
            raise EngineError(f"{path}: not converted by Gnumeric: {ended.stderr.strip()}")
        answers[path] = read_back(target, formulas_of(path))
    return answers


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
