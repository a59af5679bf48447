"""Calculation sheets: one row a quantity, its formula in symbols, its value in each section.

A section sheet has six value columns; each carries a state (0 not used, 1 needs input, 2 ready)
and every formula waits for it.  A ledger sheet has one line a thing and a column a quantity; it
waits until no section type in use is unfinished, since a sum passes over a dash in silence.
"""

from __future__ import annotations

import textwrap

from builder.language import Ask, Fault, Row, Sheet, Verdict
from builder.language.cells import cell_formula
from builder.language.rows import Block, LedgerLine, Note
from builder.language.texts import symbols
from builder.language.units import TEXT

from .cells import SheetPlan
from .data_sheets import DataLayout, state_range
from .frame import (
    COLUMN,
    DASH,
    FIRST,
    HEAD,
    SECTION_COLUMNS,
    SECTION_LETTERS,
    SECTIONS,
    SOURCE,
    STATE,
    TOP,
    WANTING,
    WIDTHS,
    Page,
    letter,
)
from .graph import Graph, needs_of
from .input_sheets import STATE_COL, Typing
from .places import Places, Where, style_of

WRAP_NOTE = 165


def _notes(note: Note) -> list[str]:
    return textwrap.wrap(note.text, WRAP_NOTE)


def place_sheet(sheet: Sheet, places: Places) -> None:
    """Give every row of a calculation sheet its place."""
    y = TOP
    for item in sheet.items:
        if isinstance(item, Note):
            y += len(_notes(item))
            continue
        if isinstance(item, LedgerLine):
            for name, row in item.rows.items():
                places.rows[row] = (sheet.name, y, ledger_column(sheet, name))
        elif isinstance(item, Row):
            places.rows[item] = (sheet.name, y, FIRST)
            if sheet.scope == "section":
                places.sections.add(item)
        y += 1


class Maker:
    """Builds the calculation sheets of one workbook."""

    def __init__(self, places: Places, typing: Typing, data: DataLayout, graph: Graph,
                 inputs: str, sections: str, editable: set[str]):
        self.places, self.typing, self.data, self.graph = places, typing, data, graph
        self.inputs, self.sections, self.editable = inputs, sections, editable
        self.faults: list[str] = []

    def _written(self, row: Row, where: Where) -> str:
        """Return a row's formula; what is wrong with it is noted in ``faults``."""
        try:
            return cell_formula(row.expr, where)
        except Fault as fault:
            self.faults.append(f"{row.where}: {fault}")
            return "0"

    def section_sheet(self, sheet: Sheet) -> SheetPlan:
        """Build a sheet with six section columns."""
        page = Page(sheet.name, sheet.title, WIDTHS, sheet.about)
        self._head(page, sheet)
        self._items(page, sheet)
        return page.done(SOURCE)

    def _head(self, page: Page, sheet: Sheet) -> None:
        page.text(WANTING, 0, "Inputs wanting: whole job (D), section (A to F)", "label")
        page.text(STATE, 0, "State: 0 not used, 1 needs input, 2 ready", "label")
        page.heads(HEAD, ["Item"])
        for x, name in ((1, "Symbol"), (3, "Unit")):
            page.text(HEAD, x, name, "head.c")
        page.text(HEAD, 2, "Formula", "head")
        for k, name in enumerate(SECTIONS):
            page.text(HEAD, FIRST + k, name, "head.c")
        page.text(HEAD, SOURCE, "Source", "head.source")
        job, section = self._wanting(sheet)
        page.formula(WANTING, FIRST - 1, job, "state")
        page.across(WANTING, SECTION_COLUMNS, f"$D${WANTING + 1}+{section}", "state")
        page.across(STATE, SECTION_COLUMNS, f"{self.sections}!{COLUMN}${STATE + 1}*"
                                            f"(1+({COLUMN}${WANTING + 1}=0))", "state")

    def _wanting(self, sheet: Sheet) -> tuple[str, str]:
        """Return the counts of wanting inputs behind a sheet: the job's, and a section's."""
        marks, section_marks = self.data.marks(sheet)
        first, col = self.typing.job_first, letter(STATE_COL)
        states = f"{self.inputs}!${col}${first + 1}:${col}${first + len(self.typing.job_lines)}"
        job = f"SUMPRODUCT({marks}*({states}=0))"
        behind = self.graph.feeds(sheet)
        for table in self.graph.tables():
            if table in behind and table.name in self.editable:
                job += f"+COUNTIF({state_range(table, self.places)},0)"
        low = self.typing.state_first + 1
        high = self.typing.state_first + len(self.typing.section_lines)
        own = f"SUMPRODUCT({section_marks}*({self.sections}!{COLUMN}${low}:{COLUMN}${high}=0))"
        if sheet.scope == "section" and self.graph.totals(sheet):
            # A sum over sections passes over the dashes of an unfinished one in silence.
            job += "".join(f"+{self.sections}!${col}${STATE + 1}*{own.replace(COLUMN, '$' + col)}"
                           for col in SECTION_LETTERS)
        return job, own

    def _items(self, page: Page, sheet: Sheet) -> None:
        where = Where(self.places, sheet.name)
        y = TOP
        for item in sheet.items:
            if isinstance(item, Block):
                page.text(y, 0, item.title, "block")
            elif isinstance(item, Note):
                for line in _notes(item):
                    page.text(y, 0, ("CAUTION: " if item.caution else "") + line,
                              "caution.line" if item.caution else "subtitle")
                    y += 1
                continue
            else:
                self._row(page, y, item, where)
            y += 1

    def _row(self, page: Page, y: int, row: Row, where: Where) -> None:
        page.text(y, 0, row.label, "label")
        page.text(y, 1, row.symbol if not hasattr(row, "table") else "", "symbol")
        page.text(y, 3, "" if row.unit == TEXT else row.unit, "unit")
        page.text(y, SOURCE, row.source, "source")
        if isinstance(row, Verdict):
            text, style = self.verdict_formula(row, where), "verdict"
            page.plan.verdicts.append((y, FIRST, y, SOURCE - 1))
        else:
            page.text(y, 2, symbols(row.expr), "formula")
            text, style = self._written(row, where), style_of(row)
            text = f'IF({COLUMN}${STATE + 1}=2,{text},"{DASH}")'
        page.across(y, SECTION_COLUMNS, text, style)

    def verdict_formula(self, row: Verdict, where: Where) -> str:
        """Return the formula of a verdict's word, from state and ratio alone."""
        state, ratio = f"{COLUMN}${STATE + 1}", where.row(row.ratio)
        over = f"({ratio}>1.000000001)"
        if row.worst != "LOOK":
            over += f"+({ratio}>{where.row(row.look)})"
        return f"INDEX({self.data.words_range()},1+{state}+({state}=2)*({over}))"

    def ledger_sheet(self, sheet: Sheet) -> SheetPlan:
        """Build a sheet of lines, each with its own quantities."""
        names = list(sheet.columns.values())
        page = Page(sheet.name, sheet.title,
                    [38, 38, *[12.5] * len(names), 10, 30], sheet.about)
        states = f"+SUM($D${WANTING + 1}:$I${WANTING + 1})"
        job, own = self._wanting(sheet)
        for x, col in enumerate(SECTION_LETTERS, start=3):
            page.formula(WANTING, x, f"{self.sections}!{col}${STATE + 1}*"
                                     f"{own.replace(COLUMN, col)}", "state")
        for other in self._section_sheets(sheet):
            states += f"+COUNTIF({other}!$E${STATE + 1}:$J${STATE + 1},1)"
        ready = f"COUNTIF({self.sections}!$E${STATE + 1}:$J${STATE + 1},1)"
        page.text(WANTING, 0, "Inputs wanting and types not ready; by section", "label")
        page.formula(WANTING, 2, job + states, "state")
        page.text(STATE, 0, "State: 0 nothing used, 1 needs input, 2 ready", "label")
        page.formula(STATE, 2, f"({ready}>0)*(1+($C${WANTING + 1}=0))", "state")
        page.heads(HEAD, ["Item", "Specification"])
        for x, name in enumerate(names, start=2):
            page.text(HEAD, x, name, "head.n")
        page.text(HEAD, 2 + len(names), "Unit", "head.c")
        page.text(HEAD, 3 + len(names), "Counted where", "head.source")
        where = Where(self.places, sheet.name, section=False)
        y = TOP
        for item in sheet.items:
            if isinstance(item, Block):
                page.text(y, 0, item.title, "block")
            elif isinstance(item, Note):
                for line in _notes(item):
                    page.text(y, 0, line, "caution.line" if item.caution else "subtitle")
                    y += 1
                continue
            else:
                self._line(page, y, sheet, item, where)
            y += 1
        return page.done(3 + len(names))

    def _line(self, page: Page, y: int, sheet: Sheet, item: LedgerLine, where: Where) -> None:
        page.text(y, 0, item.label, "label")
        self._spec(page, y, item, where)
        page.text(y, 2 + len(sheet.columns), item.unit, "unit")
        page.text(y, 3 + len(sheet.columns), item.source, "source")
        for name, row in item.rows.items():
            text = f'IF($C${STATE + 1}=2,{self._written(row, where)},"{DASH}")'
            page.formula(y, ledger_column(sheet, name), text,
                         style_of(row).replace("num.", "qty."))

    def _spec(self, page: Page, y: int, item: LedgerLine, where: Where) -> None:
        if isinstance(item.spec, str):
            page.text(y, 1, item.spec, "label")
        else:
            page.formula(y, 1, f'IF($C${STATE + 1}=2,{cell_formula(item.spec, where)},"{DASH}")',
                         "wrap")

    def _section_sheets(self, sheet: Sheet) -> list[str]:
        found: dict[str, None] = {}
        for row in sheet.rows:
            for need in needs_of(row):
                if need in self.places.sections and not isinstance(need, Ask):
                    found[need.sheet.name] = None
        return list(found)


def ledger_column(sheet: Sheet, name: str) -> int:
    """Return the column of a quantity on a ledger sheet."""
    return 2 + list(sheet.columns).index(name)


