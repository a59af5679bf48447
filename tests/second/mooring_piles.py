"""Guide piles, second calculation: push, bending, depth in the bed, top, hoop bolts."""

from __future__ import annotations

from math import hypot, pi, sqrt

import numpy as np

from tests.second.framing_basis import at_most, nds, own
from tests.second.gangway import bolt_shear
from tests.second.given import Given, Results, constants
from tests.second.site import ours

INCHES = 12
LEVEL = 1.0


def piles(g: Given, done: Results, f: Results) -> Results:
    """Return the rows of guide piles; where others hold the dock their push is 0."""
    found = push(g, done, f)
    found |= bending(g, found)
    found |= embedment(g, found)
    found |= top(g, done, f)
    return found | hoop(g, found)


def push(g: Given, done: Results, f: Results) -> Results:
    """Return the push on a pile [lb]: its share, and the turn on piles at both ends or sides."""
    across = (f["carried_y"] + f["turn_y"] / (g.sec["length"] / 2)) / f["points"]
    along = (f["carried_x"] + f["turn_x"] / (g.sec["width"] / 2)) / f["points"]
    hoop_up = done["Buoyancy.under_service"] + done["Parts.frame_depth"] / 2
    height = (g.job["low_water_depth"] + g.job["flood"] + g.job["scour"]
              + max(hoop_up, 0.0) / INCHES)
    P = max(across, along) if g.job["mooring"] == "guide piles" else 0.0
    return {"pile_y": across, "pile_x": along, "pile_P": P, "pile_h": height,
            "pile_b": g.job["pile_diameter"] / INCHES}


def bending(g: Given, f: Results) -> Results:
    """Return the bending moment [lb·ft] where the shear turns, and its stress [psi]."""
    m = constants("ibc_1807")["isolated"] if g.job["isolated"] == "yes" else 1.0
    rate = m * g.job["soil_bearing"] * f["pile_b"]
    P, slab = f["pile_P"], g.job["slab"] == "yes"
    z = 0.0 if slab else sqrt(2 * P / rate)
    # The bed pushes back rate × z² / 2 by then, with its centre a third of z above.
    M = P * (f["pile_h"] + z) - rate * z ** 3 / 6
    modulus = pi * g.job["pile_diameter"] ** 3 / 32
    stress = INCHES * M / modulus
    return {"soil_m": m, "bed_rate": rate, "turn_depth": z, "pile_M": M, "pile_f": stress,
            **at_most("pile_check", stress, g.job["pile_Fb"] * nds("CD_wind"))}


def embedment(g: Given, f: Results) -> Results:
    """Return the depth in the bed needed [ft]: d³ = k (d + 1.09 h), or the rule under a slab."""
    ibc, P, h, rate = constants("ibc_1807"), f["pile_P"], f["pile_h"], f["bed_rate"]
    k = 3 * ibc["post_A"] * P / rate
    c = ibc["post_h"] / 4
    d = polished([1.0, 0.0, -k, -k * c * h])
    S_1 = rate / f["pile_b"] * d / 3
    A = ibc["post_A"] * P / max(S_1 * f["pile_b"], ours("least_line"))
    code = A / 2 * (1 + sqrt(1 + ibc["post_h"] * h / A)) if A else 0.0
    deepest, held = ibc["post_deepest"], constants("ibc_held_posts")["post_held"]
    cube = held * P * h / rate
    short = float(np.cbrt(cube))
    under_slab = short if short <= deepest else sqrt(cube / deepest)
    needed = under_slab if g.job["slab"] == "yes" else d
    return {"post_k": k, "embed": d, "S_1": S_1, "post_A": A, "embed_code": code,
            "held_cube": cube, "held_short": short, "embed_held": under_slab,
            "S_3": rate / f["pile_b"] * min(under_slab, deepest), "embed_asked": needed,
            **at_most("embed_check", needed, max(g.job["pile_embedded"], own("least_length"))),
            **at_most("deep_check", needed, deepest, look=LEVEL, worst="LOOK")}


def polished(terms: list[float]) -> float:
    """Return the largest real root of a polynomial, made exact by Newton's rule."""
    roots = np.roots(terms)
    x = float(max((root.real for root in roots if abs(root.imag) < 1e-6), default=0.0))
    for _ in range(4):
        slope = np.polyval(np.polyder(terms), x)
        if not slope:
            return x
        x -= float(np.polyval(terms, x) / slope)
    return x


def top(g: Given, done: Results, f: Results) -> Results:
    """Return how high above low water the pile must stand [ft]."""
    free = max(done["Buoyancy.free_launch"], own("least_inches")) / INCHES
    held = f["here"] and g.job["mooring"] == "guide piles"
    needed = g.job["flood"] + free + ours("pile_top_clear") if held else 0.0
    return {"top_needed": needed,
            **at_most("top_check", needed, max(g.job["pile_top"], own("least_length")),
                      look=LEVEL)}


def hoop(g: Given, f: Results) -> Results:
    """Return the worst of four hoop bolts [lb]: its share of the push, and of the push's turn."""
    P, count = f["pile_P"], ours("hoop_bolts")
    along, up = ours("hoop_bolt_along"), ours("hoop_bolt_up")
    arm = g.job["pile_diameter"] / 2 + g.job["hoop_play"] + ours("hoop_bracket")
    squares, turn = count * (along ** 2 + up ** 2), P * arm
    worst = hypot(P / count + turn * up / squares, turn * along / squares)
    return {"hoop_arm": arm, "hoop_squares": squares, "hoop_turn": turn, "hoop_bolt": worst,
            **at_most("hoop_check", worst, bolt_shear(g)), "rub": ours("rub_share") * P}
