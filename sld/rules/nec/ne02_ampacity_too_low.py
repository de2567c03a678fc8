"""Ampacity of a conductor too low.

What it checks
    Each AC conductor: its ampacity by the column of the terminals against 125 % of the current. Each AC and DC
    conductor: its ampacity after correction and adjustment against the current itself.

Why
    A conductor that is too thin overheats itself or the terminals it ends in.

How
    I,terminal < 1.25 Imax (DC: rule DC48), or Iz < Imax (DC: 1.25 Isc of the strings through it, or of the others
    that feed a fault in it).

Remedy
    A larger size, a cooler way, or terminals that are marked for 75 °C where they are.

Clause
    NEC 2023 690.8(B), 705.28(B), 110.14(C) (110.14(C) from memory).

Not covered
    Ampacities in free air (310.17), which are higher.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Cable
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import below, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import Amount, Phrase, Sayable, phrase

_TESTS = ((Symbol.I_TERMINAL, Symbol.IMAX_125), (Symbol.IZ, Symbol.IZ_MIN))


@rule("NE02", "ampacity of a conductor too low", Severity.DANGER, "NEC 2023 690.8(B), 705.28(B), 110.14(C)")
def ampacity_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for cable in system.of(Cable):
        for symbol, needed in _TESTS:
            has, least = ratings.get(cable.key, symbol), ratings.get(cable.key, needed)
            if has is None or least is None or not below(has.value, least.value):
                continue
            carries, needs = two(has.value, least.value, "A")
            yield Breach(
                _too_low(symbol, named(cable), carries, needs),
                phrase(
                    "leave `section` out, and the smallest size that fits is chosen; or state `terminal_temperature`"
                ),
                (*cable.at, "section"),
                cable.key,
                (),
                (has, least),
            )
            break


def _too_low(symbol: Symbol, cable: Sayable, carries: Amount, needs: Amount) -> Phrase:
    if symbol is Symbol.I_TERMINAL:
        return phrase(
            "{cable} carries {carries} at its terminals, below the {needs} of 125 % of its current",
            cable=cable,
            carries=carries,
            needs=needs,
        )
    return phrase(
        "{cable} carries {carries} as laid, below the {needs} that can flow", cable=cable, carries=carries, needs=needs
    )
