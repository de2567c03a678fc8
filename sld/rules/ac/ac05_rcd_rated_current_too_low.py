"""Rated current of an RCD too low.

What it checks
    The rated current of each RCD without overcurrent protection against the device in series with it and the design
    current.

Why
    An RCD does not protect itself against overload: its contacts weld or burn.

How
    In < In,min, the larger of Ib and the rated current of the overcurrent device of its circuit; of the RCD of a board
    other than the main one, the sum of its outgoing devices where that is less.

Remedy
    The next standard rating.

Clause
    IEC 61008-1; IEC 60364-5-53 (from memory).

Not covered
    Short-circuit coordination with the device ahead.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.ac import RCD
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.rules.nearest import size_at_least
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC05", "rated current of an RCD too low", Severity.NON_COMPLIANCE, "IEC 61008-1; IEC 60364-5-53")
def rcd_rated_current_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device, rated, least in shortfalls(ratings, system.apparatus(RCD), Symbol.IN, Symbol.IN_MIN):
        has, needs = two(rated.value, least.value, "A")
        yield Breach(
            phrase(
                "{device} is rated {has}, below the {needs} of what protects it or flows through it",
                device=named(device),
                has=has,
                needs=needs,
            ),
            phrase("use an RCD for {size}", size=size_at_least("rccb_a", least.value, "A", nec=system.follows_nec)),
            (*device.at, "rated_current"),
            device.key,
            (),
            (rated, least),
        )
