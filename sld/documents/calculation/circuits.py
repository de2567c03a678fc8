"""Whose ratings stand together and in which order: by circuit, in the order of the energy from the modules on."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sld.frozen import dataclass
from sld.layout.diagram.ranges import joined, pattern
from sld.model.device import (
    BatteryUnit,
    Busbar,
    Consumer,
    Device,
    GeneratorUnit,
    InputTerminal,
    InverterUnit,
    StringGroup,
)
from sld.model.system import System
from sld.model.wording import titled
from sld.words import Phrase, Sayable, phrase

__all__ = ["Circuits", "Rated", "circuits"]


@dataclass(frozen=True, slots=True)
class Rated:
    """Something that has ratings. owner: designation of what its circuit serves. slot: its place in such a circuit.

    Strings have one slot in all circuits; so has what is on the DC side, by kind.
    """

    key: str
    designation: Sayable | str
    owner: str = ""
    slot: object = ""


@dataclass(frozen=True, slots=True)
class Circuits:
    """Circuits of one kind, or what is in none. name: of the section. rated: in the order of the energy."""

    name: str
    title: Sayable
    rated: tuple[Rated, ...]


def circuits(system: System) -> list[Circuits]:
    """Return all that may have ratings: circuits from the strings to the supply, then what is in none of them."""
    families: dict[tuple[str, str], dict[str, list[Device]]] = {}
    for device in _towards_supply(system):
        owner = system.devices.get(device.owner, device)
        families.setdefault(_family(system, owner), {}).setdefault(owner.key, []).append(device)
    names: dict[str, int] = {}
    found = []
    for (name, _), members in families.items():
        names[name] = count = names.get(name, 0) + 1
        owners = joined(system.devices[key].designation for key in members)
        rated = tuple(_rated(system, device) for devices in members.values() for device in _in_order(devices))
        found.append(Circuits(name if count == 1 else f"{name}-{count}", _title(name, owners), rated))
    return [*found, *_in_no_circuit(system)]


def _in_no_circuit(system: System) -> Iterator[Circuits]:
    """Yield earthing, data bus and what belongs to the whole system."""
    earthing = tuple(Rated(each.key, each.designation, "", each.key) for each in system.earth_conductors)
    chains = tuple(Rated(each.key, each.designation, "", each.key) for each in system.chains)
    yield Circuits("earthing", phrase("Earthing and bonding"), earthing)
    yield Circuits("data_bus", phrase("Data bus"), chains)
    yield Circuits("system", titled(phrase("Whole system"), system), (Rated("", phrase("system")),))


def _towards_supply(system: System) -> Iterator[Device]:
    """Yield the devices with those that feed through each, or are fed from it, before it."""
    stack = [(system.root, False)]
    while stack:
        key, entered = stack.pop()
        if entered:
            yield system.devices[key]
            continue
        stack.append((key, True))
        stack.extend((child, False) for child in reversed(system.children.get(key, ())))


def _family(system: System, owner: Device) -> tuple[str, str]:
    """Return the name of the section that a circuit is told in, and what else tells it from others of that name."""
    match owner:
        case InverterUnit():
            return "inverters", owner.type_name
        case BatteryUnit():
            return "batteries", ""
        case GeneratorUnit():
            return "generators", ""
        case Consumer():
            return "loads", ""
        case Busbar():
            return ("main_board", "") if owner == system.main_board() else ("boards", "")
        case _:
            return "supply", ""


def _title(name: str, owners: str) -> Phrase:
    titles = {
        "inverters": phrase("Inverters {names}: from the strings to the board", names=owners),
        "batteries": phrase("Batteries {names} and their circuits", names=owners),
        "generators": phrase("Generators {names} and their circuits", names=owners),
        "loads": phrase("Loads {names} and their circuits", names=owners),
        "boards": phrase("Boards {names} and their supply", names=owners),
        "main_board": phrase("Main board {names} and its supply", names=owners),
        "supply": phrase("Supply"),
    }
    return titles[name]


def _in_order(devices: Sequence[Device]) -> list[Device]:
    """Return the devices of a circuit: strings, inputs, what else is on the DC side, the inverter, the AC side.

    They come in the order towards the supply, so that the inverter stands between both sides already.
    """
    return sorted(devices, key=_stage)


def _stage(device: Device) -> int:
    if isinstance(device, StringGroup):
        return 0
    return 1 if isinstance(device, InputTerminal) else 2


def _rated(system: System, device: Device) -> Rated:
    owner = system.devices.get(device.owner)
    if owner is None:
        return Rated(device.key, device.designation, "", device.key)
    local = device.designation.removeprefix(owner.designation)
    slot = (pattern(local), device.kind) if device.dc else local
    return Rated(device.key, device.designation, owner.designation, slot)
