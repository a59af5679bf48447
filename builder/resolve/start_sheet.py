"""Start: what the workbook is, the answer in brief, what is wanting, cautions, the sheets."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from builder.language import Row

from .cells import Chart, ChartLine, SheetPlan
from .checks_sheet import NAME as CHECKS
from .checks_sheet import ORDER, ChecksSheet
from .frame import (
    COLUMN,
    DASH,
    FIRST,
    SECTION_COLUMNS,
    SECTIONS,
    WANTING,
    Page,
    letter,
)
from .input_sheets import STATE_COL, Typing
from .places import Places, Where, style_of

NAME = "Start"
WIDTHS = [40, 12, 12, 12, *[11] * len(SECTIONS), 12]
WIDE = 165
WORST_SHOWN = 1.5
"""The ratio at which a bar is cut, so that one bad check does not squash the others."""
GROUP_ROWS = 28
"""Rows that the chart of the groups covers."""


@dataclass(frozen=True)
class Front:
    """What the Start sheet says: purpose, steps, headline rows, cautions, limits of the book.

    ``whole`` are results of the whole job, each with what it is called here; ``packs`` what is
    printed for whom: a title and the sheets in order.
    """

    title: str
    purpose: tuple[str, ...]
    steps: tuple[str, ...]
    headline: tuple[Row, ...]
    whole: tuple[tuple[str, Row], ...]
    packs: tuple[tuple[str, tuple[str, ...]], ...]
    cautions: tuple[str, ...]
    beyond: tuple[str, ...]
    changes: tuple[str, ...]


class StartSheet:
    """Builds the first sheet; it may look to the right, nothing reads it."""

    def __init__(self, front: Front, checks: ChecksSheet, places: Places, catalog_states: list,
                 typing: Typing, none_left: Sequence[Row] = ()):
        self.none_left = none_left
        self.front, self.checks, self.places = front, checks, places
        self.catalog_states, self.typing = catalog_states, typing

    def plan(self, sheets: list[tuple[str, str]], about: str, version: str,
             date: str) -> SheetPlan:
        """Build the sheet; ``sheets`` lists name and purpose of every other sheet."""
        front = self.front
        page = Page(NAME, front.title, WIDTHS, about)
        page.text(1, 0, "Whole job", "master")
        page.formula(1, 1, self.checks.master(), "verdict")
        page.plan.verdicts.append((1, 1, 1, 1))
        y = self._headline(page, 4)
        y = self._failing(page, y + 1)
        y = self._groups(page, y + 1)
        y = self._wanting(page, y + 1)
        y = self._packs(page, y + 1)
        for title, lines, style in (
            ("What this workbook is", front.purpose, "text"),
            ("How to use it", front.steps, "text"),
            ("Cautions", tuple(f"CAUTION: {c}" for c in front.cautions), "caution.line"),
            ("What it does not cover", front.beyond, "text"),
        ):
            page.text(y + 1, 0, title, "block")
            y += 2
            for line in lines:
                y = page.lines(y, line, style, WIDE)
        y = self._key(page, y + 1)
        page.text(y + 1, 0, "Sheets", "block")
        y += 2
        for name, what in sheets:
            page.link(y, 0, f"{name}!A1", name)
            page.text(y, 1, what, "text")
            y += 1
        page.text(y + 1, 0, "Version", "block")
        page.text(y + 2, 0, f"Version {version}, {date}", "text")
        y += 3
        for line in front.changes:
            y = page.lines(y, line, "text", WIDE)
        return page.done(len(WIDTHS) - 1, frozen=(2, 0), repeat=(0, 1))

    def _headline(self, page: Page, y: int) -> int:
        page.text(y - 1, 0, "In brief", "block")
        page.text(y, 0, "Section type", "head")
        for x, name in ((1, "Symbol"), (2, "Unit")):
            page.text(y, x, name, "head.c")
        page.put(y, 3, "blank", None, "head")
        for k, name in enumerate(SECTIONS):
            page.text(y, FIRST + k, name, "head.n")
        where = Where(self.places, NAME)
        for row in self.front.headline:
            y += 1
            page.text(y, 0, row.label, "label")
            page.text(y, 1, row.symbol, "symbol")
            page.text(y, 2, row.unit if row.unit != "text" else "", "unit")
            page.across(y, SECTION_COLUMNS, where.row(row), style_of(row))
        for label, row in self.front.whole:
            y += 1
            page.text(y, 0, label, "label")
            page.text(y, 2, row.unit if row.unit != "text" else "", "unit")
            page.formula(y, FIRST, where.row(row), style_of(row))
        return y + 1

    def _failing(self, page: Page, y: int) -> int:
        page.text(y, 0, "What does not pass, the first three", "block")
        page.heads(y + 1, ["Check", "Type"])
        page.text(y + 1, 2, "What would mend it", "head.one")
        for x in range(3, len(WIDTHS)):
            page.put(y + 1, x, "blank", None, "head")
        for number in (1, 2, 3):
            name, where, cure = self.checks.failing(number)
            page.formula(y + 1 + number, 0, name, "label")
            page.formula(y + 1 + number, 1, where, "text.c")
            page.formula(y + 1 + number, 2, cure, "text")
        return y + 5

    def _packs(self, page: Page, y: int) -> int:
        page.text(y, 0, "What to print, and for whom", "block")
        for title, sheets in self.front.packs:
            y += 1
            page.text(y, 0, title, "label")
            page.text(y, 1, ", ".join(sheets), "text")
        return y + 1

    def _groups(self, page: Page, y: int) -> int:
        page.text(y, 0, "Checks by group", "block")
        page.heads(y + 1, ["Group", "Verdict", "Worst ratio", "Go to"])
        for k, word in enumerate(ORDER):
            page.text(y + 1, FIRST + k, word, "head.n")
        page.text(y + 1, FIRST + len(ORDER), "Worst: 1 to 4", "head.n")
        y += 2
        first = y
        for group, (top, last) in self.checks.rows.items():
            self._group(page, y, group, top, last)
            y += 1
        page.plan.verdicts.append((first, 1, y - 1, 1))
        rows = f"{first + 1}:${{}}${y}"
        page.plan.charts.append(Chart(
            y + 1, 0, GROUP_ROWS, "bars", "Worst ratio of each group: 1.00 is the limit",
            "Value against limit", "",
            (ChartLine("Worst ratio", f"{NAME}!$A${rows.format('A')}",
                       f"{NAME}!$C${rows.format('C')}"),),
            "One bar a group of checks: the worst ratio of value to limit; above 1 does not "
            "pass. Longer bars are cut at 1.5.", WORST_SHOWN))
        page.plan.page_breaks.append(y + 1)
        return y + 1 + GROUP_ROWS

    def _group(self, page: Page, y: int, group: str, top: int, last: int) -> None:
        area = f"{CHECKS}!$E${top + 1}:$J${last + 1}"
        words = f"{CHECKS}!$E${WANTING + 1}:$H${WANTING + 1}"
        cols = [letter(FIRST + k) for k in range(len(ORDER) + 1)]
        page.text(y, 0, group, "label")
        counts = "+".join(f"{c}{y + 1}" for c in cols[:-1])
        rank = f"{cols[-1]}{y + 1}"
        page.formula(y, 1, f'IF({counts}=0,"not used",INDEX({words},1,{rank}))', "verdict")
        ratios = f"{CHECKS}!$C${top + 1}:$C${last + 1}"
        page.formula(y, 2, f"IF({counts}=0,\"{DASH}\",MAX({ratios}))", "num.2")
        for k in range(len(ORDER)):
            word = f"{CHECKS}!{letter(FIRST + k)}${WANTING + 1}"
            page.formula(y, FIRST + k, f"COUNTIF({area},{word})", "num.0")
        a, b, c = (f"{col}{y + 1}" for col in cols[:3])
        page.formula(y, FIRST + len(ORDER), f"1+({a}=0)*(1+({b}=0)*(1+({c}=0)))", "num.0")
        page.link(y, 3, f"{CHECKS}!A{top}", "Checks")

    def _wanting(self, page: Page, y: int) -> int:
        page.text(y, 0, "What is still wanting", "block")
        for part in self.typing.of(False):
            y += 1
            states, labels = part.states(f"${letter(STATE_COL)}$"), part.states("$A$")
            page.text(y, 0, f"{part.sheet.name}: first input wanted", "label")
            page.formula(y, 1, f"IF(COUNTIF({states},0)>0,INDEX({labels},MATCH(0,{states},0)),"
                               f'"{DASH}")', "text")
        for part in self.typing.of(True):
            y += 1
            page.text(y, 0, f"{part.sheet.name}: first input wanted", "label")
            page.across(y, SECTION_COLUMNS, f"{part.sheet.name}!{COLUMN}${WANTING + 1}", "wrap")
        for name, states in self.typing.ledgers.items():
            y += 1
            page.text(y, 0, f"{name.split()[0]}: prices that are not usable", "label")
            page.formula(y, 1, f"COUNTIF({states},0)", "num.0")
        for row in self.none_left:
            y += 1
            page.text(y, 0, f"{row.sheet.name}: {row.label.partition(':')[0]}", "label")
            page.formula(y, 1, Where(self.places, NAME).row(row), "num.0")
        y += 1
        page.text(y, 0, "Catalog lines that are not usable", "label")
        counts = "+".join(f"COUNTIF({r},0)" for r in self.catalog_states)
        page.formula(y, 1, counts, "num.0")
        return y + 1

    @staticmethod
    def _key(page: Page, y: int) -> int:
        page.text(y, 0, "Key", "block")
        for k, (word, what) in enumerate((
            ("OK", "passes, with something in hand"),
            ("LOOK", "passes closely, or breaks a rule of good practice: read the cure"),
            ("NOT OK", "does not pass"),
            ("NEEDS INPUT", "something it rests on is missing or not allowed"),
            ("not used", "the section column is empty"),
        ), start=1):
            page.text(y + k, 0, word, "verdict")
            page.text(y + k, 1, what, "text")
        page.plan.verdicts.append((y + 1, 0, y + 5, 0))
        page.text(y + 6, 0, "Framed cells on Inputs, Sections and Catalog are yours to fill in; "
                            "all others are locked, without a password.", "text")
        return y + 7

