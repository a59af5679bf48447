"""Loads that a section's members carry, and simple beams under them.

Feet, pounds and inches as the members are sold: moments in lb·ft, stresses in psi.
"""

from __future__ import annotations

from dataclasses import dataclass

from tests.second.framing_basis import INCHES, Results, nds, own
from tests.second.framing_wood import Member
from tests.second.given import Given


@dataclass(frozen=True)
class Loads:
    """Loads on the deck [psf] and the point load [lb]."""

    dead: float
    people: float
    snow: float
    point: float

    @property
    def live(self) -> float:
        """Live load, people or snow, whichever is more [psf]."""
        return max(self.people, self.snow)

    @property
    def spread(self) -> float:
        """Spread load for strength, snow brought to the duration of people [psf]."""
        share = nds("CD_live") / nds("CD_snow")
        return max(self.dead + self.people, (self.dead + self.snow) * share)


def loads(g: Given, done: Results) -> Loads:
    """Return the loads of a section; snow counts only when the dock stays in."""
    snow = g.job["ground_snow"] if g.job["stays_in"] == "yes" else 0
    return Loads(done["Weight.deck_dead"], g.sec["strength_load"], snow, g.sec["point_load"])


@dataclass(frozen=True)
class Beam:
    """A member between two lines that hold it, ``width`` of deck on it [ft], ``point`` in lb."""

    member: Member
    span: float
    width: float
    loads: Loads
    point: float

    @property
    def dead(self) -> float:
        """Dead line load [lb/ft]."""
        return self.loads.dead * self.width

    @property
    def live(self) -> float:
        """Live line load [lb/ft]."""
        return self.loads.live * self.width

    @property
    def line(self) -> float:
        """Line load for strength [lb/ft]."""
        return self.loads.spread * self.width

    @property
    def deep(self) -> float:
        """Depth [ft]."""
        return self.member.deep / INCHES

    @property
    def edge(self) -> float:
        """Nearest that the point load stands to an end [ft]."""
        return own("point_from_edge") / INCHES

    @property
    def moment_spread(self) -> float:
        """Moment under the spread load [lb·ft]."""
        return self.line * self.span ** 2 / 8

    @property
    def moment_point(self) -> float:
        """Moment under the point load at mid-span and the dead load [lb·ft]."""
        return self.point * self.span / 4 + self.dead * self.span ** 2 / 8

    @property
    def reaction(self) -> float:
        """Greatest end reaction [lb], of loads as they are, whatever their duration."""
        near = self.point * (1 - self.edge / self.span) + self.dead * self.span / 2
        full = (self.loads.dead + self.loads.live) * self.width
        return max(full * self.span / 2, near)

    @property
    def shear_spread(self) -> float:
        """Shear at the depth from the end, spread load [lb] (NDS 3.4.3.1)."""
        return max(0, self.line * (self.span / 2 - self.deep))

    @property
    def shear_point(self) -> float:
        """Shear with the point load near the end [lb]."""
        return max(0, self.point * (1 - self.edge / self.span)
                   + self.dead * max(0, self.span / 2 - self.deep))

    @property
    def shear_stress(self) -> float:
        """Shear stress of the greater shear."""
        return (nds("shear_rectangle") * max(self.shear_spread, self.shear_point)
                / self.member.area)

    def sag(self, line: float) -> float:
        """Return the deflection [in] under a line load [lb/ft]."""
        return (5 * line / INCHES * (self.span * INCHES) ** 4
                / (384 * self.member.stiffness * self.member.inertia))

    @property
    def sag_point(self) -> float:
        """Deflection under the point load [in]."""
        return (self.point * (self.span * INCHES) ** 3
                / (48 * self.member.stiffness * self.member.inertia))

    @property
    def sag_live(self) -> float:
        """Live deflection, the larger [in]."""
        return max(self.sag(self.live), self.sag_point)

    @property
    def sag_total(self) -> float:
        """Deflection in time: the dead load's grows in wet wood [in]."""
        return self.sag_live + nds("long_term_wet") * self.sag(self.dead)

    def stress(self, moment: float) -> float:
        """Return the bending stress [psi] of a moment [lb·ft]."""
        return moment * INCHES / self.member.modulus

    def rows(self) -> Results:
        """Return its rows by name."""
        found = {
            "width": self.width, "w_dead": self.dead, "w_live": self.live, "w": self.line,
            "M_spread": self.moment_spread, "M_point": self.moment_point, "R": self.reaction,
            "V_spread": self.shear_spread, "V_point": self.shear_point, "fv": self.shear_stress,
            "sag_spread": self.sag(self.live), "sag_point": self.sag_point,
            "sag_live": self.sag_live, "sag_dead": self.sag(self.dead),
            "sag_total": self.sag_total}
        return {f"Framing.{self.member.name}_{key}": value for key, value in found.items()}
