"""Groups of values under names that the user chose."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from typing import Annotated, Any, Generic, TypeVar, get_args

from pydantic import GetCoreSchemaHandler, ValidationInfo
from pydantic_core import CoreSchema, core_schema

from generator.model.dropping import DROPPED, spare
from generator.model.scalars import KEBAB, SNAKE
from generator.model.texts import NamedNode, bare, log_of, wrong_kind
from generator.problems import ProblemLog, Span
from generator.reading.nodes import Entries, Node, Nothing

T = TypeVar("T")


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

    def turned(self, turn: Callable[[T], Any]) -> Table[Any]:
        """The same names with each value put through `turn`."""
        return Table({name: turn(value) for name, value in self._entries.items()}, self._places, self.lost)

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
        value = core_schema.no_info_wrap_validator_function(spare, handler.generate_schema(item))
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
        gone = {key.value for key, _ in inner.entries if values.get(key.value, DROPPED) is DROPPED}
        # first-quirk stands for first_quirk wherever that is used.
        lost = frozenset(gone | {re.sub(r"[-\s]", "_", name.lower()) for name in gone if name not in values})
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
