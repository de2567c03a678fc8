"""Switches for operation without the network: a change-over switch of two ways, and a switch that only separates."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from sld.spec.blocks.block import Amperes, Text
from sld.spec.blocks.installed import Installed
from sld.spec.usual import Usual

__all__ = ["Changeover", "NetworkSeparation"]


class Changeover(Installed):
    """A change-over switch: the board behind it is fed by the network (way I) or by a second source (way II)."""

    kind: Literal["changeover"]
    second_source: Text = Field(description="Generator, or inverter with a backup output, at way II.")
    rated_current_a: Annotated[Amperes, Usual("63 A", "6 A", "6.3 kA")] | None = Field(
        default=None, description="Rated current. Left out, the smallest that fits."
    )
    poles: Annotated[int, Field(ge=2, le=4)] | None = Field(
        default=None, description="Number of poles. Left out, the live conductors: 2 or 4."
    )
    operation: Literal["manual", "automatic"] | None = Field(
        default=None, description="By hand or by command. Left out, nothing is said of it."
    )
    interlock: Literal["mechanical", "electrical", "key", "three_position", "none"] | None = Field(
        default=None,
        description="What keeps the two sources apart: `key` is one key for both locks, `three_position` a switch that "
        "opens one way before it closes the other. Left out, it is not known.",
    )
    neutral_earth_link: bool = Field(
        default=False, description="Links neutral and protective earth in position II, and only there."
    )


class NetworkSeparation(Installed):
    """A switch that separates what is behind it from the network, where its own sources then feed it."""

    kind: Literal["network_separation"]
    rated_current_a: Annotated[Amperes, Usual("63 A", "6 A", "6.3 kA")] | None = Field(
        default=None, description="Rated current. Left out, the smallest that fits."
    )
    poles: Annotated[int, Field(ge=2, le=4)] | None = Field(
        default=None, description="Number of poles. Left out, the live conductors: 2 or 4."
    )
    neutral_earth_link: bool = Field(
        default=False,
        description="Links neutral and protective earth while the network is separated, and only then.",
    )
