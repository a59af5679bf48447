"""What Yard must say, line by line, from the results of the section type chosen."""

from __future__ import annotations

import re
from collections.abc import Callable

from builder.engine.values import Value
from builder.language import Row
from builder.language.rows import PageLine
from builder.resolve.cells import Place
from builder.sheets import yard, yard_tape
from tests.second.given import constants
from tests.second.trade_names import shown

READ = {
    "Upper hole below the top edge": ("corner1", "upper"),
    "Lowest hole below the top edge": ("corner2", "lowest"),
    "Holes apart, up and down": ("corner_step", "step"), "In the rail, from its end": (
        "corner_rail",), "In the header, from its end": ("corner_header",),
    "Drill, all bolt holes": ("hole",), "Diagonal: near left to far right": ("diagonal",),
    "Diagonal: near right to far left": ("diagonal",), "The two apart, most": ("apart",),
    "From the stringer's end; from its face on the other leg": ("end",),
    "Rule: hole to an edge, least": ("edge",), "Rule: hole to an end, least": ("to_end",),
    "Rule: holes of one leg apart, least": ("holes",),
    "Rule: from another piece's holes, least": ("rows",),
    "First space: outside to the first mark": ("first",),
    "Stringer's faces off its mark, both sides": ("half",),
    "The two diagonals again, apart at most": ("apart",),
    "Left row: centre from the left rail's outside": ("row1",),
    "Near floats: centre from the near header's outside": ("col1",),
    "Slings from each end": ("sling",)}
"""Words of a line → the lengths of Tape that stand beside it, the first time and the second."""
TAKEN = {
    "lines": "Setout.lines", "spacing": "Sections.spacing", "pattern": "Setout.pattern",
    "float_name": "Sections.float_model", "butts": "Parts.board_butts", "dry": "Weight.launch",
    "frame": "Weight.frame_only", "heaviest": "Weight.heaviest_piece", "on_hook": "Setout.hook",
    "tension": "Framing.sling_tension", "wide": "Setout.piece_width",
    "long": "Setout.piece_length", "bed": "Setout.long_limit"}
OF_JOB = {"finish": "Inputs.finish", "machine": "Inputs.crane_limit", "reach": "Inputs.crane_reach"}


def yard_words(see, spot: Callable[[Row], Place], lines: list[PageLine]) -> dict[Place, Value]:
    """Return what the sheet must show, by place."""
    due = {spot(getattr(yard, name)): see.of(result) for name, result in TAKEN.items()}
    due |= {spot(getattr(yard, name)): see.job(result) for name, result in OF_JOB.items()}
    said = {key: see.values[spot(row)] for key, row in yard_tape.words.items()}
    met: dict[str, int] = {}
    for line in lines:
        if isinstance(line.words, str) and line.words in READ:
            keys = READ[line.words]
            number = met.get(line.words, 0)
            met[line.words] = number + 1
            due[spot(line.value)] = said[keys[min(number, len(keys) - 1)]]
    for rows in (pieces(see, said), steps(see, said)):
        for name, words in rows.items():
            row = getattr(yard, name)
            due[spot(row)] = numbered(see.values[spot(row)], words)
    due |= {spot(getattr(yard, name)): words for name, words in beside(see, said).items()}
    return due | marks(see, spot, lines, said) | extras(see, spot, said)


def numbered(shown_words: Value, words: str) -> Value:
    """Return the words with the number of the step that they are shown with, if any."""
    found = re.match(r"\d+   ", str(shown_words))
    return f"{found[0]}{words}" if found else words


def pieces(see, said) -> dict[str, str]:
    """Return the lines of the lists of pieces and kits."""
    n, bolt = see.count, see.job("Inputs.bolt")
    beams = float(see.of("Sections.cross_beams"))
    plies, skirt = float(see.of("Sections.rail_plies")) > 1, see.of("Sections.skirt") != "none"
    legs, a_leg = n("Parts.corner_bolts_a_leg"), n("Parts.bolts_a_leg")
    lag = f"{see.job('Inputs.lag')} × {shown(float(see.job('Inputs.lag_length')), 2)} in"
    return {
        "title": f"Type {see.letter}: {said['length']} × {said['width']} outside of the frame; "
                 f"{n('Sections.quantity')} to build.",
        "rails": f"{n('Parts.rails')} rail plies, each {said['length']}",
        "headers": f"{n('Parts.headers')} headers, each {said['header']}",
        "stringers": f"{n('Parts.stringers')} stringers, each {said['stringer']}",
        "beams": (f"{shown(beams, 0)} cross-beams, each {said['header']}" if beams
                  else "Cross-beams: none"),
        "treated": f"Tags read: use category {see.of('Hardware.treat_above')} or better",
        "corner_kit": f"{n('Parts.corner_inside')} corner bags: 1 bracket inside, 1 outside",
        "corner_header": f"Corner: {legs} bolts {bolt} × {said['c_header']}, header leg",
        "corner_rail": f"Corner: {legs} bolts {bolt} × {said['c_rail']}, rail leg",
        "corner_small": f"Corner: {n('Setout.corner_nuts')} nuts, {n('Setout.corner_washers')} "
                        "washers",
        "end_kit": f"{n('Parts.stringer_ends')} end bags: 1 angle, {n('Setout.end_plates')} "
                   "washer plates",
        "end_leg": f"End: {a_leg} bolts {bolt} × {said['leg']}, stringer leg",
        "end_rail": f"End: {a_leg} bolts {bolt} × {said['rail']}, leg on the rail or header",
        "end_small": f"End: {n('Setout.end_nuts')} nuts, {n('Setout.end_nuts')} washers",
        "ply_kit": (f"Plies: {n('Parts.ply_bolts')} bolts {bolt} × {said['ply']}, two washers and "
                    "a nut each" if plies else "Plies: one, no bolts"),
        "lag_kit": f"Floats: {n('Parts.lags')} lags {lag}, a washer each",
        "skirt_kit": (f"Skirt: {n('Parts.skirt_screws')} screws, {n('Parts.skirt_bolts')} bolts "
                      f"{bolt} × {said['skirt']}" if skirt else "Skirt: none")}


def steps(see, said) -> dict[str, str]:
    """Return the words of the steps, without their numbers."""
    n = see.count
    tape = {name: see.values[yard_place(name)] for name in (
        "start", "marked", "odd_side", "even_side")}
    beams, across = float(see.of("Sections.cross_beams")), see.of("Sections.run") == "across"
    plies, skirt = float(see.of("Sections.rail_plies")) > 1, see.of("Sections.skirt") != "none"
    panels = see.of("Sections.deck") == "panels"
    apart = shown(constants("own")["ply_bolt_spacing"], 0)
    return {
        "plies": (f"Rails: plies together, joints far apart, bolted every {apart} in, up and down "
                  "in turn" if plies else "Rails: one ply each, nothing to join"),
        "cross": (f"Centres marked from the outside of the near header: {said['beam1']}, then "
                  f"every {said['beam']}" if beams else "No cross-beams in this type"),
        "cross_in": ("Hung before the stringers, angles toward the near end" if beams
                     else "Nothing to hang before the stringers"),
        "hook": f"Tape hooked at the outside of {tape['start']}; {tape['marked']} marked alike, "
                "at the same numbers",
        "sides": f"Odd marks: angle on the {tape['odd_side']} side; even marks: on the "
                 f"{tape['even_side']} side, at both ends",
        "beyond": ("Across a cross-beam the next piece takes its angle on the other side"
                   if beams and not across else "Each stringer runs in one piece"),
        "skirt": (f"Skirt on: {n('Parts.skirt_places')} places, {see.of('Sections.skirt')}"
                  if skirt else "No skirt on this type"),
        "boxes": f"{n('Parts.floats')} floats, {n('Sections.float_rows')} rows across, "
                 f"{n('Sections.floats_a_row')} in a row, lying {see.of('Sections.float_turned')}",
        "lags": f"Lags: {n('Parts.lags')} in all, through the flange into the wood above; serial "
                "numbers written down",
        "order": (f"Panels: {n('Parts.panel_columns')} along × {n('Parts.panel_rows')} across, "
                  "begun at the near left corner" if panels else
                  f"Boards: {n('Parts.boards')} lines, begun at one straight edge"),
        "lie": ("Tabs point to the far end and to the right; each panel locks in the last"
                if panels else "Best face up, ends on a stringer, joints of neighbours apart"),
        "turn": ("Left row first, near to far, then the next row; cut pieces come last" if panels
                 else "Gap held by a spacer; every fifth line measured to the far edge"),
        "tabs": (f"Tabs cut off at the outer edges: {n('Decking.tabs_off')}" if panels
                 else "No tabs on boards"),
        "screws": f"Screws {see.job('Inputs.deck_screw')} × {said['screw']}: "
                  f"{n('Parts.deck_screws')} in all; heads flush, none proud",
        "fittings": f"{n('Sections.hinges')} hinges, {n('Sections.mooring_brackets')} mooring "
                    f"brackets, {n('Sections.cleats')} cleats with plates, "
                    f"{n('Sections.ladders')} ladders",
        "edges": f"{shown(float(see.of('Sections.bumper')), 1)} ft of bumper, "
                 f"{n('Sections.corner_wheels')} corner wheels"}


def yard_place(name: str) -> Place:
    """Return where a row of Tape stands."""
    from builder.sheets.book import model

    return model().places.rows[getattr(yard_tape, name)]


def beside(see, said) -> dict[str, Value]:
    """Return what stands in the column of values where it is not taken over as it is."""
    panels = see.of("Sections.deck") == "panels"
    rows, a_row = (float(see.of(f"Sections.{k}")) for k in ("float_rows", "floats_a_row"))
    feet = float(see.of("Buoyancy.draft_launch")) / 12 + constants("own_yard")["launch_depth"]
    return {
        "size": see.values[yard_place("size_name")],
        "deck_name": see.values[yard_place("deck_name")],
        "next_row": said["row"] if rows > 1 else "one row",
        "next_float": said["col"] if a_row > 1 else "one float",
        "panel_x": said["panel_x"] if panels else "boards",
        "panel_y": said["panel_y"] if panels else "boards",
        "last_column": said["column"] if panels else "boards",
        "last_row": said["rowp"] if panels else "boards",
        "gap": "panels" if panels else said["gap"], "rip": "panels" if panels else said["rip"],
        "flattest": constants("own")["sling_angle_least"],
        "allowed": float(see.job("Inputs.road_width")) / 12,
        "narrow": float(see.job("Inputs.access_width")) / 12, "afloat": feet}


def marks(see, spot, lines: list[PageLine], said) -> dict[Place, Value]:
    """Return the marks, the sides of their angles, and what is said of the last one."""
    odd, even, finish = (see.values[yard_place(k)] for k in ("odd_side", "even_side", "finish"))
    count = float(see.of("Setout.lines"))
    due: dict[Place, Value] = {}
    for k, row in enumerate(yard.mark, start=1):
        line = next(x for x in lines if x.value is row)
        due[spot(line.words)] = f"Mark {k}: angle on the {odd if k % 2 else even} side"
        due[spot(row)] = (see.values[spot(yard_tape.mark[k - 1])] if k <= count
                          else "past the last")
    more = (f"More follow: go on by the spacing to the last mark, {said['last']}; odd and even "
            "sides as above." if count > yard_tape.MARKS
            else f"The last mark is at {said['last']}.")
    last = next(x for x in lines if getattr(x.value, "expr", None) is yard_tape.words["out"])
    return due | {spot(yard.more): more, spot(last.value): said["out"],
                  spot(last.words): f"Last space: last mark to the outside of {finish}"}


def extras(see, spot, said) -> dict[Place, Value]:
    """Return the places of the extra floats; none where there are fewer."""
    count = float(see.of("Sections.extra_floats"))
    return {spot(yard.extra[2 * (k - 1) + side]): said[f"e{along}{k}"] if k <= count else "none"
            for k in (1, 2, 3, 4) for side, along in enumerate("xy")}
