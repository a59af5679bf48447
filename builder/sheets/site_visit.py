"""SiteVisit: the sheet for the first visit: what to ask, measure, probe and photograph.

Beside a line stands what Inputs holds, where it holds it; the pencil writes what was found.  The
first visit comes before anything is typed, so lines to fill in have words that stand.
"""

from __future__ import annotations

from builder.language import Sheet, all_of, any_of, joined, when

from . import inputs as job
from . import inputs_pages as words
from . import inputs_site as site
from .reference import ada, constants, irc

ours = constants("own_pages")
PROBES, ITEMS = 6, 4

sheet = Sheet("SiteVisit", "Site visit: ask, measure, probe", scope="page",
              about="Right: what Inputs holds; then blanks for what is found. Take rod, tape, "
                    "level, weighted line, camera.")
block, say, show, caution = sheet.block, sheet.say, sheet.show, sheet.caution


def ask_all(*lines: str) -> None:
    """Put lines to tick, each with a blank for what was found."""
    for line in lines:
        show(line, tick=True, blank=True)


block("Who and when")
show("Date, time, weather, wind", blank=True)
show("Water level at the gauge or mark, and the hour", blank=True)
show("Met on site; who owns, who decides", blank=True)
show("Visited by: initials", blank=True)
caution("Life jacket near the water; nobody on ice to probe; look up for power lines; no hand in "
        "the water near a dock with power.")

block("Ask first")
ask_all("Are timber frames allowed here? Is a new dock allowed at all?",
        "Caps on area, length, width, distance offshore; boats and slips",
        "Rules on floats and foam, open deck area, height above water",
        "Who may use it: one home, several, the public; wheelchair route",
        "Engineer's seal or inspection wanted, by whom",
        "Winter: out, or in with a bubbler; who does it, where it is stored",
        "Insurance the owner or the authority wants to see")

block("Water")
depth = show("Depth at low water, shallowest place", job.low_water_depth, "ft", 1, blank=True)
high = show("High water above low water: gauge, records, stains", site.high_water, "ft", 1,
            blank=True)
flood = show("Highest water ever above low water: ask, marks on trees", site.flood, "ft", 1,
             blank=True)
current = show("Current, fastest: float timed over a length", site.current, "ft/s", blank=True)
fetch = show("Fetch: longest open water, and its bearing", site.fetch, "ft", 0, blank=True)
fetch_depth = show("Mean depth along the fetch", site.fetch_depth, "ft", 1, blank=True)
salt = show("Distance to salt water", job.salt_distance, "ft", 0, blank=True)
wave = show("Largest wave for this kind of dock; seen or told here", site.wave_most, "ft", 1,
            blank=True)
ask_all("Wake: boat traffic, speed, ferry, ski run, no-wake zone",
        "Ice: thickest seen, year, does it move, has it taken docks or piles",
        "Drift: logs, weed, debris, silting")

block("Bottom probe: rod pushed and driven, one line a place")
for _number in range(1, PROBES + 1):
    show(f"{_number}   out ______ ft    depth ______ ft    soft ______ ft    then on", blank=True)
bed = say(joined("Bed on Inputs: ", site.bed))
show("Bed: rock, gravel, sand, silt, clay, soft mud; sample taken", blank=True)

sheet.page_break()
block("Shore")
hinge = show("Gangway hinge above low water, levelled", site.hinge_height, "ft", 1, blank=True)
ask_all("Anchor point on shore: rock, wall, block; not a tree",
        "Bank: slope, height, washed out, soft; wall or seawall and its state",
        "Depth where it is launched, and the way from there by water",
        "Road, gate, yard, slope, overhead lines for trailer and machine")

block("On the dock")
show("Boats: length, beam, height of profile, where they lie", blank=True)
show("Boats: the same, second boat", blank=True)
for _number in range(1, ITEMS + 1):
    show(f"{_number}   bench, box, post, lift: weight ______ lb    where", blank=True)
railings = show("Railing posts wanted", words.railings, "text", blank=True)
rail_load = show("Railing posts: load at the top, any direction", irc.rail_load, "lb", 0)
rail_height = show("Railing posts: height of that load", ours.railing_height, "in", 0)
services = show("Power or water lines: by whom, permit, route, weight a foot", words.services,
                "text", blank=True)
ask_all("Lines cross joints in a loop under the deck; no cable in a hinge gap")
gap = show("Hinge gap at most this, or a cover over it", ada.gap_most, "in", 1)
swim = show("Stands alone out on the water (swim float)", words.swim_float, "text", blank=True)
ask_all("Swim float: ladder, life ring, reflectors all round, owner's name",
        "Any dock: a ladder out of the water, a life ring at hand")
show("Ladders: how many, where; depth below the lowest step", blank=True)

block("Permit data")
setback_asked = show("Setback from the parcel lines: asked", words.setback_asked, "ft", 1,
                     blank=True)
setback = show("Dock to the nearest parcel line", words.setback, "ft", 1, blank=True)
offshore_most = show("Farthest offshore: allowed; 0 where no rule", words.offshore_most, "ft", 1,
                     blank=True)
offshore = show("Dock's far end offshore of the high-water line", words.offshore, "ft", 1,
                blank=True)
ask_all("Parcel: corners found, lines sighted out over the water",
        "High-water line: level and mark the authority uses",
        "Work window in the water: fish, plants, birds",
        "Old dock: size, floats, loose foam; who breaks it up, which yard takes it",
        "Neighbours' docks, moorings, intakes, cables within reach")
near_line = say(when(
    all_of(words.setback > 0, words.setback >= words.setback_asked),
    "Parcel line: not nearer than asked, by the figures above.",
    "PARCEL LINE: nearer than asked, or not measured yet."))
far_out = say(when(
    all_of(words.offshore > 0,
           any_of(words.offshore_most <= 0, words.offshore <= words.offshore_most)),
    "Offshore: not farther than allowed.",
    "OFFSHORE: farther than allowed, or not known yet."))
parcel = say(joined("Parcel on Inputs: ", words.parcel))
high_line = say(joined("High water: ", words.high_water_line))
window = say(joined("Work window: ", words.work_window))
old_dock = say(joined("Old dock: ", words.old_dock))

block("Photographs, and done")
ask_all("From the water, both ways along the shore, from the road",
        "Each probe, the anchor point, the old dock underneath",
        "Sketch with north, bearings, distances, on the back")
show("All found and written down: date and initials", blank=True)
