"""Cutting, second part: board by board, what is cut from it.

Pieces are taken in cutting order.  For the next board nine ways are tried.  Each fills a room
with one piece, and with as many of the longest later piece of the same size as the offcut gives.

* 1 to 4: as many of the next piece as the four longest stock lengths give, a way each;
* 5: the same from the shortest length that gives one;
* 6: one piece less from the longest, so that more is left for a later piece;
* 7: as 1, but its second piece is the one after that of way 1;
* 8, 9: as 1 and 5, but with the piece that comes after the next.

The price of a way is the shortest length that holds it over what the pieces are worth: their
lengths, and for the piece that begins the board a part of what it would take more where it is cut
alone.  Where one board could hold all that is then left of the size, what that board wastes
counts too.  The lowest price is taken, for as many boards as both pieces last; but for one less
where the last board of the size would waste much and the dock has few kinds of pieces, so that
the last ones can be dealt out anew.
"""

from __future__ import annotations

from builder.language import (
    Series,
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
    BY_SIZE,
    DIGITS,
    EXTRA,
    HALF,
    HEADS,
    KEYS,
    KINDS_CUT,
    LAST,
    LATER,
    LATER_SHORTEST,
    LONGEST,
    ONE_LESS,
    PLACES,
    REACHES,
    SHORTEST,
    SKIPS,
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

LINES = 38
"""Ways of cutting a board there is room for; what is left over is told."""
FAR = 1000000
"""A length longer than any board."""
END = len(cut_lines)
BY_STOCK = 100
"""A size's line times this, and a stock length [ft], make one number."""
NUDGE = 1e-9
"""What ``whole_down`` adds; too much where a divisor is a digit as large as these."""
FEW, WASTED = 15, 50
"""Of so few kinds of pieces one board less is cut where the last would waste over a 50th of what
is left: small docks gain by it, and large ones need the lines."""
STEPS, BY_WAY = 100000, 10
"""A price in whole steps, and the number of its way as its last digit."""
MARGIN = 5000
"""A later piece must be this much better, in steps, to be cut first: a twentieth of a board."""
NEVER = 9
"""The price of a way that gives no piece."""

block("Board by board")
note("Ways 1 to 4: the four longest stock lengths; 5: the shortest that gives one piece; 6: the "
     "longest, one piece less; 7: as 1, with the second piece after its second; 8 and 9: as 1 and "
     "5, begun with the later piece. Price: length bought over worth, and what the last board "
     "wastes if it is the next; the way's number is the last digit. Free: the sum of the digits "
     "of the places with pieces left.")
sheet.heads(HEADS)

board_lines: list = []


def _above(column: str) -> Series:
    """Return a column of the lines so far."""
    return Series(column, [line[column] for line in board_lines])


def _left(place):
    """Return how many pieces of a place of the order are left."""
    if not board_lines:
        return at_place(TOGETHER, place)
    return (at_place(TOGETHER, place)
            - sum_over(_above("main").is_(place) * _above("pieces") * _above("boards"))
            - sum_over(_above("second").is_(place) * _above("second_pieces") * _above("boards")))


def _begun(line, column: str):
    """Return ``left`` or ``pitch`` of the piece that begins a board of the way taken."""
    return when(line["way"] >= LATER, line[f"{column}_2"], line[column])


def _free(last):
    """Return the sum of the digits of the places with pieces left after a line."""
    cut, pieces = last["pieces"] * last["boards"], last["second_pieces"]
    done = (pieces > 0) * (pieces * last["boards"] >= last["second_left"])
    return greatest(
        last["next"] - (cut >= _begun(last, "left")) * at_place(DIGITS, last["main"])
        - done * at_place(DIGITS, last["second"]), 0)


def _shortest(length):
    """Return what the shortest stock length gives that gives a length; the longest if none."""
    return at_place(USABLE, greatest(sum_over(USABLE >= length), 1))


def _main(line) -> None:
    """Add what is cut next, what is left of its size, and the piece that comes after it."""
    last = board_lines[-1] if board_lines else None
    free = line.add("next", _free(last) if last else 2 ** len(PLACES) - 1, "", 0)
    place = line.add("line", sum_over(PLACES > free) + 1, "", 0)
    line.add("left", _left(place), "", 0)
    key = at_place(KEYS, place)
    size = line.add("size", BY_SIZE * whole_down(key / BY_SIZE), "", 0)
    pitch = line.add("pitch", greatest(key - size, 1), "", 2)
    line.add("one", _shortest(pitch), "", 2)
    rest = sum_over((KEYS > size) * (KEYS < size + BY_SIZE) * (KEYS - size) * TOGETHER)
    if last:
        rest = when(size.is_(last["size"]), last["rest"] - last["boards"] * last["need"], rest)
    line.add("rest", greatest(rest, 1), "", 2)
    # The digit of a place is 2 to this power; the last place, which holds nothing, has a half.
    others = free - 2 ** (len(PLACES) - place)
    later = line.add("line_2", sum_over(PLACES > others) + 1, "", 0)
    line.add("left_2", _left(later), "", 0)
    key = at_place(KEYS, later)
    pitch = line.add("pitch_2", when(key > size, greatest(key - size, 1), FAR), "", 2)
    line.add("one_2", _shortest(pitch), "", 2)


def _room(line, way: int):
    """Return what the stock length of a way gives."""
    if way in (SHORTEST, LATER_SHORTEST):
        return line["one" if way == SHORTEST else "one_2"]
    return usable[way - 1 if way <= LONGEST else 0]


def _count(line, way: int):
    """Return how many of the piece that begins it a board of a way gives."""
    if way == ONE_LESS:
        return line["count_1"] - 1
    return line["count_1" if way == SKIPS else f"count_{way}"]


def _last_waste(over):
    """Return what the board wastes that holds all that is left over; 0 where no one board does."""
    return greatest(at_place(LAST, sum_over(REACHES >= over) + 1) - greatest(over, 0), 0)


def _way(line, way: int) -> None:
    """Add one way to cut the next board: its pieces, the second piece, what it uses, its price."""
    tail = "_2" if way >= LATER else ""
    place, left, pitch = (line[f"{name}{tail}"] for name in ("line", "left", "pitch"))
    room, size, free, rest = _room(line, way), line["size"], line["next"], line["rest"]
    if way not in (ONE_LESS, SKIPS):
        line.add(f"count_{way}", least(left, whole_down(room / pitch)), "", 0)
    count = _count(line, way)
    fits_from = (line["then_1"] if way == SKIPS else
                 greatest(place, sum_over(KEYS > size + room - pitch * count)))
    digit = line.add(f"from_{way}", at_place(DIGITS, fits_from), "", 0)
    # What is left over of a division by the digit: the places behind it.
    behind = free - digit * whole_down((free + HALF) / digit - NUDGE)
    then = line.add(f"then_{way}", sum_over(PLACES > behind) + 1, "", 0)
    its = at_place(KEYS, then) - size
    used = line.add(f"used_{way}", count * pitch + whole_down(
        (room - count * pitch) / greatest(its, 1)) * greatest(its, 0), "", 2)
    price = _shortest(used) / greatest(used + count * pitch * at_place(EXTRA, place), 1)
    if way < LATER:
        over = rest - whole_down(left / greatest(count, 1)) * used
        price = price + line.add(f"last_{way}", _last_waste(over) / rest, "", 5)
    steps = whole_down(STEPS * when(count >= 1, price, NEVER))
    line.add(f"price_{way}", steps * BY_WAY + (way if way < LATER else MARGIN * BY_WAY + way),
             "", 0)


def _choice(line) -> None:
    """Add the way taken and the pieces it gives."""
    lowest = least(*(line[f"price_{way}"] for way in WAYS))
    way = line.add("way", greatest(least(
        lowest - BY_WAY * whole_down(lowest / BY_WAY), WAYS[-1]), 1), "", 0)
    size = line["size"]
    line.add("main", when(way >= LATER, line["line_2"], line["line"]), "", 0)
    room = line.add("room", choose(way, *(_room(line, k) for k in WAYS)), "", 2)
    pieces = line.add("pieces", greatest(choose(way, *(_count(line, k) for k in WAYS)), 0),
                      "", 0)
    then = line.add("then", choose(way, *(line[f"then_{k}"] for k in WAYS)), "", 0)
    second = line.add("second", when(at_place(KEYS, then) > size, then, END), "", 0)
    left = line.add("second_left", _left(second), "", 0)
    offcut = room - pieces * _begun(line, "pitch")
    line.add("second_pieces", greatest(least(left, whole_down(
        offcut / greatest(at_place(KEYS, second) - size, 1))), 0), "", 0)


def _bought(line) -> None:
    """Add how many boards, what is used of each, and which stock length is bought."""
    pieces, second, size = line["pieces"], line["second_pieces"], line["size"]
    need = line.add("need", pieces * _begun(line, "pitch")
                    + second * greatest(at_place(KEYS, line["second"]) - size, 0), "", 2)
    most = line.add("all", least(
        whole_down(_begun(line, "left") / greatest(pieces, 1)),
        whole_down((line["second_left"] + FAR * (second < 1)) / greatest(second, 1))), "", 0)
    wasted = _last_waste(line["rest"] - most * need)
    anew = (KINDS_CUT <= FEW) * (most > 1) * (wasted * WASTED > line["rest"])
    boards = line.add("boards", most - anew, "", 0)
    line.add("code", (boards > 0) * (size / (BY_SIZE / BY_STOCK) + bare(at_place(
        STOCK, greatest(sum_over(USABLE >= need), 1)), "ft")), "", 0)


for _n in range(1, LINES + 1):
    _line = ledger(f"Board line {_n}", "", "", "Cutting")
    _main(_line)
    for _k in WAYS:
        _way(_line, _k)
    _choice(_line)
    _bought(_line)
    board_lines.append(_line)

def stock_of(line):
    """Return the stock length of a line with boards, a bare number of feet."""
    return line["code"] - line["size"] / (BY_SIZE / BY_STOCK)


def size_of(line):
    """Return the line of the size in the table of sizes; 0 where nothing is cut."""
    return line["size"] / BY_SIZE


BOARDS, CODES, _sizes = _above("boards"), _above("code"), _above("size")
FEET_BOUGHT = sum_over(BOARDS * (CODES - _sizes / (BY_SIZE / BY_STOCK)))
"""Feet of all boards, a bare number."""
left_over = ledger("Pieces not reached in the lines above; must be 0", "", "", "Cutting", boards=(
    sum_over(TOGETHER) - sum_over(_above("pieces") * BOARDS)
    - sum_over(_above("second_pieces") * BOARDS), "", 0))["boards"]
