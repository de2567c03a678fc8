"""The lines on the diagram for those who read it: a crew needs no computed currents, a network operator no addresses.

Ratings of devices, sections, lengths and settings stay for every reader, because both need them; so does the highest DC
voltage, because it can kill.
"""

from __future__ import annotations

import re

from sld.model.device import Cable, Device

__all__ = ["read_by"]

_COMPUTED = re.compile(r"(?:Isc|Ib|Iz|Ik|[≤>]) .*")
"""A line that states a current that somebody computed, or the limit that a voltage is held against."""


def read_by(reader: str, lines: tuple[str, ...], device: Device) -> tuple[str, ...]:
    """Return the lines below a device for a reader: those of the whole drawing, without what only the others need.

    For the crew the route of a cable is added.
    """
    if reader != "crew":
        return lines
    route = device.given.route if isinstance(device, Cable) else None
    kept = tuple(line for line in lines if not _COMPUTED.fullmatch(line))
    return (*kept, route) if route else kept
