"""Marks, pins, glue and filler."""

from __future__ import annotations

import itertools
from decimal import Decimal
from typing import Any

import numpy as np
import pytest
from hypothesis import given as forall
from hypothesis import settings
from hypothesis import strategies as st

from generator.quantities.families.beads import Filler
from generator.quantities.limits import limits_of
from generator.quantities.results import InputRefused, finding_words
from generator.quantities.worked import Origin, Worked, given
from generator.units import LENGTH, Value, parse_value
from tests.quantities.examples import printed, readings, run_with
from tests.quantities.published import LEG


def positions(result) -> list[float]:
    return [place.number for place in result.positions]


def test_marks_run_from_one_end_and_the_other_end_is_marked() -> None:
    made = run_with("marks", length="1000 mm", spacing="300 mm")
    assert positions(made) == [0, 300, 600, 900, 1000]


def test_a_mark_too_near_the_end_is_left_out() -> None:
    made = run_with("marks", length="1000 mm", spacing="300 mm", least_end="150 mm")
    assert positions(made) == [0, 300, 600, 1000]
    assert (printed(made, "count"), printed(made, "last_bay")) == ("4", "400 mm")


def test_a_length_of_whole_bays_has_no_mark_twice() -> None:
    made = run_with("marks", length="900 mm", spacing="300 mm")
    assert positions(made) == [0, 300, 600, 900]
    assert printed(made, "count") == "4"


@forall(st.integers(1, 6000), st.integers(20, 900), st.integers(0, 400))
def test_marks_rise_keep_their_distance_and_are_counted(length: int, spacing: int, end: int) -> None:
    made = run_with("marks", length=f"{length} mm", spacing=f"{spacing} mm", least_end=f"{end} mm")
    places = positions(made)
    assert places[0] == 0 and places[-1] == length
    assert places == sorted(set(places))
    assert made.count.number == len(places)
    assert all(length - place >= end for place in places[1:-1])


def test_a_spacing_that_gives_marks_without_end_is_refused() -> None:
    with pytest.raises(InputRefused, match="too-many-marks"):
        run_with("marks", length="100 m", spacing="1 mm")


@forall(st.integers(1, 6000), st.integers(20, 900), st.integers(0, 400))
def test_pins_stand_evenly_and_no_further_apart_than_asked(length: int, spacing: int, end: int) -> None:
    made = run_with("pins", length=f"{length} mm", spacing=f"{spacing} mm", end=f"{end} mm")
    places = positions(made)
    assert made.count.number == len(places)
    assert made.pitch.number <= spacing
    if len(places) > 1:
        assert places[0] == pytest.approx(end) and places[-1] == pytest.approx(length - end)
        assert places == pytest.approx([end + n * made.pitch.number for n in range(len(places))])
    else:
        assert places == [length / 2]


STOCK = ("25 mm", "32 mm", "38 mm", "50 mm")


def pin(**more: str) -> Any:
    sizes = {"held": "18 mm", "ground": "40 mm", "times": "2", "cover": "5 mm", **more}
    from tests.quantities.examples import size

    return run_with("pin_length", stock=tuple(size(each) for each in STOCK), **sizes)


def test_the_shortest_pin_that_holds_is_chosen() -> None:
    assert (printed(pin(), "length"), printed(pin(), "holds")) == ("38 mm", "20 mm")


def test_a_pin_that_would_come_through_is_not_chosen() -> None:
    refused = pin(ground="20 mm")
    assert refused.length is None and refused.holds is None
    assert [finding_words(each, space=" ") for each in refused.refused] == [
        "no stock pin is at least 36 mm long, to hold, and at most 33 mm, not to come through"
    ]


def test_a_pin_exactly_at_its_limits_serves() -> None:
    assert printed(pin(held="19 mm", ground="19 mm", cover="0 mm"), "length") == "38 mm"


def test_filler_is_cut_where_packer_and_plaster_cross() -> None:
    packer = run_with("even_packer", readings=readings(*LEG), step="0.5 mm")
    made = run_with(
        "gap_filler", packer=packer, opening_width="768 mm", opening_height="2000 mm", depth="5 mm"
    )
    assert printed(made, "left") == "4.7 ml"


OPENING = {"opening_width": "800 mm", "opening_height": "2000 mm"}
DEPTHS = st.lists(st.integers(0, 120).map(lambda value: value / 10), min_size=9, max_size=9)


@settings(deadline=None, max_examples=30)
@forall(DEPTHS)
def test_filler_agrees_with_a_fine_sum(depths: list[float]) -> None:
    places = [("left", at) for at in (0, 700, 1400)] + [("head", 0), ("head", 400), ("head", 800)]
    places += [("right", at) for at in (600, 1300, 2000)]
    texts = [f"{member}:{at} {depth} mm" for (member, at), depth in zip(places, depths, strict=True)]
    packer = run_with("even_packer", readings=readings(*texts), step="0.5 mm", twist="99 mm")
    made = run_with("gap_filler", packer=packer, **OPENING, depth="6 mm", waste="10 %")
    begin = {"left": 0, "head": 2000, "right": 2800}
    stations = [begin[member] + at for member, at in places]
    fine = np.linspace(0, 4800, 480_001)
    gap = np.maximum(packer.thickness.number - np.interp(fine, stations, depths), 0)
    assert made.volume.number == pytest.approx(np.trapezoid(gap, fine) * 6 * 1.1, rel=1e-4, abs=0.5)
    assert made.volume.number == pytest.approx(sum(getattr(made, m).number for m in begin))


def test_readings_without_places_are_spread_evenly_round_the_frame() -> None:
    bare = run_with("even_packer", readings=readings("4 mm", "8 mm", "4 mm"), step="0.5 mm")
    placed = run_with(
        "even_packer", readings=readings("left:0 4 mm", "head:400 8 mm", "right:2000 4 mm"), step="0.5 mm"
    )
    sizes = {**OPENING, "depth": "5 mm"}
    bare_filler = run_with("gap_filler", packer=bare, **sizes)
    assert bare_filler.volume.number == pytest.approx(
        run_with("gap_filler", packer=placed, **sizes).volume.number
    )


def test_no_gap_takes_no_filler() -> None:
    packer = run_with("even_packer", readings=readings("8 mm", "8 mm"), step="0.5 mm")
    assert printed(run_with("gap_filler", packer=packer, **OPENING, depth="5 mm"), "volume") == "0 ml"


def test_waste_is_added_to_the_volume_and_not_divided_out() -> None:
    plain = run_with("fillet_bead", length="10 m", width="6 mm", depth="6 mm")
    wasted = run_with("fillet_bead", length="10 m", width="6 mm", depth="6 mm", waste="10 %")
    assert printed(plain, "volume") == "180 ml"
    assert printed(wasted, "volume") == "198 ml"


@pytest.mark.parametrize(
    ("amount", "count"), [("0 ml", "0"), ("310 ml", "1"), ("310.1 ml", "2"), ("930 ml", "3")]
)
def test_packs_are_whole(amount: str, count: str) -> None:
    assert printed(run_with("packs", amount=amount, pack="310 ml")) == count


def test_a_pack_that_is_not_used_to_the_end_holds_less() -> None:
    assert printed(run_with("packs", amount="300 ml", pack="310 ml", used="90 %")) == "2"
    with pytest.raises(InputRefused, match="nothing-used-of-pack"):
        run_with("packs", amount="300 ml", pack="310 ml", used="0 %")


PLACED = ("left:100 7.1 mm", "left:1000 8.4 mm", "left:1890 9 mm", "head:100 7.5 mm", "head:700 8.6 mm",
          "right:90 6.9 mm", "right:1900 8 mm")  # fmt: skip
SPREAD = ("7.1 mm", "8.4 mm", "9 mm", "7.5 mm", "6.9 mm")


def filler_of(items: tuple[str, ...], wide: Worked, high: Worked) -> Filler:
    packer = run_with("even_packer", readings=readings(*items), step="0.5 mm")
    made = run_with("gap_filler", packer=packer, opening_width=wide, opening_height=high, depth="5 mm")
    assert isinstance(made, Filler)
    return made


def tape(text: str, off: str = "0", within: str = "") -> Worked:
    value, reach = parse_value(f"{text} mm"), parse_value(f"{within} mm") if within else None
    at = Value(Decimal(str(value.magnitude)) + Decimal(off), LENGTH)
    return given(f"tape {text}", at, label="Tape", origin=Origin.EXAMPLE, within=reach)


@pytest.mark.parametrize("items", [PLACED, SPREAD])
@pytest.mark.parametrize("wide, high", [("20", ""), ("", "20"), ("20", "20")])
def test_the_filler_s_range_holds_wherever_the_opening_lies_within_its_limits(
    items: tuple[str, ...], wide: str, high: str
) -> None:
    told = filler_of(items, tape("768", within=wide), tape("1990", within=high))
    offs = [("-20", "-10", "0", "7", "20") if reach else ("0",) for reach in (wide, high)]
    for across, up in itertools.product(*offs):
        at = filler_of(items, tape("768", across), tape("1990", up))
        for name in ("left", "head", "right", "volume"):
            number, limits = getattr(at, name).number, limits_of(getattr(told, name))
            if limits is None:
                assert number == pytest.approx(getattr(told, name).number)
            else:
                assert limits.low is not None and limits.high is not None
                low, high_end = float(limits.low.magnitude), float(limits.high.magnitude)
                assert low - 1e-6 <= number <= high_end + 1e-6, (name, across, up)
