"""Phrases that rules look for: parts joined by + that all must be found, each a choice divided by /."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache, lru_cache

SENTENCE = re.compile(r"[^.;:!?]+")
DENIAL = re.compile(r"\b(not|never|no|without)\b", re.IGNORECASE)
_DENIED_BEFORE = re.compile(r"\b(no|not|never|without)( (a|an|the|any|more))?[ -]$", re.IGNORECASE)
_DENIED_AFTER = re.compile(
    r"^\S*( \w+){0,2} (is|are|was|were)( not|n't) (needed|required|necessary|used|available|worn|fitted)",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Part:
    """One part of a phrase: its pattern, and the first word of each choice in small letters.

    `heads` is empty where one of them is not plain ASCII, whose capitals are a matter of their own.
    """

    pattern: re.Pattern[str]
    heads: tuple[str, ...]

    def may_stand_in(self, text: str) -> bool:
        """False only where the pattern cannot be found; far cheaper than looking for it."""
        if not self.heads or not text.isascii():
            return True
        small = text.lower()
        return any(head in small for head in self.heads)

    def search(self, text: str) -> re.Match[str] | None:
        """Where the part is first found in the text."""
        return self.pattern.search(text) if self.may_stand_in(text) else None


@dataclass(frozen=True, slots=True)
class Phrase:
    """A phrase as typed, with its parts."""

    typed: str
    parts: tuple[Part, ...]

    @property
    def whole(self) -> bool:
        """False when a part or a choice of it is empty, so that it could be found anywhere."""
        pieces = [choice for part in self.typed.split("+") for choice in part.split("/")]
        return all(piece.strip() for piece in pieces)

    def stands_in(self, text: str) -> bool:
        """True when every part is found in the text."""
        return all(part.search(text) for part in self.parts)

    def is_meant_in(self, text: str) -> bool:
        """True when every part is found where the text does not deny it."""
        return all(
            part.may_stand_in(text) and any(not _denied(found) for found in part.pattern.finditer(text))
            for part in self.parts
        )


@cache
def phrase(typed: str) -> Phrase:
    """The phrase that is typed so; each part matches the beginning of a word, hyphens count as spaces."""
    return Phrase(typed, tuple(_part(part) for part in typed.split("+")))


def _part(part: str) -> Part:
    choices = [_words(choice) for choice in part.split("/")]
    pattern = "|".join(r"[-\s]+".join(map(re.escape, words)) for words in choices)
    heads = tuple(words[0].lower() for words in choices)
    return Part(
        re.compile(rf"(?<![A-Za-z])(?:{pattern})", re.IGNORECASE),
        heads if all(head.isascii() for head in heads) else (),
    )


def _words(choice: str) -> list[str]:
    return re.split(r"[-\s]+", choice.strip())


def _denied(found: re.Match[str]) -> bool:
    """True for “no guard” and “a guard is not needed”; “never without the guard” denies twice, so not."""
    if DENIAL.match(found.group()):
        return False
    before = re.split(r"[.;:!?]", found.string[: found.start()])[-1]
    after = re.split(r"[.;:!?]", found.string[found.end() :])[0]
    near = _DENIED_BEFORE.search(before)
    twice = bool(near) and bool(DENIAL.search(before[: near.start()] if near else ""))
    return (bool(near) and not twice) or bool(_DENIED_AFTER.match(after))


def any_stands_in(phrases: Iterable[str], text: str) -> bool:
    """True when one of the phrases is found."""
    return any(phrase(each).stands_in(text) for each in phrases)


def any_is_meant_in(phrases: Iterable[str], text: str) -> bool:
    """True when one of the phrases is found where it is not denied."""
    return any(phrase(each).is_meant_in(text) for each in phrases)


def sign_in(phrases: Iterable[str], text: str) -> bool:
    """True when one sentence that denies nothing holds a phrase."""
    told = tuple(phrases)
    return any(any_stands_in(told, sentence) for sentence in _undenied(text))


# Every rule asks the same texts, and a long-lived process asks them again at every save.
@lru_cache(maxsize=8192)
def _undenied(text: str) -> tuple[str, ...]:
    return tuple(sentence for sentence in SENTENCE.findall(text) if not DENIAL.search(sentence))


@lru_cache(maxsize=8192)
def one_line(text: str) -> str:
    """The words on one line, so that a phrase broken over two is still found."""
    return " ".join(text.split())
