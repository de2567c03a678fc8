"""Interface relay opens nothing.

What it checks
    Whether each relay of an interface protection names the device that it opens, and whether that device can be opened
    by a command.

Why
    A relay that opens nothing leaves the inverters on a dead network, whatever it measures.

How
    No `trips`, or `trips` names a device that is neither a contactor nor a circuit-breaker.

Remedy
    A contactor, or a circuit-breaker with a release, and its `id` in `trips`.

Clause
    EN 50549-1:2019 4.3.2, 4.9 (from memory): interface switch and interface protection.

Not covered
    Whether a circuit-breaker has a shunt or undervoltage release; whether the switch fails open when its supply is
    lost.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.ac import INTERFACE_RELAY
from sld.model.kinds.role import SWITCHING_ON_COMMAND, TRIPPING
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC61", "interface relay opens nothing", Severity.NON_COMPLIANCE, "EN 50549-1")
def interface_relay_opens_nothing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for relay, given in system.given_as(INTERFACE_RELAY):
        opened = system.devices[system.names[given.trips][0]] if given.trips is not None else None
        if opened is not None and opened.has(SWITCHING_ON_COMMAND, TRIPPING):
            continue
        yield Breach(
            phrase("{relay} is not said to open anything", relay=named(relay))
            if opened is None
            else phrase(
                "{relay} is to open {opened}, which no command opens", relay=named(relay), opened=named(opened)
            ),
            phrase("give the `id` of a contactor or circuit-breaker in `trips`"),
            (*relay.at, "trips"),
            relay.key,
        )
