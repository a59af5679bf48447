"""The papers: Quote, SiteVisit, Upkeep.  What the client sees, what is live, what is complete."""

from __future__ import annotations

import itertools

import pytest

from builder.language import Ask, Text, children, dependencies
from builder.language.cells import DASH
from builder.language.expressions import Num, Op
from builder.language.proofs import unit_fault
from builder.language.ranges import Ranges
from builder.language.rows import Block, Note, PageLine, Row
from builder.language.units import TEXT
from builder.language.values import value_of
from builder.resolve.calculation_sheets import PAGE_TOP, PAGE_WIDTHS, note_lines
from builder.sheets import (
    as_built,
    buoyancy,
    catalog,
    inputs_pages,
    launch,
    orders,
    parts,
    price,
    quote,
    rates,
    reference,
    site_visit,
    stability,
    upkeep,
)
from builder.sheets import inputs as job
from builder.sheets import inputs_site as site
from builder.sheets import sections as sec
from builder.sheets import sections_site as held
from builder.workbook.heights import LINE, column_room, lines, text_width
from builder.workbook.paging import MARGINS
from builder.workbook.styles import BODY, STYLES
from tests.trade.filled import with_defaults

PAGES = [quote.sheet, site_visit.sheet, upkeep.sheet]
FORMULAS = 300
"""Formulas of the papers and their inputs, at most (our own budget)."""

SHOWN = [price.client_total, price.fees_outside, price.sales_tax,
         *(amount for _, amount in price.stages)]
"""The amounts of money a client sees."""

TERMS = [rates.whose, rates.validity, rates.warranty]

JOB = {
    job.water: "fresh", job.low_water_depth: 8, job.stays_in: "no", job.salt_distance: 1e6,
    job.use: "private", job.wood: reference.WOOD_PAIRS.keys[0], job.sawn: "dressed",
    job.incised: "no", job.longest_stock: 16, job.finish: reference.FINISHES.keys[0],
    job.stringer_angle: catalog.ANGLES.keys[0], job.corner_inside: catalog.CORNERS.keys[0],
    job.corner_outside: catalog.CORNERS.keys[0], job.washer_plate: catalog.PLATES.keys[0],
    job.lag: reference.LAGS.keys[1], job.lag_length: 3, job.client: "A client",
    job.job_date: "2 May", site.wind_speed: 105, site.wind_kind: site.WINDS.keys[0],
    site.fetch: 2500, site.fetch_depth: 12, site.current: 0, site.high_water: 2,
    site.mooring: site.MOORINGS.keys[0],
}
SECTION = {
    sec.purpose: "walkway", sec.quantity: 2, sec.length: 16, sec.width: 8, sec.run: "across",
    sec.stringer_size: "2x8", sec.spacing: 12, sec.rail_size: "2x8", sec.rail_plies: 2,
    sec.header_size: "2x8", sec.deck: "panels", sec.float_model: "Box float 24 x 48 x 16",
    sec.float_rows: 2, sec.floats_a_row: 3, held.holds: 4,
}
PAID = {amount: 1000.0 * number for number, amount in enumerate(SHOWN, start=1)}


def worked(*typed: dict) -> dict:
    """Return the values of all inputs; words that are not typed read as a dash."""
    known = {**JOB, **SECTION, **PAID}
    for more in typed:
        known.update(more)
    known = with_defaults(known)
    for ask in rates.sheet.inputs:
        known.setdefault(ask, value_of(ask.default, known))
    for ask in job.sheet.inputs:
        if ask.free:
            known.setdefault(ask, DASH)
    return known


def page_lines(sheet) -> list[PageLine]:
    return [item for item in sheet.items if isinstance(item, PageLine)]


def parts_of(e):
    """Yield every part of an expression, and of none of its rows."""
    yield e
    for part in children(e):
        yield from parts_of(part)


def written(sheet) -> str:
    """Return all that may stand on a page: words that stand, and every word of the live ones."""
    found = []
    for item in sheet.items:
        if isinstance(item, Block):
            found.append(item.title)
        elif isinstance(item, Note):
            found.append(item.text)
        elif isinstance(item, PageLine):
            if isinstance(item.words, str):
                found.append(item.words)
            for row in item.rows:
                found += [p.value for p in parts_of(row.expr) if isinstance(p, Text)]
    return " ".join(found).lower()


def behind(row: Row, stop) -> set[Row]:
    """Return the rows a row rests on at any depth; what lies behind ``stop`` is left out."""
    found: set[Row] = set()
    waiting = [row]
    while waiting:
        here = waiting.pop()
        e = getattr(here, "expr", None)
        e = getattr(here, "default", None) if e is None else e
        for need in [] if e is None or here in stop else dependencies(e):
            if need not in found:
                found.add(need)
                waiting.append(need)
    return found


# Of money the client sees what he pays.

def test_quote_shows_the_amounts_the_client_pays_and_each_once():
    shown = [line.value.expr for line in page_lines(quote.sheet)
             if line.value is not None and line.value.unit != TEXT]
    assert [id(e) for e in shown] == [id(row) for row in SHOWN]


def test_quote_rests_on_no_cost_or_margin_but_through_those_amounts():
    bought = set(rates.bought.values())
    for row in quote.sheet.rows:
        reached = behind(row, SHOWN) - set(SHOWN) - bought
        money = [r.where for r in reached if "$" in r.unit]
        typed = [r.where for r in reached if r.sheet is rates.sheet and r not in TERMS]
        prices = [r.where for r in reached if r.sheet is price.sheet]
        assert money + typed + prices == [], row.where


def test_quote_asks_of_a_bought_thing_only_whether_it_is_in_the_price():
    bought = set(rates.bought.values())
    seen = set()
    for row in quote.sheet.rows:
        for part in parts_of(row.expr):
            inside = [p for p in children(part) if p in bought]
            assert not inside or (isinstance(part, Op) and part.op == ">"
                                  and isinstance(part.b, Num) and part.b.value == 0), row.where
            seen.update(inside)
    assert len(seen) >= 3
    free = worked()
    paid = worked({rates.bought["gangway"]: 900.0})
    assert value_of(quote.gangway, free) == "not in"
    assert value_of(quote.gangway, paid) == "in"


def test_what_is_read_from_orders_is_a_word():
    for row in quote.sheet.rows:
        for need in dependencies(row.expr):
            assert need.sheet is not orders.sheet or need.unit == TEXT, row.where


def test_invented_prices_are_said_to_be_no_offer():
    words = next(line.words for line in page_lines(quote.sheet)
                 if line.value is quote.client_total)
    assert "no offer" in value_of(words, worked())
    assert value_of(words, worked({rates.whose: rates.WHOSE.keys[1]})) == "Total"


# The words hold live values.

@pytest.mark.parametrize(("change", "row", "there"), [
    ({sec.length: 20}, quote.size["A"], "20.0 × 8.0 ft"),
    ({sec.width: 6.5}, quote.size["B"], "16.0 × 6.5 ft"),
    ({sec.quantity: 7}, quote.size["F"], "7 × walkway"),
    ({sec.floats_a_row: 4}, quote.size["C"], "on 8 × Box"),
    ({sec.float_model: "Box float 24 x 60 x 16"}, quote.size["A"], "24 x 60"),
    ({job.wood: reference.WOOD_PAIRS.keys[5]}, quote.frame, reference.WOOD_PAIRS.keys[5]),
    ({job.water: "sea"}, quote.frame, "UC4B"),
    ({job.finish: reference.FINISHES.keys[1]}, quote.metal, reference.FINISHES.keys[1]),
    ({sec.panel: catalog.PANELS.keys[3]}, quote.decking[0], catalog.PANELS.keys[3]),
    ({sec.deck: "boards", sec.board: catalog.BOARDS.keys[2]}, quote.decking[1],
     catalog.BOARDS.keys[2]),
    ({rates.validity: 45}, quote.offer, "45 days"),
    ({rates.warranty: 24}, quote.offer, "24 months"),
    ({inputs_pages.permit_by: "the builder"}, quote.permit_words, "the builder"),
    ({rates.warranty: 18}, upkeep.warranty, "18 months"),
    ({job.finish: reference.FINISHES.keys[1]}, upkeep.metal[0], reference.FINISHES.keys[1]),
    ({inputs_pages.parcel: "Lot 7"}, site_visit.parcel, "Lot 7"),
])
def test_a_changed_input_changes_the_words(change, row, there):
    assert there in value_of(row, worked(change))
    assert there not in value_of(row, worked())


def test_rails_are_named_by_plies_and_size():
    line = next(x for x in page_lines(quote.sheet) if x.words is quote.size["A"])
    assert value_of(line.value, worked()) == "2-ply 2x8 rails"
    assert value_of(line.value, worked({sec.rail_plies: 1, sec.rail_size: "2x10"})) == \
        "1-ply 2x10 rails"


@pytest.mark.parametrize("letter", "ABCDEF")
def test_rated_load_is_that_of_stability_in_words(letter):
    several = set()
    for width in (6, 8, 10):
        known = worked({sec.width: width})
        people, half = (value_of(r, known) for r in (stability.people, stability.half_people))
        text = value_of(quote.rated[letter], known)
        assert text == (f"{letter}, each section: {people:.0f} people spread out, at most "
                        f"{half:.0f} on any one half")
        several.add(text)
    assert len(several) > 1


@pytest.mark.parametrize("letter", "ABCDEF")
def test_a_type_that_is_not_used_reads_as_a_dash(letter):
    known = worked({sec.quantity: 0})
    line = next(x for x in page_lines(quote.sheet) if x.words is quote.size[letter])
    assert [value_of(r, known) for r in (line.words, line.value, quote.rated[letter],
                                         upkeep.launched[letter], upkeep.soaked[letter])] == \
        [DASH] * 5
    decks = value_of(quote.decking["ABCDEF".index(letter) // 3], known)
    assert f"{letter} {DASH}" in decks


# One page, and no line longer than its row.

def longest(table) -> str:
    return max(table.keys, key=text_width)


LONGEST = {
    **{ask: "e" * ask.most for ask in vars(inputs_pages).values()
       if isinstance(ask, Ask) and ask.free},
    sec.quantity: 99, sec.length: 60.0, sec.width: 24.0, sec.rail_plies: 3,
    sec.purpose: longest(reference.PURPOSES), sec.float_model: longest(catalog.FLOATS),
    sec.rail_size: longest(reference.LUMBER), parts.floats: 124, stability.people: 999,
    stability.half_people: 999, sec.deck: "boards", sec.board: longest(catalog.BOARDS),
    sec.panel: longest(catalog.PANELS), job.wood: longest(reference.WOOD_PAIRS),
    job.sawn: longest(reference.SAWN), job.finish: longest(reference.FINISHES),
    orders.use_above: "UC4A", site.gangway_length: 120.0, rates.validity: 365,
    rates.warranty: 240, site.bed: longest(site.BEDS),
}


@pytest.mark.parametrize("page", PAGES, ids=lambda s: s.name)
@pytest.mark.parametrize("answer", [0, 1])
@pytest.mark.parametrize("kind", range(3))
def test_live_words_stay_on_one_line_whatever_is_chosen(page, answer, kind):
    """A row keeps its height when its words change, so none may need a second line."""
    word = reference.YES_NO.keys[answer]
    known = worked(LONGEST, {
        job.stays_in: word, inputs_pages.swim_float: word, inputs_pages.railings: word,
        inputs_pages.services: word, site.mooring: site.MOORINGS.keys[kind],
        site.gangway_length: 120.0 * answer,
        inputs_pages.permit_by: inputs_pages.APPLICANTS.keys[answer]})
    rooms = [column_room(width) for width in PAGE_WIDTHS["page"]]
    too_long = []
    for line in page_lines(page):
        for row, room in ((line.words, rooms[1]), (line.value, rooms[2])):
            if isinstance(row, Row) and row.unit == TEXT and row is not quote.summary:
                text = value_of(row, known)
                if text_width(text) > room:
                    too_long.append((text, text_width(text), room))
    assert too_long == []


def test_the_quote_is_one_printed_page():
    """Rows as high as they are written, against letter paper at the scale of its width."""
    widths = PAGE_WIDTHS["page"]
    wide = sum(int(w * 7 + 5) for w in widths) * 72 / 96
    paper = (8.5 - MARGINS["left"] - MARGINS["right"]) * 72
    scale = int(100 * paper / wide) / 100
    room = (11 - MARGINS["top"] - MARGINS["bottom"]) * 72 / min(scale, 1)
    high = LINE * (PAGE_TOP - 1 + STYLES["title"]["font_size"] / BODY)
    for item in quote.sheet.items:
        if isinstance(item, Block):
            high += LINE * STYLES["block"]["font_size"] / BODY
        elif isinstance(item, Note):
            high += LINE * len(note_lines(quote.sheet, item))
        else:
            text = item.words if isinstance(item.words, str) else ""
            high += LINE * lines(text, column_room(widths[1]))
    assert high <= room - LINE, f"{high:.0f} pt in {room:.0f}"


# The lists are whole.

@pytest.mark.parametrize(("page", "topics"), [
    (quote.sheet, (
        "permit", "electrician", "engineer's seal", "gangway", "old dock", "foam", "insurance",
        "warranty", "handing it over", "changes are written", "bed other than found", "weather",
        "ice", "good for", "signature", "engineer's design", "swimming", "snow", "rated load",
        "one metal", "survey", "railings", "life ring", "reflectors", "storing")),
    (site_visit.sheet, (
        "probe", "fetch", "wake", "ice: thickest", "initials", "date", "parcel", "setback",
        "offshore", "high-water line", "work window", "old dock", "foam", "ladder", "life ring",
        "reflectors", "owner's name", "railing posts", "by whom", "no cable in a hinge gap",
        "hinge gap at most", "cover", "bubbler", "stored", "low water", "current", "timber frames",
        "anchor point", "not a tree", "life jacket", "depth where it is launched")),
    (upkeep.sheet, (
        "floats", "freeboard", "bolts", "hinge", "chains", "shackles", "hoops free", "decking",
        "carpet", "railing", "ladder", "life ring", "reflectors", "owner's name", "electrician",
        "extinguisher", "load plate", "storm", "no cable", "covered", "bubbler", "slack",
        "winter place", "snow", "drown", "do not burn", "foam stays enclosed",
        "lifted section", "life jackets", "trees", "drift", "warranty")),
])
def test_every_topic_stands_on_its_page(page, topics):
    text = written(page)
    assert [topic for topic in topics if topic not in text] == []


def test_what_is_looked_at_has_a_box_and_a_blank():
    for page, least in ((upkeep.sheet, 25), (site_visit.sheet, 20)):
        ticked = [line for line in page_lines(page) if line.tick]
        assert len(ticked) >= least and all(line.blank for line in ticked)


@pytest.mark.parametrize("kind", range(3))
def test_upkeep_asks_about_what_holds_this_dock(kind):
    said = [value_of(row, worked({site.mooring: site.MOORINGS.keys[kind]}))
            for row in upkeep.held]
    assert ["none hold" not in text for text in said] == [k == kind for k in range(3)]


def test_winter_is_that_of_the_dock():
    out = [value_of(r, worked()) for r in (upkeep.winter, *upkeep.winter_list)]
    stays = [value_of(r, worked({job.stays_in: "yes"}))
             for r in (upkeep.winter, *upkeep.winter_list)]
    assert "Out of the water" in " ".join(out) and "Bubbler" in " ".join(stays)
    assert all(a != b for a, b in zip(out, stays, strict=True))


def test_a_swim_float_wants_more_than_a_ladder():
    plain = value_of(upkeep.out_of_water[0], worked())
    alone = value_of(upkeep.out_of_water[0], worked({inputs_pages.swim_float: "yes"}))
    assert "reflectors" in alone and "reflectors" not in plain
    assert "adder" in plain and "ring" in plain


def test_the_first_visit_comes_before_anything_is_typed():
    """Until then live words read as a dash, so a line with a blank has words that stand."""
    asked = [line for line in page_lines(site_visit.sheet) if line.tick or line.blank]
    assert len(asked) > 50 and all(isinstance(line.words, str) for line in asked)


def test_rail_posts_and_hinge_gap_show_the_figures_on_data():
    known = worked()
    assert [value_of(r, known) for r in (site_visit.rail_load, site_visit.rail_height,
                                         site_visit.gap)] == [200, 42, 0.5]
    assert "0.5 in" in value_of(upkeep.gap[0], known)


@pytest.mark.parametrize(("asked", "is_", "most", "out"), itertools.product(
    (0, 10), (0, 9.9, 10, 25), (0, 40), (0, 39, 40, 41)))
def test_parcel_line_and_reach_offshore_are_judged_in_words(asked, is_, most, out):
    known = worked({inputs_pages.setback_asked: asked, inputs_pages.setback: is_,
                    inputs_pages.offshore_most: most, inputs_pages.offshore: out})
    near = value_of(site_visit.near_line, known)
    far = value_of(site_visit.far_out, known)
    assert near.startswith("PARCEL LINE") == (is_ == 0 or is_ < asked)
    assert far.startswith("OFFSHORE") == (out == 0 or (most > 0 and out > most))


@pytest.mark.parametrize("letter", "ABCDEF")
def test_freeboard_history_begins_with_what_was_predicted_and_read(letter):
    known = worked({launch.mean: 17.25, as_built.mean: 16.5})
    assert value_of(upkeep.launched[letter], known) == 17.25
    assert value_of(upkeep.measured[letter], known) == 16.5
    assert value_of(upkeep.soaked[letter], known) == value_of(buoyancy.free_service, known)


def test_history_has_four_corners_and_a_blank_for_each_of_twelve_years():
    years = [x for x in page_lines(upkeep.sheet)
             if isinstance(x.words, str) and x.words.startswith("Year")]
    assert len(years) == 12
    assert all(x.blank and all(f"{n} __" in x.words for n in (1, 2, 3, 4)) for x in years)


# The declaration itself.

@pytest.mark.parametrize("page", PAGES, ids=lambda s: s.name)
def test_units_and_ranges_are_proved(page):
    ranges = Ranges()
    for row in page.rows:
        assert unit_fault(row) is None, row.where
        ranges.of(row)
    assert ranges.faults == []


def test_jobs_without_these_inputs_stay_good():
    own = [a for a in vars(inputs_pages).values() if isinstance(a, Ask)]
    assert len(own) >= 18
    assert [a.where for a in own if not a.free and a.default is None] == []


def test_the_papers_keep_to_their_budget():
    formulas = sum(len(page.rows) for page in PAGES)
    typed = 3 * sum(isinstance(a, Ask) for a in vars(inputs_pages).values())
    assert formulas + typed <= FORMULAS
