"""What devices come to: how many inverters and strings, and their powers; of devices, never of printed text."""

from __future__ import annotations

from collections.abc import Iterable

from sld.frozen import dataclass
from sld.layout.diagram.line import Line, Role, kilo
from sld.model.device import Device, InverterUnit, StringGroup
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.steps import Ratings
from sld.words import Sayable, amount, counted, sequence, unbroken

__all__ = ["Capacity", "capacity_of", "in_sum", "of_inverters"]


@dataclass(frozen=True, slots=True)
class Capacity:
    """What devices come to.

    Strings with their power at STC, inverters with their rated power and their highest apparent power.
    """

    inverters_count: int = 0
    rated_power_w: float = 0.0
    apparent_power_va: float = 0.0
    strings_count: int = 0
    dc_power_w: float = 0.0

    def __add__(self, other: Capacity) -> Capacity:
        return Capacity(
            self.inverters_count + other.inverters_count,
            self.rated_power_w + other.rated_power_w,
            self.apparent_power_va + other.apparent_power_va,
            self.strings_count + other.strings_count,
            self.dc_power_w + other.dc_power_w,
        )

    def __mul__(self, count: int) -> Capacity:
        return Capacity(
            self.inverters_count * count,
            self.rated_power_w * count,
            self.apparent_power_va * count,
            self.strings_count * count,
            self.dc_power_w * count,
        )

    def line(self) -> Line:
        """Return the line with apparent power and number of strings."""
        return Line(Role.RATED, sequence([amount(self.apparent_power_va / 1000, "kVA"), self._strings()]))

    def summed(self) -> Sayable:
        """Return the number of strings and the rated power of the inverters; without inverters that of the strings."""
        strings = [self._strings()] if self.strings_count else []
        if self.inverters_count:
            return unbroken(sequence([*strings, kilo(self.rated_power_w, "W")]))
        return unbroken(sequence([*strings, kilo(self.dc_power_w, "Wp")]))

    def _strings(self) -> Sayable:
        return counted("{count} string", "{count} strings", self.strings_count)


def capacity_of(device: Device, ratings: Ratings) -> Capacity | None:
    """Return what a device comes to by itself, None where it is neither strings nor an inverter."""
    if isinstance(device, StringGroup):
        count = device.given.count
        return Capacity(strings_count=count, dc_power_w=ratings[device.key, Symbol.PSTRING].value * count)
    if isinstance(device, InverterUnit):
        return Capacity(1, device.type.rated_power_w, device.apparent_power_va)
    return None


def of_inverters(system: System) -> dict[str, Capacity]:
    """Return what each inverter comes to with its strings, which have no power in it, by its key."""
    strings: dict[str, int] = {}
    for group in system.of(StringGroup):
        strings[group.owner] = strings.get(group.owner, 0) + group.given.count
    return {
        unit.key: Capacity(1, unit.type.rated_power_w, unit.apparent_power_va, strings.get(unit.key, 0))
        for unit in system.of(InverterUnit)
    }


def in_sum(capacities: Iterable[Capacity | None]) -> Capacity | None:
    """Return what several come to, None where none of them comes to anything."""
    found = [each for each in capacities if each is not None]
    return sum(found, Capacity()) if found else None
