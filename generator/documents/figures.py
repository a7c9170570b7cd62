"""The drawings of a task: each parameter bound to a worked value by name, ordered, and put in its place."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cache
from types import NoneType
from typing import get_args, get_origin, get_type_hints

from generator.documents.blocks import Figure, Picture
from generator.documents.drawing_files import in_files, plain
from generator.documents.task import Task
from generator.drawings.figures import Angle, Member, Part, Reading, Size
from generator.drawings.orders import BENCH, BENCH_FORMS, PAPER, PHONE, THUMBNAIL, Bound, Order
from generator.drawings.registry import DRAWINGS, Drawing, Parameter
from generator.model.method import Method
from generator.model.scalars import Quoted, Word
from generator.model.steps import DrawingWanted, Step
from generator.problems import ProblemLog, Span, nearest
from generator.prose import lookup
from generator.quantities.families.packers import EvenPacker, Remainder
from generator.quantities.ledger import Ledger, OpeningLedger
from generator.quantities.readings import Readings, member_lengths, spread_evenly
from generator.quantities.worked import Worked
from generator.quantities.workings import print_worked
from generator.units import print_value
from generator.wording import Language
from generator.wording.marks import unmarked

PLACE = "place"


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """A drawing a step asks for at one opening, its values bound; `step` is numbered from 1."""

    step: int
    opening: OpeningLedger
    order: Order


def wanted(ledger: Ledger, log: ProblemLog) -> tuple[Wanted, ...]:
    """Every drawing of a task at every opening; one that is not there, or lacks a value, is a fault."""
    asked = [(number, step.drawing) for number, step in enumerate(ledger.method.steps, 1) if step.drawing]
    _check_picture(ledger.method, {drawing.show.value for _, drawing in asked}, log)
    known = [(number, drawing) for number, drawing in asked if _known(drawing, log)]
    made = (
        (number, opening, _order(drawing, ledger, opening, log))
        for number, drawing in known
        for opening in ledger.openings
    )
    return tuple(
        Wanted(step=number, opening=opening, order=order) for number, opening, order in made if order
    )


def orders_of(ledger: Ledger) -> tuple[Order, ...]:
    """What a document of the ledger shows, for paper and phone: all at the first opening, then readings."""
    shown = (
        one.order
        for one in wanted(ledger, ProblemLog())
        if one.opening is ledger.openings[0] or _is_own(one.order)
    )
    return tuple(order for one in shown for order in widths(one))


def _check_picture(method: Method, drawn: set[str], log: ProblemLog) -> None:
    named = method.picture
    if named and named.value not in drawn:
        near, listed = nearest(named.value, drawn), ", ".join(sorted(drawn)) or "none"
        log.add("picture-unknown", named.span, name=named.value, known=listed, nearest=near)


def widths(order: Order) -> tuple[Order, ...]:
    """The same drawing for paper and for a phone."""
    return tuple(replace(order, width=width) for width in (PAPER, PHONE))


def _known(drawing: DrawingWanted, log: ProblemLog) -> bool:
    name = drawing.show.value
    if name in DRAWINGS:
        _check_parameters(drawing, DRAWINGS[name], log)
        return True
    listed = ", ".join(sorted(DRAWINGS))
    log.add("drawing-unknown", drawing.show.span, name=name, known=listed, nearest=nearest(name, DRAWINGS))
    return False


def _check_parameters(drawing: DrawingWanted, kind: Drawing, log: ProblemLog) -> None:
    """Log each value given under a name that the drawing does not take."""
    taken = [parameter.name for parameter in kind.parameters if parameter.name != PLACE]
    for name in drawing.with_:
        if name not in taken:
            log.add(
                "drawing-parameter",
                drawing.with_.place(name),
                drawing=kind.name,
                name=name,
                known=", ".join(taken),
                nearest=nearest(name, taken),
            )


def _order(drawing: DrawingWanted, ledger: Ledger, opening: OpeningLedger, log: ProblemLog) -> Order | None:
    kind = DRAWINGS[drawing.show.value]
    if _lacks_several(kind, drawing, ledger, opening, log):
        return None
    bound = {
        parameter.name: _bind(parameter, drawing, ledger, opening, log)
        for parameter in kind.parameters
        if parameter.name != PLACE and (parameter.required or _offered(parameter, drawing, ledger))
    }
    if any(value is None for value in bound.values()):
        return None
    given = {name: value for name, value in bound.items() if value is not None}
    if opening.row and any(parameter.name == PLACE for parameter in kind.parameters):
        given[PLACE] = opening.label
    return Order(name=kind.name, width=PAPER, values=tuple(sorted(given.items())))


def _lacks_several(
    kind: Drawing, drawing: DrawingWanted, ledger: Ledger, opening: OpeningLedger, log: ProblemLog
) -> bool:
    """Log in one what a drawing made for other work finds no values for; one alone is told by `_bind`."""
    needed = [p.name for p in kind.parameters if p.required and p.name not in (PLACE, *drawing.with_)]
    unfound = [name for name in needed if name not in ledger.broken and lookup(name, ledger, opening) is None]
    if len(unfound) > 1:
        listed = ", ".join(unfound)
        log.add("drawing-values", drawing.show.span, known=listed, count=len(unfound), first=unfound[0])
    return len(unfound) > 1


def _offered(parameter: Parameter, drawing: DrawingWanted, ledger: Ledger) -> bool:
    """Whether a value stands ready for a parameter that may be left out."""
    if parameter.name in drawing.with_:
        return True
    return lookup(parameter.name, ledger, ledger.openings[0]) is not None


def _bind(
    parameter: Parameter, drawing: DrawingWanted, ledger: Ledger, opening: OpeningLedger, log: ProblemLog
) -> Bound | None:
    named = drawing.with_.get(parameter.name)
    place = named.span if named else drawing.show.span
    if isinstance(named, Quoted):
        return _text(parameter, named, log)
    dotted = named.value if named else parameter.name
    found = lookup(dotted, ledger, opening)
    if found is None:
        if dotted.partition(".")[0] not in ledger.broken:
            near = nearest(dotted, ledger.names)
            log.add("drawing-value", place, parameter=parameter.name, name=dotted, nearest=near)
        return None
    bound = _as_kind(parameter.kind, found, _lengths(drawing, ledger, opening))
    if bound is None:
        log.add("drawing-kind", place, parameter=parameter.name, name=dotted)
        return None
    return _word_it_takes(parameter, bound, place, log)


def _text(parameter: Parameter, quoted: Quoted, log: ProblemLog) -> Bound | None:
    """A text in quotes, for a parameter that is text."""
    if parameter.kind is not str:
        log.add("drawing-text", quoted.span, parameter=parameter.name, text=quoted.value)
        return None
    return _word_it_takes(parameter, quoted.value, quoted.span, log)


def _word_it_takes(parameter: Parameter, bound: Bound, place: Span, log: ProblemLog) -> Bound | None:
    """The value, unless it is a word that the drawing has no picture for."""
    if not parameter.words or bound in parameter.words:
        return bound
    known, near = ", ".join(filter(None, parameter.words)), nearest(str(bound), parameter.words)
    log.add("drawing-word", place, parameter=parameter.name, word=str(bound), known=known, nearest=near)
    return None


def _lengths(drawing: DrawingWanted, ledger: Ledger, opening: OpeningLedger) -> Mapping[str, Worked]:
    """The members' lengths by the drawing's own sizes of the opening, where it has them."""
    names = (drawing.with_.get(name) or name for name in ("opening_width", "opening_height"))
    sizes = [lookup(str(name), ledger, opening) for name in names]
    worked = [size for size in sizes if isinstance(size, Worked)]
    return member_lengths(*worked) if len(worked) == 2 else {}


def _as_kind(kind: object, found: object, lengths: Mapping[str, Worked]) -> Bound | None:
    """A worked value, word or record in the form a drawing takes; None where it cannot be."""
    if isinstance(found, Worked) and kind is Size:
        return _size(found)
    if isinstance(found, Worked) and kind is Angle:
        return Angle(degrees=found.number, text=print_worked(found).number)
    if isinstance(found, Readings):
        return _as_kind(kind, found.values, lengths)
    if isinstance(found, tuple) and get_origin(kind) is tuple and kind != tuple[Reading, ...]:
        return _several(get_args(kind)[0], found)
    if isinstance(kind, type) and issubclass(kind, Part):
        return _part(kind, found)
    if isinstance(found, EvenPacker) and kind == tuple[Reading, ...] and lengths:
        return _readings(found, lengths)
    return unmarked(found) if isinstance(found, str) and kind is str else None


def _several(kind: object, found: tuple[object, ...]) -> Bound | None:
    """A tuple in the form a drawing takes, or None where one of its items has not that form."""
    items = [_as_kind(kind, item, {}) for item in found]
    return None if None in items else tuple(items)  # type: ignore[return-value]


def _part(kind: type[Part], found: object) -> Part | None:
    """A record as the part a drawing takes, field by field of one name; a field may be left empty."""
    hints = _hints(kind)  # type: ignore[arg-type]  # a class is hashable whatever its things are
    if not all(hasattr(found, name) for name in hints):
        return None
    values = {name: _field(hint, getattr(found, name)) for name, hint in hints.items()}
    return kind(**values)


@cache
def _hints(kind: type[Part]) -> Mapping[str, object]:
    return get_type_hints(kind)


def _field(hint: object, found: object) -> Bound | None:
    may_be_none = (
        [part for part in get_args(hint) if part is not NoneType] if NoneType in get_args(hint) else []
    )
    return _as_kind(may_be_none[0] if may_be_none else hint, found, {}) if found is not None else None


def _size(item: Worked, decimals: int | None = None) -> Size:
    printed = print_worked(item) if decimals is None else print_value(item.value, decimals=decimals)
    return Size(mm=item.number, text=printed.number)


def _readings(packer: EvenPacker, lengths: Mapping[str, Worked]) -> tuple[Reading, ...]:
    placed = packer.readings if packer.readings.placed else spread_evenly(packer.readings, lengths)
    figures = [size for left in packer.remainders for size in (left.reading, left.remainder)]
    decimals = max(len(print_worked(size).number.partition(".")[2]) for size in figures)
    return tuple(
        _reading(item.member, item.at.number if item.at else 0.0, left, lengths, decimals)
        for item, left in zip(placed.items, packer.remainders, strict=True)
    )


def _reading(
    member: str, at: float, left: Remainder, lengths: Mapping[str, Worked], decimals: int
) -> Reading:
    length = lengths[member].number
    return Reading(
        member=_MEMBERS[member],
        at=min(at, length),
        value=_size(left.reading, decimals),
        left_over=_size(left.remainder, decimals),
        label=_station(member, at / length, at),
    )


_MEMBERS: Mapping[str, Member] = {"left": "left", "head": "head", "right": "right"}
_ENDS = {"left": ("foot", "top"), "head": ("left", "right"), "right": ("top", "foot")}
_NEAR_END, _NEAR_MIDDLE = 0.12, 0.1


def _station(member: str, share: float, at: float) -> str:
    """What a joiner calls the station; one between the usual ones by its distance from the member's start."""
    first, last = _ENDS[member]
    if share <= _NEAR_END:
        return first
    if share >= 1 - _NEAR_END:
        return last
    return "middle" if abs(share - 0.5) <= _NEAR_MIDDLE else f"{at:.0f}"


def step_figures(task: Task, number: int, rule: Step) -> tuple[Figure, ...]:
    """The drawing beside a step, for the first opening; the other openings' stand in the annex."""
    if rule.drawing is None:
        return ()
    first = next(one for one in _all(task) if one.step == number)
    return (_figure(task, first, f"figure-{first.number}", str(first.number)),)


def annex_figures(task: Task) -> tuple[Figure, ...]:
    """The readings of every opening but the first; of the other drawings the first opening's serve all."""
    first = task.ledger.openings[0]
    rest = (one for one in _all(task) if one.opening is not first and _is_own(one.order))
    return tuple(
        _figure(
            task, one, f"figure-{one.number}-{plain(one.opening.mark)}", f"{one.number}, {one.opening.mark}"
        )
        for one in rest
    )


def _is_own(order: Order) -> bool:
    """True when the drawing tells of one opening what no other shares: its readings."""
    return any(
        isinstance(item, Reading) for _, bound in order.values if isinstance(bound, tuple) for item in bound
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Numbered:
    number: int
    step: int
    opening: OpeningLedger
    order: Order


def _all(task: Task) -> Iterator[_Numbered]:
    found = wanted(task.ledger, ProblemLog())
    steps = {step: number for number, step in enumerate(dict.fromkeys(one.step for one in found), 1)}
    for one in found:
        yield _Numbered(number=steps[one.step], step=one.step, opening=one.opening, order=one.order)


def _figure(task: Task, one: _Numbered, key: str, number: str) -> Figure:
    paper, phone = widths(one.order)
    picture = task.pictures[paper]
    figure = Figure(
        key=key,
        number=number,
        caption=said_of(picture, _caption(picture), task.language),
        picture=picture,
        phone=task.pictures[phone],
    )
    return in_files(task, figure, f"{one.number}-{one.order.name}-{one.opening.mark}")


def said_of(picture: Picture, words: str, language: Language) -> str:
    """Words that a drawing says of itself, marked where it does not speak the language of the page."""
    return words if picture.tag == language.tag else language.quote(words)


def _caption(picture: Picture) -> str:
    """The title without its scale, since a phone shows the same figure drawn at another."""
    return (
        picture.title.removesuffix(f" {picture.scale}").removesuffix(",") if picture.scale else picture.title
    )


def bench_order(ledger: Ledger, opening: OpeningLedger) -> Order | None:
    """The drawing that stands for the method, at one opening, in its form for a bench card; None for none."""
    named = ledger.method.picture.value if ledger.method.picture else ""
    asked = next((step.drawing for step in ledger.method.steps if _shows(step.drawing, named)), None)
    if asked is None:
        return None
    form = BENCH_FORMS.get(named, named)
    asked = asked.model_copy(update={"show": Word(value=form, span=asked.show.span)})
    order = _order(asked, ledger, opening, ProblemLog())
    return replace(order, width=BENCH) if order else None


def _shows(drawing: DrawingWanted | None, name: str) -> bool:
    return drawing is not None and drawing.show.value == name


def small_order(ledger: Ledger) -> Order | None:
    """The drawing that stands for a method on the index, small; the first one where none is named."""
    orders = [one.order for one in wanted(ledger, ProblemLog())]
    named = ledger.method.picture.value if ledger.method.picture else ""
    chosen = next((order for order in orders if order.name == named), orders[0] if orders else None)
    return replace(chosen, width=THUMBNAIL) if chosen else None


def thumbnail(task: Task) -> Picture | None:
    """The drawing that stands for the task, without its words."""
    order = small_order(task.ledger)
    return task.pictures[order] if order else None
