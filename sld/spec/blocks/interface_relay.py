"""The relay of the interface protection where the switch that it opens is a device of its own."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from sld.spec.blocks.block import Text
from sld.spec.blocks.installed import Installed

__all__ = ["InterfaceRelay"]


class InterfaceRelay(Installed):
    """A relay that measures voltage and frequency for the interface protection and opens another device."""

    kind: Literal["interface_relay"]
    trips: Text | None = Field(
        default=None, description="`id` of the contactor or circuit-breaker that it opens; drawn as a trip line to it."
    )
    settings: Text | None = Field(default=None, description="Name or summary of the settings.")
