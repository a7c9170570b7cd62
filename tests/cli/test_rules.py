"""`storeyrod rules`: the book that ships, and the house rules of a folder in it."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest

from generator.cli import main
from generator.safety.book import shipped_rules
from generator.safety.sections import section_rules
from generator.safety.sources import source_groups

ROOT = Path(__file__).parents[2]
HOUSE = """\
format: 1
stricter: [R70]
set_aside:
  R78: "The principal contractor's own form covers it and is signed daily."
rules:
  - rule: H1
    title: Combination square
    when: {tools: [combination-square]}
    hazard: "A square that was dropped reads wrong."
    needs:
      - administer: "Square tried both ways on a board."
        words: [square + tried]
    level: must
    sources: [{cite: Workshop sheet WS-9, known: house}]
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    shutil.copytree(ROOT / "methods", tmp_path / "methods")
    (tmp_path / "methods" / "house-rules.yaml").write_text(HOUSE)
    return tmp_path


def test_every_rule_and_section_is_printed_with_how_well_its_source_is_known(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["rules"]) == 0
    told = capsys.readouterr().out
    for rule in shipped_rules():
        assert f"\n{rule.rule}  {rule.title}\n" in f"\n{told}"
    for section in section_rules():
        assert f"\n{section.id}  {section.title}\n" in told
    assert "source: WAHR 2005 Schedule 6 (read on an official page)" in told
    assert max(map(len, told.splitlines())) <= 100


def test_a_folder_s_own_rules_are_in_the_book(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["rules", str(folder), "--as", "json"]) == 0
    book = json.loads(capsys.readouterr().out)
    rules = {rule["rule"]: rule for rule in book["rules"]}
    assert len(rules) == len(shipped_rules()) + 1
    assert rules["H1"]["of_house"] and rules["R70"]["level"] == "must"
    assert rules["R78"]["set_aside"].startswith("The principal contractor's own form")
    assert len(book["sent_back"]) == 15


def test_faults_in_the_house_rules_are_told(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (folder / "methods" / "house-rules.yaml").write_text("format: 1\nstricter: [R700]\n")
    assert main(["rules", str(folder)]) == 1
    told = capsys.readouterr()
    assert told.out == "" and "There is no rule R700." in told.err


def test_the_book_says_when_its_sources_were_read(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["rules"]) == 0
    told = " ".join(capsys.readouterr().out.split())
    for each in source_groups():
        assert f"{each.group}: read {each.read}, to be read again by {each.review_by}" in told
