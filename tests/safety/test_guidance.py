"""The nation of the work decides which law and guidance a statement names."""

from __future__ import annotations

import pytest

from generator.model.jobs import NATIONS
from generator.safety.guidance import guidance, guidance_for

SUBJECTS = {"building work", "fire safety", "design and management", "waste", "regulator"}


@pytest.mark.parametrize("nation", [nation for nation in NATIONS if nation != "elsewhere"])
def test_every_nation_has_every_subject_once(nation: str) -> None:
    assert sorted(entry.subject for entry in guidance_for(nation)) == sorted(SUBJECTS)


def test_an_unknown_place_has_none() -> None:
    assert guidance_for("elsewhere") == ()


def test_no_nation_is_told_anothers_building_law() -> None:
    named = {entry.nation: entry.names for entry in guidance() if entry.subject == "building work"}
    assert len(set(named.values())) == len(named)
    assert "Technical Handbooks" in named["Scotland"]
    assert "Technical Booklets" in named["Northern Ireland"]
