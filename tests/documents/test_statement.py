"""A method statement is whole, agrees with itself, and holds nothing meant for learners."""

from __future__ import annotations

from dataclasses import asdict, replace

import pytest

from generator.documents.blocks import (
    BriefingRecord,
    ChangeRecord,
    Comparison,
    Document,
    FrontPage,
    Part,
    PieceList,
    PolicyNote,
    Section,
    Sequence,
    Table,
    Text,
    Workings,
)
from generator.documents.statement import compose_statement
from generator.documents.task import Task
from generator.safety.sections import sections_for
from tests.documents.finding import all_of, only


@pytest.fixture(scope="module")
def statement(statement_task: Task) -> Document:
    return compose_statement(statement_task)


def test_it_prints_each_required_section_in_order(statement: Document) -> None:
    printed = [block.title for block in all_of(statement, Section)]
    assert printed == [f"{rule.id} {rule.title}" for rule in sections_for("statement")]


def test_no_section_is_left_without_an_answer(statement: Document) -> None:
    sections = all_of(statement, Section)
    assert [one.title for one in sections if not (one.text or one.not_applicable)] == []


def test_a_section_that_does_not_apply_says_why_and_who_decided(statement: Document) -> None:
    sections = all_of(statement, Section)
    set_aside = [one.not_applicable for one in sections if one.not_applicable]
    assert [one.decided_by for one in set_aside if one] == ["Josse Hethersedge, director"]
    assert all(len(one.reason.split()) > 4 for one in set_aside if one)


def test_a_revision_says_what_changed_and_only_one_that_replaces_another_says_since_when(
    statement_task: Task,
) -> None:
    job = statement_task.job
    assert job is not None
    assert job.document is not None
    first = job.model_copy(update={"document": job.document.model_copy(update={"replaces": None})})
    notes = [
        only(
            compose_statement(replace(statement_task, ledger=replace(statement_task.ledger, job=one))),
            FrontPage,
        )
        for one in (job, first)
    ]
    told = [front.control.notes[0].partition(":")[0] for front in notes if front.control]
    assert told == ["Changed since P02", "Changed"]


def test_sections_that_the_front_answers_point_to_it(statement: Document) -> None:
    told = " ".join(" ".join(section.text) for section in all_of(statement, Section))
    assert "Names and telephone numbers stand at the front." in told
    assert "first page, with its signatures" not in told


def test_every_list_shows_the_same_hold_points(statement: Document) -> None:
    listed = [(hold.number, hold.when) for hold in only(statement, FrontPage).stop.holds]
    at_steps = [(step.hold.number, f"after step {step.number}") for step in statement.steps() if step.hold]
    assert listed == at_steps == [("H1", "after step 2"), ("H2", "after step 6"), ("H3", "after step 11")]


def test_a_hold_point_names_its_releaser_the_deputy_and_each_opening(statement: Document) -> None:
    hold = next(step.hold for step in statement.steps() if step.hold)
    assert hold.releaser.name == "Marit Sallowfield"
    assert hold.deputy is not None
    assert hold.deputy.name == "Josse Hethersedge"
    assert hold.openings == ("1", "2", "3", "4")


def test_nothing_in_it_is_meant_for_learners(statement: Document) -> None:
    assert [
        step.number for step in statement.steps() if step.evidence or step.question or step.mistakes
    ] == []


def test_the_schedule_prints_a_column_with_the_same_decimals(statement: Document) -> None:
    places = only(statement, FrontPage).places
    assert places is not None
    packer = [column.head for column in places.columns].index("Packer")
    assert [row[packer] for row in places.rows] == ["8.5", "9.0", "7.5", "8.0"]


def test_a_check_expects_at_each_opening_what_was_worked_out_there(statement: Document) -> None:
    check = next(check for step in statement.steps() for check in step.checks if check.number == "5.1")
    assert [box.expected for box in check.boxes] == [
        "−0.5 to +1",
        "−0.5 to +1",
        "−0.5 to +0.5",
        "−0.5 to +0.5",
    ]


def test_the_cutting_list_holds_each_piece_once(statement: Document) -> None:
    pieces = only(statement, PieceList).pieces
    marks = [piece.mark for piece in pieces]
    assert len(marks) == len(set(marks)) == 24
    head = next(piece for piece in pieces if piece.mark == "1AH")
    assert (head.long_point, head.short_point, head.ends, head.section) == ("924", "786", "45°", "69 × 18")


def test_the_two_legs_are_a_left_and_a_right(statement: Document) -> None:
    legs = [piece for piece in only(statement, PieceList).pieces if piece.mark in {"1AL", "1AR"}]
    assert [(leg.hand, leg.ends) for leg in legs] == [("left", "square / 45°"), ("right", "45° / square")]


def test_the_chosen_way_is_marked_and_a_refused_one_says_why(statement: Document) -> None:
    ways = {way.name: way for way in only(statement, Comparison).ways}
    assert ways["Packer with a double quirk"].chosen
    refused = ways["Ease the plaster"].refused
    assert refused
    assert all("mm" in line.replace("\u2009", " ") for line in refused)


def test_the_other_openings_stand_in_one_table_of_ways(statement: Document) -> None:
    tables = all_of(statement, Table)
    (table,) = (table for table in tables if table.key == "compared-ways-others")
    assert len(table.rows) == 3 * 5


def test_a_working_shows_the_arithmetic_and_where_its_values_stand(statement: Document) -> None:
    workings = only(statement, Workings).workings
    (head,) = (one for one in workings if one.formula.startswith("head_packer ="))
    assert head.formula == "head_packer = opening_width + 2 × first_quirk + 2 × packer_width"
    assert [case.scope for case in head.cases] == ["1, 3", "2", "4"]
    first = head.cases[0]
    assert [line.replace("\u2009", " ") for line in first.lines] == [
        "= 768 mm + 2 × 5 mm + 2 × 24 mm",
        "= 826 mm",
    ]
    assert [origin.place for origin in first.origins] == ["survey row, methods/jobs/reading-room-doors.csv:2"]
    assert [origin.name for origin in head.origins] == ["first_quirk", "packer_width"]


def test_policy_numbers_are_printed_as_policy_with_their_place(statement: Document) -> None:
    policies = {policy.label: policy for policy in only(statement, PolicyNote).policies}
    step = policies["Step in which packers are ripped"]
    assert step.value.replace("\u2009", " ") == "0.5 mm"
    assert step.place.startswith("house rules, methods/house-rules.yaml:")
    assert policies["Waste on glue and filler"].value == "10%"


def test_the_annex_draws_the_readings_of_the_other_openings_and_nothing_else(statement: Document) -> None:
    parts = [block for block in statement.blocks if isinstance(block, Part)]
    (annex,) = (part for part in parts if part.key == "annex-drawings")
    assert [asdict(figure)["picture"]["name"] for figure in annex.blocks] == ["set_back_readings"] * 3


def test_a_statement_takes_a_job(guide_task: Task) -> None:
    with pytest.raises(ValueError, match="job"):
        compose_statement(guide_task)


def test_the_sequence_has_every_step_of_the_method(statement: Document, statement_task: Task) -> None:
    titles = [step.title for step in only(statement, Sequence).steps]
    assert titles == [step.title.value for step in statement_task.method.steps]


def test_the_list_of_tools_marks_an_assumed_noise(statement: Document) -> None:
    texts = " ".join(line for one in all_of(statement, Section) for line in one.text)
    assert "Mitre saw on a stand (noise 102\u2009dB, assumed)" in texts


def test_the_days_noise_is_worked_out_drawn_and_said_in_its_section(statement: Document) -> None:
    (table,) = (table for table in all_of(statement, Table) if table.key == "exposures")
    assert ("2", "Noise of all", "", "LEP,d 89.0 dB(A), 251 points", "", "") in table.rows
    (figure,) = (figure for figure in statement.figures() if figure.key == "day-dose")
    assert figure.picture.name == "day_dose"
    section = next(one for one in all_of(statement, Section) if one.key == "section-noise-and-vibration")
    assert any("LEP,d 89.0 dB(A)" in text for text in section.text)


def test_what_is_not_known_of_a_tool_is_asked_for(statement: Document) -> None:
    told = " ".join(line for text in all_of(statement, Text) for line in text.text)
    assert "ask the makers before the start: Pin gun, battery" in told
    assert "Nobody has measured it for this work." in told


def test_a_lift_stands_beside_its_filter(statement: Document) -> None:
    (table,) = (table for table in all_of(statement, Table) if table.key == "lifts")
    lift = ("1", "One length of architrave", "3.9", "2", "elbow to knuckle; close", "33, 21", "under it")
    assert table.rows == (lift,)


def test_the_form_for_a_change_follows_the_briefing_record(statement: Document) -> None:
    kinds = [type(block) for block in statement.blocks]
    assert kinds[kinds.index(BriefingRecord) + 1] is ChangeRecord
    form = only(statement, ChangeRecord)
    assert form.lines == (
        "What changed",
        "Who stopped the work, when",
        "What was agreed",
        "New controls",
        "Signed by, role, date and time",
        "Everyone briefed again: yes or no, by whom",
    )
