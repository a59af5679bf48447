"""Drawing, first part: the sheet, the section type drawn, and shapes to scale.

x runs along the section from its middle, y across from its centreline; heights are above the
water.  Points are shares of half the paper's width, so that both scales are one.
"""

from __future__ import annotations

from builder.language import Sheet, joined, when

from . import buoyancy, parts, setout
from . import inputs as job
from . import inputs_yard as road
from . import sections as sec
from .reference import constants
from .yard_tape import of

sheet = Sheet("Drawing", "Drawing to scale", scope="drawing",
              about="For the type chosen on Inputs, block Yard and road. A bar along and a bar up "
              "give the scale of each view.")
row, block, note = sheet.row, sheet.block, sheet.note

ours = constants("own_drawing")

block("The section type drawn")
named = row("What is drawn", "", "text",
            joined("Type ", road.yard_type, ": plan, side, end, joints"), digits=0)
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
lines = row("Lines of stringers", "n_s", "each", of(setout.lines), digits=0)
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


def path(scale, *points):
    """Return the points of a line through some places, in the unit of the scale."""
    return [(x / scale, y / scale) for x, y in points]


def box(scale, x1, y1, x2, y2):
    """Return the five points of a rectangle given by two corners."""
    return path(scale, (x1, y1), (x2, y1), (x2, y2), (x1, y2), (x1, y1))


def stroke(scale, x1, y1, x2, y2):
    """Return the two points of a line between two places."""
    return path(scale, (x1, y1), (x2, y2))


def level(scale, x1, x2, y):
    """Return a dimension line along, with a stroke across each end."""
    tick = scale / 100
    return path(scale, (x1, y - tick), (x1, y + tick), (x1, y), (x2, y), (x2, y + tick),
                (x2, y - tick))


def upright(scale, x, y1, y2):
    """Return a dimension line up, with a stroke across each end."""
    tick = scale / 100
    return path(scale, (x - tick, y1), (x + tick, y1), (x, y1), (x, y2), (x + tick, y2),
                (x - tick, y2))


def bars(scale, x, y, length):
    """Return a bar along and one up, both of one length, drawn from their right lower corner."""
    tick = scale / 100
    return path(scale, (x - length, y - tick), (x - length, y + tick), (x - length, y), (x, y),
                (x, y + length), (x - tick, y + length), (x + tick, y + length))
