"""A method in another language: its sentences, each beside the English one it was made of.

A file of `methods/languages/TAG/` names its method and lists pairs. A pair counts only while its English
stands in the method letter for letter, so that a sentence that was changed is shown in English again until
somebody has looked at its translation.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import partial
from typing import ClassVar, Final, cast

from pydantic import Field

from generator.model.border import Described
from generator.model.catalogue import Catalogue, Material, Tool
from generator.model.lists import SomeOf
from generator.model.method import Method
from generator.model.prose import Kept, Prose, Reference, Words
from generator.model.scalars import Code, FormatVersion, Told, Word
from generator.model.tables import Table
from generator.problems import ProblemLog, nearest
from generator.wording import Language

PRINTED: Final = frozenset({"label", "title", "permits", "decided_by"})
"""The keys whose plain words a document prints as they stand; what is prose is printed anyway."""


class Sentence(Described):
    """A sentence, a title or a label of a method in another language."""

    noun: ClassVar[str] = "a translated sentence"
    english: Told = Field(description="the words of the method, letter for letter, braces and all")
    translation: Told = Field(description="the same in the other language, with every {name} of the English")


class TranslationFile(Described):
    """What of a method has been put into another language."""

    noun: ClassVar[str] = "a translation"
    format: FormatVersion = Field(description="the version of the format, which stands first: 1")
    method: Code = Field(description="the number of the method, such as SF-07")
    sentences: SomeOf[Sentence] = Field(description="its sentences, each beside the English")


@dataclass(frozen=True, slots=True, kw_only=True)
class Translation:
    """A method's sentences in the language of `tag`."""

    tag: str
    file: TranslationFile

    @property
    def by_english(self) -> Mapping[str, Prose]:
        """Each translation by its English, without regard to where lines were broken."""
        return {_plain(one.english): one.translation for one in self.file.sentences}


def check_translation(translation: Translation, method: Method, log: ProblemLog) -> None:
    """Report pairs whose English is not the method's, whose values differ, or that stand twice."""
    known = tuple(dict.fromkeys(_plain(words) for words in _printed(method)))
    seen: set[str] = set()
    for one in translation.file.sentences:
        english = _plain(one.english)
        if english in seen:
            log.add("translation-doubled", one.english.span)
        elif english not in known:
            _report_stale(one, known, method, log)
        _check_values(one, log)
        seen.add(english)


def _report_stale(one: Sentence, known: tuple[str, ...], method: Method, log: ProblemLog) -> None:
    near, number = nearest(_plain(one.english), known), method.method.value
    log.add("translation-stale", one.english.span, warning=True, method=number, nearest=near)


def _check_values(one: Sentence, log: ProblemLog) -> None:
    """Every value of the English stands as often in the translation, and no other."""
    wanted, given = (Counter(_values(prose)) for prose in (one.english, one.translation))
    listed = ", ".join(wanted.elements()) or "none"
    for part in one.translation.parts:
        if not isinstance(part, Words) and _typed(part) not in wanted:
            log.add("translation-value", part.span, value=_typed(part), known=listed)
    if any(given[value] != count for value, count in wanted.items()):
        log.add("translation-values", one.translation.span, known=listed)


def _values(prose: Prose) -> Iterator[str]:
    yield from (_typed(part) for part in prose.parts if not isinstance(part, Words))


def _typed(part: Reference | Kept) -> str:
    """A value as it is typed between its braces."""
    if isinstance(part, Kept):
        return f"{{= {part.text}}}"
    field = f".{part.field}" if part.field else ""
    unit = f" in {part.unit}" if part.unit else ""
    return f"{{{part.name}{field}{unit}}}"


def _plain(words: Prose | Word) -> str:
    """The words with single spaces, since where a line is broken says nothing."""
    return " ".join((words.source if isinstance(words, Prose) else words).value.split())


def _printed(method: Method) -> tuple[Prose | Word, ...]:
    """Everything of a method that a document prints, in the order of its keys."""
    found: list[Prose | Word] = []

    def note(words: Prose | Word) -> Prose | Word:
        found.append(words)
        return words

    _turned(method, note)
    return tuple(found)


def method_in(language: Language, method: Method, translation: Translation | None) -> Method:
    """The method as pages in `language` print it: translated where it was, marked English elsewhere."""
    known = translation.by_english if translation else {}

    def turn(words: Prose | Word) -> Prose | Word:
        found = known.get(_plain(words))
        if isinstance(words, Prose):
            return replace(found, tag=language.tag) if found else words
        return replace(words, value=found.typed if found else language.quote(words.value))

    turned = _turned(method, turn)
    assert isinstance(turned, Method)
    return turned


def catalogue_in(language: Language, catalogue: Catalogue) -> Catalogue:
    """The catalogue with the shipped labels in `language`; a firm's own stay English, marked."""

    def turn(words: Prose | Word) -> Prose | Word:
        return words if isinstance(words, Prose) else replace(words, value=language.say(words.value))

    materials = {key: cast(Material, _turned(one, turn)) for key, one in catalogue.materials.items()}
    tools = {key: cast(Tool, _turned(one, turn)) for key, one in catalogue.tools.items()}
    return replace(catalogue, materials=materials, tools=tools)


def _turned(thing: object, turn: Callable[[Prose | Word], object], key: str = "") -> object:
    """`thing` with all that is printed of it put through `turn`; `key` is what it stands under."""
    if isinstance(thing, Prose) or (isinstance(thing, Word) and key in PRINTED):
        return turn(thing)
    if isinstance(thing, Described):
        old = {name: getattr(thing, name) for name in type(thing).model_fields}
        new = {name: _turned(value, turn, name) for name, value in old.items()}
        return thing.model_copy(update={name: value for name, value in new.items() if value is not old[name]})
    if isinstance(thing, Table):
        return thing.turned(partial(_turned, turn=turn, key=key))
    if isinstance(thing, tuple):
        return tuple(_turned(each, turn, key) for each in thing)
    return thing
