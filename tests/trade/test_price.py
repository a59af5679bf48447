"""Takeoff, Orders, Rates and Price: money adds up, for thousands of random jobs.

Values are read with the Python meaning of the rows; that the cells agree with it is tested
elsewhere.  What is counted over the section types is given here, as it stands on one sheet.
"""

from __future__ import annotations

import itertools
import math
import random
from fractions import Fraction

import pytest

from builder.language import adopt
from builder.language.values import value_of
from builder.sheets import catalog, cut_list, orders, parts, price, price_direct, rates, takeoff
from builder.sheets import inputs as job
from builder.sheets import inputs_site as site
from builder.sheets import inputs_yard as road
from builder.sheets import sections as sec
from builder.sheets.reference import FINISHES, LUMBER, constants, irc

adopt(rates)
adopt(road, job.sheet)

JOBS = 2000
LAW = constants("deposit_law")
GROUPS = tuple(orders.group_cost)
COUNTED = [key for key, _, count, _ in price_direct.TASKS
           if key not in ("site", "papers", "clean", "other", "travel", "load", "launch",
                          "gangway")]
"""Tasks whose quantity is a sum over the section types."""
SMALL_MOST = {rates.wage: 120, rates.lift_rate: 400, rates.trip_cost: 400, rates.miles: 200,
              rates.permit_fees: 3000, road.trailer_payload: 20000}
ROAD = (road.trailer_payload, road.trailer_length, road.trailer_overhang, road.road_width,
        road.carried)


def rate(ask, rng: random.Random):
    """Return a value that may be typed into a cell of Rates, the low ones more often."""
    if ask.choices is not None:
        return rng.choice(ask.choices.keys)
    most = SMALL_MOST.get(ask, min(ask.most, ask.least + 5000))
    value = ask.least + (most - ask.least) * rng.random() ** 3
    return round(value) if ask.whole else round(value, 2 if ask.unit == "$" else 4)


def given(rng: random.Random, **change) -> dict:
    """Return what Price rests on: typed rates, counts over the sections, costs of the groups."""
    known = {ask: rate(ask, rng) for ask in (*rates.sheet.inputs, *ROAD) if rng.random() < 0.7}
    for group in GROUPS:
        known[orders.group_cost[group]] = round(rng.random() ** 3 * 60000, 2)
    for key in COUNTED:
        known[price.task_lines[key]["quantity"]] = rng.randrange(0, 400)
    for line in price_direct.type_lines:
        used = rng.random() < 0.6
        for name, most in (("quantity", 9), ("each", 500), ("hours", 9000), ("cost", 60),
                           ("share", 24)):
            value = rng.uniform(1, most) if used else 0
            known[line[name]] = round(value) if name == "quantity" else value
    known[site.gangway_length] = rng.choice((0, 16.0))
    known.update({getattr(rates, name): value for name, value in change.items()})
    return known


def jobs(count: int = JOBS, **change):
    """Yield random jobs, the same every time."""
    for number in range(count):
        yield given(random.Random(number), **change)


def cents(amount: float) -> int:
    """Return an amount in whole cents, which it has to be."""
    assert amount * 100 == pytest.approx(round(amount * 100), abs=1e-4)
    return round(amount * 100)


# ------------------------------------------------------------------ payments


def test_payments_add_up_to_the_cent():
    for known in jobs():
        amounts = [cents(value_of(row, known)) for _, row in price.stages]
        assert sum(amounts) == cents(value_of(price.client_total, known))
        assert min(amounts) >= 0
        assert abs(value_of(price.unpaid, known)) < 0.001
        parts = (price.selling, price.fees_outside, price.sales_tax)
        assert sum(cents(value_of(p, known)) for p in parts) == sum(amounts)


def test_deposit_is_within_its_share_and_its_caps():
    for known in jobs():
        total, deposit = value_of(price.client_total, known), value_of(price.deposit, known)
        assert deposit <= value_of(rates.deposit_share, known) * total + 1e-6
        share, most = (value_of(r, known) for r in (rates.deposit_cap_share, rates.deposit_cap))
        assert not share or deposit <= share * total + 1e-6
        assert not most or deposit <= most + 1e-6


@pytest.mark.parametrize("selling", [4000, 250000])
def test_deposit_under_the_law_is_the_less_of_share_and_sum(selling):
    known = {price.selling: selling, rates.deposit_law: rates.LAWS.keys[1],
             rates.permit_fees: 0, rates.deposit_share: 0.5}
    least = min(LAW.deposit_share.value * selling, LAW.deposit_most.value)
    assert value_of(price.deposit, known) == pytest.approx(least)
    known = {price.selling: selling, rates.permit_fees: 0, rates.deposit_share: 0.5}
    assert value_of(price.deposit, known) == pytest.approx(selling / 2)


# ------------------------------------------------------------------ margin and shares


def test_margin_and_markup_identities():
    for known in jobs():
        m, broke_even, exact, markup = (value_of(r, known) for r in (
            rates.margin, price.breakeven, price.exact, price.markup))
        assert exact - broke_even == pytest.approx(m * exact, abs=1e-6)
        assert markup == pytest.approx(m / (1 - m))
        assert broke_even * (1 + markup) == pytest.approx(exact)
        assert markup / (1 + markup) == pytest.approx(m)


def test_selling_price_goes_up_to_the_step_and_no_further():
    for known in jobs():
        selling, exact, step = (value_of(r, known) for r in (
            price.selling, price.exact, rates.price_step))
        assert -1e-4 <= selling - exact < step
        assert selling / step == pytest.approx(round(selling / step), abs=1e-9)
        if selling:
            assert value_of(price.profit_share, known) >= value_of(rates.margin, known) - 1e-9


def test_shares_of_the_price_add_up():
    for known in jobs():
        if value_of(price.selling, known):
            assert value_of(price.shares_sum, known) == pytest.approx(1, abs=1e-9)
            assert sum(value_of(s, known) for s in price.shares.values()) == pytest.approx(1)


def test_sections_by_deck_area_add_up_to_the_selling_price():
    for known in jobs(300):
        lines = price_direct.type_lines
        found = sum(value_of(line["quantity"], known) * value_of(price.per_section_type[k], known)
                    for k, line in zip(price_direct.TYPES, lines, strict=True))
        area = value_of(price.deck_area, known)
        assert found == pytest.approx(value_of(price.selling, known) if area else 0)
        if area:
            assert value_of(price.per_ft2, known) == pytest.approx(
                value_of(price.selling, known) / area)


# ------------------------------------------------------------------ the order of the price


def reckoned(known: dict) -> float:
    """Return the client's total worked out apart from the sheets, in the order of the basis."""
    r = {ask.key: value_of(ask, known) for ask in (*rates.sheet.inputs, *ROAD)}
    cost = [known[row] for row in orders.group_cost.values()]
    bought = sum(cost) * (1 + r["small_supplies"])
    material = bought * (1 + r["purchase_tax"])
    built, deck, heavy, long, short = zip(*(
        [known[line[n]] for n in ("quantity", "each", "hours", "cost", "share")]
        for line in price_direct.type_lines), strict=True)
    count = {key: known[price.task_lines[key]["quantity"]] for key in COUNTED}
    count |= dict.fromkeys(("site", "papers", "clean", "other"), 1)
    count |= {"load": sum(built), "launch": sum(built), "travel": r["visits"],
              "gangway": 1 if known[site.gangway_length] else 0}
    labour = r["wage"] * (1 + r["burden"]) * sum(
        n * r[f"hours_{key}"] for key, n in count.items())
    plant = (sum(built) * r["lift_hours"] * r["lift_rate"] + count["mooring"] * r["barge_leg"]
             + r["small_tools"] * labour + r["plant_other"])
    pounds = sum(n * w for n, w in zip(built, heavy, strict=True))
    trips = max(math.ceil(pounds / r["trailer_payload"]),
                math.ceil(sum(built) / r["sections_a_load"]))
    if r["carried"] == "whole":
        a_load = [min(r["sections_a_load"], max(int(r["trailer_payload"] / w), 1)) if w else 1
                  for w in heavy]
        trips = max(trips, math.ceil(sum(map(Fraction, built, map(int, a_load)))))
    flags = (max(long) > r["trailer_length"] + r["trailer_overhang"]
             or max(short) > r["road_width"] / 12)
    delivery = (trips * (r["trip_cost"] + 2 * r["miles"] * r["mile_cost"]
                         + flags * r["oversize_cost"]) + pounds * r["weight_cost"])
    direct = material + labour + plant + delivery + sum(
        r[f"bought_{key}"] for key, _ in rates.BOUGHT)
    together = direct * (1 + r["contingency"]) * (1 + r["overhead"])
    inside = r["permit_place"] == rates.PLACES.keys[1]
    exact = (together + inside * r["permit_fees"]) / (1 - r["margin"])
    selling = math.ceil(exact / r["price_step"] - 1e-9) * r["price_step"]
    fees = 0 if inside else r["permit_fees"]
    return (selling + math.floor(fees * 100 + 0.5) / 100
            + math.floor(r["tax_rate"] * r["taxable_share"] * selling * 100 + 0.5) / 100)


def loads(weights: dict[str, tuple[int, float]], **change) -> dict:
    """Return known values of a dock: type → sections built, weight of one [lb]."""
    known = given(random.Random(3)) | {road.trailer_payload: 5000, rates.sections_a_load: 3,
                                       road.carried: "whole"}
    for k, line in zip(price_direct.TYPES, price_direct.type_lines, strict=True):
        built, weight = weights.get(k, (0, 0))
        known |= {line["quantity"]: built, line["hours"]: weight, line["cost"]: 20 * (built > 0),
                  line["share"]: 6 * (built > 0)}
    return known | {getattr(road, name): value for name, value in change.items()}


@pytest.mark.parametrize(("weights", "trips", "in_pieces"), [
    ({"A": (3, 2600)}, 3, 2), ({"A": (4, 2500)}, 2, 2), ({"A": (1, 2600), "B": (1, 2600)}, 2, 2),
    ({"A": (1, 2400), "B": (1, 2400)}, 1, 1), ({"B": (6, 500)}, 2, 2), ({"F": (2, 6000)}, 3, 3),
    ({"A": (3, 1600)}, 1, 1), ({"A": (3, 1600), "C": (1, 10)}, 2, 2)])
def test_a_whole_section_is_not_split_between_loads(weights, trips, in_pieces):
    assert value_of(price.trips, loads(weights)) == trips
    assert value_of(price.trips, loads(weights, carried="in pieces")) == in_pieces


def test_sides_on_the_road_are_those_of_what_is_carried():
    """In pieces a long and wide section is no long or wide load."""
    sides = {row: value for row, value in (
        (parts.overall_length, 30.0), (parts.overall_width, 12.0), (parts.longest_piece, 16.0),
        (parts.float_l, 4.0), (parts.float_b, 3.0))}
    for carried, flags, long, wide in (("whole", 1, 30, 12), ("in pieces", 0, 16, 3)):
        known = given(random.Random(3)) | {road.carried: carried, road.trailer_length: 16,
                                           road.trailer_overhang: 4, road.road_width: 102}
        for line in price_direct.type_lines:
            del known[line["cost"]], known[line["share"]]
        known |= {sec.quantity: 2, **sides}
        assert value_of(price_direct.longest, known) == long
        assert value_of(price_direct.widest, known) == wide
        assert value_of(price_direct.oversize, known) == flags


def test_the_price_follows_the_order_of_the_basis():
    for known in jobs(600):
        assert value_of(price.client_total, known) == pytest.approx(reckoned(known), abs=0.011)


BASE = given(random.Random(7)) | {
    **{price.task_lines[key]["quantity"]: 11 for key in COUNTED},
    **{line[name]: value for line in price_direct.type_lines for name, value in (
        ("quantity", 2), ("each", 120), ("hours", 2000), ("cost", 30), ("share", 8))},
    site.gangway_length: 16.0, road.trailer_length: 20.0, road.trailer_overhang: 4.0,
    rates.permit_place: rates.PLACES.keys[0],
}
"""A job in which everything counts."""
MOVERS = [ask for ask in rates.sheet.inputs if ask.unit in ("$", "$/h", "h", "h/ft²", "$/mile",
                                                             "$/lb", "mile")
          and ask not in (rates.day_hours, rates.price_step, rates.deposit_cap)]
MOVERS += [rates.burden, rates.visits, rates.small_tools, rates.small_supplies, rates.purchase_tax,
           rates.contingency, rates.overhead, rates.margin, *orders.group_cost.values()]
MOVERS += [price.task_lines[key]["quantity"] for key in COUNTED]
MOVERS += [line[name] for line in price_direct.type_lines for name in ("quantity", "hours")]


@pytest.mark.parametrize("row", MOVERS, ids=lambda r: r.label)
def test_a_dearer_or_larger_thing_moves_the_price(row):
    before = dict(BASE)
    value_of(row, before)
    after = dict(BASE) | {row: before[row] * 1.5 + 0.1}
    moved = price.fees_outside if row is rates.permit_fees else price.exact
    assert value_of(moved, after) > value_of(moved, before)


def test_permit_at_cost_or_inside_the_margin():
    out, inside = (dict(BASE) | {rates.permit_place: place, rates.permit_fees: 900.0,
                                 rates.margin: 0.25} for place in rates.PLACES.keys)
    step = value_of(price.exact, inside) - value_of(price.exact, out)
    assert step == pytest.approx(900 / 0.75)
    assert (value_of(price.fees_outside, out), value_of(price.fees_outside, inside)) == (900, 0)
    assert (value_of(price.fees_inside, out), value_of(price.fees_inside, inside)) == (0, 900)


def test_hours_that_eat_the_profit():
    for known in jobs(300):
        hours, pay, burden = (value_of(r, known) for r in (
            price.profit_hours, rates.wage, rates.burden))
        assert hours * pay * (1 + burden) == pytest.approx(value_of(price.profit, known))


def test_an_untyped_job_says_that_its_figures_are_invented():
    assert value_of(price.whose, {}).startswith("INVENTED")
    assert "INVENTED" not in value_of(price.whose, {rates.whose: rates.WHOSE.keys[1]})


# ------------------------------------------------------------------ takeoff and orders


def ordered(rng: random.Random) -> dict:
    """Return what Orders rests on: nets of Takeoff, boards of the cut list, choices of a job."""
    known = {ask: rng.choice(ask.choices.keys) for ask in (
        job.water, job.finish, job.wood, job.timber_wood, job.sawn, job.bolt, job.lag,
        job.deck_screw, job.stringer_angle, job.corner_inside, job.corner_outside,
        job.washer_plate, site.chain)}
    known |= {job.salt_distance: rng.choice((0.0, 299.0, 301.0, 1e6)), job.lag_length: 3.0,
              job.low_water_depth: 4.0, job.longest_stock: 20.0}
    for group in takeoff.items.values():
        known |= {item.line["net"]: rng.choice((0, rng.randrange(1, 900))) for item in group}
    for cut in (*cut_list.buy, *cut_list.deck_buy):
        boards = rng.choice((0, rng.randrange(1, 60)))
        known |= {cut["size"]: rng.choice(LUMBER.keys), cut["stock"]: "16 ft",
                  cut["boards"]: boards, cut["feet"]: boards * 16.0,
                  cut["price"]: round(rng.uniform(0.5, 9), 2)}
    for ask in orders.yard_price.values():
        if rng.random() < 0.3:
            known[ask] = round(rng.uniform(0, 400), 2)
    return known


def lines_of(group: str) -> list:
    """Return the lines of Orders that belong to a group, as they stand."""
    rows = {id(row) for row in orders.costs[group]}
    return [item for item in orders.sheet.items
            if hasattr(item, "rows") and not hasattr(item, "table")
            and id(item.rows.get("cost")) in rows]


def test_packs_are_whole_and_just_enough():
    for number in range(60):
        known = ordered(random.Random(number))
        for item in itertools.chain(*takeoff.items.values()):
            line = item.line
            net, packs = value_of(line["net"], known), value_of(line["packs"], known)
            spare = value_of(line["waste"], known) if "waste" in line.rows else 0
            one = value_of(line["pack"], known) if "pack" in line.rows else 1
            assert packs == int(packs) and (packs == 0) == (net == 0)
            assert packs * one >= net * (1 + spare) - 1e-6
            assert (packs - 1) * one < net * (1 + spare) or packs == 0


def test_cost_is_what_is_ordered_times_the_yard_s_price_or_the_catalog_s():
    for number in range(60):
        known = ordered(random.Random(number))
        groups = {}
        for group in orders.costs:
            for place, line in enumerate(lines_of(group), start=1):
                typed = orders.yard_price[f"{group}_{place}"]
                paid = known.get(typed, value_of(line["catalog"], known))
                many = value_of(line["count" if "boards" in group or group == "lumber"
                                     else "packs"], known)
                cost = value_of(line["cost"], known)
                assert cost == pytest.approx(paid * many)
                groups[group] = groups.get(group, 0) + cost
        groups["decking"] += groups.pop("deck_boards")
        for group, cost in groups.items():
            assert value_of(orders.group_cost[group], known) == pytest.approx(cost)
        assert value_of(orders.materials, known) == pytest.approx(sum(groups.values()))


def test_every_line_to_buy_stands_once_on_orders():
    for group, items in takeoff.items.items():
        lines = lines_of(group)
        assert [line.label for line in lines] == [item.line.label for item in items]
    assert len(lines_of("lumber")) == len(cut_list.buy)
    assert len(lines_of("deck_boards")) == len(cut_list.deck_buy)
    assert set(orders.group_cost) == {*takeoff.items, "lumber"}


@pytest.mark.parametrize(("boards", "spare", "bought"), [
    (0, 0.1, 0), (4, 0.1, 4), (5, 0.1, 6), (26, 0.1, 29), (7, 0, 7)])
def test_spare_boards_come_to_the_nearest_board(boards, spare, bought):
    cut, line = cut_list.buy[0], lines_of("lumber")[0]
    known = {cut["boards"]: boards, cut["feet"]: boards * 12.0, job.lumber_waste: spare}
    assert value_of(line["packs"], known) == bought
    assert value_of(line["count"], known) == pytest.approx(bought * 12)


@pytest.mark.parametrize(("size", "heavy"), [("2x8", False), ("4x16", False), ("6x6", True),
                                             ("8x8", True)])
def test_the_yard_is_told_wood_treatment_and_sawing(size, heavy):
    cut, line = cut_list.buy[0], lines_of("lumber")[0]
    known = {cut["boards"]: 3, cut["size"]: size, cut["stock"]: "16 ft", job.sawn: "rough",
             job.wood: "Hem-Fir No.2", job.timber_wood: job.timber_wood.choices.keys[1],
             job.water: "fresh", job.salt_distance: 1e6}
    said = value_of(line.spec, known)
    assert said.startswith(known[job.timber_wood if heavy else job.wood])
    assert "rough" in said and "UC4A" in said
    assert value_of(line.label, known) == f"{size}, 16 ft"


@pytest.mark.parametrize(("water", "far", "above", "below"), [
    ("fresh", 1e6, "UC4A", "UC4A"), ("fresh", irc.salt_distance.value, "UC4B", "UC4A"),
    ("sea", 0.0, "UC4B", "UC5"), ("brackish", 0.0, "UC4B", "UC5")])
def test_use_category_by_water(water, far, above, below):
    known = {job.water: water, job.salt_distance: far}
    assert value_of(orders.use_above, known) == above
    assert value_of(orders.use_below, known) == below


def test_every_finish_is_told_with_its_standard():
    for finish in FINISHES.keys:
        said = value_of(orders.fastener_words, {job.finish: finish})
        assert said.startswith(finish) and len(said) > len(finish) + 2


def test_lead_time_is_the_longest():
    known = {orders.lead_time["floats"]: 9, orders.lead_time["hardware"]: 12}
    assert value_of(orders.longest_lead, known) == 12


def test_catalog_money_may_be_typed_as_dear_as_on_orders():
    assert all(ask.most == catalog.MONEY[1] for ask in orders.yard_price.values())
