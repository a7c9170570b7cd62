"""Titles, alt text and keys: whole sentences from the very values drawn; every shape keyed."""

from __future__ import annotations

import re

import pytest

from generator.drawings import draw
from generator.drawings.registry import lay
from tests.drawings.samples import PAPER, PHONE, USUAL, doorway, jamb, marks, readings, size


def test_alt_text_of_the_jamb() -> None:
    assert draw("jamb_section", jamb(packer=8.5), PAPER).alt == (
        "Plan section through the jamb at 1:1. Plaster stands 7.5 mm proud of the lining; the packer is 27"
        " by 8.5 mm. First quirk 5 mm on the lining edge, second quirk 4 mm on the packer. Torus"
        " architrave 69 by 18 mm, its inner edge 9 mm back from the lining's face. 1 mm is left at the"
        " wall side and takes flexible filler. The hinge pin stands 6 mm in front of the leaf, which opens"
        " to 144 degrees. Pins 50 mm long."
    )


def test_alt_text_says_when_there_is_no_packer() -> None:
    alt = draw("jamb_section", jamb(set_back=0.0), PAPER).alt
    assert "Plaster does not stand proud of the lining; there is no packer." in alt


def test_alt_text_says_when_plaster_is_to_be_eased() -> None:
    alt = draw("jamb_section", jamb(set_back=9.0, packer=8.5), PAPER).alt
    assert "Plaster stands proud of the packer here and is to be eased." in alt


def test_alt_text_of_the_doorway() -> None:
    assert draw("doorway_elevation", doorway(), PAPER).alt == (
        "Elevation of the doorway at 1:10. Clear width 768 mm, clear height 1990 mm. Head 924 mm to the"
        " long points, 786 mm to the short points. Each leg 2068 mm to the long point, 1999 mm to the"
        " short point; left and right are handed. Mitres are sawn 45 degrees off square. The enlarged"
        " corner shows the first quirk of 5 mm and the second quirk of 4 mm."
    )


def test_alt_text_of_the_readings() -> None:
    assert draw("set_back_readings", readings(), PAPER).alt == (
        "Chart of nine set-back readings round the frame, in mm of plaster proud of the lining. Mean 8.2,"
        " least 7.5, most 9. One even packer of 8.5 mm is drawn across them. Left leg, going up: foot 7.5"
        " (1.0 left at the wall side), middle 8.0 (0.5 left at the wall side), top 8.5. Head: left 8.0"
        " (0.5 left at the wall side), mid 8.5, right 8.0 (0.5 left at the wall side). Right leg, going"
        " down: top 9.0 (0.5 left at the frame side), middle 8.5, foot 8.0 (0.5 left at the wall side)."
    )


def test_alt_text_of_the_marks() -> None:
    assert draw("quirk_marks", marks(), PAPER).alt == (
        "Marking out at 1:20, a mark every 300 mm. On the leg marks at 0, 300, 600, 900, 1200, 1500, 1800,"
        " 1990 mm from the foot, the whole being 1990 mm. On the head marks at 0, 300, 600, 768 mm from"
        " the left end, the whole being 768 mm. The square is set to 5 mm from the lining's face, marking"
        " the lining edge. The square is set to 4 mm from the packer's edge, marking the packer."
    )


def test_the_opening_is_named_where_one_is_given() -> None:
    picture = draw("jamb_section", jamb(place="2, hall side"), PAPER)
    assert picture.title == "Jamb of doorway 2, hall side, plan section 1:1"
    assert picture.alt.startswith("Plan section through the jamb of doorway 2, hall side, at 1:1.")


def test_every_shape_of_the_jamb_is_keyed() -> None:
    picture = draw("jamb_section", jamb(packer=8.5), PAPER)
    assert picture.key == (
        ("A", "Blockwork, 100"),
        ("B", "Plaster, 13; 7.5 proud of the lining"),
        ("C", "Lining; edge 34, 118 deep"),
        ("D", "Packer, 27 × 8.5"),
        ("E", "Torus architrave, MDF, 69 × 18"),
        ("F", "Flexible filler; 1 left at the wall side"),
        ("G", "Skirting, 15 (beyond; fixed after)"),
        ("H", "Door leaf, 35; gap at hinge 3"),
        ("J", "Hinge; pin 6 in front of the leaf"),
        ("K", "Door stop, planted, 25 × 12"),
        ("L", "Packing gap, 8; packed at fixings"),
        ("M", "Pin, 50 long, in packer and lining"),
    )


@pytest.mark.parametrize(("long", "where"), [(25, "packer"), (15, "architrave")])
def test_a_pin_too_short_for_the_lining_is_not_said_to_hold_in_it(long: int, where: str) -> None:
    picture = draw("jamb_section", jamb(packer=8.5, architrave_pin=size(long)), PAPER)
    assert picture.key[-1][1] == f"Pin, {long} long, in {where} only: short of the lining"


@pytest.mark.parametrize("width", [PAPER, PHONE])
def test_each_letter_of_the_key_stands_on_the_view(width: float) -> None:
    drawn = lay("jamb_section", jamb(packer=8.5), width)
    bold = [text.text for text in drawn.sheet.texts if text.weight == "bold"]
    for entry in drawn.key:
        assert bold.count(entry.letter) >= 2, entry


@pytest.mark.parametrize("name", sorted(USUAL))
def test_letters_that_read_as_figures_are_not_used(name: str) -> None:
    assert not {"I", "O"} & {letter for letter, _ in draw(name, USUAL[name], PAPER).key}


@pytest.mark.parametrize("width", [PAPER, PHONE])
def test_no_figure_is_printed_that_was_not_given(width: float) -> None:
    """Sizes on the jamb come from the values alone; scales, letters and the bar to lay a rule on apart."""
    values = jamb(packer=8.5)
    given = {number for v in values.values() for number in _numbers(getattr(v, "text", ""))}
    own = {"0", "50", "100", "90", "1", "2", "4"}
    for text in lay("jamb_section", values, width).sheet.texts:
        assert set(_numbers(text.text)) <= given | own, text.text


def _numbers(text: str) -> list[str]:
    return re.findall(r"\d+(?:\.\d+)?", text)
