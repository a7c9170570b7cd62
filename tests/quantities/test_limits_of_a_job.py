"""A job whose sizes have limits: no figure of the job worked again within them lies outside its range."""

from __future__ import annotations

import math
import random
from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from decimal import Decimal
from pathlib import Path

import pytest

from generator.model.amounts import Amount
from generator.model.folder import Project, load_folder
from generator.model.jobs import Job
from generator.model.surveys import Row
from generator.problems import ProblemLog, Span
from generator.quantities.doubts import findings_within
from generator.quantities.ledger import Ledger
from generator.quantities.limits import limits_of
from generator.quantities.readings import Reading, Readings
from generator.quantities.results import Finding, finding_words
from generator.quantities.work import work_out
from generator.quantities.worked import Origin, Worked, given
from generator.units import LENGTH, Value, parse_value
from tests.quantities.examples import run_with

ROOT = Path(__file__).parents[2]
PLACES = tuple(Span(file="doors.csv", line=line, column=1, text="", length=1) for line in (2, 3, 4))
WITHIN_1 = Value(Decimal(1), LENGTH)
WITHIN = Value(Decimal("0.5"), LENGTH)


@pytest.fixture(scope="module")
def project() -> Project:
    return load_folder(ROOT, ProblemLog())


def job_titled(project: Project, title: str) -> Job:
    return next(job for job in project.jobs if job.job.value == title)


def limited(row: Row) -> Row:
    sizes = {
        name: replace(size, within=WITHIN) if isinstance(size, Amount) else size
        for name, size in row.sizes.items()
    }
    readings = {
        name: tuple(replace(each, within=WITHIN) for each in items) for name, items in row.readings.items()
    }
    return replace(row, sizes=sizes, readings=readings)


def shaken(row: Row, dice: random.Random) -> Row:
    """The row with each size somewhere within its limit, the ends more often than the middle."""

    def moved(value: Value) -> Value:
        off = dice.choice([-1, 1, dice.uniform(-1, 1)]) * float(WITHIN.magnitude)
        return Value(Decimal(value.magnitude) + Decimal(str(round(off, 4))), value.dimension)

    sizes = {
        name: replace(size, value=moved(size.value)) if isinstance(size, Amount) else size
        for name, size in row.sizes.items()
    }
    readings = {
        name: tuple(replace(each, value=moved(each.value)) for each in items)
        for name, items in row.readings.items()
    }
    return replace(row, sizes=sizes, readings=readings)


def worked_in(job: Job, rows: tuple[Row, ...], project: Project) -> Ledger:
    method = next(each for each in project.methods if each.method.value == job.method.value)
    return work_out(method, job.model_copy(update={"rows": rows}), project, ProblemLog())


def values(name: str, result: object) -> Iterator[tuple[str, Worked]]:
    """Each value of a result but those of its findings, which are other findings in another case."""
    if isinstance(result, Worked):
        yield name, result
    elif isinstance(result, tuple):
        for number, item in enumerate(result):
            yield from values(f"{name}.{number}", item)
    elif is_dataclass(result) and not isinstance(result, Readings | Value | Finding):
        for each in fields(result):
            yield from values(f"{name}.{each.name}", getattr(result, each.name))


def figures(ledger: Ledger) -> dict[str, Worked]:
    return {
        path: item
        for at, (_, entry) in enumerate(ledger.everything())
        if entry.rule
        for path, item in values(f"{at}.{entry.name}", entry.result)
    }


@pytest.mark.parametrize(("title", "least"), [("Reading Room doors", 300), ("Reading Room new leaf", 60)])
def test_every_figure_of_a_job_worked_again_lies_within_its_range(
    project: Project, title: str, least: int
) -> None:
    """The suspects of six measurements are left out: another may stand first when they are worked again."""
    job = job_titled(project, title)
    rows = tuple(limited(row) for row in job.rows)
    said = {name: limits_of(item) for name, item in figures(worked_in(job, rows, project)).items()}
    followed = {
        name: found
        for name, found in said.items()
        if found and found.low and found.high and ".measured." not in name
    }
    assert len(followed) > least
    dice, looked_at = random.Random(9), 0
    for _ in range(6):
        again = figures(worked_in(job, tuple(shaken(row, dice) for row in rows), project))
        for name, found in followed.items():
            outcome = again[name].number if name in again else None
            if outcome is None:
                continue
            low, high = float(found.low.magnitude), float(found.high.magnitude)
            slack = 1e-6 * max(1.0, abs(outcome))
            assert low - slack <= outcome <= high + slack, (name, low, outcome, high)
            looked_at += 1
    assert looked_at > 5 * least


def test_what_is_not_followed_is_said_and_is_little(project: Project) -> None:
    job = job_titled(project, "Reading Room doors")
    rows = tuple(limited(row) for row in job.rows)
    said = [limits_of(item) for item in figures(worked_in(job, rows, project)).values()]
    assert {found.through for found in said if found and found.low is None} <= {"line_at", "line_rms"}


SIX = {
    "width_top": "855 mm", "width_floor": "840 mm", "height_left": "2003 mm", "height_right": "2010 mm",
    "diagonal_left_foot": "2181 mm", "diagonal_right_foot": "2175.5 mm",
}  # fmt: skip


def said(record: object) -> list[str]:
    return [finding_words(finding, space=" ") for finding in findings_within(record)]


def out_of_square(within: Value | None) -> object:
    six = {
        name: given(name, parse_value(text), label=name, origin=Origin.ROW, within=within)
        for name, text in SIX.items()
    }
    shape = run_with("opening_shape", **six, read_to="1 mm")
    return run_with("mitred_set", shape=shape, quirk="6 mm", head_width="68 mm")


def test_a_corner_known_to_a_millimetre_may_leave_the_mitre_open() -> None:
    """Turned by what three sides each 1 mm off can do to a corner, found by trying all eight cases."""
    corners = [
        math.acos((h * h + w * w - d * d) / (2 * h * w))
        for h in (2002, 2004) for w in (854, 856) for d in (2180, 2182)
    ]  # fmt: skip
    worked = math.acos((2003**2 + 855**2 - 2181**2) / (2 * 2003 * 855))
    turned = max(abs(corner - worked) for corner in corners)
    opens = 2 * math.hypot(68, 68) * math.sin(turned / 2)
    assert said(out_of_square(WITHIN_1))[0] == (
        f"cut as worked, the mitre at the left top may open by {opens:.1f} mm: its corner is known to "
        f"{math.degrees(turned):.1f}° either way"
    )


def test_corners_without_limits_leave_nothing_open() -> None:
    assert said(out_of_square(None)) == []


def test_readings_with_limits_say_what_the_packer_may_do() -> None:
    items = tuple(
        Reading(
            value=given("set_back", parse_value(text), label="", origin=Origin.ROW, span=at, within=WITHIN)
        )
        for text, at in zip(("7.6 mm", "8 mm", "8.4 mm"), PLACES, strict=True)
    )
    readings = Readings(name="set_back", label="Plaster proud", items=items)
    assert said(run_with("even_packer", readings=readings, step="0.5 mm")) == [
        "within the limits of the readings the packer comes to anything from 7.5 mm to 8.5 mm: rip it after "
        "reading again, or rip for both",
        "the packer is worked to stand 0.4 mm proud of the plaster at the wall and may stand 1.4 mm proud",
        "plaster is worked to stand 0.4 mm proud of the packer and may stand 1.1 mm proud",
    ]
