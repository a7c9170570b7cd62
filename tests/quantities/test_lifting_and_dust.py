"""Published figures for lifting by hand and wood dust, and what a job makes of them."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.model.steps import REACHES, ZONES
from generator.quantities.lifting import lifting_filter
from generator.quantities.wood_dust import HARDWOOD_LIMIT, MASKS, SOFTWOOD_LIMIT, dust_limit, mask_for

# HSE INDG143 and L23, read in a second-hand report: kg for men, close to the body and reached for.
MEN = {
    "above shoulder": (10, 5), "shoulder to elbow": (20, 10), "elbow to knuckle": (25, 15),
    "knuckle to mid lower leg": (20, 10), "below mid lower leg": (10, 5),
}  # fmt: skip
# The same for women: the first row and 16 kg as read, the others from memory.
WOMEN = {
    "above shoulder": (7, 3), "shoulder to elbow": (13, 7), "elbow to knuckle": (16, 10),
    "knuckle to mid lower leg": (13, 7), "below mid lower leg": (7, 3),
}  # fmt: skip


@pytest.mark.parametrize("zone", ZONES)
def test_the_filter_is_the_published_one(zone: str) -> None:
    for place, reach in enumerate(REACHES):
        found = lifting_filter((zone,), reach)
        assert (found.men, found.women) == (MEN[zone][place], WOMEN[zone][place])


def test_of_several_zones_the_smallest_counts() -> None:
    """HSE INDG143: where hands pass more than one zone the smallest figure is used."""
    assert lifting_filter(("elbow to knuckle", "above shoulder"), "close").men == 10


def test_a_team_manages_less_than_the_sum() -> None:
    """HSE L23, from memory: two people two thirds of the sum, three a half."""
    assert lifting_filter(("elbow to knuckle",), "close", 2).men == pytest.approx(2 / 3 * 50)
    assert lifting_filter(("elbow to knuckle",), "close", 3).men == pytest.approx(1 / 2 * 75)


@given(
    st.lists(st.sampled_from(ZONES), min_size=1),
    st.sampled_from(ZONES),
    st.sampled_from(REACHES),
    st.integers(1, 3),
)
def test_another_zone_never_raises_the_filter(zones: list[str], more: str, reach: str, people: int) -> None:
    before, after = (lifting_filter(each, reach, people) for each in (zones, [*zones, more]))
    assert after.men <= before.men
    assert after.women <= before.women <= before.men


@pytest.mark.parametrize(
    ("kinds", "limit"),
    [
        (("softwood",), 5), (("hardwood",), 3), (("mixed",), 3), (("softwood", "hardwood"), 3),
        (("softwood", "none"), 5), (("none",), None), ((), None),
    ],
)  # fmt: skip
def test_any_hardwood_makes_the_mix_hardwood(kinds: tuple[str, ...], limit: float | None) -> None:
    """HSE wood dust page and EH40/2005, 4th edition: 3 and 5 mg/m³, inhalable, over eight hours; read."""
    assert (HARDWOOD_LIMIT, SOFTWOOD_LIMIT) == (3, 5)
    assert dust_limit(kinds) == limit


def test_masks_have_the_published_factors() -> None:
    """Assigned protection factors of Great Britain (HSE HSG53), read in a second-hand report."""
    assert MASKS == {"FFP1": 4, "FFP2": 10, "FFP3": 20, "full face mask P3": 40}


@pytest.mark.parametrize(
    ("concentration", "mask"),
    [
        (3, ""), (3.1, "FFP1"), (12, "FFP1"), (12.1, "FFP2"), (30, "FFP2"), (60, "FFP3"),
        (61, "full face mask P3"), (120, "full face mask P3"), (121, None),
    ],
)  # fmt: skip
def test_the_next_mask_up_is_needed(concentration: float, mask: str | None) -> None:
    assert mask_for(concentration, 3) == mask
