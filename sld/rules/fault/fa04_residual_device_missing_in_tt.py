"""No RCD in a TT system.

What it checks
    Whether each inverter, and each load or battery whose circuit is given, has an RCD on its way in a TT system.

Why
    The electrodes let too little current flow to trip a breaker; exposed parts stay live after a fault.

How
    No RCD or RCBO between the unit and the network.

Remedy
    An RCD at the beginning of the circuit.

Clause
    IEC 60364-4-41:2005+A1:2017 411.5.

Not covered
    Electrodes so good that an overcurrent device would do.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import BatteryUnit, Consumer, InverterUnit
from sld.model.kinds.role import RESIDUAL_PROTECTION
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("FA04", "no RCD in a TT system", Severity.DANGER, "IEC 60364-4-41 411.5")
def residual_device_missing_in_tt(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if system.supply.earthing_system != "TT":
        return
    for unit in system.devices.values():
        if unit.dc or not isinstance(unit, InverterUnit | BatteryUnit | Consumer):
            continue
        if not isinstance(unit, InverterUnit) and unit.given.circuit is None:
            continue
        if not any(device.has(RESIDUAL_PROTECTION) for device in system.upstream(unit.key)):
            yield Breach(
                phrase("{unit} has no RCD on its way, in a TT system", unit=named(unit)),
                phrase("add an `rcd` to the beginning of the `circuit`"),
                (*unit.at, "circuit"),
                unit.key,
                ((("supply", "earthing_system"), phrase("earthing system")),),
            )
