"""The ledger laid out for other programs and for the terminal: plain data, CSV rows and text."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass
from typing import Any, TypeAlias

from generator.quantities.calculator import Result
from generator.quantities.families.ways import Comparison, Way
from generator.quantities.ledger import Entry, Ledger, OpeningLedger
from generator.quantities.readings import Readings
from generator.quantities.results import Finding, finding_words
from generator.quantities.worked import Judged, Worked
from generator.quantities.workings import places, print_worked, working_lines
from generator.units import Unit
from generator.wording import ENGLISH, Language
from generator.wording.results import WAYS

Data: TypeAlias = "str | bool | list[Any] | dict[str, Any] | None"
CSV_HEAD = ("scope", "opening", "name", "label", "value", "unit", "exact", "working")
_SPACE = " "
_FINDINGS = ("remarks", "refused", "leaves", "notes")


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One single value of the ledger under the name a formula would use for it."""

    opening: str
    name: str
    label: str
    value: Worked
    unit: Unit | None


def lines(ledger: Ledger) -> Iterator[Line]:
    """Every single value: sizes, quantities, the fields of records, each reading."""
    for opening, entry in ledger.everything():
        for name, value in _values(entry.name, entry.result):
            yield Line(
                opening=opening.label if opening else "",
                name=name,
                label=entry.label,
                value=value,
                unit=entry.unit,
            )


def _values(name: str, result: Result) -> Iterator[tuple[str, Worked]]:
    if isinstance(result, Worked):
        yield name, result
    elif isinstance(result, Readings):
        yield from ((f"{name}[{n}]", value) for n, value in enumerate(result.values, 1))
    elif is_dataclass(result) and not isinstance(result, type):
        for each in fields(result):
            value = getattr(result, each.name)
            if isinstance(value, Worked):
                yield f"{name}.{each.name}", value


def as_data(ledger: Ledger, language: Language = ENGLISH) -> dict[str, Any]:
    """The whole ledger as lists, dicts, texts and truth values, ready for JSON. Numbers are texts, exact."""
    return {
        "method": ledger.method.method.value,
        "title": ledger.method.title.value,
        "job": ledger.job.job.value if ledger.job else None,
        "whole_job": [_entry(entry, language) for entry in ledger.job_entries.values()],
        "openings": [_opening(opening, language) for opening in ledger.openings],
        "broken": sorted(ledger.broken),
    }


def _opening(opening: OpeningLedger, language: Language) -> dict[str, Any]:
    return {
        "opening": opening.mark,
        "label": opening.label,
        "entries": [_entry(entry, language) for entry in opening.entries.values()],
    }


def _entry(entry: Entry, language: Language) -> dict[str, Any]:
    return {
        "name": entry.name,
        "label": entry.label,
        "kind": "quantity" if entry.rule else "size",
        "origin": entry.origin.value if entry.origin else None,
        "where": f"{entry.span.file}:{entry.span.line}",
        "result": _data(entry.name, entry.result, entry.unit, language, full=True),
    }


def _data(name: str, result: Result, unit: Unit | None, language: Language, *, full: bool) -> Data:
    """A result as plain data; values inside lists and inner records go without their workings."""
    if isinstance(result, Worked):
        return _value(name, result, unit, language, full=full)
    if isinstance(result, Finding):
        return {"code": result.code, "words": finding_words(result, language, space=_SPACE)}
    if isinstance(result, Judged):
        return {"holds": result.holds, "symbol": result.symbol}
    if isinstance(result, tuple):
        return [_data(name, item, unit, language, full=False) for item in result]
    if is_dataclass(result) and not isinstance(result, type):
        return {
            each.name: _field_data(
                f"{name}.{each.name}", getattr(result, each.name), unit, language, full=full
            )
            for each in fields(result)
        }
    return result if isinstance(result, str | bool) else None


def _field_data(name: str, result: Result, unit: Unit | None, language: Language, *, full: bool) -> Data:
    return _data(name, result, unit, language, full=full and isinstance(result, Worked))


def _value(name: str, item: Worked, unit: Unit | None, language: Language, *, full: bool) -> dict[str, Data]:
    printed = print_worked(item, unit)
    plain: dict[str, Data] = {
        "text": printed.text(_SPACE),
        "number": _plain_number(printed.number),
        "unit": printed.unit,
        "exact": printed.exact,
    }
    return {**plain, **_grounds(name, item, unit, language)} if full else plain


def _grounds(name: str, item: Worked, unit: Unit | None, language: Language) -> dict[str, Data]:
    rests: list[Data] = [
        {"name": place.name, "value": place.value, "origin": place.origin, "where": place.where}
        for place in places(item, _SPACE)
    ]
    return {
        "working": list(working_lines(item, language, name=name, unit=unit, space=_SPACE)),
        "rests_on": rests,
    }


def _plain_number(number: str) -> str:
    return number.replace("−", "-")


def as_csv(ledger: Ledger, language: Language = ENGLISH) -> str:
    """One row for each single value, RFC 4180 with a head line."""
    out = io.StringIO()
    writer = csv.writer(out)
    writer.writerow(CSV_HEAD)
    writer.writerows(_row(line, language) for line in lines(ledger))
    return out.getvalue()


def _row(line: Line, language: Language) -> tuple[str, ...]:
    printed = print_worked(line.value, line.unit)
    told = working_lines(line.value, language, name=line.name, unit=line.unit, space=_SPACE)
    return (
        "opening" if line.opening else "job",
        line.opening,
        line.name,
        line.label,
        _plain_number(printed.number),
        printed.unit,
        "yes" if printed.exact else "no",
        " ".join(told),
    )


def as_text(ledger: Ledger, language: Language = ENGLISH) -> str:
    """For a terminal: each quantity under its place with its label, its working and what was found."""
    blocks = [_heading(ledger)]
    blocks += _group("Whole job", ledger.job_entries, language)
    for opening in ledger.openings:
        blocks += _group(
            f"Opening {opening.label}" if opening.label else "Opening", opening.entries, language
        )
    return "\n\n".join(blocks) + "\n"


def _heading(ledger: Ledger) -> str:
    on = ledger.job.job.value if ledger.job else "on the example sizes"
    return f"{ledger.method.method.value} {ledger.method.title.value}: {on}"


def _group(title: str, entries: Mapping[str, Entry], language: Language) -> list[str]:
    worked = [_told(entry, language) for entry in entries.values() if entry.rule]
    return [f"{title}\n{'-' * len(title)}", *worked] if worked else []


def _told(entry: Entry, language: Language) -> str:
    text = [entry.label]
    for name, value in _values(entry.name, entry.result):
        first, *rest = working_lines(value, language, name=name, unit=entry.unit, space=_SPACE)
        text += [f"  {first}", *(f"      {line}" for line in rest)]
    text += [f"  ! {words}" for words in _found(entry.result, language)]
    return "\n".join(text)


def _found(result: Result, language: Language) -> Iterator[str]:
    if isinstance(result, Comparison):
        yield from (_way(way, language) for way in result.ways)
        return
    for name in _FINDINGS:
        for finding in getattr(result, name, ()):
            yield finding_words(finding, language, space=_SPACE)


def _way(way: Way, language: Language) -> str:
    label = language.say(WAYS[way.code])
    if way.refused:
        reasons = "; ".join(finding_words(each, language, space=_SPACE) for each in way.refused)
        return language.say("%(way)s is refused: %(reasons)s", way=label, reasons=reasons)
    if way.chosen:
        return language.say("%(way)s is possible and chosen", way=label)
    return language.say("%(way)s is possible", way=label)
