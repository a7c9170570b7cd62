"""Hatches keep inside their outline and out of every hole; lettering is measured from the font itself."""

from __future__ import annotations

import itertools

import pytest
from shapely.geometry import LineString, Point, Polygon, box

from generator.drawings.clipping import Box, rectangle
from generator.drawings.hatches import (
    BLOCKWORK,
    END_GRAIN_NEW,
    END_GRAIN_STANDING,
    FRAME_SIDE,
    LONG_GRAIN,
    MDF,
    PLASTER,
    Hatch,
    hatch_path,
)
from generator.drawings.lettering import MissingGlyph, cap, extent, wrapped
from generator.drawings.pens import Pen
from generator.quantities.profiles import profile

HATCHES = [BLOCKWORK, PLASTER, MDF, END_GRAIN_NEW, END_GRAIN_STANDING, LONG_GRAIN, FRAME_SIDE]
HOLES = (Box(20, 12, 30, 16), Box(44, 5, 52, 9))
SHAPES = {
    "board": rectangle(0, 0, 70, 25),
    "moulding": tuple(profile("torus", 70.0, 25.0).points()),
    "step": ((0.0, 0.0), (30.0, 0.0), (30.0, 10.0), (70.0, 10.0), (70.0, 25.0), (0.0, 25.0)),
}


@pytest.mark.parametrize("shape", sorted(SHAPES))
@pytest.mark.parametrize("hatch", HATCHES, ids=lambda hatch: f"{hatch.kind} {hatch.spacing}")
def test_a_hatch_stays_in_its_outline_and_out_of_the_holes(hatch: Hatch, shape: str) -> None:
    outline = Polygon(SHAPES[shape])
    path = hatch_path(hatch, SHAPES[shape], HOLES)
    forbidden = [box(h.left, h.top, h.right, h.bottom).buffer(-0.02) for h in HOLES]
    lines = [LineString(piece) for piece in path.to_polygons(closed_only=False) if len(piece) > 1]
    assert len(lines) > 10
    for line in lines:
        assert outline.buffer(-0.2).covers(line)
        assert not any(hole.intersects(line) for hole in forbidden)


def test_a_hatch_fills_its_outline_evenly() -> None:
    path = hatch_path(MDF, SHAPES["board"], ())
    dots = [Point(x, y) for x, y in path.vertices[::2]]
    quarters = [box(x, y, x + 35, y + 12.5) for x, y in itertools.product((0, 35), (0, 12.5))]
    counts = [sum(quarter.covers(dot) for dot in dots) for quarter in quarters]
    assert min(counts) > 0.85 * max(counts)


def test_a_hatch_is_the_same_wherever_its_outline_lies() -> None:
    here = hatch_path(PLASTER, SHAPES["board"], ())
    there = hatch_path(PLASTER, tuple((x + 40, y + 10) for x, y in SHAPES["board"]), ())
    assert there.vertices - (40, 10) == pytest.approx(here.vertices, abs=0.011)


def test_a_sliver_has_no_hatch() -> None:
    assert hatch_path(BLOCKWORK, rectangle(0, 0, 50, 0.5), ()) is None


def test_a_hatch_too_fine_for_a_photocopier_is_refused() -> None:
    with pytest.raises(ValueError, match=r"a hatch of 0\.13 mm does not survive a photocopy"):
        Hatch(kind="lines", spacing=3.0, slopes=(45.0,), pen=Pen(width=0.13))


def test_widths_are_the_fonts_own() -> None:
    """Fira Sans Regular 4.203, its own tables: capitals 689, tabular figures 560, of 1000 units an em."""
    assert cap(1.0) == pytest.approx(0.689)
    assert extent("0123456789", 1.0)[0] == pytest.approx(5.6)


def test_a_character_from_the_fallback_is_measured_there() -> None:
    assert extent("→", 1.0)[0] > 0.5


def test_a_character_no_font_has_is_refused() -> None:
    with pytest.raises(MissingGlyph, match="no glyph for '木'"):
        extent("木", 1.0)


def test_wrapped_lines_keep_within_the_width_and_lose_nothing() -> None:
    words = "Plaster, 13; stands 7.5 proud of the lining; ease it behind the architrave"
    lines = wrapped(words, 3.3, 40.0)
    assert max(extent(line, 3.3)[0] for line in lines) <= 40.0
    assert " ".join(lines) == words


def test_a_word_wider_than_the_line_is_broken() -> None:
    lines = wrapped("Donaudampfschifffahrtsgesellschaft", 3.3, 20.0)
    assert "".join(lines) == "Donaudampfschifffahrtsgesellschaft"
    assert max(extent(line, 3.3)[0] for line in lines) <= 20.0
