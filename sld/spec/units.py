"""Numbers with a unit, as a spec writes them: `25 m`, `0.4 kV`, `-0.26 %/K`, or a bare number in the stated unit.

`Annotated[float, Unit("m")]` is a field that is always a float in metres once it is read. `Annotated[Quantity,
Units("%/K", "V/K")]` is a field whose text says which of several units it is in; there a bare number is refused.
What a spec gets wrong is reported by pydantic with the error types `quantity_number` (not a number), `quantity_unit`
(no unit, an unknown one, one of another kind), `quantity_size` (larger or smaller than anything of an installation) and
`quantity_range` (outside the bounds of the field).
"""

from __future__ import annotations

import math
import re
from decimal import Decimal
from typing import Any

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import PydanticCustomError, core_schema

from sld.frozen import dataclass
from sld.spec.gauge import GAUGE_PATTERN, gauge_mm2
from sld.spec.measure import convert, kind_of, known, measure, nearest_unit, unit_pattern

__all__ = ["Quantity", "Unit", "Units"]

_NUMBER = r"[-+]?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:[eE][-+]?[0-9]{1,3})?"
_TEXT = re.compile(rf"(?P<number>{_NUMBER}) *(?P<unit>(?:1/|[^0-9.,'_\s+-]).*)?")
_DIGITS = re.compile(r"[-+]?[0-9]+(?:[.,'_ ][0-9]+)*")
_LONGEST_SHOWN = 40
_NUMBER_AND_UNIT = "write a number and its unit"
_LEAST, _MOST = 1e-18, 1e12
"""Magnitudes, in the unit of the field, beyond which nothing of an installation lies: a value outside is a slip, and
would take the formulas beyond what a computer can hold."""


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number and the unit it is in, for a field that may be in one of several units."""

    value: float
    unit: str

    def __str__(self) -> str:
        return f"{self.value:g} {self.unit}"


def _brief(given: object) -> str:
    """Write what was given in a few words."""
    shapes = {bool: str(given).lower(), type(None): "nothing", list: "a list", dict: "a block"}
    text = shapes.get(type(given), f"`{given}`")
    return text if len(text) <= _LONGEST_SHOWN else f"{text[:_LONGEST_SHOWN]}…`"


def _not_a_number(given: object, remedy: str) -> PydanticCustomError:
    return PydanticCustomError("quantity_number", "{given} is not a number", {"given": _brief(given), "remedy": remedy})


def _wrong_unit(given: object, reason: str, expected: str, remedy: str) -> PydanticCustomError:
    context = {"given": _brief(given), "reason": reason, "expected": expected, "remedy": remedy}
    return PydanticCustomError("quantity_unit", "{given} {reason}, expected {expected}", context)


def _how_to_write(text: str) -> str:
    """Say how a text that is not a number should have been written."""
    found = _DIGITS.match(text)
    number = found.group() if found else ""
    if number.count(",") == 1 and "." not in number:
        thousands = ", or leave it out if it parts thousands" if len(number.split(",")[1]) == 3 else ""
        return f"write a decimal point instead of the comma{thousands}"
    packed = re.sub(r"[,'_ ]", "", number)
    if packed != number and packed.count(".") < 2:
        return "write the digits with nothing between the thousands"
    if re.match(r"[-+]?0[0-9]", number):
        return "leave the leading zero out"
    return _NUMBER_AND_UNIT


def _split(given: str) -> tuple[Decimal, str]:
    """Return number and unit of a text; the unit is empty where there is none."""
    text = given.strip().replace("\u2212", "-").replace("\u00a0", " ").replace("\u202f", " ")
    found = _TEXT.fullmatch(text)
    if found is None:
        raise _not_a_number(given, _how_to_write(text))
    return Decimal(found["number"]), (found["unit"] or "").strip()


def _finite(value: float, given: object) -> float:
    if not math.isfinite(value):
        raise _not_a_number(given, "write a finite number")
    if value and not _LEAST <= abs(value) < _MOST:
        size = "large" if abs(value) > 1 else "small"
        context = {"given": _brief(given), "size": size, "remedy": "check number and unit"}
        raise PydanticCustomError("quantity_size", "{given} is too {size} to be meant", context)
    return value


def _bare(given: int | float, units: tuple[str, ...]) -> tuple[float, str]:
    """Read a number without a unit: it is in the only unit there is."""
    if len(units) > 1:
        raise _wrong_unit(given, "has no unit", " or ".join(units), "write the unit behind the number")
    try:
        return _finite(float(given), given), units[0]
    except OverflowError:
        raise _not_a_number(given, "write a finite number") from None


def _with_article(noun: str) -> str:
    return f"{'an' if noun[0] in 'aei' else 'a'} {noun}"


def _right_unit(unit: str, units: tuple[str, ...]) -> str:
    """Say which unit to write."""
    near = nearest_unit(unit)
    if near and measure(unit) is None and known(near)[0] in [known(wanted)[0] for wanted in units]:
        return f"write the unit as {near}"
    return f"write it in {' or '.join(units)}"


def _is_fahrenheit(unit: str, wanted: tuple[str, ...]) -> bool:
    return wanted == ("°C",) and unit.casefold().replace(" ", "") in ("f", "°f", "degf", "℉", "fahrenheit")


def _why_not(number: Decimal, unit: str, wanted: tuple[str, ...]) -> str:
    """Say what is wrong with a unit that is none of those wanted."""
    if _is_fahrenheit(unit, wanted):
        return f"is in degrees Fahrenheit ({(float(number) - 32) / 1.8:.1f} °C)"
    if not unit:
        return "is text without a unit"
    if measure(unit) is None:
        near = nearest_unit(unit)
        return f"has an unknown unit `{unit}`" + (f" (nearest: `{near}`)" if near else "")
    kind = kind_of(unit)
    return f"is {_with_article(kind)}" if kind else f"is in {unit}"


def _read(given: object, units: tuple[str, ...]) -> tuple[float, str]:
    """Return the value and which of `units` it is in."""
    if isinstance(given, int | float) and not isinstance(given, bool):
        return _bare(given, units)
    if not isinstance(given, str):
        raise _not_a_number(given, _NUMBER_AND_UNIT)
    number, unit = _split(given)
    if not math.isfinite(float(number)):
        raise _not_a_number(given, "write a finite number")
    what = measure(unit) if unit else None
    for wanted in units:
        if what is not None and known(wanted)[0] == what[0]:
            return _finite(convert(number, unit, wanted), given), wanted
    kind = kind_of(units[0]) if len(units) == 1 else ""
    expected = f"{_with_article(kind)} in {units[0]}" if kind else " or ".join(units)
    raise _wrong_unit(given, _why_not(number, unit, units), expected, _right_unit(unit, units))


def _pattern(units: tuple[str, ...], more: str = "") -> str:
    """Return a regular expression of what may be written, for a JSON Schema. more: further alternatives."""
    number = _NUMBER.replace("[-+]", "[-+\u2212]", 1)
    return rf"^\s*({number}\s*({'|'.join(dict.fromkeys(map(unit_pattern, units)))}){more})\s*$"


@dataclass(frozen=True, slots=True)
class Unit:
    """The unit of a float field, with its bounds in that unit; use it as `Annotated[float, Unit("m", minimum=0)]`.

    exclusive_minimum: the minimum itself is refused too. Raises ValueError for a unit that is not known.
    """

    unit: str
    minimum: float | None = None
    exclusive_minimum: bool = False
    maximum: float | None = None

    def __post_init__(self) -> None:
        known(self.unit)

    def read(self, given: object) -> float:
        """Return the value in the stated unit. Raises PydanticCustomError."""
        gauge = gauge_mm2(given) if self.unit == "mm2" else None
        value = _read(given, (self.unit,))[0] if gauge is None else gauge
        if self.minimum is not None and (value < self.minimum or (self.exclusive_minimum and value == self.minimum)):
            raise self._outside(given, "more than" if self.exclusive_minimum else "at least", self.minimum)
        if self.maximum is not None and value > self.maximum:
            raise self._outside(given, "at most", self.maximum)
        return value

    def _outside(self, given: object, must: str, bound: float) -> PydanticCustomError:
        context = {"given": _brief(given), "must": must, "bound": f"{bound:g} {self.unit}".strip()}
        return PydanticCustomError("quantity_range", "{given} is out of range, must be {must} {bound}", context)

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> core_schema.CoreSchema:
        return core_schema.no_info_before_validator_function(self.read, core_schema.float_schema(allow_inf_nan=False))

    def __get_pydantic_json_schema__(
        self, schema: core_schema.CoreSchema, handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        number: dict[str, Any] = {"type": "number"}
        if self.minimum is not None:
            number["exclusiveMinimum" if self.exclusive_minimum else "minimum"] = self.minimum
        if self.maximum is not None:
            number["maximum"] = self.maximum
        gauges = f"|{GAUGE_PATTERN}" if self.unit == "mm2" else ""
        return {"anyOf": [number, {"type": "string", "pattern": _pattern((self.unit,), gauges)}]}


class Units:
    """The units that a `Quantity` field may be in; a value is turned into the first one that measures the same thing.

    `Units("%/K", "V/K", "mV/K")` reads `-80 mV/K` as -0.08 V/K and leaves `-0.26 %/K` as it is. Raises ValueError for
    a unit that is not known.
    """

    __slots__ = ("units",)

    def __init__(self, *units: str) -> None:
        for unit in units:
            known(unit)
        self.units = units

    def read(self, given: object) -> Quantity:
        """Return the value with its unit. Raises PydanticCustomError."""
        return given if isinstance(given, Quantity) else Quantity(*_read(given, self.units))

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> core_schema.CoreSchema:
        to_text = core_schema.to_string_ser_schema()
        return core_schema.no_info_plain_validator_function(self.read, serialization=to_text)

    def __get_pydantic_json_schema__(
        self, schema: core_schema.CoreSchema, handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        text = {"type": "string", "pattern": _pattern(self.units)}
        return {"anyOf": [{"type": "number"}, text]} if len(self.units) == 1 else text
