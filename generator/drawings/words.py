"""The language that a drawing speaks while it is laid out.

A drawing is laid by dozens of small functions that hand each other shapes and sizes; the language stands
beside them for as long as one drawing takes, and is never seen outside `spoken`. A drawing speaks one
language whole: where a single label of it has no translation, all of it is laid again in English.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from contextvars import ContextVar
from dataclasses import dataclass
from typing import TypeVar

from generator.wording import ENGLISH, Language
from generator.wording.marks import unmarked

T = TypeVar("T")

MADE_OF: Mapping[str, str] = {"mdf": "MDF", "timber": "timber"}
"""What a moulding or board is made of, as drawings say it."""


@dataclass(slots=True)
class _Speaking:
    """The language spoken, and whether it lacked a word."""

    language: Language
    lacking: bool = False


_SPEAKING: ContextVar[_Speaking | None] = ContextVar("speaking", default=None)


def say(sentence: str, /, **values: object) -> str:
    """`sentence` in the language of the drawing in hand, with its `%(name)s` placeholders filled."""
    speaking = _SPEAKING.get()
    said = speaking.language.say(sentence) if speaking else sentence
    plain = unmarked(said)
    if speaking and plain != said:
        speaking.lacking = True
    return plain % values if values else plain


def spoken(lay: Callable[[], T], language: Language) -> tuple[T, Language]:
    """What `lay` makes, said in `language` where it has every word, and the language it was said in."""
    speaking = _Speaking(language)
    token = _SPEAKING.set(speaking)
    try:
        made = lay()
    finally:
        _SPEAKING.reset(token)
    return spoken(lay, ENGLISH) if speaking.lacking else (made, language)
