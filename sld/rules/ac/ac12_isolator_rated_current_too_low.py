"""Rated current of an AC isolator too low.

What it checks
    The rated current of each AC isolator against the overcurrent device of its circuit and the design current.

Why
    A switch does not protect itself against overload: its contacts weld, and it no longer isolates.

How
    In < In,min, the larger of Ib and the rated current of the overcurrent device.

Remedy
    The next standard rating.

Clause
    IEC 60947-3; IEC 60364-5-53 (from memory).

Not covered
    A conditional rating with a fuse by its maker.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.ac import ISOLATOR
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.rules.nearest import size_at_least
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC12", "rated current of an AC isolator too low", Severity.NON_COMPLIANCE, "IEC 60947-3")
def isolator_rated_current_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device, rated, least in shortfalls(ratings, system.apparatus(ISOLATOR), Symbol.IN, Symbol.IN_MIN):
        has, needs = two(rated.value, least.value, "A")
        size = size_at_least("ac_switch_disconnector_a", least.value, "A", nec=system.follows_nec)
        yield Breach(
            phrase(
                "{device} is rated {has}, below the {needs} of what protects it or flows through it",
                device=named(device),
                has=has,
                needs=needs,
            ),
            phrase("use an isolator for {size}", size=size),
            (*device.at, "rated_current"),
            device.key,
            (),
            (rated, least),
        )
