"""No earth electrode without the network.

What it checks
    Whether an installation that can be fed without the network has an earth electrode of its own.

Why
    The earth that the network brings is not certain while it is away or worked on; the neutral of the second source is
    then earthed by nothing.

How
    An island, and no electrode under earthing.

Remedy
    An earth electrode at the main earthing terminal.

Clause
    BS 7671:2018 551.4.3.2.1, an independent means of earthing, as a public guide quotes it
    (https://v2lworkshop.co.uk/safety/island-mode-earthing-neutral-switching);
    IEC 60364-5-55:2011 551.4.3.2 (from memory).

Not covered
    The resistance of the electrode: RCDs of 30 mA trip at any that is usual.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.island import islands
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule(
    "BU07", "no earth electrode without the network", Severity.NON_COMPLIANCE, "IEC 60364-5-55 551.4.3; BS 7671 551.4.3"
)
def electrode_missing_without_network(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if system.earthing.electrode is not None:
        return
    for island in islands(system):
        yield Breach(
            phrase(
                "what is behind {switch} has no earth electrode of its own while the network is away",
                switch=named(island.switch),
            ),
            phrase("give `electrode` under `earthing`"),
            island.at,
            island.switch.key,
            on_key=True,
        )
