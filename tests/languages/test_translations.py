"""A method in another language: what is shown, what is marked English, and what is reported."""

from __future__ import annotations

import gettext
import re
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from generator.documents.task import Task
from generator.drawings.words import say, spoken
from generator.model.folder import Project, load_folder
from generator.model.reading import describe
from generator.model.translations import Translation, TranslationFile, check_translation
from generator.pipeline.editions import editions, guide_in
from generator.problems import ProblemLog
from generator.reading.yaml_nodes import parse_yaml
from generator.rendering.languages import with_languages
from generator.rendering.themes import Theme
from generator.shipped import shipped
from generator.wording import ENGLISH, AsEnglish, Language
from generator.wording.languages import language
from generator.wording.marks import capital, marked, parted, unmarked, without_end
from generator.wording.report import report_text

FILE = "methods/languages/pl/architrave-set-back-frame.yaml"


@pytest.fixture(scope="module")
def page(guide: Task, theme: Theme) -> str:
    return guide_in(language("pl"), guide, "guide-architrave-set-back-frame", ("pl",), theme)


@pytest.fixture
def changed(demonstration: Project) -> Callable[[str, str], str]:
    """Change a line of the demonstration's translation and give the report."""
    text = (demonstration.folder / FILE).read_text(encoding="utf-8")

    def change(old: str, new: str) -> str:
        assert old in text
        log = ProblemLog()
        node = parse_yaml(text.replace(old, new, 1), FILE, log)
        read, method = node and describe(TranslationFile, node, log), demonstration.method("SF-07")
        assert read and method
        check_translation(Translation(tag="pl", file=read), method, log)
        return report_text(log)

    return change


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A folder with one translated method and the house rules."""
    methods = shipped("methods")
    for name in ("house-rules.yaml", "architrave-set-back-frame.yaml"):
        (tmp_path / "methods").mkdir(exist_ok=True)
        shutil.copy(methods / name, tmp_path / "methods" / name)
    for name in ("catalogue", "languages"):
        shutil.copytree(methods / name, tmp_path / "methods" / name)
    return tmp_path


def loaded(folder: Path) -> str:
    log = ProblemLog()
    load_folder(folder, log)
    return report_text(log)


def test_a_page_names_its_language_and_what_of_it_is_english(page: str) -> None:
    assert '<html lang="pl"' in page
    assert ">Opaska drzwiowa przy ościeżnicy cofniętej względem tynku<" in page
    assert 'lang="en">Glue holds to wood, not to paint.' in page
    assert not re.search(r"[\ufdd0\ufdd1]", page)


def test_the_notice_stands_first_in_both_languages(page: str) -> None:
    notice, heading = page.index('class="translated"'), page.index("<h1")
    assert notice < heading
    told = page[notice:heading]
    assert "<strong>Tłumaczenie.</strong> Nie sprawdziła go żadna osoba" in told
    assert '<p lang="en"><strong>Translation.</strong> No fluent safety reader has reviewed it.' in told


def test_a_length_keeps_its_point_and_an_ordinary_figure_takes_the_comma(page: str) -> None:
    assert re.search(r"w górę do następnej wielokrotności <[^>]*>0\.5 mm<", page)
    assert language("pl").figures("2.5") == "2,5"


def test_the_arithmetic_stands_in_the_english_guide_alone(page: str) -> None:
    assert 'href="../guide-architrave-set-back-frame.html#annex-workings">' in page
    assert 'id="workings"' not in page
    assert not re.search(r"\d,\d+ mm\b", page)


def test_drawings_speak_the_language_of_the_page(page: str) -> None:
    assert ">Szczegół X, " in page


def test_a_drawing_that_lacks_one_word_is_english_whole() -> None:
    catalogue = gettext.NullTranslations()
    catalogue.add_fallback(AsEnglish())
    wordless = Language(tag="pl", catalogue=catalogue)
    said, spoken_in = spoken(lambda: say("clear height %(text)s", text="1990"), wordless)
    assert (said, spoken_in) == ("clear height 1990", ENGLISH)
    assert spoken(lambda: say("leaf"), language("pl")) == ("skrzydło", language("pl"))


def test_each_edition_leads_to_the_others() -> None:
    here, there = editions("guide.html", ("pl",)), editions("guide.html", ("pl",), language("pl"))
    assert [(one.tag, one.href, one.here) for one in here] == [
        ("en-GB", "guide.html", True),
        ("pl", "pl/guide.html", False),
    ]
    assert [(one.tag, one.href, one.here) for one in there] == [
        ("en-GB", "../guide.html", False),
        ("pl", "../pl/guide.html", True),
    ]
    assert editions("guide.html", ()) == ()


def test_a_sentence_that_was_changed_is_english_again_with_a_warning(
    changed: Callable[[str, str], str],
) -> None:
    said = changed("english: Mark the first quirk\n", "english: Mark the quirk first\n")
    assert re.search(rf"{FILE}:\d+:14: warning: This English stands nowhere in SF-07", said)
    assert "The nearest there: “Mark the first quirk”" in said


def test_a_value_that_the_english_has_not_is_refused_at_its_place(changed: Callable[[str, str], str]) -> None:
    said = changed("wielokrotności {ripping_step} (", "wielokrotności {rip_step} (")
    assert re.search(rf"{FILE}:\d+:\d+: error: {{rip_step}} does not stand in the English sentence\.", said)
    assert "Its values are: {ripping_step}, {packer_thickness}." in said


def test_a_value_that_was_left_out_is_refused(changed: Callable[[str, str], str]) -> None:
    said = changed("z dokładnością do {= 0.5 mm} w", "z dokładnością w")
    assert "error: The values of the translation are not those of the English sentence." in said
    assert "Each must stand as often as in the English: {= 0.5 mm}." in said


def test_an_unknown_method_is_refused(folder: Path) -> None:
    file = folder / FILE
    file.write_text(
        file.read_text(encoding="utf-8").replace("method: SF-07", "method: SF-77"), encoding="utf-8"
    )
    assert f"{FILE}:2:9: error: No method has the number “SF-77”." in loaded(folder)


def test_a_folder_of_a_language_that_nobody_speaks_is_refused(folder: Path) -> None:
    (folder / "methods" / "languages" / "pl").rename(folder / "methods" / "languages" / "cy")
    assert "error: The folder “cy” names no language that the tool speaks." in loaded(folder)


def test_a_language_that_nobody_speaks_is_refused_in_the_house_rules(folder: Path) -> None:
    house = folder / "methods" / "house-rules.yaml"
    house.write_text(house.read_text(encoding="utf-8").replace("languages: [pl]", "languages: [cy]"))
    assert "error: “cy” is not one of the choices." in loaded(folder)


def test_marks_outlive_what_is_done_to_a_text() -> None:
    text = marked("low. Because it is.\n\nMore")
    assert unmarked(text) == "low. Because it is.\n\nMore"
    assert parted(marked("low. Because."), ". ") == (marked("low"), marked("Because."))
    assert capital(marked("low")) == marked("Low")
    assert without_end(marked("low."), ".") == marked("low")


def test_a_mark_left_open_is_a_fault_and_never_a_page() -> None:
    assert with_languages(f"<p>{marked('some words')}</p>") == '<p lang="en">some words</p>'
    assert with_languages(f'<a title="{marked("words")}">x</a>') == '<a title="words">x</a>'
    with pytest.raises(ValueError, match="left open"):
        with_languages(f"<p>{marked('words')[:-1]}</p>")
