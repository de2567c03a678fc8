"""Place of isolation not given.

What it checks
    Whether the place of each isolator and main switch is given, by itself, its enclosure, or what it serves.

Why
    Whoever has to isolate the installation must find the device. The documentation names type, location and rating.

How
    A drawing that says what it is handed in for (`document_status`) or that the operator reads.

Remedy
    Give `location` at the device, at its board, or at the inverter.

Clause
    IEC 62446-1:2016 4.3.4, 4.3.5 (from memory).

Not covered
    Whether the device can be reached there.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.role import ISOLATION, SWITCHING
from sld.model.system import System
from sld.rules.naming import named
from sld.rules.paperwork.issued import handed_in
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("PW07", "place of isolation not given", Severity.ADVICE, "IEC 62446-1:2016 4.3.4, 4.3.5 (from memory)")
def place_of_isolation_not_given(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if not handed_in(system):
        return
    for device in system.apparatus(ISOLATION):
        if not device.has(SWITCHING):
            continue
        holder, served = system.devices.get(device.enclosure), system.devices.get(device.owner)
        box = system.boxes.get(device.enclosure)
        around = [each.location for each in (holder, served) if each is not None]
        if not (device.location or any(around) or (box and box[1].location)):
            yield Breach(
                phrase("the place of {device} is not given", device=named(device)),
                phrase("give `location` at the device, at its board, or at the inverter"),
                (*device.at, "location"),
                device.key,
            )
