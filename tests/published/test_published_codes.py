"""A code on paper leads to the page it was printed from, and stands there only where the house has a site."""

from __future__ import annotations

import json
import subprocess
from dataclasses import replace
from pathlib import Path

import pytest
import zxingcpp
from PIL import Image

from generator.model.folder import load_folder
from generator.pipeline.compositions import compose
from generator.pipeline.inputs import read_inputs
from generator.pipeline.pairs import Pair, pairs_of
from generator.problems import ProblemLog
from generator.rendering.themes import load_theme
from tests.checkers.publication import Published

SITE = "https://hethersedge.example/methods"


def _codes(sheet: Path, folder: Path) -> list[str]:
    """What a reader of codes, told nothing of how they were made, reads on the first page."""
    picture = folder / sheet.stem
    subprocess.run(["pdftoppm", "-r", "200", "-l", "1", "-png", "-singlefile", sheet, picture], check=True)
    return [code.text for code in zxingcpp.read_barcodes(Image.open(picture.with_suffix(".png")))]


@pytest.mark.parametrize("kind", ["statement", "guide"])
def test_a_printed_code_leads_to_the_page_of_its_own_sheet(
    published: Published, tmp_path: Path, kind: str
) -> None:
    sheets = [sheet for sheet in published.sheets if sheet.name.startswith(kind)]
    assert len(sheets) >= 2
    read = {sheet.name: _codes(sheet, tmp_path) for sheet in sheets}
    assert read == {sheet.name: [f"{SITE}/{sheet.stem}.html"] for sheet in sheets}
    assert all((published.site / f"{sheet.stem}.html").is_file() for sheet in sheets)


def _first_job(folder: Path) -> Pair:
    pairs = pairs_of(load_folder(folder, ProblemLog()), read_inputs(folder), load_theme())
    return next(pair for pair in pairs if pair.job)


def test_without_a_site_nothing_pretends(published: Published) -> None:
    pair = _first_job(published.folder)
    company = pair.project.house.company
    assert company is not None
    house = pair.project.house.model_copy(update={"company": company.model_copy(update={"site": None})})
    bare = replace(pair, project=replace(pair.project, house=house))
    assert 'class="code"' in json.loads(compose(pair))["sheet"]
    assert 'class="code"' not in json.loads(compose(bare))["sheet"]
