"""The HTML checker bites."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.checkers.nu import nu_messages

SOUND = (
    '<!doctype html><html lang="en-GB"><head><title>Quirk</title></head>'
    "<body><main><h1>Quirk</h1></main></body></html>"
)


def test_each_fault_is_reported_once_with_its_place(tmp_path: Path) -> None:
    sound, broken = tmp_path / "sound.html", tmp_path / "broken.html"
    sound.write_text(SOUND, encoding="utf-8")
    broken.write_text(
        SOUND.replace("</h1>", "</h1>\n<img src='a.png'><p id='x'>1</p><p id='x'>2</p>"), encoding="utf-8"
    )
    found = nu_messages([sound, broken])
    assert [(finding.where.split(":")[0], finding.rule) for finding in found] == [
        ("broken.html", "error"),
        ("broken.html", "error"),
        ("broken.html", "warning"),
    ]
    assert "alt" in found[0].says
    assert found[0].where == "broken.html:2:1"
    assert "Duplicate ID" in found[1].says


def test_a_style_sheet_is_checked_too(tmp_path: Path) -> None:
    sheet = tmp_path / "look.css"
    sheet.write_text("p { colour: blue }", encoding="utf-8")
    (finding,) = nu_messages([sheet])
    assert "colour" in finding.says


def test_no_page_at_all_is_an_error() -> None:
    with pytest.raises(ValueError, match="no page"):
        nu_messages([])
