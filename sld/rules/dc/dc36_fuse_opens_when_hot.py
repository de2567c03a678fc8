"""DC fuse that opens in a hot enclosure.

What it checks
    The rated current of each DC fuse, reduced for the heat in its enclosure, against the current of its strings.

Why
    Rated currents of fuses hold at 25 °C. In a box in the sun the fuse carries less, opens without a fault and wears
    the holder.

How
    In · kT < KI · SG · Isc. kT is the factor given for the fuse, else 0.85. Non-compliance with a factor that is given,
    advice with the assumed one.

Remedy
    The next larger rating where the range allows it, a cooler place, or the factor that the maker states.

Clause
    IEC 60269-6; data of the maker (from memory).

Not covered
    The altitude, which is part of the factor above 2000 m.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.dc import DC_FUSE
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import Value, amount, phrase


@rule("DC36", "DC fuse that opens in a hot enclosure", Severity.NON_COMPLIANCE, "IEC 60269-6; data of the maker")
def fuse_opens_when_hot(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for fuse, hot, least in shortfalls(ratings, system.apparatus(DC_FUSE), Symbol.IN_HOT, Symbol.ICARRY):
        carries, needs = two(hot.value, least.value, "A")
        block = fuse.given_as(DC_FUSE)
        given = block is not None and block.temperature_factor is not None
        values: dict[str, Value] = {
            "fuse": named(fuse),
            "carries": carries,
            "factor": amount(hot.number("kT")),
            "needs": needs,
        }
        yield Breach(
            phrase(
                "{fuse} carries {carries} in its enclosure (factor {factor}), below the {needs} of its strings",
                **values,
            )
            if given
            else phrase(
                "{fuse} carries {carries} in its enclosure (factor {factor}, assumed), below the {needs} of its "
                "strings",
                **values,
            ),
            phrase(
                "use the next larger rating of the allowed range or a cooler place, and give the maker's "
                "`temperature_factor`"
            ),
            (*fuse.at, "temperature_factor"),
            fuse.key,
            (),
            (hot, least),
            severity=Severity.NON_COMPLIANCE if given else Severity.ADVICE,
        )
