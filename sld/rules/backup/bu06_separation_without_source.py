"""Nothing feeds what is separated from the network.

What it checks
    Whether something behind a network separation switch can feed it alone.

Why
    An inverter that only follows the network switches off with it; what the switch is for is not known.

How
    No inverter behind the switch whose type has `backup`, and no battery whose converter has `backup_power`.

Remedy
    An inverter type with `backup`, a battery with `backup_power`, or no such switch.

Clause
    Common practice, no source.

Not covered
    Whether the inverters beside it can follow what feeds then.
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
                phrase("nothing behind {switch} feeds without the network", switch=named(island.switch)),
                phrase("give `backup` in the type of an inverter behind it, or `backup_power` of a battery"),
                island.at,
                island.switch.key,
                on_key=True,
            )
