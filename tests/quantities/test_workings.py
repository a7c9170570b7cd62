"""The printed working is the arithmetic itself."""

from __future__ import annotations

import gettext

import pytest

from generator.problems import Span
from generator.quantities import functions as f
from generator.quantities.worked import Origin, Worked, given, literal, named
from generator.quantities.workings import places, print_worked, working_lines
from generator.units import UNITS, parse_value
from generator.wording import Language
from tests.quantities.examples import readings, size

HEIGHT, QUIRK, SECOND = (
    size("1990 mm", "opening_height"),
    size("5 mm", "first_quirk"),
    size("4 mm", "second_quirk"),
)
WIDTH = size("69 mm", "architrave.width")
STEP = size("0.5 mm", "ripping_step")


def told(item: Worked, name: str = "x", unit: str = "") -> list[str]:
    return list(working_lines(item, name=name, unit=UNITS[unit] if unit else None, space=" "))


def test_names_then_numbers_then_the_result() -> None:
    assert told(HEIGHT + QUIRK + SECOND + WIDTH, "leg_long_point") == [
        "leg_long_point = opening_height + first_quirk + second_quirk + architrave.width",
        "= 1990 mm + 5 mm + 4 mm + 69 mm",
        "= 2068 mm",
    ]


def test_a_mean_prints_its_readings_and_rounding_is_a_step_of_its_own() -> None:
    values = readings("left:0 7.5 mm", "left:900 8 mm", "left:1900 8.6 mm").values
    assert told(f.round_up(f.mean(values), STEP), "packer") == [
        "packer = mean of set_back, taken up to the next ripping_step",
        "= (7.5 mm + 8 mm + 8.6 mm) ÷ 3, taken up to the next 0.5 mm",
        "≈ 8.03 mm, taken up to the next 0.5 mm",
        "= 8.5 mm",
    ]


def test_a_number_that_is_not_the_whole_of_it_is_marked() -> None:
    assert told(WIDTH / size("7", "parts")) == ["x = architrave.width ÷ parts", "= 69 mm ÷ 7", "≈ 9.9 mm"]


def test_a_unit_that_was_asked_for_comes_last() -> None:
    assert told(HEIGHT + QUIRK, unit="m")[-2:] == ["= 1995 mm", "≈ 2 m"]


@pytest.mark.parametrize(
    ("item", "line"),
    [
        (QUIRK - (SECOND - QUIRK), "x = first_quirk − (second_quirk − first_quirk)"),
        (QUIRK - SECOND - QUIRK, "x = first_quirk − second_quirk − first_quirk"),
        (2 * (QUIRK + SECOND), "x = 2 × (first_quirk + second_quirk)"),
        (QUIRK / (SECOND / QUIRK), "x = first_quirk ÷ (second_quirk ÷ first_quirk)"),
        (QUIRK * SECOND / QUIRK, "x = first_quirk × second_quirk ÷ first_quirk"),
        (-(QUIRK + SECOND) * 2, "x = −(first_quirk + second_quirk) × 2"),
        (QUIRK - -SECOND, "x = first_quirk − (−second_quirk)"),
        (f.least([QUIRK, SECOND]) * 2, "x = (least of first_quirk, second_quirk) × 2"),
        (f.sqrt(QUIRK * SECOND) + QUIRK, "x = √(first_quirk × second_quirk) + first_quirk"),
        (f.total([QUIRK, SECOND]) - QUIRK, "x = (total of first_quirk, second_quirk) − first_quirk"),
        (
            f.least([f.round_up(QUIRK, STEP), SECOND]),
            "x = least of (first_quirk, taken up to the next ripping_step), second_quirk",
        ),
    ],
)
def test_brackets_stand_where_they_are_needed(item: Worked, line: str) -> None:
    assert told(item)[0] == line


def test_a_total_is_a_sum_and_is_bracketed_as_one() -> None:
    assert told(f.total([QUIRK, SECOND]) * 3)[1] == "= (5 mm + 4 mm) × 3"
    assert told(QUIRK + f.total([QUIRK, SECOND]))[1] == "= 5 mm + 5 mm + 4 mm"


def test_a_quantity_is_named_and_its_arithmetic_not_repeated() -> None:
    both = named(QUIRK + SECOND, "total_quirk", "Both quirks")
    assert told(HEIGHT + both) == ["x = opening_height + total_quirk", "= 1990 mm + 9 mm", "= 1999 mm"]


def test_another_name_for_a_quantity_is_told_by_the_arithmetic_behind_it() -> None:
    both = named(named(QUIRK + SECOND, "inner", "Inner"), "outer", "Outer")
    assert told(both) == ["x = first_quirk + second_quirk", "= 5 mm + 4 mm", "= 9 mm"]


def test_a_written_value_is_told_in_one_line_with_the_figures_it_was_written_with() -> None:
    assert told(size("0.25 mm", "clearance"), "clearance") == ["clearance = 0.25 mm"]
    assert print_worked(size("0.25 mm")).text() == "0.25 mm"


def test_a_worked_length_prints_to_a_tenth() -> None:
    assert print_worked(size("0.25 mm") + size("0 mm")).text() == "0.3 mm"
    assert not print_worked(size("0.25 mm") + size("0 mm")).exact


def test_a_small_area_prints_in_square_millimetres() -> None:
    assert print_worked(size("6 mm") * size("6 mm")).text() == "36 mm²"
    assert print_worked(size("600 mm") * size("600 mm")).text() == "0.36 m²"


def test_the_working_is_said_in_the_language_asked_for() -> None:
    class German(gettext.NullTranslations):
        def gettext(self, message: str) -> str:
            return {"least of %(items)s": "das Kleinste aus %(items)s"}.get(message, message)

    lines = working_lines(
        f.least([QUIRK, SECOND]), Language(tag="de", catalogue=German()), name="x", space=" "
    )
    assert lines[0] == "x = das Kleinste aus first_quirk, second_quirk"


def test_the_places_a_result_rests_on() -> None:
    span = Span(file="doors.csv", line=4, column=7, text="1,hall,768")
    width = given("opening_width", parse_value("768 mm"), label="Width", origin=Origin.ROW, span=span)
    found = [(each.name, each.value, each.origin, each.where) for each in places(width + 2 * QUIRK, " ")]
    assert found == [
        ("opening_width", "768 mm", "survey row", "doors.csv:4"),
        ("first_quirk", "5 mm", "example", ""),
    ]


def test_a_plain_number_stands_without_a_unit() -> None:
    assert told(literal(parse_value("3")) * 2) == ["x = 3 × 2", "= 6"]
