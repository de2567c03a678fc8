"""The lines on the diagram for those who read it: a crew needs no computed currents, a network operator no addresses.

Ratings of devices, sections, lengths and settings stay for every reader, because both need them; so does what can kill:
the highest DC voltage, and a limit that is exceeded.
"""

from __future__ import annotations

from sld.layout.diagram.line import Line, Role, line
from sld.model.device import Cable, Device

__all__ = ["read_by"]

_NOT_FOR_A_CREW = (Role.COMPUTED, Role.LIMIT)


def read_by(reader: str, lines: tuple[Line, ...], device: Device) -> tuple[Line, ...]:
    """Return the lines below a device for a reader: those of the whole drawing, without what only the others need.

    For the crew the route of a cable is added.
    """
    if reader != "crew":
        return lines
    route = line(Role.PLACE, device.given.route) if isinstance(device, Cable) else None
    kept = tuple(each for each in lines if each.role not in _NOT_FOR_A_CREW)
    return (*kept, route) if route else kept
