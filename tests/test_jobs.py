"""Job files: a good one is read whole, a bad one tells every fault at once and gives nothing."""

from __future__ import annotations

from datetime import datetime

import openpyxl
import pytest

from builder.engine.ironcalc_engine import evaluate
from builder.jobs import Job, read_job
from builder.language import Ask, Faults, Table
from builder.language.units import TEXT
from builder.workbook import write
from tests.resolve.tiny import SECTION, Tiny

WATERS = Table("waters", "Waters", "own", "water", {}, ["fresh", "sea"], [(), ()])
FLOATS = Table("floats", "Floats", "own", "float", {"depth": "in", "price": "$", "kind": TEXT},
               ["Box 4 x 4", "Box 4 x 6"], [(16, 100, "a"), (20, 150.5, "b")])
FLOATS.editable(depth=(6, 40), price=(0, 1000))


def ask(key, **settings):
    row = Ask(None, key.capitalize(), "", settings.pop("unit", ""), **settings)
    row.key = key
    return row


JOB = [ask("site", free=True, most=20, unit=TEXT), ask("water", choices=WATERS, unit=TEXT),
       ask("load", least=10, most=100, unit="psf"), ask("share", least=0.05, most=0.45),
       ask("low", least=-3, most=8, unit="ft")]
SECTION_INPUTS = [ask("length", least=4, most=60, unit="ft"),
                  ask("rows", least=1, most=6, whole=True, unit="each"),
                  *[ask(f"item_x_{k}", least=-30, most=30, unit="ft") for k in (1, 2, 3, 4)],
                  *[ask(f"item_name_{k}", free=True, most=9, unit=TEXT) for k in (1, 2, 3, 4)]]
HEAD = 'title = "Pier"\nabout = "Invented."\ncreated = 2026-01-15\n'
GOOD = HEAD + """
[job]
site = "Alder Lake"
water = "sea"
load = 40
low = -2.5

[[section]]
length = 20
rows = 2
item_x = [1.5, -3]
item_name = ["bench"]

[[section]]
length = 8.25

[catalog.floats."Box 4 x 6"]
depth = 18
"""


@pytest.fixture
def read(tmp_path):
    """A function that reads a job from text or bytes."""

    def give(text, name="pier.toml"):
        path = tmp_path / name
        path.write_bytes(text if isinstance(text, bytes) else text.encode())
        return read_job(path, JOB, SECTION_INPUTS, [FLOATS])

    return give


@pytest.fixture
def faults(read):
    """A function that returns the faults of a job."""

    def give(text):
        with pytest.raises(Faults) as told:
            read(text)
        return told.value.found

    return give


def test_a_good_job_is_read_whole(read):
    assert read(GOOD) == Job(
        "pier", "Pier", "Invented.", datetime(2026, 1, 15),
        {"site": "Alder Lake", "water": "sea", "load": 40, "low": -2.5},
        ({"length": 20, "rows": 2, "item_x_1": 1.5, "item_x_2": -3, "item_name_1": "bench"},
         {"length": 8.25}),
        {"floats": {"Box 4 x 6": {"depth": 18}}})


def test_a_job_may_leave_out_all_but_its_head(read):
    assert read(HEAD) == Job("pier", "Pier", "Invented.", datetime(2026, 1, 15))


@pytest.mark.parametrize("written", [
    GOOD.encode("utf-8-sig"), GOOD.replace("\n", "\r\n").encode(), (GOOD + "\n# Ende: schön\n")
    .encode()], ids=["byte order mark", "CRLF", "letters past ASCII"])
def test_what_editors_put_into_files_is_read(read, written):
    assert read(written) == read(GOOD)


def test_all_faults_of_a_file_come_at_once(faults):
    text = HEAD.replace('title = "Pier"', "coment = 1") + """
[job]
site = 7
watre = "sea"
water = "river"
load = 400
share = true

[[section]]
length = "twenty"
rows = 2.5
item_x = [1, 31, 0, 0, 5]

[[section]]
lenght = 4

[catalog.flotas."Box 4 x 4"]
depth = 9

[catalog.floats."Box 9 x 9"]
depth = 9

[catalog.floats."Box 4 x 4"]
depth = 99
kind = "b"
colour = 1
"""
    assert faults(text) == [
        "pier.toml: there is no 'coment'; a job file has title, about, created, job, section, "
        "catalog",
        "pier.toml: 'title' is missing",
        "pier.toml, [job], site: given 7; allowed is text in quotes",
        "pier.toml, [job], watre: no such input; did you mean water?",
        "pier.toml, [job], water: given 'river'; allowed is one of: fresh, sea",
        "pier.toml, [job], load: given 400; allowed is 10 to 100 psf",
        "pier.toml, [job], share: given True; allowed is 0.05 to 0.45",
        "pier.toml, [[section]] 1, length: given 'twenty'; allowed is 4 to 60 ft",
        "pier.toml, [[section]] 1, rows: given 2.5; allowed is 1 to 6 each, whole",
        "pier.toml, [[section]] 1, item_x_2: given 31; allowed is -30 to 30 ft",
        "pier.toml, [[section]] 1, item_x_5: no such input; did you mean item_x_4?",
        "pier.toml, [[section]] 2, lenght: no such input; did you mean length?",
        "pier.toml, [catalog.flotas]: no such table; there are floats",
        "pier.toml, [catalog.floats], Box 9 x 9: no such product; there are Box 4 x 4, Box 4 x 6",
        "pier.toml, [catalog.floats], Box 4 x 4, depth: given 99; allowed is 6 to 40",
        "pier.toml, [catalog.floats], Box 4 x 4, kind: no such number; there are depth, price",
        "pier.toml, [catalog.floats], Box 4 x 4, colour: no such number; there are depth, price",
    ]


NO_NUMBER = ["nan", "inf", "-inf", "+inf", "true", "false", '"40"', "[40]", "{a = 1}", "40000",
             "-1", "9.999999", "100.0000001", "1e308", "-1e308", "2026-01-15", "12:30:00",
             "9" * 400]


@pytest.mark.parametrize("given", NO_NUMBER)
def test_what_is_no_number_within_the_limits(faults, given):
    [fault] = faults(f"{HEAD}[job]\nload = {given}\n")
    assert fault.startswith("pier.toml, [job], load: given ")
    assert fault.endswith("; allowed is 10 to 100 psf")
    assert len(fault) < 130


@pytest.mark.parametrize("given", ["10", "100", "10.0", "1e1", "0x20", "4_0"])
def test_a_number_at_or_within_its_limits(read, given):
    assert 10 <= read(f"{HEAD}[job]\nload = {given}\n").inputs["load"] <= 100


@pytest.mark.parametrize("given", ["2", "2.0", "6"])
def test_a_whole_number_may_be_written_with_a_point(read, given):
    assert read(f"{HEAD}[[section]]\nrows = {given}\n").sections[0]["rows"] == float(given)


@pytest.mark.parametrize(("given", "says"), [
    ('"river"', "given 'river'; allowed is one of: fresh, sea"), ("1", "given 1; allowed is one"),
    ('"SEA"', "given 'SEA'; allowed is one of"), ('"s*"', "given 's*'; allowed is one of"),
    ('""', "given ''; allowed is one of"), ("[]", "given []; allowed is one of"),
    ("true", "given True; allowed is one of")])
def test_a_wrong_word_of_a_list(faults, given, says):
    [fault] = faults(f"{HEAD}[job]\nwater = {given}\n")
    assert fault.startswith(f"pier.toml, [job], water: {says}")


@pytest.mark.parametrize(("given", "says"), [
    ('""', "given an empty text; leave the line out instead"),
    ('"  "', "given an empty text; leave the line out instead"),
    ('"' + "x" * 21 + '"', "given 21 letters; allowed is 20"),
    (r'"two\nlines"', r"given 'two\nlines'; allowed are letters on one line"),
    (r'"a bell \u0007"', r"given 'a bell \x07'; allowed are letters on one line"),
    ('"#REF!"', "given '#REF!'; a cell that shows this reads as an error"),
    ('"#n/a"', "given '#n/a'; a cell that shows this reads as an error"),
    ("3.5", "given 3.5; allowed is text in quotes")])
def test_a_wrong_text(faults, given, says):
    assert faults(f"{HEAD}[job]\nsite = {given}\n") == [f"pier.toml, [job], site: {says}"]


@pytest.mark.parametrize(("text", "says"), [
    ("", ["'title' is missing", "'about' is missing", "'created' is missing"]),
    ('title = "Pier"\n', ["'about' is missing", "'created' is missing"]),
    (HEAD.replace('"Pier"', "3"), ["title: given 3; allowed is a text in quotes"]),
    (HEAD.replace("2026-01-15", '"May"'),
     ["created: given 'May'; allowed is a date such as 2026-01-31"]),
    (HEAD + "job = 3\n", ["job: given 3; allowed is a table"]),
    (HEAD + "section = 3\n", ["section: given 3; allowed is a list of [[section]] tables"]),
    (HEAD + 'coment = "x"\n[jobs]\n', ["there is no 'coment'", "there is no 'jobs'"]),
])
def test_a_wrong_head(faults, text, says):
    found = faults(text)
    assert len(found) == len(says)
    assert all(s in f and f.startswith("pier.toml") for s, f in zip(says, found, strict=True))


@pytest.mark.parametrize(("text", "says"), [
    (HEAD + "section = [3]\n", "pier.toml, [[section]] 1: given 3; allowed is a table of inputs"),
    (HEAD.replace('"Pier"', '""'), "pier.toml, title: given an empty text"),
    (HEAD.replace("Pier", "x" * 111), "pier.toml, title: given 111 letters; allowed is 110"),
    (HEAD.replace("Invented.", r"a\nb"), "pier.toml, about: given "),
    (HEAD.replace("2026", "0001"), "created: given 0001-01-15; allowed is a date from 1980 to"),
    (HEAD + "[catalog]\nfloats = 3\n", "[catalog.floats]: given 3; allowed is a table of products"),
    (HEAD + '[catalog.floats]\n"Box 4 x 4" = 3\n', "given 3; allowed is a table of numbers"),
    (HEAD + '[catalog."a\\nb"]\n', r"[catalog.a\nb]: no such table"),
    (HEAD + "[[section]]\nitem_x_1 = 1\nitem_x = [2]\n", "item_x_1: is given twice"),
    (HEAD + "[[section]]\n" * 7, "pier.toml: 7 [[section]] tables; allowed is 6"),
])
def test_another_wrong_part(faults, text, says):
    found = faults(text)
    assert len(found) == 1
    assert says in found[0]


@pytest.mark.parametrize(("text", "line"), [
    (HEAD + "[job]\nload 40\n", 5), (HEAD + "[job]\nload = \n", 5), (HEAD + "[job\n", 4),
    (HEAD + "[job]\nload = 1\nload = 2\n", 6), ('title = "Pier\n', 1),
    (HEAD + '[job]\nsite = "C:\\docks"\n', 5)])
def test_broken_toml_names_the_line(faults, text, line):
    [fault] = faults(text)
    assert fault.startswith("pier.toml: ")
    assert f"(at line {line}, column " in fault
    assert fault.endswith("; a line reads: name = value")


def test_a_file_that_is_not_utf8_names_the_byte(faults):
    assert faults(HEAD.encode() + 'site = "Bürger"\n'.encode("latin-1")) == [
        f"pier.toml: byte {len(HEAD) + 9} is not UTF-8; save the file as UTF-8"]


def test_a_workbook_in_place_of_a_job_file(faults):
    assert len(faults(b"PK\x03\x04\x14\x00\xff\xfe" * 20)) == 1


@pytest.mark.parametrize("text", [
    HEAD + '[job]\nsite = "' + "x" * 10_000_000 + '"\n', HEAD + "#" * 300_000])
def test_a_file_far_too_large_is_refused_unread(faults, text):
    assert faults(text) == [f"pier.toml: {len(text):,} bytes; allowed is 200,000"]


@pytest.mark.parametrize("text", [
    HEAD + "[job]\nload = " + "9" * 5000, HEAD + "[job]\nload = " + "[" * 90_000])
def test_what_the_toml_reader_gives_up_on_is_told(faults, text):
    assert faults(text) == [
        "pier.toml: a number is too long or lists are too deep to be read"]


def test_a_long_value_is_shown_cut(faults):
    [fault] = faults(f'{HEAD}[job]\nload = "{"x" * 5000}"\n')
    assert "xxx…; allowed is 10 to 100 psf" in fault
    assert len(fault) < 130


def test_a_missing_file_and_a_folder_are_told(tmp_path):
    for path, says in ((tmp_path / "none.toml", "No such file"), (tmp_path, "directory")):
        with pytest.raises(Faults, match=f"cannot be read: .*{says}"):
            read_job(path, JOB, SECTION_INPUTS, [FLOATS])


FORMULAS = ["=1+1", "+cmd|' /C calc'!A0", "-2+3", "@SUM(A1)", "=cmd|'/C calc'!'A1'", "=1/0",
            '=HYPERLINK("x","y")', '=DDE("a";"b")', "'=1+1", "5", "1e5", "TRUE", "{=1+1}",
            "http://a.example", "mailto:a@b.example", "<b>&amp;</b>", "2026-01-15"]


@pytest.fixture(scope="module")
def tiny():
    return Tiny()


@pytest.mark.parametrize("text", FORMULAS)
def test_text_that_looks_like_a_formula_stays_text_in_the_file(tmp_path, tiny, text):
    job = tmp_path / "job.toml"
    job.write_text(f"{HEAD}[job]\njob_name = '''{text}'''\nrevision = '''{text}'''\n"
                   f"[[section]]\nnote = '''{text[:20]}'''\nmodel = '{SECTION['model']}'\n")
    given = read_job(job, tiny.model.job_inputs(), tiny.model.section_inputs(),
                     tiny.model.editable)
    book = tiny.model.book(given)
    target = tmp_path / "job.xlsx"
    write(book, evaluate(book), target)
    file = openpyxl.load_workbook(target)
    for name, row, shown in (("Inputs", tiny.m.job.job_name, text),
                             ("Inputs", tiny.m.job.revision, text),
                             ("Sections", tiny.m.sec.note, text[:20])):
        _, y, x = tiny.typed(row)
        cell = file[name].cell(y + 1, x + 1)
        assert (cell.data_type, cell.value, cell.hyperlink) == ("s", shown, None)
    stored = openpyxl.load_workbook(target, data_only=True)
    _, y, x = tiny.model.places.rows[tiny.m.job.job_name]
    assert stored["Inputs"].cell(y + 1, x + 1).value == text
