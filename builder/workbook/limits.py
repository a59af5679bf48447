"""What the file format allows, checked before anything is written.

A spreadsheet program refuses or mends a file that breaks these in silence, and the writer
library passes some of them.  ``faults`` returns every fault found, each naming its cell; an
empty list means the book can be written.
"""

from __future__ import annotations

import math
import re
from collections.abc import Container, Iterator, Mapping
from functools import cache

from builder.resolve.cells import Book, Cell, InputRule, Place, SheetPlan
from builder.workbook.function_names import FUNCTION_NAMES
from builder.workbook.styles import is_input, style_fault

# ECMA-376 limits of cell references (last cell XFD1048576) and of strings; memory.
ROWS = 1_048_576
COLUMNS = 16_384
TEXT = 32_767
FORMULA = 8_192
NAME = 255
SHEET = 31
HEADER = 255
PROPERTY = 255
# Implementation notes to ISO/IEC 29500-1, note 2.1.613 on 18.3.1.32 dataValidation; seen.
# The writer library lets an error text of 225 to 255 through, which the program then refuses.
TITLE = 32
MESSAGE = 255
ERROR = 224
# Our choice: a screen of column headings must leave room for what scrolls.
FROZEN_ROWS = 6

KINDS = ("text", "number", "formula", "blank", "link")
ERROR_VALUES = ("#DIV/0!", "#N/A", "#NAME?", "#NULL!", "#NUM!", "#REF!", "#VALUE!")
_SHEET_NAME = re.compile(r"[A-Za-z][A-Za-z0-9_]*")
_NAME = re.compile(r"[A-Za-z_][A-Za-z0-9_]*")
_CELL_LIKE = re.compile(r"([A-Za-z]{1,3})([0-9]+)")
_ROW_COLUMN = re.compile(r"[rRcC]([0-9].*)?|[rR][cC]([0-9].*)?")
_TARGET = re.compile(r"([A-Za-z][A-Za-z0-9_]*)!([A-Z]{1,3})([1-9][0-9]*)")
_LIST = re.compile(
    r"=([A-Za-z][A-Za-z0-9_]*)!\$([A-Z]{1,3})\$([1-9][0-9]*):\$([A-Z]{1,3})\$([1-9][0-9]*)"
)
# Characters XML 1.0 cannot carry (W3C XML 1.0, 2.2 Characters; memory).
_UNPRINTABLE = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\ud800-\udfff\ufffe\uffff]")

Spots = Mapping[str, set[tuple[int, int]]]
"""Rows and columns that hold a cell, by sheet."""


class WorkbookError(ValueError):
    """The book cannot be written as it stands.  ``faults`` lists every reason."""

    def __init__(self, faults: list[str]):
        self.faults = faults
        super().__init__("\n".join(faults))


@cache
def column_name(col: int) -> str:
    """Return the letters of a column counted from 0."""
    letters = ""
    col += 1
    while col:
        col, rest = divmod(col - 1, 26)
        letters = chr(65 + rest) + letters
    return letters


def column_number(letters: str) -> int:
    """Return the number of a column, counted from 0, from its letters."""
    number = 0
    for letter in letters.upper():
        number = number * 26 + ord(letter) - 64
    return number - 1


def address(place: Place) -> str:
    """Return a place as it is read in the program, such as ``Checks!A12``."""
    sheet, row, col = place
    return f"{sheet}!{column_name(col)}{row + 1}"


def units16(text: str) -> int:
    """Return the length of a text in UTF-16 units, as the format counts it."""
    return len(text) if text.isascii() else len(text.encode("utf-16-le", "surrogatepass")) // 2


def _longer(text: str, most: int) -> bool:
    """Return whether a text has more than ``most`` UTF-16 units, of which a letter takes two."""
    return len(text) * 2 > most and units16(text) > most


def _cell_like(name: str) -> bool:
    found = _CELL_LIKE.fullmatch(name)
    return bool(found) and column_number(found[1]) < COLUMNS and int(found[2]) <= ROWS


def lawful_name(name: str) -> str | None:
    """Return why ``name`` cannot name a cell of the workbook, or None when it can.

    The grammar is that of ECMA-376 defined names (memory), narrowed by us to letters, digits and
    underscores so that every program reads it alike.
    """
    if not name:
        return "the name is empty"
    if len(name) > NAME:
        return f"the name has {len(name)} characters, more than {NAME}"
    if not _NAME.fullmatch(name):
        return "a name is letters, digits and underscores and begins with a letter or underscore"
    if name.upper() in ("TRUE", "FALSE"):
        return "the name is a truth value"
    if name.upper() in FUNCTION_NAMES:
        return "the name is that of a function"
    if _cell_like(name):
        return "the name reads as a cell address"
    if _ROW_COLUMN.fullmatch(name):
        return "the name reads as a row and column address"
    if name.upper().startswith(("_XL", "PRINT_AREA", "PRINT_TITLES")):
        return "the name is kept for the program's own use"
    return None


def lawful_sheet_name(name: str) -> str | None:
    """Return why ``name`` cannot name a sheet without quotes in references, or None."""
    if len(name) > SHEET:
        return f"the name has {len(name)} characters, more than {SHEET}"
    if not _SHEET_NAME.fullmatch(name):
        return "a sheet name is letters, digits and underscores and begins with a letter"
    if _cell_like(name) or _ROW_COLUMN.fullmatch(name) or name.upper() in ("TRUE", "FALSE"):
        return "the name would need quotes in a reference"
    return None


def split_link(content: str) -> tuple[str, str, str]:
    """Return sheet, cell and text of a link's content ``Sheet!A1|text``.

    Raises ValueError when it is not of that form.
    """
    target, bar, text = content.partition("|")
    found = _TARGET.fullmatch(target)
    if not (bar and text.strip() and found):
        raise ValueError(f"a link is Sheet!A1|text, not {content!r}")
    return found[1], found[2] + found[3], text


def faults(book: Book, values: Mapping[Place, float | str]) -> list[str]:
    """Return every reason why the book cannot be written, in reading order."""
    spots = {sheet.name: {(c.row, c.col) for c in sheet.cells} for sheet in book.sheets}
    return [
        *_book_faults(book),
        *_name_faults(book, spots),
        *(fault for sheet in book.sheets for fault in _sheet_faults(sheet)),
        *(fault for sheet in book.sheets
          for fault in _cell_faults(sheet, values, spots)),
        *(fault for sheet in book.sheets for fault in _rule_faults(book, sheet)),
    ]


def _book_faults(book: Book) -> Iterator[str]:
    if not book.sheets:
        yield "the workbook has no sheet"
    for what in ("title", "subject", "author", "version", "inputs_hash"):
        text = getattr(book, what)
        if not text.strip():
            yield f"the workbook's {what} is empty"
        if units16(text) > PROPERTY:
            yield f"the workbook's {what} is longer than {PROPERTY} characters"
        if _UNPRINTABLE.search(text):
            yield f"the workbook's {what} holds a character that cannot be written"
    seen: set[str] = set()
    for sheet in book.sheets:
        if why := lawful_sheet_name(sheet.name):
            yield f"sheet {sheet.name!r}: {why}"
        if sheet.name.lower() in seen:
            yield f"sheet {sheet.name!r}: the name is given twice"
        seen.add(sheet.name.lower())


def _name_faults(book: Book, spots: Spots) -> Iterator[str]:
    seen: set[str] = set()
    for name, place in book.names.items():
        if why := lawful_name(name):
            yield f"name {name!r}: {why}"
        if name.lower() in seen:
            yield f"name {name!r}: it is given twice but for capitals"
        seen.add(name.lower())
        if place[1:] not in spots.get(place[0], ()):
            yield f"name {name!r}: {address(place)} holds no cell"


def _sheet_faults(sheet: SheetPlan) -> Iterator[str]:
    at = f"sheet {sheet.name}"
    first = next((c for c in sheet.cells if (c.row, c.col) == (0, 0)), None)
    if first is None or first.kind not in ("text", "formula"):
        yield f"{at}: A1 does not hold the sheet's title"
    if not sheet.title.strip():
        yield f"{at}: the title is empty"
    if sheet.frozen[0] > FROZEN_ROWS:
        yield f"{at}: {sheet.frozen[0]} rows are frozen, more than {FROZEN_ROWS}"
    if not 0 <= sheet.repeat_rows[0] <= sheet.repeat_rows[1]:
        yield f"{at}: the rows repeated on each page run backwards"
    if sheet.last == (0, 0) and len(sheet.cells) > 1:
        yield f"{at}: no print area is set"
    if any(width <= 0 for width in sheet.widths):
        yield f"{at}: a column of width 0 would be hidden"
    if any(height <= 0 for height in sheet.heights.values()):
        yield f"{at}: a row of height 0 would be hidden"
    if any(row <= 0 for row in sheet.page_breaks):
        yield f"{at}: a page break stands above the first row"
    for top, left, bottom, right in sheet.verdicts:
        if not (0 <= top <= bottom < ROWS and 0 <= left <= right < COLUMNS):
            yield f"{at}: a range of verdicts runs backwards or off the sheet"


def _cell_faults(sheet: SheetPlan, values: Mapping[Place, float | str],
                 spots: Spots) -> Iterator[str]:
    wrong_styles = {style: style_fault(style) for style in {c.style for c in sheet.cells}}
    doubled = len(spots[sheet.name]) < len(sheet.cells)
    seen: set[tuple[int, int]] = set()
    for cell in sheet.cells:
        why = wrong_styles[cell.style] or _content_fault(cell, spots)
        if why is None and cell.kind == "formula":
            place = sheet.name, cell.row, cell.col
            why = _value_fault(values[place]) if place in values else "the formula has no value"
        if why:
            yield f"{address((sheet.name, cell.row, cell.col))}: {why}"
        if doubled:
            if (cell.row, cell.col) in seen:
                yield (f"{address((sheet.name, cell.row, cell.col))}: two cells stand in one "
                       "place")
            seen.add((cell.row, cell.col))


def _content_fault(cell: Cell, sheets: Container[str]) -> str | None:
    if not (0 <= cell.row < ROWS and 0 <= cell.col < COLUMNS):
        return "the cell stands off the sheet"
    kind, content = cell.kind, cell.content
    if kind == "number":
        return _number_fault(content)
    if kind == "blank":
        return None if content is None else "a blank cell has contents"
    if kind not in KINDS:
        return f"no cell is of kind {kind!r}"
    if not isinstance(content, str):
        return f"a {kind} cell holds {content!r}, which is no text"
    if kind == "formula":
        return _formula_fault(content)
    if kind == "link":
        return _link_fault(content, sheets)
    return _text_fault(content)


def _number_fault(content: object) -> str | None:
    if isinstance(content, bool) or not isinstance(content, (int, float)):
        return f"{content!r} is no number"
    return None if math.isfinite(content) else f"{content!r} cannot be written"


def _text_fault(content: str) -> str | None:
    if content == "":
        return "the text is empty; a cell without contents is of kind blank"
    if _longer(content, TEXT):
        return f"the text is longer than {TEXT} characters"
    if not content.isprintable() and _UNPRINTABLE.search(content):
        return "the text holds a character that cannot be written"
    return None


def _formula_fault(content: str) -> str | None:
    if content[:1] != "=" or len(content) < 2:
        return "a formula begins with = and goes on"
    if _longer(content, FORMULA):
        return f"the formula is longer than {FORMULA} characters"
    # The quick formula preparation leaves such names as they are, so they must not occur.
    if "_xl" in content:
        return "the formula uses a function kept for newer programs"
    return _text_fault(content)


def _link_fault(content: str, sheets: Container[str]) -> str | None:
    try:
        sheet, cell, text = split_link(content)
    except ValueError as fault:
        return str(fault)
    if sheet not in sheets or not _cell_like(cell):
        return f"the link leads to {sheet}!{cell}, which is not in the workbook"
    if text == f"{sheet}!{cell}":
        return "the link's text is its bare address"
    return _text_fault(text)


def _value_fault(value: object) -> str | None:
    if isinstance(value, str):
        if value in ERROR_VALUES:
            return f"the formula's value is the error {value}"
        return _text_fault(value)
    return _number_fault(value)


def _rule_faults(book: Book, sheet: SheetPlan) -> Iterator[str]:
    inputs = {(c.row, c.col) for c in sheet.cells if is_input(c.style)}
    ruled: set[tuple[int, int]] = set()
    sheets = {s.name for s in book.sheets}
    for rule in sheet.rules:
        at = address((sheet.name, rule.row, rule.col))
        for spot in rule.spots():
            here = address((sheet.name, *spot))
            if spot not in inputs:
                yield f"{here}: an input rule on a cell that is no input"
            if spot in ruled:
                yield f"{here}: two input rules on one cell"
            ruled.add(spot)
        yield from (f"{at}: {why}" for why in rule_faults(rule, sheets))
    for row, col in sorted(inputs - ruled):
        yield f"{address((sheet.name, row, col))}: an input without an input rule"


def rule_faults(rule: InputRule, sheets: set[str]) -> Iterator[str]:
    """Yield every reason why an input rule cannot be written, words and limits."""
    for what, text, most in (
        ("title", rule.title, TITLE),
        ("message", rule.message, MESSAGE),
        ("error text", rule.error, ERROR),
    ):
        if not text.strip():
            yield f"the rule's {what} is empty"
        if units16(text) > most:
            yield f"the rule's {what} has {units16(text)} characters, more than {most}"
        if _UNPRINTABLE.search(text):
            yield f"the rule's {what} holds a character that cannot be written"
    if rule.kind in ("decimal", "whole"):
        yield from _limit_faults(rule)
    elif rule.kind == "text":
        if rule.most is None or not 1 <= rule.most <= TEXT or rule.most != int(rule.most):
            yield f"the rule's largest length is {rule.most!r}"
    elif rule.kind == "list":
        yield from _list_faults(rule.source, sheets)
    else:
        yield f"no input rule is of kind {rule.kind!r}"


def _limit_faults(rule: InputRule) -> Iterator[str]:
    limits = (rule.least, rule.most)
    wrong = [_number_fault(limit) for limit in limits]
    if any(wrong):
        yield f"the rule lacks a limit: least {rule.least!r}, most {rule.most!r}"
    elif rule.least > rule.most:
        yield f"the rule's limits run backwards: {rule.least} to {rule.most}"
    elif rule.kind == "whole" and any(limit != int(limit) for limit in limits):
        yield f"the rule for whole numbers has a fraction in its limits: {limits}"


def _list_faults(source: str, sheets: set[str]) -> Iterator[str]:
    found = _LIST.fullmatch(source)
    if not found or found[1] not in sheets:
        yield f"the rule's list is {source!r}, no absolute range of a sheet of the workbook"
        return
    _, left, top, right, bottom = found.groups()
    if left != right or int(top) > int(bottom) or not _cell_like(right + bottom):
        yield f"the rule's list {source!r} is not one column read downward"
