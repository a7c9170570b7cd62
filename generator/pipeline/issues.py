"""What was issued, as the site shows it: the same bytes, and beside an older issue what superseded it."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import PurePosixPath

from generator.documents.blocks import Document, Link
from generator.pipeline.standing import ISSUES, day_of, page_of
from generator.register.book import Register
from generator.register.frozen import files_in
from generator.register.lines import Issued, Line
from generator.rendering.html import render_page
from generator.rendering.labels import language_of
from generator.rendering.stamps import stamped
from generator.rendering.themes import Theme

INPUTS = "inputs"
"""The files a statement was made from, which stay in the register and are not put on the web."""


def issued_files(register: Register, company: str, theme: Theme) -> Mapping[str, bytes]:
    """The files of every issue by their places in the site, and a page for each that is superseded."""
    files: dict[str, bytes] = {}
    for line in register.lines:
        files |= _copied(register, line)
        last = register.last(line.issued.number)
        if last and last is not line:
            copies = _marked(line, register, theme)
            told = _superseded(line.issued, last.issued, company, theme, tuple(copies))
            page = render_page(told, theme, assets="../assets/")
            files |= {f"{ISSUES}/{line.issued.folder}.html": page.encode()}
            files |= {f"{ISSUES}/{name}": content for name, content in copies.items()}
    return files


def _copied(register: Register, line: Line) -> Mapping[str, bytes]:
    frozen = files_in(register.files_of(line)).items()
    return {
        f"{ISSUES}/{line.issued.folder}/{name}": content
        for name, content in frozen
        if PurePosixPath(name).parts[0] != INPUTS
    }


def _marked(line: Line, register: Register, theme: Theme) -> Mapping[str, bytes]:
    """Copies of a superseded issue's PDFs with the word across each page; the issued bytes stay beside."""
    word = language_of(theme).say("Superseded").upper()
    frozen = files_in(register.files_of(line)).items()
    return {
        f"{line.issued.folder}-{name}": stamped(content, word)
        for name, content in frozen
        if name.endswith(".pdf") and "/" not in name
    }


def _superseded(old: Issued, new: Issued, company: str, theme: Theme, marked: tuple[str, ...]) -> Document:
    language = language_of(theme)
    say = language.say
    return Document(
        kind="superseded",
        lang=language.tag,
        number=old.number,
        title=say("%(number)s, revision %(revision)s", number=old.number, revision=old.revision),
        description=say(
            "Superseded by revision %(new)s, issued on %(day)s. Do not work from revision %(old)s.",
            new=new.revision,
            old=old.revision,
            day=day_of(new, language),
        ),
        company=company,
        home=Link(text=say("All methods"), href="../index.html"),
        files=(
            Link(
                text=say("Revision %(revision)s, which is in force", revision=new.revision),
                href=f"{new.folder}/{page_of(new)}",
            ),
            Link(
                text=say(
                    "Revision %(revision)s as it was issued on %(day)s",
                    revision=old.revision,
                    day=day_of(old, language),
                ),
                href=f"{old.folder}/{page_of(old)}",
            ),
            *(
                Link(text=say("The same as a PDF, marked as superseded"), href=name)
                for name in marked
                if name.startswith(f"{old.folder}-statement-")
            ),
        ),
        blocks=(),
    )
