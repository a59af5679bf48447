"""What an engine answers with, and the error it raises when it cannot."""

from __future__ import annotations

from builder.resolve.cells import Place

Value = float | str | bool
"""What a formula cell shows: a number, a text (an error such as ``#DIV/0!`` is a text), a truth."""

Values = dict[Place, Value]
"""A value for each formula cell."""


class EngineError(Exception):
    """An engine could not work out what it was given; the message says which cell or file."""


def address(place: Place) -> str:
    """Return a place as people write it, such as ``Checks!B3``."""
    sheet, row, col = place
    return f"{sheet}!{a1(row, col)}"


def a1(row: int, col: int) -> str:
    """Return row and column, counted from 0, as a cell address such as ``B3``."""
    return f"{letters(col)}{row + 1}"


def letters(col: int) -> str:
    """Return the letters of a column counted from 0: ``A``, ``Z``, ``AA``."""
    text = ""
    number = col + 1
    while number:
        number, rest = divmod(number - 1, 26)
        text = chr(65 + rest) + text
    return text


def row_col(name: str) -> tuple[int, int]:
    """Return a cell address such as ``B3`` or ``$B$3`` as row and column counted from 0.

    Raises ``ValueError`` if ``name`` is not the address of one cell.
    """
    plain = name.replace("$", "")
    word = plain.rstrip("0123456789")
    digits = plain[len(word) :]
    if not (word.isascii() and word.isalpha() and word.isupper() and digits):
        raise ValueError(f"{name!r} is not the address of one cell")
    col = 0
    for letter in word:
        col = col * 26 + ord(letter) - 64
    return int(digits) - 1, col - 1


def absolute(place: Place) -> str:
    """Return a place as a name's target needs it, such as ``'Checks'!$B$3``."""
    sheet, row, col = place
    doubled = sheet.replace("'", "''")
    return f"'{doubled}'!${letters(col)}${row + 1}"
