"""SiteLoads: wind, current and waves on each section and its boats, and the gangway's weight.

Wind is a pressure on the side of the dock and on the profile of every boat, each force at its own
place, so that it turns the section too.  Current pushes on floats, hulls and lodged drift.  Across
is against the long side; along is against the end.  Waves are a screening: three published growth
formulas, shown as a range; what waves and wake push is not worked here.
"""

from __future__ import annotations

from builder.language import (
    Sheet,
    absolute,
    arc_tangent,
    bare,
    exponential,
    greatest,
    least,
    root,
    when,
)

from . import buoyancy, parts
from . import inputs as job
from . import inputs_site as site
from . import sections as sec
from . import sections_site as held
from .reference import constants, own

sheet = Sheet("SiteLoads", "Wind, current, waves and gangway on each section",
              about="Sideways forces on the dock and its boats, waves, and the gangway's weight.")
row, check, block, note, caution = (sheet.row, sheet.check, sheet.block, sheet.note,
                                    sheet.caution)

STATICS, OURS, ASCE = "statics", "own judgement", "ASCE 7-10 Eq. 26.10-1"
asce, asce_kz = site.asce, constants("asce_7_kz")
grown = constants("spm_grown")
spm, cem, drag = constants("spm_1984"), constants("cem"), constants("current_drag")
physics, berth, ufc = constants("physics"), constants("mil_hdbk_1025_5"), site.ufc_gangway
FOOT = physics.foot


def _tanh(x):
    """Return the hyperbolic tangent of a bare number of 0 or more."""
    return 2 / (1 + exponential(-2 * x)) - 1


block("Wind pressure")
note("The product of pressure, gust factor and force coefficient is not taken below the floor on "
     "Inputs. A strength-level map speed is brought to allowable stress by 0.6 on the pressure.")
_exposure = sheet.find("Exposure, line", site.EXPOSURES, site.exposure)
alpha = row("Power of the exposure", "α_z", "", _exposure["alpha"], "ASCE 7-10 table of Kz",
            digits=1)
z_g = row("Height of the gradient wind", "z_grad", "ft", _exposure["zg"],
          "ASCE 7-10 table of Kz", digits=0)
k_z = row("Factor of the power law", "k_z", "", asce_kz.Kz_factor, "ASCE 7-10 table of Kz")
z_wind = row("Height for the wind", "z", "ft",
             greatest(asce_kz.Kz_lowest, *held.boat_height), "ASCE 7-10 table of Kz", digits=1)
K_z = row("Exposure coefficient", "K_z", "", k_z * (z_wind / z_g) ** (2 / alpha),
          "ASCE 7-10 table of Kz", digits=3)
q_z = row("Velocity pressure", "q_z", "psf",
          asce.pressure * K_z * site.terrain * asce.Kd * bare(site.wind_speed, "mph") ** 2
          * physics.square_foot_load, ASCE)
allowable = row("Strength-level to allowable stress", "f_w", "",
                when(site.wind_kind.is_(site.WINDS.keys[0]), asce.allowable, 1),
                "ASCE 7-10 ch. 2")
pressure_worked = row("Wind on a side, worked", "p_w", "psf",
                      allowable * q_z * asce.gust * site.force_coefficient, "ASCE 7-10 26.9")
pressure = row("Wind on a side, not below the floor", "p", "psf",
               greatest(pressure_worked, site.side_pressure), "Marina guidelines 2005", chief=True)

block("Wind on the dock and its boats")
note("A boat's line pull stands in place of its wind where it is more; the two are not added. "
     "Every boat takes the full wind: no shelter behind another. Yaw is the worst of both boats "
     "in and either one alone.")
side_height = row("Dock side above water, as launched", "h_d", "ft",
                  greatest(buoyancy.free_launch, own.least_inches).in_("ft"), STATICS)
dock_across = row("Wind on the dock, across", "F_d,y", "lb",
                  pressure * parts.overall_length * side_height, STATICS, digits=0)
dock_along = row("Wind on the dock, along", "F_d,x", "lb",
                 pressure * parts.overall_width * side_height, STATICS, digits=0)
boat_across, boat_along = [], []
for _i in (0, 1):
    _here = held.boat_length[_i] > 0
    boat_across.append(row(
        f"Boat {_i + 1}: force across", f"F_{_i + 1},y", "lb",
        greatest(pressure * held.boat_length[_i] * held.boat_height[_i], site.line_pull * _here),
        STATICS, digits=0))
    boat_along.append(row(
        f"Boat {_i + 1}: force along", f"F_{_i + 1},x", "lb",
        greatest(pressure * held.boat_beam[_i] * held.boat_height[_i], site.line_pull) * _here,
        STATICS, digits=0))
wind_across = row("Wind, dock and boats, across", "F_w,y", "lb",
                  dock_across + boat_across[0] + boat_across[1], STATICS, digits=0)
wind_along = row("Wind, dock and boats, along", "F_w,x", "lb",
                 dock_along + boat_along[0] + boat_along[1], STATICS, digits=0)


block("Current on floats, hulls and lodged drift")
note("The floats are taken as one body as long and as wide as the section, which is more than "
     "they are. Every hull takes the full current, and so does lodged drift, from either way. "
     "The current's push on a boat is added to its wind or line pull.")
current_pressure = row("Pressure of the current", "p_c", "psf",
                       job.water_weight * site.current ** 2 * physics.second
                       / (2 * physics.gravity), STATICS)
depth_share = row("Draft over depth at low water", "τ", "",
                  least(buoyancy.draft_flotation.in_("ft") / job.low_water_depth, 1), STATICS)
current_C = row("Coefficient with the bed near", "C", "",
                site.current_coefficient
                + greatest(drag.C_shallow - site.current_coefficient, 0)
                * depth_share ** drag.depth_power, "UFC 4-159-03 Eq. 9-13")
current_across = row("Current on the floats, across", "F_c,y", "lb",
                     current_pressure * current_C * sec.length
                     * buoyancy.draft_flotation.in_("ft"), STATICS, digits=0)
current_along = row("Current on the floats, along", "F_c,x", "lb",
                    current_pressure * current_C * sec.width
                    * buoyancy.draft_flotation.in_("ft"), STATICS, digits=0)
hull_C = row("Coefficient of hulls with the bed near, the deeper boat's", "C_h", "",
             site.hull_coefficient + greatest(drag.C_shallow - site.hull_coefficient, 0)
             * least(greatest(*held.boat_draft) / job.low_water_depth, 1) ** drag.depth_power,
             "UFC 4-159-03 Eq. 9-13")
hull_across, hull_along = [], []
for _i in (0, 1):
    hull_across.append(row(
        f"Boat {_i + 1}: current on its hull, across", f"F_h{_i + 1},y", "lb",
        current_pressure * hull_C * held.boat_length[_i] * held.boat_draft[_i], STATICS,
        digits=0))
    hull_along.append(row(
        f"Boat {_i + 1}: current on its hull, along", f"F_h{_i + 1},x", "lb",
        current_pressure * hull_C * held.boat_beam[_i] * held.boat_draft[_i]
        * (held.boat_length[_i] > 0), STATICS, digits=0))
drift_force = row("Current on lodged drift", "F_db", "lb",
                  current_pressure * current_C * held.debris, OURS, digits=0)
current_check = check("Current against what this book covers", site.current,
                      at_most=site.ours.current_fast, source=OURS, group="Site",
                      cure="Engineer required: fast current loads piles, chains and debris beyond "
                      "these rules.")

block("Force on the section, and what turns it")
force_across = row("Force across", "F_y", "lb",
                   wind_across + greatest(current_across, 0) + hull_across[0] + hull_across[1]
                   + drift_force, STATICS, digits=0, chief=True)
force_along = row("Force along", "F_x", "lb",
                  wind_along + greatest(current_along, 0) + hull_along[0] + hull_along[1]
                  + drift_force, STATICS, digits=0, chief=True)


def _yaw(winds, hulls, arms, symbol: str, words: str):
    """Return turning moments of boats about the middle of the section: each, then the worst."""
    each = [row(f"Boat {k + 1}: {words}", f"{symbol},{k + 1}", "lb·ft",
                (winds[k] + hulls[k]) * arms[k], STATICS, digits=0) for k in (0, 1)]
    return row(f"Worst {words}", symbol, "lb·ft",
               greatest(absolute(each[0] + each[1]), absolute(each[0]), absolute(each[1])),
               STATICS, digits=0)


yaw_across = _yaw(boat_across, hull_across, held.boat_x, "M_y", "turn under force across")
yaw_along = _yaw(boat_along, hull_along, held.boat_y, "M_x", "turn under force along")

block("Waves: a screening")
note("Three growth formulas for a steady wind along the fetch, each held to 0.78 of the depth at "
     "the dock at high water. Believe the range, not a number. Boat wake is not in it: it is typed "
     "on Inputs.")
g_wave = physics.gravity / physics.second
U_metric = row("Steady wind, m/s", "U_m", "", bare(site.wind_mean, "mph") * physics.mph_in_m_s,
               STATICS)
U_A = row("Adjusted wind speed", "U_A", "ft/s",
          spm.stress_factor * U_metric
          ** spm.stress_power * physics.m_in_ft * physics.foot_a_second, "SPM 1984 Eq. 3-28a")
X = row("Fetch without units", "X", "", g_wave * site.fetch / U_A ** 2, "SPM 1984 Eq. 3-33",
        digits=1)
X_full = row("The same from which the sea grows no more", "X_f", "",
             (grown.H_full / spm.deep_H) ** 2, "SPM 1984 Eq. 3-36", digits=0)
F_full = row("Fetch from which the sea grows no more", "F_f", "ft", X_full * U_A ** 2 / g_wave,
             "SPM 1984 Eq. 3-36", digits=0)
H_deep = row("Wave height, deep water", "H_1", "ft",
             spm.deep_H * root(least(X, X_full)) * U_A ** 2 / g_wave, "SPM 1984 Eq. 3-33")
T_deep = row("Wave period, deep water", "T_1", "s",
             spm.deep_T * least(X, X_full) ** site.THIRD * U_A / g_wave, "SPM 1984 Eq. 3-34")
wind_time = row("The wind must blow for", "t_w", "h",
                when(X < X_full, grown.t_fetch * (X ** site.THIRD) ** 2, grown.t_full)
                * bare(U_A / g_wave, "s") / 3600 * site.ours.hour,
                "SPM 1984 Eq. 3-35, 3-38")
depth_bare = row("Depth along the fetch without units", "d*", "",
                 g_wave * site.fetch_depth / U_A ** 2, "SPM 1984 Eq. 3-39", digits=4)
tanh_a = row("Depth term of the height", "t_a", "",
             greatest(_tanh(spm.shallow_H_depth * depth_bare ** spm.shallow_H_power),
                      own.least_share), "SPM 1984 Eq. 3-39", digits=4)
fetch_a = row("Fetch term of the height", "t_Fa", "",
              _tanh(spm.shallow_H_fetch * root(X) / tanh_a), "SPM 1984 Eq. 3-39", digits=4)
H_shallow = row("Wave height, with the depth along the fetch", "H_2", "ft",
                spm.shallow_H * tanh_a * fetch_a * U_A ** 2 / g_wave, "SPM 1984 Eq. 3-39")
tanh_b = row("Depth term of the period", "t_b", "",
             greatest(_tanh(spm.shallow_T_depth * depth_bare ** spm.shallow_T_power),
                      own.least_share),
             "SPM 1984 Eq. 3-40", digits=4)
fetch_b = row("Fetch term of the period", "t_Fb", "",
              _tanh(spm.shallow_T_fetch * X ** site.THIRD / tanh_b), "SPM 1984 Eq. 3-40",
              digits=4)
T_shallow = row("Wave period, with the depth along the fetch", "T_2", "s",
                spm.shallow_T * tanh_b * fetch_b * U_A / g_wave, "SPM 1984 Eq. 3-40")
u_star = row("Friction velocity", "u*", "ft/s",
             root(cem.drag * (cem.drag_base + cem.drag_rise * U_metric)) * U_metric
             * physics.m_in_ft * physics.foot_a_second, "CEM Eq. II-2-36", digits=3)
X_star = row("Fetch over friction velocity", "X*", "", g_wave * site.fetch / u_star ** 2,
             "CEM Eq. II-2-36", digits=0)
H_cem = row("Wave height, third formula", "H_3", "ft",
            least(cem.H * root(X_star), cem.H_most) * u_star ** 2 / g_wave, "CEM Eq. II-2-36")
T_cem = row("Wave period, third formula", "T_3", "s",
            least(least(cem.T * X_star ** site.THIRD, cem.T_most) * u_star / g_wave,
                  cem.T_depth * root(site.fetch_depth / g_wave)), "CEM Eq. II-2-36")
dock_depth = row("Depth at the dock, high water", "d_H", "ft",
                 job.low_water_depth + site.high_water, STATICS, digits=1)
H_breaking = row("Largest wave that depth lets stand", "H_b", "ft", spm.breaking * dock_depth,
                 "SPM 1984, ratio after McCowan 1894")
wave_low = row("Wave height, from", "H_low", "ft",
               least(H_deep, H_shallow, H_cem, H_breaking), OURS, digits=1)
wave_high = row("Wave height, to", "H_high", "ft",
                least(greatest(H_deep, H_shallow, H_cem), H_breaking), OURS, digits=1, chief=True)
period_low = row("Wave period, from", "T_low", "s", least(T_deep, T_shallow, T_cem), OURS,
                 digits=1)
period_high = row("Wave period, to", "T_high", "s", greatest(T_deep, T_shallow, T_cem), OURS,
                  digits=1)
rough = row("Wave, upper end of the range, or wake", "H_r", "ft", greatest(wave_high, site.wake),
            OURS, digits=1)
wave_check = check("Wave height, upper end of the range, or wake", rough, at_most=site.wave_most,
                   look_at=least(berth.wave_easy, site.wave_most), source="Sea Grant guide 3.1; "
                   "MIL-HDBK-1025/5 2.2.2.1", group="Site",
                   cure="Engineer required above the limit: a breakwater, a sheltered place, "
                   "no wake, or take the dock out. From 1 ft a berth is uneasy.")
wave_force = row("Push of waves and wake", "", "text",
                 when(rough > site.wave_most, "ENGINEER REQUIRED",
                      "not worked; kept small by the limit on height"), OURS)

block("Length of the longer wave")
L_0 = row("Wave length, deep water", "L_0", "ft",
          g_wave * period_high ** 2 / (8 * arc_tangent(1)), "dispersion relation", digits=1)
depth_deep = row("Depth over deep-water length × 2π", "k_0d", "",
                 8 * arc_tangent(1) * dock_depth / greatest(L_0, own.least_length),
                 "dispersion relation", digits=4)
L_start = row("Wave length, first guess", "L_a", "ft", L_0 * root(_tanh(depth_deep)),
              "dispersion relation; within 2 %", digits=1)
phase = row("Depth over that length × 2π", "k_1d", "",
            8 * arc_tangent(1) * dock_depth / greatest(L_start, own.least_length),
            "dispersion relation", digits=4)
tanh_phase = row("Its hyperbolic tangent", "t_1", "", _tanh(phase), STATICS, digits=4)
phase_better = row("The same after one Newton step", "k_2d", "",
                   (depth_deep + phase ** 2 * (1 - tanh_phase ** 2))
                   / greatest(tanh_phase + phase * (1 - tanh_phase ** 2), own.least_share),
                   "dispersion relation", digits=4)
wave_length = row("Wave length at the dock", "L_w", "ft",
                  8 * arc_tangent(1) * dock_depth / greatest(phase_better, own.least_share),
                  "dispersion relation", digits=1)

block("Gangway on the float")
note("G0: the gangway at rest. G1: with 25 psf on it, deck empty. G2: at rest, flotation load on "
     "the deck. G3: at rest, flotation load on the half next to it. Members: 75 psf, two wheels. "
     "It acts at deck level, at every place of the foot. 0 where none lands.")
lands = row("Gangway lands here: 1 yes, 0 no", "k_g", "", when(sec.gangway_rest > 0, 1, 0)
            * when(site.gangway_length > 0, 1, 0), STATICS, digits=0)
gangway_area = row("Gangway walk", "A_g", "ft²",
                   site.gangway_length * site.gangway_width.in_("ft"), STATICS, digits=1)
gangway_dead = row("Gangway at rest, on the float (G0, G2, G3)", "R_0", "lb",
                   lands * site.gangway_weight / 2, STATICS, digits=0, chief=True)


def _reaction(words: str, symbol: str, load):
    """Return the gangway's weight on the float under a load [psf] on its walk."""
    return row(f"Gangway with {words}, on the float", symbol, "lb",
               gangway_dead + lands * load * gangway_area / 2, "UFC 4-152-01 7-4.4", digits=0)


gangway_25 = _reaction("25 psf (G1)", "R_25", ufc.gangway_on_float)
gangway_50 = _reaction("50 psf, shown only", "R_50", ufc.gangway_uniform_reduced)
gangway_75 = _reaction("75 psf, for members", "R_75", ufc.gangway_uniform)
wheel_rest = row("One of two wheels at rest (G0, G2, G3)", "R_w0", "lb", gangway_dead / 2,
                 STATICS, digits=0)
wheel_25 = row("One of two wheels, 25 psf (G1)", "R_w1", "lb", gangway_25 / 2, STATICS, digits=0)
wheel = row("One of two wheels, for members", "R_w", "lb", gangway_75 / 2, STATICS, digits=0)
gangway_push = row("Push along the gangway", "H_g", "lb", own.gangway_along_share * gangway_75,
                   OURS, digits=0)
caution("Not an engineer's design: surge, ice left in place, waves above the limit, fast current "
        "and public assembly are for a licensed engineer. Ask the authority on the water first.")
