"""What sets a rule off: tools, materials, work and places of steps, people, the site, worked exposures."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import chain
from typing import Final, Literal, TypeAlias

from generator.model.kinds import Kind
from generator.model.rules import When
from generator.model.scalars import Word
from generator.model.steps import Step
from generator.problems import Span
from generator.safety.book import InForce, rules_in_force
from generator.safety.likeness import material_words, tool_words
from generator.safety.phrases import one_line, sign_in
from generator.safety.subject import Subject

CauseKind: TypeAlias = Literal[
    "always", "tool", "material", "activity", "place", "person", "year", "no-year", "exposure"
]


@dataclass(frozen=True, slots=True, kw_only=True)
class Cause:
    """Something in the files that sets a rule off, and where it stands."""

    kind: CauseKind
    name: str
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Firing:
    """A rule that applies, with what set it off. `steps` are numbers from 1; none: all the work is meant."""

    rule: InForce
    causes: tuple[Cause, ...]
    steps: tuple[int, ...]

    @property
    def first(self) -> Cause:
        """What is shown to the reader."""
        return self.causes[0]

    @property
    def tool(self) -> str | None:
        """The tool that set it off."""
        return next((cause.name for cause in self.causes if cause.kind == "tool"), None)


def firings(subject: Subject) -> tuple[Firing, ...]:
    """Every rule that applies, in the order of the book; one that tools set off, once for each tool."""
    return tuple(
        firing
        for rule in rules_in_force(subject.house)
        for firing in _once(chain.from_iterable(_of(rule, when, subject) for when in rule.rule.when))
    )


def _once(fired: Iterator[Firing]) -> Iterator[Firing]:
    """Of several whens that the same thing fulfils the first counts."""
    seen: set[tuple[str, str]] = set()
    for firing in fired:
        key = (firing.first.kind, firing.first.name)
        if key not in seen:
            seen.add(key)
            yield firing


def _of(rule: InForce, when: When, subject: Subject) -> Iterator[Firing]:
    if not _nation_fits(when, subject):
        return
    around = _around(when, subject)
    if around is None:
        return
    parts = [part for part in PARTS if getattr(when, part)]
    if parts:
        yield from _of_steps(rule, when, parts, around, subject)
    elif when.always:
        yield Firing(rule=rule, causes=(_always(subject),), steps=())
    elif around:
        yield Firing(rule=rule, causes=around, steps=())


def _nation_fits(when: When, subject: Subject) -> bool:
    named = {nation.value for nation in when.nations}
    return not named or subject.nation is None or subject.nation in named


def _always(subject: Subject) -> Cause:
    file = subject.job or subject.method
    return Cause(kind="always", name="", span=file.places.get("sections", file.span))


def _around(when: When, subject: Subject) -> tuple[Cause, ...] | None:
    """What holds beside the steps; None when something that is asked does not hold."""
    found: list[Cause] = []
    for asked, look in AROUND.items():
        if getattr(when, asked):
            causes = look(when, subject)
            if causes is None:
                return None
            found += causes
    return tuple(found)


def _people(when: When, subject: Subject) -> tuple[Cause, ...] | None:
    kinds = {kind.value for kind in when.people}
    causes = tuple(
        Cause(kind="person", name=kind.value, span=kind.span)
        for person in (subject.job.people if subject.job else ())
        for kind in person.counts_as
        if kind.value in kinds
    )
    return causes or None


def _year(when: When, subject: Subject) -> tuple[Cause, ...] | None:
    """Without a job the year is not known yet, and what rests on it alone is not asked."""
    job = subject.job
    if job is None:
        return () if any(getattr(when, part) for part in PARTS) else None
    if subject.year is None:
        return (Cause(kind="no-year", name="", span=job.places.get("site", job.span)),)
    year, span = subject.year
    before = int(when.begun_before or 0)
    return (Cause(kind="year", name=str(year), span=span),) if year < before else None


def _exposures(when: When, subject: Subject) -> tuple[Cause, ...] | None:
    named = (word.value for word in when.exposures)
    causes = tuple(
        Cause(kind="exposure", name=name, span=subject.exposures[name])
        for name in named
        if name in subject.exposures
    )
    return causes or None


AROUND: Final[Mapping[str, Callable[[When, Subject], tuple[Cause, ...] | None]]] = {
    "people": _people,
    "begun_before": _year,
    "exposures": _exposures,
}


def _of_steps(
    rule: InForce, when: When, parts: list[str], around: tuple[Cause, ...], subject: Subject
) -> Iterator[Firing]:
    by_name: dict[str, list[tuple[int, tuple[Cause, ...]]]] = {}
    for number, step in enumerate(subject.method.steps, 1):
        found = [tuple(PARTS[part](when, step, subject)) for part in parts]
        for first in found[0] if all(found) else ():
            rest = (causes[0] for causes in found[1:])
            by_name.setdefault(first.name, []).append((number, (first, *rest, *around)))
    for met in by_name.values():
        steps = tuple(number for number, _ in met)
        yield Firing(rule=rule, causes=tuple(chain.from_iterable(causes for _, causes in met)), steps=steps)
    for cause in _beside_steps(when, parts, subject):
        if cause.name not in by_name:
            yield Firing(rule=rule, causes=(cause, *around), steps=())


def _beside_steps(when: When, parts: list[str], subject: Subject) -> Iterator[Cause]:
    """Listed and used in no step, or of the site: set off alone, and for all the work."""
    if parts == ["tools"]:
        yield from _first_of_each(_tools_among(when, subject.method.tools, subject))
    elif parts == ["materials"]:
        yield from _first_of_each(_materials_among(when, subject.materials().values(), subject))
    elif parts == ["where"]:
        yield from _first_of_each(_site(when, subject))


def _first_of_each(causes: Iterator[Cause]) -> Iterator[Cause]:
    seen: set[str] = set()
    for cause in causes:
        if cause.name not in seen:
            seen.add(cause.name)
            yield cause


def _tools(when: When, step: Step, subject: Subject) -> Iterator[Cause]:
    return _first_of_each(_tools_among(when, step.uses, subject))


def _tools_among(when: When, keys: tuple[Word, ...], subject: Subject) -> Iterator[Cause]:
    asked = {word.value for word in when.tools}
    for key in keys:
        if asked & tool_words(key.value, subject.catalogue):
            yield Cause(kind="tool", name=key.value, span=key.span)


def _materials(when: When, step: Step, subject: Subject) -> Iterator[Cause]:
    bound = subject.materials()
    for role in step.materials:
        if role.value in bound and _is_asked(when, bound[role.value].value, subject):
            yield Cause(kind="material", name=bound[role.value].value, span=role.span)


def _materials_among(when: When, keys: Iterable[Word], subject: Subject) -> Iterator[Cause]:
    for key in keys:
        if _is_asked(when, key.value, subject):
            yield Cause(kind="material", name=key.value, span=key.span)


def _is_asked(when: When, key: str, subject: Subject) -> bool:
    return bool({word.value for word in when.materials} & material_words(key, subject.catalogue))


def _activities(when: When, step: Step, subject: Subject) -> Iterator[Cause]:
    return _named_or_shown("activity", when.activities, step.activities, step, subject.catalogue.activities)


def _where(when: When, step: Step, subject: Subject) -> Iterator[Cause]:
    yield from _named_or_shown("place", when.where, step.where, step, subject.catalogue.places)
    if len([part for part in PARTS if getattr(when, part)]) > 1:
        yield from _site(when, subject)


def _site(when: When, subject: Subject) -> Iterator[Cause]:
    asked = {word.value for word in when.where}
    site = subject.job.site if subject.job else None
    for kind in site.where if site else ():
        if kind.value in asked:
            yield Cause(kind="place", name=kind.value, span=kind.span)


def _named_or_shown(
    kind: CauseKind,
    asked: tuple[Word, ...],
    named: tuple[Word, ...],
    step: Step,
    kinds: Mapping[str, Kind],
) -> Iterator[Cause]:
    """Named by the step, or shown by its words: a kind of work that is done is there, named or not."""
    for word in asked:
        spans = [other.span for other in named if other.value == word.value]
        spans += _shown(kinds.get(word.value), step)
        if spans:
            yield Cause(kind=kind, name=word.value, span=spans[0])


def _shown(kind: Kind | None, step: Step) -> list[Span]:
    signs = [sign.value for sign in kind.signs] if kind else []
    return [told.span for told in step.do if sign_in(signs, one_line(told.typed))]


PARTS: Final[Mapping[str, Callable[[When, Step, Subject], Iterator[Cause]]]] = {
    "tools": _tools,
    "materials": _materials,
    "activities": _activities,
    "where": _where,
}
