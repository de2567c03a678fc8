"""Quantities of a spec against the SI brochure and the exact definitions of foot and inch."""

from __future__ import annotations

import json
import re
from decimal import Decimal
from typing import Annotated, Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pydantic import BaseModel, ConfigDict, ValidationError
from pydantic_core import PydanticCustomError

from sld.spec.measure import convert, measure
from sld.spec.units import Quantity, Unit, Units


class Row(BaseModel):
    model_config = ConfigDict(strict=True, extra="forbid", frozen=True)

    length_m: Annotated[float, Unit("m", minimum=0, exclusive_minimum=True, maximum=1000)] | None = None
    voltage_v: Annotated[float, Unit("V")] | None = None
    coefficient: Annotated[Quantity, Units("%/K", "V/K", "mV/K")] | None = None


def read(key: str, value: Any) -> Any:
    return getattr(Row.model_validate_json(json.dumps({key: value})), key)


def refusal(key: str, value: Any) -> Any:
    with pytest.raises(ValidationError) as caught:
        read(key, value)
    (details,) = caught.value.errors()
    return details


@pytest.mark.parametrize(
    ("unit", "written", "value"),
    [
        # SI prefixes: SI brochure, 9th edition, table 7.
        ("V", "0.4 kV", 400.0),
        ("V", "750 mV", 0.75),
        ("kA", "10 kA", 10.0),
        ("kA", "6000 A", 6.0),
        ("mA", "0.3 A", 300.0),
        ("W", "12 kW", 12000.0),
        ("kW", "1.5 MW", 1500.0),
        ("VA", "250 kVA", 250000.0),
        ("m", "150 mm", 0.15),
        ("m", "2.5 cm", 0.025),
        ("mm", "0.4 m", 400.0),
        ("km", "850 m", 0.85),
        ("ohm", "350 mohm", 0.35),
        ("ohm", "0.35 Ω", 0.35),
        ("Mohm", "1000 kohm", 1.0),
        ("nF", "0.5 µF", 500.0),
        ("s", "200 ms", 0.2),
        ("s", "5 min", 300.0),
        ("Hz", "50 Hz", 50.0),
        ("W/m2", "1 kW/m²", 1000.0),
        ("ohm/km", "3.08 mohm/m", 3.08),
        # A squared unit takes the square of its prefix: SI brochure, section 3.
        ("mm2", "6 mm²", 6.0),
        ("mm2", "6 mm2", 6.0),
        ("mm2", "6 mm^2", 6.0),
        ("m2", "10000 mm2", 0.01),
        ("mm2", "0.06 cm2", 6.0),
        # A difference of one degree Celsius is one kelvin: SI brochure, section 2.3.1.
        ("%/K", "-0.26 %/°C", -0.26),
        ("V/K", "-80 mV/K", -0.08),
        ("A/K", "4 mA/K", 0.004),
        ("°C", "30 °C", 30.0),
        ("°C", "-10 degC", -10.0),
        ("°C", "30C", 30.0),
        # 1 ft = 0.3048 m and 1 in = 25.4 mm, exact since 1959.
        ("m", "10 ft", 3.048),
        ("mm", "1 in", 25.4),
        # One symbol carries one bit on a two-state line: common practice, no source.
        ("bit/s", "9600 Bd", 9600.0),
        ("bit/s", "115.2 kbit/s", 115200.0),
        ("%", "3 %", 3.0),
        ("1/km2/yr", "2.5 1/km2/yr", 2.5),
        ("1/km2/yr", "2.5 /km²/year", 2.5),
        ("1/km2/yr", "2.5 1/(km²·yr)", 2.5),
        ("Nm", "1.2 N·m", 1.2),
        ("years", "10 years", 10.0),
        ("ohm m", "100 Ω·m", 100.0),
        # A minus sign and a no-break space as word processors write them.
        ("°C", "\u221210 °C", -10.0),
        ("m", "25\u00a0m", 25.0),
        ("V", "1e3 V", 1000.0),
        ("V", 400, 400.0),
        ("V", 399.5, 399.5),
    ],
)
def test_a_quantity_is_held_in_the_unit_of_its_field(unit: str, written: Any, value: float) -> None:
    assert Unit(unit).read(written) == value


@pytest.mark.parametrize(
    ("key", "given_value", "error", "remedy"),
    [
        ("voltage_v", "25 mm", "quantity_unit", "write it in V"),
        ("voltage_v", "25 kv", "quantity_unit", "write the unit as kV"),
        ("voltage_v", "25", "quantity_unit", "write it in V"),
        ("voltage_v", "25 volts", "quantity_unit", "write it in V"),
        ("voltage_v", "25 m V 3", "quantity_unit", "write it in V"),
        ("length_m", "1,5 m", "quantity_number", "write a decimal point instead of the comma"),
        ("length_m", "1,500 m", "quantity_number", "or leave it out if it parts thousands"),
        ("length_m", "1 500 m", "quantity_number", "nothing between the thousands"),
        ("length_m", "5_000", "quantity_number", "nothing between the thousands"),
        ("length_m", "010", "quantity_number", "leave the leading zero out"),
        ("length_m", "m", "quantity_number", "write a number and its unit"),
        ("length_m", "", "quantity_number", "write a number and its unit"),
        ("length_m", ".5 m", "quantity_number", "write a number and its unit"),
        ("length_m", True, "quantity_number", "write a number and its unit"),
        ("length_m", [1], "quantity_number", "write a number and its unit"),
        ("length_m", {"m": 1}, "quantity_number", "write a number and its unit"),
        ("voltage_v", "1e400 V", "quantity_number", "finite"),
        ("voltage_v", "1e99999 V", "quantity_unit", "write it in V"),
        ("voltage_v", 10**400, "quantity_number", "finite"),
        ("coefficient", -0.26, "quantity_unit", "write the unit behind the number"),
        ("coefficient", "3 mA/K", "quantity_unit", "write it in %/K or V/K"),
    ],
)
def test_what_is_not_a_quantity_is_refused_with_a_remedy(key: str, given_value: Any, error: str, remedy: str) -> None:
    details = refusal(key, given_value)
    assert details["type"] == error
    assert remedy in details["ctx"]["remedy"]


def test_the_message_names_both_kinds() -> None:
    assert refusal("voltage_v", "25 mm")["msg"] == "`25 mm` is a length, expected a voltage in V"


@pytest.mark.parametrize("value", [float("inf"), float("-inf"), float("nan")])
def test_numbers_that_are_not_finite_are_refused(value: float) -> None:
    assert refusal("voltage_v", value)["type"] == "quantity_number"


@pytest.mark.parametrize(("written", "fits"), [(0, False), (1e-9, True), ("1 km", True), ("1000.001 m", False)])
def test_bounds_are_those_of_the_field(written: Any, fits: bool) -> None:
    if fits:
        read("length_m", written)
    else:
        assert refusal("length_m", written)["type"] == "quantity_range"


def test_an_inclusive_minimum_is_itself_allowed() -> None:
    assert Unit("m", minimum=0).read(0) == 0.0


@pytest.mark.parametrize(
    ("written", "quantity"),
    [
        ("-0.26 %/K", Quantity(-0.26, "%/K")),
        ("-80 mV/K", Quantity(-0.08, "V/K")),
        ("-0.12 V/°C", Quantity(-0.12, "V/K")),
    ],
)
def test_a_field_with_several_units_says_which(written: str, quantity: Quantity) -> None:
    assert read("coefficient", written) == quantity


def test_a_unit_that_nobody_knows_is_a_mistake_in_the_code() -> None:
    with pytest.raises(ValueError, match="furlong"):
        Unit("furlong")
    with pytest.raises(ValueError, match="cannot be turned"):
        convert(Decimal(1), "m", "V")


def test_milli_and_mega_are_not_mixed_up() -> None:
    milli, mega = measure("mW"), measure("MW")
    assert milli is not None
    assert mega is not None
    assert mega[1] / milli[1] == Decimal(10) ** 9


def test_the_schema_can_be_read_by_a_person() -> None:
    number, text, _ = Row.model_json_schema()["properties"]["length_m"]["anyOf"]
    assert number == {"type": "number", "exclusiveMinimum": 0, "maximum": 1000}
    written = {"25 m": True, "25m": True, "-1e3 km": True, "12 ft": True, "25": False, "25 V": False, "2,5 m": False}
    assert {each: bool(re.search(text["pattern"], each)) for each in written} == written


@settings(max_examples=30, deadline=None)
@given(st.decimals(min_value=-(10**6), max_value=10**6, places=4))
def test_a_prefix_moves_the_decimal_point_and_nothing_else(number: Decimal) -> None:
    assert Unit("V").read(f"{number} kV") == float(number.scaleb(3))
    assert Unit("V").read(f"{number} mV") == float(number.scaleb(-3))


@settings(max_examples=30, deadline=None)
@given(st.text(max_size=12) | st.from_regex(r"[-+]?[0-9.,]{0,5} ?[a-zA-Z%/²Ω]{0,4}", fullmatch=True))
def test_any_text_is_read_or_refused(text: str) -> None:
    try:
        result = read("voltage_v", text)
    except ValidationError as error:
        result = error.errors()[0]["type"]
    assert isinstance(result, float) or result in ("quantity_unit", "quantity_number")


@pytest.mark.parametrize(
    ("given_value", "converted"),
    [("104 °F", "(40.0 °C)"), ("14 F", "(-10.0 °C)"), ("-40 degF", "(-40.0 °C)")],
)
def test_degrees_fahrenheit_are_refused_with_the_value_in_degrees_celsius(given_value: str, converted: str) -> None:
    """t/°C = (t/°F - 32)/1.8 (NIST SP 811, appendix B)."""
    with pytest.raises(PydanticCustomError) as caught:
        Unit("°C").read(given_value)
    assert converted in str(caught.value)


def test_a_number_beyond_any_float_is_not_told_to_lack_a_unit() -> None:
    with pytest.raises(PydanticCustomError) as caught:
        Unit("°C").read("1e400")
    assert caught.value.type == "quantity_number"


@pytest.mark.parametrize("written", ["1e28 V", "1e10 kV", "1e-30 V", "-3e12 V", 1e300, "5e-324 V"])
def test_what_is_beyond_any_installation_is_refused(written: Any) -> None:
    """No formula has to hold a number that nobody means; 1 TV is a million times any line."""
    details = refusal("voltage_v", written)
    assert details["type"] == "quantity_size"
    assert "to be meant" in details["msg"]


@pytest.mark.parametrize(("written", "value"), [("1e-17 V", 1e-17), ("0 V", 0.0), ("9e11 V", 9e11)])
def test_what_is_small_or_large_is_taken(written: str, value: float) -> None:
    assert read("voltage_v", written) == value
