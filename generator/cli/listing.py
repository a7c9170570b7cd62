"""What a method may name: calculators, drawings and the keys of the catalogue, for a person or a program."""

from __future__ import annotations

import json
import textwrap
from collections.abc import Callable, Iterator, Mapping
from dataclasses import fields
from types import NoneType
from typing import TypeAlias, get_args, get_origin

from generator.drawings.figures import Angle, Reading, Size
from generator.drawings.registry import DRAWINGS, Drawing
from generator.drawings.registry import Parameter as Given
from generator.model.catalogue import Catalogue
from generator.quantities.calculator import Calculator, InputText, Parameter, registered
from generator.quantities.kinds import kind_name
from generator.quantities.worked import Worked
from generator.units import dimension_name
from generator.wording import ENGLISH

Data: TypeAlias = Mapping[str, object]
WIDTH, MARGIN = 100, " " * 5


def list_as_text(what: str, catalogue: Catalogue) -> str:
    """A list of LISTS as paragraphs, or one line an entry for the keys of the catalogue."""
    if what == "calculators":
        return _paragraphs((made.name, _calculator_lines(made)) for made in registered().values())
    if what == "drawings":
        return _paragraphs((drawn.name, _drawing_lines(drawn)) for _, drawn in sorted(DRAWINGS.items()))
    keys = _keys(what, catalogue)
    wide = max(map(len, keys), default=0)
    return "".join(f"{key:{wide}}  {label}\n" for key, label in keys.items())


def list_as_json(what: str, catalogue: Catalogue) -> str:
    """The same as data: a list with an object for each entry."""
    data: list[Data]
    if what == "calculators":
        data = [_calculator(made) for made in registered().values()]
    elif what == "drawings":
        data = [_drawing(drawn) for _, drawn in sorted(DRAWINGS.items())]
    else:
        data = [{"key": key, "label": label} for key, label in _keys(what, catalogue).items()]
    return json.dumps(data, indent=1, ensure_ascii=False) + "\n"


_TABLES: Mapping[str, Callable[[Catalogue], Mapping[str, str]]] = {
    "materials": lambda of: {key: each.label.value for key, each in of.materials.items()},
    "tools": lambda of: {key: each.label.value for key, each in of.tools.items()},
    "places": lambda of: {key: each.label.value for key, each in of.places.items()},
    "people": lambda of: {key: each.label.value for key, each in of.people.items()},
    "work": lambda of: {key: each.label.value for key, each in of.activities.items()},
}


def _keys(what: str, catalogue: Catalogue) -> Mapping[str, str]:
    return dict(sorted(_TABLES[what](catalogue).items()))


def _paragraphs(parts: Iterator[tuple[str, Iterator[str]]]) -> str:
    return "\n\n".join("\n".join([name, *map(_wrapped, lines)]) for name, lines in parts) + "\n"


def _wrapped(line: str) -> str:
    return textwrap.fill(
        line, WIDTH, initial_indent=MARGIN, subsequent_indent=f"{MARGIN}  ", break_on_hyphens=False
    )


def _calculator_lines(made: Calculator) -> Iterator[str]:
    yield made.title
    for each in made.parameters.values():
        yield _value_line(each.name, _taken(each), each.required)
    if made.fields:
        yield ENGLISH.say("gives: %(fields)s", fields=", ".join(made.fields))
    example = ", ".join(f"{name} = {_given(text)}" for name, text in made.example.inputs.items())
    yield ENGLISH.say("such as: %(example)s", example=example)
    yield ENGLISH.say("which gives: %(values)s", values=", ".join(_answers(made)))


def _answers(made: Calculator) -> Iterator[str]:
    for field, text in made.example.gives.items():
        yield f"{field} {text}" if field else text


def _drawing_lines(drawn: Drawing) -> Iterator[str]:
    yield drawn.title
    for each in drawn.parameters:
        yield _value_line(each.name, _drawn_from(each), each.required)


def _drawn_from(each: Given) -> str:
    """What a drawing's value must be, a word out of a few with the words."""
    if not each.words:
        return _bound(each.kind)
    words = ", ".join(filter(None, each.words))
    return ENGLISH.say("%(kind)s, one of: %(words)s", kind=_bound(each.kind), words=words)


def _value_line(name: str, kind: str, required: bool) -> str:
    if required:
        return f"{name}: {kind}"
    return ENGLISH.say("%(name)s: %(kind)s; may be left out", name=name, kind=kind)


def _taken(each: Parameter) -> str:
    """What an input must be, in the words that faults use."""
    if each.takes is None:
        return kind_name(each.kind)
    single = dimension_name(each.takes.dimension)
    return single if each.kind is Worked else ENGLISH.say("several values, each %(kind)s", kind=single)


_BOUND: Mapping[object, str] = {
    Size: "a value",
    Angle: "an angle",
    str: "a word",
    tuple[Reading, ...]: "what even_packer gives",
}


def _bound(kind: object) -> str:
    """What a drawing's value must be: one of a few kinds, or a record by its fields."""
    if kind in _BOUND:
        return _BOUND[kind]
    if get_origin(kind) is tuple:
        return ENGLISH.say("several values, each %(kind)s", kind=_bound(get_args(kind)[0]))
    assert isinstance(kind, type)
    assert kind is not NoneType
    return ENGLISH.say("a record with %(fields)s", fields=", ".join(field.name for field in fields(kind)))


def _given(text: InputText) -> str:
    return text if isinstance(text, str) else f"[{', '.join(text)}]"


def _calculator(made: Calculator) -> Data:
    return {
        "name": made.name,
        "title": made.title,
        "takes": [_value(each.name, _taken(each), each.required) for each in made.parameters.values()],
        "gives": list(made.fields),
        "example": {"inputs": dict(made.example.inputs), "gives": dict(made.example.gives)},
    }


def _drawing(drawn: Drawing) -> Data:
    return {
        "name": drawn.name,
        "title": drawn.title,
        "takes": [_value(each.name, _drawn_from(each), each.required) for each in drawn.parameters],
    }


def _value(name: str, kind: str, required: bool) -> Data:
    return {"name": name, "kind": kind, "required": required}
