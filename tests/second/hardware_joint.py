"""What all bolted joints of a frame share: bolt, wood, factors."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi

from tests.second.framing_basis import Results, line_of, lines, nds, place_of
from tests.second.framing_wood import supplement
from tests.second.given import Given
from tests.second.hardware_yield import (
    bearing_across,
    bearing_along,
    direction,
    usual_terms,
)

ACROSS = 90.0
"""Load to grain at stringer ends and corners [deg]."""
FRAME = ("rail", "stringer", "header", "cross_beam")


@dataclass(frozen=True)
class Joint:
    """The bolt of the job and the weakest wood of a section's frame."""

    g: Given

    @property
    def bolt(self) -> dict:
        """Line of the bolt."""
        return line_of("bolts", self.g.job["bolt"])

    @property
    def d(self) -> float:
        """Bolt diameter [in]."""
        return self.bolt["D"]

    @property
    def area(self) -> float:
        """Bolt's cross section [in²]."""
        return pi * self.d ** 2 / 4

    @property
    def has_timbers(self) -> bool:
        """Whether a frame member is 5 x 5 in or larger.

        House choice: the size of cross-beams counts even where there are none.
        """
        return any(line_of("lumber_sizes", self.g.sec[f"{part}_size"])["timber"]
                   for part in FRAME)

    @property
    def stiffness(self) -> float:
        """E of the wood in group action; house choice: always that of wood 2 to 4 in thick."""
        return lines("woods")[place_of("woods", self.g.job["wood"]) - 1]["E"]

    def least(self, column: str) -> float:
        """Return the least value of the woods in the frame."""
        woods = ["wood"] + ["timber_wood"] * self.has_timbers
        return min(lines("woods")[place_of("woods", self.g.job[wood]) - 1][column]
                   for wood in woods)

    @property
    def gravity(self) -> float:
        """Specific gravity."""
        return self.least("G")

    @property
    def across(self) -> float:
        """Fe across the grain."""
        return bearing_across(self.gravity, self.d)

    @property
    def along(self) -> float:
        """Fe along the grain."""
        return bearing_along(self.gravity)

    @property
    def terms(self) -> tuple[float, float, float]:
        """Reduction terms across the grain."""
        return usual_terms(ACROSS)

    @property
    def factors(self) -> float:
        """CD, CM and Ct of a bolt in wet wood under people."""
        return nds("CD_live") * nds("CM_connection_wet") * nds("Ct_normal")

    def rows(self) -> Results:
        """Return its rows by name."""
        job = self.g.job
        return {f"Hardware.{key}": value for key, value in {
            "bolt": place_of("bolts", job["bolt"]), "D": self.d, "Fyb": self.bolt["Fyb"],
            "wood": place_of("woods", job["wood"]),
            "timber": place_of("woods", job["timber_wood"]), "timbers": int(self.has_timbers),
            "G": self.gravity, "Fc_perp": self.least("Fc_perp"), "Fe_along": self.along,
            "Fe_across": self.across, "theta": ACROSS, "Fe": self.across,
            "K_theta": direction(ACROSS), "CD": nds("CD_live"), "CM": nds("CM_connection_wet"),
            "Ct": nds("Ct_normal"), "CM_bearing": supplement("CM_Fc_perp"),
            "bolt_area": self.area}.items()}


def share_of_full(distance: float, full: float) -> float:
    """Return the geometry factor of a distance against the one for full value."""
    return min(1, distance / full)
