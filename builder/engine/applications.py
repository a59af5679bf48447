"""Where the programs are that some engines and tests need, and what to install without them."""

from __future__ import annotations

import os
import shutil
import signal
import subprocess
from functools import cache
from pathlib import Path

PACKAGES = {
    "soffice": "libreoffice-calc",
    "uno": "python3-uno",
    "ssconvert": "gnumeric",
    "pdftoppm": "poppler-utils",
    "pdftotext": "poppler-utils",
}
"""Program, and the Debian package that brings it.  ``uno`` is the system's own Python with the
module of that name: it cannot be installed in a virtual environment."""

SYSTEM_PYTHON = "/usr/bin/python3"


class MissingApplicationError(Exception):
    """A program is not installed; the message names the Debian package that brings it."""


@cache
def find(name: str) -> str:
    """Return the path of a program of ``PACKAGES``; for ``uno``, of the Python that has it.

    Raises ``MissingApplicationError`` if it is not installed, ``KeyError`` for a program that
    is not listed.
    """
    package = PACKAGES[name]
    path = _python_with_uno() if name == "uno" else shutil.which(name)
    if path is None:
        raise MissingApplicationError(f"{name} is not installed: apt-get install {package}")
    return path


def _python_with_uno() -> str | None:
    if not Path(SYSTEM_PYTHON).exists():
        return None
    tried = subprocess.run([SYSTEM_PYTHON, "-c", "import uno"], capture_output=True, check=False)
    return SYSTEM_PYTHON if tried.returncode == 0 else None


def needs(name: str) -> str:
    """Return the path of a program for the running test; without the program, skip the test.

    With ``CI=true`` in the environment nothing is skipped: a missing program is a failure,
    raised as ``MissingApplicationError``.
    """
    try:
        return find(name)
    except MissingApplicationError as missing:
        if os.environ.get("CI") == "true":
            raise
        import pytest

        pytest.skip(str(missing))


def run(command: list[str], seconds: float, given: str = "") -> subprocess.CompletedProcess[str]:
    """Run a program to its end, at most ``seconds`` [s], with ``given`` on its input.

    The program and all it started end together when the time is up, because some of these
    programs are scripts that start others.  Raises ``subprocess.TimeoutExpired`` then; the
    return code is left to the caller.
    """
    process = subprocess.Popen(
        command,
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        start_new_session=True,
    )
    try:
        out, err = process.communicate(given, timeout=seconds)
    except BaseException:
        os.killpg(process.pid, signal.SIGKILL)
        process.communicate()
        raise
    return subprocess.CompletedProcess(command, process.returncode, out, err)
