"""The least method and job in which one thing sets a rule off, with as much of its needs as is asked."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import yaml

from generator.model.rules import Need, Rule
from generator.problems import Problem, ProblemLog, Span
from generator.safety.needs import PLACES
from generator.safety.required import AppliedRule, check_rules, rules_applied
from generator.safety.sections import SECTION, section_rules
from tests.safety.folder import project, read_job, read_method

CASES: Mapping[str, Any] = yaml.safe_load(
    (Path(__file__).parent / "rule_cases.yaml").read_text(encoding="utf-8")
)
NEUTRAL = "The colour of the door is settled with the architect."
EXPOSED = Span(file="method.yaml", line=1, column=1, text="format: 1")


@dataclass(frozen=True, slots=True, kw_only=True)
class Least:
    """What is in the files: the case's parts, controls by rank, and sentences by the place they stand in."""

    case: Mapping[str, Any]
    controls: Sequence[tuple[str, str]] = ()
    said: Mapping[str, Sequence[str]] = field(default_factory=dict)
    not_applicable: str = ""

    @property
    def method(self) -> str:
        """The method as text."""
        return yaml.safe_dump(self._method(), sort_keys=False, allow_unicode=True, width=10_000)

    @property
    def job(self) -> str:
        """The job as text."""
        return yaml.safe_dump(self._job(), sort_keys=False, allow_unicode=True, width=10_000)

    def _method(self) -> dict[str, Any]:
        roles = {f"m{number}": key for number, key in enumerate(self.case.get("materials", ()))}
        uses = list(self.case.get("uses", ()))
        return {
            "format": 1,
            "method": "M-1",
            "title": "Least",
            "stage": "second fixing",
            "summary": "Do it.",
            "materials": roles,
            "tools": ["pencil", *uses, *self.case.get("listed", ())],
            "hazards": [
                {
                    "hazard": "the-hazard",
                    "harms": ["the joiner"],
                    "controls": [
                        {rank: text, "who": "the joiner"}
                        for rank, text in (("administer", NEUTRAL), *self.controls)
                    ],
                }
            ],
            "sections": self._sections("method"),
            "stop_if": [NEUTRAL, *self.said.get("stop_if", ())],
            "steps": [self._step(roles, uses)],
        }

    def _step(self, roles: Mapping[str, str], uses: list[str]) -> dict[str, Any]:
        return {
            "title": "Do it",
            "do": [self.case.get("do", "Look at the opening."), *self.said.get("steps", ())],
            "why": "So that it is done.",
            "uses": ["pencil", *uses],
            "materials": list(roles),
            "minutes": 1,
            "hazards": ["the-hazard"],
            "activities": list(self.case.get("activities", ())),
            "where": list(self.case.get("where", ())),
            "hold": {"who": "supervisor", "before": " ".join([NEUTRAL, *self.said.get("holds", ())])},
        }

    def _job(self) -> dict[str, Any]:
        begun = self.case.get("begun", 2005)
        site = {"name": "Place", "where": list(self.case.get("place", ())), "occupied": self._text("site")}
        return {
            "format": 1,
            "job": "Least",
            "method": "M-1",
            "site": site | ({} if begun == "unknown" else {"building_begun": begun}),
            "client": {"name": "Client", "kind": "commercial", "does": [self._text("client")]},
            "people": [
                {"part": "owner of the cat", "counts_as": list(self.case.get("people", ()))},
                *(
                    {"part": each, "name": "N", "phone": "01632 960111"}
                    for each in self.said.get("people", ())
                ),
            ],
            "emergency": {"hurt": self._text("emergency")},
            "sections": self._sections("job"),
        }

    def _text(self, place: str) -> str:
        return " ".join([NEUTRAL, *self.said.get(place, ())])

    def _sections(self, which: str) -> dict[str, Any]:
        answered = [rule.key for rule in section_rules() if SECTION in rule.parts(which)]  # type: ignore[arg-type]
        own = {key for key in self.said if key not in PLACES and which == home_of(key)}
        lapse = {"applies": "no", "because": NEUTRAL, "decided_by": "the owner"}
        return {
            key: dict(lapse) if key == self.not_applicable else self._text(key) if key in own else NEUTRAL
            for key in answered
        }

    def problems(self, *, with_job: bool = True) -> list[Problem]:
        """What the rules say of it."""
        log = ProblemLog()
        job = read_job(self.job) if with_job else None
        check_rules(read_method(self.method), job, project(), log, exposures=self.exposed())
        return list(log)

    def applied(self) -> tuple[AppliedRule, ...]:
        """The rules that apply to it."""
        method, job = read_method(self.method), read_job(self.job)
        return rules_applied(method, job, project(), exposures=self.exposed())

    def exposed(self) -> Mapping[str, Span]:
        """What its day comes to."""
        return dict.fromkeys(self.case.get("exposures", ()), EXPOSED)

    def line_in(self, start: str) -> tuple[str, int]:
        """File and line of the one line of method or job that begins so."""
        for file, text in (("method.yaml", self.method), ("job.yaml", self.job)):
            for number, line in enumerate(text.splitlines(), 1):
                if line.startswith(start):
                    return file, number
        raise AssertionError(start)


def home_of(section: str) -> str:
    """The file a section's sentence is put in: the job where it may answer."""
    (rule,) = [rule for rule in section_rules() if rule.key == section]
    return "job" if SECTION in rule.job else "method"


def with_needs(case: Mapping[str, Any], rule: Rule, needs: Iterable[Need]) -> Least:
    """The case with the offered text of each need put where it belongs."""
    needs = tuple(needs)
    said: dict[str, list[str]] = {}
    for need in needs:
        if need.form == "say":
            said.setdefault(need.in_[0].value, []).append(_offered(need, case))
    controls = [(need.form, need.text.typed) for need in needs if need.form != "say"]
    return Least(case=case, controls=controls, said=said)


def _offered(need: Need, case: Mapping[str, Any]) -> str:
    names = " and ".join(case.get("uses", ())).replace("-", " ")
    return need.text.typed + (f" {names}." if any("tool's" in word.value for word in need.words) else "")
