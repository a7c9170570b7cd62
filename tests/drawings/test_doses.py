"""The drawing of a day's dose: bars as long as their points, words apart, refused input."""

from __future__ import annotations

import pytest
from hypothesis import strategies as st

from generator.drawings.dosed import DoseMark, DosePart
from generator.drawings.registry import draw, lay
from tests.drawings.samples import PAPER, THUMBNAIL, WIDTHS

NAME = "day_dose"
NOISE_MARKS = (
    DoseMark(points=31.6, text="80 dB(A), lower action value: 32"),
    DoseMark(points=100, text="85 dB(A), upper action value: 100"),
    DoseMark(points=158.5, text="87 dB(A), limit: 158"),
)
VIBRATION_MARKS = (
    DoseMark(points=100, text="2.5 m/s², action value: 100"),
    DoseMark(points=400, text="5 m/s², limit: 400"),
)
TOOLS = ("Mitre saw on a stand", "Drill driver, battery", "Vacuum, M class", "Oscillating multi-tool")


def parts(points: tuple[float, ...]) -> tuple[DosePart, ...]:
    return tuple(
        DosePart(points=each, text=f"{TOOLS[n % len(TOOLS)]}, 20 min: {each:.0f}")
        for n, each in enumerate(points)
    )


def values(noise: tuple[float, ...], vibration: tuple[float, ...]) -> dict[str, object]:
    return {
        "day": "day 2",
        "noise": parts(noise),
        "noise_marks": NOISE_MARKS,
        "noise_total": f"Noise: {sum(noise):.0f} points, 88.2 dB(A) over the day.",
        "vibration": parts(vibration),
        "vibration_marks": VIBRATION_MARKS,
        "vibration_total": f"Vibration: {sum(vibration):.0f} points, 1.9 m/s² A(8).",
    }


POINTS = st.lists(st.floats(0.05, 2500), min_size=1, max_size=8).map(tuple)


@pytest.mark.parametrize("width", [*WIDTHS, THUMBNAIL])
def test_parts_are_as_long_as_their_points_and_stand_end_to_end(width: float) -> None:
    outlines = lay(NAME, values((200.0, 50.0), ()), width).sheet.outlines
    first, second = ([x for x, _ in outlines[f"part {letter}"].paper] for letter in "AB")
    assert max(first) - min(first) == pytest.approx(4 * (max(second) - min(second)))
    assert max(first) == pytest.approx(min(second))


def test_an_action_value_stands_at_its_points() -> None:
    sheet = lay(NAME, values((200.0,), ()), PAPER).sheet
    start, end = (pick(x for x, _ in sheet.outlines["part A"].paper) for pick in (min, max))
    lines = {round(stroke.points[0][0], 6) for stroke in sheet.strokes if stroke.layer == "dimension"}
    assert round(start + (end - start) / 2, 6) in lines


def test_the_alternative_text_tells_the_same() -> None:
    assert draw(NAME, values((200.0,), ()), PAPER).alt == (
        "A day's dose, day 2. Noise: 200 points, 88.2 dB(A) over the day. Made up of: Mitre saw on a stand, "
        "20 min: 200. Held against: 80 dB(A), lower action value: 32; 85 dB(A), upper action value: 100; "
        "87 dB(A), limit: 158."
    )


@pytest.mark.parametrize(
    ("noise", "said"),
    [((), "without any part"), ((1.0,) * 9, "at most 8 tools"), ((0.0,), "has no points")],
)
def test_what_cannot_be_drawn_is_refused(noise: tuple[float, ...], said: str) -> None:
    with pytest.raises(ValueError, match=said):
        lay(NAME, values(noise, ()), PAPER)
