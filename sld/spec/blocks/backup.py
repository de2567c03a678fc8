"""The backup output of an inverter: what it feeds while the public network is away."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from sld.spec.blocks.block import Amperes, Block, Voltamperes
from sld.spec.usual import Usual

__all__ = ["BackupOutput"]


class BackupOutput(Block):
    """The backup output of an inverter: fed through from the network, and by the inverter while that is away."""

    power_va: Annotated[Voltamperes, Usual("5 kVA", "100 VA", "1 MVA")] = Field(
        description="Rated apparent power while the network is away."
    )
    short_circuit_current_a: Annotated[Amperes, Usual("30 A", "0.5 A", "10 kA")] | None = Field(
        default=None,
        description="Highest current into a fault while the network is away. Left out, only RCDs are taken to "
        "disconnect.",
    )
    feed_through_current_max_a: Annotated[Amperes, Usual("40 A", "1 A", "10 kA")] | None = Field(
        default=None,
        description="Highest current that flows through it from the network to the backup output. Left out, it is not "
        "known.",
    )
    separates_neutral: bool | None = Field(
        default=None,
        description="Opens the neutral too when it separates from the network. Left out, it is not known.",
    )
    neutral_earth_link: bool = Field(
        default=False,
        description="Links neutral and protective earth while the network is separated, and only then.",
    )
