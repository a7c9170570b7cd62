"""The search for leftovers bites."""

from __future__ import annotations

import pytest

from tests.checkers.findings import listed
from tests.checkers.leftovers import other_tools, unfilled


@pytest.mark.parametrize(
    ("line", "what"),
    [
        ("Set the square to {{ quirk }}.", "a template's braces"),
        ("Set the square to {first_quirk}.", "a name in braces"),
        ("Leg {architrave_set.leg in m} long", "a name in braces"),
        ("Published %(site)s", "a gettext placeholder"),
        ("Size(value=None)", "a value of the program"),
        ("Decimal('8.5') mm", "a value of the program"),
        ("Packer 8.333333333 mm", "a number never rounded"),
        ("Packer nan mm", "a number that is none"),
        ("see /home/joiner/methods", "a path on the maker's machine"),
    ],
)
def test_each_leftover_is_named(line: str, what: str) -> None:
    assert what in {finding.rule for finding in unfilled([line], "page")}


def test_ordinary_prose_passes() -> None:
    lines = ["Packer 8.5 mm, leg 2068 mm (opening 1990 + 78).", "None of the doors is a fire door."]
    assert listed(unfilled(lines, "page")) == ""


def test_another_tool_is_named() -> None:
    assert listed(other_tools("Created with Matplotlib", "plan.svg")) == "plan.svg: [another tool] matplotlib"
    assert other_tools("Set the square", "page") == ()
