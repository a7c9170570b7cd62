"""What a method's steps lift by hand, each at its heaviest, beside the filter for that lift."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from generator.model.steps import Lift
from generator.problems import ProblemLog, nearest
from generator.quantities.ledger import Ledger, OpeningLedger
from generator.quantities.lifting import MOST_LIFTING, Filter, lifting_filter
from generator.quantities.worked import Worked
from generator.units import MASS


@dataclass(frozen=True, slots=True, kw_only=True)
class Lifted:
    """One lift of a step: what, its greatest mass over the openings in kg, by how many, and the filter."""

    step: int
    label: str
    mass: float
    lift: Lift
    filter: Filter

    @property
    def people(self) -> int:
        """How many lift together."""
        return _people(self.lift)

    @property
    def over(self) -> bool:
        """Whether it is heavier than the filter for anyone who may lift it."""
        return self.mass > self.filter.women


def lifts_of(ledger: Ledger) -> tuple[Lifted, ...]:
    """Every lift whose mass is known, in the order of the steps."""
    return tuple(
        found
        for number, step in enumerate(ledger.method.steps, 1)
        for lift in step.lifts
        if 1 <= _people(lift) <= MOST_LIFTING and (found := _lifted(number, lift, ledger))
    )


def check_lifts(ledger: Ledger, log: ProblemLog) -> None:
    """Report a lift that names nothing, or no mass, or more people than the filter is given for."""
    for lift in (lift for step in ledger.method.steps for lift in step.lifts):
        name, role = lift.what.value, lift.what.value.partition(".")[0]
        if not 1 <= _people(lift) <= MOST_LIFTING and lift.people is not None:
            log.add("lift-people", lift.people.span, people=lift.people, most=MOST_LIFTING)
        if role in ledger.broken or _mass(ledger, lift):
            continue
        if role not in ledger.names and role not in ledger.materials:
            near = nearest(name, (*ledger.names, *ledger.materials))
            log.add("lift-unknown", lift.what.span, name=name, nearest=near)
        else:
            log.add("lift-no-mass", lift.what.span, name=name)


def _people(lift: Lift) -> int:
    return 1 if lift.people is None else int(lift.people)


def _lifted(number: int, lift: Lift, ledger: Ledger) -> Lifted | None:
    found = _mass(ledger, lift)
    if found is None:
        return None
    label, mass = found
    zones = [zone.value for zone in lift.zones]
    held = lifting_filter(zones, lift.reach.value, _people(lift))
    return Lifted(step=number, label=label, mass=mass, lift=lift, filter=held)


def _mass(ledger: Ledger, lift: Lift) -> tuple[str, float] | None:
    """What is lifted, as documents print it, and its greatest mass in kg."""
    name, _, field = lift.what.value.partition(".")
    if name in ledger.materials:
        material = ledger.materials[name]
        held = material.mass if field == "mass" else None
        return (material.label.value, float(held.value.magnitude)) if held else None
    masses = [mass for opening in (None, *ledger.openings) for mass in _masses(ledger, name, field, opening)]
    return max(masses, key=lambda one: one[1], default=None)


def _masses(
    ledger: Ledger, name: str, field: str, opening: OpeningLedger | None
) -> Iterator[tuple[str, float]]:
    entry = ledger.entry(name, opening)
    if entry is None:
        return
    result = getattr(entry.result, field, None) if field else entry.result
    if isinstance(result, Worked) and result.value.dimension == MASS:
        yield entry.label, float(result.value.magnitude)
