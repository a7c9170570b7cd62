"""Working a formula out at one place: an opening, or the whole job with its openings beside it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field

from generator.formulas import Argument, Binary, Call, Compare, Formula, Minus, Name, Number
from generator.model.catalogue import Material
from generator.problems import Problem, ProblemLog, Span, nearest
from generator.quantities.builtin import BUILTINS
from generator.quantities.calculator import Calculator, Parameter, Result, registered
from generator.quantities.givens import catalogued
from generator.quantities.kinds import kind_name, thing
from generator.quantities.plan import Plan, parameter_name
from generator.quantities.readings import Readings
from generator.quantities.results import InputRefused
from generator.quantities.worked import (
    DimensionMismatch,
    Judged,
    Undefined,
    Worked,
    join,
    judge,
    literal,
    named,
)
from generator.quantities.workings import places, print_worked
from generator.units import Value, dimension_name, print_value


class NotWorked(Exception):
    """A formula that could not be worked out; its fault is in the log already, here or where it began."""


@dataclass(slots=True, kw_only=True)
class Place:
    """Where formulas are worked out: what is known there, and what the place is called in a fault.

    An opening sees the job's results too; the job sees its openings when it gathers.
    """

    where: str
    plan: Plan
    materials: Mapping[str, Material]
    log: ProblemLog
    results: dict[str, Result] = field(default_factory=dict)
    job: Place | None = None
    openings: tuple[Place, ...] = ()

    def work(self, tree: Formula) -> Result:
        """The result of a formula; NotWorked where there is none."""
        match tree:
            case Number():
                return literal(tree.value)
            case Name():
                return self._named(tree)
            case Minus():
                return -self._value(tree.of)
            case Binary():
                return self._binary(tree)
            case Compare():
                return self._compare(tree)
            case Call():
                return self._call(tree)

    def known(self, name: str) -> Result:
        """A result by name, here or for the whole job."""
        if name in self.results:
            return self.results[name]
        if self.job:
            return self.job.known(name)
        raise NotWorked

    def _named(self, tree: Name) -> Result:
        if tree.name in self.plan.method.materials:
            return self._material(tree)
        result = self.known(tree.name)
        label = self._label(tree.name)
        if tree.field:
            result = self._field(result, tree)
        shown = f"{tree.name}.{tree.field}" if tree.field else tree.name
        return named(result, shown, label) if isinstance(result, Worked) else result

    def _label(self, name: str) -> str:
        rule = self.plan.method.quantities.get(name)
        return rule.label.value if rule else name

    def _field(self, record: Result, tree: Name) -> Result:
        result = getattr(record, tree.field or "")
        if result is None and not getattr(record, "refused", ()):
            self.log.add("field-empty", tree.span, name=tree.name, field=tree.field)
        if result is None:
            raise NotWorked
        return result

    def _material(self, tree: Name) -> Result:
        material = self.materials.get(tree.name)
        if material is None or tree.field is None:
            raise NotWorked
        found = material.fields.get(tree.field)
        if found is None:
            near, known = nearest(tree.field, material.fields), ", ".join(material.fields)
            self.log.add(
                "material-field-unknown", tree.span, role=tree.name, key=material.name, field=tree.field,
                known=known, nearest=near,
            )  # fmt: skip
            raise NotWorked
        return catalogued(f"{tree.name}.{tree.field}", material, found)

    def _binary(self, tree: Binary) -> Worked:
        left, right = self._value(tree.left), self._value(tree.right)
        with self._worded(tree.span):
            return join(tree.symbol, left, right)
        raise NotWorked

    def _compare(self, tree: Compare) -> Judged:
        left, right = self._value(tree.left), self._value(tree.right)
        with self._worded(tree.span):
            return judge(tree.symbol, left, right)
        raise NotWorked

    def _value(self, tree: Formula) -> Worked:
        result = self.work(tree)
        if not isinstance(result, Worked):
            self.log.add("operand-kind", tree.span, found=thing(result))
            raise NotWorked
        return result

    def _call(self, tree: Call) -> Result:
        if tree.function in BUILTINS:
            return self._builtin(tree)
        return _Calling(self, tree, registered()[tree.function]).result()

    def _builtin(self, tree: Call) -> Worked:
        items = self._gathered(tree) if self.plan.lifts(tree) else self._inputs(tree)
        with self._worded(tree.span):
            return BUILTINS[tree.function].work(items)
        raise NotWorked

    def _gathered(self, tree: Call) -> list[Worked]:
        """The argument at every opening; one that could not be worked out leaves nothing to gather."""
        argument = tree.arguments[0].tree
        return [opening._value(argument) for opening in self._all_openings()]

    def _all_openings(self) -> tuple[Place, ...]:
        return self.job.openings if self.job else self.openings

    def _inputs(self, tree: Call) -> list[Worked]:
        spread = len(tree.arguments) == 1 and BUILTINS[tree.function].gathers
        items = [self.work(argument.tree) for argument in tree.arguments]
        several = _several(items[0]) if spread else None
        whole = items if several is None else list(several)
        for item in whole:
            if not isinstance(item, Worked):
                self.log.add("operand-kind", tree.arguments[0].span, found=thing(item))
                raise NotWorked
        return [item for item in whole if isinstance(item, Worked)]

    @contextmanager
    def _worded(self, span: Span) -> Iterator[None]:
        """Arithmetic without an answer is a fault of the user's formula, said at its place."""
        try:
            yield
        except DimensionMismatch as fault:
            left, right = (dimension_name(side.dimension) for side in (fault.left, fault.right))
            sign = _SIGNS.get(fault.symbol, fault.symbol)
            self.log.add("dimension-mismatch", span, sign=sign, left=left, right=right)
            raise NotWorked from fault
        except Undefined as fault:
            self.log.add(fault.reason, span, where=self.where)
            raise NotWorked from fault


_SIGNS = {"+": "+", "-": "−", "*": "×", "/": "÷"}


def _several(result: Result) -> Sequence[Result] | None:
    if isinstance(result, Readings):
        return result.values
    return result if isinstance(result, tuple) else None


@dataclass(frozen=True, slots=True)
class _Calling:
    """One call of a calculator at one place."""

    place: Place
    call: Call
    made: Calculator

    def result(self) -> Result:
        """What the calculator makes of its arguments, each held against what the input takes."""
        inputs = {argument.name or "": self._input(argument) for argument in self.call.arguments}
        if any(value is None for value in inputs.values()):
            raise NotWorked
        with self.place._worded(self.call.span):
            return self._made(inputs)
        raise NotWorked

    def _made(self, inputs: Mapping[str, Result]) -> Result:
        try:
            return self.made.function(**inputs)
        except InputRefused as fault:
            span = self._span_of(fault.argument)
            values = {"where": self.place.where, "argument": fault.argument, **fault.values}
            self.place.log.take(Problem(code=fault.code, span=span, values=values))
            raise NotWorked from fault

    def _span_of(self, name: str) -> Span:
        spans = (argument.span for argument in self.call.arguments if argument.name == name)
        return next(spans, self.call.span)

    def _input(self, argument: Argument) -> Result | None:
        """The argument's result, or None after its fault; every argument is looked at."""
        parameter = self.made.parameters[argument.name or ""]
        try:
            result = self.place.work(argument.tree)
        except NotWorked:
            return None
        if parameter.kind is tuple and isinstance(result, Readings):
            result = result.values
        return result if self._fits(argument, parameter, result) else None

    def _fits(self, argument: Argument, parameter: Parameter, result: Result) -> bool:
        if not isinstance(result, parameter.kind):
            self._log_kind(
                argument, kind_name(type(result)) if not isinstance(result, Worked) else thing(result)
            )
            return False
        items = result if isinstance(result, tuple) else (result,)
        return all(self._size_fits(argument, parameter, item) for item in items)

    def _size_fits(self, argument: Argument, parameter: Parameter, item: Result) -> bool:
        if parameter.takes is None:
            return True
        if not isinstance(item, Worked) or item.dimension != parameter.takes.dimension:
            self._log_kind(argument, thing(item))
            return False
        return self._in_range(argument, parameter, item)

    def _log_kind(self, argument: Argument, found: str) -> None:
        self.place.log.add(
            "argument-kind",
            argument.span,
            function=self.made.name,
            argument=argument.name,
            expected=parameter_name(self.made, argument.name or ""),
            found=found,
        )

    def _in_range(self, argument: Argument, parameter: Parameter, item: Worked) -> bool:
        takes = parameter.takes
        assert takes is not None
        limits = (
            ("input-not-above", takes.above, takes.above is not None and item.magnitude <= takes.above),
            ("input-below", takes.least, takes.least is not None and item.magnitude < takes.least),
            ("input-over", takes.most, takes.most is not None and item.magnitude > takes.most),
        )
        for code, limit, broken in limits:
            if broken and limit is not None:
                self._log_range(code, argument, item, Value(limit, takes.dimension))
        return not any(broken for _, _, broken in limits)

    def _log_range(self, code: str, argument: Argument, item: Worked, limit: Value) -> None:
        rests = ", ".join(dict.fromkeys(place.where for place in places(item) if place.where))
        self.place.log.add(
            code,
            argument.span,
            where=self.place.where,
            function=self.made.name,
            argument=argument.name,
            actual=print_worked(item).text(),
            limit=print_value(limit).text(),
            rests=rests or "the formula",
        )
