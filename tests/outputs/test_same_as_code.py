"""The delivered workbooks are what the code writes for the starting jobs, to the byte."""

from __future__ import annotations

import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

from builder import cli
from tests.outputs.reading import OUTPUTS, ROOT

pytestmark = pytest.mark.outputs
JOBS = sorted((ROOT / "templates" / "jobs").glob("*.toml"))


def unlike(one: Path, other: Path) -> list[str]:
    """Return a line for each part of two workbook files that differs, with the first letters."""
    with zipfile.ZipFile(one) as a, zipfile.ZipFile(other) as b:
        names = list(dict.fromkeys([*a.namelist(), *b.namelist()]))
        found = []
        for name in names:
            if name not in a.namelist() or name not in b.namelist():
                found.append(f"{name}: only in one of the two")
                continue
            left, right = a.read(name).decode(), b.read(name).decode()
            if left != right:
                at = next((k for k, (x, y) in enumerate(zip(left, right, strict=False)) if x != y),
                          min(len(left), len(right)))
                low = max(at - 60, 0)
                found.append(f"{name}, letter {at}: delivered …{left[low:at + 60]}… "
                             f"against …{right[low:at + 60]}…")
        return found


@pytest.fixture(scope="module")
def written(tmp_path_factory):
    """What the code writes in this process."""
    folder = tmp_path_factory.mktemp("written")
    assert cli.main(["-q", "-o", str(folder)]) == 0
    return folder


@pytest.fixture(scope="module")
def written_elsewhere(tmp_path_factory):
    """What the code writes in a process of its own: other hashes, clock, place and language."""
    folder = tmp_path_factory.mktemp("elsewhere")
    around = {**os.environ, "PYTHONHASHSEED": "4242", "TZ": "Pacific/Auckland", "LC_ALL": "C",
              "PYTHONPATH": str(ROOT)}
    command = [sys.executable, "-m", "builder", "-q", "-o", str(folder)]
    subprocess.run(command, check=True, cwd=folder, env=around)
    return folder


def test_one_workbook_for_each_starting_job_and_no_other_file():
    kept = sorted(p.name for p in (ROOT / "outputs").iterdir())
    assert kept == sorted(f"{job.stem}.xlsx" for job in JOBS)
    assert len(kept) >= 3


@pytest.mark.parametrize("path", OUTPUTS, ids=lambda p: p.stem)
def test_delivered_workbook_is_what_the_code_writes(written, path):
    again = written / path.name
    assert unlike(path, again) == []
    assert path.read_bytes() == again.read_bytes()


@pytest.mark.parametrize("path", OUTPUTS, ids=lambda p: p.stem)
def test_the_same_under_another_hash_seed_clock_and_folder(written_elsewhere, path):
    again = written_elsewhere / path.name
    assert unlike(path, again) == []
    assert path.read_bytes() == again.read_bytes()


def test_two_workbooks_of_different_jobs_are_told_apart():
    found = unlike(OUTPUTS[0], OUTPUTS[-1])
    assert any(line.startswith("xl/sharedStrings.xml") for line in found)
