"""Functional earth without a suitable device.

What it checks
    The device that opens the functional earth of each input that has one.

Why
    A second fault in an earthed array drives its whole current through the earth connection, until it is opened.

How
    No functional_earth_device, or one above In,FE,max by the power of the array (1 A to 25 kWp, 5 A above 250 kWp).

Remedy
    A fuse or breaker of at most that current in the functional earth, with an indication.

Clause
    IEC 62548:2016 6.4 (from memory).

Not covered
    A functional earth through a resistor, which limits the current by itself; accept the finding with that reason.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InputTerminal
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import amount, phrase


@rule("EA09", "functional earth without a suitable device", Severity.NON_COMPLIANCE, "IEC 62548-1 6.4")
def functional_earth_without_device(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for terminal in system.of(InputTerminal):
        most, rated = ratings.get(terminal.key, Symbol.IN_FE_MAX), ratings.get(terminal.key, Symbol.IN_FE)
        if most is None or (rated is not None and not above(rated.value, most.value)):
            continue
        allowed = amount(most.value, "A")
        message = phrase("{terminal} has a functional earth without a device that opens it", terminal=named(terminal))
        if rated is not None:
            has, allowed = two(rated.value, most.value, "A")
            message = phrase(
                "{terminal} has a functional earth that opens with {has}, above the {allowed} for the power of "
                "the array",
                terminal=named(terminal),
                has=has,
                allowed=allowed,
            )
        yield Breach(
            message,
            phrase(
                "put a device of at most {allowed} into the functional earth and give it as `functional_earth_device`",
                allowed=allowed,
            ),
            (*terminal.at, "functional_earth_device"),
            terminal.key,
            (),
            (rated, most) if rated else (most,),
        )
