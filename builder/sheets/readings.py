"""Readings: what is measured on the water, and the record of how a section was built.

The near end is the one a person walks out from, along +x; right and left are that person's hands
(+y is right).  A freeboard is from the water up to the top of the deck at its outermost corner.
"""

from __future__ import annotations

from builder.language import Sheet

from .reference import constants, lake, table

launch_own = constants("own_launch")
CORNERS = table("launch_corners")
HIGHEST, LOWEST = 72, -12
"""Freeboards that can be typed [in]; below 0 the deck corner is under water."""

sheet = Sheet("Readings", "Readings on the water, and the as-built record",
              scope="section inputs",
              about="Type what was measured with nobody on the section. Blank means not measured.")
ask, choose, write, block = sheet.ask, sheet.choose, sheet.write, sheet.block

block("Lifting gear")
sling_limit = ask("Sling: working load limit of one leg, straight pull", "WLL", "lb", 100, 200000,
                  "tag of the sling; blank: not lifted", optional=True, digits=0)
machine_limit = ask("Lifting machine: safe load at the reach needed", "W_m", "lb", 100, 200000,
                    "load chart of the machine, at that reach", optional=True, digits=0)

block("Water to the top of the deck, at launch and after a month")
launch_corner = [ask(f"At launch: {name}", f"f_{i}", "in", LOWEST, HIGHEST,
                     "rule; calm water, nobody aboard", optional=True, digits=3)
                 for i, name in enumerate(CORNERS.keys, 1)]
month_corner = [ask(f"After a month: {name}", f"g_{i}", "in", LOWEST, HIGHEST,
                    "the same way, the same things aboard", optional=True, digits=3)
                for i, name in enumerate(CORNERS.keys, 1)]

block("Weight test: one weight, first at a side, then at a corner")
test_weight = ask("Test weight", "w_t", "lb", 50, 3000,
                  "weighed; default: Lake guidelines, loads", default=lake.live_point, digits=0)
test_corner = choose("Corner that is loaded; the side is the one it is on", CORNERS,
                     "any; best the lowest", default=CORNERS.keys[2])
drop_side = ask("Drop of the deck edge, weight at the middle of that side", "D_s", "in", 0, 48,
                "before less after; the weight's centre 6 in inside the edge", optional=True,
                digits=3)
drop_corner = ask("Drop of the deck corner, weight at that corner", "D_c", "in", 0, 48,
                  "before less after; the weight's centre 6 in inside both edges", optional=True,
                  digits=3)

block("To level it")
shift_weight = ask("Ballast aboard that can be shifted", "w_b", "lb", 5, 3000, "own judgement",
                   default=launch_own.shift_weight, digits=0)

block("Record")
read_date = write("Date of the readings at launch")
read_by = write("Read by")
second_date = write("Date of the second reading")
float_serials = write("Float serial numbers", "from the floats; keep the certificates")
anchors = write("Anchor positions", "bearing and distance, or coordinates")
chains = write("Chain lengths as set", "each leg, at the water level of the day")
photographs = write("Photographs", "numbers or folder: frame, floats, corners, anchors")
