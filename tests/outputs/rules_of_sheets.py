"""Rules on sheets, inputs, names and parts, one function a rule, on a file as openpyxl reads it.

The numbers W04, I02 … are those of the project's workbook rules.
"""

from __future__ import annotations

import re
import zipfile
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

from openpyxl.cell import Cell
from openpyxl.utils import range_boundaries

from builder.resolve.cells import Place
from builder.workbook.limits import lawful_name, lawful_sheet_name
from tests.outputs.findings import Finding, found_at
from tests.outputs.reading import DASH, Read, opened, spots

TYPED_ON = ("Inputs", "Sections", "Catalog", "Proof", "Rates", "Readings", "Orders")
NAMED_ON = ("Inputs", "Sections", "Proof", "Rates", "Readings", "Orders")
SECTION_BLANKS = range(4, 10)
KINDS = {"decimal", "whole", "list", "textLength"}
UNITS_AT = {"Inputs": 3, "Sections": 3, "Proof": 3, "Rates": 3, "Readings": 3}
BASIS_AT = {"Inputs": 9, "Sections": 10, "Rates": 9, "Readings": 10}
ALLOWED_AT = {"Inputs": (4, 5), "Sections": (2, 2), "Rates": (4, 5), "Readings": (2, 2)}
PAPER = ("Quote", "Yard", "LaunchForm", "Upkeep", "SiteVisit", "Drawing")
"""Sheets that are paper for people: what is worked stands beside or below what is printed."""
SCREEN = 40
"""Rows that stand on a screen (our judgement)."""
FOREIGN = re.compile("vba|externalLink|connections|queryTable|embeddings|activeX|comments|"
                     "printerSettings|customXml", re.IGNORECASE)
PRIVATE = re.compile(r"absPath|[A-Za-z]:\\\\|/home/|/Users/|/root/|/tmp/|/private/|file://")

NOT_PLAIN = re.compile(
    r'<f [^>]*\bt="(?!shared")[^>]*>|_xlfn|_xlws|<c [^>]*\bcm=|ignoredError')
"""Array formulas and the like.  A shared formula is one that is written once for its row."""


def place_of(cell: Cell) -> Place:
    """Return a cell's place, counted from 0."""
    return cell.parent.title, cell.row - 1, cell.column - 1


def unlocked(path: Path) -> dict[Place, Cell]:
    """Return the cells that may be typed in on the protected sheets."""
    return {place_of(c): c for page in opened(path) if page.protection.sheet
            for row in page.iter_rows() for c in row if not c.protection.locked}


def validations(path: Path) -> dict[Place, object]:
    """Return the input rule of every cell that has one; two on one cell are an error."""
    found: dict[Place, object] = {}
    for page in opened(path):
        for rule in page.data_validations.dataValidation:
            for span in rule.sqref.ranges:
                left, top, right, bottom = range_boundaries(str(span))
                for spot in spots((page.title, top - 1, left - 1, bottom - 1, right - 1)):
                    if spot in found:
                        raise AssertionError(f"two input rules on {spot}")
                    found[spot] = rule
    return found


def w04_w05_nothing_merged_or_hidden(file: Read) -> Iterator[Finding]:
    """Yield merged cells, and whatever is hidden or cannot be seen."""
    book = opened(file.path)
    for page in book:
        top = (page.title, 0, 0)
        if page.merged_cells.ranges:
            yield found_at(file, "W04", top, f"merged: {page.merged_cells.ranges}")
        sizes = [*page.column_dimensions.values(), *page.row_dimensions.values()]
        if page.sheet_state != "visible" or any(d.hidden for d in sizes):
            yield found_at(file, "W05", top, "a hidden sheet, row or column")
        for row in page.iter_rows():
            for cell in row:
                if cell.protection.hidden or not cell.number_format.strip(";"):
                    yield found_at(file, "W05", place_of(cell), "hidden formula or value")
                if cell.fill.fill_type and cell.font.color.rgb == cell.fill.fgColor.rgb:
                    yield found_at(file, "W05", place_of(cell), "letters in the ground's colour")
    for name, target in book.defined_names.items():
        if target.hidden:
            yield Finding("W05", ("", 0, 0), name, "a hidden name")


def w09_sheet_names(file: Read) -> Iterator[Finding]:
    """Yield sheet names that need quotes, are not unique, or say nothing."""
    names = opened(file.path).sheetnames
    for name in names:
        why = lawful_sheet_name(name)
        if why or re.fullmatch(r"Sheet\d*", name) or not 1 < len(name) <= 31:
            yield found_at(file, "W09", (name, 0, 0), why or "the name says nothing")
    if len({n.lower() for n in names}) != len(names):
        yield found_at(file, "W09", (names[0], 0, 0), "two sheets of one name")


def i01_described(file: Read) -> Iterator[Finding]:
    """Yield inputs without a label of their own, without what is allowed, or without a basis."""
    labels: Counter[str] = Counter()
    rules = validations(file.path)
    rows = {place[:2]: place for place in unlocked(file.path) if place[0] in BASIS_AT}
    for (sheet, row), place in rows.items():
        label = file.text(sheet, row)
        labels[label] += 1
        words = rules[place].type == "textLength"
        if not label:
            yield found_at(file, "I01", place, "no label")
        if not words and not file.text(sheet, row, BASIS_AT[sheet]):
            yield found_at(file, "I01", place, "no basis")
        limits = [(sheet, row, c) for c in ALLOWED_AT[sheet]]
        if rules[place].type in ("decimal", "whole") and any(p not in file.cells for p in limits):
            yield found_at(file, "I01", place, "does not say what is allowed")
    for (sheet, row), place in rows.items():
        if labels[file.text(sheet, row)] > 1:
            yield found_at(file, "I01", place, "two inputs of one label")


def i02_i03_rules(file: Read) -> Iterator[Finding]:
    """Yield unlocked cells without a rule, rules elsewhere, and rules that do not hold or say."""
    typed, rules = unlocked(file.path), validations(file.path)
    for place in set(typed) ^ set(rules):
        yield found_at(file, "I02", place, "a rule without an input, or the other way round")
    for place in typed:
        if place[0] not in TYPED_ON:
            yield found_at(file, "I06", place, "an unlocked cell on a sheet of results")
        if place in rules:
            for number, what in _rule_faults(file, place, rules[place]):
                yield found_at(file, number, place, what)


def _rule_faults(file: Read, place: Place, rule) -> Iterator[tuple[str, str]]:
    if rule.type not in KINDS or rule.errorStyle not in (None, "stop"):
        yield "I02", f"the rule is of type {rule.type}, {rule.errorStyle}"
    if not (rule.showErrorMessage and rule.showInputMessage):
        yield "I02", "the rule is silent"
    if rule.operator not in (None, "between") or rule.formula1 is None or (
            rule.type != "list" and rule.formula2 is None):
        yield "I02", "the rule lacks a limit"
    if bool(rule.allow_blank) != _may_be_blank(file, place, rule):
        yield "I02", f"allow_blank is {rule.allow_blank}"
    texts = [rule.promptTitle, rule.prompt, rule.errorTitle, rule.error]
    for text, most in zip(texts, (32, 255, 32, 224), strict=True):
        if not text or not 0 < len(text) <= most:
            yield "I03", f"a message of {len(text or '')} letters: {text}"
    unit = file.text(*place[:2], UNITS_AT[place[0]]) if place[0] in UNITS_AT else ""
    if unit and unit not in (rule.prompt or ""):
        yield "I03", f"the message does not name the unit {unit}: {rule.prompt}"


def _may_be_blank(file: Read, place: Place, rule) -> bool:
    """Say whether a blank is usable: words, defaults, and the columns of section types."""
    sheet, row, _ = place
    if sheet in ("Inputs", "Rates"):
        return rule.type == "textLength" or (sheet, row, 6) in file.cells
    return sheet in ("Sections", "Readings", "Orders")


def i04_lists(file: Read) -> Iterator[Finding]:
    """Yield lists that do not come from a filled absolute range of a visible sheet."""
    for place, rule in validations(file.path).items():
        if rule.type != "list":
            continue
        found = re.fullmatch(r"=?(\w+)!\$([A-Z]+)\$(\d+):\$([A-Z]+)\$(\d+)", rule.formula1)
        if not found or found[2] != found[4]:
            yield found_at(file, "I04", place, f"the list is {rule.formula1}")
            continue
        left, top, _, bottom = range_boundaries(f"{found[2]}{found[3]}:{found[4]}{found[5]}")
        words = [file.text(found[1], row, left - 1) for row in range(top - 1, bottom)]
        if not all(words) or len(set(words)) != len(words):
            yield found_at(file, "I04", place, f"an empty or double word in {rule.formula1}")
        after = file.text(found[1], bottom, left - 1), file.text(found[1], top - 2, left - 1)
        if after[0] or not after[1]:
            yield found_at(file, "I04", place, f"{rule.formula1} is not the whole of its column")


def i05_names(file: Read) -> Iterator[Finding]:
    """Yield unlawful names, inputs with no name or several, names of anything else."""
    named: Counter[Place] = Counter()
    typed = {p for p in unlocked(file.path) if p[0] in NAMED_ON}
    for name, target in opened(file.path).defined_names.items():
        found = re.fullmatch(r"'?(\w+)'?!\$([A-Z]+)\$(\d+)", target.attr_text)
        if lawful_name(name) or not found or target.localSheetId is not None:
            yield Finding("I05", ("", 0, 0), name, f"{lawful_name(name)}, {target.attr_text}")
            continue
        left, top, _, _ = range_boundaries(found[2] + found[3])
        place = (found[1], top - 1, left - 1)
        named[place] += 1
        if place not in typed and place not in file.formulas:
            yield found_at(file, "I05", place, f"{name} names neither an input nor a result")
    for place in typed:
        if named[place] != 1:
            yield found_at(file, "I05", place, f"an input with {named[place]} names")
    for place, count in named.items():
        if count != 1:
            yield found_at(file, "I05", place, f"{count} names")


def i06_protection(file: Read) -> Iterator[Finding]:
    """Yield sheets that are not protected, or with a password, or more than they need be."""
    for page in opened(file.path):
        guard = page.protection
        if page.title == "Free":
            if guard.sheet:
                yield found_at(file, "I06", (page.title, 0, 0), "the free page is protected")
        elif not guard.sheet or guard.password or guard.hashValue or guard.selectLockedCells \
                or guard.selectUnlockedCells or guard.formatColumns:
            yield found_at(file, "I06", (page.title, 0, 0), "not protected as it should be")


def v01_v04_stored(file: Read) -> Iterator[Finding]:
    """Yield formula cells with no stored value, an empty one, an error, or one of a wrong kind."""
    book = opened(file.path)
    for place in file.formulas:
        value = file.cells[place].value
        if value is None or value == "":
            yield found_at(file, "V01", place, "no stored value")
        elif isinstance(value, bool) or (isinstance(value, str) and value.startswith("#")):
            yield found_at(file, "V04", place, f"stored is {value}")
        sheet, row, col = place
        shown = book[sheet].cell(row + 1, col + 1).number_format
        if shown not in ("General", "@") and isinstance(value, str) and value != DASH:
            yield found_at(file, "V04", place, f"the text {value!r} in a column of numbers")


def verdict_cells(file: Read) -> list[Place]:
    """Return the cells in which a verdict is worked out, by their formula."""
    words = file.areas[next(p for p in file.formulas if is_verdict(file.formulas[p]))][0]
    assert [file.cells[p].value for p in spots(words)] == [
        "not used", "NEEDS INPUT", "OK", "LOOK", "NOT OK"]
    return [p for p, f in file.formulas.items() if is_verdict(f)]


def is_verdict(formula: str) -> bool:
    """Say whether a formula is of the one form of a verdict."""
    return re.fullmatch(r"=INDEX\(Data!\$A\$\d+:\$A\$\d+,1\+([A-Z]+\$\d+)\+\(\1=2\)\*\(.+\)\)",
                        formula) is not None


def e05_each_verdict_once(file: Read) -> Iterator[Finding]:
    """Yield verdicts that do not stand on Checks exactly once, as plain links."""
    linked: Counter[Place] = Counter()
    for place, formula in file.formulas.items():
        if place[0] == "Checks" and place[1] > 5 and place[2] in SECTION_BLANKS:
            if not re.fullmatch(r"=\w+!\$?[A-Z]+\$?\d+", formula):
                yield found_at(file, "E05", place, f"no plain link: {formula}")
            linked[file.areas[place][0][:3]] += 1
    verdicts = Counter(verdict_cells(file))
    for place in set(linked) | set(verdicts):
        if linked[place] != 1 or verdicts[place] != 1:
            yield found_at(file, "E05", place, f"{linked[place]} times on Checks")
    for page in opened(file.path):
        at = 1, 1
        if page.title in PAPER:
            at = 0, range_boundaries(page.print_area.rpartition("!")[2])[2] + 1
        head = file.formulas.get((page.title, *at), "")
        if page.title != "Checks" and head != "=Checks!$B$2":
            yield found_at(file, "E05", (page.title, 1, 1), "no verdict of the whole job on top")


def p01_print(file: Read) -> Iterator[Finding]:
    """Yield sheets that are not set out for paper, or whose print area leaves cells out."""
    for page in opened(file.path):
        sheet, setup = page.title, page.page_setup
        good = (page.print_area and page.print_title_rows and int(setup.paperSize or 0) == 1
                and page.sheet_properties.pageSetUpPr.fitToPage
                and setup.fitToWidth in (None, 1) and setup.fitToHeight == 0
                and setup.orientation in ("landscape", "portrait"))
        if not good:
            yield found_at(file, "P01", (sheet, 0, 0), "not set out for paper")
            continue
        _, _, right, bottom = range_boundaries(page.print_area.rpartition("!")[2])
        for place in file.cells if sheet not in PAPER else ():
            if place[0] == sheet and (place[1] >= bottom or place[2] >= right):
                yield found_at(file, "P01", place, "stands outside the print area")
        odd, foot = page.oddHeader, page.oddFooter
        texts = [part.text or "" for part in (odd.left, odd.right, foot.left, foot.right)]
        if "&P" not in texts[3] or "&N" not in texts[3] or not all(texts):
            yield found_at(file, "E07", (sheet, 0, 0), f"header and footer read {texts}")


def p04_p05_screen(file: Read) -> Iterator[Finding]:
    """Yield sheets without frozen heads, without a title of their own, or not opened at A1."""
    book = opened(file.path)
    titles = Counter(page["A1"].value for page in book)
    if book.active is not book.worksheets[0]:
        yield found_at(file, "P05", (book.sheetnames[0], 0, 0), "does not open on the first sheet")
    for page in book:
        top = (page.title, 0, 0)
        if not isinstance(page["A1"].value, str) or titles[page["A1"].value] != 1:
            yield found_at(file, "P05", top, f"the title is {page['A1'].value!r}")
        view = page.sheet_view
        pane = view.pane.activePane if view.pane else None
        at = [s.activeCell for s in view.selection if view.pane is None or s.pane == pane]
        if page.max_row < 2 or at != ["A1"]:
            yield found_at(file, "P05", top, "blank, or not opened at A1")
        if page.max_row > SCREEN:
            frozen = page.freeze_panes or "A1"
            rows = int(re.sub(r"\D", "", frozen)) - 1
            if not 2 <= rows <= 6:
                yield found_at(file, "P04", top, f"{rows} rows are frozen")


def parts(path: Path) -> dict[str, str]:
    """Return the parts of a workbook file."""
    with zipfile.ZipFile(path) as held:
        return {name: held.read(name).decode() for name in held.namelist()}


def w08_x06_parts(file: Read) -> Iterator[Finding]:
    """Yield parts that do not belong in a plain workbook, and words that are private."""
    for name, text in parts(file.path).items():
        for what in (FOREIGN.search(name), PRIVATE.search(text),
                     re.search('TargetMode="External"', text)):
            if what:
                yield Finding("X06", ("", 0, 0), name, what[0])


def v03_calculation(file: Read) -> Iterator[Finding]:
    """Yield calculation settings that iterate or wait."""
    how = opened(file.path).calculation
    if how.iterate or not how.fullCalcOnLoad or how.calcMode not in (None, "auto"):
        yield Finding("V03", ("", 0, 0), "calculation", "iterates, or does not begin by itself")


def f05_plain_formulas(file: Read) -> Iterator[Finding]:
    """Yield array formulas, data tables, prefixes of newer functions, and masked warnings."""
    for name, text in parts(file.path).items():
        found = NOT_PLAIN.search(text)
        if name.startswith("xl/worksheets/") and found:
            yield Finding("F05", ("", 0, 0), name, found[0])
