"""RCD of type AC ahead of an inverter.

What it checks
    RCDs and RCBOs of type AC with an inverter or the converter of a battery behind them.

Why
    Type AC sees neither pulsating nor smooth direct residual current, which every converter can cause; it may never
    trip.

How
    sensitivity: AC on a device with such a converter behind it.

Remedy
    The type that the inverter needs, A at least.

Clause
    IEC 60364-7-712:2017 712.531.3.5.1; IEC 60364-5-53:2019 531.3.3 (numbers from memory).

Not covered
    Circuits of loads alone.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.role import RESIDUAL_PROTECTION
from sld.model.system import System
from sld.ratings.symbol import Word
from sld.rules.naming import named
from sld.rules.ways import feeds_back
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC07", "RCD of type AC ahead of an inverter", Severity.DANGER, "IEC 60364-7-712 712.531.3.5.1")
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
