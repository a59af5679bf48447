"""The workbook: which sheets there are, from left to right, and what proves them."""

from __future__ import annotations

from functools import lru_cache

from builder.resolve.book import Declared, Front, Model

from . import (
    catalog,
    inputs,
    parts,
    sections,
    start,
    takeoff,
)
from .reference import SOURCES

VERSION = "0.1.0"
SHEETS = (parts, takeoff)
FAMILIES = ()
HEADLINE = ()


@lru_cache(maxsize=1)
def model() -> Model:
    """Return the declared workbook, placed and proved.

    Raises:
        Faults: everything that is wrong with the declaration.
    """
    front = Front(
        "Floating dock calculation", start.PURPOSE, start.STEPS, HEADLINE, start.CAUTIONS,
        start.BEYOND, start.CHANGES)
    return Model(Declared(inputs, sections, catalog, SHEETS, FAMILIES, SOURCES, front,
                          "Floating dock calculation", VERSION))
