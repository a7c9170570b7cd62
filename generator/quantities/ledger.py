"""The ledger of a method or job: every size and quantity with its value, working, scope and place."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum

from generator.model.catalogue import Material
from generator.model.jobs import Job
from generator.model.method import Method, QuantityRule
from generator.model.prose import Prose
from generator.model.sizes import Size
from generator.model.surveys import Row
from generator.problems import Span
from generator.quantities.calculator import Result
from generator.quantities.worked import Origin
from generator.units import Unit


class Scope(StrEnum):
    """Whether a value belongs to one opening or to the whole job."""

    OPENING = "opening"
    JOB = "job"


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One size or quantity: a size has `size` and `origin`, a quantity `rule`; `unit` is the one to print in.

    `result` is a worked value, readings, a word, a comparison, or the record a calculator returned.
    """

    name: str
    label: str
    note: Prose | None = None
    result: Result
    scope: Scope
    span: Span
    size: Size | None = None
    origin: Origin | None = None
    rule: QuantityRule | None = None
    unit: Unit | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningLedger:
    """What belongs to one opening face; `row` is None where there is no survey.

    `mark` is its number, with the face where one opening has several; `label` adds its name.
    """

    row: Row | None
    mark: str
    label: str
    entries: Mapping[str, Entry]


@dataclass(frozen=True, slots=True, kw_only=True)
class Ledger:
    """Everything worked out for a method on its example sizes, or for one job.

    `materials` are the roles with the catalogue entries bound to them. `broken` names what exists but could
    not be worked out somewhere; its fault is in the log.
    """

    method: Method
    job: Job | None
    openings: tuple[OpeningLedger, ...]
    job_entries: Mapping[str, Entry]
    materials: Mapping[str, Material]
    broken: frozenset[str]

    def entry(self, name: str, opening: OpeningLedger | None = None) -> Entry | None:
        """The entry of a name at an opening, or of the whole job."""
        own = opening.entries.get(name) if opening else None
        return own or self.job_entries.get(name)

    def entries(self, name: str) -> tuple[Entry, ...]:
        """The entry of a name for the job, or one for each opening that has it."""
        if name in self.job_entries:
            return (self.job_entries[name],)
        return tuple(opening.entries[name] for opening in self.openings if name in opening.entries)

    @property
    def names(self) -> frozenset[str]:
        """Every name that was worked out somewhere."""
        return frozenset(self.job_entries).union(*(opening.entries for opening in self.openings))

    def scope(self, name: str) -> Scope:
        """Whether a name belongs to the job or to each opening."""
        return Scope.JOB if name in self.job_entries else Scope.OPENING

    def everything(self) -> Iterator[tuple[OpeningLedger | None, Entry]]:
        """Each entry with its opening, job entries first, in the order of work."""
        yield from ((None, entry) for entry in self.job_entries.values())
        for opening in self.openings:
            yield from ((opening, entry) for entry in opening.entries.values())
