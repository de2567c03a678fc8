"""DC isolator current too low.

What it checks
    The rated current of each DC isolator at its voltage against the largest current of the strings behind it.

Why
    The switch overheats in strong sun, or fails when it is opened under load.

How
    Ie < Ie,min, the profile's factor times Isc of all strings behind it.

Remedy
    An isolator for a higher current.

Clause
    IEC 62548:2016 7.3 (from memory); IEC 60947-3.

Not covered
    Derating in a hot enclosure.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.dc import DC_ISOLATOR
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.rules.nearest import size_at_least
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DC19", "DC isolator current too low", Severity.DANGER, "IEC 60947-3; IEC 62548-1")
def isolator_current_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for switch, rated, least in shortfalls(ratings, system.apparatus(DC_ISOLATOR), Symbol.IE, Symbol.IE_MIN):
        has, needs = two(rated.value, least.value, "A")
        yield Breach(
            phrase(
                "{switch} is rated {has}, below the {needs} of the strings behind it",
                switch=named(switch),
                has=has,
                needs=needs,
            ),
            phrase(
                "use a DC isolator for {size}",
                size=size_at_least("dc_isolator_a", least.value, "A", nec=system.follows_nec),
            ),
            (*switch.at, "rated_current"),
            switch.key,
            (),
            (rated, least),
        )
