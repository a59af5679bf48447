"""Where two answers differ."""

from __future__ import annotations

import re
from collections.abc import Iterable

from builder.engine.values import Value, Values, address
from builder.resolve.cells import Place

TOLERANCE = 1e-9
"""Two numbers are the same within this share of the larger one, or this much below 1 [-]."""

KEPT, DIGITS = 15, 12
"""Digits of a number that every program keeps, and those that must agree where more are shown."""

_LONG = re.compile(rf"(?<![\d.,])(?=(?:[,.]?\d){{{KEPT + 1}}})\d[\d,]*(?:\.\d+)?")
_NOTHING = re.compile(r"(?<![\w.,])-(0(?:\.0*)?)(?![.,]?\d)")


def same(a: Value, b: Value) -> bool:
    """Say whether two values are the same: numbers within the tolerance, texts exactly.

    A truth value counts as 0 or 1, because not every program keeps it apart from a number.
    The text ``-0.00`` is the text ``0.00``, by itself or among words: engines differ on the sign of
    a nothing.  In a number of more than 15 digits among words only the first 12 count: no program
    keeps the last ones, and those before them are worth what the steps left of them.
    """
    if isinstance(a, str) or isinstance(b, str):
        return isinstance(a, str) and isinstance(b, str) and _plain(a) == _plain(b)
    return abs(a - b) <= TOLERANCE * max(1.0, abs(a), abs(b))


def _plain(text: str) -> str:
    """Return ``text`` without the sign of a nothing, and long numbers cut to 12 digits."""
    if "-0" in text:
        text = _NOTHING.sub(r"\1", text)
    return _LONG.sub(_shortened, text)


def _shortened(found: re.Match) -> str:
    """Return a number as written, but with noughts for the digits after the twelfth."""
    return f"{float(found[0].replace(',', '')):.{DIGITS - 1}e}"


def differences(a: Values, b: Values, places: Iterable[Place] | None = None) -> list[str]:
    """Return one line for each place where ``a`` and ``b`` differ, or where one has no value.

    ``places`` are the cells to compare; without it, all that either of them knows.
    """
    wanted = list(dict.fromkeys([*a, *b])) if places is None else list(places)
    lines = []
    for place in wanted:
        if place not in a or place not in b:
            gone = " and ".join(n for n, v in (("first", a), ("second", b)) if place not in v)
            lines.append(f"{address(place)}: no value in the {gone}")
        elif not same(a[place], b[place]):
            lines.append(f"{address(place)}: {a[place]!r} against {b[place]!r}")
    return lines
