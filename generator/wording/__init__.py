"""Every sentence the tool says: whole sentences with named placeholders, never glued together.

`Language` carries the catalogue of one language; English needs none, since the sentences in the source
are English.
"""

from __future__ import annotations

import gettext
from collections.abc import Collection
from dataclasses import dataclass, field
from datetime import date

from generator.wording.conventions import Conventions, conventions
from generator.wording.marks import marked

_ENGLISH_TAG = "en-GB"


@dataclass(frozen=True, slots=True, kw_only=True)
class Language:
    """A language by its BCP 47 tag with its gettext catalogue."""

    tag: str = _ENGLISH_TAG
    catalogue: gettext.NullTranslations = field(default_factory=gettext.NullTranslations)

    @property
    def governs(self) -> bool:
        """True for English, in which methods are written and which holds where a translation differs."""
        return self.tag == _ENGLISH_TAG

    @property
    def conventions(self) -> Conventions:
        """How it writes days and decimals."""
        return conventions(self.tag)

    def say(self, sentence: str, /, **values: object) -> str:
        """`sentence` in this language with its `%(name)s` placeholders filled."""
        return self.catalogue.gettext(sentence) % values if values else self.catalogue.gettext(sentence)

    def say_count(self, one: str, many: str, count: int, /, **values: object) -> str:
        """The form of the sentence for `count`, which also fills `%(count)s`."""
        return self.catalogue.ngettext(one, many, count) % {"count": count, **values}

    def quote(self, english: str) -> str:
        """Words of a file, which are English: as they are, and marked where the page is not English."""
        return english if self.governs or not english.strip() else marked(english)

    def day(self, told: date) -> str:
        """A day as it is written in a sentence."""
        return self.conventions.day(told)

    def short_day(self, told: date) -> str:
        """A day as it is written in a box."""
        return self.conventions.short_day(told)

    def figures(self, number: str) -> str:
        """An ordinary figure, printed with a point, with the decimal sign of the language.

        Never for a length. What is set out and cut is written with a point in every language, as on the
        drawings, in the cutting list and in the English text that governs: one size has one spelling.
        """
        return number.replace(".", self.conventions.decimal)


class AsEnglish(gettext.NullTranslations):
    """The end of a translation's catalogue: what it lacks is said in English, and marked so."""

    def gettext(self, message: str) -> str:
        """The sentence, marked."""
        return marked(message)

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        """The form of the sentence for `n`, marked."""
        return marked(super().ngettext(msgid1, msgid2, n))


def among(words: Collection[str], word: str) -> str:
    """`word`, which is one of a closed list; the catalogue gathers the list. ValueError for another."""
    if word not in words:
        raise ValueError(f"{word!r} is none of {', '.join(words)}")
    return word


ENGLISH = Language()
