"""Board below the fault current.

What it checks
    The rated short-time, peak and conditional short-circuit currents of each board against the greatest fault current
    and its peak.

Why
    Busbars repel each other with the square of the peak; an assembly that is not made for it bursts open.

How
    Ipk < ip, or Icw < Ik,max, where the conditional current Icc does not reach Ik,max. Advice where the board states
    none of them and more than 10 kA can flow.

Remedy
    A board for the fault current, or one that is tested with the device ahead of it (Icc).

Clause
    IEC 60364-4-43:2008 434.5.1; IEC 61439-1:2011 9.3 and 10.11.2 (from memory).

Not covered
    Whether the device ahead is the one that Icc was tested with. Cut-off currents of fuses and breakers.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Busbar
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, below, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase

_STATED = (Symbol.ICW, Symbol.IPK, Symbol.ICC)
_FREE_KA = 10.0
"""Up to here no proof of the short-circuit withstand is asked of an assembly (IEC 61439-1 10.11.2, from memory)."""


@rule("FA11", "board below the fault current", Severity.DANGER, "IEC 60364-4-43 434.5.1; IEC 61439-1")
def board_below_the_fault_current(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for board in system.of(Busbar):
        current, peak = ratings.get(board.key, Symbol.IK_MAX), ratings.get(board.key, Symbol.IP)
        conditional = ratings.get(board.key, Symbol.ICC)
        if current is None or peak is None:
            continue
        if conditional is not None and not below(conditional.value, current.value):
            continue
        if all(ratings.get(board.key, symbol) is None for symbol in _STATED):
            if above(current.value, _FREE_KA):
                yield _not_stated(board, current)
            continue
        for symbol, flows, key in (
            (Symbol.ICW, current, "short_time_current"),
            (Symbol.IPK, peak, "peak_current"),
        ):
            stands = ratings.get(board.key, symbol)
            if stands is not None and below(stands.value, flows.value):
                yield _too_low(board, stands, flows, key)
                break
        else:
            if conditional is not None and all(
                ratings.get(board.key, each) is None for each in (Symbol.ICW, Symbol.IPK)
            ):
                yield _too_low(board, conditional, current, "conditional_current")


def _too_low(board: Busbar, stands: Rating, flows: Rating, key: str) -> Breach:
    has, needs = two(stands.value, flows.value, "kA")
    what = phrase("peak fault current") if flows.symbol is Symbol.IP else phrase("greatest fault current")
    return Breach(
        phrase(
            "{board} withstands {has} ({symbol}), below the {what} of {needs}",
            board=named(board),
            has=has,
            symbol=stands.symbol,
            what=what,
            needs=needs,
        ),
        phrase(
            "use a board for at least {needs}, or give `conditional_current` as tested with the device ahead",
            needs=needs,
        ),
        (*board.at, key),
        board.key,
        (),
        (stands, flows),
    )


def _not_stated(board: Busbar, current: Rating) -> Breach:
    return Breach(
        phrase(
            "{board} states no short-circuit rating, and up to {current} can flow", board=named(board), current=current
        ),
        phrase("give `short_time_current` and `peak_current`, or `conditional_current`, from its type plate"),
        board.at,
        board.key,
        (),
        (current,),
        severity=Severity.ADVICE,
    )
