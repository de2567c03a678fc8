"""External interface protection missing.

What it checks
    Whether a system above the limit of its country has interface protection outside of the inverters: a relay, and a
    switch that it opens.

Why
    Above that limit the network operator does not accept what is built into the inverters: several units could keep
    each other alive, and one place is to be tested.

How
    The entry of `interface` in the grid rules that holds for the apparent or rated power of all units asks for an
    external relay, and the system has neither an `interface_protection` nor an `interface_relay`.

Remedy
    An interface protection device in the circuit of the main board, or a relay with the switch that it opens.

Clause
    As the entry of the country cites it.

Not covered
    What the operator allows in a single case; settings.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.grid.decide import deciding
from sld.grid.outcome import Outcome
from sld.model.kinds.ac import INTERFACE_PROTECTION, INTERFACE_RELAY
from sld.model.system import System
from sld.rules.grid_limit import rule_words
from sld.steps.ledger import Ratings
from sld.steps.notified import SYMBOLS, facts
from sld.words import phrase


@rule("AC62", "external interface protection missing", Severity.NON_COMPLIANCE, "grid rules of the country")
def external_interface_protection_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    found = deciding(system.grid_rules.interface, facts(system, ratings))
    if found is None or found.outcome is not Outcome.EXTERNAL_PROTECTION or not found.when:
        return
    if not system.kinds.isdisjoint({INTERFACE_PROTECTION, INTERFACE_RELAY}):
        return
    asked = found.when[0]
    power = ratings["", SYMBOLS[asked.quantity]]
    yield Breach(
        phrase(
            "the units have {has} in all; {sign} {most} asks for interface protection outside of them ({rule})",
            has=power,
            sign=asked.sign.printed,
            most=asked.amount,
            rule=rule_words(found),
        ),
        phrase("add an `interface_protection` to the circuit of the main board, or ask the network operator"),
        ("boards",),
        compared=(power,),
    )
