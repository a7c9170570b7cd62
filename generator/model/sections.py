"""Answers to the required sections of a method statement."""

from __future__ import annotations

from typing import Any, ClassVar, Self

from pydantic import Field, GetJsonSchemaHandler, ValidationInfo, model_validator
from pydantic_core import CoreSchema

from generator.model.border import Named
from generator.model.prose import Prose
from generator.model.scalars import Flag, Plain, Told
from generator.model.texts import at_fault, log_of


class SectionAnswer(Named):
    """A section's text, or the reason why it does not apply here and who decided so."""

    noun: ClassVar[str] = "a section that does not apply"
    shorthand: ClassVar[str] = "text"
    text: Told | None = None
    applies: Flag = Field(True, description="no, when the section does not apply here")
    because: Told | None = Field(None, description="why the section does not apply here, in a full sentence")
    decided_by: Plain | None = Field(None, description="who decided that it does not apply")

    @model_validator(mode="after")
    def _answers(self, info: ValidationInfo) -> Self:
        log = log_of(info)
        if self.text is None and self.applies and not self.lost & {"text", "applies"}:
            log.add("section-unanswered", self.span, name=self.name)
            raise at_fault()
        if not self.applies and self.because is None and "because" not in self.lost:
            log.add("section-no-reason", self.span, name=self.name)
        return self

    @property
    def reason(self) -> Prose | None:
        """Why it does not apply; None when it does."""
        return None if self.applies else self.because

    @classmethod
    def __get_pydantic_json_schema__(
        cls, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        written = handler(schema)
        keys = handler.resolve_ref_schema(written)
        keys["properties"].pop("text")
        keys["properties"]["applies"] = {"enum": [False, "no"], "description": cls.keys()["applies"]}
        keys["required"] = ["applies", "because"]
        return {"anyOf": [{"type": "string", "minLength": 1}, written]}
