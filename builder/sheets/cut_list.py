"""Cut list: what to cut, from which boards, and which boards to buy.

The choice of boards is made on Cutting; here it is put into the words of the saw and the yard.
"""

from __future__ import annotations

from builder.language import (
    Series,
    Sheet,
    at_place,
    bare,
    feet_inches,
    greatest,
    joined,
    largest,
    least,
    nth_largest,
    of_type,
    place_of,
    shown,
    sum_over,
    total,
    when,
    whole_down,
)
from builder.language.cells import DASH

from . import catalog, parts, parts_lumber
from . import cut_list_boards as cutting
from . import cut_list_deck as deck
from . import cut_list_order as order
from . import sections as sec
from .cut_list_order import FOOT, INCH, MARKS, TYPES
from .inputs_buying import ours
from .reference import LUMBER

sheet = Sheet("CutList", "What to cut, from which boards, and what to buy", scope="ledger",
              about="Pieces of the whole dock, boards to cut them from, boards to buy. Treat "
                    "every cut end. Lengths are net: measure the frame before the last cuts.",
              columns={"code": "Code", "length": "Length", "size": "Size", "stock": "Stock",
                       "boards": "Boards", "feet": "Feet", "board_feet": "Board feet",
                       "price": "Price, a foot"}, widths=(30, 30, 11.5))
block, note, ledger = sheet.block, sheet.note, sheet.ledger

PRICES = catalog.LUMBER_PRICES
if PRICES.keys != LUMBER.keys:
    raise ValueError("lumber_prices.csv has not the sizes of lumber_sizes.csv in their order")
INCHES = 12
"""Inches in a foot."""
LUMBER_LINES = 20
"""Lines of boards to buy there is room for."""


def _size_text(line):
    """Return the size that stands in a line of lumber sizes; the first for line 0."""
    return LUMBER.at(greatest(line, 1)).key


def _live(line, name: str):
    """Give a line with live words a name for messages."""
    line.label.label = name
    return line


block("Pieces, by size and falling length")
note("Mark: section type, then R rail ply, H header, S stringer, C cross-beam, L and K skirt on "
     "long and short sides. Longer than the yard sells: equal pieces, spliced.")
sheet.heads({"code": "", "size": "Count", "stock": "", "boards": "", "feet": "", "board_feet": "",
             "price": "", "length": "Length"})
piece_lines = []
for _n, _from in enumerate(order.order_lines[:-1], start=1):
    _is, _place = _from["line"] > 0, _from["next"]
    _line = _live(ledger(
        when(_is, joined(_size_text(_from["line"]), ", ", MARKS.at(_place)["piece"]), DASH),
        when(_is, MARKS.at(_place).key, DASH), "", "Cutting"), f"Piece {_n}")
    _line.add("size", at_place(order.COUNTS, _place), "each", 0)
    _line.add("length", when(_is, feet_inches(_from["left"]), DASH), "text")
    piece_lines.append(_line)

block("Boards, in the order they are cut")
note("Each line: so many boards, and what each of them gives. Marks of pieces alike in size and "
     "length go by the first of them. Keep offcuts until the list is through.")
sheet.heads({"code": "Second", "size": "Boards", "length": "Offcut, in"})
cut_lines = []
for _n, _from in enumerate(cutting.board_lines, start=1):
    _is = _from["boards"] > 0

    def _mark(place):
        return MARKS.at(place_of(order.CUTS, at_place(order.KEYS, place))).key

    _line = _live(ledger(
        when(_is, joined(_size_text(least(cutting.size_of(_from), len(LUMBER.keys))), ", ",
                         shown(cutting.stock_of(_from)),
                         " ft"), DASH),
        when(_is, joined(shown(_from["pieces"]), " of ", _mark(_from["main"])), DASH),
        "", "Cutting"), f"Boards {_n}")
    _line.add("code", when(_from["second_pieces"] * _from["boards"] > 0,
                           joined(shown(_from["second_pieces"]), " of ",
                                  _mark(_from["second"])), DASH), "text")
    _line.add("size", _from["boards"], "each", 0)
    _line.add("length", (_from["boards"] > 0) * greatest(
        cutting.stock_of(_from) * FOOT - order.trim - _from["need"], 0) / INCH, "", 3)
    cut_lines.append(_line)

block("Lumber to buy")
note("Spare boards come on top in Orders.")
sheet.heads({"code": "Code", "size": "Size", "stock": "Stock", "boards": "Boards", "feet": "Feet",
             "board_feet": "Board feet", "price": "Price, a foot", "length": "Line of size"})
buy = []
"""Boards to buy: a line for each size and stock length."""
for _n in range(1, LUMBER_LINES + 1):
    _line = ledger(f"Lumber {_n}", "", "ft", "Cutting")
    if buy:
        _code = nth_largest(cutting.CODES, least(
            1 + sum_over(cutting.CODES >= buy[-1]["code"]), cutting.LINES))
    else:
        _code = largest(cutting.CODES)
    _code = _line.add("code", _code, "", 0)
    _feet = _code - cutting.BY_STOCK * whole_down(_code / cutting.BY_STOCK)
    _number = _line.add("length", least(
        greatest(whole_down(_code / cutting.BY_STOCK), 1), len(LUMBER.keys)), "", 0)
    _line.add("size", when(_code > 0, _size_text(_number), DASH), "text")
    _line.add("stock", when(_code > 0, joined(shown(_feet), " ft"), DASH), "text")
    _line.add("boards", (_code > 0) * sum_over(cutting.CODES.is_(_code) * cutting.BOARDS),
              "each", 0)
    _line.add("feet", _line["boards"] * _feet * ours.one_foot, "ft", 0)
    _size = LUMBER.at(_number)
    _line.add("board_feet", ours.one_board_foot * bare(_line["feet"], "ft")
              * bare(_size["nominal thickness"], "in") * bare(_size["nominal width"], "in")
              / INCHES, "bd ft", 0)
    _line.add("price", (_code > 0) * PRICES.at(_number)["price per foot"], "$/ft", 2)
    buy.append(_line)
_boards, _feet, _board_feet = (Series(name, [line[name] for line in buy])
                               for name in ("boards", "feet", "board_feet"))
not_listed = ledger("Boards not listed above; must be 0", "", "each", "Cutting", boards=(
    sum_over(cutting.BOARDS) - sum_over(_boards), "each", 0))["boards"]
not_reached = ledger("Pieces that found no room on Cutting; must be 0", "buy these besides",
                     "each", "Cutting", boards=(cutting.left_over, "each", 0))["boards"]
feet_bought = ledger("Lumber bought", "", "ft", "Cutting", feet=(
    cutting.FEET_BOUGHT * ours.one_foot, "ft", 0))["feet"]
feet_bought.chief = True
feet_net = ledger("Lumber in pieces", "", "ft", "Cutting", feet=(
    sum_over(order.LENGTHS * order.COUNTS) * ours.one_foot / FOOT, "ft", 1))["feet"]
waste = ledger("Offcuts and kerfs, share of what is bought", "", "", "Cutting", feet=(
    (feet_bought - feet_net) / greatest(feet_bought, ours.one_foot), "", 3))["feet"]
board_feet = ledger("Board feet, by nominal size", "", "bd ft", "PS 20", board_feet=(
    sum_over(_board_feet), "bd ft", 0))["board_feet"]
sheet.heads({"feet": "Feet in Parts"})
_in_parts = Series("parts", [
    ledger(f"Parts: {name.lower()}", "", "ft", "Parts, lumber by use",
           feet=(total(x, sec.quantity), "ft", 1))["feet"]
    for (name, *_), x in zip(parts_lumber.uses, parts_lumber.feet, strict=True)])
difference = ledger("Difference from Parts but for rounded sixteenths; must be 0", "", "ft",
                    "Parts", feet=(feet_net - sum_over(_in_parts), "ft", 1))["feet"]

block("Deck boards to buy")
note("Boards meet on stringers: full pieces reach the last stringer that the longest board "
     "reaches, the last piece of a line takes the rest.")
sheet.heads({"code": "Pieces", "size": "Board", "stock": "Stock", "boards": "Boards",
             "feet": "Feet", "board_feet": "Board feet", "price": "Price, a foot",
             "length": "Length"})
deck_buy = []
"""Deck boards to buy: a line for each type and length of piece."""
for _n, _from in enumerate(deck.deck_lines):
    _letter, _is = TYPES[_n // 2], _from["next"] > 0
    _line = ledger(_from.label, "", "ft", "Cutting")
    _product = of_type(sec.board, _letter)
    _number = of_type(parts.board_line, _letter)
    _line.add("code", _from["next"], "each", 0)
    _line.add("size", when(_is, _product, DASH), "text")
    _line.add("stock", when(_is, joined(shown(bare(_from["pitch_2"], "ft")), " ft"), DASH),
              "text")
    _line.add("boards", _from["one_2"], "each", 0)
    _line.add("feet", _line["boards"] * _from["pitch_2"], "ft", 0)
    _board = catalog.BOARDS.at(greatest(_number, 1))
    _line.add("price", _is * _board["price per foot"], "$/ft", 2)
    _line.add("length", when(_is, feet_inches(_from["line"]), DASH), "text")
    deck_buy.append(_line)
deck_feet = ledger("Deck boards bought", "", "ft", "Cutting", feet=(
    sum_over(Series("feet", [line["feet"] for line in deck_buy])), "ft", 0))["feet"]
