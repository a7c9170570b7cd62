"""Gathers every sentence of the tool into a template and brings the translations up to it.

Babel is needed here only, never to publish.
"""

from __future__ import annotations

import io
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from generator.shipped import shipped
from generator.wording.arithmetic import PHRASES
from generator.wording.faults import ROOMS
from generator.wording.languages import DOMAIN, LANGUAGES, folder, tags
from generator.wording.sentences import Said, modules, said

if TYPE_CHECKING:
    from babel.messages.catalog import Catalog

ROOT = Path(__file__).parents[2]
_EPOCH = datetime(1970, 1, 1, tzinfo=UTC)
UNREVIEWED = (
    "The translation of the tool's own words has not yet been reviewed by a fluent safety reader.\n"
    "The English text governs. A sentence without a translation is said in English."
)


def files() -> dict[Path, bytes]:
    """Every file of the catalogues as it should stand: the template, and a .po and .mo for each language."""
    found = catalogue()
    made = {LANGUAGES / f"{DOMAIN}.pot": _as_text(found)}
    for tag in tags():
        path = folder(tag) / f"{DOMAIN}.po"
        translated = _brought_up(path, found, tag)
        made |= {path: _as_text(translated), path.with_suffix(".mo"): _as_machine(translated)}
    return made


def catalogue() -> Catalog:
    """Every sentence of the source, of the tables of faults and arithmetic, and of the shipped templates."""
    from babel.messages.catalog import Catalog

    found = Catalog(project="storeyrod", fuzzy=False)
    for one in (*said(modules(ROOT)), *_of_faults(), *_of_arithmetic(), *_of_templates()):
        found.add((one.one, one.many) if one.many else one.one, locations=[(one.file, 0)])
    return found


def _brought_up(path: Path, found: Catalog, tag: str) -> Catalog:
    """The translations of a language over the sentences as they are now; what is said no longer is dropped.

    A changed sentence is a new one: no translation is guessed from one that looks like it.
    """
    from babel.messages.pofile import read_po

    with path.open("rb") as written:
        translated = read_po(written, locale=tag)
    translated.update(found, no_fuzzy_matching=True)
    translated.obsolete.clear()
    return translated


def _as_text(found: Catalog) -> bytes:
    from babel.messages.pofile import write_po

    written = io.BytesIO()
    write_po(written, found, omit_header=True, include_lineno=False, sort_output=True, width=100)
    notes = "".join(f"# {line}\n" for line in UNREVIEWED.splitlines()) if found.locale else ""
    return f"{notes}{_header(found)}".encode() + written.getvalue()


def _header(found: Catalog) -> str:
    """No date and no name, so that the same sentences give the same bytes."""
    fields = {"MIME-Version": "1.0", "Content-Type": "text/plain; charset=utf-8"}
    fields["Content-Transfer-Encoding"] = "8bit"
    if found.locale:
        fields |= {"Language": str(found.locale_identifier), "Plural-Forms": found.plural_forms}
    lines = "".join(f'"{name}: {value}\\n"\n' for name, value in fields.items())
    return f'msgid ""\nmsgstr ""\n{lines}\n'


def _as_machine(translated: Catalog) -> bytes:
    """What is translated and nothing else: an empty plural would be said as nothing, and not in English."""
    from babel.messages.catalog import Catalog
    from babel.messages.mofile import write_mo

    # A fixed date, so that the same translations give the same bytes.
    written, kept = io.BytesIO(), Catalog(locale=translated.locale_identifier, creation_date=_EPOCH)
    for message in translated:
        said = message.string
        if message.id and all(said if isinstance(said, list | tuple) else (said,)):
            kept.add(message.id, message.string)
    write_mo(written, kept)
    return written.getvalue()


def _of_faults() -> Iterator[Said]:
    for room, faults in ROOMS.items():
        for fault in faults.values():
            for text in filter(None, (fault.says, fault.expected, fault.nearest)):
                yield Said(text, "", f"generator/wording/faults/{room}.py", 0)


def _of_arithmetic() -> Iterator[Said]:
    for phrase in PHRASES.values():
        for text in {phrase.names, phrase.with_numbers}:
            yield Said(text, "", "generator/wording/arithmetic.py", 0)


def _of_templates() -> Iterator[Said]:
    from jinja2.ext import babel_extract

    options = {"trim_blocks": "true", "lstrip_blocks": "true", "newstyle_gettext": "true", "silent": "false"}
    themes = shipped("themes")
    for path in sorted(themes.rglob("*.html")):
        file = f"themes/{path.relative_to(themes).as_posix()}"
        with path.open("rb") as template:
            for line, _, texts, _ in babel_extract(template, ("_", "gettext", "ngettext"), (), options):
                forms = [text or "" for text in ((texts,) if isinstance(texts, str) else texts or ())]
                yield Said(forms[0], "".join(forms[1:2]), file, line)
