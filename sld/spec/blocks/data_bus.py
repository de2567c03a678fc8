"""How the devices talk: chains on RS-485, point-to-point links, loggers and routers."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, model_validator

from sld.spec.blocks.block import Amperes, Block, Metres, Named, Placed, Text, Wired
from sld.spec.fault import fault
from sld.spec.units import Unit
from sld.spec.usual import Usual

__all__ = ["Chain", "ChainStep", "DataBus", "DataDevice", "DataLink", "FeedInLimit", "LoadLimit"]


class LoadLimit(Block):
    """Load management: what a controller keeps the sum of some loads below."""

    current_a: Annotated[Amperes, Usual("32 A", "6 A", "10 kA")] = Field(
        description="Highest sum of their currents that it lets flow, per line conductor."
    )
    loads: Annotated[list[Text], Field(min_length=1)] = Field(description="The loads that it controls.")


class FeedInLimit(Block):
    """A feed-in limiter: the meter that it measures by, what it turns down, and what happens without a measurement."""

    sensor: Text = Field(description="`id` of the meter at the supply point that it measures by.")
    inverters: Annotated[list[Text], Field(min_length=1)] = Field(
        description="The inverters, and batteries with a converter, that it turns down."
    )
    fail_safe_time_s: Annotated[float, Unit("s", minimum=0), Usual("5 s", "", "300 s")] | None = Field(
        default=None,
        description="Time after which the inverters are turned down where measurement or connection is lost. Left out, "
        "a blank is printed.",
    )
    fail_safe_power_w: Annotated[float, Unit("W", minimum=0), Usual("6 kW", "", "100 MW")] | None = Field(
        default=None, description="Power that they are turned down to then; 0 for none."
    )


class DataDevice(Placed, Wired):
    """A device of the data side alone."""

    kind: Literal["logger", "energy_manager", "router", "module"] = Field(
        description="Logger, energy manager, router, or a communication module."
    )
    load_limit: LoadLimit | None = Field(
        default=None, description="Load management: what it keeps the sum of some loads below."
    )
    feed_in_limit: FeedInLimit | None = Field(
        default=None, description="Feed-in limiter, for the `export_limit` of the supply: its sensor and its actors."
    )


class ChainStep(Block):
    """One device of a chain."""

    device: Text = Field(description="Inverter, meter or data device. An inverter with `count` stands for all of them.")
    address: Annotated[int, Field(ge=0, le=255)] | None = Field(
        default=None, description="Bus address; with a counted inverter the first of consecutive addresses."
    )
    length_m: Annotated[Metres, Usual("15 m", "", "10 km")] | None = Field(
        default=None, description="Cable from the device before it in the chain; left out for the first."
    )
    terminated: bool = Field(default=False, description="The terminating resistor is on here.")


class Chain(Named):
    """Devices wired one after the other on RS-485."""

    protocol: Text = Field(default="Modbus RTU", description="Protocol.")
    baud_rate_bd: Annotated[
        float, Unit("Bd", minimum=0, exclusive_minimum=True), Usual("9600 Bd", "50 Bd", "1000000 Bd")
    ] = Field(default=9600.0, description="Baud rate.")
    cable: Text | None = Field(default=None, description="Name of a cable type, or free text that is printed.")
    shield_earthed_at: list[Text] = Field(default=[], description="Devices where the shield is connected to earth.")
    master: Text | None = Field(
        default=None, description="Device that polls the others. Left out, the only data device."
    )
    devices: Annotated[list[ChainStep], Field(min_length=2)] = Field(
        description="The devices in the order of the cable."
    )

    @model_validator(mode="after")
    def _cable_begins_at_the_first(self) -> Chain:
        if self.devices[0].length_m is not None:
            message = f"`{self.devices[0].device}` is the first device of the chain and has the length of a cable to it"
            raise fault(message, "give each `length` at the device to which that cable leads", "devices")
        return self


class DataLink(Block):
    """A link between two devices."""

    from_device: Text = Field(alias="from", description="One end.")
    to_device: Text = Field(alias="to", description="Other end.")
    medium: Literal["ethernet", "wireless", "pulse", "trip"] = Field(
        description="Ethernet, wireless, pulse output, or a wired trip line."
    )
    length_m: Annotated[Metres, Usual("20 m", "", "100 km")] | None = Field(
        default=None, description="Length of the cable."
    )


class DataBus(Block):
    """Data bus and communication."""

    devices: dict[str, DataDevice] = Field(default={}, description="Loggers, routers and the like by name.")
    chains: dict[str, Chain] = Field(default={}, description="Chains by name.")
    links: list[DataLink] = Field(default=[], description="Other links.")
