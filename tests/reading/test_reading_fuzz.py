"""Whatever stands in a file, reading ends with nodes or with worded problems, never with an exception."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.problems import ProblemLog
from generator.reading.nodes import Entries, Items, Node, Text
from generator.reading.surveys import parse_survey, read_survey
from generator.reading.yaml_nodes import parse_yaml, read_yaml
from generator.wording.report import report_json, report_text

YAML_BITS = st.sampled_from(
    ["a", "b: ", "- ", "  ", "\n", "\n  ", "{", "}", "[", "]", ", ", ":", '"', "'", "|\n", ">-\n", "#", "&x ",
     "*x", "!t ", "%", "@", "\\", "? ", "---\n", "...\n", "{name}", "é", "\u3000", "\x00", "\t", "0.5 mm"]
)  # fmt: skip
CSV_BITS = st.sampled_from(["a", ",", '"', '""', "\n", ";", " ", "7.5", "é", "\x00", "\t"])


def texts(node: Node | None) -> list[Text]:
    if isinstance(node, Text):
        return [node]
    if isinstance(node, Items):
        return [text for item in node.items for text in texts(item)]
    if isinstance(node, Entries):
        return [text for pair in node.entries for part in pair for text in texts(part)]
    return []


def expect_words_or_nodes(node: Node | None, log: ProblemLog) -> None:
    assert node is not None or log.has_errors
    assert report_text(log).endswith("\n")
    assert report_json(log).endswith("]\n")
    for text in texts(node):
        assert len(text.lines) == len(text.starts)
        assert list(text.starts) == sorted(text.starts)
        for offset in range(0, len(text.value), 7):
            span = text.place(offset, 3)
            assert span.length >= 1


@given(st.lists(YAML_BITS, max_size=60).map("".join))
@settings(max_examples=400, deadline=None)
def test_any_yaml_like_text(text: str) -> None:
    log = ProblemLog()
    expect_words_or_nodes(parse_yaml(text, "m.yaml", log), log)


@given(st.text(max_size=3000))
@settings(max_examples=100, deadline=None)
def test_any_text(text: str) -> None:
    log = ProblemLog()
    expect_words_or_nodes(parse_yaml(text, "m.yaml", log), log)


@pytest.fixture(scope="module")
def file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("fuzz") / "file"


@given(data=st.binary(max_size=3000))
@settings(max_examples=150, deadline=None)
def test_any_bytes(file: Path, data: bytes) -> None:
    file.write_bytes(data)
    log = ProblemLog()
    expect_words_or_nodes(read_yaml(file, "m.yaml", log), log)
    survey_log = ProblemLog()
    assert read_survey(file, "doors.csv", survey_log) is not None or survey_log.has_errors
    assert report_text(survey_log).endswith("\n")


@given(st.lists(CSV_BITS, max_size=80).map("".join))
@settings(max_examples=400, deadline=None)
def test_any_survey_like_text(text: str) -> None:
    log = ProblemLog()
    survey = parse_survey(text, "doors.csv", log)
    assert survey is not None or log.has_errors
    for row in survey.rows if survey else ():
        assert len(row.cells) == len(survey.header) if survey else False
        for _, cell in row.cells:
            if isinstance(cell, Text) and '"' not in cell.value:
                begin = cell.span.column - 1
                assert cell.value == cell.span.text[begin : begin + cell.span.length].strip()
    assert report_text(log).endswith("\n")
