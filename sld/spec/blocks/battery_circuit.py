"""Devices and cables between a battery and its converter, told apart by `kind`."""

from __future__ import annotations

from functools import reduce
from operator import or_
from typing import TYPE_CHECKING, Annotated, Literal

from pydantic import Field

from sld.spec.blocks.block import Amperes, Celsius, Kiloamperes, Metres, Placed, SquareMillimetres, Text, Volts, Wired
from sld.spec.blocks.conduit import Drawn
from sld.spec.blocks.dc_breaker import DcBreaker
from sld.spec.blocks.installed import Installed
from sld.spec.usual import Usual

__all__ = [
    "BATTERY_BLOCKS",
    "BatteryBreaker",
    "BatteryCable",
    "BatteryCircuit",
    "BatteryDevice",
    "BatteryDeviceType",
    "BatteryFuse",
    "BatteryIsolator",
]


class BatteryFuse(Installed):
    """A fuse of a battery, in a holder or as a fuse-switch-disconnector. Nothing is chosen for it."""

    kind: Literal["fuse"]
    rated_current_a: Annotated[Amperes, Usual("125 A", "1 A", "6.3 kA")] | None = Field(
        default=None, description="Rated current. Left out, the least it must be is printed."
    )
    rated_voltage_v: Annotated[Volts, Usual("80 V", "20 V", "2 kV")] | None = Field(
        default=None, description="Rated DC voltage. Left out, the least it must be is printed."
    )
    breaking_capacity_ka: Annotated[Kiloamperes, Usual("50 kA", "0.5 kA", "300 kA")] | None = Field(
        default=None, description="Rated DC breaking capacity at that voltage."
    )
    poles: Literal[1, 2] = Field(default=2, description="Poles that are fused.")
    switch: bool = Field(default=False, description="Fuse-switch-disconnector instead of a plain fuse.")


class BatteryBreaker(DcBreaker):
    """A DC circuit-breaker of a battery. A battery is charged and discharged: it must break in both directions."""


class BatteryIsolator(Installed):
    """A DC switch-disconnector of a battery."""

    kind: Literal["isolator"]
    rated_current_a: Annotated[Amperes, Usual("160 A", "1 A", "6.3 kA")] | None = Field(
        default=None, description="Rated current at its voltage. Left out, the least it must be is printed."
    )
    rated_voltage_v: Annotated[Volts, Usual("80 V", "20 V", "2 kV")] | None = Field(
        default=None, description="Rated DC voltage as its poles are wired. Left out, the least it must be is printed."
    )
    utilization_category: Literal["DC-20B", "DC-21B", "DC-22B", "DC-23B"] | None = Field(
        default=None, description="Utilization category of IEC 60947-3; DC-20B is not made for switching under load."
    )
    poles: Annotated[int, Field(ge=1, le=8)] = Field(default=2, description="Number of poles.")


class BatteryCable(Placed, Wired, Drawn):
    """A stretch of cable between a battery and its converter, two conductors."""

    kind: Literal["cable"]
    type: Text | None = Field(default=None, description="Name of a cable type. Left out, flexible copper with PVC.")
    length_m: Annotated[Metres, Usual("2 m", "0.1 m", "200 m")] = Field(description="One-way length.")
    route: Text | None = Field(default=None, description="Where it runs, for those who lay it.")
    section_mm2: Annotated[SquareMillimetres, Usual("35 mm2", "1.5 mm2", "1200 mm2")] | None = Field(
        default=None, description="Conductor. Left out, the smallest that fits."
    )
    parallel: Annotated[int, Field(ge=1, le=8)] = Field(default=1, description="Conductors in parallel for each pole.")
    method: Literal["A1", "A2", "B1", "B2", "C", "E"] = Field(
        default="B1", description="Reference installation method of IEC 60364-5-52, two loaded conductors."
    )
    ambient_temperature_c: Annotated[Celsius, Usual("35 °C", "-20 °C", "90 °C")] | None = Field(
        default=None, description="Temperature of the air around it. Left out: 30 °C."
    )
    grouped_circuits: Annotated[int, Field(ge=1, le=20)] = Field(
        default=1, description="Circuits laid together, this one included."
    )


BATTERY_BLOCKS: tuple[type[Installed], ...] = (BatteryFuse, BatteryBreaker, BatteryIsolator)
"""The devices between a battery and its converter, cables apart."""

if TYPE_CHECKING:  # as in `circuit.py`
    BatteryDevice = Installed | BatteryCable
    BatteryDeviceType = Installed
else:
    BatteryDevice = Annotated[reduce(or_, (*BATTERY_BLOCKS, BatteryCable)), Field(discriminator="kind")]
    BatteryDeviceType = Annotated[reduce(or_, BATTERY_BLOCKS), Field(discriminator="kind")]
BatteryCircuit = list[BatteryDevice]
