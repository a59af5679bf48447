"""Random jobs for the trade and the launch, and what the workbook makes of them.

A starting job is changed: how sections are built, what the yard sells, rates, hours, readings on
the water.  The numbers are drawn inside the limits of the inputs; few such docks should be
built, but every sheet must reckon them right.
"""

from __future__ import annotations

import random
from dataclasses import replace
from pathlib import Path
from types import SimpleNamespace

from builder.engine.ironcalc_engine import Live
from builder.jobs import Job, read_job
from builder.language import Ask, Row
from builder.resolve.frame import FIRST
from builder.sheets.book import model
from tests.second.trade_names import ledger_values

JOBS = Path(__file__).resolve().parents[2] / "templates" / "jobs"
LETTERS = "ABCDEF"
SIZES = ("2x6", "2x8", "2x10", "2x12", "3x8", "3x10", "4x6", "6x8")
CHOICES = ("permit_place", "whose", "deposit_law", "mooring", "carried", "bolt", "chain", "sawn",
           "water", "finish", "lag", "accessible")
NUMBERS = (
    "wage", "burden", "crew", "day_hours", "visits", "lift_rate", "lift_hours", "barge_leg",
    "small_tools", "plant_other", "trip_cost", "mile_cost", "miles", "weight_cost",
    "sections_a_load", "oversize_cost", "permit_fees", "small_supplies", "purchase_tax",
    "contingency", "overhead", "margin", "price_step", "tax_rate", "taxable_share",
    "deposit_share", "deposit_cap", "deposit_cap_share", "stage_shares_1", "stage_shares_2",
    "stage_shares_3", "bought_gangway", "bought_other", "hours_site", "hours_ends",
    "hours_other", "trailer_length", "trailer_payload", "lumber_waste", "deck_waste",
    "hardware_spare", "kerf", "end_trim", "bumper_length", "sling_share", "lift_factor")
"""Inputs of the whole job that are drawn anew, every other one."""
CORNER_WORDS = ("near end, left", "near end, right", "far end, right", "far end, left")


def starting_jobs() -> list[Job]:
    """Return the starting jobs that have sections."""
    found = [read_job(path, model().job_inputs(), model().section_inputs(), model().editable)
             for path in sorted(JOBS.glob("*.toml"))]
    return [job for job in found if job.sections]


def random_job(seed: int) -> Job:
    """Return a starting job, changed at random."""
    draw = random.Random(seed)
    start = draw.choice(starting_jobs())
    asked = {ask.key: ask for ask in model().job_inputs()}
    inputs = dict(start.inputs)
    for key in NUMBERS:
        if draw.random() < 0.5:
            inputs[key] = _number(draw, asked[key])
    for key in CHOICES:
        if draw.random() < 0.5:
            inputs[key] = draw.choice(asked[key].choices.keys)
    for key in asked:
        if key.startswith("sold_") and draw.random() < 0.35:
            inputs[key] = "no"
    inputs["longest_stock"] = draw.choice([10, 12, 16, 18, 20, 20])
    sections = tuple(_section(draw, dict(draw.choice(start.sections)))
                     for _ in range(draw.randint(1, len(LETTERS))))
    return replace(start, name=f"random_{seed}", inputs=inputs, sections=sections)


def _number(draw: random.Random, ask: Ask) -> float:
    """Return a number inside the limits of an input, small ones oftener."""
    value = ask.least + (ask.most - ask.least) * draw.random() ** 4
    return round(value) if ask.whole else round(value, 3)


def _section(draw: random.Random, section: dict) -> dict:
    """Return a section type, built anew."""
    tables = {table.name: table.keys for table in model().editable}
    section |= {
        "quantity": draw.randint(1, 7), "length": draw.choice([8, 12, 20, draw.uniform(7, 30)]),
        "width": draw.choice([5, 6, 8, 10, draw.uniform(5, 12)]),
        "run": draw.choice(["across", "along"]),
        "spacing": draw.choice([12, 16, 24, draw.uniform(9, 24)]),
        "deck": draw.choice(["panels", "boards"]), "panel": draw.choice(tables["panels"]),
        "board": draw.choice(tables["boards"]), "rail_plies": draw.randint(1, 3),
        "cross_beams": draw.choice([0, 0, 1, 3]), "skirt": draw.choice(["hung", "none"]),
        "float_model": draw.choice(tables["floats"]), "float_rows": draw.randint(1, 3),
        "floats_a_row": draw.randint(2, 6), "float_turned": draw.choice(["along", "across"]),
        "extra_floats": draw.randint(0, 4), "bumper": draw.choice([0, draw.uniform(0, 60)]),
        "item_weight_1": draw.choice([0, draw.uniform(0, 400)]),
        "item_x_1": draw.uniform(-4, 4), "item_y_1": draw.uniform(-2, 2),
        "holds": draw.randint(0, 4), "deck_overhang": draw.choice([0, draw.uniform(0, 4)])}
    for part in ("rail", "header", "stringer", "skirt", "cross_beam"):
        section[f"{part}_size"] = draw.choice(SIZES)
    for key in ("cleats", "ladders", "corner_wheels", "hinges", "mooring_brackets"):
        section[key] = draw.randint(0, 4)
    for k in (1, 2, 3, 4):
        section[f"extra_x_{k}"] = draw.uniform(-5, 5)
        section[f"extra_y_{k}"] = draw.uniform(-3, 3)
    return section | _readings(draw)


def _readings(draw: random.Random) -> dict[str, float | str]:
    """Return what was read on the water: all of it, some, or nothing."""
    found: dict[str, float | str] = {
        "test_corner": draw.choice(CORNER_WORDS), "test_weight": draw.uniform(100, 600),
        "shift_weight": draw.uniform(20, 300)}
    level = draw.uniform(10, 24)
    corners = draw.choice([0, 1, 4, 4, 4])
    found |= {f"launch_corner_{k}": level + draw.uniform(-2, 2) for k in range(1, corners + 1)}
    if draw.random() < 0.7:
        found |= {f"month_corner_{k}": level + draw.uniform(-3, 2) for k in (1, 2, 3, 4)}
    if draw.random() < 0.7:
        found |= {"drop_side": draw.uniform(0.5, 8), "drop_corner": draw.uniform(0.5, 12)}
    for key in ("sling_limit", "machine_limit"):
        if draw.random() < 0.6:
            found[key] = draw.uniform(500, 9000)
    return found


class Worked:
    """A job as the workbook works it out: its section types and the cells of its ledgers.

    ``types`` have what :class:`tests.second.given.Given` has, with ``done`` from the workbook
    and ``typed`` the yard's prices that were typed.
    """

    def __init__(self, job: Job, yard_share: float = 0.15):
        """Work out ``job`` with prices of the yard typed on so large a share of its lines."""
        self.job = job
        self._live = Live(model().book(job), names=False)
        typed = self._type_prices(random.Random(job.name), yard_share)
        self._live.evaluate()
        inputs = model().typing.typed
        whole = {row.key: self._value(row) for row in inputs if not self._by_type(row)}
        catalog = {table.name: self._table(table) for table in model().editable}
        self.types = [SimpleNamespace(
            letter=letter, job=whole, catalog=catalog, typed=typed,
            sec={row.key: self._value(row, letter) for row in inputs if self._by_type(row)},
            done={f"{sheet.name}.{row.key}": self._value(row, letter)
                  for sheet in model().calculation if sheet.scope == "section"
                  for row in sheet.rows if row.key})
            for letter, _ in zip(LETTERS, job.sections, strict=False)]
        for one in self.types:
            one.all = self.types
        self.ledgers = ledger_values(self._live.values())

    def _type_prices(self, draw: random.Random, share: float) -> dict[str, float]:
        typed = {}
        for row, place in model().typing.typed.items():
            if row.key.startswith("yard_price_") and draw.random() < share:
                typed[row.key] = round(draw.uniform(0, 80), 2)
                self._live.set(place, typed[row.key])
        return typed

    @staticmethod
    def _by_type(row: Row) -> bool:
        return row in model().places.sections

    def _value(self, row: Row, letter: str = "A"):
        sheet, y, x = model().places.rows[row]
        if self._by_type(row):
            x = FIRST + LETTERS.index(letter)
        return self._live.value((sheet, y, x))

    def _table(self, table) -> dict[str, dict[str, float]]:
        sheet, y, x = model().places.tables[table.name]
        return {key: {column: self._live.value((sheet, y + k, x + 1 + n))
                      for n, column in enumerate(table.columns)}
                for k, key in enumerate(table.keys)}
