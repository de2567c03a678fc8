"""Change-over switch without interlock.

What it checks
    Whether a change-over switch says what keeps its two sources apart.

Why
    Two sources that are joined out of step drive a short circuit, and a network that is worked on becomes live.

How
    interlock: none is a danger; an interlock that is not given is a non-compliance.

Remedy
    A mechanical or electrical interlock, one key for both locks, or a switch of three positions that opens before it
    closes.

Clause
    IEC 60364-5-55:2011 551.6.1 (from memory).

Not covered
    Whether the interlock works: it is tried at commissioning.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.ac import CHANGEOVER
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("BU05", "change-over switch without interlock", Severity.DANGER, "IEC 60364-5-55 551.6.1")
def changeover_without_interlock(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device, given in system.given_as(CHANGEOVER):
        if given.interlock not in (None, "none"):
            continue
        known = given.interlock is not None
        yield Breach(
            phrase("{switch} has nothing that keeps its two sources apart", switch=named(device))
            if known
            else phrase("{switch} does not say what keeps its two sources apart", switch=named(device)),
            phrase("use a switch with an interlock, and give `interlock`"),
            (*device.at, "interlock"),
            device.key,
            severity=Severity.DANGER if known else Severity.NON_COMPLIANCE,
        )
