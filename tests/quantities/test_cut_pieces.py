"""Pieces alike are told together where their marks count up."""

from __future__ import annotations

from dataclasses import replace

import pytest

from generator.quantities.cut_pieces import alike, in_runs, square_piece
from tests.quantities.examples import size


@pytest.mark.parametrize(
    ("marks", "runs"),
    [
        (["R1", "R2", "R3"], ["R1 R2 R3"]),
        (["R9", "R10", "R11", "R13"], ["R9 R10 R11", "R13"]),
        (["R1", "R2"], ["R1", "R2"]),
        (["AL", "AR", "AH"], ["AL", "AR", "AH"]),
        (["R1", "F2", "F3", "F4"], ["R1", "F2 F3 F4"]),
        (["RF25", "RF26", "RF1", "RF2", "RF3"], ["RF25", "RF26", "RF1 RF2 RF3"]),
        ([], []),
    ],
)
def test_three_marks_or_more_that_count_up_make_a_run(marks: list[str], runs: list[str]) -> None:
    assert [" ".join(marks[run]) for run in in_runs(marks)] == runs


def test_a_run_breaks_where_a_piece_differs_in_more_than_its_mark() -> None:
    made = square_piece("frame", "stud", size("2306 mm"), width=size("97 mm"), thickness=size("47 mm"))
    longer = replace(made, long_point=size("2310 mm"))
    pieces = [replace(made, mark=f"S{number}") for number in range(1, 7)]
    pieces[3] = replace(longer, mark="S4")
    assert list(alike(pieces)) == [slice(0, 3), slice(3, 4), slice(4, 5), slice(5, 6)]
