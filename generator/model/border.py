"""The border between a user's file and the model: one base for every thing a file describes.

A thing is read once. Faults go to the log at their own place, and what can still be read is kept, so that
one fault hides no other. A part that could not be read is left out and its holder says so (`Table.lost`,
`Listed.whole`, `Described.lost`), so that nobody takes its absence for a second fault.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from typing import Annotated, Any, ClassVar, Final, Generic, Self, TypeVar, get_args

from pydantic import (
    BaseModel,
    ConfigDict,
    GetCoreSchemaHandler,
    GetJsonSchemaHandler,
    ModelWrapValidatorHandler,
    ValidationError,
    ValidationInfo,
    ValidatorFunctionWrapHandler,
    model_validator,
)
from pydantic_core import CoreSchema, PydanticOmit, core_schema

from generator.model.scalars import KEBAB, SNAKE, NamedNode, Word, at_fault, bare, log_of, wrong_kind
from generator.problems import ProblemLog, Span, nearest
from generator.reading.nodes import Entries, Items, Node, Nothing, Text

T = TypeVar("T")
ACCOUNTED: Final = frozenset({"at_fault", "missing"})


class Made:
    """Marks a field that reading fills in: no key of a file, no part of the schema."""

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.any_schema()

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        raise PydanticOmit


MADE: Final = Made()


def accounted(error: ValidationError) -> set[str]:
    """The keys that failed; each failure must already be in the log, or it is ours and is raised again."""
    failures = error.errors(include_url=False, include_context=False, include_input=False)
    if any(failure["type"] not in ACCOUNTED for failure in failures):
        raise RuntimeError(f"a fault without wording: {failures}") from error
    return {str(failure["loc"][0]) if failure["loc"] else "" for failure in failures}


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
            lost = accounted(error)
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
        return {"span": place, "places": places, **cls._known(inner, place, log)}

    @classmethod
    def _known(cls, entries: Entries, place: Span, log: ProblemLog) -> dict[str, Node]:
        keys = cls.keys()
        given = {key.value for key, _ in entries.entries}
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


class _Dropped:
    """Stands for a part that could not be read until its holder leaves it out."""


_DROPPED: Final = _Dropped()


def _spare(node: Any, read: ValidatorFunctionWrapHandler) -> Any:
    try:
        return read(node)
    except ValidationError as error:
        accounted(error)
        return _DROPPED


class Listed(tuple[T, ...]):
    """The parts of a list that could be read; `whole` is False when one was left out."""

    whole: bool = True


class Many:
    """A list. `least` parts must stand in it; `lone` allows a single part without the list round it."""

    def __init__(self, *, least: int = 0, lone: bool = False) -> None:
        self.least, self.lone = least, lone

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        item = core_schema.no_info_wrap_validator_function(
            _spare, handler.generate_schema(get_args(source)[0])
        )
        listed = core_schema.list_schema(item)
        unpacked = core_schema.with_info_before_validator_function(self._unpack, listed)
        return core_schema.no_info_after_validator_function(_pack, unpacked)

    def _unpack(self, node: Node | NamedNode, info: ValidationInfo) -> list[Node]:
        inner, log = bare(node), log_of(info)
        if self.lone and not isinstance(inner, Items):
            return [inner]
        if not isinstance(inner, Items):
            raise wrong_kind(inner, "a list: one line each, beginning with “- ”", log)
        if len(inner.items) < self.least:
            log.add("list-empty", inner.span)
            raise at_fault()
        return list(inner.items)

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        listed = handler(schema)
        if self.least:
            listed["minItems"] = self.least
        return {"anyOf": [listed["items"], listed]} if self.lone else listed


def _pack(items: list[Any]) -> Listed[Any]:
    listed = Listed(item for item in items if item is not _DROPPED)
    listed.whole = len(listed) == len(items)
    return listed


ManyOf = Annotated[tuple[T, ...], Many()]
SomeOf = Annotated[tuple[T, ...], Many(least=1)]
OneOrMore = Annotated[tuple[T, ...], Many(least=1, lone=True)]


class Table(Mapping[str, T], Generic[T]):
    """Values by the names the user gave them, in the order written; each name keeps its place.

    `lost` holds the names whose values had faults: they exist, and nothing is known of them.
    """

    __slots__ = ("_entries", "_places", "lost")

    def __init__(self, entries: Mapping[str, T], places: Mapping[str, Span], lost: frozenset[str]) -> None:
        self._entries, self._places, self.lost = dict(entries), dict(places), lost

    def __getitem__(self, name: str) -> T:
        return self._entries[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self._entries)

    def __len__(self) -> int:
        return len(self._entries)

    def __repr__(self) -> str:
        return f"Table({self._entries!r})"

    def place(self, name: str) -> Span:
        """Where the name stands."""
        return self._places[name]

    @property
    def names(self) -> frozenset[str]:
        """Every name written here, those whose values had faults too."""
        return frozenset(self._entries) | self.lost

    @classmethod
    def empty(cls) -> Table[T]:
        """One without entries."""
        return cls({}, {}, frozenset())

    @classmethod
    def __get_pydantic_core_schema__(cls, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return NamedBy("name-snake", SNAKE).table(get_args(source)[0], handler)


class NamedBy:
    """A table whose names have a shape: snake_case unless said otherwise."""

    def __init__(self, code: str, pattern: str) -> None:
        self.code, self.pattern = code, pattern

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return self.table(get_args(source)[0], handler)

    def table(self, item: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        """The schema of a table of `item`."""
        value = core_schema.no_info_wrap_validator_function(_spare, handler.generate_schema(item))
        name = core_schema.str_schema(pattern=f"^{self.pattern}$")
        return core_schema.with_info_wrap_validator_function(
            self._reads, core_schema.dict_schema(name, value)
        )

    def _reads(
        self, node: Node | NamedNode, read: Callable[[Any], Mapping[str, Any]], info: ValidationInfo
    ) -> Table[Any]:
        inner = bare(node)
        if not isinstance(inner, Entries):
            raise wrong_kind(inner, "names, each followed by a colon", log_of(info))
        values = read(self._well_named(inner, log_of(info)))
        lost = frozenset(key.value for key, _ in inner.entries if values.get(key.value, _DROPPED) is _DROPPED)
        kept = {name: value for name, value in values.items() if name not in lost}
        return Table(kept, {key.value: key.span for key, _ in inner.entries}, lost)

    def _well_named(self, entries: Entries, log: ProblemLog) -> dict[str, NamedNode]:
        named: dict[str, NamedNode] = {}
        for key, value in entries.entries:
            if not re.fullmatch(self.pattern, key.value):
                log.add(self.code, key.span, value=key.value)
            elif isinstance(value, Nothing):
                log.add("name-empty", key.span, name=key.value)
            else:
                named[key.value] = NamedNode(key=key, node=value)
        return named


KebabTable = Annotated[Table[T], NamedBy("name-kebab", KEBAB)]
CodeTable = Annotated[Table[T], NamedBy("name-code", r"[A-Za-z0-9][A-Za-z0-9./-]{0,19}")]
TermTable = Annotated[Table[T], NamedBy("name-term", r"[A-Za-zÀ-ɏ][^{}<>:]{0,59}")]
