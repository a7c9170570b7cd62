"""What is wrong in a firm's theme is told by file, line and column, and stops the publication."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.memory import Memory
from generator.model.folder import load_folder
from generator.pipeline.line import assess
from generator.problems import ProblemLog
from generator.publishing.crew import Crew
from generator.rendering.assets import page_style
from generator.rendering.contrast import contrast, luminance
from generator.rendering.dressing import theme_of
from generator.rendering.html import render_page
from generator.rendering.labels import language_of
from generator.rendering.templates import check_templates
from generator.rendering.themes import Theme, load_theme
from generator.shipped import shipped
from generator.wording.report import report_text
from tests.rendering import sample

BROKEN = Path(__file__).parent / "broken_themes"


def house(theme: str = "oak", accent: str = "") -> str:
    company = f'company:\n  name: Firm\n  accent: "{accent}"\n' if accent else ""
    return f"format: 1\n{company}theme: {theme}\n"


def folder_with(root: Path, rules: str, **files: str) -> Path:
    """A user's folder with house rules and the files of a theme called oak, a dot written as two strokes."""
    (root / "methods").mkdir()
    (root / "methods" / "house-rules.yaml").write_text(rules, encoding="utf-8")
    (root / "themes" / "oak").mkdir(parents=True)
    for name, text in files.items():
        (root / "themes" / "oak" / name.replace("__", ".")).write_text(text, encoding="utf-8")
    return root


def worn(folder: Path) -> tuple[Theme, str]:
    """The theme of a folder, and the report of its faults with the folder's name taken out."""
    log = ProblemLog()
    theme = theme_of(load_folder(folder, ProblemLog()).house, folder, log)
    return theme, report_text(log).replace(f"{folder.as_posix()}/", "")


@pytest.mark.parametrize("broken", sorted(BROKEN.iterdir()), ids=lambda path: path.name)
def test_each_fault_is_told_where_it_stands(broken: Path) -> None:
    expected = (broken / "report.txt").read_text(encoding="utf-8")
    assert worn(broken)[1] == expected
    assert ": error: " in expected


def test_a_fault_of_a_theme_forbids_publishing(tmp_path: Path) -> None:
    folder = folder_with(tmp_path, house("aok"))
    log = ProblemLog()
    with Crew(Memory(tmp_path / "memory", surroundings="test"), 1) as crew:
        assess(folder, log, crew)
    assert "theme-unknown" in {problem.code for problem in log}


def test_the_default_themes_templates_have_no_fault() -> None:
    log = ProblemLog()
    check_templates(load_theme(), Path(), log)
    assert report_text(log) == "No faults found.\n"


def test_own_colours_stand_after_the_defaults_and_only_on_screens(tmp_path: Path) -> None:
    own = "format: 1\ntokens:\n  light:\n    paper: '#ffffff'\n  dark:\n    paper: '#000000'\n"
    theme, report = worn(folder_with(tmp_path, house(), theme__yaml=own))
    assert report == "No faults found.\n"
    style = page_style(theme)
    light, dark = (f"(prefers-color-scheme: {mode}){{:root{{--paper:" for mode in ("light", "dark"))
    assert f"@media screen and {light}#ffffff;" in style
    assert f"@media screen and {dark}#000000;" in style
    assert style.index("--paper:#faf8f3") < style.index(light) < style.index("font:400")


def test_a_label_is_said_in_place_of_our_sentence(tmp_path: Path) -> None:
    own = 'format: 1\nlabels:\n  "What stops the job": "When we down tools"\n'
    theme, report = worn(folder_with(tmp_path, house(), theme__yaml=own))
    assert report == "No faults found.\n"
    page = render_page(sample.statement(), theme)
    assert "When we down tools" in page
    assert "What stops the job" not in page
    assert language_of(theme).say("What stops the job") == "When we down tools"
    assert language_of(theme).say("Call") == "Call"


def test_the_firms_colour_takes_the_place_of_the_blue_on_light_grounds(tmp_path: Path) -> None:
    theme, report = worn(folder_with(tmp_path, house(accent="#7A1F3D")))
    assert report == "No faults found.\n"
    assert theme.accent == "#7A1F3D"
    assert "light){:root{--blue:#7A1F3D;}}" in page_style(theme)


# Ratios worked out by the definition in WCAG 2.2; black on white is 21 there by construction.
@pytest.mark.parametrize(
    ("first", "second", "ratio"),
    [("#000000", "#ffffff", 21.0), ("#777777", "#ffffff", 4.478), ("#ffffff", "#767676", 4.542)],
)
def test_contrast_is_that_of_the_standard(first: str, second: str, ratio: float) -> None:
    assert contrast(first, second) == pytest.approx(ratio, abs=0.001)
    assert contrast(second, first) == contrast(first, second)
    assert luminance("#ffffff") == pytest.approx(1)


def test_every_shipped_theme_is_without_fault(tmp_path: Path) -> None:
    names = sorted(path.name for path in shipped("themes").iterdir() if path.is_dir())
    assert "default" in names
    folder = folder_with(tmp_path, house())
    for name in names:
        (folder / "methods" / "house-rules.yaml").write_text(house(name), encoding="utf-8")
        assert worn(folder)[1] == "No faults found.\n", name
