"""Floats lagged to the frame, and deck screws."""

from __future__ import annotations

from math import floor

from tests.second.framing_basis import (
    INCHES,
    SLACK,
    Results,
    at_least,
    at_most,
    line_of,
    lines,
    nds,
    own,
    place_of,
)
from tests.second.framing_spans import across
from tests.second.given import Given
from tests.second.hardware_ends import placed
from tests.second.hardware_joint import Joint
from tests.second.hardware_yield import Dowel, bearing_across, bearing_small, direction

ALONG, ACROSS = 0.0, 90.0
"""Load to grain [deg]."""
FLOOR = own("least_length") * INCHES
"""House choice: a lag is reckoned with so much wood at least [in]; its depth fails all the same."""


def lag_of(g: Given) -> dict:
    """Return the line of the float lag."""
    return line_of("lags", g.job["lag"])


def thread_place(length: float) -> int:
    """Return the place of the longest listed lag that is no longer than ``length``."""
    return sum(line["length"] <= length + 1e-9 for line in lines("lag_threads"))


def pulled(g: Given, done: Results, joint: Joint) -> tuple[Results, Results]:
    """Return rows and checks of a lag pulled out in lifting."""
    lag = lag_of(g)
    place = thread_place(g.job["lag_length"])
    thread = lines("lag_threads")[place - 1]["thread T"]
    wood = max(FLOOR, g.job["lag_length"] - g.job["lag_grip"] - lag["tip E"])
    threaded = max(FLOOR, min(thread - lag["tip E"], wood))
    inch = (nds("lag_withdrawal") * joint.gravity ** nds("lag_withdrawal_G_exponent")
            * lag["D"] ** nds("lag_withdrawal_D_exponent"))
    value = (inch * threaded * own("CD_lifting") * nds("CM_withdrawal_wet") * nds("Ct_normal"))
    kind = g.catalog["floats"][g.sec["float_model"]]
    on_it = (done["Weight.growth"] + done["Weight.aged_floats"]) / max(done["Parts.floats"], 1)
    pull = g.job["lift_factor"] * (kind["own weight"] + on_it) / kind["lags each"]
    thin = min(done["Parts.rail_t"], done["Parts.stringer_t"])
    rows = {
        "lag": place_of("lags", g.job["lag"]), "D_g": lag["D"], "Dr": lag["root diameter Dr"],
        "tip": lag["tip E"], "Fyb_g": lag["Fyb"],
        "thread_line": place, "thread": thread, "p_g": wood, "p_thread": threaded, "W": inch,
        "CD_lift": own("CD_lifting"), "CM_pull": nds("CM_withdrawal_wet"), "W_lag": value,
        "lags_each": kind["lags each"], "float_weight": kind["own weight"], "float_held": on_it,
        "U": pull,
        "lag_edge": thin / 2}
    checks = at_most("Hardware.lag_pull_check", pull, value)
    checks |= at_least("Hardware.lag_depth_check", wood, nds("lag_penetration_least") * lag["D"])
    return rows, checks | at_least("Hardware.lag_edge_check", thin / 2,
                                   placed("withdrawal_edge") * lag["D"])


def lag_terms(lag: dict) -> tuple[float, float, tuple[float, float, float]]:
    """Return K theta, KD and the reduction terms of a lag."""
    root = lag["root diameter Dr"]
    k = direction(ACROSS)
    small = (nds("KD_small") if root <= nds("KD_limit")
             else nds("KD_slope") * root + nds("KD_add"))
    if root < nds("Rd_small_limit"):
        return k, small, (small * k,) * 3
    return k, small, (nds("Rd_I") * k, nds("Rd_II") * k, nds("Rd_III_IV") * k)


def pushed(g: Given, done: Results, joint: Joint, wood: float) -> Results:
    """Return the rows of one lag pushed sideways: its flange bears as wood across the grain."""
    lag = lag_of(g)
    flange = max(g.job["lag_grip"], FLOOR)
    length = wood + lag["tip E"] / 2
    k, small, terms = lag_terms(lag)
    fe_across, small_bearing = bearing_across(joint.gravity, lag["D"]), bearing_small(joint.gravity)
    large = lag["D"] >= nds("Fe_small_limit")
    fem, fes = (joint.along, fe_across) if large else (small_bearing, small_bearing)
    dowel = Dowel(lag["root diameter Dr"], lag["Fyb"], length, flange, fem, fes, terms)
    modes = dowel.single()
    return {f"sideways_{key}": value for key, value in modes.items()} | {
        "theta_lag": ALONG, "theta_flange": ACROSS,
        "Fe_across_g": fe_across, "Fe_small": small_bearing, "Fe_lag": fem, "Fe_flange": fes,
        "l_lag": length, "l_flange": flange, "terms_K": k, "terms_KD": small,
        "terms_I": terms[0], "terms_II": terms[1], "terms_III": terms[2],
        "Z_lag": modes["Z"] * joint.factors}


def held(g: Given, done: Results, value: float) -> tuple[Results, Results]:
    """Return rows and checks of the lags that hold a float along and across the section.

    A lag in a narrow edge holds only along its member.  House choice: half of a float's lags
    stand in the rail where the float reaches it, the others one in each stringer that crosses.
    """
    lag, kind = lag_of(g), g.catalog["floats"][g.sec["float_model"]]
    lags, runs = kind["lags each"], across(g)
    rail_over = done["Parts.row_y"] + done["Parts.float_b"] / 2 > done["Parts.clear_span"] / 2
    thick = done["Parts.rail_t"] / 2 >= placed("edge_loaded") * lag["D"]
    in_rail = floor(lags / 2 + SLACK) if rail_over else 0
    size = done["Parts.float_l" if runs else "Parts.float_b"] * INCHES
    crossing = floor(size / g.sec["spacing"] + SLACK)
    in_stringers = min(crossing, lags - in_rail)
    along = in_rail + (0 if runs else in_stringers)
    over = (in_stringers if runs else 0) + (in_rail if thick else 0)
    ways = (along >= 1) + (over >= 1)
    drag = own("float_side_share") * kind["own weight"]
    side = max(done["Parts.float_l"], done["Parts.float_b"])
    stream = (done["SiteLoads.current_pressure"] * done["SiteLoads.current_C"] * side
              * done["Buoyancy.draft_flotation"] / INCHES)
    push = max(drag, stream) / max(1, min(along, over))
    rows = {"rail_over": int(rail_over), "rail_thick": int(thick), "in_rail": in_rail,
            "crossing": crossing, "in_stringers": in_stringers, "hold_along": along,
            "hold_across": over, "ways": ways, "drag": drag, "stream": stream, "lag_push": push}
    checks = at_least("Hardware.ways_check", ways, 2, worst="LOOK")
    return rows, checks | at_most("Hardware.sideways_check", push, value)


def screws(g: Given, joint: Joint) -> tuple[Results, Results]:
    """Return rows and check of deck screws."""
    size = line_of("wood_screws", g.job["deck_screw"])
    inch = nds("screw_withdrawal") * joint.gravity ** 2 * size["D"]
    deck = (g.catalog["panels"][g.sec["panel"]] if g.sec["deck"] == "panels"
            else g.catalog["boards"][g.sec["board"]])
    depth = max(0, g.job["deck_screw_length"] - deck["thickness"])
    threaded = min(depth, nds("screw_thread_share") * g.job["deck_screw_length"])
    value = inch * threaded * nds("CD_live") * nds("CM_withdrawal_wet") * nds("Ct_normal")
    rows = {"screw": place_of("wood_screws", g.job["deck_screw"]), "D_s": size["D"],
            "W_s": inch, "p_s": depth, "W_screw": value}
    return rows, at_least("Hardware.screw_check", depth,
                          nds("screw_penetration_least") * size["D"], worst="LOOK")


def work(g: Given, done: Results, joint: Joint) -> Results:
    """Return the rows of floats and deck screws."""
    pulls, checks = pulled(g, done, joint)
    sideways = pushed(g, done, joint, pulls["p_g"])
    holding, held_checks = held(g, done, sideways["Z_lag"])
    more, screw_check = screws(g, joint)
    rows = pulls | sideways | holding | more
    return ({f"Hardware.{key}": value for key, value in rows.items()}
            | checks | held_checks | screw_check)
