"""Launch and AsBuilt: the readings of four corners against exact clipping of every float."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
import pytest

from builder.language.proofs import unit_fault
from builder.language.ranges import Ranges
from builder.language.values import value_of
from builder.sheets import as_built, buoyancy, catalog, launch, launch_form, parts, readings
from builder.sheets import inputs as job
from builder.sheets import reference as ref
from builder.sheets import sections as sec
from builder.sheets import stability as st
from builder.sheets import weight as wt
from builder.sheets.framing_lifting import lift_load
from builder.sheets.proof import launch as proof
from tests.trade.afloat import corner_range, equilibrium
from tests.trade.filled import verdict, with_defaults

GAMMA, INSIDE, SLOTS = 62.4, 0.5, 40
JOB = {
    job.water: "fresh", job.low_water_depth: 8, job.stays_in: "no", job.salt_distance: 1e6,
    job.use: "private", job.wood: ref.WOOD_PAIRS.keys[0], job.sawn: "dressed", job.incised: "no",
    job.longest_stock: 16, job.finish: ref.FINISHES.keys[0],
    job.stringer_angle: catalog.ANGLES.keys[0], job.corner_inside: catalog.CORNERS.keys[0],
    job.corner_outside: catalog.CORNERS.keys[0], job.washer_plate: catalog.PLATES.keys[0],
    job.lag: ref.LAGS.keys[1], job.lag_length: 3,
}
SECTION = {
    sec.purpose: "platform", sec.quantity: 1, sec.length: 14, sec.width: 10, sec.run: "across",
    sec.stringer_size: "2x8", sec.spacing: 16, sec.rail_size: "2x8", sec.rail_plies: 1,
    sec.header_size: "2x8", sec.deck: "panels", sec.float_model: "Box float 36 x 48 x 20",
    sec.float_rows: 2, sec.floats_a_row: 3,
}
LISTS = {"item_weight": sec.item_weight, "item_x": sec.item_x, "item_y": sec.item_y,
         "extra_x": sec.extra_x, "extra_y": sec.extra_y, "launch_corner": readings.launch_corner,
         "month_corner": readings.month_corner}


def section(**typed) -> dict:
    """Return the values of all inputs: those typed, by name, and the defaults of the others."""
    known = {**JOB, **SECTION}
    for name, value in typed.items():
        if name in LISTS:
            known |= dict(zip(LISTS[name], value, strict=False))
        else:
            known[getattr(sec if hasattr(sec, name) else readings, name)] = value
    return with_defaults(known)


ENDS = {"far": 1, "near": -1}
SIDES = {"right": 1, "left": -1}


def place_of(name: str) -> tuple[int, int]:
    """Return (far, right), each 1 or -1, read from the words of a corner's name."""
    end, side = name.replace(" end", "").split(", ")
    return ENDS[end], SIDES[side]


PLACES = [place_of(name) for name in readings.CORNERS.keys]


@dataclass
class Group:
    """The floats of a section for the exact equilibrium, deck size and height [ft]."""

    floats: np.ndarray
    half: tuple[float, float]
    top: float

    def rest(self, weight: float, centre) -> np.ndarray:
        """Return T, b, c at rest of a weight [lb] with its centre at (x, y, z) [ft]."""
        area = (self.floats[2] * self.floats[3]).sum()
        start = np.array([[weight / GAMMA / area], [0.0], [0.0]])
        volume = np.array([weight / GAMMA])
        plane, left = equilibrium(self.floats, volume, np.array(centre, float)[:, None], start)
        assert left[0] < 1e-10
        low, high = corner_range(self.floats, plane)
        assert low[0] > 0 > high[0], "the case leaves the range of the formulas"
        return plane[:, 0]

    def above(self, plane, x: float, y: float) -> float:
        """Return the deck above water at a place [in]."""
        return 12 * (self.top - plane[0] - plane[1] * x - plane[2] * y)

    def corners(self, plane) -> list[float]:
        """Return the four freeboards, going round [in]."""
        return [self.above(plane, far * self.half[0], right * self.half[1])
                for far, right in PLACES]


def group(known: dict) -> Group:
    """Return a section's floats, worked out from its layout and not from any sum of the sheets."""
    v = {name: value_of(getattr(parts, name), known)
         for name in ("end_x", "row_y", "float_l", "float_b", "float_depth", "deck_top",
                      "overall_length", "overall_width")}
    rows, each = known[sec.float_rows], known[sec.floats_a_row]
    places = [(x, y) for y in np.linspace(-v["row_y"], v["row_y"], rows)
              for x in np.linspace(-v["end_x"], v["end_x"], each)]
    places += [(known[sec.extra_x[i]], known[sec.extra_y[i]])
               for i in range(int(known[sec.extra_floats]))]
    assert value_of(buoyancy.fullness, known) == 1
    table = np.zeros((5, 1, SLOTS))
    for k, (x, y) in enumerate(places):
        table[:, 0, k] = x, y, v["float_l"], v["float_b"], v["float_depth"] / 12
    return Group(table, (v["overall_length"] / 2, v["overall_width"] / 2), v["deck_top"])


@pytest.fixture(autouse=True)
def full_boxes(monkeypatch) -> None:
    """Let a float displace its whole box, as the clipping does."""
    column = list(catalog.FLOATS.columns).index("fullness")
    lines = [(*line[:column], 1, *line[column + 1:]) for line in catalog.FLOATS.lines]
    monkeypatch.setattr(catalog.FLOATS, "lines", lines)


LAYOUTS = {
    "even": {},
    "long": {"length": 20, "width": 6, "floats_a_row": 5,
             "float_model": "Box float 24 x 48 x 16"},
    "two extra floats at one end": {"extra_floats": 2, "extra_x": [5, 5], "extra_y": [1, -1],
                                    "length": 16, "width": 12},
    "one extra float off both ways": {"extra_floats": 1, "extra_x": [4], "extra_y": [-1.5],
                                      "length": 18, "width": 12},
}


# ------------------------------------------------------------------ the sheets themselves


@pytest.mark.parametrize("module", [launch, as_built], ids=["Launch", "AsBuilt"])
def test_no_row_has_a_fault_and_every_limit_is_sound(module) -> None:
    ranges = Ranges()
    rows = [r for r in module.sheet.rows if getattr(r, "expr", None) is not None]
    assert len(rows) > 40
    assert [unit_fault(r) for r in rows if unit_fault(r)] == []
    for r in rows:
        ranges.of(r)
    for check in module.sheet.checks:
        assert ranges.of(check.limit)[0] > 0, check.label
        assert check.kind == "at least" or ranges.of(check.of)[0] >= 0, check.label
    assert ranges.faults == []


def test_corners_go_round() -> None:
    """Neighbours share an end or a side; one and three, two and four lie across."""
    table = readings.CORNERS
    assert list(zip(table.entries("far"), table.entries("right"), strict=True)) == PLACES
    assert len(set(PLACES)) == 4
    for (a, b), (c, d) in zip(PLACES, PLACES[1:] + PLACES[:1], strict=True):
        assert (a == c) != (b == d)
    for name, side, end in zip(table.keys, table.entries("side"), table.entries("end"),
                               strict=True):
        assert name.startswith(end) and name.endswith(side.removesuffix(" side"))


@pytest.mark.parametrize("family", proof.families, ids=lambda f: f.key)
def test_published_examples(family) -> None:
    for case in family.cases:
        known = {r: v * family.units.get(r, ("", 1))[1] for r, v in case.given.items()}
        for row, printed in case.printed.items():
            found = value_of(row, known) / family.units.get(row, ("", 1))[1]
            assert abs(found - printed) <= case.step[row] / 2 * (1 + 1e-9), (case.name, row.label)


# ------------------------------------------------------------------ lifting


def test_sling_tension_as_published() -> None:
    """A university's rigging page: 2,000 lb on two legs."""
    shown = {value_of(angle, {}): launch.tension[key] for key, angle in launch.ANGLES.items()}
    table = ref.table("checks_sling")
    lines = [dict(zip(table.columns, line, strict=True)) for line in table.lines]
    assert {line["angle from horizontal"] for line in lines} <= set(shown)
    for line in lines:
        found = value_of(shown[line["angle from horizontal"]], {lift_load: line["load"]})
        assert found == pytest.approx(line["printed"], abs=line["tolerance"])


def test_sling_and_machine_are_held_against_their_tags() -> None:
    known = section(sling_limit=100000, machine_limit=100000)
    assert verdict(launch.sling_check, known) == verdict(launch.machine_check, known) == "OK"
    assert value_of(launch.tension["middle"], known) == pytest.approx(
        value_of(lift_load, known) / 2 * math.sqrt(2))
    known = section(sling_limit=1000, machine_limit=1500)
    assert verdict(launch.sling_check, known) == verdict(launch.machine_check, known) == "NOT OK"


# ------------------------------------------------------------------ predicted


def off_centre(layout: str, **more) -> dict:
    return section(**LAYOUTS[layout], item_weight=[200], item_x=[3], item_y=[1.2], **more)


@pytest.mark.parametrize("layout", LAYOUTS)
def test_corners_predicted_are_those_of_exact_equilibrium(layout) -> None:
    known = off_centre(layout)
    at = group(known)
    centre = [value_of(r, known) for r in (wt.launch_x, wt.launch_y, wt.launch_kg)]
    plane = at.rest(value_of(wt.launch, known), centre)
    found = [value_of(r, known) for r in launch.corner]
    assert found == pytest.approx(at.corners(plane), abs=1e-4)
    assert max(found) - min(found) > 0.5
    assert value_of(launch.mean, known) == pytest.approx(sum(found) / 4)


@pytest.mark.parametrize("layout", LAYOUTS)
@pytest.mark.parametrize("corner", readings.CORNERS.keys)
def test_drops_predicted_are_those_of_exact_equilibrium(layout, corner) -> None:
    known = off_centre(layout, test_weight=200, test_corner=corner)
    at = group(known)
    (far, right), weight = place_of(corner), value_of(wt.launch, known)
    own = np.array([value_of(r, known) for r in (wt.launch_x, wt.launch_y, wt.launch_kg)])
    before = at.rest(weight, own)
    for row, x in ((launch.drop_side, 0), (launch.drop_corner, far)):
        y = right * (at.half[1] - INSIDE)
        place = np.array([x * (at.half[0] - INSIDE), y, at.top])
        after = at.rest(weight + 200, (weight * own + 200 * place) / (weight + 200))
        read = x * at.half[0], right * at.half[1]
        drop = at.above(before, *read) - at.above(after, *read)
        assert value_of(row, known) == pytest.approx(drop, rel=2e-3), row.label
    assert value_of(launch.test_state, known) == "yes"
    assert value_of(launch.test_range, known) == "hold"


def test_a_test_weight_too_heavy_is_said() -> None:
    known = off_centre("long", test_weight=900)
    assert value_of(launch.test_range, known).startswith("OUT OF RANGE")
    narrow = section(purpose="finger", length=16, width=4, floats_a_row=2, test_weight=400,
                     float_model="Box float 24 x 48 x 20", inset_side=10)
    assert value_of(st.tilt["launch"], narrow) == 0
    assert value_of(launch.test_state, narrow).startswith("NO")


def test_pounds_for_the_pencil() -> None:
    """An inch out of level is made good, to the small angle, by the pounds shown."""
    known = section()
    at = group(known)
    weight, kg = (value_of(r, known) for r in (wt.launch, wt.launch_kg))
    level = at.rest(weight, (0, 0, kg))
    down = at.rest(weight + 1, (0, 0, kg))
    assert value_of(launch.inch, known) == pytest.approx(1 / (12 * (down[0] - level[0])))
    for row, along in ((launch.level_side, 0), (launch.level_end, 1)):
        arm = at.half[1 - along] - INSIDE
        pounds = value_of(row, known)
        centre = [0, 0, kg]
        centre[1 - along] = pounds * arm / weight
        tilted = at.rest(weight, centre)
        difference = 24 * tilted[1 if along else 2] * at.half[1 - along]
        assert difference == pytest.approx(1, rel=1e-3)


def test_pounds_for_the_pencil_where_floats_stand_askew() -> None:
    """Levelled from a list alone, or a trim alone: the moment about that axis is the pencil's."""
    known = section(extra_floats=2, extra_x=[4.5, -4.5], extra_y=[3, -3], length=18, width=12)
    assert abs(value_of(st.turn, known)) > 0.1
    at = group(known)
    weight, kg = (value_of(r, known) for r in (wt.launch, wt.launch_kg))
    level = at.rest(weight, (0, 0, kg))
    for row, along in ((launch.level_side, 0), (launch.level_end, 1)):
        plane = level.copy()
        half = at.half[1 - along]
        plane[1 if along else 2] = 1 / 24 / half
        pounds = moments(at, plane, kg)[1 - along] / (half - INSIDE)
        assert value_of(row, known) == pytest.approx(pounds, rel=1e-3)


def moments(at: Group, plane, kg: float) -> tuple[float, float]:
    """Return the righting moments along and across [lb·ft] of a slightly leaning section.

    Summed over the columns of water under each float: every float is divided into small squares.
    """
    T, b, c = plane
    cut = (np.arange(60) + 0.5) / 60 - 0.5
    total = np.zeros(3)
    for x, y, along, wide, _ in at.floats[:, 0, :].T:
        xs, ys = np.meshgrid(x + along * cut, y + wide * cut)
        deep = T + b * xs + c * ys
        water = GAMMA * deep * along * wide / cut.size ** 2
        total += [(water * (xs + b * deep / 2)).sum(), (water * (ys + c * deep / 2)).sum(),
                  water.sum()]
    return total[0] - total[2] * kg * b, total[1] - total[2] * kg * c


# ------------------------------------------------------------------ as found


RNG = np.random.default_rng(20260115)
CASES = [(layout, *draw) for layout in LAYOUTS
         for draw in zip(RNG.uniform(0.9, 1.5, 4), RNG.uniform(-0.35, 0.35, 4),
                         RNG.uniform(-0.25, 0.25, 4), RNG.uniform(-0.3, 0.3, 4), strict=True)]


def as_read(layout: str, share: float, x: float, y: float, twist: float = 0):
    """Return known values with the readings of a section of another weight and centre.

    The height of the centre is the predicted one; the twist [in] is added to the readings.
    """
    known = section(**LAYOUTS[layout])
    at = group(known)
    weight = share * value_of(wt.launch, known)
    centre = np.array([x, y, value_of(wt.launch_kg, known)])
    plane = at.rest(weight, centre)
    signs = (1, -1, 1, -1)
    for ask, read, sign in zip(readings.launch_corner, at.corners(plane), signs, strict=True):
        known[ask] = read + sign * twist / 2
    return known, at, weight, centre, plane


@pytest.mark.parametrize(("layout", "share", "x", "y", "twist"), CASES)
def test_weight_list_and_trim_are_recovered(layout, share, x, y, twist) -> None:
    known, _, weight, _, plane = as_read(layout, share, x, y, twist)
    assert value_of(as_built.found, known) == pytest.approx(weight, rel=1e-9)
    assert value_of(as_built.tan_trim, known) == pytest.approx(plane[1], abs=1e-12)
    assert value_of(as_built.tan_list, known) == pytest.approx(plane[2], abs=1e-12)
    assert value_of(as_built.list_deg, known) == pytest.approx(math.degrees(math.atan(plane[2])))
    off_x = x - value_of(wt.launch_x, known)
    off_y = y - value_of(wt.launch_y, known)
    assert value_of(as_built.centre_x, known) == pytest.approx(off_x, abs=1e-7)
    assert value_of(as_built.centre_y, known) == pytest.approx(off_y, abs=1e-7)
    assert value_of(as_built.twist, known) == pytest.approx(abs(twist), abs=1e-9)
    assert value_of(as_built.holds, known) == "hold"
    assert value_of(as_built.excess, known) == pytest.approx(
        weight - value_of(wt.launch, known), abs=1e-6)


def floating_centre(known) -> tuple[float, float]:
    return value_of(buoyancy.flotation_x, known), value_of(buoyancy.flotation_y, known)


@pytest.mark.parametrize(("layout", "share", "x", "y", "twist"), CASES)
def test_the_weights_named_level_it(layout, share, x, y, twist) -> None:
    """Put them where the words say, and let it come to rest again."""
    known, at, weight, centre, _ = as_read(layout, share, x, y, twist)
    middle_x, middle_y = floating_centre(known)
    words = value_of(as_built.advice, known)
    first, second = words.split("; ")
    corner, edge = (part.split(" at the ")[1] for part in (first, second))
    far, right = place_of(corner)
    half_x, half_y = at.half[0] - INSIDE, at.half[1] - INSIDE
    side = edge.removeprefix("middle of the ")
    if side.endswith("side"):
        edge_at = (middle_x, SIDES[side.removesuffix(" side")] * half_y)
    else:
        edge_at = (ENDS[side.removesuffix(" end")] * half_x, middle_y)
    at_corner, at_edge = value_of(as_built.add_corner, known), value_of(as_built.add_edge, known)
    assert first.startswith(f"{at_corner:.0f} lb") and second.startswith(f"{at_edge:.0f} lb")
    total = weight + at_corner + at_edge
    moment = (weight * centre + at_corner * np.array([far * half_x, right * half_y, at.top])
              + at_edge * np.array([*edge_at, at.top]))
    plane = at.rest(total, moment / total)
    assert abs(plane[1]) < 1e-7 and abs(plane[2]) < 1e-7


@pytest.mark.parametrize(("layout", "share", "x", "y", "twist"), CASES[::3])
def test_the_shifts_named_level_it(layout, share, x, y, twist) -> None:
    """Shift the ballast; or in its place one float, which takes its own weight along."""
    known, at, weight, centre, plane = as_read(layout, share, x, y, twist)
    low = np.array([np.sign(value_of(as_built.moment_x, known)),
                    np.sign(value_of(as_built.moment_y, known))])
    feet = np.array([value_of(as_built.shift_x, known), value_of(as_built.shift_y, known)])
    shifted = centre.copy()
    shifted[:2] -= low * feet * known[readings.shift_weight] / weight
    after = at.rest(weight, shifted)
    assert abs(after[1]) < 1e-7 and abs(after[2]) < 1e-7
    moved = at.floats.copy()
    feet = np.array([value_of(as_built.float_x, known), value_of(as_built.float_y, known)])
    moved[:2, 0, 0] += low * feet
    heavy = value_of(wt.float_weight, known)
    carried = centre.copy()
    carried[:2] += low * feet * heavy / weight
    after = Group(moved, at.half, at.top).rest(weight, carried)
    assert abs(after[1]) < 1e-7 and abs(after[2]) < 1e-7
    assert abs(plane[1]) + abs(plane[2]) > 1e-3


def test_a_section_as_predicted_passes_everything() -> None:
    known = off_centre("even")
    for ask, row in zip(readings.launch_corner, launch.corner, strict=True):
        known[ask] = value_of(row, known)
    assert value_of(as_built.found, known) == pytest.approx(value_of(wt.launch, known))
    assert value_of(as_built.centre_x, known) == pytest.approx(0, abs=1e-6)
    assert value_of(as_built.centre_y, known) == pytest.approx(0, abs=1e-6)
    for check in (as_built.mean_check, as_built.corner_check, as_built.twist_check):
        assert verdict(check, known) == "OK"


def test_low_far_right_corner_is_cured_at_the_near_left() -> None:
    known = section(launch_corner=[20, 19, 16, 18])
    assert value_of(as_built.advice, known).split(" lb at the ")[1].startswith("near end, left")
    for turned, name in ((1, "near end, right"), (2, "far end, right"), (3, "far end, left")):
        reads = [20, 19, 16, 18]
        known = section(launch_corner=reads[-turned:] + reads[:-turned])
        assert name in value_of(as_built.advice, known).split(";")[0]


def test_tolerance_of_two_inches() -> None:
    base = section()
    right = [value_of(r, base) for r in launch.corner]

    def verdicts(change) -> list[str]:
        known = section(launch_corner=[r + d for r, d in zip(right, change, strict=True)])
        return [verdict(c, known) for c in (as_built.mean_check, as_built.corner_check,
                                            as_built.twist_check)]

    assert verdicts([1.7] * 4) == ["OK", "OK", "OK"]
    assert verdicts([-1.9] * 4) == ["LOOK", "LOOK", "OK"]
    assert verdicts([-2.1] * 4) == ["NOT OK", "NOT OK", "OK"]
    assert verdicts([2.1, 2.1, -2.1, -2.1]) == ["OK", "NOT OK", "OK"]
    assert verdicts([0.6, -0.6, 0, 0]) == ["OK", "OK", "LOOK"]


def test_twist_is_half_the_difference_of_the_diagonals() -> None:
    known = section(launch_corner=[18, 17, 18.5, 17.3])
    assert value_of(as_built.twist, known) == pytest.approx((18 + 18.5 - 17 - 17.3) / 2)


def test_level_as_found_warns_and_fails() -> None:
    def at(degrees_: float) -> str:
        known = section()
        rise = 6 * value_of(parts.overall_width, known) * math.tan(math.radians(degrees_))
        for ask, (_, right) in zip(readings.launch_corner, PLACES, strict=True):
            known[ask] = 18 - right * rise
        return verdict(as_built.level_check, known)

    assert [at(0.5), at(1.5), at(2.1)] == ["OK", "LOOK", "NOT OK"]


def test_out_of_range_is_said() -> None:
    known = section(launch_corner=[31, 14, 14, 31])
    assert value_of(as_built.holds, known).startswith("OUT OF RANGE")


@pytest.mark.parametrize("model", ["Round float 16 dia x 120", "Box float 36 x 48 x 20"])
@pytest.mark.parametrize("over", [0.5, 4.0])
def test_a_float_that_is_under_displaces_itself_and_no_more(model, over) -> None:
    """Water found is that of the whole floats, its centre theirs; and it is said."""
    known = section(float_model=model, length=12, floats_a_row=1)
    top, depth = (value_of(r, known) for r in (parts.deck_top, parts.float_depth))
    each = math.pi / 4 * (16 / 12) ** 2 * 10 if "Round" in model else 3 * 4 * 20 / 12
    for ask in readings.launch_corner:
        known[ask] = 12 * top - depth - over
    assert value_of(as_built.draft, known) == pytest.approx(depth + over)
    assert value_of(as_built.found, known) == pytest.approx(2 * each * GAMMA, rel=1e-3)
    assert value_of(as_built.KB, known) == pytest.approx(depth / 24, rel=1e-3)
    assert value_of(as_built.holds, known).startswith("OUT OF RANGE")


@pytest.mark.parametrize("inches", [3.0, 7.3, 11.0])
def test_round_floats_by_the_circle(inches) -> None:
    known = section(float_model="Round float 16 dia x 120", length=12, floats_a_row=1)
    top = 12 * value_of(parts.deck_top, known)
    for ask in readings.launch_corner:
        known[ask] = top - inches
    r = 16 / 24
    h = inches / 12
    area = r * r * math.acos((r - h) / r) - (r - h) * math.sqrt(2 * r * h - h * h)
    assert value_of(as_built.found, known) == pytest.approx(2 * 10 * area * GAMMA, rel=2e-3)
    breadth = 2 * math.sqrt(h * (2 * r - h))
    assert value_of(as_built.water_foot, known) == pytest.approx(2 * 10 * breadth * GAMMA,
                                                                rel=5e-3)


# ------------------------------------------------------------------ weight test, second reading


def test_weight_test_against_predicted() -> None:
    known = section()
    side, corner = (value_of(r, known) for r in (launch.drop_side, launch.drop_corner))
    assert 0 < side < corner
    known = section(drop_side=side, drop_corner=corner)
    assert verdict(as_built.side_check, known) == "OK"
    assert verdict(as_built.corner_drop_check, known) == "OK"
    stiff = value_of(launch.test_GM_a, known)
    assert value_of(as_built.test_GM, known) == pytest.approx(stiff, rel=0.01)
    known = section(drop_side=side, drop_corner=1.4 * corner)
    assert verdict(as_built.side_check, known) == "OK"
    assert verdict(as_built.corner_drop_check, known) == "LOOK"


def test_the_weight_test_finds_a_high_centre_of_gravity() -> None:
    """A section 3 ft higher in its centre of gravity is found so by the drop at its side."""
    known = section()
    at = group(known)
    weight = value_of(wt.launch, known)
    pounds = value_of(readings.test_weight, known)
    high = value_of(wt.launch_kg, known) + 3
    total = weight + pounds
    y = at.half[1] - INSIDE
    before = at.rest(weight, (0, 0, high))
    after = at.rest(total, (0, pounds * y / total, (weight * high + pounds * at.top) / total))
    drop = at.above(before, 0, at.half[1]) - at.above(after, 0, at.half[1])
    known = section(drop_side=drop, drop_corner=1)
    lower = value_of(launch.test_GM_a, known) - value_of(as_built.test_GM, known)
    assert lower == pytest.approx(3 * weight / total, rel=0.02)


@pytest.mark.parametrize(("corner", "side"), [("far end, right", 1), ("far end, left", -1)])
def test_the_weight_test_takes_its_arm_from_the_centre_of_flotation(corner, side) -> None:
    """An extra float on one side moves F there: as predicted is found as predicted."""
    known = section(extra_floats=2, extra_x=[3, -3], extra_y=[3.5, 3.5], width=12,
                    test_corner=corner)
    middle = value_of(buoyancy.flotation_y, known)
    assert middle > 0.4
    at = group(known)
    weight, kg = (value_of(r, known) for r in (wt.launch, wt.launch_kg))
    pounds = value_of(readings.test_weight, known)
    total, y = weight + pounds, side * (at.half[1] - INSIDE)
    before = at.rest(weight, (0, middle, kg))
    after = at.rest(total, (0, (weight * middle + pounds * y) / total,
                            (weight * kg + pounds * at.top) / total))
    edge = side * at.half[1]
    known[readings.drop_side] = at.above(before, 0, edge) - at.above(after, 0, edge)
    known[readings.drop_corner] = 1
    assert value_of(as_built.test_GM, known) == pytest.approx(
        value_of(launch.test_GM_a, known), rel=0.02)


def test_water_taken_up_in_a_month() -> None:
    known, at, weight, centre, plane = as_read("even", 1.1, 0.2, -0.1)
    more = 230.0
    later = at.rest(weight + more, centre * weight / (weight + more)
                    + np.array([0, 0, centre[2]]) * more / (weight + more))
    for ask, read in zip(readings.month_corner, at.corners(later), strict=True):
        known[ask] = read
    assert value_of(as_built.taken, known) == pytest.approx(more, rel=1e-6)
    timber = value_of(as_built.timber, known)
    assert timber == pytest.approx(
        value_of(wt.lifted, known) - value_of(wt.launch, known))
    for extra, word in ((timber, "as wet timber"),
                        (timber + 0.6 * value_of(launch.inch, known), "LOOK")):
        inches = extra / value_of(launch.inch, known)
        known = section(launch_corner=[20] * 4, month_corner=[20 - inches] * 4)
        assert value_of(as_built.verdict, known).startswith(word)


# ------------------------------------------------------------------ the form


def test_form_has_a_line_and_a_blank_for_each_type() -> None:
    lines = [item for item in launch_form.sheet.items if hasattr(item, "blank")]
    for letter in "ABCDEF":
        own = [item for item in lines if str(item.words).startswith(f"{letter}: ")]
        assert len(own) == len(launch_form.LINES) + 2
        read = [item for item in own if "water to deck top" in item.words]
        assert len(read) == 4 and all(item.blank and item.value is not None for item in read)


def test_form_shows_what_launch_predicts() -> None:
    known = section()
    lines = {item.words: item.value for item in launch_form.sheet.items if hasattr(item, "blank")}
    for name, row in zip(readings.CORNERS.keys, launch.corner, strict=True):
        shown = lines[f"C: water to deck top, {name}"]
        assert value_of(shown, known) == pytest.approx(value_of(row, known))
    assert value_of(lines["A: weight dry, with floats"], known) == value_of(wt.launch, known)
    assert value_of(st.tilt["launch"], known) == pytest.approx(
        math.hypot(*(value_of(r, known) for r in (launch.list_deg, launch.trim_deg))), rel=1e-3)
