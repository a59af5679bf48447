"""Checks, summed up a second time from the verdicts and ratios of the sheets; heads of sheets."""

from __future__ import annotations

from collections.abc import Iterable

from builder.engine.compare import same
from builder.engine.values import Value, Values
from builder.language import Row
from builder.resolve.cells import Place
from builder.resolve.frame import FIRST, HEAD, STATE
from builder.sheets.book import model
from tests.second.against import places
from tests.second.drawn import LETTERS
from tests.second.given import constants
from tests.seeded.bench import Bench

DASH = "–"
ORDER = ("NOT OK", "NEEDS INPUT", "LOOK", "OK")
MASTER: Place = ("Checks", 1, 1)
COLUMNS = range(FIRST, FIRST + len(LETTERS))


def across(row: Row, values: Values) -> list[Value]:
    """Return what a section row shows for the six types."""
    sheet, y, _ = model().places.rows[row]
    return [values[sheet, y, x] for x in COLUMNS]


def is_alike(a: Value, b: Value) -> bool:
    """Say whether two cells show the same; a truth value counts as its number."""
    if isinstance(a, str) or isinstance(b, str):
        return a == b
    return same(float(a), float(b))


def differing(due: dict[Place, Value], values: Values) -> Iterable[Place]:
    """Yield the places that do not show what is due."""
    for place, value in due.items():
        if place not in values or not is_alike(values[place], value):
            yield place


def checks(values: Values) -> dict[Place, Value]:
    """Return what the lines of Checks must show."""
    due: dict[Place, Value] = {}
    failing, looking = 0, 0
    for group, lines in model().checks.groups.items():
        first, _ = model().checks.rows[group]
        for y, (sheet, check) in enumerate(lines, start=first):
            words = across(check.verdict, values)
            due |= {("Checks", y, x): word for x, word in zip(COLUMNS, words, strict=True)}
            ready = ([values[sheet.name, STATE, x] for x in COLUMNS] if check.gate is None
                     else across(check.gate, values))
            ratios = across(check.ratio, values)
            judged = [k for k in range(len(LETTERS)) if ready[k] == 2]
            worst = max((r for r in ratios if not isinstance(r, str)), default=0.0)
            at = next((k for k in judged if not isinstance(ratios[k], str)
                       and ratios[k] >= worst - 1e-9), None)
            due["Checks", y, 2] = worst if judged else DASH
            due["Checks", y, 3] = LETTERS[at] if judged and at is not None else DASH
            if check.amount is not None:
                fails = at is not None and worst > 1.000000001
                due["Checks", y, 11] = across(check.amount, values)[at] if fails else DASH
            failing += "NOT OK" in words
            looking += "LOOK" in words
            due |= {("Checks", y, 15): failing, ("Checks", y, 16): looking}
    return due


def judged(values: Values) -> dict[Place, Value]:
    """Return limits, where LOOK begins and words of all checks, by the rule of verdicts."""
    due: dict[Place, Value] = {}
    for lines in model().checks.groups.values():
        for sheet, check in lines:
            rows = (check.of, check.limit, check.ratio, check.verdict)
            for k, (value, limit, ratio, word) in enumerate(zip(
                    *(across(row, values) for row in rows), strict=True)):
                if isinstance(ratio, str):
                    due |= _unjudged(sheet.name, check, values, k)
                    continue
                due |= _judged(check, values, k, value, limit, ratio, word)
    return due


def _unjudged(sheet: str, check, values: Values, k: int) -> dict[Place, Value]:
    """Return the word of a check that waits for its inputs, or whose column is not used."""
    name, y, x = model().places.rows[check.verdict]
    state = values[sheet, STATE, FIRST + k]
    if check.gate is not None:
        if state != 2:
            return {}
        gate = model().places.rows[check.gate]
        state = values[gate[0], gate[1], gate[2] + k]
    return {(name, y, x + k): {0: "not used", 1: "NEEDS INPUT"}.get(state, values[name, y, x + k])}


def _judged(check, values: Values, k: int, value: float, limit: float, ratio: float,
            word: Value) -> dict[Place, Value]:
    def spot(row: Row) -> Place:
        sheet, y, x = model().places.rows[row]
        return sheet, y, x + k

    most = check.kind == "at most"
    due: dict[Place, Value] = {spot(check.ratio): value / limit if most
                               else limit / max(value, limit / 99)}
    if check.amount is not None and ratio <= 1 and check.label not in ALWAYS_TOLD:
        due[spot(check.amount)] = 0.0
    look = LOOK_FROM
    if check.look is not None:
        look = values[spot(check.look)]
        if check.label in AT_LIMIT:
            due[spot(check.look)] = 1.0
        elif start := STARTS.get(check.label):
            begins = min(named(name, values, k) for name in start)
            due[spot(check.look)] = begins / limit if most else limit / begins
    if word in ("OK", "LOOK", "NOT OK"):
        worst = check.verdict.worst
        over, near = ratio > 1.000000001, worst != "LOOK" and ratio > look
        due[spot(check.verdict)] = worst if over else "LOOK" if near else "OK"
    return due


def named(name: str, values: Values, k: int) -> float:
    """Return an input or a result by name, of the type of a number."""
    (sheet, y, x), by_type = places()[name]
    return float(values[sheet, y, x + k if by_type else x])


ALWAYS_TOLD = (
    "Panel joints on a stringer", "(a) Deck above water under the flotation load",
    "(b) Floats under water at the capacity load", "(c) Live load that puts the floats under",
    "Tilt under the point load",
    "Stable empty: metacentre above the centre of gravity",
    "Stable under standing people: metacentre above the centre of gravity",
    "Tilt with one half loaded", "Gangway wheels against the point load of Framing",
    "Bolts in each leg of the angle", "Clearance over the bed at low water")
"""Checks whose cure is a size to come to; of the others a check that passes asks for nothing."""
LOOK_FROM = constants("own")["look_from"]
AT_LIMIT = (
    "Longest frame piece against stock", "Section on water: floats neither under nor out",
    "Floats fit across", "Floats fit along", "Floats inside the frame",
    "Extra floats clear of the others", "Stringer spacing under the deck",
    "Timber as delivered against its weight just dry", "Stable in every case",
    "Gangway's weight at rest as typed on Sections", "Gangway slope",
    "Accessible route: length of the gangway", "Gangway clear width",
    "Gangway wheels against the point load of Framing",
    "Two or more legs, piles or arms hold this section",
    "Every section's force is held somewhere", "Drift at low water",
    "Hanging chain as typed on Sections", "Guide pile, depth within the rule",
    "Guide pile, top above the highest water", "Edge distance, either edge loaded",
    "Outermost bolts across the grain", "Edge distance at the corner", "Frame held square",
    "Floats held both ways")
"""Checks that pass right up to the limit: counts, fits and rules, in which near is no warning."""
STARTS = {
    "Floats under water at the capacity load, aged": ("Inputs.aged_ok",),
    "Clearance over the bed at low water": ("Inputs.clearance_least",),
    "Level at rest, foot at the worse end (G0)": ("Inputs.tilt_rest_ok", "Stability.rest_most"),
    "Tilt, foot at the worse end (G1, G3)": ("Inputs.tilt_half_ok",),
    "Level as found": ("Inputs.tilt_rest_ok",)}
"""Checks in which LOOK begins at a value of its own, the least of these."""


def master(values: Values) -> dict[Place, Value]:
    """Return the flags and the one verdict of the whole job."""
    words = {word for lines in model().checks.groups.values() for _, check in lines
             for word in across(check.verdict, values)}
    if wanted(values):
        words.add("NEEDS INPUT")
    due: dict[Place, Value] = {("Checks", STATE, FIRST + k): int(word in words)
                               for k, word in enumerate(ORDER)}
    return due | {MASTER: next((w for w in ORDER if w in words), "NEEDS INPUT")}


def wanted(values: Values) -> bool:
    """Say whether anything typed is not usable, or could not be dealt with."""
    typing = model().typing
    used = [k for k, x in enumerate(COLUMNS) if values["Sections", STATE, x]]
    for ask, (sheet, y, x) in typing.states.items():
        by_type = ask in model().places.sections
        spots = [(sheet, y, x + k) for k in used] if by_type else [(sheet, y, x)]
        if any(values.get(spot) == 0 for spot in spots):
            return True
    missed = [values[model().places.rows[row]] for row in model().declared.none_left]
    return any(not isinstance(v, str) and v > 0 for v in missed)


def heads(bench: Bench, values: Values) -> dict[Place, Value]:
    """Return what stands in the head of every sheet: the whole verdict, whose job it is."""
    words = {}
    for key in ("job_name", "site", "designer", "checker", "job_date", "revision"):
        words[key] = values[model().places.rows[model().input(key)]]
    job = f"Job: {words['job_name']}. Site: {words['site']}"
    people = (f"Designed: {words['designer']}. Checked: {words['checker']}. "
              f"Date: {words['job_date']}. Revision: {words['revision']}")
    verdict = values[MASTER]
    bad = verdict in ("NOT OK", "NEEDS INPUT")
    said = f"Whole job: {verdict}. Not to be built from as it stands." if bad else " "
    due: dict[Place, Value] = {}
    for place, cell in bench.cells.items():
        sheet, y, _ = place
        text = str(cell.content)
        if cell.kind != "formula" or y > HEAD or sheet in ("Start", "Checks"):
            continue
        if text == "=Checks!$B$2":
            due[place] = verdict
        elif '"Not to be built' in text or "Not to be built from" in text:
            due[place] = said
        elif text.startswith('="Job: "'):
            due[place] = job
        elif text.startswith('="Designed: "'):
            due[place] = people
    return due
