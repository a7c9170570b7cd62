"""Path data holds every point it was given to a hundredth of a millimetre, as an outside reader reads it."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from fontTools.pens.recordingPen import RecordingPen
from fontTools.svgLib.path import parse_path
from hypothesis import given
from hypothesis import strategies as st

from generator.drawings.clipping import arc, circle, rectangle
from generator.drawings.hatches import BLOCKWORK, END_GRAIN_NEW, MDF, hatch_path
from generator.drawings.path_data import dot_data, line_data, piece_data

LENGTHS = st.floats(-300, 300).map(lambda value: round(value, 3))
LINES = st.lists(
    st.tuples(st.lists(st.tuples(LENGTHS, LENGTHS), min_size=2, max_size=30).map(tuple), st.booleans()),
    min_size=1,
    max_size=6,
)
BOARD = rectangle(3.21, 40.4, 71, 61)


def _read(data: str) -> list[tuple[str, tuple[Any, ...]]]:
    pen = RecordingPen()
    parse_path(data, pen)
    return [(command, points) for command, points in pen.value if command != "endPath"]


def _points(data: str) -> Any:
    return np.array([point for _, points in _read(data) for point in points])


@given(LINES)
def test_lines_come_back_to_a_hundredth_however_long(lines: list[tuple[Any, bool]]) -> None:
    read: list[list[tuple[float, float]]] = []
    for command, points in _read(line_data(lines)):
        if command == "moveTo":
            read.append([])
        read[-1] += points
    assert len(read) == len(lines)
    for (points, _), found in zip(lines, read, strict=True):
        rounded = [(round(x * 100) / 100, round(y * 100) / 100) for x, y in points]
        kept = [point for place, point in enumerate(rounded) if not place or point != rounded[place - 1]]
        assert np.array(found[: len(kept)]) == pytest.approx(np.array(kept), abs=1e-9)


def test_a_closed_line_is_closed_and_an_open_one_is_not() -> None:
    square = rectangle(1.0, 2.0, 11.5, 2.25)
    assert line_data([(square, True), (((20.0, 2.0), (20.5, 3.0)), False)]) == (
        "m1 2h10.5v.25h-10.5zm19 0l.5 1"
    )
    assert [command for command, _ in _read(line_data([(square, True)]))][-1] == "closePath"


def test_numbers_stand_apart_only_where_they_must() -> None:
    assert line_data([(((0.5, 0.25), (0.55, 1.0), (0.45, 1.75), (0.4, 1.25)), False)]) == (
        "m.5.25l.05.75-.1.75-.05-.5"
    )


def test_dots_come_back_where_they_stand() -> None:
    path = hatch_path(MDF, BOARD, ())
    assert _points(dot_data(path))[::2] == pytest.approx(path.vertices[::2] * 100, abs=0.5)
    assert _points(dot_data(path))[1::2] - _points(dot_data(path))[::2] == pytest.approx(
        np.tile((1.0, 0.0), (len(path.vertices) // 2, 1))
    )


@pytest.mark.parametrize("hatch", [BLOCKWORK, END_GRAIN_NEW], ids=["lines", "curves"])
def test_pieces_come_back_where_they_stand(hatch: Any) -> None:
    path = hatch_path(hatch, BOARD, ())
    assert _points(piece_data(path)) == pytest.approx(path.vertices * 100, abs=0.5)


@pytest.mark.parametrize("radius", [0.8, 2.0, 11.37])
def test_a_circle_is_written_as_two_arcs_through_its_own_points(radius: float) -> None:
    ring = circle((31.2, 40.07), radius)
    data = line_data([(ring, True)])
    assert data.count("a") == 2
    read = _points(data)
    centre = np.array((31.2, 40.07))
    assert np.abs(read - centre).max() == pytest.approx(radius, abs=0.02)
    assert len(data) < 70


@pytest.mark.parametrize("closed", [True, False])
def test_what_is_no_circle_is_written_through_every_point(closed: bool) -> None:
    half = arc((10, 10), 4, 0, 3.1)
    oval = tuple((x * 1.5, y) for x, y in circle((10, 10), 4))
    assert "a" not in line_data([(half, closed), (oval, closed)])
    assert "a" not in line_data([(circle((10, 10), 4), False)])
