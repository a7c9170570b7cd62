"""Values of a ledger by the dotted names that tables, checks and drawings use."""

from __future__ import annotations

from generator.quantities.calculator import Result
from generator.quantities.givens import catalogued
from generator.quantities.ledger import Ledger, OpeningLedger


def lookup(dotted: str, ledger: Ledger, opening: OpeningLedger | None = None) -> Result | None:
    """The result under `name`, `name.field` or `role.field` at an opening or for the whole job.

    None where it was not worked out, is not offered, or belongs to openings and none was given.
    """
    name, _, field = dotted.partition(".")
    if name in ledger.materials:
        return _of_material(dotted, name, field, ledger)
    entry = ledger.entry(name, opening)
    if entry is None:
        return None
    return getattr(entry.result, field, None) if field else entry.result


def _of_material(dotted: str, role: str, field: str, ledger: Ledger) -> Result | None:
    material = ledger.materials[role]
    found = material.fields.get(field)
    return None if found is None else catalogued(dotted, material, found)
