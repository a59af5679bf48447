"""The vocabulary of looks: contrast, size, one font, which cells are unlocked."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

import builder
from builder.workbook.styles import (
    ACROSS,
    BODY,
    DEFAULT,
    FONT,
    PAPER,
    STYLES,
    VERDICT_LOOKS,
    contrast,
    is_input,
    pairs,
    style_fault,
)

BUILDER = Path(builder.__file__).parent
PROMISED = [
    *"title subtitle note block head head.c head.n label label.indent symbol formula unit".split(),
    *"source source.line text wrap gen text.c state verdict limit master people link".split(),
    *"given.small input.text input.list given.text head.source head.one caution.line".split(),
    "drawing.title",
    *(f"{stem}.{d}" for stem in ("num", "qty", "input", "given", "page", "large")
      for d in range(7)),
    *(f"{stem}.{part}" for stem in ("page", "large")
      for part in "note say label words unit tick blank".split()),
]


def test_the_vocabulary_is_the_promised_one():
    assert sorted(STYLES) == sorted(PROMISED)
    assert all(style_fault(name) is None for name in PROMISED)


def test_no_style_is_kept_that_nothing_wears():
    """Those made by the number of decimals, and of the two sizes of paper, go as families."""
    code = " ".join(path.read_text(encoding="utf-8") for path in BUILDER.rglob("*.py")
                    if path.name != "styles.py")
    single = [name for name in STYLES if not re.search(r"\.\d$|^(page|large)\.", name)]
    assert len(single) > 20
    assert [name for name in single if f'"{name}"' not in code] == []


@pytest.mark.parametrize("name", ["", "Title", "num", "num.7", "input", "input.date", "nothing"])
def test_a_style_outside_the_vocabulary_is_named(name):
    assert repr(name) in style_fault(name)


def test_a_near_style_is_offered():
    assert "num.2" in style_fault("num.9")


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        # Ratios of WCAG worked pairs: black on white 21:1; #777 on white 4.48:1 (memory).
        ("#000000", "#FFFFFF", 21.0),
        ("#777777", "#FFFFFF", 4.48),
        ("#FF0000", "#FFFFFF", 4.00),
    ],
)
def test_contrast_of_known_pairs(one, other, ratio):
    assert contrast(one, other) == pytest.approx(ratio, abs=0.005)
    assert contrast(one, other) == contrast(other, one)


@pytest.mark.parametrize(("where", "letter", "ground"), pairs())
def test_a01_contrast_of_every_letter_and_ground(where, letter, ground):
    """A01: 4.5 to 1, not rounded, conditional looks included."""
    assert contrast(letter, ground) >= 4.5, where


def test_a_verdict_look_brings_both_its_colours():
    """Each verdict look is laid over any style: both colours come from the look itself."""
    for word, look in VERDICT_LOOKS.items():
        assert {"font_color", "bg_color"} <= set(look), word


def test_p06_one_font_no_italics_sizes():
    assert DEFAULT["font_name"] == FONT and DEFAULT["font_size"] == BODY >= 10
    for name, look in STYLES.items():
        assert "font_name" not in look and "italic" not in look
        assert look.get("font_size", BODY) >= 10
        # Underlining marks a link, as everywhere; it never carries meaning of its own.
        assert ("underline" in look) == (name == "link")
    assert STYLES["title"]["font_size"] == 14 and STYLES["block"]["font_size"] == 12


def test_only_inputs_are_unlocked():
    for name, look in STYLES.items():
        assert (look.get("locked") is False) == is_input(name), name


def test_a02_inputs_have_a_border_and_a_fill():
    for name, look in STYLES.items():
        if is_input(name):
            assert look["border"] and look["bg_color"] != PAPER


def test_a02_verdicts_differ_without_colour():
    """The word is the cue; the border, or else the grey of the ground, differs as well."""
    borders = {word: look["border"] for word, look in VERDICT_LOOKS.items()}
    assert list(borders) == ["OK", "LOOK", "NOT OK", "NEEDS INPUT", "not used"]
    assert all(look["bold"] for look in VERDICT_LOOKS.values())
    same = [(a, b) for a in borders for b in borders if a < b and borders[a] == borders[b]]
    assert same == [("NOT OK", "OK")]
    assert contrast(VERDICT_LOOKS["NOT OK"]["bg_color"], VERDICT_LOOKS["OK"]["bg_color"]) >= 3


@pytest.mark.parametrize("stem", ["num", "input", "given"])
def test_numbers_have_fixed_decimals_at_the_right(stem):
    for digits in range(7):
        look = STYLES[f"{stem}.{digits}"]
        assert look["num_format"] == ("#,##0." + "0" * digits if digits else "#,##0")
        assert look["align"] == "right"


def test_w05_no_look_hides_its_contents():
    for name, letter, ground in pairs():
        assert letter != ground, name
    for name, look in STYLES.items():
        assert not look.get("hidden"), name
        # A part left empty would show nothing: every part of a format shows something.
        assert all(look.get("num_format", "General").split(";")), name


def test_headings_that_run_across_have_a_rule():
    for name in ACROSS:
        assert STYLES[name]["bottom"]


def test_an_indent_stands_beside_an_alignment():
    """Without one the programs leave the indent out."""
    indented = [name for name, look in STYLES.items() if look.get("indent")]
    assert sorted(indented) == ["formula", "head.source", "label.indent", "source",
                                "source.line"]
    assert all(STYLES[name]["align"] == "left" for name in indented)
