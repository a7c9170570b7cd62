"""The demonstration against the trade: order, tools and hazards, checks that can pass, invented people."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache
from pathlib import Path
from typing import TypeVar

import pytest

from generator.model.folder import Project, load_folder
from generator.model.hazards import RANKS
from generator.model.jobs import Job
from generator.model.method import Method
from generator.model.steps import Step
from generator.problems import ProblemLog
from generator.quantities.families.fixings import PinLength
from generator.quantities.families.packers import EvenPacker
from generator.quantities.ledger import Ledger
from generator.quantities.work import work_out
from generator.quantities.worked import Worked
from generator.safety.required import check_safety
from generator.wording.report import report_text

ROOT = Path(__file__).parents[2]


NUMBER = "SF-07"
Numbered = TypeVar("Numbered", Method, Job)


def _of_number(found: Sequence[Numbered]) -> Numbered:
    """The method, or the job, of the number this file is about."""
    return next(one for one in found if str(one.method) == NUMBER)


@cache
def loaded() -> tuple[Project, Ledger, Ledger, str]:
    """The demonstration, worked out on its example sizes and for its job, with everything reported."""
    log = ProblemLog()
    project = load_folder(ROOT, log)
    method = _of_number(project.methods)
    job = _of_number(project.jobs)
    guide, statement = work_out(method, None, project, log), work_out(method, job, project, log)
    check_safety(method, None, project, log)
    check_safety(method, job, project, log)
    return project, guide, statement, report_text(log)


def method() -> Method:
    return _of_number(loaded()[0].methods)


def job() -> Job:
    return _of_number(loaded()[0].jobs)


def steps() -> tuple[Step, ...]:
    return method().steps


def number_of(title: str) -> int:
    """The number, from 1, of the one step whose title begins so."""
    (number,) = [n for n, step in enumerate(steps(), 1) if step.title.value.startswith(title)]
    return number


def test_nothing_is_reported() -> None:
    assert loaded()[3] == "No faults found.\n"


# Order of work: common practice, no source.
def test_the_steps_come_in_the_order_of_the_work() -> None:
    titles = [
        "Read the information",
        "Take the set-back",
        "Bare the edge",
        "Mark the first",
        "Cut the packers and set",
        "Glue and pin the packers",
        "Mark the second",
        "Cut the head and set",
        "Mark and cut the legs",
        "Glue and pin the architrave",
        "Fill",
    ]
    assert [number_of(title) for title in titles] == list(range(1, 12))


def test_each_hold_point_stands_after_what_it_looks_at() -> None:
    held = {n: step.hold.before.typed for n, step in enumerate(steps(), 1) if step.hold}
    assert held == {
        number_of("Take the set-back"): "packers are ripped",
        number_of("Glue and pin the packers"): "packers are covered",
        number_of("Fill"): "decorators or skirting start at this opening",
    }


def uses(step: Step) -> set[str]:
    return {key.value for key in step.uses}


def hazards(step: Step) -> set[str]:
    return {key.value for key in step.hazards}


# What a step that uses a tool must warn of: HSE WIS36 (chop saws), HSE on wood dust, PUWER 1998 reg 12.
@pytest.mark.parametrize(
    ("tool", "met"),
    [
        ("pin-gun", {"pin-through"}),
        ("chisel", {"sharp-tools"}),
        ("block-plane", {"sharp-tools"}),
        ("hop-up", {"low-platform"}),
        ("cable-detector", {"hidden-services"}),
        ("sealant-gun", {"glue-and-filler"}),
    ],
)
def test_a_step_that_uses_a_tool_names_its_hazards(tool: str, met: set[str]) -> None:
    using = [step for step in steps() if tool in uses(step)]
    assert using
    assert [step.title.value for step in using if not met <= hazards(step)] == []


def test_a_step_that_saws_names_blade_dust_and_noise() -> None:
    sawing = [step for step in steps() if re.search(r"\b[Cc]ut (the|two|each|a test)", told(step))]
    assert len(sawing) == 3
    for step in sawing:
        assert {"mitre-saw", "extractor"} <= uses(step)
        assert {"blade-contact", "wood-dust", "noise"} <= hazards(step)


def told(step: Step) -> str:
    return " ".join(action.typed for action in step.do)


@pytest.mark.parametrize(
    ("word", "tool"),
    [
        ("straightedge", "straightedge"),
        ("set-back block", "set-back-block"),
        ("feeler gauge", "feeler-gauge"),
        ("combination square", "combination-square"),
        ("steel rule", "steel-rule"),
        ("tape ", "tape"),
        ("bevel", "sliding-bevel"),
        ("clamp", "clamps"),
        ("vacuum", "vacuum"),
        ("punch ", "nail-punch"),
    ],
)
def test_every_tool_a_check_is_taken_with_is_on_the_steps_list(word: str, tool: str) -> None:
    for step in steps():
        taken = " ".join(check.how.typed for check in step.check).casefold()
        if word in taken:
            assert tool in uses(step), step.title.value


def test_every_tool_listed_is_used() -> None:
    listed = {key.value for key in method().tools}
    assert listed - set().union(*(uses(step) for step in steps())) == set()


def test_every_hazard_is_met_in_a_step() -> None:
    assert [each.hazard.value for each in method().hazards if not method().steps_of(each.hazard.value)] == []


def test_controls_stand_strongest_first_and_never_are_only_what_is_worn() -> None:
    for hazard in method().hazards:
        ranks = [RANKS.index(control.rank) for control in hazard.controls]
        assert ranks == sorted(ranks), hazard.hazard.value
        assert ranks[0] < RANKS.index("ppe"), hazard.hazard.value


# The checks as printed must be able to pass: one even packer leaves from its least to its greatest remainder.
def test_every_station_lies_within_what_filler_takes_and_easing_allows() -> None:
    for opening in loaded()[2].openings:
        packer = opening.entries["packer"].result
        assert isinstance(packer, EvenPacker)
        assert len(packer.remainders) == 9
        assert all(-0.5 <= each.remainder.number <= 1.0 for each in packer.remainders)


def test_each_expected_figure_is_one_that_is_worked_out() -> None:
    expected = {check.expect.value for step in steps() for check in step.check if check.expect}
    for name in expected:
        head, _, field = name.partition(".")
        for entry in loaded()[2].entries(head):
            found = getattr(entry.result, field) if field else entry.result
            assert isinstance(found, Worked | tuple), name


def millimetres(name: str) -> list[float]:
    found = [entry.result for entry in loaded()[2].entries(name)]
    return [each.number for each in found if isinstance(each, Worked)]


# Worked by hand from the survey: W + 2q1 + 2f; H + q1 - z; W + 2q + 2a; H + q + a - z.
def test_the_openings_come_out_as_by_hand() -> None:
    assert millimetres("packer_thickness") == [8.5, 9.0, 7.5, 8.0]
    assert millimetres("head_packer") == [826, 902, 826, 750]
    assert millimetres("leg_packer") == [1993, 1993, 1995, 1992]
    assert millimetres("head_long_point") == [924, 1000, 924, 848]
    assert millimetres("leg_long_point") == [2066, 2066, 2068, 2065]


def test_the_way_chosen_is_refused_at_no_opening() -> None:
    assert [entry.result.refused for entry in loaded()[2].entries("ways")] == [(), (), (), ()]


# At least twice the thickness held: common practice, no source.
def test_a_pin_reaches_sound_ground_and_no_further() -> None:
    ledger = loaded()[2]
    for name, held in (("architrave_pin", 18.0), ("packer_pin", max(millimetres("packer_thickness")))):
        (entry,) = ledger.entries(name)
        assert isinstance(entry.result, PinLength) and entry.result.length is not None
        assert 2 * held <= entry.result.length.number <= entry.result.most.number


# Numbers kept for fiction: Ofcom, telephone numbers for use in TV and radio drama programmes.
FICTION = re.compile(r"07700 900\d{3}|01632 960\d{3}")


def test_every_telephone_number_is_one_kept_for_fiction() -> None:
    text = "".join(path.read_text(encoding="utf-8") for path in sorted((ROOT / "methods").rglob("*.yaml")))
    numbers = re.findall(r"\b0\d{3,4} \d{3} ?\d{3}\b|\b0\d{4} \d{6}\b", text)
    assert numbers
    assert [number for number in numbers if not FICTION.fullmatch(number)] == []


def test_someone_who_releases_hold_points_has_a_deputy_who_is_named() -> None:
    holding = [person for person in job().people if person.holds]
    names = {person.name.value for person in job().people if person.name}
    assert holding
    assert all(person.deputy and person.deputy.value in names for person in holding)


def test_the_dates_follow_one_another() -> None:
    control, when = job().document, job().when
    assert control and when and control.written and control.checked and control.approved
    assert control.issued and control.review_by
    signed = [control.written.date, control.checked.date, control.approved.date]
    days = [day.value for day in (*signed, control.issued, when.from_, when.to)]
    assert days == sorted(days)
    assert when.to.value < control.review_by.value
    assert (control.review_by.value - control.issued.value).days <= 365


BOASTS = (
    "rams compliant",
    "hse approved",
    "fully trained",
    "as required",
    "take care",
    "be careful",
    "common sense",
)


def test_no_word_of_the_demonstration_stands_in_place_of_a_control() -> None:
    text = "".join(path.read_text(encoding="utf-8") for path in sorted((ROOT / "methods").rglob("*.yaml")))
    assert [boast for boast in BOASTS if boast in text.casefold()] == []
