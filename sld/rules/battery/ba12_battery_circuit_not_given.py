"""Battery circuit not given.

What it checks
    Whether the spec says what lies between an inverter and a battery at its battery terminals.

Why
    There is a cable at least, fed by all that the cells give; without it fuse, isolator and cable are not checked.

How
    A battery with `inverter`, and no dc_circuit.

Remedy
    The devices and cables from the battery to the inverter, `[]` where it is plugged on without any.

Clause
    IEC 62485-2:2010 5 (from memory); the reach of this check is ours.

Not covered
    Batteries with a converter of their own, which are mostly one device; a note says that nothing was checked.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import BatteryUnit
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("BA12", "battery circuit not given", Severity.ADVICE, "IEC 62485-2")
def battery_circuit_not_given(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for unit in system.of(BatteryUnit):
        if unit.dc and unit.given.dc_circuit is None:
            yield Breach(
                phrase("nothing is said of the circuit between {battery} and its inverter", battery=named(unit)),
                phrase("give `dc_circuit`, from the battery to the inverter"),
                unit.at,
                unit.key,
                on_key=True,
            )
