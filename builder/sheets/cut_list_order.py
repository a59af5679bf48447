"""Cutting, first part: stock lengths that count, pieces type by type, pieces in cutting order.

Lengths are whole sixteenths of an inch here.  A piece takes its length and one kerf from a board
that is a kerf longer than it is, since the last cut of a board that comes out even is not made.
"""

from __future__ import annotations

from builder.language import (
    Row,
    Series,
    Sheet,
    Table,
    all_of,
    at_place,
    bare,
    greatest,
    largest,
    nth_largest,
    of_type,
    place_of,
    sum_over,
    when,
    whole_down,
    whole_up,
)

from . import inputs as job
from . import inputs_buying as buying
from . import parts
from . import sections as sec

WAYS = (1, 2, 3, 4, 5)
"""Stock lengths tried for a board: the four longest, and the shortest that gives one piece."""
TYPES = tuple("ABCDEF")
INCH, FOOT = 16, 192
"""Sixteenths in an inch, in a foot."""
HALF = 0.5
BY_SIZE, TIES = 10000, 1000
"""A size's line, a length in sixteenths and the piece's line make one number to sort by."""

HEADS = {"next": "Then", "line": "Cut", "left": "Left to cut", "size": "Line of size",
         "pitch": "Piece, kerf"}
"""Heads over the columns of the lines of boards."""
for _way in WAYS:
    HEADS |= {"one": f"Room, way {_way}"} if _way == WAYS[-1] else {}
    HEADS |= {f"room_{_way}": f"Offcut, way {_way}", f"first_{_way}": f"Fits from, {_way}",
              f"fits_{_way}": f"Second, way {_way}", f"waste_{_way}": f"Waste, way {_way}"}
HEADS |= {"way": "Way", "usable": "Room", "pieces": "Pieces", "tried": "Second tried",
          "second": "Second", "second_pitch": "Second, kerf", "second_left": "Left of it",
          "second_pieces": "Second, pieces", "boards": "Boards", "need": "Used",
          "stock": "Stock, ft", "used_up": "Used up", "code": "Size, stock"}

sheet = Sheet("Cutting", "How boards are chosen and cut", scope="ledger",
              about="The working behind the cut list, in sixteenths of an inch. Nothing to read "
                    "here at the saw: see Cut list.", columns=HEADS, widths=(26, 12))
block, note, ledger = sheet.block, sheet.note, sheet.ledger

block("Kerf, trim, lengths that count")
sheet.heads({"next": "Value", "line": "In sixteenths"})
kerf = ledger("Saw kerf", "", "", "Inputs", line=(INCH * bare(buying.kerf, "in"), "", 2))["line"]
trim = ledger("End trim, up to whole sixteenths", "", "", "Inputs",
              line=(whole_up(INCH * bare(buying.end_trim, "in")), "", 0))["line"]
_counted = [ledger(f"{key}: length if sold and not over the longest, else 0", "", "ft",
                   "Inputs", next=(when(all_of(
                       buying.sold[key.replace(" ", "_")].is_("yes"),
                       buying.STOCK.at(k)["length"] <= job.longest_stock),
                       buying.STOCK.at(k)["length"], 0), "ft", 0))["next"]
            for k, key in enumerate(buying.STOCK.keys, start=1)]
note("Longest first, with what is left of each after end trim and, on top, one kerf.")
stock: list[Row] = []
"""Stock lengths that count [ft], longest first; 0 where there are fewer."""
usable: list[Row] = []
"""The same in sixteenths less end trim, with one kerf on top; 0 where there are fewer."""
for _k in range(1, len(_counted) + 1):
    _feet = nth_largest(Series("stock", _counted), _k)
    if _k == 1:
        _feet = greatest(largest(Series("stock", _counted)), buying.STOCK.at(1)["length"])
    _line = ledger(f"Stock length {_k}, from the longest", "", "ft", "Inputs",
                   next=(_feet, "ft", 0))
    stock.append(_line["next"])
    _room = bare(stock[-1], "ft") * FOOT - trim + kerf
    usable.append(_line.add("line", _room if _k == 1 else when(stock[-1] > 0, _room, 0), "", 2))
STOCK, USABLE = Series("stock", stock), Series("usable", usable)
longest = ledger("Longest piece a board gives", "", "", "Cutting",
                 line=(usable[0] - kerf, "", 0))["line"]

block("Pieces, type by type")
note("The whole dock: pieces of Parts times sections built. What is longer than a board gives is "
     "spliced from equal pieces. Lengths go to the nearest sixteenth.")
sheet.heads({"next": "In how many", "line": "Piece, 1/16 in", "left": "Pieces",
             "size": "Line of size", "pitch": "Sort number"})
KINDS = (
    ("R", "rail ply", parts.rail_line, sec.rail_size, parts.rails, parts.rail_length),
    ("H", "header", parts.header_line, sec.header_size, parts.headers, parts.header_length),
    ("S", "stringer", parts.stringer_line, sec.stringer_size, parts.stringers,
     parts.stringer_length),
    ("C", "cross-beam", parts.cross_line, sec.cross_beam_size, sec.cross_beams,
     parts.cross_length),
    ("L", "skirt, long side", parts.skirt_line, sec.skirt_size, 2, parts.skirt_long),
    ("K", "skirt, short side", parts.skirt_line, sec.skirt_size, 2, parts.skirt_short),
)
"""Letter of the mark, name, line of the size, size, count and length on one section."""
MARKS = Table(
    "marks", "Marks of pieces", "own", "mark", {"piece": "text"},
    [*(f"{letter}-{kind[0]}" for letter in TYPES for kind in KINDS), "none"],
    [*((kind[1],) for _ in TYPES for kind in KINDS), ("none",)],
    [("", "our own words", "")] * (len(TYPES) * len(KINDS) + 1))
source_lines = []
"""The pieces of each type, by kind: what is cut."""
for _letter in TYPES:
    for _mark, _name, _size_line, _size, _count, _length in KINDS:
        _line = ledger(f"Type {_letter}: {_name}", of_type(_size, _letter), "", "Parts")
        _all = bare(of_type(_length, _letter), "ft") * FOOT
        _line.add("next", whole_up(_all / longest), "", 0)
        _line.add("line", whole_down(_all / greatest(_line["next"], 1) + HALF), "", 0)
        _count = _count if isinstance(_count, int) else of_type(_count, _letter)
        _line.add("left", of_type(sec.quantity, _letter) * _count * _line["next"], "", 0)
        _line.add("size", (_line["left"] > 0) * of_type(_size_line, _letter), "", 0)
        source_lines.append(_line)
        _line.add("pitch", when(
            _line["left"] > 0, (_line["size"] * BY_SIZE + _line["line"]) * TIES, 0)
            - len(source_lines), "", 0)
_none = ledger("No piece", "", "", "Cutting", line=(0, "", 0), left=(0, "", 0), size=(0, "", 0),
               pitch=(-len(source_lines) - 1, "", 0))
_sources = [*source_lines, _none]
LENGTHS, COUNTS, SIZES, _keys = (
    Series(name, [line[column] for line in _sources]) for name, column in (
        ("length", "line"), ("count", "left"), ("size", "size"), ("key", "pitch")))

block("Pieces, in the order they are cut")
note("By size, then from the longest; pieces alike in size and length are cut together, counted "
     "on each of their lines, and the first of them takes all.")
sheet.heads({"next": "Place above", "line": "Line of size", "left": "Piece, 1/16 in",
             "size": "Cut together", "pitch": "Sort number"})
order_lines = []
for _n in range(1, len(_sources) + 1):
    _line = ledger(f"Order {_n}", "", "", "Cutting",
                   next=(place_of(_keys, nth_largest(_keys, _n)), "", 0))
    _line.add("line", at_place(SIZES, _line["next"]), "", 0)
    _line.add("left", (_line["line"] > 0) * at_place(LENGTHS, _line["next"]), "", 0)
    _together = sum_over(SIZES.is_(_line["line"]) * LENGTHS.is_(_line["left"]) * COUNTS)
    if order_lines:
        _above = order_lines[-1]
        _together = when(all_of(_line["line"].is_(_above["line"]),
                                _line["left"].is_(_above["left"])), 0, _together)
    _line.add("size", _together, "", 0)
    _line.add("pitch", when(_line["size"] > 0, len(_sources), 0) - _n, "", 0)
    order_lines.append(_line)
PLACE, _sizes, _lengths, _together, _ranks = (
    Series(name, [line[column] for line in order_lines]) for name, column in (
        ("place", "next"), ("size", "line"), ("length", "left"), ("together", "size"),
        ("rank", "pitch")))

block("Pieces, alike ones together")
sheet.heads({"next": "Order above", "line": "Pieces", "left": "Line of size",
             "size": "Piece and kerf", "pitch": "Place of first"})
cut_lines = []
for _n in range(1, len(_sources) + 1):
    _line = ledger(f"Cut {_n}", "", "", "Cutting",
                   next=(place_of(_ranks, nth_largest(_ranks, _n)), "", 0))
    _line.add("line", at_place(_together, _line["next"]), "", 0)
    _line.add("left", (_line["line"] > 0) * at_place(_sizes, _line["next"]), "", 0)
    _line.add("size", greatest(at_place(_lengths, _line["next"]) + kerf, 1), "", 2)
    _line.add("pitch", at_place(PLACE, _line["next"]), "", 0)
    cut_lines.append(_line)
FIRST, SIZE, PITCH, TOGETHER = (
    Series(name, [line[column] for line in cut_lines]) for name, column in (
        ("first", "pitch"), ("size", "left"), ("pitch", "size"), ("together", "line")))
