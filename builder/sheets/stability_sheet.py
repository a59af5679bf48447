"""Stability: the sheet that its parts are declared on, in the order they are imported."""

from __future__ import annotations

from builder.language import Sheet

sheet = Sheet("Stability", "Stability, list, trim and the load plate",
              about="Whether each section stays upright, how far it tilts, and how low its "
              "corners come, in every load case.")
row, check, block, note = sheet.row, sheet.check, sheet.block, sheet.note

ARCHIMEDES, STATICS, OURS = "Archimedes", "statics", "own judgement"
GROUP = "Stability"
STABLE, TURNS = "stable", "UNSTABLE: it turns over"

note("Every case asks first whether the section is stable; an unstable case has no angle: a dash "
     "stands for it, its state reads UNSTABLE, and it is NOT OK.")
note("x along, y across, from the middle; a positive list puts the +y side down, a positive trim "
     "the +x end. Near and far are along +x, left and right as one walks out along it: +y is to "
     "the right. A rigid frame is assumed: test the real one with a weight at a corner.")
