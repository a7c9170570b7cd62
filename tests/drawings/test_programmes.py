"""The programme drawn: no collision over sweeps, bars true to their times, said in words."""

from __future__ import annotations

import pytest
from hypothesis import strategies as st

from generator.drawings.registry import Drawn, draw, lay
from generator.drawings.sheet import collisions
from generator.drawings.timed import Moment, TimedBar, WorkingDay
from generator.quantities.programme import Task
from generator.quantities.programme import programme as timed
from tests.drawings.samples import PAPER, THUMBNAIL, WIDTHS

TITLES = (
    "Fill",
    "Glue and pin the packers",
    "Read the information and get the opening ready for the work of the day",
)


def at(minutes: int) -> Moment:
    return Moment(minutes=minutes, text=f"{minutes // 60}:{minutes % 60:02d}")


def values(tasks: tuple[Task, ...], day: int | None = None) -> dict[str, object]:
    bars = tuple(
        TimedBar(
            number=str(bar.task.number),
            title=TITLES[bar.task.number % len(TITLES)],
            start=at(bar.start),
            finish=at(bar.finish),
            ready=at(bar.ready),
            work=f"{bar.task.work} min",
            critical=bar.critical,
        )
        for bar in timed(tasks, day).bars
    )
    limited = {"day": WorkingDay(minutes=day, text=f"{day} min")} if day else {}
    told = "All is ready 2 h into day 3; 9 h of work, all hands added up."
    return {"bars": bars, "outcome": told, **limited}


TASKS = st.lists(
    st.tuples(st.integers(0, 900), st.sampled_from((0, 0, 30, 1440)), st.booleans()), min_size=1, max_size=24
).map(
    lambda rows: tuple(
        Task(number=number, work=work, wait=wait, after=(number - 1,) if number > 1 and follows else ())
        for number, (work, wait, follows) in enumerate(rows, 1)
    )
)  # fmt: skip
CHAIN = (
    Task(number=1, work=60),
    Task(number=2, work=120, wait=30, after=(1,)),
    Task(number=3, work=30, after=(2,)),
)


@pytest.mark.parametrize("days", [1, 3, 9, 30, 90, 400])
@pytest.mark.parametrize("width", WIDTHS)
def test_any_length_of_time(days: int, width: float) -> None:
    tasks = (Task(number=1, work=480 * days), Task(number=2, work=480, after=(1,)))
    for day in (None, 480):
        assert collisions(lay("programme", values(tasks, day), width).sheet) == ()


def across(drawn: Drawn, step: int) -> tuple[float, float]:
    xs = [x for x, _ in drawn.sheet.outlines[f"step {step}"].paper]
    return min(xs), max(xs)


@pytest.mark.parametrize("width", [*WIDTHS, THUMBNAIL])
def test_bars_are_as_long_as_their_work_and_stand_where_they_start(width: float) -> None:
    drawn = lay("programme", values(CHAIN), width)
    (a, b), (c, d), (e, f) = (across(drawn, step) for step in (1, 2, 3))
    minute = (b - a) / 60
    assert (d - c, f - e) == pytest.approx((120 * minute, 30 * minute))
    assert (c - b, e - d) == pytest.approx((0, 30 * minute))


def test_working_days_are_alike_and_a_night_is_a_tenth_of_one() -> None:
    tasks = (
        Task(number=1, work=480),
        Task(number=2, work=480, after=(1,)),
        Task(number=3, work=480, after=(2,)),
    )
    drawn = lay("programme", values(tasks, 480), PAPER)
    (a, b), (c, d), _ = (across(drawn, step) for step in (1, 2, 3))
    assert b - a == pytest.approx(d - c)
    assert c - b == pytest.approx((b - a) / 10)


def test_the_alternative_text_tells_the_same() -> None:
    assert draw("programme", values(CHAIN), PAPER).alt == (
        "Programme, in hours and minutes. Step 1, Glue and pin the packers: 60 min, from 0:00 to 1:00, "
        "decides the end. Step 2, Read the information and get the opening ready for the work of the day: "
        "120 min, from 1:00 to 3:00, ready at 3:30, decides the end. Step 3, Fill: 30 min, from 3:30 to "
        "4:00, decides the end. "
        "All is ready 2 h into day 3; 9 h of work, all hands added up."
    )


@pytest.mark.parametrize(
    ("bars", "fault"),
    [
        ((), "1 to 60 steps can be drawn on one sheet, not 0"),
        (
            tuple(values((Task(number=1, work=1),))["bars"]) * 61,
            "1 to 60 steps can be drawn on one sheet, not 61",
        ),
    ],
)
def test_what_cannot_be_drawn_is_refused(bars: tuple[TimedBar, ...], fault: str) -> None:
    with pytest.raises(ValueError, match=fault):
        lay("programme", {"bars": bars}, PAPER)


def test_a_step_that_ends_before_it_starts_is_refused() -> None:
    (bar,) = values((Task(number=1, work=30),))["bars"]
    wrong = TimedBar(
        number="1", title="x", start=at(30), finish=at(10), ready=at(40), work="x", critical=bar.critical
    )
    with pytest.raises(ValueError, match="step 1 ends before it starts"):
        lay("programme", {"bars": (wrong,)}, PAPER)
