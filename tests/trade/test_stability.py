"""Stability: angles against exact clipping of every float, cases to be caught, properties."""

from __future__ import annotations

import math
from dataclasses import dataclass, field

import numpy as np
import pytest

from builder.language.cells import DASH
from builder.language.proofs import unit_fault
from builder.language.ranges import Ranges
from builder.language.values import value_of
from builder.sheets import (
    buoyancy,
    catalog,
    inputs_afloat,
    inputs_site,
    parts,
    reference,
    sections_afloat,
    weight,
)
from builder.sheets import inputs as job
from builder.sheets import sections as sec
from builder.sheets import stability as st
from builder.sheets.proof import afloat as proof
from builder.sheets.stability_cases import CASES
from tests.trade.afloat import corner_range, deck_corners, equilibrium
from tests.trade.filled import verdict, with_defaults

GAMMA = 62.4
SLOTS = 16
HOLDS, NEAR, OUT, UNDER, DECK, OVER = reference.table("stability_states").entries("state")
JOB = {
    job.water: "fresh", job.low_water_depth: 8, job.stays_in: "no", job.salt_distance: 1e6,
    job.use: "private", job.wood: reference.WOOD_PAIRS.keys[0], job.sawn: "dressed",
    job.incised: "no", job.longest_stock: 16, job.finish: reference.FINISHES.keys[0],
    job.stringer_angle: catalog.ANGLES.keys[0], job.corner_inside: catalog.CORNERS.keys[0],
    job.corner_outside: catalog.CORNERS.keys[0], job.washer_plate: catalog.PLATES.keys[0],
    job.lag: reference.LAGS.keys[1], job.lag_length: 3,
}
SECTION = {
    sec.purpose: "platform", sec.quantity: 1, sec.length: 14, sec.width: 10, sec.run: "across",
    sec.stringer_size: "2x8", sec.spacing: 16, sec.rail_size: "2x8", sec.rail_plies: 1,
    sec.header_size: "2x8", sec.deck: "panels", sec.float_model: "Box float 36 x 48 x 20",
    sec.float_rows: 2, sec.floats_a_row: 3,
}


def worked(**typed) -> dict:
    """Return the values of all inputs: those typed, by name, and the defaults of the others."""
    known = {**JOB, **SECTION}
    for name, value in typed.items():
        known[getattr(sec if hasattr(sec, name) else job, name)] = value
    return with_defaults(known)


# ------------------------------------------------------------------ the sheet itself


def test_no_row_has_a_fault_and_every_limit_is_sound() -> None:
    ranges = Ranges()
    rows = [r for r in st.sheet.rows if getattr(r, "expr", None) is not None]
    assert len(rows) > 300
    assert [unit_fault(r) for r in rows if unit_fault(r)] == []
    for r in rows:
        ranges.of(r)
    for check in st.sheet.checks:
        assert ranges.of(check.limit)[0] > 0, check.label
        assert check.kind == "at least" or ranges.of(check.of)[0] >= 0, check.label
    assert ranges.faults == []


@pytest.mark.parametrize("family", proof.families, ids=lambda f: f.key)
def test_published_examples(family) -> None:
    for case in family.cases:
        known = {r: v * family.units.get(r, ("", 1))[1] if not isinstance(v, str) else v
                 for r, v in case.given.items()}
        for row, printed in case.printed.items():
            found = value_of(row, known) / family.units.get(row, ("", 1))[1]
            assert abs(found - printed) <= case.step[row] / 2 * (1 + 1e-9), (case.name, row.label)


# ------------------------------------------------------------------ what must be caught


def assert_turns_over(known: dict, *cases: str) -> None:
    for case in cases:
        assert value_of(st.state[case], known) == OVER, case
        assert value_of(st.stable[CASES[case].weight], known).startswith("UNSTABLE")
        shown = (st.shown_list[case], st.shown_trim[case], st.shown_tilt[case],
                 *st.corner[case].values())
        assert [value_of(row, known) for row in shown] == [DASH] * 7, case
        assert value_of(st.tan_list[case], known) == value_of(st.tan_trim[case], known) == 0
        assert value_of(st.tilt[case], known) == value_of(st.low[case], known) == 0
    assert verdict(st.stable_check, known) == "NOT OK"


def test_launch_float_on_two_pipes_turns_over() -> None:
    """4 x 10 ft on two 16 in pipes at 1.25 ft: 400 lb at the edge, and its even full load."""
    known = worked(purpose="launch", length=10, width=4, floats_a_row=1,
                   float_model="Round float 16 dia x 120", inset_side=1)
    assert value_of(parts.row_y, known) == pytest.approx(1.25)
    assert_turns_over(known, "flotation", "capacity")
    for case in ("edge", "corner"):
        assert value_of(st.state[case], known) in (UNDER, DECK, OVER)
        assert value_of(st.low[case], known) <= 0
    for check in (st.point_check, st.point_low_check, st.even_check):
        assert verdict(check, known) == "NOT OK"


def test_narrow_finger_on_half_floats_turns_over() -> None:
    """4 x 16 ft with half its area on floats: 400 lb at the edge, and its even full load."""
    known = worked(purpose="finger", length=16, width=4, floats_a_row=2,
                   float_model="Box float 24 x 48 x 20")
    floats = value_of(parts.floats, known) * 8
    assert floats == pytest.approx(4 * 16 / 2)
    assert_turns_over(known, "edge", "flotation", "capacity")
    for check in (st.point_check, st.point_low_check, st.even_check):
        assert verdict(check, known) == "NOT OK"


def test_a_wide_platform_passes() -> None:
    known = worked(length=14, width=12, float_model="Box float 48 x 48 x 20")
    for check in (st.stable_check, st.rest_check, st.even_check, st.point_check,
                  st.point_low_check, st.half_low_check):
        assert verdict(check, known) in ("OK", "LOOK"), check.label
    assert verdict(st.stable_check, known) == verdict(st.even_check, known) == "OK"


def test_out_of_range_is_never_ok() -> None:
    known = worked() | {sec.point_load: 1000}
    assert value_of(st.state["corner"], known) in (OUT, UNDER, DECK)
    assert verdict(st.point_check, known) != "OK"
    assert verdict(st.point_low_check, known) != "OK"
    known = worked() | {st.state["lost"]: UNDER, st.tilt["lost"]: 1.0, st.low["lost"]: 30.0}
    assert verdict(st.lost_check, known) == verdict(st.lost_low_check, known) == "LOOK"


@pytest.mark.parametrize("x, y, word", [(0, 0, "OK"), (4.5, 3, "NOT OK"), (0.5, -3.2, "NOT OK")])
def test_extra_float_on_top_of_another(x: float, y: float, word: str) -> None:
    """Rows at 3.5 ft and floats at 0 and 5 ft along, each 4 x 3 ft."""
    known = worked(extra_floats=1) | {sec.extra_x[0]: x, sec.extra_y[0]: y}
    assert value_of(parts.row_y, known) == pytest.approx(3.5)
    assert verdict(st.overlap_check, known) == word


def test_two_extra_floats_on_one_place() -> None:
    known = worked(extra_floats=2) | {sec.extra_x[0]: 2.5, sec.extra_x[1]: 1}
    assert verdict(st.overlap_check, known) == "NOT OK"


# ------------------------------------------------------------------ against exact clipping


@dataclass
class Group:
    """A random group of box floats: places and size [ft]."""

    rng: np.random.Generator
    extras: int
    grid: tuple = ()
    places: list = field(default_factory=list)

    def __post_init__(self) -> None:
        rng = self.rng
        self.l, self.b, self.deep = rng.uniform(2.5, 6), rng.uniform(1.5, 4), rng.uniform(1, 2)
        self.rows, self.in_row = int(rng.integers(2, 4)), int(rng.integers(2, 5))
        self.y = rng.uniform(0.55, 1.4) * self.b * (self.rows - 1)
        self.x = rng.uniform(0.55, 0.9) * self.l * (self.in_row - 1)
        self.ex, self.ey = rng.uniform(-self.x, self.x, 4), rng.uniform(-self.y, self.y, 4)
        self.places = [(x, y) for x in np.linspace(-self.x, self.x, self.in_row)
                       for y in np.linspace(-self.y, self.y, self.rows)]
        self.places += list(zip(self.ex, self.ey, strict=True))[:self.extras]

    def box(self, without: int | None = None) -> np.ndarray:
        """Return x, y, length, breadth, depth of the floats, in slots."""
        places = [p for i, p in enumerate(self.places) if i != without]
        found = np.zeros((5, SLOTS))
        found[4] = self.deep
        found[:2, :len(places)] = np.array(places).T
        found[2, :len(places)], found[3, :len(places)] = self.l, self.b
        return found

    def known(self) -> dict:
        """Return the rows that give the group to the sheets."""
        known = {
            job.water_weight: GAMMA, parts.float_l: self.l, parts.float_b: self.b,
            parts.float_depth: 12 * self.deep, parts.float_round: 0, buoyancy.fullness: 1.0,
            sec.float_rows: self.rows, sec.floats_a_row: self.in_row,
            sec.extra_floats: self.extras, parts.row_y: self.y, parts.end_x: self.x,
            sec.float_turned: "along", parts.deck_top: self.deep + 1,
            parts.overall_length: 2 * self.x + self.l, parts.overall_width: 2 * self.y + self.b,
            st.held_square: 0.0}
        for k in range(4):
            known[sec.extra_x[k]], known[sec.extra_y[k]] = self.ex[k], self.ey[k]
        return known

    def inertia(self) -> tuple[np.ndarray, np.ndarray]:
        """Return the centre of flotation, and the inertia tensor of the waterplane (y, x)."""
        at = np.array(self.places)[:, ::-1]
        off = at - at.mean(axis=0)
        area = self.l * self.b
        own = len(at) * area * np.diag([self.b ** 2, self.l ** 2]) / 12
        return at.mean(axis=0)[::-1], own + area * off.T @ off


def _random_launch(rng, i: int):
    """Return a group, its volume and centre of gravity: level to past the range, some unstable."""
    group = Group(rng, extras=int(rng.integers(1, 5)) if i % 2 else 0)
    share = rng.uniform(0.3, 0.65)
    volume = len(group.places) * group.l * group.b * group.deep * share
    centre, inertia = group.inertia()
    least = np.linalg.eigvalsh(inertia)[0] / volume
    draft = share * group.deep
    stiff = least * rng.choice([-0.1, 0.04, 0.12, 0.3, 0.6, 0.9], p=[.03, .03, .2, .3, .3, .14])
    z = draft / 2 + least - stiff
    reach = math.hypot(group.x + group.l / 2, group.y + group.b / 2)
    slope = rng.uniform(0.05, 1.2) * min(draft, group.deep - draft) / reach
    way = rng.uniform(0, 2 * math.pi) if i % 7 else rng.choice([0, 0.5, 1, 1.5]) * math.pi
    lean = min(slope, math.tan(math.radians(8.5))) * np.array([math.sin(way), math.cos(way)])
    arms = (inertia / volume + (stiff - least) * np.eye(2)) @ lean + lean * (
        lean @ inertia @ lean / volume / 2)
    return group, volume, (centre[0] + arms[1], centre[1] + arms[0], z), (draft, stiff)


@pytest.fixture(scope="module")
def layouts():
    """2,400 random layouts: what the sheet says, and the exact equilibrium of each."""
    rng = np.random.default_rng(20)
    made = [_random_launch(rng, i) for i in range(2400)]
    said = []
    for group, volume, (x, y, z), _ in made:
        known = group.known() | {
            weight.launch: GAMMA * volume, weight.launch_x: x, weight.launch_y: y,
            weight.launch_kg: z, weight.service: GAMMA * volume}
        said.append([value_of(rows["launch"], known)
                     for rows in (st.state, st.tan_list, st.tan_trim, st.tilt)])
    floats = np.stack([group.box() for group, *_ in made], axis=1)
    start = np.array([(draft, 0, 0) for *_, (draft, _) in made]).T
    plane, left = equilibrium(floats, np.array([m[1] for m in made]),
                              np.array([m[2] for m in made]).T, start)
    return made, said, plane, left, corner_range(floats, plane)


def test_angles_are_exact_inside_the_range(layouts) -> None:
    made, said, plane, left, _ = layouts
    words = np.array([s[0] for s in said])
    inside = words == HOLDS
    assert inside.sum() > 1300
    uneven = np.array([g.extras > 0 for g, *_ in made])
    assert (inside & uneven).sum() > inside.sum() / 3
    assert left[inside].max() < 1e-9
    told = np.array([[s[2], s[1]] for s in said]).T
    apart = np.hypot(*(told - plane[1:])) / np.maximum(np.hypot(*plane[1:]), 1e-12)
    assert apart[inside].max() < 1e-6
    tilts = np.array([s[3] for s in said])
    assert (tilts[inside] > 5).sum() > 100 and tilts[inside].max() > 7.5


def test_the_state_tells_when_the_range_is_left(layouts) -> None:
    made, said, _, left, (low, high) = layouts
    words = np.array([s[0] for s in said])
    at_rest = left < 1e-9
    out = at_rest & ((low < -1e-9) | (high > 1e-9))
    assert out.sum() > 50
    assert not (out & (words == HOLDS)).any()
    inside = at_rest & ~out & (words != OVER)
    false_alarms = inside & (words != HOLDS) & (words != NEAR)
    assert false_alarms.sum() < 0.06 * inside.sum()


def test_unstable_exactly_where_the_least_stiffness_is_negative(layouts) -> None:
    made, said, *_ = layouts
    for (*_, (_, stiff)), (word, *_) in zip(made, said, strict=True):
        assert (word == OVER) == (stiff < 0)
    assert sum(s[0] == OVER for s in said) > 40


@pytest.mark.parametrize("height", [0.001, 0.01, 0.05, 0.2, 1, 5])
def test_tilt_is_never_told_too_small_however_near_unstable(height: float) -> None:
    """Against the pair of equations solved by halving, with both leaning axes at work."""
    rng = np.random.default_rng(8)
    for _ in range(60):
        a, b = rng.uniform(0.5, 20, 2)
        stiff = np.array([height, height + rng.uniform(0, 40)])
        radii, arms = np.array([a, a + b]), rng.uniform(-1, 1, 2) * (0.6, 3)
        known = {st.turn: 0.0, st.turn_length: 1.0}
        for rows, value in ((st.BM_a, radii[0]), (st.BM_b, radii[1]), (st.GM_a, stiff[0]),
                            (st.GM_b, stiff[1])):
            known[rows["point"]] = value
        known |= {st.arm_a["edge"]: arms[0], st.arm_b["edge"]: arms[1]}
        low, high = 0.0, 1e9
        for _ in range(200):
            e = (low + high) / 2
            given = (radii * (arms / (np.maximum(stiff, 0.01) + e)) ** 2).sum() / 2
            low, high = (e, high) if given > e else (low, e)
        true = math.degrees(math.atan(np.hypot(*(arms / (np.maximum(stiff, 0.01) + low)))))
        told = value_of(st.tilt["edge"], known)
        assert told >= true * (1 - 1e-9)
        if value_of(st.rise_1["edge"], known) <= 0.08 * stiff.min():
            assert told == pytest.approx(true, rel=1e-6)


PLACES = {
    "edge": [(0, 1), (0, -1)], "end": [(1, 0), (-1, 0)],
    "corner": [(1, 1), (1, -1), (-1, 1), (-1, -1)],
    "half_across": [(0, 1), (0, -1)], "half_along": [(1, 0), (-1, 0)],
}


@dataclass
class Section:
    """A random section: its floats, its own weight and the size of its deck."""

    group: Group
    lean: float | None = None

    def __post_init__(self) -> None:
        rng, g = self.group.rng, self.group
        self.own = GAMMA * len(g.places) * g.l * g.b * g.deep * rng.uniform(0.15, 0.3)
        self.length = 2 * g.x + g.l + rng.uniform(0, 1)
        self.width = 2 * g.y + g.b + rng.uniform(0, 0.5)
        lean = (0.02 if g.extras else 0.0) if self.lean is None else self.lean
        self.at = (rng.uniform(-lean, lean) * self.length, rng.uniform(-lean, lean) * self.width,
                   g.deep * rng.uniform(0.7, 1.1))

    def known(self) -> dict:
        known = self.group.known() | {
            weight.service: self.own, weight.launch: self.own, weight.service_kg: self.at[2],
            weight.service_x: self.at[0], weight.service_y: self.at[1],
            parts.overall_length: self.length, parts.overall_width: self.width,
            parts.deck_area: self.length * self.width, sec.point_load: 400.0,
            job.person_height: 3.28, job.person_weight: 185.0, job.flotation_load: 20.0,
            job.gm_least: 1.0, sec.capacity_load: 20.0, sec.strength_load: 60.0,
            buoyancy.rated_volume: 0.0, inputs_afloat.tilt_half_most: 10.0,
            st.load_volume: 1e9, st.load_height: 1e9, st.load_strength: 1e9}
        return known

    def loaded(self, pounds: float, case: str, side, without=None) -> tuple:
        """Return floats, volume and centre of gravity with a load of standing people."""
        inset = 0.5 if case in ("edge", "end", "corner") else None
        x, y = (side[k] * (size / 2 - inset if inset else size / 4)
                for k, size in enumerate((self.length, self.width)))
        total = self.own + pounds
        load = (x, y, self.group.deep + 1 + 3.28)
        centre = [(self.own * a + pounds * b) / total for a, b in zip(self.at, load, strict=True)]
        return self.group.box(without), total / GAMMA, centre

    def low(self, plane) -> float:
        """Return the lowest deck corner above water [in]."""
        return 12 * (self.group.deep + 1 - plane[0] - abs(plane[1]) * self.length / 2
                     - abs(plane[2]) * self.width / 2)


def rest(tasks: list[tuple]):
    """Return the exact planes, the residuals, and the range of the float corners of some tasks."""
    floats = np.stack([t[0] for t in tasks], axis=1)
    volume = np.array([t[1] for t in tasks])
    area = (floats[2] * floats[3]).sum(axis=1)
    start = np.array([volume / area, 0 * area, 0 * area])
    plane, left = equilibrium(floats, volume, np.array([t[2] for t in tasks]).T, start)
    return plane.T, left, np.array(corner_range(floats, plane)).T


@pytest.mark.parametrize("extras", [0, 2])
def test_load_cases_are_exact_and_on_the_worst_side(extras: int) -> None:
    """With floats alike on all sides the case is the worst of all sides; else it is one of them."""
    rng = np.random.default_rng(31 + extras)
    for _ in range(14):
        section = Section(Group(rng, extras))
        known = section.known()
        half = 20 * section.length * section.width / 2
        tasks = [(case, section.loaded(half if "half" in case else 400, case, side))
                 for case, sides in PLACES.items() for side in sides]
        grid = section.group.rows * section.group.in_row
        tasks += [("lost", section.loaded(0, "edge", (0, 0), i)) for i in range(grid)]
        planes, left, _ = rest([t for _, t in tasks])
        for case in (*PLACES, "lost"):
            if value_of(st.state[case], known) != HOLDS:
                continue
            mine = [k for k, (name, _) in enumerate(tasks) if name == case and left[k] < 1e-9]
            told = np.array([value_of(st.tan_trim[case], known),
                             value_of(st.tan_list[case], known)])
            apart = min(np.hypot(*(np.abs(planes[k][1:]) - np.abs(told))) for k in mine)
            assert apart <= 1e-6 * np.hypot(*told), case
            low = value_of(st.low[case], known)
            lows = [section.low(planes[k]) for k in mine]
            signed = np.array([value_of(st.tan_trim[case], known),
                               value_of(st.tan_list[case], known)])
            plane = min((planes[k] for k in mine), key=lambda p: np.hypot(*(p[1:] - signed)))
            heights = 12 * deck_corners(section.length, section.width, section.group.deep + 1,
                                        plane)
            assert [value_of(st.corner[case][place], known) for place in
                    ("far right", "far left", "near right", "near left")] == pytest.approx(
                list(heights), abs=1e-5), case
            assert min(heights) == pytest.approx(section.low(plane), abs=1e-9)
            assert min(abs(low - f) for f in lows) < 1e-5, case
            if not extras:
                assert low == pytest.approx(min(lows), abs=1e-5), case


@pytest.mark.parametrize("extras, lean, least", [(0, 0.0, 0.95), (2, 0.02, 0.4), (0, 0.04, 0.85),
                                                 (3, 0.05, 0.3)])
def test_the_people_of_the_plate_are_safe(extras: int, lean: float, least: float) -> None:
    """N all over and M on each half: stable, in the limits, against exact clipping.

    The section leans by itself too.  M is not far too low.
    """
    rng = np.random.default_rng(71 + extras)
    shares, spread = [], 0
    for _ in range(16):
        section = Section(Group(rng, extras), lean)
        known = section.known()
        people = int(value_of(st.half_people, known))
        sides = [(case, side) for case in ("half_across", "half_along") for side in PLACES[case]]

        def safe(count: int, section=section, sides=sides) -> bool:
            planes, left, corners = rest([section.loaded(185.0 * count, *s) for s in sides])
            tilt = np.degrees(np.arctan(np.hypot(planes[:, 1], planes[:, 2])))
            return bool((left < 1e-9).all() and (tilt <= 10).all()
                        and (corners[:, 1] <= 1e-9).all()
                        and min(section.low(plane) for plane in planes) >= 2)

        everyone = int(value_of(st.people, known))
        if everyone:
            spread += 1
            assert safe(everyone, sides=[("half_across", (0, 0))])
        if people == 0:
            continue
        assert safe(people)
        best = people
        while best < everyone and safe(best + 1):
            best += 1
        shares.append(people / best)
    assert len(shares) > 6 and spread > 6
    assert np.mean(shares) > least


def test_people_spread_out_keep_the_metacentric_height() -> None:
    rng = np.random.default_rng(9)
    for _ in range(20):
        section = Section(Group(rng, 0))
        known = section.known() | {buoyancy.capacity: 1e7}
        pounds = value_of(st.load_box, known)
        if not 0 < pounds < 1e6:
            continue
        volume = (section.own + pounds) / GAMMA
        _, inertia = section.group.inertia()
        area = len(section.group.places) * section.group.l * section.group.b
        kg = (section.own * section.at[2]
              + pounds * (section.group.deep + 4.28)) / (section.own + pounds)
        height = volume / area / 2 + np.linalg.eigvalsh(inertia)[0] / volume - kg
        assert height == pytest.approx(1.0, abs=1e-6)


# ------------------------------------------------------------------ properties


def test_a_mirrored_section_answers_the_same() -> None:
    rng = np.random.default_rng(3)
    for _ in range(10):
        section = Section(Group(rng, 3))
        known = section.known()
        mirrored = dict(known)
        for row in (weight.service_y, *sec.extra_y):
            mirrored[row] = -known[row]
        for case in ("service", "half_across", "half_along", "edge", "end", "corner", "lost"):
            assert value_of(st.state[case], known) == value_of(st.state[case], mirrored)
            for rows in (st.tilt, st.low):
                assert value_of(rows[case], known) == pytest.approx(
                    value_of(rows[case], mirrored), abs=1e-9)


def test_load_at_the_middle_lowers_and_never_lists() -> None:
    low = []
    for load in (10, 20, 40, 60):
        known = worked(flotation_load=load)
        assert value_of(st.state["flotation"], known) != OVER
        low.append(value_of(st.free_afloat["flotation"], known))
        assert value_of(st.tan_list["flotation"], known) == pytest.approx(0, abs=1e-12)
    assert low == sorted(low, reverse=True) and low[0] > low[-1]


def test_floats_further_out_are_stiffer() -> None:
    found = [value_of(st.BM_a["service"], worked(inset_side=inset)) for inset in (24, 12, 6, 0)]
    assert found == sorted(found) and found[0] < found[-1]


def test_righting_arm_meets_the_lever_at_the_list_of_the_edge_case() -> None:
    """The arm and the lever of the load are equal at the list found by the passes."""
    known = worked() | {weight.service_x: 0.0, weight.service_y: 0.0}
    assert value_of(st.state["edge"], known) == HOLDS
    list_ = math.degrees(math.atan(abs(value_of(st.tan_list["edge"], known))))
    known[st.arm_angle[2]] = list_
    assert value_of(st.arm_GZ[2], known) == pytest.approx(value_of(st.arm_load[2], known),
                                                          rel=1e-6)


def test_accessible_route_asks_one_in_forty_eight() -> None:
    known = worked() | {inputs_site.accessible: "yes"}
    assert value_of(st.rest_most, known) == pytest.approx(math.degrees(math.atan(1 / 48)))


def test_snow_and_gangway_cases_take_their_loads() -> None:
    known = worked(stays_in="yes", ground_snow=30)
    assert value_of(st.weight_afloat["snow_half"], known) == pytest.approx(
        value_of(weight.service, known) + 15 * value_of(parts.deck_area, known))
    assert value_of(st.low["snow"], known) < value_of(st.low["service"], known)
    known = worked(gangway_rest=300, gangway_x=-6) | {
        inputs_site.gangway_length: 20, inputs_site.gangway_weight: 600}
    assert value_of(st.gangway_more, known) == pytest.approx(25 * 20 * 3 / 2)
    assert value_of(st.tan_trim["gangway"], known) < value_of(st.tan_trim["service"], known) < 0


def test_snow_all_over_on_round_floats_by_hand() -> None:
    """The waterline of a pipe narrows as the snow sinks it past half: not that in service."""
    pipes = {"length": 10, "floats_a_row": 1, "float_model": "Round float 16 dia x 120"}
    known = worked(**pipes)
    full = 2 * 10 * math.pi * (16 / 12) ** 2 / 4
    snow = (0.87 * full * GAMMA - value_of(weight.service, known)) / value_of(parts.deck_area,
                                                                              known)
    known = worked(stays_in="yes", ground_snow=snow, **pipes)
    total = value_of(weight.service, known) + snow * value_of(parts.deck_area, known)
    d, long, y = 16 / 12, value_of(parts.float_l, known), value_of(parts.row_y, known)
    n, volume = value_of(parts.floats, known), total / GAMMA
    assert volume == pytest.approx(0.87 * full)
    low, high = 0.0, d
    for _ in range(60):
        T = (low + high) / 2
        r = d / 2
        area = r ** 2 * math.acos((r - T) / r) - (r - T) * math.sqrt(2 * r * T - T ** 2)
        low, high = (T, high) if n * long * area < volume else (low, T)
    w = 2 * math.sqrt(T * (d - T))
    assert T > 0.75 * d
    KB = d / 2 - 2 / 3 * (w / 2) ** 3 / area
    across = n * long * (w ** 3 / 12 + w * y ** 2) / volume
    deep = value_of(parts.deck_top, known) + snow / 15 / 2
    KG = (value_of(weight.service, known) * value_of(weight.service_kg, known)
          + (total - value_of(weight.service, known)) * deep) / total
    assert value_of(st.GM_a["snow_all"], known) == pytest.approx(KB + across - KG, abs=0.01)


def test_a_deck_corner_under_water_is_told() -> None:
    known = worked() | {sec.point_load: 2200}
    assert value_of(st.state["corner"], known) == DECK
    assert min(value_of(row, known) for row in st.corner["corner"].values()) == pytest.approx(
        value_of(st.low["corner"], known)) and value_of(st.low["corner"], known) < 0
    assert verdict(st.point_low_check, known) == "NOT OK"


def test_shown_angles_are_those_judged() -> None:
    known = worked(extra_floats=1) | {sec.extra_x[0]: 0, sec.extra_y[0]: 1}
    for case in CASES:
        list_, trim = (math.tan(math.radians(value_of(rows[case], known)))
                       for rows in (st.shown_list, st.shown_trim))
        assert list_ == pytest.approx(value_of(st.tan_list[case], known), abs=1e-12)
        assert trim == pytest.approx(value_of(st.tan_trim[case], known), abs=1e-12)
        assert value_of(st.shown_tilt[case], known) == pytest.approx(
            math.degrees(math.atan(math.hypot(list_, trim))), abs=1e-9)


def test_even_loads_have_a_limit_of_the_readers_own() -> None:
    known = worked(length=14, width=12, float_model="Box float 48 x 48 x 20")
    low = min(value_of(st.low[k], known) for k in ("flotation", "capacity"))
    assert verdict(st.even_check, known | {inputs_afloat.even_least: low - 0.1}) != "NOT OK"
    fresh = worked(length=14, width=12, float_model="Box float 48 x 48 x 20")
    assert verdict(st.even_check, fresh | {inputs_afloat.even_least: low + 0.1}) == "NOT OK"


# ------------------------------------------------------------------ finger rule


@pytest.mark.parametrize("extras", [0, 2])
def test_freeboard_lost_at_the_end_of_a_finger(extras: int) -> None:
    """400 lb 2 ft from the far end, on the centreline, against exact clipping."""
    rng = np.random.default_rng(5 + extras)
    tried = 0
    for _ in range(20):
        section = Section(Group(rng, extras))
        known = section.known()
        floats, volume, centre = section.loaded(0, "edge", (0, 0))
        x, total = section.length / 2 - 2, section.own + 400
        put = (x, 0, section.group.deep + 1 + 3.28)
        aboard = [(section.own * a + 400 * b) / total for a, b in zip(section.at, put, strict=True)]
        planes, left, corners = rest([(floats, volume, centre),
                                      (floats, total / GAMMA, aboard)])
        if left.max() > 1e-9 or corners[:, 0].min() < 0 or corners[:, 1].max() > 0:
            continue
        tried += 1
        down = [12 * (p[0] + p[1] * section.length / 2) for p in planes]
        told = value_of(st.end_loss, known)
        assert told == pytest.approx(down[1] - down[0], rel=0.15 if extras else 0.05)
        if not extras:
            assert told >= (down[1] - down[0]) * (1 - 1e-6)
    assert tried > 8


def test_finger_rule_is_not_ok_only_where_it_is_ticked() -> None:
    thin = {"length": 20, "width": 4, "float_rows": 2, "floats_a_row": 4,
            "float_model": "Box float 24 x 48 x 20"}
    for typed, ticked, word in (("finger", "no", "LOOK"), ("finger", "yes", "NOT OK"),
                                ("walkway", "yes", "OK")):
        known = worked(purpose=typed, inset_end=24, **thin) | {inputs_afloat.finger_rule: ticked}
        assert 4 < value_of(st.end_loss, known) < 12
        assert verdict(st.finger_check, known) == word, (typed, ticked)
        known = worked(purpose=typed, inset_end=24, **thin) | {
            inputs_afloat.finger_rule: ticked, inputs_afloat.finger_most: 12}
        assert verdict(st.finger_check, known) == "OK"


# ------------------------------------------------------------------ held in roll


def _held(by: str = "A", **typed) -> dict:
    """Return a finger of 4 x 16 ft held by a neighbour with 150,000 lb·ft in trim."""
    return worked(purpose="finger", length=16, width=4, floats_a_row=2,
                  float_model="Box float 24 x 48 x 20", **typed) | {
        sections_afloat.held_by: by, sections_afloat.hinge_apart: 3.0,
        st.holder_trim: 150000.0, st.holder_line: 1}


def _stiff(known: dict, load: float = 0.0) -> float:
    """Return the righting moment of a finger of boxes on its own, a unit of list [lb·ft]."""
    n, long, b, y = (value_of(r, known) for r in (parts.floats, parts.float_l, parts.float_b,
                                                  parts.row_y))
    deep = value_of(parts.float_depth, known) / 12
    fullness = value_of(buoyancy.fullness, known)
    area = n * long * b * fullness
    total = value_of(weight.service, known) + load
    kg = (value_of(weight.service, known) * value_of(weight.service_kg, known)
          + load * (value_of(parts.deck_top, known) + 3.28)) / total
    draft = total / (GAMMA * area)
    assert 0 < draft < deep
    return GAMMA * area * (b ** 2 / 12 + y ** 2) + total * (draft / 2 - kg)


def test_a_finger_is_held_by_its_neighbour() -> None:
    """By hand: k = own + neighbour's; moment w·y goes through the hinges by their shares."""
    known = _held() | {job.person_height: 3.28}
    load = 400.0
    own = _stiff(known, load)
    arm = value_of(parts.overall_width, known) / 2 - 0.5
    half = 20 * value_of(parts.deck_area, known) / 2
    total = value_of(weight.service, known) + load
    assert value_of(st.GM_a["point"], known) * total == pytest.approx(own + 150000, rel=1e-9)
    lean = math.tan(math.radians(value_of(st.shown_list["edge"], known)))
    assert abs(lean) == pytest.approx(load * arm / (own + 150000), rel=1e-3)
    service, stiff = _stiff(known), 150000
    fall = value_of(parts.deck_top, known) + 3.28 - value_of(buoyancy.draft_service, known) / 12
    left, y = value_of(parts.floats, known) - 1, value_of(parts.row_y, known)
    area = GAMMA * value_of(buoyancy.waterplane, known) / (left + 1)
    lists = [load * arm / (service - load * fall + stiff),
             half * value_of(parts.overall_width, known) / 4 / (service - half * fall + stiff),
             value_of(weight.service, known) * y / left / (
                 service - area * (value_of(parts.float_b, known) ** 2 / 12
                                   + y ** 2 * (left + 1) / left) + stiff)]
    through = max(lists) * stiff
    assert value_of(st.roll_share, known) == pytest.approx(through, rel=1e-9)
    pins = max(load, half / 4) + through / 3.0
    assert value_of(st.pin_load, known) == pytest.approx(pins, rel=1e-9)
    assert verdict(st.stable_check, known) == "OK"
    assert verdict(st.pin_check, known | {inputs_afloat.hinge_load: pins * 2}) == "OK"


def test_it_stands_alone_where_pins_or_neighbour_fail() -> None:
    alone = worked(purpose="finger", length=16, width=4, floats_a_row=2,
                   float_model="Box float 24 x 48 x 20")
    for change, word in (({inputs_afloat.hinge_load: 500.0}, "NOT OK"),
                         ({st.holder_trim: 0.0}, "NOT OK"),
                         ({st.holder_line: 2}, "NOT OK"),
                         ({sections_afloat.held_by: "none"}, "OK")):
        known = _held() | change
        assert verdict(st.pin_check, known) == word
        assert value_of(st.held_square, known) == 0
        assert value_of(st.GM_a["point"], known) == value_of(st.GM_a["point"], alone)
        assert value_of(st.state["edge"], known) == OVER
        assert verdict(st.stable_check, known) == "NOT OK"


def test_a_neighbour_is_shared_and_may_lie_in_line() -> None:
    known = _held() | {sections_afloat.holder_holds: 3}
    assert value_of(st.holder_stiff, known) == pytest.approx(50000)
    known = _held() | {sections_afloat.holder_lies: "in line"}
    assert value_of(st.holder_stiff, known) == pytest.approx(_stiff(known), rel=1e-9)


# ------------------------------------------------------------------ which float is lost


def _stiffness_without(section: Section, gone: int) -> tuple[float, float]:
    """Return the least waterplane inertia over volume, and KB, of boxes without one [ft]."""
    g = section.group
    at = np.array([p for i, p in enumerate(g.places) if i != gone])
    off = at - at.mean(axis=0)
    area, volume = g.l * g.b, section.own / GAMMA
    inertia = area * (off.T @ off + len(at) * np.diag([g.l ** 2, g.b ** 2]) / 12)
    return np.linalg.eigvalsh(inertia)[0] / volume, volume / (len(at) * area) / 2


@pytest.mark.parametrize("extras", [1, 2, 4])
def test_the_lost_float_is_the_corner_that_turns_it_over(extras: int) -> None:
    """The centre of gravity stands so high that the worst corner float lost turns it over.

    Extra floats pull the centre of flotation one way, the weight leans the other way.
    """
    rng = np.random.default_rng(40 + extras)
    found = []
    for _ in range(30):
        section = Section(Group(rng, extras), 0.01)
        known = section.known()
        heights = [sum(_stiffness_without(section, i)) for i, (x, y) in
                   enumerate(section.group.places)
                   if math.isclose(abs(x), section.group.x) and math.isclose(
                       abs(y), section.group.y)]
        assert len(heights) == 4
        known[weight.service_kg] = min(heights) + 0.05 * (max(heights) - min(heights))
        found.append(value_of(st.state["lost"], known))
    assert found.count(OVER) == len(found)


def test_a_neighbour_with_the_same_floats_is_another_type() -> None:
    known = _held() | {st.holder_trim: value_of(st.alone_trim, _held())}
    assert value_of(st.holder_there, known) == 1


@pytest.mark.parametrize("case", ["snow", "gangway"])
def test_snow_and_a_loaded_gangway_go_through_the_pins(case: str) -> None:
    """By hand: 60 psf of snow on one half; or a gangway of 60 ft that lands at the edge."""
    typed = {"stays_in": "yes", "ground_snow": 60} if case == "snow" else {
        "gangway_rest": 300, "gangway_y": 1.5}
    known = _held(**typed) | {job.person_height: 3.28}
    if case == "gangway":
        known |= {inputs_site.gangway_length: 60, inputs_site.gangway_weight: 600,
                  weight.service_y: 0.0}
    width, area = value_of(parts.overall_width, known), value_of(parts.deck_area, known)
    draft = value_of(buoyancy.draft_service, known) / 12
    deck = value_of(parts.deck_top, known)
    load, arm, height = ((30 * area, width / 4, deck + 60 / 15 / 2) if case == "snow"
                         else (25 * 60 * 3 / 2, 1.5, deck + 3.28))
    through = load * arm * 150000 / (_stiff(known) - load * (height - draft) + 150000)
    assert value_of(st.roll_share, known) == pytest.approx(through, rel=1e-9)
    upright = max(400.0, 20 * area / 8, 0 if case == "snow" else load)
    assert value_of(st.pin_load, known) == pytest.approx(upright + through / 3, rel=1e-9)
