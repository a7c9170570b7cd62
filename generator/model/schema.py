"""The JSON Schema of each kind of file, for editors, made from the same models that read the files.

Draft-07, which YAML language servers read everywhere. It sees what a YAML 1.2 editor sees: `no` is text
there, `10` a number, `true` a truth value.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final, Literal, TypeAlias

from pydantic.json_schema import GenerateJsonSchema, JsonSchemaValue
from pydantic_core import core_schema

from generator.model.border import Described
from generator.model.catalogue import CatalogueFile
from generator.model.house import HouseRules
from generator.model.jobs import Job
from generator.model.method import Method
from generator.model.theme import ThemeFile
from generator.model.translations import TranslationFile

Kind: TypeAlias = Literal["method", "job", "house-rules", "catalogue", "theme", "translation"]

KINDS: Final[Mapping[Kind, type[Described]]] = {
    "method": Method,
    "job": Job,
    "house-rules": HouseRules,
    "catalogue": CatalogueFile,
    "theme": ThemeFile,
    "translation": TranslationFile,
}


def json_schema(kind: Kind) -> dict[str, Any]:
    """The schema of a kind of file. Raises KeyError for a kind that is not in KINDS."""
    model = KINDS[kind]
    written = model.model_json_schema(ref_template="#/definitions/{model}", schema_generator=_EditorSchema)
    definitions = {name: _worded(schema) for name, schema in written.pop("$defs", {}).items()}
    return {"$schema": _EditorSchema.schema_dialect, **_worded(written), "definitions": definitions}


class _EditorSchema(GenerateJsonSchema):
    """A key that may be left out is still never empty, so neither null nor defaults are named."""

    schema_dialect = "http://json-schema.org/draft-07/schema#"

    def nullable_schema(self, schema: core_schema.NullableSchema) -> JsonSchemaValue:
        return self.generate_inner(schema["schema"])

    def default_schema(self, schema: core_schema.WithDefaultSchema) -> JsonSchemaValue:
        return self.generate_inner(schema["schema"])

    def get_title_from_name(self, name: str) -> str:
        return name.replace("_", " ").capitalize()

    def model_schema(self, schema: core_schema.ModelSchema) -> JsonSchemaValue:
        described = super().model_schema(schema)
        model = schema["cls"]
        if issubclass(model, Described):
            described["title"] = model.noun.removeprefix("a ").removeprefix("the ").capitalize()
        return described


def _worded(schema: dict[str, Any]) -> dict[str, Any]:
    """The schema with sentences that begin with a capital and references that may stand beside them."""
    worded = {key: _inner(key, value) for key, value in schema.items()}
    if isinstance(text := worded.get("description"), str):
        worded["description"] = text[:1].upper() + text[1:]
    if "$ref" in worded and len(worded) > 1:
        worded["allOf"] = [{"$ref": worded.pop("$ref")}]
    if "patternProperties" in worded:
        worded["additionalProperties"] = False
    return worded


def _inner(key: str, value: Any) -> Any:
    if key in ("properties", "patternProperties"):
        return {name: _worded(schema) for name, schema in value.items()}
    if key in ("items", "additionalProperties", "propertyNames") and isinstance(value, dict):
        return _worded(value)
    if key in ("anyOf", "oneOf", "allOf"):
        return [_worded(schema) for schema in value]
    return value
