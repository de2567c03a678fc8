"""What stays supplied while the public network is away: by which source, behind which switch."""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import SpecPath
from sld.frozen import dataclass
from sld.model.conductors import lines_count
from sld.model.device import Apparatus, BatteryUnit, Busbar, Consumer, Device, GeneratorUnit, InverterUnit
from sld.model.kinds.ac import CHANGEOVER, NETWORK_SEPARATION
from sld.model.system import System

__all__ = ["Island", "islands"]


@dataclass(frozen=True, slots=True)
class Island:
    """A part of the installation that can be fed without the network.

    switch: what separates it: a device, or the inverter whose backup output feeds it. root: all downstream of it
    belongs to the island. sources: that feed it then. linked: neutral and earth are linked in this state. separated:
    the neutral is opened too, None where nothing says so. at: where the spec says how it is separated. linked_twice:
    the switch links neutral and earth, and the source does too.
    """

    switch: Device
    root: str
    sources: tuple[InverterUnit | GeneratorUnit | BatteryUnit, ...]
    linked: bool
    separated: bool | None
    at: SpecPath
    linked_twice: bool = False

    def loads(self, system: System) -> list[Consumer]:
        """Return the loads of the island."""
        return [device for device in system.downstream(self.root) if isinstance(device, Consumer)]


def islands(system: System) -> Iterator[Island]:
    """Yield every island: at backup outputs, behind change-over switches, behind switches that separate."""
    for unit in system.of(InverterUnit):
        backup, below = unit.type.backup, system.children.get(unit.key, ())
        fed = [key for key in below if backup is not None and _serves_a_board(system, key)]
        if backup is not None and fed:
            at = ("types", "inverters", unit.type_name, "backup")
            for key in fed:
                opened = backup.separates_neutral if system.supply.has_neutral else True
                yield Island(unit, key, (unit,), backup.neutral_earth_link, opened, at)
    for device, given in system.given_as(CHANGEOVER):
        source = system.devices[system.names[given.second_source][0]]
        assert isinstance(source, InverterUnit | GeneratorUnit), "the reader has seen to it"
        yield Island(device, device.key, (source,), given.neutral_earth_link or _links(source),
                     _opens_neutral(system, device, given.poles), device.at,
                     given.neutral_earth_link and _links(source))  # fmt: skip
    for device, apart in system.given_as(NETWORK_SEPARATION):
        units = tuple(unit for unit in system.inverters_behind(device.key) if unit.type.backup is not None)
        by_sources = sum(_links(unit) for unit in units)
        sources: tuple[InverterUnit | BatteryUnit, ...] = (*units, *_converters(system, device.key))
        linked, twice = apart.neutral_earth_link or by_sources > 0, apart.neutral_earth_link and by_sources > 0
        opened = _opens_neutral(system, device, apart.poles)
        yield Island(device, device.key, sources, linked, opened, device.at, twice)


def _converters(system: System, key: str) -> Iterator[BatteryUnit]:
    """Yield the batteries behind a switch whose own converter feeds without the network."""
    for device in system.downstream(key):
        if isinstance(device, BatteryUnit) and device.given.backup_power_va is not None:
            yield device


def _serves_a_board(system: System, key: str) -> bool:
    """Return whether what hangs on an inverter is the circuit of a board, or the board itself."""
    device = system.devices[key]
    return isinstance(device, Busbar) or (not device.dc and isinstance(system.devices.get(device.owner), Busbar))


def _links(source: InverterUnit | GeneratorUnit) -> bool:
    if isinstance(source, GeneratorUnit):
        return source.given.neutral_earthed
    return source.type.backup is not None and source.type.backup.neutral_earth_link


def _opens_neutral(system: System, device: Apparatus, poles: int | None) -> bool:
    """Return whether a switch opens all live conductors, the neutral where there is one; without a word on its poles it
    does."""
    return poles is None or poles >= lines_count(system, device.owner) + system.supply.has_neutral
