"""Overcurrent device below 125 % of the current.

What it checks
    The rated current of each breaker and fuse, those at batteries too, against 125 % of the greatest current through
    it.

Why
    A device that is loaded for hours above 80 % of its rating gets warm and trips on good days.

How
    In < 1.25 Imax for what flows three hours or more: sources, charging of batteries, charging points and loads that
    are said to be `continuous`. Other loads count at 100 %.

Remedy
    The next standard rating, with conductors that it protects.

Clause
    NEC 2023 690.9(B), 705.30(B), 210.20(A), 215.3 (from memory); at batteries 706.30, 706.31 as
    https://sparkshift.app/code/nec-706 tells of them.

Not covered
    Assemblies that are listed for operation at 100 % of their rating: accept the finding.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Apparatus
from sld.model.kinds.role import AT_BATTERY, OVERCURRENT_PROTECTION
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.rules.nearest import size_at_least
from sld.rules.ways import overcurrent_devices
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("NE01", "overcurrent device below 125 % of the current", Severity.NON_COMPLIANCE, "NEC 2023 690.9(B), 705.30(B)")
def device_below_125_percent(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device, rated, least in shortfalls(ratings, _devices(system), Symbol.IN, Symbol.IMAX_125):
        has, needs = two(rated.value, least.value, "A")
        yield Breach(
            phrase(
                "{device} is rated {has}, below the {needs} of 125 % of its current",
                device=named(device),
                has=has,
                needs=needs,
            ),
            phrase("use a rated current of {size}", size=size_at_least("nec_240_6_a", least.value, "A")),
            (*device.at, "rated_current"),
            device.key,
            (),
            (rated, least),
        )


def _devices(system: System) -> Iterator[Apparatus]:
    """Yield the overcurrent devices of the AC side and at batteries."""
    yield from overcurrent_devices(system)
    for device in system.apparatus(AT_BATTERY):
        if device.has(OVERCURRENT_PROTECTION):
            yield device
