"""Names that would be printed where their values were meant."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.prose import check_bare_names
from tests.prose.test_references import done


@pytest.mark.parametrize(
    ("do", "bare"),
    [
        ("Set it to (first_quirk).", ["first_quirk"]),
        ("Set it to [first_quirk] by opening_width.", ["first_quirk", "opening_width"]),
        ("Set it to {{first_quirk}}.", ["first_quirk"]),
        ("Set it to {first_quirk} and {first_quirk in m}.", []),
        ("The head is cut first.", []),
        ("Call it second_to_none.", []),
    ],
)
def test_a_name_outside_braces_is_warned_of_at_its_place(tmp_path: Path, do: str, bare: list[str]) -> None:
    worked = done(tmp_path, do, job=False)
    check_bare_names(worked.ledger, worked.log)
    found = [problem for problem in worked.log if problem.code == "bare-name"]
    assert [problem.values["name"] for problem in found] == bare
    for problem in found:
        assert problem.span is not None
        start = problem.span.column - 1
        assert problem.span.text[start : start + problem.span.length] == problem.values["name"]
    assert not worked.log.has_errors
