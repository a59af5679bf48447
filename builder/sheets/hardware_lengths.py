"""Hardware, fourth part: bolt lengths as sums, and what finish the water asks for."""

from __future__ import annotations

from builder.language import Series, any_of, greatest, least, sum_over, tally, when
from builder.language.units import TEXT

from . import catalog, parts
from . import hardware_bolts as ends
from . import hardware_corners as corners
from . import inputs as job
from . import sections as sec
from .hardware_bolts import (
    STATICS,
    D,
    block,
    bolt,
    caution,
    check,
    find,
    note,
    plate,
    row,
    sheet,
)
from .reference import FINISHES, WATERS, irc, own

STOCK = catalog.BOLT_STOCK
LINES = len(STOCK.keys)
LENGTHS = max(STOCK.entries("D").count(d) for d in STOCK.entries("D"))
"""Most lengths stocked of one diameter."""

block("Bolt lengths")
note("Length under the head = plates + wood + washers + nut + projection, up to the next length "
     "in stock. Stock stands in the catalog by diameter, then length.")
washer_t = row("Cut washer", "t_w", "in", bolt["washer thickness"], "NDS 2018 Table L6", digits=3)
past = row("Nut and projection", "h_n", "in", bolt["nut height"] + own.stack_projection,
           "NDS 2018 Table L1", digits=3)
before = row("Stock lines of thinner bolts", "i_0", "", tally(STOCK, D_below=D), "catalog",
             digits=0)
stocked = row("Stock lines of this diameter", "i_n", "", tally(STOCK, D=D), "catalog",
              digits=0)


def _stocked(name: str, tag: str, total):
    """Declare length needed [in], line of the stock and stocked length [in] of one use."""
    need = row(f"{name}: length needed", f"l_{tag}", "in", total, STATICS)
    line = sheet.line(f"{name}: line in the stock", STOCK, greatest(1, least(
        before + tally(STOCK, D=D, length_below=need) + 1, before + stocked, LINES)))
    return need, line, row(f"{name}: bolt to order", f"L_{tag}", "in", line["length"], "catalog")


leg_need, leg_line, leg_bolt = _stocked(
    "Stringer leg", "bs", ends.t_p + ends.t_m + plate["thickness"] + washer_t + past)
rail_need, rail_line, rail_bolt = _stocked(
    "Rail leg", "br", ends.t_p + ends.t_n + plate["thickness"] + washer_t + past)
brackets = row("Plates of both brackets", "t_2", "in",
               corners.inside["plate thickness"] + corners.outside["plate thickness"], "catalog",
               digits=4)
header_need, header_line, header_bolt = _stocked(
    "Corner, header", "bh", brackets + parts.header_t + 2 * washer_t + past)
corner_need, corner_line, corner_bolt = _stocked(
    "Corner, rail", "bc",
    brackets + sec.rail_plies * parts.rail_t + 2 * washer_t + past)
ply_need, ply_line, ply_bolt = _stocked(
    "Rail plies", "bp", sec.rail_plies * parts.rail_t + 2 * washer_t + past)
skirt_need, skirt_line, skirt_bolt = _stocked(
    "Skirt bolted to count", "bk",
    parts.skirt_t + sec.rail_plies * parts.rail_t + 2 * washer_t + past)
longest = row("Longest of them", "l_max", "in", greatest(
    leg_need, rail_need, header_need, corner_need, ply_need, skirt_need), STATICS)
longest_line = sheet.line("Longest bolt of this diameter, line in the stock", STOCK,
                          greatest(1, least(before + stocked, LINES)))
length_check = check(
    "A bolt that long is stocked", longest, at_most=longest_line["length"], source=STATICS,
    group="Connections",
    cure="Add the length to the stock list, or use threaded rod with two nuts.")
stock_check = check(
    "Bolts of this diameter are stocked", stocked, at_least=1, source=STATICS,
    group="Connections", cure="Choose a stocked diameter, or add it to the stock list.")

block("Bolts by length, as counted on Parts")
note("Half the bolts of an angle or corner go through each leg.")
counts = Series("n", [row(f"{use}: bolts", f"n_{tag}", "each", count, "Parts", digits=0)
                      for use, tag, count in (
    ("Stringer leg", "bs", parts.stringer_bolts / 2),
    ("Rail leg", "br", parts.stringer_bolts / 2),
    ("Corner, header", "bh", parts.corner_bolts / 2),
    ("Corner, rail", "bc", parts.corner_bolts / 2),
    ("Rail plies", "bp", parts.ply_bolts),
    ("Skirt bolted to count", "bk", parts.skirt_bolts))])
lines = Series("i", [row(f"{use}: line in the stock", f"i_{tag}", "", line, "catalog", digits=0)
                     for use, tag, line in (
    ("Stringer leg", "bs", leg_line), ("Rail leg", "br", rail_line),
    ("Corner, header", "bh", header_line), ("Corner, rail", "bc", corner_line),
    ("Rail plies", "bp", ply_line), ("Skirt bolted to count", "bk", skirt_line))])
by_length = [row(f"Bolts of stock line {k} of this diameter", f"n_L{k}", "each",
                 sum_over(lines.is_(before + k) * counts), STATICS, digits=0)
             for k in range(1, LENGTHS + 1)]

block("Finish and treatment")
salt = row("Salt water: 1, fresh 0", "k_sw", "", WATERS.find(job.water)["salt"], "Water",
           digits=0)
near_salt = row("Salt water, or within its reach: 1, else 0", "k_sn", "",
                when(any_of(salt >= 1, job.salt_distance <= irc.salt_distance), 1, 0),
                "IRC 2015 R507.2.3", digits=0)
finish_line = find("Finish, line in its table", FINISHES, job.finish)
finish_score = row("Finish: 2 suits, 1 wears near salt, 0 does not", "n_f", "each",
                   2 - (near_salt + salt) * (1 - finish_line["good in salt water"]),
                   "IRC 2015 R317.3", digits=0)
finish_check = check(
    "Finish suits the water", finish_score, at_least=1, look_at=2, source="IRC 2015 R317.3",
    group="Durability", cure="Stainless steel 316 in salt water and within 300 ft of it.")
fasteners = row("Fasteners to", "", TEXT, finish_line["fasteners"], "IRC 2015 R317.3")
connectors = row("Connectors to", "", TEXT, finish_line["connectors"], "IRC 2015 R317.3")
treat_above = row("Treatment above the water, use category", "", TEXT,
                  when(near_salt >= 1, "UC4B", "UC4A"), "AWPA U1")
treat_below = row("Treatment in the water, use category", "", TEXT,
                  when(salt >= 1, "UC5", "UC4A"), "AWPA U1")
note("One metal a joint: bolts, nuts, washers and plates of one joint carry the same finish.")
caution("Treat every cut end and every hole in the field. Treated wood: mask, gloves and goggles "
        "when cutting; never burn it.")
