"""Values with dimensions: strict parsing, dimension checking and printing as the trade prints.

A value is held in base units (mm, kg, s, degree, dB, pound), so arithmetic needs only the exponents of its
dimension and never a conversion; units enter when text is read and leave when it is printed. Magnitudes are
exact decimals as written until an irrational function makes them floats. The tests hold every unit of the
table against pint.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Context, Decimal, localcontext
from typing import NamedTuple

Magnitude = Decimal | float
EXACT_DIGITS = 34


class Dimension(NamedTuple):
    """Exponents of the base dimensions."""

    length: int = 0
    mass: int = 0
    time: int = 0
    angle: int = 0
    level: int = 0
    money: int = 0

    def times(self, other: Dimension) -> Dimension:
        """The dimension of a product."""
        return Dimension(*(a + b for a, b in zip(self, other, strict=True)))

    def over(self, other: Dimension) -> Dimension:
        """The dimension of a quotient."""
        return Dimension(*(a - b for a, b in zip(self, other, strict=True)))


NUMBER = Dimension()
LENGTH = Dimension(length=1)
AREA = Dimension(length=2)
VOLUME = Dimension(length=3)
MASS = Dimension(mass=1)
TIME = Dimension(time=1)
ANGLE = Dimension(angle=1)
LEVEL = Dimension(level=1)
MONEY = Dimension(money=1)
DENSITY = MASS.over(VOLUME)
ACCELERATION = LENGTH.over(TIME).over(TIME)

DIMENSION_NAMES: Mapping[Dimension, str] = {
    NUMBER: "a plain number",
    LENGTH: "a length",
    AREA: "an area",
    VOLUME: "a volume",
    MASS: "a mass",
    TIME: "a time",
    ANGLE: "an angle",
    LEVEL: "a sound level",
    MONEY: "a price",
    DENSITY: "a density",
    ACCELERATION: "an acceleration",
}


def dimension_name(dimension: Dimension) -> str:
    """How a person calls it: "a length"; an unnamed one by its exponents."""
    if dimension in DIMENSION_NAMES:
        return DIMENSION_NAMES[dimension]
    powers = ", ".join(f"{name} to the {power}" for name, power in dimension._asdict().items() if power)
    return f"a product ({powers})"


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit: the symbol printed, its dimension, its size in base units, decimals printed when not exact."""

    symbol: str
    dimension: Dimension
    size: Decimal
    decimals: int = 1


def _unit(symbol: str, dimension: Dimension, size: str, decimals: int = 1) -> Unit:
    return Unit(symbol=symbol, dimension=dimension, size=Decimal(size), decimals=decimals)


_MM, _CM, _M = (
    _unit("mm", LENGTH, "1"),
    _unit("cm", LENGTH, "10", 2),
    _unit("m", LENGTH, "1000", 2),
)
_MM2, _M2 = _unit("mm²", AREA, "1", 0), _unit("m²", AREA, "1000000", 2)
_MM3, _ML = _unit("mm³", VOLUME, "1", 0), _unit("ml", VOLUME, "1000", 1)
_L, _M3 = _unit("l", VOLUME, "1000000", 2), _unit("m³", VOLUME, "1000000000", 3)
_G, _KG = _unit("g", MASS, "0.001", 0), _unit("kg", MASS, "1", 1)
_S, _MIN, _H = _unit("s", TIME, "1", 0), _unit("min", TIME, "60", 0), _unit("h", TIME, "3600", 1)
_DAY = _unit("days", TIME, "86400", 1)
_DEG = _unit("°", ANGLE, "1", 1)
_DB = _unit("dB", LEVEL, "1", 1)
_POUND = _unit("£", MONEY, "1", 2)
_PERCENT = _unit("%", NUMBER, "0.01", 1)
_KG_M3 = _unit("kg/m³", DENSITY, "0.000000001", 0)
_G_CM3 = _unit("g/cm³", DENSITY, "0.000001", 2)
_MG_M3 = _unit("mg/m³", DENSITY, "0.000000000000001", 1)
_M_S2 = _unit("m/s²", ACCELERATION, "1000", 1)

UNITS: Mapping[str, Unit] = {
    "mm": _MM, "cm": _CM, "m": _M,
    "mm2": _MM2, "mm²": _MM2, "m2": _M2, "m²": _M2,
    "mm3": _MM3, "mm³": _MM3, "ml": _ML, "l": _L, "m3": _M3, "m³": _M3,
    "g": _G, "kg": _KG,
    "s": _S, "min": _MIN, "h": _H, "day": _DAY, "days": _DAY,
    "deg": _DEG, "°": _DEG,
    "dB": _DB,
    "£": _POUND, "GBP": _POUND,
    "%": _PERCENT,
    "kg/m3": _KG_M3, "kg/m³": _KG_M3, "g/cm3": _G_CM3, "g/cm³": _G_CM3,
    "mg/m3": _MG_M3, "mg/m³": _MG_M3,
    "m/s2": _M_S2, "m/s²": _M_S2,
}  # fmt: skip

TRADE_UNITS: Mapping[Dimension, Unit] = {
    LENGTH: _MM, AREA: _M2, VOLUME: _ML, MASS: _KG, TIME: _MIN, ANGLE: _DEG,
    LEVEL: _DB, MONEY: _POUND, DENSITY: _KG_M3, ACCELERATION: _M_S2,
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Value:
    """A magnitude in base units with its dimension. A float magnitude is not exact; a Decimal is."""

    magnitude: Magnitude
    dimension: Dimension = NUMBER

    @property
    def exact(self) -> bool:
        """True while no irrational function has touched it."""
        return isinstance(self.magnitude, Decimal)

    def in_unit(self, unit: Unit) -> Magnitude:
        """The magnitude in `unit`; ValueError when the dimensions differ."""
        if unit.dimension != self.dimension:
            raise ValueError(f"{dimension_name(self.dimension)} has no size in {unit.symbol}")
        if isinstance(self.magnitude, Decimal):
            with localcontext(Context(prec=EXACT_DIGITS)):
                return self.magnitude / unit.size
        return self.magnitude / float(unit.size)


@dataclass(frozen=True, slots=True)
class Printed:
    """A value as the trade prints it: number, unit, and whether the number shown is the whole of it."""

    number: str
    unit: str
    exact: bool

    def text(self, space: str = " ") -> str:
        """Number and unit with `space` between; nothing between for °, % and no unit; £ stands before."""
        if self.unit == "£":
            return f"£{self.number}"
        if self.unit in ("", "°", "%"):
            return f"{self.number}{self.unit}"
        return f"{self.number}{space}{self.unit}"


class NotAValue(ValueError):
    """Text that is not a number with a known unit: a fault code, what it names, and the place in the text."""

    def __init__(self, code: str, offset: int = 0, /, length: int = 1, **values: str) -> None:
        super().__init__(code)
        self.code, self.offset, self.length, self.values = code, offset, length, values


_NUMBER = re.compile(r"[+-]?[0-9]{1,9}(?:\.[0-9]{1,6})?")
_NUMBER_GOES_ON = frozenset(",.0123456789")
_LOOKS_LIKE = re.compile(r"\s*[+-]?[0-9]")


def parse_value(text: str) -> Value:
    """Read "762 mm", "0.5 mm", "25 %", "£4.20" or a bare number strictly.

    Raises NotAValue for a decimal comma, a thousands gap, an unknown unit, or anything else.
    """
    stripped = text.strip()
    lead = len(text) - len(text.lstrip())
    if stripped.startswith("£"):
        return _priced(stripped, lead)
    found = _NUMBER.match(stripped)
    if not found:
        raise NotAValue("value-not-number", lead, length=len(stripped) or 1, value=stripped)
    rest = stripped[found.end() :]
    symbol = rest.strip()
    if symbol[:1] in {",", "."} or symbol[:1] in set("0123456789"):
        raise NotAValue("value-number-form", lead, length=len(stripped), value=stripped)
    return Value(*_sized(Decimal(found.group()), symbol, lead + len(stripped) - len(symbol)))


def _priced(stripped: str, lead: int) -> Value:
    found = _NUMBER.fullmatch(stripped[1:].strip())
    if not found:
        raise NotAValue("value-not-number", lead, length=len(stripped), value=stripped)
    return Value(Decimal(found.group()), MONEY)


def _sized(number: Decimal, symbol: str, offset: int) -> tuple[Decimal, Dimension]:
    if not symbol:
        return number, NUMBER
    if symbol not in UNITS:
        raise NotAValue("value-unit", offset, length=len(symbol), unit=symbol)
    unit = UNITS[symbol]
    return number * unit.size, unit.dimension


def looks_like_value(text: str) -> bool:
    """True when the text begins as a number does."""
    return bool(_LOOKS_LIKE.match(text))


def print_value(value: Value, unit: Unit | None = None, decimals: int | None = None) -> Printed:
    """Print in `unit`, or in the trade's unit for the dimension; whole numbers lose their decimals.

    `decimals` fixes the places; otherwise as many as the unit keeps, fewer when the rest are noughts.
    """
    chosen = unit or TRADE_UNITS.get(value.dimension)
    if chosen is None:
        chosen = Unit("" if value.dimension == NUMBER else "(base units)", value.dimension, Decimal(1), 2)
    whole = Decimal(str(value.in_unit(chosen)))
    places = chosen.decimals if decimals is None else decimals
    shown = whole.quantize(Decimal(1).scaleb(-places), rounding=ROUND_HALF_UP, context=Context(prec=60))
    exact = value.exact and shown == whole
    return Printed(_digits(shown, keep=decimals is not None or chosen.symbol == "£"), chosen.symbol, exact)


def _digits(number: Decimal, *, keep: bool) -> str:
    text = f"{number if number else abs(number):f}"
    if "." in text and not keep:
        text = text.rstrip("0").rstrip(".")
    return text.replace("-", "−")
