"""Drawing, third part: the section afloat, from the side and from the end."""

from __future__ import annotations

from builder.language import (
    absolute,
    arc_tangent,
    degrees,
    greatest,
    joined,
    least,
    root,
    shown,
    when,
)

from . import parts
from . import sections as sec
from .drawing_base import (
    B,
    B_d,
    B_o,
    D,
    L,
    L_d,
    L_o,
    R,
    T,
    T_f,
    X,
    Y,
    b_f,
    bars,
    block,
    box,
    depth,
    l_f,
    ours,
    path,
    row,
    sheet,
    skirt,
    stroke,
    upright,
    z_d,
    z_t,
    z_u,
)
from .drawing_plan import MOST_BESIDE, a_row
from .stability_cases import edge_y, of_weight, tan_list
from .stability_sheet import STABLE
from .stability_weights import afloat, stable
from .yard_tape import of

ROWS = 6
"""Most rows of floats."""

block("Side, heights above the water in service")
dry = row("Side, without the bed", "S_0", "ft",
          greatest(L_o * 2 / 3, 4 * (z_d + D), 8 * ours.short_bar,
                   of(parts.grid_reach) * L * 5 / 9))
side = row("Side", "S_s", "ft", greatest(dry, least(5 * depth, dry * 5 / 4)))
u_0 = row("Underside of floats", "u_0", "ft", -T)
u_1 = row("Frame underside", "u_1", "ft", z_u - T)
u_2 = row("Frame top", "u_2", "ft", z_t - T)
u_3 = row("Deck top", "u_3", "ft", z_d - T)
rise = row("Water on it, under the flotation load", "u_4", "ft", T_f - T)
zero = row("Water's surface", "u", "ft", 0 * T)
bed = row("Bed at low water; not lower than is drawn", "u_5", "ft",
          -least(depth, side / 5))


def _spread(k: int, reach, count):
    """Return the k-th of some places spread evenly from −reach to reach; past the last, the last.
    """
    return reach * (2 * least(k, count - 1) / greatest(count - 1, 1) - 1)


side_frame = sheet.shapes("Frame, side", "frame", [box(side, -L / 2, u_1, L / 2, u_2)])
side_deck = sheet.shapes("Deck, side", "member", [box(side, -L_d / 2, u_2, L_d / 2, u_3)])
side_skirt = sheet.shapes("Skirt, side", "skirt", [
    box(side, -L_o / 2, u_2 - skirt, L_o / 2, u_2)])


def _float(k: int, reach, count, size):
    """Return the k-th float from 0: from, to, and depth; past the last it is a point."""
    middle, there = _spread(k, reach, count), count > k
    return middle - size / 2 * there, middle + size / 2 * there, D * there


def _upright(k: int):
    left, right, deep = _float(k, X, a_row, l_f)
    return box(side, left, u_0, right, u_0 + deep)


side_floats = sheet.shapes("Floats, side", "float", [_upright(k) for k in range(MOST_BESIDE)])
side_water = sheet.shapes("Water, side", "water", [stroke(side, -side, zero, side, zero)])
side_loaded = sheet.shapes("Water under the flotation load, side", "loaded", [
    stroke(side, -side, rise, side, rise)])
side_bed = sheet.shapes("Bed, side", "bed", [stroke(side, -side, bed, side * 3 / 4, bed)])
off = row("Dimension lines, from the middle", "x_f", "ft", L_o / 2 + side / 28)
far, bar_x, bar_y = L_o / 2 + side / 8, side * 31 / 32, -side * 15 / 64
side_measures = sheet.shapes("Dimension lines, side", "measure", [
    upright(side, off, zero, u_3),
    upright(side, -off, rise, u_3),
    upright(side, -off, bed, zero),
    bars(side, bar_x, bar_y, ours.short_bar)])
side_marks = [
    sheet.mark(joined(shown(u_3.in_("in"), 1), " in empty"), far / side,
               (u_3 + rise) / 2 / side),
    sheet.mark(joined(shown((u_3 - rise).in_("in"), 1), " in loaded"), -far / side,
               (u_3 + rise) / 2 / side),
    sheet.mark(joined("water ", shown(depth, 1), " ft"), -far / side, bed / 2 / side),
    sheet.mark(when(depth > side / 5, "not to scale", " "), 0,
               (bed + side / 40) / side),
    sheet.mark("2 ft", (bar_x - ours.short_bar / 2) / side, (bar_y + side / 50) / side),
]
sheet.view("Side, afloat: full line empty in service, dashed under the flotation load",
           "Side of the section afloat: floats dashed, frame, skirt, deck, water empty and loaded, "
           "bed at low water, freeboard empty and loaded, bars of 2 ft.",
           [side_floats, side_deck, side_skirt, side_frame, side_water, side_loaded, side_bed,
            side_measures], side_marks, wide=4, top=40, new_page=True)

block("End, with the point load at mid edge")
stays = row("With the point load: 1 stable, 0 it turns over", "k_φ", "",
            when(of(of_weight(stable, "edge")).is_(STABLE), 1, 0), digits=0)
turned = row("Tangent of the list; 0 where it turns over", "t_φ", "", of(tan_list["edge"]),
             digits=4)
T_p = row("Draft with the point load", "T_p", "ft", of(afloat["point"].draft).in_("ft"))
hand = row("Side the load stands on: 1 right, −1 left", "k_h", "",
           1 - 2 * (of(edge_y) < 0), digits=0)
cosine_ = row("Cosine of the list", "c_φ", "", 1 / root(1 + turned ** 2), digits=4)
sine_ = row("Sine of the list", "s_φ", "", turned * cosine_, digits=4)
end = row("Half the paper's width, end", "S_e", "ft",
          greatest(B_o * 3 / 4, 2 * (z_d + D), 4 * ours.short_bar,
                   of(parts.grid_reach) * B * 5 / 8))
v_0 = row("Underside of floats, level", "v_0", "ft", -T_p)
v_1 = row("Frame underside, level", "v_1", "ft", z_u - T_p)
v_2 = row("Frame top, level", "v_2", "ft", z_t - T_p)
v_3 = row("Deck top, level", "v_3", "ft", z_d - T_p)


def leaning(y1, z1, y2, z2):
    """Return a rectangle leaning over by the list, to the right where the load stands."""
    return path(end, *((y * cosine_ + z * sine_, z * cosine_ - y * sine_)
                       for y, z in ((y1, z1), (y2, z1), (y2, z2), (y1, z2), (y1, z1))))


end_frame = sheet.shapes("Frame, end", "frame", [leaning(-B / 2, v_1, B / 2, v_2)])
end_deck = sheet.shapes("Deck, end", "member", [leaning(-B_d / 2, v_2, B_d / 2, v_3)])


def _leaning_float(k: int):
    left, right, deep = _float(k, Y, greatest(R, 1), b_f)
    return leaning(left, v_0, right, v_0 + deep)


end_floats = sheet.shapes("Floats, end", "float", [_leaning_float(k) for k in range(ROWS)])
end_water = sheet.shapes("Water, end", "water", [stroke(end, -end, zero, end, zero)])
load_y = row("Edge of the deck, across", "y_P", "ft", hand * B_d / 2 * cosine_ + v_3 * sine_)
load_z = row("Edge of the deck, above the water", "z_P", "ft",
             v_3 * cosine_ - hand * B_d / 2 * sine_)
end_load = sheet.shapes("Load, end", "thing", [
    stroke(end, load_y, load_z, load_y, load_z + end / 6)])
end_bars = sheet.shapes("Scale bars, end", "measure", [
    bars(end, end * 31 / 32, -end * 15 / 32, ours.short_bar)])
end_marks = [
    sheet.mark(joined(shown(of(sec.point_load)), " lb"), load_y / end,
               (load_z + end / 5) / end),
    sheet.mark(when(stays > 0,
                    joined("list ", shown(degrees(arc_tangent(absolute(turned))), 1), " deg"),
                    "UNSTABLE: it turns over"),
               -hand * end * 2 / 3 / end, end * 3 / 7 / end),
    sheet.mark("2 ft", (end * 31 / 32 - ours.short_bar / 2) / end,
               (end / 26 - end * 15 / 32) / end),
]
sheet.view("End, with the point load at mid edge", "End of the section leaning under the point "
           "load at mid edge, by the angle worked out on Stability; bars of 2 ft.",
           [end_floats, end_deck, end_frame, end_water, end_load, end_bars], end_marks,
           wide=2, top=57, parts=2)
