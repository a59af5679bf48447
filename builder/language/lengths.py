"""Lengths as a builder reads them: feet, inches and sixteenths."""

from __future__ import annotations

from math import gcd

from .expressions import Expr, bare, joined, shown
from .functions import remainder, whole_down
from .tables import Table

INCH, FOOT = 16, 12
"""Sixteenths in an inch, inches in a foot."""


def _fraction(sixteenths: int) -> str:
    if not sixteenths:
        return '"'
    shared = gcd(sixteenths, INCH)
    return f' {sixteenths // shared}/{INCH // shared}"'


FRACTIONS = Table(
    "fractions", "Fractions of an inch", "arithmetic", "fraction", {},
    [_fraction(k) for k in range(INCH)], [() for _ in range(INCH)],
    [("", "arithmetic", "") for _ in range(INCH)])


def sixteenths(inches) -> Expr:
    """Return the whole sixteenths nearest to a length [in], as a bare number."""
    return whole_down(INCH * bare(inches, "in") + 0.5)


def feet_inches(n) -> Expr:
    """Return the words of a length, such as 12' 4 3/16", from a row of whole sixteenths."""
    feet = whole_down(n / (INCH * FOOT))
    inches = remainder(whole_down(n / INCH), FOOT)
    return joined(shown(feet), "' ", shown(inches), FRACTIONS.at(1 + remainder(n, INCH)).key)
