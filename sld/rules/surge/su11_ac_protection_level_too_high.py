"""Protection level of AC surge protection too high.

What it checks
    The voltage protection level Up of each AC surge protective device against that of overvoltage category II.

Why
    A device that lets more through than the equipment stands protects nothing.

How
    Up > Up,max: 2.5 kV up to 277/480 V, 4 kV up to 690 V between lines, 6 kV up to 1000 V.

Remedy
    A device with a lower protection level; 1.5 kV is better for electronics.

Clause
    IEC 60364-5-53:2019 534.4.4; IEC 60364-4-44 Table 443.2 (from memory).

Not covered
    The voltage along the connecting leads.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.ac import AC_SURGE_PROTECTION
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("SU11", "protection level of AC surge protection too high", Severity.NON_COMPLIANCE, "IEC 60364-5-53 534.4.4")
def ac_protection_level_too_high(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device in system.apparatus(AC_SURGE_PROTECTION):
        level, most = ratings.get(device.key, Symbol.UP), ratings.get(device.key, Symbol.UP_MAX)
        if level is None or most is None or not above(level.value, most.value):
            continue
        has, allowed = two(level.value, most.value, "kV")
        yield Breach(
            phrase(
                "{device} has a protection level of {has}, above {allowed}",
                device=named(device),
                has=has,
                allowed=allowed,
            ),
            phrase("use a device with a protection level of at most {allowed}", allowed=allowed),
            (*device.at, "protection_level"),
            device.key,
            (),
            (level, most),
        )
