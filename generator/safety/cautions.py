"""The usual cautions, and that local law, site rules and competent persons come first."""

from __future__ import annotations

from functools import cache

from pydantic import BaseModel, ConfigDict, Field

from generator.safety.sections import Edition
from generator.safety.tables import table


class Caution(BaseModel):
    """A sentence printed on every document of its editions."""

    model_config = ConfigDict(frozen=True, extra="forbid")
    key: str = Field(pattern=r"[a-z][a-z_]*")
    editions: tuple[Edition, ...] = Field(min_length=1)
    text: str = Field(min_length=1)


@cache
def cautions() -> tuple[Caution, ...]:
    """All cautions in their order."""
    return tuple(Caution.model_validate(entry) for entry in table("cautions")["cautions"])


def cautions_for(edition: Edition) -> tuple[str, ...]:
    """The sentences an edition carries, in order."""
    return tuple(caution.text for caution in cautions() if edition in caution.editions)
