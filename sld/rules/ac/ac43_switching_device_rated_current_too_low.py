"""Rated current of a contactor or coupling switch too low.

What it checks
    The rated current of each contactor, and of the coupling switch of each interface protection, against the
    overcurrent device of its circuit and the design current.

Why
    It carries the whole current of what it disconnects, for hours in full sun: its contacts overheat and weld, and the
    installation stays on the network when it should leave it.

How
    In < In,min, the larger of Ib and the rated current of the overcurrent device.

Remedy
    The next standard rating.

Clause
    IEC 60947-4-1; IEC 60364-5-53 (from memory).

Not covered
    The utilization category, and a conditional rating with a fuse by its maker.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.role import SWITCHING_ON_COMMAND
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.rules.nearest import size_at_least
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC43", "rated current of a contactor or coupling switch too low", Severity.NON_COMPLIANCE, "IEC 60947-4-1")
def switching_device_rated_current_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    devices = (device for device in system.apparatus(SWITCHING_ON_COMMAND) if not device.dc)
    for device, rated, least in shortfalls(ratings, devices, Symbol.IN, Symbol.IN_MIN):
        has, needs = two(rated.value, least.value, "A")
        size = size_at_least("ac_switch_disconnector_a", least.value, "A", nec=system.follows_nec)
        yield Breach(
            phrase(
                "{device} is rated {has}, below the {needs} of what protects it or flows through it",
                device=named(device),
                has=has,
                needs=needs,
            ),
            phrase("use one for {size}", size=size),
            (*device.at, "rated_current"),
            device.key,
            (),
            (rated, least),
        )
