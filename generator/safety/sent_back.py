"""The fifteen common reasons for which a statement is sent back, and what reports each."""

from __future__ import annotations

from functools import cache

from pydantic import BaseModel, ConfigDict, Field, model_validator

from generator.safety.tables import table


class SentBack(BaseModel):
    """A reason, with the codes of faults and the numbers of rules that report it."""

    model_config = ConfigDict(frozen=True, extra="forbid")
    reason: str = Field(min_length=1)
    faults: tuple[str, ...]
    rules: tuple[str, ...]

    @model_validator(mode="after")
    def _reported(self) -> SentBack:
        if not self.faults and not self.rules:
            raise ValueError(f"nothing reports: {self.reason}")
        return self


@cache
def reasons_sent_back() -> tuple[SentBack, ...]:
    """All reasons in their order."""
    return tuple(SentBack.model_validate(entry) for entry in table("reasons_sent_back")["reasons"])
