"""Residual operating current too near the leakage.

What it checks
    The rated residual current of each RCD against the leakage of the inverters behind it.

Why
    An RCD may trip from half its rated current on; standing leakage makes it trip without a fault, and someone
    bridges it.

How
    IΔn < IΔn,least, the sum of the leakage currents divided by 0.3.

Remedy
    A larger rated residual current where the protection allows it, or fewer inverters behind one RCD.

Clause
    IEC 60364-5-53:2019 531.3.2 (number from memory).

Not covered
    Leakage of wet arrays above what the data sheet states.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.role import RESIDUAL_PROTECTION
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.rules.nearest import size_at_least
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC09", "residual operating current too near the leakage", Severity.ADVICE, "IEC 60364-5-53 531.3.2")
def residual_current_below_leakage(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device, rated, least in shortfalls(
        ratings, system.apparatus(RESIDUAL_PROTECTION), Symbol.IDN, Symbol.IDN_LEAST
    ):
        has, needs = two(rated.value, least.value, "mA")
        yield Breach(
            phrase(
                "{device} has IΔn {has}, below the {needs} that the leakage of the inverters behind it asks for",
                device=named(device),
                has=has,
                needs=needs,
            ),
            phrase(
                "use IΔn {size} where the protection allows it", size=size_at_least("rcd_idn_ma", least.value, "mA")
            ),
            (*device.at, "residual_current"),
            device.key,
            (),
            (rated, least),
        )
