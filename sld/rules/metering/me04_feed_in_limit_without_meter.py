"""Feed-in limit without a meter for it.

What it checks
    Whether a limit of the export below the power of the inverters has a meter that measures for it.

Why
    Without a measurement at the supply point nothing keeps the limit.

How
    export_limit < Pac, and no meter with purpose: feed_in_limit.

Remedy
    A meter with purpose: feed_in_limit in the circuit of the main board, connected to the controller.

Clause
    Terms of the network operator; common practice, no source.

Not covered
    A fixed power limit set at the inverters; accept the finding with it.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.ac import METER
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import below, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("ME04", "feed-in limit without a meter for it", Severity.NON_COMPLIANCE, "terms of the network operator")
def feed_in_limit_without_meter(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    limit_w, power = system.supply.export_limit_w, ratings["", Symbol.PAC]
    if limit_w is None or not below(limit_w, power.value):
        return
    if any(meter.purpose == "feed_in_limit" for _, meter in system.given_as(METER)):
        return
    has, limit = two(power.value, limit_w, "W")
    supply = system.devices[system.root]
    yield Breach(
        phrase(
            "{supply} may export {limit} of the {has} of the inverters, and no meter measures for that limit",
            supply=named(supply),
            limit=limit,
            has=has,
        ),
        phrase("add a `meter` with `purpose: feed_in_limit` to the `circuit` of the main board"),
        ("supply", "export_limit"),
        supply.key,
        (),
        (power,),
    )
