"""What the papers must say, put together a second time from the results that they show.

For each line: which result, in which words and unit.  Only the results are taken from the book;
lengths are read on a tape, counts written and branches chosen here.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from math import floor

from builder.engine.values import Value, Values
from builder.language import Row
from builder.language.rows import PageLine
from builder.resolve.cells import Place
from builder.resolve.frame import FIRST
from builder.sheets import curves, launch_form, quote, site_visit, upkeep, yard, yard_tape
from builder.sheets.book import model
from tests.second.against import places
from tests.second.drawn import LETTERS
from tests.second.given import constants
from tests.second.trade_names import feet_and_inches, nearest_whole, shown
from tests.seeded.bench import Bench, Case
from tests.seeded.papers_drawing import drawing_words, off_the_paper
from tests.seeded.papers_tape import COUNTS, LENGTHS
from tests.seeded.papers_yard import yard_words
from tests.seeded.summed import differing

DASH = "–"
Due = dict[Place, Value]


class Shown:
    """The results of one book by name: of the type chosen for the yard, and of the whole job."""

    def __init__(self, case: Case, values: Values):
        self.values, self.case = values, case
        self.letter = str(case.job.inputs.get("yard_type", "A"))

    def of(self, name: str, letter: str | None = None) -> Value:
        """Return a section's result by name such as ``Parts.rails``."""
        sheet, y, _ = places()[name][0]
        return self.values[sheet, y, FIRST + LETTERS.index(letter or self.letter)]

    def job(self, name: str) -> Value:
        """Return a result or an input of the whole job by name."""
        return self.values[places()[name][0]]

    def is_used(self, letter: str) -> bool:
        """Say whether a type is built."""
        count = self.of("Sections.quantity", letter)
        return not isinstance(count, str) and count > 0

    def count(self, name: str, letter: str | None = None) -> str:
        """Return a count in words."""
        return shown(float(self.of(name, letter)), 0)


def spot(row: Row) -> Place:
    """Return where a row stands."""
    return model().places.rows[row]


def on_tape(inches: float) -> int:
    """Return a length in whole sixteenths of an inch."""
    return nearest_whole(16 * inches)


def small(sixteenths: int) -> str:
    """Return the words of a length in inches alone, such as 3 1/4"."""
    inches, part = divmod(sixteenths, 16)
    if not part:
        return f'{inches}"'
    words = feet_and_inches(part).removeprefix("0' 0")
    return f"{inches if inches else ''}{words}"


def tape(see: Shown) -> Due:
    """Return the lengths and counts of Tape."""
    due: Due = {spot(yard_tape.number): 1 + LETTERS.index(see.letter)}
    rows = list(yard_tape.sheet.rows)
    for key, length in LENGTHS.items():
        inches = length.inches(see)
        whole, said = yard_tape.wholes[key], yard_tape.words[key]
        if length.floored:
            inches = max(inches, 0.0)
            due[spot(rows[rows.index(whole) - 1])] = inches
        steps = floor(16 * inches + 1e-9) if length.down else on_tape(inches)
        due[spot(whole)] = steps
        due[spot(said)] = small(steps) if length.small else feet_and_inches(steps)
    for name, result in COUNTS.items():
        due[spot(getattr(yard_tape, name))] = see.of(result)
    lines, step = float(see.of("Setout.lines")), float(see.of("Sections.spacing"))
    for k, row in enumerate(yard_tape.mark, start=1):
        steps = on_tape(k * step) if k <= lines else 0
        due[spot(yard_tape.wholes[f"m{k}"])] = steps
        due[spot(row)] = feet_and_inches(steps)
    return due | _sides(see)


def _sides(see: Shown) -> Due:
    across, odd = see.of("Sections.run") == "across", see.of("Setout.odd_lines") == 1
    near, far = ("near", "far") if across else ("left", "right")
    panels = see.of("Sections.deck") == "panels"
    said = {
        "across": int(across), "back": near, "on": far, "odd_side": near if odd else far,
        "even_side": far if odd else near,
        "start": "the near header" if across else "the left rail",
        "finish": "the far header" if across else "the right rail",
        "marked": "both rails" if across else "both headers and cross-beams",
        "half_length": float(see.of("Sections.length")) / 2,
        "half_width": float(see.of("Sections.width")) / 2, "panels": int(panels),
        "angle_name": see.job("Inputs.stringer_angle"),
        "deck_name": see.of("Sections.panel" if panels else "Sections.board"),
        "size_name": ", ".join(str(see.of(f"Sections.{part}_size"))
                               for part in ("rail", "header", "stringer")),
        "built": see.count("Sections.quantity")}
    return {spot(getattr(yard_tape, name)): value for name, value in said.items()}


def lines_of(sheet) -> list[PageLine]:
    """Return the lines of a page."""
    return [item for item in sheet.items if isinstance(item, PageLine)]


def launch_words(see: Shown) -> Due:
    """Return what LaunchForm foretells, type by type."""
    due: Due = {}
    names = ["dry", "soaked", "pick", "hook_x", "tension_middle",
             *(f"corner_{k}" for k in (1, 2, 3, 4)), "mean", "inch", "level_side", "level_end",
             "drop_side", "drop_corner"]
    values = [line.value for line in lines_of(launch_form.sheet) if line.value is not None]
    for number, row in enumerate(values):
        letter, name = LETTERS[number // len(names)], names[number % len(names)]
        due[spot(row)] = see.of(f"Launch.{name}", letter) if see.is_used(letter) else DASH
    return due


def upkeep_words(see: Shown) -> Due:
    """Return what Upkeep says of this dock."""
    mooring = see.job("Inputs.mooring")
    stays = see.job("Inputs.stays_in") == "yes"
    gap, soak = constants("ada_2010")["gap_most"], constants("own_launch")["soak_allowed"]
    due: Due = {
        spot(upkeep.metal[0]): f"New fasteners: {see.job('Inputs.finish')}, none of another metal",
        spot(upkeep.gap[0]): f"Hinge gap at most {shown(gap, 1)} in or covered; no cable in it",
        spot(upkeep.stored): f"Winter place: {see.job('Inputs.winter_place')}",
        spot(upkeep.warranty): f"Warranty runs {shown(float(see.job('Rates.warranty')), 0)} months "
                               "from the day it is afloat and handed over.",
        spot(upkeep.lower): f"Lower than soaked by more than {shown(soak, 1)} in: a float takes "
                            "water, or growth."}
    kinds = {"chains": "Chains: none hold this dock", "guide piles": "Guide piles: none hold this "
             "dock", "shore": "Shore arms or cables: none hold this dock"}
    for row, (kind, none) in zip(upkeep.held, kinds.items(), strict=True):
        holds = kind in str(mooring)
        due[spot(row)] = none if not holds else starts(see, row, none)
    for rows, start, other in (
            ([upkeep.winter], "This dock stays in", "This dock comes out"),
            (upkeep.winter_list[:1], "Bubbler", "Out of the water"),
            (upkeep.winter_list[1:2], "Chains slack", "Chains buoyed"),
            (upkeep.winter_list[2:], "Snow cleared", "Gangway up")):
        due[spot(rows[0])] = beginning(see, rows[0], start if stays else other)
    for rows, holds, start, other in (
            (upkeep.gangway, float(see.job("Inputs.gangway_length")) > 0, "Gangway: hinge",
             "Gangway: none"),
            (upkeep.railings, see.job("Inputs.railings") == "yes", "Railing posts",
             "Railings: none"),
            (upkeep.out_of_water, see.job("Inputs.swim_float") == "yes", "Ladder, life ring",
             "Ladder and"),
            (upkeep.services, see.job("Inputs.services") == "yes", "Power: electrician",
             "Power and water lines: none")):
        due[spot(rows[0])] = beginning(see, rows[0], start if holds else other)
    for letter in LETTERS:
        read = see.of("AsBuilt.mean", letter)
        used = see.is_used(letter)
        due[spot(upkeep.launched[letter])] = see.of("Launch.mean", letter) if used else DASH
        due[spot(upkeep.soaked[letter])] = (see.of("Buoyancy.free_service", letter)
                                            if used else DASH)
        due[spot(upkeep.measured[letter])] = DASH if isinstance(read, str) else read
    return due


def beginning(see: Shown, row: Row, start: str) -> Value:
    """Return what a line says if it begins as it should, else what it should begin with."""
    said = see.values[spot(row)]
    return said if isinstance(said, str) and said.startswith(start) else start


def starts(see: Shown, row: Row, none: str) -> Value:
    """Return what a line says if it is not that nothing of the kind is there."""
    said = see.values[spot(row)]
    return DASH if said in (none, DASH) else said


def visit_words(see: Shown) -> Due:
    """Return what SiteVisit takes over from Inputs and from the published figures."""
    taken = {"depth": "low_water_depth", "high": "high_water", "flood": "flood",
             "current": "current", "fetch": "fetch", "fetch_depth": "fetch_depth",
             "salt": "salt_distance", "wave": "wave_most", "hinge": "hinge_height",
             "railings": "railings", "services": "services", "swim": "swim_float",
             "setback_asked": "setback_asked", "setback": "setback",
             "offshore_most": "offshore_most", "offshore": "offshore"}
    due: Due = {spot(getattr(site_visit, name)): see.job(f"Inputs.{key}")
                for name, key in taken.items()}
    for name, start, key in (("bed", "Bed on Inputs: ", "bed"),
                             ("parcel", "Parcel on Inputs: ", "parcel"),
                             ("high_line", "High water: ", "high_water_line"),
                             ("window", "Work window: ", "work_window"),
                             ("old_dock", "Old dock: ", "old_dock")):
        due[spot(getattr(site_visit, name))] = f"{start}{see.job(f'Inputs.{key}')}"
    asked, near = (float(see.job(f"Inputs.{k}")) for k in ("setback_asked", "setback"))
    most, out = (float(see.job(f"Inputs.{k}")) for k in ("offshore_most", "offshore"))
    due[spot(site_visit.near_line)] = beginning(
        see, site_visit.near_line, "Parcel" if near > 0 and near >= asked else "PARCEL")
    fine = out > 0 and (most <= 0 or out <= most)
    due[spot(site_visit.far_out)] = beginning(
        see, site_visit.far_out, "Offshore" if fine else "OFFSHORE")
    return due | {spot(site_visit.rail_load): constants("irc_2015")["rail_load"],
                  spot(site_visit.rail_height): constants("own_pages")["railing_height"],
                  spot(site_visit.gap): constants("ada_2010")["gap_most"]}


def quote_words(see: Shown) -> Due:
    """Return what the client reads."""
    due: Due = {}
    lines = lines_of(quote.sheet)
    for letter in LETTERS:
        line = next(x for x in lines if x.words is quote.size[letter])
        size, rails, rated = DASH, DASH, DASH
        if see.is_used(letter):
            length, width = (shown(float(see.of(f"Sections.{k}", letter)), 1)
                             for k in ("length", "width"))
            size = (f"{letter}: {see.count('Sections.quantity', letter)} × "
                    f"{see.of('Sections.purpose', letter)}, {length} × {width} ft, on "
                    f"{see.count('Parts.floats', letter)} × "
                    f"{see.of('Sections.float_model', letter)}")
            rails = (f"{see.count('Sections.rail_plies', letter)}-ply "
                     f"{see.of('Sections.rail_size', letter)} rails")
            rated = (f"{letter}, each section: {see.count('Stability.people', letter)} people "
                     f"spread out, at most {see.count('Stability.half_people', letter)} on any "
                     "one half")
        due |= {spot(line.words): size, spot(line.value): rails,
                spot(quote.rated[letter]): rated}
    for row, letters in zip(quote.decking, (LETTERS[:3], LETTERS[3:]), strict=True):
        due[spot(row)] = "Deck: " + "; ".join(f"{x} {_decked(see, x)}" for x in letters)
    return due | _quote_lines(see, lines) | _quote_money(see, lines)


def _decked(see: Shown, letter: str) -> Value:
    if not see.is_used(letter):
        return DASH
    panels = see.of("Sections.deck", letter) == "panels"
    return see.of("Sections.panel" if panels else "Sections.board", letter)


def _quote_lines(see: Shown, lines: list[PageLine]) -> Due:
    used = [x for x in LETTERS if see.is_used(x)]
    number = sum(float(see.of("Sections.quantity", x)) for x in used)
    area = sum(float(see.of("Sections.quantity", x)) * float(see.of("Parts.deck_area", x))
               for x in used)
    due: Due = {
        spot(quote.summary): f"Floating dock, {shown(number, 0)} sections, {shown(area, 0)} sq ft, "
                             f"held by {see.job('Inputs.mooring')}",
        spot(quote.frame): f"Frame: {see.job('Inputs.wood')}, {see.job('Inputs.sawn')}, "
                           f"treated to {see.job('Orders.use_above')}",
        spot(quote.metal): f"Bolts, brackets and screws: {see.job('Inputs.finish')}; one metal "
                           "in a joint",
        spot(quote.offer): f"Good for {shown(float(see.job('Rates.validity')), 0)} days. Warranty "
                           f"{shown(float(see.job('Rates.warranty')), 0)} months from handing it "
                           "over afloat.",
        spot(quote.work): f"Work: {see.job('Inputs.start_words')}",
        spot(quote.insured): f"Insurance: {see.job('Inputs.insurance')}",
        spot(quote.also_in): f"Also in: {see.job('Inputs.extra_in')}",
        spot(quote.also_out): f"Also not in: {see.job('Inputs.extra_out')}",
        spot(lines[0].words): f"For {see.job('Inputs.client')}, quote "
                              f"{see.job('Inputs.quote_number')}",
        spot(lines[0].value): see.job("Inputs.job_date"),
        spot(lines[1].words): f"From {see.job('Inputs.builder_name')}, licence:",
        spot(lines[1].value): see.job("Inputs.licence")}
    bought = {name: float(see.job(f"Rates.bought_{name}")) > 0
              for name in ("gangway", "power", "disposal")}
    long = float(see.job("Inputs.gangway_length"))
    line = next(x for x in lines if x.value is quote.gangway)
    due[spot(line.words)] = f"Gangway, {shown(long, 1)} ft" if long > 0 else "Gangway"
    return due | {spot(getattr(quote, name)): "in" if held else "not in"
                  for name, held in bought.items()}


def _quote_money(see: Shown, lines: list[PageLine]) -> Due:
    invented = str(see.job("Rates.whose")).startswith("invented")
    total = next(x for x in lines if x.value is quote.client_total)
    due: Due = {
        spot(total.words): "Total. INVENTED PRICES: this is no offer" if invented else "Total",
        spot(quote.client_total): see.job("Price.client_total"),
        spot(quote.permit): see.job("Price.fees_outside"),
        spot(quote.permit_words): "of which permit and fees, at cost; applied for by "
                                  f"{see.job('Inputs.permit_by')}",
        spot(quote.tax): see.job("Price.sales_tax")}
    names = ("deposit", *(f"stages_{k}_2" for k in (2, 3, 4, 5)))
    return due | {spot(row): see.job(f"Price.{name}")
                  for row, name in zip(quote.stages, names, strict=True)}


def curve_points(see: Shown) -> Due:
    """Return the points of the curves: those of the chosen type, and the ends of the limits."""
    due: Due = {}
    for taken, name in ((curves.live, "Buoyancy.curve_load"), (curves.free, "Buoyancy.curve_free"),
                        (curves.steps, "Stability.arm_angle"),
                        (curves.arm.rows[1:], "Stability.arm_GZ"),
                        (curves.lever, "Stability.arm_load")):
        for k, row in enumerate(getattr(taken, "rows", taken), start=1):
            due[spot(row)] = see.of(f"{name}_{k}")
    live = [float(see.of(f"Buoyancy.curve_load_{k}")) for k, _ in enumerate(curves.live.rows, 1)]
    due |= {spot(curves.ends.rows[0]): 0, spot(curves.ends.rows[1]): max(live),
            spot(curves.angle.rows[0]): 0, spot(curves.arm.rows[0]): 0}
    due |= {spot(row): see.of("Sections.deck_flotation") for row in curves.flotation.rows}
    shares = ("lumber", "floats", "decking", "hardware", "anchors", "sundries", "supplies",
              "labour", "plant", "delivery", "subcontract", "contingency", "overhead", "fees",
              "profit")
    return due | {spot(row): see.job(f"Price.shares_{name}")
                  for row, name in zip(curves.share.rows, shares, strict=True)}


PAGES: Mapping[str, object] = {
    "Tape": tape, "LaunchForm": launch_words, "Upkeep": upkeep_words, "SiteVisit": visit_words,
    "Quote": quote_words, "Curves": curve_points,
    "Drawing": lambda see: drawing_words(see, spot),
    "Yard": lambda see: yard_words(see, spot, lines_of(yard.sheet))}


class Papers:
    """The finder of what a paper says wrongly."""

    def __init__(self, bench: Bench):
        self.bench = bench

    def __call__(self, case: Case, values: Values) -> Iterable[Place]:
        """Yield the cells of papers that say something else than is due."""
        if case.kind != "sound":
            return
        for sheet, write in PAGES.items():
            if values[self.bench.states[sheet]] != 2:
                yield self.bench.states[sheet]
                continue
            yield from differing(write(Shown(case, values)), values)
        yield from off_the_paper(values)
