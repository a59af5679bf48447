"""Edits a workbook inside LibreOffice.  Run by the system's own Python, which has ``uno``.

Started by ``builder.engine.libreoffice``: the order comes as JSON on standard input, the
readings leave on standard output, a line of JSON for each step.  It imports nothing of this
project.
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


def get(cell):
    """Return what a cell holds: number, text (an error as the text shown) or None."""
    kind = cell.Type.value
    if kind == "EMPTY":
        return None
    if kind == "FORMULA":
        kind = "VALUE" if cell.FormulaResultType2 == 1 else "TEXT"
    return cell.Value if kind == "VALUE" else cell.String


def read(document, wanted):
    """Return what the wanted cells hold, a sheet at a time: one call brings a whole sheet."""
    reach = {}
    for sheet, row, col in wanted:
        last = reach.get(sheet, (0, 0))
        reach[sheet] = max(last[0], row), max(last[1], col)
    held = {}
    for sheet, (row, col) in reach.items():
        area = document.Sheets.getByName(sheet).getCellRangeByPosition(0, 0, col, row)
        held[sheet] = area.getDataArray()
    found = []
    for sheet, row, col in wanted:
        value = held[sheet][row][col]
        # An error comes as None, an empty cell as an empty text: the cell itself knows.
        odd = value is None or value == ""
        found.append(get(cell_at(document, sheet, row, col)) if odd else value)
    return found


def areas(edits):
    """Return edits as areas without gaps: (sheet, row, column, rows of values), top left first."""
    rows = {}
    for sheet, row, col, value in sorted(edits, key=lambda edit: edit[:3]):
        spans = rows.setdefault((sheet, row), [])
        if spans and spans[-1][0] + len(spans[-1][1]) == col:
            spans[-1][1].append(value)
        else:
            spans.append((col, [value]))
    found, below = [], {}
    for (sheet, row), spans in rows.items():
        for col, values in spans:
            area = below.pop((sheet, row, col, len(values)), None)
            if area is None:
                area = (sheet, row, col, [])
                found.append(area)
            area[3].append(values)
            below[sheet, row + 1, col, len(values)] = area
    return found


def step(document, edits, wanted, settle):
    """Make edits and read; return (values, ms for the change, ms for working all out)."""
    ready = []
    for sheet, row, col, lines in areas(edits):
        page = document.Sheets.getByName(sheet)
        last = (col + len(lines[0]) - 1, row + len(lines) - 1)
        area = page.getCellRangeByPosition(col, row, *last)
        # The program's own interface passes over the protection; a person cannot.
        lock = area.CellProtection
        if page.isProtected() and (lock is None or lock.IsLocked):
            raise RuntimeError(f"an edit at {sheet}, {row}, {col} was refused: a cell is locked")
        # Numbers as numbers, texts as texts; an empty text empties the cell.
        typed = tuple(tuple("" if v is None else v if isinstance(v, str) else float(v)
                            for v in line) for line in lines)
        ready.append((area, typed))
    begun = time.perf_counter()
    for area, typed in ready:
        area.setDataArray(typed)
    if settle:
        document.calculate()
    changed = time.perf_counter()
    document.calculateAll()
    done = time.perf_counter()
    for area, typed in ready:
        if area.getDataArray() != typed:
            raise RuntimeError(f"the edit {typed} was refused: {area.getDataArray()} stands there")
    return read(document, wanted), (changed - begun) * 1000, (done - changed) * 1000


def main() -> None:
    """Read the order, do it, print the readings, end the program."""
    order = json.load(sys.stdin)
    process, desktop = start(order["soffice"], order["profile"])
    try:
        document = open_file(desktop, order["file"])
        document.enableAutomaticCalculation(order["settle"])
        for edits in order["steps"]:
            print(json.dumps(step(document, edits, order["wanted"], order["settle"])))
        document.close(True)
    finally:
        try:
            desktop.terminate()
        finally:
            process.wait(30)


if __name__ == "__main__":
    main()
