"""The rules of a trustworthy workbook, kept by every delivered file.

What breaks a rule on purpose stands in ``builder/rules/waivers.csv`` with the reason; each waiver
must be needed.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from builder.rules.checking import NOT_BY_PROGRAM, RULES, told
from builder.rules.findings import Finding, Waiver, not_waived, rule, waivers
from builder.rules.formulas import inside_guard, too_long
from tests.rules.planting import OUTPUTS, ROOT, findings

pytestmark = pytest.mark.outputs
TABLE = ROOT / "templates" / "tables" / "workbook_rules.csv"
LISTED = 68


@pytest.mark.parametrize("path", OUTPUTS, ids=lambda p: p.stem)
@pytest.mark.parametrize("number", sorted(RULES))
def test_a_delivered_workbook_keeps_the_rule(number, path):
    found = not_waived(findings(number, path))
    assert not found, f"{len(found)} findings\n" + "\n".join(told(found)[:120])


def test_every_waiver_is_needed_and_has_a_reason():
    found = {n: [one for p in OUTPUTS for one in findings(n, p)] for n in RULES}
    for waiver in waivers():
        assert len(waiver.reason.split()) >= 5, waiver
        assert any(waiver.covers(one) for one in found[waiver.rule]), f"needed no more: {waiver}"


def test_every_rule_of_the_list_is_checked_or_says_why_not():
    with TABLE.open(encoding="utf-8", newline="") as stream:
        lines = list(csv.reader(stream))[3:]
    assert len(lines) == LISTED
    told_by = {line[0]: line[2] for line in lines}
    assert set(told_by) == set(RULES) | set(NOT_BY_PROGRAM)
    for number, by in told_by.items():
        if number in RULES:
            check = RULES[number].check
            module = check.__module__.removeprefix("builder.rules.")
            assert by.split(";")[0] == f"{module}.{check.__name__}"
        else:
            assert by == f"not by program: {NOT_BY_PROGRAM[number]}"


def test_a_number_has_one_function():
    with pytest.raises(ValueError, match="two functions for the rule W01"):
        rule("W01", "again")(lambda file: iter(()))


def test_a_waiver_may_name_a_whole_sheet_and_no_more():
    waiver = Waiver("F03", "Worked", "", "", "lines of words with every number put in")
    assert waiver.covers(Finding("F03", "Worked", "D9", "900 characters", "", "Any row"))
    assert not waiver.covers(Finding("F03", "Work", "D9", "900 characters", "", "Any row"))
    assert not waiver.covers(Finding("F04", "Worked", "D9", "900 characters", "", "Any row"))


def test_the_length_rule_finds_each_excess():
    assert list(too_long("=A1+B1")) == []
    assert list(too_long("=" + "+".join(["A1"] * 12))) == ["11 operators"]
    assert list(too_long("=SUM(" + ",".join(f"A{k}" for k in range(1, 10)) + ")")) == [
        "9 references"]
    assert list(too_long("=ABS(ABS(ABS(ABS(A1))))")) == ["functions 4 deep"]
    assert list(too_long("=IF(A1>1,IF(A2>1,1,2),3)")) == ["IF inside an IF"]
    assert list(too_long("=SUM(" + "AAA1000000:AAA1000001," * 9 + "A1)")) == ["206 characters"]
    assert list(too_long('="' + "x" * 251 + '"', text=True)) != []
    assert list(too_long('="' + "x" * 200 + '"&A1', text=True)) == []
    assert inside_guard('=IF(E$5=2,A1+IF(B1>2,1,2),"–")') == "=A1+IF(B1>2,1,2)"
    assert inside_guard('=IF(AND(H1=1,H2=1),A1,"–")') == "=A1"
    assert inside_guard('=IF(E$5>2,A1,"–")') == '=IF(E$5>2,A1,"–")'


def test_what_is_told_names_row_and_cure_once():
    same = [Finding("W03", "Parts", f"{c}26", "typed", "Work it out.", "Width") for c in "EFG"]
    other = Finding("X06", "docProps/core.xml", "", "a path", "Take it out.")
    assert told([*same, other]) == [
        "  W03 Parts!E26 (Width): typed  (and 2 more in the row)", "       mend: Work it out.",
        "  X06 docProps/core.xml: a path", "       mend: Take it out."]


def test_the_folder_of_outputs_was_read():
    assert len(OUTPUTS) >= 4 and all(isinstance(p, Path) for p in OUTPUTS)
