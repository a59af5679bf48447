"""The looks of cells, as data: a palette, a vocabulary of style names, the verdict colours.

One font, no italics, and never colour alone: a verdict is a word, an input has a border, a
heading has weight and a rule.  Every pair of letter and ground keeps a contrast of 4.5 to 1
(W3C WCAG 2.1, 1.4.3, seen); the tests work it out.
"""

from __future__ import annotations

from typing import Any

Look = dict[str, Any]

FONT = "Arial"
BODY = 10
"""Body size [pt].  UK Office for National Statistics house rule: at least 10, headings 12; seen."""

# Our palette (our judgement): ink for letters and rules, sand for headings, mist for what may
# be typed, slate for what stays in the background, brick for what must not be overlooked.
INK = "#1C2B3A"
DEEP = "#24506E"
SLATE = "#55626E"
LINE = "#CFD6DB"
PAPER = "#FFFFFF"
MIST = "#E8F0F5"
SAND = "#EFE8DB"
SHELL = "#F8F5EF"
OCHRE = "#E9D3A4"
BARK = "#4A3412"
BLUSH = "#F6DFD7"
BRICK = "#8C2F1E"
HAZE = "#F1F3F4"

# Border numbers of XlsxWriter: 1 thin, 2 medium, 3 dashed, 4 dotted, 5 thick, 7 hair.
_RULED: Look = {"valign": "top", "bottom": 1, "bottom_color": LINE}
_WRAP: Look = {"text_wrap": True}
_RIGHT: Look = {"align": "right"}
# An indent counts only beside an alignment that is set.
_INDENT: Look = {"align": "left", "indent": 1}
_CENTRE: Look = {"align": "center"}
_BOX: Look = {"border": 1, "border_color": DEEP, "bg_color": MIST, "valign": "top"}
_TYPED: Look = {**_BOX, "locked": False}
_GIVEN: Look = {**_RULED, "bg_color": SHELL}

DIGITS = range(7)
"""Decimals that num, input and given come in."""


def number_format(digits: int) -> str:
    """Return the number format with a fixed count of decimals, in the file's English form."""
    return "#,##0" + ("." + "0" * digits if digits else "")


def _numbers(stem: str, look: Look) -> dict[str, Look]:
    # Right alignment is set, not left to the program, so that the dash stands under the digits.
    return {f"{stem}.{d}": {**look, **_RIGHT, "num_format": number_format(d)} for d in DIGITS}


STYLES: dict[str, Look] = {
    "title": {"bold": True, "font_size": 14, "font_color": DEEP, "valign": "vcenter"},
    "subtitle": {"font_color": SLATE, "valign": "top"},
    "note": {**_WRAP, "font_color": SLATE, "valign": "top"},
    "block": {
        "bold": True,
        "font_size": 12,
        "font_color": DEEP,
        "valign": "bottom",
        "bottom": 2,
        "bottom_color": DEEP,
    },
    "head": {
        **_WRAP,
        "bold": True,
        "bg_color": SAND,
        "valign": "bottom",
        "bottom": 1,
        "bottom_color": INK,
    },
    "label": {**_RULED, **_WRAP},
    "label.indent": {**_RULED, **_WRAP, **_INDENT},
    "symbol": {**_RULED, **_CENTRE, **_WRAP},
    # The indent keeps a formula off the symbol before it, which may fill its cell.
    "formula": {**_RULED, **_WRAP, **_INDENT},
    "unit": {**_RULED, **_CENTRE, **_WRAP, "font_color": SLATE},
    # The indent keeps a source off the number before it.
    "source": {**_RULED, **_WRAP, **_INDENT, "font_color": SLATE},
    # At the end of a line, over the empty cells behind it.
    "source.line": {**_INDENT, "valign": "top", "font_color": SLATE},
    "text": {"valign": "top"},
    "text.c": {**_RULED, **_CENTRE, **_WRAP},
    "wrap": {**_WRAP, "valign": "top"},
    "gen": {**_RULED, **_RIGHT, "num_format": "General"},
    "limit": {**_RULED, **_RIGHT, "num_format": "General", "font_color": SLATE},
    "state": {**_RULED, **_CENTRE, "num_format": "0", "font_color": SLATE},
    # Shrunk where a word is wider than its column: a second line on every verdict row would
    # make a calculation half as long again.
    "verdict": {**_RULED, **_CENTRE, "shrink": True, "bold": True, "valign": "top"},
    "master": {
        "bold": True,
        "valign": "vcenter",
        "bg_color": HAZE,
        "top": 1,
        "top_color": DEEP,
        "bottom": 1,
        "bottom_color": DEEP,
    },
    "people": {
        "valign": "vcenter",
        "bg_color": HAZE,
        "top": 1,
        "top_color": DEEP,
        "bottom": 1,
        "bottom_color": DEEP,
    },
    "caution.line": {"bold": True, "valign": "top", "font_color": BRICK},
    "link": {**_RULED, **_WRAP, "font_color": DEEP, "underline": 1},
    **_numbers("num", _RULED),
    **{f"qty.{d}": {**_RULED, **_RIGHT, "num_format": f'{number_format(d)};-{number_format(d)};"–"'}
       for d in DIGITS},
    **_numbers("input", _TYPED),
    "input.text": {**_TYPED, **_WRAP, "num_format": "@"},
    "input.list": {**_TYPED, **_WRAP},
    **_numbers("given", _GIVEN),
    "given.small": {**_GIVEN, **_RIGHT, "num_format": "General"},
    "given.text": {**_GIVEN, **_WRAP},
}
# Paper for people, and the same in type that is read at arm's length in a wet yard.
LARGE = 13
for _stem, _size in (("page", BODY), ("large", LARGE)):
    _type: Look = {"font_size": _size}
    STYLES |= {
        f"{_stem}.note": {"font_color": SLATE, "valign": "top", **_type},
        f"{_stem}.say": {**_WRAP, "valign": "top", **_type},
        f"{_stem}.label": {**_RULED, **_WRAP, **_type},
        f"{_stem}.words": {**_RULED, **_WRAP, **_RIGHT, **_type},
        f"{_stem}.unit": {**_RULED, **_CENTRE, "shrink": True, "font_color": SLATE, **_type},
        f"{_stem}.tick": {**_RULED, **_CENTRE, **_type},
        f"{_stem}.blank": {"bottom": 1, "bottom_color": INK, **_type},
        **_numbers(_stem, {**_RULED, **_type}),
    }
STYLES["drawing.title"] = {"bold": True, "valign": "bottom", "font_color": DEEP}
# More heads, so that a heading stands where its column's contents stand.
STYLES["head.c"] = {**STYLES["head"], **_CENTRE}
STYLES["head.one"] = {k: v for k, v in STYLES["head"].items() if k != "text_wrap"}
STYLES["head.n"] = {**STYLES["head"], **_RIGHT}
STYLES["head.source"] = {**STYLES["head"], **_INDENT}

ACROSS = ("block", "master")
"""Styles whose ground and rule run on to the right edge of the print area."""

VERDICT_LOOKS: dict[str, Look] = {
    "OK": {"font_color": DEEP, "bg_color": MIST, "bold": True, "border": 1, "border_color": DEEP},
    "LOOK": {
        "font_color": BARK,
        "bg_color": OCHRE,
        "bold": True,
        "border": 3,
        "border_color": BARK,
    },
    "NOT OK": {
        "font_color": PAPER,
        "bg_color": BRICK,
        "bold": True,
        "border": 1,
        "border_color": INK,
    },
    "NEEDS INPUT": {
        "font_color": BRICK,
        "bg_color": BLUSH,
        "bold": True,
        "border": 4,
        "border_color": BRICK,
    },
    "not used": {
        "font_color": SLATE,
        "bg_color": HAZE,
        "bold": True,
        "border": 7,
        "border_color": SLATE,
    },
}
"""Conditional looks by verdict word.  Border styles differ, so that grey print differs too."""

DEFAULT: Look = {
    "font_name": FONT,
    "font_size": BODY,
    "font_color": INK,
    # Without this the writer ties the font to the theme, whose font is another one.
    "font_scheme": "none",
}
"""Properties every format starts from: the workbook's default format."""


def style_fault(name: str) -> str | None:
    """Return why ``name`` is no style of the vocabulary, or None when it is one."""
    if name in STYLES:
        return None
    stem = name.split(".")[0]
    near = ", ".join(s for s in STYLES if s.split(".")[0] == stem)
    return f"no style is called {name!r}" + (f"; there are {near}" if near else "")


def is_input(name: str) -> bool:
    """Return whether a style is one of the unlocked ones: what the user types in."""
    return name.startswith("input.")


def luminance(colour: str) -> float:
    """Return the relative luminance [-] of ``#RRGGBB``.  Source: WCAG 2.1, definitions; seen."""
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    red, green, blue = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Return the contrast ratio [-], 1 to 21, of two colours.  Source: WCAG 2.1, 1.4.3; seen."""
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def pairs() -> list[tuple[str, str, str]]:
    """Return (where, letter colour, ground colour) of every style and verdict look."""
    every = {**STYLES, **{f"verdict word {word}": look for word, look in VERDICT_LOOKS.items()}}
    return [
        (name, look.get("font_color", INK), look.get("bg_color", PAPER))
        for name, look in every.items()
    ]
