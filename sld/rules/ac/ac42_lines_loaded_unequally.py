"""Lines loaded unequally.

What it checks
    How much more single-phase inverters feed into one line than into another, by apparent power.

Why
    Unequal lines shift the neutral, raise the voltage of one line and load the neutral of the network.

How
    The limit of the difference between the most and the least loaded line, and its sign, are those of the grid rules of
    the `country` (page of grid rules); where none is given, more than 4.6 kVA. Inverters that name no `line` all count
    on L1.

Remedy
    Single-phase inverters spread over L1, L2 and L3, or a three-phase inverter.

Clause
    As the entry of the country cites it; where none is given VDE-AR-N 4105:2018-11 (from memory).

Not covered
    Loads, batteries, and inverters that balance each other by communication.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.grid.quantity import Quantity, holds
from sld.model.device import InverterUnit
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import two
from sld.rules.grid_limit import imbalance
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC42", "lines loaded unequally", Severity.ADVICE, "grid rules of the country", once=True)
def lines_loaded_unequally(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    difference = ratings.get("", Symbol.DS_LINE)
    single = [unit for unit in system.every(InverterUnit) if unit.type.phases == 1]
    if difference is None or len(single) < 2:  # AC18 is about one large inverter
        return
    first = single[0]
    for limit in imbalance(system, Quantity.LINE_DIFFERENCE):
        if not holds(difference.value, limit.sign, limit.value):
            continue
        has, most = two(difference.value, limit.value, "VA")
        yield Breach(
            phrase(
                "the single-phase inverters from {first} on load one line {has} more than another; {sign} {most} is to "
                "be balanced ({rule})",
                first=first.designation,
                has=has,
                sign=limit.sign.printed,
                most=most,
                rule=limit.rule,
            ),
            phrase("spread them over `line` L1, L2 and L3"),
            (*first.at, "line"),
            first.key,
            (),
            (difference,),
        )
