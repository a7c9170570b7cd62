"""The schema for editors and the tool agree on what a file may hold."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import jsonschema
import pytest

from generator.model.border import Described
from generator.model.method import Method
from generator.model.schema import KINDS, Kind, json_schema

from .describing import codes, method
from .editor import as_editor_sees

ROOT = Path(__file__).parents[2]
SHIPPED = ROOT / "generator" / "model" / "catalogue"
HOUSE = ROOT / "methods" / "house-rules.yaml"
BROKEN = ROOT / "tests" / "broken" / "whole"

FILES: list[tuple[Kind, Path]] = [
    *(("method", path) for path in sorted((ROOT / "methods").glob("*.yaml")) if path != HOUSE),
    *(("job", path) for path in sorted((ROOT / "methods" / "jobs").glob("*.yaml"))),
    ("house-rules", HOUSE),
    *(("catalogue", path) for path in sorted((ROOT / "methods" / "catalogue").glob("*.yaml"))),
    *(("translation", path) for path in sorted((ROOT / "methods" / "languages").rglob("*.yaml"))),
    *(("catalogue", path) for path in sorted(SHIPPED.glob("*.yaml"))),
    ("method", ROOT / "tests" / "model" / "files" / "example-method.yaml"),
    ("job", ROOT / "tests" / "model" / "files" / "example-job.yaml"),
]  # fmt: skip


def faults_in_editor(kind: Kind, text: str) -> list[str]:
    validator = jsonschema.Draft7Validator(json_schema(kind))
    return [error.message for error in validator.iter_errors(as_editor_sees(text))]


@pytest.mark.parametrize(
    ("kind", "path"), FILES, ids=lambda value: value.name if isinstance(value, Path) else value
)
def test_every_file_we_ship_is_sound_in_an_editor(kind: Kind, path: Path) -> None:
    assert faults_in_editor(kind, path.read_text(encoding="utf-8")) == []


@pytest.mark.parametrize("kind", KINDS)
def test_the_schema_is_a_schema(kind: Kind) -> None:
    schema = json_schema(kind)
    jsonschema.Draft7Validator.check_schema(schema)
    assert schema["$schema"] == "http://json-schema.org/draft-07/schema#"


def objects(schema: Any) -> list[dict[str, Any]]:
    if isinstance(schema, list):
        return [found for part in schema for found in objects(part)]
    if not isinstance(schema, dict):
        return []
    own = [schema] if schema.get("type") == "object" else []
    return own + [found for part in schema.values() for found in objects(part)]


@pytest.mark.parametrize("kind", KINDS)
def test_no_group_takes_keys_nobody_knows(kind: Kind) -> None:
    found = objects(json_schema(kind))
    assert len(found) >= 2
    assert all(group["additionalProperties"] is False for group in found)


@pytest.mark.parametrize("kind", KINDS)
def test_every_key_is_explained(kind: Kind) -> None:
    for group in objects(json_schema(kind)):
        for key, schema in group.get("properties", {}).items():
            assert schema.get("description"), key


@pytest.mark.parametrize("kind", KINDS)
def test_nothing_that_only_reading_fills_in_is_a_key(kind: Kind) -> None:
    for group in objects(json_schema(kind)):
        assert not {"span", "lost", "places", "rows", "name_"} & set(group.get("properties", {}))


def keys_of(model: type[Described]) -> set[str]:
    return set(model.keys())


@pytest.mark.parametrize("kind", KINDS)
def test_editor_and_tool_know_the_same_keys(kind: Kind) -> None:
    assert set(json_schema(kind)["properties"]) == keys_of(KINDS[kind])


PLACES = {
    "text": "title: {}",
    "code": "method: {}",
    "whole number": "steps: [{{title: a, do: [b], why: c, minutes: {}}}]",
    "flag": "sizes: {{a: {{label: b, readings: {}, measured: {{example: [1 mm]}}}}}}",
    "size": "sizes: {{a: {{label: b, chosen: {{default: {}, from: [left]}}}}}}",
    "length": "cutting: {{a: {{of: b, pieces: c, saw_kerf: {}}}}}",
    "limit": "steps: [{{title: a, do: [b], why: c, minutes: 1, check: {{what: a, how: b, within: {}}}}}]",
    "key": "tools: [{}]",
    "dotted name": "schedule: [{{show: {}}}]",
    "prose": "stop_if: [{}]",
    "format": "format: {}",
    "unit": "quantities: {{a: {{label: b, work: 1, unit: {}}}}}",
    "formula": "quantities: {{a: {{label: b, work: {}}}}}",
    "list": "tools: {}",
    "group": "sizes: {}",
}  # fmt: skip
TOKENS = (
    "no", "yes", "true", "False", "on", "10", "0", "-3", "010", "1:30", "1e3", "0x10", "0o7", "7.5", "+4",
    "5 mm", "3 deg", "2 kg", "5mm", "'10'", "\"yes\"", "\"5 mm\"", "2026-11-11", "~", "null", ".inf", "1_000",
    "left",
    "chop-saw", "first_quirk", "packer.mean", "Some words", "[]", "{}", "[a]", "{a: b}", "1.", ".5", "mm",
)  # fmt: skip
# The tool reads these by their meaning, which a schema of shapes cannot: what a size or a formula holds,
# and numbers that an editor has already made one of several spellings.
TOOL_ALONE = ("size", "formula")
BY_SPELLING = frozenset({"010", "1e3", "0x10", "0o7", "+4", "1.", "-3", ".inf", "'10'", '"yes"'})


def text_with(place: str, token: str) -> str:
    line = PLACES[place].format(token)
    key = line.partition(":")[0]
    kept = method().split("steps:")[0] if key == "steps" else method()
    return "\n".join([row for row in kept.splitlines() if not row.startswith(f"{key}:")] + [line]) + "\n"


FORMS = (
    "kind-",
    "key-",
    "text-",
    "count-",
    "flag-",
    "value-",
    "amount-",
    "name-",
    "list-",
    "choice-",
    "format-u",
)


@pytest.mark.parametrize("place", PLACES)
@pytest.mark.parametrize("token", TOKENS)
def test_what_the_editor_passes_the_tool_passes(place: str, token: str) -> None:
    text = text_with(place, token)
    refused = [code for code in codes(Method, text) if code.startswith(FORMS)]
    marked = faults_in_editor("method", text)
    if place in TOOL_ALONE:
        assert not marked or refused
    elif token not in BY_SPELLING:
        assert bool(refused) == bool(marked), (refused, marked)


STRUCTURAL = (
    "unknown-key", "missing-key", "empty-value", "text-where-list", "list-where-text", "text-where-keys",
    "keys-where-text", "empty-list", "number-where-text", "length-without-unit", "size-of-two-kinds",
    "size-of-no-kind", "name-with-capitals", "clock-for-minutes", "on-for-yes", "true-for-text",
    "control-of-two-ranks", "control-of-no-rank", "section-without-reason", "section-that-applies",
    "format-of-the-future", "format-missing",
)  # fmt: skip


@pytest.mark.parametrize("case", STRUCTURAL)
def test_an_editor_marks_faults_of_shape(case: str) -> None:
    text = (BROKEN / case / "methods" / "architrave.yaml").read_text(encoding="utf-8")
    assert faults_in_editor("method", text)
