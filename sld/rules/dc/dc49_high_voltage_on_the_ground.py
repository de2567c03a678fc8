"""Array above 1000 V on the ground.

What it checks
    The highest voltage of strings of a ground-mounted installation.

Why
    Above 1000 V the array is for places that only instructed persons can enter.

How
    Uoc,max > 1000 V with building: ground_mounted. On buildings DC03 applies.

Remedy
    A fence or a locked place, with warnings at its entries; accept the finding with that reason.

Clause
    IEC 62548:2016, arrays above 1000 V (from memory).

Not covered
    Clearances and equipment of the other parts for such a voltage.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import StringGroup
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase

_OPEN_TO_ALL_V = 1000.0


@rule("DC49", "array above 1000 V on the ground", Severity.ADVICE, "IEC 62548-1")
def high_voltage_on_the_ground(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if system.site.building != "ground_mounted":
        return
    for group in system.of(StringGroup):
        voltage = ratings[group.key, Symbol.UOC_MAX]
        if not above(voltage.value, _OPEN_TO_ALL_V):
            continue
        reached, limit = two(voltage.value, _OPEN_TO_ALL_V, "V")
        yield Breach(
            phrase(
                "{group} reaches {reached}; above {limit} only instructed persons may have access",
                group=named(group),
                reached=reached,
                limit=limit,
            ),
            phrase("fence or lock the array and warn at its entries, and accept the finding with that reason"),
            (*group.at, "modules_in_series"),
            group.key,
            ((("site", "building"), phrase("kind of installation")),),
            (voltage,),
        )
