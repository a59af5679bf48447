"""Tape: the chosen section type, its lengths as a builder reads them on a tape, and its counts.

Yard prints them.  A length is taken to the nearest sixteenth of an inch, each from its own start,
so that rounding never adds up along a row of marks.
"""

from __future__ import annotations

from builder.language import (
    Row,
    Sheet,
    any_of,
    bare,
    feet_inches,
    greatest,
    joined,
    picked,
    remainder,
    shown,
    sixteenths,
    when,
    whole_down,
)
from builder.language.lengths import FRACTIONS, INCH

from . import decking, framing_lifting, hardware_lengths, parts, setout
from . import inputs as job
from . import inputs_yard as yard
from . import sections as sec
from .inputs_yard import LETTERS

MARKS = 24
"""Stringer marks that are printed; a longer row goes on by the spacing."""

sheet = Sheet("Tape", "Lengths as read on a tape", scope="job",
              about="Choose the type on Inputs, block Yard and road. Sixteenths of an inch, "
              "then words.")
block = sheet.block
FLOORED = (setout.hole_upper, setout.hole_lowest, setout.corner_upper, setout.corner_lowest)
"""What comes out below 0 where an angle is higher than the piece it stands on."""
TAPE, CHOSEN = "to the nearest sixteenth", "the type chosen"

block("Type")
number = sheet.row("Type shown, counted from A", "i_t", "", LETTERS.find(yard.yard_type).number,
                   "Inputs", digits=0)


def of(row):
    """Return a section quantity of the chosen type."""
    return picked(row, number)


def count(label: str, symbol: str, row: Row) -> Row:
    """Declare a count of the chosen type."""
    return sheet.row(label, symbol, row.unit, of(row), CHOSEN, digits=0)


def inches_only(n: Row):
    """Return the words of a length below a foot or so, such as 3 1/4", from its sixteenths."""
    return joined(when(any_of(n >= INCH, n < 1), shown(whole_down(n / INCH)), ""),
                  FRACTIONS.at(1 + remainder(n, INCH)).key)


words: dict[str, Row] = {}
"""Lengths as words, by a short name."""
wholes: dict[str, Row] = {}
"""The same in whole sixteenths."""


def tape(key: str, label: str, inches, *, down: bool = False, floor: bool = False,
         small: bool = False) -> Row:
    """Declare a length [in] in sixteenths and in words, and return its words.

    Args:
        key: short name; label: what it is; inches: the length [in].
        down: round a tolerance down to a sixteenth.
        small: words in inches alone: holes, bolts, boards.
        floor: the length may come out below 0 where a check fails; it then reads 0.
    """
    if floor:
        inches = sheet.row(f"{label}: inches", f"ℓ_{len(words) + 1}", "in", greatest(inches, 0),
                           CHOSEN)
    number = whole_down(16 * bare(inches, "in")) if down else sixteenths(inches)
    wholes[key] = sheet.row(f"{label}: sixteenths", f"q_{len(words) + 1}", "", number,
                            "down to a sixteenth" if down else TAPE, digits=0)
    said = inches_only(wholes[key]) if small else feet_inches(wholes[key])
    words[key] = sheet.row(label, "", "text", said, TAPE, digits=0)
    return words[key]


block("Sizes")
tape("length", "Length, outside of headers", of(sec.length).in_("in"))
tape("width", "Width, outside of rails", of(sec.width).in_("in"))
tape("header", "Header", of(parts.header_length).in_("in"))
tape("stringer", "Stringer piece", of(parts.stringer_length).in_("in"))
tape("diagonal", "Diagonal, outside corners", of(setout.diagonal).in_("in"))
tape("apart", "The two diagonals apart, most", of(setout.diagonals_apart), down=True, small=True)

block("Which way")
lines = count("Lines of stringers", "n_m", setout.lines)
odd = count("Lines are an odd number: 1, even 0", "k_m", setout.odd_lines)
beams = count("Cross-beams", "n_cb", sec.cross_beams)
across = sheet.row("Stringers run across: 1, along 0", "k_r", "",
                   when(of(sec.run).is_("across"), 1, 0), CHOSEN, digits=0)
start = sheet.row("Marks are measured from the outside of", "", "text",
                  when(across > 0, "the near header", "the left rail"), CHOSEN, digits=0)
finish = sheet.row("and end at the outside of", "", "text",
                   when(across > 0, "the far header", "the right rail"), CHOSEN, digits=0)
marked = sheet.row("Members that are marked", "", "text",
                   when(across > 0, "both rails", "both headers and cross-beams"), CHOSEN,
                   digits=0)
back = sheet.row("Side toward the start", "", "text", when(across > 0, "near", "left"), CHOSEN,
                 digits=0)
on = sheet.row("Side toward the end", "", "text", when(across > 0, "far", "right"), CHOSEN,
               digits=0)
odd_side = sheet.row("Odd marks: angle on this side of the stringer", "", "text",
                     when(odd > 0, back, on), "common practice, no source", digits=0)
even_side = sheet.row("Even marks: angle on this side of the stringer", "", "text",
                      when(odd > 0, on, back), "common practice, no source", digits=0)

block("Stringer marks, centres, in one run from the start")
spacing = sheet.row("Spacing", "s", "in", of(sec.spacing), CHOSEN)
mark: list[Row] = []
"""Marks in words; 0 past the last one, where Yard says so."""
for _k in range(1, MARKS + 1):
    wholes[f"m{_k}"] = sheet.row(f"Mark {_k}: sixteenths; 0 past the last", f"n_{_k}", "",
                                 when(lines >= _k, sixteenths(_k * spacing), 0), TAPE, digits=0)
    mark.append(sheet.row(f"Mark {_k}", "", "text", feet_inches(wholes[f"m{_k}"]), TAPE,
                          digits=0))
tape("first", "First space, outside to first mark", of(setout.first_space))
tape("last", "Last mark", of(setout.last_mark))
tape("out", "Last space, last mark to outside", of(setout.last_out), floor=True)
tape("half", "Stringer's faces off its mark", of(setout.half_stringer), small=True)
tape("beam1", "First cross-beam, centre", of(setout.cross_first))
tape("beam", "Cross-beams, centre to centre", of(setout.cross_step))

block("Holes")
for _key, _label, _row in (
    ("hole", "Drill", setout.drill),
    ("upper", "Stringer end: upper hole below the top edge", setout.hole_upper),
    ("lowest", "Stringer end: lowest hole below the top edge", setout.hole_lowest),
    ("step", "Stringer end: holes apart", setout.hole_step),
    ("end", "Stringer end: holes from the end, or the face", setout.hole_end),
    ("corner1", "Corner: upper hole below the top edge", setout.corner_upper),
    ("corner2", "Corner: lowest hole below the top edge", setout.corner_lowest),
    ("corner_step", "Corner: holes apart", setout.corner_step),
    ("corner_rail", "Corner: holes from the end of the rail", setout.corner_rail),
    ("corner_header", "Corner: holes from the end of the header", setout.corner_header),
    ("edge", "Hole to an edge, least", setout.edge_rule),
    ("to_end", "Hole to an end, least", setout.end_rule),
    ("holes", "Holes in a leg apart, least", setout.apart_rule),
    ("rows", "Holes of two pieces of hardware apart, least", setout.row_rule),
):
    tape(_key, _label, of(_row), floor=_row in FLOORED, small=True)

block("Bolts")
BOLTS = {"leg": hardware_lengths.leg_bolt, "rail": hardware_lengths.rail_bolt,
         "c_header": hardware_lengths.header_bolt, "c_rail": hardware_lengths.corner_bolt,
         "ply": hardware_lengths.ply_bolt, "skirt": hardware_lengths.skirt_bolt}
for _key, _row in BOLTS.items():
    tape(_key, f"Bolt under the head: {_row.label.split(':')[0].lower()}", of(_row), small=True)

block("Floats")
tape("row1", "Left row, centre from the outside of the left rail",
     of(setout.row_first).in_("in"), floor=True)
tape("row", "Rows, centre to centre", of(parts.float_y_pitch).in_("in"), floor=True)
tape("col1", "Near floats, centre from the outside of the near header",
     of(setout.column_first).in_("in"), floor=True)
tape("col", "Floats in a row, centre to centre", of(parts.float_x_pitch).in_("in"), floor=True)
half_length = sheet.row("Half the length", "L/2", "ft", of(sec.length) / 2, CHOSEN)
half_width = sheet.row("Half the width", "B/2", "ft", of(sec.width) / 2, CHOSEN)
extras = count("Extra floats", "n_x", sec.extra_floats)
for _i in range(4):
    tape(f"ex{_i + 1}", f"Extra float {_i + 1}: centre from the near header's outside",
         (half_length + of(sec.extra_x[_i])).in_("in"), floor=True)
    tape(f"ey{_i + 1}", f"Extra float {_i + 1}: centre from the left rail's outside",
         (half_width + of(sec.extra_y[_i])).in_("in"), floor=True)

block("Deck")
panels = sheet.row("Deck of panels: 1, of boards 0", "k_d", "",
                   when(of(sec.deck).is_("panels"), 1, 0), CHOSEN, digits=0)
columns = sheet.row("Panels along", "n_px", "each", of(parts.panel_columns), CHOSEN, digits=0)
rows = sheet.row("Panels across", "n_py", "each", of(parts.panel_rows), CHOSEN, digits=0)
tape("panel_x", "Panel, along the section", of(parts.panel_x).in_("in"))
tape("panel_y", "Panel, across the section", of(parts.panel_y).in_("in"))
tape("column", "Last column of panels, along", of(decking.last_column), floor=True)
tape("rowp", "Last row of panels, across", of(decking.last_row), floor=True)
tape("gap", "Gap between boards", of(parts.board_gap), small=True)
tape("rip", "Last board, ripped to", of(decking.last_rip), floor=True, small=True)
tape("screw", "Deck screw", job.deck_screw_length, small=True)

block("Lifting")
tape("sling", "Sling from each end", of(framing_lifting.sling_a).in_("in"))

block("Products")
angle_name = sheet.row("Angle", "", "text", job.stringer_angle, CHOSEN, digits=0)
plate_holes = sheet.row("Holes of the angle, a leg", "n_a", "each", of(parts.bolts_a_leg), CHOSEN,
                        digits=0)
float_name = sheet.row("Float", "", "text", of(sec.float_model), CHOSEN, digits=0)
deck_name = sheet.row("Decking", "", "text",
                      when(panels > 0, of(sec.panel), of(sec.board)), CHOSEN, digits=0)
size_name = sheet.row("Sizes: rail, header, stringer", "", "text",
                      joined(of(sec.rail_size), ", ", of(sec.header_size), ", ",
                             of(sec.stringer_size)), CHOSEN, digits=0)
built = sheet.row("Of this type are built", "", "text", shown(of(sec.quantity)), CHOSEN, digits=0)
