"""Breaking capacity at a battery too low.

What it checks
    The rated DC breaking capacity of fuses and circuit-breakers at a battery, where it is given.

Why
    A device that has to break more than it can bursts and burns; a battery feeds many times its rated current.

How
    breaking_capacity < Ik,dc, the short-circuit current of the battery at its terminals.

Remedy
    A device with a higher breaking capacity at direct voltage.

Clause
    IEC 60364-4-43:2008 434.5.1; IEC 60269-1, IEC 60947-2 (from memory).
    NEC 2023 706.31(C), as
    https://ecmweb.com/maintenance-repair-operations/article/21137091/nec-requirements-for-energy-storage-systems tells.

Not covered
    The time constant of the circuit; batteries in parallel, whose currents add: give that of all together.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.role import AT_BATTERY
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("BA04", "breaking capacity at a battery too low", Severity.DANGER, "IEC 60364-4-43 434.5.1")
def breaking_capacity_at_battery_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device, rated, least in shortfalls(ratings, system.apparatus(AT_BATTERY), Symbol.ICN, Symbol.IK_DC):
        has, needs = two(rated.value, least.value, "kA")
        yield Breach(
            phrase(
                "{device} breaks {has}, below the {needs} that the battery feeds",
                device=named(device),
                has=has,
                needs=needs,
            ),
            phrase("use one with a DC breaking capacity of at least {needs}", needs=needs),
            (*device.at, "breaking_capacity"),
            device.key,
            (),
            (rated, least),
        )
