"""What is run over each broken folder: every room that can check a file without its neighbours."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from generator.formulas import parse_formula
from generator.problems import ProblemLog
from generator.reading.nodes import Entries, Items, Node, Text
from generator.reading.surveys import read_survey
from generator.reading.yaml_nodes import read_yaml


def check(folder: Path) -> ProblemLog:
    """Every fault of the files under `folder`/methods."""
    log = ProblemLog()
    for path in sorted((folder / "methods").rglob("*.*")):
        shown = path.relative_to(folder).as_posix()
        if path.suffix == ".csv":
            read_survey(path, shown, log)
            continue
        for formula in _formulas(read_yaml(path, shown, log)):
            parse_formula(formula, log)
    return log


def _formulas(node: Node | None) -> Iterator[Text]:
    if isinstance(node, Items):
        for item in node.items:
            yield from _formulas(item)
    if isinstance(node, Entries):
        for key, value in node.entries:
            if key.value == "work" and isinstance(value, Text):
                yield value
            yield from _formulas(value)
