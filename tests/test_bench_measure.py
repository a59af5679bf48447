"""What the benchmarks say of a program is its own, not that of the process that measures it."""

from __future__ import annotations

import subprocess
import sys

import pytest

from tests.bench.measure import run


def test_the_peak_is_the_program_s_own(tmp_path):
    held = b"x" * 200_000_000
    small = run([sys.executable, "-c", "pass"], str(tmp_path))
    large = run([sys.executable, "-c", "x = b'x' * 150_000_000"], str(tmp_path))
    assert small.peak < 60 < 150 < large.peak < 200 and len(held) == 200_000_000
    assert 0 < small.processor < 5 and 0 < small.seconds < 30


def test_a_program_that_fails_is_an_error(tmp_path):
    with pytest.raises(subprocess.CalledProcessError, match="exit status 3"):
        run([sys.executable, "-c", "raise SystemExit(3)"], str(tmp_path))
