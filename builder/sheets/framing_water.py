"""Framing, fourth part: the whole section as a beam on the water.

Each rail carries half the width on its own half of the floats.  The floats press up with
T + θx, which balances the load; the moment at a station x is the lever of all that lies between
the end and x.  Per pound of load on a rail, with the floats from s to e and S₀ = Σ(e − s):

    a₁ = Σ[(x−s)₊ − (x−e)₊] / S₀          share of an even push behind x
    a₂ = Σ[(x−s)₊² − (x−e)₊²] / 2S₀       its moment about x
    a₃ = Σ[(x−s)₊³ − (x−e)₊³] / 3S₀       twice the moment's sum, for the sloped push
    u₂ = a₂ − (x + L/2)²/2L               the same moment less that of an even load

The floats are laid out alike at both ends, so an even or mirrored load needs no slope.  For the
point load near an end the sloped push per pound is x_P/r² times (x a₁ − a₂), and its moment
x_P/r² times (x a₂ − a₃), with r² = Σ(e³ − s³)/3S₀.
"""

from __future__ import annotations

from builder.language import (
    Series,
    absolute,
    greatest,
    largest,
    least,
    nearest,
    smallest,
    sum_over,
    when,
    whole_up,
)
from builder.language.units import TEXT

from . import buoyancy, parts, weight
from . import inputs as job
from . import sections as sec
from .framing_rails import S_all, held, plies, rail
from .framing_wood import (
    GROUP,
    NDS,
    OURS,
    STATICS,
    block,
    check,
    dead,
    note,
    point_edge,
    row,
    stability,
)
from .reference import nds, own

FLOATS_MOST = 20
"""Floats a row may have; the range of the input in Sections holds to it."""
STEPS = 40
"""Steps from end to end: 41 even stations."""

block("The section on water: floats of a row")
note("Extra floats, float weight and the draft that carries it are left out. Past the number of "
     "floats in a row, a start and an end stand at the end of the section and press on nothing.")
half = row("Half the length", "h", "ft", sec.length / 2, STATICS)
starts = [row(f"Start of float {i + 1}", f"s_{i + 1}", "ft",
              when(sec.floats_a_row > i,
                   greatest(i * parts.float_x_pitch - parts.end_x - parts.float_l / 2, -half),
                   half), STATICS)
          for i in range(FLOATS_MOST)]
ends = [row(f"End of float {i + 1}", f"e_{i + 1}", "ft",
            when(sec.floats_a_row > i,
                 least(i * parts.float_x_pitch - parts.end_x + parts.float_l / 2, half),
                 half), STATICS)
        for i in range(FLOATS_MOST)]
start, end = Series("s", starts), Series("e", ends)
float_length = row("Float length in a row", "S_0", "ft",
                   greatest(sum_over(end - start), own.least_length), STATICS)
twice = row("Twice that", "2 S_0", "ft", 2 * float_length, STATICS)
thrice = row("Three times that", "3 S_0", "ft", 3 * float_length, STATICS)
float_spread = row("Mean square of its distance from the middle", "r²", "ft²",
                   greatest(sum_over(end**3 - start**3) / thrice,
                            own.least_length**2), STATICS)

block("The section on water: loads on one rail")
crowd = row("Rated crowd on one rail", "Q", "lb", job.flotation_load * parts.deck_area / 2,
            STATICS, digits=0)
rail_dead = row("Dead load on one rail", "W_D", "lb", dead * parts.deck_area / 2, STATICS,
                digits=0)
crowd_edge = row("Crowd in the middle: from the middle to its edge", "x_q", "ft",
                 own.crowd_middle * half, OURS)
crowd_line = row("Crowd in the middle: its line load", "q_m", "lb/ft", crowd / (2 * crowd_edge),
                 STATICS, digits=1)
crowd_half = row("Half of that", "q_2", "lb/ft", crowd_line / 2, STATICS, digits=1)
dead_and_crowd = row("Dead load and crowd on one rail", "W_D + Q", "lb", rail_dead + crowd,
                     STATICS, digits=0)
end_x = row("Point load near the end: where it stands", "x_P", "ft", point_edge - half, OURS)
end_slope = row("Point load near the end: slope of the push", "g_P", "lb/ft",
                sec.point_load * end_x / float_spread, STATICS)

block("The section on water: stations")
note("Stations run from the end −L/2 to the middle: the other half mirrors it for the crowd, and "
     "the point load near an end bends its own half most. The last line of each is the far end, "
     "where moment and shear must come back to 0.")
PLACES = [*range(1, STEPS // 2 + 1), STEPS]
x = Series("x", [row(f"Station {k}", f"x[{k}]", "ft", k * sec.length / STEPS - half, STATICS)
                 for k in PLACES])


def stations(name: str, symbol: str, unit: str, formula, digits: int = 3) -> Series:
    """Declare a quantity at every station; ``formula`` is given the place in the list."""
    return Series(symbol, [row(f"{name}, station {k}", f"{symbol}[{k}]", unit, formula(i), STATICS,
                               digits) for i, k in enumerate(PLACES)])


a1 = stations("Share of the push behind", "a₁", "", lambda i: (
    sum_over((x[i] > start) * (x[i] - start)) - sum_over((x[i] > end) * (x[i] - end)))
    / float_length)
a2 = stations("Moment of the push", "a₂", "ft", lambda i: (
    sum_over((x[i] > start) * (x[i] - start) ** 2) - sum_over((x[i] > end) * (x[i] - end) ** 2))
    / twice)
a3 = stations("Second moment of the push", "a₃", "ft²", lambda i: (
    sum_over((x[i] > start) * (x[i] - start) ** 3) - sum_over((x[i] > end) * (x[i] - end) ** 3))
    / thrice)
u2 = stations("Moment of an even load", "u₂", "ft",
              lambda i: a2[i] - (x[i] + half) ** 2 / (2 * sec.length))
V_middle = stations("Shear, crowd in the middle", "V_m", "lb", lambda i: (
    dead_and_crowd * a1[i] - rail_dead * (x[i] + half) / sec.length
    - crowd_line * (greatest(x[i] + crowd_edge, 0) - greatest(x[i] - crowd_edge, 0))), 0)
M_middle = stations("Moment, crowd in the middle", "M_m", "lb·ft", lambda i: (
    rail_dead * u2[i] + crowd * a2[i]
    - crowd_half * (greatest(x[i] + crowd_edge, 0) ** 2 - greatest(x[i] - crowd_edge, 0) ** 2)),
    0)
note("Crowd on the ends: what an even crowd of the same density over the whole deck leaves when "
     "the crowd in the middle is taken from it.")
V_ends = stations("Shear, crowd on the ends", "V_e", "lb", lambda i: (
    (dead_and_crowd * (a1[i] - (x[i] + half) / sec.length) - own.crowd_middle * V_middle[i])
    / (1 - own.crowd_middle)), 0)
M_ends = stations("Moment, crowd on the ends", "M_e", "lb·ft", lambda i: (
    (dead_and_crowd * u2[i] - own.crowd_middle * M_middle[i]) / (1 - own.crowd_middle)), 0)
M_end = stations("Moment, point load near an end", "M_P", "lb·ft", lambda i: (
    rail_dead * u2[i] + sec.point_load * (a2[i] - greatest(x[i] - end_x, 0))
    + end_slope * (x[i] * a2[i] - a3[i])), 0)

block("The section on water: greatest effects in a rail")
note("The point load at mid-length is put on what the dead load sags, never on what it hogs: an "
     "upper bound where floats stand in the middle only.")
M_point = row("Moment, point load on one rail at mid-length", "M_P0", "lb·ft",
              rail_dead * greatest(largest(u2), 0) + sec.point_load * a2[-2], STATICS, digits=0)
M_strength = row("For information: moment if the strength load covered the deck", "M_S1", "lb·ft",
                 (rail_dead + sec.strength_load * parts.deck_area / 2)
                 * greatest(largest(u2), -smallest(u2)), STATICS, digits=0)
sagging = row("Sagging moment", "M_sag", "lb·ft",
              greatest(largest(M_middle), largest(M_ends), largest(M_end), M_point, 0), STATICS,
              digits=0)
hogging_moment = row("Hogging moment", "M_hog", "lb·ft",
                greatest(-smallest(M_middle), -smallest(M_ends), -smallest(M_end), 0), STATICS,
                digits=0)
note("Next to the point load a rail carries all of it, less what the floats beyond it lift; of an "
     "even load it carries no more than half. Both reliefs are left out.")
water_shear = row("Shear", "V_w", "lb",
              greatest(largest(V_middle), -smallest(V_middle), largest(V_ends),
                       -smallest(V_ends), sec.point_load + rail_dead / 2), STATICS, digits=0)
f_sag = row("Bending stress, sagging", "f_b,sag", "psi", sagging.in_("lb·in") / S_all,
            f"{NDS} 3.3.2", digits=0)
f_hog = row("Bending stress, hogging", "f_b,hog", "psi", hogging_moment.in_("lb·in") / S_all,
            f"{NDS} 3.3.2", digits=0)
f_water = row("Shear stress", "f_v,w", "psi",
              nds.shear_rectangle * water_shear / (plies * rail.t * rail.d), f"{NDS} 3.4.2",
              digits=1)
note("Sagging, the upper edge is held by stringers and deck: CL 1. Hogging, the lower edge is "
     "held by the stringers.")
water_hog_length = row("Effective length, any other loading", "le_w", "in",
                 when(held / rail.d < nds.le_ratio_limit, nds.le_other_short * held,
                      greatest(nds.le_other_middle * held + 3 * rail.d,
                               nds.le_other_long * held)),
                 f"{NDS} Table 3.3.3 footnote 1", digits=1)
water_hogging = stability(rail, "Rail hogging on water", "w", water_hog_length, rail.Fb_single)
STIFFER = "One more rail ply, a deeper rail, or more floats where the load stands."
sag_check = check("Section on water: sagging", f_sag, at_most=rail.Fb_single,
                  source=f"{NDS} 3.3.1", cure=STIFFER, group=GROUP,
                  amount=("plies to add", "each",
                          whole_up(plies * greatest(0, f_sag / rail.Fb_single - 1))))
water_hog_check = check("Section on water: hogging", f_hog, at_most=water_hogging.Fb,
                        source=f"{NDS} 3.3.3", cure=STIFFER, group=GROUP,
                        amount=("plies to add", "each",
                                whole_up(plies * greatest(0, f_hog / water_hogging.Fb - 1))))
water_shear_check = check("Section on water: shear", f_water, at_most=rail.Fv_adj,
                          source=f"{NDS} 3.4.1", cure=STIFFER, group=GROUP)

block("The section on water: does the water do what is assumed")
# To a thousandth of what is allowed: the last bits of the amounts that cancel are no result, and
# differ from one spreadsheet program to the next.
left_over = row("Moment left at the far end, and shear × L/2", "M_0", "lb·ft",
                nearest(absolute(M_middle[-1]) + absolute(M_ends[-1]) + absolute(M_end[-1])
                        + half * (absolute(V_middle[-1]) + absolute(V_ends[-1])),
                        own.station_closing / 1000), STATICS, digits=6)
closing_check = check("Section on water: moment and shear come back to 0", left_over,
                      at_most=own.station_closing, source=STATICS, group=GROUP,
                      cure="The arithmetic of this sheet is broken: do not use it.")
rail_sinkage = row("Point load near an end: sinkage of its rail's floats, mean", "T_P", "in",
                   2 * sec.point_load / greatest(buoyancy.sinkage, own.one_pound_an_inch),
                   "Archimedes")
end_share = row("More at the end floats' outer edge, share", "t_P", "",
                end_x * starts[0] / float_spread, STATICS)
float_edge = row("End floats: 1 is just under, or just out of the water", "i_P", "",
                 greatest((buoyancy.draft_service + rail_sinkage * (1 + end_share))
                          / parts.float_depth,
                          1 - (buoyancy.draft_service + rail_sinkage * (1 - end_share))
                          / parts.float_depth, 0), "Archimedes")
float_check = check("Section on water: floats neither under nor out", float_edge, at_most=1,
                    look_at=1, source="Archimedes", worst="LOOK", group=GROUP,
                    cure="Larger floats at the ends: the moments above assume that every float "
                    "stays partly wet.")
first_under = row("Strength load over the whole deck", "", TEXT,
                  when(sec.strength_load * parts.deck_area > buoyancy.capacity - weight.service,
                       "the floats go under first", "the floats stay up"), "Archimedes")
note("Members are checked under the strength load all the same: it stands on a part of the deck.")
