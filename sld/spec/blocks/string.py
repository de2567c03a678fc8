"""Strings, and an input of an inverter with what lies between."""

from __future__ import annotations

from math import prod
from typing import Annotated, Literal

from pydantic import Field, model_validator

from sld.spec.blocks.block import Amperes, Block, Placed, Text
from sld.spec.blocks.circuit import BranchConnector, DcCable, DcCircuit, DcFuse, Optimiser, StringDevice
from sld.spec.fault import fault
from sld.spec.units import Unit
from sld.spec.usual import Usual

__all__ = ["Input", "PvString"]


class PvString(Placed):
    """Equal strings: modules in series, and how many of these strings in parallel."""

    module: Text = Field(description="Name of a module type.")
    modules_in_series: Annotated[int, Field(ge=1, le=200)] = Field(description="Modules in series in each string.")
    count: Annotated[int, Field(ge=1, le=500)] = Field(default=1, description="Number of such strings in parallel.")
    cable_route: Text | None = Field(
        default=None,
        description="Name of the route of its cable, the same for strings whose cables lie side by side: "
        "such a route counts once in the length that decides on surge protection. Left out, each entry has its own.",
    )
    orientation: Text | None = Field(default=None, description="For example: south-east, 30°.")
    tilt_deg: Annotated[float, Unit("deg", minimum=0, maximum=180), Usual("30 deg", "", "90 deg")] | None = Field(
        default=None, description="Angle between the modules and the horizontal; printed, checked by nothing."
    )
    azimuth_deg: Annotated[float, Unit("deg", minimum=0, maximum=360), Usual("135 deg")] | None = Field(
        default=None, description="Direction in which the modules face: 0 is north, 90 east, 180 south, 270 west."
    )
    cable: DcCable | None = Field(
        default=None,
        description="Cable of each string, to where the strings are joined. Its length is that of the longest, "
        "one way.",
    )
    circuit: list[StringDevice] = Field(
        default=[],
        description="Devices that each string has between its cable and its fuse, or where the strings are joined, in "
        "this order: `optimiser` first, `breaker`, `diode`, `branch_connector`.",
    )

    @property
    def joined_ahead(self) -> int:
        """Return how many strings branch connectors join ahead of what follows them, 1 without them."""
        return prod(each.strings for each in self.circuit if isinstance(each, BranchConnector))

    @model_validator(mode="after")
    def _in_order(self) -> PvString:
        if self.count % self.joined_ahead:
            message = f"branch connectors join {self.joined_ahead} strings each, and {self.count} are no multiple of it"
            raise fault(message, "give strings that are joined otherwise as an entry of their own", "circuit")
        if any(isinstance(each, Optimiser) for each in self.circuit[1:]):
            message = "`optimiser` stands for those of the whole string, between its modules and its cable"
            raise fault(message, "give it once, as the first device of the string", "circuit")
        return self


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

    @model_validator(mode="after")
    def _as_many_strings_for_each_fuse(self) -> Input:
        for index, string in enumerate(self.strings):
            if self.string_fuses and string.joined_ahead not in (1, self.strings_per_fuse):
                message = f"branch connectors join {string.joined_ahead} strings ahead of each fuse"
                remedy = f"write `strings_per_fuse: {string.joined_ahead}`, or change the branch connectors"
                raise fault(message, remedy, f"strings.{index}.circuit")
        return self
