"""Exposures of the days of a programme: whose minutes count, what is assumed, what stays open."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.quantities.exposure import noise_points, vibration_points
from generator.quantities.exposure_days import ExposureDay, exposure_days, weeks_of
from generator.quantities.exposure_workings import noise_lines, vibration_lines
from tests.quantities.folders import job_text, method_text, work

TOOLS = """
format: 1
tools:
  loud-saw: {label: Loud saw, kind: machine, noise: 100 dB, assumed: [noise], source: nobody measured it}
  sander: {label: Sander, kind: power tool, noise: 90 dB, vibration: 5 m/s2, source: its maker}
  new-gun: {label: New gun, kind: power tool, source: nothing known}
"""
STEPS = """
steps:
  - {title: One, do: [x], why: y, minutes: 60, uses: [loud-saw, sander, new-gun]}
  - {title: Two, do: [x], why: y, minutes: 30}
"""
RUNS = "runs: {loud-saw: 4}"


def days(tmp_path: Path, runs: str = "", job: str = "") -> tuple[ExposureDay, ...]:
    (tmp_path / "methods/catalogue").mkdir(parents=True)
    (tmp_path / "methods/catalogue/tools.yaml").write_text(TOOLS.lstrip())
    whole = method_text(more="tools: [loud-saw, sander, new-gun]")
    steps = STEPS.replace("minutes: 60", f"minutes: 60, {runs}") if runs else STEPS
    made = work(tmp_path, whole[: whole.index("steps:")] + steps.lstrip(), job)
    return exposure_days(made.ledger, made.project.catalogue.tools)


def told(day: ExposureDay) -> list[tuple[str, float, float]]:
    return [(dose.tool.label.value, dose.minutes, dose.level) for dose in day.noise]


def test_without_running_times_the_loudest_tool_takes_all_of_the_step(tmp_path: Path) -> None:
    (day,) = days(tmp_path)
    assert told(day) == [("Loud saw", 60, 100)]
    assert day.noise_points == pytest.approx(noise_points(100, 60))


def test_a_running_time_counts_and_the_next_loudest_takes_the_rest(tmp_path: Path) -> None:
    (day,) = days(tmp_path, RUNS)
    assert [(name, round(ran, 9)) for name, ran, _ in told(day)] == [("Loud saw", 4), ("Sander", 56)]


def test_vibration_is_counted_apart_from_noise(tmp_path: Path) -> None:
    (day,) = days(tmp_path, "runs: {sander: 6}")
    assert [dose.minutes for dose in day.vibration] == pytest.approx([6])
    assert day.vibration_points == pytest.approx(vibration_points(5, 6))


def test_a_step_counts_at_every_opening_and_is_spread_over_the_days(tmp_path: Path) -> None:
    """Two openings make 120 min of it; days of one hour take 60 each."""
    found = days(tmp_path, job=job_text(more="when: {from: 2026-03-02, to: 2026-03-06, day: 1 h}"))
    assert [(day.number, told(day)) for day in found] == [
        (1, [("Loud saw", 60, 100)]),
        (2, [("Loud saw", 60, 100)]),
    ]
    assert list(weeks_of(found)) == [1]


def test_what_is_assumed_is_marked_and_what_is_unknown_is_asked_for(tmp_path: Path) -> None:
    (day,) = days(tmp_path)
    lines = noise_lines(day)
    assert lines[0].endswith("level assumed")
    assert lines[-1] == "New gun: no figure; ask its maker. Not counted here."
    assert [tool.label.value for tool in day.vibration_open] == ["New gun"]
    assert vibration_lines(day)[0].endswith("level from the catalogue's source")


def test_tools_cannot_run_longer_than_the_step(tmp_path: Path) -> None:
    with pytest.raises(AssertionError, match=r"The tools run 61 min in a step of 60 min\."):
        days(tmp_path, "runs: {loud-saw: 61}")
