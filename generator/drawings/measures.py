"""A profile's own measures as a drawing is given them, and the section drawn to them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields

from generator.drawings.figures import Part, Size
from generator.quantities.profiles import Profile, profile


@dataclass(frozen=True, slots=True, kw_only=True)
class Measures(Part):
    """The measures of a profile in mm, bound from `role.measures`; None for one its shape has not."""

    radius: Size | None = None
    depth: Size | None = None
    breadth: Size | None = None
    fillet_depth: Size | None = None
    fillet_breadth: Size | None = None
    inner_fillet: Size | None = None
    outer_fillet: Size | None = None
    arris: Size | None = None

    def given(self) -> Mapping[str, Size]:
        """The measures there are, by name."""
        found = {field.name: getattr(self, field.name) for field in fields(self)}
        return {name: size for name, size in found.items() if size is not None}


def section_of(shape: str, width: Size, thickness: Size, measures: Measures | None) -> Profile:
    """The section to its own measures, its arris square where they give none.

    Without measures it has the shape's usual proportions (common practice, no source). Raises UnknownProfile.
    """
    own = {name: size.mm for name, size in measures.given().items()} if measures else None
    sizes = None if own is None else {"arris": 0.0} | own
    return profile(shape, width.mm, thickness.mm, sizes)
