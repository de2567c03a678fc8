"""Neutral not separated from the network, or earthed twice.

What it checks
    Whether a switch that is fed by a source with a neutral-earth link of its own opens the neutral of the network too,
    and whether neutral and earth are linked in one place alone.

Why
    With the neutral still joined the two links are in parallel through it: current of the neutral flows in protective
    conductors, and the network can become live from the island.

How
    A neutral-earth link, and separates_neutral: false, or a switch with no more poles than lines. A switch with
    neutral_earth_link, and a source that links the two as well.

Remedy
    A switch for all live conductors: two poles with one line, four with three. One of the two links.

Clause
    BS 7671:2018 551.4.3.2.1 and 551.6, as a public guide quotes them
    (https://v2lworkshop.co.uk/safety/island-mode-earthing-neutral-switching);
    IEC 60364-5-55:2011 551.6 (from memory).

Not covered
    Backup outputs that do not say what they open.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.island import islands
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("BU02", "neutral not separated from the network", Severity.NON_COMPLIANCE, "IEC 60364-5-55 551.6; BS 7671 551.6")
def neutral_earthed_twice(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for island in islands(system):
        if island.linked and island.separated is False:
            yield Breach(
                phrase(
                    "{switch} leaves the neutral joined to the network, and the second source has a neutral-earth link",
                    switch=named(island.switch),
                ),
                phrase("use a switch that opens the neutral with the lines, and give its `poles`"),
                island.at,
                island.switch.key,
                on_key=True,
            )
        if island.linked_twice:
            yield Breach(
                phrase(
                    "{switch} links neutral and earth, and the source behind it does too", switch=named(island.switch)
                ),
                phrase("keep one of the two links"),
                (*island.at, "neutral_earth_link"),
                island.switch.key,
                tuple((source.at, phrase("the source")) for source in island.sources),
            )
