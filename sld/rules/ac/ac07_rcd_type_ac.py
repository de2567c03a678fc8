"""RCD of type AC not sufficient.

What it checks
    RCDs and RCBOs of type AC with an inverter or the converter of a battery behind them, or socket-outlets.

Why
    Type AC sees neither pulsating nor smooth direct residual current, which every converter can cause; it may never
    trip.

How
    sensitivity: AC on a device with such a converter behind it; non-compliance on one with `supplies: socket_outlets`
    behind it where type AC is for fixed equipment alone or not allowed: BS 7671, AS/NZS 5033, and in BE, DE and NL.

Remedy
    The type that the inverter needs, A at least.

Clause
    IEC 60364-7-712:2017 712.531.3.5.1; IEC 60364-5-53:2019 531.3.3 (numbers from memory); BS 7671:2018+A2
    531.3.3, AS/NZS 3000:2018+A2 2.6.2.2, AREI book 1 5.3.5.3, DIN VDE 0100-530 531.3.3, NEN 1010 531.3.3 (from memory).

Not covered
    Fixed equipment and luminaires.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Consumer, Device
from sld.model.kinds.role import RESIDUAL_PROTECTION
from sld.model.system import System
from sld.ratings.symbol import Word
from sld.rules.naming import named
from sld.rules.ways import feeds_back
from sld.steps.ledger import Ratings
from sld.words import phrase

_NOT_FOR_SOCKETS = ("BE", "DE", "NL")
"""Countries without a rule profile of their own where type AC is not allowed (from memory)."""


@rule("AC07", "RCD of type AC not sufficient", Severity.DANGER, "IEC 60364-7-712 712.531.3.5.1")
def rcd_type_ac(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device, block in system.given_as(RESIDUAL_PROTECTION):
        given = block.sensitivity
        needed = ratings.word(device.key, Word.RCD_TYPE)
        if given == "AC" and needed and feeds_back(system, device):  # a charging point: AC30
            yield Breach(
                phrase(
                    "{device} is of type AC, and the converters behind it need type {needed}",
                    device=named(device),
                    needed=needed,
                ),
                phrase("use type {needed}", needed=needed),
                (*device.at, "sensitivity"),
                device.key,
            )
        elif given == "AC" and _has_sockets(system, device):
            yield Breach(
                phrase("{device} is of type AC, and socket-outlets are behind it", device=named(device)),
                phrase("use type {needed}", needed="A"),
                (*device.at, "sensitivity"),
                device.key,
                severity=Severity.NON_COMPLIANCE,
            )


def _has_sockets(system: System, device: Device) -> bool:
    """Return whether socket-outlets are behind a device where type AC is not for them."""
    if system.profile not in ("BS 7671", "AS/NZS 5033") and system.supply.country not in _NOT_FOR_SOCKETS:
        return False
    loads = (each for each in system.downstream(device.key) if isinstance(each, Consumer))
    return any(load.given.supplies == "socket_outlets" for load in loads)
