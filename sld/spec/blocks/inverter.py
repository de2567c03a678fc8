"""A type of inverter, and an inverter of the installation with its inputs."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, Literal

from pydantic import Field, model_validator

from sld.spec.blocks.backup import BackupOutput
from sld.spec.blocks.block import (
    Amperes,
    Block,
    Line,
    Metres,
    Ohms,
    Placed,
    SquareMillimetres,
    Text,
    Voltamperes,
    Volts,
    Watts,
    Wired,
)
from sld.spec.blocks.certificate import Certificate
from sld.spec.blocks.circuit import AcCircuit
from sld.spec.blocks.data_bus import FeedInLimit
from sld.spec.blocks.mounting import Mounting
from sld.spec.blocks.network_settings import NetworkSettings
from sld.spec.blocks.string import Input
from sld.spec.fault import fault
from sld.spec.units import Unit
from sld.spec.usual import Doubt, Usual, doubt_of_ratio
from sld.words import phrase

__all__ = ["Inverter", "InverterBus", "InverterType", "MppInput"]

_SHORT_CIRCUIT_OVER_OPERATING = (1.0, 5.0)
_HIGHEST_OVER_MPP = 3.0
"""Limits of data sheets over one another (common practice, no source)."""

Milliamperes = Annotated[float, Unit("mA", minimum=0)]


class MppInput(Block):
    """One or more equal inputs with their own MPP tracker."""

    count: Annotated[int, Field(ge=1, le=100)] = Field(default=1, description="How many inputs have these limits.")
    current_max_a: Annotated[Amperes, Usual("16 A", "1 A", "10 kA")] = Field(description="Highest operating current.")
    short_circuit_current_max_a: Annotated[Amperes, Usual("22 A", "1 A", "12 kA")] = Field(
        description="Highest short-circuit current."
    )
    short_circuit_limit_for: Literal["standard_conditions", "largest_current"] | None = Field(
        default=None,
        description="What the data sheet compares that limit with: Isc of the array at standard test conditions, or "
        "the largest short-circuit current that can flow (Isc PV of IEC 62109-1). Left out, the largest is compared.",
    )
    terminal_current_max_a: Annotated[Amperes, Usual("16 A", "1 A", "10 kA")] | None = Field(
        default=None,
        description="Highest current of one pair of terminals, where the maker states one below that of the input.",
    )
    strings_max: Annotated[int, Field(ge=1)] | None = Field(
        default=None, description="Pairs of terminals: strings that fit."
    )

    def doubts(self) -> Iterator[Doubt]:
        """Yield what is unusual, and a short-circuit limit that is far from the operating limit."""
        yield from super().doubts()
        what = phrase("short-circuit limit over operating limit of the input")
        asked = "is a digit of one of them wrong?"
        ratio = self.short_circuit_current_max_a / self.current_max_a
        if doubt := doubt_of_ratio("short_circuit_current_max", what, ratio, _SHORT_CIRCUIT_OVER_OPERATING, asked):
            yield doubt


class InverterBus(Block):
    """What the data sheet states about the data bus."""

    units_max: Annotated[int, Field(ge=1)] | None = Field(default=None, description="Most inverters on one chain.")
    distance_max_m: Annotated[Metres, Usual("100 m", "", "10 km")] | None = Field(
        default=None, description="Longest cable between two neighbours of a chain."
    )
    length_max_m: Annotated[Metres, Usual("1000 m", "", "10 km")] | None = Field(
        default=None, description="Longest chain in all."
    )
    unit_load: Annotated[float, Field(gt=0, le=32)] = Field(default=1.0, description="Unit loads on the bus.")
    termination_built_in: bool = Field(default=False, description="Has a switchable terminating resistor.")
    exclusive: list[Text] = Field(
        default=[], description="Interfaces that cannot serve while a chain is in use, for example `ethernet`."
    )


class InverterType(Block):
    """Data sheet values of an inverter."""

    make: Text | None = Field(default=None, description="Manufacturer.")
    model: Text | None = Field(default=None, description="Model name. Left out, the name of the type.")
    rated_power_w: Annotated[Watts, Usual("12 kW", "100 W", "10 MW")] = Field(description="Rated AC power.")
    apparent_power_max_va: Annotated[Voltamperes, Usual("12 kVA", "100 VA", "12 MVA")] | None = Field(
        default=None, description="Highest apparent power. Left out, the rated power."
    )
    phases: Literal[1, 3] = Field(description="Number of phases.")
    micro: bool = Field(
        default=False,
        description="Micro-inverter: for one or a few modules, beside them, with inputs for one or two each.",
    )
    plugs_disconnect: bool = Field(
        default=False,
        description="Of a micro-inverter: its maker declares its DC plug connectors as the means to disconnect it from "
        "its modules, so that it needs no DC isolator.",
    )
    rated_voltage_v: Annotated[Volts, Usual("400 V", "100 V", "1 kV")] | None = Field(
        default=None, description="Rated AC voltage. Left out, that of the supply."
    )
    needs_neutral: bool | None = Field(
        default=None,
        description="Its AC terminals take a neutral. Left out, it is not known; one with three phases may do without.",
    )
    current_max_a: Annotated[Amperes, Usual("18.2 A", "0.2 A", "20 kA")] | None = Field(
        default=None, description="Highest continuous AC current per line conductor. Left out, from the power."
    )
    terminal_section_max_mm2: Annotated[SquareMillimetres, Usual("16 mm2", "0.5 mm2", "1200 mm2")] | None = Field(
        default=None, description="Largest section of a conductor that its AC terminals take."
    )
    dc_voltage_max_v: Annotated[Volts, Usual("1000 V", "20 V", "2 kV")] = Field(
        description="Highest DC input voltage: above it the inverter may be destroyed."
    )
    start_voltage_v: Annotated[Volts, Usual("180 V", "5 V", "2 kV")] | None = Field(
        default=None, description="Voltage at which it starts."
    )
    shutdown_voltage_v: Annotated[Volts, Usual("120 V", "5 V", "2 kV")] | None = Field(
        default=None, description="Voltage below which it stops."
    )
    mpp_voltage_min_v: Annotated[Volts, Usual("160 V", "5 V", "2 kV")] = Field(
        description="Lower end of the MPP range."
    )
    mpp_voltage_max_v: Annotated[Volts, Usual("850 V", "10 V", "2 kV")] = Field(
        description="Upper end of the MPP range."
    )
    inputs: Annotated[list[MppInput], Field(min_length=1)] = Field(description="The MPP inputs and their limits.")
    inputs_independent: bool = Field(default=True, description="No current can flow from one input into another.")
    dc_power_max_w: Annotated[Watts, Usual("18 kW", "100 W", "30 MW")] | None = Field(
        default=None, description="Highest array power that the maker recommends."
    )
    backfeed_current_a: Annotated[float, Unit("A", minimum=0), Usual("0 A", "", "1 kA")] = Field(
        default=0.0, description="Highest current from the inverter back into the array."
    )
    galvanic_separation: bool = Field(default=False, description="At least simple separation between DC and AC.")
    dc_impulse_withstand_v: Annotated[Volts, Usual("4 kV", "500 V", "15 kV")] | None = Field(
        default=None, description="Rated impulse withstand voltage of the DC side. Left out, by the array voltage."
    )
    insulation_threshold_ohm: Annotated[Ohms, Usual("20 kohm", "500 ohm", "50 Mohm")] | None = Field(
        default=None, description="Insulation resistance of the array below which it does not start."
    )
    residual_current_monitor_ma: Annotated[Milliamperes, Usual("300 mA", "5 mA", "10 A")] | None = Field(
        default=None, description="Continuous residual current at which it disconnects."
    )
    arc_fault_protection: bool = Field(default=False, description="Has DC arc-fault protection built in.")
    ground_fault_protection: bool | None = Field(
        default=None,
        description="Detects, interrupts and reports earth faults of the array, as NEC 690.41(B) asks. Left out, it is "
        "not known.",
    )
    dc_switch: bool = Field(default=False, description="Has a built-in DC switch-disconnector.")
    dc_surge_protection: Literal["none", "1", "2", "1+2"] = Field(
        default="none", description="Built-in DC surge protection, by type."
    )
    ac_surge_protection: Literal["none", "1", "2", "1+2"] = Field(
        default="none", description="Built-in AC surge protection, by type."
    )
    dc_residual_current_ma: Annotated[Milliamperes, Usual("6 mA", "", "1 A")] | None = Field(
        default=None, description="Highest smooth DC residual current that the maker declares; decides the RCD type."
    )
    own_residual_device: bool = Field(
        default=False, description="The maker asks that an RCD, where there is one, serves one inverter alone."
    )
    leakage_current_ma: Annotated[Milliamperes, Usual("9 mA", "", "10 A")] | None = Field(
        default=None, description="Protective conductor current in operation."
    )
    interface_protection: bool = Field(
        default=True,
        description="Network and system protection built in. Left out, it is assumed to be built in, "
        "unless a circuit has `interface_protection`.",
    )
    power_factor_min: Annotated[float, Field(gt=0, le=1)] | None = Field(
        default=None, description="Lowest power factor it can run at."
    )
    backup: BackupOutput | None = Field(
        default=None, description="Its backup output, if it has one; a board with `fed_from_backup` is connected to it."
    )
    bus: InverterBus | None = Field(default=None, description="Limits of its data bus.")
    certificates: list[Certificate] = Field(
        default=[], description="Certificates, type tests and entries in registers, as the network operator asks."
    )
    mounting: Mounting | None = Field(default=None, description="What its maker states about mounting.")
    discharge_time_s: Annotated[float, Unit("s", minimum=0), Usual("300 s", "", "3600 s")] | None = Field(
        default=None, description="Time that its maker states for its capacitors to discharge after isolation."
    )
    switching_on: list[Text] = Field(
        default=[], description="Steps of switching on in the order that its maker states; each entry is a step."
    )

    def doubts(self) -> Iterator[Doubt]:
        """Yield what is unusual, and a highest voltage far above the MPP range."""
        yield from super().doubts()
        what, asked = phrase("highest DC voltage over the end of the MPP range"), "is a digit of one of them wrong?"
        ratio = self.dc_voltage_max_v / self.mpp_voltage_max_v
        if doubt := doubt_of_ratio("dc_voltage_max", what, ratio, (0, _HIGHEST_OVER_MPP), asked):
            yield doubt

    @model_validator(mode="after")
    def _in_order(self) -> InverterType:
        if self.mpp_voltage_min_v >= self.mpp_voltage_max_v:
            message = f"the MPP range from {self.mpp_voltage_min_v:g} V to {self.mpp_voltage_max_v:g} V is empty"
            raise fault(message, "give the lower and the upper end of the MPP range", "mpp_voltage_min")
        if self.plugs_disconnect and not self.micro:
            message = "plug connectors disconnect a micro-inverter alone, and this is none"
            raise fault(message, "give `micro: true`, or remove the key", "plugs_disconnect")
        if self.mpp_voltage_max_v > self.dc_voltage_max_v:
            message = f"the MPP range ends at {self.mpp_voltage_max_v:g} V, above the highest DC voltage"
            raise fault(
                message, "compare `mpp_voltage_max` and `dc_voltage_max` with the data sheet", "mpp_voltage_max"
            )
        return self


class Inverter(Placed, Wired):
    """An inverter of the installation."""

    type: Text = Field(description="Name of an inverter type.")
    count: Annotated[int, Field(ge=1, le=1000)] = Field(
        default=1, description="Number of equal inverters; they are named NAME-1, NAME-2, ..."
    )
    connected_to: Text | None = Field(
        default=None, description="Board that it feeds. Left out where there is only one."
    )
    line: Line | None = Field(
        default=None,
        description="Line conductor of a single-phase inverter on three phases, or the two that it works between. Left "
        "out, all such are summed on one.",
    )
    circuit: AcCircuit | None = Field(
        default=None,
        description="Devices and cables from the board to the inverter, in this order. Left out, a circuit-breaker and "
        "an isolator are assumed.",
    )
    inputs: Annotated[list[Input], Field(min_length=1)] = Field(
        description="What is connected to its inputs; the first entry is input 1."
    )
    power_limit_w: Annotated[Watts, Usual("10 kW", "", "10 MW")] | None = Field(
        default=None, description="Power it is limited to by setting."
    )
    charging_current_max_a: Annotated[float, Unit("A", minimum=0), Usual("10 A", "", "1 kA")] | None = Field(
        default=None,
        description="Highest current, per line conductor, that it draws from the network to charge a battery, by its "
        "maker or as set; 0 A where it charges from its modules alone. Left out, its rated current.",
    )
    power_factor: Annotated[float, Field(gt=0, le=1)] = Field(default=1.0, description="Power factor it is set to.")
    reactive_power: Literal["supplied", "absorbed"] | None = Field(
        default=None,
        description="Whether it supplies reactive power to the network at that power factor, which lifts the voltage, "
        "or absorbs it, which lowers it. Left out, supplied is reckoned with.",
    )
    feed_in_limit: FeedInLimit | None = Field(
        default=None, description="Feed-in limiter inside the inverter: the meter it measures by, what it turns down."
    )
    serial_numbers: list[Text] = Field(
        default=[],
        description="Serial numbers, with a `count` in the order of its copies; blanks are printed for those left out.",
    )
    firmware: Text | None = Field(default=None, description="Version of its firmware.")
    network_settings: NetworkSettings | None = Field(
        default=None, description="Set of network settings to select at commissioning, with its characteristics."
    )
    grid_code: Text | None = Field(default=None, description="Name of the network setting to select at commissioning.")

    @property
    def named_settings(self) -> str:
        """Return the name of the set of network settings, in whichever way it is given; empty where it is not."""
        return self.network_settings.set if self.network_settings else self.grid_code or ""

    @model_validator(mode="after")
    def _a_serial_number_for_each(self) -> Inverter:
        if len(self.serial_numbers) > self.count:
            message = f"{len(self.serial_numbers)} serial numbers are given for {self.count} of these inverters"
            raise fault(message, "give one for each, in the order of the copies", "serial_numbers")
        return self

    @model_validator(mode="after")
    def _linked_inputs_exist(self) -> Inverter:
        for number, given in enumerate(self.inputs, start=1):
            other = given.linked_to
            if other is not None and (other == number or other > len(self.inputs)):
                message = f"input {number} is linked to input {other}"
                remedy = f"give the number of another of the {len(self.inputs)} inputs"
                raise fault(message, remedy, "inputs")
        return self
