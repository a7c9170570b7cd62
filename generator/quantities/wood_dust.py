"""Workplace exposure limits of wood dust, and the mask that a measured concentration asks for."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from typing import Final

from generator.model.catalogue import Tool
from generator.quantities.ledger import Ledger
from generator.units import UNITS

# mg/m³ over eight hours, inhalable. HSE EH40/2005 (4th edition): any hardwood makes the mix hardwood.
HARDWOOD_LIMIT, SOFTWOOD_LIMIT = 3.0, 5.0
_SOFT: Final = frozenset({"softwood", "none"})

# Assigned protection factors as used in Great Britain (HSE HSG53), weakest first.
MASKS: Final[Mapping[str, int]] = {
    "FFP1": 4, "FFP2": 10, "FFP3": 20, "full face mask P3": 40,
}  # fmt: skip


def dust_limit(kinds: Collection[str]) -> float | None:
    """The limit in mg/m³ for these kinds of dust together; None where there is none of wood."""
    dusts = set(kinds) - {"none"}
    if not dusts:
        return None
    return SOFTWOOD_LIMIT if dusts <= _SOFT else HARDWOOD_LIMIT


def mask_for(concentration: float, limit: float) -> str | None:
    """The weakest mask that brings a concentration within the limit; None where no mask of the table does.

    Both in mg/m³. A concentration within the limit is none of a mask's business: "" then.
    """
    if concentration <= limit:
        return ""
    return next((mask for mask, factor in MASKS.items() if concentration / factor <= limit), None)


_MAKES_DUST: Final = frozenset({"cuts", "sands", "drills", "scrapes"})


@dataclass(frozen=True, slots=True, kw_only=True)
class WoodDust:
    """The kinds of wood dust that a job's tools make, its limit, and what air sampling found, in mg/m³."""

    kinds: tuple[str, ...]
    limit: float
    measured: float | None

    @property
    def mask(self) -> str | None:
        """The mask the measured concentration asks for: "" for none, None where no mask is enough."""
        return mask_for(self.measured or 0.0, self.limit)


def wood_dust(ledger: Ledger, tools: Mapping[str, Tool]) -> WoodDust | None:
    """The wood dust of a ledger's steps; None where no tool makes any. `tools` are the catalogue's."""
    kinds = tuple(dict.fromkeys(_dusts(ledger, tools)))
    limit = dust_limit(kinds)
    job = ledger.job
    measured = job.wood_dust.level.value.in_unit(UNITS["mg/m3"]) if job and job.wood_dust else None
    if limit is None:
        return None
    return WoodDust(kinds=kinds, limit=limit, measured=None if measured is None else float(measured))


def _dusts(ledger: Ledger, tools: Mapping[str, Tool]) -> Iterator[str]:
    """The dust of each material at hand where a tool makes dust."""
    for step in ledger.method.steps:
        used = [tools[key.value] for key in step.uses if key.value in tools]
        if any(word.value in _MAKES_DUST for tool in used for word in tool.does):
            bound = (ledger.materials.get(role.value) for role in step.materials)
            yield from (one.dust.value for one in bound if one and one.dust and one.dust.value != "none")
