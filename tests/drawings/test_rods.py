"""The jamb on its rod: true sizes, marks over the edges they set, lettering a bench card can be read by."""

from __future__ import annotations

import pytest
from shapely.geometry import Polygon

from generator.drawings.orders import BENCH
from generator.drawings.registry import lay
from generator.drawings.sheet import Sheet
from tests.drawings.samples import rod

TWELVE_POINTS = 12 * 25.4 / 72


@pytest.fixture(scope="module")
def usual() -> Sheet:
    return lay("jamb_rod", rod(packer=8.5), BENCH).sheet


@pytest.mark.parametrize(
    ("name", "width", "height"), [("packer", 27.0, 8.5), ("architrave", 69.0, 18.0), ("pin", 1.4, 50.0)]
)
def test_parts_measure_on_the_card_what_they_measure_on_site(
    usual: Sheet, name: str, width: float, height: float
) -> None:
    left, top, right, bottom = Polygon(usual.outlines[name].paper).bounds
    assert (right - left, bottom - top) == pytest.approx((width, height), abs=0.03)


def test_each_mark_stands_over_the_edge_it_sets(usual: Sheet) -> None:
    marks = {name: outline.paper[0][0] for name, outline in usual.outlines.items() if "mark" in name}
    packer, architrave = (Polygon(usual.outlines[name].paper).bounds for name in ("packer", "architrave"))
    lining = Polygon(usual.outlines["lining"].paper).bounds
    assert marks == pytest.approx(
        {
            "rod mark 0": lining[2],
            "rod mark 5": packer[2],
            "rod mark 9": architrave[2],
            "rod mark 78": architrave[0],
        }
    )


def test_nothing_on_a_bench_card_is_smaller_than_twelve_points(usual: Sheet) -> None:
    assert min(text.em for text in usual.texts) >= TWELVE_POINTS


def test_without_a_worked_outer_mark_that_vee_bears_no_figure() -> None:
    values = {name: value for name, value in rod().items() if name != "outer_mark"}
    texts = {text.text for text in lay("jamb_rod", values, BENCH).sheet.texts}
    assert {"0", "5", "9"} < texts
    assert "78" not in texts


@pytest.mark.parametrize(
    ("architrave", "scale"), [(44.0, "1:1"), (69.0, "1:1"), (94.0, "1:2"), (194.0, "1:4")]
)
def test_the_scale_is_the_largest_that_fits(architrave: float, scale: str) -> None:
    assert lay("jamb_rod", rod(width=architrave), BENCH).scale == scale
