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

LONGEST = 4
"""Ways 1 to this one take the longest stock lengths, one each."""
SHORTEST, ONE_LESS = LONGEST + 1, LONGEST + 2
"""The way with the shortest length that gives a piece; the one with one piece less than way 1."""
SKIPS = LONGEST + 3
"""The way that is as way 1, but for its second piece: the one after that of way 1."""
LATER, LATER_SHORTEST = LONGEST + 4, LONGEST + 5
"""From these ways on a board begins with the second piece that is left, not with the first: from
the longest length, and from the shortest that gives it."""
WAYS = tuple(range(1, LATER_SHORTEST + 1))
"""Ways tried for a board; what each is stands in ``cut_list_boards``."""
TYPES = tuple("ABCDEF")
INCH, FOOT = 16, 192
"""Sixteenths in an inch, in a foot."""
HALF = 0.5
LENGTHS_ALONE = 6
"""How many of the longest stock lengths are tried for a piece that is cut alone."""
TENTHS = 10
"""A piece cut alone fills more than a tenth of a board: the floor under that share."""
BY_SIZE, TIES = 10000, 1000
"""A size's line, a length in sixteenths and the piece's line make one number to sort by."""

HEADS = {"next": "Free", "line": "Cut", "left": "Left to cut", "size": "Size's number",
         "pitch": "Piece, kerf", "one": f"Room, way {SHORTEST}", "rest": "Left of size",
         "line_2": "Later piece", "left_2": "Left of it", "pitch_2": "Later, kerf",
         "one_2": f"Room, way {LATER_SHORTEST}"}
"""Heads over the columns of the lines of boards."""
for _way in WAYS:
    HEADS |= {f"count_{_way}": f"Pieces, {_way}"} if _way not in (ONE_LESS, SKIPS) else {}
    HEADS |= {f"from_{_way}": f"Fits from, {_way}",
              f"then_{_way}": f"Second, {_way}", f"used_{_way}": f"Used, {_way}"}
    HEADS |= {f"last_{_way}": f"Last, {_way}"} if _way < LATER else {}
    HEADS |= {f"price_{_way}": f"Price, {_way}"}
HEADS |= {"way": "Way", "main": "Piece", "room": "Room", "pieces": "Pieces", "then": "Then",
          "second": "Second", "second_left": "Left of second", "second_pieces": "Second, pieces",
          "need": "Used", "all": "Boards at most", "boards": "Boards", "code": "Size, stock"}

sheet = Sheet("Cutting", "How boards are chosen and cut", scope="ledger",
              about="The working behind the cut list, in sixteenths of an inch. Nothing to read "
                    "here at the saw: see Cut list.", columns=HEADS, widths=(17, 12.4, 13.2),
              beside=11)
block, note, ledger = sheet.block, sheet.note, sheet.ledger

block("Kerf, trim, lengths that count")
sheet.heads({"next": "Value", "line": "In sixteenths", "left": "1 / room"})
kerf = ledger("Saw kerf", "", "", "Inputs", line=(INCH * bare(buying.kerf, "in"), "", 2))["line"]
trim = ledger("End trim, up to whole sixteenths", "", "", "Inputs",
              line=(whole_up(INCH * bare(buying.end_trim, "in")), "", 0))["line"]
note("A length counts if it is sold and not over the longest stock length; else 0.")
_counted = [ledger(key, "", "ft", "Inputs", next=(when(all_of(
                buying.sold[key.replace(" ", "_")].is_("yes"),
                buying.STOCK.at(k)["length"] <= job.longest_stock),
                buying.STOCK.at(k)["length"], 0), "ft", 0))["next"]
            for k, key in enumerate(buying.STOCK.keys, start=1)]
note("Longest first, with what is left of each after end trim and, on top, one kerf.")
stock: list[Row] = []
"""Stock lengths that count [ft], longest first; 0 where there are fewer."""
usable: list[Row] = []
"""The same in sixteenths less end trim, with one kerf on top; 0 where there are fewer."""
_shares: list[Row] = []
_before = ledger("No board", "", "", "Cutting", line=(0, "", 0))["line"]
for _k in range(1, len(_counted) + 1):
    _feet = nth_largest(Series("stock", _counted), _k)
    if _k == 1:
        _feet = greatest(largest(Series("stock", _counted)), buying.STOCK.at(1)["length"])
    _line = ledger(f"Stock length {_k}, from the longest", "", "ft", "Inputs",
                   next=(_feet, "ft", 0))
    stock.append(_line["next"])
    _room = bare(stock[-1], "ft") * FOOT - trim + kerf
    usable.append(_line.add("line", _room if _k == 1 else when(stock[-1] > 0, _room, 0), "", 2))
    if _k <= LENGTHS_ALONE:
        _shares.append(_line.add("left", 1 / greatest(usable[-1], 1), "", 6))
_after = ledger("No board more", "", "", "Cutting", line=(0, "", 0))["line"]
STOCK, USABLE = Series("stock", stock), Series("usable", usable)
REACHES, LAST = Series("usable", [*usable, _after]), Series("usable", [_before, *usable, _after])
"""A length is reached by so many of the first; one place further in the second is the shortest
that reaches it: none for a length of 0, and none for one too long."""
longest = ledger("Longest piece a board gives", "", "", "Cutting",
                 line=(usable[0] - kerf, "", 0))["line"]

block("Pieces, type by type")
note("The whole dock: pieces of Parts times sections built. What is longer than a board gives is "
     "spliced from equal pieces. Lengths go to the nearest sixteenth.")
sheet.heads({"next": "In how many", "line": "Piece, 1/16 in", "left": "Pieces",
             "size": "Line of size", "pitch": "Sort number", "one": "Cut number"})
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


def _first_alike(line):
    """Return the cut number of a line; 0 where a line above holds pieces of its size and length."""
    number = line["size"] * BY_SIZE + line["line"] + kerf
    if not source_lines:
        return number
    above = Series("cut", [one["one"] for one in source_lines])
    return when(sum_over(above.is_(number)) < 1, number, 0)


for _letter in TYPES:
    for _mark, _name, _size_line, _size, _count, _length in KINDS:
        _line = ledger(f"Type {_letter}: {_name}", "", "", "Parts")
        _all = bare(of_type(_length, _letter), "ft") * FOOT
        _line.add("next", whole_up(_all / longest), "", 0)
        _line.add("line", whole_down(_all / greatest(_line["next"], 1) + HALF), "", 0)
        _count = _count if isinstance(_count, int) else of_type(_count, _letter)
        _line.add("left", of_type(sec.quantity, _letter) * _count * _line["next"], "", 0)
        _line.add("size", (_line["left"] > 0) * of_type(_size_line, _letter), "", 0)
        _line.add("pitch", when(
            _line["left"] > 0, (_line["size"] * BY_SIZE + _line["line"]) * TIES, 0)
            - len(source_lines) - 1, "", 0)
        _line.add("one", _first_alike(_line), "", 2)
        source_lines.append(_line)
_none = ledger("No piece", "", "", "Cutting", line=(0, "", 0), left=(0, "", 0), size=(0, "", 0),
               pitch=(-len(source_lines) - 1, "", 0), one=(0, "", 0))
_sources = [*source_lines, _none]
LENGTHS, COUNTS, SIZES, _keys, CUTS = (
    Series(name, [line[column] for line in _sources]) for name, column in (
        ("length", "line"), ("count", "left"), ("size", "size"), ("key", "pitch"),
        ("cut", "one")))

block("Pieces, in the order they are listed")
note("By size, then from the longest.")
sheet.heads({"next": "Place above", "line": "Line of size", "left": "Piece, 1/16 in"})
order_lines = []
for _n in range(1, len(_sources) + 1):
    _line = ledger(f"Order {_n}", "", "", "Cutting",
                   next=(place_of(_keys, nth_largest(_keys, _n)), "", 0))
    _line.add("line", at_place(SIZES, _line["next"]), "", 0)
    _line.add("left", (_line["line"] > 0) * at_place(LENGTHS, _line["next"]), "", 0)
    order_lines.append(_line)

block("Pieces, alike ones together, in the order they are cut")
note("Cut number: the line of the size times 10,000, and piece and kerf. Best alone: most pieces "
     "for a sixteenth of a board's room, nothing else cut from it. Extra worth: three "
     "fifths of what a piece takes more than its length where it is cut alone, as a share of it. "
     "Digit: each place has its own binary digit in the numbers Free.")
sheet.heads({"next": "Cut number", "line": "Pieces", "left": "Piece and kerf",
             "size": "Best alone", "pitch": "Extra worth", "one": "Digit"})
cut_lines = []
for _n in range(1, len(_sources) + 1):
    _line = ledger(f"Cut {_n}", "", "", "Cutting", next=(nth_largest(CUTS, _n), "", 2))
    _key = _line["next"]
    _line.add("line", sum_over((SIZES * BY_SIZE + LENGTHS + kerf).is_(_key) * COUNTS), "", 0)
    _pitch = _line.add("left", greatest(_key - BY_SIZE * whole_down(_key / BY_SIZE), 1), "", 2)
    _fills = _line.add("size", greatest(*(whole_down(u / _pitch) * share for u, share in zip(
        usable, _shares, strict=False))), "", 6)
    _line.add("pitch", (TENTHS / greatest(_pitch * _fills * TENTHS, 1) - 1) * 3 / 5, "", 4)
    _line.add("one", 2 ** max(len(source_lines) - _n, 0), "", 0)
    cut_lines.append(_line)
KEYS, TOGETHER, EXTRA, DIGITS = (
    Series(name, [line[column] for line in cut_lines]) for name, column in (
        ("key", "next"), ("together", "line"), ("extra", "pitch"), ("digit", "one")))
PLACES = Series("digit", [line["one"] for line in cut_lines[:-1]])
"""The digits of the places that can hold a piece: all but the last."""
KINDS_CUT = ledger("Kinds of pieces that are cut", "", "each", "Cutting", line=(
    sum_over(TOGETHER > 0), "", 0))["line"]
