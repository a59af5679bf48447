"""Price, first part: what is built, materials, labour by task, plant, delivery, bought-in work."""

from __future__ import annotations

from builder.language import (
    Row,
    Series,
    Sheet,
    any_of,
    greatest,
    largest,
    least,
    of_type,
    sum_over,
    total,
    when,
    whole_down,
    whole_up,
)

from . import inputs as job
from . import inputs_site as site
from . import inputs_yard as road
from . import orders, parts, rates, weight
from . import sections as sec
from . import sections_site as held
from .reference import DECKS, own

sheet = Sheet("Price", "Price, from cost to payments", scope="ledger",
              about="Direct cost, contingency, overhead, profit as margin on the selling price, "
                    "tax, payments. No cent is rounded before money changes hands.",
              columns={"quantity": "Quantity", "each": "Each", "hours": "Hours",
                       "cost": "Amount", "share": "Share"})
block, note, ledger = sheet.block, sheet.note, sheet.ledger

TYPES = tuple("ABCDEF")
MONEY_HEADS = {"quantity": "Quantity", "each": "Each", "hours": "Hours", "cost": "Amount",
               "share": "Share"}


def named(row: Row, symbol: str) -> Row:
    """Give a quantity of a line the symbol that formulas show for it."""
    row.symbol = symbol
    return row


def money(label: str, expr, source: str, spec="", symbol: str = "", **more) -> Row:
    """Declare a line with an amount of money; return the amount."""
    return named(ledger(label, spec, "$", source, **more, cost=(expr, "$", 2))["cost"], symbol)


block("What is built")
note("On the road: a section's sides; in pieces, its longest board and its float, as on Setout.")
sheet.heads({"quantity": "Built", "each": "Deck, ft²", "hours": "Weight, lb",
             "cost": "Road: long, ft", "share": "Road: wide, ft"})
WHOLE = road.carried.is_(road.CARRIED.keys[0])
_length, _width = parts.overall_length, parts.overall_width
type_lines = [
    ledger(f"Section type {k}", of_type(sec.purpose, k), "", "Sections, Parts, Weight",
           quantity=(of_type(sec.quantity, k), "each", 0),
           each=(of_type(parts.deck_area, k), "ft²", 1),
           hours=(of_type(weight.launch, k), "lb", 0),
           cost=(when(WHOLE, greatest(of_type(_length, k), of_type(_width, k)),
                      of_type(parts.longest_piece, k)), "ft", 1),
           share=(when(WHOLE, least(of_type(_length, k), of_type(_width, k)),
                       least(of_type(parts.float_l, k), of_type(parts.float_b, k))), "ft", 1))
    for k in TYPES]
_built, _deck, _weight, _long, _short = (
    Series(name, [line[name] for line in type_lines])
    for name in ("quantity", "each", "hours", "cost", "share"))
_all = ledger("The whole dock; longest and widest", "", "", "Price",
              quantity=(sum_over(_built), "each", 0), each=(sum_over(_built * _deck), "ft²", 1),
              hours=(sum_over(_built * _weight), "lb", 0), cost=(largest(_long), "ft", 1),
              share=(largest(_short), "ft", 1))
sections, deck_area, all_weight = _all["quantity"], _all["each"], _all["hours"]
longest, widest = _all["cost"], _all["share"]

block("Materials")
note("Orders has waste and spares in; small supplies and tax paid on buying come on top.")
sheet.heads(MONEY_HEADS)
material_lines = {group: money(group.capitalize(), cost, "Orders")
                  for group, cost in orders.group_cost.items()}
supplies = money("Small supplies", rates.small_supplies * orders.materials, "Rates",
                 each=(rates.small_supplies, "", 3))
bought_tax = money("Sales tax paid on materials",
                   rates.purchase_tax * (orders.materials + supplies), "Rates",
                   each=(rates.purchase_tax, "", 4))
materials = money("Materials, in all", orders.materials + supplies + bought_tax, "Orders, Rates",
                  symbol="M")

block("Labour, by task")
note("Quantity × hours each × what an hour costs with its burden. Hours are those of one worker.")
labour_rate = ledger("An hour of one worker with its burden", "", "$/h", "Rates",
                     each=(rates.wage * (1 + rates.burden), "$/h", 2))["each"]
named(labour_rate, "w_β")
_n = sec.quantity
TASKS = (
    ("site", "Site visit, measuring, setting out", 1, "each"),
    ("papers", "Drawings, permit papers, ordering", 1, "each"),
    ("rails", "Rail plies and headers", total(parts.rails, _n) + total(parts.headers, _n),
     "each"),
    ("stringers", "Stringers and cross-beams",
     total(parts.stringers, _n) + total(sec.cross_beams, _n), "each"),
    ("ends", "Stringer ends", total(parts.stringer_ends, _n), "each"),
    ("corners", "Corners", total(parts.corner_inside, _n), "each"),
    ("plies", "Bolts joining plies", total(parts.ply_bolts, _n), "each"),
    ("skirts", "Skirt boards, places fastened", total(parts.skirt_places, _n), "each"),
    ("floats", "Floats", total(parts.floats, _n), "each"),
    ("panels", "Deck panels", total(parts.deck_area, _n, (sec.deck, DECKS.key_of(0))), "ft²"),
    ("boards", "Deck boards", total(parts.deck_area, _n, (sec.deck, DECKS.key_of(1))), "ft²"),
    ("fittings", "Hinges, mooring brackets, cleats",
     total(sec.hinges, _n) + total(sec.mooring_brackets, _n) + total(sec.cleats, _n), "each"),
    ("wheels", "Corner wheels and ladders",
     total(sec.corner_wheels, _n) + total(sec.ladders, _n), "each"),
    ("bumper", "Bumper, lengths", total(sec.bumper, _n) / job.bumper_length, "each"),
    ("load", "Sections loaded and unloaded", sections, "each"),
    ("launch", "Sections launched and levelled", sections, "each"),
    ("mooring", "Legs, piles or arms", total(held.holds, _n), "each"),
    ("gangway", "Gangway set", when(site.gangway_length > 0, 1, 0), "each"),
    ("clean", "Clearing up, record, handing over", 1, "each"),
    ("travel", "Travel, working visits", rates.visits, "each"),
    ("other", "Other work", 1, "each"),
)
"""Key of the hours on Rates, what is done, how many, unit."""
task_lines = {}
for _key, _label, _count, _unit in TASKS:
    _line = ledger(_label, "", _unit, "Parts, Sections, Rates", quantity=(_count, _unit, 0))
    _line.add("each", rates.hours[_key], rates.hours[_key].unit, 3)
    _line.add("hours", _line["quantity"] * _line["each"], "h", 1)
    _line.add("cost", _line["hours"] * labour_rate, "$", 2)
    task_lines[_key] = _line
_labour = ledger("Labour, in all", "", "$", "Price",
                 hours=(sum_over(Series("hours", [x["hours"] for x in task_lines.values()])),
                        "h", 1),
                 cost=(sum_over(Series("labour", [x["cost"] for x in task_lines.values()])),
                       "$", 2))
labour_hours, labour = named(_labour["hours"], "H"), named(_labour["cost"], "L")
working_days = ledger("Working days of the crew", "", "each", "Rates",
                      quantity=(labour_hours / (rates.crew * rates.day_hours), "", 1))["quantity"]

block("Plant")
_lift = ledger("Crane or loader", "hours by sections", "$", "Rates",
               quantity=(sections, "each", 0), each=(rates.lift_rate, "$/h", 2),
               hours=(sections * rates.lift_hours, "h", 1))
plant_lines = [
    _lift.add("cost", _lift["hours"] * _lift["each"], "$", 2),
    money("Workboat or barge", task_lines["mooring"]["quantity"] * rates.barge_leg, "Rates",
          quantity=(task_lines["mooring"]["quantity"], "each", 0),
          each=(rates.barge_leg, "$", 2)),
    money("Small tools and fuel", rates.small_tools * labour, "Rates",
          each=(rates.small_tools, "", 3)),
    money("Other plant", rates.plant_other, "Rates"),
]
plant = money("Plant, in all", sum_over(Series("plant", plant_lines)), "Price",
              symbol="E")

block("Delivery, by weight and size")
heaviest = ledger("Heaviest section", when(
    WHOLE * (largest(_weight) > road.trailer_payload),
    "more than the trailer may carry: split or hire", "within what the trailer may carry"),
    "lb", "Weight",
    quantity=(largest(_weight), "lb", 0))["quantity"]
oversize = ledger("Long or wide load: 1 yes, 0 no", "longest and widest on the road decide",
                  "", "Rates", quantity=(when(any_of(
                      longest > road.trailer_length + road.trailer_overhang,
                      widest > road.road_width.in_("ft")), 1, 0), "", 0))["quantity"]
_by_weight = ledger("Trips by weight", "", "each", "Rates", quantity=(
    whole_up(all_weight / road.trailer_payload), "each", 0))["quantity"]
_by_size = ledger("Trips by sections on one load", "", "each", "Rates", quantity=(
    whole_up(sections / rates.sections_a_load), "each", 0))["quantity"]
note("A section that goes whole is not split between loads: trips are then also the loads that "
     "each type fills, added up; sections of two types may share one.")
sheet.heads(MONEY_HEADS | {"quantity": "By weight", "each": "On one load"})
_loads = []
for _k, _type in zip(TYPES, type_lines, strict=True):
    _line = ledger(f"Type {_k}: whole sections on one load", "at most as typed, at least one",
                   "each", "Rates")
    _line.add("quantity", whole_down(
        road.trailer_payload / greatest(_type["hours"], own.least_weight)), "each", 0)
    _loads.append(_line.add("each", greatest(
        least(_line["quantity"], rates.sections_a_load), 1), "each", 0))
sheet.heads(MONEY_HEADS)
_whole = ledger("Trips, no section split", "0 in pieces", "each", "arithmetic", quantity=(
    WHOLE * whole_up(sum_over(_built / Series("a", _loads))), "each", 0))["quantity"]
trips = ledger("Trips, the greatest", "", "each", "arithmetic", quantity=(
    greatest(_by_weight, _by_size, _whole), "each", 0))["quantity"]
_trip = ledger("Truck and trailer, there and back", "a trip", "$", "Rates",
               quantity=(trips, "each", 0),
               each=(rates.trip_cost + 2 * rates.miles * rates.mile_cost, "$", 2))
delivery_lines = [
    _trip.add("cost", _trip["quantity"] * _trip["each"], "$", 2),
    money("Handling by weight", all_weight * rates.weight_cost, "Rates",
          quantity=(all_weight, "lb", 0), each=(rates.weight_cost, "$/lb", 3)),
    money("Permit and flags of a long or wide load", trips * oversize * rates.oversize_cost,
          "Rates", quantity=(trips * oversize, "each", 0), each=(rates.oversize_cost, "$", 2)),
]
delivery = money("Delivery, in all", sum_over(Series("delivery", delivery_lines)), "Price",
                 symbol="V")

block("Bought-in work and things")
bought_lines = [money(label, rates.bought[key], "Rates") for key, label in rates.BOUGHT]
subcontract = money("Bought in, in all", sum_over(Series("bought", bought_lines)), "Price",
                    symbol="S")
