"""A ledger as figures, one a line: where it belongs, what it is, how much, and how it was worked out."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import asdict, dataclass, fields, is_dataclass, replace
from itertools import chain, groupby

from generator.quantities.cut_pieces import Piece, alike
from generator.quantities.held import Held, held_words
from generator.quantities.ledger import Entry, Ledger, OpeningLedger
from generator.quantities.limits import ends, limit_lines, limits_of, limits_text
from generator.quantities.readings import Readings
from generator.quantities.results import Finding, finding_words
from generator.quantities.ripping import ripping_batches
from generator.quantities.worked import Judged, Worked
from generator.quantities.workings import places, print_worked, working_lines
from generator.safety.sections import KNOWN_WORDS
from generator.units import Unit

SPACE = " "
"""Between number and unit: a terminal and a spreadsheet have no thin space."""
READINGS_JOINT = "; "
RIPPING = "Strips to be ripped"
HEADINGS = (
    "opening", "name", "label", "value", "number", "unit", "working", "rests on", "least", "greatest",
)  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """One value of a ledger; `opening` is empty for the whole job, `number` for what is no single value.

    `working` is the arithmetic line by line, `rests_on` the places of the sizes it was worked out from.
    `least` and `greatest` are numbers in `unit`, where the sizes have limits that can move the value.
    """

    opening: str
    name: str
    label: str
    value: str
    number: str = ""
    unit: str = ""
    working: tuple[str, ...] = ()
    rests_on: tuple[str, ...] = ()
    least: str = ""
    greatest: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Where:
    """Whose value is being told: its opening and what it is called, with the unit its author asked for."""

    opening: str
    name: str
    label: str
    unit: Unit | None = None

    def inner(self, field: str) -> _Where:
        """One part of the value."""
        return _Where(opening=self.opening, name=f"{self.name}.{field}", label=self.label)


def figures_of(ledger: Ledger) -> tuple[Figure, ...]:
    """Every value of the ledger, those of the whole job first; a record gives one figure for each part.

    Strips to be ripped stand between, by section over all openings.
    """
    told = (_figures(opening, entry) for opening, entry in ledger.everything() if opening is None)
    inside = (_figures(opening, entry) for opening, entry in ledger.everything() if opening)
    return tuple(chain.from_iterable((*told, _ripped(ledger), *inside)))


def _ripped(ledger: Ledger) -> Iterator[Figure]:
    for number, batch in enumerate(ripping_batches(ledger), 1):
        yield from _told(_Where(opening="", name=f"ripping_{number}", label=RIPPING), batch)


def _figures(opening: OpeningLedger | None, entry: Entry) -> Iterator[Figure]:
    where = _Where(
        opening=opening.label if opening else "", name=entry.name, label=entry.label, unit=entry.unit
    )
    return _told(where, entry.result)


def _told(where: _Where, result: object) -> Iterator[Figure]:
    if isinstance(result, Worked):
        yield _worked(where, result)
    elif isinstance(result, Held):
        yield _held(where, result)
    elif isinstance(result, str | Readings | Judged | Finding):
        yield _figure(where, _in_words(result))
    elif isinstance(result, tuple):
        yield from _several(where, result)
    elif is_dataclass(result):
        for field in fields(result):
            yield from _told(where.inner(field.name), getattr(result, field.name))
    elif isinstance(result, bool):
        yield _figure(where, "yes" if result else "no")
    elif result is not None:
        yield _figure(where, str(result))


def _several(where: _Where, items: tuple[object, ...]) -> Iterator[Figure]:
    words = tuple(item for item in items if isinstance(item, str))
    pieces = tuple(item for item in items if isinstance(item, Piece))
    if items and len(words) == len(items):
        yield _figure(where, ", ".join(words))
    elif len(pieces) == len(items):
        yield from _pieces(where, pieces)
    else:
        for number, item in enumerate(items, 1):
            yield from _told(where.inner(str(number)), item)


def _pieces(where: _Where, pieces: Sequence[Piece]) -> Iterator[Figure]:
    """Pieces alike in all but marks that count up are told once, as R1 to R13."""
    for run in alike(pieces):
        first, last = run.start + 1, run.stop
        piece, marks = pieces[run.start], (pieces[run.start].mark, pieces[run.stop - 1].mark)
        if first == last:
            yield from _told(where.inner(str(first)), piece)
        else:
            together = replace(piece, mark=" to ".join(marks))
            yield from _told(where.inner(f"{first} to {last}"), together)


def _worked(where: _Where, item: Worked) -> Figure:
    printed, limits = print_worked(item, where.unit), limits_of(item)
    lines = working_lines(item, name=where.name, unit=where.unit, space=SPACE)
    least, greatest = ends(limits, where.unit) if limits else ("", "")
    rests_on = tuple(
        f"{place.name} = {place.value} ({place.where or place.origin})" for place in places(item, SPACE)
    )
    return Figure(
        opening=where.opening,
        name=where.name,
        label=where.label,
        value=limits_text(item, limits, where.unit, space=SPACE) if limits else printed.text(SPACE),
        number=printed.number,
        unit=printed.unit,
        working=(*lines, *limit_lines(item, where.unit, space=SPACE)),
        rests_on=rests_on,
        least=least,
        greatest=greatest,
    )


def _held(where: _Where, held: Held) -> Figure:
    """The figure as a number, with what it is held against and how it stands in words."""
    told = held_words(held, KNOWN_WORDS[held.known], space=SPACE)
    return replace(_worked(where, held.actual), value=told, working=())


def _figure(where: _Where, value: str) -> Figure:
    return Figure(opening=where.opening, name=where.name, label=where.label, value=value)


def _in_words(result: str | Readings | Judged | Finding) -> str:
    if isinstance(result, Finding):
        return finding_words(result, space=SPACE)
    if isinstance(result, Readings):
        return READINGS_JOINT.join(print_worked(value).text(SPACE) for value in result.values)
    if isinstance(result, Judged):
        sides = (print_worked(side).text(SPACE) for side in (result.left, result.right))
        return f"{'yes' if result.holds else 'no'}: {f' {result.symbol} '.join(sides)}"
    return result


def as_json(figures: Iterable[Figure]) -> str:
    """The figures as a JSON list of objects with the fields of `Figure`."""
    return json.dumps([asdict(figure) for figure in figures], indent=1, ensure_ascii=False) + "\n"


def as_csv(figures: Iterable[Figure]) -> str:
    """The figures as a table for a spreadsheet, the working in one cell."""
    written = io.StringIO()
    writer = csv.writer(written, lineterminator="\n")
    writer.writerow(HEADINGS)
    for figure in figures:
        whole = (" ".join(figure.working), "; ".join(figure.rests_on), figure.least, figure.greatest)
        row = (figure.opening, figure.name, figure.label, figure.value, figure.number, figure.unit, *whole)
        writer.writerow([_harmless(cell) for cell in row])
    return written.getvalue()


def _harmless(cell: str) -> str:
    """Without a first character that a spreadsheet takes for a formula; a negative number stays one."""
    risky = cell.startswith(("=", "@", "+", "\t", "\r")) or (cell.startswith("-") and not cell[1:2].isdigit())
    return f"'{cell}" if risky else cell


def as_text(figures: Iterable[Figure]) -> str:
    """The figures for a person: a heading for each opening, each working under its value."""
    lines: list[str] = []
    for opening, inside in groupby(figures, key=lambda figure: figure.opening):
        lines += ["", f"Opening {opening}" if opening else "The whole job", ""]
        for label, parts in groupby(inside, key=lambda figure: (figure.label, figure.name.partition(".")[0])):
            lines += _paragraph(f"{label[0]} [{label[1]}]", tuple(parts))
    return "\n".join(lines).strip("\n") + "\n"


def _paragraph(head: str, figures: tuple[Figure, ...]) -> list[str]:
    if len(figures) == 1 and "." not in figures[0].name:
        return [f"{head}: {figures[0].value}{_source(figures[0])}", *_indented(figures[0].working)]
    parts = ([f"    {figure.name}: {figure.value}", *_indented(figure.working, 8)] for figure in figures)
    return [head, *chain.from_iterable(parts)]


def _source(figure: Figure) -> str:
    """Where a value that was written down stands."""
    written = len(figure.working) == 1 and len(figure.rests_on) == 1
    return f"  {figure.rests_on[0].partition(' (')[2].rstrip(')')}" if written else ""


def _indented(working: tuple[str, ...], depth: int = 4) -> list[str]:
    """The working, where there is more to it than the value itself."""
    return [" " * depth + line for line in working] if len(working) > 1 else []
