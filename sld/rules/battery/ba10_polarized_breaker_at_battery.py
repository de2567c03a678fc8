"""Polarized circuit-breaker at a battery.

What it checks
    Whether a circuit-breaker at a battery breaks current in both directions.

Why
    A battery is charged and discharged: in one of the two directions a polarized device draws the arc to the wrong
    side and can burn.

How
    polarized: true.

Remedy
    A circuit-breaker that is not polarized.

Clause
    IEC 60947-2, marking of polarity (from memory).

Not covered
    Devices that do not say whether they are polarized.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.battery import BATTERY_BREAKER
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("BA10", "polarized circuit-breaker at a battery", Severity.DANGER, "IEC 60947-2")
def polarized_breaker_at_battery(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for breaker, given in system.given_as(BATTERY_BREAKER):
        if given.polarized:
            yield Breach(
                phrase(
                    "{breaker} breaks current in one direction only, and the battery is charged and discharged",
                    breaker=named(breaker),
                ),
                phrase("use a DC circuit-breaker that is not polarized"),
                (*breaker.at, "polarized"),
                breaker.key,
            )
