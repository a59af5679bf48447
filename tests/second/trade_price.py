"""Price, second calculation: from direct cost to the selling price, the total and the payments.

D = materials + labour + plant + delivery + subcontract; contingency C = c D; overhead
O = o (D + C); break-even B = D + C + O; price before rounding B/(1 - m), m the margin on the
selling price; then up to the next step.  Permit and fees stand at cost outside the margin, or in
the break-even.  Money is rounded where it changes hands.
"""

from __future__ import annotations

from tests.second.given import Given, constants
from tests.second.trade_cutting import TYPES
from tests.second.trade_names import DASH, cents, whole_down, whole_up
from tests.second.trade_orders import GROUPS
from tests.second.trade_takeoff import fitted, of_all

HOURS_OF = {
    "site": "Site visit, measuring, setting out", "papers": "Drawings, permit papers, ordering",
    "rails": "Rail plies and headers", "stringers": "Stringers and cross-beams",
    "ends": "Stringer ends", "corners": "Corners", "plies": "Bolts joining plies",
    "skirts": "Skirt boards, places fastened", "floats": "Floats", "panels": "Deck panels",
    "boards": "Deck boards", "fittings": "Hinges, mooring brackets, cleats",
    "wheels": "Corner wheels and ladders", "bumper": "Bumper, lengths",
    "load": "Sections loaded and unloaded", "launch": "Sections launched and levelled",
    "mooring": "Legs, piles or arms", "gangway": "Gangway set",
    "clean": "Clearing up, record, handing over", "travel": "Travel, working visits",
    "other": "Other work"}
"""Key of the hours of a task → what is done."""
STAGES = ("Deposit, on signing", "Frames built and floats on hand", "Dock delivered",
          "Dock afloat and moored", "Last, on handing over")
PERMIT_INSIDE, OUR_OWN = "inside the margin", "our own"

Results = dict[str, float | str]


def work(g: Given, done: Results) -> Results:
    """Return the results of Price, for the whole dock.

    The cost of each group of materials comes from ``done`` as "Orders.group_cost_<group>".
    """
    groups = {group: float(done[f"Orders.group_cost_{group}"]) for group in GROUPS}
    built = _built(g)
    found = dict(built)
    found |= _materials(g, groups)
    found |= _labour(g, built)
    found |= _plant(g, found)
    found |= _delivery(g, found)
    found |= _bought_in(g)
    found |= _selling(g, found)
    found |= _payments(g, found)
    found |= _by_area(g, found)
    return found | _shares(g, groups, found)


def _built(g: Given) -> Results:
    """Return what is built: number, deck, weight and sides of each type and of the dock."""
    found: Results = {}
    by_letter = {t.letter: t for t in g.all}
    columns = ("Quantity", "Each", "Hours", "Amount", "Share")
    rows = []
    for letter in TYPES:
        t = by_letter.get(letter)
        row = (0.0,) * 5
        found[f"Price.Section type {letter}: words"] = t.sec["purpose"] if t else DASH
        if t is not None:
            row = (t.sec["quantity"], t.done["Parts.deck_area"], t.done["Weight.launch"],
                   *_on_the_road(g, t.done))
        rows.append(row)
        found |= {f"Price.Section type {letter}: {column}": value
                  for column, value in zip(columns, row, strict=True)}
    found |= {"Price.sections": sum(r[0] for r in rows),
              "Price.deck_area": sum(r[0] * r[1] for r in rows),
              "Price.all_weight": sum(r[0] * r[2] for r in rows),
              "Price.heaviest": max(r[2] for r in rows),
              "Price.longest": max(r[3] for r in rows), "Price.widest": max(r[4] for r in rows)}
    return found


def _on_the_road(g: Given, done: Results) -> tuple[float, float]:
    """Return the longest and the widest thing on the road: a section, or its boards and floats."""
    if g.job["carried"] == "whole":
        sides = float(done["Parts.overall_length"]), float(done["Parts.overall_width"])
        return max(sides), min(sides)
    return (float(done["Parts.longest_piece"]),
            min(float(done["Parts.float_l"]), float(done["Parts.float_b"])))


def _materials(g: Given, groups: dict[str, float]) -> Results:
    """Return materials with small supplies and the tax paid when they are bought."""
    orders = sum(groups.values())
    supplies = g.job["small_supplies"] * orders
    tax = g.job["purchase_tax"] * (orders + supplies)
    return {**{f"Price.material_lines_{group}": cost for group, cost in groups.items()},
            "Price.supplies": supplies, "Price.bought_tax": tax,
            "Price.Small supplies: Each": g.job["small_supplies"],
            "Price.Sales tax paid on materials: Each": g.job["purchase_tax"],
            "Price.materials": orders + supplies + tax}


def _counts(g: Given, built: Results) -> dict[str, float]:
    """Return how much there is of each task."""
    sections = float(built["Price.sections"])
    deck = {kind: sum(t.sec["quantity"] * t.done["Parts.deck_area"] for t in g.all
                      if t.sec["deck"] == kind) for kind in ("panels", "boards")}
    return {
        "site": 1, "papers": 1, "rails": of_all(g, "rails") + of_all(g, "headers"),
        "stringers": of_all(g, "stringers") + fitted(g, "cross_beams"),
        "ends": of_all(g, "stringer_ends"), "corners": of_all(g, "corner_inside"),
        "plies": of_all(g, "ply_bolts"), "skirts": of_all(g, "skirt_places"),
        "floats": of_all(g, "floats"), **deck,
        "fittings": sum(fitted(g, key) for key in ("hinges", "mooring_brackets", "cleats")),
        "wheels": fitted(g, "corner_wheels") + fitted(g, "ladders"),
        "bumper": fitted(g, "bumper") / g.job["bumper_length"],
        "load": sections, "launch": sections, "mooring": fitted(g, "holds"),
        "gangway": float(g.job["gangway_length"] > 0), "clean": 1,
        "travel": g.job["visits"], "other": 1}


def _labour(g: Given, built: Results) -> Results:
    """Return hours and cost by task; an hour costs pay and the burden on it."""
    rate = g.job["wage"] * (1 + g.job["burden"])
    found: Results = {"Price.labour_rate": rate}
    all_hours = 0.0
    for key, count in _counts(g, built).items():
        each = g.job[f"hours_{key}"]
        line = f"Price.{HOURS_OF[key]}"
        found |= {f"{line}: Quantity": count, f"{line}: Each": each,
                  f"{line}: Hours": count * each, f"{line}: Amount": count * each * rate}
        all_hours += count * each
    return found | {"Price.labour_hours": all_hours, "Price.labour": all_hours * rate,
                    "Price.working_days": all_hours / (g.job["crew"] * g.job["day_hours"])}


def _plant(g: Given, found: Results) -> Results:
    job, sections = g.job, float(found["Price.sections"])
    legs = fitted(g, "holds")
    lift = sections * job["lift_hours"] * job["lift_rate"]
    barge = legs * job["barge_leg"]
    tools = job["small_tools"] * float(found["Price.labour"])
    return {"Price.Crane or loader: Quantity": sections,
            "Price.Crane or loader: Each": job["lift_rate"],
            "Price.Crane or loader: Hours": sections * job["lift_hours"],
            "Price.Workboat or barge: Quantity": legs,
            "Price.Workboat or barge: Each": job["barge_leg"],
            "Price.Small tools and fuel: Each": job["small_tools"],
            "Price.plant_lines_1": lift, "Price.plant_lines_2": barge,
            "Price.plant_lines_3": tools, "Price.plant_lines_4": job["plant_other"],
            "Price.plant": lift + barge + tools + job["plant_other"]}


def by_type(found: Results) -> list[tuple[float, float]]:
    """Return how many sections of each type are built, and what one weighs [lb]."""
    return [(float(found[f"Price.Section type {letter}: Quantity"]),
             float(found[f"Price.Section type {letter}: Hours"])) for letter in TYPES]


def _whole_loads(g: Given, types: list[tuple[float, float]]) -> tuple[float, list[int]]:
    """Return trips with no section split, and how many sections of each type a load takes.

    House choice: each section takes its share of a load, one of as many of its own kind as the
    trailer may carry; shares are added up, so two types may share a load.  One that is too heavy
    goes alone.
    """
    job = g.job
    taken = []
    for _, weight in types:
        many = int(job["sections_a_load"])
        while many > 1 and many * weight > job["trailer_payload"] * (1 + 1e-9):
            many -= 1
        taken.append(many)
    if job["carried"] != "whole":
        return 0.0, taken
    return whole_up(sum(built / many for (built, _), many in zip(types, taken, strict=True))), taken


def _delivery(g: Given, found: Results) -> Results:
    """Return trips and their cost; a section too long or wide makes every trip an extra cost."""
    job = g.job
    weight, sections = float(found["Price.all_weight"]), float(found["Price.sections"])
    too_long = found["Price.longest"] > job["trailer_length"] + job["trailer_overhang"] + 1e-9
    too_wide = found["Price.widest"] > job["road_width"] / 12 + 1e-9
    oversize = float(too_long or too_wide)
    by_weight = whole_up(weight / job["trailer_payload"])
    by_size = whole_up(sections / job["sections_a_load"])
    loads, taken = _whole_loads(g, by_type(found))
    trips = max(by_weight, by_size, loads)
    a_trip = job["trip_cost"] + 2 * job["miles"] * job["mile_cost"]
    handling = weight * job["weight_cost"]
    flags = trips * oversize * job["oversize_cost"]
    truck, handled, wide = ("Price.Truck and trailer, there and back", "Price.Handling by weight",
                          "Price.Permit and flags of a long or wide load")
    heavy = (job["carried"] == "whole"
             and found["Price.heaviest"] > job["trailer_payload"] + 1e-9)
    return {"Price.Heaviest section: words": (
                "more than the trailer may carry: split or hire" if heavy
                else "within what the trailer may carry"),
            "Price.oversize": oversize, "Price.trips": trips,
            "Price.Trips, no section split: Quantity": loads,
            **{f"Price.Type {letter}: whole sections on one load: Each": float(many)
               for letter, many in zip(TYPES, taken, strict=True)},
            "Price.Trips by weight: Quantity": by_weight,
            "Price.Trips by sections on one load: Quantity": by_size,
            f"{truck}: Quantity": trips, f"{truck}: Each": a_trip,
            f"{handled}: Quantity": weight, f"{handled}: Each": job["weight_cost"],
            f"{wide}: Quantity": trips * oversize, f"{wide}: Each": job["oversize_cost"],
            "Price.delivery_lines_1": trips * a_trip, "Price.delivery_lines_2": handling,
            "Price.delivery_lines_3": flags, "Price.delivery": trips * a_trip + handling + flags}


def _bought_in(g: Given) -> Results:
    amounts = [g.job[f"bought_{key}"]
               for key in ("gangway", "piles", "power", "disposal", "other")]
    return {**{f"Price.bought_lines_{k}": amount for k, amount in enumerate(amounts, start=1)},
            "Price.subcontract": sum(amounts)}


def _selling(g: Given, found: Results) -> Results:
    """Return the way from direct cost to the client's total."""
    job = g.job
    direct = sum(float(found[f"Price.{part}"])
                 for part in ("materials", "labour", "plant", "delivery", "subcontract"))
    contingency = job["contingency"] * direct
    overhead = job["overhead"] * (direct + contingency)
    inside = job["permit_fees"] if job["permit_place"] == PERMIT_INSIDE else 0
    breakeven = direct + contingency + overhead + inside
    exact = breakeven / (1 - job["margin"])
    selling = job["price_step"] * whole_up(exact / job["price_step"])
    outside = 0 if job["permit_place"] == PERMIT_INSIDE else cents(job["permit_fees"])
    tax = cents(job["tax_rate"] * job["taxable_share"] * selling)
    least = constants("own_terms")["least_money"]
    lines = {"Contingency": "contingency", "Overhead": "overhead",
             "Price before rounding: break-even over 1 less the margin": "margin",
             "Selling price, up to the next step": "price_step", "Sales tax": "tax_rate"}
    return {
        "Price.direct": direct, "Price.contingency": contingency, "Price.overhead": overhead,
        "Price.fees_inside": inside, "Price.breakeven": breakeven, "Price.exact": exact,
        "Price.markup": job["margin"] / (1 - job["margin"]), "Price.selling": selling,
        "Price.profit": selling - breakeven,
        "Price.profit_share": (selling - breakeven) / max(selling, least),
        "Price.fees_outside": outside, "Price.sales_tax": tax,
        "Price.client_total": cents(selling + outside + tax),
        "Price.profit_hours": (selling - breakeven) / float(found["Price.labour_rate"]),
        "Price.whose": ("our own" if job["whose"] == OUR_OWN
                        else "INVENTED: this price is no offer"),
        "Price.Sales tax: Share": job["taxable_share"],
        **{f"Price.{label}: Each": job[key] for label, key in lines.items()}}


def _payments(g: Given, found: Results) -> Results:
    """Return deposit, stages and the last payment, which takes the rest.

    House choices: the deposit goes down to the cent, so as not to pass its cap; a stage never
    takes more than is left; a cap of 0 is no cap.
    """
    total = float(found["Price.client_total"])
    caps = [g.job["deposit_cap"] or total, g.job["deposit_cap_share"] * total or total]
    most = min(caps)
    shares = [g.job["deposit_share"], *(g.job[f"stage_shares_{k}"] for k in (1, 2, 3)), None]
    results: Results = {"Price.deposit_most": most}
    left, paid = total, 0.0
    for k, (name, share) in enumerate(zip(STAGES, shares, strict=True)):
        if k == 0:
            amount = whole_down((min(share * total, most) + constants("own")["cent_down"])
                                * 100) / 100
        else:
            amount = cents(left if share is None else min(share * total, left))
        results[f"Price.{name}: Each"] = left
        if share is not None:
            results[f"Price.{name}: Hours"] = share
        results["Price.deposit" if k == 0 else f"Price.stages_{k + 1}_2"] = amount
        left = cents(left - amount)
        paid += amount
    return results | {"Price.paid": paid, "Price.unpaid": cents(total - paid)}


def _by_area(g: Given, found: Results) -> Results:
    """Return the price of a square foot and of one section of each type, by deck area."""
    area, selling = float(found["Price.deck_area"]), float(found["Price.selling"])
    divisor = max(area, constants("own")["least_area"])
    results: Results = {"Price.A square foot of deck: Each": area,
                        "Price.per_ft2": selling / divisor}
    for letter in TYPES:
        number = float(found[f"Price.Section type {letter}: Quantity"])
        deck = float(found[f"Price.Section type {letter}: Each"])
        line = f"Price.One section of type {letter}"
        results |= {f"{line}: Quantity": number, f"{line}: Each": deck,
                    f"{line}: Share": number * deck / divisor,
                    f"Price.per_section_type_{letter}": selling * deck / divisor}
    return results


def _shares(g: Given, groups: dict[str, float], found: Results) -> Results:
    """Return what the selling price is made of; the shares add up to 1."""
    least = constants("own_terms")["least_money"]
    selling = max(float(found["Price.selling"]), least)
    bought = float(found["Price.supplies"]) + float(found["Price.bought_tax"])
    lines = {group: (group.capitalize(), cost) for group, cost in groups.items()}
    lines["supplies"] = ("Small supplies and tax on materials", bought)
    for key, label in (("labour", "Labour"), ("plant", "Plant"), ("delivery", "Delivery"),
                       ("subcontract", "Bought in"), ("contingency", "Contingency"),
                       ("overhead", "Overhead"), ("fees", "Permit and fees, inside"),
                       ("profit", "Profit")):
        amount = found["Price.fees_inside" if key == "fees" else f"Price.{key}"]
        lines[key] = (label, float(amount))
    results: Results = {}
    for key, (label, amount) in lines.items():
        again = " #2" if label in HOURS_OF.values() else ""
        results[f"Price.{label}: Amount{again}"] = amount
        results[f"Price.shares_{key}"] = amount / selling
    return results | {"Price.shares_sum": sum(amount for _, amount in lines.values()) / selling}
