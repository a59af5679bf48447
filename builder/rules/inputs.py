"""Rules I: inputs, what may be typed in them, names, protection."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator

from builder.resolve.cells import Place
from builder.rules import layout
from builder.rules.findings import Found, rule
from builder.rules.looks import Entry, box, entries, typed
from builder.rules.reading import File
from builder.workbook.limits import ERROR, MESSAGE, TITLE, lawful_name, units16

TYPED_ON = ("Inputs", "Sections", "Catalog", "Proof", "Rates", "Readings", "Orders")
NAMED_ON = ("Inputs", "Sections", "Proof", "Rates", "Readings", "Orders")
KINDS = ("decimal", "whole", "list", "textLength")
DEFAULT_AT = {"job inputs": 6, "section inputs": 13}
"""Column of the defaults, by kind of sheet."""
BASIS_AT = {"job inputs": 9, "section inputs": 10}
ALLOWED_AT = {"job inputs": (4, 5), "section inputs": (2, 2)}
UNIT_AT = 3
NO_NUMBER = (layout.DASH, "by purpose")


def _kind(file: File, place: Place) -> str:
    found = layout.kind(file, place[0])
    return found if found in BASIS_AT else ""


@rule("I01", "Give the input a label of its own, its range, and the basis of its default.")
def described(file: File) -> Iterator[Found]:
    """Yield inputs without a label of their own, without what is allowed, or without a basis."""
    rules, _ = entries(file)
    lines = {place[:2]: place for place in typed(file) if _kind(file, place)}
    count = Counter(file.text(*line) for line in lines)
    for line, place in lines.items():
        kind, entry = _kind(file, place), rules.get(place)
        if not file.text(*line):
            yield place, "no label"
        elif count[file.text(*line)] > 1:
            yield place, "two inputs of one label"
        if entry is None:
            continue
        if entry.kind != "textLength" and not file.text(*line, BASIS_AT[kind]):
            yield place, "no basis"
        if entry.kind in ("decimal", "whole") and any(
                file.value(*line, col) is None for col in ALLOWED_AT[kind]):
            yield place, "does not say what is allowed"


@rule("I02", "Give every input, and nothing else, a rule with both limits that stops and says why.")
def ruled(file: File) -> Iterator[Found]:
    """Yield unlocked cells without a rule, rules elsewhere, and rules that do not hold."""
    may, (rules, double) = typed(file), entries(file)
    for place in dict.fromkeys(double):
        yield place, "two rules on one cell"
    for place in set(may) ^ set(rules):
        yield place, "a rule without an input, or the other way round"
    for place in may:
        if place in rules:
            for what in _rule_faults(file, place, rules[place]):
                yield place, what


def _rule_faults(file: File, place: Place, entry: Entry) -> Iterator[str]:
    given = entry.given
    if entry.kind not in KINDS or given.get("errorStyle", "stop") != "stop":
        yield f"the rule is of type {entry.kind}, {given.get('errorStyle', 'stop')}"
    if given.get("showErrorMessage") != "1" or given.get("showInputMessage") != "1":
        yield "the rule is silent"
    if given.get("operator", "between") != "between" or entry.first is None or (
            entry.kind != "list" and entry.second is None):
        yield "the rule lacks a limit"
    if (given.get("allowBlank") == "1") != _may_be_blank(file, place, entry):
        yield f"a blank is {'let by' if given.get('allowBlank') == '1' else 'refused'}"


def _may_be_blank(file: File, place: Place, entry: Entry) -> bool:
    """Say whether a blank is usable: words, defaults, and the columns of section types."""
    kind = _kind(file, place)
    if kind == "job inputs":
        return entry.kind == "textLength" or file.value(*place[:2], 6) is not None
    return kind == "section inputs" or place[0] == "Orders"


@rule("I03", "Let the message say meaning, unit and range, within the lengths of the format.")
def messages(file: File) -> Iterator[Found]:
    """Yield messages that are missing, too long, or do not name the unit."""
    for place, entry in entries(file)[0].items():
        given = entry.given
        for key, most in (("promptTitle", TITLE), ("prompt", MESSAGE), ("errorTitle", TITLE),
                          ("error", ERROR)):
            if not 0 < units16(given.get(key, "")) <= most:
                yield place, f"a message ({key}) of {units16(given.get(key, ''))} letters"
        unit = file.text(*place[:2], UNIT_AT) if _kind(file, place) or place[0] == "Proof" else ""
        if unit and unit not in given.get("prompt", ""):
            yield place, f"the message does not name the unit {unit}: {given.get('prompt')}"


@rule("I04", "Take the list from the whole of an absolute column of words on a visible sheet.")
def lists(file: File) -> Iterator[Found]:
    """Yield lists that do not come from a filled absolute range of a visible sheet."""
    for place, entry in entries(file)[0].items():
        if entry.kind != "list":
            continue
        source = entry.first or ""
        found = re.fullmatch(r"=?(\w+)!\$([A-Z]+)\$(\d+):\$([A-Z]+)\$(\d+)", source)
        on = file.sheet(found[1]) if found else None
        if not found or found[2] != found[4] or on is None or on.state != "visible":
            yield place, f"the list is {source}"
            continue
        top, left, bottom, _ = box(source.partition("!")[2])
        held = [file.text(found[1], row, left) for row in range(top, bottom + 1)]
        if not all(held) or len(set(held)) != len(held):
            yield place, f"an empty or double word in {source}"
        if file.text(found[1], bottom + 1, left) or not file.text(found[1], top - 1, left):
            yield place, f"{source} is not the whole of its column"


@rule("I05", "Give each input one lawful name for its one cell, and a result at most one.")
def names(file: File) -> Iterator[Found]:
    """Yield unlawful names, inputs with no name or several, names of anything else."""
    count: Counter[Place] = Counter()
    may = {p for p in typed(file) if p[0] in NAMED_ON}
    for name, target in file.names.items():
        text = (target.text or "").replace("'", "")
        found = re.fullmatch(r"(\w+)!\$[A-Z]+\$\d+", text)
        if lawful_name(name) or not found or target.get("localSheetId") is not None:
            yield name, f"{lawful_name(name)}, {text}"
            continue
        place = (found[1], *box(text.rpartition("!")[2])[:2])
        count[place] += 1
        if place not in may and place not in file.formulas:
            yield place, f"{name} names neither an input nor a result"
    for place in may:
        if count[place] != 1:
            yield place, f"an input with {count[place]} names"
    for place, several in count.items():
        if several > 1 and place not in may:
            yield place, f"{several} names"


@rule("I06", "Protect the sheet without a password; let locked cells be selected, columns widened.")
def protection(file: File) -> Iterator[Found]:
    """Yield sheets that are not protected, or with a password, or more than they need be."""
    for sheet in file.sheets:
        guard = sheet.first("sheetProtection")
        if sheet.name == layout.FREE:
            if guard.get("sheet") == "1":
                yield sheet.name, "the free page is protected"
        elif guard.get("sheet") != "1":
            yield sheet.name, "not protected"
        elif guard.get("password") or guard.get("hashValue"):
            yield sheet.name, "protected with a password"
        elif guard.get("selectLockedCells") == "1" or guard.get("selectUnlockedCells") == "1" \
                or guard.get("formatColumns") != "0":
            yield sheet.name, "protected more than it need be"
    for place in typed(file):
        if place[0] not in TYPED_ON:
            yield place, "an unlocked cell on a sheet of results"
    if file.book.find("{*}workbookProtection") is not None:
        yield "workbook", "the workbook's structure is protected"


@rule("I07", "Type a value within the limits, or fill in what is wanting.")
def usable_as_delivered(file: File) -> Iterator[Found]:
    """Yield values and defaults that their own rule refuses, and verdicts that need input.

    A book whose section columns are all empty is a blank start: it must need input, and show no OK.
    """
    for place, entry in entries(file)[0].items():
        column = DEFAULT_AT.get(_kind(file, place))
        default = file.value(*place[:2], column) if column else None
        for value in (file.value(*place), default):
            if value is not None and value not in NO_NUMBER and not passes(entry, value, file):
                yield place, f"{value!r} against {entry.first} to {entry.second}"
    shown = {p: file.value(*p) for p in layout.verdict_cells(file)}
    master = file.value("Checks", 1, 1)
    if shown and set(shown.values()) == {"not used"}:
        if master != "NEEDS INPUT":
            yield ("Checks", 1, 1), f"a blank start shows {master}"
    else:
        for place, word in shown.items():
            if word == "NEEDS INPUT":
                yield place, "needs input"
        if master not in ("OK", "LOOK", "NOT OK"):
            yield ("Checks", 1, 1), f"the whole job shows {master}"


def passes(entry: Entry, value: object, file: File) -> bool:
    """Say whether an input rule lets a value by."""
    if entry.kind == "list":
        on, _, span = (entry.first or "").removeprefix("=").partition("!")
        top, left, bottom, _ = box(span)
        return value in [file.text(on, row, left) for row in range(top, bottom + 1)]
    low, high = float(entry.first or "nan"), float(entry.second or "nan")
    if entry.kind == "textLength":
        return isinstance(value, str) and low <= len(value) <= high
    whole = entry.kind != "whole" or (isinstance(value, float) and value == int(value))
    return isinstance(value, float) and low <= value <= high and whole
