"""Stability, fifth part: what each case comes to: state, draft, list, trim, tilt, four corners.

Rows of this part are for the reader: an unstable case shows a dash for every angle and height, and
nothing is worked out from them.
"""

from __future__ import annotations

from builder.language import Row, arc_tangent, degrees, greatest, least, or_dash
from builder.language.units import TEXT

from .reference import table
from .stability_cases import (
    CASES,
    dry,
    low,
    of_weight,
    rise_1,
    tan_list,
    tan_trim,
    tilt,
    wet,
)
from .stability_group import (
    F_X,
    F_Y,
    STIFFENING,
    half_length,
    half_width,
    lost_F_x,
    lost_F_y,
)
from .stability_sheet import (
    ARCHIMEDES,
    STABLE,
    STATICS,
    TURNS,
    block,
    note,
    row,
)
from .stability_weights import GM_a, GM_b, afloat, stable

STATES = table("stability_states")
HOLDS, NEAR, OUT, UNDER, DECK, OVER = STATES.entries("state")
CORNERS = {"far right": (1, 1), "far left": (1, -1), "near right": (-1, 1), "near left": (-1, -1)}
"""Side along and side across of each corner, as one walks out along +x."""

note("What each case comes to. holds: the angles are exact. NEAR UNSTABLE: barely stable, the tilt "
     "shown is on the high side. CORNER OUT, FLOAT UNDER: a float corner leaves the water or its "
     "top goes under (round floats: nearly), and the true tilt is more than shown. DECK UNDER: a "
     "deck corner is under water. UNSTABLE: it turns over, and there is no angle. The mean draft "
     "is that of its weight, in the block of weights above.")

state: dict[str, Row] = {}
shown_list: dict[str, Row] = {}
shown_trim: dict[str, Row] = {}
shown_tilt: dict[str, Row] = {}
corner: dict[str, dict[str, Row]] = {}
"""By case: words; angles [deg]; deck above water at each corner [in]."""


def _state(key: str):
    stiff = least(of_weight(GM_a, key), of_weight(GM_b, key))
    return STATES.at(greatest(
        1, 6 * of_weight(stable, key).is_(TURNS), 5 * (low[key] < 0), 4 * (dry[key] < 0),
        3 * (wet[key] < 0), 2 * (rise_1[key] > STIFFENING * stiff)))["state"]


def _corner(key: str, along: int, across: int):
    """Return the deck's height above water at a corner [in]: F less what it goes down from F."""
    x, y = (lost_F_x, lost_F_y) if key == "lost" else (F_X, F_Y)
    ends = half_length - x if along > 0 else half_length + x
    sides = half_width - y if across > 0 else half_width + y
    free = afloat[CASES[key].weight].free
    b, c = tan_trim[key] * ends, tan_list[key] * sides
    if along > 0:
        return free - (b + c if across > 0 else b - c).in_("in")
    return free + (b - c if across > 0 else b + c).in_("in")


def _declare(key: str, name: str) -> None:
    """Declare the block of a case."""
    steady = of_weight(stable, key).is_(STABLE)
    block(f"Case: {name}")
    state[key] = row(f"State: {name}", "State", TEXT, _state(key), ARCHIMEDES, 0)
    for made, words, symbol, angle in (
            (shown_list, "List", "φ", degrees(arc_tangent(tan_list[key]))),
            (shown_trim, "Trim", "θ", degrees(arc_tangent(tan_trim[key]))),
            (shown_tilt, "Tilt, list and trim together", "τ", tilt[key])):
        made[key] = row(f"{words}: {name}", f"{symbol}[{key}]", "deg", or_dash(steady, angle),
                        ARCHIMEDES, 2)
    corner[key] = {
        place: row(f"Deck corner {place}, above water: {name}", f"F[{key}, {place}]", "in",
                   or_dash(steady, _corner(key, *sides)), STATICS, 1)
        for place, sides in CORNERS.items()}


for _key, _case in CASES.items():
    _declare(_key, _case.name)
