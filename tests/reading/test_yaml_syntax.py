"""A syntax error is told by its cause, alike from both of PyYAML's parsers."""

from __future__ import annotations

import pytest
import yaml

from generator.problems import ProblemLog
from generator.reading import yaml_nodes
from generator.reading.yaml_nodes import parse_yaml

LOADERS = [yaml.SafeLoader, yaml.CSafeLoader]

CAUSES = [
    ("title:Foo\nstage: x\n", "yaml-colon-space", 1, 6),
    ("a: 1\nb:2\nc: 3\n", "yaml-colon-space", 2, 2),
    ("- a: 1\n  b:2\n", "yaml-colon-space", 2, 4),
    ("how: Set: mark\n", "yaml-colon-in-text", 1, 9),
    ("- how: Set: mark\n", "yaml-colon-in-text", 1, 11),
    ("a: {b: c: d}\n", "yaml-colon-in-text", 1, 9),
    ("a: b\n  c: d\n", "yaml-set-in", 2, 3),
    ("a: b\n# note\n\n  c: d\n", "yaml-set-in", 4, 3),
    ("a: x\n b\n c: d\n", "yaml-set-in", 3, 2),
    ("- a: b\n   c: d\n", "yaml-set-in", 2, 4),
    ("a:\n  b: 1\n c: 2\n", "yaml-indentation", 3, 2),
    ("a: @x\n", "yaml-starts-with", 1, 4),
    ("a: `x`\n", "yaml-starts-with", 1, 4),
    ("a: %x\n", "yaml-starts-with", 1, 4),
    ("%x\na: b\n", "yaml-starts-with", 1, 1),
    ("a: *x* y\n", "yaml-starts-with", 1, 4),
    ("a: & b\n", "yaml-starts-with", 1, 4),
    ("a: , b\n", "yaml-starts-with", 1, 4),
    ('a: "b\nc: d\n', "yaml-quote-unclosed", 1, 4),
    ("a: 'b\nc: d\n", "yaml-quote-unclosed", 1, 4),
    ('a: "b\nc: "d"\n', "yaml-quote-unclosed", 1, 4),
    ('a: "b\n---\nc: d\n', "yaml-quote-unclosed", 1, 4),
    ('a: "b" c\n', "yaml-text-after-quote", 1, 8),
    ("a: 'it's'\n", "yaml-text-after-quote", 1, 8),
    ("a: {b: 'x' y}\n", "yaml-text-after-quote", 1, 12),
    ('a: "\\q"\n', "yaml-escape", 1, 5),
    ('a: "\\xzz"\n', "yaml-escape", 1, 5),
    ("a: {b} c\n", "yaml-text-in-brackets", 1, 4),
    ("- [b] c\n", "yaml-text-in-brackets", 1, 3),
    ("a: {b: [c] d}\n", "yaml-text-after-bracket", 1, 12),
    ("a: [b, c\nd: e\n", "yaml-bracket-unclosed", 1, 4),
    ("a: {b: c\nd: e\n", "yaml-bracket-unclosed", 1, 4),
    ("a: [b, [c\n", "yaml-bracket-unclosed", 1, 8),
    ("a: {b: c}}\n", "yaml-bracket-stray", 1, 10),
    ("a: ]\n", "yaml-bracket-stray", 1, 4),
    ("a: [b, , c]\n", "yaml-bracket-comma", 1, 8),
    ("a: 1\nhello\nb: 2\n", "yaml-line-no-key", 2, 1),
    ("a: - b\n", "yaml-item-on-line", 1, 4),
    ("a: 1\n- b\n", "yaml-item-among-keys", 2, 1),
    ("- a\nb: 1\n", "yaml-key-among-items", 2, 1),
    ("a: |text\n", "yaml-block-header", 1, 5),
    ("a: > text\n", "yaml-block-header", 1, 6),
    ("a: !<x\n", "yaml-tag", 1, 4),
    ("a: !f!x y\n", "yaml-tag", 1, 4),
    ("[a]\nb: c\n", "yaml-after-end", 2, 1),
    (": x\n", "yaml-key-empty", 1, 1),
]


@pytest.mark.parametrize("loader", LOADERS, ids=lambda loader: loader.__name__)
@pytest.mark.parametrize(("text", "code", "line", "column"), CAUSES)
def test_the_cause_is_named_at_its_place(
    text: str, code: str, line: int, column: int, loader: object, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(yaml_nodes, "LOADER", loader)
    log = ProblemLog()
    parse_yaml(text, "m.yaml", log)
    assert [(problem.code, problem.span.line, problem.span.column) for problem in log if problem.span] == [
        (code, line, column)
    ]
