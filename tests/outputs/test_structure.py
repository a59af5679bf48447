"""The rules of a trustworthy workbook, checked in the delivered files.

Each test names its rules.  What breaks a rule on purpose stands in ``waivers.csv`` with the
reason; each waiver must be needed.
"""

from __future__ import annotations

from collections import Counter
from functools import cache

import pytest

from builder.resolve.cells import Book
from builder.workbook.limits import lawful_name
from tests.outputs import rules_of_formulas as formulas
from tests.outputs import rules_of_sheets as sheets
from tests.outputs.findings import not_waived, waivers
from tests.outputs.reading import OUTPUTS, Read, opened, read
from tests.outputs.rules_of_formulas import inside_guard, too_long
from tests.outputs.worked import resolved

pytestmark = pytest.mark.outputs
EACH = pytest.mark.parametrize("path", OUTPUTS, ids=lambda p: p.stem)
DEFAULT_AT = {"Inputs": 6, "Rates": 6, "Sections": 13, "Readings": 13}
"""Columns of the defaults."""
SIZE, FORMULAS = 860_000, 29_900
"""Largest file [bytes] and most formulas.  The first issue kept to 600,000 and 20,000; the sheets
of stability, mooring, cut list, price, yard, launch and drawing came on top.
The bench holds the core sheets alone to 500 KB."""


def f12_nothing_empty(file: Read):
    """Yield references to empty cells that are no inputs."""
    return formulas.f12_nothing_empty(file, set(sheets.unlocked(file.path)))


RULES = [
    formulas.w01_left_and_up, formulas.w07_no_circle, formulas.f03_short,
    formulas.f04_f05_x03_functions, formulas.tokenizes, formulas.f06_lookups,
    formulas.f07_closed, formulas.f12_whole_series, f12_nothing_empty,
    sheets.w04_w05_nothing_merged_or_hidden, sheets.w09_sheet_names, sheets.i01_described,
    sheets.i02_i03_rules, sheets.i04_lists, sheets.i05_names, sheets.i06_protection,
    sheets.v01_v04_stored, sheets.e05_each_verdict_once, sheets.p01_print,
    sheets.p04_p05_screen, sheets.w08_x06_parts, sheets.v03_calculation,
    sheets.f05_plain_formulas,
]


@cache
def findings(rule, path):
    """Return what a rule finds in a file, worked out once."""
    return tuple(rule(read(path)))


@EACH
@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.__name__)
def test_rule(rule, path):
    found = not_waived(findings(rule, path))
    # One line for each row, not for each of its six section columns.
    rows = Counter(one.place[:2] for one in found)
    told = [f"{rows.pop(one.place[:2])} x {one}" for one in found if one.place[:2] in rows]
    assert not found, f"{len(found)} findings in {len(told)} rows\n" + "\n".join(told[:60])


def test_every_waiver_is_needed_and_has_a_reason():
    found = [one for path in OUTPUTS for rule in RULES for one in findings(rule, path)]
    for waiver in waivers():
        assert len(waiver.reason.split()) >= 5, waiver
        assert any(waiver.covers(one) for one in found), f"needed no more: {waiver}"


@EACH
def test_x08_small_enough(path):
    assert path.stat().st_size < SIZE
    assert 1000 < len(read(path).formulas) < FORMULAS


@EACH
def test_x01_every_formula_of_the_file_is_one_of_the_model_and_the_other_way_round(path):
    book: Book = resolved(path.stem)
    meant = {place: cell.content for place, cell in book.cells() if cell.kind == "formula"}
    assert read(path).formulas == meant


@EACH
def test_i07_a_delivered_workbook_needs_no_input_but_for_the_blank_start(path):
    file = read(path)
    shown = {file.cells[p].value for p in sheets.verdict_cells(file)}
    master = file.cells["Checks", 1, 1].value
    if path.stem == "blank_start":
        assert shown == {"not used"} and master == "NEEDS INPUT"
    else:
        assert "NEEDS INPUT" not in shown and "OK" in shown
        assert master in ("OK", "LOOK", "NOT OK")


@EACH
def test_i07_what_is_typed_and_every_default_passes_its_own_rule(path):
    file, wrong, tried = read(path), [], 0
    for place, rule in sheets.validations(path).items():
        held = file.cells.get(place)
        values = [held.value] if held is not None else []
        default = file.cells.get((place[0], place[1], DEFAULT_AT.get(place[0], 999)))
        if default is not None and default.value not in ("–", "by purpose"):
            values.append(default.value)
        for value in values:
            tried += 1
            if not passes(rule, value, file):
                wrong.append(f"{place}: {value!r} against {rule.formula1} to {rule.formula2}")
    assert wrong == [] and tried > 300


def passes(rule, value, file) -> bool:
    """Say whether an input rule lets a value by."""
    if rule.type == "list":
        sheet, _, span = rule.formula1.removeprefix("=").partition("!")
        first, last = (int(c.rpartition("$")[2]) for c in span.split(":"))
        return value in [file.text(sheet, row) for row in range(first - 1, last)]
    low, high = float(rule.formula1), float(rule.formula2)
    if rule.type == "textLength":
        return isinstance(value, str) and low <= len(value) <= high
    whole = rule.type != "whole" or value == int(value)
    return isinstance(value, float) and low <= value <= high and whole


@EACH
def test_a05_document_properties(path):
    held = opened(path).properties
    book = resolved(path.stem)
    assert (held.title, held.subject, held.creator) == (book.title, book.subject, book.author)
    assert held.created.date() == book.created.date()
    own = {p.name: p.value for p in opened(path).custom_doc_props.props}
    assert own == {"Tool version": book.version, "Inputs hash": book.inputs_hash}


def test_the_length_rule_finds_each_excess():
    assert list(too_long("=A1+B1")) == []
    assert list(too_long("=" + "+".join(["A1"] * 12))) == ["11 operators"]
    assert list(too_long("=SUM(" + ",".join(f"A{k}" for k in range(1, 10)) + ")")) == [
        "9 references"]
    assert list(too_long("=ABS(ABS(ABS(ABS(A1))))")) == ["functions 4 deep"]
    assert list(too_long("=IF(A1>1,IF(A2>1,1,2),3)")) == ["IF inside an IF"]
    assert list(too_long("=SUM(" + "AAA1000000:AAA1000001," * 9 + "A1)")) == ["206 characters"]
    assert inside_guard('=IF(E$5=2,A1+IF(B1>2,1,2),"–")') == "=A1+IF(B1>2,1,2)"
    assert inside_guard('=IF(AND(H1=1,H2=1),A1,"–")') == "=A1"
    assert inside_guard('=IF(E$5>2,A1,"–")') == '=IF(E$5>2,A1,"–")'


def made(tmp_path, fill):
    """Write a small workbook with the library, no rule kept, and read it."""
    import xlsxwriter

    path = tmp_path / "made.xlsx"
    with xlsxwriter.Workbook(path) as book:
        fill(book)
    return read(path)


def test_the_rules_of_formulas_find_what_they_forbid(tmp_path):
    def fill(book):
        one, two = book.add_worksheet("One"), book.add_worksheet("Two")
        for row in range(8):
            one.write(row, 0, f"Label {row % 2 and row or 0}")
        two.write(0, 0, "Label")
        one.write_formula("B1", "=Two!B1")
        one.write_formula("B2", "=B3")
        one.write_formula("B3", "=B2")
        one.write_formula("B4", "=NOW()+OFFSET(A1,1,1)")
        one.write_formula("B5", "=WEBSERVICE(A1)")
        one.write_formula("B6", "=ROUND(A1,1)")
        one.write_formula("B7", "=MATCH(1,A1:A3)")
        one.write_formula("B8", "=SUM(A:A)")
        two.write_formula("B1", "=#REF!+1")

    file = made(tmp_path, fill)
    whole = {(s, r, c): f for (s, r, c), f in file.formulas.items()}
    assert len(whole) == 9
    for rule, wanted in [
        (formulas.w01_left_and_up, {"B1", "B2"}), (formulas.w07_no_circle, {"B2", "B3"}),
        (formulas.f04_f05_x03_functions, {"B4", "B5", "B6"}), (formulas.f06_lookups, {"B7"}),
        (formulas.tokenizes, {"B1"}), (formulas.f07_closed, {"B8"}),
    ]:
        found = {f"B{one.place[1] + 1}" for one in rule(file)}
        assert wanted <= found, (rule.__name__, found)


def test_the_rules_of_sheets_find_what_they_forbid(tmp_path):
    def fill(book):
        page = book.add_worksheet("Sheet1")
        page.merge_range("B2:C3", "merged")
        page.set_row(4, None, None, {"hidden": True})
        page.write("A6", "typed", book.add_format({"locked": False}))
        page.protect("password")
        page.write_formula("A8", "=1+1", None, "")
        page.write_url("A9", "https://example.org")
        book.define_name("ABC_1", "=Sheet1!$A$1:$A$2")

    file = made(tmp_path, fill)
    found = Counter(one.rule for rule in RULES[9:] if rule is not sheets.e05_each_verdict_once
                    for one in rule(file))
    assert {"W04", "W05", "W09", "I02", "I05", "I06", "V01", "P01", "P05", "X06"} <= set(found)
    assert lawful_name("ABC_1") is None
