"""Data chain too long.

What it checks
    The length of each chain, as far as it is given, against the longest for its bit rate.

Why
    On a longer cable the signal is damped and reflected, and messages are lost.

How
    L > Lmax: 1200 m up to 100 kbit/s, less above.

Remedy
    A shorter way, a lower bit rate, or a repeater.

Clause
    TIA-485-A; the product of length and bit rate is a rule of thumb (from memory).

Not covered
    Stretches without a length.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DB05", "data chain too long", Severity.NON_COMPLIANCE, "TIA-485-A", once=True)
def chain_too_long(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for chain in system.chains:
        length, most = ratings.get(chain.key, Symbol.L_BUS), ratings[chain.key, Symbol.LMAX_BUS]
        if length is None or not above(length.value, most.value):
            continue
        has, allowed = two(length.value, most.value, "m")
        yield Breach(
            phrase(
                "data chain {chain} is {has} long, above {allowed}", chain=chain.designation, has=has, allowed=allowed
            ),
            phrase("shorten the chain to at most {allowed}, or divide it with a repeater", allowed=allowed),
            (*chain.at, "devices"),
            chain.key,
            (),
            (length, most),
        )
