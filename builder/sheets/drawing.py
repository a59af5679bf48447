"""Drawing: the chosen section type to scale, seen from above, from the side and from the end.

x runs along the section from its middle, y across from its centreline; heights are above the
water.  Points are shares of half the paper's width, so that both scales are one.
"""

from __future__ import annotations

from builder.language import (
    Sheet,
    any_of,
    arc_tangent,
    degrees,
    feet_inches,
    greatest,
    joined,
    least,
    of_type,
    remainder,
    root,
    shown,
    sixteenths,
    when,
    whole_down,
)

from . import buoyancy, parts
from . import inputs as job
from . import inputs_yard as road
from . import sections as sec
from .reference import constants, own
from .stability_cases import edge_y, of_weight, tan_list
from .stability_sheet import STABLE
from .stability_weights import afloat, stable
from .yard_tape import of

sheet = Sheet("Drawing", "Drawing to scale", scope="drawing",
              about="For the type chosen on Inputs, block Yard and road. The bars are 5 ft long.")
row, block, note = sheet.row, sheet.block, sheet.note

MOST_STRINGERS, MOST_FLOATS, MOST_BEAMS, MOST_COLUMNS, MOST_ROWS = 36, 30, 5, 16, 8
"""So many of a kind are drawn; a note on the sheet says so where there are more."""
ours = constants("own_drawing")

block("The section type drawn")
L = row("Length, outside of headers", "L", "ft", of(sec.length))
B = row("Width, outside of rails", "B", "ft", of(sec.width))
L_d = row("Deck, length", "L_d", "ft", of(parts.deck_length))
B_d = row("Deck, width", "B_d", "ft", of(parts.deck_width))
L_o = row("Overall length", "L_o", "ft", of(parts.overall_length))
B_o = row("Overall width", "B_o", "ft", of(parts.overall_width))
rail = row("Rail, all plies", "t_r", "ft", (of(sec.rail_plies) * of(parts.rail_t)).in_("ft"))
header = row("Header", "t_h", "ft", of(parts.header_t).in_("ft"))
across = row("Stringers run across: 1 yes, 0 along", "k_a", "", when(
    of(sec.run).is_("across"), 1, 0), digits=0)
step = row("Stringer spacing", "s", "ft", of(sec.spacing).in_("ft"))
lines = row("Lines of stringers", "n_s", "each", of(parts.stringer_lines), digits=0)
beams = row("Cross-beams", "n_c", "each", of(sec.cross_beams), digits=0)
l_f = row("Float along the section", "l_f", "ft", of(parts.float_l))
b_f = row("Float across the section", "b_f", "ft", of(parts.float_b))
R = row("Rows of floats", "R", "each", of(sec.float_rows), digits=0)
n_r = row("Floats in a row", "n_r", "each", of(sec.floats_a_row), digits=0)
X = row("Centre of the end floats", "X", "ft", of(parts.end_x))
Y = row("Centre of the outer rows", "Y", "ft", of(parts.row_y))
p_x = row("Floats in a row, pitch", "p_x", "ft", of(parts.float_x_pitch))
p_y = row("Rows of floats, pitch", "p_y", "ft", of(parts.float_y_pitch))
panels = row("Panels: 1, boards: 0", "k_p", "", when(of(sec.deck).is_("panels"), 1, 0), digits=0)
panel_x = row("Panel along the section", "p_l", "ft", of(parts.panel_x))
panel_y = row("Panel across the section", "p_b", "ft", of(parts.panel_y))
D = row("Float depth", "D", "ft", of(parts.float_depth).in_("ft"))
z_u = row("Frame underside above the floats' underside", "z_u", "ft", of(parts.frame_underside))
z_t = row("Frame top, likewise", "z_t", "ft", of(parts.frame_top))
z_d = row("Deck top, likewise", "z_d", "ft", of(parts.deck_top))
T = row("Draft, in service", "T", "ft", of(buoyancy.draft_service).in_("ft"))
T_f = row("Draft under the flotation load", "T_f", "ft", of(buoyancy.draft_flotation).in_("ft"))
skirt = row("Skirt, depth", "d_k", "ft", of(parts.skirt_d).in_("ft"))
depth = row("Water at low water", "d_w", "ft", job.low_water_depth)

block("Scale: feet in half the paper's width")
plan = row("Plan", "S", "ft", greatest(L_o, 2 * B_o, own.least_length) * 5 / 8)
side = row("Side", "S_s", "ft", greatest(L_o * 5 / 8, 4 * (z_d + D), own.least_length))


def box(scale, x1, y1, x2, y2):
    """Return the five points of a rectangle given by two corners [ft]."""
    return [(x / scale, y / scale) for x, y in ((x1, y1), (x2, y1), (x2, y2), (x1, y2), (x1, y1))]


def stroke(scale, x1, y1, x2, y2):
    """Return the two points of a line between two places [ft]."""
    return [(x1 / scale, y1 / scale), (x2 / scale, y2 / scale)]


frame = sheet.shapes("Frame, plan", "frame", [
    box(plan, -L / 2, -B / 2, L / 2, B / 2),
    box(plan, -L / 2, rail - B / 2, L / 2, B / 2 - rail)])
headers = sheet.shapes("Headers, plan", "frame", [
    stroke(plan, header - L / 2, rail - B / 2, header - L / 2, B / 2 - rail),
    stroke(plan, L / 2 - header, rail - B / 2, L / 2 - header, B / 2 - rail)])
outline = sheet.shapes("Deck edge, plan", "skirt", [
    box(plan, -L_d / 2, -B_d / 2, L_d / 2, B_d / 2)])


def _stringer(k: int):
    """Return the line of a stringer; one past the last falls on the last."""
    at = least(k, lines) * step - when(across > 0, L, B) / 2
    return [((when(across > 0, at, header - L / 2)) / plan,
             (when(across > 0, rail - B / 2, at)) / plan),
            ((when(across > 0, at, L / 2 - header)) / plan,
             (when(across > 0, B / 2 - rail, at)) / plan)]


stringers = sheet.shapes("Stringers, plan", "member",
                         [_stringer(k) for k in range(1, MOST_STRINGERS + 1)])


def _beam(k: int):
    at = (L - 2 * header) * least(k, beams) / (beams + 1) - L / 2 + header
    return stroke(plan, at, rail - B / 2, at, B / 2 - rail)


cross = sheet.shapes("Cross-beams, plan", "frame", [_beam(k) for k in range(1, MOST_BEAMS + 1)])

block("Centres of the floats drawn, row by row; past the last float the last again")
a_row = row("Floats in a row, at least one", "n_1", "each", greatest(n_r, 1), digits=0)
centres = []
for _k in range(1, MOST_FLOATS + 1):
    _n = row(f"Float {_k}: its number, counted from 0", f"i_{_k}", "each",
             least(_k, greatest(R * n_r, 1)) - 1, digits=0)
    centres.append((
        row(f"Float {_k}: along", f"x_{_k}", "ft", remainder(_n, a_row) * p_x - X),
        row(f"Float {_k}: across", f"y_{_k}", "ft", whole_down(_n / a_row) * p_y - Y)))


def _float(x, y, along=l_f, athwart=b_f):
    return box(plan, x - along / 2, y - athwart / 2, x + along / 2, y + athwart / 2)


floats = sheet.shapes("Floats, plan", "float", [_float(x, y) for x, y in centres])
extra = [(row(f"Extra float {k}: 1 there, 0 not", f"e_{k}", "", of(here), digits=0), of(x), of(y))
         for k, here, x, y in zip(range(1, 5), parts.extra_here, sec.extra_x, sec.extra_y,
                                  strict=True)]
extras = sheet.shapes("Extra floats, plan", "float", [
    _float(x * e, y * e, l_f * e, b_f * e) for e, x, y in extra])


def _joint(k: int, size, whole, other, turned: bool):
    """Return a joint between panels, k sizes from the start; past the end it is the edge."""
    at = least(k * greatest(size, ours.least_panel), whole) * panels - whole / 2
    ends = (at, -other / 2, at, other / 2)
    return stroke(plan, *((ends[1], ends[0], ends[3], ends[2]) if turned else ends))


joints = sheet.shapes("Panel joints, plan", "deck", [
    *(_joint(k, panel_x, L_d, B_d, False) for k in range(1, MOST_COLUMNS)),
    *(_joint(k, panel_y, B_d, L_d, True) for k in range(1, MOST_ROWS))])

block("Things on it: half their drawn size is 4 in")
things = [(row(f"Fixed item {k}: 1 there, 0 not", f"w_{k}", "", when(of(w) > 0, 1, 0), digits=0),
           of(x), of(y))
          for k, w, x, y in zip(range(1, 5), sec.item_weight, sec.item_x, sec.item_y,
                                strict=True)]
foot = row("Gangway: 1 lands here, 0 not", "g", "", when(of(sec.gangway_rest) > 0, 1, 0),
           digits=0)
items = sheet.shapes("Fixed items, plan", "thing", [
    box(plan, (x - ours.item) * w, (y - ours.item) * w, (x + ours.item) * w, (y + ours.item) * w)
    for w, x, y in things])
gangway = sheet.shapes("Gangway foot, plan", "thing", [
    stroke(plan, (of(sec.gangway_x) - ours.cross) * foot, (of(sec.gangway_y) - ours.cross) * foot,
           (of(sec.gangway_x) + ours.cross) * foot, (of(sec.gangway_y) + ours.cross) * foot),
    stroke(plan, (of(sec.gangway_x) - ours.cross) * foot, (of(sec.gangway_y) + ours.cross) * foot,
           (of(sec.gangway_x) + ours.cross) * foot, (of(sec.gangway_y) - ours.cross) * foot)])


def measure(scale, x1, y1, x2, y2, tick):
    """Return a dimension line with a stroke across each end; ``tick`` is half its length [ft]."""
    level = y1 is y2
    strokes = [stroke(scale, x1, y1, x2, y2)]
    for x, y in ((x1, y1), (x2, y2)):
        strokes.append(stroke(scale, x, y - tick, x, y + tick) if level
                       else stroke(scale, x - tick, y, x + tick, y))
    return strokes


def bars(scale, x, y):
    """Return a bar along and one up, each as long as the scale says, from their right corner."""
    return [*measure(scale, x - ours.bar, y, x, y, scale / 100),
            *measure(scale, x, y, x, y + ours.bar, scale / 100)]


below = row("Dimension line below the plan", "y_m", "ft", -B_o / 2 - plan / 16)
beside = row("Dimension line beside the plan", "x_m", "ft", -L_o / 2 - plan / 16)
corner_x = row("Corner of the scale bars, plan", "x_b", "ft", plan * 15 / 16)
corner_y = row("The same, across", "y_b", "ft", -plan * 15 / 32)
measures = sheet.shapes("Dimension lines, plan", "measure", [
    *measure(plan, -L / 2, below, L / 2, below, plan / 100),
    *measure(plan, beside, -B / 2, beside, B / 2, plan / 100),
    *bars(plan, corner_x, corner_y)])

block("Words on the plan")
n_L = row("Length in sixteenths", "n_L", "", sixteenths(L.in_("in")), digits=0)
n_B = row("Width in sixteenths", "n_B", "", sixteenths(B.in_("in")), digits=0)
n_s = row("Spacing in sixteenths", "n_16", "", sixteenths(step.in_("in")), digits=0)
plan_marks = [
    sheet.mark(feet_inches(n_L), 0, (below - plan / 32) / plan),
    sheet.mark(feet_inches(n_B), (beside - plan / 16) / plan, 0),
    sheet.mark(joined("Type ", road.yard_type, "   stringers at ", feet_inches(n_s)), 0,
               (B_o / 2 + plan / 24) / plan),
    sheet.mark("5 ft", (corner_x - ours.bar / 2) / plan, (corner_y + plan / 40) / plan),
    sheet.mark(when(any_of(lines > MOST_STRINGERS, R * n_r > MOST_FLOATS, beams > MOST_BEAMS,
                           panels * L_d / MOST_COLUMNS > panel_x),
                    "there are more pieces than are drawn", " "), 0,
               -(B_o / 2 + plan / 8) / plan),
    sheet.mark("gangway", (of(sec.gangway_x) * foot + 3 * (1 - foot) * plan) / plan,
               (of(sec.gangway_y) + 2 * ours.cross) / plan),
]
sheet.view("Plan", "Plan of one section: outer frame, headers, stringers, floats dashed, panel "
           "joints, fixed items, gangway foot, overall dimensions, bars of 5 ft.",
           [frame, headers, outline, stringers, cross, floats, extras, joints, items, gangway,
            measures], plan_marks, wide=2, top=7)

block("Side, heights above the water in service")
u_0 = row("Underside of floats", "u_0", "ft", -T)
u_1 = row("Frame underside", "u_1", "ft", z_u - T)
u_2 = row("Frame top", "u_2", "ft", z_t - T)
u_3 = row("Deck top", "u_3", "ft", z_d - T)
rise = row("Water on it, under the flotation load", "u_4", "ft", T_f - T)
bed = row("Bed at low water; not lower than is drawn", "u_5", "ft",
          -least(depth, side / 5))
side_frame = sheet.shapes("Frame, side", "frame", [box(side, -L / 2, u_1, L / 2, u_2)])
side_deck = sheet.shapes("Deck, side", "member", [box(side, -L_d / 2, u_2, L_d / 2, u_3)])
side_skirt = sheet.shapes("Skirt, side", "skirt", [
    box(side, -L_o / 2, u_2 - skirt, L_o / 2, u_2)])
side_floats = sheet.shapes("Floats, side", "float", [
    box(side, X * (2 * least(k, a_row - 1) / greatest(a_row - 1, 1) - 1) - l_f / 2, u_0,
        X * (2 * least(k, a_row - 1) / greatest(a_row - 1, 1) - 1) + l_f / 2, u_0 + D)
    for k in range(12)])
side_water = sheet.shapes("Water, side", "water", [stroke(side, -side, 0 * L, side, 0 * L)])
side_loaded = sheet.shapes("Water under the flotation load, side", "loaded", [
    stroke(side, -side, rise, side, rise)])
side_bed = sheet.shapes("Bed, side", "bed", [stroke(side, -side, bed, side, bed)])
free_x = row("Freeboard's dimension line", "x_f", "ft", L_o / 2 + side / 16)
zero = row("Water's surface", "u", "ft", 0 * T)
side_corner = row("Corner of the scale bars, side", "x_s", "ft", ours.bar - side * 15 / 16)
side_measures = sheet.shapes("Dimension lines, side", "measure", [
    *measure(side, free_x, zero, free_x, u_3, side / 100),
    *bars(side, side_corner, bed)])
side_marks = [
    sheet.mark(joined(shown(u_3.in_("in"), 1), " in empty; ",
                      shown((u_3 - rise).in_("in"), 1), " in loaded"),
               (free_x + side / 6) / side, u_3 / 2 / side),
    sheet.mark(joined("bed at ", shown(depth, 1), " ft"), 0, (bed + side / 24) / side),
    sheet.mark("5 ft", (side_corner - ours.bar / 2) / side, (bed + side / 40) / side),
]
sheet.view("Side, afloat: full line empty in service, dashed under the flotation load",
           "Side of the section afloat: floats, frame, skirt, deck, water empty and loaded, bed "
           "at low water, freeboard.",
           [side_frame, side_deck, side_skirt, side_floats, side_water, side_loaded, side_bed,
            side_measures], side_marks, wide=4, top=40, new_page=True)

block("End, with the point load at mid edge")
upright = row("With the point load: 1 stable, 0 it turns over", "k_φ", "",
              when(of(of_weight(stable, "edge")).is_(STABLE), 1, 0), digits=0)
turned = row("Tangent of the list; 0 where it turns over", "t_φ", "", of(tan_list["edge"]),
             digits=4)
T_p = row("Draft with the point load", "T_p", "ft", of(afloat["point"].draft).in_("ft"))
hand = row("Side the load stands on: 1 right, −1 left", "h", "",
           1 - 2 * (of(edge_y) < 0), digits=0)
cosine_ = row("Cosine of the list", "c_φ", "", 1 / root(1 + turned ** 2), digits=4)
sine_ = row("Sine of the list", "s_φ", "", turned * cosine_, digits=4)
end = row("Half the paper's width, end", "S_e", "ft",
          greatest(B_o * 3 / 4, 2 * (z_d + D), own.least_length))
v_0 = row("Underside of floats, level", "v_0", "ft", -T_p)
v_1 = row("Frame underside, level", "v_1", "ft", z_u - T_p)
v_2 = row("Frame top, level", "v_2", "ft", z_t - T_p)
v_3 = row("Deck top, level", "v_3", "ft", z_d - T_p)


def leaning(y1, z1, y2, z2):
    """Return a rectangle leaning over by the list, to the right where the load stands."""
    return [((y * cosine_ + z * sine_) / end, (z * cosine_ - y * sine_) / end)
            for y, z in ((y1, z1), (y2, z1), (y2, z2), (y1, z2), (y1, z1))]


end_frame = sheet.shapes("Frame, end", "frame", [leaning(-B / 2, v_1, B / 2, v_2)])
end_deck = sheet.shapes("Deck, end", "member", [leaning(-B_d / 2, v_2, B_d / 2, v_3)])
end_floats = sheet.shapes("Floats, end", "float", [
    leaning(Y * (2 * least(k, greatest(R, 1) - 1) / greatest(R - 1, 1) - 1) - b_f / 2, v_0,
            Y * (2 * least(k, greatest(R, 1) - 1) / greatest(R - 1, 1) - 1) + b_f / 2, v_0 + D)
    for k in range(6)])
end_water = sheet.shapes("Water, end", "water", [stroke(end, -end, zero, end, zero)])
load_y = row("Edge of the deck, across", "y_P", "ft", hand * B_d / 2 * cosine_ + v_3 * sine_)
load_z = row("Edge of the deck, above the water", "z_P", "ft",
             v_3 * cosine_ - hand * B_d / 2 * sine_)
end_load = sheet.shapes("Load, end", "thing", [
    stroke(end, load_y, load_z, load_y, load_z + end / 6)])
end_bars = sheet.shapes("Scale bars, end", "measure", bars(end, end * 15 / 16, -end * 7 / 16))
end_marks = [
    sheet.mark(joined(shown(of(sec.point_load)), " lb"), load_y / end,
               (load_z + end / 5) / end),
    sheet.mark(when(upright > 0, joined("list ", shown(degrees(arc_tangent(turned)), 1), " deg"),
                    "UNSTABLE: it turns over"), 0,
               (v_3 + end / 8) / end),
    sheet.mark("5 ft", (end * 15 / 16 - ours.bar / 2) / end, (end / 24 - end * 7 / 16) / end),
]
sheet.view("End, with the point load at mid edge", "End of the section leaning under the point "
           "load at mid edge, by the angle worked out on Stability.",
           [end_frame, end_deck, end_floats, end_water, end_load, end_bars], end_marks,
           wide=2, top=58, parts=2)

block("All section types, one beside the other")
LETTERS = "ABCDEF"
longest = row("Longest", "L_max", "ft", greatest(*(of_type(sec.length, k) for k in LETTERS)))
widest = row("Widest", "B_max", "ft", greatest(*(of_type(sec.width, k) for k in LETTERS)))
types = row("Half the paper's width", "S_a", "ft",
            greatest(longest * 5 / 4, widest * 7 / 2, own.least_length))
lengths = {k: row(f"Length of {k}", f"L_{k}", "ft", of_type(sec.length, k)) for k in LETTERS}
widths = {k: row(f"Width of {k}", f"B_{k}", "ft", of_type(sec.width, k)) for k in LETTERS}


def _type(number: int, k: str):
    middle = types * (2 * number - 5) / 6
    return box(types, middle - widths[k] / 2, -lengths[k] / 2,
               middle + widths[k] / 2, lengths[k] / 2)


outlines = sheet.shapes("Types, plan", "frame", [_type(n, k) for n, k in enumerate(LETTERS)])
type_bars = sheet.shapes("Scale bars, types", "measure", bars(types, types * 31 / 32,
                                                              -types * 15 / 32))
type_marks = []
for _n, _k in enumerate(LETTERS):
    _middle = types * (2 * _n - 5) / 6
    _used = lengths[_k] > 0
    type_marks += [
        sheet.mark(when(_used, joined(_k, ": ", shown(of_type(sec.quantity, _k)), " built"), " "),
                   _middle / types, (lengths[_k] / 2 + types / 24) / types),
        sheet.mark(when(_used, joined(shown(lengths[_k], 1), " × ", shown(widths[_k], 1)), " "),
                   _middle / types, -(lengths[_k] / 2 + types / 24) / types)]
sheet.view("All types: length × width, ft", "Outlines of all section types in use, one "
           "beside the other, to one scale.", [outlines, type_bars], type_marks, wide=2, top=58,
           left=1, parts=2)
