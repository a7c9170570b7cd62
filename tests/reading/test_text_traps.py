"""What YAML reads without a fault and a writer meant otherwise."""

from __future__ import annotations

import pytest

from generator.problems import ProblemLog, nearest
from generator.reading.nodes import Entries, Text
from generator.reading.yaml_nodes import parse_yaml


@pytest.mark.parametrize(
    ("line", "lost"),
    [
        ("title: Shelf #2 on bearers", "#2 on bearers"),
        ("title: Shelf # on bearers", None),
        ('title: "Shelf #2"', None),
        ("title: Shelf#2", None),
        ("title: Shelf ## on bearers", None),
    ],
)
def test_text_that_became_a_comment_is_told(line: str, lost: str | None) -> None:
    log = ProblemLog()
    parse_yaml(line, "shelf.yaml", log)
    assert [problem.values["lost"] for problem in log] == ([lost] if lost else [])
    assert not log.has_errors


def test_curly_quotes_inside_a_sentence_stay() -> None:
    log = ProblemLog()
    parse_yaml("title: “Rod” and “story rod”", "rod.yaml", log)
    assert not list(log)


def test_a_text_split_by_a_comma_is_put_together_again() -> None:
    log = ProblemLog()
    node = parse_yaml("size: {default: 1,5 mm, least:0 mm, most: 4 mm}", "gap.yaml", log)
    assert isinstance(node, Entries)
    size = node.get("size")
    assert isinstance(size, Entries)
    read = {key.value: value.value for key, value in size.entries if isinstance(value, Text)}
    assert read == {"default": "1.5 mm", "most": "4 mm", "least": "0 mm"}
    assert [problem.code for problem in log] == ["yaml-comma-decimal", "yaml-colon-space"]


@pytest.mark.parametrize("typed", ["PPE", "Ppe", "pep"])
def test_capitals_do_not_hide_the_nearest_name(typed: str) -> None:
    assert nearest(typed, ["eliminate", "ppe", "who"]) == "ppe"


def test_what_joins_words_does_not_hide_the_nearest_name() -> None:
    assert nearest("Spirit level", ["steel-rule", "spirit-level"]) == "spirit-level"
