"""The workbook: which sheets there are, from left to right, and what proves them."""

from __future__ import annotations

from functools import lru_cache

from builder.resolve.book import Declared, Front, Model

from . import (
    as_built,
    buoyancy,
    catalog,
    curves,
    cut_list,
    cut_list_order,
    decking,
    drawing,
    framing,
    gangway,
    hardware,
    inputs,
    inputs_afloat,
    inputs_buying,
    inputs_pages,
    inputs_site,
    inputs_yard,
    launch,
    launch_form,
    mooring,
    orders,
    parts,
    parts_lumber,
    price,
    quote,
    rates,
    readings,
    sections,
    sections_afloat,
    sections_site,
    setout,
    site_loads,
    site_visit,
    stability,
    start,
    takeoff,
    upkeep,
    weight,
    yard,
    yard_tape,
)
from .proof import afloat, connections, hydro, money, site, wood
from .proof import launch as launched
from .reference import SOURCES, TERMS
from .terms_sketches import SKETCHES

VERSION = "0.1.0"
FURTHER = (parts_lumber, inputs_afloat, inputs_site, inputs_yard, sections_site, sections_afloat,
           inputs_buying, inputs_pages)
SHEETS = (parts, decking, weight, buoyancy, site_loads, stability, gangway, framing, hardware,
          mooring, takeoff, cut_list_order, cut_list, orders, rates, price, quote, setout,
          yard_tape, yard, readings, launch, as_built, launch_form, upkeep, site_visit, drawing,
          curves)
FAMILIES = (*hydro.families, *afloat.families, *wood.families, *connections.families,
            *site.families, *launched.families, *money.families)
HEADLINE = (
    ("Purpose", sections.purpose),
    ("How many are built", sections.quantity),
    ("Length, outside of headers", sections.length),
    ("Width, outside of rails", sections.width),
    ("Weight as launched", weight.launch),
    ("Weight in service", weight.service),
    ("Draft: how deep it sits, in service", buoyancy.draft_service),
    ("Deck above water, in service", buoyancy.free_service),
    ("Deck above water, flotation load on it", buoyancy.free_flotation),
    ("Tilt with the point load at a corner", stability.shown_tilt["corner"]),
    ("That corner above water", stability.low["corner"]),
    ("People who may stand spread out", stability.people),
    ("People who may stand on any one half", stability.half_people),
)
WHOLE = (
    ("Weight of all sections as launched", curves.all_weight),
    ("Materials to order", orders.materials),
    ("Client's total (demo prices until yours)", price.client_total),
)


@lru_cache(maxsize=1)
def model() -> Model:
    """Return the declared workbook, placed and proved.

    Raises:
        Faults: everything that is wrong with the declaration.
    """
    front = Front(
        "Floating dock calculation", start.PURPOSE, start.STEPS, HEADLINE, WHOLE, start.PACKS,
        start.CAUTIONS, start.BEYOND, start.CHANGES, start.QUESTIONS)
    return Model(Declared(inputs, sections, catalog, SHEETS, FAMILIES, SOURCES, front,
                          "Floating dock calculation", VERSION, FURTHER, TERMS,
                          (orders.missing,), inputs_pages.worked_type, curves.sheet, SKETCHES))
