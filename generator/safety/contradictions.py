"""What a section claims against what the rest of the method and the job say."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Literal

from pydantic import BaseModel, ConfigDict, Field, model_validator

from generator.model.catalogue import Tool
from generator.model.prose import Prose
from generator.model.scalars import Word
from generator.model.sections import SectionAnswer
from generator.problems import ProblemLog, Span
from generator.safety.sections import SectionRule, section_rule
from generator.safety.subject import Subject
from generator.safety.tables import table

NOT_APPLICABLE = "not_applicable"
POWERED = frozenset({"power tool", "machine"})
DENIAL = re.compile(r"\b(not|never|no|without)\b", re.IGNORECASE)
SENTENCE = re.compile(r"[^.;:!?]+")


class ToolSigns(BaseModel):
    """Tools by parts of their key or label, and by kind; `powered` counts only power tools and machines."""

    model_config = ConfigDict(frozen=True, extra="forbid")
    powered: tuple[str, ...] = ()
    named: tuple[str, ...] = ()
    kinds: tuple[str, ...] = ()


class MaterialSigns(BaseModel):
    """Materials by parts of their key or label, and by kind."""

    model_config = ConfigDict(frozen=True, extra="forbid")
    named: tuple[str, ...] = ()
    kinds: tuple[str, ...] = ()


class Contradiction(BaseModel):
    """What a section may not claim beside one of these signs; `why` is said to the reader."""

    model_config = ConfigDict(frozen=True, extra="forbid")
    section: str
    claims: Literal["not_applicable"] | tuple[re.Pattern[str], ...]
    begun_before: int | None = None
    tools: ToolSigns | None = None
    materials: MaterialSigns | None = None
    steps: tuple[re.Pattern[str], ...] = ()
    severity: Literal["error", "warning"] = "error"
    why: str = Field(min_length=1)

    @model_validator(mode="after")
    def _whole(self) -> Contradiction:
        if section_rule(self.section) is None:
            raise ValueError(f"no section is called {self.section}")
        if not self.by_signs and self.begun_before is None:
            raise ValueError(f"{self.section}: nothing contradicts it")
        if self.begun_before is not None and self.claims != NOT_APPLICABLE:
            raise ValueError(f"{self.section}: the year contradicts only that it does not apply")
        return self

    @property
    def by_signs(self) -> bool:
        """True when tools, materials or steps are looked at, and not the year alone."""
        return bool(self.tools or self.materials or self.steps)


@cache
def contradictions() -> tuple[Contradiction, ...]:
    """All contradictions in their order."""
    return tuple(Contradiction.model_validate(entry) for entry in table("contradictions")["contradictions"])


@dataclass(frozen=True, slots=True, kw_only=True)
class Claim:
    """What a section claims and where; `words` is empty when it claims not to apply."""

    rule: SectionRule
    words: str
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Sign:
    """Something in the files against a claim: a year, a tool, a material or a step."""

    kind: Literal["year", "no-year", "tool", "material", "step"]
    name: str
    span: Span


def check_contradictions(subject: Subject, log: ProblemLog) -> None:
    """Report each claim of a section that something else in the method or the job contradicts."""
    for contradiction in contradictions():
        for claim in _claims(contradiction, subject):
            for sign in _signs(contradiction, subject):
                _report(contradiction, claim, sign, log)


def _claims(contradiction: Contradiction, subject: Subject) -> Iterator[Claim]:
    rule = section_rule(contradiction.section)
    assert rule is not None
    for answer in subject.answers(contradiction.section):
        if contradiction.claims == NOT_APPLICABLE:
            if not answer.applies:
                yield Claim(rule=rule, words="", span=_reason_place(answer))
        elif answer.text is not None:
            yield from _said(rule, contradiction, answer.text)


def _reason_place(answer: SectionAnswer) -> Span:
    return answer.because.span if answer.because else answer.span


def _said(rule: SectionRule, contradiction: Contradiction, text: Prose) -> Iterator[Claim]:
    assert isinstance(contradiction.claims, tuple)
    for pattern in contradiction.claims:
        found = re.search(pattern, one_line(text))
        if found:
            yield Claim(rule=rule, words=found.group().strip(), span=text.span)
            return


def one_line(prose: Prose) -> str:
    """The words as typed on one line, so that a phrase broken over two lines is still found."""
    return " ".join(prose.typed.split())


def _signs(contradiction: Contradiction, subject: Subject) -> Iterator[Sign]:
    year = tuple(_year(contradiction.begun_before, subject))
    if contradiction.begun_before is not None and not year:
        return
    if not contradiction.by_signs:
        yield from year
    yield from _first(_tools(contradiction.tools, subject))
    yield from _first(_materials(contradiction.materials, subject))
    yield from _steps(contradiction.steps, subject)


def _first(signs: Iterator[Sign]) -> Iterator[Sign]:
    """The first sign of each name: a tool on the list and in five steps is one contradiction."""
    seen: set[str] = set()
    for sign in signs:
        if sign.name not in seen:
            seen.add(sign.name)
            yield sign


def _year(before: int | None, subject: Subject) -> Iterator[Sign]:
    if before is None or subject.job is None:
        return
    if subject.year is None:
        job = subject.job
        yield Sign(kind="no-year", name="", span=job.places.get("site", job.span))
    elif subject.year[0] < before:
        yield Sign(kind="year", name=str(subject.year[0]), span=subject.year[1])


def _tools(signs: ToolSigns | None, subject: Subject) -> Iterator[Sign]:
    if signs is None:
        return
    for key in subject.tools():
        if _tool_matches(signs, key, subject.catalogue.tools.get(key.value)):
            yield Sign(kind="tool", name=key.value, span=key.span)


def _tool_matches(signs: ToolSigns, key: Word, tool: Tool | None) -> bool:
    names = _names(key, tool.label if tool else None)
    kind = tool.kind.value if tool else None
    powered = kind is None or kind in POWERED
    return (
        kind in signs.kinds
        or _has(names, signs.named)
        or (powered and _has(names, signs.powered))
    )  # fmt: skip


def _materials(signs: MaterialSigns | None, subject: Subject) -> Iterator[Sign]:
    if signs is None:
        return
    for key in subject.materials():
        material = subject.catalogue.materials.get(key.value)
        names = _names(key, material.label if material else None)
        if _has(names, signs.named) or (material is not None and material.kind.value in signs.kinds):
            yield Sign(kind="material", name=key.value, span=key.span)


def _names(key: Word, label: Word | None) -> str:
    return f"{key.value} {label or ''}".casefold()


def _has(names: str, stems: tuple[str, ...]) -> bool:
    return any(re.search(rf"\b{re.escape(stem)}", names) for stem in stems)


def _steps(patterns: tuple[re.Pattern[str], ...], subject: Subject) -> Iterator[Sign]:
    for number, told in subject.sentences():
        for sentence in SENTENCE.findall(one_line(told)):
            if not DENIAL.search(sentence) and any(p.search(sentence.casefold()) for p in patterns):
                yield Sign(kind="step", name=f"{number}", span=told.span)
                break


NOT_APPLICABLE_CODES: Mapping[str, str] = {
    "year": "contradicted-by-year",
    "no-year": "contradicted-by-no-year",
    "tool": "contradicted-by-tool",
    "material": "contradicted-by-material",
    "step": "contradicted-by-step",
}
CLAIM_CODES: Mapping[str, str] = {
    "tool": "claim-contradicted-by-tool",
    "material": "claim-contradicted-by-material",
    "step": "claim-contradicted-by-step",
}


def _report(contradiction: Contradiction, claim: Claim, sign: Sign, log: ProblemLog) -> None:
    codes = CLAIM_CODES if claim.words else NOT_APPLICABLE_CODES
    log.add(
        codes[sign.kind],
        claim.span,
        warning=contradiction.severity == "warning",
        title=claim.rule.title,
        words=claim.words,
        name=sign.name,
        place=f"{sign.span.file}:{sign.span.line}",
        why=contradiction.why,
    )
