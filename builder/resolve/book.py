"""The whole workbook: declared once, proved once, filled with the inputs of one job after another.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Sequence
from dataclasses import dataclass
from types import ModuleType

from builder.jobs import Job
from builder.language import Ask, Family, Faults, Row, Sheet, Table, adopt, nameless
from builder.language.ranges import Ranges

from .calculation_sheets import PAGE_LAST, PAGE_TOP, Maker, place_ledger_inputs, place_sheet
from .cells import Book, SheetPlan
from .checks_sheet import ChecksSheet
from .closing_sheets import (
    free_sheet,
    input_names,
    names_sheet,
    result_names,
    terms_sheet,
)
from .data_sheets import (
    CATALOG_WANTING,
    DataLayout,
    catalog_sheet,
    place_catalog,
    sources_sheet,
    wanting_line,
)
from .drawing_sheet import COLUMNS
from .frame import DASH, FIRST, MASTER, SECTIONS, TITLE, TOP, WANTING, Page, letter
from .graph import Graph, faults_of, met
from .input_sheets import Part, job_sheet, place_inputs, section_sheet
from .places import Places, address
from .proof_sheet import ProofSheet
from .sketch_sheet import Sketch, sketch_sheet
from .start_sheet import Front, StartSheet
from .worked_sheet import WorkedSheet

INPUT_SCOPES = ("job inputs", "section inputs")
"""Scopes of sheets that hold nothing but what the reader types."""


@dataclass(frozen=True)
class Declared:
    """The trade as it is declared: the modules of the sheets, the catalog, the proofs.

    ``further`` are modules that declare more rows on a sheet of another module; ``none_left``
    rows of the whole job that count what could not be dealt with: while one is above 0 the job
    needs input.  ``worked`` is the input that names the section type of the worked page; ``bars``
    the sheet below which every check is drawn as a bar; ``sketches`` are pictures of terms.
    """

    inputs: ModuleType
    sections: ModuleType
    catalog: ModuleType
    calculation: Sequence[ModuleType]
    families: Sequence[Family]
    sources: Table
    front: Front
    title: str
    version: str
    further: Sequence[ModuleType] = ()
    terms: Table | None = None
    none_left: Sequence[Row] = ()
    worked: Ask | None = None
    bars: Sheet | None = None
    sketches: Sequence[Sketch] = ()


class Model:
    """A declared workbook, placed and proved; ``book(job)`` fills in a job.

    Raises:
        Faults: everything that is wrong with the declaration, one line each.
    """

    def __init__(self, declared: Declared):
        self.declared = d = declared
        for module in d.further:
            adopt(module)
        self.job_sheet, self.section_sheet = adopt(d.inputs), adopt(d.sections)
        right = [adopt(m) for m in d.calculation]
        self.sheets: list[Sheet] = [self.job_sheet, self.section_sheet, *right]
        self.calculation = [s for s in right if s.scope not in INPUT_SCOPES]
        ranges = Ranges()
        faults = faults_of(self.sheets, ranges) + [f for s in self.sheets for f in nameless(s)]
        if faults:
            raise Faults(faults)
        # All ranges would take a hundredth of the memory to the end.
        self.given = {row: ranges.of(row) for one in d.families for row in one.given}
        self.places = Places()
        self.graph = Graph(self.sheets)
        self.typing = place_inputs(
            [self.job_sheet, self.section_sheet, *(s for s in right if s.scope in INPUT_SCOPES)],
            self.places)
        self.editable = list(d.catalog.tables)
        place_catalog(self.editable, self.places, d.catalog.sheet.name)
        self.data = DataLayout(self.graph, self.calculation, self.typing, self.places,
                               self.editable, "Data")
        for sheet in self.calculation:
            place_sheet(sheet, self.places)
            if sheet.scope == "ledger":
                place_ledger_inputs(sheet, self.typing)
        self.fixed = self._fixed()
        met.cache_clear()  # some megabytes that are not asked for again

    def _fixed(self) -> list[SheetPlan]:
        """Build the sheets that are the same for every job."""
        d = self.declared
        maker = Maker(self.places, self.typing, self.data, self.graph, self.section_sheet.name,
                      {t.name for t in self.editable}, self._title_block())
        plans = [self.data.plan("Published data and constants",
                                "Locked. Every value carries source, clause and status.")]
        plans += [maker.sheet(sheet) for sheet in self.calculation]
        if maker.faults:
            raise Faults(maker.faults)
        self.checks = ChecksSheet(self.calculation, self.places, self._wanting(),
                                  self.data.weights_range())
        self.proof = ProofSheet(list(d.families), self.places, self.given)
        plans.append(self.checks.plan())
        for plan in plans:
            if d.bars is not None and plan.name == d.bars.name:
                self.checks.add_bars(plan)
        self.worked = None
        if d.worked is not None:
            self.worked = WorkedSheet(d.worked, self.typing.of(True), self.calculation, self.places)
            plans.append(self.worked.plan())
        plans.append(self.proof.plan())
        if faults := [*self.proof.faults, *(self.worked.faults if self.worked else ())]:
            raise Faults(faults)
        plans += [names_sheet(self.typing, self.places, self.sheets, self.proof.names),
                  *([terms_sheet(d.terms, d.sketches)] if d.terms is not None else []),
                  *([sketch_sheet(d.sketches)] if d.sketches else []),
                  free_sheet(), sources_sheet(d.sources, "Sources")]
        for plan in plans:
            self._master_line(plan)
        return plans

    def _wanting(self) -> str:
        """Return the count of all inputs of the workbook that are not usable."""
        found = [f"COUNTIF({states},0)" for states in self.typing.job_states()]
        row = WANTING + 1
        found += [f"{len(SECTIONS)}-COUNTIF({part.sheet.name}!$E${row}:$J${row},\"{DASH}\")"
                  for part in self.typing.of(True)]
        found += [f"SUM({address(self.places.rows[row])})" for row in self.declared.none_left]
        if self.editable:
            found.append(f"{self.declared.catalog.sheet.name}!$B${CATALOG_WANTING + 1}")
        return "+".join(found)

    def _master_line(self, plan: SheetPlan) -> None:
        """Put the whole job's verdict, and whose job it is, on top of a sheet.

        On paper for people the verdict stands beside what is printed.
        """
        page = _on(plan)
        if plan.name in ("Checks", "Start"):
            return
        papers = {s.name: PAGE_LAST if s.scope == "page" else COLUMNS - 1
                  for s in self.calculation if s.scope in ("page", "drawing")}
        if plan.name in papers:
            x = papers[plan.name] + 2
            page.text(TITLE, x + 7, "Whole job", "subtitle")
            page.formula(TITLE, x, self.checks.master(), "verdict")
            plan.verdicts.append((TITLE, x, TITLE, x))
            page.formula(MASTER, 0, self._job_words()[0], "text")
            master = self.checks.master()
            # A drawing has its title block where a page has room.
            y = (PAGE_TOP if papers[plan.name] == PAGE_LAST else TOP) - 1
            page.formula(y, 0, f'IF(OR({master}="NOT OK",{master}="NEEDS INPUT"),'
                               f'"Whole job: "&{master}&". Not to be built from as it '
                               'stands."," ")', "caution.line")
            return
        page.text(MASTER, 0, "Whole job", "master")
        page.formula(MASTER, 1, self.checks.master(), "verdict")
        plan.verdicts.append((MASTER, 1, MASTER, 1))
        job, people = self._job_words()
        # Where there is room: beside the title on a wide sheet, else in its widest column.
        wide = plan.last[1] > FIRST + 2
        page.formula(TITLE, FIRST if wide else min(2, plan.last[1] - 1), job, "text")
        if plan.last[1] > 2:
            page.formula(MASTER, 2, people, "people")

    def _title_block(self) -> list[tuple[str, str]]:
        """Return what a drawing says of itself: label and formula."""
        rows = {r.key: r for r in self.job_sheet.inputs}
        found = []
        for label, key in (("Job", "job_name"), ("Revision", "revision"), ("Date", "job_date"),
                           ("Drawn", "designer"), ("Checked", "checker")):
            sheet, y, x = self.places.rows[rows[key]]
            found.append((label, f"{sheet}!${letter(x)}${y + 1}"))
        return found

    def _job_words(self) -> tuple[str, str]:
        """Return the formulas of the lines that name job and site, and the people."""
        rows = {r.key: r for r in self.job_sheet.inputs}
        cells = {}
        for key in ("job_name", "site", "designer", "checker", "job_date", "revision"):
            sheet, y, x = self.places.rows[rows[key]]
            cells[key] = f"{sheet}!${letter(x)}${y + 1}"
        return (f'"Job: "&{cells["job_name"]}&". Site: "&{cells["site"]}',
                f'"Designed: "&{cells["designer"]}&". Checked: "&{cells["checker"]}&". Date: "&'
                f'{cells["job_date"]}&". Revision: "&{cells["revision"]}')

    def book(self, job: Job) -> Book:
        """Return the workbook of a job.

        Raises:
            Faults: a name or value of the job that no input takes.
        """
        d = self.declared
        typed = [self._typed(part, job) for part in self.typing.parts]
        catalog = catalog_sheet(d.catalog.sheet, self.editable, self.places, job.catalog)
        for plan in (*typed, catalog):
            self._master_line(plan)
        start = StartSheet(
            d.front, self.checks, self.places,
            [(t.title, wanting_line(t, self.places)) for t in self.editable],
            f"{catalog.name}!$B${CATALOG_WANTING + 1}", self.typing, d.none_left)
        plans = self._in_order([*typed, catalog, *self.fixed], catalog.name)
        abouts = [(p.name, p.about or p.title) for p in plans]
        plans.insert(0, start.plan(abouts, job.about, d.version,
                                   job.created.date().isoformat()))
        names = input_names(self.typing, self.places)
        names |= result_names(self.calculation, self.places)
        names |= self.proof.names
        content = json.dumps([job.inputs, job.sections, job.catalog], sort_keys=True)
        return Book(plans, names, d.title, job.title, d.title, job.created, d.version,
                    hashlib.sha256(content.encode()).hexdigest())

    def _typed(self, part: Part, job: Job) -> SheetPlan:
        """Return the sheet of some inputs with what a job types in them."""
        if part.sections:
            return section_sheet(part, self.typing, self.places,
                                 [dict(s) for s in job.sections], self.section_sheet.name)
        return job_sheet(part, self.typing, self.places, dict(job.inputs))

    def _in_order(self, plans: list[SheetPlan], catalog: str) -> list[SheetPlan]:
        """Return the sheets from left to right: as declared, catalog and data after the inputs."""
        by_name = {plan.name: plan for plan in plans}
        names = [self.job_sheet.name, self.section_sheet.name, catalog, self.data.name,
                 *(s.name for s in self.sheets[2:])]
        first = [by_name[name] for name in names]
        return [*first, *(plan for plan in plans if plan.name not in names)]

    def input(self, key: str) -> Ask:
        """Return the input of a name."""
        return next(r for r in self.typing.typed if r.key == key)

    def job_inputs(self) -> list[Ask]:
        """Return what a job file may give for the whole job."""
        return [r for part in self.typing.of(False) for r in part.sheet.inputs]

    def section_inputs(self) -> list[Ask]:
        """Return what a job file may give for a section type."""
        return [r for part in self.typing.of(True) for r in part.sheet.inputs]


def _on(plan: SheetPlan) -> Page:
    page = Page.__new__(Page)
    page.plan = plan
    return page
