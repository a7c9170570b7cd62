"""A stamped copy: the word on every page, the text beneath as it was, the same bytes each time."""

from __future__ import annotations

import io
from pathlib import Path

import pikepdf
import pytest

from generator.rendering.html import render_sheet
from generator.rendering.pdf import render_pdf
from generator.rendering.stamps import stamped
from generator.rendering.themes import load_theme
from tests.checkers.pdf_ua import loose_fonts, ua_failures
from tests.rendering import sample


@pytest.fixture(scope="module")
def sheet() -> bytes:
    return render_pdf(render_sheet(sample.card(), load_theme()), load_theme())


def test_each_page_carries_the_word_as_an_artefact(sheet: bytes) -> None:
    with (
        pikepdf.open(io.BytesIO(stamped(sheet, "SUPERSEDED"))) as copy,
        pikepdf.open(io.BytesIO(sheet)) as was,
    ):
        assert len(copy.pages) == len(was.pages)
        for page in copy.pages:
            first = page.Contents[0].read_bytes()
            assert first.startswith(b"/Artifact BMC q 0.86 g ") and first.endswith(b" f Q EMC")
            assert first.count(b" m ") >= len("SUPERSEDED")


def test_the_copy_stays_accessible_and_needs_no_further_font(sheet: bytes, tmp_path: Path) -> None:
    copy = tmp_path / "copy.pdf"
    copy.write_bytes(stamped(sheet, "SUPERSEDED"))
    assert ua_failures(copy) == ()
    assert loose_fonts(copy) == ()


def test_the_same_sheet_gives_the_same_copy(sheet: bytes) -> None:
    assert stamped(sheet, "SUPERSEDED") == stamped(sheet, "SUPERSEDED")


def test_bytes_that_are_no_pdf_are_refused() -> None:
    with pytest.raises(pikepdf.PdfError):
        stamped(b"C01", "SUPERSEDED")
