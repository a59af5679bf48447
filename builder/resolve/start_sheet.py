"""Start: what the workbook is, the answer in brief, what is wanting, cautions, the sheets."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from builder.language import Row

from .cells import Chart, ChartLine, SheetPlan
from .checks_sheet import AT, CURE, ORDER, SHOWN, WORST, ChecksSheet
from .checks_sheet import NAME as CHECKS
from .frame import (
    COLUMN,
    DASH,
    FIRST,
    SECTION_COLUMNS,
    SECTIONS,
    UNDER,
    WANTING,
    Page,
    letter,
)
from .input_sheets import STATE_COL, Typing
from .places import Places, Where, style_of

NAME = "Start"
WIDTHS = [40, 13, 12, 9, *[11] * len(SECTIONS), 12]
"""The first two columns are as wide as a phone held upright shows: the answers stand in them."""
WIDE = 165
RANK, LINE, CUT = (FIRST + len(ORDER) + k for k in range(3))
"""Columns of the counts: the worst word by its number, the first check that reads it, and how
many letters the first sentence of its cure has."""
WRONG = 3
"""So many checks that fail are named in words."""
WORDS = f"{CHECKS}!$E${WANTING + 1}:$H${WANTING + 1}"
NONE = "None: no check reads NOT OK"
GROUP_ROWS = 22
"""Rows that the chart of the groups covers."""


@dataclass(frozen=True)
class Front:
    """What the Start sheet says: purpose, steps, headline rows, cautions, limits of the book.

    ``headline`` are results of each section type, ``whole`` those of the whole job, each with
    what it is called here; ``packs`` what is printed for whom: a title and the sheets in order;
    ``questions`` what a reader asks first, each with the groups of checks that answer it.
    """

    title: str
    purpose: tuple[str, ...]
    steps: tuple[str, ...]
    headline: tuple[tuple[str, Row], ...]
    whole: tuple[tuple[str, Row], ...]
    packs: tuple[tuple[str, tuple[str, ...]], ...]
    cautions: tuple[str, ...]
    beyond: tuple[str, ...]
    changes: tuple[str, ...]
    questions: tuple[tuple[str, tuple[str, ...]], ...] = ()


class StartSheet:
    """Builds the first sheet; it may look to the right, nothing reads it."""

    def __init__(self, front: Front, checks: ChecksSheet, places: Places,
                 catalog: list[tuple[str, str]], catalog_count: str, typing: Typing,
                 none_left: Sequence[Row] = ()):
        """Take what it sums up; ``catalog`` holds title and first wanted line of each table."""
        self.none_left = none_left
        self.front, self.checks, self.places = front, checks, places
        self.catalog, self.catalog_count, self.typing = catalog, catalog_count, typing

    def plan(self, sheets: list[tuple[str, str]], about: str, version: str,
             date: str) -> SheetPlan:
        """Build the sheet; ``sheets`` lists name and purpose of every other sheet."""
        front = self.front
        page = Page(NAME, front.title, WIDTHS, about, UNDER)
        page.text(1, 0, "Whole job", "master")
        page.formula(1, 1, self.checks.master(), "verdict")
        page.plan.verdicts.append((1, 1, 1, 1))
        after = self._answer(page, 4)
        wrong = after + 1
        groups = wrong + 6
        y = groups + 2 + len(self.checks.rows)
        page.plan.page_breaks.append(y + 1)
        y = self._headline(page, y + 2)
        y = self._chart(page, y + 1, groups + 2)
        page.plan.page_breaks.append(y + 1)
        wanting = y + 1
        y = self._wanting(page, wanting)
        y = self._packs(page, y + 1)
        page.plan.page_breaks.append(y + 1)
        y = self._said(page, y, (("What this workbook is", front.purpose, "text"),
                                 ("How to use it", front.steps, "text")))
        page.plan.page_breaks.append(y + 1)
        y = self._said(page, y, (
            ("Cautions", tuple(f"CAUTION: {c}" for c in front.cautions), "caution.line"),
            ("What it does not cover", front.beyond, "text")))
        y = self._key(page, y + 1)
        page.plan.page_breaks.append(y + 1)
        page.text(y + 1, 0, "Sheets", "block")
        y += 2
        for name, what in sheets:
            page.link(y, 0, f"{name}!A1", name)
            page.text(y, 1, what, "text")
            y += 1
        page.text(y + 1, 0, "Version", "block")
        page.text(y + 2, 0, f"Version {version}, {date}", "text")
        y = self._lines(page, y + 3, front.changes, "text")
        page.plan.page_breaks.append(y + 1)
        counts = y + 1
        y = self._counts(page, counts)
        self._failing(page, wrong, y - WRONG)
        self._groups(page, groups, counts + 2)
        self._questions(page, 4, counts + 2, wanting)
        page.plan.cells.sort(key=lambda cell: (cell.row, cell.col))
        return page.done(len(WIDTHS) - 1, frozen=(2, 0), repeat=(0, 1))

    def _said(self, page: Page, y: int, parts) -> int:
        """Put titled sentences: (title, sentences, style) each."""
        for title, lines, style in parts:
            page.text(y + 1, 0, title, "block")
            y = self._lines(page, y + 2, lines, style)
        return y

    @staticmethod
    def _lines(page: Page, y: int, lines: Sequence[str], style: str) -> int:
        for line in lines:
            y = page.lines(y, line, style, WIDE)
        return y

    def _answer(self, page: Page, y: int) -> int:
        """Put the results of the whole job below the lines for the questions."""
        where = Where(self.places, NAME)
        page.text(y - 1, 0, "The answer", "block")
        y += len(self.front.questions) + 1
        for label, row in self.front.whole:
            page.text(y, 0, label, "label")
            page.formula(y, 1, where.row(row), style_of(row))
            page.text(y, 2, row.unit if row.unit != "text" else "", "unit")
            y += 1
        return y

    def _questions(self, page: Page, y: int, first: int, wanting: int) -> None:
        """Answer each question by the worst word of its groups, and name what is wanted first."""
        top = y
        lines = {group: k for k, group in enumerate(self.checks.rows, start=first)}
        for words, groups in self.front.questions:
            used = [lines[group] + 1 for group in groups if group in lines]
            if not used:
                continue
            page.text(y, 0, words, "label")
            ranks = ",".join(f"{letter(RANK)}{k}" for k in used)
            sums = "+".join(f"SUM({letter(FIRST)}{k}:{letter(RANK - 1)}{k})" for k in used)
            page.formula(y, 1, f'IF({sums}=0,"not used",INDEX({WORDS},1,MIN({ranks})))', "verdict")
            page.text(y, 2, ", ".join(groups), "text")
            y += 1
        if y > top:
            page.plan.verdicts.append((top, 1, y - 1, 1))
        page.text(y, 0, "Is an input still wanted?", "label")
        whole, each = len(self.typing.of(False)), len(self.typing.of(True))
        one = f"B{wanting + 2}:B{wanting + 1 + whole}"
        six = (f"{letter(FIRST)}{wanting + 2 + whole}:"
               f"{letter(FIRST + len(SECTIONS) - 1)}{wanting + 1 + whole + each}")
        first = wanting + 2 + whole + each
        # Prices and lines of the catalog are counted; their names between the counts are words.
        counts = f"B{first}:B{first + 2 * len(self.typing.ledgers) + len(self.none_left)}"
        page.formula(y, 1, f'IF((COUNTIF({one},"{DASH}")+COUNTIF({six},"{DASH}")='
                     f'{whole + each * len(SECTIONS)})*(SUM({counts})=0),"none","see below")',
                     "text.c")

    def _headline(self, page: Page, y: int) -> int:
        page.text(y - 1, 0, "In brief, by section type", "block")
        page.text(y, 0, "Section type", "head")
        for x, name in ((1, "Unit"), (2, "Symbol")):
            page.text(y, x, name, "head.c")
        page.put(y, 3, "blank", None, "head")
        for k, name in enumerate(SECTIONS):
            page.text(y, FIRST + k, name, "head.n")
        where = Where(self.places, NAME)
        for label, row in self.front.headline:
            y += 1
            page.text(y, 0, label, "label")
            page.text(y, 1, row.unit if row.unit != "text" else "", "unit")
            page.text(y, 2, row.symbol, "symbol")
            page.across(y, SECTION_COLUMNS, where.row(row), style_of(row))
        return y + 1

    def _failing(self, page: Page, y: int, found: int) -> None:
        """Name the first checks that fail; their places among all are told from ``found`` on."""
        page.text(y, 0, "What is wrong, and where: the first three", "block")
        page.heads(y + 1, ["Check that reads NOT OK", "Type"])
        page.text(y + 1, 2, "What would mend it; Checks says it all", "head.one")
        for x in range(3, len(WIDTHS)):
            page.put(y + 1, x, "blank", None, "head")
        for k in range(WRONG):
            place, letters = (f"{letter(x)}{found + k + 1}" for x in (LINE, CUT))
            name, where, cure = (f"INDEX({self.checks.column(x)},{place})" for x in (0, AT, CURE))
            none = DASH if k else NONE
            page.formula(y + 2 + k, 0, f'IF({place}>0,{name},"{none}")', "label")
            page.formula(y + 2 + k, 1, f'IF({place}>0,{where},"{DASH}")', "text.c")
            page.formula(y + 2 + k, 2, f'IF({place}>0,LEFT({cure},{letters}),"{DASH}")', "text")

    def _packs(self, page: Page, y: int) -> int:
        page.text(y, 0, "What to print, and for whom", "block")
        for title, sheets in self.front.packs:
            y += 1
            page.text(y, 0, title, "label")
            page.text(y, 1, ", ".join(sheets), "text")
        return y + 1

    def _groups(self, page: Page, y: int, counts: int) -> None:
        """Put a line a group: its worst word and ratio, where it stands, its first cure."""
        page.text(y, 0, "Checks by group", "block")
        page.heads(y + 1, ["Group", "Verdict", "Worst ratio", "Go to"])
        page.text(y + 1, FIRST, "What would mend the first of the worst", "head.one")
        for x in range(FIRST + 1, len(WIDTHS)):
            page.put(y + 1, x, "blank", None, "head")
        y += 2
        page.plan.verdicts.append((y, 1, y + len(self.checks.rows) - 1, 1))
        for k, (group, (top, last)) in enumerate(self.checks.rows.items()):
            line = counts + k + 1
            none = f"SUM({letter(FIRST)}{line}:{letter(RANK - 1)}{line})=0"
            rank, found = f"{letter(RANK)}{line}", f"{letter(LINE)}{line}"
            page.text(y + k, 0, group, "label")
            page.formula(y + k, 1, f'IF({none},"not used",INDEX({WORDS},1,{rank}))', "verdict")
            ratios = f"{CHECKS}!${letter(WORST)}${top + 1}:${letter(WORST)}${last + 1}"
            cure = self.checks.cure(top, last, found)
            page.formula(y + k, WORST, f'IF({none},"{DASH}",MAX({ratios}))', "num.2")
            page.link(y + k, 3, f"{CHECKS}!A{top}", "Checks")
            letters = f"{letter(CUT)}{line}"
            page.formula(y + k, FIRST, f'IF({letters}>0,LEFT({cure},{letters}),"{DASH}")', "text")

    def _chart(self, page: Page, y: int, first: int) -> int:
        """Put the bars of the groups."""
        rows = f"{first + 1}:${{}}${first + len(self.checks.rows)}"
        page.plan.charts.append(Chart(
            y, 0, GROUP_ROWS, "bars", "Worst ratio of each group: 1.00 is the limit",
            "Value against limit", "",
            (ChartLine("Worst ratio", f"{NAME}!$A${rows.format('A')}",
                       f"{NAME}!$C${rows.format('C')}"),),
            "One bar a group of checks: the worst ratio of value to limit; above 1 does not "
            "pass. Longer bars are cut at 1.5.", SHOWN))
        return y + GROUP_ROWS

    def _counts(self, page: Page, y: int) -> int:
        """Put how many verdicts of each word a group has; the lines above rest on them."""
        page.text(y, 0, "How many read which, all section types", "block")
        page.heads(y + 1, ["Group"])
        for k, word in enumerate((*ORDER, "Worst: 1 to 4", "Its line", "Letters")):
            page.text(y + 1, FIRST + k, word, "head.n")
        y += 2
        for group, (top, last) in self.checks.rows.items():
            page.text(y, 0, group, "label")
            area = f"{CHECKS}!$E${top + 1}:$J${last + 1}"
            for k in range(len(ORDER)):
                word = f"{CHECKS}!{letter(FIRST + k)}${WANTING + 1}"
                page.formula(y, FIRST + k, f"COUNTIF({area},{word})", "num.0")
            a, b, c = (f"{letter(FIRST + k)}{y + 1}" for k in range(3))
            page.formula(y, RANK, f"1+({a}=0)*(1+({b}=0)*(1+({c}=0)))", "num.0")
            rank, place = f"{letter(RANK)}{y + 1}", f"{letter(LINE)}{y + 1}"
            page.formula(y, LINE, self.checks.first_line(group, f"{rank}=1"), "num.0")
            cure = self.checks.cure(top, last, place)
            page.formula(y, CUT, f'IF(OR({rank}=1,{rank}=3),{_sentence(cure)},0)', "num.0")
            y += 1
        for number in range(1, WRONG + 1):
            place = f"{letter(LINE)}{y + 1}"
            page.text(y, 0, f"NOT OK number {number}, its line on Checks", "label")
            page.formula(y, LINE, self.checks.failing(number), "num.0")
            cure = f"INDEX({self.checks.column(CURE)},{place})"
            page.formula(y, CUT, f"IF({place}>0,{_sentence(cure)},0)",
                         "num.0")
            y += 1
        return y

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
            page.longest(y, SECTION_COLUMNS, part.longest_label())
        for name, states in self.typing.ledgers.items():
            y += 1
            page.text(y, 0, f"{name.split()[0]}: prices that are not usable", "label")
            page.formula(y, 1, f"COUNTIF({states},0)", "num.0")
            y += 1
            first = states.partition(":")[0].rpartition("$")[2]
            page.text(y, 0, f"{name.split()[0]}: first price wanted", "label")
            # Its label may be a dash while the sheet waits; its row says where it stands.
            page.formula(y, 1, f'IF(COUNTIF({states},0)>0,"row "&(MATCH(0,{states},0)+'
                               f'{int(first) - 1}),"{DASH}")', "text")
        for row in self.none_left:
            y += 1
            page.text(y, 0, f"{row.sheet.name}: {row.label.partition(':')[0]}", "label")
            page.formula(y, 1, Where(self.places, NAME).row(row), "num.0")
        y += 1
        page.text(y, 0, "Catalog lines that are not usable", "label")
        page.formula(y, 1, self.catalog_count, "num.0")
        for title, line in self.catalog:
            y += 1
            page.text(y, 0, f"Catalog, {title}: first line wanted", "label")
            page.formula(y, 1, line, "text")
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


def _sentence(text: str) -> str:
    """Return the formula of the length of the first sentence of a text."""
    return f'FIND(". ",{text}&". ")'
