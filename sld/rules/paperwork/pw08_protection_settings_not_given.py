"""Protection settings not given.

What it checks
    Whether the settings of each interface protection are named: at it, or as the network setting of the inverter.

Why
    Operators check which voltage and frequency settings apply, and ask for the name and edition of the set.

How
    A drawing that says what it is handed in for (`document_status`) or that the operator reads.

Remedy
    Give `settings` at the interface protection, or `grid_code` at the inverter.

Clause
    EN 50549-1:2019 4.9 (from memory).

Not covered
    The values of the settings.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Finding, Severity, rule
from sld.model.device import InverterUnit
from sld.model.kinds.ac import INTERFACE_PROTECTION
from sld.model.system import System
from sld.rules.naming import named
from sld.rules.paperwork.issued import handed_in
from sld.steps.ledger import Ratings


@rule("PW08", "protection settings not given", Severity.ADVICE, "EN 50549-1:2019 4.9 (from memory)")
def protection_settings_not_given(system: System, ratings: Ratings) -> Iterator[Finding]:
    """Yield a finding for each case; see the text at the head of this file."""
    if not handed_in(system):
        return
    separate = list(system.given_as(INTERFACE_PROTECTION))
    for device, given in separate:
        if not given.settings:
            yield Finding(
                "PW08",
                Severity.ADVICE,
                f"the settings of {named(device)} are not given",
                "give `settings`: the name and edition of the set",
                (*device.at, "settings"),
                device.key,
            )
    for unit in system.of(InverterUnit):
        if not separate and not unit.given.grid_code:
            yield Finding(
                "PW08",
                Severity.ADVICE,
                f"the network setting of {named(unit)} is not given",
                "give `grid_code` at the inverter: the name and edition of the set",
                (*unit.at, "grid_code"),
                unit.key,
            )
