"""What other programs read in a delivered file: names, input rules, protection, looks of verdicts.

LibreOffice and Gnumeric open the file and save it again; what the copy holds is what they
understood.  A part that a program cannot read it drops in silence, so it is looked for here.
"""

from __future__ import annotations

import re

import pytest

from builder.engine import applications, libreoffice
from builder.rules.looks import entries, looks, typed
from builder.rules.reading import MAIN, File, read
from tests.rules.planting import BASE

pytestmark = pytest.mark.outputs
PROGRAMS = ["libreoffice", "gnumeric"]


@pytest.fixture(scope="module")
def copies(engines, tmp_path_factory):
    """A function of (program): the file as that program saved it, now or earlier."""
    folder, made = tmp_path_factory.mktemp("saved"), {}

    def give(program: str) -> File:
        if program not in made:
            target = folder / f"{program}.xlsx"
            saved = list((engines.folder / program).rglob(f"*[0-9]_{BASE.name}"))
            saved = [path for path in saved if path.parent.name != "given"]
            if saved:
                target = saved[0]
            elif program == "gnumeric":
                form = "--export-type=Gnumeric_Excel:xlsx2"
                ended = applications.run([applications.find("ssconvert"), form, BASE.as_uri(),
                                          target.as_uri()], 120)
                assert ended.returncode == 0, ended.stderr
            else:
                libreoffice.evaluate_files([BASE], folder)
                target = next((folder / "recalculated").glob("*.xlsx"))
            made[program] = read(target)
        return made[program]

    return give


each = pytest.mark.parametrize("program", [
    pytest.param("libreoffice", marks=pytest.mark.needs("soffice")),
    pytest.param("gnumeric", marks=pytest.mark.needs("ssconvert"))])


def targets(file: File) -> dict[str, str]:
    return {name: re.sub("[$']", "", e.text or "") for name, e in file.names.items()}


@each
def test_every_name_stands_for_the_same_cell(copies, program):
    ours, theirs = targets(read(BASE)), targets(copies(program))
    assert len(ours) > 1000
    assert {name: theirs.get(name) for name in ours} == ours


@each
def test_every_input_rule_is_on_the_same_cells_with_the_same_limits(copies, program):
    ours, theirs = entries(read(BASE))[0], entries(copies(program))[0]
    assert len(ours) > 1000
    assert set(theirs) == set(ours)
    for place, rule in ours.items():
        other = theirs[place]
        assert other.kind == rule.kind, place
        if rule.kind == "list":
            assert _plain(other.first) == _plain(rule.first), place
        else:
            # Programs keep 15 digits of a number.
            assert [float(other.first), float(other.second)] == pytest.approx(
                [float(rule.first), float(rule.second)], rel=1e-14), place
        assert other.given.get("errorStyle", "stop") == "stop", place


def _plain(source: str) -> str:
    return re.sub("[$'=]", "", source)


@each
def test_the_same_sheets_are_protected_and_the_same_cells_free(copies, program):
    ours, theirs = read(BASE), copies(program)
    assert [s.name for s in theirs.sheets] == [s.name for s in ours.sheets]
    for one, other in zip(ours.sheets, theirs.sheets, strict=True):
        assert _guarded(other) == _guarded(one), one.name
    free = set(typed(ours))
    assert len(free) > 1000
    known = looks(theirs)
    for place in free:
        assert not known[theirs.sheet(place[0]).look[place[1:]]].locked, place
    for place in ours.formulas:
        assert known[theirs.sheet(place[0]).look[place[1:]]].locked, place


def _guarded(sheet) -> bool:
    return sheet.first("sheetProtection").get("sheet") in ("1", "true")


@each
def test_number_formats_show_the_same_decimals(copies, program):
    ours, theirs = read(BASE), copies(program)
    mine, other = looks(ours), looks(theirs)
    wrong, tried = [], 0
    for place, held in ours.cells.items():
        found = re.match(r"#,##0(\.0+)?", mine[ours.sheet(place[0]).look[place[1:]]].number)
        if found and isinstance(held.value, float):
            tried += 1
            shown = other[theirs.sheet(place[0]).look[place[1:]]].number
            if not shown.startswith(found[0]) or len(shown.split(";")[0]) != len(found[0]):
                wrong.append((place, found[0], shown))
    assert wrong == [] and tried > 3000


@each
def test_verdicts_keep_their_colours(copies, program):
    ours, theirs = _coloured(read(BASE)), _coloured(copies(program))
    assert len(ours) > 100
    assert {place: theirs.get(place) for place in ours} == ours


def _coloured(file: File) -> dict[tuple[str, str], set[str]]:
    """Return the words that have a look of their own, by sheet and range."""
    found: dict[tuple[str, str], set[str]] = {}
    for sheet in file.sheets:
        for block in sheet.all("conditionalFormatting"):
            words = {(one.findtext(MAIN + "formula") or "").strip('"')
                     for one in block.iter(MAIN + "cfRule")}
            for span in block.get("sqref", "").split():
                first, _, last = span.partition(":")
                span = first if last in ("", first) else span
                found.setdefault((sheet.name, span), set()).update(words)
    return found
