"""The tutor pack counts what evidences each criterion, in one method and over all of them."""

from __future__ import annotations

from dataclasses import replace

import pytest

from generator.documents.blocks import AnswerKey, Document, MarkingPoints, Table, Text
from generator.documents.matrix import library_matrix, task_matrix, unevidenced
from generator.documents.task import Task
from generator.documents.tutor import compose_library, compose_tutor
from generator.model.folder import Project
from generator.model.tables import Table as CriteriaTable
from generator.problems import ProblemLog
from generator.quantities.work import work_out
from generator.wording import ENGLISH
from tests.documents.finding import only


@pytest.fixture(scope="module")
def pack(guide_task: Task) -> Document:
    return compose_tutor(guide_task)


def _cells(table: Table) -> dict[str, dict[str, str]]:
    heads = [column.head for column in table.columns[1:]]
    return {row[0]: dict(zip(heads, row[1:], strict=True)) for row in table.rows}


def test_every_question_has_its_answer(pack: Document, guide_task: Task) -> None:
    answers = only(pack, AnswerKey).answers
    assert len(answers) == len(guide_task.method.questions)
    first = answers[0]
    assert first.question == "Why is one packer thickness used all round when the readings differ?"
    assert first.answer.startswith("The step between packer and lining is seen side-on")
    assert (first.step, first.criteria) == (2, ("P3",))


def test_marking_points_say_what_is_asked_checked_and_counted_against(pack: Document) -> None:
    mark = next(mark for mark in only(pack, MarkingPoints).marks if mark.step == 8)
    assert mark.title == "Cut the head and set it dry"
    assert mark.ask == "The test mitre, kept, and a photo of the head on its marks."
    assert mark.criteria == ("P3", "P5")
    assert mark.points == ("**Head between short points:** within 1\u2009mm. Tape along the inner edge.",)
    assert mark.mistakes == ("Short point and long point changed over: the head comes out two widths short.",)


def test_a_matrix_shows_where_each_criterion_is_evidenced(pack: Document) -> None:
    cells = _cells(only(pack, Table))
    assert cells["Step 8: Cut the head and set it dry"] == {
        "P1": "", "P2": "", "P3": "E", "P4": "", "P5": "E", "P6": "",
    }  # fmt: skip
    assert cells["Question 4"]["P1"] == "Q"
    counted = {code: sum(1 for row in list(cells.values())[:-1] if row[code]) for code in cells["Question 4"]}
    assert cells["Times evidenced"] == {code: str(count) for code, count in counted.items()}


def test_a_criterion_that_nothing_evidences_is_counted_none(guide_task: Task) -> None:
    method = guide_task.method.model_copy(update={"steps": guide_task.method.steps[:1], "questions": ()})
    bare = replace(guide_task, ledger=replace(guide_task.ledger, method=method))
    assert _cells(task_matrix(bare))["Times evidenced"]["P3"] == "none"


@pytest.fixture(scope="module")
def library(project: Project) -> tuple[Task, ...]:
    return tuple(
        Task(
            project=project,
            ledger=work_out(method, None, project, ProblemLog()),
            pictures={},
            language=ENGLISH,
        )
        for method in project.methods
    )


def test_the_library_names_steps_and_questions_of_every_method(library: tuple[Task, ...]) -> None:
    cells = _cells(library_matrix(library))
    assert len(cells) == len(library)
    doors = cells["SF-07 Architrave to a set-back frame"]
    assert "8" in doors["P3"].split(", ")
    assert "Q4" in doors["P1"].split(", ")


def test_a_criterion_that_no_method_evidences_is_listed_with_who_lists_it(library: tuple[Task, ...]) -> None:
    method = library[0].method.model_copy(update={"questions": (), "steps": library[0].method.steps[:1]})
    alone = replace(library[0], ledger=replace(library[0].ledger, method=method))
    (table,) = unevidenced((alone,)).blocks
    assert isinstance(table, Table)
    listed = {row[0]: row[2] for row in table.rows}
    assert listed["P3"] == method.method.value
    assert set(listed) < set(method.criteria)


def test_where_all_are_evidenced_the_pack_says_so(library: tuple[Task, ...]) -> None:
    assert unevidenced(library).blocks == (
        Text(text=("Every criterion is evidenced by at least one step or question.",)),
    )


def test_a_code_that_two_methods_word_differently_is_told(library: tuple[Task, ...]) -> None:
    words = dict(library[0].method.criteria.items())
    method = library[0].method
    other = method.model_copy(
        update={
            "criteria": CriteriaTable({**words, "P3": words["P1"]}, {}, frozenset()),
            "method": library[1].method.method,
        }
    )
    two = (library[0], replace(library[0], ledger=replace(library[0].ledger, method=other)))
    assert "P3 is worded differently in" in library_matrix(two).note
    assert "P1 is worded differently in" not in library_matrix(two).note


def test_the_whole_library_is_one_document(library: tuple[Task, ...]) -> None:
    document = compose_library(library)
    assert (document.kind, document.title) == ("tutor", "Criteria over all methods")
    assert [block.key for block in document.blocks] == ["library", "not-evidenced"]  # type: ignore[union-attr]
