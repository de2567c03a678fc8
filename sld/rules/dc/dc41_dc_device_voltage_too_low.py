"""DC device voltage too low.

What it checks
    The rated voltage of each DC circuit-breaker, plug connector, disconnector, rapid shutdown and insulation monitoring
    device against the highest array voltage.

Why
    Insulation that is not made for the voltage breaks down, and a contact that is not does not break the arc.

How
    Un < Un,min, which is Uoc,max of the strings when cold.

Remedy
    A device for a higher voltage.

Clause
    IEC 62548:2016 7.3 (from memory); IEC 62852 for connectors.

Not covered
    Isolators, fuses, diodes and surge protection, which have rules of their own.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.role import AS_STATED
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import amount, phrase


@rule("DC41", "DC device voltage too low", Severity.DANGER, "IEC 62548 7.3")
def dc_device_voltage_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    devices = system.apparatus(AS_STATED)
    for device, rated, least in shortfalls(ratings, devices, Symbol.UN, Symbol.UN_MIN):
        has, needs = two(rated.value, least.value, "V")
        yield Breach(
            phrase(
                "{device} is rated {has}, below the {needs} that the strings reach",
                device=named(device),
                has=has,
                needs=needs,
            ),
            phrase("use one for at least {least}", least=amount(least.value, "V", digits=4)),
            (*device.at, "rated_voltage"),
            device.key,
            (),
            (rated, least),
        )
