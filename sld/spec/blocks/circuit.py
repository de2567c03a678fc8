"""Devices and cables of AC and DC circuits, told apart by `kind`."""

from __future__ import annotations

from functools import reduce
from operator import or_
from typing import TYPE_CHECKING, Annotated, Literal

from pydantic import Field

from sld.spec.blocks.ac_protection import Breaker, Fuse, Rcbo, Rcd
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
from sld.spec.blocks.changeover import Changeover, NetworkSeparation
from sld.spec.blocks.dc_breaker import DcBreaker
from sld.spec.blocks.dc_device import BlockingDiode, DcFuse, DcIsolator, DcSurgeProtection
from sld.spec.blocks.dc_path import BranchConnector, DcDisconnector, InsulationMonitor, PlugConnector, RapidShutdown
from sld.spec.blocks.installed import BackedUp, Installed
from sld.spec.blocks.interface_relay import InterfaceRelay
from sld.spec.blocks.optimiser import Optimiser
from sld.spec.usual import Usual

__all__ = [
    "AC_BLOCKS",
    "DC_BLOCKS",
    "STRING_BLOCKS",
    "AcCable",
    "AcCircuit",
    "AcDevice",
    "AcDeviceType",
    "AcSurgeProtection",
    "BlockingDiode",
    "BranchConnector",
    "Breaker",
    "CableType",
    "Changeover",
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
    "NetworkSeparation",
    "Optimiser",
    "PlugConnector",
    "RapidShutdown",
    "Rcbo",
    "Rcd",
    "StringDevice",
]


class Isolator(BackedUp):
    """An AC switch-disconnector for isolation."""

    kind: Literal["isolator"]
    rated_current_a: Annotated[Amperes, Usual("32 A", "1 A", "6.3 kA")] | None = Field(
        default=None, description="Rated current. Left out, the smallest that fits."
    )
    poles: Annotated[int, Field(ge=2, le=4)] | None = Field(
        default=None, description="Number of poles. Left out, the live conductors: 2 or 4."
    )
    lockable: bool | None = Field(
        default=None, description="Can be locked in the open position. Left out, it is not known."
    )


class MainSwitch(BackedUp):
    """The main switch of a board."""

    kind: Literal["main_switch"]
    rated_current_a: Annotated[Amperes, Usual("63 A", "6 A", "6.3 kA")] | None = Field(
        default=None, description="Rated current. Left out, the smallest that fits."
    )
    poles: Annotated[int, Field(ge=2, le=4)] | None = Field(
        default=None, description="Number of poles. Left out, the live conductors: 2 or 4."
    )


class AcSurgeProtection(Installed):
    """An AC surge protective device, on a branch to earth."""

    kind: Literal["surge_protection"]
    test_class: Literal["1", "2", "1+2"] = Field(
        default="2", description="Type 1, type 2 or both. Left out, type 2 is assumed."
    )
    continuous_voltage_v: Annotated[Volts, Usual("275 V", "60 V", "1.5 kV")] | None = Field(
        default=None, description="Highest continuous operating voltage Uc."
    )
    protection_level_v: Annotated[Volts, Usual("1.5 kV", "300 V", "10 kV")] | None = Field(
        default=None, description="Voltage protection level Up."
    )
    impulse_current_ka: Annotated[Kiloamperes, Usual("12.5 kA", "0.5 kA", "150 kA")] | None = Field(
        default=None, description="Impulse current Iimp of one pole (10/350 µs), type 1."
    )
    backup_fuse_max_a: Annotated[Amperes, Usual("125 A", "6 A", "1.25 kA")] | None = Field(
        default=None, description="Largest upstream fuse that the maker allows."
    )
    backup_fuse_a: Annotated[Amperes, Usual("100 A", "6 A", "1.25 kA")] | None = Field(
        default=None,
        description="Rated current of a fuse or circuit-breaker in its own branch. Left out, the next overcurrent "
        "device upstream is its backup.",
    )
    lead_length_m: Annotated[Metres, Usual("0.5 m", "", "20 m")] | None = Field(
        default=None, description="Length of its connecting leads in all."
    )


class Meter(Installed):
    """An energy meter, direct or through current transformers."""

    kind: Literal["meter"]
    purpose: Literal["supply", "generation", "feed_in_limit"] = Field(
        description="Billing at the supply point, counting of generation, or measuring for the feed-in limit."
    )
    connection: Literal["direct", "ct"] = Field(default="direct", description="Direct or through current transformers.")
    current_max_a: Annotated[Amperes, Usual("60 A", "5 A", "320 A")] | None = Field(
        default=None, description="Highest current of a direct meter. Left out, the smallest usual."
    )
    ct_primary_a: Annotated[Amperes, Usual("200 A", "5 A", "10 kA")] | None = Field(
        default=None, description="Rated primary current of the transformers. Left out, chosen."
    )
    ct_secondary_a: Annotated[Amperes, Usual("5 A", "0.05 A", "5 A")] | None = Field(
        default=None, description="Rated secondary current of the transformers. Left out: 5 A."
    )
    ct_lead_length_m: Annotated[Metres, Usual("5 m", "", "1 km")] | None = Field(
        default=None, description="Length of the leads from the transformers to the meter, one way."
    )
    ct_lead_section_mm2: Annotated[SquareMillimetres, Usual("2.5 mm2", "0.5 mm2", "25 mm2")] | None = Field(
        default=None, description="Section of these leads, copper. Left out: 2.5 mm²."
    )
    ct_burden_va: Annotated[Voltamperes, Usual("2.5 VA", "0.1 VA", "60 VA")] | None = Field(
        default=None,
        description="Rated burden of the transformers; without it the burden of the leads is only printed.",
    )
    bidirectional: bool | None = Field(
        default=None, description="Counts both directions; `false`: one alone. Left out, nothing is known."
    )
    number: Text | None = Field(default=None, description="Meter number.")
    ct_lines: list[Literal["L1", "L2", "L3", "N"]] = Field(
        default=[], description="Conductors that its current transformers are around."
    )


class Contactor(Installed):
    """A contactor, for example the coupling switch of the interface protection."""

    kind: Literal["contactor"]
    rated_current_a: Annotated[Amperes, Usual("40 A", "1 A", "6.3 kA")] | None = Field(
        default=None, description="Rated current. Left out, the smallest that fits."
    )
    poles: Annotated[int, Field(ge=1, le=4)] | None = Field(
        default=None, description="Number of poles. Left out, the live conductors: 2 or 4."
    )


class InterfaceProtection(Installed):
    """Interface protection: a measuring relay with its coupling switch."""

    kind: Literal["interface_protection"]
    rated_current_a: Annotated[Amperes, Usual("63 A", "1 A", "6.3 kA")] | None = Field(
        default=None, description="Rated current of the coupling switch. Left out, chosen."
    )
    settings: Text | None = Field(default=None, description="Name or summary of the settings.")


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
    InterfaceRelay,
    Changeover,
    NetworkSeparation,
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

STRING_BLOCKS: tuple[type[Installed], ...] = (DcBreaker, BlockingDiode, BranchConnector, Optimiser)
"""The devices that each string has, or each few joined ones, beside its cable and fuses."""

if TYPE_CHECKING:  # what is common to them; what tells one from the other is asked of its kind, see `sld/model/kinds`
    AcDevice = Installed | AcCable
    DcDevice = Installed | DcCable
    AcDeviceType = Installed
    DcDeviceType = Installed
    StringDevice = Installed
else:

    def _told_apart_by_kind(*blocks):
        return Annotated[reduce(or_, blocks), Field(discriminator="kind")]

    AcDevice = _told_apart_by_kind(*AC_BLOCKS, AcCable)
    DcDevice = _told_apart_by_kind(*DC_BLOCKS, DcCable)
    AcDeviceType = _told_apart_by_kind(*AC_BLOCKS)
    DcDeviceType = _told_apart_by_kind(*dict.fromkeys((*DC_BLOCKS, *STRING_BLOCKS)))
    StringDevice = _told_apart_by_kind(*STRING_BLOCKS)
AcCircuit = list[AcDevice]
DcCircuit = list[DcDevice]
