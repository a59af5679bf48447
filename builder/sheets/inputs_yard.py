"""Inputs, continued: which section type the yard pages show, and the road, trailer and crane."""

from __future__ import annotations

from . import inputs as job
from .reference import constants, words

ours = constants("own_yard")
LETTERS = words("Section type by its letter", *"ABCDEF")
CARRIED = words("How a section goes to the water", "whole", "in pieces")

sheet = job.sheet
ask, choose, block = sheet.ask, sheet.choose, sheet.block

YOURS = "own judgement; stands in until yours is typed"

block("Yard and road")
yard_type = choose("Type shown on the yard pages", LETTERS, "print the pages once a type",
                   default=LETTERS.keys[0])
carried = choose("Sections go to the water", CARRIED, "whole, or put together there",
                 default=CARRIED.keys[0])
road_width = ask("Width of a load on the road without a permit", "b_rd", "in", 60, 192,
                 "102 in from memory; ask the state", default=ours.road_width, digits=0)
access_width = ask("Narrowest place on the way in: gate, lane, ramp", "b_in", "in", 36, 1200,
                   "measured on site", default=road_width, digits=0)
trailer_length = ask("Trailer, length of its deck", "L_tr", "ft", 6, 60, YOURS,
                     default=ours.trailer_length, digits=1)
trailer_overhang = ask("Load past the trailer's end, allowed", "o_tr", "ft", 0, 15,
                       "own judgement; ask the state", default=ours.trailer_overhang, digits=1)
trailer_payload = ask("Trailer, what it may carry", "W_tr", "lb", 300, 80000, YOURS,
                      default=ours.trailer_payload, digits=0)
crane_limit = ask("Lifting machine: safe load at the reach below", "W_cr", "lb", 200, 200000,
                  YOURS, default=ours.crane_limit, digits=0)
crane_reach = ask("Reach: machine to the hook over the section", "r_cr", "ft", 3, 150,
                  YOURS, default=ours.crane_reach, digits=0)
