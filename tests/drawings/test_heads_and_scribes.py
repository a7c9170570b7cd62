"""The head cut through and the scribed inside corner: true sizes, and a scribe that closes."""

from __future__ import annotations

import pytest
from shapely.affinity import scale
from shapely.geometry import Polygon

from generator.drawings import Angle, draw
from generator.drawings.measures import section_of
from generator.drawings.registry import lay
from generator.drawings.sheet import Sheet
from generator.quantities.profiles import PROFILES
from tests.drawings.samples import PAPER, head, scribe, size


def shape(sheet: Sheet, name: str) -> Polygon:
    return Polygon(sheet.outlines[name].real)


@pytest.mark.parametrize(
    ("name", "across", "down"), [("packer", 8.5, 27.0), ("architrave", 18.0, 69.0), ("pin", 50.0, 1.4)]
)
def test_the_head_is_the_jamb_turned_upright(name: str, across: float, down: float) -> None:
    found = lay("head_section", head(packer=8.5), PAPER)
    left, top, right, bottom = Polygon(found.sheet.outlines[name].paper).bounds
    assert found.scale == "1:1"
    assert (right - left, bottom - top) == pytest.approx((across, down), abs=0.03)


def test_packer_and_architrave_stand_over_the_lining_by_their_quirks() -> None:
    sheet = lay("head_section", head(packer=8.5), PAPER).sheet
    lining, packer, architrave = (shape(sheet, name).bounds for name in ("lining", "packer", "architrave"))
    assert lining[3] - packer[3] == pytest.approx(5.0)
    assert lining[3] - architrave[3] == pytest.approx(9.0)
    assert (packer[2], architrave[2]) == pytest.approx((lining[0], packer[0]))


def test_what_carries_the_wall_is_not_made_up() -> None:
    words = [entry.text for entry in lay("head_section", head(), PAPER).key]
    assert "Wall over the opening; what carries it is not drawn" in words


def test_a_head_without_a_packer_says_so() -> None:
    assert "There is no packer." in draw("head_section", head(set_back=0.0), PAPER).alt


@pytest.mark.parametrize("name", PROFILES)
def test_the_second_board_closes_on_the_face_of_the_first(name: str) -> None:
    """By shapely they share no area; by the section's own face the second leaves nothing open to it."""
    sheet = lay("scribe_detail", scribe(shape=name), PAPER).sheet
    first, second = shape(sheet, "first board"), shape(sheet, "second board")
    assert first.intersection(second).area == pytest.approx(0.0, abs=0.01)
    section, steps = section_of(name, size(119.0), size(15.0), None), 2380
    faces = sum(section.face_at((step + 0.5) * 119.0 / steps) for step in range(steps)) * 119.0 / steps
    assert second.area == pytest.approx(-second.bounds[0] * 119.0 - faces, abs=0.5)


def test_a_left_corner_is_a_right_one_mirrored() -> None:
    right, left = (lay("scribe_detail", scribe(side=side), PAPER).sheet for side in ("right", "left"))
    for name in ("first board", "second board", "first board, on plan", "second board, on plan"):
        mirrored = scale(shape(right, name), xfact=-1, yfact=1, origin=(0, 0))
        assert mirrored.symmetric_difference(shape(left, name)).area == pytest.approx(0.0, abs=1e-6)


def test_the_cut_leans_back_by_its_angle() -> None:
    """15 mm thick leaned 4 degrees: 15 tan 4 = 1.05 mm open at the back, none at the face."""
    values = scribe(back_cut=Angle(degrees=4.0, text="4"))
    open_behind = shape(lay("scribe_detail", values, PAPER).sheet, "left open behind")
    assert open_behind.bounds[2] - open_behind.bounds[0] == pytest.approx(1.049, abs=0.001)


@pytest.mark.parametrize(
    "changed", [{"side": "middle"}, {"material": "stone"}, {"back_cut": Angle(degrees=30.0, text="30")}]
)
def test_another_side_or_material_or_a_cut_that_lies_down_is_refused(changed: dict[str, object]) -> None:
    with pytest.raises(ValueError, match="no scribe of"):
        lay("scribe_detail", scribe(**changed), PAPER)
