"""Inputs, continued: which lengths the yard sells, saw kerf, end trim."""

from __future__ import annotations

from builder.language import Ask, read_table

from . import inputs as job
from .reference import TEMPLATES, YES_NO, constants

ours = constants("own_buying")

STOCK = read_table(TEMPLATES / "catalog" / "stock_lengths.csv")
"""Every length a board may be bought in."""

sheet = job.sheet
ask, choose, block, note = sheet.ask, sheet.choose, sheet.block, sheet.note

OURS = "own judgement"

block("Lengths the yard sells")
note("A length over the longest stock length above never counts. Where none is left, the "
     "shortest of the list counts.")
sold: dict[str, Ask] = {
    key.replace(" ", "_"): choose(f"Boards of {key} are sold", YES_NO, "yard", default="yes")
    for key in STOCK.keys}
kerf = ask("Saw kerf", "k_s", "in", 0, 0.5, OURS, default=ours.kerf, digits=4)
end_trim = ask("End trim of a board", "t_e", "in", 0, 6, OURS, default=ours.end_trim, digits=3)
