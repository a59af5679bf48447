"""A little workbook declared here: a plank on floats, with checks of every kind and a ledger.

It has inputs of every kind, so that a wrong one can be put in each.
"""

from __future__ import annotations

from datetime import datetime
from types import ModuleType, SimpleNamespace

from builder.engine.ironcalc_engine import Live
from builder.jobs import Job
from builder.language import (
    Constant,
    Sheet,
    Table,
    absolute,
    greatest,
    root,
    total,
    when,
    whole_up,
)
from builder.resolve.book import Declared, Model
from builder.resolve.frame import DASH, FIRST, MASTER, STATE, WANTING
from builder.resolve.start_sheet import Front

OK, LOOK, NOT_OK, NEEDS, UNUSED = "OK", "LOOK", "NOT OK", "NEEDS INPUT", "not used"


def constant(key, symbol, unit, value):
    return Constant(key, key.capitalize(), symbol, unit, value, "own", "1", "our judgement")


def words(name, *keys):
    return Table(name, name.capitalize(), "own", name, {}, list(keys), [()] * len(keys),
                 [("", "our own words", "")] * len(keys))


SOURCES = Table("sources", "Sources", "own", "key", {"title": "text"}, ["own"], [("Ours",)],
                [("", "seen", "")])


def modules() -> SimpleNamespace:
    """Return the tiny workbook's modules, declared anew."""
    held, Sheet.look = Sheet.look, constant("look", "", "", 0.9)
    try:
        return _modules()
    finally:
        Sheet.look = held


def _modules() -> SimpleNamespace:
    job, sec, catalog, work, floating, takeoff = (
        ModuleType(n) for n in ("job", "sec", "catalog", "work", "floating", "takeoff"))
    s = job.sheet = Sheet("Inputs", "Job", scope="job", about="The whole job.")
    s.block("Job")
    for key in ("job_name", "site", "designer", "checker", "job_date", "revision"):
        setattr(job, key, s.write(key.replace("_", " ").capitalize()))
    s.block("Loads")
    job.use = s.choose("Use", words("uses", "private", "public"), "own")
    job.load = s.ask("Load", "q", "psf", 10, 100, "own")
    job.share = s.ask("Share allowed", "k", "", 0.5, 1, "own", default=0.8)
    job.least_free = s.ask("Least freeboard", "F", "in", 1, 30, "own", default=when(
        job.use.is_("public"), constant("free_public", "F_p", "in", 12),
        constant("free_private", "F_0", "in", 6)))
    job.idle = s.ask("Feeds nothing", "z", "", 0, 5, "own")

    catalog.sheet = Sheet("Catalog", "Catalog", scope="catalog", about="Invented.")
    catalog.FLOATS = Table(
        "floats", "Floats", "own", "float", {"plan": "ft²", "depth": "in", "price": "$"},
        ["small", "large"], [(4, 12, 50), (12, 20, 180.5)], [("", "", "invented")] * 2,
    ).editable(plan=(1, 40), depth=(6, 40), price=(0, 1000))
    catalog.tables = [catalog.FLOATS]

    s = sec.sheet = Sheet("Sections", "Sections", about="One column a type.")
    s.block("What it is")
    sec.model = s.choose("Float", catalog.FLOATS, "own")
    sec.count = s.ask("How many", "n", "each", 1, 99, "own", whole=True)
    sec.length = s.ask("Length", "L", "ft", 4, 60, "own")
    sec.width = s.ask("Width", "B", "ft", 2, 24, "own",
                      default=constant("usual width", "B_0", "ft", 6))
    s.block("Floats")
    sec.floats = s.ask("Floats", "n_f", "each", 0, 40, "own", default=4, whole=True)
    sec.lean = s.ask("Lean", "e", "in", -20, 20, "own", default=0)
    sec.turned = s.choose("Turned", words("ways", "along", "across"), "own", default="along")
    sec.note = s.write("Note", most=20)
    sec.live = s.ask("Load of this type", "q_s", "psf", 5, 200, "own",
                     default=job.load * when(sec.turned.is_("along"), 1, 2))

    s = work.sheet = Sheet("Work", "Work", about="Strength.")
    s.block("Strength")
    work.area = s.row("Area", "A", "ft²", sec.length * sec.width, "geometry", chief=True)
    work.weight = s.row("Load", "P", "lb", sec.live * work.area, "statics")
    work.strength = s.row("Strength", "R", "lb", job.share * constant("f", "f", "psf", 50)
                          * work.area, "own")
    work.stress = s.check("Load on it", work.weight, at_most=work.strength, source="own 1",
                          cure="Less load. Or more floats.", amount=("less", "lb", greatest(
                              work.weight - work.strength, 0)), group="Strength")
    work.slender = s.check("Length over width", s.row("Slenderness", "λ", "", sec.length
                                                      / sec.width, "own"),
                           at_most=constant("slender", "λ_0", "", 5), source="own 2",
                           look_at=3, worst="LOOK", group="Strength")

    s = floating.sheet = Sheet("Floating", "Floating", about="Freeboard.")
    line = s.find("Float, its line", catalog.FLOATS, sec.model)
    floating.plan = s.row("Plan of floats", "A_f", "ft²", sec.floats * line["plan"], "geometry")
    floating.free = s.row("Freeboard", "F_b", "in", line["depth"] - sec.lean
                          - (work.weight / (constant("water", "γ", "pcf", 62.4)
                                            * greatest(floating.plan, constant("a", "a", "ft²", 1)))
                             ).in_("in"), "Archimedes", chief=True)
    floating.check = s.check("Freeboard", floating.free, at_least=job.least_free, source="own 3",
                             look_at=constant("good", "F_g", "in", 8), cure="More floats.",
                             amount=("floats", "each", whole_up(
                                 work.weight / constant("each", "", "lb", 250))), group="Floating")
    floating.leaning = s.check("Lean", s.row("Lean either way", "e_0", "in", absolute(sec.lean),
                                             "own"), at_most=constant("l", "l", "in", 10),
                               look_at=constant("some", "l_1", "in", 5), source="own 4",
                               group="Floating")
    floating.side = s.row("Side of a square", "b", "ft", root(floating.plan), "geometry")

    s = takeoff.sheet = Sheet("Takeoff", "Takeoff", scope="ledger", about="To order.",
                              columns={"quantity": "Quantity", "cost": "Cost"})
    s.block("Floats")
    takeoff.floats = s.ledger("Floats", "as chosen", "each",
                              quantity=(total(sec.floats, sec.count), "", 0),
                              cost=(total(s_price(work, sec, catalog), sec.count), "$", 2))
    takeoff.deck = s.ledger("Deck", "", "ft²", quantity=(total(work.area, sec.count), "ft²", 1))
    takeoff.twice = s.ledger("Twice the deck", "", "ft²",
                             quantity=(2 * takeoff.deck["quantity"], "ft²", 1))
    return SimpleNamespace(job=job, sec=sec, catalog=catalog, work=work, floating=floating,
                           takeoff=takeoff)


def s_price(work, sec, catalog):
    """Declare, on Work, what the floats of a section cost."""
    work.price = work.sheet.row("Floats, price", "c", "$", sec.floats
                                * catalog.FLOATS.find(sec.model)["price"], "own", digits=2)
    return work.price


def declared(m: SimpleNamespace, *, calculation=None, families=()) -> Declared:
    """Return the declaration of the modules."""
    front = Front("Tiny", ("What it is.",), ("1. Fill in.",),
                  (("Deck above water", m.floating.free),), (), (),
                  ("Care.",),
                  ("Nothing more.",), ("First.",),
                  (("Is it strong?", ("Strength",)), ("Is all well?", ("Strength", "Floating"))))
    return Declared(m.job, m.sec, m.catalog, calculation or (m.work, m.floating, m.takeoff),
                    families, SOURCES, front, "Tiny", "0.1")


INPUTS = {"job_name": "Plank", "site": "Pond", "designer": "A", "checker": "B",
          "job_date": "1 May", "revision": "0", "use": "private", "load": 20, "idle": 1}
SECTION = {"model": "large", "count": 2, "length": 10}


class Tiny:
    """The tiny workbook at work: put something in a cell, read what it says."""

    def __init__(self, inputs=None, sections=None, catalog=None):
        self.m = modules()
        self.model = Model(declared(self.m))
        self.book = self.model.book(Job(
            "tiny", "Tiny", "About it.", datetime(2026, 5, 1), dict(inputs or INPUTS),
            tuple(sections if sections is not None else [dict(SECTION)]), catalog or {}))
        self.live = Live(self.book)
        self.live.evaluate()

    def typed(self, row, section=0):
        """Return the cell in which an input is typed."""
        sheet, y, x = self.model.typing.typed[row]
        return sheet, y, x + (section if row in self.model.places.sections else 0)

    def put(self, row, value, section=0):
        """Put a value in the cell of an input."""
        self.live.set(self.typed(row, section), value)
        self.live.evaluate()

    def value(self, row, section=0):
        """Return the value of a row."""
        sheet, y, x = self.model.places.rows[row]
        return self.live.value((sheet, y, x + (
            section if row in self.model.places.sections else 0)))

    def state(self, row, section=0):
        """Return the state of an input: 1 usable, 0 not."""
        sheet, y, x = self.model.typing.states[row]
        return self.live.value((sheet, y, x + (
            section if row in self.model.places.sections else 0)))

    def verdict(self, check, section=0):
        """Return the word of a check."""
        return self.value(check.verdict, section)

    def ratio(self, check, section=0):
        """Return the ratio of a check."""
        return self.value(check.ratio, section)

    def sheet_state(self, sheet, section=0):
        """Return the state of a calculation sheet: 0 not used, 1 needs input, 2 ready."""
        return self.live.value((sheet, STATE, FIRST + section))

    @property
    def master(self):
        """The verdict of the whole job."""
        return self.live.value(("Checks", 1, 1))

    @property
    def job_wanted(self):
        """The first of the job's inputs that is wanted, as Start names it."""
        start = next(s for s in self.book.sheets if s.name == "Start")
        y = next(c.row for c in start.cells
                 if str(c.content).startswith("Inputs: first input wanted"))
        x = next(c.col for c in start.cells if c.row == y and c.kind == "formula")
        return self.live.value(("Start", y, x))

    def wanted(self, section=0):
        """Return the first input wanted in a section column, as Sections and Start name it."""
        here = self.live.value(("Sections", WANTING, FIRST + section))
        row = next(c.row for s in self.book.sheets if s.name == "Start" for c in s.cells
                   if str(c.content).startswith("Sections: first input wanted"))
        assert self.live.value(("Start", row, FIRST + section)) == here
        return here

    def errors(self):
        """Return every formula cell that shows an error value."""
        return {place: value for place, value in self.live.values().items()
                if isinstance(value, str) and value.startswith("#")}

    def masters(self):
        """Return what every sheet shows as the verdict of the whole job."""
        return {s.name: self.live.value((s.name, MASTER, 1)) for s in self.book.sheets}


__all__ = ["DASH", "INPUTS", "LOOK", "NEEDS", "NOT_OK", "OK", "SECTION", "UNUSED", "Tiny",
           "constant", "declared", "modules", "words"]
