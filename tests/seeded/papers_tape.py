"""Which result each line of Tape takes to the tape."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Length:
    """A length on Tape: the result it is, in feet or inches, and how it is rounded and written.

    ``floored``: it reads 0 where it comes out below; ``down``: to the sixteenth below;
    ``small``: in inches alone; ``adds``: a half of another result that is added first.
    """

    name: str
    feet: bool = False
    floored: bool = False
    down: bool = False
    small: bool = False
    adds: str = ""

    def inches(self, see) -> float:
        """Return the length [in] in a book."""
        value = float(see.job(self.name) if self.name.startswith("Inputs") else see.of(self.name))
        if self.adds:
            value += float(see.of(self.adds)) / 2
        return value * (12 if self.feet else 1)


def small(name: str, **more: bool) -> Length:
    """Return a length in inches that is written in inches alone."""
    return Length(name, small=True, **more)


def feet(name: str, **more: bool | str) -> Length:
    """Return a length in feet."""
    return Length(name, feet=True, **more)


LENGTHS: dict[str, Length] = {
    "length": feet("Sections.length"), "width": feet("Sections.width"),
    "header": feet("Parts.clear_span"), "stringer": feet("Parts.stringer_length"),
    "diagonal": feet("Setout.diagonal"), "apart": small("Setout.diagonals_apart", down=True),
    "first": Length("Setout.first_space"), "last": Length("Setout.last_mark"),
    "out": Length("Setout.last_out", floored=True), "half": small("Setout.half_stringer"),
    "beam1": Length("Setout.cross_first"), "beam": Length("Setout.cross_step"),
    "hole": small("Setout.drill"), "upper": small("Setout.hole_upper", floored=True),
    "lowest": small("Setout.hole_lowest", floored=True), "step": small("Setout.hole_step"),
    "end": small("Setout.hole_end"), "corner1": small("Setout.corner_upper", floored=True),
    "corner2": small("Setout.corner_lowest", floored=True),
    "corner_step": small("Setout.corner_step"), "corner_rail": small("Setout.corner_rail"),
    "corner_header": small("Setout.corner_header"), "edge": small("Setout.edge_rule"),
    "to_end": small("Setout.end_rule"), "holes": small("Setout.apart_rule"),
    "rows": small("Setout.row_rule"), "leg": small("Hardware.leg_bolt"),
    "rail": small("Hardware.rail_bolt"), "c_header": small("Hardware.header_bolt"),
    "c_rail": small("Hardware.corner_bolt"), "ply": small("Hardware.ply_bolt"),
    "skirt": small("Hardware.skirt_bolt"), "row1": feet("Setout.row_first", floored=True),
    "row": feet("Parts.float_y_pitch", floored=True),
    "col1": feet("Setout.column_first", floored=True),
    "col": feet("Parts.float_x_pitch", floored=True),
    "panel_x": feet("Parts.panel_x"), "panel_y": feet("Parts.panel_y"),
    "column": Length("Decking.last_column", floored=True),
    "rowp": Length("Decking.last_row", floored=True), "gap": small("Parts.board_gap"),
    "rip": small("Decking.last_rip", floored=True), "screw": small("Inputs.deck_screw_length"),
    "sling": feet("Framing.sling_a"),
    **{f"e{along}{k}": feet(f"Sections.extra_{along}_{k}", floored=True,
                            adds="Sections.length" if along == "x" else "Sections.width")
       for k in (1, 2, 3, 4) for along in "xy"}}
"""Short name of the sheet's line → what it is."""
COUNTS = {"lines": "Setout.lines", "odd": "Setout.odd_lines", "beams": "Sections.cross_beams",
          "spacing": "Sections.spacing", "extras": "Sections.extra_floats",
          "columns": "Parts.panel_columns", "rows": "Parts.panel_rows",
          "plate_holes": "Parts.bolts_a_leg", "float_name": "Sections.float_model"}
"""Name of a row of the sheet → the result it takes over."""
