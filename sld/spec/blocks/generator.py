"""A generator that takes over a board while the public network is separated."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from sld.spec.blocks.block import Amperes, Placed, Text, Voltamperes, Wired
from sld.spec.blocks.circuit import AcCircuit
from sld.spec.usual import Usual

__all__ = ["Generator"]


class Generator(Placed, Wired):
    """A generator on a board, never in parallel with the public network. Its fault currents are not computed."""

    connected_to: Text | None = Field(
        default=None,
        description="Board that it feeds. Left out where there is only one, or where a `changeover` names it.",
    )
    power_va: Annotated[Voltamperes, Usual("20 kVA", "500 VA", "20 MVA")] = Field(description="Rated apparent power.")
    current_max_a: Annotated[Amperes, Usual("29 A", "0.5 A", "30 kA")] | None = Field(
        default=None, description="Highest current, per line conductor. Left out, from its power."
    )
    phases: Literal[1, 3] | None = Field(default=None, description="Number of phases. Left out, that of the supply.")
    changeover: Text | None = Field(
        default=None,
        description="How it is kept from running in parallel with the network, for example `four-pole change-over "
        "switch`; printed beside it. Left out where a device `changeover` names it as its `second_source`.",
    )
    neutral_earthed: bool = Field(default=False, description="Its neutral is connected to earth at the set itself.")
    short_circuit_current_a: Annotated[Amperes, Usual("60 A", "1 A", "50 kA")] | None = Field(
        default=None,
        description="Least sustained current into a fault. Left out, only RCDs are taken to disconnect.",
    )
    protection_rated_current_a: Annotated[Amperes, Usual("32 A", "1 A", "30 kA")] | None = Field(
        default=None,
        description="Rated current of the circuit-breaker built into the set. Left out, it has none.",
    )
    residual_protection: bool = Field(default=False, description="Has an RCD of its own at its terminals.")
    circuit: AcCircuit | None = Field(
        default=None,
        description="Devices and cables from the board to the generator. Left out, a circuit-breaker is assumed.",
    )
