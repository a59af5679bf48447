"""The input sheets: what is typed, whether it is usable, and the value that formulas read.

Every typed cell has two of its own: its state (1 usable, 0 not) and the value used (what was
typed, or the default where blank is allowed, or a dash).  Formulas read the value used only, so
no wrong entry can reach them.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from builder.language import Ask, Row, Sheet, Text, dependencies
from builder.language.cells import cell_formula
from builder.language.longest import longest_words
from builder.language.rows import Block, Note
from builder.language.units import TEXT

from .cells import InputRule, Place, SheetPlan
from .frame import (
    COLUMN,
    DASH,
    FIRST,
    HEAD,
    SECTION_COLUMNS,
    SECTIONS,
    SOURCE,
    STATE,
    TOP,
    WANTING,
    Page,
    letter,
)
from .places import Places, Where, style_of

TYPED, UNIT, LEAST, MOST, DEFAULT, STATE_COL, USED, BASIS = 2, 3, 4, 5, 6, 7, 8, 9
"""Columns of the job's inputs."""
JOB_WIDTHS = [42, 8, 24, 7, 9, 9, 14, 7, 24, 44]
SECTION_WIDTHS = [36, 8, 16, 7, *[12] * len(SECTIONS), 22, 8, 8, 12]
TELLING = 30
"""Letters of a label that is shown in a narrow column (our judgement)."""
TWO_LINES = 1.7
"""Letters a unit of width that two lines hold, as words break (our judgement)."""
S_LEAST, S_MOST, S_DEFAULT = SOURCE + 1, SOURCE + 2, SOURCE + 3


@dataclass(eq=False)
class Part:
    """One input sheet: what stands on it line by line, and where its blocks begin.

    A job's sheet has one block, a section sheet three: typed cells, states, values used; and
    the defaults that differ by section.
    """

    sheet: Sheet
    sections: bool
    lines: list
    state_first: int = TOP
    used_first: int = TOP
    defaults_first: int = 0
    defaults: dict[Row, int] = field(default_factory=dict)

    def states(self, col: str) -> str:
        """Return the range of the states in a column of the sheet."""
        low = self.state_first + 1
        return f"{self.sheet.name}!{col}{low}:{col}{self.state_first + len(self.lines)}"

    def longest_label(self) -> str:
        """Return the longest label of its inputs, or as much of it as tells it from others."""
        return max((row.label for row in self.lines if isinstance(row, Ask)), key=len)[:TELLING]


@dataclass
class Typing:
    """Where inputs are typed, and where their states stand.

    ``states`` holds the place of a row's state (of type A for a section row); ``ledgers`` the
    range of the states on every ledger sheet on which something may be typed.
    """

    typed: dict[Row, Place] = field(default_factory=dict)
    states: dict[Row, Place] = field(default_factory=dict)
    parts: list[Part] = field(default_factory=list)
    ledgers: dict[str, str] = field(default_factory=dict)

    def of(self, sections: bool) -> list[Part]:
        """Return the sheets of the job's inputs, or those of the sections'."""
        return [p for p in self.parts if p.sections == sections]

    def job_states(self) -> list[str]:
        """Return the ranges of all states that are not a section's."""
        col = f"${letter(STATE_COL)}$"
        return [*(p.states(col) for p in self.of(False)), *self.ledgers.values()]


def lines_of(sheet: Sheet) -> list:
    """Return what stands line by line in an input sheet's blocks: headings, notes, inputs."""
    return [item for item in sheet.items if isinstance(item, Block | Ask | Note)]


def place_inputs(sheets: list[Sheet], places: Places) -> Typing:
    """Give every input of the input sheets its typed cell, state and used value."""
    typing = Typing()
    for sheet in sheets:
        part = Part(sheet, sheet.scope not in ("job", "job inputs"), lines_of(sheet))
        typing.parts.append(part)
        if part.sections:
            _place_sections(part, typing, places)
            continue
        for y, item in enumerate(part.lines, start=TOP):
            if isinstance(item, Ask):
                typing.typed[item] = (sheet.name, y, TYPED)
                typing.states[item] = (sheet.name, y, STATE_COL)
                places.rows[item] = (sheet.name, y, USED)
    return typing


def _place_sections(part: Part, typing: Typing, places: Places) -> None:
    name, count = part.sheet.name, len(part.lines)
    part.state_first = TOP + count + 2
    varying = [r for r in part.lines if isinstance(r, Ask) and r.default is not None
               and any(d in places.sections or d.sheet is part.sheet
                       for d in dependencies(r.default))]
    part.defaults_first = part.state_first + count + 2
    part.defaults = {r: part.defaults_first + k for k, r in enumerate(varying)}
    part.used_first = part.defaults_first + len(varying) + 2
    for k, item in enumerate(part.lines):
        if isinstance(item, Ask):
            typing.typed[item] = (name, TOP + k, FIRST)
            typing.states[item] = (name, part.state_first + k, FIRST)
            places.rows[item] = (name, part.used_first + k, FIRST)
            places.sections.add(item)


def allowed_words(row: Ask) -> str:
    """Return what may be typed, in words."""
    if row.free:
        return f"up to {row.most:g} letters"
    if row.choices is not None:
        return "from the list"
    span = f"{row.least:.10g} to {row.most:.10g}"
    return f"{span}, whole" if row.whole else span


def _list_range(row: Ask, places: Places) -> str:
    return Where(places, "").column(row.choices, None)


def input_rule(row: Ask, places: Places, place: Place, cols: int = 1) -> InputRule:
    """Return the input rule of a typed cell, in the reader's words."""
    title = row.label if len(row.label) <= 32 else row.label[:31] + "…"
    unit = row.unit if row.unit and row.unit != TEXT else ""
    blank = row.free or row.optional or row.default is not None or cols > 1
    says = [f"{row.label}.", f"Allowed: {allowed_words(row)}" + (f" {unit}." if unit else ".")]
    if row.default is not None:
        says.append("Blank takes the default.")
    if row.source:
        says.append(f"Basis: {row.source}.")
    message = " ".join(says)
    error = f"{row.label}: allowed is {allowed_words(row)}" + (f" {unit}." if unit else ".")
    _, y, x = place
    if row.free:
        kind = "text"
    elif row.choices is not None:
        kind = "list"
    else:
        kind = "whole" if row.whole else "decimal"
    source = f"={_list_range(row, places)}" if kind == "list" else ""
    return InputRule(y, x, kind, title, message[:255], error[:224], row.least, row.most, source,
                     blank, cols=cols)


def _number_test(cell: str, low: str, high: str, whole: bool) -> str:
    test = f"({cell}>={low})*({cell}<={high})"
    return f"{test}*({cell}=INT({cell}))" if whole else test


def state_formula(row: Ask, cell: str, low: str, high: str, default: str, places: Places) -> str:
    """Return the formula of an input's state: 1 usable, 0 not."""
    if row.choices is not None:
        kind, test = "ISTEXT", f"SUMPRODUCT(({_list_range(row, places)}={cell})*1)"
        ready = f"ISTEXT({default})"
    else:
        kind, test = "ISNUMBER", _number_test(cell, low, high, row.whole)
        ready = f"ISNUMBER({default})"
    blank = "0" if row.default is None else f"ISBLANK({cell})*{ready}"
    if row.optional:
        blank = f"ISBLANK({cell})*1"
    return f"IF({kind}({cell}),{test},{blank})"


def used_formula(row: Ask, cell: str, state: str, default: str) -> str:
    """Return the formula of the value used."""
    if row.free:
        # An error value has no length and must not get any further.
        return f'IF(ISNUMBER(LEN({cell}))*(1-ISBLANK({cell})),{cell},"{DASH}")'
    if row.optional:
        return f'IF(ISNUMBER({cell})*({state}=1),{cell},"{DASH}")'
    value = cell if row.default is None else f"IF(ISBLANK({cell}),{default},{cell})"
    return f'IF({state}=1,{value},"{DASH}")'


def default_formula(row: Ask, where: Where, typing: Typing) -> str:
    """Return the formula of a default, a dash until the inputs behind it are usable."""
    text = cell_formula(row.default, where)
    states = []
    for need in dependencies(row.default):
        if need in typing.states:
            sheet, y, x = typing.states[need]
            col = COLUMN if need in where.places.sections else f"${letter(x)}"
            on = "" if sheet == where.sheet else f"{sheet}!"
            states.append(f"{on}{col}${y + 1}=1")
    return f'IF(AND({",".join(states)}),{text},"{DASH}")' if states else text


def job_sheet(part: Part, typing: Typing, places: Places, typed: dict) -> SheetPlan:
    """Build a sheet of the job's inputs: typed value, limits, default, state, value used."""
    sheet = part.sheet
    page = Page(sheet.name, sheet.title, JOB_WIDTHS, sheet.about, WANTING)
    page.heads(HEAD, ["Item", "Symbol", "Type here", "Unit", "Least", "Most", "Default if blank",
                      "State", "Value used", "Basis"])
    page.text(STATE, 0, "State 1 is usable, 0 is not; the sheets read the value used.",
              "subtitle")
    where = Where(places, sheet.name, section=False)
    for y, row in enumerate(part.lines, start=TOP):
        if not isinstance(row, Ask):
            _words_between(page, y, row)
            page.text(y, STATE_COL, DASH, "state")
            continue
        _job_line(page, y, row, where, typing, typed)
    plan = page.done(BASIS)
    return plan


def _words_between(page: Page, y: int, item: Block | Note) -> None:
    if isinstance(item, Block):
        page.text(y, 0, item.title, "block")
    else:
        page.text(y, 0, ("CAUTION: " if item.caution else "") + item.text,
                  "caution.line" if item.caution else "subtitle")


def typed_cell(page: Page, y: int, x: int, row: Ask, value) -> None:
    """Put the cell in which an input is typed, with what a job gives it."""
    if row.free:
        style = "input.text"
    else:
        style = "input.list" if row.choices is not None else f"input.{min(row.digits, 6)}"
    if value is None:
        page.put(y, x, "blank", None, style)
    else:
        page.put(y, x, "text" if isinstance(value, str) else "number", value, style)
    room_for(page, y, (x,), row)


def room_for(page: Page, y: int, cols: Iterable[int], row: Row) -> None:
    """Make room for a row's longest words; for free ones as two lines of the column hold."""
    for x in cols if row.unit == TEXT else ():
        words, free = longest_words(row), isinstance(row, Ask) and row.free
        page.longest(y, (x,), words[: int(TWO_LINES * page.plan.widths[x])] if free else words)


def _default_cell(page: Page, y: int, x: int, row: Ask, where: Where, typing: Typing) -> None:
    if isinstance(row.default, Text):
        page.text(y, x, row.default.value, "wrap")
    else:
        page.formula(y, x, default_formula(row, where, typing), style_of(row))


def _job_line(page: Page, y: int, row: Ask, where: Where, typing: Typing, typed: dict) -> None:
    page.text(y, 0, row.label, "label")
    page.text(y, 1, row.symbol, "symbol")
    typed_cell(page, y, TYPED, row, typed.get(row.key))
    page.plan.rules.append(input_rule(row, where.places, (page.plan.name, y, TYPED)))
    page.text(y, UNIT, "" if row.unit == TEXT else row.unit, "unit")
    page.text(y, BASIS, row.source, "source")
    cell, low, high, default, state = (
        f"{letter(c)}{y + 1}" for c in (TYPED, LEAST, MOST, DEFAULT, STATE_COL))
    if row.free:
        page.text(y, STATE_COL, DASH, "state")
        page.formula(y, USED, used_formula(row, cell, "", ""), "wrap")
        room_for(page, y, (USED,), row)
        return
    if row.choices is None:
        page.number(y, LEAST, row.least, "limit")
        page.number(y, MOST, row.most, "limit")
    if row.default is not None:
        _default_cell(page, y, DEFAULT, row, where, typing)
    page.formula(y, STATE_COL, state_formula(row, cell, low, high, default, where.places), "state")
    page.formula(y, USED, used_formula(row, cell, state, default), style_of(row))
    room_for(page, y, (USED,), row)


def section_sheet(part: Part, typing: Typing, places: Places, typed: list[dict],
                  types: str) -> SheetPlan:
    """Build a sheet of the section types: what is typed, then the states, then the values used.

    ``types`` is the name of the sheet that says which types are in use: the sheet itself, where
    a type is in use when anything is typed in its column, or another.
    """
    sheet = part.sheet
    page = Page(sheet.name, sheet.title, SECTION_WIDTHS, sheet.about)
    page.heads(HEAD, ["Item", "Symbol", "Allowed", "Unit"])
    for k, name in enumerate(SECTIONS):
        page.text(HEAD, FIRST + k, name, "head.c")
    page.text(HEAD, SOURCE, "Basis", "head.source")
    for x, name in ((S_LEAST, "Least"), (S_MOST, "Most"), (S_DEFAULT, "Default if blank")):
        page.text(HEAD, x, name, "head.n")
    count = len(part.lines)
    first, last = TOP + 1, TOP + count
    low, high = part.state_first + 1, part.state_first + count
    page.text(WANTING, 0, "First input wanted in the column", "label")
    page.text(STATE, 0, "Section type in use: 1, or 0 when the column is empty", "label")
    states = f"{COLUMN}{low}:{COLUMN}{high}"
    used = f"(COUNTA({COLUMN}{first}:{COLUMN}{last})>0)*1"
    if types != sheet.name:
        used = f"{types}!{COLUMN}${STATE + 1}"
    page.across(STATE, SECTION_COLUMNS, used, "state")
    page.across(WANTING, SECTION_COLUMNS,
                f"IF({COLUMN}{STATE + 1}*COUNTIF({states},0)>0,"
                f'INDEX($A${low}:$A${high},MATCH(0,{states},0)),"{DASH}")', "wrap")
    page.longest(WANTING, SECTION_COLUMNS, part.longest_label())
    page.text(part.state_first - 1, 0, "States: 1 is usable, 0 is not", "block")
    if part.defaults:
        page.text(part.defaults_first - 1, 0, "Defaults that differ by section", "block")
    page.text(part.used_first - 1, 0, "Values used, which all sheets read", "block")
    where = Where(places, sheet.name)
    for k, row in enumerate(part.lines):
        if not isinstance(row, Ask):
            _words_between(page, TOP + k, row)
            if isinstance(row, Block):
                for y in (part.state_first + k, part.used_first + k):
                    page.text(y, 0, row.title, "label")
            for x in range(FIRST, SOURCE):
                page.text(part.state_first + k, x, DASH, "state")
            continue
        _section_line(page, part, k, row, where, typing, typed)
    plan = page.done(SOURCE + 3)
    return plan


def _section_line(page: Page, part: Part, k: int, row: Ask, where: Where, typing: Typing,
                  typed: list[dict]) -> None:
    t, s, u = TOP + k, part.state_first + k, part.used_first + k
    for y in (t, s, u):
        page.text(y, 0, row.label, "label")
        page.text(y, 1, row.symbol, "symbol")
        page.text(y, 3, "" if row.unit == TEXT else row.unit, "unit")
    page.text(t, 2, allowed_words(row), "label")
    page.text(t, SOURCE, row.source, "source")
    page.plan.rules.append(
        input_rule(row, where.places, (page.plan.name, t, FIRST), cols=len(SECTIONS)))
    if row.choices is None and not row.free:
        page.number(t, S_LEAST, row.least, "limit")
        page.number(t, S_MOST, row.most, "limit")
    low, high = f"${letter(S_LEAST)}{t + 1}", f"${letter(S_MOST)}{t + 1}"
    default = _section_default(page, part, t, row, where, typing)
    for number, x in enumerate(SECTION_COLUMNS):
        value = typed[number].get(row.key) if number < len(typed) else None
        typed_cell(page, t, x, row, value)
        if row.free:
            page.text(s, x, DASH, "state")
    cell, state = f"{COLUMN}{t + 1}", f"{COLUMN}{s + 1}"
    if not row.free:
        page.across(s, SECTION_COLUMNS,
                    state_formula(row, cell, low, high, default or "0", where.places), "state")
    page.across(u, SECTION_COLUMNS, used_formula(row, cell, state, default), style_of(row))
    room_for(page, u, SECTION_COLUMNS, row)


def _section_default(page: Page, part: Part, t: int, row: Ask, where: Where,
                     typing: Typing) -> str:
    """Put the default, and return how a formula of the section column refers to it."""
    if row.default is None:
        return ""
    needs = [r for r in dependencies(row.default) if r in where.places.sections]
    if not needs:
        _default_cell(page, t, S_DEFAULT, row, where, typing)
        return f"${letter(S_DEFAULT)}${t + 1}"
    page.text(t, S_DEFAULT, "by purpose", "wrap")
    y = part.defaults[row]
    page.text(y, 0, row.label, "label")
    page.text(y, 3, row.unit, "unit")
    page.across(y, SECTION_COLUMNS, default_formula(row, where, typing), style_of(row))
    return f"{COLUMN}${y + 1}"

