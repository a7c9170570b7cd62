"""No label of any drawing touches another, is struck by a line, or leaves the sheet."""

from __future__ import annotations

import itertools
from dataclasses import replace

import pytest

from generator.drawings.clipping import Box
from generator.drawings.pens import VISIBLE
from generator.drawings.registry import Drawn, lay
from generator.drawings.sheet import Label, Sheet, Spot, Stroke, Zone, collisions
from tests.drawings.samples import PAPER, WIDTHS, doorway, jamb, marks, packer_for, readings, rounds

SET_BACKS = (0.0, 0.5, 2.0, 7.5, 12.0, 24.0, 40.0)
QUIRKS = (2.0, 5.0, 9.0, 15.0)
ARCHITRAVES = (44.0, 57.0, 69.0, 95.0, 120.0, 145.0)


def faults(drawn: Drawn) -> tuple[str, ...]:
    return collisions(drawn.sheet)


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("set_back", SET_BACKS)
def test_jamb_over_the_grid(set_back: float, width: float) -> None:
    for quirk, architrave in itertools.product(QUIRKS, ARCHITRAVES):
        values = jamb(set_back=set_back, first=quirk, second=max(2.0, quirk - 1), width=architrave)
        assert faults(lay("jamb_section", values, width)) == (), (quirk, architrave)


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("about", [0.6, 8.0, 38.0])
@pytest.mark.parametrize("count", range(1, 25))
def test_readings_of_any_number(count: int, about: float, width: float) -> None:
    packer = packer_for(about)
    values = readings(rounds(count, about, packer), packer)
    assert faults(lay("set_back_readings", values, width)) == ()


@pytest.mark.parametrize("width", WIDTHS)
def test_no_text_is_smaller_than_the_rule_allows(width: float) -> None:
    for name, values in (
        ("jamb_section", jamb()),
        ("doorway_elevation", doorway()),
        ("set_back_readings", readings()),
        ("quirk_marks", marks()),
    ):
        assert min(text.em for text in lay(name, values, width).sheet.texts) >= 3.3


@pytest.mark.parametrize("width", WIDTHS)
def test_every_printed_size_of_the_usual_jamb_stands_on_the_view(width: float) -> None:
    drawn = lay("jamb_section", jamb(), width)
    assert drawn.sheet.unplaced == []


# The checker itself must bite.


def struck_sheet() -> Sheet:
    sheet = Sheet(width=PAPER, height=50.0)
    sheet.text("24", 20, 20, "figure")
    return sheet


def test_the_checker_sees_a_line_through_a_figure() -> None:
    sheet = struck_sheet()
    sheet.line(((10, 19), (40, 19)), VISIBLE)
    assert collisions(sheet) == ("'24' struck by a line at (10, 19)",)


def test_the_checker_sees_a_line_that_comes_too_near() -> None:
    sheet = struck_sheet()
    bottom = sheet.texts[0].box.bottom
    sheet.line(((10, bottom + 0.2), (40, bottom + 0.2)), VISIBLE)
    assert len(collisions(sheet)) == 1


def test_the_checker_lets_a_line_pass_at_the_stated_distance() -> None:
    sheet = struck_sheet()
    bottom = sheet.texts[0].box.bottom
    sheet.line(((10, bottom + 0.25), (40, bottom + 0.25)), VISIBLE)
    assert collisions(sheet) == ()


def test_the_checker_sees_two_labels_nearer_than_the_gap() -> None:
    sheet = struck_sheet()
    sheet.text("5", sheet.texts[0].box.right + 0.2, 20, "figure")
    assert collisions(sheet) == ("'24' within 0.3 of '5'",)


def test_the_checker_sees_a_label_off_the_sheet() -> None:
    sheet = struck_sheet()
    sheet.text("918", PAPER - 2, 30, "figure")
    assert collisions(sheet) == ("'918' leaves the sheet",)


def test_a_label_takes_the_next_spot_when_the_first_is_struck() -> None:
    sheet = Sheet(width=PAPER, height=50.0)
    sheet.line(((10, 19), (40, 19)), VISIBLE)
    zone = Zone(box=Box(0, 0, PAPER, 50))
    spots = (Spot(x=20, y=20), Spot(x=20, y=30))
    sheet.label(Label(text="24", kind="figure", spots=spots, zone=zone, words="packer 24"))
    sheet.settle()
    assert [(text.x, text.y) for text in sheet.texts] == [(20, 30)]


def test_a_figure_with_no_room_goes_to_the_notes() -> None:
    sheet = Sheet(width=PAPER, height=50.0)
    sheet.line(((10, 19), (40, 19)), VISIBLE)
    zone = Zone(box=Box(0, 0, PAPER, 50))
    label = Label(text="24", kind="figure", spots=(Spot(x=20, y=20),), zone=zone, words="packer 24")
    sheet.label(label)
    sheet.label(replace(label, words="again", spots=(Spot(x=20, y=20.5),)))
    sheet.settle()
    assert sheet.unplaced == ["packer 24", "again"]


def test_a_leader_may_not_cross_a_figure() -> None:
    sheet = struck_sheet()
    leader = Stroke(points=((10, 19), (60, 19)), pen=VISIBLE)
    zone = Zone(box=Box(0, 0, PAPER, 50))
    spot = Spot(x=70, y=20, strokes=(leader,))
    sheet.label(Label(text="A", kind="letter", spots=(spot,), zone=zone, words="A"))
    sheet.settle()
    assert sheet.unplaced == ["A"]
