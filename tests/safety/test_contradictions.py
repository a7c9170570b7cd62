"""A section may not claim what the rest of the method or the job contradicts."""

from __future__ import annotations

from dataclasses import dataclass

import pytest

from generator.problems import Problem, Severity
from generator.safety.required import check_rules
from tests.safety.folder import JOB, METHOD, answered, line_of, problems, said

LAPSE = """
    applies: no
    because: "Looked into on site and set down in the survey of this job."
    decided_by: "Marit Sallowfield, site supervisor\""""

STEPS = """
steps:
  - title: Look
    do: ["%(do)s"]
    why: "So that it is known."
    uses: [%(tool)s]
    minutes: 1
    check: {what: "Everything is written down", how: "Read it back."}
    hold: {who: supervisor, before: "the next step"}
"""


def quiet(*, tool: str = "pencil", material: str = "", do: str = "Look at the opening.") -> str:
    """The method cut down to one tool, at most one material, and one action."""
    head, _, rest = METHOD.partition("\nmaterials:\n")
    middle = rest[rest.index("\nhazards:\n") : rest.index("\nsteps:\n")]
    bound = f"\nmaterials:\n  stuff: {material}" if material else ""
    return f"{head}{bound}\ntools:\n  - {tool}{middle}{STEPS % {'do': do, 'tool': tool}}"


def begun(year: int | None) -> str:
    """The job in a building of that year, or of no year."""
    return JOB.replace("  building_begun: 1998\n", f"  building_begun: {year}\n" if year else "")


STAIRS = JOB.replace("  where: [occupied,", "  where: [stair, occupied,", 1)
NO_LEARNER = JOB.replace(", counts_as: [learner]", "", 1)


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """A claim in one file, what contradicts it, and the same claim beside something that does not.

    `against` begins the line that contradicts, in the method or in the job.
    """

    section: str
    claim: str = LAPSE
    claimed_in: str = "method"
    method: str
    job: str = JOB
    against: str
    against_in: str = "method"
    code: str
    severity: Severity = Severity.ERROR
    quiet_method: str
    quiet_job: str = JOB

    def claimed(self) -> dict[str, str]:
        """Both files with the claim made, the contrary beside it."""
        return self._with_claim(self.method, self.job)

    def claimed_quietly(self) -> dict[str, str]:
        """Both files with the claim made and nothing against it."""
        return self._with_claim(self.quiet_method, self.quiet_job)

    def _with_claim(self, method: str, job: str) -> dict[str, str]:
        files = {"method": method, "job": job}
        return files | {self.claimed_in: answered(files[self.claimed_in], self.section, self.claim)}


def contradicted(method: str, job: str = JOB) -> list[Problem]:
    """The contradictions reported."""
    return [each for each in problems(method, job, check=check_rules) if "contradicted" in each.code]


CASES = [
    Case(
        section="asbestos",
        claimed_in="job",
        code="contradicted-by-year",
        against="  building_begun:",
        against_in="job",
        method=quiet(),
        job=begun(1999),
        quiet_method=quiet(),
        quiet_job=begun(2000),
    ),
    Case(
        section="asbestos",
        claimed_in="job",
        code="contradicted-by-no-year",
        against="site:",
        against_in="job",
        method=quiet(),
        job=begun(None),
        quiet_method=quiet(),
        quiet_job=begun(2004),
    ),
    Case(
        section="old_coatings",
        claimed_in="job",
        code="contradicted-by-tool",
        against="    uses:",
        method=quiet(tool="block-plane"),
        job=begun(1991),
        quiet_method=quiet(tool="block-plane"),
        quiet_job=begun(1992),
    ),
    Case(
        section="old_coatings",
        claimed_in="job",
        code="contradicted-by-step",
        against="    do:",
        method=quiet(do="Sand the old door down."),
        job=begun(1972),
        quiet_method=quiet(do="Do not sand the old door."),
        quiet_job=begun(1972),
    ),
    Case(
        section="height",
        code="contradicted-by-tool",
        against="    uses:",
        method=quiet(tool="hop-up"),
        quiet_method=quiet(tool="pencil"),
    ),
    Case(
        section="height",
        code="contradicted-by-step",
        against="    do:",
        method=quiet(do="Stand a stepladder in the opening."),
        quiet_method=quiet(do="No stepladder is used."),
    ),
    Case(
        section="height",
        code="claim-contradicted-by-tool",
        against="    uses:",
        claim=' "All from the floor: there are no steps and no ladder in this work."',
        method=quiet(tool="stepladder"),
        quiet_method=quiet(tool="hop-up"),
    ),
    Case(
        section="services",
        claimed_in="job",
        code="contradicted-by-tool",
        against="    uses:",
        method=quiet(tool="pin-gun"),
        quiet_method=quiet(tool="nail-punch"),
    ),
    Case(
        section="services",
        claimed_in="job",
        code="contradicted-by-step",
        against="    do:",
        method=quiet(do="Screw the block to the wall."),
        quiet_method=quiet(do="Lean the block on the wall. Never screw it to the wall."),
    ),
    Case(
        section="noise_and_vibration",
        code="contradicted-by-tool",
        against="    uses:",
        method=quiet(tool="mitre-saw"),
        quiet_method=quiet(tool="hand-saw"),
    ),
    Case(
        section="substances",
        code="contradicted-by-tool",
        against="    uses:",
        method=quiet(tool="mitre-saw"),
        quiet_method=quiet(tool="hand-saw"),
    ),
    Case(
        section="substances",
        code="contradicted-by-material",
        against="  stuff:",
        method=quiet(material="wood-glue"),
        quiet_method=quiet(material="torus"),
    ),
    Case(
        section="structure",
        code="contradicted-by-step",
        against="    do:",
        method=quiet(do="Notch the joist for the pipe."),
        quiet_method=quiet(do="Look at the joist."),
    ),
    Case(
        section="handling",
        code="contradicted-by-tool",
        against="    uses:",
        method=quiet(tool="board-lifter"),
        quiet_method=quiet(tool="hand-saw"),
    ),
    Case(
        section="handling",
        code="claim-contradicted-by-tool",
        against="    uses:",
        claim=' "The heaviest piece is two kilograms; no lifting equipment is used."',
        method=quiet(tool="board-lifter"),
        quiet_method=quiet(tool="hand-saw"),
    ),
    Case(
        section="fire_and_escape",
        code="claim-contradicted-by-tool",
        against="    uses:",
        claim=' "There is no flame and no spark in this work; waste goes out daily."',
        method=quiet(tool="hot-air-gun"),
        quiet_method=quiet(tool="pencil"),
    ),
    Case(
        section="waste",
        code="claim-contradicted-by-material",
        against="  stuff:",
        claim=' "Offcuts in bags; there is no hazardous waste from this work."',
        method=quiet(material="paint-stripper"),
        quiet_method=quiet(material="torus"),
    ),
    Case(
        section="waste",
        code="claim-contradicted-by-material",
        against="  stuff:",
        claim=' "Offcuts in bags; there is no hazardous waste from this work."',
        method=quiet(material="wood-glue"),
        quiet_method=quiet(material="torus"),
        severity=Severity.WARNING,
    ),
    Case(
        section="height",
        code="contradicted-by-place",
        against="  where:",
        against_in="job",
        method=quiet(),
        job=STAIRS,
        quiet_method=quiet(),
    ),
    Case(
        section="competence",
        claimed_in="job",
        code="contradicted-by-person",
        against="  - {part: apprentice",
        against_in="job",
        method=quiet(),
        quiet_method=quiet(),
        quiet_job=NO_LEARNER,
    ),
]


def named(case: Case) -> str:
    return f"{case.section}-{case.code}"


@pytest.mark.parametrize("case", CASES, ids=named)
def test_a_contradicted_claim_is_reported_with_both_places(case: Case) -> None:
    files = case.claimed()
    (problem,) = [each for each in contradicted(**files) if each.code == case.code]
    line = line_of(files[case.against_in], case.against)
    assert problem.values["place"] == f"{case.against_in}.yaml:{line}"
    assert problem.severity is case.severity
    assert problem.span is not None and problem.span.file == f"{case.claimed_in}.yaml"
    assert problem.span.text.strip().startswith(("because:", f"{case.section}:"))


@pytest.mark.parametrize("case", CASES, ids=named)
def test_the_same_claim_with_nothing_against_it_stands(case: Case) -> None:
    assert [said(problem) for problem in contradicted(**case.claimed_quietly())] == []


def test_a_contradiction_says_why_and_what_to_do() -> None:
    job = answered(begun(1998), "asbestos", LAPSE)
    (problem,) = contradicted(quiet(), job)
    assert said(problem) == (
        f"“Asbestos” is said not to apply, but the building was begun in 1998 "
        f"(job.yaml:{line_of(JOB, '  building_begun:')}).\n"
        "Rule R40: A building from before 2000 may hold asbestos in boards, coatings, tiles, lagging and "
        "door cores, so the survey or other evidence has to be named. "
        "Answer the section, or correct the year."
    )


def test_a_tool_on_the_list_and_in_a_step_is_one_contradiction() -> None:
    method = answered(quiet(tool="hop-up"), "height", LAPSE)
    assert len(contradicted(method)) == 1


def test_a_claim_in_the_method_meets_the_job_that_applies_it() -> None:
    method = answered(quiet(), "substances", LAPSE)
    job = JOB.replace("materials:\n", "materials:\n  stuff: wood-glue\n")
    (problem,) = contradicted(method, job)
    assert problem.values["place"] == f"job.yaml:{line_of(job, '  stuff:')}"


def test_a_place_and_a_person_against_a_claim_are_named() -> None:
    (place,) = contradicted(answered(quiet(), "height", LAPSE), STAIRS)
    assert said(place) == (
        "“Work at height” is said not to apply, but the work is in a place “stair” "
        f"(job.yaml:{line_of(STAIRS, '  where:')}).\n"
        "Rule R55: A fall down the flight, most of all while something is carried or a balustrade is out. "
        "Answer the section, or take the place out."
    )
    (person,) = contradicted(quiet(), answered(JOB, "competence", LAPSE))
    assert said(person) == (
        "“Competence, instruction and supervision” is said not to apply, "
        "but someone here counts as “learner” "
        f"(job.yaml:{line_of(JOB, '  - {part: apprentice')}).\n"
        "Rule R91: A learner does what he has seen, not what he has been taught. Answer the section."
    )
