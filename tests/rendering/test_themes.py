"""Where themes, fonts and drawings come from."""

from __future__ import annotations

import io
from dataclasses import replace
from pathlib import Path

import pytest
from fontTools.ttLib import TTFont

from generator.rendering.assets import theme_assets
from generator.rendering.fonts import FACES, WEB_FACES, Face, web_fonts
from generator.rendering.html import render_page
from generator.rendering.pictures import inline_svg
from generator.rendering.themes import Theme, ThemeMissing, load_theme, theme_folder
from tests.rendering import sample


def own_theme(root: Path, **files: str) -> Theme:
    folder = root / "themes" / "mine"
    folder.mkdir(parents=True)
    for name, text in files.items():
        (folder / name.replace("_", ".")).write_text(text, encoding="utf-8")
    return load_theme("mine", root)


def test_a_users_theme_overrides_one_file_and_leaves_the_rest(tmp_path: Path) -> None:
    theme = own_theme(tmp_path, tokens_css=":root { --ink: #000 }")
    assert theme.text("tokens.css") == ":root { --ink: #000 }"
    assert theme.file("screen.css") == load_theme().file("screen.css")


def test_a_users_template_can_use_the_shipped_ones(tmp_path: Path) -> None:
    theme = own_theme(tmp_path, index_html='{% extends "screen.html" %}{% block kind %}Ours{% endblock %}')
    assert "<span>Ours</span>" in render_page(sample.index(), theme)


def test_a_missing_theme_names_those_there_are(tmp_path: Path) -> None:
    own_theme(tmp_path)
    with pytest.raises(ThemeMissing) as missing:
        theme_folder("oak", tmp_path)
    assert (missing.value.name, missing.value.known) == ("oak", ("default", "mine", "workshop"))


def test_every_face_is_installed() -> None:
    assert [face.name for face in FACES if not face.path.is_file()] == []


@pytest.mark.parametrize("face", WEB_FACES, ids=lambda face: face.name)
def test_web_subsets_hold_the_trades_signs_and_tabular_figures(face: Face) -> None:
    font = TTFont(io.BytesIO(web_fonts()[face.web_name]))
    assert set("0123456789−×≤≥°½±’–²³£") <= {chr(point) for point in font.getBestCmap()}
    assert "tnum" in {record.FeatureTag for record in font["GSUB"].table.FeatureList.FeatureRecord}


def test_a_page_with_all_it_asks_for_weighs_under_300_kb(theme: Theme) -> None:
    further = {face.further_name for face in WEB_FACES}
    assets = theme_assets(theme)
    assert further < assets.keys()
    shared = sum(len(content) for name, content in assets.items() if name not in further)
    assert shared + len(render_page(sample.statement(), theme).encode()) < 300_000


def test_nothing_a_page_uses_comes_from_outside(theme: Theme) -> None:
    style = theme_assets(theme)["page.css"].decode()
    assert "//" not in style.replace("/*", "")
    script = theme_assets(theme)["page.js"].decode()
    assert "://" not in script


def test_an_inlined_drawing_has_its_own_ids_and_says_its_words() -> None:
    drawn = inline_svg(replace(sample.section_picture(), alt="Packer < 9 mm"), "figure-3")
    assert 'aria-labelledby="figure-3-words"' in drawn
    assert '<title id="figure-3-words">Packer &lt; 9 mm</title>' in drawn
    assert 'id="figure-3-edge"' in drawn
    assert 'clip-path="url(#figure-3-edge)"' in drawn
    assert 'width="175mm"' not in drawn


def test_a_drawing_without_a_view_box_is_refused() -> None:
    with pytest.raises(ValueError, match="viewBox"):
        inline_svg(replace(sample.section_picture(), svg="<svg></svg>"), "x")
