"""The published tables reproduce what their sources print, cell by cell.

The arithmetic is written out a second time on purpose: it shares nothing with the workbook, so
that a figure copied wrongly from a standard shows before any formula of ours reads it.
"""

from __future__ import annotations

import math
from functools import cache
from pathlib import Path

import pytest

from builder.language import read_constants, read_table

TABLES = Path(__file__).resolve().parents[2] / "templates" / "tables"


@cache
def records(name: str) -> list[dict[str, float | str]]:
    """Return the lines of a table as records by column name."""
    table = read_table(TABLES / f"{name}.csv")
    return [
        {table.key: key, **dict(zip(table.columns, line, strict=True))}
        for key, line in zip(table.keys, table.lines, strict=True)
    ]


def by_key(name: str) -> dict[str, dict[str, float | str]]:
    """Return the records of a table by key."""
    return {str(next(iter(r.values()))): r for r in records(name)}


def constants(name: str) -> dict[str, float]:
    """Return the values of a file of constants by key."""
    return {k: c.value for k, c in read_constants(TABLES / f"{name}.csv").rows.items()}


NDS = constants("nds_2018")
SUPPLEMENT = constants("nds_supplement_2018")


# ------------------------------------------------------------------ connections


def bearing(G: float, D: float, angle: float) -> float:
    """Dowel bearing strength [psi] as tabulated, D the shank diameter [in]; angle 0 or 90."""
    if D < NDS["Fe_small_limit"]:
        fe = NDS["Fe_small"] * G ** NDS["Fe_small_exponent"]
    elif angle == 0:
        fe = NDS["Fe_parallel"] * G
    else:
        fe = NDS["Fe_perp"] * G ** NDS["Fe_perp_exponent"] / math.sqrt(D)
    return math.floor(fe / NDS["Fe_rounding"] + 0.5) * NDS["Fe_rounding"]


def modes(D: float, fm: float, fs: float, fyb: float, lm: float, ls: float,
          rd: tuple[float, float, float], planes: int = 1) -> dict[str, float]:
    """Yield values [lb] of NDS 12.3.1 by mode; D in in, strengths psi, lengths in."""
    re, rt = fm / fs, lm / ls
    k1 = (math.sqrt(re + 2 * re**2 * (1 + rt + rt**2) + rt**2 * re**3) - re * (1 + rt)) / (1 + re)
    k2 = -1 + math.sqrt(2 * (1 + re) + 2 * fyb * (1 + 2 * re) * D**2 / (3 * fm * lm**2))
    k3 = -1 + math.sqrt(2 * (1 + re) / re + 2 * fyb * (2 + re) * D**2 / (3 * fm * ls**2))
    found = {
        "Im": D * lm * fm / rd[0],
        "Is": planes * D * ls * fs / rd[0],
        "IIIs": planes * k3 * D * ls * fm / ((2 + re) * rd[2]),
        "IV": planes * D**2 / rd[2] * math.sqrt(2 * fm * fyb / (3 * (1 + re))),
    }
    if planes == 1:
        found["II"] = k1 * D * ls * fs / rd[1]
        found["IIIm"] = k2 * D * lm * fm / ((1 + 2 * re) * rd[2])
    return found


def reduction(D: float, nominal: float, angle: float) -> tuple[float, float, float]:
    """Reduction terms for modes I, II, III and IV; D the diameter used in the equations [in]."""
    k = 1 + NDS["K_theta_slope"] * angle / NDS["K_theta_angle"]
    if D >= NDS["Rd_small_limit"]:
        return NDS["Rd_I"] * k, NDS["Rd_II"] * k, NDS["Rd_III_IV"] * k
    kd = NDS["KD_small"] if D <= NDS["KD_limit"] else NDS["KD_slope"] * D + NDS["KD_add"]
    return (kd * (k if nominal >= NDS["Rd_small_nominal"] else 1),) * 3


def steel(thickness: float) -> float:
    """Bearing strength of a steel side plate [psi] by its thickness [in]."""
    return NDS["Fe_steel_hot_rolled" if thickness >= NDS["Fe_steel_limit"] else "Fe_steel_gauge"]


def agrees(found: dict[str, float], row: dict[str, float | str]) -> None:
    """The least mode equals the right value within the tolerance, and is the mode named."""
    least = min(found, key=lambda mode: found[mode])
    name = next(iter(row.values()))
    assert found[least] == pytest.approx(row["right"], abs=row["tolerance"] + 1e-9), name
    assert found[row["mode"]] == pytest.approx(found[least], rel=1e-9), (name, least)


@pytest.mark.parametrize("row", records("checks_bolts"), ids=lambda r: r["cell"])
def test_bolt_cells(row: dict[str, float | str]) -> None:
    """Each tabulated bolt value comes out of the yield equations to its rounding."""
    D, G, side = row["D"], row["G"], row["side length"]
    fs = steel(side) if row["steel side"] else bearing(G, D, row["angle side"])
    rd = reduction(D, D, max(row["angle main"], row["angle side"]))
    agrees(modes(D, bearing(G, D, row["angle main"]), fs, NDS["Fyb_bolt"], row["main length"],
                 side, rd, int(row["shear planes"])), row)


@pytest.mark.parametrize("row", records("checks_lags"), ids=lambda r: r["cell"])
def test_lag_cells(row: dict[str, float | str]) -> None:
    """Each tabulated lag value comes out with the root diameter and the length p + E/2."""
    lag = by_key("lags")[row["lag"]]
    D, side = lag["D"], row["side thickness"]
    fs = steel(side) if row["steel side"] else bearing(row["G"], D, row["angle side"])
    rd = reduction(lag["root diameter Dr"], D, max(row["angle main"], row["angle side"]))
    length = row["penetration over D"] * D + lag["tip E"] / 2
    agrees(modes(lag["root diameter Dr"], bearing(row["G"], D, row["angle main"]), fs, lag["Fyb"],
                 length, side, rd), row)


@pytest.mark.parametrize("row", records("checks_wood_screws"), ids=lambda r: r["cell"])
def test_wood_screw_cells(row: dict[str, float | str]) -> None:
    """Each tabulated screw value comes out with the root diameter; the tip (2 D) counts half."""
    screw = by_key("wood_screws")[row["screw"]]
    D, dr = screw["D"], screw["root diameter Dr"]
    fe = bearing(row["G"], D, 0)
    fs = steel(row["side thickness"]) if row["steel side"] else fe
    agrees(modes(dr, fe, fs, screw["Fyb"], row["penetration over D"] * D - D,
                 row["side thickness"], reduction(dr, D, 0)), row)


@pytest.mark.parametrize("row", records("checks_yield"), ids=lambda r: r["example"])
def test_yield_examples(row: dict[str, float | str]) -> None:
    """The worked examples with given bearing strengths come out as printed."""
    agrees(modes(row["D"], row["Fe main"], row["Fe side"], row["Fyb"], row["length main"],
                 row["length side"], (row["Rd I"], row["Rd II"], row["Rd III and IV"])), row)


@pytest.mark.parametrize("row", records("checks_withdrawal"), ids=lambda r: r["cell"])
def test_withdrawal_cells(row: dict[str, float | str]) -> None:
    """Each tabulated withdrawal value comes out of the equation of 12.2."""
    if row["kind"] == "lag":
        w = (NDS["lag_withdrawal"] * row["G"] ** NDS["lag_withdrawal_G_exponent"]
             * row["D"] ** NDS["lag_withdrawal_D_exponent"])
        assert by_key("lags")[row["fastener"]]["D"] == row["D"]
    else:
        w = NDS["screw_withdrawal"] * row["G"] ** NDS["screw_withdrawal_G_exponent"] * row["D"]
        assert by_key("wood_screws")[row["fastener"]]["D"] == row["D"]
    assert w == pytest.approx(row["right"], abs=row["tolerance"])


@pytest.mark.parametrize("row", records("checks_pull_through"), ids=lambda r: r["cell"])
def test_pull_through_cells(row: dict[str, float | str]) -> None:
    """Each tabulated head pull-through value comes out of the equation of 12.2.5."""
    dh, t, g = row["head diameter"], row["side thickness"], row["G"]
    thin = t <= NDS["pull_through_limit"] * dh
    w = NDS["pull_through_690"] * t * dh if thin else NDS["pull_through_1725"] * dh**2
    assert w * math.pi * g**2 == pytest.approx(row["right"], abs=row["tolerance"])


@pytest.mark.parametrize("row", records("checks_group_action"), ids=lambda r: r["cell"])
def test_group_action_cells(row: dict[str, float | str]) -> None:
    """Each tabulated group action factor comes out of Eq. 11.3-1."""
    n = row["n"]
    am, as_ = row["Am"] * row["E main"], row["As"] * row["E side"]
    gamma = NDS["gamma_wood_metal" if row["steel side"] else "gamma_wood_wood"]
    u = 1 + gamma * row["D"] ** NDS["gamma_exponent"] * row["spacing"] / 2 * (1 / am + 1 / as_)
    m = u - math.sqrt(u**2 - 1)
    rea = min(am / as_, as_ / am)
    top = m * (1 - m ** (2 * n)) * (1 + rea)
    below = n * ((1 + rea * m**n) * (1 + m) - 1 + m ** (2 * n))
    assert top / below / (1 - m) == pytest.approx(row["right"], abs=row["tolerance"])


# ------------------------------------------------------------------ members


def plain(row: dict[str, float | str], key: str) -> dict[str, float | str]:
    """Return the line of a wood for the size of a check row."""
    lines = [r for r in records("woods") if r["wood"] == row[key]]
    width = int(by_key("lumber_sizes")[row["size"]]["width class"])
    return lines[width - 1] if lines[0]["by width"] else lines[0]


def bending_strength(row: dict[str, float | str]) -> float:
    """Fb prime [psi] of a repeated dock joist, wet and incised as the row says."""
    wood = plain(row, "bending wood")
    factor = by_key("size_factors")[f"{by_key('lumber_sizes')[row['size']]['width class']:.0f}"]
    fb = wood["Fb"] * (factor["Fb 2 and 3 in thick"] if wood["size factor"] else 1)
    wet = row.get("wet bending", 1) and fb > SUPPLEMENT["CM_Fb_limit"]
    incised = SUPPLEMENT["Ci_strength"] if row["incised"] else 1
    return fb * (SUPPLEMENT["CM_Fb"] if wet else 1) * incised * NDS["Cr"]


def joist_span(row: dict[str, float | str]) -> tuple[float, float, float]:
    """Span [in] of a joist of the deck tables, its wet E [psi] and I [in4]."""
    size = by_key("lumber_sizes")[row["size"]]
    b, d = size["thickness dressed"], size["width dressed"]
    E = plain(row, "stiffness wood")["E"] * SUPPLEMENT["CM_E"]
    E *= SUPPLEMENT["Ci_E"] if row["incised"] else 1
    live = row["live"] * row["spacing"] / 144
    total = (row["live"] + row["dead"]) * row["spacing"] / 144
    inertia = b * d**3 / 12
    by_bending = math.sqrt(8 * bending_strength(row) * b * d**2 / 6 / total)
    by_deflection = (384 * E * inertia / (5 * live * row["live deflection limit"])) ** (1 / 3)
    return min(by_bending, by_deflection, row["cap"]), E, inertia


@pytest.mark.parametrize("row", records("checks_joist_spans"), ids=lambda r: r["row"])
def test_joist_spans(row: dict[str, float | str]) -> None:
    """Each deck-table joist span comes out within 0.75 in, and the wood named is the weakest."""
    assert joist_span(row)[0] == pytest.approx(row["right"], abs=row["tolerance"])
    if row["incised"] and row["wet bending"]:
        others = ("Douglas Fir-Larch No.2", "Hem-Fir No.2", "Spruce-Pine-Fir No.1/No.2")
        strengths = {w: bending_strength({**row, "bending wood": w}) for w in others}
        assert min(strengths, key=lambda w: strengths[w]) == row["bending wood"]


@pytest.mark.parametrize("row", records("checks_overhangs"), ids=lambda r: r["row"])
def test_overhangs(row: dict[str, float | str]) -> None:
    """Each overhang comes out of 220 lb at the tip, less 3 in, and at most a quarter span."""
    span, E, inertia = joist_span(row)
    # P a² (L + a)/(3 E I) = a/180 is a quadratic in a
    right = 3 * E * inertia / (row["tip load"] * row["tip deflection limit"])
    a = (-span + math.sqrt(span**2 + 4 * right)) / 2 - row["taken off"]
    found = min(a, span * row["share of span"])
    assert found == pytest.approx(row["right"], abs=row["tolerance"])


@pytest.mark.parametrize("row", records("checks_beam_spans"), ids=lambda r: r["row"])
def test_beam_spans(row: dict[str, float | str]) -> None:
    """Each beam span comes out within 0.75 in with the table's own ply factor and deduction."""
    size = by_key("lumber_sizes")[row["size"]]
    b, d = size["thickness dressed"] * row["plies"], size["width dressed"]
    wood = plain({**row, "bending wood": row["wood"]}, "bending wood")
    reach = (1 + row["joist overhang share"]) ** 2 / 2 * row["joist span"]
    live, total = row["live"] * reach / 12, (row["live"] + row["dead"]) * reach / 12
    by_bending = math.sqrt(8 * wood["Fb"] * row["ply factor"] * b * d**2 / 6 / total)
    stiff = 384 * wood["E"] * SUPPLEMENT["CM_E"] * b * d**3 / 12
    by_deflection = (stiff / (5 * live * row["live deflection limit"])) ** (1 / 3)
    found = min(by_bending, by_deflection) - row["taken off"]
    assert found == pytest.approx(row["right"], abs=row["tolerance"])


@pytest.mark.parametrize("row", records("checks_beam_stability"), ids=lambda r: r["example"])
def test_beam_stability(row: dict[str, float | str]) -> None:
    """The beam stability examples come out step by step as printed."""
    kind = "point" if row["point load"] else "uniform"
    le = (NDS[f"le_{kind}_long"] * row["unsupported length"]
          + NDS[f"le_{kind}_depths"] * row["d"])
    rb = math.sqrt(le * row["d"] / row["b"] ** 2)
    fbe = NDS["CL_FbE"] * row["Emin prime"] / rb**2
    x = fbe / row["Fb star"]
    half = (1 + x) / NDS["CL_b"]
    cl = half - math.sqrt(half**2 - x / NDS["CL_c"])
    found = {"le": le, "RB": rb, "FbE": fbe, "CL": cl, "Fb prime": cl * row["Fb star"]}
    for name, value in found.items():
        assert value == pytest.approx(row[f"printed {name}"], abs=row[f"tolerance {name}"]), name


@pytest.mark.parametrize("row", records("checks_beams"), ids=lambda r: r["row"])
def test_beams(row: dict[str, float | str]) -> None:
    """The worked beams: moment, shear, stresses and deflections; live load is 5/6 of the total."""
    b, d, span, w, p = (row[n] for n in ("breadth", "depth", "span", "uniform load", "point load"))
    E, S, inertia, area = row["E prime"], b * d**2 / 6, b * d**3 / 12, b * d
    # beam tables: two spans with the load in one, 0.203 P L and 0.015 P L³/(E I)
    by_m, by_d = (0.203, 0.015) if row["two spans"] else (1 / 4, 1 / 48)
    m, v, v_d = w * span**2 / 8 + by_m * p * span, w * span / 2 + p / 2, w * (span / 2 - d)
    whole = 5 * w * span**4 / (384 * E * inertia)
    found = {
        "M": m, "V": v, "V at d": v_d, "fb": m / S, "bending ratio": m / S / row["Fb prime"],
        "fv": 1.5 * v / area, "fv at d": 1.5 * v_d / area, "bearing stress": v / (b * 1.5),
        "live deflection": whole * 5 / 6,
        "long-term deflection": whole * 5 / 6 + NDS["long_term_wet"] * whole / 6,
        "deflection": whole + by_d * p * span**3 / (E * inertia),
    }
    assert found[row["quantity"]] == pytest.approx(row["value"], abs=row["tolerance"] + 1e-9)


def test_washers_and_lag_joint() -> None:
    """Washer bearing with Cb, and the lag of the worked example with and without wet service."""
    for row in records("checks_washers"):
        side = row["outside or side"]
        net = (side**2 if row["square"] else math.pi / 4 * side**2) - math.pi / 4 * row["hole"]**2
        cb = (side + NDS["Cb_add"]) / side
        found = row["Fc_perp"] * row["CM"] * cb * net
        assert found == pytest.approx(row["value"], abs=row["tolerance"]), row["washer"]
    for row in records("checks_lag_joints"):
        found = (NDS["lag_withdrawal"] * row["G"] ** NDS["lag_withdrawal_G_exponent"]
                 * row["D"] ** NDS["lag_withdrawal_D_exponent"])
        if row["quantity"] == "W p [lb]":
            thread = row["lag length"] - row["side thickness"] - row["tip E"]
            found *= thread * row["CM"] * row["CD"]
        assert found == pytest.approx(row["value"], abs=row["tolerance"]), row["row"]


@pytest.mark.parametrize("row", records("checks_density"), ids=lambda r: r["row"])
def test_density(row: dict[str, float | str]) -> None:
    """Weight of wood comes out of the equations; above fibre saturation the volume stays."""
    handbook = constants("wood_handbook")
    m, g = row["moisture percent"], row["G"]
    if not row["oven-dry G"]:
        rho = handbook["density_water_4"] * g
    elif m <= handbook["fibre_saturation"]:
        rho = SUPPLEMENT["density_water"] * g / (1 + SUPPLEMENT["density_swelling"] * g * m)
    else:
        rho = SUPPLEMENT["density_water"] * g / (1 + handbook["green_volume_factor"] * g)
    assert rho * (1 + m / 100) == pytest.approx(row["value"], abs=row["tolerance"])


# ------------------------------------------------------------------ water


@pytest.mark.parametrize("row", records("checks_boxes"), ids=lambda r: r["row"])
def test_boxes(row: dict[str, float | str]) -> None:
    """Single boxes: weight, draft, KB, BM, GM and righting arm as printed, the trap put right."""
    length, b, gamma = row["length"], row["breadth"], row["water weight"]
    draft = row["draft"] or row["weight"] / (gamma * length * b)
    weight = gamma * length * b * draft
    kb, bm = draft / 2, b**2 / (12 * draft)
    gm = kb + bm - row["KG"]
    gz = gm * math.sin(math.radians(row["heel"]))
    found = {"W": weight, "V": weight / gamma, "draft": draft, "KB": kb, "BM": bm, "KM": kb + bm,
             "GM": gm, "GZ": gz, "moment": weight * gz}
    assert found[row["quantity"]] == pytest.approx(row["right"], abs=row["tolerance"] + 1e-9)


def test_segments() -> None:
    """The table of the part-full circle agrees with every published row of it."""
    table = {float(r["T/d"]): r for r in records("circle_segments")}
    for row in records("checks_segments"):
        found = table[row["T/d"]][row["quantity"]]
        assert found == pytest.approx(row["right"], abs=row["tolerance"]), row["row"]


def test_small_examples() -> None:
    """Water change, rise, lost buoyancy, inclining, KG, gangway and added draught as printed."""
    found = {"A13": 100 * 30 / (9000 * math.tan(math.radians(8)))}
    r = records("checks_KG")[0]
    parts = [(r[f"weight {i}"], r[f"height {i}"]) for i in (1, 2, 3)]
    found["A18"] = sum(w * z for w, z in parts) / sum(w for w, _ in parts)
    for r in records("checks_water_change"):
        found[r["row"]] = (r["draft"] * r["water 1"] / r["water 2"] if r["quantity"] == "draft 2"
                           else r["water 1"] * r["length"] * r["breadth"] * r["draft"])
    for r in records("checks_rise"):
        volume = r["weight"] / r["fresh water"] * (1 - 1 / r["specific gravity"])
        found[r["row"]] = volume if "volume" in r["row"] else volume / r["waterplane"]
    for r in records("checks_lost_buoyancy"):
        deeper = r["draft"] * r["length"] / (r["length"] - r["lost length"])
        found[r["row"]] = deeper - (r["draft"] if r["quantity"] == "sinkage" else 0)
    for r in records("checks_list_draft"):
        a = math.radians(r["list"])
        found[r["row"]] = ((r["draft"] - r["rise of floor"]) * math.cos(a)
                           + r["breadth"] / 2 * math.sin(a))
    r = records("checks_gangway")[0]
    found[r["row"]] = r["rise"] * math.hypot(1, r["run for one rise"])
    names = ("KG", "inclining", "water_change", "rise", "lost_buoyancy", "list_draft", "gangway")
    rows = {r["row"]: r for name in names for r in records(f"checks_{name}")}
    assert set(found) == set(rows)
    for key, value in found.items():
        assert value == pytest.approx(rows[key]["right"], abs=rows[key]["tolerance"] + 1e-9), key


def test_trim_free_surface_and_righting_arm() -> None:
    """Trim from a shifted weight, free water, wall-sided righting arm and slings as printed."""
    for r in records("checks_trim"):
        half = r["weight"] * r["distance"] / r["inch trim moment"] / 12 / 2
        found = r[r["quantity"]] + (half if r["quantity"] == "draft aft" else -half)
        assert found == pytest.approx(r["right"], abs=r["tolerance"]), r["row"]
    r = records("checks_free_surface")[0]
    moment = r["number"] * r["specific gravity"] / r["water specific gravity"]
    moment *= r["length"] * r["breadth"] ** 3 / 12
    assert moment / (r["volume a ton"] * r["weight"]) == pytest.approx(
        r["right"], abs=r["tolerance"])
    for r in records("checks_wall_sided"):
        a = math.radians(r["heel"])
        gz = math.sin(a) * (r["KM"] - r["KG"] + (r["KM"] - r["KB"]) * math.tan(a) ** 2 / 2)
        found = gz * (1 if r["quantity"] == "GZ" else r["weight"])
        assert found == pytest.approx(r["right"], abs=r["tolerance"]), r["row"]
    for r in records("checks_sling"):
        found = r["load"] / r["legs"] / math.sin(math.radians(r["angle from horizontal"]))
        assert found == pytest.approx(r["right"], abs=r["tolerance"]), r["row"]


@pytest.mark.parametrize("row", records("checks_float_groups"), ids=lambda r: r["row"])
def test_float_groups(row: dict[str, float | str]) -> None:
    """The closed formulas agree with our own exact clipping of two rows of box floats."""
    length, b, y = row["float length"], row["float breadth"], row["row centre"]
    n, w, gamma = row["rows"] * row["floats a row"], row["added weight"], row["water weight"]
    weight, outer, depth = row["weight"] + w, y + b / 2, row["float depth"] / 12
    plan = n * length * b
    draft, inertia = weight / (gamma * plan), plan * (b**2 / 12 + y**2)
    bm = inertia * gamma / weight
    gm = draft / 2 + bm - (row["weight"] * row["KG"] + w * row["added height"]) / weight
    tan = w * row["added off centre"] / (weight * gm)
    found = {
        "draft [in]": draft * 12, "PPI [lb/in]": gamma * plan / 12, "I [ft⁴]": inertia,
        "BM [ft]": bm, "GM [ft]": gm, "emerge [deg]": math.degrees(math.atan(draft / outer)),
        "immerse [deg]": math.degrees(math.atan((depth - draft) / outer)),
        "list, exact [deg]": math.degrees(math.atan(tan)),
        "low float edge freeboard [in]": 12 * (depth - draft - outer * tan),
    }
    for degrees in (1, 3, 6, 9):
        a = math.radians(degrees)
        found[f"GZ at {degrees} deg [ft]"] = math.sin(a) * (gm + bm * math.tan(a) ** 2 / 2)
    assert found[row["quantity"]] == pytest.approx(row["value"], abs=row["tolerance"])
