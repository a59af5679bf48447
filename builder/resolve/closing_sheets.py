"""Names and Free: how cells are called, and a page for the reader's own sums."""

from __future__ import annotations

from collections.abc import Sequence

from builder.language import Table
from builder.language.units import TEXT

from .cells import Place, SheetPlan
from .frame import HEAD, LISTED, SECTIONS, UNDER, Page, letter
from .input_sheets import Typing, allowed_words
from .places import Places, address, section_place
from .sketch_sheet import NAME as SKETCHES
from .sketch_sheet import Sketch, place_of


def input_names(typing: Typing, places: Places) -> dict[str, Place]:
    """Return the workbook names of the typed cells: a section's ends in its letter."""
    names: dict[str, Place] = {}
    for row, place in typing.typed.items():
        if row in places.sections:
            for k, section in enumerate(SECTIONS):
                names[f"{row.key}_{section}"] = section_place(place, k)
        else:
            names[row.key] = place
    return names


def result_names(sheets, places: Places) -> dict[str, Place]:
    """Return the workbook names of the chief results."""
    names: dict[str, Place] = {}
    for sheet in sheets:
        for row in sheet.rows:
            if not getattr(row, "chief", False):
                continue
            name = f"{sheet.name.lower()}_{row.key}"
            if row in places.sections:
                for k, section in enumerate(SECTIONS):
                    names[f"{name}_{section}"] = section_place(places.rows[row], k)
            else:
                names[name] = places.rows[row]
    return names


def names_sheet(typing: Typing, places: Places, sheets, free: dict[str, Place]) -> SheetPlan:
    """Build the list of names: inputs, chief results, the free cells of Proof."""
    page = Page("Names", "Names", [40, 52, 20, 8, 68],
                "A name may be typed in the name box to go to its cell.", LISTED - 1)
    page.heads(HEAD, ["Name", "What it is", "Cell", "Unit", "Allowed"])
    y = LISTED
    for row, place in typing.typed.items():
        span = row in places.sections
        name = f"{row.key}_A to {row.key}_F" if span else row.key
        cell = f"{address(place)} to F" if span else address(place)
        y = _line(page, y, name, row.label, cell, row.unit, allowed_words(row))
    for sheet in sheets:
        for row in sheet.rows:
            if getattr(row, "chief", False):
                name = f"{sheet.name.lower()}_{row.key}"
                span = row in places.sections
                place = address(places.rows[row])
                y = _line(page, y, f"{name}_A to _F" if span else name, row.label,
                          f"{place} to F" if span else place, row.unit, "result")
    for name, place in free.items():
        y = _line(page, y, name, "A case of your own on Proof", address(place), "", "free cell")
    return page.done(4)


def _line(page: Page, y: int, name: str, what: str, cell: str, unit: str, allowed: str) -> int:
    page.text(y, 0, name, "label")
    page.text(y, 1, what, "label")
    page.text(y, 2, cell.replace("$", ""), "source")
    page.text(y, 3, "" if unit == TEXT else unit, "unit")
    page.text(y, 4, allowed, "source")
    return y + 1


def free_sheet() -> SheetPlan:
    """Build the free page: not protected, nothing on it is read elsewhere."""
    page = Page("Free", "Free page", [14] * 10,
                "For your own sums and notes. Nothing here is read by another sheet.", UNDER)
    page.text(UNDER + 1, 0, "This page is not protected.", "subtitle")
    plan = page.done(9, frozen=(0, 0), repeat=(0, 0))
    plan.protect = False
    return plan


def terms_sheet(table: Table, sketches: Sequence[Sketch] = ()) -> SheetPlan:
    """Build the list of terms: each in one line, where it is met first, its sketch."""
    page = Page("Terms", table.title, [26, 11, 102, 16],
                "The words of the trade as they are used here.", LISTED - 1)
    page.heads(HEAD, ["Term", "Sketch", "What it means", "Where"])
    drawn = {term: k for k, sketch in enumerate(sketches) for term in sketch.shows}
    for y, (term, (meaning, where)) in enumerate(
            zip(table.keys, table.lines, strict=True), start=LISTED):
        page.text(y, 0, term, "label")
        page.text(y, 2, meaning, "label")
        page.text(y, 3, where, "label")
        if term in drawn:
            row, col = place_of(drawn[term])
            page.link(y, 1, f"{SKETCHES}!{letter(col)}{row + 1}", f"Sketch {drawn[term] + 1}")
    return page.done(3)
