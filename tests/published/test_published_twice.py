"""Published bytes depend on the input alone: not on hash seeds, time zones, processes, folders or memory."""

from __future__ import annotations

from hashlib import sha256
from pathlib import Path

from tests.checkers.findings import Finding, listed
from tests.published.conftest import GIVEN, Published, publish_demo, storeyrod


def contents(site: Path) -> dict[str, str]:
    """Give a hash of every file of a site by its path."""
    files = [file for file in site.rglob("*") if file.is_file()]
    return {file.relative_to(site).as_posix(): sha256(file.read_bytes()).hexdigest() for file in files}


def test_another_publication_of_the_same_input_has_the_same_bytes(
    published: Published, tmp_path: Path
) -> None:
    elsewhere = {"PYTHONHASHSEED": "7", "TZ": "Pacific/Chatham", "LC_ALL": "C", "COLUMNS": "40"}
    again = publish_demo(tmp_path / "elsewhere", published.folder / GIVEN, "--workers", "1", **elsewhere)
    first, second = contents(published.site), contents(again.site)
    names = sorted(name for name in first | second if first.get(name) != second.get(name))
    assert (
        listed(Finding(where=name, rule="other bytes", says="differs or is missing") for name in names) == ""
    )


def test_publishing_again_writes_nothing(published: Published) -> None:
    before = {file: file.stat().st_mtime_ns for file in sorted(published.site.resolve().rglob("*"))}
    done = storeyrod("publish", str(published.folder), cache=published.folder / "cache")
    assert done.returncode == 0, done.stderr
    assert {file: file.stat().st_mtime_ns for file in sorted(published.site.resolve().rglob("*"))} == before


def test_the_inputs_are_left_as_they_were(published: Published) -> None:
    assert contents(published.folder / "methods") == contents(published.folder / GIVEN)
