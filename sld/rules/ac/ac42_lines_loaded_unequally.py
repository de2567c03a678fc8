"""Lines loaded unequally.

What it checks
    How much more single-phase inverters feed into one line than into another, by apparent power.

Why
    Unequal lines shift the neutral, raise the voltage of one line and load the neutral of the network.

How
    More than 4.6 kVA between the most and the least loaded line. Inverters that name no `line` all count on L1.

Remedy
    Single-phase inverters spread over L1, L2 and L3, or a three-phase inverter.

Clause
    VDE-AR-N 4105 (4.6 kVA; national, from memory). Great Britain, Austria and Switzerland have 3.68 kVA a line,
    others 5 or 6 kVA: ask the operator.

Not covered
    Loads, batteries, and inverters that balance each other by communication.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InverterUnit
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.steps.ledger import Ratings
from sld.words import phrase

_MOST_VA = 4600.0


@rule("AC42", "lines loaded unequally", Severity.ADVICE, "national; VDE-AR-N 4105")
def lines_loaded_unequally(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    difference = ratings.get("", Symbol.DS_LINE)
    if difference is None or not above(difference.value, _MOST_VA):
        return
    first, *others = [unit for unit in system.of(InverterUnit) if unit.type.phases == 1]
    if not others:  # AC18 is about one large inverter
        return
    has, most = two(difference.value, _MOST_VA, "VA")
    yield Breach(
        phrase(
            "the single-phase inverters from {first} on load one line {has} more than another, above {most}",
            first=first.designation,
            has=has,
            most=most,
        ),
        phrase("spread them over `line` L1, L2 and L3"),
        (*first.at, "line"),
        first.key,
        (),
        (difference,),
    )
