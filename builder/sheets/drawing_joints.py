"""Drawing, fifth part: the stringer end and the corner, in inches, with the bolts' grip.

Three views beside one another to one scale: the stringer end from above, the same cut through the
member it stands against, the corner from above.  Heights run down from the frame's flush tops.
"""

from __future__ import annotations

from builder.language import greatest, joined, least, shown, when

from . import catalog, parts, setout
from . import hardware_bolts as ends
from . import hardware_lengths as lengths
from . import inputs as job
from .drawing_base import (
    across,
    bars,
    beams,
    block,
    box,
    header,
    ours,
    path,
    rail,
    row,
    sheet,
    stroke,
)
from .reference import own
from .yard_tape import of, words

BOLTS, HATCH = 4, 6
"""Most bolts of a leg drawn in the cut; lines of its hatching."""
ANGLE = catalog.ANGLES.find(job.stringer_angle)
PLATE = catalog.PLATES.find(job.washer_plate)
INSIDE = catalog.CORNERS.find(job.corner_inside)
OUTSIDE = catalog.CORNERS.find(job.corner_outside)

block("Stringer end, inches; the catalog gives no length of a leg: as far past the bolts as at "
      "its top")
t_n = row("Member it stands against, thickness", "t_n", "in", of(ends.t_n))
d_n = row("Member it stands against, depth", "d_n", "in", of(ends.d_n))
t_m = row("Piece that ends here, thickness", "t_m", "in", of(ends.t_m))
d_m = row("Piece that ends here, depth", "d_m", "in", of(ends.d_m))
t_p = row("Angle, plate", "t_p", "in", of(ends.t_p), digits=4)
a_t = row("Angle's top below the top edge", "a_t", "in", of(ends.angle_top))
h_a = row("Angle's height", "h_a", "in", of(ends.angle_height))
e_h = row("Holes from the end of the stringer", "e_h", "in",
          of(setout.hole_end))
l_a = row("Angle's leg", "l_a", "in", e_h + ANGLE["top hole from its top"])
h_1 = row("Upper hole below the top edge", "h_1", "in", of(setout.hole_upper))
h_2 = row("Lowest hole below the top edge", "h_2", "in", of(setout.hole_lowest))
s_h = row("Holes apart", "s_h", "in", of(setout.hole_step))
n_a = row("Bolts in a leg", "n_a", "each", of(parts.bolts_a_leg), digits=0)
t_w = row("Washer plate, thickness", "t_w", "in", PLATE["thickness"], digits=4)
b_w = row("Washer plate, along the grain", "b_w", "in", of(ends.plate_b))
d_b = row("Bolt", "d_b", "in", of(ends.D), digits=4)
bolt_m = row("Bolt of the stringer's leg, under the head", "l_m", "in", of(lengths.leg_bolt))
bolt_n = row("Bolt of the other leg, under the head", "l_n", "in", of(lengths.rail_bolt))
past = row("Nut and projection", "h_n", "in", of(lengths.past), digits=3)
grip_m = row("Grip on the stringer: plates, wood, washer", "g_m", "in",
             of(lengths.leg_need) - past)
grip_n = row("Grip on the other leg, likewise", "g_n", "in", of(lengths.rail_need) - past)

block("Corner, inches")
t_R = row("Rail, all plies, inches", "t_R", "in", rail.in_("in"))
t_H = row("Header, inches", "t_H", "in", header.in_("in"))
t_i = row("Inside bracket, plate", "t_i", "in", INSIDE["plate thickness"], digits=4)
t_o = row("Outside bracket, plate", "t_o", "in", OUTSIDE["plate thickness"], digits=4)
x_i = row("Holes in the rail, from the inside of the header", "x_i", "in",
          INSIDE["corner to rail bolts"])
y_i = row("Holes in the header, from the inside of the rail", "y_i", "in",
          INSIDE["corner to header bolts"])
a_i = row("Inside bracket: leg past the holes", "a_i", "in",
          INSIDE["top hole from its top"])
r_o = row("Outside bracket: leg on the rail", "r_o", "in",
          OUTSIDE["corner to rail bolts"] + OUTSIDE["top hole from its top"])
r_h = row("Outside bracket: leg on the header", "r_h", "in",
          OUTSIDE["corner to header bolts"] + OUTSIDE["top hole from its top"])
t_c = row("Cut washer", "t_c", "in", of(lengths.washer_t), digits=3)
bolt_h = row("Bolt of the header, under the head", "l_hd", "in", of(lengths.header_bolt))
bolt_r = row("Bolt of the rail, under the head", "l_r", "in", of(lengths.corner_bolt))
grip_h = row("Grip on the header: brackets, wood, washers", "g_h", "in",
             of(lengths.header_need) - past)
grip_r = row("Grip on the rail, likewise", "g_r", "in", of(lengths.corner_need) - past)

block("Joints: inches in half the paper's width, and where the views stand on it")
w_a = row("Length of wood drawn, stringer end", "w_a", "in", l_a * 4 / 3)
w_c = row("Length of wood drawn, corner", "w_c", "in",
          greatest(r_o, r_h, t_H + x_i + a_i, t_R + y_i + a_i) * 5 / 4)
joints_scale = row("Joints", "S_j", "in", greatest(
    (t_m / 2 + w_a) * 10 / 3, (t_n + w_a) * 12 / 5, greatest(d_m, d_n) * 7 / 5, w_c * 7 / 4,
    3 * ours.detail_bar, own.least_length.in_("in")))
S = joints_scale
x_1 = row("Stringer end from above: the stringer's middle", "x_1", "in", -S * 2 / 3)
y_1 = row("The same: face it stands against", "y_1", "in",
          (t_n + t_w - w_a) / 2)
x_2 = row("Stringer end cut: the same face", "x_2", "in", (t_n - w_a) / 2 + S / 24)
y_2 = row("The same: frame's top", "y_2", "in", greatest(d_m, d_n) / 2)
x_3 = row("Corner: end of the rail", "x_3", "in", S * 2 / 3 - w_c / 2)
y_3 = row("The same: outside of the rail", "y_3", "in", -w_c / 2)
side_m = row("Stringer's face under the angle", "f_m", "in", x_1 + t_m / 2)


def _at(x, y, *points):
    """Return the points of a line, given from a corner of a view [in]."""
    return path(S, *((x + a, y + b) for a, b in points))


def _bolt_along(x, y, length, grip):
    """Return a bolt lying along: head and shank, then the face under its nut."""
    return [
        _at(x, y, (0, -d_b), (0, d_b), (0, d_b / 2), (length, d_b / 2), (length, -d_b / 2),
            (0, -d_b / 2)),
        stroke(S, x + grip, y - d_b, x + grip, y + d_b)]


def _bolt_up(x, y, length, grip):
    """Return a bolt standing up: head and shank, then the face under its nut."""
    return [
        _at(x, y, (-d_b, 0), (d_b, 0), (d_b / 2, 0), (d_b / 2, length), (-d_b / 2, length),
            (-d_b / 2, 0)),
        stroke(S, x - d_b, y + grip, x + d_b, y + grip)]


end_wood = sheet.shapes("Wood, stringer end from above", "frame", [
    box(S, x_1 - w_a, y_1 - t_n, x_1 + t_m / 2 + w_a, y_1),
    path(S, (x_1 - t_m / 2, y_1 + w_a), (x_1 - t_m / 2, y_1)),
    path(S, (side_m, y_1 + w_a), (side_m, y_1))])
end_plates = sheet.shapes("Plates, stringer end from above", "plate", [
    _at(side_m, y_1, (0, 0), (l_a, 0), (l_a, t_p), (t_p, t_p), (t_p, l_a), (0, l_a), (0, 0)),
    box(S, side_m + e_h - b_w / 2, y_1 - t_n - t_w, side_m + e_h + b_w / 2, y_1 - t_n),
    box(S, x_1 - t_m / 2 - t_w, y_1 + e_h - b_w / 2, x_1 - t_m / 2, y_1 + e_h + b_w / 2)])
end_bolts = sheet.shapes("Bolts, stringer end from above", "bolt", [
    *_bolt_along(x_1 - t_m / 2 - t_w, y_1 + e_h, bolt_m, grip_m),
    *_bolt_up(side_m + e_h, y_1 - t_n - t_w, bolt_n, grip_n)])

cut_wood = sheet.shapes("Wood, stringer end cut", "frame", [
    box(S, x_2 - t_n, y_2 - d_n, x_2, y_2),
    path(S, (x_2 + w_a, y_2), (x_2, y_2), (x_2, y_2 - d_m), (x_2 + w_a, y_2 - d_m))])


def _hatch(k: int):
    """Return a line at 45 degrees through the cut member, or flatter where it is a low one."""
    low = y_2 - d_n + greatest(d_n - t_n, 0) * k / (HATCH - 1)
    return stroke(S, x_2 - t_n, low, x_2, low + least(t_n, d_n))


hatch = sheet.shapes("Hatching, stringer end cut", "hatch", [_hatch(k) for k in range(HATCH)])
cut_angle = sheet.shapes("Angle, stringer end cut", "plate", [
    box(S, x_2, y_2 - a_t - h_a, x_2 + l_a, y_2 - a_t),
    stroke(S, x_2 + t_p, y_2 - a_t - h_a, x_2 + t_p, y_2 - a_t)])


def _height(k: int):
    """Return how high the k-th bolt of a leg stands, from 0; past the last it is the last."""
    return y_2 - h_1 - least(k, n_a - 1) * s_h


cut_bolts = sheet.shapes("Bolts of the other leg, stringer end cut", "bolt", [
    stroke(S, x_2 - t_n - t_w, _height(k), x_2 - t_n - t_w + bolt_n, _height(k))
    for k in range(BOLTS)])
holes = sheet.shapes("Bolts of the stringer's leg, seen end on", "hole", [
    path(S, *((x_2 + e_h, _height(k)) for k in range(BOLTS)))])
x_d = row("Line of the holes' figures", "x_d", "in", x_2 - t_n - S / 16)
tick = S / 100
heights = sheet.shapes("Holes below the top, stringer end cut", "measure", [
    _at(x_d, y_2, (-tick, 0), (tick, 0), (0, 0), (0, -h_1), (-tick, -h_1), (tick, -h_1),
        (0, -h_1), (0, -h_2), (-tick, -h_2), (tick, -h_2))])

corner_wood = sheet.shapes("Wood, corner from above", "frame", [
    _at(x_3, y_3, (w_c, t_R), (0, t_R), (0, 0), (w_c, 0)),
    _at(x_3, y_3, (0, w_c), (0, t_R), (t_H, t_R), (t_H, w_c))])
corner_plates = sheet.shapes("Brackets, corner from above", "plate", [
    _at(x_3 + t_H, y_3 + t_R, (0, 0), (x_i + a_i, 0), (x_i + a_i, t_i), (t_i, t_i),
        (t_i, y_i + a_i), (0, y_i + a_i), (0, 0)),
    _at(x_3, y_3, (-t_o, -t_o), (r_o, -t_o), (r_o, 0), (0, 0), (0, r_h), (-t_o, r_h),
        (-t_o, -t_o))])
corner_bolts = sheet.shapes("Bolts, corner from above", "bolt", [
    *_bolt_along(x_3 - t_o - t_c, y_3 + t_R + y_i, bolt_h, grip_h),
    *_bolt_up(x_3 + t_H + x_i, y_3 - t_o - t_c, bolt_r, grip_r)])
joint_bars = sheet.shapes("Scale bars, joints", "measure", [
    bars(S, S * 31 / 32, -S * 15 / 32, ours.detail_bar)])

block("Words on the joints")


def _bolts(number, length: str, grip):
    """Return the words for the bolts of a leg: how many, which, how long, and their grip."""
    return joined(shown(number), " bolts ", job.bolt, " × ", words[length], ", grip ",
                  shown(grip, 2), " in")


against = when(across > 0, "rail", "header")
n_k = row("Bolts in a leg of a corner", "n_k", "each", of(parts.corner_bolts_a_leg), digits=0)
said_end = row("Words over the joints, stringer end", "", "text", joined(
    "Stringer end: leg on the stringer ", _bolts(n_a, "leg", grip_m), "; leg on the ", against,
    " ", _bolts(n_a, "rail", grip_n), when(n_a > BOLTS, "; more bolts than are drawn", "")))
said_holes = row("Words over the joints, its holes", "", "text", joined(
    "Its holes: ", words["end"], " from the ", against, "'s face, and from the stringer's face; ",
    words["upper"], " to ", words["lowest"], " below the top"))
said_corner = row("Words over the joints, corner", "", "text", joined(
    "Corner: header ", _bolts(n_k, "c_header", grip_h), "; rail ", _bolts(n_k, "c_rail", grip_r)))
said_drill = row("Words over the joints, corner's holes", "", "text", joined(
    "Its holes: ", words["corner_header"], " from the header's end, ", words["corner_rail"],
    " from the rail's end; ", words["corner1"], " to ", words["corner2"], " below the top"))


def _head(words, x):
    """Put words over a view."""
    return sheet.mark(words, S * x / 3 / S, S * 9 / 20 / S)


joint_marks = [
    _head("Stringer end from above", -2), _head("The same, cut", 0), _head("Corner from above", 2),
    sheet.mark(when(beams > 0, "stringer, beam", "stringer"),
               (x_1 - t_m / 2 - S / 10) / S, (y_1 + w_a * 9 / 10) / S),
    sheet.mark(against, (x_1 - w_a * 2 / 3) / S, (y_1 - t_n / 2) / S),
    sheet.mark(words["upper"], (x_d - S / 20) / S, (y_2 - h_1) / S),
    sheet.mark(words["lowest"], (x_d - S / 20) / S, (y_2 - h_2) / S),
    sheet.mark("6 in", (S * 31 / 32 - ours.detail_bar / 2) / S, -S * 9 / 20 / S),
]
sheet.view("Joints; bolts to their length, grip: plates, wood and washers between head and nut; "
           "cut end grain hatched", "Stringer end from above and cut through the member it stands "
           "against, and corner from above: wood, angle, brackets, washer plates, bolts to their "
           "length, holes below the top, hatched end grain, bars of 6 in.",
           [hatch, end_wood, cut_wood, corner_wood, end_plates, cut_angle, corner_plates,
            end_bolts, cut_bolts, corner_bolts, holes, heights, joint_bars], joint_marks,
           wide=2, top=75, new_page=True)
