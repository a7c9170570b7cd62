"""Words that are not controls, and controls that say too little."""

from __future__ import annotations

import pytest

from generator.problems import Problem, Severity
from generator.safety.emptiness import empty_words
from generator.safety.required import check_rules
from tests.safety.folder import JOB, METHOD, line_of, problems, said

CODES = ("control-empty", "control-bare", "control-worn", "words-vague", "hazard-ppe-alone")
GLOVES = '      - ppe: "Nitrile gloves for adhesive and filler."\n'
AREA = (
    '      - administer: "Cut all pieces of one opening together; sawing only in the hours the job states."\n'
)


def found(method: str = METHOD, job: str = JOB, *, house: str | None = None) -> list[Problem]:
    return [each for each in problems(method, job, house=house, check=check_rules) if each.code in CODES]


def with_control(text: str) -> str:
    """The demonstration with one more control."""
    assert METHOD.count(AREA) == 1
    return METHOD.replace(AREA, f'      - administer: "{text}"\n        who: supervisor\n{AREA}')


@pytest.mark.parametrize(
    "text",
    [
        "Take care.",
        "Be careful!",
        "Operatives to take care",
        "Use common sense at the saw.",
        "Trained operatives only.",
        "Fully trained and competent staff.",
        "PPE to be worn as required.",
        "Good housekeeping.",
        "As per manufacturer.",
    ],
)
def test_words_alone_are_no_control(text: str) -> None:
    method = with_control(text)
    (problem,) = found(method)
    assert problem.code == "control-empty" and problem.severity is Severity.ERROR
    assert problem.span is not None and problem.span.line == line_of(method, f'      - administer: "{text}"')


def test_better_words_are_offered() -> None:
    (problem,) = found(with_control("Take care."))
    assert said(problem) == (
        "“Take care” is not a control.\n"
        "Say who does what, with what, when, to what limit, such as “The person sawing keeps both hands "
        "outside the marked zone until the blade stands still.”"
    )


def test_empty_words_beside_a_control_are_a_warning() -> None:
    (problem,) = found(with_control("The second person holds the far end level, and extra care is taken."))
    assert (problem.code, problem.severity) == ("words-vague", Severity.WARNING)


@pytest.mark.parametrize("text", ["Guards.", "Training", "Tool box talk.", "Signs and barriers"])
def test_a_bare_word_is_no_control(text: str) -> None:
    (problem,) = found(with_control(text))
    assert problem.code == "control-bare"


def test_a_short_control_that_names_a_thing_and_a_place_stands() -> None:
    assert found(with_control("Leads along the edge.")) == []


def test_empty_words_in_a_step_and_in_a_section_are_reported() -> None:
    step = METHOD.replace('      - "Vacuum edge, wall and floor."', '      - "Be careful of hidden cables."')
    assert [each.code for each in found(step)] == ["words-vague"]
    job = JOB.replace("None required by the site rules", "Work safely. None required by the site rules")
    assert [each.code for each in found(job=job)] == ["words-vague"]


def test_what_is_worn_may_not_stand_alone() -> None:
    head, _, rest = METHOD.partition("  - hazard: glue-and-filler\n")
    before, _, after = rest.partition("    controls:\n")
    _, _, remains = after.partition(GLOVES)
    method = f"{head}  - hazard: glue-and-filler\n{before}    controls:\n{GLOVES}{remains}"
    (problem,) = found(method)
    assert problem.code == "hazard-ppe-alone"
    assert problem.span is not None and problem.span.line == line_of(method, "  - hazard: glue-and-filler")


def test_what_is_worn_may_not_pass_for_something_stronger() -> None:
    method = METHOD.replace(GLOVES, GLOVES.replace("- ppe:", "- engineer:").replace("for", "worn for"))
    (problem,) = found(method)
    assert (problem.code, problem.values["name"]) == ("control-worn", "gloves")


def test_a_house_adds_words_it_does_not_want() -> None:
    house = "format: 1\nwords:\n  - avoid: at all times\n    write: While the saw runs.\n"
    method = with_control("Ear defenders stay on at all times by the second person.")
    assert found(method) == []
    (problem,) = found(method, house=house)
    assert problem.values["write"] == "While the saw runs."


def test_each_pattern_offered_passes_as_a_control() -> None:
    for each in empty_words().avoid:
        if each.write.startswith("“"):
            text = each.write.split("”")[0].lstrip("“")
            assert found(with_control(text.replace('"', "'"))) == [], text
