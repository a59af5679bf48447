"""Dowel fasteners: the rows that every bolted, lagged and screwed joint is worked with.

Each function declares its rows on a sheet and returns them by name, so that the joints of the
dock and the published examples on the proof sheet are worked by the same formulas.  ``tag`` is
the subscript that keeps the symbols of one joint apart from those of another.
"""

from __future__ import annotations

from builder.language import (
    Expr,
    Row,
    Sheet,
    bare,
    greatest,
    least,
    nearest,
    radians,
    root,
    sine,
    when,
)

from .reference import nds, own

FE, ANGLE = "NDS 2018 Table 12.3.3", "NDS 2018 12.3.4"
MODES, REDUCTION = "NDS 2018 Table 12.3.1A", "NDS 2018 Table 12.3.1B"
GROUP = "NDS 2018 11.3.6"


def to_table_step(psi: Expr) -> Expr:
    """Return a dowel bearing strength [psi], given as a bare number, to the step of the table."""
    return nearest(psi / bare(nds.Fe_rounding, "psi"), 1) * nds.Fe_rounding


def bearing_along(G: Row) -> Expr:
    """Return dowel bearing strength along the grain [psi] of wood of specific gravity ``G``."""
    return to_table_step(nds.Fe_parallel * G)


def bearing_across(G: Row, D: Row) -> Expr:
    """Return dowel bearing strength across the grain [psi] under a dowel of ``D`` [in]."""
    return to_table_step(
        nds.Fe_perp * G**nds.Fe_perp_exponent / root(bare(D, "in")))


def at_angle(along: Row, across: Row, angle: Row) -> Expr:
    """Return bearing strength [psi] at an angle [deg] to the grain (Hankinson).

    The denominator is the printed one, Fe∥ sin² + Fe⊥ cos², with cos² as 1 − sin²; along is
    never below across for dowels of 1/4 in and more, which the floor at 0 only states.
    """
    return along * across / (across + greatest(along - across, 0) * sine(radians(angle)) ** 2)


def steel_bearing(thickness: Row) -> Expr:
    """Return dowel bearing strength [psi] of a steel plate of a thickness [in]."""
    return when(thickness >= nds.Fe_steel_limit, nds.Fe_steel_hot_rolled, nds.Fe_steel_gauge)


def k_theta(angle: Expr) -> Expr:
    """Return Kθ for the largest angle of load to grain [deg] of any member of the joint."""
    return 1 + nds.K_theta_slope * angle / nds.K_theta_angle


def bolt_terms(K: Row) -> tuple[Expr, Expr, Expr]:
    """Return the reduction terms of modes I, II, III and IV for dowels of 1/4 in and more."""
    return nds.Rd_I * K, nds.Rd_II * K, nds.Rd_III_IV * K


def single_shear(sheet: Sheet, tag: str, lm: Row, ls: Row, D: Row, Fyb: Row, Fem: Row, Fes: Row,
                 Rd: tuple[Expr, Expr, Expr]) -> dict[str, Row]:
    """Declare the six yield modes of one dowel in single shear, each a row, and the least.

    Args:
        sheet: where the rows stand.
        tag: subscript of the joint.
        lm, ls: bearing length in main and side member [in].
        D: diameter in the equations [in]: nominal of a bolt, root of a lag or screw.
        Fyb: bending yield strength of the dowel [psi].
        Fem, Fes: dowel bearing strength of main and side member [psi].
        Rd: reduction terms of modes I, II, III and IV.

    Returns:
        ``Re Rt u k1 m k2 s k3 Im Is II IIIm IIIs IV Z``; modes and Z [lb].
    """
    made: dict[str, Row] = {}

    def put(name, label, symbol, unit, expr, digits=3):
        made[name] = sheet.row(label, f"{symbol},{tag}", unit, expr, MODES, digits)
        return made[name]

    Re = put("Re", "Bearing strength, main over side", "R_e", "", Fem / Fes, 4)
    Rt = put("Rt", "Bearing length, main over side", "R_t", "", lm / ls, 4)
    u = put("u", "Term under the first root of k₁", "u", "",
            Re * (1 + Re * (2 * (1 + Rt + Rt**2) + Rt**2 * Re)))
    # Above 0 whatever Re and Rt are; the floor states it, since an interval cannot see it.
    k1 = put("k1", "Coefficient k₁", "k_1", "",
             greatest((root(u) - Re * (1 + Rt)) / (1 + Re), own.least_share), 5)
    m = put("m", "Bending over bearing, main member", "m", "",
            2 * Fyb * D**2 / (3 * Fem * lm**2), 5)
    k2 = put("k2", "Coefficient k₂", "k_2", "", root(2 * (1 + Re) + m * (1 + 2 * Re)) - 1, 5)
    s = put("s", "Bending over bearing, side member", "q", "",
            2 * Fyb * D**2 / (3 * Fem * ls**2), 5)
    k3 = put("k3", "Coefficient k₃", "k_3", "", root(2 + 2 / Re + s * (2 + Re)) - 1, 5)
    Im = put("Im", "Mode Im: main member bears", "Z_Im", "lb", D * lm * Fem / Rd[0], 1)
    Is = put("Is", "Mode Is: side member bears", "Z_Is", "lb", D * ls * Fes / Rd[0], 1)
    II = put("II", "Mode II: dowel turns", "Z_II", "lb", k1 * D * ls * Fes / Rd[1], 1)
    IIIm = put("IIIm", "Mode IIIm: dowel bends, main member bears", "Z_IIIm", "lb",
               k2 * D * lm * Fem / ((1 + 2 * Re) * Rd[2]), 1)
    IIIs = put("IIIs", "Mode IIIs: dowel bends, side member bears", "Z_IIIs", "lb",
               k3 * D * ls * Fem / ((2 + Re) * Rd[2]), 1)
    IV = put("IV", "Mode IV: dowel bends on both sides of the joint", "Z_IV", "lb",
             D**2 / Rd[2] * root(2 * Fem * Fyb / (3 * (1 + Re))), 1)
    put("Z", "Lateral value of one dowel, least mode", "Z", "lb",
        least(Im, Is, II, IIIm, IIIs, IV), 1)
    return made


def double_shear(sheet: Sheet, tag: str, lm: Row, ls: Row, D: Row, Fyb: Row, Fem: Row, Fes: Row,
                 Rd: tuple[Expr, Expr, Expr]) -> dict[str, Row]:
    """Declare the four yield modes of one dowel in double shear, each a row, and the least.

    Arguments as for :func:`single_shear`; ``ls`` is one side member.

    Returns:
        ``Re s k3 Im Is IIIs IV Z``; modes and Z [lb].
    """
    made: dict[str, Row] = {}

    def put(name, label, symbol, unit, expr, digits=3):
        made[name] = sheet.row(label, f"{symbol},{tag}", unit, expr, MODES, digits)
        return made[name]

    Re = put("Re", "Bearing strength, main over side", "R_e", "", Fem / Fes, 4)
    s = put("s", "Bending over bearing, side member", "q", "",
            2 * Fyb * D**2 / (3 * Fem * ls**2), 5)
    k3 = put("k3", "Coefficient k₃", "k_3", "", root(2 + 2 / Re + s * (2 + Re)) - 1, 5)
    Im = put("Im", "Mode Im: main member bears", "Z_Im", "lb", D * lm * Fem / Rd[0], 1)
    Is = put("Is", "Mode Is: both side members bear", "Z_Is", "lb", 2 * D * ls * Fes / Rd[0], 1)
    IIIs = put("IIIs", "Mode IIIs: dowel bends, side members bear", "Z_IIIs", "lb",
               2 * k3 * D * ls * Fem / ((2 + Re) * Rd[2]), 1)
    IV = put("IV", "Mode IV: dowel bends on both sides of each joint", "Z_IV", "lb",
             2 * D**2 / Rd[2] * root(2 * Fem * Fyb / (3 * (1 + Re))), 1)
    put("Z", "Lateral value of one dowel, least mode", "Z", "lb", least(Im, Is, IIIs, IV), 1)
    return made


def group_action(sheet: Sheet, tag: str, n: Row, spacing: Row, gamma: Row, EA_main: Row,
                 EA_side: Row) -> dict[str, Row]:
    """Declare the group action factor of a row of dowels (Eq. 11.3-1).

    m is written as 1/(u + √(u² − 1)), which is u − √(u² − 1) and can be proved to stay
    between 0 and 1.

    Args:
        sheet, tag: as above.
        n: dowels in the row.
        spacing: between them [in].
        gamma: load/slip modulus [lb/in].
        EA_main, EA_side: modulus times area of main and side member [lb].

    Returns:
        ``REA u m mn top bottom Cg``.
    """
    made: dict[str, Row] = {}

    def put(name, label, symbol, expr, digits=4):
        made[name] = sheet.row(label, f"{symbol},{tag}", "", expr, GROUP, digits)
        return made[name]

    REA = put("REA", "Stiffness, lesser over greater", "R_EA",
              least(EA_side / EA_main, EA_main / EA_side))
    u = put("u", "Slip against stiffness", "u_g",
            1 + gamma * spacing / 2 * (1 / EA_main + 1 / EA_side), 6)
    m = put("m", "m = 1/(u + √(u² − 1))", "m_g", 1 / (u + root(u**2 - 1)), 6)
    mn = put("mn", "m to the number of bolts", "m^n", m**n, 6)
    top = put("top", "Numerator", "N_g", m * (1 - mn**2) * (1 + REA), 6)
    bottom = put("bottom", "Denominator", "B_g",
                 n * ((1 + REA * mn) * (1 + m) - 1 + mn**2) * (1 - m), 6)
    put("Cg", "Group action factor", "C_g", top / bottom)
    return made


def small_or_large(D: Row, small: Row, along: Row, across: Row, angle: Row) -> Expr:
    """Return bearing strength [psi]: of small dowels in any direction, else at an angle."""
    return when(D < nds.Fe_small_limit, small, at_angle(along, across, angle))


def screw_terms(sheet: Sheet, tag: str, D: Row, Dr: Row, angle: Expr) -> dict[str, Row]:
    """Declare the reduction terms of lags and screws, on nominal and root diameter [in].

    Returns:
        ``K KD I II III``.
    """
    made: dict[str, Row] = {}

    def put(name, label, symbol, expr):
        made[name] = sheet.row(label, f"{symbol},{tag}", "", expr, REDUCTION, 3)
        return made[name]

    K = put("K", "Direction term; 1 below 1/4 in", "K_θ",
            when(D < nds.Rd_small_nominal, 1, k_theta(angle)))
    KD = put("KD", "Term of small dowels", "K_D",
             when(Dr <= nds.KD_limit, nds.KD_small, nds.KD_slope * bare(Dr, "in") + nds.KD_add))
    for name, word, large in (("I", "mode I", nds.Rd_I), ("II", "mode II", nds.Rd_II),
                              ("III", "modes III and IV", nds.Rd_III_IV)):
        put(name, f"Reduction term, {word}", f"R_d{name}",
            when(Dr < nds.Rd_small_limit, KD, large) * K)
    return made


def geometry_factor(distance: Row, full: Expr) -> Expr:
    """Return CΔ for a distance [in] that should be ``full`` [in] for the whole value."""
    return least(1, greatest(distance, own.least_length.in_("in")) / full)
