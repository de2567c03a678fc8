"""What a network operator checks, in one table: supply point, meters, protection settings, limits, isolation."""

from __future__ import annotations

from collections.abc import Iterator

from sld.layout.diagram.labels import below
from sld.layout.diagram.line import Role
from sld.model.device import Device, InverterUnit
from sld.model.kinds.ac import INTERFACE_PROTECTION, ISOLATOR, MAIN_SWITCH, METER
from sld.model.places import place_of, place_words
from sld.model.system import System
from sld.model.wording import device_word, protects_at_interface
from sld.quantity import shown
from sld.ratings.symbol import Symbol
from sld.sheet.content.alike import alike_as_one
from sld.sheet.listings.table import Column, Table
from sld.steps import Ratings

__all__ = ["review"]

_COLUMNS = (Column("What", 0.9), Column("Designation"), Column("As designed", 2.0), Column("Place", 0.8))

_Row = tuple[str, str, str, str]


def review(system: System, ratings: Ratings) -> Table:
    """Return the points that a reviewer looks for, with the devices that answer them; what is not given says so."""
    rows = [*_supply(system, ratings), *_devices(system, ratings), *_inverters(system)]
    return Table("For review", _COLUMNS, alike_as_one(rows, (1,)))


def _supply(system: System, ratings: Ratings) -> Iterator[_Row]:
    supply, network = system.supply, system.devices[system.root].designation
    power, limit_w = ratings.get("", Symbol.SAC), supply.export_limit_w
    limited = f"{shown(limit_w / 1000)} kW" if limit_w is not None else "none stated"
    yield "Supply point", network, supply.supply_point or "number not given", system.project.address or "–"
    yield "Network operator", network, supply.operator or "not given", "–"
    yield "Highest apparent power", "–", f"{shown(power.value / 1000)} kVA" if power else "not known", "–"
    yield "Feed-in limit", "–", limited, "–"


def _devices(system: System, ratings: Ratings) -> Iterator[_Row]:
    """Yield the meters, the interface protection, and what the installation is isolated with."""
    for kind in (METER, INTERFACE_PROTECTION, MAIN_SWITCH, ISOLATOR):
        for device in system.apparatus(kind):
            told = [str(line.said) for line in below(device, system, ratings) if line.role is not Role.PLACE]
            interface = device.given_as(INTERFACE_PROTECTION)
            if interface is not None and not interface.settings:
                told.append("settings not given")
            word = str(device_word(device))
            yield f"{word[0].upper()}{word[1:]}", device.designation, ", ".join(told) or "–", _place(system, device)


def _inverters(system: System) -> Iterator[_Row]:
    """Yield the settings of each inverter."""
    for unit in system.of(InverterUnit):
        given, limit_w = unit.given, unit.given.power_limit_w
        words = [
            f"network setting {given.grid_code}" if given.grid_code else "network setting not given",
            f"cos φ {shown(given.power_factor)}",
            f"limited to {shown(limit_w / 1000)} kW" if limit_w is not None else "",
            f"{INTERFACE_PROTECTION.word} built in" if protects_at_interface(system, unit.type) else "",
        ]
        yield "Inverter settings", unit.designation, ", ".join(word for word in words if word), _place(system, unit)


def _place(system: System, device: Device) -> str:
    return str(place_words(system.site.locations, place_of(system, device))) or "–"
