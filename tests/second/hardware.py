"""Hardware, second calculation, for one section type: bolts, brackets, lags, bolt lengths.

Written from the National Design Specification for Wood Construction.
"""

from __future__ import annotations

from tests.second import (
    hardware_corners,
    hardware_ends,
    hardware_floats,
    hardware_lengths,
    hardware_plies,
)
from tests.second.framing_basis import Results
from tests.second.given import Given
from tests.second.hardware_joint import Joint

CHOSEN = (("angle", "angles", "stringer_angle"), ("plate", "washer_plates", "washer_plate"),
          ("inside", "corner_brackets", "corner_inside"),
          ("outside", "corner_brackets", "corner_outside"))
"""Row, table of the catalog, input of the job."""


def work(g: Given, done: Results) -> Results:
    """Return the results of Hardware for one section type."""
    joint = Joint(g)
    found = joint.rows() | hardware_ends.work(g, done, joint)
    found |= hardware_corners.work(g, done, joint, found["Hardware.group_Cg"])
    legs = g.catalog["angles"][g.job["stringer_angle"]]["bolts a leg"]
    found |= hardware_plies.work(g, done, joint, found["Hardware.V"], legs)
    found |= hardware_floats.work(g, done, joint)
    return found | hardware_lengths.work(g, done, joint, found) | chosen(g)


def chosen(g: Given) -> Results:
    """Return the places in the catalog, from 1, of what was chosen for the job."""
    return {f"Hardware.{row}": list(g.catalog[table]).index(g.job[choice]) + 1
            for row, table, choice in CHOSEN}
