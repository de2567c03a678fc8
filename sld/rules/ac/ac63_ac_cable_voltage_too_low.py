"""Voltage of an AC cable too low.

What it checks
    The rated voltage of each AC cable type against the nominal voltage between its lines.

Why
    Insulation that is not made for the voltage breaks down to earth or to the next conductor.

How
    rated_voltage of the cable type, the U of U0/U where it is given, below the voltage between lines; with one phase
    and a neutral below that to neutral.

Remedy
    A cable for the voltage.

Clause
    IEC 60364-5-51:2005 512.1.1; IEC 60502-1 for U0/U (from memory).

Not covered
    Cable types that do not state their voltage. U0 in IT, where a line may stand at the full voltage to earth.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.conductors import lines_count
from sld.model.system import System
from sld.rules.compare import below, two
from sld.rules.naming import named
from sld.rules.ways import ac_cables
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC63", "voltage of an AC cable too low", Severity.DANGER, "IEC 60364-5-51 512.1.1")
def ac_cable_voltage_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for cable in ac_cables(system):
        rated_v = cable.type.rated_voltage_v
        lines = lines_count(system, cable.owner)
        voltage_v = system.voltage_v if lines > 1 else system.voltage_of_one_phase_v
        if rated_v is None or not below(rated_v, voltage_v):
            continue
        has, stands = two(rated_v, voltage_v, "V")
        given = cable.given.type
        yield Breach(
            phrase(
                "{cable} is rated {has}, below the {stands} of its system", cable=named(cable), has=has, stands=stands
            ),
            phrase("use a cable for at least {stands}", stands=stands),
            ("types", "cables", given, "rated_voltage") if given else cable.at,
            cable.key,
            ((cable.at, phrase("the cable")), (("supply", "voltage"), phrase("the supply"))),
        )
