"""Lumber boards, second calculation: what must hold of the choice of boards, whatever its rule.

The lines of Cut list say in words how many boards are cut, and what each of them gives.  Read
back from those words: every piece is cut, once; no board gives more than it has, kerfs and end
trim kept; what is left of it is said right.  What is to buy is counted from what is cut.  Pieces
alike in size and length go by the mark of the first of them.
"""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass

from tests.second.given import Given, constants, table
from tests.second.trade_cutting import Piece, Saw, in_cutting_order, pieces, saw
from tests.second.trade_names import DASH, SIXTEENTHS_IN_FOOT, column

ALMOST = 1e-6
GIVES = re.compile(r"([\d,]+) of ([A-F]-[A-Z])")
"""How the sheet says what a board gives: how many of which mark."""
BY_SIZE = 100
"""Line of the size times this, and the stock length in feet, are the code of a line to buy."""

Results = dict[str, float | str]


@dataclass
class Cut:
    """A line of boards: how many, size, stock [ft], pieces by mark on each, offcut [in]."""

    boards: float
    size: str
    stock: float
    gives: Counter[str]
    offcut: float


def cuts(done: Results) -> list[Cut]:
    """Return the lines of boards that are cut, as the sheet words them."""
    found, n = [], 0
    while (line := f"CutList.Boards {(n := n + 1)}") in done:
        if done[line] == DASH:
            continue
        size, stock = str(done[line]).rsplit(", ", 1)
        gives: Counter[str] = Counter()
        for name, words in done.items():
            if name.startswith(f"{line}: ") and isinstance(words, str):
                for number, mark in GIVES.findall(words):
                    gives[mark] += int(number.replace(",", ""))
        found.append(Cut(float(done[f"{line}: Size"]), size, float(stock.split()[0]), gives,
                         float(done[f"{line}: Length"])))
    return found


def lumber_lines(done: Results) -> list[int]:
    """Return the numbers of the lines of lumber to buy, none where the boards are not known."""
    found: list[int] = []
    while f"CutList.Lumber {len(found) + 1}: Boards" in done:
        found.append(len(found) + 1)
    return found


def work(g: Given, done: Results) -> Results:
    """Return what is to buy of the boards that ``done`` says are cut: a line a size and length."""
    lines = lumber_lines(done)
    if not lines:
        return {}
    sizes = list(g.catalog["lumber_prices"])
    nominal = {column(row, "size"): float(column(row, "nominal thickness"))
               * float(column(row, "nominal width")) / 12 for row in table("lumber_sizes")}
    boards: Counter[tuple[int, float]] = Counter()
    for cut in cuts(done):
        boards[sizes.index(cut.size) + 1, cut.stock] += cut.boards
    kinds = sorted(boards, reverse=True)
    found: Results = {}
    for n in lines:
        line = f"CutList.Lumber {n}"
        if n > len(kinds):
            found |= {f"{line}: {part}": 0.0 for part in (
                "Code", "Boards", "Feet", "Board feet", "Price, a foot")}
            found |= {f"{line}: Size": DASH, f"{line}: Stock": DASH, f"{line}: Length": 1.0}
            continue
        number, stock = kinds[n - 1]
        size, feet = sizes[number - 1], boards[kinds[n - 1]] * stock
        found |= {f"{line}: Code": number * BY_SIZE + stock, f"{line}: Length": number,
                  f"{line}: Size": size, f"{line}: Stock": f"{stock:g} ft",
                  f"{line}: Boards": boards[kinds[n - 1]], f"{line}: Feet": feet,
                  f"{line}: Board feet": feet * nominal[size],
                  f"{line}: Price, a foot": g.catalog["lumber_prices"][size]["price per foot"]}
    return found | _totals(g, done, found, lines, boards)


def _totals(g: Given, done: Results, listed: Results, lines: list[int],
            boards: Counter[tuple[int, float]]) -> Results:
    """Return what is bought in all, and what no line has room for."""
    feet = sum(number * stock for (_, stock), number in boards.items())
    net = sum(p.length * p.count for p in pieces(g)) / SIXTEENTHS_IN_FOOT
    one_foot = constants("own_buying")["one_foot"]
    cut = sum(c.boards * number for c in cuts(done) for number in c.gives.values())
    return {
        "CutList.not_reached": sum(p.count for p in pieces(g)) - cut,
        "CutList.feet_bought": feet, "CutList.waste": (feet - net) / max(feet, one_foot),
        # House choice: board feet are those of the lines there is room for.
        "CutList.board_feet": sum(float(listed[f"CutList.Lumber {n}: Board feet"])
                                  for n in lines),
        "CutList.not_listed": sum(boards.values()) - sum(
            float(listed[f"CutList.Lumber {n}: Boards"]) for n in lines)}


def alike(all_pieces: list[Piece]) -> dict[str, tuple[Piece, int]]:
    """Return mark → first piece of a size and length, and how many there are of all alike."""
    first: dict[tuple[int, int], Piece] = {}
    count: Counter[tuple[int, int]] = Counter()
    for piece in in_cutting_order(all_pieces):
        first.setdefault((piece.line, piece.length), piece)
        count[piece.line, piece.length] += piece.count
    return {piece.mark: (piece, count[kind]) for kind, piece in first.items()}


def faults(g: Given, done: Results) -> list[str]:
    """Return what is wrong with the boards chosen; nothing where all of it holds."""
    groups, chosen = alike(pieces(g)), cuts(done)
    found = [f"{cut.size}: mark {mark} is no first mark" for cut in chosen
             for mark in cut.gives if mark not in groups]
    if found:
        return found
    found = _not_cut(groups, chosen, float(done["CutList.not_reached"]))
    for cut in chosen:
        found += _board_faults(saw(g), groups, cut)
    return found


def _not_cut(groups: dict[str, tuple[Piece, int]], chosen: list[Cut], missed: float) -> list[str]:
    """Return the pieces that are cut too seldom or too often; the sheet may own to some missed."""
    given: Counter[str] = Counter()
    for cut in chosen:
        for mark, number in cut.gives.items():
            given[mark] += cut.boards * number
    found = [f"{mark}: {given[mark]:g} of {count} cut" for mark, (_, count) in groups.items()
             if given[mark] > count or (not missed and given[mark] < count)]
    lacking = sum(count - given[mark] for mark, (_, count) in groups.items())
    if abs(missed - lacking) > ALMOST:
        found.append(f"{lacking:g} pieces are not cut, the sheet owns to {missed:g}")
    return found


def _board_faults(tool: Saw, groups: dict[str, tuple[Piece, int]], cut: Cut) -> list[str]:
    """Return what is wrong with one line of boards."""
    name = f"{cut.boards:g} boards {cut.size}, {cut.stock:g} ft"
    found = []
    if cut.stock not in tool.stock:
        found.append(f"{name}: the yard sells no such length")
    found += [f"{name}: {mark} is a {groups[mark][0].size}" for mark in cut.gives
              if groups[mark][0].size != cut.size]
    if cut.boards <= 0 or cut.boards != int(cut.boards):
        found.append(f"{name}: no whole number of boards")
    # Each piece takes its length and a kerf; the last cut of a board that comes out even is
    # not made, so a board's room has one kerf on top.
    taken = sum(number * (groups[mark][0].length + tool.kerf)
                for mark, number in cut.gives.items())
    if taken > tool.room(cut.stock) + ALMOST:
        found.append(f"{name}: {taken:g} sixteenths from {tool.room(cut.stock):g}")
    left = max(tool.room(cut.stock) - tool.kerf - taken, 0) / 16
    if abs(left - cut.offcut) > ALMOST:
        found.append(f"{name}: {left:g} in are left, {cut.offcut:g} said")
    return found
