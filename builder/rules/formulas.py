"""Rules F01 to F08: what a formula may look like."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache

from builder.engine.stored import moved
from builder.engine.values import row_col
from builder.resolve.cells import Place
from builder.rules import layout
from builder.rules.findings import Found, rule
from builder.rules.reading import DASH, File, area, functions, references, spots, tokens

# The closed list on which all engines were found to agree, and COLUMNS.
ALLOWED = frozenset(
    "SUM MIN MAX ABS SIGN INT ROUNDUP SQRT EXP LN LOG10 SIN COS TAN ASIN ACOS ATAN SINH COSH "
    "TANH ASINH PI RADIANS DEGREES POWER IF AND OR NOT ISNUMBER ISTEXT ISBLANK INDEX MATCH "
    "CHOOSE COUNTA COUNTIF COUNTIFS SUMIF SUMIFS SUMPRODUCT LARGE SMALL RANK AVERAGE LEN LEFT "
    "RIGHT MID FIND SUBSTITUTE UPPER REPT FIXED ROWS COLUMNS".split())
VOLATILE = ("NOW", "TODAY", "RAND", "RANDBETWEEN", "RANDARRAY", "OFFSET", "INDIRECT", "CELL",
            "INFO")
LENGTH, OPERATORS, REFERENCES, DEPTH = 200, 10, 8, 3
TEXT_LENGTH, LITERAL = 1000, 250
FRACTIONS = frozenset({"0.5", "0.500001", "0.500000001", "1.000000001", "1E-9", "1E-09"})
"""Steps of rounding and the tolerance of a comparison, which are part of it (our judgement)."""
_STATE = r'[^,()"=]+=[12]'
GUARD = re.compile(rf'=IF\((?:{_STATE}|AND\({_STATE}(?:,{_STATE})*\)),(.*),(?:"{DASH}"|" "|0)\)')
"""A formula that waits until one state, or each of several, says that it may begin."""

TOLERANCE = re.compile(r"(?<=[\w)])[+-]1E-9(?![\d.])")
"""What every deciding comparison carries by itself; it is part of the comparison."""


def inside_guard(formula: str) -> str:
    """Return a formula without the guard that waits for the state of its column."""
    found = GUARD.fullmatch(formula)
    return "=" + found[1] if found and balanced(found[1]) else formula


def balanced(text: str) -> bool:
    """Say whether the brackets of a text pair."""
    depth = 0
    for letter in re.findall("[()]", re.sub(r'"[^"]*"', "", text)):
        depth += 1 if letter == "(" else -1
        if depth < 0:
            return False
    return depth == 0


@rule("F01", "Write one formula for the row and copy it along.")
def one_formula_a_row(file: File) -> Iterator[Found]:
    """Yield the cells of a row of section columns whose formula is not that of the first."""
    for name in layout.of_kind(file, "section", "section inputs"):
        sheet, first = file.sheet(name), layout.COLUMNS[0]
        for row in layout.rows(file, name):
            held = [sheet.held.get((row, col)) for col in layout.COLUMNS]
            start = held[0].formula if held[0] else None
            for step, one in enumerate(held):
                if one is not None and start and one.run is not None and one.run == held[0].run:
                    continue
                if one is None or start is None or one.formula != "=" + moved(start[1:], 0, step):
                    yield (name, row, first + step), "not the formula of the first column"


@rule("F02", "Put the number on a sheet of data or inputs, with its source, and refer to it.")
def no_hidden_numbers(file: File) -> Iterator[Found]:
    """Yield numbers in formulas that are no whole numbers, rounding steps or tolerances."""
    for place, formula in file.formulas.items():
        for value, _, sub in tokens(formula):
            if sub == "NUMBER" and not value.isdigit() and value not in FRACTIONS:
                yield place, f"the number {value} stands in the formula"


@rule("F03", "Split it into two rows.")
def short(file: File) -> Iterator[Found]:
    """Yield formulas that are too long or too deep."""
    for place, whole in file.formulas.items():
        for what in _excess(whole, place[0] in layout.TEXT_SHEETS):
            yield place, what


@lru_cache(maxsize=200_000)
def _excess(whole: str, text: bool) -> tuple[str, ...]:
    return tuple(too_long(inside_guard(whole), text))


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
        elif kind == "FUNC" and stack:
            stack.pop()
    return depth, branching


@rule("F04", "Refer to the cell itself; type what changes by itself as an input.")
def nothing_volatile(file: File) -> Iterator[Found]:
    """Yield functions that are worked out anew at any time, or that build addresses."""
    for place, name in called(file):
        if name in VOLATILE:
            yield place, f"{name} is volatile"


def called(file: File) -> Iterator[tuple[Place, str]]:
    """Yield (cell, function) of every call."""
    for place, formula in file.formulas.items():
        for name in functions(formula):
            yield place, name


@rule("F05", "Write it with the functions of the list, as one plain formula a cell.")
def functions_of_the_list(file: File) -> Iterator[Found]:
    """Yield functions that are not on the list, array formulas and marks of newer ones."""
    for place, name in called(file):
        if name not in ALLOWED:
            yield place, f"{name} is not on the list"
    for sheet in file.sheets:
        if not sheet.plain:
            yield sheet.name, "an array formula, a data table, or a mark of a newer function"
        if sheet.all("ignoredError"):
            yield sheet.name, "warnings are masked"


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


@rule("F06", "Look up with INDEX and MATCH of type 0; type 1 only in a list that increases.")
def lookups(file: File) -> Iterator[Found]:
    """Yield VLOOKUP and the like, MATCH without its type, or of type 1 in a list unsorted."""
    for place, formula in file.formulas.items():
        if "LOOKUP(" in formula:
            yield place, "a lookup by number of column"
        if "MATCH(" not in formula:
            continue
        for given in arguments(formula, "MATCH"):
            if len(given) != 3 or given[2] not in ("0", "1"):
                yield place, f"MATCH({','.join(given)})"
            elif given[2] == "1" and not _increasing(file, given[1], place):
                yield place, f"{given[1]} does not increase"


def _increasing(file: File, reference: str, place: Place) -> bool:
    try:
        held = [file.value(*p) for p in spots(area(reference, place[0]))]
    except ValueError:
        return False
    numbers = all(isinstance(v, float) for v in held)
    return numbers and all(a < b for a, b in zip(held, held[1:], strict=False))


@rule("F07", "Give the first and last cell of the range, with dollar signs where it is a table.")
def closed(file: File) -> Iterator[Found]:
    """Yield whole columns and rows, names, and ranges of tables that are not absolute."""
    for place, formula in file.formulas.items():
        for reference in references(formula):
            if what := _open(reference):
                yield place, what


@lru_cache(maxsize=200_000)
def _open(reference: str) -> str:
    """Return why a reference is not closed, or nothing."""
    on, _, cells = reference.rpartition("!")
    try:
        for cell in cells.split(":"):
            row_col(cell)
    except ValueError:
        return f"{reference} is no closed range of cells"
    loose = ":" in cells and on in ("Data", "Catalog") and cells.count("$") != 4
    return f"{reference} is not absolute" if loose else ""


@rule("F08", "Check the inputs it rests on, so that the case cannot come.")
def no_errors(file: File) -> Iterator[Found]:
    """Yield cells that show an error, and errors that wait in a formula.

    That no entry makes one is tried by the tests, with an engine.
    """
    for place, held in file.cells.items():
        if held.kind == "e" or (held.formula and isinstance(held.value, str)
                                and re.match(r"#[A-Z/0!?]+[!?A0]$", held.value)):
            yield place, f"shows {held.value}"
    for place, formula in file.formulas.items():
        if "#" in formula:
            for value, _, sub in tokens(formula):
                if sub == "ERROR":
                    yield place, f"the error {value} waits in the formula"
