"""Makes a calculator's inputs from text and prints what came out."""

from __future__ import annotations

from collections.abc import Mapping

from generator.quantities.calculator import Calculator, InputText, Parameter, Result, registered
from generator.quantities.readings import Reading, Readings
from generator.quantities.worked import Origin, Worked, given
from generator.quantities.workings import print_worked
from generator.units import parse_value


def size(text: str, name: str = "size") -> Worked:
    """A given size from "5 mm"."""
    return given(name, parse_value(text), label=name, origin=Origin.EXAMPLE)


def readings(*texts: str, name: str = "set_back") -> Readings:
    """Readings from "7.5 mm", or from "left:100 7.5 mm" with its station."""
    return Readings(name=name, label="Plaster proud", items=tuple(_reading(text, name) for text in texts))


def _reading(text: str, name: str) -> Reading:
    if ":" not in text:
        return Reading(value=size(text, name))
    station, _, value = text.partition(" ")
    member, _, at = station.partition(":")
    return Reading(member=member, at=size(f"{at} mm", "at"), value=size(value, f"{name}@{station}"))


def run(name: str, inputs: Mapping[str, InputText]) -> Result:
    """What a calculator makes of inputs given as text; a record is the example of the calculator named."""
    calculator = registered()[name]
    made = {key: _input(calculator.parameters[key], text) for key, text in inputs.items()}
    return calculator.function(**made)


def run_with(name: str, **inputs: Result) -> Result:
    """What a calculator makes of inputs, those that are text read as sizes."""
    parameters = registered()[name].parameters
    made = {
        key: _input(parameters[key], value) if isinstance(value, str) else value
        for key, value in inputs.items()
    }
    return registered()[name].function(**made)


def _input(parameter: Parameter, text: InputText) -> Result:
    if parameter.kind is Readings:
        return readings(*text)
    if parameter.kind is str:
        return str(text)
    if parameter.kind is tuple:
        return tuple(size(each, parameter.name) for each in text)
    return size(str(text), parameter.name) if parameter.kind is Worked else example_result(str(text))


def example_result(name: str) -> Result:
    """What a calculator makes of its own example."""
    return run(name, registered()[name].example.inputs)


def printed(result: Result, field: str = "") -> str:
    """One value of a result as the trade prints it."""
    value = getattr(result, field) if field else result
    return print_worked(value).text(" ")


def said(calculator: Calculator) -> dict[str, str]:
    """What the example's outcome prints for the fields the example names."""
    result = example_result(calculator.name)
    return {field: printed(result, field) for field in calculator.example.gives}
