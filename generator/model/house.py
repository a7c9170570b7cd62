"""House rules: what a firm decides for all its work."""

from __future__ import annotations

from typing import ClassVar

from pydantic import Field

from generator.model.amounts import SizeGiven
from generator.model.border import Described
from generator.model.scalars import Code, Colour, FormatVersion, Plain, Told
from generator.model.tables import Table


class Company(Described):
    """The firm, as documents print it."""

    noun: ClassVar[str] = "a company"
    name: Plain = Field(description="the firm's name")
    address: Told | None = Field(None, description="the firm's address")
    phone: Code | None = Field(None, description="the firm's telephone number")
    accent: Colour | None = Field(None, description="a colour such as “#1B4A86”")
    logo: Plain | None = Field(None, description="the file of the logo, from this folder")


class HouseRules(Described):
    """The firm and its policy numbers."""

    noun: ClassVar[str] = "the house rules"
    format: FormatVersion = Field(description="the version of the format, which stands first: 1")
    company: Company | None = Field(None, description="the firm, as documents print it")
    policy: Table[SizeGiven] = Field(Table.empty(), description="policy sizes by name, for every method")
