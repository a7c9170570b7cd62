"""Text out of a file's nodes: what stands where text was expected, and what an editor takes it for."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler, ValidationInfo
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from generator.problems import ProblemLog
from generator.reading.nodes import Entries, Items, Node, Nothing, Style, Text


@dataclass(frozen=True, slots=True, kw_only=True)
class NamedNode:
    """A node that stands under a name the user chose."""

    key: Text
    node: Node


def bare(node: Node | NamedNode) -> Node:
    """The node without the name it stands under."""
    return node.node if isinstance(node, NamedNode) else node


def at_fault() -> PydanticCustomError:
    """Raised once a fault is in the log, so that the value is not built."""
    return PydanticCustomError("at_fault", "the fault is in the log")


def log_of(info: ValidationInfo) -> ProblemLog:
    """The log that a reading carries along."""
    if not isinstance(info.context, ProblemLog):
        raise TypeError("a file is read with a problem log")
    return info.context


@dataclass(frozen=True, slots=True, eq=False)
class Reads:
    """How one kind of value is read from its node, and what an editor may expect there."""

    read: Callable[[Node, ProblemLog], object]
    schema: Mapping[str, Any]

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        def read(node: Node | NamedNode, info: ValidationInfo) -> object:
            return self.read(bare(node), log_of(info))

        return core_schema.with_info_plain_validator_function(read)

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        return dict(self.schema)


FOUND = {Text: "Text", Nothing: "Nothing", Items: "A list", Entries: "A group of keys"}


def wrong_kind(node: Node, expected: str, log: ProblemLog) -> PydanticCustomError:
    """Log that something else stands here than was expected."""
    log.add("kind-wrong", node.span, found=FOUND[type(node)], expected=expected)
    return at_fault()


def text_of(node: Node, expected: str, log: ProblemLog) -> Text:
    """The node as text that is not empty."""
    if not isinstance(node, Text):
        raise wrong_kind(node, expected, log)
    if not node.value.strip():
        log.add("text-empty", node.span, expected=expected)
        raise at_fault()
    return node


# The core schema of YAML 1.2.2, section 10.3.2
_RETYPED = re.compile(
    r"[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?|0o[0-7]+|0x[0-9a-fA-F]+"
    r"|[-+]?\.(inf|Inf|INF)|\.(nan|NaN|NAN)|~|null|Null|NULL|true|True|TRUE|false|False|FALSE"
)


def retyped(text: Text) -> bool:
    """True when a YAML 1.2 editor takes this plain scalar for a number, a truth value or nothing."""
    return text.style is Style.PLAIN and bool(_RETYPED.fullmatch(text.value.strip()))


def told(node: Node, expected: str, log: ProblemLog) -> Text:
    """The node as text that an editor takes for text too."""
    text = text_of(node, expected, log)
    if retyped(text):
        log.add("text-retyped", text.span, value=text.value)
        raise at_fault()
    return text


def told_or_number(node: Node, expected: str, log: ProblemLog) -> Text:
    """The node as text that an editor takes for text or for a number."""
    text = text_of(node, expected, log)
    if text.style is Style.PLAIN and text.value.lower() in ("true", "false"):
        log.add("text-retyped", text.span, value=text.value)
        raise at_fault()
    return text
