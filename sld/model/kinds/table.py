"""All rows, found where they stand, and the row of a block of the spec."""

from __future__ import annotations

from typing import Any

from sld.model.kinds import ac, battery, dc, units
from sld.model.kinds.row import Kind
from sld.spec.blocks.block import Block
from sld.spec.blocks.data_bus import DataDevice

__all__ = ["KINDS", "circuit_kind", "data_kind"]

KINDS: tuple[Kind[Any], ...] = tuple(
    row for module in (ac, dc, battery, units) for row in vars(module).values() if isinstance(row, Kind)
)
"""Every kind of device."""

_OF_BLOCK = {row.block: row for row in KINDS if row.block is not None and row is not ac.SERVICE_FUSE}
_OF_DATA = {row.name: row for row in (units.LOGGER, units.ENERGY_MANAGER, units.COMMUNICATION_MODULE, units.ROUTER)}


def circuit_kind(block: Block) -> Kind[Any]:
    """Return the kind of a device or cable of a circuit. Raises KeyError for a block without a row."""
    return _OF_BLOCK[type(block)]


def data_kind(block: DataDevice) -> Kind[Any]:
    """Return the kind of a device of the data side."""
    return _OF_DATA[block.kind]
