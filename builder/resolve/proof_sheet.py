"""Proof: published examples worked by the sheets' own rows, beside the printed answers.

A family shows up to five cases, in columns, and a column more in which the reader types a case of
his own.  Where a source prints more, the tests type them into that column.  Cases keep the units
of their source; the factor is shown.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from builder.language import Case, Family, Fault, Row
from builder.language.cells import cell_formula
from builder.language.ranges import Span
from builder.language.texts import symbols
from builder.language.units import TEXT

from .cells import InputRule, Place, SheetPlan
from .frame import COLUMN, DASH, FIRST, HEAD, TOP, Page, letter
from .places import Places, Where, style_of

NAME = "Proof"
BAND = 6
SHOWN = 5
"""Cases a family shows at most."""
YOURS = FIRST + BAND
LOW, HIGH = YOURS + 1, YOURS + 2
WIDTHS = [38, 13, 37, 8, *[12.5] * BAND, 12.5, 8.5, 8.5]
AGREES, DIFFERS = "agrees", "differs"


def _span(row: Row, cases: tuple[Case, ...], proved: Span, factor: float) -> Span:
    """Return what the reader may type: about the cases, within the row's own range.

    A row's formulas are proved for its own range, given in its own unit; the cases themselves
    are always allowed.
    """
    values = [float(c.given[row]) for c in cases]
    low, high = min(values), max(values)
    wide = (low / 4 if low > 0 else low * 4, high * 4 if high > 0 else high / 4)
    return (min(low, max(wide[0], proved[0] / factor)),
            max(high, min(wide[1], proved[1] / factor)))


def shown_cases(one: Family) -> list[Case]:
    """Return the cases a family shows: traps first, then those a source prints."""
    ranked = sorted(one.cases, key=lambda c: (not c.wrong, c.printed_by != "published"))
    return ranked[:SHOWN]


@dataclass(frozen=True)
class FreeColumn:
    """Where the reader types a case of his own, and where its results stand.

    ``given`` is in the units of the family's source, ``want`` in the rows' own units.
    """

    given: dict[Row, Place]
    want: dict[Row, Place]


class ProofSheet:
    """The proof sheet and the names of its free cells.

    ``proved`` are the ranges that rows were proved for, of all that a case may give.
    """

    def __init__(self, families: list[Family], places: Places, proved: dict[Row, Span]):
        self.families, self.places, self.proved = families, places, proved
        self.names: dict[str, Place] = {}
        self.free: dict[str, FreeColumn] = {}
        self.results: list[tuple[Family, Case, Row, Place, Place, Place]] = []
        self.faults: list[str] = []

    def plan(self) -> SheetPlan:
        """Build the sheet."""
        page = Page(NAME, "Proof", WIDTHS, "Published examples worked by the sheets' own rows; "
                    "in the column Yours type a case of your own.")
        page.heads(HEAD, ["Quantity", "Symbol", "Formula", "Unit"])
        for k in range(BAND):
            page.text(HEAD, FIRST + k, f"Case {k + 1}", "head.n")
        for x, name in ((YOURS, "Yours"), (LOW, "Least"), (HIGH, "Most")):
            page.text(HEAD, x, name, "head.n")
        y = TOP
        for one in self.families:
            page.text(y, 0, one.title, "block")
            y += 1
            if one.tolerance:
                y = page.lines(y, f"Agreement asked: {one.tolerance}", width=150)
            shown = shown_cases(one)
            if len(shown) < len(one.cases):
                page.text(y, 0, f"{len(shown)} of {len(one.cases)} examples; the tests of this "
                                "workbook try them all in the column Yours.", "subtitle")
                y += 1
            y = self._band(page, y, one, shown) + 1
        return page.done(HIGH)

    def _band(self, page: Page, y: int, one: Family, cases: list[Case]) -> int:
        columns = [(FIRST + k, case) for k, case in enumerate(cases)]
        everywhere = [x for x, _ in columns] + [YOURS]
        for label, take in (("Example", lambda c: c.name), ("Source", lambda c: c.source)):
            page.text(y, 0, label, "label")
            for x, case in columns:
                page.text(y, x, take(case), "wrap")
            y += 1
        state = y
        page.text(y, 0, "Ready: 1 when every given value is usable", "label")
        given: dict[Row, Place] = {}
        y = self._given(page, y + 1, one, columns, state, everywhere, given)
        for row in one.rows:
            self._calculated(page, y, row, one, everywhere, state)
            y += 1
        self.free[one.key] = FreeColumn(given, {
            row: (NAME, int(self.moved[row].rpartition("$")[2]) - 1, YOURS) for row in one.want})
        for row in one.want:
            y = self._printed(page, y, row, one, columns)
        return y

    def _given(self, page, y, one, columns, state, everywhere, given) -> int:
        """Put the given values, and the factors of the source's units; return the next row."""
        self.moved: dict[Row, str] = {}
        numbers = [r for r in one.given if r.unit != TEXT]
        words = [r for r in one.given if r.unit == TEXT]
        tests = []
        for row in numbers + words:
            unit, factor = one.units.get(row, (row.unit, 1))
            page.text(y, 0, row.label, "label")
            page.text(y, 1, row.symbol, "symbol")
            page.text(y, 3, "" if unit == TEXT else unit, "unit")
            for x, case in columns:
                value = case.given[row]
                kind = "text" if isinstance(value, str) else "number"
                page.put(y, x, kind, value, "given.text" if kind == "text" else _style(value))
            self._free(page, y, row, one, unit, factor)
            given[row] = (NAME, y, YOURS)
            self.moved[row] = f"{COLUMN}${y + 1}"
            if row.unit == TEXT:
                keys = Where(self.places, NAME).column(row.choices, None)
                cell = f"{COLUMN}{y + 1}"
                tests.append(f"IF(ISTEXT({cell}),SUMPRODUCT(({keys}={cell})*1),0)")
            y += 1
        if numbers:
            a, b = state + 2, state + 1 + len(numbers)
            own_range, low, high = (f"{c}{a}:{c}{b}" for c in (COLUMN, f"${letter(LOW)}",
                                                               f"${letter(HIGH)}"))
            # A sum that is no number holds an error value, which no compare may reach.
            tests.insert(0, f"IF(ISNUMBER(SUM({own_range})),(COUNTA({own_range})=ROWS({own_range}))"
                            f"*(SUMPRODUCT(({own_range}>={low})*({own_range}<={high}))"
                            f"=ROWS({own_range})),0)")
        page.across(state, everywhere, "*".join(tests), "state")
        return self._factors(page, y, one, everywhere, state)

    def _free(self, page, y, row, one, unit, factor) -> None:
        value = one.cases[0].given[row]
        name = f"try_{one.key}_{row.key}"
        self.names[name] = (NAME, y, YOURS)
        if not row.key:
            self.faults.append(f"family {one.key}: {row.where} has no name")
        if row.unit == TEXT:
            page.put(y, YOURS, "text", value, "input.list")
            source = f"={Where(self.places, '').column(row.choices, None)}"
            page.plan.rules.append(InputRule(y, YOURS, "list", "A case of your own",
                                             f"{row.label}: choose from the list.",
                                             f"{row.label}: choose from the list.", source=source))
            return
        low, high = _span(row, one.cases, self.proved[row], factor)
        page.number(y, YOURS, value, _style(value, "input"))
        page.number(y, LOW, low, "limit")
        page.number(y, HIGH, high, "limit")
        says = f"{row.label}. Allowed: {low:g} to {high:g} {unit}."
        page.plan.rules.append(InputRule(y, YOURS, "decimal", "A case of your own", says[:255],
                                         says[:224], low, high))

    def _factors(self, page, y, one, everywhere, state) -> int:
        """Put one row a source unit with its factor, and the given rows in the sheet's units."""
        self.factors: dict[tuple[str, str], str] = {}
        for row, (unit, factor) in one.units.items():
            if (unit, row.unit) in self.factors:
                continue
            page.text(y, 0, f"{row.unit or 'own units'} in one {unit}", "label")
            for x in everywhere:
                page.number(y, x, factor, "gen")
            self.factors[unit, row.unit] = f"{COLUMN}${y + 1}"
            y += 1
        for row in [r for r in one.given if r in one.units]:
            unit, _ = one.units[row]
            page.text(y, 0, f"{row.label}, in the sheet's unit", "label")
            page.text(y, 1, row.symbol, "symbol")
            page.text(y, 3, row.unit, "unit")
            text = f"{self.moved[row]}*{self.factors[unit, row.unit]}"
            page.across(y, everywhere, self._guard(text, state), style_of(row))
            self.moved[row] = f"{COLUMN}${y + 1}"
            y += 1
        return y

    @staticmethod
    def _guard(text: str, state: int) -> str:
        return f'IF({COLUMN}${state + 1}=1,{text},"{DASH}")'

    def _calculated(self, page, y, row, one, everywhere, state) -> None:
        page.text(y, 0, row.label, "label")
        page.text(y, 1, "" if hasattr(row, "table") else row.symbol, "symbol")
        page.text(y, 2, symbols(row.expr), "formula")
        page.text(y, 3, "" if row.unit == TEXT else row.unit, "unit")
        try:
            text = cell_formula(row.expr, Where(self.places, NAME, moved=self.moved))
        except Fault as fault:
            self.faults.append(f"family {one.key}: {fault}")
            text = "0"
        if re.search(rf"{COLUMN}\$\d+:{COLUMN}", text):
            self.faults.append(f"family {one.key}: {row.where} takes a series together")
        page.across(y, everywhere, self._guard(text, state), style_of(row))
        self.moved[row] = f"{COLUMN}${y + 1}"

    def _printed(self, page, y, row, one, columns) -> int:
        """Put printed answer, difference, what is allowed, and whether they agree."""
        unit, _ = one.units.get(row, (row.unit, 1))
        result = self.moved[row]
        if row in one.units:
            result = f"{result}/{self.factors[unit, row.unit]}"
        lines = [f"{row.label}, as printed", "Difference, share of the print",
                 "Half the rounding step of the print", "Verdict"]
        if any(row in case.wrong for _, case in columns):
            lines.append("Printed wrongly in the source")
        for k, label in enumerate(lines):
            page.text(y + k, 0, label, "label.indent")
            page.text(y + k, 3, unit if k in (0, 2, 4) else "", "unit")
        weighed = []
        for x, case in columns:
            if row not in case.printed:
                continue
            step = case.step.get(row)
            if step is None:
                self.faults.append(f"family {one.key}, {case.name}: no rounding step")
                continue
            if not case.printed[row]:
                self.faults.append(f"family {one.key}, {case.name}: prints 0")
                continue
            weighed.append(x)
            page.number(y, x, case.printed[row], _style(case.printed[row]))
            page.number(y + 2, x, step / 2, "gen")
            if row in case.wrong:
                page.number(y + 4, x, case.wrong[row], _style(case.wrong[row]))
            self.results.append((one, case, row, (NAME, y, x), (NAME, y + 1, x),
                                 (NAME, y + 3, x)))
        page.across(y + 1, weighed, f"({result})/{COLUMN}{y + 1}-1", "num.6")
        page.across(y + 3, weighed, f"IF(ABS({COLUMN}{y + 2}*{COLUMN}{y + 1})<={COLUMN}{y + 3}"
                                    f'+1E-9,"{AGREES}","{DIFFERS}")', "text.c")
        return y + len(lines)


def _style(value: float, stem: str = "given") -> str:
    digits = len(f"{value:.6f}".rstrip("0").partition(".")[2])
    return f"{stem}.{min(digits, 6)}"
