"""The default theme, and the sample documents laid out once for a whole run."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.documents.blocks import Status
from generator.rendering.assets import theme_assets
from generator.rendering.html import render_page, render_sheet
from generator.rendering.pdf import render_pdf
from generator.rendering.themes import Theme, load_theme
from tests.rendering import sample

DOCUMENTS = {
    "statement": sample.statement(),
    "draft": sample.statement(Status.DRAFT),
    "superseded": sample.statement(Status.SUPERSEDED),
    "guide": sample.guide(),
}


@pytest.fixture(scope="session")
def theme() -> Theme:
    """The theme that comes with the package."""
    return load_theme()


@pytest.fixture(scope="session")
def sheets(theme: Theme, tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    """Each sample document as a PDF file, by name."""
    folder = tmp_path_factory.mktemp("sheets")
    files = {name: folder / f"{name}.pdf" for name in DOCUMENTS}
    for name, document in DOCUMENTS.items():
        files[name].write_bytes(render_pdf(render_sheet(document, theme), theme))
    return files


@pytest.fixture(scope="session")
def pages(theme: Theme, tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    """Statement, guide and index as files of a small site with its assets."""
    folder = tmp_path_factory.mktemp("site")
    (folder / "assets").mkdir()
    for name, content in theme_assets(theme).items():
        (folder / "assets" / name).write_bytes(content)
    files = {}
    for document in (sample.statement(), sample.guide(), sample.index()):
        files[document.kind] = folder / f"{document.kind}.html"
        files[document.kind].write_text(render_page(document, theme), encoding="utf-8")
    return files
