"""Checks: every verdict of the workbook once, and the one verdict of the whole job."""

from __future__ import annotations

from builder.language import Check, Sheet
from builder.language.texts import symbols

from .cells import Place, SheetPlan
from .frame import (
    COLUMN,
    DASH,
    FIRST,
    HEAD,
    SECTION_COLUMNS,
    SECTIONS,
    STATE,
    TOP,
    WANTING,
    Page,
    letter,
)
from .places import Places

NAME = "Checks"
MASTER_PLACE: Place = (NAME, 1, 1)
ORDER = ("NOT OK", "NEEDS INPUT", "LOOK", "OK")
"""What the whole job is called, the worst first."""
WORST, AT, CURE, AMOUNT, UNIT, SOURCE_COL, LINK, FAILING = 2, 3, 10, 11, 12, 13, 14, 15
WIDTHS = [34, 19, 8, 7, *[9.5] * len(SECTIONS), 40, 8, 13, 20, 15, 8]


class ChecksSheet:
    """The lines of the Checks sheet, and the ranges that others sum up."""

    def __init__(self, sheets: list[Sheet], places: Places, wanting: str, weights: str):
        self.places, self.wanting, self.weights = places, wanting, weights
        self.groups: dict[str, list[tuple[Sheet, Check]]] = {}
        for sheet in sheets:
            for check in sheet.checks:
                self.groups.setdefault(check.group or sheet.name, []).append((sheet, check))
        self.rows: dict[str, tuple[int, int]] = {}
        y = TOP
        for name, lines in self.groups.items():
            self.rows[name] = (y + 1, y + len(lines))
            y += len(lines) + 1
        self.last = max(y - 1, TOP)

    def area(self) -> str:
        """Return the range of all verdict words."""
        return f"$E${TOP + 1}:$J${self.last + 1}"

    def master(self) -> str:
        """Return the address of the whole job's verdict."""
        return f"{NAME}!$B$2"

    def plan(self) -> SheetPlan:
        """Build the sheet."""
        page = Page(NAME, "Checks", WIDTHS,
                    "One line a check; the cure says what would mend it. Ratio 1.00 is the limit.")
        self._master(page)
        page.heads(HEAD, ["Check", "Limit", "Worst ratio", "Where"], "head")
        for k, name in enumerate(SECTIONS):
            page.text(HEAD, FIRST + k, name, "head.c")
        for x, name in ((CURE, "What would mend it"), (AMOUNT, "By how much"), (UNIT, "Of what"),
                        (SOURCE_COL, "Source of the limit"), (LINK, "Worked at"),
                        (FAILING, "NOT OK so far")):
            page.text(HEAD, x, name, "head")
        before = "0"
        for group, lines in self.groups.items():
            first, _ = self.rows[group]
            page.text(first - 1, 0, group, "block")
            for y, (sheet, check) in enumerate(lines, start=first):
                self._line(page, y, sheet, check)
                words = f"$E{y + 1}:$J{y + 1}"
                page.formula(y, FAILING, f"{before}+(COUNTIF({words},$E${WANTING + 1})>0)*1",
                             "num.0")
                before = f"{letter(FAILING)}{y + 1}"
            page.plan.verdicts.append((first, FIRST, first + len(lines) - 1, FIRST + 5))
        page.plan.verdicts.append((1, 1, 1, 1))
        return page.done(FAILING)

    def failing(self, number: int) -> tuple[str, str, str]:
        """Return formulas of the name, the verdicts' place and the cure of a NOT OK by its number.

        They show a dash where fewer checks fail.
        """
        def column(x: int) -> str:
            return f"{NAME}!${letter(x)}${TOP + 2}:${letter(x)}${self.last + 1}"

        count = f"MAX({column(FAILING)})"
        found = f"MATCH({number},{column(FAILING)},0)"
        name, where, cure = (
            f'IF({count}<{number},"{DASH}",INDEX({column(x)},{found}))' for x in (0, AT, CURE))
        return name, where, cure

    def _master(self, page: Page) -> None:
        words, flags = WANTING, STATE
        page.text(1, 0, "Whole job", "master")
        page.text(words, 0, "Worst word of all, in this order", "label")
        page.text(flags, 0, "Is there one: 1 yes, 0 no", "label")
        for k, word in enumerate([*ORDER, "NEEDS INPUT"]):
            col = letter(FIRST + k)
            page.text(words, FIRST + k, word, "text.c")
            if k == len(ORDER):
                page.number(flags, FIRST + k, 1, "state")
                continue
            extra = ""
            if word == "NEEDS INPUT":
                extra = f"+{self.wanting}"
            page.formula(flags, FIRST + k,
                         f"(COUNTIF({self.area()},{col}{words + 1}){extra}>0)*1", "state")
        span = f"${letter(FIRST)}${{}}:${letter(FIRST + len(ORDER))}${{}}"
        row = span.format(words + 1, words + 1)
        page.formula(1, 1, f"INDEX({row},1,MATCH(1,{span.format(flags + 1, flags + 1)},0))",
                     "verdict")

    def _line(self, page: Page, y: int, sheet: Sheet, check: Check) -> None:
        name = sheet.name
        ratios = self._across(name, self.places.rows[check.ratio][1])
        gate = check.gate
        states = self._across(name, STATE if gate is None else self.places.rows[gate][1])
        ready = f"COUNTIF({states},2)>0"
        worst = f"$C${y + 1}"
        page.text(y, 0, check.label, "label")
        bound = symbols(check.limit.expr)
        unit = check.limit.unit if check.limit.unit != "each" else ""
        words = bound if bound.endswith(unit) else f"{bound} {unit}"
        page.text(y, 1, f"{check.kind} {words}", "label")
        page.formula(y, WORST, f'IF({ready},MAX({ratios}),"{DASH}")', "num.2")
        heads = f"$E${HEAD + 1}:$J${HEAD + 1}"
        # The first column whose ratio is the worst to a billionth: engines may differ in the
        # last bit, and an exact MATCH would then name another of two equal ones.
        first = f"SUMPRODUCT(({ratios}>={worst}-1E-9)*({states}=2)*{self.weights})"
        spot = f"{len(SECTIONS)}-INT(LOG10({first})/LOG10(2)+1E-9)"
        page.formula(y, AT, f'IF({ready},INDEX({heads},1,{spot}),"{DASH}")', "text.c")
        place = self.places.rows[check.verdict][1]
        page.across(y, SECTION_COLUMNS, f"{name}!{COLUMN}${place + 1}", "verdict")
        page.text(y, CURE, check.cure, "label")
        if check.amount is not None:
            amounts = self._across(name, self.places.rows[check.amount][1])
            place_of = f"MATCH($D${y + 1},{heads},0)"
            fails = f"AND({ready},{worst}>1.000000001)"
            page.formula(y, AMOUNT, f'IF({fails},INDEX({amounts},1,{place_of}),"{DASH}")',
                         f"qty.{check.amount.digits}")
            page.text(y, UNIT, check.amount.label.rpartition(": ")[2], "label")
        page.text(y, SOURCE_COL, check.source or check.limit.source, "source")
        page.link(y, LINK, f"{name}!A{place + 1}", f"{name} row {place + 1}")

    @staticmethod
    def _across(sheet: str, row: int) -> str:
        return f"{sheet}!$E${row + 1}:$J${row + 1}"
