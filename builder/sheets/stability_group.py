"""Stability, first part: the float group about its centre of flotation, whole and one float short.

Local draft of a tilted section is T + x tan θ + y tan φ, with x and y from the centre of flotation
F.  Where the product of inertia is not zero, list and trim pull on one another.  The pair of
equations

    (GM_T + e) tan φ + (P/∇) tan θ = y_G        (P/∇) tan φ + (GM_L + e) tan θ = x_G

comes apart on the two leaning axes a and b, turned by an angle with tangent t from the axes of
list and trim (t = 0 for a section that is alike on both sides):

    (GM_a + e) v_a = y_a        (GM_b + e) v_b = y_b        e = (BM_a v_a² + BM_b v_b²)/2

e is how far the centre of buoyancy rises as the section tilts: the wall-sided rule.  The section
is stable when GM_a and GM_b are both above 0, which says the same as GM_T > 0, GM_L > 0 and
their product above (P/∇)².
"""

from __future__ import annotations

from builder.language import Row, absolute, greatest, root, when

from . import buoyancy, parts, weight
from . import sections as sec
from .inputs_afloat import ours
from .reference import own
from .stability_held import held_square, water_foot
from .stability_sheet import (
    ARCHIMEDES,
    STATICS,
    block,
    note,
    row,
)

ROUND = parts.float_round
F_X, F_Y = buoyancy.flotation_x, buoyancy.flotation_y
HERE = parts.extra_here

block("Reach of the floats from the centre of flotation")
note("The outline of all floats; of a round float its axis, since its range is judged there.")
half_l = row("Half a float along; 0 for a round float lying across", "h_l", "ft",
             when(ROUND * sec.float_turned.is_("across"), 0, parts.float_l / 2), STATICS)
half_b = row("Half a float across; 0 for a round float lying along", "h_b", "ft",
             when(ROUND * sec.float_turned.is_("along"), 0, parts.float_b / 2), STATICS)


def _reach(name: str, tag: str, grid, places, centre, half):
    """Declare how far floats reach from F along one axis [ft]; return the row."""
    first = row(f"Floats reach {name}: rows and extras 1, 2, centres", f"R_{tag}1", "ft",
                greatest(grid + absolute(centre),
                         *(HERE[k] * absolute(places[k] - centre) for k in (0, 1))), STATICS)
    return row(f"Floats reach {name}, from F", f"R_{tag}", "ft",
               greatest(first, *(HERE[k] * absolute(places[k] - centre) for k in (2, 3))) + half,
               STATICS)


reach_x = _reach("along", "x", parts.end_x, sec.extra_x, F_X, half_l)
reach_y = _reach("across", "y", parts.row_y, sec.extra_y, F_Y, half_b)
half_length = row("Half the overall length", "h_L", "ft", parts.overall_length / 2, STATICS)
half_width = row("Half the overall width", "h_B", "ft", parts.overall_width / 2, STATICS)


def turned(difference, product, tag: str = ""):
    """Declare the turn of the leaning axes; return (t, √(1 + t²)).

    Args:
        difference: half the difference of the mean squares across and along [ft²].
        product: mean product of the floats [ft²].
    """
    t = row("Turn of the leaning axes, tangent", f"t{tag}", "ft/ft",
            when(difference >= 0, 1, -1) * product
            / greatest(absolute(difference) + root(difference ** 2 + product ** 2),
                       own.least_area), STATICS, digits=4)
    return t, row("Length of that turn", f"n{tag}", "", root(1 + t ** 2), STATICS, digits=4)


def along_axes(y, x, t, n):
    """Return the parts of an arm (y across, x along; one may be 0) on the leaning axes."""
    if isinstance(x, int):
        return y / n, -t * y / n
    if isinstance(y, int):
        return t * x / n, x / n
    return (y + t * x) / n, (x - t * y) / n


block("Leaning axes")
difference = row("Half the difference of mean squares, across less along", "δ", "ft²",
                 (buoyancy.spread_yy + held_square - buoyancy.spread_xx
                  + (buoyancy.waterline_b ** 2 - buoyancy.waterline_l ** 2) / 12) / 2, STATICS)
turn, turn_length = turned(difference, buoyancy.spread_xy)
round_b = row("Own mean square of a round float lying along, at mid-depth", "j_a", "ft²",
              when(ROUND * sec.float_turned.is_("along"), parts.float_b ** 2 / 12, 0), STATICS)
round_l = row("Own mean square of a round float lying across, at mid-depth", "j_b", "ft²",
              when(ROUND * sec.float_turned.is_("across"), parts.float_l ** 2 / 12, 0), STATICS)


def squares(yy, xx, xy, t, tag: str = ""):
    """Declare the mean squares of the waterplane on the leaning axes [ft²]; return (a, b)."""
    a = row("Mean square against leaning on axis a", f"k_a{tag}", "ft²",
            yy + t * xy + parts.float_b ** 2 / 12 - round_b, STATICS)
    b = row("Mean square against leaning on axis b", f"k_b{tag}", "ft²",
            xx - t * xy + parts.float_l ** 2 / 12 - round_l, STATICS)
    return a, b


square_a, square_b = squares(buoyancy.spread_yy + held_square, buoyancy.spread_xx,
                             buoyancy.spread_xy, turn)
_a, _b = along_axes(F_Y, F_X, turn, turn_length)
centre_a = row("Centre of flotation on axis a", "F_a", "ft", _a, STATICS, digits=3)
centre_b = row("Centre of flotation on axis b", "F_b", "ft", _b, STATICS, digits=3)
_a, _b = along_axes(weight.service_y, weight.service_x, turn, turn_length)
moment_a = row("Moment in service about F, on axis a", "m_a", "lb·ft",
               weight.service * (_a - centre_a), STATICS, digits=1)
moment_b = row("Moment in service about F, on axis b", "m_b", "lb·ft",
               weight.service * (_b - centre_b), STATICS, digits=1)

block("One float lost")
note("The corner float of the rows whose place goes down most without it, to the first order: its "
     "loss takes arm across and along at once, and is worse than that of a float at mid edge. A "
     "share of 1 taken from the righting moment turns the section over. The weight stays. An extra "
     "float is not tried: where one lies outside the rows, add a row instead.")
left = row("Floats left", "n_f1", "each", greatest(parts.floats - 1, own.least_share), STATICS,
           digits=0)
whole_depth = row("Volume over waterplane, in service", "T_e", "ft",
                  weight.service / water_foot, ARCHIMEDES)


def _rights(axis: str, mean) -> Row:
    return row(f"Righting moment a unit of slope, axis {axis}", f"K_{axis}", "lb·ft",
               greatest(water_foot * mean + weight.service * (buoyancy.KB - weight.service_kg),
                        own.least_weight * own.least_length), ARCHIMEDES, digits=0)


rights_a, rights_b = _rights("a", square_a), _rights("b", square_b)
lean_a = row("Straight-line lean in service, axis a", "u_a", "ft/ft", moment_a / rights_a, STATICS,
             digits=4)
lean_b = row("Straight-line lean in service, axis b", "u_b", "ft/ft", moment_b / rights_b, STATICS,
             digits=4)
_out = {1: along_axes(parts.row_y, parts.end_x, turn, turn_length),
        -1: along_axes(parts.row_y, -1 * parts.end_x, turn, turn_length)}
_corner = {side: [row(f"Corner float to the right, {name}: from the middle, axis {axis}",
                      f"c_{axis}{tag}", "ft", arm, STATICS)
                  for axis, arm in zip("ab", _out[side], strict=True)]
           for side, name, tag in ((1, "far", "f"), (-1, "near", "n"))}


def _goes_down(name: str, tag: str, corner, side: int) -> Row:
    """Declare how far a corner float's place goes down when it is lost; side: 1 right, -1 left."""
    pairs = zip(corner, (centre_a, centre_b), strict=True)
    a, b = (arm - centre if side > 0 else arm + centre for arm, centre in pairs)
    leans = a * lean_a + b * lean_b
    taken = row(f"Lost float {name}: share taken of the righting moment", f"q_{tag}", "",
                (a ** 2 / rights_a + b ** 2 / rights_b) * water_foot / left, STATICS, digits=4)
    return row(f"Lost float {name}: its place goes down by its loss and the lean", f"d_{tag}", "ft",
               (leans + taken * whole_depth if side > 0 else taken * whole_depth - leans)
               / greatest(1 - taken, own.least_share), STATICS, digits=4)


down_right_far = _goes_down("far right", "1", _corner[1], 1)
down_right_near = _goes_down("near right", "2", _corner[-1], 1)
down_left_far = _goes_down("far left", "3", _corner[-1], -1)
down_left_near = _goes_down("near left", "4", _corner[1], -1)
lost_right = row("Lost float: 1 to the right, 0 to the left", "k_1", "",
                 when(greatest(down_right_far, down_right_near)
                      >= greatest(down_left_far, down_left_near), 1, 0), STATICS, digits=0)
lost_y = row("Lost float: across", "y_1", "ft", parts.row_y * (2 * lost_right - 1), STATICS)
lost_x = row("Lost float: along", "x_1", "ft", parts.end_x * when(
    lost_right * (down_right_far - down_right_near)
    + (1 - lost_right) * (down_left_far - down_left_near) >= 0, 1, -1), STATICS)
lost_F_y = row("Centre of flotation, across, one float lost", "y_F1", "ft",
               (parts.floats * F_Y - lost_y) / left, STATICS, digits=3)
lost_F_x = row("Centre of flotation, along, one float lost", "x_F1", "ft",
               (parts.floats * F_X - lost_x) / left, STATICS, digits=3)
lost_yy = row("Mean square across, one float lost", "s_yy1", "ft²",
              (parts.floats * (buoyancy.spread_yy + held_square + F_Y ** 2) - lost_y ** 2) / left
              - lost_F_y ** 2, STATICS)
lost_xx = row("Mean square along, one float lost", "s_xx1", "ft²",
              (parts.floats * (buoyancy.spread_xx + F_X ** 2) - lost_x ** 2) / left
              - lost_F_x ** 2, STATICS)
lost_xy = row("Mean product, one float lost", "s_xy1", "ft²",
              (parts.floats * (buoyancy.spread_xy + F_X * F_Y) - lost_x * lost_y) / left
              - lost_F_x * lost_F_y, STATICS)
lost_difference = row("Half the difference of mean squares, one float lost", "δ_1", "ft²",
                      (lost_yy - lost_xx
                       + (buoyancy.waterline_b ** 2 - buoyancy.waterline_l ** 2) / 12) / 2,
                      STATICS)
lost_turn, lost_turn_length = turned(lost_difference, lost_xy, "_1")
lost_square_a, lost_square_b = squares(lost_yy, lost_xx, lost_xy, lost_turn, "1")
lost_reach_x = row("Floats reach along, from F, one float lost", "R_x,1", "ft",
                   reach_x + absolute(lost_F_x - F_X), STATICS)
lost_reach_y = row("Floats reach across, from F, one float lost", "R_y,1", "ft",
                   reach_y + absolute(lost_F_y - F_Y), STATICS)
lost_water = row("Water in the boxes of the floats left", "W_b1", "lb",
                 buoyancy.box_water * left / parts.floats, ARCHIMEDES, digits=0)

STIFFENING, LEAST_RISE, LEAST_RATIO = ours.stiffening_most, ours.least_rise, ours.least_ratio
