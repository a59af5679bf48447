"""Checks: every verdict of the workbook once, and the one verdict of the whole job."""

from __future__ import annotations

from builder.language import Check, Sheet
from builder.language.texts import symbols

from .cells import Chart, ChartLine, Place, SheetPlan
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
WORST, AT, CURE, AMOUNT, UNIT, SOURCE_COL, LINK, FAILING, LOOKING = 2, 3, *range(10, 17)
WIDTHS = [28, 18, 8, 6, *[8.5] * len(SECTIONS), 36, 7, 10, 18, 13, 9, 9]
SHOWN = 1.5
"""The ratio at which a bar is cut, so that one bad check does not squash the others."""
BARS_HEAD, BAR, BARS_ON_A_PAGE = 4, 10, 36
"""Rows of a chart's title and axis, tenths of a row for a bar, bars of a page of charts."""
COUNTED = ((FAILING, ORDER[0]), (LOOKING, ORDER[2]))
"""Columns that count the checks that read a word so far, so that the first is found; they stand
beside what is printed."""


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
                        *((x, f"{word} so far") for x, word in COUNTED)):
            page.text(HEAD, x, name, "head")
        before = {x: "0" for x, _ in COUNTED}
        for group, lines in self.groups.items():
            first, _ = self.rows[group]
            page.text(first - 1, 0, group, "block")
            for y, (sheet, check) in enumerate(lines, start=first):
                self._line(page, y, sheet, check)
                words = f"$E{y + 1}:$J{y + 1}"
                for x, word in COUNTED:
                    at = f"${letter(FIRST + ORDER.index(word))}${WANTING + 1}"
                    page.formula(y, x, f"{before[x]}+(COUNTIF({words},{at})>0)*1", "num.0")
                    before[x] = f"{letter(x)}{y + 1}"
            page.plan.verdicts.append((first, FIRST, first + len(lines) - 1, FIRST + 5))
        page.plan.verdicts.append((1, 1, 1, 1))
        return page.done(LINK)

    def column(self, x: int) -> str:
        """Return the range of a column over all checks and the titles of their groups."""
        return f"{NAME}!${letter(x)}${TOP + 2}:${letter(x)}${self.last + 1}"

    def cure(self, top: int, last: int, place: str) -> str:
        """Return the formula of the cure of a line of a group, by its number in the group."""
        first = f"{NAME}!${letter(CURE)}${top + 1}"
        if top == last:  # Gnumeric finds nothing in a range of one cell.
            return first
        return f"INDEX({first}:${letter(CURE)}${last + 1},{place})"

    def failing(self, number: int) -> str:
        """Return the formula of the place of a NOT OK by its number; 0 where fewer fail."""
        counts = self.column(FAILING)
        return f"IF(MAX({counts})<{number},0,MATCH({number},{counts},0))"

    def first_line(self, group: str, failing: str) -> str:
        """Return the formula of the place in a group of its first NOT OK, or else its first LOOK.

        ``failing`` is the condition that one is NOT OK.  The columns of counts rise by 1 at each
        such check: the lines that still have the count before the group stand before it.
        """
        top, last = self.rows[group]
        counts = []
        for x, _ in COUNTED:
            lines = f"{NAME}!${letter(x)}${top + 1}:${letter(x)}${last + 1}"
            before = self._last_before(group)
            start = f"{NAME}!${letter(x)}${before + 1}" if before is not None else "0"
            counts.append(f"COUNTIF({lines},{start})")
        return f"1+IF({failing},{counts[0]},{counts[1]})"

    def add_bars(self, plan: SheetPlan) -> None:
        """Put charts below what stands on a sheet, a bar for every check, as many as a page takes.

        The lines of a chart stand one below the other on Checks; the title of a group between
        them is a line without a bar.
        """
        page = Page.__new__(Page)
        page.plan = plan
        y = plan.last[0] + 2
        page.text(y, 0, "Every check against its limit, the worst of all section types", "block")
        page.text(y + 1, 0, "A bar that passes the line at 1.0 does not pass, or breaks a rule of "
                  "good practice; longer ones are cut at 1.5. No bar: not used.", "subtitle")
        plan.page_breaks.append(y)
        y += 2
        for number, (first, last) in enumerate(self._pages()):
            if number:
                plan.page_breaks.append(y)
            high = BARS_HEAD + -(-(last - first + 1) * BAR // 10)
            names, ratios = (f"{NAME}!${x}${first + 1}:${x}${last + 1}"
                             for x in ("A", letter(WORST)))
            plan.charts.append(Chart(
                y, 0, high, "bars", f"Value against limit, part {number + 1}", "", "",
                (ChartLine("Worst ratio", names, ratios),),
                "One bar a check, group by group: its worst ratio of value to limit; above 1 does "
                "not pass, or breaks a rule of good practice.", SHOWN))
            y += high
        plan.last = (y - 1, plan.last[1])

    def _pages(self) -> list[tuple[int, int]]:
        """Return first and last line of each chart: whole groups with the titles above them."""
        found: list[tuple[int, int]] = []
        for first, last in self.rows.values():
            if found and last - found[-1][0] < BARS_ON_A_PAGE:
                found[-1] = (found[-1][0], last)
            else:
                found.append((first - 1, last))
        return found

    def _last_before(self, group: str) -> int | None:
        """Return the last line of the group before one."""
        names = list(self.rows)
        at = names.index(group)
        return self.rows[names[at - 1]][1] if at else None

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
