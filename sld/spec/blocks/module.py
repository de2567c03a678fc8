"""A type of PV module: the values of its data sheet at standard test conditions."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, Literal

from pydantic import Field, model_validator

from sld.spec.blocks.block import Amperes, Block, Celsius, Text, Volts, Watts, usual_of
from sld.spec.blocks.coefficient import CurrentCoefficient, PowerCoefficient, VoltageCoefficient
from sld.spec.blocks.single_diode import SingleDiode
from sld.spec.fault import fault
from sld.spec.units import Quantity, Unit
from sld.spec.usual import Doubt, Usual, doubt_of, doubt_of_ratio
from sld.words import phrase

__all__ = ["ModuleType"]

_FILL_FACTOR = (0.5, 0.9)
"""Usual fill factors: those of all 21 535 modules of an open list lie between 0.51 and 0.83 (`tests/reference`)."""
_MOST_PERCENT_PER_K = 0.5
"""Several times the largest coefficient of the short-circuit current of any cell (common practice, no source)."""


class ModuleType(Block):
    """Data sheet values of a PV module. Voltage, current and power at standard test conditions."""

    make: Text | None = Field(default=None, description="Manufacturer.")
    model: Text | None = Field(default=None, description="Model name. Left out, the name of the type.")
    technology: Literal["crystalline_silicon", "thin_film"] = Field(
        default="crystalline_silicon", description="Cell technology."
    )
    rated_power_w: Annotated[Watts, Usual("400 W", "5 W", "1 kW")] = Field(description="Rated power.")
    open_circuit_voltage_v: Annotated[Volts, Usual("37 V", "2 V", "300 V")] = Field(description="Open-circuit voltage.")
    short_circuit_current_a: Annotated[Amperes, Usual("13.7 A", "0.3 A", "30 A")] = Field(
        description="Short-circuit current."
    )
    mpp_voltage_v: Annotated[Volts, Usual("31 V", "1.5 V", "250 V")] = Field(description="Voltage at maximum power.")
    mpp_current_a: Annotated[Amperes, Usual("12.9 A", "0.3 A", "30 A")] = Field(description="Current at maximum power.")
    voltage_coefficient: Annotated[VoltageCoefficient, Usual("-0.27 %/K", "-0.6 %/K", "-0.15 %/K")] | None = Field(
        default=None,
        description="Temperature coefficient of the open-circuit voltage, 0 or below. Left out, "
        "the single-diode data are used, or a cautious factor for the lowest temperature.",
    )
    voltage_tolerance_percent: Annotated[float, Unit("%", minimum=0, maximum=20), Usual("3 %")] | None = Field(
        default=None, description="Tolerance of the open-circuit voltage that the maker states, upwards."
    )
    current_coefficient: Annotated[CurrentCoefficient, Usual("0.05 %/K", "-0.02 %/K", "0.15 %/K")] | None = Field(
        default=None,
        description="Temperature coefficient of the short-circuit current. Left out, 0.05 %/K is assumed.",
    )
    power_coefficient: Annotated[PowerCoefficient, Usual("-0.34 %/K", "-0.7 %/K", "-0.15 %/K")] | None = Field(
        default=None,
        description="Temperature coefficient of the power, 0 or below. Left out, -0.5 %/K is assumed.",
    )
    mpp_voltage_coefficient: Annotated[VoltageCoefficient, Usual("-0.33 %/K", "-0.7 %/K", "-0.15 %/K")] | None = Field(
        default=None,
        description="Temperature coefficient of the voltage at maximum power, 0 or below, if the data sheet has it.",
    )
    system_voltage_max_v: Annotated[Volts, Usual("1000 V", "30 V", "2 kV")] = Field(
        default=1000.0, description="Highest system voltage of the module."
    )
    series_fuse_max_a: Annotated[Amperes, Usual("25 A", "3 A", "60 A")] | None = Field(
        default=None, description="Largest overcurrent protection that the maker allows for one string."
    )
    connector_current_max_a: Annotated[Amperes, Usual("30 A", "5 A", "100 A")] | None = Field(
        default=None, description="Rated current of the plug connectors of the module."
    )
    protection_class: Literal["0", "II", "III"] = Field(
        default="II", description="Protection class of the module against electric shock (IEC 61730-1)."
    )
    parallel_unfused_max: Annotated[int, Field(ge=1)] | None = Field(
        default=None, description="Most strings in parallel without fuses, if the maker states it."
    )
    bifaciality_percent: Annotated[float, Unit("%", minimum=0, maximum=100), Usual("70 %")] | None = Field(
        default=None, description="Bifaciality factor; given only for bifacial modules."
    )
    nominal_cell_temperature_c: Annotated[Celsius, Usual("45 °C", "30 °C", "70 °C")] | None = Field(
        default=None,
        description="Nominal operating cell temperature (NOCT/NMOT). The hotter one of it and "
        "of the mounting gives the lowest MPP voltage.",
    )
    single_diode: SingleDiode | None = Field(
        default=None, description="Reference values of the single-diode model, if a module database gives them."
    )

    @model_validator(mode="after")
    def _one_module(self) -> ModuleType:
        """Refuse values that cannot belong to one module; a slip of a key or a digit is caught here."""
        if self.mpp_voltage_v >= self.open_circuit_voltage_v:
            message = f"the MPP voltage {self.mpp_voltage_v:g} V is not below the open-circuit voltage"
            raise fault(message, "compare `mpp_voltage` and `open_circuit_voltage` with the data sheet", "mpp_voltage")
        if self.mpp_current_a >= self.short_circuit_current_a:
            message = f"the MPP current {self.mpp_current_a:g} A is not below the short-circuit current"
            raise fault(message, "compare `mpp_current` and `short_circuit_current` with the data sheet", "mpp_current")
        product_w = self.mpp_voltage_v * self.mpp_current_a
        if abs(product_w / self.rated_power_w - 1) > 0.1:
            message = f"rated power {self.rated_power_w:g} W is not MPP voltage times current, {product_w:.0f} W"
            raise fault(message, "compare the three values with the data sheet", "rated_power")
        self._check_photocurrent()
        for key, coefficient, percent in self._in_percent_per_k():
            least, most = (-_MOST_PERCENT_PER_K, _MOST_PERCENT_PER_K) if key == "current_coefficient" else (-1.0, 0.0)
            if not least <= percent <= most:
                message = f"a coefficient of {coefficient} is {percent:.3g} %/K, outside {least:g} to {most:g} %/K"
                raise fault(message, "compare number, sign and unit with the data sheet", key)
        return self

    def doubts(self) -> Iterator[Doubt]:
        """Yield what is unusual, coefficients in V/K or A/K after conversion, and the fill factor of the four values.

        The range of the voltage coefficient refuses 5 of 20 946 crystalline modules of an open list (0.02 %), which
        share one slip of that list, and no thin-film one; that of the current coefficient asks about 0.9 % of all, half
        of them with a sign that no crystalline cell has (`tests/reference`).
        """
        yield from super().doubts()
        for key, coefficient, percent in self._in_percent_per_k():
            if coefficient.unit != "%/K":
                usual = usual_of(type(self))[key].usual
                asked = "is it meant in %/K?" if usual.holds(coefficient.value, "%/K") else ""
                if doubt := doubt_of(key, percent, "%/K", usual, asked):
                    yield doubt
        ratio = self.mpp_voltage_v * self.mpp_current_a / (self.open_circuit_voltage_v * self.short_circuit_current_a)
        asked = "are the four values of one module?"
        if doubt := doubt_of_ratio("open_circuit_voltage", phrase("fill factor"), ratio, _FILL_FACTOR, asked):
            yield doubt

    def _check_photocurrent(self) -> None:
        """Refuse a photocurrent that belongs to no module with this Isc."""
        isc_a = self.short_circuit_current_a
        if self.single_diode is not None and not 0.5 <= self.single_diode.photocurrent_a / isc_a <= 2:
            message = (
                f"the photocurrent {self.single_diode.photocurrent_a:g} A is far from the short-circuit current "
                f"{isc_a:g} A, which it nearly equals in every module"
            )
            raise fault(
                message, "compare `photocurrent` with the module database, and its unit", "single_diode.photocurrent"
            )

    def _in_percent_per_k(self) -> Iterator[tuple[str, Quantity, float]]:
        """Yield key, value and value in %/K of the coefficients that are given."""
        found = (
            ("voltage_coefficient", self.voltage_coefficient, self.open_circuit_voltage_v),
            ("power_coefficient", self.power_coefficient, self.rated_power_w),
            ("mpp_voltage_coefficient", self.mpp_voltage_coefficient, self.mpp_voltage_v),
            ("current_coefficient", self.current_coefficient, self.short_circuit_current_a),
        )
        for key, value, stc in found:
            if value is not None:
                yield key, value, value.value if value.unit == "%/K" else 100 * value.value / stc
