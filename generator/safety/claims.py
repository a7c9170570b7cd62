"""What a section claims (that it does not apply, or a phrase) against what a rule finds in the files."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from generator.model.sections import SectionAnswer
from generator.problems import ProblemLog, Span
from generator.safety.phrases import SENTENCE, one_line, phrase
from generator.safety.sections import section_rule
from generator.safety.subject import Subject
from generator.safety.triggers import Cause, Firing


@dataclass(frozen=True, slots=True, kw_only=True)
class Claim:
    """What a section claims and where; `words` is empty when it claims not to apply."""

    key: str
    words: str
    span: Span

    @property
    def codes(self) -> Mapping[str, str]:
        """The fault for each kind of thing that can stand against the claim."""
        return CLAIM_CODES if self.words else NOT_APPLICABLE_CODES


def check_claims(firings: Sequence[Firing], subject: Subject, log: ProblemLog) -> None:
    """Report each claim once for each thing against it, by the strictest rule."""
    seen: set[tuple[str, str, str, str]] = set()
    for firing in sorted(firings, key=lambda firing: not firing.rule.must):
        for claim in _claims(firing, subject):
            cause = _against(firing, claim)
            found = (claim.key, claim.words, cause.kind, cause.name) if cause else None
            if cause and found and found not in seen:
                seen.add(found)
                _report(firing, claim, cause, subject, log)


def _claims(firing: Firing, subject: Subject) -> Iterator[Claim]:
    for key in firing.rule.rule.sections:
        for answer in subject.answers(key.value):
            if not answer.applies:
                place = answer.because.span if answer.because else answer.span
                yield Claim(key=key.value, words="", span=place)
    for section, phrases in firing.rule.rule.never_say.items():
        for answer in subject.answers(section):
            words = _said(answer, [word.value for word in phrases])
            if words and answer.text:
                yield Claim(key=section, words=words, span=answer.text.span)


def _said(answer: SectionAnswer, phrases: list[str]) -> str:
    """The words found, to the end of their sentence; empty when no phrase is found."""
    for sentence in SENTENCE.findall(one_line(answer.text.typed) if answer.text else ""):
        for typed in phrases:
            found = phrase(typed).parts[0].search(sentence)
            if found and phrase(typed).stands_in(sentence):
                return str(sentence)[found.start() :].strip()
    return ""


def _against(firing: Firing, claim: Claim) -> Cause | None:
    return next((cause for cause in firing.causes if cause.kind in claim.codes), None)


NOT_APPLICABLE_CODES: Final[Mapping[str, str]] = {
    "year": "contradicted-by-year",
    "no-year": "contradicted-by-no-year",
    "tool": "contradicted-by-tool",
    "material": "contradicted-by-material",
    "activity": "contradicted-by-step",
    "place": "contradicted-by-place",
    "person": "contradicted-by-person",
    "exposure": "contradicted-by-exposure",
}
CLAIM_CODES: Final[Mapping[str, str]] = {
    "tool": "claim-contradicted-by-tool",
    "material": "claim-contradicted-by-material",
    "activity": "claim-contradicted-by-step",
    "place": "claim-contradicted-by-place",
}


def _report(firing: Firing, claim: Claim, cause: Cause, subject: Subject, log: ProblemLog) -> None:
    rule = section_rule(claim.key, subject.house)
    log.add(
        claim.codes[cause.kind],
        claim.span,
        warning=not firing.rule.must,
        rule=firing.rule.number,
        title=rule.title if rule else claim.key,
        words=claim.words,
        name=", ".join(map(str, firing.steps)) if cause.kind == "activity" else cause.name,
        place=f"{cause.span.file}:{cause.span.line}",
        why=one_line(firing.rule.rule.hazard.typed),
    )
