"""Where a part of a text stands in the file, however the text is written."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.problems import ProblemLog, Span
from generator.reading.nodes import Entries, Text
from generator.reading.yaml_nodes import parse_yaml


def scalar(yaml_text: str) -> Text:
    log = ProblemLog()
    node = parse_yaml(yaml_text, "m.yaml", log)
    assert list(log) == []
    assert isinstance(node, Entries)
    value = node.entries[0][1]
    assert isinstance(value, Text)
    return value


def place(yaml_text: str, part: str) -> tuple[int, int, int]:
    text = scalar(yaml_text)
    span = text.place(text.value.index(part), len(part))
    return span.line, span.column, span.length


@pytest.mark.parametrize(
    ("yaml_text", "expected"),
    [
        ("why: the {leg} here\n", (1, 10, 5)),
        ('why: "the {leg} here"\n', (1, 11, 5)),
        ("why: 'the {leg} here'\n", (1, 11, 5)),
        ("why: |\n  one\n  the {leg} here\n", (3, 7, 5)),
        ("why: |\n\n\n  one\n\n    the {leg} here\n", (6, 9, 5)),
        ("why: |2\n    one\n  the {leg}\n", (3, 7, 5)),
        ("why: >\n  one\n  two\n\n  the {leg} here\n", (5, 7, 5)),
        ("why: >-\n  one\n    set in {leg}\n  two\n", (3, 12, 5)),
        ("why: one\n  two\n  the {leg} here\n", (3, 7, 5)),
        ('why: "one\n  two\n\n  the {leg} here"\n', (4, 7, 5)),
        ("why: 'it''s the {leg}'\n", (1, 17, 5)),
        ('why: "\\"tight\\" \\u2013 the {leg}"\n', (1, 28, 5)),
        ('why: "one \\\n  the {leg}"\n', (2, 7, 5)),
    ],
)
def test_a_reference_is_found_at_its_spot(yaml_text: str, expected: tuple[int, int, int]) -> None:
    assert place(yaml_text, "{leg}") == expected


def test_a_literal_block_has_one_place_a_line() -> None:
    text = scalar("why: |\n  one\n\n   two\n  three\nnext: 1\n")
    assert text.value == "one\n\n two\nthree\n"
    assert [(span.line, span.column) for span in text.lines] == [(2, 3), (3, 1), (4, 3), (5, 3)]
    assert text.starts == (0, 4, 5, 10)


def test_a_run_over_a_line_end_is_cut_there() -> None:
    text = scalar("why: |\n  one\n  two\n")
    span = text.place(1, 5)
    assert (span.line, span.column, span.length) == (2, 4, 2)


def test_a_text_made_without_places_answers_with_its_span() -> None:
    span = Span(file="m.yaml", line=3, column=5, text="a: x")
    assert Text(value="x", span=span).place(7, 2) is span


WORDS = st.text(alphabet=st.sampled_from("abcé{}.,;'\"\\#-: ↕"), min_size=1, max_size=12)


def written(style: str, lines: list[str]) -> str:
    if style == '"':
        body = "\n\n  ".join(line.replace("\\", "\\\\").replace('"', '\\"') for line in lines)
        return f'a: "{body}"\n'
    if style == "'":
        body = "\n\n  ".join(line.replace("'", "''") for line in lines)
        return f"a: '{body}'\n"
    return f"a: {style}\n" + "".join(f"  {line}\n" for line in lines)


@given(
    st.sampled_from(["|", ">", '"', "'"]),
    st.lists(WORDS.map(lambda word: f"x{word}x"), min_size=1, max_size=6),
)
def test_every_character_is_found_where_it_stands(style: str, lines: list[str]) -> None:
    text = scalar(written(style, lines))
    for offset, character in enumerate(text.value):
        span = text.place(offset)
        if not character.isspace() and character not in "'\"\\":
            assert span.text[span.column - 1] == character
