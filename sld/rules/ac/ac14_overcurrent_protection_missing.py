"""No overcurrent protection in the circuit of an inverter.

What it checks
    Whether a breaker, an RCBO or a fuse protects the circuit of each inverter towards its board.

Why
    The network feeds a short circuit in the cable; without a device of its own the circuit burns until the service
    fuse melts.

How
    No overcurrent device between the inverter and the main board, or a board that feeds more than the inverter.

Remedy
    A breaker at the board's end of the circuit.

Clause
    IEC 60364-7-712:2017 712.434; IEC 60364-4-43:2008 434 (numbers from memory).

Not covered
    Whether the device stands at the board's end of the cable.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Apparatus, Busbar, InverterUnit
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.steps.protection import protective_family
from sld.words import phrase


@rule(
    "AC14",
    "no overcurrent protection in the circuit of an inverter",
    Severity.DANGER,
    "IEC 60364-7-712 712.434; IEC 60364-4-43",
)
def overcurrent_protection_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    main = system.main_board().key
    for unit in system.of(InverterUnit):
        for device in system.upstream(unit.key):
            if isinstance(device, Apparatus) and protective_family(device):
                break
            if isinstance(device, Busbar) and device.given.trunk:
                continue
            if isinstance(device, Busbar) and (device.key == main or len(system.children[device.key]) > 1):
                yield Breach(
                    phrase(
                        "{unit} has no overcurrent protection between it and {device}",
                        unit=named(unit),
                        device=named(device),
                    ),
                    phrase("begin the `circuit` of the inverter with a `breaker`"),
                    (*unit.at, "circuit"),
                    unit.key,
                )
                break
