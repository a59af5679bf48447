"""Stability, second calculation, for one section type: in the order of loadpath.md 12."""

from __future__ import annotations

from tests.second import (
    stability_cases,
    stability_checks,
    stability_group,
    stability_plate,
    stability_weights,
)
from tests.second.given import Given, Results


def work(g: Given, done: Results) -> Results:
    """Return the results of Stability."""
    found = stability_weights.loads(g, done)
    found |= stability_group.held(g, done, found)
    group, rows = stability_group.whole(g, done, found["held_square"])
    found |= rows
    short, rows = stability_group.one_lost(g, done, group, found)
    found |= rows
    afloat = stability_weights.states(g, done, group, short, found)
    found |= stability_weights.rows(afloat)
    cases, rows = stability_cases.cases(g, done, afloat, found)
    found |= rows | stability_cases.ranges(done, cases)
    found |= stability_cases.rows(cases) | stability_cases.shown(done, cases)
    found |= stability_checks.arm_curve(g, done, afloat["point"], found)
    found |= stability_checks.work(g, done, afloat, cases, found)
    found |= stability_plate.work(g, done, afloat, found)
    found |= stability_plate.overlaps(g, done)
    return {f"Stability.{key}": value for key, value in found.items()}
