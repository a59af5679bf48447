"""Every CSV of templates/ keeps the format, names its source, and agrees with its neighbours."""

from __future__ import annotations

import csv
import keyword
import math
from dataclasses import dataclass
from pathlib import Path

import pytest

from builder.language.units import UNITS

ROOT = Path(__file__).resolve().parents[2] / "templates"
STATUSES = {
    "seen", "memory", "our judgement", "common practice, no source", "invented", "definition",
    "arithmetic",
}
TAIL = ["clause {text}", "status {text}", "note {text}"]
CONSTANT_HEADER = ["key", "symbol", "value", "unit", "clause", "status", "what"]
WHO = {"published", "own", "reconstructed"}
FILES = sorted([*(ROOT / "tables").glob("*.csv"), *(ROOT / "catalog").glob("*.csv")])


@dataclass(frozen=True)
class Sheet:
    """One CSV as read: title, source key, header, lines of text."""

    name: str
    title: str
    source: str
    header: list[str]
    lines: list[list[str]]

    @property
    def constants(self) -> bool:
        """Whether it is a file of constants and not a table."""
        return self.header[0] == "key" and "value" in self.header

    def records(self) -> list[dict[str, float | str]]:
        """Return the lines by column name without its unit; number columns as numbers."""
        found = []
        for line in self.lines:
            record: dict[str, float | str] = {self.header[0]: line[0]}
            for head, cell in zip(self.header[1:], line[1:], strict=True):
                text = head.endswith("{text}")
                record[head.split(" [")[0].removesuffix(" {text}")] = cell if text else float(cell)
            found.append(record)
        return found


def read(path: Path) -> Sheet:
    """Read one CSV with its two comment lines."""
    with path.open(encoding="utf-8", newline="") as file:
        title, source = next(file), next(file)
        assert title.startswith("# title: ") and source.startswith("# source: "), path.name
        header, *lines = list(csv.reader(file))
    return Sheet(path.stem, title[9:].strip(), source[10:].strip(), header, lines)


SHEETS = {path.stem: read(path) for path in FILES}
every_file = pytest.mark.parametrize("name", sorted(SHEETS))
TABLES = sorted(name for name, sheet in SHEETS.items() if not sheet.constants)
CONSTANTS = sorted(name for name, sheet in SHEETS.items() if sheet.constants)


def records(name: str) -> list[dict[str, float | str]]:
    """Return the lines of a table as records."""
    return SHEETS[name].records()


def by_key(name: str) -> dict[str, dict[str, float | str]]:
    """Return the records of a table by key."""
    return {str(r[SHEETS[name].header[0]]): r for r in records(name)}


def constants(name: str) -> dict[str, float]:
    """Return the values of a file of constants by key."""
    return {line[0]: float(line[2]) for line in SHEETS[name].lines}


NDS = constants("nds_2018")


# ------------------------------------------------------------------ format


@every_file
def test_source_is_listed(name: str) -> None:
    """The source named on the second line stands in sources.csv."""
    assert SHEETS[name].source in {line[0] for line in SHEETS["sources"].lines}
    assert SHEETS[name].title


@every_file
def test_lines_are_whole(name: str) -> None:
    """Every line has as many cells as the header, no stray spaces and a key; there are lines."""
    sheet = SHEETS[name]
    assert sheet.lines
    assert len(set(sheet.header)) == len(sheet.header)
    for line in sheet.lines:
        assert len(line) == len(sheet.header), line
        assert line[0] and all(cell == cell.strip() for cell in line), line


@every_file
def test_statuses(name: str) -> None:
    """The status is a word of the closed list; what is invented says so and nothing else does."""
    sheet = SHEETS[name]
    column = sheet.header.index("status" if sheet.constants else "status {text}")
    for line in sheet.lines:
        assert line[column] in STATUSES, line
        if name != "sources":
            assert (line[column] == "invented") == (sheet.source == "invented"), line


@pytest.mark.parametrize("name", TABLES)
def test_table_header(name: str) -> None:
    """Units are of the project's list and the last three columns are clause, status, note."""
    header = SHEETS[name].header
    assert header[-3:] == TAIL
    for head in header[1:]:
        if "[" in head:
            assert head.endswith("]") and head[head.index("[") + 1 : -1] in UNITS, head
        assert head.count("{") == head.count("{text}"), head


@pytest.mark.parametrize("name", TABLES)
def test_table_cells(name: str) -> None:
    """Number cells are finite numbers and never blank; text cells are not blank, notes aside."""
    sheet = SHEETS[name]
    for line in sheet.lines:
        for head, cell in zip(sheet.header[1:], line[1:], strict=True):
            if not head.endswith("{text}"):
                assert math.isfinite(float(cell)), (line[0], head)
            elif head not in TAIL and not head.startswith(("unit {", "edition")):
                assert cell, (line[0], head)


@pytest.mark.parametrize("name", [n for n in TABLES if n != "woods"])
def test_table_keys_are_unique(name: str) -> None:
    """A key stands once (woods.csv repeats one for its five widths: next test)."""
    keys = [line[0] for line in SHEETS[name].lines]
    assert len(set(keys)) == len(keys), sorted(k for k in keys if keys.count(k) > 1)


def test_woods_by_width_stand_together() -> None:
    """A wood tabulated by width has five consecutive lines, falling in Fb; all others have one."""
    lines = records("woods")
    for key in {r["wood"] for r in lines}:
        places = [i for i, r in enumerate(lines) if r["wood"] == key]
        assert len(places) == (5 if lines[places[0]]["by width"] else 1), key
        assert places == list(range(places[0], places[0] + len(places))), key
        strengths = [lines[i]["Fb"] for i in places]
        assert strengths == sorted(strengths, reverse=True), key


def test_pairs_are_the_woods() -> None:
    """The two lists of choices name every wood once, dimension lumber and timbers apart."""
    lines = records("woods")
    for name, timber in (("woods_pairs", 0), ("timbers_pairs", 1)):
        listed = [line[0] for line in SHEETS[name].lines]
        assert set(listed) == {r["wood"] for r in lines if r["timber"] == timber}
        assert listed[0].startswith("Southern Pine No.2")


@pytest.mark.parametrize("name", CONSTANTS)
def test_constants(name: str) -> None:
    """Keys are lawful names, values numbers, units of the list; each says what it is and where."""
    sheet = SHEETS[name]
    assert sheet.header == CONSTANT_HEADER
    keys = [line[0] for line in sheet.lines]
    assert len(set(keys)) == len(keys)
    for key, _, value, unit, clause, _, what in sheet.lines:
        assert key.isidentifier() and not keyword.iskeyword(key), key
        assert math.isfinite(float(value)) and unit in UNITS and what, key
        assert clause or sheet.source in ("own", "practice"), key


def test_check_rows_say_who_printed() -> None:
    """Every row of a check table says whether the value is published; a trap has another value."""
    for name in (n for n in TABLES if n.startswith("checks_") and n != "checks_sections"):
        for row in records(name):
            assert row["printed by"] in WHO, name
            assert (row["printed by"] == "published") == (row["status"] in ("seen", "memory"))
            if "trap" in row:
                assert (row["trap"] == 1) == (row["right"] != row["printed"]), row
                assert row["note"] or not row["trap"], row


# ------------------------------------------------------------------ sizes and design values


def test_section_properties_follow_from_the_sizes() -> None:
    """A, S and I of every size and kind agree with the stored figures to their last decimal."""
    sizes = by_key("lumber_sizes")
    for row in records("checks_sections"):
        size = sizes[row["size"]]
        t, w = size[f"thickness {row['kind']}"], size[f"width {row['kind']}"]
        found = (t * w, t * w**2 / 6, t * w**3 / 12, w * t**2 / 6, w * t**3 / 12)
        for name, value in zip(("A", "Sx", "Ix", "Sy", "Iy"), found, strict=True):
            assert value == pytest.approx(row[name], abs=6e-5), (row["size and kind"], name)


def test_classes_follow_from_the_nominal_size() -> None:
    """Classes and flags of a size follow from its name; rough lies between dressed and sawn."""
    width_class = {4: 1, 6: 2, 8: 3, 10: 4, 12: 5, 16: 6}
    flat_row = {4: 2, 6: 4, 8: 5, 10: 6, 12: 6, 16: 6}
    for key, size in by_key("lumber_sizes").items():
        t, w = (1.25 if part == "5/4" else float(part) for part in key.split("x"))
        assert (size["nominal thickness"], size["nominal width"]) == (t, w)
        assert size["width class"] == width_class[int(w)] and size["thick class"] == int(t)
        assert size["flat use row"] == flat_row[int(w)] and size["timber"] == (t >= 5)
        for side in ("thickness", "width"):
            assert size[f"{side} dressed"] < size[f"{side} rough"] < size[f"{side} sawn"]


def test_emin_follows_from_E() -> None:
    """Emin = 1.03 E (1 - 1.645 COVE)/1.66, to the 10,000 psi the tables print."""
    share = 1 - NDS["Emin_fractile"] * NDS["Emin_cv"]
    for wood in records("woods"):
        emin = NDS["Emin_shear_free"] * wood["E"] * share / NDS["Emin_safety"]
        assert math.floor(emin / 1e4 + 0.5) * 1e4 == wood["Emin"], wood["wood"]


def test_washers_and_roots() -> None:
    """Net washer area within 3 % of the ring; lag roots between D/2 and D, tips growing with D."""
    for bolt in records("bolts"):
        ring = math.pi / 4 * (bolt["washer outside"] ** 2 - bolt["washer hole"] ** 2)
        assert bolt["washer net area"] == pytest.approx(ring, rel=0.03), bolt["bolt"]
        assert bolt["tensile stress area"] < math.pi / 4 * bolt["D"] ** 2
        assert bolt["Fyb"] == NDS["Fyb_bolt"]
    lags = records("lags")
    assert all(lag["D"] / 2 < lag["root diameter Dr"] < lag["D"] for lag in lags)
    assert [lag["tip E"] for lag in lags] == sorted(lag["tip E"] for lag in lags)


# ------------------------------------------------------------------ catalog


def test_float_ratings_are_possible() -> None:
    """A rating never exceeds what the size can lift; none is unknown and called net."""
    fresh = constants("water")["fresh"]
    for item in records("floats"):
        area = item["width"] * item["depth"] * (1 if item["shape"] == 1 else math.pi / 4)
        volume = area * item["length"] / 1728 * item["fullness"]
        most = fresh * volume - (item["own weight"] if item["rating is net"] else 0)
        assert item["rated buoyancy"] <= most, item["float"]
        assert item["rated buoyancy"] or not item["rating is net"], item["float"]
        assert item["shape"] in (1, 2)


def test_every_size_has_a_price() -> None:
    """Lumber prices and sizes name the same sizes in full."""
    assert set(by_key("lumber_prices")) == set(by_key("lumber_sizes"))


def test_bolt_stock_has_known_diameters() -> None:
    """Stocked bolts have diameters of bolts.csv and rising weight and price."""
    diameters = {bolt["D"] for bolt in records("bolts")}
    stock = records("bolt_stock")
    assert {bolt["D"] for bolt in stock} <= diameters
    for D in diameters:
        same = [bolt for bolt in stock if bolt["D"] == D]
        for name in ("length", "weight", "price"):
            assert [b[name] for b in same] == sorted(b[name] for b in same)


# ------------------------------------------------------------------ defaults


def test_purposes_agree_with_the_sources() -> None:
    """The table of defaults by purpose repeats figures of the source files: they must not part."""
    own, marina = constants("own"), constants("marina_guidelines")
    lake, ufc = constants("lake_guidelines"), constants("ufc_4_152_01")
    for purpose, row in by_key("purposes").items():
        launch, gathering = purpose == "launch", purpose in ("platform", "landing")
        assert row["capacity private"] == lake["live_uniform"]
        assert row["capacity public"] == (
            ufc["landing_uniform"] if gathering else own["capacity_public"])
        assert row["strength private"] == own["strength_private"]
        assert row["strength public"] == own[
            "strength_gathering" if gathering else "strength_walkway"]
        assert row["deck low"] == (own["launch_deck_low"] if launch else marina["deck_low"])
        assert row["deck high"] == (own["launch_deck_high"] if launch else marina["deck_high"])
        assert row["deck at flotation load"] == (
            own["launch_freeboard"] if launch else constants("lake_town_code")["deck_least"])
        assert row["deck at capacity load"] == (
            own["landing_freeboard"] if purpose == "landing" else 0)


def test_waters_agree_with_the_constants() -> None:
    """Fresh and sea water weigh the same in the list of choices and in the constants."""
    waters = by_key("waters")
    assert {k: waters[k]["weight"] for k in ("fresh", "sea")} == constants("water")
    assert waters["fresh"]["weight"] < waters["brackish"]["weight"] < waters["sea"]["weight"]


def test_strength_default_is_the_building_code_rule() -> None:
    """60 psf private is 1.5 times the 40 psf of a dwelling."""
    served = constants("irc_2015")["live_residential"]
    assert constants("own")["strength_private"] == constants("ibc_2015")["deck_share"] * served
