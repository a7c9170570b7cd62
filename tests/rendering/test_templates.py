"""Templates and blocks belong together, escape what they are given, and leave no word untranslated."""

from __future__ import annotations

import gettext
import pickle
import re
from dataclasses import fields, is_dataclass, replace
from enum import Enum
from pathlib import Path
from typing import get_args

import pytest
from jinja2 import Environment
from markupsafe import escape

from generator.documents import blocks
from generator.documents.blocks import Document
from generator.rendering.html import DoubledAnchor, macro_name, render_page, render_sheet
from generator.rendering.template_faults import TemplateFails
from generator.rendering.themes import Theme, load_theme
from generator.wording import Language
from tests.rendering import sample

MACRO = re.compile(r"\{%-? macro (\w+)\(")
KINDS = {macro_name(kind): kind for kind in vars(blocks).values() if is_dataclass(kind)}
# Parts of other blocks that are set by the block they stand in.
SET_BY_THEIR_BLOCK = {
    "document",
    "link",
    "edition",
    "fact",
    "person",
    "column",
    "issue",
    "signatory",
    "hazard_touched",
    "origin",
}
PAGES = (sample.statement(), sample.guide(), sample.index())
SAMPLES = (*PAGES, sample.card(), sample.tutor())


def macros(theme: Theme) -> list[str]:
    return MACRO.findall(theme.text("blocks.html"))


def test_every_block_kind_has_a_macro_of_its_name(theme: Theme) -> None:
    assert {macro_name(kind) for kind in get_args(blocks.Block)} <= set(macros(theme))


def test_every_macro_sets_a_dataclass_of_its_name_and_every_dataclass_is_set(theme: Theme) -> None:
    assert sorted(macros(theme)) == sorted(set(KINDS) - SET_BY_THEIR_BLOCK)


def test_the_samples_hold_every_kind_of_block() -> None:
    held = {type(block) for document in SAMPLES for block in blocks.every_block(document.blocks)}
    assert held == set(get_args(blocks.Block))


@pytest.mark.parametrize("name", sorted(KINDS))
def test_blocks_are_frozen_slotted_and_keyword_only(name: str) -> None:
    kind = KINDS[name]
    assert kind.__dataclass_params__.frozen
    assert "__slots__" in vars(kind)
    assert all(field.kw_only for field in fields(kind))


SCRIPT = "<script>alert('7 mm')</script>"
# Anchors and addresses are made by the composition and never by a user.
NOT_PROSE = {"key", "href", "kind", "lang", "align", "name_of_file"}


def poisoned(value: object, name: str = "") -> object:
    """The value with a script in every text of it."""
    if isinstance(value, Enum) or name in NOT_PROSE:
        return value
    if isinstance(value, str):
        return f"{value} {SCRIPT}"
    if isinstance(value, tuple):
        return tuple(poisoned(item, name) for item in value)
    if isinstance(value, sample.SamplePicture):
        return replace(value, title=f"{value.title} {SCRIPT}", alt=f"{value.alt} {SCRIPT}")
    if is_dataclass(value) and not isinstance(value, type):
        return replace(value, **{f.name: poisoned(getattr(value, f.name), f.name) for f in fields(value)})
    return value


@pytest.mark.parametrize("document", PAGES, ids=lambda document: document.kind)
def test_markup_in_any_text_is_escaped_on_the_page(document: Document, theme: Theme) -> None:
    page = render_page(poisoned(document), theme)
    assert "<script>alert" not in page
    assert page.count("&lt;script&gt;alert") > 50 or document.kind == "index"
    assert "&lt;script&gt;alert" in page


@pytest.mark.parametrize(
    "document", [*PAGES[:2], sample.card(), sample.tutor()], ids=lambda document: document.kind
)
def test_markup_in_any_text_is_escaped_on_the_sheet(document: Document, theme: Theme) -> None:
    sheet = render_sheet(poisoned(replace(document, address="")), theme)
    assert "<script" not in sheet
    assert sheet.count("&lt;script&gt;alert") > 15


def test_an_unknown_name_in_a_template_is_an_error(tmp_path: Path) -> None:
    own = tmp_path / "themes" / "mine"
    own.mkdir(parents=True)
    (own / "guide.html").write_text("{{ document.title }} {{ nowhere }}", encoding="utf-8")
    with pytest.raises(TemplateFails) as failed:
        render_page(sample.guide(), load_theme("mine", tmp_path))
    problem = pickle.loads(pickle.dumps(failed.value)).problem
    assert "nowhere" in problem.values["reason"]
    assert (Path(problem.span.file).name, problem.span.line) == ("guide.html", 1)


def test_two_blocks_with_one_key_are_refused(theme: Theme) -> None:
    guide = sample.guide()
    with pytest.raises(DoubledAnchor, match=r"^words$"):
        render_page(replace(guide, blocks=(*guide.blocks, sample.GLOSSARY)), theme)


TEMPLATES = (
    "blocks.html",
    "pieces.html",
    "screen.html",
    "paper.html",
    "statement.html",
    "guide.html",
    "index.html",
    "card.html",
    "tutor.html",
)
TAG = re.compile(r"<[^>]*>?|^[^<]*>", re.DOTALL)
READ_ALOUD = re.compile(r'\b(?:alt|title|aria-label|placeholder)="([^"{]*[A-Za-z][^"]*)"')


@pytest.mark.parametrize("name", TEMPLATES)
def test_every_word_of_a_template_goes_through_gettext(name: str, theme: Theme) -> None:
    source = theme.text(name)
    bare = re.sub(r"\{#.*?#\}", "", source, flags=re.DOTALL)
    bare = re.sub(r"\{\{.*?\}\}|\{%.*?%\}", "", bare, flags=re.DOTALL)
    words = re.findall(r"[A-Za-z]{2,}", re.sub(r"<style>.*?</style>", "", TAG.sub(" ", bare)))
    assert words == []
    assert READ_ALOUD.findall(source) == []


def test_the_check_for_bare_words_bites() -> None:
    assert re.findall(r"[A-Za-z]{2,}", TAG.sub(" ", '<p class="x">Released by</p>')) == ["Released", "by"]


class Shouting(gettext.NullTranslations):
    """A catalogue that marks each sentence it was asked for."""

    def gettext(self, message: str) -> str:
        return f"«{message}»"

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        return f"«{msgid1 if n == 1 else msgid2}»"


def test_the_words_of_the_page_come_from_the_catalogue(theme: Theme) -> None:
    page = render_page(sample.statement(), theme, Language(tag="xx", catalogue=Shouting()))
    for said in ("«What stops the job»", "«Hold point H2»", "«Released by»", "«3 hold points. Work waits"):
        assert said in page


def test_sentences_of_templates_can_be_gathered_for_translation(theme: Theme) -> None:
    environment = Environment(extensions=["jinja2.ext.i18n"])
    gathered = {
        message
        for name in TEMPLATES
        for _, _, said in environment.extract_translations(theme.text(name))  # type: ignore[attr-defined]
        for message in (said if isinstance(said, tuple) else (said,))
        if message
    }
    assert {"Does not apply.", "Stop at once if", "Read on: %(title)s"} <= gathered


def test_a_title_is_escaped_once(theme: Theme) -> None:
    document = replace(sample.guide(), title="Frames & linings")
    assert f"{escape('Frames & linings')}, Pellow" in render_page(document, theme)
    assert "&amp;amp;" not in render_page(document, theme)
