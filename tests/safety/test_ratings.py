"""Ratings: only by the firm's scales, and no lower than the controls can bear out."""

from __future__ import annotations

import pytest

from generator.safety.required import check_rules
from tests.safety.folder import METHOD, problems, said

HOUSE = """\
format: 1
rating:
  likelihood: [very unlikely, unlikely, possible, likely, almost certain]
  severity: [first aid, short absence, long absence, lasting harm, death]
  bands:
    - {from: 1, name: low, do: "Keep the controls and watch."}
    - {from: 6, name: medium, do: "Look for better controls, with a name and a day."}
    - {from: 15, name: stop, do: "Work does not begin.", stop: yes}
"""
NOISE = "  - hazard: noise\n"
ONLY_WORN = """\
  - hazard: hum
    harms: [the person sawing]
    controls:
      - ppe: "Ear defenders worn at the saw from the first cut to the last."
        who: the person sawing
    remains: |
      Low: the level at the ear is known from the rating.
"""


def rated(before: tuple[int, int], after: tuple[int, int], hazard: str = NOISE) -> str:
    """The method with one of its hazards rated."""
    marks = [f"{{likelihood: {mark[0]}, severity: {mark[1]}}}" for mark in (before, after)]
    assert METHOD.count(hazard) == 1
    return METHOD.replace(hazard, f"{hazard}    rated: {{before: {marks[0]}, after: {marks[1]}}}\n")


def ratings(method: str, house: str | None = HOUSE) -> list[str]:
    found = problems(method, house=house, check=check_rules)
    return [said(problem) for problem in found if problem.code.startswith("rating")]


def test_a_rating_that_the_controls_bear_out_is_not_reported() -> None:
    assert ratings(rated((4, 3), (2, 3))) == []


@pytest.mark.parametrize(
    ("before", "after", "told"),
    [
        ((6, 3), (2, 3), "The likelihood 6 is not on the scale of the house rules.\nA number from 1 to 5."),
        ((2, 3), (2, 4), "The rating rises from 6 to 8 with the controls in place.\n"),
        ((5, 4), (4, 4), "“noise” is left at 16, in the band “stop”, in which work may not begin.\n"),
        ((5, 2), (2, 2), "The likelihood falls by more than 2 steps.\n"),
    ],
)
def test_a_rating_that_cannot_be_is_reported(
    before: tuple[int, int], after: tuple[int, int], told: str
) -> None:
    (found,) = ratings(rated(before, after))
    assert found.startswith(told)


def test_a_rating_without_scales_is_reported() -> None:
    (found,) = ratings(rated((4, 3), (2, 3)), house=None)
    assert found.startswith("“noise” is rated, and the house rules give no scales.\n")


def test_what_is_worn_changes_neither_severity_nor_the_rating_alone() -> None:
    method = METHOD.replace(NOISE, f"{ONLY_WORN}{NOISE}")
    marks = "    rated: {before: {likelihood: 3, severity: 3}, after: {likelihood: 2, severity: 2}}\n"
    found = ratings(method.replace("  - hazard: hum\n", f"  - hazard: hum\n{marks}"))
    assert [told.partition("\n")[0] for told in found] == [
        "The rating of “hum” falls by protective equipment alone.",
        "“hum” is rated less severe than before, and no control changes how bad the harm is.",
    ]


def test_the_same_rating_left_of_every_hazard_is_a_habit() -> None:
    mark = "    rated: {before: {likelihood: 3, severity: 2}, after: {likelihood: 2, severity: 2}}\n"
    lines = METHOD.splitlines(keepends=True)
    method = "".join(line + mark if line.startswith("  - hazard: ") else line for line in lines)
    (found,) = (told for told in ratings(method) if told.startswith("All"))
    assert "rated hazards are left with the same rating." in found
