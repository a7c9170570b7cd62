"""Lists in a file: any number of parts, at least one, or one that may stand without the list round it."""

from __future__ import annotations

from typing import Annotated, Any, TypeVar, get_args

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler, ValidationInfo
from pydantic_core import CoreSchema, core_schema

from generator.model.dropping import DROPPED, spare
from generator.model.texts import NamedNode, at_fault, bare, log_of, wrong_kind
from generator.reading.nodes import Items, Node

T = TypeVar("T")


class Listed(tuple[T, ...]):
    """The parts of a list that could be read; `whole` is False when one was left out."""

    whole: bool = True


class Many:
    """A list. `least` parts must stand in it; `lone` allows a single part without the list round it."""

    def __init__(self, *, least: int = 0, lone: bool = False) -> None:
        self.least, self.lone = least, lone

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        item = core_schema.no_info_wrap_validator_function(
            spare, handler.generate_schema(get_args(source)[0])
        )
        listed = core_schema.list_schema(item)
        unpacked = core_schema.with_info_before_validator_function(self._unpack, listed)
        return core_schema.no_info_after_validator_function(self._pack, unpacked)

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

    def _pack(self, items: list[Any]) -> Listed[Any]:
        listed = Listed(item for item in items if item is not DROPPED)
        if len(listed) < self.least:
            raise at_fault()
        listed.whole = len(listed) == len(items)
        return listed

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        listed = handler(schema)
        if self.least:
            listed["minItems"] = self.least
        return {"anyOf": [listed["items"], listed]} if self.lone else listed


ManyOf = Annotated[tuple[T, ...], Many()]
SomeOf = Annotated[tuple[T, ...], Many(least=1)]
OneOrMore = Annotated[tuple[T, ...], Many(least=1, lone=True)]
