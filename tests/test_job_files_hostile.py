"""Job files that are hostile, broken or made at random: told in short, nothing written.

What looks like a formula stays words in every text of a job, in the file and in another program.
"""

from __future__ import annotations

import dataclasses
import datetime
import os
import tomllib
from functools import cache

import hypothesis.strategies as st
import openpyxl
import pytest
from hypothesis import HealthCheck, given, settings

from builder import cli
from builder.engine import libreoffice
from builder.engine.ironcalc_engine import evaluate
from builder.engine.values import a1
from builder.jobs import read_job
from builder.language import Faults
from builder.sheets.book import model
from builder.workbook import write

WALKWAY = cli.JOBS / "walkway_t_head.toml"
HEAD = b'title = "Pier"\nabout = "Invented."\ncreated = 2026-01-15\n'
LONGEST = 1000
"""Letters of a fault, at most: the longest names the words of the longest list."""
FORMULAS = ("=1+1", "+1", "-1", "@SUM(A1)", "=cmd|'/C calc'!A0", "=DDE(\"a\";\"b\";\"c\")",
            "=HYPERLINK(\"x\",\"y\")", "=1/0", "\uff1d1+1", "\uff0b1", "\uff20SUM(A1)", "'=1+1",
            "{=1+1}", "=WEBSERVICE(A1)", "1e5", "TRUE", "2026-01-15", "25%", "http://a.example")
LED = ("\t=1+1", "\r=1+1", "\n=1+1", "\0=1+1", "\u2028=1+1", "\x1b[31m=1+1")
"""What no text of one line may begin with."""


def read(path):
    m = model()
    return read_job(path, m.job_inputs(), m.section_inputs(), m.editable)


def faults_of(path):
    with pytest.raises(Faults) as told:
        read(path)
    assert told.value.found
    for fault in told.value.found:
        assert len(fault) <= LONGEST, fault[:200]
        assert fault.isprintable(), fault
        assert path.name in fault
    return told.value.found


def texts():
    """Return the texts of a job: of the whole job, and of a section type."""
    m = model()
    return ([r for r in m.job_inputs() if r.free], [r for r in m.section_inputs() if r.free])


# ------------------------------------------------------------------ formulas in texts


@cache
def filled():
    """Return a job with a formula in every text, which one in each, and what stands where."""
    job, section = texts()
    job_inputs, expected, number = {}, {}, 0
    held = read(WALKWAY)
    sections = [dict(s) for s in held.sections]
    m = model()
    for row in job:
        text = FORMULAS[number % len(FORMULAS)][:int(row.most)]
        number += 1
        job_inputs[row.key] = text
        expected[m.typing.typed[row]] = text
    for k, one in enumerate(sections):
        for row in section:
            text = FORMULAS[number % len(FORMULAS)][:int(row.most)]
            number += 1
            one[row.key] = text
            sheet, y, x = m.typing.typed[row]
            expected[sheet, y, x + k] = text
    made = dataclasses.replace(held, title="=1+1", about="@SUM(A1)",
                               inputs=held.inputs | job_inputs, sections=tuple(sections))
    return made, expected


def toml_of(job):
    """Return a job as a job file."""
    def value(v):
        if not isinstance(v, str):
            return repr(v)
        return '"' + "".join(c if c.isprintable() and c not in '"\\' else f"\\u{ord(c):04x}"
                             for c in v) + '"'

    def lines(inputs):
        return [f"{key} = {value(v)}" for key, v in inputs.items()]

    made = [f"title = {value(job.title)}", f"about = {value(job.about)}",
            f"created = {job.created.date()}", "[job]", *lines(job.inputs)]
    for one in job.sections:
        made += ["[[section]]", *lines(one)]
    return "\n".join(made) + "\n"


@pytest.fixture(scope="module")
def written(tmp_path_factory):
    folder = tmp_path_factory.mktemp("formulas")
    path = folder / "formulas.toml"
    path.write_text(toml_of(filled()[0]), encoding="utf-8")
    target = folder / "formulas.xlsx"
    book = model().book(read(path))
    values = evaluate(book, names=False)
    write(book, values, target)
    return path, target, values


def test_every_text_takes_a_formula_and_every_formula_is_in_a_text():
    _, expected = filled()
    job, section = texts()
    assert len(expected) == len(job) + len(section) * len(read(WALKWAY).sections) > 40
    assert set(expected.values()) >= {f for f in FORMULAS if len(f) <= 20}


def test_a_formula_in_a_job_file_is_read_as_words(written):
    job, _ = filled()
    found = read(written[0])
    assert (found.title, found.about) == ("=1+1", "@SUM(A1)")
    assert found.inputs == job.inputs and found.sections == job.sections


def test_a_formula_in_a_text_stays_words_in_the_file(written):
    _, target, values = written
    file = openpyxl.load_workbook(target)
    wrong = []
    for (sheet, row, col), text in filled()[1].items():
        cell = file[sheet].cell(row + 1, col + 1)
        if (cell.data_type, cell.value, cell.hyperlink) != ("s", text, None):
            wrong.append(f"{sheet}!{a1(row, col)}: {cell.data_type} {cell.value!r}")
    assert wrong == []
    assert file.properties.subject == "=1+1"
    abouts = [c for row in file["Start"].iter_rows() for c in row if c.value == "@SUM(A1)"]
    assert [c.data_type for c in abouts] == ["s"]
    assert not [v for v in values.values() if isinstance(v, str) and v.startswith("#")]


@pytest.mark.needs("soffice")
def test_a_formula_in_a_text_reads_the_same_in_another_program(written, tmp_path):
    """The cells that show the texts are worked out anew there."""
    _, target, values = written
    found = libreoffice.evaluate_files([target], tmp_path)[target]
    m, expected = model(), filled()[1]
    shown = 0
    for row in [*texts()[0], *texts()[1]]:
        sheet, y, x = m.typing.typed[row]
        used_sheet, used_y, used_x = m.places.rows[row]
        for k in range(6):
            if (sheet, y, x + k) in expected:
                text = expected[sheet, y, x + k]
                assert found[used_sheet, used_y, used_x + k] == text
                shown += 1
    assert shown == len(expected)
    assert {p: v for p, v in found.items() if isinstance(v, str)} == {
        p: v for p, v in values.items() if isinstance(v, str)}


@pytest.mark.parametrize("text", LED)
def test_a_formula_behind_a_tab_or_a_new_line_is_refused_in_every_text(tmp_path, text):
    job, section = texts()
    led = dataclasses.replace(read(WALKWAY), title=text, about=text,
                              inputs={r.key: text for r in job},
                              sections=({r.key: text for r in section},))
    path = tmp_path / "led.toml"
    path.write_text(toml_of(led), encoding="utf-8")
    found = faults_of(path)
    assert len(found) == 2 + len(job) + len(section)
    assert all("allowed are letters on one line" in fault or "letters; allowed is" in fault
               for fault in found)


# ------------------------------------------------------------------ broken files


NOT_READ = {
    "latin-1": HEAD + 'x = "Bürger"'.encode("latin-1"),
    "UTF-16 with its mark": HEAD.decode().encode("utf-16"),
    "UTF-16 without": HEAD.decode().encode("utf-16-le"),
    "UTF-32": HEAD.decode().encode("utf-32"),
    "NUL bytes": HEAD + b"x = 1\0\0\0",
    "only NUL bytes": b"\0" * 1000,
    "two marks": b"\xef\xbb\xbf\xef\xbb\xbf" + HEAD,
    "half a letter": HEAD + b'x = "\xc3"',
    "empty": b"",
    "blanks": b" \n\t\n",
    "10 MB text": HEAD + b'[job]\nsite = "' + b"x" * 10_000_000 + b'"\n',
    "10 MB key": b"x" * 10_000_000 + b" = 1\n",
    "long text": HEAD + b'[job]\nsite = "' + b"x" * 150_000 + b'"\n',
    "long key": HEAD + b"[job]\n" + b"x" * 150_000 + b" = 1\n",
    "long key at the head": HEAD + b"x" * 150_000 + b" = 1\n",
    "long table": HEAD + b"[catalog." + b"x" * 150_000 + b"]\n",
    "long product": HEAD + b"[catalog.floats." + b"x" * 150_000 + b"]\na = 1\n",
    "long list": HEAD + b"[job]\nsite = [" + b"1," * 60_000 + b"]\n",
    "long number": HEAD + b"[job]\nwind = " + b"9" * 4000 + b"\n",
    "longer number": HEAD + b"[job]\nwind = " + b"9" * 90_000 + b"\n",
    "deep list": HEAD + b"[job]\nsite = " + b"[" * 90_000,
    "deep table": HEAD + b"[job." + b"a." * 10_000 + b"a]\n",
    "a table for a value": HEAD + b"[job.site.deeper]\na = 1\n",
    "twice": HEAD + b"[job]\n[job]\n",
    "key twice": HEAD + b'title = "Again"\n',
    "escape codes": HEAD + b'"\\u001b[31mred" = 1\n',
    "key of two lines": HEAD + b'[job]\n"a\\nb" = 1\n[section]\n',
    "an unclosed text": HEAD + b'[job]\nsite = """' + b"x" * 100_000,
    "a control letter": HEAD + b'[job]\nsite = "\x07"\n',
    "a workbook": b"PK\x03\x04\x14\x00\x06\x00" * 50,
    "a picture": b"\x89PNG\r\n\x1a\n" * 50,
}


@pytest.mark.parametrize("content", NOT_READ.values(), ids=NOT_READ.keys())
def test_a_broken_file_is_told_in_short(tmp_path, content):
    path = tmp_path / "broken.toml"
    path.write_bytes(content)
    faults_of(path)


def test_a_folder_a_pipe_and_a_file_that_may_not_be_read_are_told(tmp_path, monkeypatch):
    (tmp_path / "folder.toml").mkdir()
    assert "cannot be read" in faults_of(tmp_path / "folder.toml")[0]
    assert "cannot be read" in faults_of(tmp_path / "none.toml")[0]
    (tmp_path / "loop.toml").symlink_to(tmp_path / "loop.toml")
    assert "cannot be read" in faults_of(tmp_path / "loop.toml")[0]
    os.mkfifo(tmp_path / "pipe.toml")
    assert "cannot be read" in faults_of(tmp_path / "pipe.toml")[0]
    path = tmp_path / "locked.toml"
    path.write_bytes(HEAD)

    def refuse(self):
        raise PermissionError(13, "Permission denied", str(self))

    # The mode of the file would not stop a run by the administrator.
    monkeypatch.setattr(type(path), "read_bytes", refuse)
    assert "Permission denied" in faults_of(path)[0]


@pytest.mark.parametrize("name", ["latin-1", "UTF-16 with its mark", "NUL bytes", "empty",
                                  "10 MB text", "long key", "deep list", "escape codes"])
def test_a_broken_file_writes_nothing_and_keeps_the_old_workbook(tmp_path, capsys, name):
    path, old = tmp_path / "pier.toml", tmp_path / "pier.xlsx"
    path.write_bytes(NOT_READ[name])
    old.write_bytes(b"the old one")
    assert cli.main([str(path), "-o", str(old)]) == 1
    told = capsys.readouterr()
    assert told.out == "" and "nothing written" in told.err and "Traceback" not in told.err
    assert len(told.err) < 3 * LONGEST
    assert old.read_bytes() == b"the old one"
    assert sorted(p.name for p in tmp_path.iterdir()) == ["pier.toml", "pier.xlsx"]


# ------------------------------------------------------------------ made at random

VALUES = st.recursive(
    st.one_of(st.integers(), st.floats(), st.booleans(), st.text(max_size=30),
              st.dates(min_value=datetime.date(1, 1, 1)), st.times(),
              st.sampled_from([*FORMULAS, *LED])),
    lambda inner: st.one_of(st.lists(inner, max_size=5),
                            st.dictionaries(st.text(max_size=8), inner, max_size=3)), max_leaves=6)


def written_value(value):
    """Return a value in the words of a job file; None where there are none for it."""
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, str):
        return '"' + "".join(
            c if c.isalnum() and c.isascii() else f"\\U{ord(c):08x}" for c in value) + '"'
    if isinstance(value, list):
        return "[" + ", ".join(map(written_value, value)) + "]"
    if isinstance(value, dict):
        return "{" + ", ".join(f"{written_value(k)} = {written_value(v)}"
                               for k, v in value.items()) + "}"
    if isinstance(value, datetime.date | datetime.time):
        return value.isoformat()
    return repr(value)


@st.composite
def job_files(draw):
    """A job file of known and unknown keys with values of any kind."""
    m = model()
    def some_of(rows):
        keys = st.one_of(st.sampled_from([r.key for r in rows]), st.text(max_size=10))
        return draw(st.dictionaries(keys, VALUES, max_size=6))

    lines = [f"{written_value(k)} = {written_value(v)}" for k, v in draw(
        st.dictionaries(st.sampled_from(["title", "about", "created", "coment"]), VALUES)).items()]
    lines += ["[job]", *(f"{written_value(k)} = {written_value(v)}"
                         for k, v in some_of(m.job_inputs()).items())]
    for _ in range(draw(st.integers(0, 3))):
        lines += ["[[section]]", *(f"{written_value(k)} = {written_value(v)}"
                                   for k, v in some_of(m.section_inputs()).items())]
    table = draw(st.sampled_from(m.editable))
    key, column = draw(st.sampled_from(table.keys)), draw(st.sampled_from(sorted(table.allowed)))
    lines += [f"[catalog.{written_value(table.name)}.{written_value(key)}]",
              f"{written_value(column)} = {written_value(draw(VALUES))}"]
    return "\n".join(lines) + "\n"


QUICK = settings(max_examples=60, deadline=None, derandomize=True,
                 suppress_health_check=list(HealthCheck))


@QUICK
@given(job_files())
def test_a_job_file_made_at_random_is_read_or_told(tmp_path_factory, text):
    path = tmp_path_factory.getbasetemp() / "random.toml"
    path.write_bytes(text.encode("utf-8", "surrogatepass"))
    try:
        read(path)
    except Faults:
        faults_of(path)


@QUICK
@given(st.binary(max_size=400))
def test_any_bytes_are_told(tmp_path_factory, content):
    path = tmp_path_factory.getbasetemp() / "bytes.toml"
    path.write_bytes(content)
    faults_of(path)


@QUICK
@given(st.integers(0, 10**6), st.binary(min_size=1, max_size=3))
def test_a_good_file_with_some_bytes_changed_is_read_or_told(tmp_path_factory, at, fresh):
    good = WALKWAY.read_bytes()
    at %= len(good)
    path = tmp_path_factory.getbasetemp() / "changed.toml"
    path.write_bytes(good[:at] + fresh + good[at + len(fresh):])
    try:
        read(path)
    except Faults:
        faults_of(path)


def test_the_job_file_with_formulas_is_one_that_the_reader_of_toml_takes(written):
    assert tomllib.loads(written[0].read_text(encoding="utf-8"))["title"] == "=1+1"
