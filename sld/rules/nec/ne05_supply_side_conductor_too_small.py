"""Conductor ahead of the service disconnect too small.

What it checks
    The conductors of sources that are connected ahead of the service disconnect, up to their first overcurrent device.

Why
    There only the fuses of the network operator stand between a fault and the transformer.

How
    S < S,least: 6 AWG copper or 4 AWG aluminium.

Remedy
    That size at least, and an overcurrent device as near as the code asks.

Clause
    NEC 2023 705.11 (from memory), 2020 as
    https://mayfield.energy/technical-articles/code-corner-70511-a-and-b tells it.

Not covered
    The length up to the overcurrent device: NE09.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls
from sld.rules.naming import named
from sld.rules.ways import ac_cables
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("NE05", "conductor ahead of the service disconnect too small", Severity.NON_COMPLIANCE, "NEC 2023 705.11")
def supply_side_conductor_too_small(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for cable, section, least in shortfalls(ratings, ac_cables(system), Symbol.S, Symbol.S_LEAST):
        yield Breach(
            phrase(
                "{cable} ahead of the service disconnect is {section}, below {least}",
                cable=named(cable),
                section=section,
                least=least,
            ),
            phrase("use at least {least}", least=least),
            (*cable.at, "section"),
            cable.key,
            (),
            (section, least),
        )
