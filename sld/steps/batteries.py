"""The circuit between a battery and its converter: currents, voltages, fault current, cables."""

from __future__ import annotations

from collections.abc import Iterator

from sld.model.device import Apparatus, BatteryCells, BatteryUnit, Cable, Device, InverterUnit
from sld.model.kinds.battery import BATTERY_CABLE
from sld.model.kinds.role import AT_BATTERY, CARRYING, OVERCURRENT_PROTECTION
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings import ac_cable, conductor
from sld.ratings import battery as demand
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol
from sld.spec.blocks.battery import Battery
from sld.spec.blocks.battery_circuit import BatteryCable
from sld.steps.cable_design import conductor_class, conductor_material, hot_c, insulation
from sld.steps.ledger import Ledger
from sld.tables.table import NoRow, series
from sld.words import amount, phrase

__all__ = [
    "Store",
    "batteries",
    "design_current",
    "overcurrent_protection",
    "rate_device",
    "stores",
    "way_from",
]

_AMBIENT_C = 30.0
Store = BatteryUnit | BatteryCells


def stores(system: System) -> Iterator[Store]:
    """Yield the batteries whose circuit to the converter the spec gives."""
    for device in system.whole.among(BatteryUnit, BatteryCells):
        if isinstance(device, BatteryUnit | BatteryCells) and device.dc and device.given.dc_circuit is not None:
            yield device


def way_from(system: System, store: Store) -> list[Device]:
    """Return the devices and cables from a battery to its converter, the nearest to the battery first."""
    found = []
    for device in system.upstream(store.key):
        if not device.has(AT_BATTERY, BATTERY_CABLE):
            break
        found.append(device)
    return found


def overcurrent_protection(system: System, store: Store) -> Apparatus | None:
    """Return the fuse or circuit-breaker that is nearest to a battery in its circuit, or None."""
    for device in way_from(system, store):
        if isinstance(device, Apparatus) and device.has(OVERCURRENT_PROTECTION):
            return device
    return None


def batteries(system: System, ledger: Ledger) -> None:
    """Rate each battery, then what lies between it and its converter."""
    for store in stores(system):
        design = design_current(system, store)
        ledger.add(store.key, design)
        ledger.specified(store.key, Symbol.IK_DC, store.given.short_circuit_current_ka)
        for device in way_from(system, store):
            if isinstance(device, Apparatus) and device.has(AT_BATTERY):
                rate_device(ledger, device, store, demand.current_min(design) if design is not None else None)
        protection = overcurrent_protection(system, store)
        built_in_a = store.given.protection_rated_current_a
        rated_a = ledger.value(protection.key, Symbol.IN) if protection else None
        rated_a = built_in_a if built_in_a is not None else rated_a
        for device in way_from(system, store):
            if isinstance(device, Cable) and (laid := device.given_as(BATTERY_CABLE)) is not None:
                _cable(ledger, device, laid, demand.capacity_min(design, rated_a))
                _drop(ledger, device, laid, store.given, design)
        if built_in_a is None and protection is not None:
            ledger.add(store.key, *_length(system, store, protection))


def design_current(system: System, store: Store) -> Rating | None:
    """Return the highest current between a battery and its converter, None where the spec does not say enough. [A]"""
    given = store.given
    if given.current_max_a is not None:
        return specified(Symbol.IB, given.current_max_a, "A")
    power_w = given.charge_converter_power_w or given.converter_power_va
    owner = system.devices[store.owner]
    if isinstance(owner, InverterUnit):
        power_w = given.charge_converter_power_w or owner.type.rated_power_w
    if power_w is None or given.voltage_min_v is None:
        return None
    return demand.design_current(power_w, given.voltage_min_v)


def rate_device(ledger: Ledger, device: Apparatus, store: Store, least: Rating | None) -> None:
    """Keep what a device must stand and what the spec says of it; nothing is chosen. least: its rated current."""
    if (stated := device.given_as(AT_BATTERY)) is not None:
        ledger.specified(device.key, Symbol.UN, stated.rated_voltage_v)
    voltage_v, protects = store.given.voltage_max_v, device.given_as(OVERCURRENT_PROTECTION)
    if voltage_v is not None:
        ledger.add(device.key, demand.voltage_min(voltage_v))
    ledger.add(device.key, least)
    carries = protects or device.given_as(CARRYING)
    if carries is not None and carries.rated_current_a is not None:
        ledger.add(device.key, specified(Symbol.IN, carries.rated_current_a, "A"))
    if protects is None:
        return
    ledger.add(device.key, ledger.get(store.key, Symbol.IK_DC))
    ledger.specified(device.key, Symbol.ICN, protects.breaking_capacity_ka)


def _length(system: System, store: Store, protection: Apparatus) -> tuple[Rating, ...]:
    """Return the length of cable between a battery and its protection with its limit; nothing without a cable."""
    way = way_from(system, store)
    ahead = [each.given.length_m for each in way[: way.index(protection)] if isinstance(each, Cable)]
    return demand.length_to_protection(ahead) if ahead else ()


def _cable(ledger: Ledger, cable: Cable, given: BatteryCable, least: Rating | None) -> None:
    """Keep section and capacity of a battery cable, the smallest that fits where the spec leaves it out."""
    ledger.add(cable.key, least)
    ambient_c = given.ambient_temperature_c if given.ambient_temperature_c is not None else _AMBIENT_C
    said = () if given.ambient_temperature_c is not None else (
        phrase("{ambient} around battery cables", ambient=amount(_AMBIENT_C, "°C")),
    )  # fmt: skip

    def capacity(section_mm2: float) -> Rating:
        table = ac_cable.tabulated_capacity(conductor_material(cable), insulation(cable), 2, given.method, section_mm2)
        arrangement = {"C": "single_layer_wall_floor_unperforated_C", "E": "single_layer_perforated_tray_E_F"}
        factors = (
            ac_cable.ambient_factor(ambient_c, insulation(cable)),
            ac_cable.grouping_factor(
                arrangement.get(given.method, "bunched_A_to_F"), given.grouped_circuits * given.parallel
            ),
        )
        return ac_cable.corrected_capacity(table, factors, given.parallel).assuming(*said)

    nothing = phrase("no capacity is tabulated for the battery cable as laid")
    if given.section_mm2 is not None:
        ledger.specified(cable.key, Symbol.S, given.section_mm2)
        section_mm2 = given.section_mm2
        ledger.attempt(cable.key, Symbol.IZ, lambda: capacity(section_mm2), nothing)
        return
    if least is None:
        ledger.unanswered(cable.key, Symbol.S, phrase("nothing says what current flows here"))
        return
    for section_mm2 in series("section_mm2"):
        try:
            carries = capacity(section_mm2)
        except NoRow:
            continue
        if carries.value >= least.value:
            ledger.add(cable.key, demand.smallest_section(section_mm2, carries, least), carries)
            return
    ledger.unanswered(cable.key, Symbol.S, phrase("no standard section carries the current as laid"))


def _drop(ledger: Ledger, cable: Cable, given: BatteryCable, battery: Battery, design: Rating | None) -> None:
    section = ledger.get(cable.key, Symbol.S)
    if section is None:
        return
    resistance = ledger.attempt(
        cable.key,
        Symbol.R,
        lambda: conductor.resistance(conductor_material(cable), section.value, hot_c(cable), conductor_class(cable)),
        phrase("no resistance is tabulated for a battery cable of {section}", section=section),
    )
    if resistance is not None and design is not None and battery.voltage_min_v is not None:
        ledger.add(
            cable.key,
            *demand.voltage_drop(given.length_m, design.value, resistance.value, given.parallel, battery.voltage_min_v),
        )
