"""What of a method stands on the card that is taken to the bench."""

from __future__ import annotations

from typing import ClassVar

from pydantic import Field

from generator.model.border import Described
from generator.model.lists import ManyOf
from generator.model.scalars import DottedName, Told, Whole


class CardSize(Described):
    """A size to set or to cut by, one row of the card."""

    noun: ClassVar[str] = "a size of the card"
    show: DottedName = Field(description="the size or quantity shown, as name or name.field")
    head: Told | None = Field(None, description="what is cut or set, where not the label")
    note: Told | None = Field(None, description="how many, which ends, measured where")


class Card(Described):
    """The bench card: the sizes on it and the steps done there."""

    noun: ClassVar[str] = "the bench card"
    sizes: ManyOf[CardSize] = Field(
        (), description="the sizes in the order they are cut; the cutting list's where none is given"
    )
    steps: ManyOf[Whole] = Field(
        (), description="the numbers of the steps done at the bench; all steps where none is given"
    )
