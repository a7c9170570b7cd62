"""What becomes of a part with faults: it is left out, and only faults that are in the log may cause that."""

from __future__ import annotations

from typing import Any, Final

from pydantic import ValidationError, ValidatorFunctionWrapHandler

ACCOUNTED: Final = frozenset({"at_fault", "missing"})


def accounted(error: ValidationError) -> set[str]:
    """The keys that failed; each failure must already be in the log, or it is ours and is raised again."""
    failures = error.errors(include_url=False, include_context=False, include_input=False)
    if any(failure["type"] not in ACCOUNTED for failure in failures):
        raise RuntimeError(f"a fault without wording: {failures}") from error
    return {str(failure["loc"][0]) if failure["loc"] else "" for failure in failures}


class Dropped:
    """Stands for a part that could not be read until its holder leaves it out."""


DROPPED: Final = Dropped()


def spare(node: Any, read: ValidatorFunctionWrapHandler) -> Any:
    """What `read` makes of a node, or DROPPED where it has faults."""
    try:
        return read(node)
    except ValidationError as error:
        accounted(error)
        return DROPPED
