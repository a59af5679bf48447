"""Design values of a sawn member, adjusted for a dock: wet service, people on the deck.

NDS 2018 chapter 4 and its Supplement, allowable stress design.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt

from tests.second.framing_basis import Results, figure, line_of, lines, nds, place_of
from tests.second.given import Given

WIDEST_CLASS = 5
"""Width class of 12 in: wider Southern Pine takes the values of 12 in (Table 4B)."""
EIGHT_INCHES = 3
"""Width class of 8 in: stud grade from here up takes the values of No.3 (Table 4A)."""
FOUR_THICK = 4
"""Thickness class of 4 in."""


def supplement(key: str) -> float:
    """Return a constant of the Supplement."""
    return figure("nds_supplement_2018", key)


def incised(g: Given) -> bool:
    """Return whether the lumber is incised for treatment."""
    return g.job["incised"] == "yes"


@dataclass(frozen=True)
class Member:
    """One piece of a size in the wood of the job: its section and adjusted design values [psi].

    ``thick`` and ``deep`` in inches; ``name`` as the rows are named.
    """

    name: str
    g: Given
    size: str
    thick: float
    deep: float

    @property
    def area(self) -> float:
        """Cross section [in²]."""
        return self.thick * self.deep

    @property
    def modulus(self) -> float:
        """Section modulus on edge [in³]."""
        return self.area * self.deep / 6

    @property
    def inertia(self) -> float:
        """Moment of inertia on edge [in⁴]."""
        return self.modulus * self.deep / 2

    @property
    def listed(self) -> dict:
        """Line of the size."""
        return line_of("lumber_sizes", self.size)

    @property
    def width_class(self) -> int:
        """Width class of the size, 1 for 2 to 4 in, 6 for 14 in and wider."""
        return int(self.listed["width class"])

    @property
    def is_timber(self) -> bool:
        """Whether it is 5 x 5 in or larger."""
        return self.listed["timber"] == 1

    @property
    def first(self) -> int:
        """Place of the first line of its wood and grade."""
        return place_of("woods", self.g.job["timber_wood" if self.is_timber else "wood"])

    @property
    def place(self) -> int:
        """Place of the line that holds its design values."""
        head = lines("woods")[self.first - 1]
        if head["by width"]:
            return self.first + min(self.width_class, WIDEST_CLASS) - 1
        if head["stud"] and self.width_class >= EIGHT_INCHES:
            return self.first - 1
        return self.first

    @property
    def values(self) -> dict:
        """Reference design values."""
        return lines("woods")[self.place - 1]

    @property
    def size_factor(self) -> float:
        """CF on bending."""
        if self.is_timber:
            return min(1, (nds("timber_size_depth") / self.deep)
                       ** (1 / nds("timber_size_exponent_root")))
        if lines("woods")[self.first - 1]["stud"]:
            return lines("size_factors")[self.width_class - 1]["stud Fb"]
        return self.table_size_factor

    @property
    def table_size_factor(self) -> float:
        """CF on bending by Table 4A or 4B; neither timbers nor stud grade use it."""
        head = lines("woods")[place_of("woods", self.g.job["wood"]) - 1]
        table = lines("size_factors_pine" if head["by width"] else "size_factors")
        line = table[self.width_class - 1]
        return line["Fb 4 in thick" if self.listed["thick class"] >= FOUR_THICK
                    else "Fb 2 and 3 in thick"]

    @property
    def wet_bending(self) -> float:
        """CM on bending."""
        if self.is_timber:
            return supplement("CM_timber_Fb")
        low = self.values["Fb"] * self.size_factor <= supplement("CM_Fb_limit")
        return 1 if low else supplement("CM_Fb")

    @property
    def wet_shear(self) -> float:
        """CM on shear."""
        return supplement("CM_timber_Fv" if self.is_timber else "CM_Fv")

    @property
    def wet_stiffness(self) -> float:
        """CM on E and Emin."""
        return supplement("CM_timber_E" if self.is_timber else "CM_E")

    @property
    def wet_bearing(self) -> float:
        """CM on bearing across the grain; timbers of Southern Pine are listed wet already."""
        if self.is_timber:
            return supplement("CM_timber_Fc_perp") if self.values["wet timber"] else 1
        return supplement("CM_Fc_perp")

    def _incising(self, key: str) -> float:
        """House choice: timbers take the factors of dimension lumber, on the safe side."""
        return supplement(key) if incised(self.g) else 1

    @property
    def bending(self) -> float:
        """F′b of one member alone, ten-year load, held against turning over."""
        return (self.values["Fb"] * nds("CD_live") * self.wet_bending * nds("Ct_normal")
                * self.size_factor * self._incising("Ci_strength"))

    @property
    def shear(self) -> float:
        """F′v, ten-year load."""
        return (self.values["Fv"] * nds("CD_live") * self.wet_shear * nds("Ct_normal")
                * self._incising("Ci_strength"))

    @property
    def bearing(self) -> float:
        """F′c⊥, Cb 1."""
        return (self.values["Fc_perp"] * self.wet_bearing * nds("Ct_normal")
                * self._incising("Ci_Fc_perp"))

    @property
    def stiffness(self) -> float:
        """E′."""
        return self._stiff("E")

    @property
    def least_stiffness(self) -> float:
        """E′min, for beam stability."""
        return self._stiff("Emin")

    def _stiff(self, key: str) -> float:
        return (self.values[key] * self.wet_stiffness * nds("Ct_normal")
                * self._incising("Ci_E"))

    def rows(self, bears: bool) -> Results:
        """Return its rows by name; bearing only where it is checked."""
        v = self.values
        found = {
            "S": self.modulus, "I": self.inertia, "width_class": self.width_class,
            "thick": self.listed["thick class"], "timber": int(self.is_timber),
            "line": self.place, "CF_table": self.table_size_factor, "CF": self.size_factor,
            "Fb": v["Fb"], "CM_b": self.wet_bending, "Fb_single": self.bending, "Fv": v["Fv"],
            "CM_v": self.wet_shear, "Fv_adj": self.shear, "E": v["E"],
            "CM_E": self.wet_stiffness, "E_adj": self.stiffness,
            "Emin_adj": self.least_stiffness}
        if bears:
            found |= {"Fc": v["Fc_perp"], "CM_c": self.wet_bearing, "Fc_adj": self.bearing}
        return {f"Framing.{self.name}_{key}": value for key, value in found.items()}


def member(g: Given, name: str, size_key: str, done: Results, part: str) -> Member:
    """Return a member of the section, of the actual size that Parts gives."""
    return Member(name, g, g.sec[size_key], done[f"Parts.{part}_t"], done[f"Parts.{part}_d"])


@dataclass(frozen=True)
class Stability:
    """Beam stability of an edge not held (NDS 3.3.3): lengths in inches, stresses in psi.

    ``star`` is F′b with every factor but CL, ``length`` the effective length.
    """

    length: float
    thick: float
    deep: float
    least_stiffness: float
    star: float

    @property
    def slenderness(self) -> float:
        """RB."""
        return sqrt(self.length * self.deep) / self.thick

    @property
    def buckling(self) -> float:
        """FbE."""
        return nds("CL_FbE") * self.least_stiffness / self.slenderness ** 2

    @property
    def mean(self) -> float:
        """Middle term of CL."""
        return (1 + self.buckling / self.star) / nds("CL_b")

    @property
    def factor(self) -> float:
        """CL; house choice: taken so even where the member is no deeper than wide."""
        return self.mean - sqrt(self.mean ** 2 - self.buckling / self.star / nds("CL_c"))

    def rows(self, name: str) -> Results:
        """Return its rows by name."""
        return {f"Framing.{name}_RB": self.slenderness, f"Framing.{name}_FbE": self.buckling,
                f"Framing.{name}_mean": self.mean, f"Framing.{name}_CL": self.factor,
                f"Framing.{name}_Fb": self.star * self.factor}
