"""The devices a rule looks at: those of one kind, of one circuit, on the way from an input to its strings."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from sld.model.device import Apparatus, BatteryUnit, Busbar, Cable, Device, InputTerminal, StringGroup
from sld.model.kinds.ac import AC_CABLE, BREAKER, FUSE, INTERFACE_PROTECTION, INTERFACE_RELAY, RCBO, RCD
from sld.model.kinds.role import (
    ISOLATION,
    OVERCURRENT_PROTECTION,
    RESIDUAL_PROTECTION,
    SURGE_PROTECTION,
    SWITCHING,
    ResidualProtection,
)
from sld.model.kinds.row import Trait
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above
from sld.steps.dc_devices import protects_string
from sld.steps.ledger import Ratings
from sld.steps.protection import has_residual_device, overcurrent_devices
from sld.steps.releases import release_of

__all__ = [
    "ac_cables",
    "dc_overcurrent_devices",
    "devices_of_input",
    "feeds_back",
    "has_dc_surge_protection",
    "has_residual_device",
    "has_separate_interface_protection",
    "is_armoured",
    "is_delayed",
    "isolates",
    "key_of_trip",
    "overcurrent_devices",
    "own_circuit",
    "residual_devices_ahead",
    "string_protection_of",
]


def ac_cables(system: System) -> Iterator[Cable]:
    """Yield the AC cables."""
    return (cable for cable, _ in system.ac_cables())


def dc_overcurrent_devices(system: System) -> Iterator[Apparatus]:
    """Yield the fuses and circuit-breakers of strings and arrays."""
    return (device for device in system.apparatus(OVERCURRENT_PROTECTION) if device.in_array)


def own_circuit(system: System, key: str) -> list[Device]:
    """Return the devices of the AC circuit that serves a unit or a busbar, the nearest first.

    The circuit of an AC trunk cable is that of every micro-inverter on it.
    """
    found = []
    for device in system.upstream(key):
        if isinstance(device, Busbar) and device.given.trunk:
            key = device.key
            continue
        if device.owner != key:
            break
        found.append(device)
    return found


def residual_devices_ahead(
    system: System, ratings: Ratings, device: Device, most_ma: float
) -> list[tuple[Device, ResidualProtection]]:
    """Return the RCDs and RCBOs of at most a residual current that see the faults of a device, the nearest first."""
    found = []
    for ahead in system.upstream(device.key):
        given, rated = ahead.given_as(RESIDUAL_PROTECTION), ratings.get(ahead.key, Symbol.IDN)
        if given is not None and rated is not None and not above(rated.value, most_ma):
            found.append((ahead, given))
    return found


def has_separate_interface_protection(system: System, key: str) -> bool:
    """Return whether a unit has interface protection upstream, or a switch there that an interface relay opens."""
    relays = [given for _, given in system.given_as(INTERFACE_RELAY)]
    opened = {each for relay in relays if relay.trips is not None for each in system.names[relay.trips]}
    return any(each.kind is INTERFACE_PROTECTION or each.key in opened for each in system.upstream(key))


def is_armoured(cable: Cable) -> bool:
    """Return whether the protective conductor of a cable is its armour."""
    given = cable.given_as(AC_CABLE)
    return given is not None and given.armour_section_mm2 is not None


def is_delayed(device: Device) -> bool:
    """Return whether an RCD or RCBO is of type S, or has a delay that is set."""
    given, rcd = device.given_as(RESIDUAL_PROTECTION), device.given_as(RCD)
    return (given is not None and given.selective) or (rcd is not None and bool(rcd.delay_s))


def isolates(device: Device) -> bool:
    """Return whether an AC device opens a circuit under load and isolates it.

    A miniature circuit-breaker or RCBO does by its standard, unless the spec says that it does not, and so does an RCD;
    a moulded-case circuit-breaker where the spec says that it is so marked. Source: IEC 60898-1, IEC 61008-1 and
    IEC 61009-1, scope; BS 7671:2018 Table 537.4 (from memory); isolating function of circuit-breakers to EN 60898-1
    seen in https://doczz.net/doc/6820432/leitungsschutzschalter-f%C3%A3%C2%BCr-wechselstrom--ac-, the standards of the
    devices of Table 537.4 in https://18theditionmock.com/temario/isolation-switching-and-protective-devices-part-5-chapter-53/
    """
    given = device.given_as(BREAKER) or device.given_as(RCBO)
    marked = given is not None and device.family == "MCB" and given.isolating is None
    by_standard = marked or device.kind is RCD
    return device.has(SWITCHING) and (by_standard or device.has(ISOLATION))


def feeds_back(system: System, device: Device) -> bool:
    """Return whether power of an inverter or of a battery's converter can flow through a device to the network."""
    behind = (each for each in system.downstream(device.key) if isinstance(each, BatteryUnit) and not each.dc)
    return bool(system.inverters_behind(device.key)) or any(behind)


def devices_of_input(system: System, terminal: InputTerminal, *traits: Trait[Any]) -> list[Apparatus]:
    """Return the apparatus of one input, of a kind or with a role, from the inverter to the strings."""
    found = (device for device in system.downstream(terminal.key) if isinstance(device, Apparatus))
    return [device for device in found if device.has(*traits)]


def has_dc_surge_protection(system: System, terminal: InputTerminal) -> bool:
    """Return whether an input has surge protection: in its circuit, or built into the inverter."""
    built_in = system.inverter_of(terminal).type.dc_surge_protection != "none"
    return built_in or bool(devices_of_input(system, terminal, SURGE_PROTECTION))


def string_protection_of(system: System, group: StringGroup) -> Apparatus | None:
    """Return the overcurrent device that each string of a group, or each few joined ones, has to itself, or None."""
    for device in system.upstream(group.key):
        if not device.dc:
            return None
        if isinstance(device, Apparatus) and device.has(OVERCURRENT_PROTECTION):
            return device if protects_string(system, device) else None
    return None


def key_of_trip(device: Apparatus) -> str:
    """Return the key of the spec that decides when a device opens."""
    release = release_of(device)
    if device.kind is FUSE:
        return "rated_current"
    if release is None or not release.sees_short_circuits:
        return "curve"
    return "instantaneous_setting" if release.i_sd_a is None else "short_time_setting"
