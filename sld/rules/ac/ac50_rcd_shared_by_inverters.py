"""RCD shared by inverters whose maker asks for one each.

What it checks
    Inverters whose type says that an RCD serves one of them alone, and the RCD next to them towards the network.

Why
    The capacitive and direct currents of several inverters add in one RCD: it trips without a fault, or is made blind.

How
    `own_residual_device: true` in the type, and another inverter behind the same RCD.

Remedy
    An RCD in the circuit of each inverter.

Clause
    Data of the maker.

Not covered
    Whether an RCD is needed at all; in TT and by other rules.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InverterUnit
from sld.model.kinds.role import RESIDUAL_PROTECTION
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC50", "RCD shared by inverters whose maker asks for one each", Severity.NON_COMPLIANCE, "data of the maker")
def rcd_shared_by_inverters(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    told: set[str] = set()
    for unit in system.of(InverterUnit):
        device = next((each for each in system.upstream(unit.key) if each.has(RESIDUAL_PROTECTION)), None)
        if not unit.type.own_residual_device or device is None or device.key in told:
            continue
        count = len(system.inverters_behind(device.key))
        if count < 2:
            continue
        told.add(device.key)
        yield Breach(
            phrase(
                "{device} serves {count} inverters, and the maker of {unit} asks for an RCD of its own",
                device=named(device),
                count=count,
                unit=named(unit),
            ),
            phrase("give each inverter an `rcd` in its own `circuit`"),
            device.at,
            device.key,
            ((("types", "inverters", unit.type_name, "own_residual_device"), phrase("what the maker asks for")),),
        )
