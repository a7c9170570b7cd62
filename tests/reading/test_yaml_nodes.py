"""YAML to nodes: what stays, what it is called, and where it stands."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.problems import ProblemLog
from generator.reading.limits import MOST_NODES
from generator.reading.nodes import Entries, Items, Node, Nothing, Style, Text
from generator.reading.yaml_nodes import parse_yaml, read_yaml
from generator.wording.report import report_text


def read(text: str) -> Entries:
    log = ProblemLog()
    node = parse_yaml(text, "m.yaml", log)
    assert list(log) == []
    assert isinstance(node, Entries)
    return node


def text_at(entries: Entries, key: str) -> Text:
    node = entries.get(key)
    assert isinstance(node, Text)
    return node


def faults(text: str) -> list[str]:
    log = ProblemLog()
    parse_yaml(text, "m.yaml", log)
    return [problem.code for problem in log]


def plain(node: Node | None) -> object:
    """The node without its places."""
    if isinstance(node, Text):
        return node.value
    if isinstance(node, Items):
        return [plain(item) for item in node.items]
    if isinstance(node, Entries):
        return {key.value: plain(value) for key, value in node.entries}
    return None


def test_lists_mappings_and_texts_keep_their_order() -> None:
    node = read("tools: [chop-saw, pin-gun]\nsteps:\n  - title: Mark\n    minutes: 10\n  - title: Fix\n")
    assert plain(node) == {
        "tools": ["chop-saw", "pin-gun"],
        "steps": [{"title": "Mark", "minutes": "10"}, {"title": "Fix"}],
    }


@pytest.mark.parametrize(
    "written", ["no", "yes", "012", "1:30", "1e3", "2026-11-02", "0x1F", "1_000", "true"]
)
def test_a_scalar_stays_as_it_was_written(written: str) -> None:
    assert plain(read(f"a: {written}")) == {"a": written}


@pytest.mark.parametrize("written", ["", " ~", " null", " Null"])
def test_a_key_without_a_value_has_nothing(written: str) -> None:
    assert isinstance(read(f"a:{written}\nb: 1").get("a"), Nothing)


def test_nothing_stands_after_its_colon() -> None:
    node = read("company:\n  name:\n  phone: x\n").get("company")
    assert isinstance(node, Entries)
    nothing = node.get("name")
    assert isinstance(nothing, Nothing)
    assert (nothing.span.line, nothing.span.column, nothing.span.text) == (2, 8, "  name:")


def test_quoted_words_of_nothing_are_text() -> None:
    assert plain(read("a: ''\nb: '~'\n")) == {"a": "", "b": "~"}


def test_a_key_in_braces_may_have_nothing_after_its_colon() -> None:
    assert plain(read("a: {b: , c: 1}")) == {"a": {"b": None, "c": "1"}}


@pytest.mark.parametrize(
    ("written", "style"),
    [
        ("x", Style.PLAIN),
        ("'x'", Style.QUOTED),
        ('"x"', Style.QUOTED),
        ("|\n  x", Style.BLOCK),
        (">\n  x", Style.BLOCK),
    ],
)
def test_a_text_knows_how_it_was_written(written: str, style: Style) -> None:
    assert text_at(read(f"a: {written}\n"), "a").style is style


def test_a_span_gives_file_line_column_length_and_line() -> None:
    span = text_at(read("format: 1\ntitle: Größe 5 mm  # set\n"), "title").span
    assert (span.file, span.line, span.column, span.length) == ("m.yaml", 2, 8, 10)
    assert span.text == "title: Größe 5 mm  # set"


def test_a_flow_collection_is_underlined_as_a_whole() -> None:
    span = read("a: 1\nwhen: {from: x, to: y}\n").entries[1][1].span
    assert (span.line, span.column, span.length) == (2, 7, 16)


def test_windows_line_ends_and_byte_order_mark_change_nothing(tmp_path: Path) -> None:
    file = tmp_path / "m.yaml"
    file.write_bytes(b"\xef\xbb\xbfa: 1\r\nb: |\r\n  one\r\n  two\r\n")
    log = ProblemLog()
    assert plain(read_yaml(file, "m.yaml", log)) == {"a": "1", "b": "one\ntwo\n"}
    assert list(log) == []


def test_a_readable_file_with_a_doubled_key_still_comes_out() -> None:
    log = ProblemLog()
    node = parse_yaml("a: 1\nb: 2\na: 3\n", "m.yaml", log)
    assert plain(node) == {"a": "1", "b": "2"}
    assert [problem.code for problem in log] == ["yaml-key-doubled"]


def test_a_text_in_braces_comes_out_as_the_text_that_was_meant() -> None:
    log = ProblemLog()
    assert plain(parse_yaml("a: [{first_quirk}, {leg in m}]\n", "m.yaml", log)) == {
        "a": ["{first_quirk}", "{leg in m}"]
    }
    assert [problem.code for problem in log] == ["yaml-brace-text", "yaml-brace-text"]


def test_doubled_braces_without_quotes_are_reported_once() -> None:
    assert faults("a: {{5 mm}}\n") == ["yaml-brace-text"]


def test_a_key_without_colon_after_a_list_has_no_comma_to_blame() -> None:
    assert faults("a: {b: [c], d, e: 1}\n") == ["yaml-key-no-colon"]


def test_a_list_as_a_key_is_reported() -> None:
    assert faults("? [a]\n: b\n") == ["yaml-key-not-text"]


def test_all_faults_of_a_readable_file_are_reported_in_order() -> None:
    text = "a: &x 1\na: 2\n? [k]\n: v\nb: !t 3\nc: {d}\n"
    assert faults(text) == [
        "yaml-anchor", "yaml-key-doubled", "yaml-key-not-text", "yaml-tag", "yaml-brace-text",
    ]  # fmt: skip


def test_faults_found_before_a_syntax_error_are_kept() -> None:
    assert faults("a: 1\na: 2\nb: @\n") == ["yaml-key-doubled", "yaml-starts-with"]


def test_multiplying_aliases_stop_at_the_first() -> None:
    text = "a: &a [x, x]\nb: &b [*a, *a]\nc: &c [*b, *b]\n"
    assert faults(text) == ["yaml-anchor", "yaml-anchor", "yaml-alias"]


def test_a_file_with_too_many_values_is_left_unread() -> None:
    log = ProblemLog()
    assert parse_yaml("- x\n" * (MOST_NODES + 1), "m.yaml", log) is None
    assert report_text(log) == (
        "m.yaml:50000:3: error: The file holds more than 50,000 values and is not read further.\n"
        "    - x\n"
        "      ^\n"
        "    Expected a few hundred. Check that this is the right file.\n"
        "\n"
        "1 error in 1 file\n"
    )


def test_the_most_values_are_read() -> None:
    assert faults("- x\n" * (MOST_NODES - 1)) == []


@pytest.mark.parametrize(("depth", "codes"), [(41, []), (42, ["yaml-too-deep"])])
def test_depth_is_bounded(depth: int, codes: list[str]) -> None:
    assert faults("[" * depth + "]" * depth) == codes


@pytest.mark.parametrize("opening", ["[", "{", "- ", "? ", "[{a: ", '{"a": '])
def test_very_deep_nesting_ends_at_once(opening: str) -> None:
    assert faults(opening * (900_000 // len(opening))) == ["yaml-too-deep"]
