"""Faults the formulas room finds."""

from __future__ import annotations

from collections.abc import Mapping

from generator.wording.faults.fault import Fault

_NUMBERS: Mapping[str, Fault] = {
    "formula-comma": Fault(
        "“%(written)s” has a comma inside a number.",
        "Write a point for decimals (7.5 mm) and nothing between thousands (1200 mm). Between two values in "
        "brackets leave a space after the comma.",
    ),
    "formula-number-gap": Fault(
        "“%(written)s” has a space inside a number.",
        "Write nothing between thousands (1200 mm), or a sign between two numbers.",
    ),
    "formula-number-form": Fault(
        "“%(written)s” is not a number as formulas write it.",
        "Expected figures on both sides of the point, at most nine before it and six after, such as 0.5 mm.",
    ),
    "formula-unit": Fault(
        "“%(unit)s” after a number is not a unit.",
        "Expected a unit such as mm, m, m2, ml, kg, min, h, deg, %% or £. To multiply, write *.",
    ),
}

_SIGNS: Mapping[str, Fault] = {
    "formula-power": Fault(
        "Powers are not part of formulas.",
        "Write the value twice with * between, such as width * width.",
    ),
    "formula-text": Fault(
        "A quote stands here, and text is not part of formulas.",
        "Expected numbers with units, names of sizes and quantities, and the signs + - * / ( ).",
    ),
    "formula-sign": Fault("“%(sign)s” is not a sign of formulas.", "Write %(instead)s instead."),
    "formula-character": Fault(
        "“%(character)s” has no meaning in a formula.",
        "Expected numbers with units, names of sizes and quantities, and the signs + - * / ( ).",
    ),
    "formula-equals": Fault(
        "A single “=” stands outside the brackets of a calculator.",
        "To compare two values, write ==. To name what a calculator is given, write it inside the brackets.",
    ),
    "formula-comma-outside": Fault(
        "A comma stands outside the brackets of a calculator.",
        "Write one formula here. A point, not a comma, goes before decimals.",
    ),
    "formula-bracket-unclosed": Fault("The bracket opened here is not closed.", "Expected a “)” after it."),
    "formula-bracket-stray": Fault(
        "This bracket closes one that was not opened.", "Delete it, or write the “(” it belongs to."
    ),
    "formula-compare-twice": Fault(
        "Two comparisons follow each other.",
        "Compare two values at a time, such as a < b.",
    ),
    "formula-compare-place": Fault(
        "A comparison cannot stand here.",
        "A comparison stands alone or in brackets of its own, such as (a < b).",
    ),
}

_NAMES: Mapping[str, Fault] = {
    "formula-name-form": Fault(
        "“%(name)s” is not written as a name.",
        "Names are small letters a to z, figures and single underscores, such as first_quirk.",
    ),
    "formula-underscores": Fault(
        "“%(written)s” begins with an underscore or has two together.",
        "Names are small letters a to z, figures and single underscores, such as first_quirk.",
    ),
    "formula-dots": Fault(
        "A second dot stands after “%(name)s”.",
        "One dot at most, such as architrave.width.",
    ),
    "formula-dot-place": Fault(
        "A dot cannot stand here.",
        "A dot stands between a name and its field, such as architrave.width.",
    ),
    "formula-field": Fault(
        "No field follows the dot after “%(name)s”.",
        "Expected the name of a field, such as architrave.width.",
    ),
    "formula-field-called": Fault(
        "“%(name)s” is a field, and a field is not given anything in brackets.",
        "Write *, / , + or - before the bracket.",
    ),
    "formula-call-field": Fault(
        "A dot follows the brackets of “%(function)s”.",
        "Make it a quantity with a name of its own, and write that name with the dot.",
    ),
    "formula-argument-doubled": Fault(
        "“%(argument)s” is given twice in these brackets.", "Give each thing once."
    ),
    "formula-argument-unnamed": Fault(
        "This stands after something given by name, and has no name itself.",
        "Write its name and = before it, such as step = 0.5 mm.",
    ),
}

_SHAPE: Mapping[str, Fault] = {
    "formula-empty": Fault(
        "The formula is empty.",
        "Expected arithmetic on sizes and quantities, such as first_quirk + second_quirk.",
    ),
    "formula-unfinished": Fault(
        "The formula ends after “%(last)s”.", "Expected a number or a name after it."
    ),
    "formula-no-value": Fault(
        "“%(found)s” stands where a value was expected.",
        "Expected a number with its unit, a name, or a bracket.",
    ),
    "formula-two-values": Fault(
        "“%(found)s” follows another value with nothing between them.",
        "Write a sign between them: + - * or /.",
    ),
    "formula-surplus": Fault("“%(found)s” cannot stand here.", "Expected a sign, or the end of the formula."),
    "formula-long": Fault(
        "The formula is %(count)s characters long; %(most)s are the most that are read.",
        "Make parts of it quantities with names of their own.",
    ),
    "formula-deep": Fault(
        "More than %(most)s brackets or minus signs stand one inside another.",
        "Make parts of it quantities with names of their own.",
    ),
    "formula-large": Fault(
        "The formula has more than %(most)s numbers, names and signs.",
        "Make parts of it quantities with names of their own.",
    ),
}

FAULTS: Mapping[str, Fault] = {**_NUMBERS, **_SIGNS, **_NAMES, **_SHAPE}
