"""Rates: what an hour, a trip and a piece of work cost, and the terms of the price.

Every value stands in for the builder's own and is invented until he says that his are typed.
"""

from __future__ import annotations

from builder.language import Ask, Sheet, when

from .reference import constants, words

ours = constants("own_rates")
terms = constants("own_terms")
law = constants("deposit_law")

WHOSE = words("Whose rates", "invented, to be replaced", "our own")
PLACES = words("Where permit and fees stand", "at cost, outside the margin", "inside the margin")
LAWS = words("Law that caps a deposit", "none known", "California B&P 7159.5")

sheet = Sheet("Rates", "Rates, hours and terms", scope="job inputs",
              about="All invented until yours are typed. Hours are those of one worker.")
ask, choose, block, note = sheet.ask, sheet.choose, sheet.block, sheet.note

INVENTED, OURS = "invented", "own judgement"
MONEY = 1000000

block("Whose figures")
whose = choose("Prices and rates of Catalog, Orders and this sheet", WHOSE,
               "say 'our own' when all are yours", default=WHOSE.keys[0])
invented = whose.is_(WHOSE.keys[0])
"""Whether a price rests on invented figures."""

block("Labour")
wage = ask("Pay of one worker", "w", "$/h", 5, 500, INVENTED, default=ours.wage)
burden = ask("Burden on pay: payroll taxes, insurance, leave; share", "β", "", 0, 2, INVENTED,
             default=ours.burden)
crew = ask("Workers in the crew", "n_w", "each", 1, 20, INVENTED, default=ours.crew, whole=True)
day_hours = ask("Working hours of a day", "h_d", "h", 2, 16, INVENTED, default=ours.day_hours,
                digits=1)

block("Hours of one worker, by task")
TASKS = (
    ("site", "Site visit, measuring, setting out; the job", "h", 200),
    ("papers", "Drawings, permit papers, ordering; the job", "h", 400),
    ("rails", "Rail ply or header: cut, drill, treat ends; each", "h", 20),
    ("stringers", "Stringer or cross-beam: cut, treat ends; each", "h", 20),
    ("ends", "Stringer end: angle, plates, bolts; each", "h", 20),
    ("corners", "Corner: brackets, bolts, squared; each", "h", 20),
    ("plies", "Bolt joining plies; each", "h", 5),
    ("skirts", "Skirt board; each place it is fastened", "h", 5),
    ("floats", "Float set and fastened; each", "h", 20),
    ("panels", "Deck panels laid and screwed; a square foot", "h/ft²", 2),
    ("boards", "Deck boards laid and screwed; a square foot", "h/ft²", 2),
    ("fittings", "Hinge, mooring bracket or cleat; each", "h", 20),
    ("wheels", "Corner wheel or ladder; each", "h", 20),
    ("bumper", "Bumper; each length as sold", "h", 20),
    ("load", "Loaded, tied down, unloaded; a section", "h", 40),
    ("launch", "Launched, levelled, joined; a section", "h", 80),
    ("mooring", "Leg, pile hoop or arm set and adjusted; each", "h", 80),
    ("gangway", "Gangway set; the job, where there is one", "h", 80),
    ("clean", "Clearing up, as-built record, handing over; the job", "h", 80),
    ("travel", "Travel of all workers; a working visit", "h", 80),
)
"""Key, what one piece of the work is, unit of its hours, most."""
hours: dict[str, Ask] = {
    key: ask(label, "", unit, 0, most, INVENTED, default=getattr(ours, f"hours_{key}"), digits=3)
    for key, label, unit, most in TASKS}
visits = ask("Working visits to the site", "n_v", "each", 0, 200, INVENTED, default=ours.visits,
             whole=True)
hours["other"] = ask("Other work; the job", "", "h", 0, 5000, "none unless typed", default=0,
                     digits=1)

block("Plant")
lift_rate = ask("Crane or loader with its driver", "", "$/h", 0, 5000, INVENTED,
                default=ours.lift_rate)
lift_hours = ask("Crane or loader; a section", "", "h", 0, 80, INVENTED, default=ours.lift_hours)
barge_leg = ask("Workboat or barge; a leg, pile or arm", "", "$", 0, MONEY, INVENTED,
                default=ours.barge_leg)
small_tools = ask("Small tools and fuel, share of labour", "", "", 0, 1, INVENTED,
                  default=ours.small_tools, digits=3)
plant_other = ask("Other plant; the job", "", "$", 0, MONEY, "none unless typed", default=0)

block("Delivery")
note("Trips by weight or by sections a load. The trailer and the road stand on Inputs.")
trip_cost = ask("Truck and trailer; a trip", "", "$", 0, MONEY, INVENTED, default=ours.trip_cost)
mile_cost = ask("Truck and trailer; a mile", "", "$/mile", 0, 100, INVENTED,
                default=ours.mile_cost)
miles = ask("Shop to site, one way", "", "mile", 0, 5000, INVENTED, default=ours.miles, digits=1)
weight_cost = ask("Handling by weight", "", "$/lb", 0, 10, INVENTED, default=ours.weight_cost,
                  digits=3)
sections_a_load = ask("Sections on one load", "", "each", 1, 20, OURS,
                      default=terms.sections_a_load, whole=True)
oversize_cost = ask("Permit and flags of a long or wide load; a trip", "", "$", 0, MONEY,
                    INVENTED, default=ours.oversize_cost)

block("Bought-in work and things, from others' offers")
note("Gangway, pile driving, power and water are priced here: Takeoff counts the dock only.")
BOUGHT = (
    ("gangway", "Gangway, bought in"), ("piles", "Piles driven or anchors set by others"),
    ("power", "Power and water lines, by others"),
    ("disposal", "Old dock and foam taken away"), ("other", "Other bought-in work"),
)
bought: dict[str, Ask] = {
    key: ask(label, "", "$", 0, MONEY, "none unless typed", default=0) for key, label in BOUGHT}

block("Permit and fees")
permit_fees = ask("Permit and fees, at cost", "F", "$", 0, MONEY, INVENTED,
                  default=ours.permit_fees)
permit_place = choose("Permit and fees stand", PLACES, OURS, default=PLACES.keys[0])

block("Materials besides the orders")
small_supplies = ask("Preservative, bits, sealant: share of materials", "", "", 0, 0.5, INVENTED,
                     default=ours.small_supplies, digits=3)
purchase_tax = ask("Sales tax paid on materials when bought", "t_m", "", 0, 0.2,
                   "state and town; 0 until looked up", default=terms.no_tax, digits=4)

block("Contingency, overhead, profit")
contingency = ask("Contingency, share of direct cost", "c", "", 0, 0.5, INVENTED,
                  default=ours.contingency, digits=3)
overhead = ask("Overhead, share of direct cost and contingency", "o", "", 0, 1, INVENTED,
               default=ours.overhead, digits=3)
margin = ask("Profit, share of the selling price", "m", "", 0, 0.6, INVENTED,
             default=ours.margin, digits=3)
price_step = ask("Selling price goes up to the next", "s", "$", 1, 1000, INVENTED,
                 default=ours.price_step, whole=True)

block("Sales tax")
note("A lump-sum contractor often pays tax on materials instead: then leave the rate at 0 here")
note("and type the tax on materials above. Ask the state.")
tax_rate = ask("Sales tax charged to the client", "t", "", 0, 0.2, "state and town; 0 until "
               "looked up", default=terms.no_tax, digits=4)
taxable_share = ask("Share of the selling price it falls on", "a", "", 0, 1, OURS,
                    default=terms.taxable_share, digits=3)

block("Payment")
note("Shares of the client's total; the last payment takes the rest. Look up whether the law")
note("also forbids payments that run ahead of work done or material delivered.")
deposit_share = ask("Deposit", "d", "", 0, 1, INVENTED, default=ours.deposit_share, digits=3)
deposit_law = choose("Law that caps the deposit", LAWS, "state law; from memory: look it up",
                     default=LAWS.keys[0])
_capped = deposit_law.is_(LAWS.keys[1])
deposit_cap_share = ask("Deposit, most, share of the client's total; 0 where none", "d_x", "", 0,
                        1, "by the law chosen", default=when(_capped, law.deposit_share, 0),
                        digits=3)
deposit_cap = ask("Deposit, most, in money; 0 where none", "D_x", "$", 0, MONEY,
                  "by the law chosen", default=when(_capped, law.deposit_most, 0))
STAGES = ("Frames built and floats on hand", "Dock delivered", "Dock afloat and moored")
"""What each payment between deposit and last waits for."""
stage_shares = [
    ask(f"Payment {k}: {name.lower()}", f"p_{k}", "", 0, 1, INVENTED,
        default=getattr(ours, f"stage_{k}"), digits=3) for k, name in enumerate(STAGES, start=1)]

block("Offer")
validity = ask("Days the quote is good for", "", "each", 1, 365, INVENTED, default=ours.validity,
               whole=True)
warranty = ask("Months of warranty, from handing over", "", "each", 0, 240, INVENTED,
               default=ours.warranty, whole=True)
