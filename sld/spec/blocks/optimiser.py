"""Power optimisers at the modules of a string."""

from __future__ import annotations

from math import ceil
from typing import Annotated, Literal

from pydantic import Field

from sld.spec.blocks.block import Amperes, Volts, Watts
from sld.spec.blocks.installed import Installed
from sld.spec.usual import Usual

__all__ = ["Optimiser"]


class Optimiser(Installed):
    """The power optimisers (DC/DC converters) of a string, one for each module or each few in series, all alike."""

    kind: Literal["optimiser"]
    modules_per_unit: Annotated[int, Field(ge=1, le=4)] = Field(
        default=1, description="Modules in series at the input of each unit."
    )
    rated_power_w: Annotated[Watts, Usual("500 W", "100 W", "3 kW")] | None = Field(
        default=None, description="Rated input power of a unit."
    )
    input_voltage_max_v: Annotated[Volts, Usual("60 V", "20 V", "300 V")] | None = Field(
        default=None, description="Highest input voltage of a unit."
    )
    input_current_max_a: Annotated[Amperes, Usual("15 A", "5 A", "40 A")] | None = Field(
        default=None, description="Highest short-circuit current of the modules at its input."
    )
    short_circuit_limit_for: Literal["standard_conditions", "largest_current"] | None = Field(
        default=None,
        description="What the data sheet compares that limit with: Isc of the modules at standard test conditions, or "
        "the largest that can flow. Left out, the largest is compared.",
    )
    output_voltage_max_v: Annotated[Volts, Usual("60 V", "20 V", "300 V")] | None = Field(
        default=None, description="Highest output voltage of a unit."
    )
    output_current_max_a: Annotated[Amperes, Usual("15 A", "5 A", "40 A")] | None = Field(
        default=None, description="Highest output current of a unit, which is that of the string."
    )
    string_voltage_v: Annotated[Volts, Usual("750 V", "100 V", "1.5 kV")] | None = Field(
        default=None, description="Fixed voltage that the string is held at in operation, if its maker states one."
    )
    string_voltage_max_v: Annotated[Volts, Usual("1000 V", "100 V", "1.5 kV")] | None = Field(
        default=None,
        description="Highest voltage of a string of these units by their maker. Left out, the highest output voltages "
        "of all units are added.",
    )
    units_min: Annotated[int, Field(ge=1, le=100)] | None = Field(default=None, description="Least units in a string.")
    units_max: Annotated[int, Field(ge=1, le=100)] | None = Field(default=None, description="Most units in a string.")
    string_power_max_w: Annotated[Watts, Usual("12 kW", "500 W", "50 kW")] | None = Field(
        default=None, description="Highest power of the modules of a string."
    )
    parallel_unfused_max: Annotated[int, Field(ge=1, le=50)] | None = Field(
        default=None, description="Most strings in parallel without fuses, if its maker states it."
    )
    rapid_shutdown: bool = Field(
        default=False, description="Takes the voltage off the string by itself when the inverter stops."
    )

    def units_of(self, modules_count: int) -> int:
        """Return how many units a string of so many modules has."""
        return ceil(modules_count / self.modules_per_unit)
