"""Framing, last part: what would do.  Nothing here feeds anything: the builder chooses."""

from __future__ import annotations

from builder.language import again, all_of, greatest, least, root, when
from builder.language.expressions import lift
from builder.language.units import TEXT

from . import (
    framing_lifting,  # noqa: F401  the part before this one
    parts,
)
from . import inputs as job
from . import sections as sec
from .framing_rails import local_moment, local_shear, plies
from .framing_spans import stringer
from .framing_water import hogging_moment, sagging, water_hogging, water_shear
from .framing_wood import (
    NDS,
    OURS,
    STATICS,
    block,
    dimension_line,
    duration_live,
    incising,
    incising_stiff,
    note,
    point_edge,
    row,
    sheet,
    temperature,
)
from .reference import LUMBER, nds, own, supplement

THIRD = lift(1) / 3

block("Stringers: largest span that would do")
note("By the stringer's own bending, shear and deflection, with the spacing as it is; its bolts, "
     "angle and ledge, and hogging over floats set far in, are judged by their own checks. The "
     "shear formula holds from a span of twice the depth.")
capacity_single = row("Moment a stringer carries alone", "M_cap1", "lb·ft",
                      (stringer.Fb_single * stringer.t * stringer.d**2 / 6).in_("lb·ft"),
                      f"{NDS} 3.3.1", digits=0)
shear_capacity = row("Shear a stringer carries", "V_cap", "lb",
                     stringer.Fv_adj * stringer.t * stringer.d / nds.shear_rectangle,
                     f"{NDS} 3.4.2", digits=0)
span_bending = row("Span by bending, spread load", "ℓ_1", "ft", root(
                   8 * (stringer.Fb_adj * stringer.S).in_("lb·ft") / stringer.w), STATICS)
span_point = row("Span by bending, point load", "ℓ_2", "ft",
                 2 * capacity_single / (sec.point_load / 4 + root(
                     sec.point_load**2 / 16 + stringer.w_dead * capacity_single / 2)), STATICS)
span_shear = row("Span by shear, spread load", "ℓ_3", "ft",
                 2 * (shear_capacity / stringer.w + stringer.d.in_("ft")), STATICS)
live_spare = row("Live deflection: spread load could grow by the factor", "k_4", "",
                 stringer.span.in_("in") / (job.deflection_live * stringer.sag_spread), STATICS)
total_spare = row("Deflection in time: spread load could grow by the factor", "k_5", "",
                  stringer.span.in_("in") / (job.deflection_total * (
                      stringer.sag_spread + nds.long_term_wet * stringer.sag_dead)), STATICS)
span_live = row("Span by live deflection, spread load", "ℓ_4", "ft",
                stringer.span * live_spare ** THIRD, STATICS)
span_total = row("Span by deflection in time, spread load", "ℓ_5", "ft",
                 stringer.span * total_spare ** THIRD, STATICS)
span_live_point = row("Span by deflection, point load", "ℓ_6", "ft",
                      stringer.span * root(stringer.span.in_("in")
                                           / (job.deflection_live * stringer.sag_point)), STATICS)
dead_line = row("Line load, dead, kept above zero", "w_D′", "lb/ft",
                greatest(stringer.w_dead, own.least_load * sec.width), STATICS, digits=1)
shear_left = row("Shear left by a point load at its support", "V_2", "lb",
                 shear_capacity + dead_line * stringer.d.in_("ft") - sec.point_load, STATICS,
                 digits=0)
span_shear_point = row("Span by shear, point load near the end", "ℓ_7", "ft", (
    shear_left + root(shear_left**2 + 2 * dead_line * sec.point_load * point_edge)) / dead_line,
                       f"{NDS} 3.4.3.1")
point_spare = row("Deflection in time, point load: load could grow by the factor", "k_6", "",
                  stringer.span.in_("in") / (job.deflection_total * (
                      stringer.sag_point + nds.long_term_wet * stringer.sag_dead)), STATICS)
span_total_point = row("Span by deflection in time, point load, safe side", "ℓ_8", "ft",
                       stringer.span * least(root(point_spare), point_spare ** THIRD), STATICS)
span_spread = row("Largest span, spread load, from one stock length", "ℓ_s", "ft",
                  least(span_bending, span_shear, span_live, job.longest_stock), STATICS)
largest_span = row("Largest stringer span that would do", "ℓ_max", "ft",
                   least(span_spread, span_point, span_total, span_live_point,
                         span_shear_point, span_total_point), STATICS)

block("Stringers: largest spacing that would do")
note("With the repetitive factor no further apart than it allows; 0 where the point load alone is "
     "too much. Beside the point load the dead load of wider bays is counted. The decking and the "
     "bolts of the stringer's end have a largest spacing of their own.")
spare = row("Spread load could grow by the factor", "k_s", "",
            least(stringer.Fb_adj / stringer.fb_spread,
                  2 * shear_capacity / (stringer.w * stringer.span), live_spare, total_spare),
            STATICS)
spacing_spread = row("Largest spacing, spread load", "s_sp", "in",
                     when(stringer.Cr > 1, least(sec.spacing * spare, nds.Cr_spacing_most),
                          sec.spacing * spare), STATICS, digits=1)
bend_room = row("Beside the point load, dead load could grow: bending", "k_7", "",
                (capacity_single - sec.point_load * stringer.span / 4)
                / (dead_line * stringer.span**2 / 8), STATICS)
shear_room = row("Beside the point load, dead load could grow: shear", "k_8", "",
                 (shear_capacity
                  - sec.point_load * greatest(1 - point_edge / stringer.span, 0))
                 / (dead_line * greatest(stringer.span / 2 - stringer.d.in_("ft"),
                                         own.least_length)), f"{NDS} 3.4.3.1")
sag_room = row("Beside the point load, dead load could grow: in time", "k_9", "",
               (stringer.span.in_("in") / job.deflection_total - stringer.sag_point)
               / (nds.long_term_wet * greatest(stringer.sag_dead,
                                               own.least_share * own.least_inches)), STATICS)
spacing_point = row("Largest spacing, beside the point load", "s_pt", "in",
                    sec.spacing * greatest(0, least(bend_room, shear_room, sag_room)), STATICS,
                    digits=1)
largest_spacing = row("Largest stringer spacing that would do", "s_max", "in",
                      when(span_live_point >= stringer.span,
                           least(spacing_spread, spacing_point), 0), STATICS, digits=1)

block("Smallest size that would do, of 2x6 to 2x12")
note("Same wood, spacing, plies and loads; the section's own weight, the rail's skirt and CL of "
     "the deeper or shallower size are left as they are, and lifting and floats set far in "
     "are left out: choose the size, then read the checks.")
stringer_moment = row("Stringers: moment to carry, Cr taken off", "M_ns", "lb·ft",
                 greatest(stringer.M_spread / stringer.Cr, stringer.M_point), STATICS, digits=0)
stringer_stiffness = row("Stringers: stiffness wanted", "EI_ns", "lb·ft²",
                  (stringer.E_adj * stringer.I / stringer.span.in_("in")
                   * greatest(job.deflection_live * stringer.sag_live,
                              job.deflection_total * stringer.sag_total)).in_("lb·ft²"),
                  STATICS, digits=0)
rail_moment = row("Rails: moment a ply has to carry", "M_nr", "lb·ft",
                  greatest(sagging, hogging_moment / water_hogging.CL, local_moment) / plies,
                  STATICS, digits=0)
rail_shear = row("Rails: shear a ply has to carry", "V_nr", "lb",
                 greatest(water_shear, local_shear) / plies, STATICS, digits=0)
stiffness = row("Stiffness of a stringer", "EI_s", "lb·ft²",
                (stringer.E_adj * stringer.t * stringer.d**3 / 12).in_("lb·ft²"), STATICS,
                digits=0)
ladder_shear_value = row("F′v, 2 to 4 in thick, all widths", "F′_v,2", "psi",
                dimension_line["Fv"] * duration_live * supplement.CM_Fv * temperature * incising,
                f"{NDS} Table 4.3.1", digits=1)
ladder_modulus = row("E′, 2 to 4 in thick, all widths", "E′_2", "psi",
               dimension_line["E"] * supplement.CM_E * temperature * incising_stiff,
               f"{NDS} Table 4.3.1", digits=0)
TRIED = ("2x6", "2x8", "2x10", "2x12")
SAME_IN_ALL = (stringer.t, stringer.thick, stringer.timber)
"""What every size tried has in common, worked out once."""


def ladder() -> list[dict]:
    """Declare what a piece of each size tried can carry: moment, shear, stiffness."""
    rungs, common = [], {stringer.Fv_adj: ladder_shear_value, stringer.E_adj: ladder_modulus}
    for size in TRIED:
        made = dict(common)
        line = find_line(size)
        rung = {"size": size, **{
            name: again(sheet, want, {parts.stringer_line: line}, size, made)
            for name, want in (("M", capacity_single), ("V", shear_capacity), ("EI", stiffness))}}
        common |= {r: made[r] for r in SAME_IN_ALL}
        rungs.append(rung)
    return rungs


def find_line(size: str):
    """Declare the line of a size tried in the table of lumber sizes."""
    return sheet.find(f"{size}: line of its size", LUMBER, size)


def smallest(name: str, passes) -> list:
    """Declare, from the largest size down, the smallest that passes; the last is the answer."""
    answers, so_far = [], "none of these"
    for rung in reversed(rungs):
        size = rung["size"]
        last = rung is rungs[0]
        so_far = row(f"{name}: smallest size that would do" + ("" if last else f", from {size} up"),
                     "", TEXT, when(passes(rung), size, so_far), OURS)
        answers.append(so_far)
    return answers


rungs = ladder()
stringer_sizes = smallest("Stringers", lambda g: all_of(
    g["M"] >= stringer_moment, g["V"] >= stringer.R, g["EI"] >= stringer_stiffness))
rail_sizes = smallest("Rails", lambda g: all_of(g["M"] >= rail_moment, g["V"] >= rail_shear))
smallest_stringer, smallest_rail = stringer_sizes[-1], rail_sizes[-1]
