"""The languages besides English, each a folder of this one with its catalogue, and how one is opened."""

from __future__ import annotations

import gettext
from functools import cache
from pathlib import Path

from generator.wording import AsEnglish, Language

LANGUAGES = Path(__file__).parent
DOMAIN = "storeyrod"


def tags() -> tuple[str, ...]:
    """The BCP 47 tags of the languages that have a catalogue, in their order."""
    return tuple(sorted(path.parts[-3] for path in LANGUAGES.glob(f"*/LC_MESSAGES/{DOMAIN}.po")))


def folder(tag: str) -> Path:
    """Where the catalogue of a language stands."""
    return LANGUAGES / tag / "LC_MESSAGES"


# Opened once, since a language is a key of what is remembered in a process.
@cache
def language(tag: str) -> Language:
    """The language of `tag`; what has no translation it says in English, marked.

    Raises FileNotFoundError when there is no catalogue of that tag.
    """
    catalogue = gettext.translation(DOMAIN, LANGUAGES, [tag])
    catalogue.add_fallback(AsEnglish())
    return Language(tag=tag, catalogue=catalogue)
