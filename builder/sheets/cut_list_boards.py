"""Cutting, second part: board by board, what is cut from it.

Pieces are taken in cutting order.  For the next piece five stock lengths are tried, each filled
with as many of that piece as it gives and with the longest later piece of the same size that its
offcut still gives; the length that wastes the smallest share is taken, for as many boards as both
pieces last, and is then bought no longer than need be.
"""

from __future__ import annotations

from builder.language import (
    Series,
    all_of,
    at_place,
    bare,
    choose,
    greatest,
    least,
    sum_over,
    when,
    whole_down,
)

from .cut_list_order import (
    HEADS,
    PITCH,
    SIZE,
    STOCK,
    TOGETHER,
    USABLE,
    WAYS,
    block,
    cut_lines,
    ledger,
    note,
    sheet,
    usable,
)

LINES = 36
"""Ways of cutting a board there is room for; what is left over is told."""
FAR = 1000000
"""A length longer than any board."""
END = len(cut_lines)
BY_STOCK = 100
"""A size's line times this, and a stock length [ft], make one number."""

block("Board by board")
note("Way 1 to 4: the four longest stock lengths; way 5: the shortest that gives one piece. "
     "Waste is a share of the board; 2: the piece does not fit.")
sheet.heads(HEADS)

board_lines: list = []


def _above(column: str) -> Series:
    """Return a column of the lines so far."""
    return Series(column, [line[column] for line in board_lines])


def _used_up(place):
    """Return how often a place of the order was used up as a second piece, so far: 0 or 1."""
    return sum_over(_above("used_up").is_(place)) if board_lines else 0


def _skipping(place):
    """Return a place, or one of the next two where those before are used up."""
    if not board_lines:
        return least(place, END)
    return least(place + _used_up(place) * (1 + _used_up(place + 1)), END)


def _taken(place, column: str, pieces: str):
    """Return how many pieces of a place of the order were cut so far."""
    return sum_over(_above(column).is_(place) * _above(pieces) * _above("boards"))


def _main(line) -> None:
    """Add what is cut next: the first place of the order with pieces left."""
    if board_lines:
        last = board_lines[-1]
        line.add("next", last["line"] + (last["pieces"] * last["boards"] >= last["left"]), "", 0)
        line.add("line", _skipping(line["next"]), "", 0)
        place = line["line"]
        line.add("left", at_place(TOGETHER, place) - _taken(place, "line", "pieces")
                 - _taken(place, "second", "second_pieces"), "", 0)
    else:
        line.add("line", 1, "", 0)
        line.add("left", TOGETHER[0], "", 0)
    line.add("size", at_place(SIZE, line["line"]), "", 0)
    line.add("pitch", at_place(PITCH, line["line"]), "", 2)


def _way(line, way: int) -> None:
    """Add one way to cut the next board: its offcut, the second piece, the waste."""
    pitch, size = line["pitch"], line["size"]
    if way == WAYS[-1]:
        room = line.add("one", at_place(USABLE, greatest(sum_over(USABLE >= pitch), 1)), "", 2)
    else:
        room = usable[way - 1]
    left = line.add(f"room_{way}", room - pitch * least(line["left"], whole_down(room / pitch)),
                    "", 2)
    first = line.add(f"first_{way}", greatest(
        line["line"], sum_over((SIZE > size) + SIZE.is_(size) * (PITCH > left))) + 1, "", 0)
    second = line.add(f"fits_{way}", _skipping(first), "", 0)
    its = at_place(PITCH, second)
    filled = at_place(SIZE, second).is_(size) * whole_down(left / its) * its
    line.add(f"waste_{way}", when(room >= pitch, (left - filled) / greatest(room, 1), 2), "", 4)


def _choice(line) -> None:
    """Add the way taken and the pieces it gives."""
    w = [line[f"waste_{way}"] for way in WAYS]
    line.add("way", when(w[0] > least(*w[1:]), 2 + (w[1] > least(*w[2:])) * (
        1 + (w[2] > least(*w[3:])) * (1 + (w[3] > w[4]))), 1), "", 0)
    way, pitch = line["way"], line["pitch"]
    room = line.add("usable", choose(way, *usable[:4], line["one"]), "", 2)
    pieces = line.add("pieces", least(line["left"], whole_down(room / pitch)), "", 0)
    tried = line.add("tried", choose(way, *(line[f"fits_{k}"] for k in WAYS)), "", 0)
    second = line.add("second", least(tried + _used_up(tried), END), "", 0)
    its = line.add("second_pitch", when(at_place(SIZE, second).is_(line["size"]),
                                        at_place(PITCH, second), FAR), "", 2)
    left = at_place(TOGETHER, second)
    if board_lines:
        left = left - _taken(second, "second", "second_pieces")
    left = line.add("second_left", left, "", 0)
    line.add("second_pieces", greatest(
        least(left, whole_down((room - pieces * pitch) / its)), 0), "", 0)


def _bought(line) -> None:
    """Add how many boards, of which stock length, and what is left of each."""
    pieces, second = line["pieces"], line["second_pieces"]
    boards = line.add("boards", least(
        whole_down(line["left"] / greatest(pieces, 1)),
        whole_down((line["second_left"] + FAR * (second < 1)) / greatest(second, 1))), "", 0)
    need = line.add("need", pieces * line["pitch"] + second * line["second_pitch"], "", 2)
    stock = line.add("stock", (boards > 0) * at_place(STOCK, greatest(
        sum_over(USABLE >= need), 1)), "ft", 0)
    line.add("used_up", when(all_of(second > 0, second * boards >= line["second_left"]),
                             line["second"], 0), "", 0)
    line.add("code", (boards > 0) * (line["size"] * BY_STOCK + bare(stock, "ft")), "", 0)


for _n in range(1, LINES + 1):
    _line = ledger(f"Board line {_n}", "", "", "Cutting")
    _main(_line)
    for _k in WAYS:
        _way(_line, _k)
    _choice(_line)
    _bought(_line)
    board_lines.append(_line)

BOARDS, STOCKS, CODES = _above("boards"), _above("stock"), _above("code")
left_over = ledger("Pieces not reached in the lines above; must be 0", "", "", "Cutting", boards=(
    sum_over(TOGETHER) - sum_over(_above("pieces") * BOARDS)
    - sum_over(_above("second_pieces") * BOARDS), "", 0))["boards"]
