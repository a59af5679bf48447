"""The delivered workbooks, worked out by each engine once a session.

The ``formulas`` library takes minutes to load a workbook of this size.  The workbooks have the
same formulas and differ in what is typed, so it loads one and works it out for what is typed in
each.  It begins in processes of its own as soon as it is known that a test will ask for it, and
works while other tests run.  So do all engines on the workbooks of random jobs.
"""

from __future__ import annotations

import multiprocessing
import re
import tempfile
import zipfile
from collections.abc import Iterable, Mapping
from functools import cache
from pathlib import Path

from builder.engine import formulas_engine, gnumeric, ironcalc_engine, libreoffice, stored
from builder.engine.stored import formulas_of, read_cells
from builder.engine.values import Value, Values, a1
from builder.jobs import read_job
from builder.language import Row
from builder.resolve.cells import Book, Place
from builder.sheets.book import model
from tests.outputs import random_books
from tests.outputs.reading import OUTPUTS, ROOT, read

LONGEST = {False: 1500.0, True: 7200.0}
"""Longest time to wait for the slowest engine, in the normal run and with --long [s]."""

PLANTED = 987654.25
"""The wrong value of the planted copy."""


@cache
def resolved(name: str) -> Book:
    """Return the resolved workbook of a starting job, from the code as it is now."""
    m = model()
    job = read_job(ROOT / "templates" / "jobs" / f"{name}.toml", m.job_inputs(),
                   m.section_inputs(), m.editable)
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
    cell = re.compile(rf'(<c[^>]* r="{a1(row, col)}"[^>]*>{formula}<v>)[^<]*(</v>)')
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
    import gc

    import schedula

    # Millions of small things are made and kept: looking for rubbish among them takes a sixth of
    # the time.
    gc.set_threshold(200_000, 50, 1000)
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


class Typing:
    """Some results of a file, worked out by the ``formulas`` library for one entry after another.

    What does not rest on the typed cells is worked out once.
    """

    def __init__(self, path: Path, wanted: Iterable[Place], typed: Iterable[Place]) -> None:
        """Load what ``wanted`` rests on; ``typed`` are all the cells that will ever be typed in."""
        self._ranges, self._typed = formulas_engine.Ranges(path, wanted), list(typed)
        cells = read_cells(path)
        self._held = {place: cells[place].value for place in self._typed}
        spots = [[formulas_engine._node(path, place) for place in places]
                 for places in (self._typed, self._ranges.wanted)]
        self._work = self._ranges._model.compile(*spots)

    def calculate(self, changes: Mapping[Place, Value]) -> Values:
        """Return the wanted values; cells that are not in ``changes`` hold what the file holds."""
        if unknown := set(changes) - set(self._typed):
            raise LookupError(f"not among the typed cells: {unknown}")
        found = self._work(*[changes.get(place, self._held[place]) for place in self._typed])
        return {place: formulas_engine._value(value, place)
                for place, value in zip(self._ranges.wanted, found, strict=True)}


FEW = 8
"""Families of more cases are loaded apart, so that their many cases do not work out the rest."""

Answers = dict[tuple[str, int, str], Value]
"""Family, number of the case from 0, wanted row (sheet and name) → what the library answers."""


def answers_to_cases(path: Path) -> Answers:
    """Type every published case in the reader's column of Proof; return the library's answers."""
    free, found = model().proof.free, {}
    for many in (False, True):
        families = [f for f in model().declared.families if (len(f.cases) > FEW) == many]
        typing = Typing(path, [w for f in families for w in free[f.key].want.values()],
                        [g for f in families for g in free[f.key].given.values()])
        for number in range(max(len(f.cases) for f in families)):
            now = [f for f in families if number < len(f.cases)]
            values = typing.calculate({place: f.cases[number].given[row] for f in now
                                       for row, place in free[f.key].given.items()})
            found |= {(f.key, number, name_of(row)): values[free[f.key].want[row]]
                      for f in now for row in f.cases[number].printed}
    return found


def name_of(row: Row) -> str:
    """Return sheet and name of a row."""
    return f"{row.sheet.name} {row.key}"


def answers_of_formulas(written: int) -> dict:
    """Return what the ``formulas`` library makes of the delivered workbooks, by file.

    Under "random": stored values and the library's, of the workbooks of some random jobs.
    """
    with tempfile.TemporaryDirectory() as folder:
        files = random_books.own_files(Path(folder), written)
        found = evaluate_alike([*files, *OUTPUTS])
        pairs = [(stored.stored_values(file), found.pop(file)) for file in files]
    return {**found, "random": pairs}


def _by_ironcalc(path: Path) -> Values:
    """Return what the engine of every build makes of a file, read with its own reader."""
    live = ironcalc_engine.Live.of_file(path)
    live.evaluate()
    return live.values()


SLOW = {"random": random_books.answers, "formulas": answers_of_formulas,
        "cases": answers_to_cases}
"""What is done in a process of its own, in this order."""


class Engines:
    """Answers of every engine for every delivered workbook and for copies with planted faults."""

    def __init__(self, long: bool = False) -> None:
        """Begin with nothing worked out; recalculated copies go into ``folder``."""
        self._longest = LONGEST[long]
        self._given = {"random": (), "formulas": (random_books.THROUGH_FORMULAS[long],),
                       "cases": (OUTPUTS[-1],)}
        self.folder = Path()
        self.canary: Path | None = None
        self.planted: Place | None = None
        self._known: dict[str, dict[Path, Values]] = {}
        self._pool = None
        self._running = {}

    def begin(self, what: str) -> None:
        """Begin with something of ``SLOW``."""
        if self._pool is None:
            # Spawned, not forked: nothing of this session is carried over.
            self._pool = multiprocessing.get_context("spawn").Pool(len(SLOW))
        if what not in self._running:
            self._running[what] = self._pool.apply_async(SLOW[what], self._given[what])

    def slow(self, what: str) -> dict:
        """Return what was found; wait for it if need be."""
        self.begin(what)
        return self._running[what].get(self._longest)

    def end(self) -> None:
        """Stop the process that was started here."""
        if self._pool is not None:
            self._pool.terminate()
            self._pool.join()

    def answer(self, engine: str, path: Path) -> Values:
        """Return what an engine makes of a file, worked out once a session."""
        if engine == "formulas":
            return self.slow("formulas")[path]
        if engine not in self._known:
            self._known[engine] = self._all(engine, [*OUTPUTS, self.canary])
        return self._known[engine][path]

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
            return {path: _by_ironcalc(path) for path in paths}
        module = {"libreoffice": libreoffice, "gnumeric": gnumeric}[engine]
        return module.evaluate_files(paths, self.folder / engine)
