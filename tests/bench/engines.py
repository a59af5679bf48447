"""How long each engine takes for a workbook, against ironcalc, which works out every build."""

from __future__ import annotations

import gc
import statistics
import tempfile
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from builder.engine import formulas_engine, gnumeric, libreoffice
from builder.engine.ironcalc_engine import Live
from builder.engine.stored import formulas_of
from builder.resolve.book import Model
from tests.bench.measure import timed


@dataclass(frozen=True)
class Timing:
    """How long an engine and ironcalc took for the same thing, one after the other [s]."""

    engine: float
    ironcalc: float

    @property
    def ratio(self) -> float:
        """Return how many times as long the engine takes."""
        return self.engine / self.ironcalc


def in_pairs(work: Callable[[], object], other: Callable[[], object], times: int) -> Timing:
    """Time two pieces of work in turn; return the pair whose ratio is the median."""
    pairs = [Timing(timed(work), timed(other)) for _ in range(times)]
    return sorted(pairs, key=lambda pair: pair.ratio)[len(pairs) // 2]


def loaded_by_ironcalc(path: Path) -> None:
    """Read a file, work out every formula, read every value."""
    live = Live.of_file(path)
    live.evaluate()
    live.values()


def edited(m: Model, path: Path, times: int) -> tuple[Timing, Timing]:
    """Return the timing of an edited length settled, and of every formula anew.

    LibreOffice has the file open; ironcalc has it in memory and works out all of it each time.
    """
    place = next(place for row, place in m.typing.typed.items() if row.key == "length")
    steps = [{place: 10.0 + k / 8} for k in range(times + 1)]
    found = libreoffice.edit_steps(path, steps, [("Checks", 1, 1)])[1:]
    live = Live.of_file(path)
    live.evaluate()
    own = statistics.median(timed(live.evaluate) for _ in range(times))
    return tuple(Timing(statistics.median(getattr(r, what) for r in found) / 1000, own)
                 for what in ("change_ms", "all_ms"))


def whole_libreoffice(path: Path) -> Timing:
    """Return the timing of the program started, the file opened, worked out and saved."""
    with tempfile.TemporaryDirectory() as folder:
        return in_pairs(lambda: libreoffice.evaluate_files([path], folder),
                        lambda: loaded_by_ironcalc(path), 1)


def whole_gnumeric(path: Path, times: int) -> Timing:
    """Return the timing of the program started, the file opened, worked out, written as text."""
    return in_pairs(lambda: gnumeric.texts_of(path), lambda: loaded_by_ironcalc(path), times)


def formulas_library(path: Path) -> Timing:
    """Return the timing of the file loaded and worked out by the ``formulas`` library."""
    kept = gc.get_threshold()
    gc.set_threshold(200_000, 50, 1000)
    try:
        found: dict = {}
        timing = in_pairs(lambda: found.update(formulas_engine.evaluate_file(path)),
                          lambda: loaded_by_ironcalc(path), 1)
    finally:
        gc.set_threshold(*kept)
    if set(found) != set(formulas_of(path)):
        raise RuntimeError("not every formula was worked out")
    return timing
