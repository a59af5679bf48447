"""Start: what the workbook says of itself on its first page."""

from __future__ import annotations

PURPOSE = (
    "It works out a timber-framed floating dock for a lake or sheltered tidal water: what it "
    "weighs, how it floats, whether frame, decking, hardware and mooring are strong enough, what "
    "to order and cut, what it costs, and how to build and launch it. Every line shows its "
    "formula, unit and source, so that an inspector can follow it.",
    "It may be relied on by a builder who has measured the site and checked the inputs, and by "
    "the authority as the builder's calculation. It is no engineer's design and carries no seal.",
)
STEPS = (
    "1. Inputs: fill in the framed cells for the whole job. A blank with a default takes it.",
    "2. Sections: one column for each section type, A to F. Leave a column empty if not used.",
    "3. Catalog: type your own products and prices over the invented ones.",
    "4. Checks: read the verdicts, worst first; the cure says what would mend each.",
    "5. Orders and Rates: type your yard's prices and your hours; Price and Quote follow.",
    "6. Choose a section type on Inputs, block Yard and road, and print Yard and Drawing for it; "
    "in block Worked page choose the type that Worked shows with the numbers put in.",
    "7. After launch type the four corner freeboards on Readings; AsBuilt says what to move.",
    "Print any sheet, on letter or A4: each fits the width of a page. What to print for whom "
    "stands above.",
    "On closing, the program may ask to save although nothing was changed: it has worked the "
    "sheets out again.",
)
QUESTIONS = (
    ("Does it float right?", ("Weight", "Flotation", "Stability")),
    ("Is it strong enough?", ("Framing", "Floats", "Decking", "Connections", "Float fastening",
                              "Durability")),
    ("Does it stay in its place?", ("Site", "Gangway", "Mooring")),
    ("Can it be built, moved, launched?", ("Yard and road", "Launch", "As built")),
)
"""What a reader asks first, and the groups of checks that answer it: each group once."""
PACKS = (
    ("First visit", ("SiteVisit",)),
    ("For the permit", ("Start", "Inputs", "Sections", "Drawing", "Checks", "Worked", "Sources")),
    ("For the client", ("Quote",)),
    ("For the yard", ("Orders", "CutList", "Yard", "Drawing")),
    ("On the water and after", ("LaunchForm", "Upkeep")),
)
CAUTIONS = (
    "Not an engineer's design. A licensed engineer is needed where the authority says so, and for "
    "roofs, storm surge, waves over 2 ft, fast current, ice left in place or public assembly.",
    "Local codes and the authority on the water come first. Ask before quoting: some waters "
    "forbid timber frames or limit size, foam and light.",
    "Shore power is for a licensed electrician under permit. No swimming near a dock with power: "
    "a current too small to trip a breaker can drown a swimmer. If you feel it, swim away.",
    "Treated wood: do not burn it; wear mask, gloves and goggles; wash; clear the dust; keep it "
    "from food and drinking water.",
    "Foam must stay enclosed. Floats near fuel lines must be impervious all round.",
    "Heavy lifting, cold water, ballast and chain: wear a life jacket; nobody under a lifted "
    "section.",
    "People crowd one edge: post both numbers of the load plate, people spread out and people on "
    "one half. Snow is a live load: take the dock out or clear it.",
    "Chain moorings drift and need adjusting; chain and flat-bar pile guides hang up; do not tie "
    "to trees.",
    "Results assume a rigid frame: after launch test with a weight at a corner.",
)
BEYOND = (
    "Not in this version: hinge forces in waves, the gangway's own members, forces of waves and "
    "wakes over the limit shown, the level pull of a hinge or mooring on the corner bolts, waves "
    "on the float lags.",
    "Never covered: waves over 2 ft, ice, surge, fast current, roofed docks, vehicles, public "
    "assembly without an engineer, articulated docks as one body, piles in unknown soil.",
    "Known weakness: several published values were read in secondary copies or stand from memory; "
    "Sources and Data say which. Check them against the standard before you rely on a close pass.",
)
CHANGES = (
    "Third version: a worked page with the numbers put in; joints, running dimensions and cut "
    "panels on the drawing; boards cut with less waste.",
    "Second version: held in roll, four corners in every case, cut list, orders, price, quote, "
    "setting out and yard pages, launch, as-built readings, upkeep, site visit, drawing, curves.",
    "First version: floats and freeboard, stability, site loads, decking, framing, mooring, "
    "gangway, hardware, takeoff.",
)
