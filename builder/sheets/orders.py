"""Orders: one list by supplier group, in whole boards and packs, that a yard can quote from.

A price typed in the yard's column overrules the catalog's.  Boards come from the cut list, with
spare boards on top; all else from Takeoff.
"""

from __future__ import annotations

from builder.language import (
    Ask,
    Row,
    Series,
    Sheet,
    any_of,
    at_place,
    greatest,
    joined,
    nearest,
    sum_over,
    when,
)
from builder.language.cells import DASH

from . import catalog, cut_list, takeoff
from . import inputs as job
from .reference import FINISHES, LUMBER, WATERS, constants, irc

rates = constants("own_rates")

sheet = Sheet("Orders", "What to order, by supplier", scope="ledger",
              about="Whole boards and packs with words a yard can quote from. Catalog prices are "
                    "invented: type the yard's where you have one, it overrules them.",
              columns={"packs": "To order", "count": "In all", "catalog": "Catalog price",
                       "yard": "Yard's price", "yard_state": "State", "yard_used": "Price used",
                       "cost": "Cost"}, widths=(34, 36, 12))
block, note = sheet.block, sheet.note

MONEY_MOST = catalog.MONEY[1]
YARD = "yard's quotation; blank takes the catalog's"
LEAD_MOST = 104

yard_price: dict[str, Ask] = {}
"""Supplier group and number of the line → the yard's price."""
costs: dict[str, list[Row]] = {}


def _bought(group: str, line, catalog_price, unit: str, amount: str) -> None:
    """Add catalog price, yard's price and cost to a line, and the cost to its group."""
    line.add("catalog", catalog_price, unit, 2)
    own = costs.setdefault(group, [])
    price = line.ask("yard", 0, MONEY_MOST, unit, 2, YARD, default=line["catalog"])
    line.add("cost", line[amount] * price, "$", 2)
    own.append(line["cost"])
    yard_price[f"{group}_{len(own)}"] = price


def _boards(group: str, cuts, spare: Row, spec) -> None:
    """Declare the lines of boards of a cut list; ``spec`` gives the words of a line."""
    for number, cut in enumerate(cuts, start=1):
        name = when(cut["boards"] > 0, joined(cut["size"], ", ", cut["stock"]), DASH)
        line = sheet.ledger(name, spec(cut), "each", "Cut list")
        # Live words have no name of their own to stand in the formulas of the line.
        line.label.label = f"{group}, line {number}"
        line.add("packs", cut["boards"] + nearest(cut["boards"] * spare, 1), "each", 0)
        line.add("count", line["packs"] * cut["feet"] / greatest(cut["boards"], 1), "ft", 0)
        _bought(group, line, cut["price"] * (cut["boards"] > 0), "$/ft", "count")


def _pieces(group: str) -> None:
    """Declare the lines of a group of Takeoff, with the words on finish or treatment they ask."""
    for item in takeoff.items[group]:
        spec = joined(item.line.spec, "; ", asked[item.kind]) if item.kind else item.line.spec
        line = sheet.ledger(item.line.label, spec, item.line.unit, item.line.source)
        line.add("packs", item.line["packs"], item.line["packs"].unit, 0)
        if not item.single:
            line.add("count", item.line["packs"] * item.line["pack"], item.line.unit, 0)
        unit = "$/ft" if item.line["packs"].unit == "ft" else "$"
        _bought(group, line, item.price, unit, "packs")


def _words(label: str, words, source: str) -> Row:
    """Declare a line of words that other lines take up."""
    return sheet.ledger(label, words, "", source).spec


block("What to ask every yard for")
note("Lumber and bolts come in these words on every line below. Treat cut ends and holes in the "
     "field. What lies in salt water all the time is ordered to the second use category.")
_salt = [job.water.is_(WATERS.key_of(k)) for k, salt in enumerate(WATERS.entries("salt")) if salt]
use_above = _words("Use category of treated wood, in air and splash",
                   when(any_of(*_salt, job.salt_distance <= irc.salt_distance), "UC4B", "UC4A"),
                   "AWPA U1")
use_below = _words("Use category of treated wood, in the water",
                   when(any_of(*_salt), "UC5", "UC4A"), "AWPA U1")
_treated = (", ", job.sawn, ", pressure treated to ", use_above, ", tag on every board")
lumber_words = [
    _words("Line without boards", joined(DASH), ""),
    _words("Framing lumber, 2 to 4 in thick", joined(job.wood, *_treated), "AWPA U1"),
    _words("Timbers, 5 x 5 in and larger", joined(job.timber_wood, *_treated), "AWPA U1"),
]
"""What a line of lumber says: nothing, or the words for its size; in this order, one below the
other."""
deck_words = _words("Deck boards", joined("deck board; if treated, to ", use_above, ", tagged"),
                    "AWPA U1")
_finish = FINISHES.find(job.finish)
fastener_words = _words("Bolts, nuts, washers, lags, screws",
                        joined(job.finish, ", ", _finish["fasteners"]), "IRC 2015 R317.3")
connector_words = _words("Brackets, angles, plates, hinges",
                         joined(job.finish, ", ", _finish["connectors"]), "IRC 2015 R317.3")
pile_words = _words("Guide piles", joined("pressure treated to ", use_below, ", tagged"),
                    "AWPA U1")
asked = {"fastener": fastener_words, "connector": connector_words, "pile": pile_words}
"""Kind of an item of Takeoff → the words its line adds."""

block("Lumber")
note("Boards of the cut list and spares to the nearest board; prices a foot. A yard's price "
     "belongs to its line: look through them again when the design has changed the lines.")
sheet.heads({"packs": "Boards", "count": "Feet in all", "catalog": "Catalog, a foot",
             "yard": "Yard's, a foot"})
_timber = [LUMBER.key_of(k) for k, heavy in enumerate(LUMBER.entries("timber"))
           if heavy and LUMBER.keys[k] in catalog.LUMBER_PRICES.keys]
_boards("lumber", cut_list.buy, job.lumber_waste, lambda cut: at_place(
    Series("words", lumber_words), 1 + (cut["boards"] > 0) * (
        1 + any_of(*(cut["size"].is_(key) for key in _timber)))))
missing = sheet.ledger("Boards and pieces that the cut list has no line for; must be 0",
                       "see Cut list", "each", "Cut list", packs=(
                           cut_list.not_listed + cut_list.not_reached, "each", 0))["packs"]

block("Floats")
note("Ask for the maker's figures with the offer: buoyancy and how it was found, foam and its "
     "water uptake, shell, warranty, serial numbers.")
sheet.heads({"packs": "To order", "count": "In all", "catalog": "Catalog price",
             "yard": "Yard's price"})
_pieces("floats")

block("Decking: boards")
sheet.heads({"packs": "Boards", "count": "Feet in all", "catalog": "Catalog, a foot",
             "yard": "Yard's, a foot"})
_boards("deck_boards", cut_list.deck_buy, job.deck_waste,
        lambda cut: when(cut["boards"] > 0, deck_words, DASH))

block("Decking: panels and screws")
sheet.heads({"packs": "To order", "count": "In all", "catalog": "Catalog price",
             "yard": "Yard's price"})
_pieces("decking")

block("Hardware")
note("A hinge, bracket or bolt of one joint carries one metal. Where a pack holds many, In all "
     "says how many pieces come.")
_pieces("hardware")

block("Anchors")
note("Ask for dead weights and piles delivered to the water's edge: Price carries sections only.")
_pieces("anchors")

block("Sundries")
note("Preservative for cut ends, bits and sealant stand on Price as a share of materials.")
_pieces("sundries")

block("Cost by group, papers and lead times")
note("Keep every paper: the inspector asks for certificates, tags and hot-dip papers. Order what "
     "takes longest first, and let no yard's price run out before your quote does.")
sheet.heads({"yard": "Lead, weeks", "yard_used": "Lead used"})
_PAPERS = {
    "lumber": ("Lumber", "treatment tags, grade stamps, treater's certificate"),
    "floats": ("Floats", "maker's certificate for buoyancy, foam and shell; serial numbers"),
    "decking": ("Decking", "maker's span and fastening sheet; treatment tags"),
    "hardware": ("Hardware", "hot-dip or stainless papers, mill certificate of bolts"),
    "anchors": ("Anchors", "chain certificate, weight tickets of dead weights, pile tags"),
    "sundries": ("Sundries", "none"),
}
group_cost: dict[str, Row] = {}
lead_time: dict[str, Ask] = {}
for _group, (_name, _papers) in _PAPERS.items():
    _cost = sum_over(Series(_group, costs[_group]))
    if _group == "decking":
        _cost = _cost + sum_over(Series("boards", costs["deck_boards"]))
    _line = sheet.ledger(_name, _papers, "$", "Orders")
    lead_time[_group] = _line.ask("yard", 0, LEAD_MOST, "", 0, "supplier; weeks",
                                  default=getattr(rates, f"lead_{_group}"))
    _line.add("cost", _cost, "$", 2)
    group_cost[_group] = _line["cost"]
materials = sheet.ledger("Materials, in all", "without small supplies and tax: see Price", "$",
                         "Orders", cost=(sum_over(Series("cost", list(group_cost.values()))),
                                         "$", 2))["cost"]
materials.chief = True
longest_lead = sheet.ledger("Longest lead time", "weeks from order to delivery", "", "Orders",
                            packs=(greatest(*lead_time.values()), "", 0))["packs"]
