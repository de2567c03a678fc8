"""The DC side of a battery: its charge converter, the circuit between battery and converter, the battery itself."""

from __future__ import annotations

from sld.model.circuit import Place, Run, add_device, placed_fields
from sld.model.device import BatteryCells, BatteryUnit, ChargeConverter, InverterUnit
from sld.model.draft import Draft
from sld.model.kinds.units import BATTERY, CHARGE_CONVERTER
from sld.spec.blocks.battery import Battery
from sld.spec.blocks.installed import Installed

__all__ = ["add_battery_of_inverter", "add_cells", "is_battery_checked"]


def add_battery_of_inverter(draft: Draft, unit: InverterUnit, name: str, battery: Battery) -> None:
    """Add a battery that is connected to the battery terminals of an inverter, with all between the two."""
    parent, key = unit.key, f"batteries.{name}"
    if battery.charge_converter_power_w is not None:
        parent = draft.add(
            ChargeConverter(
                key=f"{key}.charge_converter",
                designation=draft.designator.next(draft.owners["batteries", name], CHARGE_CONVERTER),
                kind=CHARGE_CONVERTER,
                at=("batteries", name),
                parent=unit.key,
                owner=unit.key,
                dc=True,
                location=battery.location or "",
                status=battery.status,
                given=battery,
            )
        )
    draft.add(
        BatteryUnit(
            key=key,
            designation=draft.owners["batteries", name],
            kind=BATTERY,
            at=("batteries", name),
            parent=_dc_circuit(draft, name, battery, parent),
            owner=unit.key,
            dc=True,
            given=battery,
            **placed_fields(battery),
        )
    )


def add_cells(draft: Draft, name: str, battery: Battery, converter: str) -> None:
    """Add the battery behind its own converter, where the spec gives the circuit between them."""
    draft.add(
        BatteryCells(
            key=f"batteries.{name}.cells",
            designation=draft.owners["batteries", name],
            kind=BATTERY,
            at=("batteries", name),
            parent=_dc_circuit(draft, name, battery, converter),
            owner=f"batteries.{name}",
            dc=True,
            given=battery,
            **placed_fields(battery),
        )
    )


def _dc_circuit(draft: Draft, name: str, battery: Battery, parent: str) -> str:
    """Add the circuit between converter and battery and return the key of its last device.

    The spec goes from the battery to the converter, the tree from the converter to the battery.
    """
    run = Run(f"batteries.{name}", dc=True, status=battery.status)
    circuit = battery.dc_circuit or []
    for position in reversed(range(len(circuit))):
        device = circuit[position]
        at = ("batteries", name, "dc_circuit", position)
        board = f"boards.{device.enclosure}" if isinstance(device, Installed) and device.enclosure else ""
        parent = add_device(draft, device, Place(f"batteries.{name}.dc_circuit.{position}", at, parent, board), run)
    return parent


def is_battery_checked(unit: BatteryUnit) -> bool:
    """Return whether the direct current of a battery is drawn and checked: its circuit is given."""
    return unit.given.dc_circuit is not None
