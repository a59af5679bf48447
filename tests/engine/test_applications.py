"""Without a program a test is skipped, and says what to install; with CI=true it fails."""

from __future__ import annotations

import subprocess
import sys

import pytest

from builder.engine import applications


@pytest.fixture
def nothing_installed(monkeypatch):
    monkeypatch.setenv("PATH", "")
    monkeypatch.setattr(applications, "SYSTEM_PYTHON", "/nothing")
    applications.find.cache_clear()
    yield
    applications.find.cache_clear()


@pytest.mark.parametrize(("name", "package"), applications.PACKAGES.items())
def test_a_missing_program_skips_and_names_the_package(
    nothing_installed, monkeypatch, name, package
):
    monkeypatch.delenv("CI", raising=False)
    with pytest.raises(pytest.skip.Exception, match=f"^{name} is not installed: .* {package}$"):
        applications.needs(name)


def test_a_missing_program_fails_in_ci(nothing_installed, monkeypatch):
    monkeypatch.setenv("CI", "true")
    with pytest.raises(applications.MissingApplicationError, match="libreoffice-calc"):
        applications.needs("soffice")


def test_a_program_not_listed_is_a_fault_of_the_test():
    with pytest.raises(KeyError):
        applications.needs("sofice")


def test_a_program_that_hangs_is_ended_with_all_it_started():
    children = f"import subprocess; subprocess.run([{sys.executable!r}, '-c', 'input()'])"
    with pytest.raises(subprocess.TimeoutExpired):
        applications.run([sys.executable, "-c", f"{children}; import time; time.sleep(60)"], 1)


def test_what_is_given_is_read_and_the_return_code_kept():
    ended = applications.run(
        [sys.executable, "-c", "import sys; print(input()); sys.exit(3)"], 30, "word\n"
    )
    assert (ended.stdout, ended.returncode) == ("word\n", 3)
