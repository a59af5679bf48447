"""One workbook kept in memory: job after job is typed in, a cell is changed and put right again."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from functools import cached_property

from builder.engine.ironcalc_engine import Live
from builder.engine.values import EngineError, Value, Values
from builder.jobs import Job
from builder.language.units import TEXT
from builder.resolve.cells import Book, Cell, Place
from builder.resolve.frame import FIRST, STATE, WANTING
from builder.sheets.book import model
from tests.second import chain
from tests.second.against import Workbook
from tests.second.drawn import LETTERS, random_jobs
from tests.second.given import Given
from tests.seeded.resting import Resting

SCRATCH = "Tried"


@dataclass
class Case:
    """A book filled in: the job, what else is typed, the values with no fault in it.

    ``entries`` are typed over the job; ``kind`` is ``sound`` where everything needed is there,
    ``edge`` where typed cells hold right and wrong entries, ``wanting`` where a few are blank.
    """

    name: str
    job: Job
    entries: dict[Place, Value | None] = field(default_factory=dict)
    kind: str = "sound"
    values: Values = field(default_factory=dict)
    notes: dict = field(default_factory=dict)

    @cached_property
    def types(self) -> list[Given]:
        """The second calculation of the job, worked out once and apart from any fault."""
        return chain.work(self.job, self.values)

    def typed(self, place: Place, book: dict[Place, Cell]) -> Value | None:
        """Return what stands in a typed cell."""
        return self.notes["typed"].get(place, book[place].content if place in book else None)


class Bench(Workbook):
    """The whole workbook; :class:`Workbook` leaves blank what only shows."""

    def __init__(self) -> None:
        """Load it, for a job that has nothing typed."""
        blank = Job("blank", "Blank", "Nothing typed", random_jobs(0, 1)[0].created)
        self.book: Book = model().book(blank)
        self.cells: dict[Place, Cell] = dict(self.book.cells())
        self._live = Live(self.book, names=False)
        self._catalog: dict[Place, float] = {}
        self._over: dict[Place, Value | None] = {}
        self.worked = 0

    @cached_property
    def resting(self) -> Resting:
        """What rests on what."""
        return Resting(self.book)

    @cached_property
    def states(self) -> dict[str, Place]:
        """Where the state of each sheet that is not by section stands."""
        return {place[0]: place for place, cell in self.cells.items() if cell.kind == "formula"
                and place[1] == STATE and str(cell.content).startswith(
                    "=(COUNTIF(Sections!$E$5:$J$5,1)>0)*")}

    @cached_property
    def counts(self) -> list[Place]:
        """Where sheets count the inputs that they wait for."""
        return [place for place, cell in self.cells.items() if cell.kind == "formula"
                and place[1] == WANTING and "SUMPRODUCT(Data!" in str(cell.content)]

    def type_in(self, case: Case) -> None:
        """Type a case in; work it out, and keep its values if it has none yet."""
        for place in self._over:
            cell = self.cells.get(place)
            self._live.set(place, None if cell is None or cell.kind == "blank" else cell.content)
        self._type_job(case.job)
        for place, value in case.entries.items():
            self._live.set(place, value)
        self._over = dict(case.entries)
        if not case.values:
            case.notes["typed"] = self._typed_cells(case)
            case.values = self.work()

    def _type_job(self, job: Job) -> None:
        for row, place in model().typing.typed.items():
            if row in model().places.sections:
                for number in range(len(LETTERS)):
                    given = job.sections[number] if number < len(job.sections) else {}
                    self._live.set((place[0], place[1], FIRST + number), given.get(row.key))
            else:
                self._live.set(place, job.inputs.get(row.key))
        self._type_catalog(job)

    def _typed_cells(self, case: Case) -> dict[Place, Value | None]:
        found = {}
        for row, place in model().typing.typed.items():
            if row in model().places.sections:
                for number in range(len(LETTERS)):
                    given = case.job.sections[number] if number < len(case.job.sections) else {}
                    found[place[0], place[1], FIRST + number] = given.get(row.key)
            else:
                found[place] = case.job.inputs.get(row.key)
        return {**found, **self._catalog, **case.entries}

    def work(self) -> Values:
        """Return the value of every formula cell; one that cannot be read shows an error."""
        self.worked += 1
        self._live.evaluate()
        found: Values = {}
        for place in self._live.formulas:
            try:
                value = self._live.value(place)
            except EngineError:
                value = "#ERROR!"
            found[place] = "" if value is None else value
        return found

    def put(self, place: Place, content: str | float | None) -> None:
        """Put a formula or a number in a cell, or empty it."""
        if isinstance(content, str) and content.startswith("="):
            sheet, row, col = place
            self._live._model.update_cell_with_formula(
                self._live._sheets[sheet], row + 1, col + 1, content)
        else:
            self._live.set(place, content)

    def try_out(self, formulas: list[str]) -> None:
        """Put formulas on a sheet of their own, which nothing reads, one below the other."""
        if SCRATCH not in self._live._sheets:
            self._live._model.add_sheet(SCRATCH)
            self._live._sheets[SCRATCH] = len(self._live._sheets)
        for row, formula in enumerate(formulas):
            self.put((SCRATCH, row, 0), formula)
        self._tried = len(formulas)

    def tried(self) -> list[Value]:
        """Return what the formulas of ``try_out`` come to; one that cannot be read: an error."""
        found: list[Value] = []
        for row in range(self._tried):
            try:
                value = self._live.value((SCRATCH, row, 0))
            except EngineError:
                value = "#ERROR!"
            found.append("" if value is None else value)
        return found

    def clear_tried(self) -> None:
        """Empty the sheet of ``try_out``."""
        for row in range(self._tried):
            self.put((SCRATCH, row, 0), None)
        self._tried = 0

    def restore(self, place: Place) -> None:
        """Put a cell as it is resolved."""
        cell = self.cells.get(place)
        self.put(place, None if cell is None or cell.kind == "blank" else cell.content)

    def typed_by_rules(self) -> Iterable[tuple[Place, object]]:
        """Yield every typed cell with its rule."""
        for sheet in self.book.sheets:
            for rule in sheet.rules:
                for row, col in rule.spots():
                    yield (sheet.name, row, col), rule


def proof_entries(number: int) -> dict[Place, Value]:
    """Return what is typed in the reader's column of Proof for the cases of a number."""
    found: dict[Place, Value] = {}
    for one in model().declared.families:
        case = one.cases[number % len(one.cases)]
        for row, place in model().proof.free[one.key].given.items():
            value = case.given[row]
            found[place] = value if row.unit == TEXT else float(value)
    return found

