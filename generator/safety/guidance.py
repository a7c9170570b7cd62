"""The law and guidance that a statement names, by the nation the work is in."""

from __future__ import annotations

from functools import cache
from typing import Literal

from pydantic import BaseModel, ConfigDict, Field

from generator.safety.tables import table


class Guidance(BaseModel):
    """What one subject rests on in one nation, and how well that is known."""

    model_config = ConfigDict(frozen=True, extra="forbid")
    nation: Literal["England", "Wales", "Scotland", "Northern Ireland"]
    subject: str = Field(min_length=1)
    names: str = Field(min_length=1)
    known: Literal["official", "copy", "likely", "memory"]


@cache
def guidance() -> tuple[Guidance, ...]:
    """All entries in their order."""
    return tuple(Guidance.model_validate(entry) for entry in table("guidance")["guidance"])


def guidance_for(nation: str) -> tuple[Guidance, ...]:
    """What holds in a nation; none for one that the table does not know."""
    return tuple(entry for entry in guidance() if entry.nation == nation)
