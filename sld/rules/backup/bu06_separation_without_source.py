"""Nothing feeds what is separated from the network.

What it checks
    Whether something behind a network separation switch can feed it alone.

Why
    An inverter that only follows the network switches off with it; what the switch is for is not known.

How
    No inverter behind the switch whose type has `backup`.

Remedy
    An inverter type with `backup`, or no such switch.

Clause
    Common practice, no source.

Not covered
    Batteries with a converter of their own: give such a converter as an inverter.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.island import islands
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("BU06", "nothing feeds what is separated from the network", Severity.NON_COMPLIANCE, "common practice, no source")
def separation_without_source(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for island in islands(system):
        if not island.sources:
            yield Breach(
                phrase("no inverter behind {switch} feeds without the network", switch=named(island.switch)),
                phrase("give `backup` in the type of an inverter behind it, by its data sheet"),
                island.at,
                island.switch.key,
                on_key=True,
            )
