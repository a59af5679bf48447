"""The workbook: which sheets there are, from left to right, and what proves them."""

from __future__ import annotations

from functools import lru_cache

from builder.resolve.book import Declared, Front, Model

from . import (
    buoyancy,
    catalog,
    decking,
    framing,
    gangway,
    hardware,
    inputs,
    inputs_afloat,
    inputs_site,
    mooring,
    parts,
    parts_lumber,
    sections,
    sections_afloat,
    sections_site,
    site_loads,
    stability,
    start,
    takeoff,
    weight,
)
from .proof import afloat, connections, hydro, site, wood
from .reference import SOURCES, TERMS

VERSION = "0.1.0"
FURTHER = (parts_lumber, inputs_afloat, inputs_site, sections_site,
           sections_afloat)
SHEETS = (parts, decking, weight, buoyancy, site_loads, stability, gangway, framing, mooring,
          hardware, takeoff)
FAMILIES = (*hydro.families, *afloat.families, *wood.families, *connections.families,
            *site.families)
HEADLINE = (
    sections.purpose, sections.quantity, sections.length, sections.width,
    weight.launch, weight.service, buoyancy.draft_service, buoyancy.free_service,
    buoyancy.free_flotation, stability.shown_tilt["corner"], stability.low["corner"],
    stability.people, stability.half_people,
)
WHOLE = ()


@lru_cache(maxsize=1)
def model() -> Model:
    """Return the declared workbook, placed and proved.

    Raises:
        Faults: everything that is wrong with the declaration.
    """
    front = Front(
        "Floating dock calculation", start.PURPOSE, start.STEPS, HEADLINE, WHOLE, start.PACKS,
        start.CAUTIONS, start.BEYOND, start.CHANGES)
    return Model(Declared(inputs, sections, catalog, SHEETS, FAMILIES, SOURCES, front,
                          "Floating dock calculation", VERSION, FURTHER, TERMS))
