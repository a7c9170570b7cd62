"""A method's formulas read and held against its names: what is worked out, in which order and scope."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass

from generator.formulas import Argument, Call, Formula, Name, names_in, nodes_in
from generator.formulas.tree import parts_of
from generator.model.method import Method
from generator.problems import ProblemLog, nearest
from generator.quantities.builtin import BUILTINS, Builtin
from generator.quantities.calculator import Calculator, field_names, registered
from generator.quantities.kinds import SEVERAL, is_record, kind_name, kind_of
from generator.quantities.ledger import Scope
from generator.quantities.order import order_of
from generator.quantities.readings import Readings
from generator.quantities.worked import Worked
from generator.units import dimension_name


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """The formulas that are sound, in the order of work, with the scope and kind of every name."""

    method: Method
    formulas: Mapping[str, Formula]
    scopes: Mapping[str, Scope]
    kinds: Mapping[str, type]

    def lifts(self, call: Call) -> bool:
        """True when a call gathers one value from each opening for the whole job."""
        return lifts(call, self.scopes, self.kinds)


def plan_of(method: Method, surveyed: Collection[str], log: ProblemLog) -> Plan:
    """Hold every formula of a method against its names; `surveyed` are the sizes a survey gives openings."""
    formulas = {name: rule.work for name, rule in method.quantities.items()}
    scopes = {name: _size_scope(name, method, surveyed) for name in method.sizes}
    kinds = {name: _size_kind(method, name) for name in method.sizes}
    sound: dict[str, Formula] = {}
    for name in order_of(formulas, log):
        tree = formulas[name]
        kinds[name] = kind_of(tree, kinds)
        scopes[name] = scope_of(tree, scopes, kinds)
        if _Check(method, kinds, scopes, log).sound(tree):
            sound[name] = tree
    return Plan(method=method, formulas=sound, scopes=scopes, kinds=kinds)


def _size_scope(name: str, method: Method, surveyed: Collection[str]) -> Scope:
    return Scope.OPENING if method.sizes[name].measured or name in surveyed else Scope.JOB


def _size_kind(method: Method, name: str) -> type:
    size = method.sizes[name]
    if size.readings:
        return Readings
    return Worked if size.dimension is not None else str


def scope_of(tree: Formula, scopes: Mapping[str, Scope], kinds: Mapping[str, type]) -> Scope:
    """An opening's where a name of an opening is used other than gathered over all of them."""
    if isinstance(tree, Name):
        return scopes.get(tree.name, Scope.JOB)
    if isinstance(tree, Call) and lifts(tree, scopes, kinds):
        return Scope.JOB
    inner = (scope_of(part, scopes, kinds) for part in parts_of(tree))
    return Scope.OPENING if Scope.OPENING in inner else Scope.JOB


def lifts(call: Call, scopes: Mapping[str, Scope], kinds: Mapping[str, type]) -> bool:
    """True when a gathering function has one argument that is a single value of each opening."""
    builtin = BUILTINS.get(call.function)
    if not builtin or not builtin.lifts or len(call.arguments) != 1:
        return False
    argument = call.arguments[0].tree
    several = issubclass(kind_of(argument, kinds), SEVERAL)
    return not several and scope_of(argument, scopes, kinds) is Scope.OPENING


class _Check:
    """Holds one formula against the names, calculators and fields there are."""

    def __init__(
        self, method: Method, kinds: Mapping[str, type], scopes: Mapping[str, Scope], log: ProblemLog
    ) -> None:
        self._method, self._kinds, self._scopes, self._log = method, kinds, scopes, log

    def sound(self, tree: Formula) -> bool:
        """Log every fault of a formula; True when there is none."""
        checks: list[bool] = []
        for node in nodes_in(tree):
            if isinstance(node, Name):
                checks.append(self._name(node))
            elif isinstance(node, Call):
                checks.append(self._call(node))
        return all(checks)

    def _name(self, node: Name) -> bool:
        method = self._method
        known = method.sizes.names | method.quantities.names | method.materials.names
        if node.name not in known:
            near = nearest(node.name, known | frozenset(registered()))
            self._log.add("formula-name-unknown", node.span, name=node.name, nearest=near)
            return False
        if node.name in method.materials.names:
            return self._role(node)
        return self._field(node) if node.field and node.name in self._kinds else True

    def _role(self, node: Name) -> bool:
        if node.field is None:
            self._log.add("role-alone", node.span, name=node.name)
        return node.field is not None

    def _field(self, node: Name) -> bool:
        kind = self._kinds[node.name]
        if not is_record(kind):
            self._log.add("field-on-value", node.span, name=node.name, kind=kind_name(kind))
            return False
        fields = field_names(kind)
        if node.field not in fields:
            near, known = nearest(node.field or "", fields), ", ".join(fields)
            self._log.add(
                "field-unknown", node.span, name=node.name, field=node.field, known=known, nearest=near
            )
        return node.field in fields

    def _call(self, call: Call) -> bool:
        if call.function in BUILTINS:
            return self._builtin(call, BUILTINS[call.function])
        made = registered().get(call.function)
        if made is None:
            near = nearest(call.function, (*registered(), *BUILTINS))
            self._log.add("function-unknown", call.span, name=call.function, nearest=near)
            return False
        return self._calculator(call, made)

    def _builtin(self, call: Call, builtin: Builtin) -> bool:
        for argument in call.arguments:
            if argument.name:
                self._log.add(
                    "argument-by-place", argument.span, function=call.function, argument=argument.name
                )
                return False
        count = len(call.arguments)
        if count == 0 or (builtin.count is not None and count != builtin.count):
            wanted = str(builtin.count) if builtin.count else "one or more"
            self._log.add("argument-count", call.span, function=call.function, wanted=wanted, count=count)
            return False
        return self._gathers_something(call, builtin)

    def _gathers_something(self, call: Call, builtin: Builtin) -> bool:
        """One single value of the whole job is not gathered from anything."""
        argument = call.arguments[0].tree
        single = len(call.arguments) == 1 and not issubclass(kind_of(argument, self._kinds), SEVERAL)
        if not builtin.gathers or not single or lifts(call, self._scopes, self._kinds):
            return True
        if not self._resolved(argument):
            return True
        self._log.add("nothing-gathered", call.arguments[0].span, function=call.function)
        return False

    def _resolved(self, tree: Formula) -> bool:
        """False where a name is unknown or broken, so that nothing is known of the formula's scope."""
        method = self._method
        return all(name.name in self._kinds or name.name in method.materials for name in names_in(tree))

    def _calculator(self, call: Call, made: Calculator) -> bool:
        if call.arguments and call.arguments[0].name is None:
            known = ", ".join(made.parameters)
            self._log.add("argument-by-name", call.arguments[0].span, function=made.name, known=known)
            return False
        named = [self._argument(argument, made) for argument in call.arguments]
        return all(named) and self._all_given(call, made)

    def _all_given(self, call: Call, made: Calculator) -> bool:
        given = {argument.name for argument in call.arguments}
        missing = [name for name, each in made.parameters.items() if each.required and name not in given]
        for name in missing:
            kind = parameter_name(made, name)
            self._log.add("argument-missing", call.span, function=made.name, argument=name, kind=kind)
        return not missing

    def _argument(self, argument: Argument, made: Calculator) -> bool:
        name = argument.name or ""
        if name not in made.parameters:
            near, known = nearest(name, made.parameters), ", ".join(made.parameters)
            self._log.add(
                "argument-unknown",
                argument.span,
                function=made.name,
                argument=name,
                known=known,
                nearest=near,
            )
        return name in made.parameters


def parameter_name(made: Calculator, name: str) -> str:
    """What an input of a calculator must be, in words."""
    parameter = made.parameters[name]
    if parameter.takes is None:
        return kind_name(parameter.kind)
    one = dimension_name(parameter.takes.dimension)
    return f"several of: {one}" if parameter.kind is tuple else one
