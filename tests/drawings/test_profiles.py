"""Moulding profiles: areas and girths against closed formulas and against shapely."""

from __future__ import annotations

import math

import pytest
from shapely.geometry import Polygon

from generator.quantities.profiles import PROFILES, UnknownProfile, profile

H, T = 119.0, 18.0
WHOLE = H * T

# Areas of a 119 x 18 board with one moulded edge, by the elementary formula beside each (own derivation:
# rectangle less the corner, plus the circular sector).
AREAS = [
    ("square", {}, WHOLE),
    ("chamfer", {"depth": 5.0, "breadth": 8.0}, WHOLE - 5 * 8 / 2),
    ("pencil round", {"radius": 6.0}, WHOLE - (1 - math.pi / 4) * 36),
    ("bullnose", {}, (H - T / 2) * T + math.pi * T**2 / 8),
    (
        "ovolo",
        {"radius": 8.0, "fillet_depth": 2.0, "fillet_breadth": 3.0},
        WHOLE - (1 - math.pi / 4) * 64 - 2 * (8 + 3),
    ),
    (
        "torus",
        {"radius": 7.0, "inner_fillet": 0.0, "outer_fillet": 3.0, "arris": 0.0},
        WHOLE - 49 * (2 - math.pi / 2) - 3 * 7,
    ),
    ("ogee", {"depth": 10.0, "breadth": 24.0}, WHOLE - 10 * 24 / 2),
    # A hollow of half a circle between two fillets: its depth is the radius.
    ("cove", {"depth": 10.0, "fillet_breadth": H / 2 - 10.0}, WHOLE - math.pi * 100 / 2),
]


@pytest.mark.parametrize(("name", "sizes", "area"), AREAS, ids=[name for name, _, _ in AREAS])
def test_area_agrees_with_the_formula(name: str, sizes: dict[str, float], area: float) -> None:
    assert profile(name, H, T, sizes).area() == pytest.approx(area, abs=1e-9)


@pytest.mark.parametrize("name", sorted(PROFILES))
@pytest.mark.parametrize("width", [44.0, 69.0, 145.0])
def test_outline_is_sound_and_of_the_size_asked_for(name: str, width: float) -> None:
    made = profile(name, width, T)
    outline = Polygon(made.points())
    assert outline.is_valid
    assert outline.bounds == pytest.approx((0.0, 0.0, width, T))
    assert outline.area == pytest.approx(made.area(), rel=1e-3)


@pytest.mark.parametrize("name", sorted(PROFILES))
def test_girth_is_the_outline_without_its_back(name: str) -> None:
    made = profile(name, 69.0, T)
    outline = Polygon(made.points())
    back = sum(
        abs(x2 - x1)
        for (x1, y1), (x2, y2) in zip(made.points(), (*made.points()[1:], made.points()[0]), strict=True)
        if y1 == y2 == 0.0
    )
    assert made.girth() == pytest.approx(outline.length - back + _back_in_path(name), rel=1e-3)


def _back_in_path(name: str) -> float:
    """A bullnose's path runs along its back to where the round begins."""
    return T / 2 if name == "bullnose" else 0.0


def test_face_height_follows_the_moulding() -> None:
    made = profile("chamfer", 69.0, T, {"depth": 5.0, "breadth": 8.0})
    assert [made.face_at(u) for u in (0.0, 4.0, 8.0, 40.0)] == pytest.approx([13.0, 15.5, 18.0, 18.0])


def test_an_unknown_profile_is_refused_by_name() -> None:
    with pytest.raises(UnknownProfile, match="no moulding profile 'lambs tongue'; there are square, pencil"):
        profile("lambs tongue", 69.0, T)
