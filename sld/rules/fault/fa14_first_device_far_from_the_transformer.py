"""First device far from the transformer.

What it checks
    The length of the conductors between the site's own transformer and the first overcurrent device behind it.

Why
    A fault on these conductors is seen only by the protection on the high-voltage side. That is chosen for the
    transformer, and may let the fault burn or the conductors melt.

How
    More than 3 m, or no length given. Silent where the spec names the device on the high-voltage side.

Remedy
    The first device within 3 m, on conductors laid so that a short circuit is unlikely and away from what burns; or
    the proof that the high-voltage device protects them too.

Clause
    IEC 60364-4-43:2008 433.2.2, 434.2.1 and 434.3 (from memory).

Not covered
    The time-current curve of the high-voltage device, and the laying itself. Public supplies, whose operator does this.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Transformer
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase

_LONGEST_M = 3.0


@rule("FA14", "first device far from the transformer", Severity.NON_COMPLIANCE, "IEC 60364-4-43 434.2.1")
def first_device_far_from_the_transformer(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    given = system.supply.transformer
    if given is None or given.primary_protection is not None:
        return
    for transformer in system.of(Transformer):
        length = ratings.get(transformer.key, Symbol.LSECONDARY)
        at = (*transformer.at, "secondary_length")
        if length is None:
            yield Breach(
                phrase(
                    "{transformer} is an unknown length from the first overcurrent device, and 3 m are allowed",
                    transformer=named(transformer),
                ),
                phrase(
                    "give `secondary_length`, or `primary_protection` where that device is shown to protect the "
                    "conductors"
                ),
                at,
                transformer.key,
                severity=Severity.ADVICE,
            )
        elif above(length.value, _LONGEST_M):
            has, allowed = two(length.value, _LONGEST_M, "m")
            yield Breach(
                phrase(
                    "{transformer} has {has} of conductor to the first overcurrent device, above {allowed}",
                    transformer=named(transformer),
                    has=has,
                    allowed=allowed,
                ),
                phrase(
                    "put it within 3 m, or give `primary_protection` where that device is shown to protect the "
                    "conductors"
                ),
                at,
                transformer.key,
                (),
                (length,),
            )
