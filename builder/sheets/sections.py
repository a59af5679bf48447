"""Sections: what each section type is made of.  A section is one rigid frame on floats.

x runs along the section from its middle, y across from its centreline, to starboard of a person
walking out along +x.  Length and width are outside of rails and headers; skirts lie outside.
"""

from __future__ import annotations

from builder.language import Sheet, when

from . import catalog
from . import inputs as job
from .reference import (
    DECKS,
    LUMBER,
    PURPOSES,
    RUNS,
    SKIRTS,
    SQUARING,
    lake,
    own,
    ufc_piers,
)

sheet = Sheet("Sections", "Section types A to F",
              about="One column a section type; leave a column empty when it is not used.")
ask, choose, write, block = sheet.ask, sheet.choose, sheet.write, sheet.block

block("What it is")
purpose = choose("Purpose", PURPOSES, "sets the loads and heights below")
quantity = ask("How many are built", "n", "each", 1, 99, "layout", whole=True)
length = ask("Length, outside of headers", "L", "ft", 4, 60, "layout")
width = ask("Width, outside of rails", "B", "ft", 2.5, 24, "layout")
deck_overhang = ask("Deck past the outside of the frame, each edge", "o_d", "in", 0, 6, "layout",
                    default=0)

block("Frame")
run = choose("Stringers run", RUNS, "across: rail to rail; along: header to header")
stringer_size = choose("Stringer size", LUMBER, "Framing")
spacing = ask("Stringer spacing, centre to centre", "s", "in", 6, 36,
              "so that every deck joint lands on a stringer")
rail_size = choose("Rail size", LUMBER, "Framing")
rail_plies = ask("Plies of each rail", "n_p", "each", 1, 3, "Framing", whole=True)
header_size = choose("Header size", LUMBER, "Framing")
cross_beams = ask("Cross-beams between the headers", "n_cb", "each", 0, 11,
                  "hold stringers that run along", default=0, whole=True)
cross_beam_size = choose("Cross-beam size", LUMBER, "Framing", default=LUMBER.keys[2])
skirt = choose("Skirt board", SKIRTS, "counts in strength only when graded and bolted",
               default="none")
skirt_size = choose("Skirt size", LUMBER, "hides the float hardware", default=LUMBER.keys[4])
squaring = choose("What holds the frame square", SQUARING, "panels do not",
                  default=SQUARING.keys[0])

block("Deck")
deck = choose("Decking", DECKS, "layout")
panel = choose("Deck panel", catalog.PANELS, "catalog", default=catalog.PANELS.keys[0])
board = choose("Deck board", catalog.BOARDS, "catalog", default=catalog.BOARDS.keys[0])

block("Floats")
float_model = choose("Float", catalog.FLOATS, "catalog")
float_rows = ask("Rows of floats, counted across", "R", "each", 1, 6,
                 "two outer rows make it stable", whole=True)
floats_a_row = ask("Floats in a row", "n_r", "each", 1, 20, "Buoyancy", whole=True)
float_turned = choose("Floats lie with their length", RUNS, "layout", default="along")
inset_side = ask("Outer floats in from the side of the frame", "i_y", "in", -6, 60,
                 "outside of rail to float", default=0)
inset_end = ask("End floats in from the end of the frame", "i_x", "in", -6, 120,
                "outside of header to float", default=0)
float_gap = ask("Float top below the underside of the frame", "g_f", "in", 0, 6,
                "flange or packing", default=own.float_top_gap)
extra_floats = ask("Extra floats outside the rows", "n_x", "each", 0, 4, "levelling",
                   default=0, whole=True)
extra_x = [ask(f"Extra float {i}: along, from the middle", f"x_{i}", "ft", -30, 30, "layout",
               default=0) for i in (1, 2, 3, 4)]
extra_y = [ask(f"Extra float {i}: across, from the centreline", f"y_{i}", "ft", -12, 12,
               "layout", default=0) for i in (1, 2, 3, 4)]

block("What stands on it")
item_name = [write(f"Fixed item {i}: name", "bench, ladder, box") for i in (1, 2, 3, 4)]
item_weight = [ask(f"Fixed item {i}: weight", f"w_{i}", "lb", 0, 3000, "weighed", default=0,
                   digits=0) for i in (1, 2, 3, 4)]
item_x = [ask(f"Fixed item {i}: along, from the middle", f"x_w{i}", "ft", -30, 30, "layout",
              default=0) for i in (1, 2, 3, 4)]
item_y = [ask(f"Fixed item {i}: across, from the centreline", f"y_w{i}", "ft", -12, 12,
              "layout", default=0) for i in (1, 2, 3, 4)]
item_z = [ask(f"Fixed item {i}: centre above the deck", f"z_w{i}", "ft", -3, 8, "layout",
              default=0) for i in (1, 2, 3, 4)]
hinges = ask("Section hinges, each with a pin", "n_hi", "each", 0, 12, "two a joint", default=0,
             whole=True)
mooring_brackets = ask("Mooring brackets", "n_mb", "each", 0, 12, "mooring layout", default=0,
                       whole=True)
cleats = ask("Cleats, each with a backing plate", "n_cl", "each", 0, 24, "boats", default=0,
             whole=True)
bumper = ask("Bumper, feet of edge", "L_bu", "ft", 0, 200, "boats", default=0, digits=1)
corner_wheels = ask("Corner wheels", "n_cw", "each", 0, 4, "boats", default=0, whole=True)
ladders = ask("Ladders", "n_la", "each", 0, 4, "swimmers", default=0, whole=True)
gangway_rest = ask("Gangway at rest: weight on this section", "R_D", "lb", 0, 3000,
                   "half the gangway; 0 where none lands", default=0, digits=0)
gangway_x = ask("Gangway foot: along, from the middle", "x_g", "ft", -30, 30, "layout",
                default=0)
gangway_y = ask("Gangway foot: across, from the centreline", "y_g", "ft", -12, 12, "layout",
                default=0)
chain_weight = ask("Mooring chain hanging on it at high water", "W_ch", "lb", 0, 3000,
                   "mooring layout", default=0, digits=0)

block("Loads, by purpose and use")
public = job.use.is_("public")
by_purpose = PURPOSES.find(purpose)
capacity_load = ask("Capacity live load, a crowd", "q_c", "psf", 10, 150,
                    "by purpose: Data, What a section is for",
                    default=when(public, by_purpose["capacity public"],
                                 by_purpose["capacity private"]), digits=0)
strength_load = ask("Live load for strength", "q_s", "psf", 20, 250,
                    "by purpose; local code if higher",
                    default=when(public, by_purpose["strength public"],
                                 by_purpose["strength private"]), digits=0)
point_load = ask("Point load", "P", "lb", 200, 3000, "Lake guidelines; UFC 4-152-01 7-3.3",
                 default=when(public, ufc_piers.landing_point, lake.live_point), digits=0)

block("Heights wanted, by purpose")
deck_low = ask("Deck above water, empty, least", "F_lo", "in", 3, 48, "by purpose",
               default=by_purpose["deck low"], digits=1)
deck_high = ask("Deck above water, empty, most", "F_hi", "in", 3, 60, "by purpose",
                default=by_purpose["deck high"], digits=1)
deck_flotation = ask("Deck above water under the flotation load, least", "F_f,min", "in", 1, 30,
                     "by purpose", default=by_purpose["deck at flotation load"], digits=1)
deck_capacity = ask("Deck above water under the capacity load, least", "F_c,min", "in", 0, 30,
                    "by purpose; 0 asks nothing", default=by_purpose["deck at capacity load"],
                    digits=1)
