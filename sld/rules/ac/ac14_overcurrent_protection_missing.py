"""No overcurrent protection in a circuit.

What it checks
    Whether a breaker, an RCBO or a fuse protects the circuit of each inverter, load, charging point, battery and
    generator towards its board.

Why
    The network feeds a short circuit in the cable; without a device of its own the circuit burns until the service
    fuse melts.

How
    No overcurrent device between the unit and the main board, or a board that feeds more than the unit. A load may
    share the device of its board; a charging point, battery or generator has one of its own. Circuits that the spec
    does not give are not asked.

Remedy
    A breaker at the board's end of the circuit.

Clause
    IEC 60364-7-712:2017 712.434; IEC 60364-4-43:2008 433.1, 434.1; IEC 60364-7-722:2018 722.533.101; IEC 60364-5-55
    551.5 (numbers from memory).

Not covered
    Whether the device stands at the board's end of the cable.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Apparatus, BatteryUnit, Busbar, Consumer, Device, GeneratorUnit, InverterUnit
from sld.model.kinds.ac import SERVICE_FUSE
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.steps.protection import protective_family
from sld.words import phrase


@rule(
    "AC14",
    "no overcurrent protection in a circuit",
    Severity.DANGER,
    "IEC 60364-7-712 712.434; IEC 60364-4-43",
)
def overcurrent_protection_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for unit in system.of(Device):
        board = _unprotected_up_to(system, unit) if _is_asked(unit) else None
        if board is not None:
            yield Breach(
                phrase(
                    "{unit} has no overcurrent protection between it and {device}",
                    unit=named(unit),
                    device=named(board),
                ),
                phrase("begin its `circuit` with a `breaker`"),
                (*unit.at, "circuit"),
                unit.key,
            )


def _is_asked(unit: Device) -> bool:
    if unit.dc or not isinstance(unit, InverterUnit | Consumer | BatteryUnit | GeneratorUnit):
        return False
    return isinstance(unit, InverterUnit) or unit.given.circuit is not None


def _unprotected_up_to(system: System, unit: Device) -> Busbar | None:
    """Return the board up to which nothing protects a unit against overcurrent, None where something does."""
    main = system.main_board().key
    may_share = isinstance(unit, Consumer) and not unit.given.charging_point
    for device in system.upstream(unit.key):
        if isinstance(device, Apparatus) and protective_family(device) and device.kind is not SERVICE_FUSE:
            return None
        if not isinstance(device, Busbar) or device.given.trunk:
            continue
        shared = len(system.children[device.key]) > 1 and not may_share
        if device.key == main or shared:
            return device
    return None
