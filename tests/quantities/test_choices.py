"""Ways compared and chosen: a refusal is a result until the refused way is chosen."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from generator.model.folder import load_folder
from generator.problems import ProblemLog
from generator.quantities.families.ways import Comparison
from generator.quantities.work import work_out
from generator.shipped import shipped
from tests.quantities.folders import SURVEY, job_text, method_text, work

WAYS = """
    packer: {label: Packer, work: "even_packer(readings = set_back, step = ripping_step, thickest = 8.5 mm)"}
    seat: {label: Seat, work: "packer_fit(frame_edge = 34 mm, first_quirk = 5 mm, second_quirk = 4 mm,
      packer_width = 24 mm, overlap = 0 mm, clearance = 1 mm, least_bearing = 10 mm)"}
    packers: {label: Packers, work: "packer_set(opening_width = opening_width, opening_height = 2 m,
      first_quirk = 5 mm, packer_width = 24 mm)"}
    face: {label: Face, work: "architrave_set(opening_width = opening_width, opening_height = 2 m,
      quirk = 9 mm, head_width = 69 mm)"}
    around: {label: Around, work: "surroundings(architrave_thickness = 18 mm, edge_thickness = 18 mm,
      skirting_thickness = 15 mm, shadow_margin = 2 mm, pin_projection = 6 mm)"}
    packed: {label: Packed, work: "packed_way(packer = packer, fit = seat, packers = packers,
      architraves = face, around = around, quirk = 9 mm)"}
    eased: {label: Eased, work: "eased_way(packer = packer, architraves = face, around = around,
      architrave_width = 69 mm, frame_edge = 34 mm, quirk = 6 mm, most_eased = 3 mm)"}
    ways: {label: Ways, work: "ways_out(packer = packed, plaster = eased)"}
"""
REFUSED = (
    "t.yaml:{line}:{spot} error: {told}, the packer would be 9 mm thick and the most is 8.5 mm. | {expected}"
)


def faults(tmp_path: Path, more: str = "", job: str = "") -> list[str]:
    return work(tmp_path, method_text(WAYS, more=more), job_text(more=job)).faults


def test_without_a_choice_what_the_steps_use_must_not_be_refused(tmp_path: Path) -> None:
    assert [fault.partition(" error: ")[2] for fault in faults(tmp_path)] == [
        "Packer, opening 2, Hall: the packer would be 9 mm thick and the most is 8.5 mm. | "
        "Expected sizes that work, or another way of doing it."
    ]


def test_a_refused_way_is_a_fault_where_it_is_chosen(tmp_path: Path) -> None:
    (fault,) = faults(tmp_path, more="choices: {ways: packer}")
    head, _, told = fault.partition(" error: ")
    assert head.endswith(":packer")
    assert told == (
        "The way chosen, Packer with a double quirk, is refused for opening 2, Hall: the packer would be "
        "9 mm thick and the most is 8.5 mm. | By these sizes no way that is compared remains: change what is "
        "chosen, or leave the opening out."
    )


def test_a_refused_way_is_told_with_the_ways_that_remain(tmp_path: Path) -> None:
    deep = WAYS.replace("most_eased = 3 mm", "most_eased = 10 mm").replace(
        "skirting_thickness = 15 mm", "skirting_thickness = 6 mm"
    )
    (fault,) = work(tmp_path, method_text(deep, more="choices: {ways: packer}"), job_text()).faults
    assert fault.endswith(
        "the packer would be 9 mm thick and the most is 8.5 mm. | By these sizes there remains: Ease the "
        "plaster. One way is chosen for a whole job and the steps describe it, so an opening that needs "
        "another takes a job and steps of its own."
    )


def test_an_opening_that_needs_no_packer_is_not_packed(tmp_path: Path) -> None:
    survey = SURVEY.replace("8,8.5,9.1", "0,0,0")
    found = work(tmp_path, method_text(WAYS, more="choices: {ways: packer}"), job_text(), survey).faults
    assert any(
        "is refused for opening 2, Hall: the mean set-back is 0 mm, so no packer" in one for one in found
    )


@pytest.mark.parametrize(
    ("readings", "because"),
    [
        ("0,0,0,0,0,0,0,0,0", "the mean set-back is 0 mm"),
        (
            "15,15,15,15,15,15,15,15,15",
            "plaster was read up to 15 mm proud and the most for a packer is 12 mm",
        ),
        ("4,-3,2,3,-2,5,4,-3,2", "readings lie on both sides of the frame's edge"),
    ],
)
def test_the_demonstration_packs_no_opening_that_its_own_stop_rule_excludes(
    tmp_path: Path, readings: str, because: str
) -> None:
    shutil.copytree(shipped("methods"), tmp_path / "methods")
    survey = tmp_path / "methods" / "jobs" / "reading-room-doors.csv"
    text = survey.read_text(encoding="utf-8")
    assert text.count("7.5,8.0,8.5,8.5,8.0,8.5,9.0,8.0,7.5") == 1
    survey.write_text(text.replace("7.5,8.0,8.5,8.5,8.0,8.5,9.0,8.0,7.5", readings), encoding="utf-8")
    log = ProblemLog()
    project = load_folder(tmp_path, log)
    (job,) = (job for job in project.jobs if job.job.value == "Reading Room doors")
    method = project.method(job.method.value)
    assert method is not None
    work_out(method, job, project, log)
    refused = [one.values for one in log if one.code in ("way-refused", "no-way-left")]
    assert any(one["because"].startswith(because) for one in refused)


def test_the_job_s_choice_comes_before_the_method_s(tmp_path: Path) -> None:
    found = faults(tmp_path, more="choices: {ways: packer}", job="choices: {ways: plaster}")
    assert {fault.partition(":")[0] for fault in found} == {"j.yaml"}
    warned, *refused = found
    assert warned.endswith(
        "The job chooses Ease the plaster, and the method's own choice is Packer with a double quirk. | Read "
        "every step: those written for the method's own choice describe other work than this job's."
    )
    assert refused and all("The way chosen, Ease the plaster, is refused" in fault for fault in refused)


def test_a_refused_way_that_is_not_chosen_is_no_fault(tmp_path: Path) -> None:
    survey = SURVEY.replace("8,8.5,9.1", "8,8.5,8.5")
    done = work(tmp_path, method_text(WAYS, more="choices: {ways: packer}"), job_text(), survey)
    assert done.faults == []
    comparison = done.ledger.openings[0].entries["ways"].result
    assert isinstance(comparison, Comparison)
    assert [(way.code, way.chosen, bool(way.refused)) for way in comparison.ways] == [
        ("packer", True, False),
        ("plaster", False, True),
    ]


def test_a_way_nobody_offers_is_told_with_the_nearest(tmp_path: Path) -> None:
    (fault,) = faults(tmp_path, more="choices: {ways: plastre}")
    assert fault.endswith(
        ":plastre error: “ways” offers no way called “plastre”. | It offers: packer, plaster. "
        "Did you mean “plaster”?"
    )


def test_a_choice_where_nothing_is_compared_is_told(tmp_path: Path) -> None:
    found = faults(tmp_path, more="choices: {seat: packer}")
    assert any(
        "“seat” compares no ways, so none can be chosen. | Expected a quantity worked by ways_out." in fault
        for fault in found
    )


def test_a_remark_is_a_warning_that_names_the_opening(tmp_path: Path) -> None:
    survey = SURVEY.replace("2,Hall,844,8,8.5,9.1", "2,Hall,844,8,,")
    text = method_text("packer: {label: Packer, work: 'even_packer(readings = set_back, step = 0.5 mm)'}")
    done = work(tmp_path, text, job_text(), survey)
    assert [fault.partition(") ")[2] for fault in done.faults] == [
        "warning: Packer, opening 2, Hall: there is one reading alone; the packer rests on it. | ",
        "warning: Packer, opening 2, Hall: nothing was read on the member called head. | ",
        "warning: Packer, opening 2, Hall: nothing was read on the member called right. | ",
    ]
    assert not done.log.has_errors
