"""Backup power exceeded.

What it checks
    The current that the loads of an island may draw against that of its source.

Why
    An overloaded backup output switches off, and all of the island with it.

How
    IBackup < IIsland: the apparent power of the source as a current, below the sum of the loads.

Remedy
    Fewer loads behind the switch, a load management, or a larger source.

Clause
    Common practice, no source.

Not covered
    Inrush of motors; one phase loaded more than the others.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.island import islands
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import below, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("BU04", "backup power exceeded", Severity.ADVICE, "common practice, no source")
def backup_power_exceeded(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for island in islands(system):
        drawn = ratings.get(island.root, Symbol.I_ISLAND)
        feeds = ratings.get(island.root, Symbol.I_ISLAND_MAX)
        if not island.sources or drawn is None or feeds is None or not below(feeds.value, drawn.value):
            continue
        has, needs = two(feeds.value, drawn.value, "A")
        yield Breach(
            phrase(
                "{source} feeds {has} while the network is away, below the {needs} of the loads there",
                source=named(island.sources[0]),
                has=has,
                needs=needs,
            ),
            phrase("put fewer loads behind the switch, or say by what they are switched off"),
            island.at,
            island.switch.key,
            (),
            (feeds, drawn),
            on_key=True,
        )
