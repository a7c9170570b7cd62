"""The demo's quantities as a person, a program and a spreadsheet get them."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import pytest

from generator.cli import main
from generator.cli.figures import Figure, as_csv

METHOD = "SF-07"
JOB = "reading-room-doors"


@pytest.fixture(autouse=True)
def demo(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The demo laid out as the working folder."""
    assert main(["start", str(tmp_path / "demo")]) == 0
    monkeypatch.chdir(tmp_path / "demo")
    return tmp_path / "demo"


def told(capsys: pytest.CaptureFixture[str], *arguments: str, status: int = 0) -> str:
    capsys.readouterr()
    assert main(["quantities", *arguments]) == status
    return capsys.readouterr().out


def test_a_worked_quantity_shows_its_arithmetic(capsys: pytest.CaptureFixture[str]) -> None:
    """5 mm + 4 mm = 9 mm, by hand."""
    text = told(capsys, METHOD)
    assert (
        "Both quirks together [total_quirk]: 9 mm\n"
        "    total_quirk = first_quirk + second_quirk\n"
        "    = 5 mm + 4 mm\n"
        "    = 9 mm\n"
    ) in text


def test_a_size_shows_where_it_was_written(capsys: pytest.CaptureFixture[str], demo: Path) -> None:
    survey = (demo / "methods/jobs/reading-room-doors.csv").read_text().splitlines()
    assert survey[1].startswith("1,hall,Porch to hall,768,")
    text = told(capsys, METHOD, "--job", JOB)
    assert "[opening_width]: 768 mm  methods/jobs/reading-room-doors.csv:2\n" in text


def test_each_opening_of_the_job_has_its_own_figures(capsys: pytest.CaptureFixture[str]) -> None:
    figures = json.loads(told(capsys, METHOD, "--job", JOB, "--as", "json"))
    widths = {each["opening"]: each["value"] for each in figures if each["name"] == "opening_width"}
    assert widths == {
        "1, Porch to hall": "768 mm",
        "2, Hall to reading room": "844 mm",
        "3, Hall to office": "768 mm",
        "4, Hall to kitchen": "692 mm",
    }


def test_the_packer_is_the_mean_taken_up_to_the_step(capsys: pytest.CaptureFixture[str]) -> None:
    """Opening 1: (7.5+8+8.5+8.5+8+8.5+9+8+7.5)/9 = 8.17, up to the next 0.5 mm: 8.5, by hand."""
    figures = json.loads(told(capsys, METHOD, "--job", JOB, "--as", "json"))
    packer = next(
        each for each in figures if each["name"] == "packer.thickness" and each["opening"].startswith("1")
    )
    assert (packer["value"], packer["number"], packer["unit"]) == ("8.5 mm", "8.5", "mm")
    assert packer["working"][-1] == "= 8.5 mm"
    assert all("(methods/" in place for place in packer["rests_on"])


def test_the_table_has_a_row_for_every_figure(capsys: pytest.CaptureFixture[str]) -> None:
    figures = json.loads(told(capsys, METHOD, "--as", "json"))
    rows = list(csv.DictReader(io.StringIO(told(capsys, METHOD, "--as", "csv"))))
    assert [(row["name"], row["value"]) for row in rows] == [
        (figure["name"], figure["value"]) for figure in figures
    ]
    assert len(rows) > 50


def test_a_method_may_be_named_by_its_file_from_anywhere(
    capsys: pytest.CaptureFixture[str], demo: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (file,) = [
        path for path in (demo / "methods").glob("*.yaml") if f"method: {METHOD}\n" in path.read_text()
    ]
    monkeypatch.chdir("/")
    assert "[total_quirk]: 9 mm" in told(capsys, str(file))


@pytest.mark.parametrize("name", [JOB, f"{JOB}.yaml", f"methods/jobs/{JOB}.yaml", "Reading Room doors"])
def test_a_job_may_be_named_by_its_file_its_name_or_its_title(
    capsys: pytest.CaptureFixture[str], name: str
) -> None:
    assert "Opening 4, Hall to kitchen" in told(capsys, METHOD, "--job", name)


@pytest.mark.parametrize(
    ("arguments", "said", "nearest"),
    [
        (["SF-07x"], "No method in . has the number or the file SF-07x.", METHOD),
        (
            [METHOD, "--job", "reading-rom-doors"],
            "No job of SF-07 in . has the file, the name or the title reading-rom-doors.",
            JOB,
        ),
    ],
)
def test_unknown_names_are_wrong_use_with_the_nearest(
    capsys: pytest.CaptureFixture[str], arguments: list[str], said: str, nearest: str
) -> None:
    assert main(["quantities", *arguments]) == 2
    first, second = capsys.readouterr().err.splitlines()[:2]
    assert first == f"error: {said}"
    assert second.startswith("    Name one of: ")
    assert second.endswith(f"Did you mean “{nearest}”?")


def test_with_faults_in_the_files_nothing_is_worked_out(
    capsys: pytest.CaptureFixture[str], demo: Path
) -> None:
    survey = demo / "methods/jobs/reading-room-doors.csv"
    survey.write_text(survey.read_text().replace("768", "seven", 1))
    assert main(["quantities", METHOD, "--job", JOB]) == 1
    out, err = capsys.readouterr()
    assert out == ""
    assert err.startswith("methods/jobs/reading-room-doors.csv:2:22: error: ")


@pytest.mark.parametrize("cell", ["=1+1", "@SUM(A1)", "+1", "-cmd", "\tx"])
def test_no_cell_is_taken_for_a_formula(cell: str) -> None:
    written = as_csv((Figure(opening="", name="n", label=cell, value="-5 mm", number="-5"),))
    row = next(csv.DictReader(io.StringIO(written)))
    assert (row["label"], row["value"], row["number"]) == (f"'{cell}", "-5 mm", "-5")


def test_a_method_whose_file_cannot_be_read_is_not_said_to_be_missing(
    capsys: pytest.CaptureFixture[str], demo: Path
) -> None:
    method = demo / "methods/architrave-set-back-frame.yaml"
    method.write_text(method.read_text().replace("format: 1\n", "format 1\n", 1))
    capsys.readouterr()
    assert main(["quantities", METHOD]) == 1
    said = capsys.readouterr().err
    assert "architrave-set-back-frame.yaml:" in said
    assert "No method" not in said


def test_the_exposures_stand_first_with_their_arithmetic(capsys: pytest.CaptureFixture[str]) -> None:
    """The mitre saw is the loudest tool with a figure on the first day."""
    first = json.loads(told(capsys, METHOD, "--job", JOB, "--as", "json"))[0]
    assert (first["name"], first["unit"]) == ("noise_day_1", "dB")
    assert "10^((102 − 85) / 10)" in first["working"][0]
    assert first["working"][0].endswith("level assumed")
