"""Takeoff: every material of the whole dock once: net, spare, whole packs.

Net comes from Parts.  Lumber and deck boards stay in net feet: the cut list buys boards of stock
length.  Orders takes the packs from here and puts prices to them.
"""

from __future__ import annotations

from typing import NamedTuple

from builder.language import Expr, Sheet, bare, joined, least, shown, tally, total, whole_up
from builder.language.rows import LedgerLine

from . import catalog, hardware, mooring, parts, parts_lumber
from . import inputs as job
from . import inputs_site as site
from . import sections as sec
from . import sections_site as held
from .reference import BOLTS, LUMBER, constants

rates = constants("own_rates")
ours = constants("own_terms")

sheet = Sheet("Takeoff", "Materials, whole dock", scope="ledger",
              about="Every material once: net, spare, whole packs. The cut list buys the lumber, "
                    "Orders puts prices to all.",
              columns={"net": "Net", "waste": "Spare, share", "wanted": "With spare",
                       "pack": "In one pack", "packs": "Packs"})
block, note = sheet.block, sheet.note


class Item(NamedTuple):
    """A line to order: its line here, the price of one pack, what is asked of it.

    ``single`` says that a pack is one piece; ``kind`` is ``connector``, ``fastener``, ``pile`` or
    empty, and picks the words on finish or treatment that Orders adds.
    """

    line: LedgerLine
    price: Expr
    single: bool
    kind: str


items: dict[str, list[Item]] = {}
"""Supplier group → its lines, in the order of Orders; lumber and deck boards stand elsewhere."""


def _net(label, spec, net, share, source) -> None:
    """Declare a line in feet that the cut list buys: net, and with spare."""
    line = sheet.ledger(label, spec, "ft", source, net=(net, "ft", 1))
    line.add("wanted", line["net"] * (1 + share), "ft", 1)


def _item(group, label, spec, net, source, price, *, unit="each", share=None, pack=None,
          kind="") -> None:
    """Declare a line bought whole: by the piece or foot, or by the pack; note it for Orders."""
    line = sheet.ledger(label, spec, unit, source, net=(net, unit, 1 if unit == "ft" else 0))
    wanted = line["net"]
    if share is not None:
        line.add("waste", share, "", 2)
        wanted = wanted * (1 + line["waste"])
    if pack is not None:
        line.add("wanted", wanted, unit, 1)
        line.add("pack", pack, unit, 0)
        wanted = line["wanted"] / line["pack"]
    line.add("packs", whole_up(wanted), unit if pack is None else "each", 0)
    items.setdefault(group, []).append(Item(line, price, pack is None, kind))


block("Lumber")
note("Net lengths as cut. The cut list chooses boards; spare boards come on top of it in Orders.")
prices = catalog.LUMBER_PRICES
for _number, _size in enumerate(LUMBER.keys):
    if _size in prices.keys:
        _net(_size, job.timber_wood if LUMBER.entries("timber")[_number] else job.wood,
             total(parts_lumber.by_size[_number], sec.quantity), job.lumber_waste,
             "Parts, lumber by size")

block("Floats")
_floats = catalog.FLOATS
for _number, _model in enumerate(_floats.keys):
    _key = _floats.key_of(_number)
    _entry = _floats.at(_number + 1)
    _item("floats", _model,
          joined("rated ", shown(_entry["rated buoyancy"]), " lb, shell ",
                 shown(_entry["shell"], 3), " in, ", shown(_entry["own weight"]), " lb each"),
          total(parts.floats, sec.quantity, (sec.float_model, _key)), "Parts, floats in all",
          _entry["price"])

block("Decking")
note("A cut panel uses up a whole one. Boards are in net feet: the cut list buys them.")
for _number, _name in enumerate(catalog.PANELS.keys):
    _key = catalog.PANELS.key_of(_number)
    _item("decking", _name, "open deck panel",
          total(parts.panels, sec.quantity, (sec.panel, _key)), "Parts, panels to buy",
          catalog.PANELS.find(_key)["price"], share=job.deck_waste)
for _number, _name in enumerate(catalog.BOARDS.keys):
    _net(_name, "deck board", total(parts_lumber.board_feet, sec.quantity,
                                    (sec.board, catalog.BOARDS.key_of(_number))),
         job.deck_waste, "Parts, boards")
_found = catalog.SUNDRIES.find("Deck screw ", job.deck_screw)
_item("decking", "Deck screws",
      joined(job.deck_screw, " x ", shown(job.deck_screw_length, 1), " in"),
      total(parts.deck_screws, sec.quantity), "Parts, decking pieces", _found["price a pack"],
      share=job.hardware_spare, pack=_found["pack"], kind="fastener")

block("Hardware: angles, brackets and plates")
for _label, _table, _choice, _count in (
    ("Stringer-end angle", catalog.ANGLES, job.stringer_angle, parts.angles),
    ("Corner bracket, inside", catalog.CORNERS, job.corner_inside, parts.corner_inside),
    ("Corner bracket, outside", catalog.CORNERS, job.corner_outside, parts.corner_outside),
    ("Washer plate", catalog.PLATES, job.washer_plate, parts.washer_plates),
):
    _item("hardware", _label, _choice, total(_count, sec.quantity), "Parts, hardware pieces",
          _table.find(_choice)["price"], kind="connector")

block("Hardware: bolts, nuts, washers, lags")
stock = catalog.BOLT_STOCK
thinner = sheet.ledger("Lines of the stock with thinner bolts", job.bolt, "", "Catalog", net=(
    tally(stock, D_below=BOLTS.find(job.bolt)["D"]), "", 0))["net"]
for _number, _count in enumerate(hardware.by_length, start=1):
    _line = stock.at(least(thinner + _number, len(stock.keys)))
    _item("hardware", f"Bolts, length {_number} in stock", _line.key,
          total(_count, sec.quantity), "Hardware, bolts by length", _line["price"],
          share=job.hardware_spare, kind="fastener")
for _label, _words, _spec, _count in (
    ("Nuts", ("Nut ", job.bolt), job.bolt, parts.bolts),
    ("Round washers", ("Washer ", job.bolt), job.bolt, parts.washers),
    ("Float lags", ("Lag ", job.lag), joined(job.lag, " x ", shown(job.lag_length, 1), " in"),
     parts.lags),
    ("Washers under float lags", ("Washer ", job.lag), job.lag, parts.lags),
    ("Skirt screws", ("Skirt screw No.14",), "No.14", parts.skirt_screws),
):
    _found = catalog.SUNDRIES.find(*_words)
    _item("hardware", _label, _spec, total(_count, sec.quantity), "Parts, hardware pieces",
          _found["price a pack"], share=job.hardware_spare, pack=_found["pack"],
          kind="fastener")
for _label, _key, _count in (
    ("Section hinges", "Section hinge", sec.hinges),
    ("Hinge pins", "Hinge pin 3/4", sec.hinges),
    ("Mooring brackets", "Mooring bracket", sec.mooring_brackets),
):
    _item("hardware", _label, _key, total(_count, sec.quantity), "Sections, fittings",
          catalog.SUNDRIES.find(_key)["price a pack"], kind="connector")

block("Anchors")
note("Sizes as typed on Inputs; legs, piles or arms as typed on Sections. A dead weight or chain "
     "not chosen yet counts as none.")
_legs = total(held.holds, sec.quantity)
_pile_length = site.pile_top + job.low_water_depth + site.pile_embedded
_item("anchors", "Mooring chain", joined("Grade 30, ", site.chain, " in"),
      _legs * mooring.CHAINED * site.chain_length, "Inputs, mooring",
      rates.chain_price * site.CHAINS.find(site.chain)["weight in air"], unit="ft")
_item("anchors", "Dead weights",
      joined("concrete, ", shown(site.block_weight), " lb dry, with an eye cast in"),
      _legs * mooring.CHAINED * (site.block_weight > 0), "Inputs, mooring",
      rates.block_price * site.block_weight)
_item("anchors", "Shackles", "no weaker than the chain, pins wired",
      _legs * mooring.CHAINED * ours.shackles_a_leg, "own judgement", rates.shackle_price)
_item("anchors", "Guide piles",
      joined(shown(site.pile_diameter, 1), " in at the bed, ", shown(_pile_length, 1),
             " ft long"),
      _legs * mooring.PILED, "Inputs, mooring", rates.pile_price * _pile_length, kind="pile")
_item("anchors", "Pile hoops", joined("for a pile of ", shown(site.pile_diameter, 1), " in"),
      _legs * mooring.PILED,
      "Sections, legs, piles or arms",
      catalog.SUNDRIES.find("Pile hoop, 12 in pile")["price a pack"], kind="connector")
_item("anchors", "Shore arms or cables", "with their ends and bolts", _legs * mooring.ARMED,
      "Sections, legs, piles or arms", rates.arm_price)

block("Sundries")
for _label, _key, _count in (
    ("Cleats", "Cleat 10 in", sec.cleats),
    ("Cleat backing plates", "Cleat backing plate", sec.cleats),
    ("Corner wheels", "Corner wheel", sec.corner_wheels),
    ("Ladders", "Ladder, 4 steps", sec.ladders),
):
    _item("sundries", _label, _key, total(_count, sec.quantity), "Sections, fittings",
          catalog.SUNDRIES.find(_key)["price a pack"])
_item("sundries", "Bumper", "in lengths as sold", total(sec.bumper, sec.quantity),
      "Sections, fittings", catalog.SUNDRIES.find("Bumper, a foot")["price a pack"]
      * bare(job.bumper_length, "ft"), unit="ft", pack=job.bumper_length)
