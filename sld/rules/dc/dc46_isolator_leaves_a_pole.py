"""DC isolator that does not open both poles.

What it checks
    The poles of every DC isolator, and of each other DC device that is given as suitable for isolation or is a
    fuse-switch-disconnector at a battery.

Why
    With one pole closed the array stays connected to the inverter, and through a fault to earth it is live on both
    sides of the open switch.

How
    A device that isolates, with poles: 1.

Remedy
    A switch-disconnector that opens plus and minus together.

Clause
    IEC 60364-7-712:2017 712.537; IEC 62548:2016 7.3 (from memory).

Not covered
    How the poles are wired in series; the rated voltage holds for the wiring that is built.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.role import ISOLATION, POLES
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DC46", "DC isolator that does not open both poles", Severity.DANGER, "IEC 60364-7-712 712.537; IEC 62548-1")
def isolator_leaves_a_pole(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for switch, given in system.given_as(POLES):
        if switch.dc and switch.has(ISOLATION) and given.poles == 1:
            yield Breach(
                phrase("{switch} has 1 pole and leaves the other closed", switch=named(switch)),
                phrase("use a switch-disconnector of at least 2 poles"),
                (*switch.at, "poles"),
                switch.key,
            )
