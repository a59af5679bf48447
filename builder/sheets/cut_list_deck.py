"""Cutting, third part: deck boards, each length from the stock length that takes least."""

from __future__ import annotations

from builder.language import (
    at_place,
    bare,
    choose,
    greatest,
    least,
    of_type,
    place_of,
    sum_over,
    whole_down,
    whole_up,
)

from . import parts
from . import sections as sec
from .cut_list_boards import FAR
from .cut_list_order import (
    FOOT,
    INCH,
    STOCK,
    TYPES,
    USABLE,
    block,
    kerf,
    ledger,
    longest,
    note,
    sheet,
    stock,
    usable,
)

TRIED = 3
"""How many of the longest stock lengths are tried, besides the shortest that gives a piece."""

block("Deck boards")
note("Boards meet on stringers: a full piece reaches the last stringer that the longest board "
     "reaches, the last piece of a line takes the rest.")
sheet.heads({"next": "Pieces", "line": "Piece, 1/16 in", "left": "Piece and kerf",
             "size": "Room for one", "pitch": "Feet, way 1", "one": "Feet, way 2",
             "rest": "Feet, way 3", "line_2": "Feet, way 4", "left_2": "Way",
             "pitch_2": "Stock, ft", "one_2": "Boards"})
deck_lines = []


def _feet(line, room, feet):
    """Return the feet that one stock length takes, many where the piece does not fit."""
    each = greatest(whole_down(room / line["left"]), 1)
    return whole_up(line["next"] / each) * bare(feet, "ft") + FAR * (room < line["left"])


def _deck_line(label: str, length, count) -> None:
    line = ledger(label, "", "", "Parts, decking pieces")
    line.add("next", count, "", 0)
    line.add("line", (line["next"] > 0) * length, "", 0)
    pitch = line.add("left", greatest(line["line"] + kerf, 1), "", 2)
    room = line.add("size", at_place(USABLE, greatest(sum_over(USABLE >= pitch), 1)), "", 2)
    tried = [(usable[k], stock[k]) for k in range(TRIED)]
    tried.append((room, at_place(STOCK, place_of(USABLE, room))))
    feet = [line.add(column, _feet(line, *one), "", 0) for column, one in zip(
        ("pitch", "one", "rest", "line_2"), tried, strict=True)]
    way = line.add("left_2", 1 + (feet[0] > least(*feet[1:])) * (
        1 + (feet[1] > least(*feet[2:])) * (1 + (feet[2] > feet[3]))), "", 0)
    bought = line.add("pitch_2", (line["next"] > 0) * choose(way, *(one[1] for one in tried)),
                      "ft", 0)
    line.add("one_2", least(*feet) / greatest(bare(bought, "ft"), 1), "each", 0)
    deck_lines.append(line)


for _letter in TYPES:
    _run = ledger(f"Type {_letter}: spacing, full piece, pieces in a line", "", "", "Parts")
    _step = _run.add("line", greatest(INCH * bare(of_type(sec.spacing, _letter), "in"), 1), "", 2)
    _reach = _run.add("left", _step * greatest(whole_down(longest / _step), 1), "", 0)
    _in_all = bare(of_type(parts.board_length, _letter), "ft") * FOOT
    _parts = _run.add("size", whole_up(_in_all / _reach), "", 0)
    _lines = of_type(parts.boards, _letter) * of_type(sec.quantity, _letter)
    _deck_line(f"Type {_letter}: full pieces", whole_down(_reach + 0.5),
               _lines * greatest(_parts - 1, 0))
    _deck_line(f"Type {_letter}: last pieces",
               greatest(whole_down(_in_all - greatest(_parts - 1, 0) * _reach + 0.5), 0), _lines)
