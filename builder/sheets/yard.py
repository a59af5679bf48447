"""Yard: how one section type is put together, step by step, for paper that survives a wet yard.

Lengths come from Tape, as read on a tape; counts are picked from the sheets that hold them.
"""

from __future__ import annotations

from itertools import count

from builder.language import Expr, Row, Sheet, all_of, joined, shown, when

from . import buoyancy, decking, framing_lifting, hardware_lengths, parts, setout, weight
from . import inputs as job
from . import inputs_yard as road
from . import sections as sec
from . import yard_tape as tape
from .inputs_yard import ours
from .reference import own
from .yard_tape import MARKS, of, words

sheet = Sheet("Yard", "Yard: put together step by step", scope="page", large=True,
              about="For the type chosen on Inputs. Tick each step; measure into the blanks.")
block, say, show, note, caution = (sheet.block, sheet.say, sheet.show, sheet.note,
                                   sheet.caution)
_number = count(1)


def whole(row: Row) -> Expr:
    """Return a count or a weight of the chosen type as words."""
    return shown(of(row))


def step(*said) -> Row | str:
    """Put the next step, with its number and a box to tick; return its words."""
    start = f"{next(_number)}   "
    plain = len(said) == 1 and isinstance(said[0], str)
    show(start + said[0] if plain else joined(start, *said), tick=True)
    return sheet.items[-1].words


def piece(*said) -> Row:
    """Put a line to tick that is no step; return its words."""
    show(joined(*said), tick=True)
    return sheet.items[-1].words


def length(label, key: str, *, tick: bool = False, blank: bool = False) -> Row:
    """Put a line with a length as read on a tape."""
    return show(label, words[key], "text", tick=tick, blank=blank)


PLIES = of(sec.rail_plies) > 1
SKIRT = of(parts.skirted) > 0
BEAMS = tape.beams > 0
PANELS = tape.panels > 0

block("What is built")
title = say(joined("Type ", road.yard_type, ": ", words["length"], " × ", words["width"],
                   " outside of the frame; ", tape.built, " to build."))
size = show("Rail, header, stringer", tape.size_name, "text")
deck_name = show("Decking", tape.deck_name, "text")
float_name = show("Float", tape.float_name, "text")
finish = show("Bolts, plates, screws: all of this finish", job.finish, "text")
say("Near is the end you walk out from; left and right are your hands walking out, far is the "
    "other end.")
caution("Goggles, gloves, mask: treated wood. Never burn it. Treat every cut end and every hole.")
caution("Nobody under a lifted frame or section, or between it and anything fixed.")

block("Pieces: count them, look at crown, twist, splits and tags")
rails = piece(whole(parts.rails), " rail plies, each ", words["length"])
headers = piece(whole(parts.headers), " headers, each ", words["header"])
stringers = piece(whole(parts.stringers), " stringers, each ", words["stringer"])
beams = piece(when(BEAMS, joined(shown(tape.beams), " cross-beams, each ",
                                 words["header"]), "Cross-beams: none"))
treated = piece("Tags read: use category ", of(hardware_lengths.treat_above), " or better")

block("Kits: one bag each, bolts under the head")
corner_kit = piece(whole(parts.corner_inside), " corner bags: 1 bracket inside, 1 outside")
corner_header = piece("Corner: ", whole(parts.corner_bolts_a_leg), " bolts ", job.bolt,
                      " × ", words["c_header"], ", header leg")
corner_rail = piece("Corner: ", whole(parts.corner_bolts_a_leg), " bolts ", job.bolt,
                    " × ", words["c_rail"], ", rail leg")
corner_small = piece("Corner: ", whole(setout.corner_nuts), " nuts, ",
                     whole(setout.corner_washers), " washers")
end_kit = piece(whole(parts.stringer_ends), " end bags: 1 angle, ", whole(setout.end_plates),
                " washer plates")
end_leg = piece("End: ", whole(parts.bolts_a_leg), " bolts ", job.bolt, " × ", words["leg"],
                ", stringer leg")
end_rail = piece("End: ", whole(parts.bolts_a_leg), " bolts ", job.bolt, " × ",
                 words["rail"], ", leg on the rail or header")
end_small = piece("End: ", whole(setout.end_nuts), " nuts, ", whole(setout.end_nuts), " washers")
ply_kit = piece(when(PLIES, joined("Plies: ", whole(parts.ply_bolts), " bolts ", job.bolt,
                                   " × ", words["ply"], ", two washers and a nut each"),
                     "Plies: one, no bolts"))
lag_kit = piece("Floats: ", whole(parts.lags), " lags ", job.lag, " × ",
                shown(job.lag_length, 2), " in, a washer each")

skirt_kit = piece(when(SKIRT, joined("Skirt: ", whole(parts.skirt_screws), " screws, ",
                                     whole(parts.skirt_bolts), " bolts ", job.bolt, " × ",
                                     words["skirt"]), "Skirt: none"))

sheet.page_break()
block("Frame: rails, headers, corners")
step("Blocks level and straight, by line and level; crowns up")
plies = step(when(PLIES, joined("Rails: plies together, joints far apart, bolted every ",
                                shown(own.ply_bolt_spacing), " in, up and down in turn"),
                  "Rails: one ply each, nothing to join"))
step("Headers between the rails, all tops flush")
step("Corners drilled, holes at:")
length("Upper hole below the top edge", "corner1")
length("Lowest hole below the top edge", "corner2")
length("Holes apart, up and down", "corner_step")
length("In the rail, from its end", "corner_rail")
length("In the header, from its end", "corner_header")
length("Drill, all bolt holes", "hole")
step("Brackets inside and outside, bolts by hand, washers on both sides")
step("Square: both diagonals, outside corner to outside corner")
length("Diagonal: near left to far right", "diagonal", blank=True)
length("Diagonal: near right to far left", "diagonal", blank=True)
length("The two apart, most", "apart", blank=True)
step("A brace nailed across two corners; it stays until the deck is on")

block("Cross-beams")
cross = step(when(BEAMS, joined("Centres marked from the outside of the near header: ",
                                words["beam1"], ", then every ", words["beam"]),
                  "No cross-beams in this type"))
cross_in = step(when(BEAMS, "Hung before the stringers, angles toward the near end",
                     "Nothing to hang before the stringers"))

block("Drill pattern at stringer ends")
note("Angle in the middle of the stringer's depth, tight in the corner; mark through its holes.")
length("Upper hole below the top edge", "upper")
length("Lowest hole below the top edge", "lowest")
length("Holes apart, up and down", "step")
length("From the stringer's end; from its face on the other leg", "end")
length("Rule: hole to an edge, least", "edge")
length("Rule: hole to an end, least", "to_end")
length("Rule: holes of one leg apart, least", "holes")
length("Rule: from another piece's holes, least", "rows")
pattern = show("Pattern keeps these distances", of(setout.pattern), "text")

sheet.page_break()
block("Stringer marks: one run of the tape, centres")
hook = step("Tape hooked at the outside of ", tape.start, "; ", tape.marked,
            " marked alike, at the same numbers")
lines = show("Lines of stringers", tape.lines, "each", 0)
spacing = show("Spacing", tape.spacing, "in")
length("First space: outside to the first mark", "first")
length(joined("Last space: last mark to the outside of ", tape.finish), "out", blank=True)
length("Stringer's faces off its mark, both sides", "half")
mark = [show(joined(f"Mark {_k}: angle on the ",
                    tape.odd_side if _k % 2 else tape.even_side, " side"),
             when(tape.lines >= _k, tape.mark[_k - 1], "past the last"), "text", tick=True)
        for _k in range(1, MARKS + 1)]
more = say(when(tape.lines > MARKS,
                joined("More follow: go on by the spacing to the last mark, ", words["last"],
                       "; odd and even sides as above."),
                joined("The last mark is at ", words["last"], ".")))

sheet.page_break()
block("Stringers")
sides = step("Odd marks: angle on the ", tape.odd_side, " side; even marks: on the ",
             tape.even_side, " side, at both ends")
beyond = step(when(all_of(BEAMS, tape.across < 1),
                   "Across a cross-beam the next piece takes its angle on the other side",
                   "Each stringer runs in one piece"))
step("Angles bolted to the rails or headers by hand, plates behind")
step("Stringers in, tops flush, end tight against the wood")
step("Stringer bolts, plates behind; all nuts by hand")
length("The two diagonals again, apart at most", "apart", tick=True, blank=True)
step("All nuts tight, washers drawn flat but not into the wood")
step("Every hole and cut end treated")
skirt = step(when(SKIRT, joined("Skirt on: ", whole(parts.skirt_places), " places, ",
                                of(sec.skirt)), "No skirt on this type"))

block("Floats")
step("Floats set out on level blocks; frame lowered onto them by machine, tag lines on")
boxes = step(whole(parts.floats), " floats, ", whole(sec.float_rows), " rows across, ",
             whole(sec.floats_a_row), " in a row, lying ", of(sec.float_turned))
length("Left row: centre from the left rail's outside", "row1")
next_row = show("Next rows: centre to centre",
                when(of(sec.float_rows) > 1, words["row"], "one row"), "text")
length("Near floats: centre from the near header's outside", "col1")
next_float = show("Next floats in a row: centre to centre",
                  when(of(sec.floats_a_row) > 1, words["col"], "one float"), "text")
extra: list[Row] = []
for _i in (1, 2, 3, 4):
    extra.append(show(f"Extra float {_i}: from the near header's outside",
                      when(tape.extras >= _i, words[f"ex{_i}"], "none"), "text"))
    extra.append(show(f"Extra float {_i}: from the left rail's outside",
                      when(tape.extras >= _i, words[f"ey{_i}"], "none"), "text"))
lags = step("Lags: ", whole(parts.lags),
            " in all, through the flange into the wood above; serial numbers written down")

sheet.page_break()
block("Deck")
order = step(when(PANELS, joined("Panels: ", shown(tape.columns), " along × ", shown(tape.rows),
                                 " across, begun at the near left corner"),
                  joined("Boards: ", whole(parts.boards), " lines, begun at one straight edge")))
lie = step(when(PANELS, "Tabs point to the far end and to the right; each panel locks in the last",
                "Best face up, ends on a stringer, joints of neighbours apart"))
turn = step(when(PANELS, "Left row first, near to far, then the next row; cut pieces come last",
                 "Gap held by a spacer; every fifth line measured to the far edge"))
tabs = step(when(PANELS, joined("Tabs cut off at the outer edges: ", whole(decking.tabs_off)),
                 "No tabs on boards"))
panel_x = show("Panel, along the section", when(PANELS, words["panel_x"], "boards"), "text")
panel_y = show("Panel, across the section", when(PANELS, words["panel_y"], "boards"), "text")
last_column = show("Last column, cut to, along", when(PANELS, words["column"], "boards"), "text")
last_row = show("Last row, cut to, across", when(PANELS, words["rowp"], "boards"), "text")
gap = show("Gap between boards", when(PANELS, "panels", words["gap"]), "text")
rip = show("Last board, ripped to", when(PANELS, "panels", words["rip"]), "text")
butts = show("Butt joints of boards, each on a stringer", of(parts.board_butts), "each", 0)
screws = step("Screws ", job.deck_screw, " × ", words["screw"], ": ", whole(parts.deck_screws),
              " in all; heads flush, none proud")
step("Hole edges and cut ends treated; chips swept up, not into the water")
step("Brace off; corners looked at once more")

block("Fittings")
fittings = step(whole(sec.hinges), " hinges, ", whole(sec.mooring_brackets),
                " mooring brackets, ", whole(sec.cleats), " cleats with plates, ",
                whole(sec.ladders), " ladders")
edges = step(shown(of(sec.bumper), 1), " ft of bumper, ", whole(sec.corner_wheels),
             " corner wheels")
step("Nuts tight, counted; both numbers of the load plate on")

sheet.page_break()
block("To lift and to carry")
dry = show("Whole section, dry", of(weight.launch), "lb", 0)
frame = show("Frame without floats, dry", of(weight.frame_only), "lb", 0)
heaviest = show("Heaviest single piece", of(weight.heaviest_piece), "lb", 0)
on_hook = show("On the hook, with the dynamic factor", of(setout.hook), "lb", 0)
machine = show("Machine: safe load at its reach", road.crane_limit, "lb", 0)
reach = show("At this reach", road.crane_reach, "ft", 0, blank=True)
length("Slings from each end", "sling")
flattest = show("Slings never flatter than, from level", own.sling_angle_least, "deg", 0)
tension = show("Tension in a sling leg at that angle", of(framing_lifting.sling_tension), "lb", 0)
wide = show("Widest on the road", of(setout.piece_width), "ft")
allowed = show("Road without a permit, most", road.road_width.in_("ft"), "ft")
narrow = show("Narrowest place on the way in", road.access_width.in_("ft"), "ft", blank=True)
long = show("Longest on the trailer", of(setout.piece_length), "ft")
bed = show("Trailer and what may stand past it", of(setout.long_limit), "ft")
afloat = show("Water wanted where it is launched",
              of(buoyancy.draft_launch).in_("ft") + ours.launch_depth, "ft", 1, blank=True)
step("Strapped down at four places; nothing loose on top")
step("Photographs: corners, stringer ends, floats, underside")
show("Built by, date", blank=True)
show("Looked over by, date", blank=True)
