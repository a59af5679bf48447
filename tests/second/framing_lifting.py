"""A section in its slings; and how a rail's end floats sit under a point load near an end."""

from __future__ import annotations

from math import cos, radians, sin

from tests.second.framing_basis import INCHES, SLACK, Results, at_most, figure, nds, own
from tests.second.framing_loads import Loads
from tests.second.framing_water import Rail, row_of_floats
from tests.second.framing_wood import Stability
from tests.second.given import Given


def sunk_at_end(g: Given, done: Results, load: Loads) -> Results:
    """Return the rows of the end floats with the point load on one rail, near an end."""
    row = row_of_floats(g, done)
    place = row.half - own("point_from_edge") / INCHES
    half_sinkage = max(done["Buoyancy.sinkage"], figure("own", "one_pound_an_inch")) / 2
    mean = load.point / half_sinkage
    more = place * -float(row.begins[0]) / row.spread
    still = done["Buoyancy.draft_service"]
    deepest = (still + mean * (1 + more)) / done["Parts.float_depth"]
    highest = (still + mean * (1 - more)) / done["Parts.float_depth"]
    edge = max(0, deepest, 1 - highest)
    under = (g.sec["strength_load"] * done["Parts.deck_area"]
             > done["Buoyancy.capacity"] - done["Weight.service"])
    return {"Framing.rail_sinkage": mean, "Framing.end_share": more, "Framing.float_edge": edge,
            "Framing.first_under": "the floats go under first" if under else "the floats stay up",
            } | at_most("Framing.float_check", edge, 1, worst="LOOK")


def work(g: Given, done: Results, rail: Rail) -> Results:
    """Return the rows of lifting by two slings under each rail; a skirt helps nothing."""
    length = g.sec["length"]
    weight = max(done["Weight.launch"], done["Weight.lifted"])
    force = g.job["lift_factor"] * weight
    line = force / 2 / length
    from_end = g.job["sling_share"] * length
    between = length - 2 * from_end
    over = line * from_end ** 2 / 2
    middle = line * between ** 2 / 8 - over
    stress = max(over, abs(middle)) * INCHES / (rail.plies * rail.ply.modulus)
    star = rail.ply.bending / nds("CD_live") * own("CD_lifting")
    deep, free = rail.ply.deep, max(between, from_end) * INCHES
    if free / deep < nds("le_ratio_limit") - SLACK:
        effective = nds("le_uniform_short") * free
    else:
        effective = nds("le_uniform_long") * free + nds("le_uniform_depths") * deep
    held = Stability(effective, rail.ply.thick, deep, rail.ply.least_stiffness, star)
    angle = radians(own("sling_angle_least"))
    pull = force / 2 / sin(angle)
    found = {
        "lift_weight": weight, "lift_load": force, "lift_w": line, "sling_a": from_end,
        "lift_over": over, "lift_middle": middle, "lift_fb": stress,
        "lift_duration": own("CD_lifting"), "lift_star": star, "lift_free": free,
        "le_short": nds("le_uniform_short"), "le_long": nds("le_uniform_long"),
        "lift_length": effective, "sling_angle": own("sling_angle_least"),
        "sling_sine": sin(angle), "sling_tension": pull, "sling_push": pull * cos(angle)}
    return ({f"Framing.{key}": value for key, value in found.items()} | held.rows("lifted")
            | at_most("Framing.lift_check", stress, held.star * held.factor)
            | at_most("Framing.slender_check", held.slenderness, nds("RB_most")))
