"""Cut list, second calculation: stock lengths, pieces, deck boards, what the boards add up to.

Lengths are whole sixteenths of an inch.  What is longer than a board gives is spliced from equal
pieces.  Which boards the lumber is cut from is the saw's choice: ``trade_boards`` checks that
choice by what must hold of any, and adds it up.
"""

from __future__ import annotations

from dataclasses import dataclass

from tests.second.given import Given
from tests.second.trade_names import (
    DASH,
    SIXTEENTHS_IN_FOOT,
    feet_and_inches,
    whole_down,
    whole_up,
)
from tests.second.trade_takeoff import SIZE_OF, lumber_by_use, piece_counts, piece_lengths

TYPES = "ABCDEF"
KINDS = (("R", "rail ply", "rails"), ("H", "header", "headers"), ("S", "stringer", "stringers"),
         ("C", "cross-beam", "cross_beams"), ("L", "skirt, long side", "skirt_long"),
         ("K", "skirt, short side", "skirt_short"))
"""Letter of the mark, name and use of each kind of piece."""
USES = {"rails": ("rails",), "headers": ("headers",), "stringers": ("stringers",),
        "cross-beams": ("cross_beams",), "skirts": ("skirt_long", "skirt_short")}
"""Use as the sheet says it → uses counted here."""
TRIED = 3
"""House choice: deck boards try the three longest stock lengths and the shortest that gives one
piece, where none of the others takes fewer feet."""


@dataclass
class Saw:
    """Stock lengths that count [ft], longest first; kerf and end trim [1/16 in]."""

    stock: list[float]
    kerf: float
    trim: int

    def room(self, feet: float) -> float:
        """Return what a board gives to pieces that take a kerf each [1/16 in].

        The last cut of a board that comes out even is not made: one kerf comes on top.
        """
        return feet * SIXTEENTHS_IN_FOOT - self.trim + self.kerf

    @property
    def longest(self) -> float:
        """Return the longest piece that a board gives [1/16 in]."""
        return self.stock[0] * SIXTEENTHS_IN_FOOT - self.trim


@dataclass
class Piece:
    """Pieces of one kind of one type: mark, name, size, line of size, length, how many."""

    mark: str
    name: str
    size: str
    line: int
    length: int
    count: int


def saw(g: Given) -> Saw:
    """Return the stock lengths that the yard sells and a board may have, kerf and trim."""
    feet = stock_lengths(g)
    sold = [x for x in feet if g.job[f"sold_{x:g}_ft"] == "yes" and x <= g.job["longest_stock"]]
    # House choice: where none is left, the shortest of the list counts.
    return Saw(sorted(sold or [min(feet)], reverse=True), 16 * g.job["kerf"],
               whole_up(16 * g.job["end_trim"]))


def stock_lengths(g: Given) -> list[float]:
    """Return every length that the job is asked about: does the yard sell it? [ft]."""
    return [float(key.split("_")[1]) for key in g.job if key.startswith("sold_")]


def pieces(g: Given) -> list[Piece]:
    """Return the pieces of the whole dock, type by type; kinds that are not built count 0."""
    board = saw(g).longest
    sizes = list(g.catalog["lumber_prices"])
    by_letter = {t.letter: t for t in g.all}
    found = []
    for letter in TYPES:
        t = by_letter.get(letter)
        for mark, name, use in KINDS:
            piece = Piece(f"{letter}-{mark}", name, "", 0, 0, 0)
            found.append(piece)
            if t is None:
                continue
            whole = piece_lengths(t)[use] * SIXTEENTHS_IN_FOOT
            parts = whole_up(whole / board)
            piece.size = t.sec[SIZE_OF[use]]
            piece.length = whole_down(whole / max(parts, 1) + 0.5)
            piece.count = int(t.sec["quantity"] * piece_counts(t)[use] * parts)
            piece.line = sizes.index(piece.size) + 1 if piece.count else 0
    return found


def in_cutting_order(all_pieces: list[Piece]) -> list[Piece]:
    """Return the pieces that are cut: largest size first, then longest, then type by type."""
    return sorted((p for p in all_pieces if p.count), key=lambda p: (-p.line, -p.length))


def work(g: Given, done: dict[str, float | str]) -> dict[str, float | str]:
    """Return the results of Cutting and Cut list, for the whole dock."""
    return {**_stock(g), **_by_type(g), **_listed(g), **_sums(g), **_deck(g)}


def _stock(g: Given) -> dict[str, float | str]:
    cut = saw(g)
    found = {"Cutting.kerf": cut.kerf, "Cutting.trim": cut.trim, "Cutting.longest": cut.longest}
    for k in range(1, len(stock_lengths(g)) + 1):
        feet = cut.stock[k - 1] if k <= len(cut.stock) else 0
        found[f"Cutting.stock_{k}"] = feet
        found[f"Cutting.usable_{k}"] = cut.room(feet) if feet else 0
    return found


def _by_type(g: Given) -> dict[str, float | str]:
    found = {}
    for k, piece in enumerate(pieces(g), start=1):
        found[f"Cutting.LENGTHS_{k}"] = piece.length
        found[f"Cutting.COUNTS_{k}"] = piece.count
        found[f"Cutting.SIZES_{k}"] = piece.line
    return found


def _listed(g: Given) -> dict[str, float | str]:
    """Return the lines of pieces: words, mark, count, length."""
    listed = in_cutting_order(pieces(g))
    found = {}
    for n in range(1, len(TYPES) * len(KINDS) + 1):
        line = f"CutList.Piece {n}"
        if n > len(listed):
            found |= {line: DASH, f"{line}: words": DASH, f"{line}: Size": 0,
                      f"{line}: Length": DASH}
            continue
        piece = listed[n - 1]
        found |= {line: f"{piece.size}, {piece.name}", f"{line}: words": piece.mark,
                  f"{line}: Size": piece.count, f"{line}: Length": feet_and_inches(piece.length)}
    return found


def _sums(g: Given) -> dict[str, float | str]:
    """Return the feet of all pieces, and of each use as Parts counts it."""
    net = sum(p.length * p.count for p in pieces(g)) / SIXTEENTHS_IN_FOOT
    in_parts = {name: sum(t.sec["quantity"] * lumber_by_use(t)[use]
                          for t in g.all for use in uses) for name, uses in USES.items()}
    return {"CutList.feet_net": net, "CutList.difference": net - sum(in_parts.values()),
            **{f"CutList.Parts: {use}: Feet": feet for use, feet in in_parts.items()}}


def deck_cuts(g: Given) -> list[tuple[str, str, int, int, float, int]]:
    """Return type, board, pieces, length [1/16 in], stock [ft], boards of each deck board cut.

    Boards meet on stringers: full pieces reach the last stringer that the longest board
    reaches, the last piece of a line takes the rest.  Two cuts a type: full, then last pieces.
    """
    cut, found = saw(g), []
    by_letter = {t.letter: t for t in g.all}
    for letter in TYPES:
        t = by_letter.get(letter)
        if t is None or t.sec["deck"] != "boards":
            found += [(letter, DASH, 0, 0, 0.0, 0)] * 2
            continue
        step = 16 * t.sec["spacing"]
        reach = step * max(whole_down(cut.longest / step), 1)
        whole = t.done["Parts.board_length"] * SIXTEENTHS_IN_FOOT
        in_line = whole_up(whole / reach)
        lines = int(t.done["Parts.boards"] * t.sec["quantity"])
        full, last = whole_down(reach + 0.5), whole_down(whole - (in_line - 1) * reach + 0.5)
        for length, count in ((full, lines * (in_line - 1)), (last, lines)):
            feet, boards = _deck_stock(cut, length, count) if count else (0.0, 0)
            found.append((letter, t.sec["board"], count, length if count else 0, feet, boards))
    return found


def _deck_stock(cut: Saw, length: int, count: int) -> tuple[float, int]:
    """Return the stock length [ft] that takes the fewest feet in all, and how many boards."""
    giving = [feet for feet in cut.stock if cut.room(feet) >= length + cut.kerf]
    # House choice: a piece longer than any board is still bought, a board each.
    shortest = giving[-1] if giving else cut.stock[0]
    best: tuple[float, float, int] | None = None
    for feet in [*(x for x in giving if x in cut.stock[:TRIED]), shortest]:
        each = max(whole_down(cut.room(feet) / (length + cut.kerf)), 1)
        boards = whole_up(count / each)
        if best is None or boards * feet < best[0] - 1e-9:
            best = (boards * feet, feet, boards)
    return best[1], best[2]


def _deck(g: Given) -> dict[str, float | str]:
    found, feet_in_all = {}, 0.0
    for k, (letter, board, count, length, feet, boards) in enumerate(deck_cuts(g)):
        line = f"CutList.Type {letter}: {('full', 'last')[k % 2]} pieces"
        feet_in_all += boards * feet
        found |= {
            f"{line}: Code": count, f"{line}: Boards": boards, f"{line}: Feet": boards * feet,
            f"{line}: Size": board if count else DASH,
            f"{line}: Stock": f"{feet:g} ft" if count else DASH,
            f"{line}: Length": feet_and_inches(length) if count else DASH,
            f"{line}: Price, a foot": (
                g.catalog["boards"][board]["price per foot"] if count else 0.0)}
    return found | {"CutList.deck_feet": feet_in_all}
