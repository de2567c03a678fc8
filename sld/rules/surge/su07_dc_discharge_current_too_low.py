"""Discharge current of DC surge protection too low.

What it checks
    The nominal discharge current In of each DC surge protective device against 5 kA.

Why
    A weaker device wears out after a few surges.

How
    In < In,min.

Remedy
    A device with at least 5 kA.

Clause
    CLC/TS 50539-12 4.6.2.1 (withdrawn).

Not covered
    Devices whose discharge current is not given.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.dc import DC_SURGE_PROTECTION
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("SU07", "discharge current of DC surge protection too low", Severity.NON_COMPLIANCE, "CLC/TS 50539-12 4.6.2.1")
def dc_discharge_current_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device, rated, least in shortfalls(
        ratings, system.apparatus(DC_SURGE_PROTECTION), Symbol.IN_SURGE, Symbol.IN_SURGE_MIN
    ):
        has, needs = two(rated.value, least.value, "kA")
        yield Breach(
            phrase(
                "{device} has a discharge current of {has}, below {needs}", device=named(device), has=has, needs=needs
            ),
            phrase("use a device with a nominal discharge current of at least {needs}", needs=needs),
            (*device.at, "discharge_current"),
            device.key,
            (),
            (rated, least),
        )
