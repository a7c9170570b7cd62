"""Moulding sections against shapely polygons, compound mitres against vectors."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given as forall
from hypothesis import settings
from hypothesis import strategies as st
from shapely.geometry import Polygon

from generator.model.catalogue import PROFILES as MEASURES
from generator.quantities.calculator import registered
from generator.quantities.profile_measures import ProfileMeasures
from generator.quantities.profiles import PROFILES, profile
from generator.quantities.results import InputRefused
from tests.quantities.examples import printed, run, size

SMALL = st.integers(1, 60).map(lambda tenths: tenths / 10)


@settings(max_examples=120, deadline=None)
@forall(
    st.sampled_from(sorted(PROFILES)),
    st.integers(60, 220),
    st.integers(15, 44),
    st.fixed_dictionaries(
        dict.fromkeys(
            ("radius", "depth", "fillet_depth", "fillet_breadth", "inner_fillet", "outer_fillet", "arris"),
            SMALL,
        )
    ),
)  # fmt: skip
def test_area_and_girth_are_those_of_the_outline_drawn(
    shape: str, width: int, thickness: int, sizes: dict[str, float]
) -> None:
    sizes = {**sizes, "breadth": 2 * sizes["depth"]}
    taken = {name: sizes[name] for name in MEASURES[shape]}
    texts = {name: f"{size} mm" for name, size in taken.items()}
    made = run(
        "moulding_section", {"shape": shape, "width": f"{width} mm", "thickness": f"{thickness} mm", **texts}
    )
    drawn = profile(shape, width, thickness, taken)
    outline = Polygon(drawn.points())
    back = width - (thickness / 2 if shape == "bullnose" else 0)
    on_the_back = thickness / 2 if shape == "bullnose" else 0
    assert outline.is_valid
    assert made.area.number == pytest.approx(outline.area, abs=0.01 * outline.length)  # type: ignore[union-attr]
    assert made.girth.number == pytest.approx(outline.length - back + on_the_back, rel=1e-3)  # type: ignore[union-attr]


def test_a_length_weighs_its_volume_times_its_density() -> None:
    made = run(
        "moulding_section",
        {"shape": "square", "width": "100 mm", "thickness": "20 mm", "length": "2 m", "density": "500 kg/m3"},
    )
    assert (printed(made, "volume"), printed(made, "mass")) == ("4000 ml", "2 kg")
    assert printed(made, "girth") == "140 mm"


@pytest.mark.parametrize(
    ("inputs", "code", "argument"),
    [
        ({"shape": "lambs tongue"}, "word-not-offered", "shape"),
        ({"shape": "torus", "radius": "7 mm", "outer_fillet": "2 mm"}, "moulding-measure-missing",
         "inner_fillet"),
        ({"shape": "pencil round", "radius": "19 mm"}, "moulding-does-not-fit", "thickness"),
        (
            {"shape": "ovolo", "radius": "15 mm", "fillet_depth": "4 mm", "fillet_breadth": "3 mm"},
            "moulding-does-not-fit",
            "thickness",
        ),
        ({"shape": "chamfer", "depth": "5 mm", "breadth": "70 mm"}, "moulding-does-not-fit", "width"),
        ({"shape": "cove", "depth": "14 mm", "fillet_breadth": "23 mm"}, "cove-overhangs", "depth"),
        ({"shape": "ogee", "depth": "12 mm", "breadth": "10 mm"}, "ogee-overhangs", "depth"),
    ],
)  # fmt: skip
def test_a_section_that_cannot_be_is_refused(inputs: dict[str, str], code: str, argument: str) -> None:
    with pytest.raises(InputRefused) as caught:
        run("moulding_section", {"width": "69 mm", "thickness": "18 mm", **inputs})
    assert (caught.value.code, caught.value.argument) == (code, argument)


def sprung(spring: float, corner: float, turns: str = "internal"):  # type: ignore[no-untyped-def]
    inputs = {"spring": f"{spring} deg", "corner": f"{corner} deg", "turns": turns, "width": "96 mm"}
    return run("sprung_mitre", inputs)


def by_vectors(spring: float, corner: float) -> tuple[float, float]:
    """Mitre and bevel from the cut plane, upright and halving the corner, seen in the lying piece.

    The wall runs along x, the room lies towards +y and the ceiling is z = 0; the back rises from the wall
    outwards. Lying flat, the back is the saw's table.
    """
    s, half = math.radians(spring), math.radians(corner / 2)
    along = np.array([1.0, 0.0, 0.0])
    across = np.array([0.0, math.sin(s), math.cos(s)])
    out = np.cross(along, across)
    plane = np.array([math.sin(half), -math.cos(half), 0.0])
    x, y, z = plane @ along, plane @ across, plane @ out
    return math.degrees(math.atan2(abs(y), abs(x))), math.degrees(math.asin(abs(z)))


@settings(max_examples=80)
@forall(st.integers(5, 85), st.integers(30, 175))
def test_compound_mitre_is_the_cut_plane_seen_in_the_lying_piece(spring: int, corner: int) -> None:
    made = sprung(spring, corner)
    mitre, bevel = by_vectors(spring, corner)
    assert made.mitre.number == pytest.approx(mitre, abs=1e-9)
    assert made.bevel.number == pytest.approx(bevel, abs=1e-9)
    assert made.longer.number == pytest.approx(96 * math.tan(math.radians(mitre)))
    assert math.hypot(made.drop.number, made.projection.number) == pytest.approx(96)


def test_an_external_corner_mirrors_the_settings_and_moves_the_long_point() -> None:
    inside, outside = sprung(45, 90), sprung(45, 90, "external")
    assert (inside.mitre.value, inside.bevel.value) == (outside.mitre.value, outside.bevel.value)
    assert (inside.long_point, outside.long_point) == ("wall edge", "ceiling edge")


@pytest.mark.parametrize(
    ("spring", "corner", "code"),
    [(4, 90, "spring-out-of-range"), (86, 90, "spring-out-of-range"), (45, 29, "corner-out-of-range"),
     (45, 176, "corner-out-of-range")],
)  # fmt: skip
def test_angles_no_saw_makes_are_refused(spring: int, corner: int, code: str) -> None:
    with pytest.raises(InputRefused) as caught:
        sprung(spring, corner)
    assert caught.value.code == code


def test_measures_all_together_come_to_what_they_do_one_by_one() -> None:
    sizes = {"radius": size("7 mm"), "inner_fillet": size("3 mm"), "outer_fillet": size("2 mm")}
    work = registered()["moulding_section"].function
    given = {"shape": "torus", "width": size("69 mm"), "thickness": size("18 mm")}
    whole = work(**given, measures=ProfileMeasures(**sizes, depth=size("5 mm")))
    assert whole.area.value == work(**given, **sizes).area.value
    wider = work(**given, measures=ProfileMeasures(**sizes), radius=size("6 mm"))
    assert wider.area.value == work(**given, **{**sizes, "radius": size("6 mm")}).area.value


def test_a_measure_that_the_record_lacks_is_asked_for() -> None:
    work = registered()["moulding_section"].function
    with pytest.raises(InputRefused) as caught:
        work(shape="ogee", width=size("69 mm"), thickness=size("18 mm"),
             measures=ProfileMeasures(depth=size("8 mm")))  # fmt: skip
    assert (caught.value.code, caught.value.argument) == ("moulding-measure-missing", "breadth")
