"""Takeoff: what to order for the whole dock, each material once, in whole packs.

Net comes from Parts; waste is added; packs are rounded up; prices are the catalog's.
"""

from __future__ import annotations

from builder.language import Series, Sheet, bare, least, sum_over, tally, total, whole_up

from . import catalog, hardware, parts, parts_lumber
from . import inputs as job
from . import sections as sec
from .reference import BOLTS, LUMBER

sheet = Sheet("Takeoff", "Materials to order, whole dock", scope="ledger",
              about="Net, waste, whole packs and cost of every material; prices are invented "
                    "until yours are typed on Catalog.",
              columns={"net": "Net", "waste": "Waste", "wanted": "With waste",
                       "pack": "In one pack", "packs": "Packs", "order": "To order",
                       "price": "Price a pack", "cost": "Cost"})
block, note = sheet.block, sheet.note

costs: dict[str, list] = {}


def item(group, label, spec, unit, net, waste, pack, price, source, pack_unit=None):
    """Declare one line: net, waste, packs, cost; it is added to its group's costs."""
    line = sheet.ledger(label, spec, unit, source, net=(net, unit, 1 if unit == "ft" else 0),
                        waste=(waste, "", 2), pack=(pack, pack_unit or unit, 0),
                        price=(price, "$", 2))
    net_row, waste_row, pack_row = line["net"], line["waste"], line["pack"]
    line.add("wanted", net_row * (1 + waste_row), unit, 1)
    line.add("packs", whole_up(line["wanted"] / pack_row), "each", 0)
    line.add("order", line["packs"] * pack_row, unit, 0)
    line.add("cost", line["packs"] * line["price"], "$", 2)
    costs.setdefault(group, []).append(line["cost"])
    return line


block("Lumber")
note("Boards of the longest stock length the yard sells; the cut list will choose lengths.")
prices = catalog.LUMBER_PRICES
for number, size in enumerate(LUMBER.keys):
    if size in prices.keys:
        item("Lumber", size, job.wood, "ft",
             total(parts_lumber.by_size[number], sec.quantity), job.lumber_waste,
             job.longest_stock,
             prices.find(prices.key_of(prices.keys.index(size)))["price per foot"]
             * job.longest_stock, "Parts, lumber by size")

block("Floats")
floats = catalog.FLOATS
for number, model in enumerate(floats.keys):
    key = floats.key_of(number)
    item("Floats", model, "", "each", total(parts.floats, sec.quantity, (sec.float_model, key)),
         0, 1, floats.find(key)["price"], "Parts, floats in all")

block("Decking")
note("A cut panel uses up a whole one. Boards are bought by the stock length.")
for number, name in enumerate(catalog.PANELS.keys):
    key = catalog.PANELS.key_of(number)
    item("Decking", name, "", "each", total(parts.panels, sec.quantity, (sec.panel, key)),
         job.deck_waste, 1, catalog.PANELS.find(key)["price"], "Parts, panels to buy")
for number, name in enumerate(catalog.BOARDS.keys):
    key = catalog.BOARDS.key_of(number)
    item("Decking", name, "", "ft", total(parts_lumber.board_feet, sec.quantity, (sec.board, key)),
         job.deck_waste, job.longest_stock,
         catalog.BOARDS.find(key)["price per foot"] * job.longest_stock, "Parts, boards")

block("Angles, brackets and plates")
for label, table, choice, count in (
    ("Stringer-end angle", catalog.ANGLES, job.stringer_angle, parts.angles),
    ("Corner bracket, inside", catalog.CORNERS, job.corner_inside, parts.corner_inside),
    ("Corner bracket, outside", catalog.CORNERS, job.corner_outside, parts.corner_outside),
    ("Washer plate", catalog.PLATES, job.washer_plate, parts.washer_plates),
):
    item("Hardware", label, choice, "each", total(count, sec.quantity), 0, 1,
         table.find(choice)["price"], "Parts, hardware pieces")

block("Bolts")
note("Every length in stock of the chosen diameter, shortest first.")
stock = catalog.BOLT_STOCK
thinner = tally(stock, D_below=BOLTS.find(job.bolt)["D"])
for number, count in enumerate(hardware.by_length, start=1):
    line = stock.at(least(thinner + number, len(stock.keys)))
    item("Bolts", f"Bolts, length {number} in stock", line.key, "each",
         total(count, sec.quantity), job.hardware_spare, 1, line["price"],
         "Hardware, bolts by length")

block("Fasteners")
sundries = catalog.SUNDRIES
for label, words, choice, count in (
    ("Nuts", ("Nut ", job.bolt), job.bolt, parts.bolts),
    ("Round washers", ("Washer ", job.bolt), job.bolt, parts.washers),
    ("Float lags", ("Lag ", job.lag), job.lag, parts.lags),
    ("Washers under float lags", ("Washer ", job.lag), job.lag, parts.lags),
    ("Deck screws", ("Deck screw ", job.deck_screw), job.deck_screw, parts.deck_screws),
    ("Skirt screws", ("Skirt screw No.14",), "No.14", parts.skirt_screws),
):
    found = sundries.find(*words)
    item("Fasteners", label, choice, "each", total(count, sec.quantity), job.hardware_spare,
         found["pack"], found["price a pack"], "Parts, hardware pieces")

block("Fittings")
for label, key, count in (
    ("Section hinges", "Section hinge", sec.hinges),
    ("Hinge pins", "Hinge pin 3/4", sec.hinges),
    ("Mooring brackets", "Mooring bracket", sec.mooring_brackets),
    ("Cleats", "Cleat 10 in", sec.cleats),
    ("Cleat backing plates", "Cleat backing plate", sec.cleats),
    ("Corner wheels", "Corner wheel", sec.corner_wheels),
    ("Ladders", "Ladder, 4 steps", sec.ladders),
):
    found = sundries.find(key)
    item("Fittings", label, key, "each", total(count, sec.quantity), 0, found["pack"],
         found["price a pack"], "Sections, fittings")
found = sundries.find("Bumper, a foot")
item("Fittings", "Bumper", "Bumper, a foot", "ft", total(sec.bumper, sec.quantity), 0,
     job.bumper_length, found["price a pack"] * bare(job.bumper_length, "ft"),
     "Sections, fittings")

block("Cost of materials")
note("Without labour, delivery, permit, overhead and tax.")
shares = [sheet.ledger(f"{group}, in all", "", "$", "Takeoff",
                       cost=(sum_over(Series(group, lines)), "$", 2))["cost"]
          for group, lines in costs.items()]
materials = sheet.ledger("Materials, in all", "", "$", "Takeoff",
                         cost=(sum_over(Series("cost", shares)), "$", 2))["cost"]
materials.chief = True
