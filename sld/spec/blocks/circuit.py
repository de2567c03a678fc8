"""Devices and cables of AC and DC circuits, told apart by `kind`."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from sld.spec.blocks.block import (
    Amperes,
    Block,
    Celsius,
    Kiloamperes,
    Metres,
    Placed,
    SquareMillimetres,
    Text,
    ThermalResistivity,
    Voltamperes,
    Volts,
)
from sld.spec.blocks.dc_path import DcDisconnector, InsulationMonitor, PlugConnector, RapidShutdown
from sld.spec.blocks.installed import Installed
from sld.spec.units import Unit

__all__ = [
    "AcCable",
    "AcCircuit",
    "AcDevice",
    "AcSurgeProtection",
    "BlockingDiode",
    "Breaker",
    "CableType",
    "Contactor",
    "DcCable",
    "DcCircuit",
    "DcDevice",
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
Method = Literal["A1", "A2", "B1", "B2", "C", "D1", "D2", "E", "F"]


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
    lockable: bool = Field(default=True, description="Can be locked in the open position.")


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


class CableType(Block):
    """A type of cable."""

    marking: Text | None = Field(
        default=None, description="What is printed on the cable. Left out, the name of the type."
    )
    conductor: Literal["copper", "aluminium"] = Field(default="copper", description="Conductor material.")
    insulation: Literal["PVC", "XLPE", "EN 50618"] = Field(
        default="PVC", description="PVC (70 °C), XLPE or EPR (90 °C), or a solar cable to EN 50618."
    )
    strands: Literal["class 2", "class 5"] = Field(
        default="class 2", description="IEC 60228 class: 2 stranded, 5 flexible."
    )
    temperature_rating_c: Celsius | None = Field(
        default=None,
        description="Temperature rating of the insulation: 60, 75 or 90 °C (used with NEC 690). Left out, 60 °C with "
        "PVC, else 90 °C.",
    )
    rated_voltage_v: Volts | None = Field(default=None, description="Rated voltage (DC for a solar cable).")
    shielded: bool = Field(default=False, description="Has a shield (data cables).")


class AcCable(Placed):
    """A stretch of AC cable."""

    kind: Literal["cable"]
    type: Text | None = Field(
        default=None, description="Name of a cable type. Left out, a copper cable with PVC insulation."
    )
    length_m: Metres = Field(description="One-way length.")
    route: Text | None = Field(default=None, description="Where it runs, for those who lay it: `duct 3, then tray`.")
    section_mm2: SquareMillimetres | None = Field(
        default=None,
        description="Line conductor: an area, or a size such as `10 AWG`. Left out, the smallest that fits.",
    )
    protective_section_mm2: SquareMillimetres | None = Field(
        default=None,
        description="Protective conductor of the cable. Left out, by the line conductors, or by the leakage.",
    )
    cores: Annotated[int, Field(ge=2, le=5)] | None = Field(
        default=None, description="Conductors of the cable. Left out: 3 with one phase, 5 with three."
    )
    parallel: Annotated[int, Field(ge=1, le=8)] = Field(default=1, description="Cables in parallel.")
    method: Method = Field(
        default="B2", description="Reference installation method of IEC 60364-5-52; not used with NEC 690."
    )
    ambient_temperature_c: Celsius | None = Field(
        default=None,
        description="Air or ground temperature. Left out, that of its `location`, of `soil_temperature` in the ground, "
        "else 30 °C or 20 °C.",
    )
    grouped_circuits: Annotated[int, Field(ge=1, le=20)] = Field(
        default=1,
        description="Circuits laid together, this one included; each is counted with as many cables in parallel as "
        "this one.",
    )
    grouped_cables: Annotated[int, Field(ge=1, le=100)] | None = Field(
        default=None,
        description="Cables that touch in all, those in parallel included. Left out, `grouped_circuits` times "
        "`parallel`.",
    )
    spacing_m: Metres | None = Field(
        default=None, description="Clear distance between cables or ducts in the ground. Left out, they touch."
    )
    soil_resistivity_k_m_per_w: ThermalResistivity | None = Field(
        default=None, description="Thermal resistivity of the soil around it. Left out, that of the site."
    )
    depth_m: Annotated[float, Unit("m", minimum=0, exclusive_minimum=True)] | None = Field(
        default=None, description="Depth in the ground. Left out, at most 0.8 m."
    )
    capacity_factor: Annotated[float, Field(gt=0, le=2)] | None = Field(
        default=None, description="A further factor on the current-carrying capacity, for what no table here holds."
    )
    capacity_factor_reason: Text | None = Field(
        default=None, description="Why the further factor, for example thermal insulation or sun."
    )
    terminal_temperature_c: Celsius | None = Field(
        default=None,
        description="Temperature that the terminals at both ends are marked for: 60, 75 or 90 °C (NEC 110.14(C); used "
        "with NEC 690). Left out, 60 °C up to 100 A and 75 °C above.",
    )


class DcCable(Placed):
    """A stretch of DC cable, two conductors."""

    kind: Literal["cable"] = "cable"
    type: Text | None = Field(default=None, description="Name of a cable type. Left out, a solar cable to EN 50618.")
    length_m: Metres = Field(description="One-way length.")
    route: Text | None = Field(default=None, description="Where it runs, for those who lay it: `duct 3, then tray`.")
    section_mm2: SquareMillimetres | None = Field(
        default=None, description="Conductor. Left out, the smallest that fits."
    )
    arrangement: Literal["single_in_air", "single_on_surface", "two_touching"] = Field(
        default="two_touching", description="How the two conductors lie, as in the capacity table of EN 50618."
    )
    ambient_temperature_c: Celsius | None = Field(default=None, description="Temperature around it. Left out: 70 °C.")
    grouped_circuits: Annotated[int, Field(ge=1, le=20)] | None = Field(
        default=None,
        description="Circuits bunched together, this one included; 1 where they lie apart. Left out, all strings of "
        "the entry are taken as bunched.",
    )
    terminal_temperature_c: Celsius | None = Field(
        default=None,
        description="Temperature that the terminals at both ends are marked for: 60, 75 or 90 °C (NEC 110.14(C); used "
        "with NEC 690). Left out, 60 °C up to 100 A and 75 °C above.",
    )


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


AcDevice = Annotated[
    Breaker
    | Fuse
    | Rcd
    | Rcbo
    | Isolator
    | MainSwitch
    | AcSurgeProtection
    | Meter
    | Contactor
    | InterfaceProtection
    | AcCable,
    Field(discriminator="kind"),
]
DcDevice = Annotated[
    DcIsolator
    | DcFuse
    | DcSurgeProtection
    | BlockingDiode
    | DcDisconnector
    | PlugConnector
    | RapidShutdown
    | InsulationMonitor
    | DcCable,
    Field(discriminator="kind"),
]
AcCircuit = list[AcDevice]
DcCircuit = list[DcDevice]
