"""A battery: on the AC side with a converter of its own, or on the DC side of an inverter."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from typing import Annotated, Literal

from pydantic import Field, model_validator

from sld.spec.blocks.battery_circuit import BatteryCircuit
from sld.spec.blocks.block import Amperes, Kiloamperes, Placed, Text, Voltamperes, Volts, Watts, Wired
from sld.spec.blocks.circuit import AcCircuit
from sld.spec.blocks.mounting import Mounting
from sld.spec.fault import fault
from sld.spec.units import Unit
from sld.spec.usual import Doubt, Usual, doubt_of_ratio
from sld.words import phrase

__all__ = ["Battery"]

_HIGHEST_OVER_LOWEST = 2.0
"""Lead cells are charged to 2.4 V and discharged to 1.75 V, lithium cells to 4.2 V and 2.5 V (common practice, no
source)."""

Milliamperes = Annotated[float, Unit("mA", minimum=0)]


class Battery(Placed, Wired):
    """A battery: with a converter of its own on a board, or on the DC side of an inverter."""

    connected_to: Text | None = Field(
        default=None, description="Board, for a battery with its own converter. Left out where there is only one."
    )
    inverter: Text | None = Field(
        default=None, description="Inverter to whose battery terminals it is connected, instead of a board."
    )
    energy_wh: (
        Annotated[float, Unit("Wh", minimum=0, exclusive_minimum=True), Usual("10 kWh", "300 Wh", "100 MWh")] | None
    ) = Field(default=None, description="Usable energy.")
    charge_converter_power_w: Annotated[Watts, Usual("5 kW", "100 W", "10 MW")] | None = Field(
        default=None,
        description="Rated power of a separate DC/DC charge converter between the inverter's battery terminals and the "
        "battery; only with `inverter`. Left out, none is drawn.",
    )
    converter_power_va: Annotated[Voltamperes, Usual("5 kVA", "100 VA", "10 MVA")] | None = Field(
        default=None, description="Apparent power of its converter."
    )
    converter_current_max_a: Annotated[Amperes, Usual("22 A", "0.2 A", "20 kA")] | None = Field(
        default=None, description="Highest AC current of its converter. Left out, from its power."
    )
    converter_phases: Literal[1, 3] | None = Field(
        default=None, description="Number of phases of its converter. Left out, that of the board."
    )
    backup_power_va: Annotated[Voltamperes, Usual("5 kVA", "100 VA", "10 MVA")] | None = Field(
        default=None,
        description="Apparent power that its converter feeds while the public network is away, behind a "
        "`network_separation`. Left out, it is taken to switch off with the network.",
    )
    backup_short_circuit_current_a: Annotated[Amperes, Usual("30 A", "0.5 A", "10 kA")] | None = Field(
        default=None,
        description="Highest current of its converter into a fault while the network is away; with `backup_power`. "
        "Left out, only RCDs are taken to disconnect.",
    )
    galvanic_separation: bool = Field(default=False, description="At least simple separation in its converter.")
    dc_residual_current_ma: Annotated[Milliamperes, Usual("6 mA", "", "1 A")] | None = Field(
        default=None,
        description="Highest smooth DC residual current that the converter's maker declares; decides the RCD type.",
    )
    rated_voltage_v: Annotated[Volts, Usual("51.2 V", "12 V", "1.5 kV")] | None = Field(
        default=None, description="Nominal voltage of the cells in series."
    )
    voltage_max_v: Annotated[Volts, Usual("58 V", "13 V", "1.5 kV")] | None = Field(
        default=None, description="Highest voltage, at the end of charging; its devices must be rated for it."
    )
    voltage_min_v: Annotated[Volts, Usual("44 V", "9 V", "1.4 kV")] | None = Field(
        default=None, description="Lowest voltage at which it is discharged; there the current is highest."
    )
    current_max_a: Annotated[Amperes, Usual("100 A", "1 A", "5 kA")] | None = Field(
        default=None,
        description="Highest continuous current between battery and converter. Left out, the power of the converter at "
        "`voltage_min`.",
    )
    short_circuit_current_ka: Annotated[Kiloamperes, Usual("4 kA", "0.1 kA", "200 kA")] | None = Field(
        default=None, description="Prospective short-circuit current at its terminals, by its maker."
    )
    earthed_pole: Literal["plus", "minus"] | None = Field(
        default=None, description="Pole that is connected to earth. Left out, none is: both poles need a fuse."
    )
    protection_rated_current_a: Annotated[Amperes, Usual("125 A", "1 A", "5 kA")] | None = Field(
        default=None,
        description="Rated current of the fuse or circuit-breaker built into it ahead of its terminals. Left out, it "
        "has none.",
    )
    isolator_built_in: bool = Field(
        default=False, description="Has a switch-disconnector of its own, opened by hand, in all poles."
    )
    dc_circuit: BatteryCircuit | None = Field(
        default=None,
        description="Devices and cables from the battery to its converter, in this order. Left out, the direct current "
        "of the battery is neither drawn nor checked, and a note says so.",
    )
    serial_number: Text | None = Field(default=None, description="Serial number.")
    mounting: Mounting | None = Field(default=None, description="What its maker states about mounting.")
    circuit: AcCircuit | None = Field(
        default=None, description="Devices and cables from the board to the converter. Left out, a breaker is assumed."
    )

    def doubts(self) -> Iterator[Doubt]:
        """Yield what is unusual, and a highest voltage far above the lowest."""
        yield from super().doubts()
        if self.voltage_max_v is not None and self.voltage_min_v:
            what, asked = phrase("highest over lowest voltage of the battery"), "is a digit of one of them wrong?"
            ratio = self.voltage_max_v / self.voltage_min_v
            if doubt := doubt_of_ratio("voltage_max", what, ratio, (1, _HIGHEST_OVER_LOWEST), asked):
                yield doubt

    @model_validator(mode="after")
    def _charged_on_one_side(self) -> Battery:
        if self.charge_converter_power_w is not None and self.inverter is None:
            message = "a DC/DC charge converter stands between a battery and an inverter, and no `inverter` is given"
            raise fault(
                message, "give `inverter`, or `converter_power` for a converter on a board", "charge_converter_power"
            )
        return self

    @model_validator(mode="after")
    def _backed_up_by_its_own_converter(self) -> Battery:
        if self.backup_power_va is not None and self.inverter is not None:
            message = "a battery at the terminals of an inverter feeds nothing by itself while the network is away"
            raise fault(message, "give `backup` in the type of the inverter", "backup_power")
        if self.backup_short_circuit_current_a is not None and self.backup_power_va is None:
            message = "a current into faults while the network is away is given, and no `backup_power`"
            raise fault(message, "give `backup_power`, by the data sheet", "backup_short_circuit_current")
        return self

    @model_validator(mode="after")
    def _voltages_in_order(self) -> Battery:
        given = (("voltage_min", self.voltage_min_v), ("rated_voltage", self.rated_voltage_v),
                 ("voltage_max", self.voltage_max_v))  # fmt: skip
        rising = [(key, volts) for key, volts in given if volts is not None]
        for (lower, low_v), (upper, high_v) in pairwise(rising):
            if low_v > high_v:
                message = f"`{lower}` of the battery, {low_v:g} V, is above its `{upper}`, {high_v:g} V"
                raise fault(message, "compare both with its data sheet", lower)
        return self
