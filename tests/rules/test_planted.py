"""Each rule finds the breach that is planted for it, and names the cell, sheet or part."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from builder.engine.values import a1
from builder.rules import layout
from builder.rules.checking import NOT_BY_PROGRAM, RULES
from builder.rules.reading import read
from tests.rules.planting import BASE, base, first, new

pytestmark = pytest.mark.outputs
PRICE, TAPE = "Price!F90", "Tape!E30"
"""Cells with a formula of their own."""


def formula(text, at=PRICE):
    return lambda p: p.cell(at, text, 1.0)


def sheet_of(name):
    return read(BASE).sheet(name).part


def verdict(wanted):
    """Return the first verdict cell with a word."""
    file = read(BASE)
    sheet, row, col = next(p for p in layout.verdict_cells(file) if file.value(*p) == wanted)
    return f"{sheet}!{a1(row, col)}"


def stored(wanted, fresh):
    """Put another word in place of the stored one in the first verdict cell with a word."""
    sheet, _, cell = verdict(wanted).partition("!")
    return lambda p: p.sheet(sheet, rf'( r="{cell}">(?:(?!</c>).)*<v>)[^<]*',
                             rf"\g<1>{fresh}", True)


CASES = [
    ("W01", "Price!F90", formula("Checks!C9")),
    ("W01", "Price!F90", formula("F90+F91")),
    # Lines of boards go on in banks below; a line still reads no later one.
    ("W01", "Cutting!C159", formula("C161", "Cutting!C159")),
    ("W01", "Cutting!C159", formula("C201", "Cutting!C159")),
    ("W02", "Start", lambda p: p.cell(f"Start!A{p.row_of('Start', 'Cautions')}", value="Notes")),
    ("W02", "Start", lambda p: p.cell(f"Start!A{p.row_of('Start', 'Terms')}", value="Words")),
    ("W03", "Parts!A3", lambda p: p.cell("Parts!C3", value="How")),
    ("W03", "Parts!G26", lambda p: p.cell("Parts!G26", value=5.0)),
    ("W04", "Data!B2", lambda p: p.sheet("Data", "<pageMargins", '<mergeCells count="1"><mergeCell '
                                         'ref="B2:C2"/></mergeCells><pageMargins')),
    ("W05", "Terms", lambda p: p.part("xl/workbook.xml", 'name="Terms"',
                                      'name="Terms" state="hidden"')),
    ("W05", "Terms!A8", lambda p: p.sheet("Terms", '<row r="8"', '<row r="8" hidden="1"')),
    ("W05", "Terms!A1", lambda p: p.sheet("Terms", '<col min="1"', '<col hidden="1" min="1"')),
    ("W05", "yard_type", lambda p: p.part("xl/workbook.xml", 'name="yard_type"',
                                          'name="yard_type" hidden="1"')),
    ("W05", "Start!A1", lambda p: p.part("xl/styles.xml", '<color rgb="FF24506E"/>',
                                         '<color rgb="FFFFFFFF"/>')),
    ("W06", "Parts!F27", lambda p: p.cell(
        "Parts!F27", read(BASE).formulas["Parts", 25, 5][1:], 1.0)),
    ("W07", "Price!F90", formula("F90+1")),
    ("W07", "calculation", lambda p: p.part("xl/workbook.xml", "<calcPr ",
                                            '<calcPr iterate="1" ')),
    ("W08", "xl/vbaProject.bin", lambda p: p.add("xl/vbaProject.bin", b"macro")),
    ("W08", "xl/_rels/workbook.xml.rels", lambda p: p.part(
        "xl/_rels/workbook.xml.rels", "</Relationships>",
        '<Relationship Id="rId999" Type="x" Target="https://example.org" '
        'TargetMode="External"/></Relationships>')),
    ("W09", "Sheet9", lambda p: p.part("xl/workbook.xml", 'name="Terms"', 'name="Sheet9"')),
    ("W10", "Inputs!C157", lambda p: p.cell("Cutting!C12", "1+1", 2.0)),
    ("F01", "Parts!G26", lambda p: p.cell("Parts!G26", "E26+1", 1.0)),
    ("F02", PRICE, formula("1.37*F89")),
    ("F03", PRICE, formula("+".join(["F89"] * 12))),
    ("F04", PRICE, formula("NOW()")),
    ("F05", PRICE, formula("ROUND(F89,1)")),
    ("F05", "Price", lambda p: p.sheet("Price", '<f>', '<f t="array" ref="B2">')),
    ("F06", PRICE, formula("MATCH(1,F80:F85)")),
    ("F06", PRICE, formula("MATCH(1,F80:F85,1)")),
    ("F06", PRICE, formula("VLOOKUP(1,F80:F85,1)")),
    ("F07", PRICE, formula("SUM(A:A)")),
    ("F07", PRICE, formula("SUM(Data!B14:G14)")),
    ("F08", PRICE, lambda p: p.cell(PRICE, "F89/0", "#DIV/0!", error=True)),
    ("F08", PRICE, formula("#REF!+1")),
    ("F09", PRICE, formula("IFERROR(F89,0)")),
    ("F10", "Weight!F122", lambda p: p.cell("Weight!F122", "INT(F121)", 1.0)),
    ("F11", PRICE, formula("Checks!E9")),
    ("F12", PRICE, formula("Price!Z999")),
    ("F13", "Price", lambda p: p.sheet("Price", "<pageMargins", '<ignoredErrors><ignoredError '
                                       'sqref="A1" numberStoredAsText="1"/></ignoredErrors>'
                                       "<pageMargins")),
    ("F13", "Inputs!C20", lambda p: p.cell("Inputs!C20", "1+1", 2.0)),
    ("I01", "Inputs!C20", lambda p: p.cell("Inputs!J20", value=None)),
    ("I02", "Inputs!C8", lambda p: p.sheet("Inputs", 'sqref="C8"', 'sqref="B8"')),
    ("I02", "Inputs!C8", lambda p: p.sheet("Inputs", 'type="textLength"', 'type="custom"')),
    ("I03", "Inputs!C8", lambda p: p.sheet("Inputs", 'error="', 'error="' + "x" * 220)),
    ("I04", None, lambda p: p.sheet("Inputs", r"(type=\"list\"[^>]*sqref=\"C(\d+)\"[^>]*>)"
                                    r"<formula1>[^<]*", r"\1<formula1>choices", True)),
    ("I05", "yard type", lambda p: p.part("xl/workbook.xml", 'name="yard_type"',
                                          'name="yard type"')),
    ("I05", "GMT2", lambda p: p.part("xl/workbook.xml", 'name="yard_type"', 'name="GMT2"')),
    ("I06", "Weight", lambda p: p.sheet("Weight", "<sheetProtection[^>]*>", "", True)),
    ("I06", "Weight", lambda p: p.sheet("Weight", "<sheetProtection ",
                                        '<sheetProtection password="CC1A" ')),
    ("I07", "Inputs!C20", lambda p: p.cell("Inputs!C20", value=1e9)),
    ("I07", "verdict", stored("OK", "NEEDS INPUT")),
    ("V01", PRICE, lambda p: p.cell(PRICE, "F89+1")),
    ("V02", PRICE, formula(read(BASE).formulas["Price", 89, 5][1:])),
    ("V03", "calculation", lambda p: p.part("xl/workbook.xml", ' fullCalcOnLoad="1"', "")),
    ("V04", PRICE, lambda p: p.cell(PRICE, "F89+1", "many")),
    ("V06", "docProps/app.xml", lambda p: p.part("docProps/app.xml", "Microsoft Excel", "Other")),
    ("V06", "Terms", lambda p: p.sheet("Terms", '<row r="8"', '<row spans="1:3" r="8"')),
    ("V07", "docProps/core.xml", lambda p: p.part("docProps/core.xml",
                                                  "2026-01-15T00:00:00Z", "2026-01-16T09:30:00Z")),
    ("V08", PRICE, formula("(F89+1")),
    ("V08", None, lambda p: p.part("xl/styles.xml", 'formatCode="#,##0.000"',
                                   'formatCode="#.##0,000"')),
    ("E01", "Weight!E122", lambda p: p.cell("Weight!C122", value=None)),
    ("E01", "Weight!E122", lambda p: p.cell("Weight!K122", value=None)),
    ("E02", "Terms!C8", lambda p: p.cell("Terms!C3", value="With the numbers put in")),
    ("E03", "Weight!K122", lambda p: p.cell("Weight!K122", value="hearsay")),
    ("E04", "Parts!F28", lambda p: p.cell("Parts!F28", 'IF(F$5=2,F$27/F$26*0.9,"–")', "–")),
    ("E04", "verdict", stored("OK", "NOT OK")),
    ("E05", "Checks!F9", lambda p: p.cell("Checks!F9", "Parts!F92&\"\"", "not used")),
    ("E05", "Weight!B2", lambda p: p.cell("Weight!B2", "1+1", 2.0)),
    ("E06", "Data", lambda p: p.cell("Data!A9", value="OK")),
    ("E06", "unused", stored("not used", "OK")),
    ("E07", "Weight", lambda p: p.sheet("Weight", "&amp;P of", "of")),
    ("E07", "Weight!A1", lambda p: p.cell("Weight!E1", value="Job")),
    ("E08", "Data", lambda p: p.part("xl/workbook.xml", r'(<sheet name="Data"[^>]*/>)(.*)</sheets>',
                                     r"\2\1</sheets>", True)),
    ("E09", "Weight!D122", lambda p: p.cell("Weight!D122", value="stone")),
    ("E10", "Data!B14", lambda p: p.cell("Data!B14", "16*2", 32.0)),
    ("E10", "status", lambda p: p.cell(status(), value=None)),
    ("P01", "Weight", lambda p: p.sheet("Weight", ' fitToHeight="0"', ' fitToHeight="9"')),
    ("P01", "Weight!L1", lambda p: p.sheet("Weight", "</row>",
                                           '<c s="1" r="L1"><v>1</v></c></row>')),
    ("P02", PRICE, lambda p: p.cell(PRICE, "F89+1", 123456789012345.0)),
    ("P03", "Weight", lambda p: p.sheet("Weight", "<oddHeader>", "<oddHeader>" + "x" * 260)),
    ("P04", "Weight", lambda p: p.sheet("Weight", "<pane [^>]*/>", "", True)),
    ("P05", "Weight!A1", lambda p: p.cell("Weight!A1", value=None)),
    ("P05", "Start", lambda p: p.part("xl/workbook.xml", "<workbookView ",
                                      '<workbookView activeTab="3" ')),
    ("P06", "Start!A1", lambda p: p.part("xl/styles.xml", '<sz val="14"/>', '<sz val="9"/>')),
    ("A01", "Start!A1", lambda p: p.part("xl/styles.xml", '<color rgb="FF24506E"/>',
                                         '<color rgb="FFC0C0C0"/>')),
    ("A01", "conditional look 1", lambda p: p.part(
        "xl/styles.xml", '<bgColor rgb="FFE8F0F5"/>', '<bgColor rgb="FF303030"/>')),
    ("A02", "Weight", lambda p: p.sheet("Weight", 'type="cellIs"', 'type="expression"')),
    ("A03", "xl/drawings/drawing1.xml", lambda p: p.part("xl/drawings/drawing1.xml",
                                                         ' descr="[^"]*"', "", True)),
    ("A03", "xl/charts/chart1.xml", lambda p: p.part("xl/charts/chart1.xml", "<c:f>[^<]*",
                                                     "<c:f>Gone!$A$1:$A$2", True)),
    ("A04", "Weight!B3", lambda p: p.cell("Weight!B3", value="Item")),
    ("A05", "docProps/core.xml", lambda p: p.part("docProps/core.xml",
                                                  "<dc:title>[^<]*</dc:title>", "", True)),
    ("A06", "Start!D22", lambda p: p.sheet("Start", "location=\"'Checks'!A7\"",
                                           "location=\"'Gone'!A7\"")),
    ("X01", "Inputs!C8", lambda p: p.cell("Inputs!C8", "1+1", 2.0)),
    ("X03", PRICE, formula("WEBSERVICE(F89)")),
    ("X03", PRICE, formula("cmd|F89")),
    ("X04", "Names", lambda p: p.part("xl/workbook.xml",
                                      '<definedName name="yard_type">[^<]*</definedName>', "",
                                      True)),
    ("X06", "xl/comments1.xml", lambda p: p.add("xl/comments1.xml", b"<comments/>")),
    ("X06", "docProps/core.xml", lambda p: p.part("docProps/core.xml", "<dc:subject>",
                                                  "<dc:subject>C:\\jobs\\")),
    ("X08", "workbook", lambda p: replace(p, file=replace(p.file, zipped=[
        *p.file.zipped, *p.file.zipped, *p.file.zipped]))),
]


def status():
    """Return the cell of source and status of the first constant on Data."""
    return first(read(BASE), "Data", lambda p, held: str(held.value).endswith("; seen"))


@pytest.mark.parametrize("start", ["Source: ", "1: "])
def test_e10_a_table_without_clause_and_status_is_found(start):
    """Above its lines, where one wording holds for all of them, or numbered below them."""
    cell = first(read(BASE), "Data", lambda p, held: str(held.value).startswith(start)
                 and "; " in str(held.value))
    assert new("E10", base().cell(cell, value=f"{start}somewhere").file)


@pytest.mark.parametrize(("number", "where", "plant"), CASES,
                         ids=[f"{n}-{k}" for k, (n, _, _) in enumerate(CASES)])
def test_a_planted_breach_is_found(number, where, plant):
    found = new(number, plant(base()).file)
    cells = {f"{one.sheet}!{one.cell}" if one.cell else one.sheet for one in found}
    assert cells, f"{number} finds nothing"
    if where in ("verdict", "unused"):
        where = verdict("OK" if where == "verdict" else "not used")
    elif where == "status":
        where = re.sub("![A-Z]+", "!A", status())
    if where is not None:
        assert where in {*cells, *(one.sheet for one in found if "!" not in where)}
    assert all(one.rule == number and one.what and one.mend for one in found)


PACKAGE = [
    ("xl/_rels/workbook.xml.rels", lambda p: p.part(
        "xl/_rels/workbook.xml.rels", "</Relationships>",
        '<Relationship Id="rId998" Type="x" Target="gone.xml"/></Relationships>')),
    ("xl/extra.xml", lambda p: p.add("xl/extra.xml", b"<a/>")),
    (None, lambda p: p.sheet("Terms", r"(<sheetProtection[^>]*/>)(.*)(</worksheet>)",
                             r"\2\1\3", True)),
    (None, lambda p: p.sheet("Terms", "<pageMargins", "<odd/><pageMargins")),
    (None, lambda p: p.sheet("Inputs", "<dataValidations count=\"", "<dataValidations count=\"9")),
    ("[Content_Types].xml", lambda p: replace(p, file=p.file.changed(
        {"[Content_Types].xml": None}))),
    ("Terms!A8", lambda p: p.cell("Terms!A8", value="x" * 32_768)),
    (None, lambda p: p.sheet("Terms", r'<c t="s" s="\d+" r="A8"', '<c t="s" s="999" r="A8"',
                             True)),
]


@pytest.mark.parametrize(("where", "plant"), PACKAGE, ids=range(len(PACKAGE)))
def test_x05_the_package_rules_find_what_would_bring_a_repair_prompt(where, plant):
    from builder.rules.package import faults

    assert list(faults(read(BASE))) == []
    found = list(faults(plant(base()).file))
    assert found
    if where is not None:
        sheet, _, _ = where.partition("!")
        assert any(sheet in (one, one[0]) for one, _ in found)


def test_x05_a_warning_of_openpyxl_is_found():
    p = base().sheet("Terms", "<pageMargins", '<dataValidations count="1"><dataValidation '
                     'type="odd" sqref="A1"/></dataValidations><pageMargins')
    assert any("openpyxl" in one.what for one in new("X05", p.file))


def test_every_rule_that_a_program_checks_has_a_breach_planted():
    assert {number for number, _, _ in CASES} | {"X05"} == set(RULES)
    assert not set(NOT_BY_PROGRAM) & set(RULES)
