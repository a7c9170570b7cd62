"""A file's nodes to the thing they describe."""

from __future__ import annotations

from typing import Final, TypeVar

from pydantic import ValidationError

from generator.model.border import Described
from generator.model.dropping import accounted
from generator.problems import ProblemLog
from generator.reading.nodes import Entries, Node, Text

FORMAT: Final = "1"

D = TypeVar("D", bound=Described)


def describe(kind: type[D], node: Node, log: ProblemLog) -> D | None:
    """Read a whole file's node as a `kind`; None when too little of it can be read.

    Every fault is in the log. What comes back with faults in the log serves only to find more of them.
    """
    if isinstance(node, Entries) and not _format_is_known(node, log):
        return None
    try:
        return kind.model_validate(node, context=log)
    except ValidationError as error:
        accounted(error)
        return None


def _format_is_known(entries: Entries, log: ProblemLog) -> bool:
    version = entries.get("format")
    if isinstance(version, Text) and version.value != FORMAT:
        log.add("format-unknown", version.span, value=version.value, known=FORMAT)
        return False
    first = entries.entries[0][0] if entries.entries else None
    if first is not None and version is not None and first.value != "format":
        log.add("format-not-first", first.span, first=first.value)
    return True
