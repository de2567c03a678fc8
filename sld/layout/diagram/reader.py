"""The lines on the diagram for those who read it."""

from __future__ import annotations

from sld.layout.diagram.line import Line, Role, line
from sld.model.device import Cable, Device
from sld.readers import READERS

__all__ = ["read_by", "reads"]


def reads(reader: str, role: Role) -> bool:
    """Return whether lines of a role are for a reader."""
    return role not in READERS[reader].roles


def read_by(reader: str, lines: tuple[Line, ...], device: Device) -> tuple[Line, ...]:
    """Return the lines below a device for a reader, the route of a cable after the others."""
    route = line(Role.ROUTE, device.given.route) if isinstance(device, Cable) else None
    every = (*lines, route) if route else lines
    return tuple(each for each in every if reads(reader, each.role))
