"""Insulation alarm too low.

What it checks
    The resistance below which an insulation monitoring device reports, against the least that must be detected.

Why
    A first fault to earth that is not reported stays until a second one closes the circuit through people or metal.

How
    Ralarm < Riso,start, which is Uoc,max divided by 30 mA.

Remedy
    Set the device to report at a higher resistance.

Clause
    IEC 62109-2:2011 4.8.2 (from memory).

Not covered
    Devices built into the inverter; the capacitance of large arrays, which slows a device down.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.dc import INSULATION_MONITOR
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import amount, phrase


@rule("DC43", "insulation alarm too low", Severity.NON_COMPLIANCE, "IEC 62109-2 4.8.2")
def insulation_alarm_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    monitors = system.apparatus(INSULATION_MONITOR)
    for monitor, setting, least in shortfalls(ratings, monitors, Symbol.RALARM, Symbol.RISO_START):
        has, needs = two(setting.value, least.value, "kΩ")
        yield Breach(
            phrase(
                "{monitor} reports below {has}, less than the {needs} that must be detected",
                monitor=named(monitor),
                has=has,
                needs=needs,
            ),
            phrase("set it to at least {least}", least=amount(least.value, "kΩ", digits=4)),
            (*monitor.at, "alarm_resistance"),
            monitor.key,
            (),
            (setting, least),
        )
