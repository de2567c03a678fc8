"""DC isolator voltage too low.

What it checks
    The rated voltage of each DC isolator, for the wiring of its poles, against the highest array voltage.

Why
    A direct-current arc that the switch cannot put out burns on and sets fire to the enclosure.

How
    Ue < Ue,min, which is Uoc,max of the strings when cold.

Remedy
    An isolator for a higher voltage, or more of its poles in series if its data sheet gives a voltage for that.

Clause
    IEC 60947-3; IEC 62548:2016 7.3 (from memory).

Not covered
    The rated insulation voltage.
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


@rule("DC18", "DC isolator voltage too low", Severity.DANGER, "IEC 60947-3")
def isolator_voltage_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for switch, rated, least in shortfalls(ratings, system.apparatus(DC_ISOLATOR), Symbol.UE, Symbol.UE_MIN):
        has, needs = two(rated.value, least.value, "V")
        yield Breach(
            phrase(
                "{switch} is rated {has}, below the {needs} that the strings reach",
                switch=named(switch),
                has=has,
                needs=needs,
            ),
            phrase("use a DC isolator for {size}", size=size_at_least("dc_isolator_v", least.value, "V")),
            (*switch.at, "rated_voltage"),
            switch.key,
            (),
            (rated, least),
        )
