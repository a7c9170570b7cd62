"""A folder read whole: nothing in it hides anything else, and what is sound is all there."""

from __future__ import annotations

import pickle
import shutil
from decimal import Decimal
from pathlib import Path

import pytest

from generator.model.amounts import Amount
from generator.model.folder import Project, load_folder
from generator.problems import ProblemLog
from generator.units import LENGTH, Value

BASE = Path(__file__).parents[1] / "broken" / "whole" / "base"
DEMO = Path(__file__).parents[2]


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A sound folder to change, which the test stands in."""
    shutil.copytree(BASE, tmp_path, dirs_exist_ok=True)
    monkeypatch.chdir(tmp_path)
    return tmp_path / "methods"


def loaded() -> tuple[Project, list[str]]:
    log = ProblemLog()
    project = load_folder(Path(), log)
    return project, [f"{problem.span.file if problem.span else ''} {problem.code}" for problem in log]


def change(path: Path, old: str, new: str) -> None:
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")


def test_the_demonstration_has_no_fault() -> None:
    log = ProblemLog()
    project = load_folder(DEMO, log)
    assert [problem.code for problem in log] == []
    rows = {job.job.value: len(job.rows) for job in project.jobs}
    assert rows["Reading Room doors"] == 4
    assert rows["Reading Room new leaf"] == 1


def test_every_file_read_is_named(folder: Path) -> None:
    project, _ = loaded()
    assert [path.as_posix() for path in project.files] == [
        "methods/architrave.yaml",
        "methods/catalogue/own.yaml",
        "methods/jobs/doors.yaml",
        "methods/jobs/doors.csv",
        "methods/house-rules.yaml",
    ]


def test_a_row_holds_what_was_measured_in_the_survey_s_unit(folder: Path) -> None:
    project, _ = loaded()
    first, second = project.jobs[0].rows
    assert (first.opening, first.face, first.name) == ("1", "hall", "Porch to hall")
    width = first.sizes["opening_width"]
    assert isinstance(width, Amount)
    assert (width.value, width.text) == (Value(Decimal(768), LENGTH), "768 mm")
    assert str(second.sizes["hinge_side"]) == "right"
    assert [(one.member, one.at.magnitude, one.value.magnitude) for one in first.readings["set_back"]] == [
        ("left", 100, Decimal("7.5")),
        ("head", 350, 8),
    ]


def test_a_blank_reading_is_absent_and_never_nought(folder: Path) -> None:
    project, _ = loaded()
    assert [reading.member for reading in project.jobs[0].rows[1].readings["set_back"]] == ["left"]


def test_a_survey_may_be_in_centimetres_and_a_cell_in_its_own_unit(folder: Path) -> None:
    change(folder / "jobs" / "doors.yaml", "unit: mm", "unit: cm")
    (folder / "jobs" / "doors.csv").write_text(
        "opening,face,opening_width,set_back@left:10\n1,hall,76.8,0.75\n2,hall,844 mm,8 mm\n"
    )
    project, faults = loaded()
    assert faults == []
    widths = [row.sizes["opening_width"] for row in project.jobs[0].rows]
    assert [width.value.magnitude for width in widths if isinstance(width, Amount)] == [768, 844]
    assert project.jobs[0].rows[0].readings["set_back"][0].at == Value(Decimal(100), LENGTH)


def test_a_method_with_faults_hides_no_fault_of_other_files(folder: Path) -> None:
    change(folder / "architrave.yaml", "title: Architrave to a lining\n", "")
    change(folder / "architrave.yaml", "within: 1 mm", "within: 1")
    change(folder / "jobs" / "doors.yaml", "status: draft", "status: drafted")
    change(folder / "house-rules.yaml", "company:", "companies:")
    change(folder / "catalogue" / "own.yaml", "kind: measuring tool", "kind: rod")
    _, faults = loaded()
    assert faults == [
        "methods/architrave.yaml key-missing",
        "methods/architrave.yaml amount-unit-missing",
        "methods/catalogue/own.yaml choice-unknown",
        "methods/house-rules.yaml key-unknown",
        "methods/jobs/doors.yaml choice-unknown",
    ]


def test_a_file_that_cannot_be_read_at_all_leaves_its_job_alone(folder: Path) -> None:
    (folder / "architrave.yaml").write_text("format: 1\nmethod: [SF-01\n")
    _, faults = loaded()
    assert {fault.split()[0] for fault in faults} == {"methods/architrave.yaml"}


def test_a_thing_with_a_fault_is_still_there_for_whoever_names_it(folder: Path) -> None:
    file = folder / "architrave.yaml"
    change(file, "default: 5 mm", "default: 5 mmm")
    change(file, "work: opening_width", "work: opening_width +")
    change(file, "harms: [the person sawing]", "harms: the person sawing")
    change(file, 'P3: "Chooses', 'P3: "{Chooses')
    project, faults = loaded()
    assert faults == [
        "methods/architrave.yaml value-unit",
        "methods/architrave.yaml formula-no-value",
        "methods/architrave.yaml kind-wrong",
        "methods/architrave.yaml braces-open",
    ]
    method = project.methods[0]
    assert (method.sizes.lost, method.quantities.lost) == ({"quirk"}, {"head_short_point"})
    assert (method.knows("hazards"), method.knows("steps")) == (False, True)


def test_an_entry_of_the_user_may_replace_a_shipped_one(folder: Path) -> None:
    change(folder / "catalogue" / "own.yaml", "  story-rod:", "  tape:")
    change(
        folder / "catalogue" / "own.yaml",
        '    source: "Made on site."',
        '    source: "Ours."\n    replaces: yes',
    )
    project, faults = loaded()
    assert faults == []
    assert project.catalogue.tools["tape"].label.value == "Storey rod"


def test_an_entry_of_the_user_stands_beside_the_shipped_ones(folder: Path) -> None:
    project, _ = loaded()
    assert {"story-rod", "tape"} <= set(project.catalogue.tools)


def test_without_house_rules_there_is_no_company_and_no_policy(folder: Path) -> None:
    (folder / "house-rules.yaml").unlink()
    project, faults = loaded()
    assert (faults, project.house.company, len(project.house.policy)) == ([], None, 0)


def test_a_folder_without_methods_says_so(tmp_path: Path) -> None:
    log = ProblemLog()
    load_folder(tmp_path, log)
    assert [(problem.code, problem.span) for problem in log] == [("folder-no-methods", None)]


def test_a_job_without_a_survey_gives_every_measured_size_itself(folder: Path) -> None:
    job = folder / "jobs" / "doors.yaml"
    change(job, "survey: {file: doors.csv, unit: mm, key: [opening, face]}\n", "")
    assert loaded()[1] == [
        "methods/jobs/doors.yaml size-not-given-take",
        "methods/jobs/doors.yaml size-not-given",
    ]
    change(job, "  quirk: 6 mm", "  opening_width: 768 mm\n  set_back: [7 mm, 8 mm]")
    assert loaded()[1] == []


def test_a_project_travels_between_processes(folder: Path) -> None:
    project, _ = loaded()
    copy = pickle.loads(pickle.dumps(project))
    assert copy.methods[0].sizes["quirk"] == project.methods[0].sizes["quirk"]
    assert copy.methods[0].questions[0].step.span == project.methods[0].questions[0].step.span
    assert copy.methods[0].sizes.place("quirk") == project.methods[0].sizes.place("quirk")
    assert copy.jobs[0].rows == project.jobs[0].rows
