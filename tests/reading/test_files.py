"""Bytes to text: encoding, size, and files that are not there."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.problems import ProblemLog
from generator.reading.files import read_text
from generator.reading.limits import MOST_BYTES
from generator.wording.report import report_text


def reported(path: Path) -> str:
    log = ProblemLog()
    assert read_text(path, "methods/m.yaml", log) is None
    return report_text(log)


def test_a_missing_file_is_reported(tmp_path: Path) -> None:
    assert reported(tmp_path / "m.yaml") == (
        "methods/m.yaml:1:1: error: There is no file here.\n"
        "    Check the spelling of the path and the folder it is given from.\n"
        "\n"
        "1 error in 1 file\n"
    )


def test_a_folder_is_not_a_file(tmp_path: Path) -> None:
    assert reported(tmp_path) == (
        "methods/m.yaml:1:1: error: The file cannot be read: Is a directory.\n"
        "    Expected a text file that you may open.\n"
        "\n"
        "1 error in 1 file\n"
    )


def test_a_file_over_the_limit_is_not_read(tmp_path: Path) -> None:
    file = tmp_path / "m.yaml"
    file.write_bytes(b"#" * (MOST_BYTES + 1))
    assert reported(file) == (
        "methods/m.yaml:1:1: error: The file is larger than 1,000,000 bytes and is not read.\n"
        "    A method, a job or a survey is a few hundred lines of text. Check that this is the right file.\n"
        "\n"
        "1 error in 1 file\n"
    )


def test_a_file_at_the_limit_is_read(tmp_path: Path) -> None:
    file = tmp_path / "m.yaml"
    file.write_bytes(b"#" * MOST_BYTES)
    log = ProblemLog()
    assert read_text(file, "m.yaml", log) == "#" * MOST_BYTES
    assert list(log) == []


def test_a_wrong_byte_is_named_with_its_place_and_likely_letter(tmp_path: Path) -> None:
    file = tmp_path / "m.yaml"
    file.write_bytes("a: é\r\nprice: ".encode() + b"\xa34 each\n")
    assert reported(file) == (
        "methods/m.yaml:2:8: error: The byte 0xA3 on line 2 is not UTF-8. "
        "It looks like “£” saved as Windows-1252.\n"
        "    price: �4 each\n"
        "           ^\n"
        "    Open the file in the editor and save it again with the encoding UTF-8.\n"
        "\n"
        "1 error in 1 file\n"
    )


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_every_kind_of_line_end_reads_alike(tmp_path: Path, end: str) -> None:
    file = tmp_path / "m.yaml"
    file.write_bytes(f"a: 1{end}b: 2{end}".encode())
    assert read_text(file, "m.yaml", ProblemLog()) == "a: 1\nb: 2\n"
