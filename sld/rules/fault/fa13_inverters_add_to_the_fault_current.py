"""Inverters add to the fault current.

What it checks
    The current of all inverters and battery converters against the greatest fault current of the network at each board.

Why
    Inverters feed a fault with little more than their rated current until they stop. Beside a weak network that is no
    longer small, and breaking capacities are compared without it.

How
    Σ Ig > 5 % of Ik,max, once, at the board where the share is greatest.

Remedy
    Breaking capacities and short-circuit ratings with that much in hand.

Clause
    IEC 60909-0:2016 (converters, from memory); a current of 1 to 1.5 times the rated one is common practice.

Not covered
    How long the inverters feed the fault, which their makers state.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Busbar
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import amount, phrase

_NEGLECTED_PERCENT = 5.0


@rule("FA13", "inverters add to the fault current", Severity.ADVICE, "IEC 60909-0")
def inverters_add_to_the_fault_current(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    boards = [
        (share, board) for board in system.of(Busbar) if (share := ratings.get(board.key, Symbol.IG_BY_IK)) is not None
    ]
    if not boards:
        return
    share, board = max(boards, key=lambda each: each[0].value)
    if not above(share.value, _NEGLECTED_PERCENT):
        return
    generation = next(given for given in share.given if given.symbol == "Σ Ig")
    yield Breach(
        phrase(
            "{board} gets {generation} and more from the inverters in a fault, {share} of what the "
            "network gives, and they are not counted in it",
            board=named(board),
            generation=amount(generation.number, "A", digits=4),
            share=share,
        ),
        phrase(
            "keep that much in hand in the breaking capacities; ask the makers for the fault current and its duration"
        ),
        board.at,
        board.key,
        (),
        (share,),
    )
