"""What the index of the sheets with parts of the diagram is made of: each inverter, and what hangs on it."""

from __future__ import annotations

from collections.abc import Mapping

from sld.frozen import dataclass
from sld.layout.diagram.capacity import Capacity, of_inverters
from sld.model.device import InverterUnit
from sld.model.system import System

__all__ = ["Indexed", "indexed"]


@dataclass(frozen=True, slots=True)
class Indexed:
    """An inverter as the index of sheets tells of it."""

    designation: str
    product: str
    capacity: Capacity


def indexed(system: System) -> Mapping[str, Indexed]:
    """Return by the key of each device that has a capacity of its own what the index tells of it."""
    found = {}
    for key, capacity in of_inverters(system).items():
        unit = system.devices[key]
        assert isinstance(unit, InverterUnit)
        found[key] = Indexed(unit.designation, unit.product, capacity)
    return found
