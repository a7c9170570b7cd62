"""Sizes: what is chosen, what is measured on site, and what is the firm's policy."""

from __future__ import annotations

from typing import Annotated, ClassVar, TypeAlias

from pydantic import Field

from generator.model.border import Described, ManyOf, Named
from generator.model.scalars import Flag, Plain, SizeGiven, SizeValue, Told, Word

Default = Annotated[SizeGiven, Field(description="the value used where nothing else is given")]
Least = Annotated[SizeGiven | None, Field(description="the least value allowed")]
Most = Annotated[SizeGiven | None, Field(description="the greatest value allowed")]
From = Annotated[
    ManyOf[Plain], Field(alias="from", description="the words to choose from, for a size that is a word")
]


class Chosen(Described):
    """A size the craftsman chooses: a default and its bounds, or a word out of a list."""

    noun: ClassVar[str] = "a chosen size"
    default: Default
    least: Least = None
    most: Most = None
    from_: From = ()


class Measured(Described):
    """A size taken on site: an example, used only in the guide, and the bounds it must keep."""

    noun: ClassVar[str] = "a measured size"
    example: SizeGiven = Field(description="a likely value, used only in the guide")
    least: Least = None
    most: Most = None
    from_: From = ()


class Policy(Described):
    """A number the firm decides for all its work, with a default and its bounds; printed as policy."""

    noun: ClassVar[str] = "a policy number"
    default: Default
    least: Least = None
    most: Most = None


Bounds: TypeAlias = Chosen | Measured | Policy


class Size(Named):
    """A size of the work by its name: exactly one of chosen, measured and policy."""

    noun: ClassVar[str] = "a size"
    label: Plain = Field(description="what the trade calls it, as documents print it")
    take: Told | None = Field(None, description="how to take it on site, with which tool and where")
    why: Told | None = Field(None, description="what goes wrong when it is wrong")
    readings: Flag = Field(False, description="yes when several readings are taken of it")
    chosen: Chosen | None = Field(None, description="a size the craftsman chooses")
    measured: Measured | None = Field(None, description="a size taken on site")
    policy: Policy | None = Field(None, description="a number the firm decides for all its work")

    @property
    def bounds(self) -> Bounds:
        """Whichever of the three is given."""
        given = self.chosen or self.measured or self.policy
        if given is None:
            raise AttributeError(f"{self.name} has no bounds")
        return given

    @property
    def start(self) -> SizeValue:
        """The default, or the example of a measured size."""
        return self.measured.example if self.measured else self._default()

    def _default(self) -> SizeValue:
        given = self.chosen or self.policy
        if given is None:
            raise AttributeError(f"{self.name} has no default")
        return given.default

    @property
    def least(self) -> SizeValue | None:
        """The lower bound, where there is one."""
        return self.bounds.least

    @property
    def most(self) -> SizeValue | None:
        """The upper bound, where there is one."""
        return self.bounds.most

    @property
    def words(self) -> tuple[Word, ...]:
        """The words to choose from; none when the size is a value."""
        return getattr(self.bounds, "from_", ())
