"""No AC isolator in the circuit of an inverter.

What it checks
    Whether the circuit of each inverter has a switch that isolates the inverter from the network.

Why
    Whoever works at the inverter must be able to separate it under load and see that it stays so.

How
    No isolator, main switch, RCD or fuse-switch-disconnector in the inverter's own circuit, and no circuit-breaker or
    RCBO that is suitable for isolation: a miniature one is by its standard, unless `isolating: false` says otherwise, a
    moulded-case one where `isolating: true` says so.

Remedy
    An isolator in the circuit, near the inverter and lockable, or a breaker that is suitable for isolation.

Clause
    IEC 60364-7-712:2017 712.537; BS 7671 712.537.2.1.1; IEC 60898-1, IEC 61008-1 and IEC 61009-1, scope (numbers from
    memory).

Not covered
    Where the isolator is mounted.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InverterUnit
from sld.model.system import System
from sld.rules.naming import named
from sld.rules.ways import isolates, own_circuit
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC11", "no AC isolator in the circuit of an inverter", Severity.NON_COMPLIANCE, "IEC 60364-7-712 712.537")
def ac_isolator_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for unit in system.of(InverterUnit):
        if any(isolates(device) for device in own_circuit(system, unit.key)):
            continue
        yield Breach(
            phrase("{unit} has no AC isolator in its circuit", unit=named(unit)),
            phrase("add an `isolator` to the `circuit` of the inverter, or say `isolating: true` of a breaker that is"),
            (*unit.at, "circuit"),
            unit.key,
        )
