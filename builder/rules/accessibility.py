"""Rules A: that everybody can read it."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator

from builder.engine.values import row_col
from builder.rules import layout
from builder.rules.findings import Found, rule
from builder.rules.looks import conditionals, looks, typed, used
from builder.rules.reading import MAIN, File, area
from builder.rules.structure import properties
from builder.workbook.styles import contrast

LEAST, LARGE = 4.5, 3.0
"""Least contrast, and that of large letters (W3C WCAG 2.1, 1.4.3; seen)."""
DRAWN = "{http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing}cNvPr"
CHART = "{http://schemas.openxmlformats.org/drawingml/2006/chart}f"
SHORTEST, LONGEST = 10, 250


@rule("A01", "Take darker letters or a lighter ground: 4.5 to 1 at least.")
def contrast_is_enough(file: File) -> Iterator[Found]:
    """Yield looks whose letters stand out too little, or take their colour from a theme."""
    known = looks(file)
    for number, place in used(file).items():
        look = known[number]
        large = look.size >= 18 or (look.bold and look.size >= 14)
        yield from _pair(place, look.ink, look.ground, LARGE if large else LEAST)
    for number, one in enumerate(conditionals(file)):
        yield from _pair(f"conditional look {number + 1}", one.ink, one.ground, LEAST)


def _pair(where, ink: str | None, ground: str | None, least: float) -> Iterator[Found]:
    if ink is None or ground is None:
        yield where, "a colour of a theme"
    elif contrast("#" + ink, "#" + ground) < least:
        yield where, f"{ink} on {ground} is {contrast('#' + ink, '#' + ground):.2f} to 1"


@rule("A02", "Let a word or a border say it too.")
def colour_never_alone(file: File) -> Iterator[Found]:
    """Yield conditional looks that are not of a word, and looks without a border."""
    found = conditionals(file)
    for sheet in file.sheets:
        for one in sheet.all("cfRule"):
            text = one.findtext(MAIN + "formula") or ""
            if one.get("type") != "cellIs" or text.strip('"') not in layout.VERDICTS:
                yield sheet.name, f"a conditional look by {one.get('type')} {text}"
            elif not found[int(one.get("dxfId", 0))].border:
                yield sheet.name, f"the look of {text} has no border"
    known = looks(file)
    for place in typed(file):
        if not known[file.sheet(place[0]).look[place[1:]]].border:
            yield place, "an input without a border"


@rule("A03", "Describe it in 10 to 250 letters, and draw it from cells that can be seen.")
def drawings_are_described(file: File) -> Iterator[Found]:
    """Yield drawings without a description, and charts of cells that are not there."""
    for name in sorted(file.parts):
        if re.fullmatch(r"xl/drawings/drawing\d+\.xml", name):
            for one in file.xml(name).iter(DRAWN):
                if not SHORTEST <= len(one.get("descr", "")) <= LONGEST:
                    yield name, f"{one.get('name')} is described as {one.get('descr', '')!r}"
        elif re.fullmatch(r"xl/charts/chart\d+\.xml", name):
            for one in file.xml(name).iter(CHART):
                if not _seen(file, one.text or ""):
                    yield name, f"is drawn from {one.text}"


def _seen(file: File, reference: str) -> bool:
    try:
        on = file.sheet(area(reference, "")[0])
    except ValueError:
        return False
    return on is not None and on.state == "visible"


@rule("A04", "Give each column of the row of heads one text of its own.")
def heads_are_unique(file: File) -> Iterator[Found]:
    """Yield heads that stand twice, and heads of columns that hold nothing."""
    for sheet in file.sheets:
        found = layout.head(file, sheet.name)
        if len(found) < 3 or sheet.name in ("Start", *layout.PAPER):
            continue
        filled = {col for row, col in sheet.look if row > layout.HEAD}
        count = Counter(found)
        for col, text in enumerate(found):
            if count[text] > 1:
                yield (sheet.name, layout.HEAD, col), f"{text!r} heads two columns"
            if col not in filled:
                yield (sheet.name, layout.HEAD, col), f"nothing stands below {text!r}"


@rule("A05", "Set title, subject, author, day, tool version and hash of the inputs.")
def document_information(file: File) -> Iterator[Found]:
    """Yield document properties that are not set."""
    core = file.xml("docProps/core.xml")
    told = {} if core is None else {e.tag.rpartition("}")[2]: e.text for e in core}
    for key in ("title", "subject", "creator", "created"):
        if not told.get(key):
            yield "docProps/core.xml", f"no {key}"
    for key in ("Tool version", "Inputs hash"):
        if not properties(file).get(key):
            yield "docProps/custom.xml", f"no {key}"


@rule("A06", "Say in words where the link goes, to a cell of this workbook.")
def links_say_where(file: File) -> Iterator[Found]:
    """Yield links out, links to nowhere, and links without words."""
    for sheet in file.sheets:
        for one in sheet.all("hyperlink"):
            place = sheet.name, *row_col(one.get("ref", "A1").partition(":")[0])
            target = one.get("location", "")
            if not target or not _seen(file, target.replace("'", "")):
                yield place, f"links to {target or 'another file'}"
            text = file.value(*place)
            if not isinstance(text, str) or re.match(r"https?:|\w+!\$?[A-Z]+\$?\d", text):
                yield place, f"the link reads {text!r}"
