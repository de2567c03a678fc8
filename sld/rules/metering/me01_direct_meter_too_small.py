"""Direct meter too small.

What it checks
    The highest current of each direct meter against the device ahead of it and the generation.

Why
    Above its highest current the meter counts wrongly and overheats.

How
    Imax < Im.

Remedy
    A larger direct meter, or one with current transformers.

Clause
    IEC 62053-21; EN 50470-3 (from memory).

Not covered
    What the metering operator installs.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.ac import METER
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("ME01", "direct meter too small", Severity.NON_COMPLIANCE, "IEC 62053-21; EN 50470-3")
def direct_meter_too_small(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for meter, rated, needed in shortfalls(ratings, system.apparatus(METER), Symbol.IMAX, Symbol.IM):
        has, needs = two(rated.value, needed.value, "A")
        yield Breach(
            phrase("{meter} takes {has}, below the {needs} that can flow", meter=named(meter), has=has, needs=needs),
            phrase("use a direct meter for at least {needs}, or current transformers (`connection: ct`)", needs=needs),
            (*meter.at, "current_max"),
            meter.key,
            (),
            (rated, needed),
        )
