"""Too many unit loads.

What it checks
    The sum of the unit loads of a chain against what one driver carries.

Why
    Beyond it the signal is too weak and devices drop out.

How
    Σ UL > 32. A device whose data sheet is silent counts 1.

Remedy
    Two chains, a repeater, or the lower unit load of the data sheet.

Clause
    TIA-485-A.

Not covered
    Biasing resistors, which load the driver too.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DB04", "too many unit loads", Severity.NON_COMPLIANCE, "TIA-485-A", once=True)
def too_many_unit_loads(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for chain in system.chains:
        loads = ratings[chain.key, Symbol.UNIT_LOADS]
        limit = loads.number("limit")
        if above(loads.value, limit):
            has, most = two(loads.value, limit, "")
            yield Breach(
                phrase(
                    "data chain {chain} has {has} unit loads, above {most}", chain=chain.designation, has=has, most=most
                ),
                phrase("split the chain, so that each has at most {most} unit loads", most=most),
                (*chain.at, "devices"),
                chain.key,
                (),
                (loads,),
            )
