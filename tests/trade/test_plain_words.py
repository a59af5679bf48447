"""Plain language: a word of the trade or of engineering that a label uses is told on Terms."""

from __future__ import annotations

import re
from functools import cache

import pytest

from builder.sheets.book import model
from builder.sheets.reference import TERMS

# Words that a builder without engineering may not know: how they stand in labels, and the term.
TECHNICAL = {
    r"abutment": "Abutment", r"adjusted": "Adjusted value", r"aged": "Aged test",
    r"bending moment|moments?": "Bending moment", r"bearing": "Bearing",
    r"board feet|bd ft": "Board foot", r"butt joints?": "Butt joint",
    r"cantilever": "Cantilever", r"catenary": "Catenary",
    r"centre of buoyancy": "Centre of buoyancy", r"centre of flotation": "Centre of flotation",
    r"centre of gravity": "Centre of gravity", r"clearance": "Clearance",
    r"coefficient": "Coefficient", r"composite": "Composite", r"contingency": "Contingency",
    r"couple": "Couple", r"cross-beams?": "Cross-beam", r"dead load": "Dead load",
    r"dead weight": "Dead-weight anchor", r"deflection": "Deflection", r"density": "Density",
    r"displace[ds]": "Displacement", r"dowel bearing": "Dowel bearing", r"drafts?": "Draft",
    r"dressed": "Dressed", r"duration": "Duration", r"dynamic factor": "Dynamic factor",
    r"effective length": "Effective length", r"exposure": "Exposure", r"fetch": "Fetch",
    r"freeboards?": "Freeboard", r"friction": "Friction", r"fullness": "Fullness",
    r"gangways?": "Gangway", r"grip": "Grip", r"group action": "Group action",
    r"growth": "Growth", r"gust": "Gust factor", r"headers?": "Header",
    r"held in roll": "Held in roll", r"hinges?": "Hinge", r"hogging|hogs": "Hogging",
    r"incis(?:ed|ing)": "Incised", r"inertia": "Inertia", r"kerf": "Kerf",
    r"lags?": "Lag", r"lever": "Lever", r"list": "List", r"live load": "Live load",
    r"load plate": "Load plate", r"metacentre": "Metacentre",
    r"metacentric height": "Metacentric height", r"metacentric radius": "Metacentric radius",
    r"modulus": "Modulus", r"nominal": "Nominal size", r"offcuts?": "Offcut",
    r"pitch": "Pitch", r"pl(?:y|ies)": "Ply", r"point load": "Point load",
    r"projection": "Projection", r"rails?": "Rail", r"ratio": "Ratio", r"reactions?": "Reaction",
    r"repetitive": "Repetitive factor", r"righting arm": "Righting arm",
    r"sagging|sags": "Sagging", r"scour": "Scour", r"screening": "Screening", r"shear": "Shear",
    r"shear planes?": "Shear plane", r"sinkage": "Sinkage", r"skirts?": "Skirt",
    r"slenderness": "Slenderness", r"slings?": "Sling", r"span": "Span",
    r"specific gravity": "Specific gravity", r"splices?": "Splice", r"spreader": "Spreader",
    r"stations?": "Station", r"stringers?": "Stringer", r"surge": "Surge",
    r"tensions?": "Tension", r"tilts?": "Tilt", r"to the first\s*order": "To the first order",
    r"trim": "Trim", r"twist": "Twist", r"uplift": "Uplift", r"use category": "Use category",
    r"wake": "Wake", r"washer plates?": "Washer plate", r"waterplane": "Waterplane",
    r"windward": "Windward", r"withdrawal": "Withdrawal", r"yaw": "Yaw",
    r"yield": "Yield equations",
    r"beam stability factor": "Beam stability factor", r"chord": "Chord", r"fairlead": "Fairlead",
    r"geometry factor": "Geometry factor", r"hoops?": "Hoop", r"leaning axes": "Leaning axes",
    r"ledge": "Ledge", r"mean square": "Mean square", r"Newton's rule": "Newton's rule",
    r"pass [1-6]": "Pass", r"slip modulus": "Slip modulus", r"tangent": "Tangent",
    r"trial [12]": "Trial", r"velocity pressure": "Velocity pressure",
}
LONGEST = 130
"""Letters of a meaning: it stands on one line or two."""


@cache
def labels() -> str:
    """Return all that is said on the sheets of the workbook but on Terms and in its sources."""
    asked = [row.label for row in (*model().job_inputs(), *model().section_inputs())]
    return "\n".join(asked + [
        str(cell.content) for plan in model().fixed
        if plan.name not in ("Terms", "Sketches", "Sources", "Data", "Proof", "Worked")
        for cell in plan.cells
        if cell.kind == "text" and cell.style not in ("symbol", "formula", "source")])


@pytest.mark.parametrize(("words", "term"), TECHNICAL.items(), ids=TECHNICAL.values())
def test_a_technical_word_of_a_label_is_told_on_terms(words, term):
    assert re.search(rf"\b(?:{words})\b", labels(), re.IGNORECASE), f"no label says {words}"
    assert term in TERMS.keys


def test_terms_stand_in_order_each_in_one_sentence_and_each_is_met_in_the_book():
    keys = [key.lower() for key in TERMS.keys]
    assert keys == sorted(keys)
    for key, (meaning, where) in zip(TERMS.keys, TERMS.lines, strict=True):
        assert meaning.endswith((".", "?")) and len(meaning) <= LONGEST, key
        assert where in {plan.name for plan in model().fixed} | {"Inputs", "Sections", "Catalog"}
