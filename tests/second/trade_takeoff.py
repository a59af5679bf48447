"""Takeoff, second calculation: each material of the whole dock once.

Net is what Parts and Hardware count on one section times the sections built.  Spare comes on top
as a share, and what is sold by the pack goes up to whole packs.  Lumber and deck boards stay in
feet, since the cut list buys them in stock lengths.
"""

from __future__ import annotations

from dataclasses import dataclass

from tests.second.given import Given, constants, table
from tests.second.trade_names import column, shown, whole_up

CHAINS, PILES, ARMS = "chains and dead weights", "guide piles", "shore arms or cables"

@dataclass
class Material:
    """One line of what is bought whole.

    ``net`` in its own unit; ``spare`` a share or None; ``pack`` how many come in a pack or None
    where it is sold singly; ``price`` of a pack or a single one.
    """

    group: str
    label: str
    net: float
    price: float
    spare: float | None = None
    pack: float | None = None
    kind: str = ""

    @property
    def wanted(self) -> float:
        """Return net and spare, in its own unit."""
        return self.net * (1 + (self.spare or 0))

    @property
    def packs(self) -> int:
        """Return whole packs, or whole pieces or feet where it is sold singly."""
        return whole_up(self.wanted / (self.pack or 1))


def of_all(g: Given, name: str, sheet: str = "Parts") -> float:
    """Return a count of one section added up over all sections of the dock."""
    return sum(t.sec["quantity"] * t.done[f"{sheet}.{name}"] for t in g.all)


def fitted(g: Given, key: str) -> float:
    """Return fittings typed for one section added up over all sections of the dock."""
    return sum(t.sec["quantity"] * t.sec[key] for t in g.all)


def piece_lengths(t: Given) -> dict[str, float]:
    """Return the length of a piece of each use [ft]; headers stand between the rails."""
    between = t.done["Parts.clear_span"]
    return {"rails": t.sec["length"], "headers": between,
            "stringers": t.done["Parts.stringer_length"], "cross_beams": between,
            "skirt_long": t.done["Parts.skirt_long"],
            "skirt_short": t.done["Parts.skirt_short"]}


def piece_counts(t: Given) -> dict[str, float]:
    """Return how many pieces of each use one section has, before splicing."""
    return {**{use: t.done[f"Parts.{use}"] for use in ("rails", "headers", "stringers")},
            "cross_beams": t.sec["cross_beams"], "skirt_long": 2, "skirt_short": 2}


SIZE_OF = {"rails": "rail_size", "headers": "header_size", "stringers": "stringer_size",
           "cross_beams": "cross_beam_size", "skirt_long": "skirt_size",
           "skirt_short": "skirt_size"}
"""Use of lumber → the input that names its size."""


def lumber_by_use(t: Given) -> dict[str, float]:
    """Return the feet of each use of lumber on one section."""
    lengths = piece_lengths(t)
    return {use: count * lengths[use] for use, count in piece_counts(t).items()}


def lumber_feet(g: Given) -> dict[str, float]:
    """Return size → feet of the whole dock, net as cut."""
    feet = dict.fromkeys(g.catalog["lumber_prices"], 0.0)
    for t in g.all:
        for use, length in lumber_by_use(t).items():
            feet[t.sec[SIZE_OF[use]]] += t.sec["quantity"] * length
    return feet


def board_feet(g: Given) -> dict[str, float]:
    """Return deck board → feet of the whole dock, net."""
    feet = dict.fromkeys(g.catalog["boards"], 0.0)
    for t in g.all:
        if t.sec["deck"] == "boards":
            feet[t.sec["board"]] += (t.sec["quantity"] * t.done["Parts.boards"]
                                     * t.done["Parts.board_length"])
    return feet


def materials(g: Given) -> list[Material]:
    """Return all that is bought whole, in the order of the groups."""
    return [*_floats(g), *_decking(g), *_hardware(g), *_fasteners(g), *_anchors(g),
            *_sundries(g)]


def _floats(g: Given) -> list[Material]:
    return [Material("floats", model, sum(
        t.sec["quantity"] * t.done["Parts.floats"] for t in g.all
        if t.sec["float_model"] == model), product["price"])
        for model, product in g.catalog["floats"].items()]


def _decking(g: Given) -> list[Material]:
    found = [Material("decking", panel, sum(
        t.sec["quantity"] * t.done["Parts.panels"] for t in g.all
        if t.sec["deck"] == "panels" and t.sec["panel"] == panel), product["price"],
        spare=g.job["deck_waste"]) for panel, product in g.catalog["panels"].items()]
    screw = g.catalog["sundries"][f"Deck screw {g.job['deck_screw']}"]
    return [*found, _packed(g, "decking", "Deck screws", of_all(g, "deck_screws"), screw)]


def _packed(g: Given, group: str, label: str, net: float, product: dict) -> Material:
    """Return a fastener that comes by the pack, with the spare that fasteners get."""
    return Material(group, label, net, product["price a pack"], g.job["hardware_spare"],
                    product["pack"], "fastener")


def _hardware(g: Given) -> list[Material]:
    chosen = (("Stringer-end angle", "angles", "stringer_angle", "angles"),
              ("Corner bracket, inside", "corner_brackets", "corner_inside", "corner_inside"),
              ("Corner bracket, outside", "corner_brackets", "corner_outside",
               "corner_outside"),
              ("Washer plate", "washer_plates", "washer_plate", "washer_plates"))
    found = [Material("hardware", label, of_all(g, count),
                      g.catalog[products][g.job[choice]]["price"], kind="connector")
             for label, products, choice, count in chosen]
    return [*found, *_bolts(g)]


def thinner_lines(g: Given) -> int:
    """Return how many lines of the bolt stock are thinner than the job's bolts."""
    diameter = g.all[0].done["Hardware.D"]
    return sum(line["D"] < diameter - 1e-9 for line in g.catalog["bolt_stock"].values())


def _bolts(g: Given) -> list[Material]:
    stock = list(g.catalog["bolt_stock"].values())
    first = thinner_lines(g)
    count = sum(name.startswith("Hardware.by_length_") for name in g.all[0].done)
    return [Material("hardware", f"Bolts, length {n} in stock",
                     of_all(g, f"by_length_{n}", "Hardware"),
                     # House choice: a length past the end of the stock takes the last price.
                     stock[min(first + n, len(stock)) - 1]["price"],
                     spare=g.job["hardware_spare"], kind="fastener")
            for n in range(1, count + 1)]


def _fasteners(g: Given) -> list[Material]:
    sundries, bolt, lag = g.catalog["sundries"], g.job["bolt"], g.job["lag"]
    lines = (("Nuts", "bolts", f"Nut {bolt}"), ("Round washers", "washers", f"Washer {bolt}"),
             ("Float lags", "lags", f"Lag {lag}"),
             ("Washers under float lags", "lags", f"Washer {lag}"),
             ("Skirt screws", "skirt_screws", "Skirt screw No.14"))
    found = [_packed(g, "hardware", label, of_all(g, count), sundries[item])
             for label, count, item in lines]
    fittings = (("Section hinges", "hinges", "Section hinge"),
                ("Hinge pins", "hinges", "Hinge pin 3/4"),
                ("Mooring brackets", "mooring_brackets", "Mooring bracket"))
    return found + [Material("hardware", label, fitted(g, key),
                             sundries[item]["price a pack"], kind="connector")
                    for label, key, item in fittings]


def _anchors(g: Given) -> list[Material]:
    job, rates = g.job, constants("own_rates")
    held, how = fitted(g, "holds"), g.job["mooring"]
    chains, piles = held * (how == CHAINS), held * (how == PILES)
    arms = held * (how not in (CHAINS, PILES))
    pound_a_foot = next(float(column(row, "weight in air")) for row in table("chain")
                        if column(row, "chain") == job["chain"])
    pile_feet = job["pile_top"] + job["low_water_depth"] + job["pile_embedded"]
    return [
        Material("anchors", "Mooring chain", chains * job["chain_length"],
                 rates["chain_price"] * pound_a_foot),
        # House choice: a dead weight not chosen yet is none.
        Material("anchors", "Dead weights", chains * (job["block_weight"] > 0),
                 rates["block_price"] * job["block_weight"]),
        Material("anchors", "Shackles", chains * constants("own_terms")["shackles_a_leg"],
                 rates["shackle_price"]),
        Material("anchors", "Guide piles", piles, rates["pile_price"] * pile_feet, kind="pile"),
        Material("anchors", "Pile hoops", piles,
                 g.catalog["sundries"]["Pile hoop, 12 in pile"]["price a pack"],
                 kind="connector"),
        Material("anchors", "Shore arms or cables", arms, rates["arm_price"]),
    ]


def _sundries(g: Given) -> list[Material]:
    sundries, sold = g.catalog["sundries"], g.job["bumper_length"]
    lines = (("Cleats", "cleats", "Cleat 10 in"),
             ("Cleat backing plates", "cleats", "Cleat backing plate"),
             ("Corner wheels", "corner_wheels", "Corner wheel"),
             ("Ladders", "ladders", "Ladder, 4 steps"))
    found = [Material("sundries", label, fitted(g, key), sundries[item]["price a pack"])
             for label, key, item in lines]
    return [*found, Material("sundries", "Bumper", fitted(g, "bumper"),
                             sundries["Bumper, a foot"]["price a pack"] * sold, pack=sold)]


def specs(g: Given) -> dict[str, str]:
    """Return line → the words that say what it is; lines whose words are fixed are left out."""
    job, first = g.job, thinner_lines(g)
    stock = list(g.catalog["bolt_stock"])
    pile_feet = job["pile_top"] + job["low_water_depth"] + job["pile_embedded"]
    found = {model: f"rated {shown(p['rated buoyancy'], 0)} lb, shell {shown(p['shell'], 3)} in, "
                    f"{shown(p['own weight'], 0)} lb each"
             for model, p in g.catalog["floats"].items()}
    found |= {item.label: stock[min(first + n, len(stock)) - 1]
              for n, item in enumerate(_bolts(g), start=1)}
    return found | {
        "Deck screws": f"{job['deck_screw']} x {shown(job['deck_screw_length'], 1)} in",
        "Float lags": f"{job['lag']} x {shown(job['lag_length'], 1)} in",
        "Mooring chain": f"Grade 30, {job['chain']} in",
        "Dead weights": f"concrete, {shown(job['block_weight'], 0)} lb dry, with an eye cast in",
        "Guide piles": f"{shown(job['pile_diameter'], 1)} in at the bed, "
                       f"{shown(pile_feet, 1)} ft long",
        "Pile hoops": f"for a pile of {shown(job['pile_diameter'], 1)} in"}


def work(g: Given, done: dict[str, float | str]) -> dict[str, float | str]:
    """Return the results of Takeoff, for the whole dock."""
    found: dict[str, float | str] = {"Takeoff.thinner": thinner_lines(g)}
    found |= {f"Takeoff.{line}: words": words for line, words in specs(g).items()}
    for feet, share in ((lumber_feet(g), g.job["lumber_waste"]),
                        (board_feet(g), g.job["deck_waste"])):
        for name, net in feet.items():
            found[f"Takeoff.{name}: Net"] = net
            found[f"Takeoff.{name}: With spare"] = net * (1 + share)
    for item in materials(g):
        line = f"Takeoff.{item.label}"
        found[f"{line}: Net"] = item.net
        found[f"{line}: Packs"] = item.packs
        if item.spare is not None:
            found[f"{line}: Spare, share"] = item.spare
        if item.pack is not None:
            found[f"{line}: With spare"] = item.wanted
            found[f"{line}: In one pack"] = item.pack
    return found
