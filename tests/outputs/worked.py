"""The delivered workbooks, worked out by each engine once a session.

The ``formulas`` library takes minutes to load a workbook of this size.  The workbooks have the
same formulas and differ in what is typed, so it loads one and works it out for what is typed in
each.  It begins in a process of its own as soon as it is known that a test will ask for it, and
works while other tests run.
"""

from __future__ import annotations

import multiprocessing
import re
import zipfile
from functools import cache
from pathlib import Path

from builder.engine import formulas_engine, gnumeric, ironcalc_engine, libreoffice, stored
from builder.engine.stored import formulas_of, read_cells
from builder.engine.values import Values, a1
from builder.jobs import read_job
from builder.resolve.cells import Book, Place
from builder.sheets.book import model
from tests.outputs.reading import NAMES, OUTPUTS, ROOT, delivered, read

LONGEST = 1500.0
"""Longest time the slowest engine may take for all workbooks [s]."""

PLANTED = 987654.25
"""The wrong value of the planted copy."""


@cache
def resolved(name: str) -> Book:
    """Return the resolved workbook of a starting job, from the code as it is now."""
    m = model()
    job = read_job(ROOT / "templates" / "jobs" / f"{name}.toml", m.job_sheet.inputs,
                   m.section_sheet.inputs, m.editable)
    return m.book(job)


def in_the_midst(path: Path) -> Place:
    """Return a formula cell of a calculation sheet that holds a number and is read by others."""
    found = read(path)
    sheets = list(dict.fromkeys(sheet for sheet, _, _ in found.cells))
    for place in found.formulas:
        sheet, row, _ = place
        late = sheets.index(sheet) > sheets.index("Data") and row > 5
        if late and place in found.readers and isinstance(found.cells[place].value, float):
            return place
    raise LookupError(f"{path.name} holds no such cell")


def plant(path: Path, copy: Path, place: Place, wrong: float) -> None:
    """Write a copy of a workbook in which one formula cell has another stored value."""
    sheet, row, col = place
    number = list(dict.fromkeys(s for s, _, _ in read(path).cells)).index(sheet) + 1
    formula = "(?:<f[^>]*>[^<]*</f>|<f[^>]*/>)"
    cell = re.compile(rf'(<c r="{a1(row, col)}"[^>]*>{formula}<v>)[^<]*(</v>)')
    with zipfile.ZipFile(path) as old, zipfile.ZipFile(copy, "w", zipfile.ZIP_DEFLATED) as new:
        for name in old.namelist():
            text = old.read(name)
            if name == f"xl/worksheets/sheet{number}.xml":
                changed, count = cell.subn(rf"\g<1>{wrong!r}\g<2>", text.decode())
                if count != 1:
                    raise LookupError(f"{name} has no formula cell {a1(row, col)}")
                text = changed.encode()
            new.writestr(name, text)


def evaluate_alike(paths: list[Path]) -> dict[Path, Values]:
    """Return what the ``formulas`` library makes of workbooks that differ in what is typed.

    The last one is loaded; for each other one its own typed cells, read from its file, are put
    in.  A file with other formulas is loaded by itself.  Raises ``EngineError`` where the
    library has no answer.
    """
    import schedula

    loaded, cells = paths[-1], read_cells(paths[-1])
    formulas = formulas_of(loaded)
    model = formulas_engine._library().ExcelModel().loads(str(loaded)).finish()
    nodes = {str(node) for node in model.dsp.data_nodes}
    answers = {}
    for path in paths:
        if formulas_of(path) != formulas:
            answers[path] = formulas_engine.evaluate_file(path)
            continue
        own, given = read_cells(path), {}
        for place in {**cells, **own}:
            if place in formulas:
                continue
            old, new = (c[place].value if place in c else None for c in (cells, own))
            node = formulas_engine._node(loaded, place)
            # What is in no node is read by no formula.
            if old != new and node in nodes:
                given[node] = [[schedula.EMPTY if new is None else new]]
        found = model.calculate(given)
        answers[path] = {p: formulas_engine._value(found[formulas_engine._node(loaded, p)], p)
                         for p in formulas}
    return answers


class Engines:
    """Answers of every engine for every delivered workbook and for copies with planted faults."""

    def __init__(self) -> None:
        """Begin with nothing worked out; recalculated copies go into ``folder``."""
        self.folder = Path()
        self.canary: Path | None = None
        self.planted: Place | None = None
        self._known: dict[str, dict[Path, Values]] = {}
        self._pool = None
        self._running = None

    def begin(self) -> None:
        """Set the slow engine to work."""
        if self._pool is None:
            # Spawned, not forked: nothing of this session is carried over.
            self._pool = multiprocessing.get_context("spawn").Pool(1)
            self._running = self._pool.apply_async(evaluate_alike, (OUTPUTS,))

    def end(self) -> None:
        """Stop the process that was started here."""
        if self._pool is not None:
            self._pool.terminate()
            self._pool.join()

    def answer(self, engine: str, path: Path) -> Values:
        """Return what an engine makes of a file, worked out once a session."""
        if engine == "formulas":
            return self._formulas(path)
        if engine not in self._known:
            self._known[engine] = self._all(engine, [*OUTPUTS, self.canary])
        return self._known[engine][path]

    def _formulas(self, path: Path) -> Values:
        if "formulas" not in self._known:
            self.begin()
            self._known["formulas"] = self._running.get(LONGEST)
        return self._known["formulas"][path]

    def plant_one(self) -> None:
        """Make a copy of the last workbook with one stored number made wrong.

        Raises ``RuntimeError`` after the first answer: each program is to run once only.
        """
        if self._known:
            raise RuntimeError("an engine has answered already")
        path = OUTPUTS[-1]
        place = in_the_midst(path)
        self.canary = self.folder / f"planted_{path.name}"
        self.planted = place
        plant(path, self.canary, place, PLANTED)

    def _all(self, engine: str, paths: list[Path]) -> dict[Path, Values]:
        if engine == "stored":
            return {path: stored.stored_values(path) for path in paths}
        if engine == "ironcalc":
            return {delivered(name): ironcalc_engine.evaluate(resolved(name)) for name in NAMES}
        module = {"libreoffice": libreoffice, "gnumeric": gnumeric}[engine]
        return module.evaluate_files(paths, self.folder / engine)
