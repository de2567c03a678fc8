"""Board below the available fault current.

What it checks
    The short-circuit current rating of each board against the fault current that is available at it.

Why
    Busbars repel each other in a fault; an assembly that is not made for the current bursts open.

How
    The larger of `short_time_current` and `conditional_current` < Ik,max. Advice where the board states neither and
    more than 10 kA can flow, the least that panelboards are usually made for.

Remedy
    A board for the fault current, or one that is marked for it with the device ahead.

Clause
    NEC 2023 408.6, 110.10, as https://www.jadelearning.com/blog/sccr-vs-available-fault-current/ tells of 408.6; the
    usual 10 kA: common practice, no source.

Not covered
    Series ratings (240.86); what breakers inside lower the rating of the whole.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Busbar
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, below, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase

_USUAL_KA = 10.0


@rule("NE10", "board below the available fault current", Severity.DANGER, "NEC 2023 408.6, 110.10")
def board_below_the_fault_current(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for board in system.of(Busbar):
        current = ratings.get(board.key, Symbol.IK_MAX)
        stated = [each for symbol in (Symbol.ICW, Symbol.ICC) if (each := ratings.get(board.key, symbol)) is not None]
        stands = max(stated, key=lambda each: each.value, default=None)
        if current is None:
            continue
        if stands is None:
            if above(current.value, _USUAL_KA):
                yield Breach(
                    phrase(
                        "{board} states no short-circuit rating, and up to {current} can flow",
                        board=named(board),
                        current=current,
                    ),
                    phrase("give `conditional_current`, the short-circuit current rating on its label"),
                    board.at,
                    board.key,
                    (),
                    (current,),
                    severity=Severity.ADVICE,
                )
        elif below(stands.value, current.value):
            has, needs = two(stands.value, current.value, "kA")
            key = "short_time_current" if stands.symbol is Symbol.ICW else "conditional_current"
            yield Breach(
                phrase(
                    "{board} withstands {has} ({symbol}), below the {what} of {needs}",
                    board=named(board),
                    has=has,
                    symbol=stands.symbol,
                    what=phrase("greatest fault current"),
                    needs=needs,
                ),
                phrase("use a board that is marked for at least {needs}", needs=needs),
                (*board.at, key),
                board.key,
                (),
                (stands, current),
            )
