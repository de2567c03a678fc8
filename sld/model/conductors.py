"""How many phases a circuit has, on which lines and at which voltage, how many conductors its cables, in how many poles
a DC fuse is."""

from __future__ import annotations

from collections.abc import Iterator

from sld.model.device import (
    Apparatus,
    BatteryUnit,
    Busbar,
    Cable,
    Consumer,
    Device,
    GeneratorUnit,
    InputTerminal,
    InverterUnit,
)
from sld.model.kinds.ac import AC_CABLE
from sld.model.kinds.dc import DC_FUSE
from sld.model.system import System

__all__ = ["cores", "fused_poles_count", "has_neutral", "line_named", "lines_count", "phases", "voltage_v"]


def phases(system: System, owner_key: str) -> int:
    """Return the number of phases (1 or 3) of the circuit of a device: what the device has, at most what the boards on
    its way and the supply have."""
    counts = (_own_phases(device) for device in _fed_by(system, owner_key))
    return min((system.supply.phases, *(count for count in counts if count is not None)))


def _fed_by(system: System, owner_key: str) -> Iterator[Device]:
    """Yield a device and what feeds it on its way to the network: boards, and inverters with a backup output."""
    owner = system.devices.get(owner_key)
    if owner is not None:
        yield owner
        yield from (each for each in system.upstream(owner_key) if isinstance(each, Busbar | InverterUnit))


def _own_phases(device: Device) -> int | None:
    match device:
        case InverterUnit():
            return device.type.phases
        case Consumer() | Busbar():
            return device.given.phases or (1 if device.given.line else None)
        case GeneratorUnit():
            return device.given.phases
        case BatteryUnit():
            return device.given.converter_phases
    return None


def line_named(system: System, owner_key: str) -> str | None:
    """Return the line of a single-phase circuit (`L2`, or `L1-L2` between two): its own, else that of the nearest board
    that has one; None where the spec names none."""
    for device in _fed_by(system, owner_key):
        line = device.given.line if isinstance(device, InverterUnit | Consumer | Busbar) else None
        if line is not None:
            return line
    return None


def lines_count(system: System, owner_key: str) -> int:
    """Return the number of line conductors of the circuit of a device: two where one phase works between lines."""
    if phases(system, owner_key) == 3:
        return 3
    if not system.supply.has_neutral:
        return 2
    line = line_named(system, owner_key)
    if system.supply.split_phase:
        return 2 if line is None or "-" in line else 1
    return 2 if line is not None and "-" in line and system.supply.phases == 3 else 1


def has_neutral(system: System, owner_key: str) -> bool:
    """Return whether the circuit of a device has a neutral: not where none is distributed, between two of three lines,
    and for a three-phase inverter that by its data sheet takes none; what is not known is taken for yes."""
    owner, between = system.devices.get(owner_key), lines_count(system, owner_key) == 2
    if not system.supply.has_neutral or (between and not system.supply.split_phase):
        return False
    return not (isinstance(owner, InverterUnit) and owner.type.needs_neutral is False and owner.type.phases == 3)


def voltage_v(system: System, owner_key: str) -> float:
    """Return the voltage that a power is divided by: between lines if the circuit has several, else to neutral. [V]"""
    return system.voltage_v if lines_count(system, owner_key) > 1 else system.voltage_to_earth_v


def cores(system: System, cable: Cable) -> int:
    """Return the number of conductors of a cable: as given, else two for DC, three for one phase, five for three, less
    one without a neutral; under the NEC and with split phase only those that are needed."""
    if cable.dc:
        return 2
    given = cable.given_as(AC_CABLE)
    if given is not None and given.cores:
        return given.cores
    apart = given is not None and given.protective_conductor is not None and given.protective_is_no_core
    if system.follows_nec or system.supply.split_phase:
        return _usual_in_north_america(system, cable) - apart
    return lines_count(system, cable.owner) + has_neutral(system, cable.owner) + 1 - apart


def _usual_in_north_america(system: System, cable: Cable) -> int:
    """Return the lines, a neutral where a board or a single line asks for one, and the equipment grounding conductor;
    service conductors bring none, their grounded neutral is all there is (NEC 2023 250.24, from memory)."""
    lines = lines_count(system, cable.owner)
    neutral = lines == 1 or (system.supply.has_neutral and isinstance(system.devices.get(cable.owner), Busbar))
    service = cable.owner == system.main_board().key and system.supply.earthing_system != "TN-S"
    return lines + neutral + (not service)


def fused_poles_count(system: System, fuse: Apparatus) -> int:
    """Return in how many poles of an array a DC fuse is: as given, else in each that is not earthed."""
    given = fuse.given_as(DC_FUSE)
    if given is not None and given.poles is not None:
        return given.poles
    inputs = (device for device in system.upstream(fuse.key) if isinstance(device, InputTerminal))
    return 1 if next(inputs).given.functional_earth else 2
