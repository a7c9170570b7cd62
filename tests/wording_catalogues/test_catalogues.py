"""The catalogues hold what the source says, and each translation fits the sentence it stands for."""

from __future__ import annotations

import io
import re
from datetime import date
from pathlib import Path

import pytest
from babel import Locale
from babel.dates import format_date
from babel.messages.catalog import Catalog, Message
from babel.messages.mofile import read_mo
from babel.messages.pofile import read_po
from babel.numbers import format_decimal

from generator.wording.conventions import conventions
from generator.wording.gathering import ROOT, UNREVIEWED, catalogue, files
from generator.wording.languages import DOMAIN, folder, language, tags
from generator.wording.marks import marked
from generator.wording.sentences import Said, modules, said, strays

REFRESH = "python -m tests.wording_catalogues.refresh"
TABLES_GATHERED_WHOLE = {
    "generator/drawings/words.py: sentence",
    "generator/quantities/workings.py: sentence",
    "generator/wording/faults/__init__.py: fault.says",
    "generator/wording/faults/__init__.py: fault.nearest",
    "generator/wording/faults/__init__.py: fault.expected",
}
# Sentences of our own data, gathered from its files by `wording.gathering.DATA`.
DATA_GATHERED_WHOLE = {
    "generator/documents/sections.py: rule.title",
    "generator/documents/sections.py: rule.question",
    "generator/documents/statement.py: text",
    "generator/documents/statement.py: entry.subject",
    "generator/model/translations.py: words.value",
}
PLACEHOLDER = re.compile(r"%\((\w+)\)s|%%|%")
FILES = files()


def translations(tag: str) -> Catalog:
    with (folder(tag) / f"{DOMAIN}.po").open("rb") as written:
        return read_po(written, locale=tag)


def forms(text: object) -> tuple[str, ...]:
    return tuple(map(str, text)) if isinstance(text, (tuple, list)) else (str(text),)


def translated(tag: str) -> list[Message]:
    return [message for message in translations(tag) if message.id and any(forms(message.string))]


@pytest.mark.parametrize("path", FILES, ids=lambda path: str(Path(path).relative_to(ROOT)))
def test_a_catalogue_is_as_the_source_has_it(path: Path) -> None:
    assert path.read_bytes() == FILES[path], f"{path.name} is stale: run {REFRESH}"


def test_every_sentence_said_is_followed_to_its_words() -> None:
    assert set(strays(modules(ROOT))) == TABLES_GATHERED_WHOLE | DATA_GATHERED_WHOLE


def test_there_is_a_language_besides_english() -> None:
    assert tags() == ("pl",)


@pytest.mark.parametrize("tag", tags())
def test_placeholders_agree_in_every_form(tag: str) -> None:
    for message in translated(tag):
        named = {name for form in forms(message.id) for name in PLACEHOLDER.findall(form)}
        for form in forms(message.string):
            assert set(PLACEHOLDER.findall(form)) == named, message.id


@pytest.mark.parametrize("tag", tags())
def test_a_counted_sentence_has_every_plural_form_of_the_language(tag: str) -> None:
    wanted = translations(tag).num_plurals
    for message in translated(tag):
        if message.pluralizable:
            assert len([form for form in forms(message.string) if form]) == wanted, message.id


@pytest.mark.parametrize("tag", tags())
def test_the_file_says_that_it_is_unreviewed_and_that_english_governs(tag: str) -> None:
    head = (folder(tag) / f"{DOMAIN}.po").read_text(encoding="utf-8").split("msgid")[0]
    assert head == "".join(f"# {line}\n" for line in UNREVIEWED.splitlines())


def test_the_machine_file_holds_every_translation() -> None:
    compiled = read_mo(io.BytesIO((folder("pl") / f"{DOMAIN}.mo").read_bytes()))
    assert len([message for message in compiled if message.id]) == len(translated("pl"))


def test_polish_is_said_with_its_three_plurals() -> None:
    polish = language("pl")
    said_as = [polish.say_count("%(count)s step", "%(count)s steps", count) for count in (1, 3, 5, 12, 22)]
    assert said_as == ["1 krok", "3 kroki", "5 kroków", "12 kroków", "22 kroki"]


def test_a_sentence_without_a_translation_is_said_in_english() -> None:
    sentence = "Keep this from learners: it holds the answers."
    assert sentence in catalogue()
    assert language("pl").say(sentence) == marked(sentence)


def test_a_counted_sentence_without_a_translation_is_said_in_english_too() -> None:
    one = "One hold point. Work waits for a signature."
    many = "%(num)s hold points. Work waits for a signature."
    assert (one, many) not in {message.id for message in translated("pl")}
    assert language("pl").say_count(one, many, 5, num=5) == marked(many) % {"num": 5}


@pytest.mark.parametrize("tag", ["en-GB", *tags()])
def test_days_and_decimals_are_those_of_cldr(tag: str) -> None:
    locale, known = Locale.parse(tag, sep="-"), conventions(tag)
    days = [date(2026, month, 3) for month in range(1, 13)]
    assert [known.day(day) for day in days] == [format_date(day, "long", locale) for day in days]
    assert [known.short_day(day) for day in days] == [format_date(day, "medium", locale) for day in days]
    assert f"12{known.decimal}5" == format_decimal(12.5, locale=locale)
    assert known.name == locale.language_name


def test_a_language_nobody_translated_is_not_taken_for_english() -> None:
    with pytest.raises(FileNotFoundError):
        language("cy")


SOURCE = """
from generator.words import WORDS

TABLE = {"a": "From a table", "b": "From the same table"}


def _either(yes):
    if yes:
        return "Returned"
    return "Returned otherwise"


def f(say, language, code, yes):
    say("Plain")
    language.say("Joined " "in source %(name)s", name=code)
    language.say_count("%(count)s piece", "%(count)s pieces", 3)
    say("One way" if yes else "The other way")
    say(TABLE[code])
    say(WORDS[code])
    say(_either(yes))
    say(unknown(code))
"""


def test_what_is_said_is_read_off_the_syntax(tmp_path: Path) -> None:
    (tmp_path / "generator").mkdir()
    (tmp_path / "generator" / "words.py").write_text('WORDS = {"a": "From another module"}\n')
    (tmp_path / "generator" / "source.py").write_text(SOURCE)
    known = modules(tmp_path)
    found = {(one.one, one.many) for one in said(known)}
    single = {"Plain", "Joined in source %(name)s", "One way", "The other way", "From a table"}
    single |= {"From the same table", "From another module", "Returned", "Returned otherwise"}
    assert found == {(text, "") for text in single} | {("%(count)s piece", "%(count)s pieces")}
    assert strays(known) == ("generator/source.py: unknown(code)",)
    assert Said("Plain", "", "generator/source.py", 14) in set(said(known))
