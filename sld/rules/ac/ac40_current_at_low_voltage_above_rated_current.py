"""Current at low voltage above rated current.

What it checks
    The overcurrent devices of inverters whose data sheet gives no highest current.

Why
    An inverter holds its power while the voltage of the network falls, down to 90 % of nominal, and its current
    rises by a ninth. A device that was chosen by power over nominal voltage then trips on a good day.

How
    Smax / (0.9 U) > In of the circuit's own device, and Imax,ac is not given.

Remedy
    `current_max` from the data sheet, or the next larger device.

Clause
    EN 50549-1:2019 (operating range, from memory).

Not covered
    Feeders of several inverters, which seldom all reach it together.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InverterUnit
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, below, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.steps.protection import overcurrent_device
from sld.words import phrase


@rule("AC40", "current at low voltage above rated current", Severity.ADVICE, "EN 50549-1")
def current_at_low_voltage_above_rated_current(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for unit in system.of(InverterUnit):
        current, device = ratings.get(unit.key, Symbol.IB_LOW), overcurrent_device(system, unit.key)
        rated, design = ratings.get(device.key, Symbol.IN) if device else None, ratings.get(unit.key, Symbol.IB)
        if device is None or device.owner != unit.key or current is None or rated is None or design is None:
            continue
        # where the rated current is below the design current itself, AC01 says so
        if below(rated.value, design.value) or not above(current.value, rated.value):
            continue
        flows, has = two(current.value, rated.value, "A")
        yield Breach(
            phrase(
                "{unit} may feed {flows} at 90 % of the nominal voltage, above the {has} of {device}",
                unit=named(unit),
                flows=flows,
                has=has,
                device=named(device),
            ),
            phrase(
                "give `current_max` of the inverter type from its data sheet, or use the next larger device and cable"
            ),
            ("types", "inverters", unit.type_name),
            unit.key,
            ((device.at, phrase("its protective device")),),
            (current, rated),
        )
