"""What an inverter is set to for the network: the set of settings by name and edition, and its characteristics."""

from __future__ import annotations

from itertools import pairwise
from typing import Annotated, Literal

from pydantic import Field, model_validator

from sld.spec.blocks.block import Block, Text
from sld.spec.fault import fault
from sld.spec.units import Unit
from sld.spec.usual import Usual

__all__ = ["NetworkSettings", "PowerPoint", "VoltagePoint"]


class VoltagePoint(Block):
    """A point of the characteristic of reactive power over voltage, Q(U)."""

    voltage_percent: Annotated[float, Unit("%", minimum=0, maximum=200), Usual("107 %", "80 %", "120 %")] = Field(
        description="Voltage in percent of the nominal one."
    )
    reactive_power_percent: Annotated[float, Unit("%", minimum=-100, maximum=100), Usual("-33 %")] = Field(
        description="Reactive power in percent of the highest apparent power: above 0 supplied, below 0 absorbed."
    )


class PowerPoint(Block):
    """A point of the characteristic of the power factor over active power, cos φ(P)."""

    power_percent: Annotated[float, Unit("%", minimum=0, maximum=100), Usual("50 %")] = Field(
        description="Active power in percent of the rated one."
    )
    power_factor: Annotated[float, Field(gt=0, le=1)] = Field(description="Power factor there.")
    reactive_power: Literal["supplied", "absorbed"] | None = Field(
        default=None, description="Whether reactive power is supplied to the network there, or absorbed."
    )


class NetworkSettings(Block):
    """The settings to select at commissioning. Nothing of them is checked against the inverter itself."""

    set: Text = Field(description="Name of the set, as the network operator or the inverter has it.")
    edition: Text | None = Field(default=None, description="Edition of the document that it is from.")
    q_of_u: list[VoltagePoint] = Field(
        default=[], description="Points of the characteristic Q(U), from the lowest voltage up."
    )
    power_factor_of_power: list[PowerPoint] = Field(
        default=[], description="Points of the characteristic cos φ(P), from the lowest power up."
    )

    @model_validator(mode="after")
    def _rising(self) -> NetworkSettings:
        for here, there in pairwise(self.q_of_u):
            if there.voltage_percent <= here.voltage_percent:
                message = (
                    f"a point at {there.voltage_percent:g} % of the voltage follows one at {here.voltage_percent:g} %"
                )
                raise fault(message, "write the points from the lowest voltage up, each voltage once", "q_of_u")
        for before, after in pairwise(self.power_factor_of_power):
            if after.power_percent <= before.power_percent:
                message = f"a point at {after.power_percent:g} % of the power follows one at {before.power_percent:g} %"
                raise fault(message, "write the points from the lowest power up, each once", "power_factor_of_power")
        return self
