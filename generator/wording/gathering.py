"""Gathers every sentence of the tool into a template and brings the translations up to it.

Babel is needed here only, never to publish.
"""

from __future__ import annotations

import io
import json
import re
from collections.abc import Iterator, Mapping
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

import yaml

from generator.shipped import shipped
from generator.wording import ENGLISH
from generator.wording.arithmetic import PHRASES
from generator.wording.conventions import FILE as CONVENTIONS
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
    made = {LANGUAGES / f"{DOMAIN}.pot": _as_text(found), CONVENTIONS: _conventions()}
    for tag in tags():
        path = folder(tag) / f"{DOMAIN}.po"
        translated = _brought_up(path, found, tag)
        made |= {path: _as_text(translated), path.with_suffix(".mo"): _as_machine(translated)}
    return made


def catalogue() -> Catalog:
    """Every sentence of the source, of the tables of faults and arithmetic, and of the shipped templates."""
    from babel.messages.catalog import Catalog

    found = Catalog(project="storeyrod", fuzzy=False)
    sources = (said(modules(ROOT)), _of_faults(), _of_arithmetic(), _of_templates(), _of_data())
    for one in (one for source in sources for one in source):
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

    class Unsigned(Catalog):
        """Does not say by which version of Babel it was written: another gives the same bytes."""

        def _get_mime_headers(self) -> list[tuple[str, str]]:
            return [field for field in super()._get_mime_headers() if field[0] != "Generated-By"]

        mime_headers = property(_get_mime_headers)

    # A fixed date, so that the same translations give the same bytes.
    written, kept = io.BytesIO(), Unsigned(locale=translated.locale_identifier, creation_date=_EPOCH)
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


# What is printed of our own data: file, the list in it, and the keys whose words a page may show.
DATA: tuple[tuple[str, str, tuple[str, ...]], ...] = (
    ("generator/safety/sections.yaml", "sections", ("title", "question")),
    ("generator/safety/cautions.yaml", "cautions", ("text",)),
    ("generator/safety/guidance.yaml", "guidance", ("subject",)),
    ("generator/model/catalogue/tools.yaml", "tools", ("label",)),
    ("generator/model/catalogue/materials.yaml", "materials", ("label",)),
)


def _of_data() -> Iterator[Said]:
    for file, listed, keys in DATA:
        entries = yaml.safe_load((ROOT / file).read_text(encoding="utf-8"))[listed]
        for entry in entries.values() if isinstance(entries, Mapping) else entries:
            for text in (entry[key] for key in keys if entry.get(key)):
                yield Said(text.strip(), "", file, 0)


def _conventions() -> bytes:
    told = {tag: _of_language(tag) for tag in sorted((ENGLISH.tag, *tags()))}
    return f"{json.dumps(told, ensure_ascii=False, indent=1)}\n".encode()


def _of_language(tag: str) -> Mapping[str, Any]:
    """What CLDR says of a language, in the shape of `wording.conventions`."""
    from babel import Locale

    locale = Locale.parse(tag, sep="-")
    wide, short = locale.months["format"]["wide"], locale.months["format"]["abbreviated"]
    return {
        "name": locale.language_name,
        "decimal": locale.number_symbols["latn"]["decimal"],
        "months": [wide[month] for month in range(1, 13)],
        "short_months": [short[month] for month in range(1, 13)],
        "long": _pattern(locale.date_formats["long"].pattern),
        "medium": _pattern(locale.date_formats["medium"].pattern),
    }


def _pattern(cldr: str) -> str:
    """A pattern of CLDR with its day, month and year named; ValueError for a field of another kind."""
    fields = {"d": "{day}", "MMMM": "{month}", "MMM": "{month}", "y": "{year}"}
    made = re.sub(r"[A-Za-z]+", lambda found: fields.get(found.group(), "?"), cldr)
    if "?" in made:
        raise ValueError(f"a day written as {cldr!r} has a part that is not provided for")
    return made
