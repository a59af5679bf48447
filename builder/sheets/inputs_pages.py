"""Inputs, continued: words that stand on the papers, and the data a permit asks for.

Nothing here enters a strength or a weight; all of it may stay blank.
"""

from __future__ import annotations

from . import inputs as job
from .inputs_yard import LETTERS
from .reference import YES_NO, words

APPLICANTS = words("Who applies for the permit", "the owner", "the builder")

sheet = job.sheet
ask, choose, write, block = sheet.ask, sheet.choose, sheet.write, sheet.block

ON_PAPER = 45
"""Letters that stand on one line of a paper, after the words before them."""

block("Words for the papers")
builder_name = write("Builder, as on the papers", "business name, town", ON_PAPER)
licence = write("Builder's licence number", "state or town", 12)
quote_number = write("Quote number", "yours", 12)
permit_by = choose("Who applies for the permit", APPLICANTS, "by agreement",
                   default=APPLICANTS.keys[0])
start_words = write("Work begins, and days it takes", "by agreement", ON_PAPER)
insurance = write("Insurance: kind and amount", "certificate", ON_PAPER)
extra_in = write("Also in the price", "by agreement", ON_PAPER)
extra_out = write("Also not in the price", "by agreement", ON_PAPER)
winter_place = write("Where sections lie in winter", "by agreement", ON_PAPER)
swim_float = choose("Stands alone out on the water (swim float)", YES_NO, "layout", default="no")
railings = choose("Railing posts wanted", YES_NO, "owner, inspector", default="no")
services = choose("Power or water lines on the dock", YES_NO, "by others, under their own permit",
                  default="no")

block("Worked page")
worked_type = choose("Type shown on the worked page", LETTERS, "print the page once a type",
                     default=LETTERS.keys[0])

block("Permit data")
parcel = write("Parcel, and where its lines meet the water", "deed, survey", ON_PAPER)
setback_asked = ask("Setback from the parcel lines that is asked; 0 where none", "e_a", "ft", 0,
                    1000, "authority", default=0, digits=1)
setback = ask("Dock to the nearest parcel line; 0 not measured", "e_0", "ft", 0, 10000,
              "measured or survey", default=0, digits=1)
offshore_most = ask("Farthest offshore that is allowed; 0 where no rule", "R_a", "ft", 0, 10000,
                    "authority", default=0, digits=1)
offshore = ask("Dock's far end offshore of the high-water line; 0 not known", "R_0", "ft", 0,
               10000, "layout", default=0, digits=1)
high_water_line = write("High-water line: level and mark", "authority, survey", ON_PAPER)
work_window = write("Work window in the water", "permit", ON_PAPER)
old_dock = write("Old dock and its foam: what is there, who takes it", "site visit", ON_PAPER)
