"""Sections, continued: the neighbour that holds a narrow section in roll."""

from __future__ import annotations

from . import sections as sec
from .reference import constants, words

ours = constants("own_afloat")
HOLDERS = words("Held in roll by type", "none", "A", "B", "C", "D", "E", "F")
LIES = words("How the neighbour lies", "across", "in line")

sheet = sec.sheet
ask, choose, block = sheet.ask, sheet.choose, sheet.block

block("Held in roll by a neighbour")
held_by = choose("Held in roll by section type", HOLDERS,
                 "two hinges on one level line, pins checked; else it stands alone",
                 default="none")
holder_lies = choose("That neighbour lies", LIES,
                     "across: its trim holds; in line: its list", default="across")
holder_holds = ask("Sections that one such neighbour holds in roll", "n_hr", "each", 1, 12,
                   "they share its stiffness", default=1, whole=True)
hinge_apart = ask("Hinges of a joint, centre to centre", "b_h", "ft", 0.5, 24,
                  "layout; default small, on the safe side", default=ours.hinge_apart,
                  digits=1)
