"""Protection level of DC surge protection too high.

What it checks
    The voltage protection level Up of each DC surge protective device, with the voltage along its leads, against the
    impulse withstand of the inverter.

Why
    A device that lets more through than the inverter stands protects nothing.

How
    Up + 1 kV/m · leads > Up,max, which is 0.8 of the impulse withstand voltage: that of the inverter where its type
    gives it, else by the array voltage.

Remedy
    A device with a lower protection level.

Clause
    IEC 61643-32; IEC 61643-12 (from memory).

Not covered
    Leads whose length is not given.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.dc import DC_SURGE_PROTECTION
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("SU06", "protection level of DC surge protection too high", Severity.NON_COMPLIANCE, "IEC 61643-32")
def dc_protection_level_too_high(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device in system.apparatus(DC_SURGE_PROTECTION):
        level, most = ratings.get(device.key, Symbol.UP_LEADS), ratings.get(device.key, Symbol.UP_MAX)
        if level is None or most is None or not above(level.value, most.value):
            continue
        has, allowed = two(level.value, most.value, "kV")
        yield Breach(
            phrase(
                "{device} has a protection level of {has} with its leads, above the {allowed} that the inverter allows",
                device=named(device),
                has=has,
                allowed=allowed,
            ),
            phrase("use a device and leads with at most {allowed} in all", allowed=allowed),
            (*device.at, "protection_level"),
            device.key,
            (),
            (level, most),
        )
