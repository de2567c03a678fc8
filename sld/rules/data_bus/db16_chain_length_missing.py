"""Lengths of a data chain not given.

What it checks
    Whether every stretch of a chain has a length.

Why
    The length of the whole chain is checked only as far as it is given.

How
    A device after the first without `length`; one finding a chain.

Remedy
    The length of cable from the device before.

Clause
    TIA-485-A.

Not covered
    Stubs.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DB16", "lengths of a data chain not given", Severity.ADVICE, "TIA-485-A", once=True)
def chain_length_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for chain in system.chains:
        missing = [node for node in chain.nodes[1:] if node.length_m is None]
        if missing:
            yield Breach(
                phrase(
                    "data chain {chain} has {count} stretches without a length",
                    chain=chain.designation,
                    count=len(missing),
                ),
                phrase("give `length`, the cable from the device before"),
                (*missing[0].at, "length"),
                chain.key,
            )
