"""The equipment schedule: every device with word, make, ratings, place and status; modules and junction boxes too."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator
from functools import singledispatch
from typing import Any

from sld.layout.diagram.labels import below
from sld.layout.diagram.line import Role, kilo
from sld.model.device import (
    Apparatus,
    BatteryUnit,
    Busbar,
    ChargeConverter,
    Consumer,
    DataNode,
    Device,
    GeneratorUnit,
    InverterUnit,
    StringGroup,
    Transformer,
)
from sld.model.kinds.ac import AC_SURGE_PROTECTION, BREAKER, METER, RCBO
from sld.model.kinds.dc import DC_FUSE, DISCONNECTOR, PLUG_CONNECTOR
from sld.model.kinds.role import SURGE_PROTECTION, SurgeProtection
from sld.model.kinds.row import Kind
from sld.model.places import place_of, place_words
from sld.model.system import System
from sld.model.wording import device_word
from sld.quantity import shown
from sld.ratings.symbol import Symbol
from sld.sheet.content.alike import alike_as_one
from sld.sheet.listings.table import Column, Table
from sld.spec.blocks.circuit import Breaker, DcFuse, Meter, Rcbo
from sld.spec.blocks.dc_path import DcDisconnector, PlugConnector
from sld.spec.blocks.module import ModuleType
from sld.steps import Ratings

__all__ = ["equipment"]

_COLUMNS = (
    Column("Designation"), Column("Device", 0.7), Column("Make, model", 0.8), Column("Ratings", 1.5),
    Column("Place", 0.8), Column("Status"),
)  # fmt: skip

_LISTED = (
    Transformer, Apparatus, InverterUnit, Busbar, BatteryUnit, ChargeConverter, Consumer, GeneratorUnit, DataNode,
)  # fmt: skip


def equipment(system: System, ratings: Ratings) -> Table:
    """Return the schedule: the module types first, then all devices from the supply on, then the junction boxes."""
    rows = [*_modules(system), *_devices(system, ratings), *_boxes(system)]
    return Table("Equipment schedule", _COLUMNS, alike_as_one(rows, (0, 4)))


def _devices(system: System, ratings: Ratings) -> Iterator[tuple[str, ...]]:
    for device in system.devices.values():
        if isinstance(device, _LISTED):
            told = (Role.PRODUCT, Role.PLACE)
            lines = [str(line.said) for line in below(device, system, ratings) if line.role not in told]
            text = ", ".join([*lines, *(word for word in _more(device, system, ratings) if word)])
            yield (
                device.designation, str(device_word(device)), device.product or "–", _with_note(text, device),
                _place(system, device), device.status,
            )  # fmt: skip


def _with_note(text: str, device: Device) -> str:
    note = "; ".join(word for word in (device.name, device.note) if word)
    return f"{text} ({note})" if note and text else text or note


def _place(system: System, device: Device) -> str:
    """Return the enclosure and where it stands; the device's own location goes before that of its enclosure."""
    designation = ""
    if device.enclosure in system.boxes:
        designation = system.boxes[device.enclosure][0]
    elif device.enclosure and not isinstance(device, Busbar):
        designation = system.devices[device.enclosure].designation
    place = str(place_words(system.site.locations, place_of(system, device)))
    return ", ".join(word for word in (designation, place) if word) or "–"


@singledispatch
def _more(device: Device, system: System, ratings: Ratings) -> list[str]:
    """Return what the schedule says besides the lines on the drawing."""
    return []


@_more.register
def _(device: Transformer, system: System, ratings: Ratings) -> list[str]:
    given = system.supply.transformer
    if given is None:
        return []
    losses_w, length_m = given.load_losses_w, given.secondary_length_m
    return [
        f"load losses {shown(losses_w / 1000)} kW" if losses_w is not None else "",
        f"{shown(length_m)} m to the first overcurrent device" if length_m is not None else "",
        f"high-voltage side: {given.primary_protection}" if given.primary_protection else "",
    ]


@_more.register
def _(device: InverterUnit, system: System, ratings: Ratings) -> list[str]:
    type_, direct_ma, leakage_ma = device.type, device.type.dc_residual_current_ma, device.type.leakage_current_ma
    start = f", starts at {shown(type_.start_voltage_v)} V" if type_.start_voltage_v else ""
    return [
        f"DC ≤ {shown(type_.dc_voltage_max_v)} V",
        f"MPP {shown(type_.mpp_voltage_min_v)} to {shown(type_.mpp_voltage_max_v)} V{start}",
        f"smooth DC residual current ≤ {shown(direct_ma)} mA" if direct_ma is not None else "",
        f"leakage {shown(leakage_ma)} mA" if leakage_ma is not None else "",
        f"backfeed {shown(type_.backfeed_current_a)} A" if type_.backfeed_current_a else "",
        "arc-fault protection" if type_.arc_fault_protection else "",
        f"cos φ ≥ {shown(type_.power_factor_min)}" if type_.power_factor_min is not None else "",
        "galvanic separation" if type_.galvanic_separation else "",
    ]


@_more.register
def _(device: Busbar, system: System, ratings: Ratings) -> list[str]:
    factor = device.given.diversity_factor
    stated = (ratings.get(device.key, symbol) for symbol in (Symbol.ICW, Symbol.IPK, Symbol.ICC))
    return [
        *(f"{each.symbol} {each.quantity()}" for each in stated if each),
        f"RDF {shown(factor)}" if factor is not None else "",
    ]


@_more.register
def _(device: Consumer, system: System, ratings: Ratings) -> list[str]:
    return [f"{device.given.phases} phase{'s' if device.given.phases > 1 else ''}"] if device.given.phases else []


@_more.register
def _(device: Apparatus, system: System, ratings: Ratings) -> list[str]:
    given = device.given
    if (surge := device.given_as(SURGE_PROTECTION)) is not None:
        return _surge(device, surge, ratings)
    limit = ratings.get(device.key, Symbol.IS)
    said = [f"selective up to {kilo(limit.value, 'A')}"] if limit else []
    loop = ratings.get(device.key, Symbol.ZS_MEAS)
    said += [f"read Zs ≤ {loop.quantity()}"] if loop else []
    return [*said, *(_OF_KIND[device.kind](given, device, ratings) if device.kind in _OF_KIND else ())]


def _fuse(given: DcFuse, device: Apparatus, ratings: Ratings) -> list[str]:
    return [f"{given.poles} pole{'s' if given.poles > 1 else ''} fused", _icn(device, ratings)]


def _breaker(given: Breaker, device: Apparatus, ratings: Ratings) -> list[str]:
    return [f"trips at {shown(given.trip_factor)} In at most"] if given.trip_factor else []


def _rcbo(given: Rcbo, device: Apparatus, ratings: Ratings) -> list[str]:
    return [] if given.bidirectional else ["for one direction of power only"]


def _meter(given: Meter, device: Apparatus, ratings: Ratings) -> list[str]:
    leads = ratings.get(device.key, Symbol.SLEAD)
    return [
        "" if given.bidirectional else "counts one direction only",
        f"leads {shown(given.ct_lead_length_m or 0)} m, {leads.quantity()}" if leads else "",
    ]


def _plug_connector(given: PlugConnector, device: Apparatus, ratings: Ratings) -> list[str]:
    mated = f"mated with {given.mated_with}" if given.mated_with else "both halves alike"
    return [mated, "not to be parted under load"]


def _disconnector(given: DcDisconnector, device: Apparatus, ratings: Ratings) -> list[str]:
    return ["not for switching under load"]


_OF_KIND: dict[Kind[Any], Callable[[Any, Apparatus, Ratings], list[str]]] = {
    DC_FUSE: _fuse,
    BREAKER: _breaker,
    RCBO: _rcbo,
    METER: _meter,
    PLUG_CONNECTOR: _plug_connector,
    DISCONNECTOR: _disconnector,
}
"""What only the schedule says of some kinds."""


def _icn(device: Apparatus, ratings: Ratings) -> str:
    capacity = ratings.get(device.key, Symbol.ICN)
    return f"Icn {capacity.quantity()}" if capacity else ""


def _surge(device: Apparatus, given: SurgeProtection, ratings: Ratings) -> list[str]:
    """Return test class and currents of a surge protective device; its voltages stand on the drawing."""
    ac_given = device.given_as(AC_SURGE_PROTECTION)
    fuse_a = ac_given.backup_fuse_max_a if ac_given else None
    section, current = ratings.get(device.key, Symbol.SPE), ratings.get(device.key, Symbol.IN_SURGE)
    impulse, stands = ratings.get(device.key, Symbol.IIMP), ratings.get(device.key, Symbol.ISCPV)
    return [
        f"type {given.test_class} (T{given.test_class.replace('+', ' + T')})",
        f"In {current.quantity()}" if current else "",
        f"Iimp {impulse.quantity()}" if impulse else "",
        f"Iscpv {stands.quantity()}" if stands else "",
        f"backup fuse ≤ {shown(fuse_a)} A" if fuse_a else "",
        f"leads {shown(given.lead_length_m)} m" if given.lead_length_m is not None else "",
        f"to earth ≥ {section.quantity()} Cu" if section else "",
    ]


def _modules(system: System) -> Iterator[tuple[str, ...]]:
    """Yield a row for each type and status of module."""
    counts: Counter[tuple[str, str, str]] = Counter()
    types: dict[tuple[str, str, str], ModuleType] = {}
    for group in system.of(StringGroup):
        key = (group.type_name, group.product, group.status)
        counts[key] += group.given.count * group.given.modules_in_series
        types[key] = group.type
    for (name, product, status), count in counts.items():
        told = _module_ratings(types[name, product, status])
        yield f"{count} ×", "PV module", product or name, told, "strings", status


def _module_ratings(module: ModuleType) -> str:
    fuse_a, both, cell_c = module.series_fuse_max_a, module.bifaciality_percent, module.nominal_cell_temperature_c
    tolerance, plugs_a = module.voltage_tolerance_percent, module.connector_current_max_a
    words = [
        f"{shown(module.rated_power_w)} Wp",
        f"Uoc {shown(module.open_circuit_voltage_v)} V",
        f"Isc {shown(module.short_circuit_current_a, 4)} A",
        f"Umpp {shown(module.mpp_voltage_v)} V",
        f"Impp {shown(module.mpp_current_a, 4)} A at STC",
        f"system ≤ {shown(module.system_voltage_max_v)} V",
        f"series fuse ≤ {shown(fuse_a)} A" if fuse_a else "",
        f"bifaciality {shown(both)} %" if both is not None else "",
        f"NOCT {shown(cell_c)} °C" if cell_c is not None else "",
        f"Uoc +{shown(tolerance)} %" if tolerance is not None else "",
        f"connectors {shown(plugs_a)} A" if plugs_a is not None else "",
        f"class {module.protection_class}",
    ]
    return ", ".join(word for word in words if word)


def _boxes(system: System) -> Iterator[tuple[str, ...]]:
    for designation, box in system.boxes.values():
        made = f"{box.make or ''} {box.model or ''}".strip()
        note = "; ".join(word for word in (box.name, box.note) if word)
        place = str(place_words(system.site.locations, box.location or ""))
        yield designation, "junction box", made or "–", note or "–", place or "–", box.status
