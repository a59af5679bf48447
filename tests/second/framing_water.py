"""A rail between floats and past them; and half the section as a beam on the water.

The whole section is cut at even stations; the floats push up in proportion to their sinkage,
which is even over the section and has a slope.  Lengths in ft, x from the middle of the section.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from tests.second.framing_basis import INCHES, SLACK, Results, at_most, nds, own
from tests.second.framing_loads import Loads
from tests.second.framing_spans import across
from tests.second.framing_wood import Member, Stability, member
from tests.second.given import Given

PARTS = 40
"""Parts into which the stations divide the section."""
SLOTS = 20
"""Floats in a row, at most; and stations of the first half."""


@dataclass(frozen=True)
class Row:
    """A row of floats: where each begins and ends, on a section of length 2 ``half``."""

    half: float
    begins: np.ndarray
    ends: np.ndarray

    @property
    def length(self) -> float:
        """Length of all its floats [ft]."""
        return max(own("least_length"), float(np.sum(self.ends - self.begins)))

    @property
    def spread(self) -> float:
        """Mean square of the distance of the row's length from the middle [ft²]."""
        spread = float(np.sum(self.ends ** 3 - self.begins ** 3) / 3 / self.length)
        return max(spread, own("least_length") ** 2)

    @property
    def stations(self) -> np.ndarray:
        """Stations from one end of the section to the other."""
        return self.half * np.linspace(-1, 1, PARTS + 1)

    def push(self, power: int) -> tuple[np.ndarray, np.ndarray]:
        """Return force and moment at each station of a push x to the power, over the length.

        House choice: a float that insets leave inside out pushes down; Parts says it cannot fit.
        """
        x, sign = self.stations[:, None], np.sign(self.ends - self.begins)
        first = np.minimum(self.begins, self.ends)
        reached = np.clip(x, first, np.maximum(self.begins, self.ends))
        whole = sign * (reached ** (power + 1) - first ** (power + 1)) / (power + 1)
        about = sign * (reached ** (power + 2) - first ** (power + 2)) / (power + 2)
        return (np.sum(whole, axis=1) / self.length,
                np.sum(x * whole - about, axis=1) / self.length)

    def carried(self, patches: list, points: list) -> tuple[np.ndarray, np.ndarray]:
        """Return shear and moment at the stations.

        ``patches`` are (load a foot, from, to), ``points`` (load, place).
        """
        total = sum(w * (b - a) for w, a, b in patches) + sum(p for p, _ in points)
        turn = (sum(w * (b * b - a * a) / 2 for w, a, b in patches)
                + sum(p * place for p, place in points))
        even, even_moment = self.push(0)
        slope, slope_moment = self.push(1)
        shear = total * even + turn / self.spread * slope
        moment = total * even_moment + turn / self.spread * slope_moment
        x = self.stations
        for w, a, b in patches:
            reached = np.clip(x, a, b)
            shear = shear - w * (reached - a)
            moment = moment - w * (x * (reached - a) - (reached ** 2 - a ** 2) / 2)
        for p, place in points:
            past = np.maximum(x - place, 0)
            shear = shear - p * (past > 0)
            moment = moment - p * past
        return shear, moment


def row_of_floats(g: Given, done: Results) -> Row:
    """Return a row of floats, evenly spaced.

    House choice: extra floats are left out, and what lies past the end of the frame.
    """
    count = int(g.sec["floats_a_row"])
    centres = (done["Parts.end_x"] * np.linspace(-1, 1, count) if count > 1 else np.zeros(1))
    half_float, half = done["Parts.float_l"] / 2, g.sec["length"] / 2
    return Row(half, np.maximum(centres - half_float, -half),
               np.minimum(centres + half_float, half))


@dataclass(frozen=True)
class Rail:
    """A rail of plies that count; ``skirt`` inertia of a skirt that counts [in⁴]; psi."""

    ply: Member
    plies: float
    skirt: float

    @property
    def inertia(self) -> float:
        """Moment of inertia of plies and skirt [in⁴]."""
        return self.plies * self.ply.inertia + self.skirt

    @property
    def modulus(self) -> float:
        """Section modulus to the edge of the rail [in³]."""
        return self.inertia / (self.ply.deep / 2)

    def bending(self, moment: float) -> float:
        """Return the stress of a moment [lb·ft]."""
        return moment * INCHES / self.modulus

    def shear(self, force: float) -> float:
        """Return the shear stress of a force [lb]; a skirt carries none."""
        return nds("shear_rectangle") * force / (self.plies * self.ply.area)


def joint_inside(g: Given) -> bool:
    """Return whether a joint of a ply falls in the middle third of the rail."""
    stock, length = g.job["longest_stock"], g.sec["length"]
    # House choice: a joint just at the first third point counts as inside.
    return any(length / 3 <= k * stock < 2 * length / 3 for k in range(1, 20))


def rail_of(g: Given, done: Results) -> Rail:
    """Return the rail, with what counts of it."""
    ply = member(g, "rail", "rail_size", done, "rail")
    jointed = joint_inside(g)
    # House choice: the one ply of a rail counts even when it is jointed.
    plies = max(1, g.sec["rail_plies"] - jointed)
    # House choice: a skirt deeper than the rail is itself overstressed first and does not count.
    counts = g.sec["skirt"] == "bolted to count" and done["Parts.skirt_d"] <= ply.deep
    skirt = done["Parts.skirt_t"] * done["Parts.skirt_d"] ** 3 / 12 if counts else 0
    return Rail(ply, plies, skirt)


def between_floats(g: Given, done: Results, load: Loads, rail: Rail) -> Results:
    """Return the rows of the rail between floats and past the last one."""
    line = load.spread * done["Parts.deck_width"] / 2
    reach = done["Parts.float_l"]
    gap = max(0, done["Parts.float_x_pitch"] - reach) if g.sec["floats_a_row"] > 1 else 0
    over = max(0, g.sec["length"] / 2 - done["Parts.end_x"] - reach / 2)
    moment = max(line * gap * (gap + reach) / 8, line * over ** 2 / 2)
    shear = line * max(0, max(gap / 2, over) - rail.ply.deep / INCHES)
    # House choice: the gap and the overhang as if one float carried both.
    bears = line * (reach + gap + over) / (reach * INCHES * rail.ply.thick * g.sec["rail_plies"])
    stress = moment * INCHES / (rail.plies * rail.ply.modulus)  # house choice: no skirt here
    found = {"rail_w": line, "gap": gap, "overhang": over, "local_moment": moment,
             "local_shear": shear, "local_fb": stress,
             "local_fv": rail.shear(shear), "local_fc": bears}
    return ({f"Framing.{key}": value for key, value in found.items()}
            | at_most("Framing.local_check", stress, rail.ply.bending)
            | at_most("Framing.local_shear_check", rail.shear(shear), rail.ply.shear)
            | at_most("Framing.local_bearing_check", bears, rail.ply.bearing))


@dataclass(frozen=True)
class OnWater:
    """Half a section on its floats, with the loads it carries [lb]."""

    row: Row
    dead: float
    crowd: float
    point: float

    @property
    def crowd_edge(self) -> float:
        """Edge of the crowd that stands on the middle half of the length."""
        return self.row.half * own("crowd_middle")

    @property
    def crowd_line(self) -> float:
        """Line load of that crowd."""
        return self.crowd / (2 * self.crowd_edge)

    @property
    def end_place(self) -> float:
        """Where the point load stands near an end."""
        return own("point_from_edge") / INCHES - self.row.half

    def _dead(self) -> tuple[float, float, float]:
        half = self.row.half
        return self.dead / (2 * half), -half, half

    def middle(self) -> tuple[np.ndarray, np.ndarray]:
        """Return shear and moment with the crowd in the middle."""
        edge = self.crowd_edge
        return self.row.carried([self._dead(), (self.crowd_line, -edge, edge)], [])

    def at_ends(self) -> tuple[np.ndarray, np.ndarray]:
        """Return shear and moment with the crowd on the two end quarters."""
        edge, half = self.crowd_edge, self.row.half
        line = self.crowd / (2 * (half - edge))
        return self.row.carried([self._dead(), (line, -half, -edge), (line, edge, half)], [])

    def point_at(self, place: float) -> tuple[np.ndarray, np.ndarray]:
        """Return shear and moment with the point load at a place."""
        return self.row.carried([self._dead()], [(self.point, place)])


def stations_rows(water: OnWater) -> Results:
    """Return the rows of every station: the first half of the section, and its far end.

    Moments and shears at the far end are 0 but for noise: :func:`at_rest` sees to them.
    """
    row, half = water.row, water.row.half
    shown = [*range(1, SLOTS + 1), PARTS]
    x = row.stations
    even, even_moment = row.push(0)
    found = {"x": x, "a1": even, "a2": even_moment, "a3": x * even_moment - row.push(1)[1],
             "u2": row.carried([(1 / (2 * half), -half, half)], [])[1]}
    found["V_middle"], found["M_middle"] = water.middle()
    found["V_ends"], found["M_ends"] = water.at_ends()
    found["M_end"] = water.point_at(water.end_place)[1]
    return {f"Framing.{key}_{n}": float(values[k]) for key, values in found.items()
            for n, k in enumerate(shown, start=1) if k < PARTS or key[0] not in "VM"}


def effective_length(free: float, deep: float) -> float:
    """Return the effective length of a free edge under any other loading (Table 3.3.3)."""
    if free / deep < nds("le_ratio_limit") - SLACK:
        return nds("le_other_short") * free
    if free / deep <= nds("le_ratio_limit_long"):
        return nds("le_other_middle") * free + 3 * deep
    return nds("le_other_long") * free


def held_every(g: Given, done: Results) -> float:
    """Return how often the lower edge of the rail is held [in]: at stringers or cross-beams."""
    return g.sec["spacing"] if across(g) else done["Parts.stringer_length"] * INCHES


def on_water(g: Given, done: Results, load: Loads, rail: Rail) -> Results:
    """Return the rows of half the section as a beam on the water."""
    area = done["Parts.deck_area"]
    water = OnWater(row_of_floats(g, done), load.dead * area / 2,
                    g.job["flotation_load"] * area / 2, load.point)
    row = water.row
    count = int(g.sec["floats_a_row"])
    found = stations_rows(water) | {
        "Framing.held": held_every(g, done), "Framing.half": row.half,
        "Framing.float_length": row.length, "Framing.twice": 2 * row.length,
        "Framing.thrice": 3 * row.length, "Framing.float_spread": row.spread,
        "Framing.crowd": water.crowd, "Framing.rail_dead": water.dead,
        "Framing.crowd_edge": water.crowd_edge, "Framing.crowd_line": water.crowd_line,
        "Framing.crowd_half": water.crowd_line / 2,
        "Framing.dead_and_crowd": water.dead + water.crowd, "Framing.end_x": water.end_place,
        "Framing.end_slope": water.point * water.end_place / row.spread}
    for n in range(SLOTS):  # a place without a float is a point at the far end
        found |= {f"Framing.starts_{n + 1}": float(row.begins[n]) if n < count else row.half,
                  f"Framing.ends_{n + 1}": float(row.ends[n]) if n < count else row.half}
    return found | governing(g, done, water, rail, load)


def governing(g: Given, done: Results, water: OnWater, rail: Rail, load: Loads) -> Results:
    """Return the greatest moments and shear of all cases, and their checks."""
    middle, ends = water.middle(), water.at_ends()
    near = water.point_at(water.end_place)
    even = water.row.carried([(1 / (2 * water.row.half), -water.row.half, water.row.half)], [])[1]
    # House choice: for the point load at mid-length the greatest moment of the dead load is
    # taken with it wherever it stands, and for shear all of the load on one side of a cut.
    at_middle = (water.point * float(water.row.push(0)[1][PARTS // 2])
                 + water.dead * max(0, float(even.max())))
    moments = np.concatenate([middle[1], ends[1], near[1], [at_middle]])
    sag, hog = max(0, float(moments.max())), max(0, float(-moments.min()))
    shear = max(float(np.abs(np.concatenate([middle[0], ends[0]])).max()),
                water.point + water.dead / 2)
    area = done["Parts.deck_area"]
    whole = (load.dead + load.people) * area / 2
    free = held_every(g, done)
    held = Stability(effective_length(free, rail.ply.deep), rail.ply.thick, rail.ply.deep,
                     rail.ply.least_stiffness, rail.ply.bending)
    left = max(abs(case[1][-1]) + abs(case[0][-1]) * water.row.half for case in (middle, ends))
    found = {"M_point": at_middle, "M_strength": whole * float(np.abs(even).max()),
             "sagging": sag, "hogging_moment": hog, "water_shear": shear,
             "f_sag": rail.bending(sag), "f_hog": rail.bending(hog), "f_water": rail.shear(shear),
             "water_hog_length": held.length}
    return ({f"Framing.{key}": value for key, value in found.items()}
            | held.rows("water_hogging")
            | at_most("Framing.sag_check", rail.bending(sag), rail.ply.bending)
            | at_most("Framing.water_hog_check", rail.bending(hog), held.star * held.factor)
            | at_most("Framing.water_shear_check", rail.shear(shear), rail.ply.shear)
            | at_rest(float(left)))


def at_rest(left: float) -> Results:
    """Return the verdict on what is left at the far end: its size is the arithmetic's noise."""
    name = "Framing.closing_check_verdict"
    return {name: at_most("Framing.closing_check", left, own("station_closing"))[name]}


def work(g: Given, done: Results, load: Loads, rail: Rail) -> Results:
    """Return the rows of the rails."""
    found = {"Framing.joint_inside": int(joint_inside(g)), "Framing.plies": rail.plies,
             "Framing.I_skirt": rail.skirt, "Framing.I_all": rail.inertia,
             "Framing.S_all": rail.modulus}
    found |= rail.ply.rows(bears=True) | between_floats(g, done, load, rail)
    return found | on_water(g, done, load, rail)
