"""Terminals, tightening torques, stripping lengths and routes, as far as the spec gives them: for those who wire."""

from __future__ import annotations

from collections.abc import Iterator

from sld.model.device import Apparatus, BatteryUnit, Busbar, Cable, Consumer, DataNode, GeneratorUnit, InverterUnit
from sld.model.system import System
from sld.model.wording import device_word
from sld.quantity import shown
from sld.sheet.content.alike import alike_as_one
from sld.sheet.listings.table import Column, Table
from sld.spec.blocks.block import Wired

__all__ = ["wiring"]

_COLUMNS = (
    Column("Designation"), Column("Device", 0.8), Column("Terminals", 1.4), Column("Torque", align="right"),
    Column("Strip", align="right"), Column("Route", 1.2),
)  # fmt: skip

_Wired = Apparatus | Cable | InverterUnit | Busbar | Consumer | BatteryUnit | GeneratorUnit | DataNode


def wiring(system: System) -> Table:
    """Return a row for each thing of which the spec gives terminals, torque, stripping length or route."""
    rows = []
    for designation, word, given, route in _wired(system):
        torque_nm, strip_mm = given.torque_nm, given.strip_length_mm
        cells = (
            given.terminals or "",
            f"{shown(torque_nm)} Nm" if torque_nm is not None else "",
            f"{shown(strip_mm)} mm" if strip_mm is not None else "",
            route,
        )
        if any(cells):
            rows.append((designation, word, *(cell or "–" for cell in cells)))
    return Table("Terminals and routes", _COLUMNS, alike_as_one(rows, (0,)))


def _wired(system: System) -> Iterator[tuple[str, str, Wired, str]]:
    """Yield designation, word, what the spec says and the route of all that has terminals or is laid."""
    for device in system.devices.values():
        if isinstance(device, _Wired):
            route = device.given.route if isinstance(device, Cable) else None
            yield device.designation, str(device_word(device)), device.given, route or ""
    for designation, box in system.boxes.values():
        yield designation, "junction box", box, ""
    yield system.earthing_designation, "main earthing terminal", system.earthing, ""
