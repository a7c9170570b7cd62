"""A firm's logo: what may stand for one, and where it is printed."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from generator.model.folder import load_folder
from generator.problems import ProblemLog
from generator.rendering.html import render_page, render_sheet
from generator.rendering.logos import MOST_BYTES, check_logo, logo_address
from generator.rendering.themes import Theme
from generator.wording.report import report_text
from tests.rendering import sample

SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">{}</svg>'
RULES = "format: 1\ncompany:\n  name: Firm & Daughter\n  logo: {}\n"


def told(root: Path, content: bytes, named: str = "mark.svg", written: str = "mark.svg") -> str:
    methods = root / "methods"
    methods.mkdir()
    (methods / "house-rules.yaml").write_text(RULES.format(written), encoding="utf-8")
    (methods / named).write_bytes(content)
    log = ProblemLog()
    check_logo(load_folder(root, ProblemLog()).house.company, methods, log)
    return report_text(log)


@pytest.mark.parametrize(
    ("drawn", "why"),
    [
        ("<script>1</script>", "<script>"),
        ('<a href="https://example.org"><path d="M0 0"/></a>', "<a>"),
        ('<path onclick="1" d="M0 0"/>', "onclick="),
        ('<path fill="url(https://example.org/x.svg#a)" d="M0 0"/>', "fill="),
        ('<image href="x.png"/>', "<image>"),
        ("<style>@import 'x.css';</style>", "<style>"),
        ("<path", "not well-formed"),
    ],
)
def test_a_logo_that_is_more_than_a_picture_is_refused(tmp_path: Path, drawn: str, why: str) -> None:
    report = told(tmp_path, SVG.format(drawn).encode())
    assert f"house-rules.yaml:4:9: error: The logo mark.svg cannot be used: it has {why}" in report


def test_a_logo_that_is_missing_or_heavy_or_no_png_is_refused(tmp_path: Path) -> None:
    for name in ("missing", "heavy", "no-png"):
        (tmp_path / name).mkdir()
    missing = told(tmp_path / "missing", SVG.format("").encode(), written="mrak.svg")
    assert "There is no picture called “mrak.svg”" in missing
    assert "Did you mean “mark.svg”?" in missing
    assert "has 50001 bytes" in told(tmp_path / "heavy", b"x" * (MOST_BYTES + 1))
    assert "it has no PNG signature" in told(tmp_path / "no-png", b"GIF89a", "mark.png", "mark.png")


def test_a_plain_picture_is_taken_whole(tmp_path: Path) -> None:
    assert told(tmp_path, SVG.format('<path d="M0 0h9"/>').encode()) == "No faults found.\n"
    company = load_folder(tmp_path, ProblemLog()).house.company
    assert logo_address(company, tmp_path / "methods").startswith("data:image/svg+xml;base64,PHN2Zy")
    assert logo_address(None, tmp_path) == ""


def test_the_logo_stands_on_a_statements_page_and_sheet_under_the_firms_name(theme: Theme) -> None:
    document = replace(sample.statement(), logo="data:image/png;base64,AAAA", company="Firm & Daughter")
    for laid in (render_page(document, theme), render_sheet(document, theme)):
        assert laid.count('src="data:image/png;base64,AAAA" alt="Firm &amp; Daughter"') == 1
    assert 'class="logo"' not in render_page(sample.guide(), theme)
