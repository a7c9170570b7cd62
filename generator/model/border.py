"""The border between a user's file and the model: one base for every thing a file describes.

A thing is read once. Faults go to the log at their own place, and what can still be read is kept, so that
one fault hides no other. A part that could not be read is left out and its holder says so (`Table.lost`,
`Listed.whole`, `Described.lost`), so that nobody takes its absence for a second fault.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Any, ClassVar, Final, Self

from pydantic import (
    BaseModel,
    ConfigDict,
    GetCoreSchemaHandler,
    GetJsonSchemaHandler,
    ModelWrapValidatorHandler,
    ValidationError,
    ValidationInfo,
    model_validator,
)  # fmt: skip
from pydantic_core import CoreSchema, PydanticOmit, core_schema

from generator.model.dropping import accounted
from generator.model.lists import Listed
from generator.model.scalars import Word
from generator.model.texts import NamedNode, at_fault, bare, log_of, wrong_kind
from generator.problems import ProblemLog, Span, nearest
from generator.reading.nodes import Entries, Node, Nothing, Text


class Made:
    """Marks a field that reading fills in: no key of a file, no part of the schema."""

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.any_schema()

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        raise PydanticOmit


MADE: Final = Made()


class Described(BaseModel):
    """A thing a file describes by keys.

    `lost` names the keys whose values had faults; `places` says where each key stands.
    """

    model_config = ConfigDict(frozen=True, extra="forbid")
    noun: ClassVar[str] = "this"
    shorthand: ClassVar[str] = ""

    span: Annotated[Span, MADE]
    lost: Annotated[frozenset[str], MADE] = frozenset()
    places: Annotated[Mapping[str, Span], MADE] = {}

    @model_validator(mode="wrap")
    @classmethod
    def _read(cls, node: Any, build: ModelWrapValidatorHandler[Self], info: ValidationInfo) -> Self:
        data = cls._filled(node, log_of(info))
        try:
            return build(data)
        except ValidationError as error:
            lost = accounted(error) | data.get("lost", frozenset())
        if lost & (cls._required() | {""}):
            raise at_fault()
        kept = {key: value for key, value in data.items() if key not in lost}
        return build(kept | {"lost": frozenset(lost)})

    @classmethod
    def _filled(cls, node: Node | NamedNode, log: ProblemLog) -> dict[str, Any]:
        place = node.key.span if isinstance(node, NamedNode) else node.span
        inner = bare(node)
        if cls.shorthand and isinstance(inner, Text):
            return {"span": place, cls.shorthand: inner}
        if not isinstance(inner, Entries):
            raise wrong_kind(inner, f"the keys of {cls.noun}", log)
        places = {key.value: key.span for key, _ in inner.entries}
        meant = cls._misspelt(inner)
        return {"span": place, "places": places, "lost": meant, **cls._known(inner, meant, place, log)}

    @classmethod
    def _misspelt(cls, entries: Entries) -> frozenset[str]:
        """Keys not given but meant by one that is misspelt, whose report says all there is to say."""
        keys, given = cls.keys(), {key.value for key, _ in entries.entries}
        return frozenset(nearest(name, keys) for name in given - keys.keys()) & (keys.keys() - given)

    @classmethod
    def _known(cls, entries: Entries, meant: frozenset[str], place: Span, log: ProblemLog) -> dict[str, Node]:
        keys = cls.keys()
        given = {key.value for key, _ in entries.entries} | meant
        for key in cls._required() & keys.keys() - given:
            log.add("key-missing", place, key=key, noun=cls.noun, purpose=keys[key])
        for name, value in entries.entries:
            cls._look_at(name, value, log)
        return {
            key.value: value
            for key, value in entries.entries
            if key.value in keys and not isinstance(value, Nothing)
        }

    @classmethod
    def _look_at(cls, key: Text, value: Node, log: ProblemLog) -> None:
        keys = cls.keys()
        if key.value not in keys:
            near, known = nearest(key.value, keys), ", ".join(keys)
            log.add("key-unknown", key.span, key=key.value, noun=cls.noun, known=known, nearest=near)
        elif isinstance(value, Nothing):
            cls._report_empty(key, keys[key.value], log)

    @classmethod
    def _report_empty(cls, key: Text, purpose: str, log: ProblemLog) -> None:
        if "#" in key.span.text[key.span.column :]:
            log.add("key-commented-out", key.span, key=key.value, purpose=purpose)
        elif key.value in cls._required():
            log.add("key-empty", key.span, key=key.value, purpose=purpose)
        else:
            log.add("key-empty-spare", key.span, key=key.value, purpose=purpose)

    def knows(self, key: str) -> bool:
        """False when a value under `key` was lost to a fault, so that what is absent there proves nothing."""
        value = getattr(self, key)
        return key not in self.lost and (not isinstance(value, Listed) or value.whole)

    @classmethod
    def keys(cls) -> Mapping[str, str]:
        """The keys a file may write here, in order, each with what it is for."""
        return {
            field.alias or name: field.description or ""
            for name, field in cls.model_fields.items()
            if MADE not in field.metadata and name != cls.shorthand
        }

    @classmethod
    def _required(cls) -> frozenset[str]:
        fields = cls.model_fields.items()
        return frozenset(field.alias or name for name, field in fields if field.is_required())


class Named(Described):
    """A thing that stands under a name of the user's choosing; its span is the name's."""

    name: Annotated[Word, MADE]

    @classmethod
    def _filled(cls, node: Node | NamedNode, log: ProblemLog) -> dict[str, Any]:
        if not isinstance(node, NamedNode):
            raise TypeError(f"{cls.__name__} stands under a name")
        return {**super()._filled(node, log), "name": Word(value=node.key.value, span=node.key.span)}
