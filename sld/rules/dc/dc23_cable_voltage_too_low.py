"""Voltage of a DC cable too low.

What it checks
    The rated DC voltage of each cable type against the highest array voltage.

Why
    The insulation of the array cabling is the protection against shock and against arcs.

How
    rated_voltage of the cable type, where it is given, below Uoc,max of the strings.

Remedy
    A solar cable for 1500 V DC.

Clause
    EN 50618:2014; IEC 62548:2016 7.3 (from memory).

Not covered
    Cable types that do not state their voltage.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Cable
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import below, two
from sld.rules.naming import named
from sld.rules.nearest import size_at_least
from sld.steps.dc_devices import terminal_of
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DC23", "voltage of a DC cable too low", Severity.DANGER, "EN 50618; IEC 62548-1")
def cable_voltage_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for cable in system.of(Cable):
        rated_v = cable.type.rated_voltage_v
        if not cable.in_array or rated_v is None:
            continue
        voltage = ratings[terminal_of(system, cable.key).key, Symbol.UOC_MAX]
        if not below(rated_v, voltage.value):
            continue
        has, reached = two(rated_v, voltage.value, "V")
        at = ("types", "cables", cable.given.type, "rated_voltage") if cable.given.type else cable.at
        yield Breach(
            phrase(
                "{cable} is rated {has}, below the {reached} that the strings reach",
                cable=named(cable),
                has=has,
                reached=reached,
            ),
            phrase(
                "use a solar cable for {size} DC", size=size_at_least("module_system_voltage_v", voltage.value, "V")
            ),
            at,
            cable.key,
            ((cable.at, phrase("the cable")),),
            (voltage,),
        )
