"""Kinds of place, of people and of work that safety rules look at, as entries of the catalogue."""

from __future__ import annotations

from typing import ClassVar

from pydantic import Field

from generator.model.border import Named
from generator.model.lists import ManyOf
from generator.model.scalars import Flag, Plain, Told


class Kind(Named):
    """A kind of place, of people or of work by its key.

    `signs` are phrases that show it in a step that does not name it. In a phrase, + joins parts that all
    stand in one sentence, and / parts of which one is enough.
    """

    label: Plain = Field(description="the kind as documents print it")
    means: Told = Field(description="what counts as one, so that a writer can decide")
    signs: ManyOf[Plain] = Field((), description="phrases that show it in a step, such as “screw/pin + wall”")
    source: Told = Field(description="where the entry comes from")
    replaces: Flag = Field(False, description="yes to put this entry in the place of a shipped one")


class Place(Kind):
    """A kind of place, such as a loft."""

    noun: ClassVar[str] = "a kind of place"


class PersonKind(Kind):
    """A kind of person who needs more thought, such as a young person."""

    noun: ClassVar[str] = "a kind of person"


class Activity(Kind):
    """A kind of work, such as fixing into a wall."""

    noun: ClassVar[str] = "an activity"
