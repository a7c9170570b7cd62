"""Phrases that rules look for: parts joined by + that all must be found, each a choice divided by /."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache

SENTENCE = re.compile(r"[^.;:!?]+")
DENIAL = re.compile(r"\b(not|never|no|without)\b", re.IGNORECASE)
_DENIED_BEFORE = re.compile(r"\b(no|not|never|without)( (a|an|the|any|more))?[ -]$", re.IGNORECASE)
_DENIED_AFTER = re.compile(
    r"^\S*( \w+){0,2} (is|are|was|were)( not|n't) (needed|required|necessary|used|available|worn|fitted)",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Phrase:
    """A phrase as typed, with a pattern for each of its parts."""

    typed: str
    parts: tuple[re.Pattern[str], ...]

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
        return all(any(not _denied(found) for found in part.finditer(text)) for part in self.parts)


@cache
def phrase(typed: str) -> Phrase:
    """The phrase that is typed so; each part matches the beginning of a word, hyphens count as spaces."""
    return Phrase(typed, tuple(_part(part) for part in typed.split("+")))


def _part(part: str) -> re.Pattern[str]:
    choices = "|".join(_choice(choice) for choice in part.split("/"))
    return re.compile(rf"(?<![A-Za-z])(?:{choices})", re.IGNORECASE)


def _choice(choice: str) -> str:
    return r"[-\s]+".join(re.escape(word) for word in re.split(r"[-\s]+", choice.strip()))


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
    sentences = (sentence for sentence in SENTENCE.findall(text) if not DENIAL.search(sentence))
    return any(any_stands_in(told, sentence) for sentence in sentences)


def one_line(text: str) -> str:
    """The words on one line, so that a phrase broken over two is still found."""
    return " ".join(text.split())
