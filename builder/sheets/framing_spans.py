"""Framing, second part: stringers, cross-beams and headers, as simple beams on their ends.

A stringer across hangs from rail to rail whatever lies under it, which is the upper bound for
sagging.  Stringers along are held by headers and cross-beams, and these by the rails.
"""

from __future__ import annotations

from builder.language import all_of, greatest, least, when

from . import inputs as job
from . import parts
from . import sections as sec
from .framing_wood import (
    GROUP,
    NDS,
    OURS,
    STATICS,
    Member,
    across,
    block,
    check,
    dead,
    live,
    member_wood,
    note,
    point_edge,
    row,
    stability,
    uniform,
)
from .reference import nds, own

DEEPER = "A deeper size, a better grade, or less span."


def simple_beam(m: Member, span, width, point) -> None:
    """Declare what spread and point load do to a simple beam; the rows join its member.

    Args:
        m: the member, with its wood.
        span: clear span [ft], a row.
        width: width of deck it carries [ft], an expression.
        point: point load on it [lb], a row.
    """
    name, tag = m.name, m.tag
    block(f"{name}: loads and what they do")
    m["span"], m["point"] = span, point
    m["width"] = row(f"{name}: width of deck carried", f"b_{tag}", "ft", width, STATICS)
    m["w_dead"] = row(f"{name}: line load, dead", f"w_D{tag}", "lb/ft", dead * m.width, STATICS,
                      digits=1)
    m["w_live"] = row(f"{name}: line load, live", f"w_ℓ{tag}", "lb/ft", live * m.width, STATICS,
                      digits=1)
    m["w"] = row(f"{name}: line load for strength", f"w_{tag}", "lb/ft", uniform * m.width,
                 STATICS, digits=1)
    m["M_spread"] = row(f"{name}: moment, spread load", f"M_1{tag}", "lb·ft",
                        m.w * span**2 / 8, STATICS, digits=0)
    m["M_point"] = row(f"{name}: moment, point load", f"M_2{tag}", "lb·ft",
                       point * span / 4 + m.w_dead * span**2 / 8, STATICS, digits=0)
    m["R"] = row(f"{name}: end reaction", f"R_{tag}", "lb",
                 greatest((m.w_dead + m.w_live) * span / 2,
                          point * greatest(1 - point_edge / span, 0) + m.w_dead * span / 2),
                 STATICS, digits=0)
    m["V_spread"] = row(f"{name}: shear at d, spread load", f"V_1{tag}", "lb",
                        m.w * greatest(span / 2 - m.d.in_("ft"), 0),
                        f"{NDS} 3.4.3.1", digits=0)
    m["V_point"] = row(f"{name}: shear, point load near the end", f"V_2{tag}", "lb",
                       point * greatest(1 - point_edge / span, 0)
                       + m.w_dead * greatest(span / 2 - m.d.in_("ft"), 0),
                       f"{NDS} 3.4.3.1", digits=0)
    m["fv"] = row(f"{name}: shear stress", f"f_v,{tag}", "psi",
                  nds.shear_rectangle * greatest(m.V_spread, m.V_point) / (m.t * m.d),
                  f"{NDS} 3.4.2", digits=1)
    deflections(m)


def deflections(m: Member) -> None:
    """Declare how far a simple beam sags at once and in time."""
    name, tag, span = m.name, m.tag, m.span
    m["sag_spread"] = row(f"{name}: deflection, live spread load", f"Δ_1{tag}", "in",
                          5 * m.w_live.in_("lb/in") * span.in_("in") ** 4
                          / (384 * m.E_adj * m.I), STATICS, digits=3)
    m["sag_point"] = row(f"{name}: deflection, point load", f"Δ_2{tag}", "in",
                         m.point * span.in_("in") ** 3 / (48 * m.E_adj * m.I), STATICS, digits=3)
    m["sag_live"] = row(f"{name}: live deflection", f"Δ_ℓ{tag}", "in",
                        greatest(m.sag_spread, m.sag_point), STATICS, digits=3)
    m["sag_dead"] = row(f"{name}: deflection, dead load", f"Δ_D{tag}", "in",
                        5 * m.w_dead.in_("lb/in") * span.in_("in") ** 4
                        / (384 * m.E_adj * m.I), STATICS, digits=3)
    m["sag_total"] = row(f"{name}: deflection in time, Kcr 2.0 on dead load", f"Δ_t{tag}", "in",
                         m.sag_live + nds.long_term_wet * m.sag_dead, f"{NDS} 3.5.2", digits=3)


def stiffness_and_shear(m: Member) -> None:
    """Declare the checks every simple beam has besides bending."""
    name, span = m.name, m.span
    m["shear_check"] = check(f"{name}: shear", m.fv, at_most=m.Fv_adj, source=f"{NDS} 3.4.1",
                             cure="A deeper or thicker size.", group=GROUP)
    m["live_check"] = check(
        f"{name}: live deflection", m.sag_live, at_most=span.in_("in") / job.deflection_live,
        source="IRC 2015 Table R301.7", cure=DEEPER, group=GROUP)
    m["total_check"] = check(
        f"{name}: deflection in time", m.sag_total, at_most=span.in_("in") / job.deflection_total,
        source="IRC 2015 Table R301.7", cure=DEEPER, group=GROUP)


def bending_alone(m: Member) -> None:
    """Declare bending of a member that shares its load with no other (Cr 1.0)."""
    m["fb"] = row(f"{m.name}: bending stress", f"f_b,{m.tag}", "psi",
                  greatest(m.M_spread, m.M_point).in_("lb·in") / m.S, f"{NDS} 3.3.2", digits=0)
    m["bending_check"] = check(f"{m.name}: bending", m.fb, at_most=m.Fb_single,
                               source=f"{NDS} 3.3.1", cure=DEEPER, group=GROUP)


def hog(m: Member, runs_across) -> None:
    """Declare hogging of a member that runs across, where floats are set far in.

    Args:
        m: the member, with its loads; it carries E'min.
        runs_across: 1 where it does run across, else 0.
    """
    name, tag = m.name, m.tag
    m["hog_spread"] = row(f"{name}: hogging moment, spread load", f"M_3{tag}", "lb·ft",
                          far_in * runs_across * m.w * sec.width / 2
                          * greatest(sec.width / 4 - parts.row_y, 0), STATICS, digits=0)
    m["hog_point"] = row(f"{name}: hogging moment, point load at the edge", f"M_4{tag}", "lb·ft",
                         far_in * runs_across * (m.point * greatest(arm - point_edge, 0)
                                                 + m.w_dead * arm**2 / 2), STATICS, digits=0)
    m["hog_length"] = row(
        f"{name}: effective length, hogging; not below the depth", f"le_h{tag}", "in",
        greatest(m.d, when(arm.in_("in") / m.d < nds.le_ratio_limit,
                           nds.le_cantilever_point_short * arm.in_("in"),
                           nds.le_cantilever_point_long * arm.in_("in")
                           + nds.le_cantilever_depths * m.d)), f"{NDS} Table 3.3.3", digits=1)
    m["hogging"] = stability(m, f"{name} hogging", f"h{tag}", m.hog_length, m.Fb_single)
    m["hog_stress"] = row(f"{name}: hogging stress", f"f_bh,{tag}", "psi",
                          greatest(m.hog_spread, m.hog_point).in_("lb·in") / m.S,
                          f"{NDS} 3.3.2", digits=0)
    m["hog_check"] = check(f"{name}: hogging", m.hog_stress, at_most=m.hogging.Fb,
                           source=f"{NDS} 3.3.3", cure="Floats further out, or a deeper size.",
                           group=GROUP)


stringer = member_wood("Stringers", "s", parts.stringer_line, parts.stringer_t,
                       parts.stringer_d, bears=True, slender=True)
note("Cr counts only under boards fixed at each crossing to three stringers or more, at most "
     "24 in apart; a panel shares nothing unless its maker shows it.")
stringer["Cr"] = repetitive = row(
    "Stringers: repetitive members", "C_r", "",
    when(all_of(sec.deck.is_("boards"), parts.stringer_lines >= nds.Cr_members_least,
                sec.spacing <= nds.Cr_spacing_most, stringer.timber < 1),
         nds.Cr, nds.Cr_single), f"{NDS} 4.3.9")
stringer["Fb_adj"] = row("Stringers: F′b, spread load", "F′_b,sr", "psi",
                         stringer.Fb_single * repetitive, f"{NDS} Table 4.3.1", digits=0)
simple_beam(stringer, parts.stringer_length,
            greatest(sec.spacing, sec.spacing / 2 + sec.deck_overhang).in_("ft"), sec.point_load)
stringer["fb_spread"] = row("Stringers: bending stress, spread load", "f_b1,s", "psi",
                            stringer.M_spread.in_("lb·in") / stringer.S, f"{NDS} 3.3.2", digits=0)
stringer["fb_point"] = row("Stringers: bending stress, point load", "f_b2,s", "psi",
                           stringer.M_point.in_("lb·in") / stringer.S, f"{NDS} 3.3.2", digits=0)
stringer["fc"] = row("Stringers: bearing stress at a ledge", "f_c,s", "psi",
                     stringer.R / (stringer.t * own.end_bearing), f"{NDS} 3.10.2", digits=0)
spread_check = check(
    "Stringers: bending, spread load", stringer.fb_spread, at_most=stringer.Fb_adj,
    source=f"{NDS} 3.3.1", cure="Closer stringers, a deeper size, or less span.", group=GROUP,
    amount=("inches closer", "in",
            sec.spacing * greatest(0, 1 - stringer.Fb_adj / stringer.fb_spread)))
point_check = check(
    "Stringers: bending, point load", stringer.fb_point, at_most=stringer.Fb_single,
    source=f"{NDS} 3.3.1", cure="A deeper size or less span.", group=GROUP,
    amount=("feet less span", "ft",
            stringer.span * greatest(0, 1 - stringer.Fb_single / stringer.fb_point)))
stiffness_and_shear(stringer)
note("Stringer ends hang on angles: this check matters where an end sits on a ledge instead.")
bearing_check = check("Stringers: bearing on a ledge", stringer.fc, at_most=stringer.Fc_adj,
                      source=f"{NDS} 3.10.2", worst="LOOK", group=GROUP,
                      cure="A longer ledge, or angles at the ends.")

block("Floats set far in")
note("Where the outer floats stand inside a quarter of the width, the deck edge hangs out, and "
     "what runs across hogs over them: the lower edge is pressed and free. Effective length by "
     "the cantilever row of Table 3.3.3 with a point load at the end, which covers spread load.")
far_in = row("Floats set far in: 1, else 0", "k_h", "", when(parts.row_y < sec.width / 4, 1, 0),
             OURS, digits=0)
arm = row("From the outer float row to the frame's side", "a_h", "ft",
          greatest(sec.width / 2 - parts.row_y, 0), STATICS)
hog(stringer, across)

cross = member_wood("Cross-beams", "c", parts.cross_line, parts.cross_t, parts.cross_d,
                    slender=True)
note("Stringers along hang between headers and cross-beams; without cross-beams these rows read "
     "0. Floats that run on under the stringers would hold them too: left out, on the safe side.")
cross_point = row("Cross-beams: point load", "P_c", "lb",
                  when(sec.cross_beams > 0, sec.point_load, 0), STATICS, digits=0)
simple_beam(cross, parts.cross_length,
            (sec.cross_beams > 0) * when(across > 0, sec.spacing.in_("ft"),
                                         parts.stringer_length + cross.t.in_("ft")), cross_point)
bending_alone(cross)
stiffness_and_shear(cross)
hog(cross, 1)

header = member_wood("Headers", "e", parts.header_line, parts.header_t, parts.header_d,
                     slender=True)
simple_beam(header, parts.header_length,
            when(across > 0, sec.spacing.in_("ft"), parts.stringer_length) / 2
            + sec.deck_overhang.in_("ft"), sec.point_load)
bending_alone(header)
stiffness_and_shear(header)
hog(header, 1)

block("Members that end at angles")
end_Fv = row(
             "F′v, least of stringers and cross-beams", "F′_v,min", "psi",
             when(sec.cross_beams > 0, least(stringer.Fv_adj, cross.Fv_adj),
                  stringer.Fv_adj), f"{NDS} Table 4.3.1", digits=1)
