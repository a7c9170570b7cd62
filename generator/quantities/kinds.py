"""What kind of thing a formula yields, before it is worked out: a value, readings, a word, a record."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import is_dataclass
from functools import cache
from types import NoneType, UnionType
from typing import Annotated, Any, Union, get_args, get_origin, get_type_hints

from generator.formulas import Call, Compare, Formula, Name
from generator.quantities.calculator import calculator_named, field_names, registered
from generator.quantities.profile_measures import ProfileMeasures
from generator.quantities.readings import Readings
from generator.quantities.worked import Judged, Worked
from generator.units import dimension_name

SINGLE: tuple[type, ...] = (Worked,)
SEVERAL: tuple[type, ...] = (tuple, Readings)


def kind_of(tree: Formula, known: Mapping[str, type]) -> type:
    """The class of what a formula yields; `known` has the kinds of the names it may use."""
    if isinstance(tree, Compare):
        return Judged
    if isinstance(tree, Call):
        made = calculator_named(tree.function)
        return made.returns if made else Worked
    if isinstance(tree, Name):
        kind = known.get(tree.name, Worked)
        return field_kinds(kind).get(tree.field, Worked) if tree.field else kind
    return Worked


@cache
def field_kinds(record: type) -> Mapping[str, type]:
    """The class of each field of a record class."""
    if not field_names(record):
        return {}
    return {name: _class_of(hint) for name, hint in get_type_hints(record).items()}


def _class_of(hint: Any) -> type:
    if get_origin(hint) in (Union, UnionType):
        hint = next(part for part in get_args(hint) if part is not NoneType)
    origin = get_origin(hint)
    if origin is Annotated:
        return _class_of(get_args(hint)[0])
    kind = origin or hint
    return kind if isinstance(kind, type) else object


def is_record(kind: type) -> bool:
    """True for a record with fields."""
    return is_dataclass(kind) and kind not in (Worked, Readings, Judged)


def thing(result: Any) -> str:
    """How a result is called in a fault: "a length", "readings", "what even_packer gives"."""
    if isinstance(result, Worked):
        return dimension_name(result.dimension)
    return kind_name(type(result))


_KIND_NAMES: Mapping[type, str] = {
    Worked: "a value",
    Readings: "readings",
    str: "a word",
    tuple: "several values",
    Judged: "a comparison",
    ProfileMeasures: "the measures of a profile",
}


def kind_name(kind: type) -> str:
    """How a class of results is called in a fault."""
    if kind in _KIND_NAMES:
        return _KIND_NAMES[kind]
    makers = [made.name for made in registered().values() if made.returns is kind]
    return f"what {' or '.join(makers)} gives" if makers else "one part of a record"
