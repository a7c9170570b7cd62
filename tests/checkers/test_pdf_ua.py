"""The PDF checkers bite: each broken sample fails by the rule it breaks, and the sound one passes."""

from __future__ import annotations

from pathlib import Path

import pikepdf
import pytest
from weasyprint import HTML

from tests.checkers.findings import listed
from tests.checkers.pdf_ua import (
    Facts,
    facts,
    loose_fonts,
    orphaned_headings,
    outside_links,
    syntax_failures,
    text_of,
    ua_failures,
)

SQUARE = "data:image/svg+xml,%3Csvg xmlns='http://www.w3.org/2000/svg' width='9' height='9'/%3E"
SOUND = f"""<!doctype html><html lang="en-GB"><head><title>Method SF-07</title></head><body>
<h1>Method</h1><h2>Sizes</h2><p>Quirk 5 mm.</p><img src="{SQUARE}" alt="A square of 9 px">
<p><a href="https://example.com/away">Away</a></p></body></html>"""


def printed(folder: Path, html: str, variant: str | None = "pdf/ua-1") -> Path:
    file = folder / "sample.pdf"
    HTML(string=html).write_pdf(file, pdf_variant=variant)
    return file


def broken_rules(file: Path) -> set[str]:
    return {finding.rule for finding in ua_failures(file)}


def test_a_sound_file_passes(tmp_path: Path) -> None:
    file = printed(tmp_path, SOUND)
    assert listed(ua_failures(file)) == ""
    assert listed(syntax_failures(file)) == ""
    assert listed(loose_fonts(file)) == ""


def test_a_file_without_tags_fails(tmp_path: Path) -> None:
    assert "PDFUA1-TAGGED-DOCUMENT-001" in broken_rules(printed(tmp_path, SOUND, variant=None))


@pytest.mark.parametrize(
    ("sound", "broken", "rule"),
    [
        (' alt="A square of 9 px"', "", "PDFUA1-FIGURE-ALTERNATIVE-TEXT-001"),
        ("<h2>Sizes</h2>", "<h3>Sizes</h3>", "PDFUA1-HEADING-NESTING-001"),
        ("<title>Method SF-07</title>", "", "PDFUA1-METADATA-TITLE-001"),
        (' lang="en-GB"', "", "PDFUA1-LANGUAGE-TAG-001"),
    ],
)
def test_one_fault_breaks_its_own_rule(tmp_path: Path, sound: str, broken: str, rule: str) -> None:
    assert SOUND.count(sound) == 1
    assert rule in broken_rules(printed(tmp_path, SOUND.replace(sound, broken)))


def test_a_torn_file_fails_the_syntax_check(tmp_path: Path) -> None:
    file = printed(tmp_path, SOUND)
    file.write_bytes(file.read_bytes()[:-200])
    (finding,) = syntax_failures(file)
    assert finding.where == "sample.pdf"
    assert finding.rule in ("qpdf exit 2", "qpdf exit 3")


def test_a_font_left_out_is_named(tmp_path: Path) -> None:
    file = tmp_path / "loose.pdf"
    with pikepdf.new() as pdf:
        page = pdf.add_blank_page(page_size=(595, 842))
        font = pikepdf.Dictionary(
            Type=pikepdf.Name.Font, Subtype=pikepdf.Name.Type1, BaseFont=pikepdf.Name.Helvetica
        )
        page.obj.Resources = pikepdf.Dictionary(Font=pikepdf.Dictionary(F1=pdf.make_indirect(font)))
        page.obj.Contents = pdf.make_stream(b"BT /F1 12 Tf 72 700 Td (Quirk) Tj ET")
        pdf.save(file)
    assert listed(loose_fonts(file)) == "loose.pdf: [font not embedded] Helvetica"


def test_facts_are_read(tmp_path: Path) -> None:
    file = printed(tmp_path, SOUND.replace("<head>", "<head><style>@page{size:A4}</style>"))
    assert facts(file) == Facts(
        title="Method SF-07", language="en-GB", tagged=True, pages=1, sizes=((210.0, 297.0),), bookmarks=1
    )
    assert "Quirk 5 mm." in text_of(file)
    assert outside_links(file) == ("https://example.com/away",)


def test_a_heading_left_at_the_foot_of_a_page_is_found(tmp_path: Path) -> None:
    body = "<h1>Method</h1><p>One.</p><h2>Sizes</h2><p style='break-before: page'>Quirk 5 mm.</p>"
    sheet = f"<!doctype html><html lang='en-GB'><head><title>T</title></head><body>{body}</body></html>"
    style = "<style>h2 { break-after: auto; bookmark-level: 2 }</style>"
    assert orphaned_headings(printed(tmp_path, sheet.replace("</head>", f"{style}</head>"))) == ("Sizes",)
    assert orphaned_headings(printed(tmp_path, SOUND)) == ()
