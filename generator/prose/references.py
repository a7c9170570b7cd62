"""References in prose: each resolved to its printed value, or reported at its place."""

from __future__ import annotations

from dataclasses import dataclass, fields, is_dataclass

from generator.model.method import ScheduleColumn
from generator.model.prose import Kept, Prose, Reference, Words
from generator.problems import Problem, ProblemLog, nearest
from generator.prose.printing import kept_text, plain_text, print_result
from generator.prose.walk import prose_in
from generator.quantities.calculator import Result
from generator.quantities.givens import catalogued
from generator.quantities.kinds import kind_name, thing
from generator.quantities.ledger import Entry, Ledger, OpeningLedger
from generator.quantities.worked import Worked
from generator.units import UNITS, Unit
from generator.wording import ENGLISH, Language

SEE_SCHEDULE = "see schedule, column “%(column)s”"


def resolve(
    prose: Prose, ledger: Ledger, language: Language = ENGLISH, *, opening: OpeningLedger | None = None
) -> str:
    """The prose as markdown with every value put in, as the trade prints it.

    With an `opening` its own values stand. Without one a value that differs between openings is replaced by
    the column of the schedule that shows it. The prose must have passed `check_prose`; KeyError otherwise.
    """
    return "".join(_part(part, ledger, language, opening) for part in prose.parts)


def _part(
    part: Words | Reference | Kept, ledger: Ledger, language: Language, opening: OpeningLedger | None
) -> str:
    if isinstance(part, Words):
        return part.text
    if isinstance(part, Kept):
        return kept_text(part.text)
    said = _Saying(ledger, language, part)
    return said.at(opening) if opening else said.shared()


@dataclass(frozen=True, slots=True)
class _Saying:
    """One reference against one ledger."""

    ledger: Ledger
    language: Language
    reference: Reference

    def at(self, opening: OpeningLedger) -> str:
        """The value at one opening."""
        entry = self.ledger.entry(self.reference.name, opening)
        return self._said(entry) if entry else self._of_material()

    def shared(self) -> str:
        """The value all openings share, or the column of the schedule where they differ."""
        entries = self.ledger.entries(self.reference.name)
        if not entries:
            return self._of_material()
        texts = dict.fromkeys(self._said(entry) for entry in entries)
        return next(iter(texts)) if len(texts) == 1 else self._see_schedule(entries[0])

    def _said(self, entry: Entry) -> str:
        result = value_of(entry.result, self.reference.field)
        text = print_result(result, unit_of(self.reference) or entry.unit, self.language)
        if text is None:
            raise KeyError(self.reference.name)
        return text

    def _of_material(self) -> str:
        material = self.ledger.materials[self.reference.name]
        if self.reference.field is None:
            return plain_text(material.label.value)
        name = f"{self.reference.name}.{self.reference.field}"
        result = catalogued(name, material, material.fields[self.reference.field])
        text = print_result(result, unit_of(self.reference), self.language)
        if text is None:
            raise KeyError(name)
        return text

    def _see_schedule(self, entry: Entry) -> str:
        column = column_of(self.ledger, self.reference)
        if column is None:
            raise KeyError(self.reference.name)
        return self.language.say(SEE_SCHEDULE, column=column_head(column, entry, self.ledger, self.language))


def unit_of(reference: Reference) -> Unit | None:
    """The unit a reference asks for."""
    return UNITS[reference.unit] if reference.unit else None


def value_of(result: Result, field: str | None) -> Result:
    """The result, or one field of it."""
    return getattr(result, field) if field else result


def column_of(ledger: Ledger, reference: Reference) -> ScheduleColumn | None:
    """The column of the schedule that shows what a reference names."""
    shown = f"{reference.name}.{reference.field}" if reference.field else reference.name
    return next((column for column in ledger.method.schedule if column.show.value == shown), None)


def column_head(column: ScheduleColumn, entry: Entry, ledger: Ledger, language: Language = ENGLISH) -> str:
    """The head of a column as the schedule prints it."""
    return resolve(column.head, ledger, language) if column.head else entry.label


def _sayable(result: Result) -> tuple[str, ...]:
    """The fields of a record that a sentence can hold."""
    if not is_dataclass(result) or isinstance(result, type):
        return ()
    return tuple(each.name for each in fields(result) if print_result(getattr(result, each.name)) is not None)


def check_prose(ledger: Ledger, log: ProblemLog) -> None:
    """Log every reference that cannot be printed, in the method's prose and in the job's if there is one."""
    for prose in (*prose_in(ledger.method), *(prose_in(ledger.job) if ledger.job else ())):
        for reference in prose.references:
            _Checking(ledger, log, reference).check()


@dataclass(frozen=True, slots=True)
class _Checking:
    ledger: Ledger
    log: ProblemLog
    reference: Reference

    def check(self) -> None:
        """Log the first fault of the reference, if it has one."""
        name, ledger = self.reference.name, self.ledger
        if self._unit_unknown():
            return
        entries = ledger.entries(name)
        if entries and name not in ledger.broken:
            self._check_entries(entries)
        elif name in ledger.method.materials.names:
            self._check_material()
        elif not entries and name not in ledger.broken:
            self._unknown()

    def _add(self, code: str, **values: object) -> None:
        said = {name: str(value) for name, value in values.items()}
        self.log.take(Problem(code=code, span=self.reference.span, values=said))

    def _unit_unknown(self) -> bool:
        unit = self.reference.unit
        if unit is None or unit in UNITS:
            return False
        self._add("prose-unit-unknown", unit=unit, nearest=nearest(unit, UNITS))
        return True

    def _unknown(self) -> None:
        method = self.ledger.method
        known = method.sizes.names | method.quantities.names | method.materials.names
        name = self.reference.name
        self._add("prose-name-unknown", name=name, nearest=nearest(name, known))

    def _check_entries(self, entries: tuple[Entry, ...]) -> None:
        first = entries[0]
        if self.reference.field and not self._has_field(first.result):
            return
        result = value_of(first.result, self.reference.field)
        if self._printable(result) and self._unit_fits(result):
            self._check_column(entries)

    def _has_field(self, result: Result) -> bool:
        field, name = self.reference.field or "", self.reference.name
        if isinstance(result, Worked | str) or not is_dataclass(result) or isinstance(result, type):
            self._add("field-on-value", name=name, kind=thing(result))
            return False
        known = tuple(each.name for each in fields(result))
        if field not in known:
            near = nearest(field, known)
            self._add("field-unknown", name=name, field=field, known=", ".join(known), nearest=near)
        return field in known

    def _printable(self, result: Result) -> bool:
        if print_result(result) is not None:
            return True
        known = [f"{self.reference.name}.{name}" for name in _sayable(result)]
        self._add(
            "prose-no-single-value",
            name=self.reference.name,
            kind=kind_name(type(result)),
            known=", ".join(known) or "nothing of it",
        )
        return False

    def _unit_fits(self, result: Result) -> bool:
        unit = unit_of(self.reference)
        if unit is None or (isinstance(result, Worked) and result.dimension == unit.dimension):
            return True
        self._add("prose-unit-kind", name=self.reference.name, unit=unit.symbol, found=thing(result))
        return False

    def _check_column(self, entries: tuple[Entry, ...]) -> None:
        saying = _Saying(self.ledger, ENGLISH, self.reference)
        texts = {saying._said(entry) for entry in entries}
        if len(texts) > 1 and column_of(self.ledger, self.reference) is None and self._columns_are_known():
            shown = ", ".join(sorted(texts))
            self._add("prose-differs", name=self.reference.name, shown=shown)

    def _columns_are_known(self) -> bool:
        """False when the column that is missed may be one whose name is misspelt, which is told there."""
        heads = {column.show.value.partition(".")[0] for column in self.ledger.method.schedule}
        return heads <= {*self.ledger.names, *self.ledger.materials}

    def _check_material(self) -> None:
        material = self.ledger.materials.get(self.reference.name)
        field = self.reference.field
        if material is None or field is None or field in material.fields:
            return
        near, known = nearest(field, material.fields), ", ".join(material.fields)
        self._add(
            "material-field-unknown", role=self.reference.name, key=material.name, field=field, known=known,
            nearest=near,
        )  # fmt: skip
