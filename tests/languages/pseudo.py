"""A language that is no language: every sentence of ours between marks, so that what lacks them is not ours.

A guide said in it shows at a glance what never went through the catalogue.
"""

from __future__ import annotations

import gettext
from collections.abc import Iterator
from html.parser import HTMLParser

from generator.wording import Language

OPENS, CLOSES = "⟦", "⟧"
VOID = frozenset({"area", "br", "col", "hr", "img", "input", "link", "meta", "wbr", "path", "use", "rect"})
UNREAD = frozenset({"script", "style"})
# Names of values, places in files and arithmetic are printed as the files write them, in every language.
WRITTEN_IN_FILES = frozenset({"working", "place", "formula", "working-lines", "origins"})


class Marking(gettext.NullTranslations):
    """A catalogue that says each sentence between marks, `longer` by a share of its length."""

    def __init__(self, longer: float = 0.0) -> None:
        super().__init__()
        self._longer = longer

    def gettext(self, message: str) -> str:
        """The sentence between marks; what it is longer by are words of the sentence said again."""
        return f"{OPENS}{message}{self._more(message)}{CLOSES}"

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        """The form of the sentence for `n`, between marks."""
        return self.gettext(msgid1 if n == 1 else msgid2)

    def _more(self, message: str) -> str:
        words = [word for word in message.split() if word.isalpha()] or ["more"]
        wanted, more = round(len(message) * self._longer), ""
        while len(more) < wanted:
            more += f" {words[len(more) % len(words)]}"
        return more


def pseudo(longer: float = 0.0) -> Language:
    """A language with the days and decimals of Polish, and marks in place of words."""
    return Language(tag="pl", catalogue=Marking(longer))


class _Reader(HTMLParser):
    """Gives the text that stands neither between marks nor in an element that is said to be English."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.found: list[str] = []
        self._open: list[tuple[str, bool]] = []
        self._depth = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Note whether what stands in the element is ours to say."""
        given = {name: value or "" for name, value in attrs}
        named = WRITTEN_IN_FILES.intersection(given.get("class", "").split())
        passed = tag in UNREAD or given.get("lang", "").startswith("en") or bool(named)
        if tag not in VOID:
            self._open.append((tag, passed))

    def handle_endtag(self, tag: str) -> None:
        """Close the innermost element of that name."""
        while self._open and self._open.pop()[0] != tag:
            pass

    def handle_data(self, data: str) -> None:
        """Keep what stands outside marks."""
        outside = ""
        for letter in data:
            self._depth += {OPENS: 1, CLOSES: -1}.get(letter, 0)
            outside += "" if self._depth or letter == CLOSES else letter
        if outside.strip() and not any(passed for _, passed in self._open):
            self.found.append(" ".join(outside.split()))


def unmarked_text(html: str) -> Iterator[str]:
    """The runs of text on a page that are neither a sentence of ours nor said to be English."""
    reader = _Reader()
    reader.feed(html)
    yield from reader.found
