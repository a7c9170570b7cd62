"""The register as a chain: what is entered stands, whatever is done to it later is reported."""

from __future__ import annotations

import signal
import subprocess
import sys
from pathlib import Path

import pytest

from generator.problems import Problem, ProblemLog
from generator.register.book import BOOK, FOLDER, read_register
from generator.register.entering import enter
from generator.register.lines import HEADING, JOINT, Issued

REVISIONS = ("P01", "P02", "C01")


def issue(revision: str) -> Issued:
    return Issued(
        date="2026-11-19", number="ORR-MS-04", revision=revision, status="for comment", job="leaf",
        content=revision[-1] * 64, files="",
    )  # fmt: skip


def files(revision: str) -> dict[str, bytes]:
    return {"statement.html": f"<p>{revision}</p>".encode(), "inputs/methods/leaf.yaml": b"format: 1\n"}


@pytest.fixture
def methods(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder of methods with three issues."""
    monkeypatch.chdir(tmp_path)
    log = ProblemLog()
    for revision in REVISIONS:
        assert enter(Path("methods"), issue(revision), files(revision), log)
    assert list(log) == []
    return Path("methods")


def found(methods: Path) -> list[Problem]:
    log = ProblemLog()
    read_register(methods, log)
    return list(log)


def told(methods: Path) -> list[tuple[str, str, int, int]]:
    """Code, file, line and column of everything that is wrong."""
    spans = [(each.code, each.span) for each in found(methods)]
    return [(code, span.file, span.line, span.column) for code, span in spans if span]


def lines(methods: Path) -> list[str]:
    return (methods / FOLDER / BOOK).read_text().splitlines()


def rewrite(methods: Path, text: list[str]) -> None:
    (methods / FOLDER / BOOK).write_text("".join(f"{line}\n" for line in text))


def column(line: str, part: int) -> int:
    return len(JOINT.join(line.split(JOINT)[:part])) + len(JOINT) + 1


def test_what_was_issued_stands_in_order_and_whole(methods: Path) -> None:
    log = ProblemLog()
    register = read_register(methods, log)
    assert list(log) == []
    assert [line.issued.revision for line in register.lines] == list(REVISIONS)
    assert (register.folder / "ORR-MS-04-P01" / "statement.html").read_bytes() == b"<p>P01</p>"
    last = register.last("ORR-MS-04")
    assert last and last.issued.revision == "C01"


def test_a_person_can_read_a_line(methods: Path) -> None:
    heading, first, *_ = lines(methods)
    assert heading == HEADING
    assert first.startswith("2026-11-19 | ORR-MS-04 | P01 | for comment | leaf | ")


def test_the_list_of_an_issue_is_what_sha256sum_checks(methods: Path) -> None:
    folder = methods / FOLDER / "ORR-MS-04-P02"
    command = ["sha256sum", "--check", "--strict", "SHA256SUMS"]
    assert subprocess.run(command, cwd=folder, capture_output=True, check=False).returncode == 0


def test_a_line_taken_out_is_reported_at_the_next(methods: Path) -> None:
    text = lines(methods)
    rewrite(methods, [*text[:2], text[3]])
    book = "methods/register/register.txt"
    assert told(methods) == [
        ("register-folder-unknown", book, 3, 1),
        ("register-chain-broken", book, 3, column(text[3], 7)),
    ]


def test_the_last_line_taken_out_is_known_by_its_folder(methods: Path) -> None:
    rewrite(methods, lines(methods)[:3])
    (problem,) = found(methods)
    assert (problem.code, problem.values) == (
        "register-folder-unknown",
        {"folder": "methods/register/ORR-MS-04-C01"},
    )


def test_a_book_taken_away_is_known_by_the_folders(methods: Path) -> None:
    (methods / FOLDER / BOOK).unlink()
    assert [each.code for each in found(methods)] == ["register-folder-unknown"] * 3


def test_an_edited_line_is_reported(methods: Path) -> None:
    text = lines(methods)
    rewrite(methods, [*text[:2], text[2].replace("for comment", "for construction"), text[3]])
    assert told(methods) == [("register-line-changed", "methods/register/register.txt", 3, 1)]


def test_the_last_line_edited_is_reported(methods: Path) -> None:
    text = lines(methods)
    rewrite(methods, [*text[:3], text[3].replace("2026-11-19", "2026-11-18")])
    assert told(methods) == [("register-line-changed", "methods/register/register.txt", 4, 1)]


def test_lines_in_another_order_are_reported(methods: Path) -> None:
    text = lines(methods)
    rewrite(methods, [text[0], text[2], text[1], text[3]])
    codes = [(code, line) for code, _, line, _ in told(methods)]
    assert codes == [("register-chain-broken", number) for number in (2, 3, 4)]


@pytest.mark.parametrize("line", ["", "a note of my own", "2026-11-19 | ORR-MS-04"])
def test_what_is_no_line_is_reported(methods: Path, line: str) -> None:
    rewrite(methods, [*lines(methods), line])
    assert told(methods) == [("register-no-line", "methods/register/register.txt", 5, 1)]


def test_a_changed_file_is_named_at_its_line(methods: Path) -> None:
    (methods / FOLDER / "ORR-MS-04-P02" / "statement.html").write_text("<p>P03</p>")
    (problem,) = found(methods)
    assert (problem.code, problem.values) == (
        "register-file-changed",
        {"file": "methods/register/ORR-MS-04-P02/statement.html"},
    )
    assert told(methods)[0][1:] == ("methods/register/register.txt", 3, column(lines(methods)[2], 6))


def test_a_changed_file_with_its_list_made_to_fit_is_reported(methods: Path) -> None:
    folder = methods / FOLDER / "ORR-MS-04-P02"
    (folder / "statement.html").write_text("<p>P03</p>")
    made = subprocess.run(
        ["sha256sum", "inputs/methods/leaf.yaml", "statement.html"],
        cwd=folder,
        capture_output=True,
        check=True,
    )
    (folder / "SHA256SUMS").write_bytes(made.stdout)
    (problem,) = found(methods)
    assert problem.values == {"file": "methods/register/ORR-MS-04-P02/SHA256SUMS"}


def test_a_missing_and_an_added_file_are_reported(methods: Path) -> None:
    folder = methods / FOLDER / "ORR-MS-04-P01"
    (folder / "statement.html").rename(folder / "other.html")
    assert [(each.code, each.values["file"].rsplit("/", 1)[1]) for each in found(methods)] == [
        ("register-file-added", "other.html"),
        ("register-file-missing", "statement.html"),
    ]


def test_a_missing_folder_is_reported(methods: Path) -> None:
    (methods / FOLDER / "ORR-MS-04-P01").rename(methods / "elsewhere")
    (problem,) = found(methods)
    assert problem.code == "register-file-missing"
    assert problem.values == {"file": "methods/register/ORR-MS-04-P01/SHA256SUMS"}


def test_nothing_is_entered_into_a_register_at_fault(methods: Path) -> None:
    text = lines(methods)
    rewrite(methods, [*text[:2], text[3]])
    log = ProblemLog()
    assert not enter(methods, issue("C02"), files("C02"), log)
    assert log.has_errors
    assert lines(methods) == [*text[:2], text[3]]
    assert not (methods / FOLDER / "ORR-MS-04-C02").exists()


ISSUER = """
import os, signal, sys
from pathlib import Path
from generator.problems import ProblemLog
from generator.register.entering import enter
from generator.register.lines import Issued

methods, last = Path(sys.argv[1]), int(sys.argv[2])
TOUCHING = ("open", "os.rename", "os.remove", "os.rmdir", "os.mkdir", "os.listdir", "os.scandir",
            "shutil.rmtree", "fcntl.flock")
calls = 0

def watch(event, arguments):
    global calls
    if event in TOUCHING:
        calls += 1
        if calls == last:
            os.kill(os.getpid(), signal.SIGKILL)

issued = Issued(date="2026-11-19", number="ORR-MS-04", revision=sys.argv[3], status="for comment", job="leaf",
                content="0" * 64, files="")
if last:
    sys.addaudithook(watch)
assert enter(methods, issued, {"a.html": sys.argv[3].encode(), "inputs/b.yaml": b"x"}, ProblemLog())
"""


def issuer(methods: Path, last: int, revision: str) -> subprocess.CompletedProcess[str]:
    program = f"import sys; sys.path[:0] = {sys.path!r}\n{ISSUER}"
    command = [sys.executable, "-S", "-c", program, str(methods), str(last), revision]
    return subprocess.run(command, capture_output=True, text=True, timeout=60, check=False)


def test_a_kill_before_any_call_leaves_the_register_as_it_was_or_whole(tmp_path: Path) -> None:
    seen = set()
    for last in range(1, 200):
        methods = tmp_path / str(last)
        assert issuer(methods, 0, "P01").returncode == 0
        run = issuer(methods, last, "P02")
        log = ProblemLog()
        stands = [line.issued.revision for line in read_register(methods, log).lines]
        assert list(log) == [], f"killed before call {last}"
        if run.returncode == 0:
            break
        assert run.returncode == -signal.SIGKILL, run.stderr
        seen.add(tuple(stands))
        assert issuer(methods, 0, "C01").returncode == 0
        after = read_register(methods, log)
        assert list(log) == [], f"issued again after a kill before call {last}"
        assert [line.issued.revision for line in after.lines] == [*stands, "C01"]
        assert all((methods / FOLDER / line.issued.folder).is_dir() for line in after.lines)
    assert run.returncode == 0
    assert seen == {("P01",), ("P01", "P02")}
