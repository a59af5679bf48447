"""Rules V: the values stored in the file, and that the bytes are the writer's own."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from datetime import datetime
from functools import lru_cache

from builder.engine.values import EngineError, Value, Values
from builder.resolve.cells import Book, Cell, SheetPlan
from builder.rules.findings import Found, rule
from builder.rules.formulas import ALLOWED, balanced
from builder.rules.looks import looks, used
from builder.rules.reading import DASH, MAIN, File, functions, tokens
from builder.rules.structure import calculation, properties

NUMBER = re.compile(r'General|@|0|#,##0(\.0{1,6})?(;-#,##0(\.0{1,6})?;"–")?')
"""Number formats in the file's English form that are used here."""
NEAR = 1e-9
MOMENT = (1980, 1, 1, 0, 0, 0)
"""The moment that stands on every part, so that the same job gives the same bytes."""


@rule("V01", "Write the file again: every formula carries its result, a text at least a dash.")
def stored(file: File) -> Iterator[Found]:
    """Yield formula cells with no stored value or an empty one."""
    for place in file.formulas:
        if file.cells[place].value in (None, ""):
            yield place, "no stored value"


@rule("V02", "Write the file again; the value stored is not what the formula gives.")
def stored_is_right(file: File) -> Iterator[Found]:
    """Yield stored results that differ from what the engine of the build makes of the file."""
    try:
        answers = worked_out(file)
    except EngineError as fault:
        yield "workbook", f"cannot be worked out: {fault}"
        return
    for place, right in answers.items():
        value = file.cells[place].value
        if not same(value, right):
            yield place, f"stored is {value!r}, worked out {right!r}"


def worked_out(file: File) -> Values:
    """Return what the engine of the build makes of the formulas of a file, from the file alone.

    Raises ``EngineError`` for a formula it cannot read.
    """
    from builder.engine.ironcalc_engine import evaluate

    plans = []
    for sheet in file.sheets:
        cells = [Cell(*at, "formula", h.formula) if h.formula else
                 Cell(*at, "number" if isinstance(h.value, float) else "text", h.value)
                 for at, h in sheet.held.items()]
        plans.append(SheetPlan(sheet.name, sheet.name, cells))
    day = datetime(*MOMENT)
    return evaluate(Book(plans, {}, "", "", "", day, "", ""), names=False)


def same(one: Value | None, other: Value) -> bool:
    """Say whether two results are the same: texts letter by letter, numbers within 1e-9."""
    if isinstance(one, float) and isinstance(other, float):
        return math.isclose(one, other, rel_tol=NEAR, abs_tol=NEAR)
    return one == other


@rule("V03", "Set calculation to automatic, and full calculation on loading.")
def calculates_by_itself(file: File) -> Iterator[Found]:
    """Yield calculation settings that wait."""
    how = calculation(file)
    if how.get("fullCalcOnLoad") != "1":
        yield "calculation", "is not asked for on loading"
    if how.get("calcMode", "auto") != "auto":
        yield "calculation", f"is {how['calcMode']}"


@rule("V04", "Let a column of numbers give numbers or the dash.")
def stored_kind(file: File) -> Iterator[Found]:
    """Yield stored truths and errors, texts kept as numbers, and texts in columns of numbers."""
    formats = [look.number for look in looks(file)]
    for sheet in file.sheets:
        for at, held in sheet.held.items():
            if held.formula is None:
                continue
            place, value = (sheet.name, *at), held.value
            if held.kind not in ("n", "str"):
                yield place, f"stored as {held.kind}: {value}"
            elif isinstance(value, str) and value != DASH:
                if formats[sheet.look[at]] not in ("General", "@"):
                    yield place, f"the text {value!r} in a column of numbers"


@rule("V06", "Deliver the file as it was written, not as another program saved it.")
def bytes_of_the_writer(file: File) -> Iterator[Found]:
    """Yield marks of another program, and what its saving takes away."""
    app = file.xml("docProps/app.xml")
    told = {} if app is None else {e.tag.rpartition("}")[2]: e.text for e in app}
    if told.get("Application") != "Microsoft Excel" or told.get("AppVersion") != "12.0000":
        yield "docProps/app.xml", f"written by {told.get('Application')} {told.get('AppVersion')}"
    version = file.book.find(MAIN + "fileVersion")
    if version is None or version.get("rupBuild") != "4505":
        yield "xl/workbook.xml", "not the mark of the writer"
    for sheet in file.sheets:
        if any("spans" in row for row in sheet.rows):
            yield sheet.name, "rows as another program writes them"


@rule("V07", "Write the file again from its job.")
def bytes_again(file: File) -> Iterator[Found]:
    """Yield moments of a clock: of the parts, or of a change after the making.

    That two runs give the same bytes is tried by the tests.
    """
    for one in file.zipped:
        if one.date_time != MOMENT:
            yield one.filename, f"carries the moment {one.date_time}"
    core = file.xml("docProps/core.xml")
    told = {} if core is None else {e.tag.rpartition("}")[2]: e.text for e in core}
    if told.get("created") != told.get("modified"):
        yield "docProps/core.xml", f"made {told.get('created')}, changed {told.get('modified')}"
    if not re.fullmatch("[0-9a-f]{64}", properties(file).get("Inputs hash", "")):
        yield "docProps/custom.xml", "no hash of the inputs"


@rule("V08", "Write formulas and number formats in the file's English form.")
def english_form(file: File) -> Iterator[Found]:
    """Yield formulas whose brackets do not pair, unknown functions, and foreign formats."""
    for place, formula in file.formulas.items():
        for what in _foreign(formula):
            yield place, what
    formats = looks(file)
    for number, place in used(file).items():
        if not NUMBER.fullmatch(formats[number].number):
            yield place, f"the number format {formats[number].number}"


@lru_cache(maxsize=200_000)
def _foreign(formula: str) -> tuple[str, ...]:
    """Return what is wrong with the form of a formula."""
    parts, found = tokens(formula), []
    opened = sum(sub == "OPEN" for _, _, sub in parts)
    closed = sum(sub == "CLOSE" for _, _, sub in parts)
    if opened != closed or not balanced(formula) or "".join(
            v for v, _, _ in parts) != formula[1:]:
        found.append(f"brackets do not pair: {formula}")
    if any(k == "SEP" and v == ";" for v, k, _ in parts):
        found.append("a semicolon parts arguments")
    found += [f"{name} is no English name" for name in functions(formula)
              if name not in ALLOWED and not name.isascii()]
    return tuple(found)
