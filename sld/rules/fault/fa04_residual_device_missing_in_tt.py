"""No RCD at the origin in a TT system.

What it checks
    In a TT system, or in a building with TT, whether each inverter, and each load or battery whose circuit is given,
    has an RCD on its way, and whether an RCD stands ahead of each board and cable.

Why
    The electrodes let too little current flow to trip a breaker; exposed parts, armour and the enclosures of boards
    stay live after a fault. An RCD at the far end of a cable does not see a fault in it.

How
    No RCD or RCBO between the unit and the network, or none ahead of a cable. The cable from the supply to the main
    board is asked where its protective conductor is its armour or `double_insulated` is false; none is with
    `double_insulated`. A board that is fed without a cable in the spec is asked itself. A cable of which the unit
    behind is told already is not told again.

Remedy
    An RCD at the beginning of the circuit, selective or delayed ahead of others.

Clause
    IEC 60364-4-41:2005+A1:2017 411.5; IEC 60364-5-53:2019 531.3.5.3 (from memory); for feeders 411.3.2.4.

Not covered
    Electrodes so good that an overcurrent device would do. Metal enclosures ahead of the first RCD.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, SpecPath, rule
from sld.model.device import BatteryUnit, Busbar, Cable, Consumer, Device, InverterUnit
from sld.model.kinds.ac import AC_CABLE
from sld.model.kinds.role import RESIDUAL_PROTECTION
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import Phrase, phrase


@rule("FA04", "no RCD at the origin in a TT system", Severity.DANGER, "IEC 60364-4-41 411.5")
def residual_device_missing_in_tt(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    told: set[str] = set()
    for unit in system.of(Device):
        if system.earthing_at(unit.key) != "TT" or _is_behind_one(system, unit):
            continue
        if _is_asked(unit):
            told.add(unit.key)
            yield _breach(system, unit, phrase("{unit} has no RCD on its way, in a TT system", unit=named(unit)))
    for device in system.of(Device):
        owner = system.devices.get(device.owner)
        if owner is None or owner.key in told or system.earthing_at(device.key) != "TT":
            continue
        if _is_feeder(system, device) and not _is_behind_one(system, device):
            told.add(owner.key)
            text = phrase("{device} has no RCD ahead of it, in a TT system", device=named(device))
            yield _breach(system, owner, text, device)


def _is_asked(unit: Device) -> bool:
    if unit.dc or not isinstance(unit, InverterUnit | BatteryUnit | Consumer):
        return False
    return isinstance(unit, InverterUnit) or unit.given.circuit is not None


def _is_behind_one(system: System, device: Device) -> bool:
    return any(each.has(RESIDUAL_PROTECTION) for each in system.upstream(device.key))


def _is_feeder(system: System, device: Device) -> bool:
    """Return whether a device is a cable that needs an RCD ahead, or a board that none of the spec's cables feeds."""
    main = system.main_board().key
    cable = device.given_as(AC_CABLE)
    if cable is not None:
        armoured = cable.armour_section_mm2 is not None or cable.protective_conductor == "armour"
        asked = device.owner != main or armoured or "double_insulated" in cable.model_fields_set
        return asked and not cable.double_insulated
    if not isinstance(device, Busbar) or device.key == main or device.given.trunk:
        return False
    return not any(isinstance(each, Cable) and each.owner == device.key for each in system.upstream(device.key))


def _breach(system: System, unit: Device, text: Phrase, device: Device | None = None) -> Breach:
    board = system.earthed_by(unit.key)
    where: SpecPath = (*board.at, "earthing_system") if board else ("supply", "earthing_system")
    return Breach(
        text,
        phrase("add an `rcd` to the beginning of the `circuit`"),
        (*unit.at, "circuit"),
        (device or unit).key,
        ((where, phrase("earthing system")),),
    )
