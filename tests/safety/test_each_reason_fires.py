"""Every fault that is said to report a common reason for sending back is fired by a text that has it."""

from __future__ import annotations

import re
from collections.abc import Mapping

import pytest

from generator.model.jobs import Job
from generator.model.method import Method
from generator.model.reading import describe
from generator.problems import ProblemLog
from generator.reading.yaml_nodes import parse_yaml
from generator.safety.required import check_rules, check_sections
from generator.safety.returns import check_strangers, law
from generator.safety.sent_back import reasons_sent_back
from tests.safety.folder import JOB, METHOD, answered, project, read_job, without
from tests.safety.test_contradictions import CASES as CONTRADICTED
from tests.safety.test_emptiness import GLOVES, with_control
from tests.safety.test_sent_back import OTHER

REMAINS = re.compile(r"(?m)^    remains: \|\n(?:      .*\n)+")
TOLD = ' "Everything is as the construction phase plan sets out."'


def edited(text: str, *, old: str, new: str) -> str:
    """The text with what stands in it once or more replaced at its first place."""
    assert old in text, old
    return text.replace(old, new, 1)


def worn_alone() -> str:
    """The method whose glue has gloves against it and nothing else."""
    head, _, rest = METHOD.partition("  - hazard: glue-and-filler\n")
    before, _, after = rest.partition("    controls:\n")
    return f"{head}  - hazard: glue-and-filler\n{before}    controls:\n{GLOVES}{after.partition(GLOVES)[2]}"


def in_no_step(hazard: str) -> str:
    """The method with no step that names the hazard."""
    return re.sub(rf"(?m)^(    hazards: \[.*?)(?:, {hazard}\b|\b{hazard}, )", r"\1", METHOD)


FIRED_BY: Mapping[str, tuple[str, str]] = {
    "part-missing": (METHOD, edited(JOB, old='  address: "3 Mill Lane, Ottermere"\n', new="")),
    "section-bare": (METHOD, answered(JOB, "workplace", ' "As above"')),
    "section-copied": (METHOD, answered(answered(JOB, "workplace", TOLD), "briefing", TOLD)),
    "section-missing": (METHOD, without(JOB, "briefing")),
    "section-missing-or-not-applicable": (METHOD, without(JOB, "asbestos")),
    "blank-left": (
        METHOD,
        answered(JOB, "workplace", ' "The big hall, by the gate, date TBC."'),
    ),
    "hazard-in-no-step": (in_no_step("pin-through"), JOB),
    "step-without-hazard": (re.sub(r"(?m)^    hazards: \[low-platform\]\n", "", METHOD), JOB),
    "rule-step-hazard": (edited(METHOD, old="wood-dust, noise, lifting, ", new="noise, lifting, "), JOB),
    "hazard-ppe-alone": (worn_alone(), JOB),
    "control-empty": (with_control("Take care."), JOB),
    "control-bare": (with_control("Guards."), JOB),
    "control-worn": (
        edited(METHOD, old=GLOVES, new=GLOVES.replace("- ppe:", "- engineer:").replace("for", "worn for")),
        JOB,
    ),
    "words-vague": (edited(METHOD, old="Vacuum edge, wall", new="Be careful of hidden cables, wall"), JOB),
    "tool-not-on-list": (edited(METHOD, old="Vacuum edge, wall", new="Use the router on edge, wall"), JOB),
    "person-not-listed": (METHOD, edited(JOB, old="deputy: Josse Hethersedge", new="deputy: Wim Tarlow")),
    "name-not-listed": (
        METHOD,
        edited(JOB, old="Certificates are in the", new="Harl Quenby keeps the certificates in the"),
    ),
    "person-nameless": (
        METHOD,
        edited(JOB, old="part: first-aider on site, name: Owen Tacebury,", new="part: first-aider on site,"),
    ),
    "person-unreachable": (METHOD, edited(JOB, old=', phone: "07700 900281"', new="")),
    "basis-without-revision": (METHOD, edited(JOB, old="Drawing ORR-214, revision C", new="Latest drawing")),
    "approver-is-author": (
        METHOD,
        edited(JOB, old="written: {by: Colm Drayley", new="written: {by: Josse Hethersedge"),
    ),
    "dates-order": (METHOD, edited(JOB, old="review_by: 2027-05-14", new="review_by: 2026-05-14")),
    "too-long-to-use": (
        edited(METHOD, old="Glue holds to wood, not", new="Glue" + " word" * law().too_long + ", not"),
        JOB,
    ),
    "remains-missing": (REMAINS.sub("", METHOD, count=1), JOB),
    "remains-without-reason": (REMAINS.sub("    remains: Low.\n", METHOD, count=1), JOB),
    "remains-all-alike": (REMAINS.sub("    remains: Low with all of these in place.\n", METHOD), JOB),
    "law-revoked": (
        edited(
            METHOD, old="Safety data sheets stay", new=f"Under {law().revoked[0].named[0]} data sheets stay"
        ),
        JOB,
    ),
    "law-foreign": (edited(METHOD, old="Safety data sheets stay", new="Under OSHA data sheets stay"), JOB),
    "other-jobs-name": (METHOD, edited(JOB, old="by the kitchen yard", new="by Fennick Chapel")),
}


def contradictions() -> dict[str, tuple[str, str]]:
    """The same for each contradiction, from its case."""
    claimed = {case.code: case.claimed() for case in CONTRADICTED}
    return {code: (files["method"], files["job"]) for code, files in claimed.items()}


TEXTS = {**contradictions(), **FIRED_BY}
NAMED = sorted({code for reason in reasons_sent_back() for code in reason.faults})


def fired(method: str, job: str) -> set[str]:
    """The codes of everything that is reported of two files, beside another job."""
    log = ProblemLog()
    files = ((Method, method, "method.yaml"), (Job, job, "job.yaml"))
    told, bound = (describe(kind, parse_yaml(text, name, log), log) for kind, text, name in files)
    if told and bound:
        for check in (check_sections, check_rules):
            # A method's own faults are told of it alone, and not again beside each job.
            check(told, None, project(), log)
            check(told, bound, project(), log)
        check_strangers((told,), (bound, read_job(OTHER)), log)
    return {problem.code for problem in log}


def test_every_fault_named_has_its_text() -> None:
    assert set(TEXTS) >= set(NAMED)


@pytest.mark.parametrize("code", NAMED)
def test_a_fault_named_is_fired_by_its_text_and_not_by_the_demonstration(code: str) -> None:
    assert code in fired(*TEXTS[code])
    assert code not in fired(METHOD, JOB)
