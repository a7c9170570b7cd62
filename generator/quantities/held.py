"""Figures held against a document or a firm's own number: shown beside it, never as approval.

A size that stands outside is refused until somebody outside the firm has decided what is to become of it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TypeAlias

from generator.quantities.results import Finding, Findings, InputRefused
from generator.quantities.worked import Worked
from generator.quantities.workings import THIN, print_worked
from generator.wording import ENGLISH, Language
from generator.wording.results import HELD, HELD_AGAINST, HELD_RANGES, HELD_VERDICTS

UNDECIDED = "nobody yet"


@dataclass(frozen=True, slots=True, kw_only=True)
class Held:
    """A figure and what it is held against: from `least` to `most`, and always less than `under`.

    `code` says what the figure is and `against` what it is held to, both with their words elsewhere; `known`
    says how well that document's figure is known. `decided_by` is who decided where it stands outside.
    """

    code: str
    actual: Worked
    least: Worked | None = None
    most: Worked | None = None
    under: Worked | None = None
    against: str
    known: str
    decided_by: str = UNDECIDED

    @property
    def outside(self) -> bool:
        """Whether the figure stands outside what it is held against."""
        return bool(self.crossed)

    @property
    def crossed(self) -> Findings:
        """The limit that the figure crosses, as a finding; empty where it stands inside."""
        sides = (
            ("held-low", self.least, self.least is not None and self.actual < self.least),
            ("held-high", self.most, self.most is not None and self.actual > self.most),
            ("held-reached", self.under, self.under is not None and self.actual >= self.under),
        )
        return tuple(
            Finding(code=code, limit=limit, actual=self.actual, about=HELD[self.code])
            for code, limit, broken in sides
            if broken
        )

    @property
    def may_cross(self) -> Findings:
        """The same said of an end of its limits, which it may come to."""
        return tuple(replace(finding, code="held-may-cross") for finding in self.crossed)

    @property
    def verdict(self) -> str:
        """The code of the words that say how it stands, by whom it was decided included."""
        return self.decided_by if self.outside else "inside"


Against: TypeAlias = tuple[Held, ...]

DECIDERS = (UNDECIDED, "designer", "building control")


def decider(word: str | None) -> str:
    """Who decided on what stands outside; InputRefused for a word that is not offered."""
    if word is not None and word not in DECIDERS:
        raise InputRefused("word-not-offered", "decided_by", found=word, known=", ".join(DECIDERS))
    return word or UNDECIDED


def undecided(held: Sequence[Held]) -> Findings:
    """What stands outside with nobody having decided on it."""
    return tuple(finding for one in held if one.decided_by == UNDECIDED for finding in one.crossed)


def range_words(held: Held, language: Language = ENGLISH, *, space: str = THIN) -> str:
    """What the figure is held to, such as “150 to 220 mm”."""
    given = (("least", held.least), ("most", held.most), ("under", held.under))
    form = " ".join(name for name, limit in given if limit is not None)
    sizes = {name: print_worked(limit).text(space) if limit else "" for name, limit in given}
    return language.say(HELD_RANGES[form], **sizes)


def held_words(held: Held, known: str, language: Language = ENGLISH, *, space: str = THIN) -> str:
    """The figure, what it is held against and how it stands, on one line; `known` is said in words."""
    return language.say(
        "%(what)s %(actual)s; %(range)s by %(against)s, %(known)s: %(verdict)s",
        what=language.say(HELD[held.code]),
        actual=print_worked(held.actual).text(space),
        range=range_words(held, language, space=space),
        against=language.say(HELD_AGAINST[held.against]),
        known=known,
        verdict=language.say(HELD_VERDICTS[held.verdict]),
    )
