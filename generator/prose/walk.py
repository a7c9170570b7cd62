"""Every piece of prose in a method or a job."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from pydantic import BaseModel

from generator.model.prose import Prose


def prose_in(thing: object) -> Iterator[Prose]:
    """The prose in a model and everything inside it, in the order of its keys."""
    if isinstance(thing, Prose):
        yield thing
    elif isinstance(thing, BaseModel):
        for name in type(thing).model_fields:
            yield from prose_in(getattr(thing, name))
    elif isinstance(thing, Mapping):
        for value in thing.values():
            yield from prose_in(value)
    elif isinstance(thing, tuple):
        for item in thing:
            yield from prose_in(item)
