"""Voltage at the inverter too high.

What it checks
    The highest voltage of the supply raised by the inverters themselves, against 110 % of the nominal voltage.

Why
    Above it, as a mean over ten minutes, the interface protection disconnects: the system stands still at noon.

How
    voltage_max · (1 + Δu,ac) > 1.1 · Un. Without `voltage_max` nothing is compared.

Remedy
    Larger or shorter cables, reactive power by the operator's characteristic, or a lower setting of the transformer
    by the operator.

Clause
    EN 50160; EN 50549-1:2019 4.9.2 (numbers from memory).

Not covered
    How long the voltage stays there, and settings of the inverter that reduce its power before.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InverterUnit
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase

_MOST_SHARE = 1.1


@rule("AC41", "voltage at the inverter too high", Severity.NON_COMPLIANCE, "EN 50160; EN 50549-1")
def voltage_at_the_inverter_too_high(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    most_v = _MOST_SHARE * system.voltage_v
    for unit in system.of(InverterUnit):
        voltage = ratings.get(unit.key, Symbol.UINVERTER)
        if voltage is None or not above(voltage.value, most_v):
            continue
        reaches, allowed = two(voltage.value, most_v, "V")
        yield Breach(
            phrase(
                "{unit} reaches {reaches} at the highest voltage of the supply, above {allowed}",
                unit=named(unit),
                reaches=reaches,
                allowed=allowed,
            ),
            phrase(
                "keep the rise small enough for {allowed}: larger or shorter cables, or reactive power by the operator",
                allowed=allowed,
            ),
            ("supply", "voltage_max"),
            unit.key,
            ((unit.at, phrase("the inverter")),),
            (voltage,),
        )
