"""Drawing, fourth part: the outlines of all section types."""

from __future__ import annotations

from builder.language import greatest, joined, of_type, shown, when

from . import sections as sec
from .drawing_base import bars, block, box, ours, row, sheet

LETTERS = "ABCDEF"

block("All section types, one beside the other")
longest = row("Longest", "L_max", "ft", greatest(*(of_type(sec.length, k) for k in LETTERS)))
widest = row("Widest", "B_max", "ft", greatest(*(of_type(sec.width, k) for k in LETTERS)))
types = row("Half the paper's width", "S_a", "ft",
            greatest(longest * 3 / 2, 4 * widest, 4 * ours.bar))
lengths = {k: row(f"Length of {k}", f"L_{k}", "ft", of_type(sec.length, k)) for k in LETTERS}
widths = {k: row(f"Width of {k}", f"B_{k}", "ft", of_type(sec.width, k)) for k in LETTERS}


def _middle(number: int):
    """Return where along the paper a type stands; the last place is the scale bars'."""
    return types * (2 * number - 6) / 7


def _type(number: int, k: str):
    return box(types, _middle(number) - widths[k] / 2, -lengths[k] / 2,
               _middle(number) + widths[k] / 2, lengths[k] / 2)


outlines = sheet.shapes("Types, plan", "frame", [_type(n, k) for n, k in enumerate(LETTERS)])
type_bars = sheet.shapes("Scale bars, types", "measure", [
    bars(types, types * 31 / 32, -types * 7 / 16, ours.bar)])
type_marks = [
    sheet.mark(when(lengths[k] > 0, joined(k, ": ", shown(lengths[k], 1), " × ",
                                           shown(widths[k], 1), ", ",
                                           shown(of_type(sec.quantity, k)), " built"), " "),
               _middle(n) / types,
               (lengths[k] / 2 + types / 13) * (1 - 2 * (n % 2)) / types)
    for n, k in enumerate(LETTERS)]
type_marks.append(sheet.mark("5 ft", (types * 31 / 32 - ours.bar / 2) / types,
                             -types * 15 / 32 / types))
sheet.view("All types: length × width, ft", "Outlines of all section types in use, one "
           "beside the other, to one scale; bars of 5 ft.", [outlines, type_bars], type_marks,
           wide=2, top=57, left=1, parts=2)
