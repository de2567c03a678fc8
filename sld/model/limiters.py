"""The feed-in limiters of a system: controllers of the data side, and inverters that limit by themselves."""

from __future__ import annotations

from collections.abc import Iterator

from sld.model.device import DataNode, Device, InverterUnit
from sld.model.system import System
from sld.spec.blocks.data_bus import FeedInLimit

__all__ = ["feed_in_limiters"]


def feed_in_limiters(system: System) -> Iterator[tuple[Device, FeedInLimit]]:
    """Yield each device that limits the feed-in, with what the spec says of it."""
    for device in system.whole.among(DataNode, InverterUnit):
        if isinstance(device, DataNode | InverterUnit) and device.given.feed_in_limit is not None:
            yield device, device.given.feed_in_limit
