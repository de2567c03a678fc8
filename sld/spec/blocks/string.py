"""Strings, and an input of an inverter with what lies between."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from sld.spec.blocks.block import Amperes, Block, Placed, Text
from sld.spec.blocks.circuit import DcCable, DcCircuit, DcFuse
from sld.spec.usual import Usual

__all__ = ["Input", "PvString"]


class PvString(Placed):
    """Equal strings: modules in series, and how many of these strings in parallel."""

    module: Text = Field(description="Name of a module type.")
    modules_in_series: Annotated[int, Field(ge=1, le=200)] = Field(description="Modules in series in each string.")
    count: Annotated[int, Field(ge=1, le=500)] = Field(default=1, description="Number of such strings in parallel.")
    cable_way: Text | None = Field(
        default=None,
        description="Name of the way on which its cable is laid, the same for strings whose cables lie side by side: "
        "such a way counts once in the length that decides on surge protection. Left out, each entry has its own.",
    )
    orientation: Text | None = Field(default=None, description="For example: south-east, 30°.")
    cable: DcCable | None = Field(
        default=None,
        description="Cable of each string, to where the strings are joined. Its length is that of the longest, "
        "one way.",
    )


class Input(Block):
    """One input of an inverter: the strings that are joined for it and the devices on the way."""

    strings: Annotated[list[PvString], Field(min_length=1)] = Field(
        description="Strings that are in parallel on this input."
    )
    string_fuses: DcFuse | None = Field(
        default=None,
        description="A fuse for each string. Left out, there are none, and the rules say whether they are needed.",
    )
    junction_box: Text | None = Field(
        default=None, description="Junction box in which the strings are joined; string fuses are in it."
    )
    circuit: DcCircuit | None = Field(
        default=None,
        description="Devices and cables from where the strings are joined to the inverter, in this order. Left out, an "
        "isolator is assumed unless the inverter has one.",
    )
    strings_per_fuse: Annotated[int, Field(ge=1, le=20)] = Field(
        default=1, description="Strings that are joined ahead of each string fuse, for example by branch connectors."
    )
    linked_to: Annotated[int, Field(ge=1, le=100)] | None = Field(
        default=None,
        description="Number of another input of this inverter to which this one is linked in parallel; their strings "
        "count together.",
    )
    functional_earth: bool = Field(default=False, description="One pole is connected to earth for functional reasons.")
    functional_earth_pole: Literal["positive", "negative"] | None = Field(
        default=None, description="Which pole has the functional earth."
    )
    functional_earth_device_a: Annotated[Amperes, Usual("1 A", "0.01 A", "100 A")] | None = Field(
        default=None, description="Rated current of the fuse or breaker that opens the functional earth."
    )
