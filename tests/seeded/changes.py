"""One small change in a formula: an operator, a constant, a reference, a range, a function.

A formula is read as signs, numbers, words in quotes, addresses and names of functions; nothing
of the program's expressions is known here.  What guards a cell until its inputs are there,
``IF(E$5=2, … ,"–")``, is changed only where nothing else is asked for: it is alike in all cells.
"""

from __future__ import annotations

import random
import re
from collections.abc import Callable
from dataclasses import dataclass

from builder.engine.values import letters, row_col

TOKEN = re.compile(
    r"(?P<text>\"[^\"]*\")"
    r"|(?P<area>(?:[A-Za-z]+!)?\$?[A-Z]{1,3}\$?\d+:\$?[A-Z]{1,3}\$?\d+)"
    r"|(?P<cell>(?:[A-Za-z]+!)?\$?[A-Z]{1,3}\$?\d+(?![\w(]))"
    r"|(?P<number>\d+\.?\d*(?:E-?\d+)?)"
    r"|(?P<call>[A-Z][A-Z0-9.]*\()"
    r"|(?P<sign><=|>=|<>|[-+*/^<>=&])"
    r"|(?P<mark>[(),])")
GUARD = re.compile(r"=IF\(\$?[A-Z]+\$?\d+[=>][012],")
OPERATORS = {"+": "-", "-": "+", "*": "/", "/": "*", "^": "*", "<": ">", ">": "<",
             "<=": ">=", ">=": "<=", "=": "<>", "<>": "="}
CALLS = {"MAX(": "MIN(", "MIN(": "MAX(", "AND(": "OR(", "OR(": "AND(", "SUM(": "MAX(",
         "ABS(": "(", "INT(": "(", "SQRT(": "(", "SIN(": "COS(", "COS(": "SIN(",
         "ISNUMBER(": "ISTEXT(", "ISTEXT(": "ISNUMBER(", "LARGE(": "SMALL(",
         "NOT(": "(", "COUNTA(": "COUNT(", "EXP(": "(", "LN(": "(", "TAN(": "SIN("}
UNIT_FACTORS = {"12": "1", "144": "12", "1728": "144", "16": "12", "192": "12"}
TOLERANCES = ("1E-9", "1.000000001", "0.500000001", "0.500001")
"""Allowances for rounding: a change of one alters no result by design, so they are left alone."""
KINDS = ("operator", "constant", "unit factor", "reference", "range end", "function", "branches",
         "word compared")


@dataclass(frozen=True)
class Token:
    """A piece of a formula: what it is, what it says, where it begins."""

    kind: str
    text: str
    at: int


@dataclass(frozen=True)
class Change:
    """One change: its kind, the formula as it was and as it is now."""

    kind: str
    before: str
    after: str


def tokens(formula: str) -> list[Token]:
    """Return the pieces of a formula after its equals sign.

    Raises:
        ValueError: something that no formula of the workbook holds.
    """
    found, at = [], 1
    while at < len(formula):
        match = TOKEN.match(formula, at)
        if match is None:
            raise ValueError(f"{formula[at:]!r} in {formula!r}")
        found.append(Token(match.lastgroup, match[0], at))
        at = match.end()
    return found


def changes(formula: str, is_filled: Callable[[str], bool], draw: random.Random,
            guard: bool = False) -> dict[str, list[Change]]:
    """Return the changes that can be made to a formula, by kind.

    ``is_filled`` says whether an address holds something, so that a reference is moved to a
    neighbour that could be meant.  ``guard`` says whether the guard may be changed too.
    """
    pieces = tokens(formula)
    opening = GUARD.match(formula)
    first = 0 if guard or opening is None else opening.end()
    last = len(formula) if guard or opening is None else formula.rfind(",")
    found: dict[str, list[Change]] = {}

    def put(kind: str, token: Token, text: str) -> None:
        after = formula[:token.at] + text + formula[token.at + len(token.text):]
        if after != formula:
            found.setdefault(kind, []).append(Change(kind, formula, after))

    for number, piece in enumerate(pieces):
        if not first <= piece.at < last:
            continue
        before = pieces[number - 1] if number else Token("mark", "(", 0)
        if piece.kind == "sign" and piece.text in OPERATORS:
            unary = before.text in ("(", ",") or before.kind in ("sign", "call")
            if not unary or piece.text == "-":
                if not _alike_by_rule(pieces, number):
                    put("operator", piece, OPERATORS[piece.text])
        elif piece.kind == "number" and piece.text not in TOLERANCES:
            if piece.text in UNIT_FACTORS and before.text in ("*", "/"):
                put("unit factor", piece, UNIT_FACTORS[piece.text])
            for text in _constants(piece.text):
                # The one line of a range across is its line 1, and is line 0 too.
                if not (text == "0" and before.text == "," and pieces[number - 2].kind == "area"):
                    put("constant", piece, text)
        elif piece.kind == "cell":
            for text in _near(piece.text, is_filled):
                put("reference", piece, text)
        elif piece.kind == "area":
            for text in _other_ends(piece.text):
                put("range end", piece, text)
        elif piece.kind == "call" and piece.text in CALLS and not (
                piece.text == "SUM(" and pieces[number + 1].kind == "cell"):
            put("function", piece, CALLS[piece.text])
        elif piece.kind == "text" and before.text in ("=", "<>") and len(piece.text) > 2:
            put("word compared", piece, piece.text[:-1] + '?"')
        if piece.kind == "call" and piece.text == "IF(" and (text := _swapped(formula, piece)):
            found.setdefault("branches", []).append(Change("branches", formula, text))
    return found


def _alike_by_rule(pieces: list[Token], number: int) -> bool:
    """Say whether a changed sign alters nothing: before an allowance, or times and over 1."""
    after = pieces[number + 1] if number + 1 < len(pieces) else Token("mark", ")", 0)
    return after.text in TOLERANCES or (pieces[number].text in "*/" and after.text == "1")


def _constants(text: str) -> list[str]:
    value = float(text)
    if value == 0:
        return ["1"]
    if value == int(value):
        return [str(int(value) + 1), str(int(value) - 1)]
    return [f"{value * 1.1:.10g}", f"{value / 10:.10g}"]


def _split(address: str) -> tuple[str, str, str, str, int]:
    """Return sheet with its mark, dollar, column, dollar, row of an address."""
    parts = re.fullmatch(r"((?:[A-Za-z]+!)?)(\$?)([A-Z]+)(\$?)(\d+)", address)
    return parts[1], parts[2], parts[3], parts[4], int(parts[5])


def _near(address: str, is_filled: Callable[[str], bool]) -> list[str]:
    """Return neighbours that hold something: the rows above and below, the columns beside."""
    sheet, a, column, b, row = _split(address)
    found = []
    for step in (1, -1):
        for far in (1, 2, 3):
            other = f"{sheet}{a}{column}{b}{row + step * far}"
            if row + step * far > 0 and is_filled(other):
                found.append(other)
                break
    x = row_col(f"{column}1")[1]
    for step in (1, -1):
        other = f"{sheet}{a}{letters(max(0, x + step))}{b}{row}"
        if x + step >= 0 and is_filled(other):
            found.append(other)
    return found


def _other_ends(area: str) -> list[str]:
    """Return the area with an end a line, or in one line a column, shorter."""
    first, _, last = area.partition(":")
    sheet, a, left, b, top = _split(first)
    _, c, right, d, bottom = _split(last)
    if top != bottom:
        return [f"{first}:{c}{right}{d}{bottom - 1}", f"{sheet}{a}{left}{b}{top + 1}:{last}"]
    x1, x2 = (row_col(f"{col}1")[1] for col in (left, right))
    if x1 == x2:
        return []
    return [f"{first}:{c}{letters(x2 - 1)}{d}{bottom}",
            f"{sheet}{a}{letters(x1 + 1)}{b}{top}:{last}"]


def moved(formula: str, columns: int) -> str | None:
    """Return a formula as it stands so many columns to the right; None if that leaves the sheet."""
    found, at = [], 0
    for piece in tokens(formula):
        if piece.kind in ("cell", "area"):
            ends = []
            for end in piece.text.split(":"):
                sheet, a, column, b, row = _split(end)
                x = row_col(f"{column}1")[1] + (0 if a else columns)
                if x < 0:
                    return None
                ends.append(f"{sheet}{a}{letters(x)}{b}{row}")
            found.append(formula[at:piece.at] + ":".join(ends))
            at = piece.at + len(piece.text)
    return "".join(found) + formula[at:]


def elsewhere(formula: str, sheet: str) -> str:
    """Return a formula of a sheet as it must be written on another."""
    found, at = [], 0
    for piece in tokens(formula):
        if piece.kind in ("cell", "area") and "!" not in piece.text:
            found.append(formula[at:piece.at] + f"{sheet}!{piece.text}")
            at = piece.at + len(piece.text)
    return "".join(found) + formula[at:]


def _swapped(formula: str, call: Token) -> str | None:
    """Return a formula with the two branches of an IF changed over."""
    start, depth, cuts = call.at + len(call.text), 1, []
    for piece in tokens(formula):
        if piece.at < start:
            continue
        if piece.kind == "call" or piece.text == "(":
            depth += 1
        elif piece.text == ")":
            depth -= 1
            if not depth:
                cuts.append(piece.at)
                break
        elif piece.text == "," and depth == 1:
            cuts.append(piece.at)
    if len(cuts) != 3:
        return None
    one, two, end = cuts
    a, b = formula[one + 1:two], formula[two + 1:end]
    return formula[:one + 1] + b + "," + a + formula[end:]
