"""Devices and cables of AC and DC circuits, told apart by `kind`."""

from __future__ import annotations

from functools import reduce
from operator import or_
from typing import TYPE_CHECKING, Annotated, Literal

from pydantic import Field

from sld.spec.blocks.block import (
    Amperes,
    Kiloamperes,
    Metres,
    SquareMillimetres,
    Text,
    Voltamperes,
    Volts,
)
from sld.spec.blocks.cable import AcCable, CableType, DcCable
from sld.spec.blocks.dc_breaker import DcBreaker
from sld.spec.blocks.dc_path import DcDisconnector, InsulationMonitor, PlugConnector, RapidShutdown
from sld.spec.blocks.installed import Installed
from sld.spec.units import Unit

__all__ = [
    "AC_BLOCKS",
    "DC_BLOCKS",
    "AcCable",
    "AcCircuit",
    "AcDevice",
    "AcDeviceType",
    "AcSurgeProtection",
    "BlockingDiode",
    "Breaker",
    "CableType",
    "Contactor",
    "DcCable",
    "DcCircuit",
    "DcDevice",
    "DcDeviceType",
    "DcDisconnector",
    "DcFuse",
    "DcIsolator",
    "DcSurgeProtection",
    "Fuse",
    "Installed",
    "InsulationMonitor",
    "InterfaceProtection",
    "Isolator",
    "MainSwitch",
    "Meter",
    "PlugConnector",
    "RapidShutdown",
    "Rcbo",
    "Rcd",
]

Milliamperes = Annotated[float, Unit("mA", minimum=0, exclusive_minimum=True)]


class Breaker(Installed):
    """A circuit-breaker."""

    kind: Literal["breaker"]
    construction: Literal["miniature", "moulded_case"] = Field(
        default="miniature", description="Miniature or moulded-case."
    )
    rated_current_a: Amperes | None = Field(
        default=None, description="Rated current. Left out, the smallest that fits."
    )
    curve: Literal["B", "C", "D"] | None = Field(
        default=None, description="Tripping characteristic. Left out, C where the loop impedance allows it, else B."
    )
    trip_factor: Annotated[float, Field(gt=1, le=20)] | None = Field(
        default=None,
        description="Magnetic trip as a multiple of the rated current (upper bound), for a moulded-case breaker.",
    )
    breaking_capacity_ka: Kiloamperes | None = Field(default=None, description="Rated short-circuit breaking capacity.")
    poles: Annotated[int, Field(ge=1, le=4)] | None = Field(
        default=None, description="Number of poles. Left out, the live conductors: 2 or 4."
    )


class Fuse(Installed):
    """A fuse, or a fuse-switch-disconnector where `switch` is true."""

    kind: Literal["fuse"]
    rated_current_a: Amperes | None = Field(
        default=None, description="Rated current. Left out, the smallest that fits."
    )
    breaking_capacity_ka: Kiloamperes | None = Field(default=None, description="Rated breaking capacity.")
    switch: bool = Field(default=False, description="Fuse-switch-disconnector instead of a plain fuse.")


class Rcd(Installed):
    """A residual current device without overcurrent protection."""

    kind: Literal["rcd"]
    rated_current_a: Amperes | None = Field(
        default=None, description="Rated current. Left out, the smallest that fits."
    )
    residual_current_ma: Milliamperes | None = Field(
        default=None, description="Rated residual operating current. Left out, the one that fits leakage and earth."
    )
    sensitivity: Literal["AC", "A", "F", "B"] | None = Field(
        default=None, description="RCD type. Left out, the one that the inverters behind it need."
    )
    selective: bool = Field(default=False, description="Time-delayed (S).")
    poles: Annotated[int, Field(ge=2, le=4)] | None = Field(
        default=None, description="Number of poles. Left out, the live conductors: 2 or 4."
    )


class Rcbo(Installed):
    """A residual current circuit-breaker with overcurrent protection."""

    kind: Literal["rcbo"]
    rated_current_a: Amperes | None = Field(
        default=None, description="Rated current. Left out, the smallest that fits."
    )
    curve: Literal["B", "C", "D"] | None = Field(default=None, description="Tripping characteristic.")
    breaking_capacity_ka: Kiloamperes | None = Field(default=None, description="Rated short-circuit breaking capacity.")
    residual_current_ma: Milliamperes | None = Field(
        default=None, description="Rated residual operating current. Left out, the one that fits leakage and earth."
    )
    sensitivity: Literal["AC", "A", "F", "B"] | None = Field(
        default=None, description="RCD type. Left out, the one that the inverters behind it need."
    )
    bidirectional: bool = Field(default=True, description="Suitable for power flow in both directions.")
    poles: Annotated[int, Field(ge=2, le=4)] | None = Field(
        default=None, description="Number of poles. Left out, the live conductors: 2 or 4."
    )


class Isolator(Installed):
    """An AC switch-disconnector for isolation."""

    kind: Literal["isolator"]
    rated_current_a: Amperes | None = Field(
        default=None, description="Rated current. Left out, the smallest that fits."
    )
    poles: Annotated[int, Field(ge=2, le=4)] | None = Field(
        default=None, description="Number of poles. Left out, the live conductors: 2 or 4."
    )
    lockable: bool | None = Field(
        default=None, description="Can be locked in the open position. Left out, it is not known."
    )


class MainSwitch(Installed):
    """The main switch of a board."""

    kind: Literal["main_switch"]
    rated_current_a: Amperes | None = Field(
        default=None, description="Rated current. Left out, the smallest that fits."
    )
    poles: Annotated[int, Field(ge=2, le=4)] | None = Field(
        default=None, description="Number of poles. Left out, the live conductors: 2 or 4."
    )


class AcSurgeProtection(Installed):
    """An AC surge protective device, on a branch to earth."""

    kind: Literal["surge_protection"]
    test_class: Literal["1", "2", "1+2"] = Field(default="2", description="Type 1, type 2 or both.")
    continuous_voltage_v: Volts | None = Field(default=None, description="Highest continuous operating voltage Uc.")
    protection_level_v: Volts | None = Field(default=None, description="Voltage protection level Up.")
    impulse_current_ka: Kiloamperes | None = Field(
        default=None, description="Impulse current Iimp of one pole (10/350 µs), type 1."
    )
    backup_fuse_max_a: Amperes | None = Field(default=None, description="Largest upstream fuse that the maker allows.")
    lead_length_m: Metres | None = Field(default=None, description="Length of its connecting leads in all.")


class Meter(Installed):
    """An energy meter, direct or through current transformers."""

    kind: Literal["meter"]
    purpose: Literal["supply", "generation", "feed_in_limit"] = Field(
        description="Billing at the supply point, counting of generation, or measuring for the feed-in limit."
    )
    connection: Literal["direct", "ct"] = Field(default="direct", description="Direct or through current transformers.")
    current_max_a: Amperes | None = Field(
        default=None, description="Highest current of a direct meter. Left out, the smallest usual."
    )
    ct_primary_a: Amperes | None = Field(
        default=None, description="Rated primary current of the transformers. Left out, chosen."
    )
    ct_secondary_a: Amperes | None = Field(
        default=None, description="Rated secondary current of the transformers. Left out: 5 A."
    )
    ct_lead_length_m: Metres | None = Field(
        default=None, description="Length of the leads from the transformers to the meter, one way."
    )
    ct_lead_section_mm2: SquareMillimetres | None = Field(
        default=None, description="Section of these leads, copper. Left out: 2.5 mm²."
    )
    ct_burden_va: Voltamperes | None = Field(
        default=None,
        description="Rated burden of the transformers; without it the burden of the leads is only printed.",
    )
    bidirectional: bool = Field(default=True, description="Counts both directions.")
    number: Text | None = Field(default=None, description="Meter number.")


class Contactor(Installed):
    """A contactor, for example the coupling switch of the interface protection."""

    kind: Literal["contactor"]
    rated_current_a: Amperes | None = Field(
        default=None, description="Rated current. Left out, the smallest that fits."
    )
    poles: Annotated[int, Field(ge=1, le=4)] | None = Field(
        default=None, description="Number of poles. Left out, the live conductors: 2 or 4."
    )


class InterfaceProtection(Installed):
    """Interface protection: a measuring relay with its coupling switch."""

    kind: Literal["interface_protection"]
    rated_current_a: Amperes | None = Field(
        default=None, description="Rated current of the coupling switch. Left out, chosen."
    )
    settings: Text | None = Field(default=None, description="Name or summary of the settings.")


class DcIsolator(Installed):
    """A DC switch-disconnector."""

    kind: Literal["isolator"]
    rated_voltage_v: Volts | None = Field(
        default=None, description="Rated voltage as its poles are wired. Left out, chosen."
    )
    rated_current_a: Amperes | None = Field(
        default=None, description="Rated current at that voltage. Left out, chosen."
    )
    utilization_category: Literal["DC-PV0", "DC-PV1", "DC-PV2", "DC-21B", "DC-22B"] | None = Field(
        default=None, description="Utilization category. Left out, the one that is needed."
    )
    poles: Annotated[int, Field(ge=1, le=8)] = Field(default=2, description="Number of poles.")


class DcFuse(Installed):
    """A gPV fuse for each pole."""

    kind: Literal["fuse"] = "fuse"
    rated_current_a: Amperes | None = Field(
        default=None, description="Rated current. Left out, the smallest in the allowed range."
    )
    rated_voltage_v: Volts | None = Field(
        default=None, description="Rated DC voltage of fuse and holder. Left out, chosen."
    )
    breaking_capacity_ka: Kiloamperes | None = Field(default=None, description="Rated DC breaking capacity.")
    temperature_factor: Annotated[float, Field(gt=0, le=1)] | None = Field(
        default=None,
        description="Factor on the rated current for the heat in its enclosure, by the maker. Left out, 0.85 is taken.",
    )
    poles: Literal[1, 2] = Field(default=2, description="Poles that are fused.")


class DcSurgeProtection(Installed):
    """A DC surge protective device, on a branch to earth."""

    kind: Literal["surge_protection"]
    test_class: Literal["1", "2", "1+2"] = Field(default="2", description="Type 1, type 2 or both.")
    continuous_voltage_v: Volts | None = Field(
        default=None, description="Highest continuous operating voltage Ucpv. Left out, chosen."
    )
    protection_level_v: Volts | None = Field(default=None, description="Voltage protection level Up.")
    discharge_current_ka: Kiloamperes | None = Field(
        default=None, description="Nominal discharge current In (8/20 µs)."
    )
    impulse_current_ka: Kiloamperes | None = Field(
        default=None, description="Impulse current Iimp of one mode of protection (10/350 µs), type 1."
    )
    short_circuit_current_a: Amperes | None = Field(
        default=None, description="Short-circuit current rating Iscpv: the current of the array that it stands."
    )
    lead_length_m: Metres | None = Field(default=None, description="Length of its connecting leads in all.")


class BlockingDiode(Installed):
    """A blocking diode."""

    kind: Literal["diode"]
    rated_current_a: Amperes | None = Field(default=None, description="Rated current.")
    rated_voltage_v: Volts | None = Field(default=None, description="Rated reverse voltage.")


AC_BLOCKS: tuple[type[Installed], ...] = (
    Breaker,
    Fuse,
    Rcd,
    Rcbo,
    Isolator,
    MainSwitch,
    AcSurgeProtection,
    Meter,
    Contactor,
    InterfaceProtection,
)
"""The devices of AC circuits, cables apart."""

DC_BLOCKS: tuple[type[Installed], ...] = (
    DcIsolator,
    DcFuse,
    DcBreaker,
    DcSurgeProtection,
    BlockingDiode,
    DcDisconnector,
    PlugConnector,
    RapidShutdown,
    InsulationMonitor,
)
"""The devices of DC circuits, cables apart."""

if TYPE_CHECKING:  # what is common to them; what tells one from the other is asked of its kind, see `sld/model/kinds`
    AcDevice = Installed | AcCable
    DcDevice = Installed | DcCable
    AcDeviceType = Installed
    DcDeviceType = Installed
else:

    def _told_apart_by_kind(*blocks):
        return Annotated[reduce(or_, blocks), Field(discriminator="kind")]

    AcDevice = _told_apart_by_kind(*AC_BLOCKS, AcCable)
    DcDevice = _told_apart_by_kind(*DC_BLOCKS, DcCable)
    AcDeviceType = _told_apart_by_kind(*AC_BLOCKS)
    DcDeviceType = _told_apart_by_kind(*DC_BLOCKS)
AcCircuit = list[AcDevice]
DcCircuit = list[DcDevice]
