"""Upkeep: what to look at every year and after a storm, and how high the deck stood each time."""

from __future__ import annotations

from builder.language import Row, Sheet, joined, of_type, or_dash, shown, when

from . import as_built, buoyancy, launch, rates
from . import inputs as job
from . import inputs_pages as words
from . import inputs_site as site
from . import sections as sec
from .readings import CORNERS, launch_own
from .reference import ada

TYPES = "ABCDEF"
YEARS = 12

sheet = Sheet("Upkeep", "Upkeep: yearly, after storms, freeboard history", scope="page",
              about="For the owner: date and initials in the blanks; keep it with the quote.")
block, say, show, note, caution = (sheet.block, sheet.say, sheet.show, sheet.note,
                                   sheet.caution)


def look_at(*lines) -> list[Row | str]:
    """Put lines to tick, each with a blank for date and initials; return their words."""
    said = []
    for line in lines:
        show(line, tick=True, blank=True)
        said.append(sheet.items[-1].words)
    return said


def _kind(number: int, words_if: str, otherwise: str):
    """Say one thing where the dock is held this way, else another."""
    return when(site.mooring.is_(site.MOORINGS.keys[number]), words_if, otherwise)


block("Every year: after ice-out or before the season")
look_at("Floats: no hole, crack, gnawing, loose foam; fasteners tight",
        "Freeboard read at four corners of each section: next page",
        "Bolts and nuts tight; brackets and angles not bent or cracked",
        "Rust: red rust means the zinc is gone; change the piece")
metal = look_at(joined("New fasteners: ", job.finish, ", none of another metal"))
look_at("Hinge pins locked, holes not worn")
gap = look_at(joined("Hinge gap at most ", shown(ada.gap_most, 1),
                     " in or covered; no cable in it"))
held = look_at(
    _kind(0, "Chains: links, shackles, pins not worn thin; dock not drifted",
          "Chains: none hold this dock"),
    _kind(1, "Pile hoops free over the whole range, not worn; piles sound",
          "Guide piles: none hold this dock"),
    _kind(2, "Shore arms or cables: ends, pins, clamps, slack at all levels",
          "Shore arms or cables: none hold this dock"))
gangway = look_at(when(site.gangway_length > 0,
                       "Gangway: hinge, stop, safety chain; foot slides free",
                       "Gangway: none"))
look_at("Frame: splits, soft ends, rot; treat every fresh cut",
        "Decking: no loose or broken piece, no proud screw, no carpet",
        "Cleats, bumpers, wheels, ladders tight; ladder steps sound")
railings = look_at(when(words.railings.is_("yes"), "Railing posts stiff, bolts tight",
                        "Railings: none"))
out_of_water = look_at(when(
    words.swim_float.is_("yes"),
    "Ladder, life ring, reflectors, owner's name on the float",
    "Ladder and life ring at hand"))
services = look_at(when(words.services.is_("yes"),
                        "Power: electrician's yearly test; water lines tight",
                        "Power and water lines: none on the dock"))
look_at("Both numbers of the load plate in place and legible",
        "Weed and shell scraped off; drift cleared from under",
        "Extinguisher where the authority asks for one")

block("After every storm, flood, ice or boat strike")
look_at("Sections level, in line; no corner low: read the freeboard",
        "Anchors where they were: bearings and distances of the record",
        "Chains, hoops, arms, hinges, pins",
        "Floats and their fasteners from below; loose foam gathered",
        "Corners square, brackets not bent, rails not split",
        "Gangway foot on its place, hinge and stop",
        "Power off until the electrician has looked, where lines were wet")

block("Before winter")
winter = say(when(job.stays_in.is_("yes"),
                  "This dock stays in: it is not designed for ice left to press on it.",
                  "This dock comes out before ice: unpin, tow to the ramp, lift or roll out."))
stored = say(joined("Winter place: ", words.winter_place))
winter_list = look_at(
    when(job.stays_in.is_("yes"), "Bubbler running before ice; open water all round",
         "Out of the water before ice, blocked level off the ground"),
    when(job.stays_in.is_("yes"), "Chains slack enough for ice and winter level",
         "Chains buoyed and laid slack on the bed, ends marked"),
    when(job.stays_in.is_("yes"), "Snow cleared: it is a load; from both sides alike",
         "Gangway up on the bank, ladders and fittings inside"))

note("Warranty and record: date every line. What is not dated was not done.")
warranty = say(joined("Warranty runs ", shown(rates.warranty),
                      " months from the day it is afloat and handed over."))
caution("Power: a current too small to trip a breaker can drown a swimmer. If you feel it, swim "
        "away. No swimming near a dock with power.")
caution("Treated wood: do not burn it; mask, gloves, goggles; clear the dust; keep it from food "
        "and drinking water. Foam stays enclosed.")
caution("Lifting, cold water, ballast, chain: life jackets; nobody under a lifted section. Chains "
        "drift and need adjusting; never tie to trees.")

sheet.page_break()
block("Freeboard at launch: mean of four corners, water to top of deck")
launched: dict[str, Row] = {}
measured: dict[str, Row] = {}
soaked: dict[str, Row] = {}
for _letter in TYPES:
    _used = of_type(sec.quantity, _letter) > 0
    launched[_letter] = show(f"{_letter}: as launched, predicted",
                             or_dash(_used, of_type(launch.mean, _letter)), "in", 1)
    measured[_letter] = show(f"{_letter}: as launched, read on the water",
                             or_dash(of_type(as_built.mean, _letter) > 0,
                                     of_type(as_built.mean, _letter)), "in", 1, blank=True)
    soaked[_letter] = show(f"{_letter}: once the timber is soaked, predicted",
                           or_dash(_used, of_type(buoyancy.free_service, _letter)), "in", 1)

block("Freeboard history: copy this page for each section built")
show("Section no.          type          launched on", blank=True)
say("Calm water, nobody aboard. Corners: " + "; ".join(
    f"{_n} {_name}" for _n, _name in enumerate(CORNERS.keys, 1)) + ". Last blank: their mean.")
lower = say(joined("Lower than soaked by more than ", shown(launch_own.soak_allowed, 1),
                   " in: a float takes water, or growth."))
say("One corner lower than last time: look at the floats there first.")
_corners = "    ".join(f"{_n} ________" for _n in range(1, len(CORNERS.keys) + 1))
for _when in ("At launch", "1 month", *["Year ____"] * YEARS):
    show(f"{_when}    {_corners}", blank=True)
