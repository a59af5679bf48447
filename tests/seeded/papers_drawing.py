"""What Drawing takes over from the sheets, and the words over its views, put together again.

That the lines are where plane geometry puts them is another finder's business.
"""

from __future__ import annotations

from collections.abc import Callable
from math import atan, degrees, hypot

from builder.engine.values import Value
from builder.language import Row
from builder.language.rows import View
from builder.resolve.cells import Place
from builder.sheets import drawing, setout, yard_tape
from builder.sheets import hardware_bolts as ends
from builder.sheets import hardware_lengths as bolts
from builder.sheets.book import model
from tests.second.drawn import LETTERS
from tests.second.trade_names import feet_and_inches, nearest_whole, shown

base, plan, side, joints = drawing.base, drawing.plan, drawing.afloat, drawing.joints
FEET = {"L": "Sections.length", "B": "Sections.width", "L_d": "Parts.deck_length",
        "B_d": "Parts.deck_width", "L_o": "Parts.overall_length", "B_o": "Parts.overall_width",
        "lines": "Setout.lines", "beams": "Sections.cross_beams", "l_f": "Parts.float_l",
        "b_f": "Parts.float_b", "R": "Sections.float_rows", "n_r": "Sections.floats_a_row",
        "X": "Parts.end_x", "Y": "Parts.row_y", "p_x": "Parts.float_x_pitch",
        "p_y": "Parts.float_y_pitch", "panel_x": "Parts.panel_x", "panel_y": "Parts.panel_y",
        "z_u": "Parts.frame_underside", "z_t": "Parts.frame_top", "z_d": "Parts.deck_top"}
INCHES = {"header": "Parts.header_t", "step": "Sections.spacing", "D": "Parts.float_depth",
          "T": "Buoyancy.draft_service", "T_f": "Buoyancy.draft_flotation",
          "skirt": "Parts.skirt_d"}
"""Row of the drawing's base, in feet → the result, in feet or in inches."""
JOINTS = {"t_n": ends.t_n, "d_n": ends.d_n, "t_m": ends.t_m, "d_m": ends.d_m, "t_p": ends.t_p,
          "a_t": ends.angle_top, "h_a": ends.angle_height, "e_h": setout.hole_end,
          "h_1": setout.hole_upper, "h_2": setout.hole_lowest, "s_h": setout.hole_step,
          "b_w": ends.plate_b, "d_b": ends.D, "bolt_m": bolts.leg_bolt, "bolt_n": bolts.rail_bolt,
          "past": bolts.past, "t_c": bolts.washer_t, "bolt_h": bolts.header_bolt,
          "bolt_r": bolts.corner_bolt}
GRIPS = {"grip_m": bolts.leg_need, "grip_n": bolts.rail_need, "grip_h": bolts.header_need,
         "grip_r": bolts.corner_need}
"""What a bolt must reach; its grip is less by nut and projection."""
Due = dict[Place, Value]


def drawing_words(see, spot: Callable[[Row], Place]) -> Due:
    """Return what the drawing must take over and say, by place."""
    due: Due = {spot(getattr(base, name)): see.of(result) for name, result in FEET.items()}
    due |= {spot(getattr(base, name)): float(see.of(result)) / 12
            for name, result in INCHES.items()}
    across, panels = see.of("Sections.run") == "across", see.of("Sections.deck") == "panels"
    rail = float(see.of("Sections.rail_plies")) * float(see.of("Parts.rail_t"))
    due |= {spot(base.rail): rail / 12, spot(base.across): int(across),
            spot(base.panels): int(panels), spot(base.depth): see.job("Inputs.low_water_depth"),
            spot(base.named): f"Type {see.letter}: plan, side, end, joints"}
    due |= {spot(getattr(joints, name)): _picked(see, row) for name, row in JOINTS.items()}
    due |= {spot(getattr(joints, name)): float(_picked(see, row)) - float(_picked(see, bolts.past))
            for name, row in GRIPS.items()}
    due |= {spot(joints.n_a): see.of("Parts.bolts_a_leg"),
            spot(joints.n_k): see.of("Parts.corner_bolts_a_leg"), spot(joints.t_R): rail,
            spot(joints.t_H): see.of("Parts.header_t")}
    due |= _brackets(see, spot) | _types(see, spot) | _joint_words(see, spot, across)
    return due | _plan_words(see, spot, panels) | _leaning(see, spot)


def _picked(see, row: Row) -> Value:
    sheet, y, x = model().places.rows[row]
    return see.values[sheet, y, x + LETTERS.index(see.letter)]


def _brackets(see, spot) -> Due:
    """Return what is read of the products chosen, from the catalog as it is for sale."""
    products = see.case.types[0].catalog
    angle = products["angles"][see.job("Inputs.stringer_angle")]
    plate = products["washer_plates"][see.job("Inputs.washer_plate")]
    inside, outside = (products["corner_brackets"][see.job(f"Inputs.corner_{k}")]
                       for k in ("inside", "outside"))
    top = "top hole from its top"
    return {
        spot(joints.l_a): float(see.of("Setout.hole_end")) + angle[top],
        spot(joints.t_w): plate["thickness"], spot(joints.t_i): inside["plate thickness"],
        spot(joints.t_o): outside["plate thickness"], spot(joints.a_i): inside[top],
        spot(joints.x_i): inside["corner to rail bolts"],
        spot(joints.y_i): inside["corner to header bolts"],
        spot(joints.r_o): outside["corner to rail bolts"] + outside[top],
        spot(joints.r_h): outside["corner to header bolts"] + outside[top]}


def _types(see, spot) -> Due:
    """Return lengths and widths of all types, and the words under each; 0 where not used."""
    due: Due = {}
    types = drawing.types
    for letter, mark in zip(LETTERS, types.type_marks, strict=False):
        length, width = (float(see.of(f"Sections.{k}", letter)) if see.is_used(letter) else 0.0
                         for k in ("length", "width"))
        due |= {spot(types.lengths[letter]): length, spot(types.widths[letter]): width}
        due[spot(mark.words)] = (f"{letter}: {shown(length, 1)} × {shown(width, 1)}, "
                                 f"{see.count('Sections.quantity', letter)} built"
                                 if length else " ")
    return due


def _joint_words(see, spot, across: bool) -> Due:
    said = {key: see.values[spot(row)] for key, row in yard_tape.words.items()}
    bolt = see.job("Inputs.bolt")

    def held(count: str, length: str, need: Row) -> str:
        grip = float(_picked(see, need)) - float(_picked(see, bolts.past))
        return f"{see.count(count)} bolts {bolt} × {said[length]}, grip {shown(grip, 2)} in"

    against = "rail" if across else "header"
    a_leg, corner = "Parts.bolts_a_leg", "Parts.corner_bolts_a_leg"
    more = "; more bolts than are drawn" if float(see.of(a_leg)) > joints.BOLTS else ""
    return {
        spot(joints.said_end): f"Stringer end: leg on the stringer "
                               f"{held(a_leg, 'leg', bolts.leg_need)}; leg on the {against} "
                               f"{held(a_leg, 'rail', bolts.rail_need)}{more}",
        spot(joints.said_holes): f"Its holes: {said['end']} from the {against}'s face, and from "
                                 f"the stringer's face; {said['upper']} to {said['lowest']} below "
                                 "the top",
        spot(joints.said_corner): f"Corner: header {held(corner, 'c_header', bolts.header_need)}; "
                                  f"rail {held(corner, 'c_rail', bolts.corner_need)}",
        spot(joints.said_drill): f"Its holes: {said['corner_header']} from the header's end, "
                                 f"{said['corner_rail']} from the rail's end; {said['corner1']} "
                                 f"to {said['corner2']} below the top"}


def _plan_words(see, spot, panels: bool) -> Due:
    due: Due = {}
    for row, name, factor in ((plan.n_L, "length", 12), (plan.n_B, "width", 12),
                              (plan.n_s, "spacing", 1)):
        due[spot(row)] = nearest_whole(16 * factor * float(see.of(f"Sections.{name}")))
    start, out = (see.values[spot(r)] for r in (yard_tape.start, yard_tape.words["out"]))
    cut = float(see.of("Parts.panels")) - float(see.of("Decking.panels_whole"))
    due[spot(plan.said)] = (
        f"Stringers every {feet_and_inches(int(due[spot(plan.n_s)]))}, centres from the outside "
        f"of {start}, last space {out}"
        + (f"; {shown(cut, 0)} of {see.count('Parts.panels')} panels cut" if panels else "")
        + ("; THERE ARE MORE PIECES THAN ARE DRAWN" if see.values[spot(plan.more)] else ""))
    for k, row in enumerate((plan.n_L, plan.n_B)):
        due[spot(plan.plan_marks[k].words)] = feet_and_inches(int(due[spot(row)]))
    return due


def _leaning(see, spot) -> Due:
    """Return draft, list and load of the view from the end."""
    list_ = float(see.values[spot(side.turned)])
    stable = see.values[spot(side.stays)] == 1
    draft = float(see.values[spot(side.T_p)])
    levels = {side.v_0: 0.0, side.v_1: see.of("Parts.frame_underside"),
              side.v_2: see.of("Parts.frame_top"), side.v_3: see.of("Parts.deck_top")}
    due: Due = {spot(row): float(z) - draft for row, z in levels.items()}
    due |= {spot(side.cosine_): 1 / hypot(1, list_), spot(side.sine_): list_ / hypot(1, list_)}
    told = f"list {shown(degrees(atan(abs(list_))), 1)} deg"
    due[spot(side.end_marks[1].words)] = told if stable else "UNSTABLE: it turns over"
    due[spot(side.end_marks[0].words)] = f"{see.count('Sections.point_load')} lb"
    return due


def off_the_paper(values) -> list[Place]:
    """Return the places of marks that stand off their view."""
    found = []
    for view in (i for i in drawing.sheet.items if isinstance(i, View)):
        for mark in view.marks:
            x, y = (model().places.rows[row] for row in (mark.along, mark.up))
            found += [p for p, most in ((x, 1), (y, 1 / view.wide))
                      if isinstance(values[p], str) or abs(values[p]) > most + 1e-9]
    return found
