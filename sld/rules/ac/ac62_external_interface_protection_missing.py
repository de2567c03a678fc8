"""External interface protection missing.

What it checks
    Whether a system above the limit of its country has interface protection outside of the inverters: a relay, and a
    switch that it opens.

Why
    Above that limit the network operator does not accept what is built into the inverters: several units could keep
    each other alive, and one place is to be tested.

How
    The entry of `interface` in the grid rules that holds for the apparent or rated power of all units asks for an
    external relay, and upstream of some unit is neither an `interface_protection` nor a switch that an
    `interface_relay` opens. Told at the board nearest to the units that all of those without it feed into.

Remedy
    An interface protection device in the circuit of that board, or a relay with the switch that it opens.

Clause
    As the entry of the country cites it.

Not covered
    What the operator allows in a single case; settings.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from sld.finding import Breach, Severity, rule
from sld.grid.decide import deciding
from sld.grid.outcome import Outcome
from sld.model.device import Busbar, Device
from sld.model.planned import feeding, without_planned
from sld.model.system import System
from sld.rules.grid_limit import rule_words
from sld.rules.naming import named
from sld.rules.ways import has_separate_interface_protection
from sld.steps.ledger import Ratings
from sld.steps.notified import SYMBOLS, facts
from sld.words import phrase


@rule("AC62", "external interface protection missing", Severity.NON_COMPLIANCE, "grid rules of the country")
def external_interface_protection_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    found = deciding(system.grid_rules.interface, facts(system, ratings))
    if found is None or found.outcome is not Outcome.EXTERNAL_PROTECTION or not found.when:
        return
    units = without_planned(system, feeding(system))
    without = [each for each in units if not has_separate_interface_protection(system, each.key)]
    if not without:
        return
    board, asked = _common_board(system, without), found.when[0]
    power = ratings["", SYMBOLS[asked.quantity]]
    some = without if len(without) < len(units) else []
    yield Breach(
        phrase(
            "{board} is fed by units without interface protection outside of them; at {has} in all, {sign} {most}, "
            "it is asked for ({rule})",
            board=named(board),
            has=asked.measured(power.value),
            sign=asked.sign.printed,
            most=asked.amount,
            rule=rule_words(found),
        ),
        phrase(
            "add an `interface_protection` to the circuit of the board that the units feed, or ask the network operator"
        ),
        (*board.at, "circuit"),
        board.key,
        tuple(dict.fromkeys((each.at, phrase("without separate interface protection")) for each in some)),
        (power,),
    )


def _common_board(system: System, units: Iterable[Device]) -> Busbar:
    """Return the board that all units feed into, the nearest to them."""
    ways = [[each for each in system.upstream(unit.key) if isinstance(each, Busbar)] for unit in units]
    return next(board for board in ways[0] if all(board in way for way in ways))
