"""Functional earthing without separation.

What it checks
    Inputs with one pole earthed for functional reasons, and whether the inverter separates the DC from the AC side.

Why
    Without separation the network drives a fault current through the array as soon as the inverter connects.

How
    functional_earth at an input of an inverter type without galvanic_separation.

Remedy
    No functional earthing, or an inverter with at least simple separation.

Clause
    IEC 60364-7-712:2017; IEC 62548:2016 6.4 (from memory).

Not covered
    A separate transformer on the AC side; accept the finding with that reason.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InputTerminal
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DC29", "functional earthing without separation", Severity.DANGER, "IEC 60364-7-712; IEC 62548-1")
def functional_earth_without_separation(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for terminal in system.of(InputTerminal):
        unit = system.inverter_of(terminal)
        if terminal.given.functional_earth and not unit.type.galvanic_separation:
            yield Breach(
                phrase(
                    "{terminal} has a pole connected to earth, and the inverter does not separate DC from AC",
                    terminal=named(terminal),
                ),
                phrase("remove `functional_earth`, or use an inverter with galvanic separation"),
                (*terminal.at, "functional_earth"),
                terminal.key,
                (
                    (
                        ("types", "inverters", unit.type_name, "galvanic_separation"),
                        phrase("separation of the inverter"),
                    ),
                ),
            )
