"""A system while it is being put together: devices by key, their children, and what had to be assumed."""

from __future__ import annotations

from collections.abc import Mapping, Set

from sld.finding import SpecPath
from sld.model.assumed import Assumption
from sld.model.copies import Copy
from sld.model.designation import Designator
from sld.model.device import Device
from sld.model.names import boards_of, main_board
from sld.spec.names import counted_names
from sld.spec.supply_points import SupplyPoint
from sld.words import Phrase

__all__ = ["Draft"]


class Draft:
    """Collects devices in the order they are added: parents before children, as the System keeps them.

    designator, owners: those of the whole drawing, so that nothing behind two supply points is designated alike.
    told_apart: names of inverters and designations that something of the spec speaks of; None where no inverters are to
    be known as equal.
    """

    def __init__(
        self,
        point: SupplyPoint,
        designator: Designator,
        owners: Mapping[tuple[str, str], str],
        told_apart: Set[str] | None = None,
    ) -> None:
        self.point = point
        self.spec = point.spec
        self.devices: dict[str, Device] = {}
        self.children: dict[str, list[str]] = {}
        self.assumptions: list[Assumption] = []
        self.boards = boards_of(self.spec)
        self.main = main_board(self.boards)
        self.designator = designator
        self.owners = owners
        self.inverters = counted_names(self.spec)
        self.told_apart = told_apart
        self.copies: dict[str, tuple[Copy, ...]] = {}

    def add(self, device: Device) -> str:
        """Keep a device, hang it under its parent, and return its key. Raises ValueError where the key is taken."""
        if device.key in self.devices:
            raise ValueError(f"two devices have the key {device.key!r}")
        self.devices[device.key] = device
        if device.parent:
            self.children.setdefault(device.parent, []).append(device.key)
        return device.key

    def assume(self, at: SpecPath, device: str, what: Phrase, remedy: Phrase) -> None:
        """Say what was added or chosen because the spec leaves it out."""
        self.assumptions.append(Assumption(what, remedy, at, device))
