"""Calculation sheets: one row a quantity, its formula in symbols, its value in each section.

A section sheet has six value columns; each carries a state (0 not used, 1 needs input, 2 ready)
and every formula waits for it.  A ledger sheet has one line a thing and a column a quantity; it
waits until no section type in use is unfinished, since a sum passes over a dash in silence.
"""

from __future__ import annotations

import textwrap

from builder.language import Ask, Calculated, Expr, Fault, Row, Series, Sheet, Verdict
from builder.language.cells import cell_formula
from builder.language.expressions import Picked
from builder.language.longest import longest_words
from builder.language.rows import (
    Block,
    Gate,
    Heads,
    LedgerLine,
    Note,
    PageBreak,
    PageLine,
    Picture,
    View,
)
from builder.language.texts import symbols
from builder.language.units import TEXT

from .cells import Chart, ChartLine, SheetPlan
from .data_sheets import DataLayout, state_range
from .drawing_sheet import (
    COLUMNS,
    DrawingMaker,
    place_drawing,
)
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
    TITLE,
    TOP,
    UNDER,
    WANTING,
    WIDTHS,
    Page,
    letter,
)
from .graph import Graph, met, needs_of
from .input_sheets import STATE_COL, Typing, input_rule, typed_cell
from .places import Places, Where, style_of

WRAP_NOTE = 165
JOB_WIDTHS = [56, 9, 62, 7, 16, 26]
JOB_STATE = f"$E${STATE + 1}"
PAGE_LAST = 4
"""Last column of a page of paper: box, words, value, unit, blank."""
PAGE_TOP = 4
PAGE_WIDTHS = {"page": [4, 66, 16, 7, 11], "large": [5, 62, 19, 7, 11]}
PAGE_NOTE = {"page": 105, "large": 82}
"""Letters of a note on one line across a page."""


def looks_of(sheet: Sheet) -> str:
    """Return the stem of the styles of a page of paper."""
    return "large" if sheet.large else "page"


def note_lines(sheet: Sheet, note: Note) -> list[str]:
    """Return a note as it stands on a sheet, line by line."""
    width = PAGE_NOTE[looks_of(sheet)] if sheet.scope == "page" else WRAP_NOTE
    return textwrap.wrap(("CAUTION: " if note.caution else "") + note.text, width)


def place_sheet(sheet: Sheet, places: Places) -> None:
    """Give every row of a calculation sheet its place."""
    if sheet.scope == "drawing":
        place_drawing(sheet, places)
        return
    for y, item in lines_with_rows(sheet):
        if isinstance(item, LedgerLine):
            _place_line(sheet, item, y, places)
        elif isinstance(item, PageLine):
            for x, row in ((1, item.words), (2, item.value)):
                if isinstance(row, Row) and row.sheet is sheet:
                    places.rows[row] = (sheet.name, y, x)
        elif isinstance(item, Row):
            places.rows[item] = (sheet.name, y, FIRST)
            if sheet.scope == "section":
                places.sections.add(item)


def _place_line(sheet: Sheet, item: LedgerLine, y: int, places: Places) -> None:
    for name, row in item.rows.items():
        used = f"{name}_used" if isinstance(row, Ask) else name
        places.rows[row] = (sheet.name, *ledger_spot(item, used, y))
    for x, row in enumerate((item.label, item.spec)):
        if row in item.words:
            places.rows[row] = (sheet.name, y, x)


def place_ledger_inputs(sheet: Sheet, typing: Typing) -> None:
    """Give what may be typed on a ledger sheet its typed cells and states."""
    lines = [(y, item) for y, item in lines_with_rows(sheet) if isinstance(item, LedgerLine)]
    asks = [(y, name, row) for y, item in lines for name, row in item.rows.items()
            if isinstance(row, Ask)]
    for y, name, row in asks:
        typing.typed[row] = (sheet.name, y, ledger_column(sheet, name))
        typing.states[row] = (sheet.name, y, ledger_column(sheet, f"{name}_state"))
    for name in dict.fromkeys(name for _, name, _ in asks):
        col = letter(ledger_column(sheet, f"{name}_state"))
        rows = [y + 1 for y, other, _ in asks if other == name]
        typing.ledgers[f"{sheet.name} {name}"] = (
            f"{sheet.name}!${col}${min(rows)}:${col}${max(rows)}")


def lines_with_rows(sheet: Sheet):
    """Yield (row on the sheet, item) of all that stands on a sheet."""
    y = PAGE_TOP if sheet.scope == "page" else TOP
    for item in sheet.items:
        yield y, item
        if isinstance(item, Note):
            y += len(note_lines(sheet, item))
        elif isinstance(item, Picture):
            y += item.lines
        elif not isinstance(item, PageBreak):
            y += 1
        if isinstance(item, LedgerLine) and item.heads and item is item.heads.lines[-1]:
            y += (item.heads.banks - 1) * item.heads.step


class Maker:
    """Builds the calculation sheets of one workbook."""

    def __init__(self, places: Places, typing: Typing, data: DataLayout, graph: Graph,
                 sections: str, editable: set[str], title_block: list[tuple[str, str]]):
        self.title_block = title_block
        self.places, self.typing, self.data, self.graph = places, typing, data, graph
        self.sections, self.editable = sections, editable
        self.faults: list[str] = []

    def sheet(self, sheet: Sheet) -> SheetPlan:
        """Build a calculation sheet of any scope."""
        make = {"section": self.section_sheet, "ledger": self.ledger_sheet,
                "job": self.job_sheet, "page": self.page_sheet,
                "drawing": self.drawing}[sheet.scope]
        return make(sheet)

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
        behind = self.graph.feeds(sheet)
        col = f"${letter(STATE_COL)}$"
        found = [f"SUMPRODUCT({marks}*({part.states(col)}=0))" for part in self.typing.of(False)
                 if (marks := self.data.marks(sheet, part))]
        for table in self.graph.tables():
            if table in behind and table.name in self.editable:
                found.append(f"COUNTIF({state_range(table, self.places)},0)")
        ledgers = {r.sheet.name for r in behind if isinstance(r, Ask)}
        found += [f"COUNTIF({states},0)" for name, states in self.typing.ledgers.items()
                  if name.split()[0] in ledgers]
        own = "+".join(
            f"SUMPRODUCT({marks}*({part.states(COLUMN)}=0))" for part in self.typing.of(True)
            if (marks := self.data.marks(sheet, part))) or "0"
        if sheet.scope == "section" and self.graph.totals(sheet):
            # A sum over sections passes over the dashes of an unfinished one in silence.
            found += [f"{self.sections}!${col}${STATE + 1}*({own.replace(COLUMN, '$' + col)})"
                      for col in SECTION_LETTERS]
        return "+".join(found) or "0", own

    def _items(self, page: Page, sheet: Sheet) -> None:
        where = Where(self.places, sheet.name, section=sheet.scope == "section")
        for y, item in lines_with_rows(sheet):
            if isinstance(item, Picture):
                page.plan.charts.append(self._chart(y, item, where))
            elif isinstance(item, PageBreak):
                page.plan.page_breaks.append(y)
            elif not self._words(page, y, item, sheet):
                self._row(page, y, item, where)

    def _chart(self, y: int, item: Picture, where: Where) -> Chart:
        """Return a chart over the cells of its series."""
        lines = []
        for curve in item.curves:
            along, up = (self._whole(series, where) for series in curve.series)
            if item.kind == "bars":
                along = along.replace(letter(FIRST), "A")
            lines.append(ChartLine(curve.name, along, up))
        return Chart(y, 0, item.lines, item.kind, item.title, item.along, item.up, tuple(lines),
                     item.about)

    def _whole(self, series: Series, where: Where) -> str:
        """Return the range of a series with its sheet."""
        try:
            text = where.series(series)
        except Fault as fault:
            self.faults.append(f"{where.sheet}: {fault}")
            return ""
        return text if "!" in text else f"{where.sheet}!{text}"

    def _words(self, page: Page, y: int, item, sheet: Sheet) -> bool:
        """Put a heading or a note; return whether it was one."""
        if isinstance(item, Block):
            page.text(y, 0, item.title, "block")
        elif isinstance(item, Note):
            style = f"{looks_of(sheet)}.note" if sheet.scope == "page" else "subtitle"
            for k, line in enumerate(note_lines(sheet, item)):
                page.text(y + k, 0, line, "caution.line" if item.caution else style)
        return isinstance(item, Block | Note)

    def _row(self, page: Page, y: int, row: Row, where: Where) -> None:
        page.text(y, 0, row.label, "label")
        page.text(y, 1, row.symbol if not hasattr(row, "table") else "", "symbol")
        page.text(y, 3, "" if row.unit == TEXT else row.unit, "unit")
        source = SOURCE if where.section else FIRST + 1
        page.text(y, source, row.source, "source")
        state = self._state_of(row, where.section)
        if isinstance(row, Gate):
            text, style = self._gate(row), "state"
        elif isinstance(row, Verdict):
            text, style = self.verdict_formula(row, where, state), "verdict"
            page.plan.verdicts.append((y, FIRST, y, SOURCE - 1))
        else:
            page.text(y, 2, symbols(row.expr), "formula")
            text, style = self._written(row, where), style_of(row)
            text = f'IF({state}=2,{text},"{DASH}")'
        cols = SECTION_COLUMNS if where.section else (FIRST,)
        if where.section:
            page.across(y, cols, text, style)
        else:
            page.formula(y, FIRST, text, style)
        if row.unit == TEXT and isinstance(row, Calculated):
            page.longest(y, cols, longest_words(row.expr))

    def _state_of(self, row: Row, section: bool) -> str:
        """Return the address of the state that a row waits for."""
        if row.gate is not None:
            return f"{COLUMN}${self.places.rows[row.gate][1] + 1}"
        return f"{COLUMN}${STATE + 1}" if section else JOB_STATE

    def _gate(self, row: Gate) -> str:
        """Return the formula of a gate: 0 nothing typed, 1 not ready, 2 all typed and ready."""
        places = [self.typing.typed[r] for r in row.readings]
        if any(b != (a[0], a[1] + 1, a[2]) for a, b in zip(places, places[1:], strict=False)):
            self.faults.append(f"{row.where}: its readings do not stand one below the other")
        typed = f"{places[0][0]}!{COLUMN}${places[0][1] + 1}:{COLUMN}${places[-1][1] + 1}"
        state = f"{COLUMN}${STATE + 1}"
        return (f"({state}>0)*(COUNTA({typed})>0)*"
                f"(1+(COUNTA({typed})={len(places)})*({state}=2))")

    def verdict_formula(self, row: Verdict, where: Where, state: str) -> str:
        """Return the formula of a verdict's word, from state and ratio alone."""
        ratio = where.row(row.ratio)
        over = f"1*({ratio}>1.000000001)"
        if row.worst != "LOOK":  # a broken limit counts 2, wherever LOOK begins
            over = f"MAX(2*({ratio}>1.000000001),1*({ratio}>{where.row(row.look)}+1E-9))"
        return f"INDEX({self.data.words_range()},1+{state}+IF({state}=2,{over},0))"

    def _state_cells(self, page: Page, sheet: Sheet, label: int, value: int, first: int) -> str:
        """Put the state of a sheet of the whole job; return the address of its state.

        It stands in the columns given: its label, its value, and the first of six columns of
        what each section still wants.
        """
        states = f"+SUM(${letter(first)}${WANTING + 1}:${letter(first + 5)}${WANTING + 1})"
        job, own = self._wanting(sheet)
        for x, col in enumerate(SECTION_LETTERS, start=first):
            page.formula(WANTING, x, f"{self.sections}!{col}${STATE + 1}*"
                                     f"({own.replace(COLUMN, col)})", "state")
        for other in self._section_sheets(sheet):
            states += f"+COUNTIF({other}!$E${STATE + 1}:$J${STATE + 1},1)"
        used = f"{self.sections}!$E${STATE + 1}:$J${STATE + 1}"
        # Beside paper the words stand on one line: a wrapped one would make the row taller.
        style = "label" if label == 0 else "subtitle"
        page.text(WANTING, label, "Inputs wanting and types not ready; by section", style)
        page.formula(WANTING, value, job + states, "state")
        page.text(STATE, label, "State: 0 nothing used, 1 needs input, 2 ready", style)
        wanting = f"${letter(value)}${WANTING + 1}"
        ready = f"1+({wanting}=0)"
        for number in self._picks(sheet):
            text = cell_formula(number, Where(self.places, sheet.name, section=False))
            ready = f"IF({wanting}=0,1+(INDEX({used},1,{text})>0),1)"
        page.formula(STATE, value, f"(COUNTIF({used},1)>0)*({ready})", "state")
        return f"${letter(value)}${STATE + 1}"

    def _picks(self, sheet: Sheet) -> list[Expr]:
        """Return the number of the section type that the rows of a sheet pick."""
        found: list[Expr] = []
        for row in sheet.rows:
            for part in met(row).across:
                if not isinstance(part, Picked):
                    continue
                number = part.number
                while isinstance(number, Calculated):
                    number = number.expr
                if not any(number is other for other in found):
                    found.append(number)
        if len({symbols(number) for number in found}) > 1:
            self.faults.append(f"{sheet.name}: its rows pick several section types")
        return found[:1]

    def job_sheet(self, sheet: Sheet) -> SheetPlan:
        """Build a sheet with one value column."""
        page = Page(sheet.name, sheet.title, JOB_WIDTHS, sheet.about)
        page.heads(HEAD, ["Item"])
        for x, name in ((1, "Symbol"), (3, "Unit")):
            page.text(HEAD, x, name, "head.c")
        page.text(HEAD, 2, "Formula", "head")
        page.text(HEAD, FIRST, "Value", "head.n")
        page.text(HEAD, FIRST + 1, "Source", "head.source")
        self._state_cells(page, sheet, 0, FIRST, FIRST + 3)
        self._items(page, sheet)
        return page.done(FIRST + 1)

    def drawing(self, sheet: Sheet) -> SheetPlan:
        """Build a drawing to scale."""
        page = Page(sheet.name, sheet.title, [], sheet.about, UNDER)
        state = self._state_cells(page, sheet, COLUMNS + 8, COLUMNS + 1, COLUMNS + 2)
        DrawingMaker(self.places, self._written).fill(page, sheet, state, self.title_block)
        plan = page.done(COLUMNS - 1, frozen=(TITLE + 2, 0), repeat=(TITLE, TOP - 1))
        figures = max(c.row + c.rows for c in plan.charts)
        plan.last = (figures - 1, COLUMNS - 1)
        plan.page_breaks = [v.top for v in sheet.items if isinstance(v, View) and v.new_page]
        return plan

    def page_sheet(self, sheet: Sheet) -> SheetPlan:
        """Build paper for people: its state stands beside what is printed."""
        looks = looks_of(sheet)
        page = Page(sheet.name, sheet.title, PAGE_WIDTHS[looks], "")
        if sheet.about:
            page.plan.about = sheet.about
            page.text(UNDER, 0, sheet.about, f"{looks}.note")
        state = self._state_cells(page, sheet, PAGE_LAST + 9, PAGE_LAST + 2, PAGE_LAST + 3)
        where = Where(self.places, sheet.name, section=False)
        for y, item in lines_with_rows(sheet):
            if isinstance(item, PageBreak):
                page.plan.page_breaks.append(y)
            elif isinstance(item, PageLine):
                self._page_line(page, y, item, where, state, looks)
            elif not self._words(page, y, item, sheet):
                self.faults.append(f"{sheet.name}: {item} is no line of a page")
        return page.done(PAGE_LAST, frozen=(TITLE + 2, 0), repeat=(TITLE, TITLE + 1),
                         landscape=False)

    def _page_line(self, page: Page, y: int, item: PageLine, where: Where, state: str,
                   looks: str) -> None:
        if item.tick:
            page.text(y, 0, "☐", f"{looks}.tick")
        style = f"{looks}.say" if item.wide else f"{looks}.label"
        self._text_cell(page, y, 1, item.words, where, state, style)
        if item.wide:
            return
        if item.value is not None:
            text = f'IF({state}=2,{self._written(item.value, where)},"{DASH}")'
            kind = "words" if item.value.unit == TEXT else min(item.value.digits, 6)
            page.formula(y, 2, text, f"{looks}.{kind}")
            if looks == "large" and kind == "words":
                page.longest(y, (2,), longest_words(item.value))
        page.text(y, 3, "" if item.unit == TEXT else item.unit, f"{looks}.unit")
        if item.blank:
            page.put(y, PAGE_LAST, "blank", None, f"{looks}.blank")
            if item.value is None:
                page.put(y, 2, "blank", None, f"{looks}.blank")
                page.put(y, 3, "blank", None, f"{looks}.blank")

    def _text_cell(self, page: Page, y: int, x: int, words, where: Where, state: str,
                   style: str) -> None:
        """Put words that stand, or live words that wait for a state."""
        if isinstance(words, str):
            page.text(y, x, words, style)
            return
        try:
            own = words.expr if words in where.places.rows and where.places.rows[words] == (
                where.sheet, y, x) else words
            text = cell_formula(own, where)
        except Fault as fault:
            self.faults.append(f"{words.where}: {fault}")
            return
        page.formula(y, x, f'IF({state}=2,{text},"{DASH}")', style)
        if not style.startswith("page."):  # in small type every line of a page is one line high
            page.longest(y, (x,), longest_words(own))

    def ledger_sheet(self, sheet: Sheet) -> SheetPlan:
        """Build a sheet of lines, each with its own quantities."""
        names = list(sheet.columns.values())[: sheet.beside]
        banks = sheet.beside < len(sheet.columns)
        label, words, narrow = sheet.widths
        page = Page(sheet.name, sheet.title,
                    [label, words, *[narrow] * len(names), 8, min(label, 30)], sheet.about)
        state = self._state_cells(page, sheet, 0, 2, 3)
        page.heads(HEAD, ["Item", "Specification"])
        for x, name in enumerate(names, start=2):
            # Banks have heads of their own.
            page.text(HEAD, x, f"Column {x - 1}" if banks else name, "head.n")
        page.text(HEAD, 2 + len(names), "Unit", "head.c")
        page.text(HEAD, 3 + len(names), "Counted where", "head.source")
        where = Where(self.places, sheet.name, section=False)
        for y, item in lines_with_rows(sheet):
            if isinstance(item, Heads):
                for name, title in item.names.items():
                    bank, x = sheet.bank(name)
                    page.text(y + bank * item.step, 2 + x, title, "head.n")
            elif isinstance(item, LedgerLine):
                self._line(page, y, sheet, item, where, state)
            elif not self._words(page, y, item, sheet):
                self.faults.append(f"{sheet.name}: {item} is no line of a ledger")
        return page.done(3 + len(names), whole_blocks=banks)

    def _line(self, page: Page, y: int, sheet: Sheet, item: LedgerLine, where: Where,
              state: str) -> None:
        spots = {name: ledger_spot(item, name, y) for name in item.rows}
        for at in sorted({y for y, _ in spots.values()} or {y}):
            self._text_cell(page, at, 0, item.label, where, state, "label")
            self._text_cell(page, at, 1, item.spec, where, state, "wrap")
            page.text(at, 2 + sheet.beside, item.unit, "unit")
            page.text(at, 3 + sheet.beside, item.source, "source")
        for name, row in item.rows.items():
            if isinstance(row, Ask):
                self._typed(page, y, sheet, name, row, where)
                continue
            text = f'IF({state}=2,{self._written(row, where)},"{DASH}")'
            page.formula(*spots[name], text, style_of(row).replace("num.", "qty."))
            if row.unit == TEXT:
                page.longest(spots[name][0], spots[name][1:], longest_words(row.expr))

    def _typed(self, page: Page, y: int, sheet: Sheet, name: str, row: Ask, where: Where) -> None:
        """Put a cell to type in, its state and the value used."""
        x, at, used = (ledger_column(sheet, n) for n in (name, f"{name}_state", f"{name}_used"))
        typed_cell(page, y, x, row, None)
        page.plan.rules.append(input_rule(row, self.places, (sheet.name, y, x)))
        cell = f"{letter(x)}{y + 1}"
        test = f"({cell}>={row.least:g})*({cell}<={row.most:g})"
        page.formula(y, at, f"IF(ISNUMBER({cell}),{test},ISBLANK({cell})*1)", "state")
        usual = cell_formula(row.default, where)
        page.formula(y, used, f'IF($C${STATE + 1}=2,IF(ISBLANK({cell}),{usual},{cell}),"{DASH}")',
                     style_of(row))

    def _section_sheets(self, sheet: Sheet) -> list[str]:
        found: dict[str, None] = {}
        for row in sheet.rows:
            for need in needs_of(row):
                if need in self.places.sections and not isinstance(need, Ask):
                    found[need.sheet.name] = None
        return list(found)


def ledger_column(sheet: Sheet, name: str) -> int:
    """Return the column of a quantity on a ledger sheet."""
    return 2 + sheet.bank(name)[1]


def ledger_spot(item: LedgerLine, name: str, y: int) -> tuple[int, int]:
    """Return row and column of a quantity of a line that stands in row ``y`` of its first bank."""
    bank, x = item.sheet.bank(name)
    return y + (bank * item.heads.step if bank else 0), 2 + x


