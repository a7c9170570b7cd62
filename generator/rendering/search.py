"""What the search of a site looks through: the text of its public pages, part by part."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping, Sequence
from html.parser import HTMLParser

from generator.rendering.themes import Theme

INDEX, FINDER = "search.js", "assets/find.js"
_PASSED_OVER = frozenset({"svg", "script", "style", "nav", "button", "dialog"})
_REPEATED = frozenset({"step-bar", "step-count", "pointer-way", "translated"})
_VOID = frozenset({"area", "br", "col", "hr", "img", "input", "link", "meta", "wbr"})
_HEADINGS = frozenset({"h1", "h2", "h3", "h4"})
_PARTS = frozenset({"section", "article"})
_ARITHMETIC = frozenset({"workings", "policy"})
_ANNEX = "annex-"
_SENTENCE_END = re.compile(r"(?<=[.;:?!]) ")


def search_files(pages: Mapping[str, bytes], theme: Theme) -> dict[str, bytes]:
    """What the search needs beside the index page, by its path in the site."""
    return {INDEX: search_index(pages), FINDER: theme.text("find.js").encode()}


def search_index(pages: Mapping[str, bytes]) -> bytes:
    """The index as a script, so that it is also read from a file on the reader's own disk.

    `pages` are HTML documents by name. Each part is the page's place in the list, its anchor, its heading,
    the places of its sentences in the list of all, and 1 if it is in an annex. A guide and the statements of
    its method have most sentences in common, so each stands once. Of arithmetic the headings alone are kept.
    """
    titles: list[tuple[str, str]] = []
    parts: list[list[object]] = []
    places: dict[str, int] = {}
    for name, content in sorted(pages.items()):
        reader = _Reader()
        reader.feed(content.decode())
        parts += [[len(titles), *_laid_down(part, places)] for part in reader.told()]
        titles.append((name, reader.title))
    told = {"pages": titles, "sentences": list(places), "parts": parts}
    return f"self.SEARCHED={json.dumps(told, ensure_ascii=False, separators=(',', ':'))};\n".encode()


def _laid_down(part: _Part, places: dict[str, int]) -> Sequence[object]:
    """A part with its sentences as places; sentences not met before are appended."""
    sentences = _SENTENCE_END.split(part.text) if part.text else []
    found = [places.setdefault(sentence, len(places)) for sentence in sentences]
    return (part.anchor, part.heading, found, *((1,) if part.annexed else ()))


class _Part:
    """A part of a page: its heading is the first one in it."""

    def __init__(self, anchor: str, annexed: bool) -> None:
        self.anchor, self.annexed, self.headed = anchor, annexed, False
        self._heading, self._text = "", ""

    def take(self, data: str, heads: bool) -> None:
        """Add text to the heading or to the rest."""
        if heads:
            self._heading += f"{data} "
        else:
            self._text += f"{data} "

    @property
    def heading(self) -> str:
        """The heading with single spaces."""
        return _closed_up(self._heading)

    @property
    def text(self) -> str:
        """The rest with single spaces."""
        return "" if self.anchor in _ARITHMETIC else _closed_up(self._text)


class _Reader(HTMLParser):
    """Gathers the text of a page's main part under the anchor and heading it stands beneath."""

    def __init__(self) -> None:
        super().__init__()
        self.title = ""
        self._parts: list[_Part] = []
        self._inside_main = False
        self._passed_over = 0
        self._heading = ""

    def told(self) -> list[_Part]:
        """Every part that has a heading or text."""
        return [part for part in self._parts if part.heading or part.text]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Open a part at an anchored section; note what is passed over."""
        given = {name: value or "" for name, value in attrs}
        if self._passed_over or tag in _PASSED_OVER or _REPEATED.intersection(given.get("class", "").split()):
            self._passed_over += tag not in _VOID
        elif tag == "main":
            self._inside_main = True
            self._parts.append(_Part("", annexed=False))
        elif self._inside_main:
            self._enter(tag, given.get("id", ""))
        elif tag == "title":
            self._heading = tag

    def _enter(self, tag: str, anchor: str) -> None:
        if tag in _PARTS and anchor:
            annexed = self._parts[-1].annexed or anchor.startswith(_ANNEX)
            self._parts.append(_Part(anchor, annexed))
        elif tag in _HEADINGS and not self._parts[-1].headed:
            self._heading = tag
            self._parts[-1].headed = True

    def handle_endtag(self, tag: str) -> None:
        """Close what was opened."""
        if self._passed_over:
            self._passed_over -= 1
        elif tag == "main":
            self._inside_main = False
        elif tag == self._heading:
            self._heading = ""

    def handle_data(self, data: str) -> None:
        """Take the text to the title, or to the heading or the text of the part in hand."""
        if self._passed_over:
            return
        if self._inside_main:
            self._parts[-1].take(data, bool(self._heading))
        elif self._heading:
            self.title += data


def _closed_up(text: str) -> str:
    return re.sub(r" ([.,;:?!)])", r"\1", " ".join(text.split()))
