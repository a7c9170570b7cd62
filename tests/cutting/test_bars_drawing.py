"""The drawing of the bars: true lengths, every figure readable, nothing struck or off the sheet."""

from __future__ import annotations

import dataclasses
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.drawings.bar_values import NAME, sheet_values
from generator.drawings.bars import FIRST_SHEET, NEXT_SHEETS
from generator.drawings.registry import draw, lay
from generator.drawings.sheet import collisions
from generator.memory.canonical import canonical
from generator.quantities.cutting.orders import CuttingOrder, PieceToCut, StockLength
from generator.quantities.cutting.task import plan_of
from tests.cutting.samples import chance, doors, order, piece

WIDTHS = (175.0, 80.0, 40.0)
STOCK = (StockLength(length=3600, on_hand=1), StockLength(length=4200), StockLength(length=8400))


def check(order: CuttingOrder, width: float) -> None:
    for values in sheet_values(plan_of(order)):
        sheet = lay(NAME, values, width).sheet
        assert collisions(sheet) == ()
        assert sheet.unplaced == []
        assert min((text.em for text in sheet.texts), default=3.3) >= 3.3


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("count", [1, 2, 4, 7, 12])
@pytest.mark.parametrize("trim", [0, 20])
def test_doors_of_any_number_are_readable(count: int, trim: int, width: float) -> None:
    check(doors(count, trim=trim), width)


@settings(max_examples=30, deadline=None)
@given(
    seed=st.integers(0, 999),
    count=st.integers(1, 16),
    least=st.sampled_from([40, 150, 600]),
    face=st.sampled_from(["12", "24", "69", "145", "220"]),
    width=st.sampled_from(WIDTHS),
)
def test_pieces_of_any_length_are_readable(
    seed: int, count: int, least: int, face: str, width: float
) -> None:
    check(chance(seed, count, least, 1700, stock=STOCK, trim=20, width=Decimal(face)), width)


@settings(max_examples=30, deadline=None)
@given(
    count=st.integers(1, 3),
    kerf=st.sampled_from(["0", "1.2", "3", "4"]),
    face=st.sampled_from(["44", "69", "120", "145"]),
    width=st.sampled_from(WIDTHS),
)
def test_mitres_of_any_width_are_readable(count: int, kerf: str, face: str, width: float) -> None:
    check(doors(count, kerf=Decimal(kerf), width=Decimal(face)), width)


def test_many_bars_flow_over_sheets_and_none_is_lost() -> None:
    plan = plan_of(doors(12))
    sheets = sheet_values(plan)
    numbers = [bar.number for values in sheets for bar in values["bars"]]  # type: ignore[union-attr]
    assert numbers == [str(bar.number) for bar in plan.bars]
    assert [len(values["bars"]) for values in sheets[:2]] == [FIRST_SHEET, NEXT_SHEETS]  # type: ignore[arg-type]
    heights = [lay(NAME, values, 175.0).sheet.height for values in sheets]
    assert max(heights) <= 250


def test_how_lengths_are_read_is_told_on_the_first_plan_of_a_document_only() -> None:
    plan = plan_of(doors(1))
    first, later = (
        [text.text for text in lay(NAME, sheet_values(plan, explained=said)[0], 175.0).sheet.texts]
        for said in (False, True)
    )
    assert "Running lengths" in first
    assert "Running lengths" not in later
    assert {"Marks", "How it is drawn"} <= set(later)


def test_pieces_measure_on_paper_what_they_measure_on_the_bar() -> None:
    drawn = lay(NAME, sheet_values(plan_of(doors(1, trim=20)))[0], 175.0)
    assert drawn.scale == "1:40"
    left, head = (drawn.sheet.outlines[f"piece {mark}"] for mark in ("1AL", "1AH"))
    assert left.paper[1][0] - left.paper[0][0] == pytest.approx(2070 / 40)
    top, foot = (head.paper[1][0] - head.paper[0][0], head.paper[2][0] - head.paper[3][0])
    assert (top - foot) * 40 == pytest.approx(2 * 69)
    bar = drawn.sheet.outlines["bar 1"]
    assert left.paper[0][0] - bar.paper[0][0] == pytest.approx(10 / 40)


def test_a_left_leg_and_a_right_leg_are_not_one_shape() -> None:
    outlines = lay(NAME, sheet_values(plan_of(doors(1)))[0], 175.0).sheet.outlines
    left, right = outlines["piece 1AL"].real, outlines["piece 1AR"].real
    assert (left[3][0] - left[0][0], left[1][0] - left[2][0]) == pytest.approx((0, 69))
    assert (right[3][0] - right[0][0], right[1][0] - right[2][0]) == pytest.approx((69, 0))


def test_a_piece_cut_both_ends_one_way_keeps_its_length_from_point_to_point() -> None:
    shifted = order(piece("A", 1279, -45, 45), piece("B", 900, 45, -45))
    sheet = lay(NAME, sheet_values(plan_of(shifted))[0], 175.0).sheet
    assert collisions(sheet) == ()
    for mark, way in (("A", 69), ("B", -69)):
        (left, _), (right, _), (low_right, _), (low_left, _) = sheet.outlines[f"piece {mark}"].real
        assert (left - low_left, right - low_right) == pytest.approx((way, way))
        whole = max(right, low_right) - min(left, low_left)
        assert whole == pytest.approx({"A": 1279, "B": 900}[mark])


def test_a_tilted_blade_takes_more_of_the_length() -> None:
    """Turned 31.62 and tilted 33.86 degrees, a cut lies as steep as the plain mitre of a square corner."""
    tilted = piece("A", 1000, 31.62, 0, left_tilt=33.86)
    assert tilted.steepest == pytest.approx(45, abs=0.02)
    assert order(tilted).saw(tilted) == order(tilted).saw(piece("A", 1000, 45))


def test_the_end_is_bold_and_the_next_start_light() -> None:
    texts = lay(NAME, sheet_values(plan_of(doors(1)))[0], 175.0).sheet.texts
    weights = {text.text: text.weight for text in texts}
    assert (weights["4144.5"], weights["2074.5"], weights["4149"]) == ("bold", "regular", "regular")


def test_the_alt_text_tells_the_bars() -> None:
    picture = draw(NAME, sheet_values(plan_of(doors(1)))[0], 80.0)
    assert picture.alt == (
        "Cutting plan for Torus architrave, MDF, 69 × 18 mm, saw cut 3 mm. Bar 1 of 4400 mm: 1AL 2070 to "
        "2070, 1AR 2070 to 4144.5; offcut 251. Bar 2 of 2200 mm: 1AH 924 to 924; offcut 1271.5."
    )


def test_values_are_plain_data_that_can_be_remembered() -> None:
    assert canonical(sheet_values(plan_of(doors(2))))


def test_a_refused_plan_has_no_sheet() -> None:
    assert sheet_values(plan_of(doors(1, stock=(StockLength(length=3000),)))) == ()


def test_no_bars_too_many_and_overlapping_pieces_are_refused() -> None:
    values = sheet_values(plan_of(doors(1)))[0]
    bars = values["bars"]
    assert isinstance(bars, tuple)
    for wrong in ((), bars * 7):
        with pytest.raises(ValueError, match="1 to 12 bars can be drawn on one sheet"):
            draw(NAME, {**values, "bars": wrong}, 175.0)
    first = bars[0]
    overlapping = dataclasses.replace(first, pieces=first.pieces[:1] * 2)  # type: ignore[type-var,union-attr]
    with pytest.raises(ValueError, match="1AL overlaps its neighbour on bar 1"):
        draw(NAME, {**values, "bars": (overlapping,)}, 175.0)


@pytest.mark.parametrize("width", WIDTHS)
def test_short_pieces_alike_are_told_in_one_where_their_marks_count_up(width: float) -> None:
    """Twenty-two of 96.5 mm with a saw cut of 3 mm: each ends 99.5 mm on."""
    pieces = tuple(
        PieceToCut(
            mark=f"LF{number}", opening="", name="landing, fillet", hand="", length=193, over=0, left_end=0.0,
            right_end=0.0,
        )
        for number in range(1, 23)
    )  # fmt: skip
    order = dataclasses.replace(
        doors(1), pieces=pieces, stock=(StockLength(length=4800),), width=Decimal(8), kerf=Decimal(3), trim=20
    )
    check(order, width)
    (values,) = sheet_values(plan_of(order))
    told = " ".join(text.text for text in lay(NAME, values, width).sheet.texts)
    if width == WIDTHS[0]:
        assert "1 to 22 are LF1 to LF22, 96.5 each: ends 96.5 and every 99.5 to 2186, next from 2189." in told
