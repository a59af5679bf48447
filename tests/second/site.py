"""Wind, current, waves and the gangway's weight, second calculation, for one section type.

From hydro.md 4 to 6 and 10 of the basis: pressures on sides and profiles, three growth formulas
of waves, the gangway's share on the float.
"""

from __future__ import annotations

from math import pi, sqrt, tanh

import numpy as np

from tests.second.framing_basis import at_most, figure
from tests.second.given import Given, Results, constants, line_of

INCHES = 12
SECONDS = 3600
"""Seconds in an hour."""
BOATS = (1, 2)


def work(g: Given, done: Results) -> Results:
    """Return the results of SiteLoads."""
    found = wind(g, done)
    found |= current(g, done)
    found |= together(g, found)
    found |= waves(g)
    found |= gangway(g)
    return {f"SiteLoads.{key}": value for key, value in found.items()}


def ours(key: str) -> float:
    """Return a judgement of the project on site loads."""
    return figure("own_site", key)


def per_boat(g: Given, what: str) -> np.ndarray:
    """Return an entry of both boats."""
    return np.array([g.sec[f"boat_{what}_{k}"] for k in BOATS])


def wind(g: Given, done: Results) -> Results:
    """Return wind pressure [psf] and wind forces [lb]."""
    asce, kz = constants("asce_7"), constants("asce_7_kz")
    terrain = line_of("exposure", g.job["exposure"])
    # All of it is low: the profile's lowest height holds.
    z = kz["Kz_lowest"]
    K_z = kz["Kz_factor"] * (z / terrain["zg"]) ** (2 / terrain["alpha"])
    q_z = asce["pressure"] * K_z * g.job["terrain"] * asce["Kd"] * g.job["wind_speed"] ** 2
    share = asce["allowable"] if g.job["wind_kind"] == "strength-level map" else 1.0
    worked = share * q_z * asce["gust"] * g.job["force_coefficient"]
    p = max(worked, g.job["side_pressure"])
    side = max(done["Buoyancy.free_launch"], figure("own", "least_inches")) / INCHES
    dock = np.array([done["Parts.overall_length"], done["Parts.overall_width"]]) * side * p
    sizes = np.stack([per_boat(g, "length"), per_boat(g, "beam")])
    pulls = np.where(per_boat(g, "length") > 0, g.job["line_pull"], 0.0)
    boats = np.maximum(p * sizes * per_boat(g, "height"), pulls)
    totals = dock + boats.sum(axis=1)
    return {"alpha": terrain["alpha"], "z_g": terrain["zg"], "k_z": kz["Kz_factor"],
            "z_wind": z, "K_z": K_z, "q_z": q_z, "allowable": share, "pressure_worked": worked,
            "pressure": p, "side_height": side, **_both("dock", dock), **_by_boat("boat", boats),
            **_both("wind", totals)}


def _both(name: str, values: np.ndarray) -> Results:
    return {f"{name}_across": float(values[0]), f"{name}_along": float(values[1])}


def _by_boat(name: str, values: np.ndarray) -> Results:
    return {f"{name}_{way}_{k}": float(values[i, k - 1])
            for k in BOATS for i, way in enumerate(("across", "along"))}


def current(g: Given, done: Results) -> Results:
    """Return the current's forces [lb] on floats, hulls and drift."""
    speed, drag = g.job["current"], constants("current_drag")
    density = g.job["water_weight"] / constants("physics")["gravity"]
    p = density * speed ** 2 / 2

    def near_bed(deep: float, draft: float) -> tuple[float, float]:
        share = min(draft / g.job["low_water_depth"], 1.0)
        return share, deep + (drag["C_shallow"] - deep) * share ** drag["depth_power"]

    # House choice: the draft under the flotation load, as the bed's clearance is judged.
    T = done["Buoyancy.draft_flotation"] / INCHES
    share, C = near_bed(g.job["current_coefficient"], T)
    size = np.array([g.sec["length"], g.sec["width"]])
    floats = p * C * T * size
    drafts = per_boat(g, "draft")
    _, C_hull = near_bed(g.job["hull_coefficient"], float(drafts.max()))
    hulls = p * C_hull * drafts * np.stack([per_boat(g, "length"), per_boat(g, "beam")])
    return {"current_pressure": p, "depth_share": share, "current_C": C,
            **_both("current", floats), "hull_C": C_hull, **_by_boat("hull", hulls),
            "drift_force": p * C * g.sec["debris"],
            **at_most("current_check", speed, ours("current_fast"))}


def together(g: Given, f: Results) -> Results:
    """Return forces on the section [lb], and the moments that turn it in plan [lb·ft]."""
    found: Results = {}
    for way, off in (("across", "x"), ("along", "y")):
        hulls = np.array([f[f"hull_{way}_{k}"] for k in BOATS])
        boats = np.array([f[f"boat_{way}_{k}"] for k in BOATS]) + hulls
        found[f"force_{way}"] = float(
            f[f"wind_{way}"] + f[f"current_{way}"] + hulls.sum() + f["drift_force"])
        turns = boats * per_boat(g, off)
        found[f"yaw_{way}"] = float(np.abs([*turns, turns.sum()]).max())
    return found


def waves(g: Given) -> Results:
    """Return wave heights [ft] and periods [s] of three growth formulas, and their range."""
    units, spm, grown, cem = (constants(name) for name in ("physics", "spm_1984", "spm_grown",
                                                           "cem"))
    gravity, fetch, depth = units["gravity"], g.job["fetch"], g.job["fetch_depth"]
    U = g.job["wind_mean"] * units["mph_in_m_s"]
    U_A = spm["stress_factor"] * U ** spm["stress_power"] * units["m_in_ft"]
    X = gravity * fetch / U_A ** 2
    X_full = (grown["H_full"] / spm["deep_H"]) ** 2
    reached = min(X, X_full)
    length, time = U_A ** 2 / gravity, U_A / gravity
    deep = spm["deep_H"] * sqrt(reached) * length, spm["deep_T"] * np.cbrt(reached) * time
    blow = min(grown["t_fetch"] * X ** (2 / 3), grown["t_full"]) * time / SECONDS
    bare = gravity * depth / U_A ** 2
    t_a = tanh(spm["shallow_H_depth"] * bare ** spm["shallow_H_power"])
    t_Fa = tanh(spm["shallow_H_fetch"] * sqrt(X) / t_a)
    t_b = tanh(spm["shallow_T_depth"] * bare ** spm["shallow_T_power"])
    t_Fb = tanh(spm["shallow_T_fetch"] * np.cbrt(X) / t_b)
    shallow = spm["shallow_H"] * t_a * t_Fa * length, spm["shallow_T"] * t_b * t_Fb * time
    u = sqrt(cem["drag"] * (cem["drag_base"] + cem["drag_rise"] * U)) * U * units["m_in_ft"]
    X_u = gravity * fetch / u ** 2
    third = (min(cem["H"] * sqrt(X_u), cem["H_most"]) * u ** 2 / gravity,
             min(min(cem["T"] * np.cbrt(X_u), cem["T_most"]) * u / gravity,
                 cem["T_depth"] * sqrt(depth / gravity)))
    at_dock = g.job["low_water_depth"] + g.job["high_water"]
    breaking = spm["breaking"] * at_dock
    heights = np.minimum([deep[0], shallow[0], third[0]], breaking)
    periods = np.array([deep[1], shallow[1], third[1]], dtype=float)
    easy = figure("mil_hdbk_1025_5", "wave_easy")  # house choice: the lower of its two figures
    rough = max(float(heights.max()), g.job["wake"])
    found = {
        "U_metric": U, "U_A": U_A, "X": X, "X_full": X_full, "F_full": X_full * length,
        "H_deep": deep[0], "T_deep": float(deep[1]), "wind_time": blow, "depth_bare": bare,
        "tanh_a": t_a, "fetch_a": t_Fa, "H_shallow": shallow[0], "tanh_b": t_b, "fetch_b": t_Fb,
        "T_shallow": float(shallow[1]), "u_star": u, "X_star": X_u, "H_cem": third[0],
        "T_cem": float(third[1]), "dock_depth": at_dock, "H_breaking": breaking,
        "wave_low": float(heights.min()), "wave_high": float(heights.max()),
        "period_low": float(periods.min()), "period_high": float(periods.max()),
        "rough": rough,
        "wave_force": ("ENGINEER REQUIRED" if rough > g.job["wave_most"]
                       else "not worked; kept small by the limit on height"),
        **at_most("wave_check", rough, g.job["wave_most"],
                  look=min(easy, g.job["wave_most"]) / g.job["wave_most"])}
    return found | wave_length(found["period_high"], at_dock, gravity)


def wave_length(period: float, depth: float, gravity: float) -> Results:
    """Return the length [ft] of a wave in a depth, by one Newton step on k d tanh(k d) = k₀ d."""
    deep = gravity * period ** 2 / (2 * pi)
    k0 = 2 * pi * depth / deep
    start = deep * sqrt(tanh(k0))
    k1 = 2 * pi * depth / start
    t = tanh(k1)
    k2 = k1 - (k1 * t - k0) / (t + k1 * (1 - t ** 2))
    return {"L_0": deep, "depth_deep": k0, "L_start": start, "phase": k1, "tanh_phase": t,
            "phase_better": k2, "wave_length": 2 * pi * depth / k2}


def gangway(g: Given) -> Results:
    """Return what the gangway puts on the float [lb], at rest and under loads on its walk."""
    ufc = constants("ufc_4_152_01")
    # House choice: it lands where a weight at rest is typed; that weight is checked on Gangway.
    lands = int(g.sec["gangway_rest"] > 0 and g.job["gangway_length"] > 0)
    area = g.job["gangway_length"] * g.job["gangway_width"] / INCHES
    rest = lands * g.job["gangway_weight"] / 2

    def loaded(key: str) -> float:
        return rest + lands * ufc[key] * area / 2

    found = {"lands": lands, "gangway_area": area, "gangway_dead": rest,
             "gangway_25": loaded("gangway_on_float"),
             "gangway_50": loaded("gangway_uniform_reduced"),
             "gangway_75": loaded("gangway_uniform")}
    return found | {"wheel_rest": rest / 2, "wheel_25": found["gangway_25"] / 2,
                    "wheel": found["gangway_75"] / 2,
                    "gangway_push": figure("own", "gangway_along_share") * found["gangway_75"]}
