"""The whole chain for one random job: every module in turn, its results against the workbook."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field

from builder.engine.values import Values
from builder.jobs import Job
from builder.sheets.book import model
from tests.second import (
    afloat,
    entries,
    framing,
    gangway,
    hardware,
    launched,
    mooring,
    site,
    stability,
    trade,
    trade_names,
)
from tests.second.against import Difference, compare, givens, standing
from tests.second.given import Given, Results

CHAIN = {
    entries: ("Inputs", "Sections"),
    afloat: ("Parts", "Decking", "Weight", "Buoyancy"),
    site: ("SiteLoads",),
    stability: ("Stability",),
    gangway: ("Gangway",),
    framing: ("Framing",),
    hardware: ("Hardware",),
    mooring: ("Mooring",),
    launched: ("Setout", "Launch", "AsBuilt"),
}
"""Module → sheets whose results it works out, in the order in which they rest on one another."""
WHOLE = {trade: trade_names.LEDGERS}
"""The same for what is worked out once for the whole dock."""
DOUBTED = launched.DOUBTED
"""Results in which a module stands against the workbook, and why."""
AT_FAULT: dict[str, str] = {}
"""Results in which a module differs and the workbook is right, and what the module does wrong."""


@dataclass
class Found:
    """What was there to compare: names, verdicts, known differences that were met."""

    names: set[str] = field(default_factory=set)
    verdicts: Counter = field(default_factory=Counter)
    words: dict[str, set] = field(default_factory=dict)
    doubts: set[str] = field(default_factory=set)
    results: int = 0
    ready: int = 0
    stable: int = 0
    plates: int = 0
    overloaded: list[str] = field(default_factory=list)


def covered() -> set[str]:
    """Return the sheets that are worked out again."""
    return {sheet for sheets in (*CHAIN.values(), *WHOLE.values()) for sheet in sheets}


def section_sheets() -> set[str]:
    """Return the calculation sheets with six columns."""
    return {sheet.name for sheet in model().calculation if sheet.scope == "section"}


def work(job: Job, values: Values) -> list[Given]:
    """Work a job out a second time; each section type holds its results in ``done``.

    What rests on a sheet that nobody works out again takes the workbook's value of it.
    """
    types = givens(job, values)
    outside = section_sheets() - covered()
    for one in types:
        one.done = standing(values, one.letter, outside)
    for module in CHAIN:  # all types first: a neighbour's results are needed further on
        for one in types:
            one.done |= module.work(one, one.done)
    return types


def whole(types: list[Given], values: Values) -> Results:
    """Return the results for the whole dock; which boards the saw takes is the workbook's."""
    found: Results = {}
    for module in WHOLE:
        found |= module.work(types[0], trade_names.ledger_values(values))
    return found


def doubted(name: str) -> str | None:
    """Return the name that a result stands under in ``DOUBTED`` or ``AT_FAULT``, if any."""
    base = name.removesuffix("_ratio").removesuffix("_verdict")
    return base if base in DOUBTED or base in AT_FAULT else None


def differences(types: list[Given], values: Values, found: Found | None = None,
                ) -> list[tuple[str, Difference]]:
    """Return section type and difference of everything that is not alike; count into ``found``."""
    found, outside = found or Found(), section_sheets() - covered()
    wrong: list[tuple[str, Difference]] = []
    for one in types:
        ours = {name: value for name, value in one.done.items()
                if name.partition(".")[0] not in outside}
        for what in compare(ours, values, one.letter):
            if doubt := doubted(what[0]):
                found.doubts.add(doubt)
            else:
                wrong.append((one.letter, what))
        _count(ours, found)
    if WHOLE:
        ours = whole(types, values)
        wrong += [("whole", what) for what in compare(ours, values, types[0].letter)]
        _count(ours, found, section=False)
    return wrong


def _count(ours: Results, found: Found, section: bool = True) -> None:
    found.results += len(ours)
    found.names |= set(ours)
    if section:
        verdicts = {name: word for name, word in ours.items() if name.endswith("_verdict")}
        found.verdicts.update(verdicts.values())
        for name, word in verdicts.items():
            found.words.setdefault(name, set()).add(word)
        found.ready += ours["Buoyancy.stable_check_verdict"] in ("OK", "LOOK", "NOT OK")
        found.stable += ours["Buoyancy.crowd_stable_verdict"] in ("OK", "LOOK")
