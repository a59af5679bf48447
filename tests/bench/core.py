"""The core of the workbook by itself: the sheets for which the limits on size and time were set.

They are the front, inputs, catalog and data, the calculation from Parts to Takeoff with what that
reads, Checks, Proof, Names and Sources.  Stability, mooring, gangway, price, yard, launch, the
drawings, the worked page and the terms came later, with no limit of their own.
"""

from __future__ import annotations

from dataclasses import replace
from types import ModuleType

from builder.language import Family, Row
from builder.resolve.book import Model
from builder.resolve.graph import needs_of
from builder.sheets.book import model

WANTED = ("Parts", "Decking", "Weight", "Buoyancy", "Framing", "Hardware", "Takeoff")
"""Calculation sheets of the core.  Those they read come with them (SiteLoads, whose current pushes
on float lags): a row may read no row that stands on no sheet.  Inputs and Sections come whole."""
LATER = ("Worked", "Terms", "Sketches")
"""Other sheets that the core does without."""


def core() -> Model:
    """Return the declared core: its sheets, the families they prove, the headline they bear."""
    whole = model().declared
    modules = _closed(whole.calculation)
    names = {m.sheet.name for m in modules} | {whole.inputs.sheet.name, whole.sections.sheet.name}

    def stands(row: Row) -> bool:  # a constant stands on Data
        return row.sheet is None or row.sheet.name in names

    gone = {m.sheet.name for m in whole.calculation}.union(LATER) - names
    front = replace(
        whole.front, headline=tuple(line for line in whole.front.headline if stands(line[1])),
        whole=tuple(line for line in whole.front.whole if stands(line[1])),
        packs=tuple((title, tuple(name for name in sheets if name not in gone))
                    for title, sheets in whole.front.packs))
    return Model(replace(whole, calculation=modules, front=front, none_left=(), worked=None,
                         bars=None, terms=None, sketches=(),
                         families=[f for f in whole.families if all(map(stands, _rows(f)))]))


def _closed(modules) -> list[ModuleType]:
    """Return the wanted modules and all whose rows they read, in the order of the workbook."""
    by_name = {m.sheet.name: m for m in modules}
    found: set[str] = set()
    todo = [name for name in WANTED if name in by_name]
    if len(todo) != len(WANTED):
        raise LookupError(f"the workbook lacks one of {WANTED}")
    while todo:
        name = todo.pop()
        if name not in found:
            found.add(name)
            read = {need.sheet for row in by_name[name].sheet.rows for need in needs_of(row)}
            todo += [sheet.name for sheet in read if sheet and sheet.name in by_name]
    return [m for m in modules if m.sheet.name in found]


def _rows(one: Family) -> list[Row]:
    return [*one.given, *one.rows, *one.want]
