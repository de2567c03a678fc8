"""Conduit too full.

What it checks
    The share of the cross-section of each conduit that its cables take.

Why
    Cables that are pulled through a conduit without room are damaged, and those in it cannot shed their heat.

How
    fill > fill,max: 53 % for one cable, 31 % for two, 40 % for more. Non-compliance under the National Electrical Code,
    elsewhere advice. Not asked where a diameter is not given.

Remedy
    A larger conduit, or a second one.

Clause
    NEC 2023 Chapter 9 Table 1; elsewhere common practice, no source.

Not covered
    Bends, length of the pull, jamming of three cables; conduits of another shape than round.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Cable
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC60", "conduit too full", Severity.NON_COMPLIANCE, "NEC 2023 Chapter 9 Table 1; common practice", once=True)
def conduit_too_full(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    told: set[str] = set()
    for cable in system.of(Cable):
        name = cable.given.conduit
        filled, most = ratings.get(cable.key, Symbol.FILL), ratings.get(cable.key, Symbol.FILL_MAX)
        if not name or name in told or filled is None or most is None or not above(filled.value, most.value):
            continue
        told.add(name)
        has, allowed = two(filled.value, most.value, "%")
        yield Breach(
            phrase(
                "{cable} and what else is in conduit {name} fill {has} of it, above {allowed}",
                cable=named(cable),
                name=name,
                has=has,
                allowed=allowed,
            ),
            phrase("use a larger conduit, or a second one"),
            ("site", "conduits", name),
            cable.key,
            (((*cable.at, "conduit"), phrase("a cable in it")),),
            (filled, most),
            severity=None if system.follows_nec else Severity.ADVICE,
        )
