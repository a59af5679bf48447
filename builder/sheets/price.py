"""Price: from direct cost to the selling price, the client's total and the payments.

Direct cost D, contingency C = cD, overhead O = o(D + C), break-even B = D + C + O, price before
rounding B/(1 − m) with the margin m, then up to the next step.  Money is rounded where it changes
hands: the selling price, fees, tax and each payment.
"""

from __future__ import annotations

from builder.language import (
    Row,
    Series,
    adopt,
    greatest,
    least,
    sum_over,
    to_cent,
    when,
    whole_down,
    whole_up,
)
from builder.language.cells import DASH

from . import orders, price_direct, rates
from .price_direct import (
    MONEY_HEADS,
    TYPES,
    block,
    bought_tax,
    deck_area,
    delivery,
    labour,
    labour_hours,
    labour_rate,
    ledger,
    materials,
    money,
    named,
    note,
    plant,
    sheet,
    subcontract,
    supplies,
    task_lines,
    trips,
    type_lines,
    working_days,
)
from .reference import own

__all__ = [
    "breakeven", "client_total", "deposit", "labour", "labour_hours", "labour_rate", "markup",
    "materials", "per_ft2", "per_section_type", "profit", "profit_hours", "selling", "shares",
    "sheet", "stages", "task_lines", "trips", "whose", "working_days",
]

terms = rates.terms
FLOOR = terms.least_money
PRICE = "own judgement; Rates"

block("Selling price")
whose = ledger("Prices and rates", when(
    rates.invented, "INVENTED: this price is no offer", "our own"), "", "Rates").spec
direct = money("Direct cost", materials + labour + plant + delivery + subcontract, "Price",
               symbol="D")
contingency = money("Contingency", rates.contingency * direct, PRICE,
                    symbol="C", each=(rates.contingency, "", 3))
overhead = money("Overhead", rates.overhead * (direct + contingency), PRICE,
                 symbol="O", each=(rates.overhead, "", 3))
_inside = rates.permit_place.is_(rates.PLACES.keys[1])
fees_inside = money("Permit and fees, inside the margin", when(_inside, rates.permit_fees, 0),
                    PRICE, symbol="F_i")
breakeven = money("Break-even: selling price that leaves nothing",
                  direct + contingency + overhead + fees_inside, "arithmetic", symbol="B")
_exact = ledger("Price before rounding: break-even over 1 less the margin", "", "$", "arithmetic",
                each=(rates.margin, "", 3),
                cost=(breakeven / (1 - rates.margin), "$", 2))
exact = named(_exact["cost"], "P_0")
markup = ledger("The same as markup on break-even", "margin over 1 less the margin", "",
                "arithmetic", share=(rates.margin / (1 - rates.margin), "", 4))["share"]
named(markup, "k")
selling = money("Selling price, up to the next step", whole_up(exact / rates.price_step)
                * rates.price_step, PRICE, symbol="P", each=(rates.price_step, "$", 0))
_profit = ledger("Profit, rounding up in it", "share of the selling price", "$", "arithmetic",
                 cost=(selling - breakeven, "$", 2))
profit = named(_profit["cost"], "G")
profit_share = _profit.add("share", profit / greatest(selling, FLOOR), "", 4)
fees_outside = money("Permit and fees, at cost outside the margin",
                     when(_inside, 0, to_cent(rates.permit_fees)), PRICE, symbol="F_o")
sales_tax = money("Sales tax", to_cent(rates.tax_rate * rates.taxable_share * selling), PRICE,
                  symbol="T_s", each=(rates.tax_rate, "", 4),
                  share=(rates.taxable_share, "", 3))
client_total = money("Client's total", to_cent(selling + fees_outside + sales_tax), "arithmetic",
                     symbol="T")
selling.chief = client_total.chief = True

block("Deposit and payments")
note("Each is a share of the client's total, to the cent, and never more than is left; the last "
     "takes the rest. The deposit is rounded down, so as not to pass its cap.")
sheet.heads({"each": "Still to pay", "hours": "Share", "share": DASH})
_cap_share = rates.deposit_cap_share * client_total
deposit_most = money("Deposit, most that is allowed", least(
    when(rates.deposit_cap > 0, rates.deposit_cap, client_total),
    when(rates.deposit_cap_share > 0, _cap_share, client_total)), "Rates", symbol="Z_max")
_names = ("Deposit, on signing", *rates.STAGES, "Last, on handing over")
_line = ledger(_names[0], "", "$", "Rates", each=(client_total, "$", 2),
               hours=(rates.deposit_share, "", 3),
               cost=(whole_down((least(rates.deposit_share * client_total, deposit_most)
                                  + own.cent_down) * 100) / 100, "$", 2))
deposit = named(_line["cost"], "Z_0")
named(_line["each"], "R_0")
stages: list[tuple[str, Row]] = [(_names[0], deposit)]
"""Name and amount of each payment, the deposit first, the last taking the rest."""
for _k, (_name, _share) in enumerate(zip(_names[1:], (*rates.stage_shares, None),
                                         strict=True), start=1):
    _left = _line["each"] - _line["cost"]
    _line = ledger(_name, "", "$", "Rates", each=(to_cent(_left), "$", 2))
    named(_line["each"], f"R_{_k}")
    if _share is None:
        _amount = _line["each"]
    else:
        _line.add("hours", _share, "", 3)
        _amount = least(_share * client_total, _line["each"])
    _line.add("cost", to_cent(_amount), "$", 2)
    stages.append((_name, named(_line["cost"], f"Z_{_k}")))
paid = money("Payments, in all", sum_over(Series("payments", [amount for _, amount in stages])),
             "arithmetic")
unpaid = money("Client's total less payments: nothing", to_cent(client_total - paid), "arithmetic")
deposit.chief = True

block("By the square foot and by the section")
note("A section's price is its share of the selling price by deck area: a way to compare offers, "
     "not what it costs to leave one out. Permit outside the margin and tax are not in it.")
sheet.heads({"quantity": "Built", "each": "Deck, ft²", "hours": DASH, "cost": "One section",
             "share": "Share, all of the type"})
_area = greatest(deck_area, own.least_area)
per_ft2 = ledger("A square foot of deck", "selling price over deck area", "$/ft²", "arithmetic",
                 each=(deck_area, "ft²", 1), cost=(selling / _area, "$/ft²", 2))["cost"]
per_section_type: dict[str, Row] = {}
"""Type letter → selling price of one section."""
for _letter, _type in zip(TYPES, type_lines, strict=True):
    _line = ledger(f"One section of type {_letter}", "by deck area", "$", "arithmetic",
                   quantity=(_type["quantity"], "each", 0), each=(_type["each"], "ft²", 1))
    _line.add("cost", per_ft2 * _line["each"], "$", 2)
    _line.add("share", _line["quantity"] * _line["each"] / _area, "", 3)
    per_section_type[_letter] = _line["cost"]

block("What the selling price is made of")
sheet.heads(MONEY_HEADS)
shares: dict[str, Row] = {}
"""Group → its share of the selling price; they add up to 1."""
_parts = {
    **{group: (group.capitalize(), cost) for group, cost in orders.group_cost.items()},
    "supplies": ("Small supplies and tax on materials", supplies + bought_tax),
    "labour": ("Labour", labour), "plant": ("Plant", plant), "delivery": ("Delivery", delivery),
    "subcontract": ("Bought in", subcontract), "contingency": ("Contingency", contingency),
    "overhead": ("Overhead", overhead), "fees": ("Permit and fees, inside", fees_inside),
    "profit": ("Profit", profit),
}
for _key, (_label, _cost) in _parts.items():
    _line = ledger(_label, "", "$", "Price", cost=(_cost, "$", 2))
    shares[_key] = _line.add("share", _line["cost"] / greatest(selling, FLOOR), "", 4)
shares_sum = ledger("All shares", "", "", "arithmetic", share=(
    sum_over(Series("shares", list(shares.values()))), "", 4))["share"]
profit_hours = ledger("Hours of work over the reckoning that would eat the profit",
                      "profit over the cost of an hour", "h", "arithmetic",
                      hours=(profit / labour_rate, "h", 1))["hours"]

adopt(price_direct)
