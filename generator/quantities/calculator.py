"""The registry of calculators: a function's signature is its inputs, its docstring's first line its title.

A parameter's annotation says what it takes: one of the kinds below, a record another calculator returns, or
either of them `| None` with a default of None where it may be left out. A policy number that is left out is
a test that is not made.
"""

from __future__ import annotations

import inspect
from collections.abc import Callable, Mapping
from dataclasses import dataclass, fields, is_dataclass
from decimal import Decimal
from types import NoneType
from typing import Annotated, Any, TypeAlias, TypeVar, get_args, get_origin, get_type_hints

from generator.problems import nearest
from generator.quantities.readings import Readings
from generator.quantities.worked import Worked
from generator.units import ANGLE, AREA, LENGTH, NUMBER, TIME, VOLUME, Dimension

_HUNDRED_METRES = Decimal(100_000)


@dataclass(frozen=True, slots=True, kw_only=True)
class Takes:
    """The dimension an input must have and the range it must lie in, in base units."""

    dimension: Dimension
    above: Decimal | None = None
    least: Decimal | None = None
    most: Decimal | None = None


_NOUGHT = Decimal(0)
Length: TypeAlias = Annotated[Worked, Takes(dimension=LENGTH, above=_NOUGHT, most=_HUNDRED_METRES)]
Margin: TypeAlias = Annotated[Worked, Takes(dimension=LENGTH, least=_NOUGHT, most=_HUNDRED_METRES)]
Offset: TypeAlias = Annotated[Worked, Takes(dimension=LENGTH, least=-_HUNDRED_METRES, most=_HUNDRED_METRES)]
Run: TypeAlias = Annotated[Worked, Takes(dimension=LENGTH, least=_NOUGHT)]
Area: TypeAlias = Annotated[Worked, Takes(dimension=AREA, above=_NOUGHT)]
Volume: TypeAlias = Annotated[Worked, Takes(dimension=VOLUME, least=_NOUGHT)]
Pack: TypeAlias = Annotated[Worked, Takes(dimension=VOLUME, above=_NOUGHT)]
Angle: TypeAlias = Annotated[Worked, Takes(dimension=ANGLE, above=_NOUGHT, most=Decimal(180))]
Share: TypeAlias = Annotated[Worked, Takes(dimension=NUMBER, least=_NOUGHT, most=Decimal(1))]
Times: TypeAlias = Annotated[Worked, Takes(dimension=NUMBER, above=_NOUGHT)]
Duration: TypeAlias = Annotated[Worked, Takes(dimension=TIME, least=_NOUGHT)]
Lengths: TypeAlias = Annotated[
    tuple[Worked, ...], Takes(dimension=LENGTH, above=_NOUGHT, most=_HUNDRED_METRES)
]
Margins: TypeAlias = Annotated[
    tuple[Worked, ...], Takes(dimension=LENGTH, least=_NOUGHT, most=_HUNDRED_METRES)
]
Offsets: TypeAlias = Annotated[
    tuple[Worked, ...], Takes(dimension=LENGTH, least=-_HUNDRED_METRES, most=_HUNDRED_METRES)
]
Corners: TypeAlias = Annotated[tuple[Worked, ...], Takes(dimension=ANGLE, above=_NOUGHT, most=Decimal(360))]
Numbers: TypeAlias = Annotated[tuple[Worked, ...], Takes(dimension=NUMBER, least=_NOUGHT)]

Record: TypeAlias = Any
Result: TypeAlias = "Worked | Readings | str | tuple[Any, ...] | Record"
InputText: TypeAlias = "str | tuple[str, ...]"


@dataclass(frozen=True, slots=True, kw_only=True)
class Example:
    """Inputs as they are written in a file with some of what comes out, as printed.

    An input of record kind names the calculator whose own example makes it. `gives` is by field; the key
    of a calculator that returns one value is the empty string.
    """

    inputs: Mapping[str, InputText]
    gives: Mapping[str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Parameter:
    """One input: its name, the class a value must have, what its sizes must be, whether it must be given."""

    name: str
    kind: type
    takes: Takes | None
    required: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Calculator:
    """A calculator as formulas see it."""

    name: str
    title: str
    module: str
    function: Callable[..., Result]
    parameters: Mapping[str, Parameter]
    returns: type
    example: Example

    @property
    def fields(self) -> tuple[str, ...]:
        """The fields of the record it returns; empty for a single value."""
        return field_names(self.returns)


_registry: dict[str, Calculator] = {}
Function = TypeVar("Function", bound=Callable[..., Any])


def calculator(*, example: Example) -> Callable[[Function], Function]:
    """Register a function as a calculator; ValueError for a doubled name or a missing docstring."""

    def register(function: Function) -> Function:
        made = _described(function, example)
        if made.name in _registry:
            raise ValueError(f"calculator {made.name} is registered twice")
        _registry[made.name] = made
        return function

    return register


def _described(function: Callable[..., Any], example: Example) -> Calculator:
    title = (inspect.getdoc(function) or "").partition("\n")[0]
    if not title:
        raise ValueError(f"calculator {function.__name__} has no docstring")
    hints = get_type_hints(function, include_extras=True)
    signature = inspect.signature(function)
    return Calculator(
        name=function.__name__,
        title=title,
        module=function.__module__,
        function=function,
        parameters={name: _parameter(each, hints[name]) for name, each in signature.parameters.items()},
        returns=hints["return"],
        example=example,
    )


def _parameter(parameter: inspect.Parameter, hint: Any) -> Parameter:
    if parameter.kind is not inspect.Parameter.KEYWORD_ONLY:
        raise ValueError(f"input {parameter.name} of a calculator must be keyword-only")
    kind, takes = _kind(hint)
    return Parameter(
        name=parameter.name, kind=kind, takes=takes, required=parameter.default is inspect.Parameter.empty
    )


def _kind(hint: Any) -> tuple[type, Takes | None]:
    given = [part for part in get_args(hint) if part is not NoneType] if _may_be_none(hint) else [hint]
    (only,) = given
    if get_origin(only) is Annotated:
        base, takes = get_args(only)
        return get_origin(base) or base, takes
    return only, None


def _may_be_none(hint: Any) -> bool:
    return NoneType in get_args(hint)


def registered() -> Mapping[str, Calculator]:
    """Every calculator by name, the families loaded."""
    from generator.quantities import families

    families.load()
    return dict(sorted(_registry.items()))


def calculator_named(name: str) -> Calculator | None:
    """The calculator of that name, if there is one."""
    return registered().get(name)


def nearest_calculator(name: str) -> str:
    """The calculator name most like `name`."""
    return nearest(name, registered())


def field_names(kind: type) -> tuple[str, ...]:
    """The fields of a record class; empty for anything else."""
    return tuple(each.name for each in fields(kind)) if is_dataclass(kind) and kind is not Worked else ()
