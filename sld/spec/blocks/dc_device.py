"""Isolators, fuses, surge protection and diodes of DC circuits."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from sld.spec.blocks.block import Amperes, Kiloamperes, Metres, Volts
from sld.spec.blocks.installed import Installed
from sld.spec.usual import Usual

__all__ = ["BlockingDiode", "DcFuse", "DcIsolator", "DcSurgeProtection"]


class DcIsolator(Installed):
    """A DC switch-disconnector."""

    kind: Literal["isolator"]
    rated_voltage_v: Annotated[Volts, Usual("1000 V", "20 V", "2 kV")] | None = Field(
        default=None, description="Rated voltage as its poles are wired. Left out, chosen."
    )
    rated_current_a: Annotated[Amperes, Usual("32 A", "1 A", "6.3 kA")] | None = Field(
        default=None, description="Rated current at that voltage. Left out, chosen."
    )
    utilization_category: Literal["DC-PV0", "DC-PV1", "DC-PV2", "DC-21B", "DC-22B"] | None = Field(
        default=None, description="Utilization category. Left out, the one that is needed."
    )
    poles: Annotated[int, Field(ge=1, le=8)] = Field(default=2, description="Number of poles.")
    lockable: bool | None = Field(
        default=None, description="Can be locked in the open position. Left out, it is not known."
    )


class DcFuse(Installed):
    """A gPV fuse for each pole that is not earthed."""

    kind: Literal["fuse"] = "fuse"
    rated_current_a: Annotated[Amperes, Usual("15 A", "0.5 A", "1.25 kA")] | None = Field(
        default=None, description="Rated current. Left out, the smallest in the allowed range."
    )
    rated_voltage_v: Annotated[Volts, Usual("1000 V", "20 V", "2 kV")] | None = Field(
        default=None, description="Rated DC voltage of fuse and holder. Left out, chosen."
    )
    breaking_capacity_ka: Annotated[Kiloamperes, Usual("30 kA", "0.5 kA", "200 kA")] | None = Field(
        default=None, description="Rated DC breaking capacity."
    )
    temperature_factor: Annotated[float, Field(gt=0, le=1)] | None = Field(
        default=None,
        description="Factor on the rated current for the heat in its enclosure, by the maker. Left out, 0.85 is taken.",
    )
    poles: Literal[1, 2] | None = Field(
        default=None, description="Poles that are fused. Left out, every pole that is not earthed."
    )
    pole: Literal["positive", "negative"] | None = Field(
        default=None, description="Which pole, where one alone is fused; asked for where one is earthed."
    )


class DcSurgeProtection(Installed):
    """A DC surge protective device, on a branch to earth."""

    kind: Literal["surge_protection"]
    test_class: Literal["1", "2", "1+2"] = Field(
        default="2", description="Type 1, type 2 or both. Left out, type 2 is assumed."
    )
    continuous_voltage_v: Annotated[Volts, Usual("1000 V", "20 V", "2 kV")] | None = Field(
        default=None, description="Highest continuous operating voltage Ucpv. Left out, chosen."
    )
    protection_level_v: Annotated[Volts, Usual("3.5 kV", "100 V", "10 kV")] | None = Field(
        default=None, description="Voltage protection level Up."
    )
    discharge_current_ka: Annotated[Kiloamperes, Usual("20 kA", "0.5 kA", "100 kA")] | None = Field(
        default=None, description="Nominal discharge current In (8/20 µs)."
    )
    impulse_current_ka: Annotated[Kiloamperes, Usual("6.25 kA", "0.2 kA", "100 kA")] | None = Field(
        default=None, description="Impulse current Iimp of one mode of protection (10/350 µs), type 1."
    )
    short_circuit_current_a: Annotated[Amperes, Usual("1000 A", "5 A", "200 kA")] | None = Field(
        default=None, description="Short-circuit current rating Iscpv: the current of the array that it stands."
    )
    lead_length_m: Annotated[Metres, Usual("0.5 m", "", "20 m")] | None = Field(
        default=None, description="Length of its connecting leads in all."
    )


class BlockingDiode(Installed):
    """A blocking diode."""

    kind: Literal["diode"]
    rated_current_a: Annotated[Amperes, Usual("20 A", "0.5 A", "5 kA")] | None = Field(
        default=None, description="Rated current."
    )
    rated_voltage_v: Annotated[Volts, Usual("1600 V", "20 V", "5 kV")] | None = Field(
        default=None, description="Rated reverse voltage."
    )
