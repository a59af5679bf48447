"""Workbook files recalculated, printed and edited by LibreOffice.

A plain conversion hands back the values stored in the file and proves nothing.  So the profile
says: always recalculate on loading.  Each process has a profile of its own, because on a shared
one a second process returns success and writes nothing; the output is looked for each time.
"""

from __future__ import annotations

import json
import shutil
import tempfile
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from builder.engine import applications
from builder.engine.gnumeric import read_back
from builder.engine.stored import formulas_of
from builder.engine.values import EngineError, Value, Values
from builder.resolve.cells import Place

SECONDS = 300.0
"""Longest time for one process [s]."""

_ALWAYS, _NEVER = 0, 1
_SETTINGS = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load">
<prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>{mode}</value></prop></item>
</oor:items>
"""


@contextmanager
def _profile(mode: int) -> Iterator[str]:
    """Make a user profile that recalculates always or never; yield its address."""
    with tempfile.TemporaryDirectory(prefix="profile_", ignore_cleanup_errors=True) as folder:
        user = Path(folder) / "user"
        user.mkdir()
        (user / "registrymodifications.xcu").write_text(_SETTINGS.format(mode=mode))
        yield Path(folder).as_uri()


def _convert(paths: Sequence[Path], to: str, suffix: str, outdir: Path, mode: int) -> list[Path]:
    """Convert files in one process; return the outputs, in order.

    Raises ``EngineError`` if one of them is not there afterwards.
    """
    program = applications.find("soffice")
    outputs = [outdir / (path.stem + suffix) for path in paths]
    for output in outputs:
        output.unlink(missing_ok=True)
    with _profile(mode) as profile:
        command = [program, f"-env:UserInstallation={profile}", "--headless", "--norestore"]
        command += ["--convert-to", to, "--outdir", str(outdir), *map(str, paths)]
        ended = applications.run(command, SECONDS)
    gone = [path.name for path, output in zip(paths, outputs, strict=True) if not output.exists()]
    if gone or ended.returncode:
        raise EngineError(f"LibreOffice wrote nothing for {gone}: {ended.stderr.strip()}")
    return outputs


def evaluate_files(paths: Iterable[str | Path], workdir: str | Path) -> dict[Path, Values]:
    """Recalculate .xlsx files in one process; return each file's formula cells and values.

    The recalculated copies stay in ``workdir``.  Raises ``MissingApplicationError`` without the
    program and ``EngineError`` if a file is not written or a formula cell has no value.
    """
    given = [Path(path) for path in paths]
    # Copies with a number in front: two files of one name must not write over each other.
    copies, outdir = Path(workdir) / "given", Path(workdir) / "recalculated"
    copies.mkdir(parents=True, exist_ok=True)
    outdir.mkdir(exist_ok=True)
    numbered = [copies / f"{number:03d}_{path.name}" for number, path in enumerate(given)]
    for path, copy in zip(given, numbered, strict=True):
        shutil.copyfile(path, copy)
    form = "xlsx:Calc MS Excel 2007 XML"
    outputs = _convert(numbered, form, ".xlsx", outdir, _ALWAYS)
    pairs = zip(given, outputs, strict=True)
    return {path: read_back(output, formulas_of(path)) for path, output in pairs}


def to_pdf(path: str | Path, outdir: str | Path) -> Path:
    """Print every sheet of a workbook file into one .pdf file and return its path.

    What is printed are the values stored in the file, as a reader who only opens it sees them.
    Raises ``MissingApplicationError`` without the program, ``EngineError`` if no file is written.
    """
    Path(outdir).mkdir(parents=True, exist_ok=True)
    return _convert([Path(path)], "pdf:calc_pdf_Export", ".pdf", Path(outdir), _NEVER)[0]


@dataclass(frozen=True, slots=True)
class Reading:
    """The wanted values after a step of edits, and how long the program took for them.

    ``change_ms`` is the time to set the cells and work out what rests on them, ``all_ms`` that
    to work out every formula anew [ms].
    """

    values: dict[Place, Value | None]
    change_ms: float
    all_ms: float


Edits = Mapping[Place, Value | None]


def edit_steps(path: str | Path, steps: Sequence[Edits], wanted: Iterable[Place],
               settle: bool = True) -> list[Reading]:
    """Open a file once, edit it step by step, and read the wanted cells after each step.

    A step finds the edits of the steps before it.  A number is set as number, a text as text,
    None empties the cell; sheets stay protected, so only unlocked cells can be edited.  The
    file is not saved.  An empty cell reads None.  Without ``settle`` nothing is worked out while
    the cells are set, only everything after each step: many edits go in faster.

    Raises ``MissingApplicationError`` without the program or its Python module, ``EngineError``
    if the file or an edit is refused.
    """
    python, places = applications.find("uno"), list(wanted)
    with _profile(_ALWAYS) as profile:
        order = {
            "soffice": applications.find("soffice"),
            "profile": profile,
            "file": Path(path).absolute().as_uri(),
            "steps": [[[*place, value] for place, value in step.items()] for step in steps],
            "wanted": places,
            "settle": settle,
        }
        script = str(Path(__file__).with_name("libreoffice_script.py"))
        # Isolated: the system's Python must not pick up packages of ours.
        ended = applications.run([python, "-I", script], SECONDS + 10 * len(order["steps"]),
                                 json.dumps(order))
    if ended.returncode:
        raise EngineError(f"{path}: not edited by LibreOffice: {ended.stderr.strip()}")
    readings = (json.loads(line) for line in ended.stdout.splitlines())
    return [Reading(dict(zip(places, values, strict=True)), change_ms, all_ms)
            for values, change_ms, all_ms in readings]


def edit_and_read(path: str | Path, edits: Edits, wanted: Iterable[Place]) -> Reading:
    """Open a file, make ``edits``, work everything out and read the wanted cells.

    One step of ``edit_steps``, with the same errors.
    """
    return edit_steps(path, [edits], wanted)[0]
