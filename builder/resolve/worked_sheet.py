"""Worked: one section type, every row with the numbers put in, as a calculation to hand in.

The result is the cell of the sheet on which the row is worked out.  Formula and numbers come
from the same expression as that cell's formula; the numbers are the results further up on this
page, so that each line can be multiplied out by hand.
"""

from __future__ import annotations

from builder.language import Ask, Calculated, Fault, Find, Row, Sheet, Verdict
from builder.language.longest import longest_numbers
from builder.language.rows import Block, Gate, Note
from builder.language.texts import numbers, symbols
from builder.language.units import TEXT

from .calculation_sheets import lines_with_rows
from .cells import SheetPlan
from .frame import DASH, HEAD, SECTION_LETTERS, STATE, TOP, WANTING, Page, letter
from .input_sheets import Part, room_for
from .places import Places, Where, style_of

NAME = "Worked"
FORMULA, NUMBERS, RESULT, UNIT, SOURCE = 2, 3, 4, 5, 6
WIDTHS = [40, 17, 54, 48, 12, 8, 20]
CHOSEN = f"${letter(RESULT)}${STATE + 1}"
"""Where the number of the section type stands; 0 where none is chosen."""
FOLLOWS = "r to r_look “OK”, to 1 “LOOK”, above “NOT OK”"
ADVISES = "r to 1 “OK”, above “LOOK”"


class WorkedSheet:
    """The worked page of the section type that an input names."""

    def __init__(self, chosen: Ask, typed: list[Part], sheets: list[Sheet], places: Places):
        self.chosen, self.typed, self.places = chosen, typed, places
        self.sheets = [s for s in sheets if s.scope == "section"]
        self.faults: list[str] = []
        self.moved: dict[Row, str] = {}
        self.where = Where(places, NAME, moved=self.moved)
        self.lines: dict[Row, int] = {}
        """The line of each row that is worked out here, counted from 0."""

    def plan(self) -> SheetPlan:
        """Build the sheet."""
        page = Page(NAME, "Worked page", WIDTHS,
                    "For the type chosen on Inputs, block Worked page. Each row of the section "
                    "sheets: in symbols, with the numbers put in, and what they come to.")
        self._head(page)
        y = TOP
        for part in self.typed:
            y = self._typed(page, y, part)
        for sheet in self.sheets:
            y = self._sheet(page, y, sheet)
        return page.done(SOURCE)

    def _head(self, page: Page) -> None:
        letters = self.where.column(self.chosen.choices, None)
        choice = self.where.row(self.chosen)
        page.text(WANTING, 0, "Section type on this page", "label")
        page.formula(WANTING, RESULT, choice, "text.c")
        page.text(STATE, 0, "Its number; 0 where none is chosen", "label")
        page.formula(STATE, RESULT, f"IF(SUMPRODUCT(({letters}={choice})*1)=1,"
                                    f"MATCH({choice},{letters},0),0)", "state")
        page.heads(HEAD, ["Item"])
        for x, name, style in ((1, "Symbol", "head.c"), (FORMULA, "Formula", "head"),
                               (NUMBERS, "With the numbers put in", "head"),
                               (RESULT, "Result", "head.n"), (UNIT, "Unit", "head.c"),
                               (SOURCE, "Source", "head.source")):
            page.text(HEAD, x, name, style)

    def _typed(self, page: Page, y: int, part: Part) -> int:
        """Put what was typed for the type, or its default; return the next line."""
        page.text(y, 0, f"{part.sheet.name}: values used", "master")
        y += 1
        for item in part.lines:
            if isinstance(item, Ask):
                self._label(page, y, item)
                for x in (FORMULA, NUMBERS):  # the line leads from the label to the value
                    page.put(y, x, "blank", None, "formula")
                page.text(y, SOURCE, item.source, "source")
                y = self._result(page, y, item)
        return y

    def _sheet(self, page: Page, y: int, sheet: Sheet) -> int:
        """Put the rows of a sheet; return the next line."""
        page.text(y, 0, f"{sheet.name}: {sheet.title}", "master")
        y += 1
        for _, item in lines_with_rows(sheet):
            if isinstance(item, Block):
                page.text(y, 0, item.title, "block")
                y += 1
            elif isinstance(item, Note):
                y = page.lines(y, ("CAUTION: " if item.caution else "") + item.text,
                               "caution.line" if item.caution else "subtitle")
            elif isinstance(item, Row):
                self._label(page, y, item)
                page.text(y, SOURCE, item.source, "source")
                self._formula(page, y, item)
                y = self._result(page, y, item)
        return y

    @staticmethod
    def _label(page: Page, y: int, row: Row) -> None:
        page.text(y, 0, row.label, "label")
        page.text(y, 1, "" if isinstance(row, Find) else row.symbol, "symbol")
        page.text(y, UNIT, "" if row.unit == TEXT else row.unit, "unit")

    def _formula(self, page: Page, y: int, row: Row) -> None:
        """Put the formula in symbols, and with the numbers where there is more than one."""
        if isinstance(row, Verdict):
            page.text(y, FORMULA, ADVISES if row.worst == "LOOK" else FOLLOWS, "formula")
        elif isinstance(row, Calculated | Find):
            page.text(y, FORMULA, symbols(row.expr), "formula")
            try:
                text = numbers(row.expr, self.where, fine=True)
            except Fault as fault:
                self.faults.append(f"{NAME}, {row.where}: {fault}")
                return
            result = f"${letter(RESULT)}${y + 1}"
            page.formula(y, NUMBERS, f'IF({result}="{DASH}","{DASH}",{text})', "formula")
            page.longest(y, (NUMBERS,), longest_numbers(row.expr))
        elif not isinstance(row, Gate):
            self.faults.append(f"{NAME}, {row.where}: no line is known for a {type(row).__name__}")

    def _result(self, page: Page, y: int, row: Row) -> int:
        sheet, line, _ = self.places.rows[row]
        across = f"{sheet}!${SECTION_LETTERS[0]}${line + 1}:${SECTION_LETTERS[-1]}${line + 1}"
        style = "verdict" if isinstance(row, Verdict) else style_of(row)
        page.formula(y, RESULT, f'IF({CHOSEN}>0,INDEX({across},1,{CHOSEN}),"{DASH}")', style)
        if row.unit == TEXT and not isinstance(row, Verdict):
            room_for(page, y, (RESULT,), row)
        if isinstance(row, Verdict):
            page.plan.verdicts.append((y, RESULT, y, RESULT))
        self.moved[row] = f"${letter(RESULT)}${y + 1}"
        self.lines[row] = y
        return y + 1
