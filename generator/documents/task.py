"""What a document is composed from: a method, its job if any, the worked quantities and the drawings."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from generator.documents.blocks import Picture, Prose
from generator.drawings.orders import Order
from generator.model.folder import Project
from generator.model.jobs import Job
from generator.model.method import Method
from generator.model.prose import Prose as Told
from generator.problems import Span
from generator.prose import resolve
from generator.quantities.cutting.plan import CuttingPlan
from generator.quantities.ledger import Ledger, OpeningLedger
from generator.wording import Language
from generator.wording.marks import capital


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """One method with one job, or with none for a guide, ready to be put into words."""

    project: Project
    ledger: Ledger
    plans: tuple[CuttingPlan, ...] = ()
    pictures: Mapping[Order, Picture]
    language: Language

    @property
    def method(self) -> Method:
        """The method applied."""
        return self.ledger.method

    @property
    def governing(self) -> Method:
        """The method in English, whatever the language of the page: what rules are held against."""
        return self.project.method(self.method.method.value) or self.method

    @property
    def job(self) -> Job | None:
        """The job it is applied to; None for a guide."""
        return self.ledger.job

    @property
    def surveyed(self) -> tuple[OpeningLedger, ...]:
        """The openings of the survey; none where sizes are the method's examples."""
        return tuple(opening for opening in self.ledger.openings if opening.row)

    @property
    def company(self) -> str:
        """The firm's name, as the house rules give it."""
        return self.project.house.company.name.value if self.project.house.company else ""

    def place(self, span: Span | None) -> str:
        """File and line as seen from the user's folder, so that pages do not tell where the folder stands."""
        if span is None:
            return ""
        file, folder = Path(span.file), self.project.folder
        inside = file.relative_to(folder) if file.is_relative_to(folder) else file
        return f"{inside.as_posix()}:{span.line}"

    def told(self, prose: Told | None, opening: OpeningLedger | None = None) -> Prose:
        """The prose with its values put in; empty for none. With an `opening`, that opening's own values.

        What is not put into the language of the page is English, with figures and words as English has them.
        """
        if prose is None:
            return ""
        if self.language.governs or prose.tag == self.language.tag:
            return resolve(prose, self.ledger, self.language, opening=opening).strip()
        return self.language.quote(resolve(prose, self.ledger, opening=opening).strip())

    def lines(self, *prose: Told | None) -> tuple[Prose, ...]:
        """Each that is given, with its values put in."""
        return tuple(told for told in (self.told(one) for one in prose) if told)


def first_paragraph(prose: Prose) -> Prose:
    """The paragraph that says what it is about."""
    return prose.partition("\n\n")[0]


def duration(minutes: int, language: Language) -> str:
    """Minutes as people say them: 45 min, 2 h, 4 h 5 min."""
    hours, rest = divmod(minutes, 60)
    if not hours:
        return language.say("%(rest)s min", rest=rest)
    if not rest:
        return language.say("%(hours)s h", hours=hours)
    return language.say("%(hours)s h %(rest)s min", hours=hours, rest=rest)


def short_day(told: date | None, language: Language) -> str:
    """A day as it is written in a box; empty for none."""
    return language.short_day(told) if told else ""


def sentence(text: str) -> str:
    """Words of a file set as a sentence: a capital first."""
    return capital(text)
