"""Typed figures that repeat a value, and sizes that nothing uses."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.prose import check_typed_numbers, check_unused
from generator.prose.walk import prose_in
from tests.quantities.folders import job_text, method_text, work

QUANTITIES = """
    head: {label: Head, work: opening_width + 2 * first_quirk}
    packer: {label: Packer, work: 'even_packer(readings = set_back, step = ripping_step)'}
    share: {label: Share, work: opening_width / 90}
"""


def typed(tmp_path: Path, do: str) -> list[str]:
    worked = work(tmp_path, method_text(QUANTITIES, do=do))
    check_typed_numbers(worked.ledger, worked.log)
    assert not worked.log.has_errors
    return worked.faults


def test_a_figure_that_repeats_a_value_is_warned_of_with_what_to_write(tmp_path: Path) -> None:
    assert typed(tmp_path, "Set the square to 5 mm.") == [
        "t.yaml:32:5 mm warning: 5 mm is typed here and is also worked out or given. | "
        "Write {first_quirk} so that it changes with the sizes, or {= 5 mm} where it is meant so."
    ]


@pytest.mark.parametrize(
    ("figure", "name"),
    [("778mm", "{head}"), ("0.768 m", "{opening_width}"), ("77.8\u2009cm", "{head}"), ("8.5 mm", "{share}")],
)
def test_a_figure_is_seen_in_any_unit_and_spacing(tmp_path: Path, figure: str, name: str) -> None:
    (warning,) = typed(tmp_path, f"Cut it to {figure}, then try it.")
    assert f"{figure} is typed here" in warning and f"Write {name}" in warning


@pytest.mark.parametrize(
    "do",
    [
        "Keep {= 5 mm} off.", "Take 5 of them.", "Cut 6 mm off.", "At 15 mm or more.", "M5 mm bolt.",
        "1.5 mm wide.", "Leave 0 mm.", "See 3/5 mm on the plan.", "Set {first_quirk}.", "A 5 mmm thing.",
        "5 minutes.", "2-5 mm.",
    ],
)  # fmt: skip
def test_what_is_meant_or_is_another_figure_is_left_alone(tmp_path: Path, do: str) -> None:
    assert typed(tmp_path, do) == []


def test_a_job_s_prose_is_held_against_the_job_s_values(tmp_path: Path) -> None:
    job = job_text("{first_quirk: 7 mm}", "not_included: 'Nothing over 7 mm, and 5 mm is another thing.'")
    worked = work(tmp_path, method_text(QUANTITIES, do="Set the square to 7 mm."), job)
    check_typed_numbers(worked.ledger, worked.log)
    assert [fault.partition(" warning")[0] for fault in worked.faults] == ["j.yaml:6:7 mm"]


def test_a_figure_in_a_block_of_prose_is_found_on_its_line(tmp_path: Path) -> None:
    worked = work(tmp_path, method_text(QUANTITIES, summary="One line.\nThen 5 mm on the next."))
    check_typed_numbers(worked.ledger, worked.log)
    assert [fault.partition(" warning")[0] for fault in worked.faults] == ["t.yaml:7:5 mm"]


SIZES = """
by_formula: {label: A, chosen: {default: 5 mm}}
by_prose: {label: B, chosen: {default: 6 mm}}
by_column: {label: C, chosen: {default: 7 mm}}
by_drawing: {label: D, chosen: {default: 8 mm}}
by_itself: {label: E, chosen: {default: 9 mm}}
drawn: {label: F, chosen: {default: 9 mm}}
"""


def test_a_size_that_nothing_uses_is_warned_of(tmp_path: Path) -> None:
    text = method_text(
        "x: {label: X, work: by_formula}",
        sizes=SIZES,
        do="Use {by_prose}.",
        more="schedule: [{show: by_column}]",
    )
    text += "    drawing: {show: jamb, with: {edge: by_drawing}}\n"
    worked = work(tmp_path, text)
    check_unused(worked.ledger.method, {"drawn"}, worked.log)
    assert worked.faults == [
        "t.yaml:12:by_itself warning: The size “by_itself” is used by no formula, sentence, table or "
        "drawing. | Use it, or take it out so that nobody measures it for nothing."
    ]


def test_prose_is_found_wherever_it_stands(tmp_path: Path) -> None:
    method = work(tmp_path, method_text(do="Here.", more="stop_if: ['There.']")).ledger.method
    assert [prose.typed for prose in prose_in(method)] == ["Summary.", "There.", "Here.", "Because."]
