"""The command line: what it writes where, what it says, and that a failure leaves no trace."""

from __future__ import annotations

import os
import re
import subprocess
import sys
import zipfile
from types import ModuleType

import openpyxl
import pytest

from builder import cli
from builder.cli import main
from builder.language import Faults
from builder.workbook import writer
from tests.resolve.tiny import Tiny

JOB = """title = "{name}"
about = "Invented."
created = 2026-01-15
[job]
job_name = "{name}"
use = "private"
load = {load}
idle = 0
[[section]]
model = "large"
count = 2
length = 10
"""


@pytest.fixture(scope="module")
def tiny():
    return Tiny().model


@pytest.fixture
def place(tmp_path, monkeypatch, tiny):
    """A folder with two jobs of the tiny workbook, in place of the project's own."""
    # The trade's own sheets stay out: the command line takes whatever book there is.
    book = ModuleType("builder.sheets.book")
    book.model = lambda: tiny
    monkeypatch.setitem(sys.modules, "builder.sheets.book", book)
    monkeypatch.setattr(cli, "JOBS", tmp_path / "jobs")
    monkeypatch.setattr(cli, "OUTPUTS", tmp_path / "out")
    (tmp_path / "jobs").mkdir()
    put(tmp_path, "pier")
    put(tmp_path, "bridge", load=60)
    monkeypatch.chdir(tmp_path)
    return tmp_path


def put(place, name, load=20):
    path = place / "jobs" / f"{name}.toml"
    path.write_text(JOB.format(name=name, load=load))
    return path


def written(place):
    """Return every workbook, or part of one, under a folder."""
    return sorted(str(p.relative_to(place)) for p in place.rglob("*")
                  if p.is_file() and p.suffix != ".toml")


def test_without_arguments_every_job_is_written_into_the_outputs(place, capsys):
    assert main([]) == 0
    assert written(place) == ["out/bridge.xlsx", "out/pier.xlsx"]
    out = capsys.readouterr()
    assert out.err == ""
    lines = out.out.splitlines()
    assert len(lines) == 2
    assert re.fullmatch(r"bridge\.xlsx +[\d,]+ formulas +whole job: NOT OK", lines[0])
    assert re.fullmatch(r"pier\.xlsx +[\d,]+ formulas +whole job: OK", lines[1])


def test_each_workbook_is_that_of_its_job(place):
    main(["-q"])
    for name in ("pier", "bridge"):
        book = openpyxl.load_workbook(place / "out" / f"{name}.xlsx", data_only=True)
        found = {cell.value for row in book["Inputs"].iter_rows() for cell in row}
        assert name in found
        assert book["Checks"]["B2"].value == {"pier": "OK", "bridge": "NOT OK"}[name]


def test_one_job_goes_to_the_outputs(place):
    assert main([str(place / "jobs" / "pier.toml")]) == 0
    assert written(place) == ["out/pier.xlsx"]


@pytest.mark.parametrize(("output", "file"), [
    ("mine.xlsx", "mine.xlsx"), ("new/deep/mine.xlsx", "new/deep/mine.xlsx"),
    ("MINE.XLSX", "MINE.XLSX"), ("folder", "folder/pier.xlsx"), ("a/b", "a/b/pier.xlsx"),
    (".", "pier.xlsx"), ("v1.2", "v1.2/pier.xlsx")])
def test_one_job_goes_to_the_chosen_file_or_folder(place, output, file):
    assert main(["jobs/pier.toml", "-o", output, "-q"]) == 0
    assert written(place) == [file]


def test_a_folder_that_is_called_like_a_workbook_is_a_folder(place):
    (place / "odd.xlsx").mkdir()
    assert main(["jobs/pier.toml", "-o", "odd.xlsx"]) == 0
    assert written(place) == ["odd.xlsx/pier.xlsx"]


def test_all_jobs_go_to_the_chosen_folder(place):
    assert main(["--output", "all"]) == 0
    assert written(place) == ["all/bridge.xlsx", "all/pier.xlsx"]


def test_all_jobs_into_one_workbook_is_refused(place, capsys):
    with pytest.raises(SystemExit) as ended:
        main(["-o", "all.xlsx"])
    assert ended.value.code == 2
    assert "all.xlsx is one workbook; name a job file too" in capsys.readouterr().err
    assert written(place) == []


def test_quiet_says_nothing(place, capsys):
    assert main(["-q"]) == 0
    assert capsys.readouterr() == ("", "")


def test_a_bad_file_among_good_ones_writes_nothing_and_tells_all(place, capsys):
    put(place, "abutment", load=5000)
    put(place, "zigzag", load="many")
    (place / "jobs" / "broken.toml").write_text("title = \n")
    assert main([]) == 1
    out = capsys.readouterr()
    assert out.out == ""
    lines = out.err.splitlines()
    assert lines[0] == "3 faults, nothing written:"
    assert [re.match(r"  (\w+)\.toml", line)[1] for line in lines[1:]] == [
        "abutment", "broken", "zigzag"]
    assert "abutment.toml, [job], load: given 5000; allowed is 10 to 100 psf" in lines[1]
    assert written(place) == []


def test_one_fault_is_told_as_one(place, capsys):
    put(place, "pier", load=5000)
    assert main(["jobs/pier.toml"]) == 1
    assert capsys.readouterr().err.startswith("1 fault, nothing written:\n  pier.toml, [job], load")


def test_a_missing_job_file_is_told(place, capsys):
    assert main(["jobs/none.toml"]) == 1
    assert "none.toml: cannot be read: No such file" in capsys.readouterr().err
    assert written(place) == []


def test_no_job_file_at_all_is_told(place, capsys):
    for path in (place / "jobs").iterdir():
        path.unlink()
    assert main([]) == 1
    assert "there is no job file (.toml) in it" in capsys.readouterr().err


def test_the_faults_of_the_declaration_are_told(place, monkeypatch, capsys):
    def broken():
        raise Faults(["Work, 'Area' (work.py line 3): wrong", "Work, 'Load': wrong too"])

    monkeypatch.setattr(sys.modules["builder.sheets.book"], "model", broken)
    assert main([]) == 1
    assert capsys.readouterr().err.splitlines() == [
        "2 faults, nothing written:", "  Work, 'Area' (work.py line 3): wrong",
        "  Work, 'Load': wrong too"]
    assert written(place) == []


def test_a_workbook_is_written_over_in_one_step(place):
    target = place / "out" / "pier.xlsx"
    assert main(["jobs/pier.toml"]) == 0
    first = target.read_bytes()
    put(place, "pier", load=90)
    assert main(["jobs/pier.toml"]) == 0
    assert target.read_bytes() != first
    put(place, "pier")
    assert main(["jobs/pier.toml"]) == 0
    assert target.read_bytes() == first
    assert written(place) == ["out/pier.xlsx"]


@pytest.mark.parametrize("step", ["replace", "fsync"])
def test_a_failure_while_writing_leaves_the_old_workbook(place, monkeypatch, capsys, step):
    assert main(["jobs/pier.toml", "-q"]) == 0
    target = place / "out" / "pier.xlsx"
    first = target.read_bytes()
    put(place, "pier", load=90)

    def full(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(writer.os, step, full)
    assert main(["jobs/pier.toml"]) == 1
    monkeypatch.undo()
    assert "cannot write: No space left on device" in capsys.readouterr().err
    assert target.read_bytes() == first
    assert written(place) == ["out/pier.xlsx"]


def test_a_folder_that_cannot_be_made_is_told(place, capsys):
    (place / "taken").write_text("a file")
    assert main(["jobs/pier.toml", "-o", "taken"]) == 1
    assert re.search(r"cannot write .*taken.*: File exists", capsys.readouterr().err)
    assert (place / "taken").read_text() == "a file"


def test_an_interrupted_run_leaves_whole_workbooks_only(place, monkeypatch):
    real = writer.to_bytes

    def stopped(book, values, *more):
        if book.subject == "pier":
            raise KeyboardInterrupt
        return real(book, values, *more)

    monkeypatch.setattr(writer, "to_bytes", stopped)
    with pytest.raises(KeyboardInterrupt):
        main(["-q"])
    assert written(place) == ["out/bridge.xlsx"]


def run(*arguments):
    return subprocess.run([sys.executable, "-m", "builder", *arguments], text=True,
                          capture_output=True, check=False, cwd=cli.ROOT,
                          env={**os.environ, "COLUMNS": "90"})


def test_the_help_says_what_it_does_and_every_option():
    ended = run("--help")
    assert ended.returncode == 0
    assert ended.stderr == ""
    for words in ("usage: python -m builder", "-o", "--output", "-q", "--quiet", "-h", "--help",
                  "timber-framed floating", "templates/jobs", "outputs", "Nothing is written"):
        assert words in ended.stdout


@pytest.mark.parametrize("arguments", [("--nonsense",), ("a.toml", "b.toml"), ("-o",)])
def test_a_wrong_command_line_ends_with_2_and_the_usage(arguments):
    ended = run(*arguments)
    assert ended.returncode == 2
    assert ended.stderr.startswith("usage: python -m builder")
    assert ended.stdout == ""


def test_the_exit_code_is_that_of_the_command_line(tmp_path):
    missing = tmp_path / "none.toml"
    script = ("import sys, types; import builder.cli as c; b = types.ModuleType('b'); "
              "b.model = lambda: types.SimpleNamespace(job_inputs=list, "
              "section_inputs=list, editable=[]); "
              "sys.modules['builder.sheets.book'] = b; "
              f"sys.argv = ['builder', {str(missing)!r}]; import runpy; "
              "runpy.run_module('builder', run_name='__main__')")
    ended = subprocess.run([sys.executable, "-c", script], text=True, capture_output=True,
                           check=False, cwd=cli.ROOT)
    assert ended.returncode == 1
    assert "none.toml: cannot be read" in ended.stderr


def unread(command, tmp_path, unbuffered=""):
    """Run a command whose printed lines nobody reads; return its code and what it complains."""
    env = {**os.environ, "PYTHONUNBUFFERED": unbuffered}
    ours, theirs = os.pipe()
    os.close(ours)
    with (tmp_path / "told").open("w+") as told:
        code = subprocess.run(command, stdout=theirs, stderr=told, check=False, env=env,
                              cwd=cli.ROOT).returncode
        os.close(theirs)
        told.seek(0)
        return code, told.read()


def test_lines_that_nobody_reads_end_it_quietly(tmp_path):
    """As in ``python -m builder check FILE | head``: no traceback, in the middle or at the end."""
    assert unread([sys.executable, "-m", "builder", "--help"], tmp_path) == (cli.UNREAD, "")
    script = ("import sys, types; c = types.ModuleType('c'); "
              "c.command = lambda paths: [print(n) for n in range({0})]; "
              "sys.modules['builder.rules.checking'] = c; "
              "sys.argv = ['builder', 'check', 'a.xlsx']; import runpy; "
              "runpy.run_module('builder', run_name='__main__')")
    for lines, unbuffered in ((1, ""), (1, "1"), (100000, "")):
        command = [sys.executable, "-c", script.format(lines)]
        assert unread(command, tmp_path, unbuffered) == (cli.UNREAD, "")


def test_a_workbook_written_unread_ends_quietly_too(tmp_path, monkeypatch):
    monkeypatch.setattr(cli, "_work", lambda given: [(None, tmp_path)])

    def write(*_):
        raise BrokenPipeError

    monkeypatch.setattr(cli, "_write", write)
    with (tmp_path / "out").open("w") as out:
        monkeypatch.setattr(sys, "stdout", out)
        assert main([]) == cli.UNREAD


# ------------------------------------------------------------------ check


DELIVERED = cli.ROOT / "outputs" / "swim_platform.xlsx"


def spoilt(target, old, fresh, part="xl/workbook.xml"):
    """Copy a delivered workbook with one text of a part changed."""
    with zipfile.ZipFile(DELIVERED) as held, zipfile.ZipFile(target, "w") as made:
        for one in held.infolist():
            content = held.read(one)
            if one.filename == part:
                assert old in content
                content = content.replace(old, fresh, 1)
            made.writestr(one, content)
    return target


@pytest.mark.outputs
def test_check_finds_nothing_that_stands_in_a_delivered_workbook(capsys):
    assert main(["check", str(DELIVERED)]) == 0
    out = capsys.readouterr()
    assert out.err == ""
    assert re.fullmatch(r"swim_platform\.xlsx: 0 findings, [1-9]\d* waived with a reason; "
                        r"65 rules checked, 3 not by program\n", out.out)


@pytest.mark.outputs
def test_check_says_rule_sheet_and_cure_and_ends_with_1(tmp_path, capsys):
    bad = spoilt(tmp_path / "bad.xlsx", b'name="Terms"', b'name="Terms" state="hidden"')
    assert main(["check", str(bad)]) == 1
    lines = capsys.readouterr().out.splitlines()
    at = lines.index("  W05 Terms: the sheet is hidden")
    assert lines[at + 1].strip() == "mend: Show it."
    # The link to it on Start leads nowhere now.
    assert {line.split()[0] for line in lines[:-1:2]} == {"A06", "W05"}
    assert lines[-1].startswith("bad.xlsx: 2 findings")


def test_check_of_a_file_that_is_no_workbook_is_told(tmp_path, capsys):
    (tmp_path / "note.xlsx").write_text("words")
    with zipfile.ZipFile(tmp_path / "other.xlsx", "w") as made:
        made.writestr("letter.txt", "words")
    names = ["note.xlsx", "other.xlsx", "none.xlsx"]
    assert main(["check", *(str(tmp_path / name) for name in names)]) == 1
    lines = capsys.readouterr().err.splitlines()
    assert lines[0].startswith("note.xlsx: cannot be checked: it is no zip file")
    assert lines[1].startswith("other.xlsx: cannot be checked: a part or mark is missing")
    assert lines[2].endswith("none.xlsx: cannot be read: No such file or directory")


def test_check_without_openpyxl_is_told(monkeypatch, capsys):
    for name in [n for n in sys.modules if n.startswith(("openpyxl", "builder.rules"))]:
        monkeypatch.delitem(sys.modules, name)
    monkeypatch.setitem(sys.modules, "openpyxl", None)
    monkeypatch.setitem(sys.modules, "openpyxl.formula", None)
    assert main(["check", str(DELIVERED)]) == 1
    assert "openpyxl is not installed" in capsys.readouterr().err


def test_check_wants_a_file_and_has_help_of_its_own():
    assert run("check").returncode == 2
    ended = run("check", "--help")
    assert ended.returncode == 0 and "usage: python -m builder check" in ended.stdout
    assert "python -m builder check" in " ".join(run("--help").stdout.split())
