"""A task guide teaches: why, what to keep, what to ask on site; and gives no answers away."""

from __future__ import annotations

from dataclasses import asdict, replace

import pytest

from generator.documents.blocks import (
    Document,
    Glossary,
    MeasurementTable,
    MethodList,
    QuestionList,
    Section,
)
from generator.documents.guide import compose_guide
from generator.documents.index import Listed, compose_index
from generator.documents.task import Task
from tests.documents.finding import all_of, only


@pytest.fixture(scope="module")
def guide(guide_task: Task) -> Document:
    return compose_guide(guide_task)


def test_a_caption_names_no_scale_since_paper_and_phone_have_their_own(guide_task: Task) -> None:
    drawn = {
        order: replace(picture, title=f"Jamb, plan section 1:{1 if order.width > 100 else 2}", scale="1:1")
        for order, picture in guide_task.pictures.items()
    }
    guide = compose_guide(replace(guide_task, pictures=drawn))
    captions = {figure.caption for step in guide.steps() for figure in step.figures}
    assert captions == {"Jamb, plan section"}


def test_every_step_says_why(guide: Document) -> None:
    assert [step.number for step in guide.steps() if not step.why] == []


def test_a_job_s_sections_are_questions_to_ask_on_site(guide: Document) -> None:
    sections = {block.key: block for block in all_of(guide, Section)}
    asbestos = sections["section-asbestos"]
    assert asbestos.text == ()
    assert len(asbestos.questions) == 1


def test_no_answer_stands_anywhere_in_it(guide: Document, guide_task: Task) -> None:
    printed = str(asdict(guide))
    answers = [guide_task.told(question.answer) for question in guide_task.method.questions]
    assert answers
    assert [answer for answer in answers if answer in printed] == []


def test_every_question_of_the_method_is_asked(guide: Document, guide_task: Task) -> None:
    assert len(only(guide, QuestionList).questions) == len(guide_task.method.questions)


def test_it_names_no_person_of_a_job(guide: Document) -> None:
    holds = [step.hold for step in guide.steps() if step.hold]
    assert {(hold.releaser.role, hold.releaser.name) for hold in holds} == {("supervisor", "")}


def test_what_is_measured_is_asked_for_with_how_to_take_it(guide: Document, guide_task: Task) -> None:
    rows = only(guide, MeasurementTable).rows
    measured = [size.label.value for size in guide_task.method.sizes.values() if size.measured]
    assert [row.partition(". ")[0] for row in rows] == measured


def test_words_of_the_trade_stand_in_order(guide: Document) -> None:
    words = [term.word for term in only(guide, Glossary).terms]
    assert words == sorted(words)
    assert "quirk" in words


def test_evidence_names_its_criteria_in_words(guide: Document) -> None:
    asked = [step.evidence for step in guide.steps() if step.evidence]
    assert asked
    assert [one for evidence in asked for one in evidence.criteria if not one.text] == []


def test_the_index_lists_a_method_under_its_stage_with_its_jobs(
    guide_task: Task, statement_task: Task
) -> None:
    listed = Listed(guide=guide_task, links=(), statements=((statement_task, ()),))
    (stage,) = only(compose_index([listed]), MethodList).stages
    (method,) = stage.methods
    assert (stage.title, method.number) == ("Second fixing", "SF-07")
    assert [(job.title, job.issue.revision) for job in method.jobs] == [("Reading Room doors", "C01")]
    assert method.picture is not None
    assert method.picture.name == "jamb_section"
