"""A type of PV module: the values of its data sheet at standard test conditions."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, model_validator

from sld.spec.blocks.block import Amperes, Block, Celsius, Text, Volts, Watts
from sld.spec.blocks.coefficient import CurrentCoefficient, PowerCoefficient, VoltageCoefficient
from sld.spec.blocks.single_diode import SingleDiode
from sld.spec.fault import fault
from sld.spec.units import Quantity, Unit

__all__ = ["ModuleType"]

_MOST_PERCENT_PER_K = 0.5
"""Several times the largest coefficient of the short-circuit current of any cell (common practice, no source)."""


class ModuleType(Block):
    """Data sheet values of a PV module. Voltage, current and power at standard test conditions."""

    make: Text | None = Field(default=None, description="Manufacturer.")
    model: Text | None = Field(default=None, description="Model name. Left out, the name of the type.")
    technology: Literal["crystalline_silicon", "thin_film"] = Field(
        default="crystalline_silicon", description="Cell technology."
    )
    rated_power_w: Watts = Field(description="Rated power.")
    open_circuit_voltage_v: Volts = Field(description="Open-circuit voltage.")
    short_circuit_current_a: Amperes = Field(description="Short-circuit current.")
    mpp_voltage_v: Volts = Field(description="Voltage at maximum power.")
    mpp_current_a: Amperes = Field(description="Current at maximum power.")
    voltage_coefficient: VoltageCoefficient | None = Field(
        default=None,
        description="Temperature coefficient of the open-circuit voltage, 0 or below: -0.26 %/K or -98 mV/K. Left out, "
        "the single-diode data are used, or a cautious factor for the lowest temperature.",
    )
    voltage_tolerance_percent: Annotated[float, Unit("%", minimum=0, maximum=20)] | None = Field(
        default=None, description="Tolerance of the open-circuit voltage that the maker states, upwards: 3 %."
    )
    current_coefficient: CurrentCoefficient | None = Field(
        default=None,
        description="Temperature coefficient of the short-circuit current: 0.05 %/K or 7 mA/K. Left out, "
        "0.05 %/K is assumed.",
    )
    power_coefficient: PowerCoefficient | None = Field(
        default=None,
        description="Temperature coefficient of the power, 0 or below: -0.34 %/K. Left out, -0.5 %/K is assumed.",
    )
    mpp_voltage_coefficient: VoltageCoefficient | None = Field(
        default=None,
        description="Temperature coefficient of the voltage at maximum power, 0 or below, if the data sheet has it.",
    )
    system_voltage_max_v: Volts = Field(default=1000.0, description="Highest system voltage of the module.")
    series_fuse_max_a: Amperes | None = Field(
        default=None, description="Largest overcurrent protection that the maker allows for one string."
    )
    connector_current_max_a: Amperes | None = Field(
        default=None, description="Rated current of the plug connectors of the module."
    )
    protection_class: Literal["0", "II", "III"] = Field(
        default="II", description="Protection class of the module against electric shock (IEC 61730-1)."
    )
    parallel_unfused_max: Annotated[int, Field(ge=1)] | None = Field(
        default=None, description="Most strings in parallel without fuses, if the maker states it."
    )
    bifaciality_percent: Annotated[float, Unit("%", minimum=0, maximum=100)] | None = Field(
        default=None, description="Bifaciality factor; given only for bifacial modules."
    )
    nominal_cell_temperature_c: Celsius | None = Field(
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
        self._check_currents()
        for key, coefficient, least, stc in self._coefficients():
            percent = coefficient.value if coefficient.unit == "%/K" else 100 * coefficient.value / stc
            if not least <= percent <= 0:
                message = f"a coefficient of {coefficient} is {percent:.2f} %/K, outside {least:g} to 0 %/K"
                raise fault(message, "check sign and unit: usual values are -0.2 to -0.5 %/K", key)
        return self

    def _check_currents(self) -> None:
        """Refuse a coefficient of the current and a photocurrent that belong to no module with this Isc."""
        alpha, isc_a = self.current_coefficient, self.short_circuit_current_a
        if alpha is not None:
            percent = alpha.value if alpha.unit == "%/K" else 100 * alpha.value / isc_a
            if abs(percent) > _MOST_PERCENT_PER_K:
                message = f"a coefficient of {alpha} is {percent:.3g} %/K, outside ±{_MOST_PERCENT_PER_K:g} %/K"
                raise fault(message, "check number and unit: usual values are 0.03 to 0.1 %/K", "current_coefficient")
        if self.single_diode is not None and not 0.5 <= self.single_diode.photocurrent_a / isc_a <= 2:
            message = (
                f"the photocurrent {self.single_diode.photocurrent_a:g} A is far from the short-circuit current "
                f"{isc_a:g} A, which it nearly equals in every module"
            )
            raise fault(
                message, "compare `photocurrent` with the module database, and its unit", "single_diode.photocurrent"
            )

    def _coefficients(self) -> list[tuple[str, Quantity, float, float]]:
        """Return key, value, least %/K and value at STC of the coefficients that are negative in every module."""
        found = (
            ("voltage_coefficient", self.voltage_coefficient, self.open_circuit_voltage_v),
            ("power_coefficient", self.power_coefficient, self.rated_power_w),
            ("mpp_voltage_coefficient", self.mpp_voltage_coefficient, self.mpp_voltage_v),
        )
        return [(key, value, -1.0, stc) for key, value, stc in found if value is not None]
