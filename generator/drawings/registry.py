"""The drawings there are: each one decorated function, its parameters bound by name."""

from __future__ import annotations

import inspect
import typing
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType, NoneType, UnionType

from generator.drawings.figures import OneOf
from generator.drawings.keys import Entry
from generator.drawings.sheet import Sheet
from generator.drawings.svg import Picture, engrave
from generator.drawings.words import spoken
from generator.wording import ENGLISH, Language


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawn:
    """What a drawing function returns: the finished sheet and its words."""

    sheet: Sheet
    title: str
    alt: str
    scale: str | None = None
    key: tuple[Entry, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Parameter:
    """One named value a drawing takes: its annotation, whether it must be given, what a word may be.

    `words` is empty for anything but a word, and for a word that is printed as it stands.
    """

    name: str
    kind: object
    required: bool
    words: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """One registered drawing: name, title, parameters in order, and the function that lays the sheet."""

    name: str
    title: str
    parameters: tuple[Parameter, ...]
    lay: Callable[..., Drawn]


class UnknownDrawing(KeyError):
    """No drawing has that name."""


class WrongValues(ValueError):
    """The values given do not match a drawing's parameters."""


_DRAWINGS: dict[str, Drawing] = {}
DRAWINGS: Mapping[str, Drawing] = MappingProxyType(_DRAWINGS)
_DOT = "."


def drawing(function: Callable[..., Drawn]) -> Callable[..., Drawn]:
    """Register a function as the drawing of its own name, titled by the first line of its docstring.

    The function takes the sheet's width first and its values by keyword. Raises ValueError for a doubled
    name or a missing docstring, so that a family file at fault cannot be imported.
    """
    name = function.__name__
    if name in _DRAWINGS:
        raise ValueError(f"a drawing named {name} is registered already")
    if not (function.__doc__ or "").strip():
        raise ValueError(f"the drawing {name} has no docstring to take its title from")
    title = (function.__doc__ or "").strip().splitlines()[0].rstrip(_DOT)
    _DRAWINGS[name] = Drawing(name=name, title=title, parameters=_parameters(function), lay=function)
    return function


def _parameters(function: Callable[..., Drawn]) -> tuple[Parameter, ...]:
    kinds, whole = typing.get_type_hints(function), typing.get_type_hints(function, include_extras=True)
    return tuple(
        Parameter(
            name=p.name,
            kind=_given(kinds[p.name]),
            required=p.default is inspect.Parameter.empty,
            words=_words(whole[p.name]),
        )
        for p in inspect.signature(function).parameters.values()
        if p.kind is inspect.Parameter.KEYWORD_ONLY
    )


def _given(kind: object) -> object:
    """The kind a value has where it is given: a parameter that may be None is bound as the other kind."""
    if isinstance(kind, UnionType):
        return next(part for part in typing.get_args(kind) if part is not NoneType)
    return kind


def _words(kind: object) -> tuple[str, ...]:
    marks = getattr(kind, "__metadata__", ())
    return next((mark.words for mark in marks if isinstance(mark, OneOf)), ())


def lay(name: str, values: Mapping[str, object], width: float) -> Drawn:
    """Return a drawing's finished sheet, as data.

    `width` is the sheet's in mm (175 paper, 80 phone, 40 thumbnail). Raises UnknownDrawing, or WrongValues
    that names what is missing or not known.
    """
    if name not in DRAWINGS:
        raise UnknownDrawing(name)
    found = DRAWINGS[name]
    known = {p.name for p in found.parameters}
    missing = [p.name for p in found.parameters if p.required and p.name not in values]
    strange = sorted(set(values) - known)
    if missing or strange:
        raise WrongValues(f"{name}: missing {missing}, not known {strange}")
    return found.lay(width, **values)


def draw(name: str, values: Mapping[str, object], width: float, language: Language = ENGLISH) -> Picture:
    """Return a drawing as a finished picture; see `lay` for the arguments and what is raised.

    It speaks `language` where that has every word of it, English otherwise, and carries the tag of which.
    """
    drawn, said_in = spoken(lambda: lay(name, values, width), language)
    return Picture(
        name=name,
        title=drawn.title,
        svg=engrave(drawn.sheet, drawn.title, drawn.alt),
        width_mm=drawn.sheet.width,
        height_mm=drawn.sheet.height,
        alt=drawn.alt,
        scale=drawn.scale,
        tag=said_in.tag,
        key=tuple((entry.letter, entry.text) for entry in drawn.key),
    )
