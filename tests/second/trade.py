"""The trade, second calculation: takeoff, cut list, orders, price and payments of the whole dock.

Results are named as ``trade_names`` says.  What Parts, Weight and Hardware count on one section
comes from ``done`` of each type in ``g.all``.  The boards that the saw's rule chooses, lines
"CutList.Boards <n>", come from ``done`` and are held against what must be true of any choice by
``trade_boards.faults``; where they are not there, nothing is said of lumber to buy, and its cost
comes from ``done`` as "Orders.group_cost_lumber".
"""

from __future__ import annotations

from tests.second import trade_boards, trade_cutting, trade_orders, trade_price, trade_takeoff
from tests.second.given import Given


def work(g: Given, done: dict[str, float | str]) -> dict[str, float | str]:
    """Return the results of Takeoff, Cutting, Cut list, Orders and Price."""
    found: dict[str, float | str] = {}
    for sheet in (trade_takeoff, trade_cutting, trade_boards, trade_orders, trade_price):
        found |= sheet.work(g, {**done, **found})
    return found
