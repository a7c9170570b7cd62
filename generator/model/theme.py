"""A theme's own words and colours, as its `theme.yaml` gives them."""

from __future__ import annotations

from typing import Annotated, ClassVar

from pydantic import Field

from generator.model.border import Described
from generator.model.scalars import Colour, FormatVersion, Plain
from generator.model.tables import KebabTable, NamedBy, Table


class ThemeTokens(Described):
    """Colours by the names of `tokens.css`, for a light and for a dark screen."""

    noun: ClassVar[str] = "the tokens of a theme"
    light: KebabTable[Colour] = Field(Table.empty(), description="colours of a light screen by their names")
    dark: KebabTable[Colour] = Field(Table.empty(), description="colours of a dark screen by their names")


class ThemeFile(Described):
    """What a theme changes without a style sheet or a template of its own."""

    noun: ClassVar[str] = "a theme"
    format: FormatVersion = Field(description="the version of the format, which stands first: 1")
    tokens: ThemeTokens | None = Field(None, description="colours by the names of tokens.css")
    labels: Annotated[Table[Plain], NamedBy("name-label", r"[^{}]+")] = Field(
        Table.empty(),
        description="a sentence of the tool, letter for letter, and your own words for it",
    )
