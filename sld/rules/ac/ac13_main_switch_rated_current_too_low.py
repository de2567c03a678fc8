"""Rated current of a main switch too low.

What it checks
    The rated current of each main switch against the device ahead of it and the design current.

Why
    The main switch carries import and export; overloaded, its contacts weld and nothing can be switched off.

How
    In < In,min, the larger of the export and the rated current of the overcurrent device in series, which limits what
    the loads draw; without one, of Ib, loads with their diversity and load management.

Remedy
    The next standard rating.

Clause
    IEC 60947-3; IEC 60364-5-55 551 (from memory).

Not covered
    A demand lower than the service fuse that the network operator has agreed to: diversity of loads alone protects
    no switch against overload (BS 7671 536.4.3.2, from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.ac import MAIN_SWITCH
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.rules.nearest import size_at_least
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC13", "rated current of a main switch too low", Severity.NON_COMPLIANCE, "IEC 60947-3; IEC 60364-5-55 551")
def main_switch_rated_current_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device, rated, least in shortfalls(ratings, system.apparatus(MAIN_SWITCH), Symbol.IN, Symbol.IN_MIN):
        has, needs = two(rated.value, least.value, "A")
        size = size_at_least("ac_switch_disconnector_a", least.value, "A", nec=system.follows_nec)
        yield Breach(
            phrase(
                "{device} is rated {has}, below the {needs} of what protects it or flows through it",
                device=named(device),
                has=has,
                needs=needs,
            ),
            phrase("use a main switch for {size}", size=size),
            (*device.at, "rated_current"),
            device.key,
            (),
            (rated, least),
        )
