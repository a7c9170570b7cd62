"""What each command says and how it ends. The line itself is stood in for by a small one of known outcome."""

from __future__ import annotations

import json
import os
import pty
import re
import signal
import subprocess
import sys
import textwrap
import time
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path
from types import ModuleType
from typing import ClassVar

import pytest

from generator.cli import main
from generator.cli.arguments import SCHEMA_KINDS
from generator.model.folder import no_house_rules
from generator.model.house import HouseRules
from generator.model.schema import KINDS
from generator.pipeline.inputs import Inputs, read_inputs
from generator.problems import MachineLacks, ProblemLog, Span

PLACE = "methods/shelf.yaml"


@dataclass
class Line:
    """A line whose outcome the test chooses."""

    SITE: ClassVar[str] = "site"
    errors: int = 0
    warnings: int = 0
    raises: BaseException | None = None
    runs: int = 0
    inputs: Inputs | None = None
    house: HouseRules = field(default_factory=lambda: no_house_rules(Path("house-rules.yaml")))
    site: Mapping[str, bytes] = field(default_factory=lambda: {"index.html": b"<!doctype html>"})

    def assess(self, folder: Path, log: ProblemLog, crew: object) -> Line:
        self.inputs = read_inputs(folder)
        self.runs += 1
        if self.raises:
            raise self.raises
        for number in range(self.errors + self.warnings):
            span = Span(
                file=(folder / PLACE).as_posix(),
                line=number + 1,
                column=7,
                text="work: alcove_wdith",
                length=12,
            )
            log.add("path-missing", span, path="alcove_wdith", warning=number >= self.errors)
        return self

    def make_publications(self, assessed: Line, crew: object) -> Mapping[str, Mapping[str, bytes]]:
        assert assessed is self
        return {"tutor": {"index.html": b"answers"}, self.SITE: self.site}


@pytest.fixture
def line(monkeypatch: pytest.MonkeyPatch) -> Line:
    stand_in, known = ModuleType("generator.pipeline.line"), Line()
    for name in ("SITE", "assess", "make_publications"):
        setattr(stand_in, name, getattr(known, name))
    monkeypatch.setitem(sys.modules, "generator.pipeline.line", stand_in)
    unissued = ModuleType("generator.pipeline.issuing")
    setattr(unissued, "check_register", lambda assessed, crew, log: None)  # noqa: B010
    monkeypatch.setitem(sys.modules, "generator.pipeline.issuing", unissued)
    return known


@pytest.fixture(autouse=True)
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A user folder with one file, as the working folder, and a memory of its own."""
    place = tmp_path / "user"
    (place / "methods").mkdir(parents=True)
    (place / PLACE).write_text("work: alcove_wdith\n")
    monkeypatch.chdir(place)
    monkeypatch.setenv("STOREYROD_CACHE", str(tmp_path / "cache"))
    return place


def site(folder: Path) -> Path:
    return folder / "output" / "site" / "index.html"


def test_publishing_says_what_it_made_and_where(
    line: Line, folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["publish"]) == 0
    told = capsys.readouterr()
    assert re.fullmatch(
        r"Published output/site/index\.html in \d+\.\d s: 1 files written, 0 as they were\.\n", told.out
    )
    assert told.err == ""
    assert site(folder).read_bytes() == b"<!doctype html>"


def test_publishing_again_finds_nothing_to_do(
    line: Line, folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    main(["publish"])
    before = site(folder).stat()
    capsys.readouterr()
    assert main(["publish"]) == 0
    assert capsys.readouterr().out == (
        "Nothing has changed: output/site/index.html stands as it was published.\n"
    )
    assert line.runs == 1
    assert site(folder).stat().st_mtime_ns == before.st_mtime_ns


@pytest.mark.parametrize(
    "change", ["file changed", "file added", "site edited", "site deleted", "theme added"]
)
def test_any_change_is_published(line: Line, folder: Path, change: str) -> None:
    main(["publish"])
    if change == "file changed":
        (folder / PLACE).write_text("work: alcove_width\n")
    elif change == "file added":
        (folder / "methods/second.yaml").write_text("format: 1\n")
    elif change == "theme added":
        (folder / "themes/mine").mkdir(parents=True)
        (folder / "themes/mine/page.css").write_text("")
    elif change == "site edited":
        site(folder).write_bytes(b"edited")
    else:
        (folder / "output/site").unlink()
    assert main(["publish"]) == 0
    assert line.runs == 2
    assert site(folder).read_bytes() == b"<!doctype html>"


def test_a_hidden_file_is_no_input(line: Line, folder: Path) -> None:
    main(["publish"])
    (folder / "methods/.shelf.yaml.swp").write_text("an editor's own")
    main(["publish"])
    assert line.runs == 1


def test_warnings_are_told_again_by_a_run_with_nothing_to_do(
    line: Line, capsys: pytest.CaptureFixture[str]
) -> None:
    line.warnings = 1
    assert main(["publish"]) == 0
    first = capsys.readouterr().err
    assert main(["publish"]) == 0
    assert line.runs == 1
    assert capsys.readouterr().err == first
    assert first.startswith("methods/shelf.yaml:1:7: warning: ")


def test_a_fault_stops_the_publication_and_the_old_site_stands(
    line: Line, folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    main(["publish"])
    (folder / PLACE).write_text("worse\n")
    line.errors, line.site = 2, {"index.html": b"never"}
    capsys.readouterr()
    assert main(["publish"]) == 1
    told = capsys.readouterr()
    assert told.out == ""
    assert told.err == textwrap.dedent("""\
        methods/shelf.yaml:1:7: error: There is nothing at alcove_wdith.
            work: alcove_wdith
                  ^^^^^^^^^^^^
            Give a folder or a file that is there.

        methods/shelf.yaml:2:7: error: There is nothing at alcove_wdith.
            work: alcove_wdith
                  ^^^^^^^^^^^^
            Give a folder or a file that is there.

        2 errors in 1 file
        Nothing was published; what was published before still stands.
        """)
    assert site(folder).read_bytes() == b"<!doctype html>"


@pytest.mark.parametrize("published_before", [False, True])
def test_strict_lets_a_warning_stop_it(line: Line, folder: Path, published_before: bool) -> None:
    line.warnings = 1
    if published_before:
        assert main(["publish"]) == 0
    assert main(["publish", "--strict"]) == 1
    assert site(folder).exists() == published_before


def test_a_machine_that_lacks_something_ends_with_three_and_the_cure(
    line: Line, capsys: pytest.CaptureFixture[str]
) -> None:
    line.raises = MachineLacks("pango-missing", library="libpango-1.0.so.0")
    assert main(["publish"]) == 3
    assert capsys.readouterr().err == (
        "error: PDFs cannot be made: this machine lacks libpango-1.0.so.0.\n"
        "    On Debian or Ubuntu: apt-get install libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0. "
        "On macOS: brew install pango.\n\n1 error\n"
    )


def test_a_site_that_is_not_ours_ends_with_three(line: Line, folder: Path) -> None:
    site(folder).parent.mkdir(parents=True)
    site(folder).write_text("theirs")
    assert main(["publish"]) == 3
    assert site(folder).read_text() == "theirs"


def test_a_memory_that_cannot_be_written_is_told_and_stops_nothing(
    line: Line, folder: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setenv("STOREYROD_CACHE", str(folder / PLACE / "cache"))
    assert main(["publish", "--strict"]) == 0
    assert capsys.readouterr().err.count("warning: Finished drawings and PDFs cannot be remembered in") == 1
    assert site(folder).exists()


@pytest.fixture(autouse=True)
def _the_day_the_book_was_read(monkeypatch: pytest.MonkeyPatch) -> None:
    """What check says must not come to depend on the day the tests are run."""
    monkeypatch.setattr("generator.cli.commands.today", lambda: date(2026, 11, 24))


def test_check_warns_once_when_the_sources_are_to_be_read_again(
    line: Line, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr("generator.cli.commands.today", lambda: date(2027, 6, 1))
    assert main(["check"]) == 0
    assert capsys.readouterr().out.count("were to be read again by 2027-05-31") == 1


HOUSE = """\
format: 1
rules:
  - rule: H1
    title: Combination square
    when: {{tools: [combination-square]}}
    hazard: "A square that was dropped reads wrong."
    needs:
      - administer: "Square tried both ways on a board."
        words: [square + tried]
    level: must
    sources:
      - cite: {cite}
        known: house
        review_by: 2026-11-23
"""


def test_check_reads_the_house_rules_of_each_folder_even_where_no_method_can_be_read(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    for name in ("one", "two"):
        (folder / name / "methods").mkdir(parents=True)
        (folder / name / PLACE).write_text("title: Shelf\n")
        rules = folder / name / "methods" / "house-rules.yaml"
        rules.write_text(HOUSE.format(cite=f"Sheet of {name}"))
    assert main(["check", "one", "two"]) == 1
    told = capsys.readouterr().out
    for name in ("one", "two"):
        assert f"{name}/methods/house-rules.yaml:14:20: warning: " in told
        assert f"The source “Sheet of {name}” was to be read again by 2026-11-23." in told


def test_check_tells_every_fault_on_the_standard_output(
    line: Line, capsys: pytest.CaptureFixture[str]
) -> None:
    line.errors, line.warnings = 1, 1
    assert main(["check"]) == 1
    told = capsys.readouterr()
    assert told.out.count("methods/shelf.yaml:") == 2
    assert told.out.endswith("1 error, 1 warning in 1 file\n")
    assert told.err == ""


def test_check_writes_nothing(line: Line, folder: Path) -> None:
    before = sorted(folder.rglob("*"))
    main(["check"])
    assert sorted(folder.rglob("*")) == before


@pytest.mark.parametrize(("arguments", "status"), [(["check"], 0), (["check", "--strict"], 1)])
def test_a_warning_counts_only_when_strict(line: Line, arguments: list[str], status: int) -> None:
    line.warnings = 1
    assert main(arguments) == status


def test_check_without_faults_says_so(line: Line, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check"]) == 0
    assert capsys.readouterr().out == "No faults found.\n"


def test_check_as_json_is_for_programs(line: Line, capsys: pytest.CaptureFixture[str]) -> None:
    line.errors = 1
    assert main(["check", "--as", "json"]) == 1
    (fault,) = json.loads(capsys.readouterr().out)
    assert (fault["file"], fault["line"], fault["column"], fault["severity"], fault["code"]) == (
        "methods/shelf.yaml", 1, 7, "error", "path-missing",
    )  # fmt: skip


@pytest.mark.parametrize(
    ("path", "told"),
    [("methods/shelf.yaml", True), ("methods", True), (".", True), ("methods/other.yaml", False)],
)
def test_check_of_a_path_tells_its_faults_only(
    line: Line, folder: Path, path: str, told: bool, capsys: pytest.CaptureFixture[str]
) -> None:
    (folder / "methods/other.yaml").write_text("format: 1\n")
    line.errors = 1
    assert main(["check", path]) == int(told)
    assert ("shelf.yaml" in capsys.readouterr().out) == told


def test_check_from_inside_the_folder_finds_it(
    line: Line, folder: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(folder / "methods")
    line.errors = 1
    assert main(["check", "shelf.yaml"]) == 1
    assert capsys.readouterr().out.startswith("../methods/shelf.yaml:1:7: error: ")


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["check", "no/such.yaml"], "There is nothing at no/such.yaml."),
        (["publish", "no-such-folder"], "There is nothing at no-such-folder."),
        (["publish", "/"], "Neither / nor a folder above it holds a folder called methods."),
        (["start", "."], ". holds something already, and nothing of it is overwritten."),
        (["start", PLACE], f"{PLACE} holds something already, and nothing of it is overwritten."),
    ],
)
def test_a_wrong_path_is_wrong_use(
    line: Line, arguments: list[str], said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(arguments) == 2
    assert capsys.readouterr().err.splitlines()[0] == f"error: {said}"
    assert line.runs == 0


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        ([], "the following arguments are required: COMMAND"),
        (["publsh"], "invalid choice: 'publsh'"),
        (["publish", "--workers", "0"], "'0' is not a whole number of 1 or more"),
        (["publish", "--workers", "two"], "'two' is not a whole number of 1 or more"),
        (["check", "--as", "xml"], "invalid choice: 'xml'"),
        (["start"], "the following arguments are required: FOLDER"),
    ],
)
def test_wrong_words_are_wrong_use(
    arguments: list[str], said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(arguments) == 2
    assert said in capsys.readouterr().err


def test_help_shows_where_to_begin(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["--help"]) == 0
    told = capsys.readouterr().out
    for line in ("storeyrod start my-jobs", "exit status:", "  3  this machine lacks something"):
        assert line in told


@pytest.mark.parametrize("command", ["publish", "check", "quantities", "rules", "start", "schema"])
def test_every_command_teaches_by_example(command: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main([command, "--help"]) == 0
    told = capsys.readouterr().out
    assert f"examples:\n  storeyrod {command}" in told
    assert max(map(len, told.splitlines())) <= 80


def test_start_lays_out_the_whole_demo(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["start", "../mine"]) == 0
    laid = {path.relative_to(tmp_path / "mine") for path in (tmp_path / "mine").rglob("*") if path.is_file()}
    demo = Path(__file__).parents[2]
    wanted = {path.relative_to(demo) for path in (demo / "methods").rglob("*") if path.is_file()}
    assert laid == {path for path in wanted if not path.name.startswith(".")}
    assert capsys.readouterr().out.endswith("Now: cd ../mine && storeyrod publish\n")


def test_start_takes_an_empty_folder_and_refuses_a_second_time(tmp_path: Path) -> None:
    (tmp_path / "mine").mkdir()
    assert main(["start", str(tmp_path / "mine")]) == 0
    assert main(["start", str(tmp_path / "mine")]) == 2
    assert [path.name for path in tmp_path.glob(".*")] == []


def test_start_where_nothing_may_be_written_ends_with_three(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["start", f"{PLACE}/mine"]) == 3
    assert capsys.readouterr().err.splitlines()[0] == (
        f"error: The new folder {PLACE}/mine cannot be laid out: File exists."
    )


def test_a_fault_of_its_own_is_one_clear_line(line: Line, capsys: pytest.CaptureFixture[str]) -> None:
    line.raises = KeyError("hatch")
    assert main(["publish"]) == 70
    told = capsys.readouterr().err
    assert "Traceback" not in told
    assert told.startswith(
        "error: storeyrod failed through a fault of its own: KeyError: 'hatch' (test_commands.py, "
    )
    assert main(["publish", "--traceback"]) == 70
    assert "Traceback" in capsys.readouterr().err


def test_ctrl_c_ends_quietly(line: Line, capsys: pytest.CaptureFixture[str]) -> None:
    line.raises = KeyboardInterrupt()
    assert main(["publish"]) == 130
    assert capsys.readouterr().err == "\nStopped. What was published before still stands.\n"


STOOD_IN = """
import sys, time
import generator.cli.commands as commands
from generator.cli import main

commands.COMMANDS = {{"check": lambda asked: {act}}}
raise SystemExit(main(["check"]))
"""


def running(act: str, **environment: str) -> subprocess.Popen[str]:
    """The command in a process of its own, with `act` in place of what `check` does."""
    return subprocess.Popen(
        [sys.executable, "-c", STOOD_IN.format(act=act)],
        stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, env={**os.environ, **environment},
    )  # fmt: skip


@pytest.mark.parametrize("unbuffered", ["", "1"])
@pytest.mark.parametrize("length", [10, 1_000_000])
def test_a_reader_who_leaves_early_is_no_fault(length: int, unbuffered: str) -> None:
    program = running(f"sys.stdout.write('x' * {length}) * 0", PYTHONUNBUFFERED=unbuffered)
    assert program.stdout and program.stderr
    program.stdout.close()
    assert program.wait(30) == 141
    assert program.stderr.read() == ""


def on_a_terminal(arguments: list[str], **environment: str) -> str:
    """What a person at a terminal sees on the standard error."""
    ours, theirs = pty.openpty()
    known = {name: value for name, value in os.environ.items() if name != "NO_COLOR"}
    subprocess.run(
        [sys.executable, "-m", "generator.cli", *arguments],
        stderr=theirs, stdout=subprocess.DEVNULL, env={**known, "TERM": "xterm", **environment}, check=False,
    )  # fmt: skip
    os.close(theirs)
    seen = os.read(ours, 65536).decode()
    os.close(ours)
    return seen


@pytest.mark.parametrize(
    ("environment", "coloured"), [({}, True), ({"NO_COLOR": "1"}, False), ({"TERM": "dumb"}, False)]
)
def test_colour_is_for_terminals_whose_owner_wants_it(environment: dict[str, str], coloured: bool) -> None:
    """no-color.org: any value of NO_COLOR that is not empty turns colour off."""
    seen = on_a_terminal(["publish", "no-such-folder"], **environment)
    assert "There is nothing at no-such-folder." in seen
    assert ("\x1b[" in seen) == coloured


def test_interrupting_a_real_run_ends_it_at_once() -> None:
    program = running("print('ready', flush=True) or time.sleep(60)")
    assert program.stdout and program.stderr
    assert program.stdout.readline() == "ready\n"
    began = time.monotonic()
    program.send_signal(signal.SIGINT)
    assert program.wait(10) == 130
    assert time.monotonic() - began < 5
    assert program.stderr.read() == "\nStopped. What was published before still stands.\n"


def test_every_kind_of_schema_may_be_asked_for(capsys: pytest.CaptureFixture[str]) -> None:
    assert set(SCHEMA_KINDS) == set(KINDS)
    for kind in SCHEMA_KINDS:
        assert main(["schema", kind]) == 0
        assert json.loads(capsys.readouterr().out)["$schema"].startswith("http://json-schema.org/")
