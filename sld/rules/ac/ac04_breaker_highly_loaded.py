"""Circuit-breaker near its rated current for hours.

What it checks
    The loading Ib/In of miniature circuit-breakers that carry the current of inverters.

Why
    Inverters run near full power for hours, side by side in a warm board; a breaker loaded that high can trip or
    age early.

How
    Ib/In above 90 % and not above 100 %.

Remedy
    The next larger rating with a cable that carries it, or space between the breakers.

Clause
    Common practice, no source; IEC 61439 leaves it to the rated diversity factor.

Not covered
    Derating data of the maker. Breakers that the spec leaves open: they are chosen by Ib ≤ In.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.quantity import Origin
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.rules.ways import overcurrent_devices
from sld.steps.ledger import Ratings
from sld.steps.protection import protective_family
from sld.words import phrase

_MOST_PERCENT = 90.0
_FULL_PERCENT = 100.0


@rule("AC04", "circuit-breaker near its rated current for hours", Severity.ADVICE, "common practice, no source")
def breaker_highly_loaded(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device in overcurrent_devices(system):
        loading = ratings.get(device.key, Symbol.IB_BY_IN)
        if protective_family(device) != "MCB" or loading is None or ratings.get(device.key, Symbol.IEXPORT) is None:
            continue
        if ratings[device.key, Symbol.IN].origin is Origin.CHOSEN:
            continue
        if above(loading.value, _MOST_PERCENT) and not above(loading.value, _FULL_PERCENT):
            has, most = two(loading.value, _MOST_PERCENT, "%")
            yield Breach(
                phrase(
                    "{device} is loaded to {has} for hours, above the usual {most}",
                    device=named(device),
                    has=has,
                    most=most,
                ),
                phrase(
                    "use the next larger rated current with a cable that carries it, or leave space beside the breaker"
                ),
                (*device.at, "rated_current"),
                device.key,
                (),
                (loading,),
            )
