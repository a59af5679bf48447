"""Edits a workbook inside LibreOffice.  Run by the system's own Python, which has ``uno``.

Started by ``builder.engine.libreoffice``: the order comes as JSON on standard input, the
readings leave as JSON on standard output.  It imports nothing of this project.
"""

from __future__ import annotations

import json
import subprocess
import sys
import time


def start(soffice: str, profile: str):
    """Start the program; return (process, desktop).  Raises ``RuntimeError`` after 60 s."""
    import uno
    from com.sun.star.connection import NoConnectException

    pipe = "calc" + profile.rpartition("profile_")[2].replace("_", "x")
    process = subprocess.Popen(
        [
            soffice,
            f"-env:UserInstallation={profile}",
            "--headless",
            "--norestore",
            "--nologo",
            f"--accept=pipe,name={pipe};urp;",
        ],
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    )
    here = uno.getComponentContext()
    resolver = here.ServiceManager.createInstanceWithContext(
        "com.sun.star.bridge.UnoUrlResolver", here
    )
    for _ in range(300):
        try:
            there = resolver.resolve(f"uno:pipe,name={pipe};urp;StarOffice.ComponentContext")
        except NoConnectException:
            time.sleep(0.2)
            continue
        manager = there.ServiceManager
        return process, manager.createInstanceWithContext("com.sun.star.frame.Desktop", there)
    process.kill()
    raise RuntimeError("the program did not answer within 60 s")


def open_file(desktop, address: str):
    """Open a workbook without a window.  Raises ``RuntimeError`` if it cannot be opened."""
    from com.sun.star.beans import PropertyValue

    hidden = PropertyValue()
    hidden.Name, hidden.Value = "Hidden", True
    document = desktop.loadComponentFromURL(address, "_blank", 0, (hidden,))
    if document is None:
        raise RuntimeError(f"{address} cannot be opened")
    return document


def cell_at(document, sheet: str, row: int, col: int):
    """Return a cell; rows and columns count from 0."""
    return document.Sheets.getByName(sheet).getCellByPosition(col, row)


def put(cell, value) -> None:
    """Set a cell: number as number, text as text, None empties it."""
    if value is None:
        cell.clearContents(1 | 2 | 4 | 16)  # numbers, dates, texts, formulas; looks stay
    elif isinstance(value, str):
        cell.String = value
    else:
        cell.Value = float(value)


def get(cell):
    """Return what a cell holds: number, text (an error as the text shown) or None."""
    kind = cell.Type.value
    if kind == "EMPTY":
        return None
    if kind == "FORMULA":
        kind = "VALUE" if cell.FormulaResultType2 == 1 else "TEXT"
    return cell.Value if kind == "VALUE" else cell.String


def step(document, edits, wanted):
    """Make edits and read; return (values, ms for the change, ms for working all out)."""
    cells = [(cell_at(document, *edit[:3]), edit) for edit in edits]
    for cell, edit in cells:
        # The program's own interface passes over the protection; a person cannot.
        if cell.Spreadsheet.isProtected() and cell.CellProtection.IsLocked:
            raise RuntimeError(f"the edit {edit} was refused: the cell is locked")
    begun = time.perf_counter()
    for cell, edit in cells:
        put(cell, edit[3])
    document.calculate()
    changed = time.perf_counter()
    document.calculateAll()
    done = time.perf_counter()
    for cell, edit in cells:
        if get(cell) != edit[3]:
            raise RuntimeError(f"the edit {edit} was refused: the cell holds {get(cell)!r}")
    values = [get(cell_at(document, *place)) for place in wanted]
    return values, (changed - begun) * 1000, (done - changed) * 1000


def main() -> None:
    """Read the order, do it, print the readings, end the program."""
    order = json.load(sys.stdin)
    process, desktop = start(order["soffice"], order["profile"])
    try:
        document = open_file(desktop, order["file"])
        readings = [step(document, edits, order["wanted"]) for edits in order["steps"]]
        document.close(True)
        print(json.dumps(readings))
    finally:
        try:
            desktop.terminate()
        finally:
            process.wait(30)


if __name__ == "__main__":
    main()
