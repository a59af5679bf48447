"""Yield equations of dowels (NDS 2018 12.3), group action (11.3.6), shear near an end (3.4.3.3).

Inches, pounds, psi.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import floor, sqrt

from tests.second.framing_basis import Results, nds


def to_step(value: float, step: float) -> float:
    """Return the nearest multiple of a step, a half going up."""
    return floor(value / step + 0.5 + 1e-9) * step


def bearing_along(gravity: float) -> float:
    """Return Fe along the grain, as the table rounds it."""
    return to_step(nds("Fe_parallel") * gravity, nds("Fe_rounding"))


def bearing_across(gravity: float, diameter: float) -> float:
    """Return Fe across the grain, as the table rounds it."""
    exact = nds("Fe_perp") * gravity ** nds("Fe_perp_exponent") / sqrt(diameter)
    return to_step(exact, nds("Fe_rounding"))


def bearing_small(gravity: float) -> float:
    """Return Fe of dowels below 1/4 in, as the table rounds it."""
    exact = nds("Fe_small") * gravity ** nds("Fe_small_exponent")
    return to_step(exact, nds("Fe_rounding"))


def bearing_steel(thickness: float) -> float:
    """Return Fe of a steel plate."""
    return nds("Fe_steel_hot_rolled" if thickness >= nds("Fe_steel_limit") - 1e-9
               else "Fe_steel_gauge")


def direction(theta: float) -> float:
    """Return K theta of the greatest angle of load to grain [deg]."""
    return 1 + nds("K_theta_slope") * theta / nds("K_theta_angle")


@dataclass(frozen=True)
class Dowel:
    """A dowel of diameter ``d`` and yield strength ``fyb`` in a joint of two members.

    ``main`` and ``side`` are bearing lengths, ``fem`` and ``fes`` bearing strengths; ``terms``
    the reduction terms of modes I, of mode II, of modes III and IV.
    """

    d: float
    fyb: float
    main: float
    side: float
    fem: float
    fes: float
    terms: tuple[float, float, float]

    @property
    def re(self) -> float:
        """Bearing strength, main over side."""
        return self.fem / self.fes

    @property
    def rt(self) -> float:
        """Bearing length, main over side."""
        return self.main / self.side

    @property
    def under_root(self) -> float:
        """Term under the root of k1."""
        re, rt = self.re, self.rt
        return re + 2 * re ** 2 * (1 + rt + rt ** 2) + rt ** 2 * re ** 3

    @property
    def bends_main(self) -> float:
        """Bending of the dowel over bearing of the main member."""
        return 2 * self.fyb * self.d ** 2 / (3 * self.fem * self.main ** 2)

    @property
    def bends_side(self) -> float:
        """Bending of the dowel over bearing of the side member."""
        return 2 * self.fyb * self.d ** 2 / (3 * self.fem * self.side ** 2)

    @property
    def k3(self) -> float:
        """Coefficient k3."""
        return sqrt(2 * (1 + self.re) / self.re + (2 + self.re) * self.bends_side) - 1

    def single(self) -> dict[str, float]:
        """Return coefficients, modes and least value in single shear, by row name."""
        re, (one, two, three) = self.re, self.terms
        k1 = (sqrt(self.under_root) - re * (1 + self.rt)) / (1 + re)
        k2 = sqrt(2 * (1 + re) + (1 + 2 * re) * self.bends_main) - 1
        modes = {
            "Im": self.d * self.main * self.fem / one, "Is": self.d * self.side * self.fes / one,
            "II": k1 * self.d * self.side * self.fes / two,
            "IIIm": k2 * self.d * self.main * self.fem / (1 + 2 * re) / three,
            "IIIs": self.k3 * self.d * self.side * self.fem / (2 + re) / three,
            "IV": self.d ** 2 / three * sqrt(2 * self.fem * self.fyb / (3 * (1 + re)))}
        return modes | {"Re": re, "Rt": self.rt, "u": self.under_root, "k1": k1,
                        "m": self.bends_main, "k2": k2, "s": self.bends_side, "k3": self.k3,
                        "Z": min(modes.values())}

    def double(self) -> dict[str, float]:
        """Return the same between two equal side members."""
        re, (one, _, three) = self.re, self.terms
        modes = {
            "Im": self.d * self.main * self.fem / one,
            "Is": 2 * self.d * self.side * self.fes / one,
            "IIIs": 2 * self.k3 * self.d * self.side * self.fem / (2 + re) / three,
            "IV": 2 * self.d ** 2 / three * sqrt(2 * self.fem * self.fyb / (3 * (1 + re)))}
        return modes | {"Re": re, "s": self.bends_side, "k3": self.k3,
                        "Z": min(modes.values())}


def usual_terms(theta: float) -> tuple[float, float, float]:
    """Return the reduction terms of a dowel of 1/4 in and more."""
    k = direction(theta)
    return nds("Rd_I") * k, nds("Rd_II") * k, nds("Rd_III_IV") * k


def group_action(count: float, spacing: float, slip: float, stiff_1: float,
                 stiff_2: float) -> Results:
    """Return the rows of the group action factor of a row of dowels (Eq. 11.3-1)."""
    less = min(stiff_1, stiff_2) / max(stiff_1, stiff_2)
    u = 1 + slip * spacing / 2 * (1 / stiff_1 + 1 / stiff_2)
    m = u - sqrt(u ** 2 - 1)
    top = m * (1 - m ** (2 * count))
    bottom = count * ((1 + less * m ** count) * (1 + m) - 1 + m ** (2 * count))
    top, bottom = top * (1 + less), bottom * (1 - m)
    return {"REA": less, "u": u, "m": m, "mn": m ** count, "top": top, "bottom": bottom,
            "Cg": top / bottom}


def end_shear(shear: float, thick: float, deep: float, works: float) -> float:
    """Return the shear a member end carries where depth ``works`` of it does."""
    return nds("end_shear_factor") * shear * thick * works * (works / deep) ** 2
