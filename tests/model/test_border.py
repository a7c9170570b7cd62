"""Whatever a file holds, it is read or its fault is worded: nothing of the library below shows."""

from __future__ import annotations

from pathlib import Path
from typing import TypeVar

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from generator.model.assignments import check_job
from generator.model.border import Described
from generator.model.catalogue import CatalogueFile
from generator.model.house import HouseRules
from generator.model.jobs import Job
from generator.model.method import Method
from generator.model.names import check_method
from generator.model.reading import describe
from generator.model.shipped import shipped_catalogue
from generator.model.survey_rows import rows_of
from generator.problems import ProblemLog
from generator.reading.nodes import Entries, Items, Node, Nothing, Text
from generator.reading.surveys import parse_survey
from generator.reading.yaml_nodes import read_yaml
from generator.wording.report import report_text

from .describing import codes, method

BASE = Path(__file__).parents[1] / "broken" / "whole" / "base" / "methods"
SOUND: list[tuple[type[Described], Path]] = [
    (Method, BASE / "architrave.yaml"),
    (Job, BASE / "jobs" / "doors.yaml"),
    (HouseRules, BASE / "house-rules.yaml"),
    (CatalogueFile, BASE / "catalogue" / "own.yaml"),
    (CatalogueFile, Path(__file__).parents[2] / "generator" / "model" / "catalogue" / "materials.yaml"),
]
D = TypeVar("D", bound=Described)
SCALARS = (
    "",
    "{",
    "no",
    "1:30",
    "-5 mm",
    "5",
    "5 mm",
    "٣ mm",
    "2026-13-01",
    "left",
    "a b",
    "£",
    "{= }",
    "x" * 2000,
)


def places(node: Node, path: tuple[int, ...] = ()) -> list[tuple[int, ...]]:
    """The way to every node below, by its place among its siblings."""
    inner = _children(node)
    return [path] + [found for index, child in enumerate(inner) for found in places(child, (*path, index))]


def _children(node: Node) -> tuple[Node, ...]:
    if isinstance(node, Items):
        return node.items
    return tuple(value for _, value in node.entries) if isinstance(node, Entries) else ()


def replaced(node: Node, path: tuple[int, ...], new: Node) -> Node:
    if not path:
        return new
    child = replaced(_children(node)[path[0]], path[1:], new)
    if isinstance(node, Items):
        return Items(items=(*node.items[: path[0]], child, *node.items[path[0] + 1 :]), span=node.span)
    assert isinstance(node, Entries)
    key = node.entries[path[0]][0]
    entries = (*node.entries[: path[0]], (key, child), *node.entries[path[0] + 1 :])
    return Entries(entries=entries, span=node.span)


def stranger(draw: st.DrawFn, at: Node) -> Node:
    """A node that has no business where it is put."""
    span = at.span
    text = Text(value=draw(st.sampled_from(SCALARS)), span=span)
    return draw(
        st.sampled_from([
            text, Nothing(span=span), Items(items=(), span=span), Items(items=(text, text), span=span),
            Entries(entries=(), span=span), Entries(entries=((text, text),), span=span),
        ])
    )  # fmt: skip


@st.composite
def spoiled(draw: st.DrawFn) -> tuple[type[Described], Node]:
    """A sound file with up to three of its nodes put out of place."""
    kind, path = draw(st.sampled_from(SOUND))
    node = read_yaml(path, path.name, ProblemLog())
    assert node is not None
    for _ in range(draw(st.integers(1, 3))):
        node = replaced(node, draw(st.sampled_from(places(node))), stranger(draw, node))
    return kind, node


@settings(max_examples=300, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(spoiled())
def test_any_spoiled_file_is_read_or_its_fault_is_worded(case: tuple[type[Described], Node]) -> None:
    kind, node = case
    log = ProblemLog()
    described = describe(kind, node, log)
    assert described is not None or log.has_errors
    assert "pydantic" not in report_text(log) and "validation" not in report_text(log)


def base(kind: type[D], name: str) -> D:
    node = read_yaml(BASE / name, name, ProblemLog())
    assert node is not None
    described = describe(kind, node, ProblemLog())
    assert described is not None
    return described


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(spoiled())
def test_a_spoiled_file_held_against_sound_ones_breaks_nothing(case: tuple[type[Described], Node]) -> None:
    log, catalogue = ProblemLog(), shipped_catalogue()
    described = describe(*case, log)
    method = described if isinstance(described, Method) else base(Method, "architrave.yaml")
    job = described if isinstance(described, Job) else base(Job, "jobs/doors.yaml")
    check_method(method, catalogue, log)
    check_job(job, method, catalogue, log)
    survey = parse_survey((BASE / "jobs" / "doors.csv").read_text(), "doors.csv", log)
    if survey and job.survey:
        rows_of(survey, job.survey, method, job, log)
    assert report_text(log)


CELLS = ("", "768", "-1", "x", "1,5", "5 mm", "2 kg", "left", "½", "1e9", '"a ""b"""')
HEADS = (
    "opening", "face", "name", "opening_width", "quirk", "waste", "set_back", "set_back@left:1",
    "quirk@head:2",
    "set_back@", "set_back@left:", "set_back@left:-4", "set_back@head:3 m", "@", "nonsense", "hinge_side",
)  # fmt: skip


@settings(max_examples=200, deadline=None)
@given(st.lists(st.sampled_from(HEADS), min_size=1, max_size=6), st.data())
def test_any_survey_is_read_or_its_fault_is_worded(heads: list[str], data: st.DataObject) -> None:
    cell = st.sampled_from(CELLS)
    rows = data.draw(st.lists(st.lists(cell, min_size=len(heads), max_size=len(heads)), max_size=3))
    text = "".join(",".join(row) + "\n" for row in [heads, *rows])
    log, job = ProblemLog(), base(Job, "jobs/doors.yaml")
    survey = parse_survey(text, "doors.csv", log)
    assert job.survey
    read = rows_of(survey, job.survey, base(Method, "architrave.yaml"), job, log) if survey else ()
    assert read or log.has_errors
    assert report_text(log)


@pytest.mark.parametrize(("kind", "path"), SOUND, ids=lambda value: getattr(value, "name", ""))
def test_a_sound_file_reads_without_fault(kind: type[Described], path: Path) -> None:
    log = ProblemLog()
    node = read_yaml(path, path.name, log)
    assert node is not None
    described = describe(kind, node, log)
    assert described is not None
    assert (list(log), described.lost) == ([], frozenset())


def test_all_faults_of_a_file_are_told_at_once_and_in_order() -> None:
    text = method(
        "tools: [Chop Saw]",
        "sizes:",
        "  quirk: {label: Quirk, chosen: {default: 5, least: x}}",
        "  Width: {label: Width}",
        "stop_iff: [it rains]",
        "questions:",
        "  - {ask: Why?, answer: Because., step: one}",
        "  - {ask: 12, answer: }",
    )
    assert codes(Method, text) == [
        "name-kebab",
        "value-not-number",
        "name-snake",
        "key-unknown",
        "count-form",
        "text-retyped",
        "key-empty",
    ]
