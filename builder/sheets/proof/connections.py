"""Published values of connections, worked by the rows of the Hardware sheet.

Given values come from the check tables; where a table gives a fastener by name, its diameter,
root and bending yield come from the published table of that fastener.
"""

from __future__ import annotations

from builder.language import Case, Family, Row, Table, family

from .. import hardware_bolts as ends
from .. import hardware_corners as corners
from .. import hardware_floats as floats
from .. import inputs as job
from .. import parts
from ..reference import BOLTS, LAGS, SCREWS, WOODS, nds, table

BOLT_TOLERANCE = "half of the 10 lb to which the standard rounds"
PINE = "Southern Pine No.2"


def lines_of(name: str) -> list[dict]:
    """Return the lines of a check table: its key, its columns, and clause, status and note."""
    t: Table = table(name)
    made = []
    for key, line, (clause, status, note) in zip(t.keys, t.lines, t.notes, strict=True):
        made.append({"name": key, **dict(zip(t.columns, line, strict=True)),
                     "clause": clause, "status": status, "note": note})
    return made


def case(line: dict, given: dict[Row, float | str], want: Row, quantity: str = "printed") -> Case:
    """Return a case of one printed value; a trap keeps the printed value apart."""
    trap = line.get("trap") == 1
    right = line["right"] if "right" in line else line[quantity]
    seen = "" if line["status"] == "seen" else f" ({line['status']})"
    return Case(line["name"], given, {want: right}, f"{line['clause']}{seen}",
                step={want: line.get("step", 2 * line["tolerance"])},
                wrong={want: line[quantity]} if trap else {},
                printed_by=line["printed by"], note=line["note"])


def entry(t: Table, key: str, column: str) -> float:
    """Return one entry of a published table."""
    return t.entries(column)[t.keys.index(key)]


def bolts(planes: int, steel: int) -> list[dict]:
    """Return the bolt cells of one kind of joint."""
    return [line for line in lines_of("checks_bolts")
            if line["shear planes"] == planes and line["steel side"] == steel]


def wood_wood() -> Family:
    """Bolts wood to wood: every cell seen, and those of Southern Pine from memory."""
    pine = entry(WOODS, PINE, "G")
    chosen = [x for x in bolts(1, 0) if x["status"] == "seen" or x["G"] == pine]
    return family("bolt_wood", "Bolt in single shear, wood to wood", [corners.ply["Z"]], [
        case(x, {ends.G: x["G"], ends.D: x["D"], ends.Fyb: nds.Fyb_bolt.value,
                 parts.rail_t: x["main length"], corners.l_side: x["side length"],
                 corners.theta_main: x["angle main"], corners.theta_side: x["angle side"]},
             corners.ply["Z"]) for x in chosen], tolerance=BOLT_TOLERANCE)


def steel_single() -> Family:
    """Bolts with one steel side plate."""
    return family("bolt_plate", "Bolt in single shear, steel side plate", [ends.leg["Z"]], [
        case(x, {ends.G: x["G"], ends.D: x["D"], ends.Fyb: nds.Fyb_bolt.value,
                 ends.l_m: x["main length"], ends.t_p: x["side length"],
                 ends.theta: x["angle main"]}, ends.leg["Z"]) for x in bolts(1, 1)],
        tolerance=BOLT_TOLERANCE)


def steel_double() -> Family:
    """Bolts between two steel plates."""
    return family("bolt_plates", "Bolt in double shear, two steel plates", [corners.corner["Z"]], [
        case(x, {ends.G: x["G"], ends.D: x["D"], ends.Fyb: nds.Fyb_bolt.value,
                 corners.t_corner: x["main length"], corners.t_c: x["side length"],
                 ends.theta: x["angle main"]}, corners.corner["Z"]) for x in bolts(2, 1)],
        tolerance=BOLT_TOLERANCE)


def lags(steel: int) -> Family:
    """Lag screws sideways, with a wood side or a gauge steel side; root diameter."""
    cases = []
    for x in lines_of("checks_lags"):
        if x["steel side"] != steel:
            continue
        given = {job.lag: x["lag"], ends.G: x["G"],
                 floats.p_g: x["penetration over D"] * entry(LAGS, x["lag"], "D"),
                 floats.l_flange: x["side thickness"], floats.theta_lag: x["angle main"],
                 floats.theta_flange: x["angle side"]}
        if steel:
            given[floats.Fe_flange] = nds.Fe_steel_gauge.value
        cases.append(case(x, given, floats.sideways["Z"]))
    side = "steel side" if steel else "wood to wood"
    return family(f"lag_{'steel' if steel else 'wood'}", f"Lag screw pushed sideways, {side}",
                  [floats.sideways["Z"]], cases, tolerance=BOLT_TOLERANCE)


def screws(steel: int) -> Family:
    """Wood screws sideways, by the same rows: small dowels, K_D for their root."""
    cases = []
    for x in lines_of("checks_wood_screws"):
        if x["steel side"] != steel:
            continue
        D = entry(SCREWS, x["screw"], "D")
        given = {ends.G: x["G"], floats.D_g: D,
                 floats.Dr: entry(SCREWS, x["screw"], "root diameter Dr"),
                 floats.Fyb_g: entry(SCREWS, x["screw"], "Fyb"),
                 floats.l_lag: x["penetration over D"] * D, floats.l_flange: x["side thickness"],
                 floats.theta_lag: 0, floats.theta_flange: 0}
        if steel:
            given[floats.Fe_flange] = nds.Fe_steel_gauge.value
        cases.append(case(x, given, floats.sideways["Z"]))
    side = "steel side" if steel else "wood to wood"
    return family(f"screw_{'steel' if steel else 'wood'}", f"Wood screw pushed sideways, {side}",
                  [floats.sideways["Z"]], cases, tolerance="half of the 1 lb printed")


def yield_modes() -> Family:
    """The yield equations with bearing strengths and reduction terms given."""
    terms, Z = floats.terms, floats.sideways["Z"]
    return family("yield_modes", "Yield equations, bearing strengths given", [Z], [
        case(x, {floats.Dr: x["D"], floats.Fyb_g: x["Fyb"], floats.Fe_lag: x["Fe main"],
                 floats.Fe_flange: x["Fe side"], floats.l_lag: x["length main"],
                 floats.l_flange: x["length side"], terms["I"]: x["Rd I"],
                 terms["II"]: x["Rd II"], terms["III"]: x["Rd III and IV"]}, Z)
        for x in lines_of("checks_yield")])


def withdrawal(kind: str, D: Row, W: Row, title: str) -> Family:
    """Withdrawal of an inch of thread, lags or screws."""
    return family(f"withdrawal_{kind}", title, [W], [
        case(x, {ends.G: x["G"], D: x["D"]}, W)
        for x in lines_of("checks_withdrawal") if x["kind"] == kind],
        tolerance="half of the 1 lb printed")


def lag_joint() -> Family:
    """A lag joint in withdrawal, worked through: thread less tip, service, duration."""
    return family("lag_joint", "Lag screw in withdrawal, worked through", [floats.W_lag], [
        case(x, {ends.G: x["G"], floats.D_g: x["D"], job.lag_length: x["lag length"],
                 job.lag_grip: x["side thickness"], floats.tip: x["tip E"],
                 floats.CM_pull: x["CM"], floats.CD_lift: x["CD"]}, floats.W_lag, "value")
        for x in lines_of("checks_lag_joints") if x["quantity"].startswith("W p")])


def group_action(steel: int) -> Family:
    """Group action factors, steel or wood side."""
    Cg, cases = ends.group["Cg"], []
    for x in lines_of("checks_group_action"):
        if x["steel side"] != steel:
            continue
        given = {ends.n: x["n"], ends.D: x["D"], ends.spacing: x["spacing"],
                 ends.EA_m: x["E main"] * x["Am"], ends.EA_s: x["E side"] * x["As"]}
        if not steel:
            del given[ends.D]
            given[ends.gamma] = nds.gamma_wood_wood.value * x["D"] ** nds.gamma_exponent.value
        cases.append(case(x, given, Cg))
    side = "steel side" if steel else "wood side, its slip modulus given"
    return family(f"group_{'steel' if steel else 'wood'}", f"Group action factor, {side}", [Cg],
                  cases, tolerance="half of the 0.01 printed")


def washers(square: int) -> Family:
    """Washers under pull: plates by their sizes, cut washers by their tabulated net area."""
    cases = []
    for x in lines_of("checks_washers"):
        if x["square"] != square:
            continue
        given = {ends.Fc_perp: x["Fc_perp"], ends.CM_bearing: x["CM"],
                 ends.plate_b: x["outside or side"]}
        if square:
            given |= {ends.plate_h: x["outside or side"], ends.plate_holes: 1,
                      ends.plate_hole: x["hole"]}
        else:
            key = BOLTS.keys[BOLTS.entries("washer outside").index(x["outside or side"])]
            given[ends.A_net] = entry(BOLTS, key, "washer net area")
        cases.append(case(x, given, ends.pull_plate, "value"))
    kind = "a plate washer" if square else "a cut washer, its net area given"
    return family(f"washer_{'plate' if square else 'cut'}", f"Pull on {kind}",
                  [ends.pull_plate], cases)


families = [
    wood_wood(), steel_single(), steel_double(), lags(0), lags(1), screws(0), screws(1),
    yield_modes(),
    withdrawal("lag", floats.D_g, floats.W, "Withdrawal of lag screws, an inch of thread"),
    withdrawal("screw", floats.D_s, floats.W_s, "Withdrawal of wood screws, an inch of thread"),
    lag_joint(), group_action(1), group_action(0), washers(1), washers(0),
]
