"""Stability: stable or not, list and trim, tilt and low corner in every case, and the load plate.

The sheet is declared in parts, read in this order: the float group and its leaning axes
(:mod:`.stability_group`); weights afloat and metacentric heights (:mod:`.stability_weights`); the
load cases (:mod:`.stability_cases`); checks (:mod:`.stability_checks`); the righting arm
(:mod:`.stability_arm`); the load plate (:mod:`.stability_plate`).  Here their rows get the names
by which other sheets know them.
"""

from __future__ import annotations

from . import (
    stability_arm,
    stability_cases,
    stability_checks,
    stability_group,
    stability_overlap,
    stability_plate,
    stability_weights,
)

sheet = stability_group.sheet


def _rows_of(*modules) -> dict:
    """Return the public names of the parts that hold rows or groups of rows."""
    found: dict = {}
    for module in modules:
        for name, thing in vars(module).items():
            rows = getattr(thing, "rows_of", None)
            holds = isinstance(thing, list | dict) or (rows and not isinstance(thing, type))
            if holds and not name.startswith("_"):
                found.setdefault(name, thing)
    return found


globals().update(_rows_of(stability_group, stability_overlap, stability_weights, stability_cases,
                          stability_checks, stability_arm, stability_plate))
