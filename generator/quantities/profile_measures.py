"""The measures of a moulding's profile as one record, so that a formula takes whichever there are."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields

from generator.quantities.worked import Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class ProfileMeasures:
    """What the catalogue gives of a profile, `role.measures` in a formula; None for one the shape has not."""

    radius: Worked | None = None
    depth: Worked | None = None
    breadth: Worked | None = None
    fillet_depth: Worked | None = None
    fillet_breadth: Worked | None = None
    inner_fillet: Worked | None = None
    outer_fillet: Worked | None = None
    arris: Worked | None = None

    def given(self) -> Mapping[str, Worked]:
        """The measures there are, by name."""
        found = {field.name: getattr(self, field.name) for field in fields(self)}
        return {name: size for name, size in found.items() if size is not None}
