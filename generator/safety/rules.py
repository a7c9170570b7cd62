"""The rulebook held against a method and a job: what a rule needs, makes mandatory and forbids to say."""

from __future__ import annotations

from dataclasses import dataclass

from generator.model.rules import SAY, Need
from generator.problems import ProblemLog, Span
from generator.safety.book import InForce
from generator.safety.claims import check_claims
from generator.safety.needs import hazards_at, meets, unmet, words_of
from generator.safety.phrases import one_line
from generator.safety.sections import section_rule
from generator.safety.subject import Subject
from generator.safety.triggers import Firing, firings


@dataclass(frozen=True, slots=True, kw_only=True)
class AppliedRule:
    """A rule that applies to a document. `set_aside` is the firm's reason, None where the rule is kept.

    `steps` are the numbers, from 1, of the steps that set it off; none where all the work is meant.
    """

    number: str
    title: str
    level: str
    steps: tuple[int, ...]
    sources: str
    set_aside: str | None


def rules_applied_to(subject: Subject) -> tuple[AppliedRule, ...]:
    """Each rule that applies, once, in the order of the book."""
    steps: dict[str, set[int]] = {}
    rules: dict[str, InForce] = {}
    for firing in firings(subject):
        rules.setdefault(firing.rule.number, firing.rule)
        steps.setdefault(firing.rule.number, set()).update(firing.steps)
    return tuple(_applied(rule, steps[number], subject) for number, rule in rules.items())


def _applied(rule: InForce, steps: set[int], subject: Subject) -> AppliedRule:
    return AppliedRule(
        number=rule.number,
        title=rule.title,
        level=rule.level,
        steps=tuple(sorted(steps)),
        sources=rule.sources_in(subject.nation),
        set_aside=one_line(rule.aside.typed) if rule.aside else None,
    )


def check_rules_of(subject: Subject, log: ProblemLog) -> None:
    """Report what each rule that applies, and is not set aside, misses or finds contradicted."""
    kept = [firing for firing in firings(subject) if firing.rule.aside is None]
    for firing in kept:
        _check_needs(firing, subject, log)
        _check_steps(firing, subject, log)
    check_claims(kept, subject, log)


def _check_needs(firing: Firing, subject: Subject, log: ProblemLog) -> None:
    for need in unmet(firing, subject):
        log.add(
            _need_code(need, firing),
            _need_place(need, firing, subject),
            warning=not firing.rule.must,
            rule=firing.rule.number,
            title=firing.rule.title,
            form=need.form,
            offer=one_line(need.text.typed),
            phrases="; ".join(words_of(need, firing)),
            where=_titles(need, subject),
            steps=", ".join(map(str, firing.steps)),
            hazard=one_line(firing.rule.rule.hazard.typed),
            source=firing.rule.sources_in(subject.nation),
        )


def _need_code(need: Need, firing: Firing) -> str:
    if need.form == SAY:
        return "rule-sentence"
    return "rule-control" if firing.steps else "rule-control-anywhere"


def _need_place(need: Need, firing: Firing, subject: Subject) -> Span:
    """What set the rule off; for one that always applies, where the sentence would stand."""
    if firing.first.kind != "always":
        return firing.first.span
    for place in need.in_:
        for _, file in reversed(subject.files):
            if place.value in file.sections.names:
                return file.sections.place(place.value)
            if place.value in file.places:
                return file.places[place.value]
    return firing.first.span


def _titles(need: Need, subject: Subject) -> str:
    rules = ((place.value, section_rule(place.value, subject.house)) for place in need.in_)
    return " or ".join(f"“{rule.title if rule else key}”" for key, rule in rules)


def _check_steps(firing: Firing, subject: Subject, log: ProblemLog) -> None:
    """A step that sets a rule off names a hazard that deals with it, unless no step does."""
    ranked = [need for need in firing.rule.rule.needs if need.form != SAY]
    dealing = {
        hazard.hazard.value
        for hazard in hazards_at(firing, subject)
        if any(meets(control, need) for control in hazard.controls for need in ranked)
    }
    for number in firing.steps if dealing else ():
        step = subject.method.steps[number - 1]
        if step.knows("hazards") and not dealing & {key.value for key in step.hazards}:
            log.add(
                "rule-step-hazard",
                _cause_in(firing, step.span, number, subject),
                warning=not firing.rule.must,
                rule=firing.rule.number,
                title=firing.rule.title,
                step=number,
                hazards=", ".join(sorted(dealing)),
            )


def _cause_in(firing: Firing, otherwise: Span, number: int, subject: Subject) -> Span:
    """The place of what sets the rule off in one step."""
    following = subject.method.steps[number].span.line if number < len(subject.method.steps) else None
    for cause in firing.causes:
        after = cause.span.file == otherwise.file and cause.span.line >= otherwise.line
        if after and (following is None or cause.span.line < following):
            return cause.span
    return otherwise
