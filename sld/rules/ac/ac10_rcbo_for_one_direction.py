"""RCBO for one direction on an inverter circuit.

What it checks
    RCBOs that are not suitable for power flow in both directions, with an inverter behind them.

Why
    Fed from the load side, the electronics of such a device can burn out while it opens, and it protects no more.

How
    bidirectional: false with inverters behind.

Remedy
    A bidirectional RCBO, or a breaker and a separate RCD.

Clause
    BS 7671:2018+A3:2024 530.3.201 (number from memory).

Not covered
    Breakers with marked line and load sides.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.ac import RCBO
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC10", "RCBO for one direction on an inverter circuit", Severity.DANGER, "BS 7671 530.3.201")
def rcbo_for_one_direction(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device, given in system.given_as(RCBO):
        if not given.bidirectional and system.inverters_behind(device.key):
            yield Breach(
                phrase(
                    "{device} is for one direction of power, and an inverter feeds back through it",
                    device=named(device),
                ),
                phrase("use a bidirectional RCBO, or a circuit-breaker and a separate RCD"),
                (*device.at, "bidirectional"),
                device.key,
            )
