"""A theme's own words for sentences of ours."""

from __future__ import annotations

import gettext
import re
from collections.abc import Iterator
from functools import lru_cache

from generator.rendering.themes import Theme
from generator.wording import ENGLISH, Language
from generator.wording.languages import DOMAIN, LANGUAGES

_ENTRY = re.compile(r'((?:^#: .*\n)+)(?:^#.*\n)*^msgid ((?:".*"\n)+)(?:^msgid_plural ((?:".*"\n)+))?', re.M)
# What is said elsewhere is printed on a terminal, or drawn.
_ON_PAGES = (
    "themes/", "generator/documents/", "generator/pipeline/", "generator/safety/",
    "generator/model/catalogue/",
)  # fmt: skip


class _OwnWords(gettext.NullTranslations):
    """A catalogue that asks the theme first."""

    def __init__(self, labels: tuple[tuple[str, str], ...], catalogue: gettext.NullTranslations) -> None:
        super().__init__()
        self._own = dict(labels)
        self.add_fallback(catalogue)

    def gettext(self, message: str) -> str:
        """The theme's words, or those of the language."""
        return self._own.get(message) or super().gettext(message)

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        """The theme's words for the form that English would take, or those of the language."""
        return self._own.get(msgid1 if n == 1 else msgid2) or super().ngettext(msgid1, msgid2, n)


@lru_cache(maxsize=16)
def language_of(theme: Theme, language: Language = ENGLISH) -> Language:
    """The language as the theme speaks it; a theme's own words are English, for English pages alone."""
    if not (theme.labels and language.governs):
        return language
    return Language(tag=language.tag, catalogue=_OwnWords(theme.labels, language.catalogue))


@lru_cache(maxsize=1)
def sentences() -> frozenset[str]:
    """Every sentence that a page or a sheet may say, each form for many one of its own."""
    return frozenset(_sentences((LANGUAGES / f"{DOMAIN}.pot").read_text(encoding="utf-8")))


def _sentences(template: str) -> Iterator[str]:
    for places, *texts in _ENTRY.findall(template):
        if any(place.startswith(_ON_PAGES) for place in places.replace("#: ", "").split()):
            yield from (_unquoted(text) for text in texts if text)


def _unquoted(lines: str) -> str:
    text = "".join(line[1:-1] for line in lines.splitlines())
    return text.replace('\\"', '"').replace("\\n", "\n").replace("\\\\", "\\")
