"""Fewer poles than phases.

What it checks
    The number of poles of breakers, RCBOs, RCDs, isolators, main switches and contactors against the line conductors
    of their circuit.

Why
    A conductor that is not switched stays live, and the device does not protect it.

How
    poles, where it is given, below the number of line conductors: three, two with split phase or between two lines,
    else one; the neutral is not counted.

Remedy
    A device with a pole for each line conductor, and one for the neutral where it must be switched.

Clause
    IEC 60364-5-53 461.2 (from memory); NEC 2023 240.15(B) (from memory).

Not covered
    Single-pole circuit-breakers with identified handle ties (NEC 240.15(B)(1)): give `poles: 2` for the two. Whether
    the neutral must be switched, which depends on the earthing system and the country.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.conductors import line_named, lines_count
from sld.model.kinds.role import POLES
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import counted, phrase


@rule("AC24", "fewer poles than phases", Severity.NON_COMPLIANCE, "IEC 60364-5-53 461.2")
def poles_fewer_than_phases(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device, given in system.given_as(POLES):
        poles, lines = given.poles, lines_count(system, device.owner)
        if not device.dc and poles is not None and poles < lines:
            taken = system.supply.split_phase and line_named(system, device.owner) is None
            yield Breach(
                counted(
                    "{device} has {count} pole in a circuit of {lines} phases",
                    "{device} has {count} poles in a circuit of {lines} phases",
                    poles,
                    device=named(device),
                    lines=lines,
                )
                if lines == 3
                else phrase("{device} has 1 pole in a circuit of two line conductors", device=named(device)),
                phrase("use a device with at least 2 poles, or give `line` where it has one line and a neutral")
                if taken
                else phrase("use a device with at least {lines} poles", lines=lines),
                (*device.at, "poles"),
                device.key,
            )
