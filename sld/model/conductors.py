"""How many phases a circuit has, and how many conductors its cables."""

from __future__ import annotations

from sld.model.device import BatteryUnit, Cable, Consumer, GeneratorUnit, InverterUnit
from sld.model.system import System

__all__ = ["cores", "phases"]


def phases(system: System, owner_key: str) -> int:
    """Return the number of phases (1 or 3) of the circuit of a device: what the device has, at most the supply's."""
    owner = system.devices.get(owner_key)
    count: int | None = None
    if isinstance(owner, InverterUnit):
        count = owner.type.phases
    elif isinstance(owner, Consumer | GeneratorUnit):
        count = owner.given.phases
    elif isinstance(owner, BatteryUnit):
        count = owner.given.converter_phases
    return min(count or system.supply.phases, system.supply.phases)


def cores(system: System, cable: Cable) -> int:
    """Return the number of conductors of a cable: as given, else two for DC, three for one phase, five for three."""
    if cable.dc:
        return 2
    given = getattr(cable.given, "cores", None)
    return int(given) if given else (5 if phases(system, cable.owner) == 3 else 3)
