"""How many phases a circuit has, how many conductors its cables, in how many poles a DC fuse is."""

from __future__ import annotations

from sld.model.device import (
    Apparatus,
    BatteryUnit,
    Busbar,
    Cable,
    Consumer,
    GeneratorUnit,
    InputTerminal,
    InverterUnit,
)
from sld.model.kinds.ac import AC_CABLE
from sld.model.kinds.dc import DC_FUSE
from sld.model.system import System

__all__ = ["cores", "fused_poles_count", "lines_count", "phases"]


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


def lines_count(system: System, owner_key: str) -> int:
    """Return the number of line conductors of the circuit of a device: two where one phase works between lines."""
    if phases(system, owner_key) == 3:
        return 3
    owner = system.devices.get(owner_key)
    between = isinstance(owner, InverterUnit) and "-" in (owner.given.line or "")
    return 2 if system.supply.split_phase or (between and system.supply.phases == 3) else 1


def cores(system: System, cable: Cable) -> int:
    """Return the number of conductors of a cable: as given, else two for DC, three for one phase, five for three;
    under the NEC and with split phase only those that are needed."""
    if cable.dc:
        return 2
    given = cable.given_as(AC_CABLE)
    if given is not None and given.cores:
        return given.cores
    if system.follows_nec or system.supply.split_phase:
        return _usual_in_north_america(system, cable)
    return 5 if phases(system, cable.owner) == 3 else 3


def _usual_in_north_america(system: System, cable: Cable) -> int:
    """Return the lines, a neutral where a board or a single line asks for one, and the equipment grounding conductor;
    service conductors bring none, their grounded neutral is all there is (NEC 2023 250.24, from memory)."""
    lines = lines_count(system, cable.owner)
    neutral = lines == 1 or isinstance(system.devices.get(cable.owner), Busbar)
    service = cable.owner == system.main_board().key and system.supply.earthing_system != "TN-S"
    return lines + neutral + (not service)


def fused_poles_count(system: System, fuse: Apparatus) -> int:
    """Return in how many poles of an array a DC fuse is: as given, else in each that is not earthed."""
    given = fuse.given_as(DC_FUSE)
    if given is not None and given.poles is not None:
        return given.poles
    inputs = (device for device in system.upstream(fuse.key) if isinstance(device, InputTerminal))
    return 1 if next(inputs).given.functional_earth else 2
