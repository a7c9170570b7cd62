"""A folder of HTML as someone following links finds it: what each page points at, and whether it is there."""

from __future__ import annotations

import re
from dataclasses import dataclass
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urlsplit

from tests.checkers.findings import Finding

POINTING = frozenset({"href", "src", "srcset", "poster", "data", "action", "formaction", "xlink:href"})
SCHEMES_WITHOUT_A_FILE = frozenset({"data", "tel", "mailto"})
OUTSIDE = re.compile(r"(?:https?:|ftp:|wss?:)?//[\w.-]+\.[a-z]{2,}[^\s\"'<>)]*", re.IGNORECASE)
NAMESPACES = ("http://www.w3.org/",)


@dataclass(frozen=True, slots=True, kw_only=True)
class Pointer:
    """One attribute that points somewhere: the line it is on, the element, the attribute and its value."""

    line: int
    element: str
    attribute: str
    target: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """What one HTML file says of itself: language, title, the ids in it, and all its pointers."""

    language: str
    title: str
    ids: tuple[str, ...]
    pointers: tuple[Pointer, ...]


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.language = ""
        self.title: list[str] = []
        self.ids: list[str] = []
        self.pointers: list[Pointer] = []
        self.within: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {name: value or "" for name, value in attrs}
        if tag == "html":
            self.language = given.get("lang", "")
        if "id" in given:
            self.ids.append(given["id"])
        for attribute in POINTING & given.keys():
            for target in _targets(attribute, given[attribute]):
                line = self.getpos()[0]
                self.pointers.append(Pointer(line=line, element=tag, attribute=attribute, target=target))
        if tag in ("title", "svg"):
            self.within.append(tag)

    def handle_endtag(self, tag: str) -> None:
        if self.within[-1:] == [tag]:
            self.within.pop()

    def handle_data(self, data: str) -> None:
        if self.within == ["title"]:
            self.title.append(data)


def _targets(attribute: str, value: str) -> list[str]:
    return [part.split()[0] for part in value.split(",")] if attribute == "srcset" else [value]


def read_sheet(file: Path) -> Sheet:
    """Read one UTF-8 HTML file; UnicodeDecodeError when it is in another encoding."""
    reader = _Reader()
    reader.feed(file.read_text(encoding="utf-8"))
    reader.close()
    return Sheet(
        language=reader.language,
        title="".join(reader.title).strip(),
        ids=tuple(reader.ids),
        pointers=tuple(reader.pointers),
    )


def broken_links(site: Path) -> tuple[Finding, ...]:
    """List the pointers of all pages that lead to no file, out of the folder, or to no id in a page."""
    sheets = {file: read_sheet(file) for file in sorted(site.rglob("*.html"))}
    return tuple(
        Finding(where=f"{file.relative_to(site)}:{pointer.line}", rule=rule, says=pointer.target)
        for file, sheet in sheets.items()
        for pointer in sheet.pointers
        for rule in _faults(site.resolve(), file, pointer, sheets)
    )


def _faults(site: Path, file: Path, pointer: Pointer, sheets: dict[Path, Sheet]) -> tuple[str, ...]:
    parts = urlsplit(pointer.target)
    if parts.scheme in SCHEMES_WITHOUT_A_FILE:
        return ()
    if parts.scheme or parts.netloc or parts.path.startswith("/"):
        return ("not a path inside the site",)
    there = (file.parent / unquote(parts.path)).resolve() if parts.path else file.resolve()
    if not there.is_relative_to(site):
        return ("leads out of the site",)
    if not there.is_file():
        return ("no such file",)
    ids = next((sheet.ids for path, sheet in sheets.items() if path.resolve() == there), None)
    return (
        ("no such id",) if ids is not None and parts.fragment and unquote(parts.fragment) not in ids else ()
    )


def doubled_ids(site: Path) -> tuple[Finding, ...]:
    """List ids that stand twice in one page, inlined drawings included."""
    return tuple(
        Finding(where=str(file.relative_to(site)), rule="doubled id", says=name)
        for file in sorted(site.rglob("*.html"))
        for ids in [read_sheet(file).ids]
        for name in sorted({name for name in ids if ids.count(name) > 1})
    )


def outside_addresses(site: Path) -> tuple[Finding, ...]:
    """List every network address in the text files of a site; XML namespaces, which nothing fetches, pass."""
    files = [
        file
        for file in sorted(site.rglob("*"))
        if file.suffix in {".html", ".css", ".js", ".svg", ".json", ".xml"}
    ]
    return tuple(
        Finding(where=str(file.relative_to(site)), rule="address outside", says=address)
        for file in files
        for address in OUTSIDE.findall(_without_data(file.read_text(encoding="utf-8")))
        if not address.startswith(NAMESPACES)
    )


def _without_data(text: str) -> str:
    return re.sub(r"base64,[A-Za-z0-9+/=]+", "", text)
