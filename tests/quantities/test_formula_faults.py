"""Faults of formulas: each at its spot in the formula, with what was expected and the nearest right name."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.quantities.folders import job_text, method_text, work

PACKER = "even_packer(readings = set_back, step = ripping_step)"
FAULTS = [
    (
        "opening_widht + 1 mm",
        "opening_widht",
        "There is no size, quantity or material called “opening_widht”.",
        "Expected a name from sizes, quantities or materials of this method. Did you mean “opening_width”?",
    ),
    (
        "architrave + 1 mm",
        "architrave",
        "“architrave” is a material, which is no value by itself.",
        "Expected one of its fields, such as architrave.width.",
    ),
    (
        "architrave.widht",
        "architrave.widht",
        "The material “torus-69x18-mdf”, which is bound to architrave, has no widht.",
        None,
    ),
    (
        "first_quirk.width",
        "first_quirk.width",
        "“first_quirk” is a value and has no fields.",
        "Expected the name alone, without a dot.",
    ),
    ("packer.thicknes", "packer.thicknes", "“packer” has no field “thicknes”.", None),
    (
        "packer + 1 mm",
        "packer",
        "This is what even_packer gives, which cannot be reckoned with.",
        "Expected a single value here.",
    ),
    (
        "set_back + 1 mm",
        "set_back",
        "This is readings, which cannot be reckoned with.",
        "Expected a single value here.",
    ),
    (
        "hinge_side + 1 mm",
        "hinge_side",
        "This is a word, which cannot be reckoned with.",
        "Expected a single value here.",
    ),
    (
        "evn_packer(readings = set_back, step = 1 mm)",
        "evn_packer(readings = set_back, step = 1 mm)",
        "There is no calculator called “evn_packer”.",
        "Expected the name of a calculator. Did you mean “even_packer”?",
    ),
    ("round_up(opening_width)", "round_up(opening_width)", "round_up was given 1 values.", "It takes 2."),
    (
        "round_up(x = opening_width, step = 1 mm)",
        "x = opening_width",
        "round_up takes its values by their place, and “x =” stands before one.",
        "Expected the values alone, such as round_up(a, b).",
    ),
    (
        "marks(opening_width, 300 mm)",
        "opening_width",
        "marks takes its inputs by name, and this one has none.",
        "Expected name = value. Its inputs are: length, spacing, least_end.",
    ),
    (
        "marks(length = opening_width, spaceing = 300 mm)",
        "spaceing = 300 mm",
        "marks has no input called “spaceing”.",
        "Its inputs are: length, spacing, least_end. Did you mean “spacing”?",
    ),
    (
        "marks(length = opening_width)",
        "marks(length = opening_width)",
        "marks was not given “spacing”.",
        "Expected spacing = a length.",
    ),
    (
        "marks(length = opening_width, spacing = 3 kg)",
        "spacing = 3 kg",
        "“spacing” of marks was given a mass.",
        "Expected a length.",
    ),
    (
        "marks(length = set_back, spacing = 3 mm)",
        "length = set_back",
        "“length” of marks was given readings.",
        "Expected a length.",
    ),
    (
        "marks(length = hinge_side, spacing = 3 mm)",
        "length = hinge_side",
        "“length” of marks was given a word.",
        "Expected a length.",
    ),
    (
        "even_packer(readings = opening_width, step = 1 mm)",
        "readings = opening_width",
        "“readings” of even_packer was given a length.",
        "Expected readings.",
    ),
    (
        "gap_filler(packer = opening_width, opening_width = 1 m, opening_height = 2 m, depth = 5 mm)",
        "packer = opening_width",
        "“packer” of gap_filler was given a length.",
        "Expected what even_packer gives.",
    ),
    (
        "opening_width + 3 kg",
        "opening_width + 3 kg",
        "“+” cannot join a length and a mass.",
        "Expected both sides to be of one kind.",
    ),
    (
        "opening_width >= 3 kg",
        "opening_width >= 3 kg",
        "“>=” cannot join a length and a mass.",
        "Expected both sides to be of one kind.",
    ),
    (
        "least(opening_width, 3 kg)",
        "least(opening_width, 3 kg)",
        "“least” cannot join a length and a mass.",
        "Expected both sides to be of one kind.",
    ),
    (
        "round_up(opening_width, 0 mm)",
        "round_up(opening_width, 0 mm)",
        "Rounding to a step of nought or less for the example sizes.",
        "Expected a step above nought, such as 0.5 mm.",
    ),
    (
        "sqrt(opening_width)",
        "sqrt(opening_width)",
        "There is no square root of this for the example sizes.",
        "Expected a plain number or an area, not negative.",
    ),
    (
        "total(first_quirk)",
        "first_quirk",
        "total gathers over openings or readings, and this is one value.",
        "Expected a value of each opening, readings, or several values with commas between.",
    ),
    (
        "total(packer.remainders)",
        "packer.remainders",
        "This is one part of a record, which cannot be reckoned with.",
        "Expected a single value here.",
    ),
    (
        "marks(length = 100 m, spacing = 1 mm)",
        "spacing = 1 mm",
        "“spacing” gives more than 1000 places for the example sizes.",
        "Expected a wider spacing.",
    ),
    (
        "marks(length = 101 m, spacing = 1 m)",
        "length = 101 m",
        "“length” of marks is 101000 mm for the example sizes.",
        "Expected at most 100000 mm. It rests on the formula: measure or read it again.",
    ),
    (
        "glue_bead(length = 1 m, diameter = 3 mm, waste = -10 %)",
        "waste = -10 %",
        "“waste” of glue_bead is −0.1 for the example sizes.",
        "Expected at least 0. It rests on the formula: measure or read it again.",
    ),
    (
        "packs(amount = 3 ml, pack = 300 ml, used = 0 %)",
        "used = 0 %",
        "No part of a pack is used for the example sizes.",
        "Expected a share above 0 %, such as 90 %.",
    ),
    (
        "architrave_set(opening_width = 1 m, opening_height = 1 m, quirk = 0 mm, head_width = 9 mm, "
        "floor_gap = 2 m)",
        "floor_gap = 2 m",
        "The gap at the floor leaves a leg of no length for the example sizes.",
        "Expected a floor gap smaller than the opening's height.",
    ),
]


@pytest.mark.parametrize(
    ("formula", "spot", "says", "expected"), FAULTS, ids=[fault[0][:50] for fault in FAULTS]
)
def test_a_fault_stands_at_its_spot_with_what_was_expected(
    tmp_path: Path, formula: str, spot: str, says: str, expected: str | None
) -> None:
    text = method_text(f"""
        packer: {{label: Packer, work: "{PACKER}"}}
        bad: {{label: Bad, work: "{formula}"}}
        after: {{label: After, work: bad + 1 mm}}
    """)
    done = work(tmp_path, text)
    (fault,) = done.faults
    head, _, told = fault.partition(" error: ")
    assert head == f"t.yaml:27:{spot}"
    assert told.partition(" | ")[0] == says
    assert expected is None or told.partition(" | ")[2] == expected
    assert done.ledger.broken == {"bad", "after"}


def test_a_field_that_is_not_there_is_told_with_those_that_are(tmp_path: Path) -> None:
    (fault,) = work(tmp_path, method_text("bad: {label: Bad, work: architrave.thicknes}")).faults
    assert " | It has: width, thickness, edge_thickness, " in fault
    assert fault.endswith("Did you mean “thickness”?")


def test_a_quantity_that_rests_on_itself_is_told_as_a_path(tmp_path: Path) -> None:
    text = method_text("""
        a: {label: A, work: b + 1 mm}
        b: {label: B, work: c * 2}
        c: {label: C, work: a - 1 mm}
        alone: {label: Alone, work: alone + 1 mm}
        after: {label: After, work: a}
    """)
    done = work(tmp_path, text)
    assert done.faults == [
        "t.yaml:28:a error: “a” rests on itself: a → b → c → a. | "
        "Expected each quantity to rest on sizes in the end.",
        "t.yaml:29:alone error: “alone” rests on itself: alone → alone. | "
        "Expected each quantity to rest on sizes in the end.",
    ]
    assert done.ledger.broken == {"a", "b", "c", "alone", "after"}


def test_every_fault_of_a_formula_is_told_in_one_run(tmp_path: Path) -> None:
    text = method_text("bad: {label: Bad, work: 'widht + hieght + marks(lenght = 1 m, spacing = 1 m)'}")
    assert [fault.partition(" error: ")[0] for fault in work(tmp_path, text).faults] == [
        "t.yaml:26:widht",
        "t.yaml:26:hieght",
        "t.yaml:26:lenght = 1 m",
    ]


def test_a_fault_of_a_method_is_told_once_however_many_openings_there_are(tmp_path: Path) -> None:
    text = method_text("bad: {label: Bad, work: first_quirk + 3 kg}")
    assert len(work(tmp_path, text, job_text()).faults) == 1


def test_a_unit_to_print_in_must_be_of_the_kind(tmp_path: Path) -> None:
    text = method_text("head: {label: Head, work: opening_width, unit: kg}")
    assert work(tmp_path, text).faults == [
        "t.yaml:26:kg error: “head” is a length and cannot be printed in kg. | "
        "Expected a unit of the same kind."
    ]


def test_a_refused_record_is_told_once_and_its_empty_field_adds_nothing(tmp_path: Path) -> None:
    text = method_text("""
        pin: {label: Pin, work: 'pin_length(stock = stock, held = 18 mm, ground = 10 mm, times = 2)'}
        length: {label: Length, work: pin.length}
    """, sizes="stock: {label: Pins, readings: true, chosen: {default: [25 mm, 50 mm]}}")  # fmt: skip
    assert work(tmp_path, text).faults == [
        "t.yaml:11:pin_length(stock = stock, held = 18 mm, ground = 10 mm, times = 2) error: Pin, "
        "the example sizes: no stock pin is at least 36 mm long, to hold, and at most 28 mm, not to come "
        "through. | "
        "Expected sizes that work, or another way of doing it."
    ]
