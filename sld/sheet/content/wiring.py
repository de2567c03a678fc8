"""Terminals, tightening torques, stripping lengths and routes, as far as the spec gives them: for those who wire."""

from __future__ import annotations

from sld.model.device import Apparatus, BatteryUnit, Busbar, Cable, Consumer, DataNode, Device, InverterUnit
from sld.model.system import System
from sld.model.wording import device_word
from sld.quantity import shown
from sld.sheet.content.alike import alike_as_one
from sld.sheet.listings.table import Column, Table

__all__ = ["wiring"]

_COLUMNS = (
    Column("Designation"), Column("Device", 0.8), Column("Terminals", 1.4), Column("Torque", align="right"),
    Column("Strip", align="right"), Column("Route", 1.2),
)  # fmt: skip

_Wired = Apparatus | Cable | InverterUnit | Busbar | Consumer | BatteryUnit | DataNode


def wiring(system: System) -> Table:
    """Return a row for each device or cable of which the spec gives terminals, torque, stripping length or route."""
    rows = []
    for device in system.devices.values():
        cells = _cells(device)
        if any(cells):
            rows.append((device.designation, str(device_word(device)), *(cell or "–" for cell in cells)))
    return Table("Terminals and routes", _COLUMNS, alike_as_one(rows, (0,)))


def _cells(device: Device) -> tuple[str, str, str, str]:
    """Return terminals, torque, stripping length and route of a device, empty where they are not given."""
    if not isinstance(device, _Wired):
        return ("", "", "", "")
    given = device.given
    torque_nm, strip_mm = given.torque_nm, given.strip_length_mm
    return (
        given.terminals or "",
        f"{shown(torque_nm)} Nm" if torque_nm is not None else "",
        f"{shown(strip_mm)} mm" if strip_mm is not None else "",
        (device.given.route or "") if isinstance(device, Cable) else "",
    )
