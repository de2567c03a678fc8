"""Protection settings not given.

What it checks
    Whether the settings of each interface protection are named: at it, or as the network setting of the inverter.

Why
    Operators check which voltage and frequency settings apply, and ask for the name and edition of the set.

How
    A drawing that says what it is handed in for (`document_status`) or that the operator reads.

Remedy
    Give `settings` at the interface protection, or `network_settings` at the inverter.

Clause
    EN 50549-1:2019 4.9 (from memory).

Not covered
    The values of the settings.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InverterUnit
from sld.model.kinds.role import INTERFACE
from sld.model.system import System
from sld.rules.naming import named
from sld.rules.paperwork.issued import handed_in
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("PW08", "protection settings not given", Severity.ADVICE, "EN 50549-1:2019 4.9 (from memory)")
def protection_settings_not_given(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if not handed_in(system):
        return
    separate = list(system.given_as(INTERFACE))
    for device, given in separate:
        if not given.settings:
            yield Breach(
                phrase("the settings of {device} are not given", device=named(device)),
                phrase("give `settings`: the name and edition of the set"),
                (*device.at, "settings"),
                device.key,
            )
    for unit in system.of(InverterUnit):
        if not separate and not unit.given.named_settings:
            yield Breach(
                phrase("the network setting of {unit} is not given", unit=named(unit)),
                phrase("give `network_settings` at the inverter: the name and edition of the set"),
                (*unit.at, "network_settings"),
                unit.key,
            )
