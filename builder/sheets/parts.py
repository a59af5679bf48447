"""Parts: every piece of a section once: how many, how long, where.

Weight, takeoff, yard and drawing read these rows; strength stands elsewhere.  Heights are above K,
the underside of the floats.  The frame's members are flush at their tops.  Stringers are laid out
from the outside of the frame, as deck panels are, so that the last space takes what is left over.
"""

from __future__ import annotations

from builder.language import (
    Sheet,
    absolute,
    choose,
    greatest,
    when,
    whole_down,
    whole_up,
)

from . import catalog
from . import inputs as job
from . import sections as sec
from .reference import LUMBER, SAWN, own

sheet = Sheet("Parts", "Every piece, once",
              about="Sizes, counts and lengths of all pieces of one section of each type.")
row, check, block, find, note = sheet.row, sheet.check, sheet.block, sheet.find, sheet.note

GEOMETRY, OURS, PRACTICE = "statics", "own judgement", "common practice, no source"
ACROSS = sec.run.is_("across")
PANELS = sec.deck.is_("panels")


def _actual(line, side: str):
    """Return the actual size [in] of a lumber line by how it is sawn."""
    return choose(sawn, line[f"{side} dressed"], line[f"{side} rough"], line[f"{side} sawn"])


block("Sizes")
sawn = find("How the lumber is sawn: 1 dressed, 2 rough, 3 full sawn", SAWN, job.sawn)
rail_line = find("Rail, line of its size", LUMBER, sec.rail_size)
stringer_line = find("Stringer, line of its size", LUMBER, sec.stringer_size)
header_line = find("Header, line of its size", LUMBER, sec.header_size)
cross_line = find("Cross-beam, line of its size", LUMBER, sec.cross_beam_size)
skirt_line = find("Skirt, line of its size", LUMBER, sec.skirt_size)
rail_t = row("Rail ply, thickness", "t_r", "in", _actual(rail_line, "thickness"), GEOMETRY)
rail_d = row("Rail, depth", "d_r", "in", _actual(rail_line, "width"), GEOMETRY)
stringer_t = row("Stringer, thickness", "t_s", "in", _actual(stringer_line, "thickness"),
                 GEOMETRY)
stringer_d = row("Stringer, depth", "d_s", "in", _actual(stringer_line, "width"), GEOMETRY)
header_t = row("Header, thickness", "t_h", "in", _actual(header_line, "thickness"), GEOMETRY)
header_d = row("Header, depth", "d_h", "in", _actual(header_line, "width"), GEOMETRY)
cross_t = row("Cross-beam, thickness", "t_c", "in", _actual(cross_line, "thickness"), GEOMETRY)
cross_d = row("Cross-beam, depth", "d_c", "in", _actual(cross_line, "width"), GEOMETRY)
skirted = row("Skirt: 1 fitted, 0 none", "k_k", "", when(sec.skirt.is_("none"), 0, 1), GEOMETRY,
              digits=0)
skirt_t = row("Skirt, thickness; 0 without one", "t_k", "in",
              skirted * _actual(skirt_line, "thickness"), GEOMETRY)
skirt_d = row("Skirt, depth; 0 without one", "d_k", "in",
              skirted * _actual(skirt_line, "width"), GEOMETRY)

block("Geometry")
between_rails = row("Left between the rails", "ℓ_0", "ft",
                    sec.width - (2 * sec.rail_plies * rail_t).in_("ft"), GEOMETRY)
width_check = check("Room between the rails", between_rails, at_least=own.least_length,
                    source=OURS, cure="Fewer or thinner rail plies, or a wider section.",
                    group="Framing")
clear_span = row("Clear span between the rails", "ℓ", "ft",
                 greatest(between_rails, own.least_length), GEOMETRY)
header_clear = row("Clear between the headers", "ℓ_h", "ft",
                   sec.length - (2 * header_t).in_("ft"), GEOMETRY)
deck_length = row("Deck, length", "L_d", "ft", sec.length + (2 * sec.deck_overhang).in_("ft"),
                  GEOMETRY)
deck_width = row("Deck, width", "B_d", "ft", sec.width + (2 * sec.deck_overhang).in_("ft"),
                 GEOMETRY)
deck_area = row("Deck people can stand on", "A_d", "ft²", deck_length * deck_width, GEOMETRY,
                digits=1)
overall_length = row("Overall length, skirts and deck edge", "L_o", "ft",
                     greatest(deck_length, sec.length + (2 * skirt_t).in_("ft")), GEOMETRY)
overall_width = row("Overall width, skirts and deck edge", "B_o", "ft",
                    greatest(deck_width, sec.width + (2 * skirt_t).in_("ft")), GEOMETRY)
frame_depth = row("Frame depth: its deepest member", "d_f", "in",
                  greatest(rail_d, header_d, stringer_d, cross_d * (sec.cross_beams > 0)),
                  GEOMETRY)
float_line = find("Float, line in the catalog", catalog.FLOATS, sec.float_model)
float_depth = row("Float depth", "D", "in", float_line["depth"], GEOMETRY)
frame_underside = row("Frame underside above K", "z_u", "ft",
                      (float_depth + sec.float_gap).in_("ft"), GEOMETRY, digits=3)
frame_top = row("Frame top above K", "z_t", "ft", frame_underside + frame_depth.in_("ft"),
                GEOMETRY, digits=3)
deck_thickness = row("Deck thickness", "t_d", "in",
                     when(PANELS, catalog.PANELS.find(sec.panel)["thickness"],
                          catalog.BOARDS.find(sec.board)["thickness"]), GEOMETRY)
deck_top = row("Deck top above K", "z_d", "ft", frame_top + deck_thickness.in_("ft"), GEOMETRY,
               digits=3)

block("Floats")
float_round = row("Float: 1 round, 0 box", "k_o", "", float_line["shape"] - 1, GEOMETRY,
                  digits=0)
float_l = row("Float size along the section", "l_f", "ft",
              when(sec.float_turned.is_("along"), float_line["length"],
                   float_line["width"]).in_("ft"), GEOMETRY)
float_b = row("Float size across the section", "b_f", "ft",
              when(sec.float_turned.is_("along"), float_line["width"],
                   float_line["length"]).in_("ft"), GEOMETRY)
grid_floats = row("Floats in the rows", "n_g", "each", sec.float_rows * sec.floats_a_row,
                  GEOMETRY, digits=0)
floats = row("Floats in all", "n_f", "each", grid_floats + sec.extra_floats, GEOMETRY, digits=0)
row_y = row("Centre of the outer row from the centreline", "Y", "ft",
            when(sec.float_rows > 1,
                 sec.width / 2 - sec.inset_side.in_("ft") - float_b / 2, 0), GEOMETRY)
end_x = row("Centre of the end floats from the middle", "X", "ft",
            when(sec.floats_a_row > 1,
                 sec.length / 2 - sec.inset_end.in_("ft") - float_l / 2, 0), GEOMETRY)
float_y_pitch = row("Rows of floats, centre to centre", "p_y", "ft",
                    2 * row_y / greatest(sec.float_rows - 1, 1), GEOMETRY)
float_x_pitch = row("Floats in a row, centre to centre", "p_x", "ft",
                    2 * end_x / greatest(sec.floats_a_row - 1, 1), GEOMETRY)
room_across = row("Room for each float, across", "r_y", "ft",
                  when(sec.float_rows > 1, float_y_pitch, sec.width), GEOMETRY)
room_along = row("Room for each float, along", "r_x", "ft",
                 when(sec.floats_a_row > 1, float_x_pitch, sec.length), GEOMETRY)
across_check = check("Floats fit across", room_across, at_least=float_b, source=GEOMETRY,
                     look_at=float_b, cure="Fewer rows, a narrower float, or turn the floats.",
                     amount=("feet missing", "ft", greatest(float_b - room_across, 0)),
                     group="Floats")
along_check = check("Floats fit along", room_along, at_least=float_l, source=GEOMETRY,
                    look_at=float_l, cure="Fewer floats in a row, a shorter float, or turn them.",
                    amount=("feet missing", "ft", greatest(float_l - room_along, 0)),
                    group="Floats")

block("Extra floats")
note("An extra float counts when its number is not above the number of extra floats.")
extra_here = [row(f"Extra float {i}: 1 fitted, 0 not", f"e_{i}", "",
                  when(sec.extra_floats >= i, 1, 0), GEOMETRY, digits=0) for i in (1, 2, 3, 4)]
extra_reach = [row(f"Extra float {i}: share of the half frame it reaches", f"q_{i}", "",
                   extra_here[k] * greatest(
                       (2 * absolute(sec.extra_x[k]) + float_l) / sec.length,
                       (2 * absolute(sec.extra_y[k]) + float_b) / sec.width), GEOMETRY)
               for k, i in enumerate((1, 2, 3, 4))]
grid_reach = row("Rows of floats: share of the half frame they reach", "q_g", "",
                 greatest((2 * end_x + float_l) / sec.length, (2 * row_y + float_b) / sec.width),
                 GEOMETRY)
reach = row("Floats reach, share of the half frame", "q", "",
            greatest(grid_reach, *extra_reach), GEOMETRY)
inside_check = check("Floats inside the frame", reach, at_most=1, look_at=1, source=GEOMETRY,
                     cure="Move the floats in, so that none stands outside the frame.",
                     group="Floats")

block("Frame pieces")
rails = row("Rail plies, both rails", "N_r", "each", 2 * sec.rail_plies, GEOMETRY, digits=0)
rail_length = sec.length
"""A ply runs the whole length."""
headers = row("Headers", "N_h", "each", 2, GEOMETRY, digits=0)
header_length = cross_length = clear_span
"""Headers and cross-beams stand between the rails."""
end_t = row("Members that end the stringer row, thickness", "t_e", "in",
            when(ACROSS, header_t, sec.rail_plies * rail_t), GEOMETRY)
layout_length = row("Length that stringers are laid out on", "L_s", "ft",
                    when(ACROSS, sec.length, sec.width), GEOMETRY)
bays = row("Bays between stringers and end members", "n_b", "each",
           whole_up((layout_length.in_("in") - end_t / 2) / sec.spacing), GEOMETRY, digits=0)
stringer_lines = row("Lines of stringers between the end members", "n_s", "each", bays - 1,
                     GEOMETRY, digits=0)
last_space = row("Last space, centre to centre", "s_e", "in",
                 layout_length.in_("in") - end_t / 2 - (bays - 1) * sec.spacing, GEOMETRY)
last_check = check("Last stringer clears the end member", last_space,
                   at_least=(end_t + stringer_t) / 2, source=GEOMETRY,
                   cure="Choose a spacing that divides the length better.",
                   group="Framing")
stringer_shift = row("Middle of the stringers off the middle of the frame", "e_s", "ft",
                     (sec.spacing * bays / 2).in_("ft") - layout_length / 2, GEOMETRY, digits=3)
stringers = row("Stringers, pieces", "N_s", "each",
                stringer_lines * when(ACROSS, 1, sec.cross_beams + 1), GEOMETRY, digits=0)
stringer_length = row("Stringer piece, length", "L_p", "ft",
                      when(ACROSS, clear_span,
                           greatest((header_clear - (sec.cross_beams * cross_t).in_("ft"))
                                    / (sec.cross_beams + 1), own.least_length)),
                      GEOMETRY)
skirt_long = row("Skirt, long sides, each", "L_k", "ft",
                 skirted * (sec.length + (2 * skirt_t).in_("ft")), GEOMETRY)
skirt_short = row("Skirt, short sides, each", "B_k", "ft", skirted * sec.width, GEOMETRY)
skirt_length_total = row("Skirt, all four sides", "ΣL_k", "ft", 2 * skirt_long + 2 * skirt_short,
                         GEOMETRY)
rail_splices = row("Splices, all rail plies", "x_r", "each",
                   rails * (whole_up(rail_length / job.longest_stock) - 1), GEOMETRY, digits=0)
longest_piece = row("Longest frame piece", "L_x", "ft",
                    greatest(rail_length, stringer_length, clear_span), GEOMETRY)
stock_check = check("Longest frame piece against stock", longest_piece,
                    at_most=job.longest_stock, look_at=job.longest_stock, source=OURS,
                    worst="LOOK", cure="Splice the plies apart from one another, or build "
                    "shorter sections.", group="Framing")

block("Hardware pieces")
note("A corner takes one bracket inside and one outside, through-bolted together; a stringer "
     "end takes one framing angle and two washer plates, one behind each leg's bolts (more "
     "where a plate has fewer holes than a leg has bolts).")
corner_inside = row("Corner brackets, inside", "N_ci", "each", 4, PRACTICE, digits=0)
corner_outside = row("Corner brackets, outside", "N_co", "each", 4, PRACTICE, digits=0)
stringer_ends = row("Ends of stringers and cross-beams", "N_e", "each",
                    2 * stringers + 2 * sec.cross_beams, GEOMETRY, digits=0)
angles = row("Framing angles", "N_a", "each", stringer_ends, PRACTICE, digits=0)
bolts_a_leg = row("Bolts in a leg of an angle", "n_a", "each",
                  catalog.ANGLES.find(job.stringer_angle)["bolts a leg"], GEOMETRY, digits=0)
washer_plates = row("Washer plates, behind both legs", "N_w", "each",
                    2 * stringer_ends
                    * whole_up(bolts_a_leg / catalog.PLATES.find(job.washer_plate)["holes"]),
                    PRACTICE, digits=0)
stringer_bolts = row("Bolts at stringer ends, both legs", "B_a", "each",
                     2 * stringer_ends * bolts_a_leg, GEOMETRY, digits=0)
corner_bolts_a_leg = row("Bolts in a leg of a corner", "n_c", "each",
                         greatest(catalog.CORNERS.find(job.corner_inside)["bolts a leg"],
                                  catalog.CORNERS.find(job.corner_outside)["bolts a leg"]),
                         GEOMETRY, digits=0)
corner_bolts = row("Bolts at corners, both legs", "B_c", "each",
                   2 * corner_inside * corner_bolts_a_leg, GEOMETRY, digits=0)
ply_bolts = row("Bolts joining rail plies", "B_p", "each",
                when(sec.rail_plies > 1,
                     2 * whole_up(rail_length.in_("in") / own.ply_bolt_spacing) + 2, 0), OURS,
                digits=0)
skirt_places = row("Places where the skirt is fastened", "N_k", "each",
                   whole_up(greatest(skirt_length_total, own.least_length).in_("in")
                            / own.skirt_fastener_spacing) * skirted, OURS, digits=0)
skirt_screws = row("Screws of a hung skirt, two a place", "S_k", "each",
                   2 * skirt_places * sec.skirt.is_("hung"), OURS, digits=0)
skirt_bolts = row("Bolts of a skirt bolted to count", "B_t", "each",
                  skirt_places * sec.skirt.is_("bolted to count"), OURS, digits=0)
bolts = row("Bolts in all, a nut each", "ΣB", "each",
            stringer_bolts + corner_bolts + ply_bolts + skirt_bolts, GEOMETRY, digits=0)
washers = row("Round washers, both sides less washer plates", "N_o", "each",
              2 * bolts - stringer_bolts, PRACTICE, digits=0)
lags = row("Float lags, a washer each", "N_g", "each", floats * float_line["lags each"],
           PRACTICE, digits=0)

block("Decking pieces: panels")
note("A panel's length lies square to the stringers; a cut panel uses up a whole one.")
panel_x = row("Panel along the section", "p_l", "ft",
              when(ACROSS, catalog.PANELS.find(sec.panel)["length"],
                   catalog.PANELS.find(sec.panel)["width"]), GEOMETRY)
panel_y = row("Panel across the section", "p_b", "ft",
              when(ACROSS, catalog.PANELS.find(sec.panel)["width"],
                   catalog.PANELS.find(sec.panel)["length"]), GEOMETRY)
panel_columns = row("Panels along the section", "n_px", "each", whole_up(deck_length / panel_x),
                    GEOMETRY, digits=0)
panel_rows = row("Panels across the section", "n_py", "each", whole_up(deck_width / panel_y),
                 GEOMETRY, digits=0)
panels = row("Panels to buy; 0 under boards", "N_p", "each",
             when(PANELS, panel_columns * panel_rows, 0), GEOMETRY, digits=0)

block("Decking pieces: boards")
note("Boards lie square to the stringers and meet end to end on a stringer.")
board_line = find("Board, line in the catalog", catalog.BOARDS, sec.board)
board_gap = row("Gap between boards; composite as its maker gives it", "g", "in",
                when(board_line["wood"] > 0, job.board_gap, board_line["gap"]), GEOMETRY,
                digits=3)
boards_over = row("Boards are counted over", "B_b", "ft", when(ACROSS, deck_width, deck_length),
                  GEOMETRY)
board_length = row("Line of boards, length", "L_b", "ft", when(ACROSS, deck_length, deck_width),
                   GEOMETRY)
board_pitch = row("Board and gap", "p_d", "in", board_line["width"] + board_gap, GEOMETRY,
                  digits=3)
boards = row("Lines of boards; 0 under panels", "N_b", "each",
             when(PANELS, 0, whole_up((boards_over.in_("in") + board_gap) / board_pitch)),
             GEOMETRY, digits=0)
board_reach = row("Longest board that ends on a stringer", "L_t", "ft",
                  (sec.spacing * whole_down(job.longest_stock.in_("in") / sec.spacing))
                  .in_("ft"), GEOMETRY)
board_pieces = row("Board pieces", "N_bp", "each", boards * whole_up(board_length / board_reach),
                   GEOMETRY, digits=0)
board_butts = row("Butt joints of boards", "x_b", "each", board_pieces - boards, GEOMETRY,
                  digits=0)
crossings = row("Crossings of boards and supports", "N_x", "each", boards * (bays + 1), GEOMETRY,
                digits=0)
screws_a_crossing = row("Screws at a crossing; composite as its maker gives it", "n_y", "each",
                        when(board_line["wood"] > 0, job.screws_a_crossing,
                             board_line["screws a crossing"]), PRACTICE, digits=0)
deck_screws = row("Deck screws, twice at butt joints", "S_d", "each",
                  when(PANELS, panels * catalog.PANELS.find(sec.panel)["screws each"],
                       (crossings + board_butts) * screws_a_crossing),
                  PRACTICE, digits=0)
