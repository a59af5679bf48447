"""Published examples of list, trim and righting arm, worked by the rows of Stability.

Formulas of textbooks that the sheets replace by exact ones (list by one line, trim by the moment
that trims an inch, the inclining test, free water inside) stand here only, each a row of its own.
"""

from __future__ import annotations

from builder.language import (
    Sheet,
    Text,
    arc_tangent,
    cosine,
    degrees,
    family,
    radians,
    sine,
    tangent,
)

from .. import buoyancy, parts, weight
from .. import inputs as job
from .. import sections as sec
from .. import stability as st
from ..reference import constants, table
from .hydro import OWN, FACTORS, _lines, _made, _merge

_formulas = Sheet("Proof", "Textbook formulas")
row = _formulas.row
FEET, DEEP, LONG_TON = "ft", "in", "long ton"


def _given(label: str, symbol: str, unit: str):
    """Declare a quantity that every case gives; its own formula is never worked."""
    return _formulas.ask(label, symbol, unit, 0, 1e9, "given")
