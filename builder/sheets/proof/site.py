"""Published examples of wind, waves, current, mooring and gangway, worked by the sheets' rows.

What does not enter an example is given as a value that leaves its answer as it is.
"""

from __future__ import annotations

import math
from collections.abc import Callable

from builder.language import Case, Row, family

from .. import buoyancy, gangway, mooring
from .. import inputs as job
from .. import inputs_site as site
from .. import sections as sec
from .. import site_loads as loads
from ..reference import table

FACTORS = table("unit_factors")
MORE_FACTORS = table("unit_factors_site")
TOLERANCE = "half the last printed decimal; more where the source rounds between"
Line = dict


def _lines(name: str, kind: str = "") -> list[Line]:
    """Return the lines of a check table, of one kind where it has kinds."""
    of = table(name)
    found = [{"row": key, **dict(zip(of.columns, line, strict=True)),
              **dict(zip(("clause", "status", "note"), notes, strict=True))}
             for key, line, notes in zip(of.keys, of.lines, of.notes, strict=True)]
    return [line for line in found if not kind or line["kind"] == kind]


def _quantity(line: Line) -> str:
    """Return the name of what a line prints, without its unit."""
    return line["quantity"].partition(" [")[0]


def _factor(name: str) -> float:
    """Return a factor between units, by its name, from either table of factors."""
    of = FACTORS if name in FACTORS.keys else MORE_FACTORS
    return of.entries("factor")[of.keys.index(name)]


def _family(key: str, title: str, lines: list[Line], given: Callable[[Line], dict],
            wants: dict[str, Row], units: dict[Row, tuple[str, float]] | None = None):
    """Make a family: lines that give the same are one case, each prints one quantity."""
    cases: dict[tuple, dict] = {}
    for line in lines:
        values, row = given(line), wants[_quantity(line)]
        # A trap prints another value for what an honest line prints too: a case of its own.
        place = (tuple(values.values()), line["trap"])
        case = cases.setdefault(place, {
            "name": line["row"], "given": values, "printed": {}, "step": {}, "wrong": {},
            "source": line["clause"], "printed_by": line["printed by"], "note": line["note"]})
        case["printed"][row] = line["right"]
        case["step"][row] = 2 * line["tolerance"]
        if line["trap"]:
            case["wrong"][row] = line["printed"]
    rows = list(dict.fromkeys(wants[_quantity(line)] for line in lines))
    return family(key, title, rows, [Case(**c) for c in cases.values()], units=units or {},
                  tolerance=TOLERANCE)


def _wind():
    """Velocity pressure, and the exposure coefficient of older and later constants."""
    return [
        _family("wind_pressure", "Wind: velocity pressure", _lines("checks_wind", "q"),
                lambda c: {loads.K_z: c["Kz"], site.terrain: c["Kzt"],
                           site.wind_speed: c["wind"]}, {"q": loads.q_z}),
        _family("wind_exposure", "Wind: exposure coefficient", _lines("checks_wind", "Kz"),
                lambda c: {loads.alpha: c["power"], loads.z_g: c["gradient"],
                           loads.k_z: c["factor"], loads.z_wind: c["height"]},
                {"Kz": loads.K_z}),
    ]


def _waves():
    """Length in water of any depth, breaking, and the growth formulas."""
    metre = ("m", _factor("m to ft"))
    return [
        _family("wave_length", "Waves: length by the dispersion relation",
                _lines("checks_waves", "length"),
                lambda c: {loads.period_high: c["period"], loads.dock_depth: c["depth"]},
                {"L0": loads.L_0, "L approx": loads.L_start, "L": loads.wave_length},
                {row: metre for row in (loads.dock_depth, loads.L_0, loads.L_start,
                                        loads.wave_length)}),
        _family("wave_breaking", "Waves: depth-limited height", _lines("checks_waves", "breaking"),
                lambda c: {loads.dock_depth: c["depth"]}, {"H": loads.H_breaking}),
        _family("wave_height_limit", "Waves: the shallow-water height in deep water",
                _lines("checks_waves", "height limit"),
                lambda c: {loads.X: c["fetch"], loads.tanh_a: c["depth"], loads.U_A: c["speed"]},
                {"H": loads.H_shallow}),
        _family("wave_period_limit", "Waves: the shallow-water period in deep water",
                _lines("checks_waves", "period limit"),
                lambda c: {loads.X: c["fetch"], loads.tanh_b: c["depth"], loads.U_A: c["speed"]},
                {"T": loads.T_shallow}),
        _family("wave_growth", "Waves: one site, three growth formulas (our own working)",
                _lines("checks_waves", "growth"),
                lambda c: {site.wind_mean: c["wind"], site.fetch: c["fetch"],
                           site.fetch_depth: c["depth"]},
                {"H deep": loads.H_deep, "T deep": loads.T_deep, "H shallow": loads.H_shallow,
                 "T shallow": loads.T_shallow, "H third": loads.H_cem, "T third": loads.T_cem}),
        _family("wave_grown", "Waves: a fully grown sea, its fetch and time",
                _lines("checks_sea_grown"),
                lambda c: {loads.U_A: c["speed"], loads.X: c["fetch"]},
                {"F": loads.F_full, "t": loads.wind_time},
                {loads.U_A: ("m/s", _factor("m/s to ft/s")),
                 loads.F_full: ("km", _factor("km to ft"))}),
    ]


def _current():
    """Broadside force on a hull in five depths."""
    metre = ("m", _factor("m to ft"))
    units = {sec.length: metre, job.low_water_depth: metre,
             buoyancy.draft_flotation: ("m", _factor("m to in")),
             site.current: ("m/s", _factor("m/s to ft/s")),
             job.water_weight: ("kg/m³", _factor("kg/m³ to pcf")),
             loads.current_across: ("MN", _factor("MN to lb"))}
    return _family("current_force", "Current: broadside force in shallow water",
                   _lines("checks_current"),
                   lambda c: {site.current: c["speed"], buoyancy.draft_flotation: c["draft"],
                              sec.length: c["length"], job.low_water_depth: c["depth"],
                              site.current_coefficient: c["coefficient deep"],
                              job.water_weight: c["water weight"]},
                   {"F": loads.current_across}, units)


def _chains():
    """Least chain without uplift, chain strength, dead weight under water, friction."""
    metre, kilo = ("m", _factor("m to ft")), ("kN", _factor("kN to lb"))
    thousand = _factor("kN to N")
    units = {mooring.height: metre, mooring.s: metre, mooring.leg_pull: kilo,
             mooring.T_max: kilo, mooring.w: ("N/m", _factor("N/m to lb/ft"))}
    return [
        _family("catenary", "Catenary: least line without uplift", _lines("checks_catenary"),
                lambda c: {mooring.w: c["weight a length"], mooring.height: c["height"],
                           mooring.leg_pull: c["largest pull"]
                           - c["weight a length"] * c["height"] / thousand},
                {"s": mooring.s, "T": mooring.T_max}, units),
        _family("chain_limit", "Chain: working load limit", _lines("checks_chain"),
                lambda c: {site.chain: c["chain"], site.chain_factor: c["factor"]},
                {"limit": mooring.chain_working}),
        _family("dead_weight", "Dead weight: concrete under water", _lines("checks_dead_weight"),
                lambda c: {site.block_weight: c["dry weight"],
                           job.water_weight: c["water weight"]},
                {"weight": mooring.weight_sunk}),
        _family("bed_friction", "Dead weight: friction of the bed, lower figure",
                _lines("checks_friction"), lambda c: {site.bed: c["bed"]},
                {"low": mooring.friction}),
    ]


def _posts():
    """Embedded posts: the code's equation at a trial depth, and the cubic."""
    def push(c: Line) -> tuple[float, float]:
        loads_of = [(c["wind"] * c[f"area {k}"], c[f"height {k}"]) for k in (1, 2)]
        whole = c["push"] + sum(load for load, _ in loads_of)
        turn = c["push"] * c["push height"] + sum(load * arm for load, arm in loads_of)
        return whole, turn / whole

    def given(c: Line) -> dict:
        whole, arm = push(c)
        return {mooring.pile_P: whole, mooring.pile_h: arm, mooring.pile_b: c["width"],
                site.soil_bearing: c["bearing"], mooring.soil_m: c["isolated factor"]}

    return [
        _family("post_trial", "Embedded post: the code's equation at a trial depth",
                _lines("checks_embedded_post", "trial"),
                lambda c: {**given(c), mooring.embed: c["trial depth"]},
                {"S1": mooring.S_1, "d": mooring.embed_code}),
        _family("post_cubic", "Embedded post: depth without iteration",
                _lines("checks_embedded_post", "iterated"), given, {"d": mooring.embed}),
        _family("post_held", "Embedded post, held by a slab at grade",
                _lines("checks_held_post"),
                lambda c: {mooring.pile_P: c["push"], mooring.pile_h: c["push height"],
                           mooring.pile_b: c["side"] * math.sqrt(2) / 12,
                           site.soil_bearing: c["bearing"], mooring.soil_m: c["factor"]},
                {"S3": mooring.S_3, "d": mooring.embed_held}),
    ]


def _gangway():
    """Length along the slope for an accessible gangway."""
    return _family("gangway_length", "Gangway: length for a slope of 1 to 12",
                   _lines("checks_gangway"), lambda c: {gangway.drop_most: c["rise"]},
                   {"length": gangway.access_needed})


families = [*_wind(), *_waves(), _current(), *_chains(), *_posts(), _gangway()]
