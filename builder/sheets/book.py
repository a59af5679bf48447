"""The workbook: which sheets there are, from left to right, and what proves them."""

from __future__ import annotations

from functools import lru_cache

from builder.resolve.book import Declared, Front, Model

from . import (
    buoyancy,
    catalog,
    decking,
    framing,
    hardware,
    inputs,
    parts,
    parts_lumber,
    sections,
    start,
    takeoff,
    weight,
)
from .proof import connections, hydro, wood
from .reference import SOURCES

VERSION = "0.1.0"
FURTHER = (parts_lumber,)
SHEETS = (parts, decking, weight, buoyancy, framing, hardware, takeoff)
FAMILIES = (*hydro.families, *wood.families, *connections.families)
HEADLINE = (
    sections.purpose, sections.quantity, sections.length, sections.width,
    weight.launch, weight.service, buoyancy.draft_service, buoyancy.free_service,
    buoyancy.free_flotation, buoyancy.live_full, buoyancy.GM_crowd, buoyancy.plate,
)


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
                          "Floating dock calculation", VERSION, FURTHER))
