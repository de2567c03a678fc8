"""RCD of type A ahead of one of type B.

What it checks
    RCDs of type AC, A or F with an RCD of type B further down in series.

Why
    Behind a type B more than 6 mA of direct residual current may flow for good; that blinds the RCD ahead of it for
    all its circuits.

How
    An RCD of type B is needed, or given where nothing says what is needed; an RCD of another type is upstream.

Remedy
    Type B upstream as well, or the circuit taken off ahead of it.

Clause
    IEC 60364-5-53:2019 531.3.3 (number from memory).

Not covered
    RCDs of the network operator.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.role import RESIDUAL_PROTECTION
from sld.model.system import System
from sld.ratings.symbol import Word
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC08", "RCD of type A ahead of one of type B", Severity.DANGER, "IEC 60364-5-53 531.3.3")
def rcd_blinded_by_direct_current(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    told: set[str] = set()
    for device, block in system.given_as(RESIDUAL_PROTECTION):
        given = block.sensitivity
        if (ratings.word(device.key, Word.RCD_TYPE) or given) != "B":
            continue
        for ahead in system.upstream(device.key):
            block_ahead = ahead.given_as(RESIDUAL_PROTECTION)
            if block_ahead is None or ahead.key in told:
                continue
            type_ahead = block_ahead.sensitivity
            # ahead of an inverter that needs type B the rule on the type has said it already
            if type_ahead in ("AC", "A", "F") and ratings.word(ahead.key, Word.RCD_TYPE) != "B":
                told.add(ahead.key)
                yield Breach(
                    phrase(
                        "{ahead} of type {type_ahead} is ahead of {device} of type B",
                        ahead=named(ahead),
                        type_ahead=type_ahead,
                        device=named(device),
                    ),
                    phrase("use type B here too, or connect the circuit of type B ahead of it"),
                    (*ahead.at, "sensitivity"),
                    ahead.key,
                    ((device.at, phrase("the RCD of type B")),),
                )
