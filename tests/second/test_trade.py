"""The trade and the launch, reckoned a second time from the basis, against the workbook."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from math import floor

import pytest

from tests.second import launched, trade, trade_boards
from tests.second.given import constants
from tests.second.launched import DOUBTED
from tests.second.trade_worked import Worked, random_job

SEEDS = (9, 12, 13, 15, 18, 35)
"""Among them are whole sections and such in pieces, broad and long ones, and more boards to buy
than there are lines."""


@cache
def worked(seed: int) -> Worked:
    """Return a random job, worked out once."""
    return Worked(random_job(seed))


def same(ours: float | str, theirs: float | str | None) -> bool:
    """Return whether two results are the same word, or the same number to 1e-9."""
    if isinstance(ours, str) or isinstance(theirs, str) or theirs is None:
        return ours == theirs
    return abs(ours - theirs) <= 1e-9 * max(1, abs(ours), abs(theirs))


def doubted(name: str) -> str | None:
    """Return the doubt that a result stands under, if any."""
    base = name.removesuffix("_ratio").removesuffix("_verdict")
    return base if base in DOUBTED else None


@pytest.mark.parametrize("seed", SEEDS)
def test_trade_reckoned_twice(seed):
    job = worked(seed)
    ours = trade.work(job.types[0], job.ledgers)
    wrong = {name: (value, job.ledgers.get(name)) for name, value in ours.items()
             if not same(value, job.ledgers.get(name))}
    assert not wrong
    assert len(ours) > 1500


@pytest.mark.parametrize("seed", SEEDS)
def test_boards_cut_every_piece_and_fit(seed):
    job = worked(seed)
    assert trade_boards.cuts(job.ledgers)
    assert trade_boards.faults(job.types[0], job.ledgers) == []


@pytest.mark.parametrize("seed", SEEDS)
def test_launch_reckoned_twice(seed):
    for one in worked(seed).types:
        ours = launched.work(one, one.done)
        wrong = {name: (value, one.done.get(name)) for name, value in ours.items()
                 if not same(value, one.done.get(name)) and not doubted(name)}
        assert not wrong
        assert len(ours) > 160


def test_what_is_doubted_still_differs():
    differs = set()
    for seed in SEEDS:
        for one in worked(seed).types:
            differs |= {doubted(name) for name, value in launched.work(one, one.done).items()
                        if not same(value, one.done[name])}
    assert differs - {None} == set(DOUBTED)


@pytest.mark.parametrize(("column", "change", "word"), [
    ("Size", lambda boards: boards + 1, "cut"),
    ("Length", lambda offcut: offcut + 0.5, "left"),
    ("", lambda line: line.rsplit(", ", 1)[0] + ", 5 ft", "no such length"),
    ("words", lambda words: str(int(words.split()[0]) + 9) + words[len(words.split()[0]):],
     "sixteenths"),
])
def test_a_wrong_choice_of_boards_is_found(column, change, word):
    job = worked(SEEDS[0])
    name = "CutList.Boards 1" + (f": {column}" if column else "")
    spoilt = {**job.ledgers, name: change(job.ledgers[name])}
    assert any(word in fault for fault in trade_boards.faults(job.types[0], spoilt))


def test_deposit_keeps_to_the_law_that_is_chosen():
    job = random_job(SEEDS[0])
    typed = {key: value for key, value in job.inputs.items() if not key.startswith("deposit_")}
    law = {"deposit_law": "California B&P 7159.5", "deposit_share": 0.5}
    ledgers = Worked(replace(job, inputs=typed | law)).ledgers
    total = ledgers["Price.client_total"]
    capped = min(constants("deposit_law")["deposit_share"] * total,
                 constants("deposit_law")["deposit_most"])
    assert 0.5 * total > capped
    assert ledgers["Price.deposit"] == pytest.approx(floor(100 * capped + 1e-6) / 100, abs=1e-9)


def test_a_wrong_count_upstream_reaches_the_client():
    job = worked(SEEDS[0])
    right = trade.work(job.types[0], job.ledgers)["Price.breakeven"]
    before = job.types[0].done["Parts.floats"]
    job.types[0].done["Parts.floats"] = before + 1
    try:
        assert trade.work(job.types[0], job.ledgers)["Price.breakeven"] > right
    finally:
        job.types[0].done["Parts.floats"] = before
