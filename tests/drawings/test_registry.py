"""The registry: what a drawing takes, and what is refused."""

from __future__ import annotations

import importlib
import pkgutil

import pytest

import generator.drawings
from generator.drawings import DRAWINGS, FAMILIES, Angle, Size, draw
from generator.drawings.registry import Drawn, UnknownDrawing, WrongValues, drawing, lay
from generator.drawings.sheet import Sheet
from tests.drawings.samples import PAPER, USUAL, jamb, readings


def test_titles_are_the_first_lines_of_the_docstrings() -> None:
    assert DRAWINGS["jamb_section"].title == "Plan section through the jamb"
    for found in DRAWINGS.values():
        assert found.title == (found.lay.__doc__ or "").splitlines()[0].rstrip(".")


def test_parameters_say_their_kind_and_whether_they_are_required() -> None:
    found = {p.name: (p.kind, p.required) for p in DRAWINGS["jamb_section"].parameters}
    assert found["packer_width"] == (Size, True)
    assert found["opening_angle"] == (Angle, True)
    assert found["place"] == (str, False)
    assert "width" not in found


def test_every_family_file_registers_a_drawing() -> None:
    """A file that uses the decorator but is not among the families would vanish from the list unseen."""
    registering = set()
    for module in pkgutil.iter_modules(generator.drawings.__path__):
        found = importlib.import_module(f"generator.drawings.{module.name}")
        if module.name != "registry" and getattr(found, "drawing", None) is drawing:
            registering.add(found.__name__)
    assert registering == {family.__name__ for family in FAMILIES}
    assert {found.lay.__module__ for found in DRAWINGS.values()} == registering


def test_a_doubled_name_is_refused() -> None:
    def jamb_section(width: float) -> Drawn:
        """Another."""
        return Drawn(sheet=Sheet(width=width), title="", alt="")

    with pytest.raises(ValueError, match="a drawing named jamb_section is registered already"):
        drawing(jamb_section)


def test_a_missing_docstring_is_refused() -> None:
    def nameless(width: float) -> Drawn:
        return Drawn(sheet=Sheet(width=width), title="", alt="")

    with pytest.raises(ValueError, match="the drawing nameless has no docstring"):
        drawing(nameless)


def test_an_unknown_drawing_is_refused() -> None:
    with pytest.raises(UnknownDrawing, match="jam_section"):
        draw("jam_section", {}, PAPER)


def test_missing_and_unknown_values_are_named() -> None:
    values = jamb()
    del values["set_back"]
    values["setback"] = values["packer_width"]
    with pytest.raises(WrongValues, match=r"jamb_section: missing \['set_back'\], not known \['setback'\]"):
        draw("jamb_section", values, PAPER)


@pytest.mark.parametrize("count", [0, 25])
def test_too_few_or_too_many_readings_are_refused(count: int) -> None:
    one = readings()["readings"]
    assert isinstance(one, tuple)
    values = {**readings(), "readings": one[:1] * count}
    with pytest.raises(ValueError, match=f"1 to 24 readings can be drawn, not {count}"):
        draw("set_back_readings", values, PAPER)


def test_a_reading_beyond_its_member_is_refused() -> None:
    values = readings(high=1800.0)
    with pytest.raises(ValueError, match="a reading at 1890 on the left lies beyond its 1800"):
        draw("set_back_readings", values, PAPER)


def test_marks_out_of_order_are_refused() -> None:
    values = USUAL["quirk_marks"]
    backwards = values["leg_marks"]
    assert isinstance(backwards, tuple)
    with pytest.raises(ValueError, match="the leg's marks must rise within its 1990 mm"):
        draw("quirk_marks", {**values, "leg_marks": backwards[::-1]}, PAPER)


def test_a_registry_is_read_only() -> None:
    with pytest.raises(TypeError):
        DRAWINGS["mine"] = DRAWINGS["jamb_section"]  # type: ignore[index]


@pytest.mark.parametrize("name", USUAL)
def test_a_drawing_and_its_caption_stand_on_one_page(name: str) -> None:
    """Between the margins a page has 256 mm; a caption of one line takes 5 of them."""
    assert lay(name, USUAL[name], PAPER).sheet.height <= 251
