"""The system while it is being put together: devices by key, their children, and what had to be assumed."""

from __future__ import annotations

from collections.abc import Mapping

from sld.finding import SpecPath
from sld.model.assumed import Assumption
from sld.model.designation import Designator
from sld.model.device import Device
from sld.model.names import main_board, owner_designations
from sld.spec.blocks.board import Board
from sld.spec.document import Spec
from sld.spec.names import named_blocks
from sld.words import Phrase

__all__ = ["Draft"]

_DEFAULT_MAIN_BOARD = "main"


class Draft:
    """Collects devices in the order they are added: parents before children, as the System keeps them."""

    def __init__(self, spec: Spec) -> None:
        self.spec = spec
        self.devices: dict[str, Device] = {}
        self.children: dict[str, list[str]] = {}
        self.assumptions: list[Assumption] = []
        self.boards: Mapping[str, Board] = dict(spec.boards) or {_DEFAULT_MAIN_BOARD: Board()}
        self.main = main_board(self.boards)
        taken = {block.designation for _, block in named_blocks(spec) if block.designation}
        self.designator = Designator(spec.drawing.designation_letters, taken)
        self.owners = owner_designations(spec, self.boards, self.designator)

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
