"""Framing, second calculation, for one section type: every member and the section on water.

Written from the load paths and the National Design Specification for Wood Construction.
"""

from __future__ import annotations

from tests.second import (
    framing_lifting,
    framing_sizes,
    framing_spans,
    framing_water,
)
from tests.second.framing_basis import INCHES, Results, at_least, lines, nds, own, place_of
from tests.second.framing_loads import Loads, loads
from tests.second.framing_wood import incised, supplement
from tests.second.given import Given


def work(g: Given, done: Results) -> Results:
    """Return the results of Framing for one section type."""
    load, rail = loads(g, done), framing_water.rail_of(g, done)
    beam = framing_spans.stringers(g, done, load)
    shared = framing_spans.repetitive(g, done, beam.member)
    found = common(g, load) | allowed(g) | framing_spans.work(g, done, load)
    found |= framing_water.work(g, done, load, rail)
    found |= framing_lifting.sunk_at_end(g, done, load) | framing_lifting.work(g, done, rail)
    found |= framing_sizes.spans(g, beam, shared)
    return found | framing_sizes.ladder(g, beam, shared, rail, found)


def allowed(g: Given) -> Results:
    """Return what the authority said of timber frames: to ask before quoting."""
    answer = {"yes": 2, "no": 0}.get(g.job["timber_rule"], 1)
    return {"Framing.timber_asked": answer,
            **at_least("Framing.timber_check", answer, 1, look=1 / 2)}


def common(g: Given, load: Loads) -> Results:
    """Return loads and factors that all members share."""
    wet = incised(g)
    first = place_of("woods", g.job["wood"])
    head = lines("woods")[first - 1]
    return {f"Framing.{key}": value for key, value in {
        "across": int(framing_spans.across(g)), "snow": load.snow, "dead": load.dead,
        "live": load.live, "duration_live": nds("CD_live"), "duration_snow": nds("CD_snow"),
        "uniform": load.spread, "point_edge": own("point_from_edge") / INCHES,
        "by_width": head["by width"], "stud": head["stud"], "temperature": nds("Ct_normal"),
        "incising": supplement("Ci_strength") if wet else 1,
        "incising_stiff": supplement("Ci_E") if wet else 1, "dimension_line": first,
        "timber_line": place_of("woods", g.job["timber_wood"])}.items()}
