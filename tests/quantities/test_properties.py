"""What must hold for any sizes: mirrored openings, other units, larger readings."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

from hypothesis import given as forall
from hypothesis import strategies as st

from tests.quantities.examples import readings, run_with

TENTHS = st.integers(0, 400).map(lambda value: Decimal(value) / 10)
STATIONS = st.lists(TENTHS, min_size=3, max_size=3)


def even(left: list[Decimal], head: list[Decimal], right: list[Decimal]) -> Any:
    texts = [f"left:{n * 900} {d} mm" for n, d in enumerate(left)]
    texts += [f"head:{n * 400} {d} mm" for n, d in enumerate(head)]
    texts += [f"right:{n * 900} {d} mm" for n, d in enumerate(right)]
    return run_with(
        "even_packer", readings=readings(*texts), step="0.5 mm", filler_takes="1 mm",
        opening_width="800 mm", opening_height="1800 mm",
    )  # fmt: skip


@forall(STATIONS, STATIONS, STATIONS)
def test_a_mirrored_opening_takes_the_same_packer_and_filler(
    left: list[Decimal], head: list[Decimal], right: list[Decimal]
) -> None:
    seen, mirrored = even(left, head, right), even(right[::-1], head[::-1], left[::-1])
    assert seen.thickness.value == mirrored.thickness.value
    assert seen.spread.value == mirrored.spread.value
    sizes = {"opening_width": "800 mm", "opening_height": "1800 mm", "depth": "5 mm"}
    filler, other = (run_with("gap_filler", packer=item, **sizes) for item in (seen, mirrored))
    assert abs(filler.left.number - other.right.number) < 1e-6
    assert abs(filler.head.number - other.head.number) < 1e-6


@forall(STATIONS, st.integers(1, 20))
def test_readings_that_all_grow_by_whole_steps_thicken_the_packer_by_as_much(
    depths: list[Decimal], steps: int
) -> None:
    grown = [depth + Decimal(steps) / 2 for depth in depths]
    before, after = even(depths, depths, depths), even(grown, grown, grown)
    if before.thickness.magnitude > 0:
        assert after.thickness.magnitude - before.thickness.magnitude == Decimal(steps) / 2
    assert after.spread.value == before.spread.value


@forall(st.lists(TENTHS, min_size=1, max_size=9), st.integers(0, 8), st.integers(1, 50))
def test_a_greater_reading_never_thins_the_packer(depths: list[Decimal], which: int, more: int) -> None:
    def thickness(values: list[Decimal]) -> Decimal:
        item = run_with("even_packer", readings=readings(*(f"{d} mm" for d in values)), step="0.5 mm")
        return item.thickness.magnitude

    index = which % len(depths)
    grown = [d + more if n == index else d for n, d in enumerate(depths)]
    assert thickness(grown) >= thickness(depths)


@forall(st.lists(TENTHS, min_size=1, max_size=9))
def test_the_packer_is_at_least_the_mean_and_less_than_a_step_over_it(depths: list[Decimal]) -> None:
    item = run_with("even_packer", readings=readings(*(f"{d} mm" for d in depths)), step="0.5 mm")
    over = item.thickness.number - item.mean.number
    assert -1e-9 <= over < 0.5
    for each in item.remainders:
        assert each.wall_gap.number - each.frame_gap.number == each.remainder.number
        assert min(each.wall_gap.number, each.frame_gap.number) == 0


@forall(st.integers(300, 3000), st.integers(1500, 3000), st.integers(0, 150), st.integers(1, 145))
def test_the_unit_a_size_is_written_in_makes_no_difference(
    width: int, height: int, quirk: int, face: int
) -> None:
    in_mm = run_with(
        "architrave_set", opening_width=f"{width} mm", opening_height=f"{height} mm", quirk=f"{quirk} mm",
        head_width=f"{face} mm",
    )  # fmt: skip
    in_m = run_with(
        "architrave_set", opening_width=f"{Decimal(width) / 1000} m",
        opening_height=f"{Decimal(height) / 10} cm", quirk=f"{Decimal(quirk) / 1000} m",
        head_width=f"{Decimal(face) / 10} cm",
    )  # fmt: skip
    assert in_mm.head_long_point.value == in_m.head_long_point.value
    assert in_mm.leg_long_point.value == in_m.leg_long_point.value


@forall(st.integers(0, 30), st.integers(0, 30), st.integers(10, 60))
def test_a_wider_packer_bears_more_and_leaves_less_beside_it(first: int, second: int, width: int) -> None:
    def fit(f: int) -> Any:
        return run_with(
            "packer_fit", frame_edge="34 mm", first_quirk=f"{first} mm", second_quirk=f"{second} mm",
            packer_width=f"{f} mm", overlap="1 mm", clearance="1 mm", least_bearing="10 mm",
        )  # fmt: skip

    here, wider = fit(width), fit(width + 1)
    assert wider.bearing.magnitude == here.bearing.magnitude + 1
    assert wider.spare.magnitude == here.spare.magnitude - 1
    assert here.largest.value == wider.largest.value
