"""The whole workbook: declared once, proved once, filled with the inputs of one job after another.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Sequence
from dataclasses import dataclass
from types import ModuleType

from builder.jobs import Job
from builder.language import Ask, Family, Faults, Sheet, Table, adopt, nameless

from .calculation_sheets import Maker, place_sheet
from .cells import Book, SheetPlan
from .checks_sheet import ChecksSheet
from .closing_sheets import free_sheet, input_names, names_sheet, result_names
from .data_sheets import (
    DataLayout,
    catalog_sheet,
    place_catalog,
    sources_sheet,
    state_range,
)
from .frame import DASH, FIRST, MASTER, TITLE, Page, letter
from .graph import Graph, faults_of
from .input_sheets import STATE_COL, job_sheet, place_inputs, section_sheet
from .places import Places
from .proof_sheet import ProofSheet
from .start_sheet import Front, StartSheet


@dataclass(frozen=True)
class Declared:
    """The trade as it is declared: the modules of the sheets, the catalog, the proofs.

    ``further`` are modules that declare more rows on a sheet of another module.
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
        self.calculation = [adopt(m) for m in d.calculation]
        self.sheets: list[Sheet] = [self.job_sheet, self.section_sheet, *self.calculation]
        faults = faults_of(self.sheets) + [f for s in self.sheets for f in nameless(s)]
        if faults:
            raise Faults(faults)
        self.places = Places()
        self.graph = Graph(self.sheets)
        self.typing = place_inputs(self.job_sheet, self.section_sheet, self.places)
        self.editable = list(d.catalog.tables)
        place_catalog(self.editable, self.places, d.catalog.sheet.name)
        self.data = DataLayout(self.graph, self.calculation, self.typing, self.places,
                               self.editable, "Data")
        for sheet in self.calculation:
            place_sheet(sheet, self.places)
        self.fixed = self._fixed()

    def _fixed(self) -> list[SheetPlan]:
        """Build the sheets that are the same for every job."""
        d = self.declared
        maker = Maker(self.places, self.typing, self.data, self.graph, self.job_sheet.name,
                      self.section_sheet.name, {t.name for t in self.editable})
        plans = [self.data.plan("Published data and constants",
                                "Locked. Every value carries source, clause and status.")]
        for sheet in self.calculation:
            make = maker.ledger_sheet if sheet.scope == "ledger" else maker.section_sheet
            plans.append(make(sheet))
        if maker.faults:
            raise Faults(maker.faults)
        col = letter(STATE_COL)
        first = self.typing.job_first + 1
        last = self.typing.job_first + len(self.typing.job_lines)
        name = self.job_sheet.name
        states = f"{name}!${col}${first}:${col}${last}"
        self.first_wanted = (f"IF(COUNTIF({states},0)>0,INDEX({name}!$A${first}:$A${last},"
                             f"MATCH(0,{states},0)),\"{DASH}\")")
        self.checks = ChecksSheet(self.calculation, self.places, name, self.section_sheet.name,
                                  states, self.data.weights_range())
        self.proof = ProofSheet(list(d.families), self.places)
        plans += [self.checks.plan(), self.proof.plan()]
        if self.proof.faults:
            raise Faults(self.proof.faults)
        plans += [names_sheet(self.typing, self.places, self.sheets, self.proof.names),
                  free_sheet(), sources_sheet(d.sources, "Sources")]
        for plan in plans:
            self._master_line(plan)
        return plans

    def _master_line(self, plan: SheetPlan) -> None:
        """Put the whole job's verdict, and whose job it is, on top of a sheet."""
        page = _on(plan)
        if plan.name in ("Checks", "Start"):
            return
        page.text(MASTER, 0, "Whole job", "master")
        page.formula(MASTER, 1, self.checks.master(), "verdict")
        plan.verdicts.append((MASTER, 1, MASTER, 1))
        job, people = self._job_words()
        page.formula(TITLE, FIRST, job, "text")
        page.formula(MASTER, 2, people, "people")

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
        front = [
            job_sheet(self.job_sheet, self.typing, self.places, dict(job.inputs)),
            section_sheet(self.section_sheet, self.typing, self.places,
                          [dict(s) for s in job.sections], self.job_sheet),
            catalog_sheet(d.catalog.sheet, self.editable, self.places, job.catalog),
        ]
        for plan in front:
            self._master_line(plan)
        start = StartSheet(
            d.front, self.checks, self.places,
            [state_range(t, self.places) for t in self.editable],
            self.job_sheet.name, self.section_sheet.name, self.first_wanted)
        plans = [*front, *self.fixed]
        abouts = [(p.name, self._about(p)) for p in plans]
        plans.insert(0, start.plan(abouts, job.about, d.version,
                                   job.created.date().isoformat()))
        names = input_names(self.typing, self.places)
        names |= result_names(self.calculation, self.places)
        names |= self.proof.names
        content = json.dumps([job.inputs, job.sections, job.catalog], sort_keys=True)
        return Book(plans, names, d.title, job.title, d.title, job.created, d.version,
                    hashlib.sha256(content.encode()).hexdigest())

    @staticmethod
    def _about(plan: SheetPlan) -> str:
        return next((str(c.content) for c in plan.cells
                     if c.row in (2, 5) and c.col == 0 and c.kind == "text"), plan.title)

    def input(self, key: str) -> Ask:
        """Return the input of a name."""
        return next(r for r in [*self.job_sheet.inputs, *self.section_sheet.inputs]
                    if r.key == key)


def _on(plan: SheetPlan) -> Page:
    page = Page.__new__(Page)
    page.plan = plan
    return page
