"""The rules every delivered file must keep, on the sample: sheets, inputs, print, parts."""

from __future__ import annotations

import dataclasses
import re
import xml.etree.ElementTree as ET

import pytest

from builder.workbook.heights import row_heights
from builder.workbook.page import literal
from builder.workbook.paging import page_breaks
from builder.workbook.styles import FONT, VERDICT_LOOKS, contrast
from builder.workbook.writer import to_bytes
from tests.workbook.test_writer_sample import parts, read, sample

MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"


@pytest.fixture(scope="module")
def content() -> bytes:
    return to_bytes(*sample())


@pytest.fixture(scope="module")
def book(content):
    return read(content)


def test_w04_no_merged_cells(book):
    assert all(not page.merged_cells.ranges for page in book)


def test_w05_nothing_hidden(book):
    for page in book:
        assert page.sheet_state == "visible"
        assert not any(d.hidden for d in page.column_dimensions.values())
        assert not any(d.hidden for d in page.row_dimensions.values())
        for row in page.iter_rows():
            for cell in row:
                assert not cell.protection.hidden
                assert cell.number_format.strip(";")
                assert cell.font.color.rgb != cell.fill.fgColor.rgb or not cell.fill.fill_type
    assert not any(name.hidden for name in book.defined_names.values())


def test_w08_and_x06_nothing_foreign_in_the_file(content):
    found = parts(content)
    kept = "vba|externalLink|connections|queryTable|embeddings|activeX|comments|printerSettings"
    assert not [name for name in found if re.search(kept, name, re.I)]
    for name, text in found.items():
        assert 'TargetMode="External"' not in text, name
        assert not re.search(r"absPath|[A-Z]:\\\\|/home/|/Users/|/private/", text), name


def test_i02_every_input_and_nothing_else_has_a_rule(book):
    plan, _ = sample()
    for sheet in plan.sheets:
        page = book[sheet.name]
        found = {str(v.sqref): v for v in page.data_validations.dataValidation}
        unlocked = {
            c.coordinate for row in page.iter_rows() for c in row if not c.protection.locked
        }
        assert set(found) == unlocked
        for rule in sheet.rules:
            got = found[page.cell(rule.row + 1, rule.col + 1).coordinate]
            kind = "textLength" if rule.kind == "text" else rule.kind
            assert (got.type, got.errorStyle, got.operator) == (kind, None, None)
            assert got.showErrorMessage and got.showInputMessage
            assert bool(got.allow_blank) == rule.blank
            assert (got.promptTitle, got.prompt) == (rule.title, rule.message)
            assert (got.errorTitle, got.error) == (rule.title, rule.error)


def test_i02_both_limits_are_in_the_file(book):
    found = {str(v.sqref): v for v in book["Inputs"].data_validations.dataValidation}
    assert [float(found["C5"].formula1), float(found["C5"].formula2)] == [3, 12.25]
    assert (found["C6"].formula1, found["C6"].formula2) == ("1", "6")
    assert [float(found["C7"].formula1), float(found["C7"].formula2)] == [0.1, 100]
    assert (found["C8"].formula1, found["C8"].formula2) == ("Data!$A$5:$A$6", None)
    assert (found["C9"].formula1, found["C9"].formula2) == ("1", "40")
    assert not found["C8"].showDropDown  # the format's word for a list without its arrow


def test_i05_names_read_back(book):
    found = {name: target.attr_text for name, target in book.defined_names.items()}
    assert found == {"width_in": "Inputs!$C$5", "sections": "Inputs!$C$6"}


def test_i06_protected_without_password_but_for_the_free_page(book):
    for page in book:
        guard = page.protection
        if page.title == "Free":
            assert not guard.sheet
            continue
        assert guard.sheet and guard.password is None and guard.hashValue is None
        # In the file these say what is refused.
        assert not guard.selectLockedCells and not guard.formatColumns
        assert guard.formatCells and guard.insertRows and guard.deleteColumns


def test_v03_recalculated_on_load_automatically(book):
    assert book.calculation.fullCalcOnLoad is True
    assert book.calculation.calcMode in (None, "auto")


def test_p01_print_set_up(book):
    plan, values = sample()
    for sheet in plan.sheets:
        page = book[sheet.name]
        edge = page.cell(sheet.last[0] + 1, sheet.last[1] + 1)
        assert page.print_area == f"'{sheet.name}'!$A$1:${edge.column_letter}${edge.row}"
        assert page.print_title_rows == "${}:${}".format(*(r + 1 for r in sheet.repeat_rows))
        assert page.sheet_properties.pageSetUpPr.fitToPage
        assert page.page_setup.fitToWidth in (None, 1) and page.page_setup.fitToHeight == 0
        assert int(page.page_setup.paperSize) == 1
        assert page.page_setup.orientation == ("landscape" if sheet.landscape else "portrait")
        assert page.page_margins.left == 0.6 and page.page_margins.header == 0.35
        assert not page.sheet_view.showGridLines
        asked = page_breaks(sheet, row_heights(sheet, values))
        assert [b.id for b in page.row_breaks.brk] == asked and set(sheet.page_breaks) <= set(asked)
    assert 8 in {b.id for b in book["Data"].row_breaks.brk}


def test_p03_header_and_footer(content, book):
    plan, _ = sample()
    for number, sheet in enumerate(plan.sheets, start=1):
        page = ET.fromstring(parts(content)[f"xl/worksheets/sheet{number}.xml"])
        head, foot = (page.find(f".//{MAIN}{which}").text for which in ("oddHeader", "oddFooter"))
        font = '&"Arial,Regular"'
        title = f"Floating walkway, sample R&&{font}G job"
        assert head == f"&L{font}{title}&R{font}{sheet.title}"
        assert foot == (f"&L{font}Job S-01 (invented) && co., revision 2&R{font}Page &P of &N")
        assert len(head) <= 255 and len(foot) <= 255
    assert book["Free"].oddHeader.right.text == "Free page"
    assert book["Free"].oddFooter.right.text == "Page &P of &N"


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("plain", "plain"),
        ("A & B", "A && B"),
        ("R&G", 'R&&&"Arial,Regular"G'),
        ("&&G", '&&&&&"Arial,Regular"G'),
        ("&[Picture]", '&&&"Arial,Regular"[Picture]'),
        ("&P", "&&P"),
    ],
)
def test_an_ampersand_in_a_header_is_shown(text, shown):
    assert literal(text) == shown


def test_p04_frozen_panes(book):
    plan, _ = sample()
    for sheet in plan.sheets:
        page = book[sheet.name]
        if any(sheet.frozen):
            corner = page.cell(sheet.frozen[0] + 1, sheet.frozen[1] + 1).coordinate
            assert page.freeze_panes == corner and page.sheet_view.pane.state == "frozen"
        else:
            assert page.freeze_panes is None


def test_p05_opens_on_the_first_sheet_at_a1(book):
    assert book.active is book.worksheets[0]
    for number, page in enumerate(book):
        assert bool(page.sheet_view.tabSelected) == (number == 0)
        pane = page.sheet_view.pane
        active = [s for s in page.sheet_view.selection if s.pane == (pane and pane.activePane)]
        assert [s.activeCell for s in active] == ["A1"]
        assert page["A1"].value


def test_p06_and_a01_fonts_in_the_file(book):
    for page in book:
        for row in page.iter_rows():
            for cell in row:
                assert cell.font.name == FONT and cell.font.sz >= 10 and not cell.font.i
                assert cell.font.scheme is None, "a theme font would take the place of ours"
                assert cell.font.color.type == "rgb"
                ground = cell.fill.fgColor.rgb if cell.fill.fill_type else "FFFFFFFF"
                assert contrast("#" + cell.font.color.rgb[2:], "#" + ground[2:]) >= 4.5


def test_a01_and_a02_conditional_looks(book):
    seen = {}
    for area in book["Checks"].conditional_formatting:
        assert str(area.sqref) == "B5:F5"
        for rule in area.rules:
            assert (rule.type, rule.operator) == ("cellIs", "equal")
            look = rule.dxf
            letter, ground = look.font.color.rgb[2:], look.fill.bgColor.rgb[2:]
            assert contrast("#" + letter, "#" + ground) >= 4.5
            assert look.font.b and look.border.left.style
            seen[rule.formula[0]] = look.border.left.style
    assert list(seen) == [f'"{word}"' for word in VERDICT_LOOKS]
    assert list(seen.values()) == ["thin", "dashed", "thin", "dotted", "hair"]


def test_a05_document_properties(book):
    plan, _ = sample()
    got = book.properties
    assert (got.title, got.subject, got.creator) == (plan.title, plan.subject, plan.author)
    assert got.created == plan.created
    custom = {p.name: p.value for p in book.custom_doc_props.props}
    assert custom == {"Tool version": plan.version, "Inputs hash": plan.inputs_hash}


def test_a06_links_lead_inside_and_say_where(book):
    link = book["Inputs"]["E9"].hyperlink
    assert (link.location, link.id) == ("'Checks'!A5", None)
    assert link.tooltip == "Go to sheet Checks, cell A5"
    assert book["Inputs"]["E9"].value == "See the verdict on Checks"


def test_widths_and_heights(book, content):
    widths = [
        round(float(col.get("width")), 2)
        for col in ET.fromstring(parts(content)["xl/worksheets/sheet1.xml"]).iter(f"{MAIN}col")
    ]
    # What is asked for plus the 5 px of padding, in digits of 7 px.
    assert widths == pytest.approx([28.71, 8.71, 10.71, 7.71, 30.71], abs=0.005)
    assert book["Inputs"].row_dimensions[1].height == 24
    assert book["Inputs"].sheet_format.defaultRowHeight == 12.75


def test_headings_run_across_to_the_print_edge(book):
    for name, row in (("Checks", 4), ("Data", 3)):
        page = book[name]
        for cell in page[row]:
            assert cell.border.bottom.style == "medium"
    assert book["Inputs"]["C3"].value == "=Checks!C5", "a filled cell is left alone"
    assert book["Inputs"]["E3"].border.top.style == "thin"


def test_a_dash_stands_at_the_right(book):
    assert book["Checks"]["D6"].alignment.horizontal == "right"


def test_x05_portrait_and_landscape_follow_the_plan():
    plan, values = sample()
    plan.sheets[0] = dataclasses.replace(plan.sheets[0], landscape=True)
    assert read(to_bytes(plan, values))["Inputs"].page_setup.orientation == "landscape"
