"""Published bytes depend on the input alone: not on hash seeds, time zones, processes, folders or memory."""

from __future__ import annotations

import hashlib
from pathlib import Path

from tests.checkers.findings import Finding, listed
from tests.checkers.publication import GIVEN, Published, contents, publish_demo

ELSEWHERE = {"PYTHONHASHSEED": "7", "TZ": "Pacific/Chatham", "LC_ALL": "C", "COLUMNS": "40"}
CHECKSUM_BYTES = hashlib.sha256().digest_size


def remember_some_sheets(whole: Path, kept: Path) -> tuple[int, int]:
    """Copy printed sheets, but for each third, into a memory that holds nothing else; give both counts."""
    sheets = sorted(
        entry for entry in whole.glob("*/*") if entry.read_bytes()[CHECKSUM_BYTES:].startswith(b"%PDF-")
    )
    copied = [sheet for place, sheet in enumerate(sheets) if place % 3]
    for sheet in copied:
        target = kept / sheet.parent.name / sheet.name
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(sheet.read_bytes())
    return len(sheets), len(copied)


def test_another_publication_of_the_same_input_has_the_same_bytes(
    published: Published, tmp_path: Path
) -> None:
    """All is worked out, drawn and composed anew elsewhere, and a third of the sheets printed anew."""
    folder = tmp_path / "elsewhere"
    printed, remembered = remember_some_sheets(published.folder / "cache", folder / "cache")
    assert printed - remembered >= 6
    again = publish_demo(folder, published.folder / GIVEN, "--workers", "1", **ELSEWHERE)
    first, second = contents(published.site), contents(again.site)
    names = sorted(name for name in first | second if first.get(name) != second.get(name))
    assert (
        listed(Finding(where=name, rule="other bytes", says="differs or is missing") for name in names) == ""
    )


def test_the_inputs_are_left_as_they_were(published: Published) -> None:
    assert contents(published.folder / "methods") == contents(published.folder / GIVEN)
