"""Rules on formulas, one function a rule: each takes a file and yields its findings.

The numbers W01, F03 … are those of the project's workbook rules.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from builder.engine.values import address, row_col
from builder.resolve.cells import Place
from tests.outputs.findings import Finding, found_at
from tests.outputs.reading import DASH, Read, area, references, spots, tokens

# The closed list on which all engines were found to agree, and COLUMNS.
ALLOWED = frozenset(
    "SUM MIN MAX ABS SIGN INT ROUNDUP SQRT EXP LN LOG10 SIN COS TAN ASIN ACOS ATAN SINH COSH "
    "TANH ASINH PI RADIANS DEGREES POWER IF AND OR NOT ISNUMBER ISTEXT ISBLANK INDEX MATCH "
    "CHOOSE COUNTA COUNTIF COUNTIFS SUMIF SUMIFS SUMPRODUCT LARGE SMALL RANK AVERAGE LEN LEFT "
    "RIGHT MID FIND SUBSTITUTE UPPER REPT FIXED ROWS COLUMNS".split())
VOLATILE = ("NOW", "TODAY", "RAND", "RANDBETWEEN", "RANDARRAY", "OFFSET", "INDIRECT", "CELL",
            "INFO")
REACHING = ("HYPERLINK", "WEBSERVICE", "RTD", "CALL", "REGISTER", "DDE", "IMPORTXML",
            "IMPORTDATA", "FILTERXML", "ENCODEURL", "SQL.REQUEST")
LENGTH, OPERATORS, REFERENCES, DEPTH = 200, 10, 8, 3
TEXT_SHEETS = ("Worked", "Quote", "Yard", "Tape", "Upkeep", "SiteVisit", "LaunchForm")
"""Sheets whose formulas are words: they may be longer."""
TEXT_LENGTH, LITERAL = 1000, 250
_STATE = r'[^,()"=]+=[12]'
GUARD = re.compile(rf'=IF\((?:{_STATE}|AND\({_STATE}(?:,{_STATE})*\)),(.*),(?:"{DASH}"|" "|0)\)')
"""A formula that waits until one state, or each of several, says that it may begin."""

TOLERANCE = re.compile(r"(?<=[\w)])[+-]1E-9(?![\d.])")
"""What every deciding comparison carries by itself; it is part of the comparison."""


def functions(formula: str) -> list[str]:
    """Return the names of the functions a formula calls, in order."""
    return [v[:-1].upper() for v, kind, sub in tokens(formula) if (kind, sub) == ("FUNC", "OPEN")]


def inside_guard(formula: str) -> str:
    """Return a formula without the guard that waits for the state of its column."""
    found = GUARD.fullmatch(formula)
    return "=" + found[1] if found and _balanced(found[1]) else formula


def _balanced(text: str) -> bool:
    depth = 0
    for letter in re.sub(r'"[^"]*"', "", text):
        depth += (letter == "(") - (letter == ")")
        if depth < 0:
            return False
    return depth == 0


def w01_left_and_up(file: Read) -> Iterator[Finding]:
    """Yield references to a sheet on the right, or to the same sheet below or to the right."""
    order = {s: k for k, s in enumerate(dict.fromkeys(s for s, _, _ in file.cells))}
    for place, areas in file.areas.items():
        sheet, row, col = place
        for on, _, _, bottom, right in areas:
            where = address((on, bottom, right))
            if order[on] > order[sheet]:
                yield found_at(file, "W01", place, f"looks right to {where}")
            elif on == sheet and (bottom > row or (bottom == row and right >= col)):
                yield found_at(file, "W01", place, f"looks down or right to {where}")


def w07_no_circle(file: Read) -> Iterator[Finding]:
    """Yield the cells that rest on themselves, or on cells that do."""
    wants = {}
    for place in file.formulas:
        behind = {spot for area in file.areas[place] for spot in spots(area)}
        wants[place] = {p for p in behind if p in file.formulas}
    left = {place: len(behind) for place, behind in wants.items()}
    ready = [place for place, count in left.items() if count == 0]
    while ready:
        for reader in file.readers.get(ready.pop(), ()):
            left[reader] -= 1
            if left[reader] == 0:
                ready.append(reader)
    for place, count in left.items():
        if count > 0:
            yield found_at(file, "W07", place, "rests on a circle")


def f03_short(file: Read) -> Iterator[Finding]:
    """Yield formulas that are too long or too deep."""
    for place, whole in file.formulas.items():
        for what in too_long(inside_guard(whole), place[0] in TEXT_SHEETS):
            yield found_at(file, "F03", place, what)


def too_long(formula: str, text: bool = False) -> Iterator[str]:
    """Yield what makes a formula too long to check by eye; formulas of words are freer."""
    if text:
        long = [v for v, _, sub in tokens(formula) if sub == "TEXT" and len(v) > LITERAL]
        if len(formula) > TEXT_LENGTH or long:
            yield f"{len(formula)} characters, or a literal of more than {LITERAL}"
        return
    if len(formula) > LENGTH:
        yield f"{len(formula)} characters"
    counted = tokens(TOLERANCE.sub("", formula))
    operators = sum(kind == "OPERATOR-INFIX" for _, kind, _ in counted)
    if operators > OPERATORS:
        yield f"{operators} operators"
    several = len(set(references(formula)))
    if several > REFERENCES:
        yield f"{several} references"
    depth, branching = _depths(formula)
    if depth > DEPTH:
        yield f"functions {depth} deep"
    if branching > 1:
        yield "IF inside an IF"


def _depths(formula: str) -> tuple[int, int]:
    """Return how deep functions stand in one another, and how deep IF stands in IF."""
    stack: list[str] = []
    depth = branching = 0
    for value, kind, sub in tokens(formula):
        if kind == "FUNC" and sub == "OPEN":
            stack.append(value.upper())
            depth, branching = max(depth, len(stack)), max(branching, stack.count("IF("))
        elif kind == "FUNC":
            stack.pop()
    return depth, branching


def f04_f05_x03_functions(file: Read) -> Iterator[Finding]:
    """Yield functions that are volatile, that reach out, or that are not on the list."""
    for place, formula in file.formulas.items():
        for name in functions(formula):
            if name in VOLATILE:
                yield found_at(file, "F04", place, f"{name} is volatile")
            elif name in REACHING:
                yield found_at(file, "X03", place, f"{name} reaches out")
            elif name not in ALLOWED:
                yield found_at(file, "F05", place, f"{name} is not on the list")
        bare = re.sub(r'"[^"]*"', "", formula)
        if "|" in bare or "[" in bare or "{" in bare or "@" in bare or ";" in bare:
            yield found_at(file, "X03", place, f"a sign that is no part of a formula: {formula}")


def tokenizes(file: Read) -> Iterator[Finding]:
    """Yield formulas whose brackets do not pair, or that hold an error or an unknown word."""
    for place, formula in file.formulas.items():
        parts = tokens(formula)
        opened = sum(sub == "OPEN" for _, _, sub in parts)
        closed = sum(sub == "CLOSE" for _, _, sub in parts)
        if opened != closed or not _balanced(formula) or "".join(v for v, _, _ in parts) != \
                formula[1:]:
            yield found_at(file, "V08", place, f"brackets do not pair: {formula}")
        for value, kind, sub in parts:
            if kind == "OPERAND" and sub == "ERROR":
                yield found_at(file, "F08", place, f"the error {value} waits in the formula")


def arguments(formula: str, name: str) -> list[list[str]]:
    """Return the arguments, as they are written, of each call of a function."""
    found, stack = [], []
    for value, kind, sub in tokens(formula):
        if kind == "FUNC" and sub == "OPEN":
            stack.append((value[:-1].upper(), [""]))
            continue
        if kind == "FUNC" and sub == "CLOSE":
            done, parts = stack.pop()
            if done == name:
                found.append(parts)
            value = f"{done}({','.join(parts)})"
        elif kind == "SEP" and stack and value == ",":
            stack[-1][1].append("")
            continue
        if stack:
            stack[-1][1][-1] += value
    return found


def f06_lookups(file: Read) -> Iterator[Finding]:
    """Yield MATCH without its type, or of type 1 in a list that does not increase."""
    for place, formula in file.formulas.items():
        for given in arguments(formula, "MATCH"):
            if len(given) != 3 or given[2] not in ("0", "1"):
                yield found_at(file, "F06", place, f"MATCH({','.join(given)})")
            elif given[2] == "1" and not _increasing(file, given[1], place):
                yield found_at(file, "F06", place, f"{given[1]} does not increase")


def _increasing(file: Read, reference: str, place: Place) -> bool:
    held = [file.cells[p].value for p in spots(area(reference, place[0]))]
    numbers = all(isinstance(v, float) for v in held)
    return numbers and all(a < b for a, b in zip(held, held[1:], strict=False))


def f07_closed(file: Read) -> Iterator[Finding]:
    """Yield whole columns and rows, names, and ranges of tables that are not absolute."""
    for place, formula in file.formulas.items():
        for reference in references(formula):
            on, _, cells = reference.rpartition("!")
            try:
                for cell in cells.split(":"):
                    row_col(cell)
            except ValueError:
                yield found_at(file, "F07", place, f"{reference} is no closed range of cells")
                continue
            if ":" in cells and on in ("Data", "Catalog") and cells.count("$") != 4:
                yield found_at(file, "F07", place, f"{reference} is not absolute")


def f12_nothing_empty(file: Read, unlocked: set[Place]) -> Iterator[Finding]:
    """Yield references to empty cells and to cells whose row has no label."""
    labelled = {(s, r) for (s, r, c), cell in file.cells.items()
                if c <= 1 and isinstance(cell.value, str)}
    for place, areas in file.areas.items():
        for where in dict.fromkeys(areas):
            for spot in spots(where):
                if spot not in file.cells and spot not in unlocked:
                    yield found_at(file, "F12", place, f"{address(spot)} is empty")
                    break
                if spot[:2] not in labelled:
                    yield found_at(file, "F12", place, f"{address(spot)} has no label")
                    break


def f12_whole_series(file: Read) -> Iterator[Finding]:
    """Yield sums that leave out a row like those they take: of the same words but for numbers."""
    for place, formula in file.formulas.items():
        if not {"SUM", "SUMPRODUCT", "MAX", "MIN"} & set(functions(formula)):
            continue
        for sheet, top, _, bottom, _ in dict.fromkeys(file.areas[place]):
            if top == bottom or sheet in ("Data", "Catalog"):
                continue
            taken = {_stem(file.text(sheet, row)) for row in range(top, bottom + 1)}
            for row in (top - 1, bottom + 1):
                if len(taken) == 1 and _stem(file.text(sheet, row)) in taken:
                    yield found_at(file, "F12", place, f"leaves out {sheet} row {row + 1}")


def _stem(label: str) -> str:
    return re.sub(r"[\d.,]+", "#", label)
