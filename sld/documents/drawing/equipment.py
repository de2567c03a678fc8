"""The equipment schedule: every device with word, make, ratings, place and status; modules and junction boxes too."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator
from functools import singledispatch
from typing import Any

from sld.citation import with_mark
from sld.documents.alike import Repeated, Row, alike_as_one, of_all
from sld.documents.cell import NOT_GIVEN, Cell, State, by_ratings, computed, designated, given
from sld.documents.drawing.inverters import direct_current, inverter_words
from sld.documents.drawing.protective_devices import backed_up, breaker, direction, rcbo
from sld.documents.section import Column, Table
from sld.layout.diagram.labels import below
from sld.layout.diagram.line import Role, kilo
from sld.model.conductors import fused_poles_count
from sld.model.device import (
    Apparatus,
    BatteryCells,
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
from sld.model.earth import ELECTRODES
from sld.model.kinds.ac import AC_SURGE_PROTECTION, BREAKER, METER, RCBO, RCD
from sld.model.kinds.dc import DC_FUSE, DISCONNECTOR, OPTIMISER, PLUG_CONNECTOR
from sld.model.kinds.role import BACKED_UP, SURGE_PROTECTION, SurgeProtection
from sld.model.kinds.row import Kind
from sld.model.places import place_of, place_words
from sld.model.system import System
from sld.model.wording import STATUSES, device_word, status_word
from sld.ratings.symbol import Symbol
from sld.spec.blocks.circuit import Meter
from sld.spec.blocks.dc_path import DcDisconnector, PlugConnector
from sld.spec.blocks.module import ModuleType
from sld.spec.blocks.optimiser import Optimiser
from sld.steps import Ratings
from sld.words import NOTHING, Phrase, Sayable, Sequence, Value, amount, counted, phrase, sequence, verbatim

__all__ = ["equipment"]

_NEW = given(STATUSES["new"])
_COLUMNS = (
    Column(phrase("Designation")),
    Column(phrase("Device"), 0.7),
    Column(phrase("Make, model"), 1.5),
    Column(phrase("Ratings"), behind=True, on_paper=phrase("ratings")),
    Column(phrase("Place"), 0.8),
    Column(phrase("Status"), behind=True, usual=_NEW, on_paper=phrase("status unless new")),
)

_LISTED = (
    Transformer, Apparatus, InverterUnit, Busbar, BatteryUnit, BatteryCells, ChargeConverter, Consumer, GeneratorUnit,
    DataNode,
)  # fmt: skip


def equipment(system: System, ratings: Ratings) -> Table:
    """Return the schedule: the module types first, then all devices from the supply on, then the junction boxes."""
    rows = [*_modules(system), *_devices(system, ratings), *_boxes(system)]
    return Table("equipment", phrase("Equipment schedule"), _COLUMNS, alike_as_one(rows, _elsewhere), sparse=True)


def _elsewhere(row: Row) -> int | None:
    """Return which cell has the place of a device that may share its row with others elsewhere: one with no status."""
    *_, place, status = row
    return len(row) - 2 if status == _NEW and place != NOT_GIVEN else None


def _devices(system: System, ratings: Ratings) -> Iterator[Row | Repeated]:
    for device in system.one_of_each().of(Device):
        if isinstance(device, _LISTED):
            told = (Role.PRODUCT, Role.PLACE)
            lines: list[Value] = [line.said for line in below(device, system, ratings) if line.role not in told]
            words = [word for word in (*lines, *_more(device, system, ratings)) if word]
            row = (
                designated(device.designation),
                given(device_word(device)),
                given(device.product),
                by_ratings(_with_note(words, device), *ratings.of(device.key)),
                _place(system, device),
                _status(device),
            )
            yield from of_all(system, device, row)


def _status(device: Device) -> Cell:
    if device.assumed:
        return Cell(status_word(device), State.ASSUMED, why=phrase("not mentioned in the spec"))
    return given(status_word(device))


def _with_note(words: list[Value], device: Device) -> Sayable:
    note = "; ".join(word for word in (device.name, device.note) if word)
    if not words:
        return verbatim(note)
    return sequence([sequence(words), f"({note})"], " ") if note else sequence(words)


def _place(system: System, device: Device) -> Cell:
    """Return the enclosure and where it stands; the device's own location overrides that of its enclosure."""
    place = place_words(system.site.locations, place_of(system, device))
    if device.enclosure in system.boxes:
        return designated(system.boxes[device.enclosure][0], rest=place)
    if device.enclosure and not isinstance(device, Busbar):
        return designated(system.devices[device.enclosure].designation, rest=place)
    return given(place) if place != NOTHING else NOT_GIVEN


@singledispatch
def _more(device: Device, system: System, ratings: Ratings) -> list[Value]:
    """Return what the schedule says besides the lines on the drawing."""
    return []


@_more.register
def _(device: Transformer, system: System, ratings: Ratings) -> list[Value]:
    given = system.supply.transformer
    if given is None:
        return []
    losses_w = given.load_losses_w
    return [
        phrase("load losses {losses}", losses=amount(losses_w / 1000, "kW")) if losses_w is not None else "",
        phrase("high-voltage side: {protection}", protection=given.primary_protection)
        if given.primary_protection
        else "",
    ]


@_more.register
def _(device: InverterUnit, system: System, ratings: Ratings) -> list[Value]:
    return inverter_words(device, system)


@_more.register
def _(device: BatteryUnit, system: System, ratings: Ratings) -> list[Value]:
    separated = phrase("galvanic separation") if device.given.galvanic_separation else ""
    return [direct_current(device.given.dc_residual_current_ma), separated]


@_more.register
def _(device: Busbar, system: System, ratings: Ratings) -> list[Value]:
    factor, electrode = device.given.diversity_factor, device.given.electrode
    most_a = device.given.backup_fuse_max_a
    stated = (ratings.get(device.key, symbol) for symbol in (Symbol.ICW, Symbol.IPK, Symbol.ICC))
    return [
        *(sequence([each.symbol, each], " ") for each in stated if each),
        phrase("behind at most {current}", current=amount(most_a, "A")) if most_a is not None else "",
        phrase("RDF {factor}", factor=amount(factor)) if factor is not None else "",
        counted("{count} phase", "{count} phases", device.given.phases) if device.given.phases else "",
        phrase("on {line}", line=device.given.line) if device.given.line else "",
        *((ELECTRODES[electrode.kind],) if electrode is not None else ()),
        STATUSES[electrode.status] if electrode is not None and electrode.status is not None else "",
    ]


@_more.register
def _(device: Consumer, system: System, ratings: Ratings) -> list[Value]:
    phases, factor, lasting = device.given.phases, device.given.diversity_factor, device.given.continuous
    return [
        _SUPPLIES[device.given.supplies],
        counted("{count} phase", "{count} phases", phases) if phases else "",
        phrase("on {line}", line=device.given.line) if device.given.line else "",
        phrase("diversity factor {factor}", factor=amount(factor)) if factor is not None else "",
        "" if lasting is None else phrase("continuous") if lasting else phrase("not continuous"),
        direct_current(device.given.dc_residual_current_ma),
        _STANDS[device.given.vehicle_outdoors],
        _OPEN_PEN[device.given.open_pen_protection],
    ]


_SUPPLIES: dict[str | None, Value] = {
    None: "",
    "socket_outlets": phrase("socket-outlets"),
    "luminaires": phrase("luminaires"),
    "fixed_equipment": phrase("fixed equipment"),
}
_STANDS: dict[bool | None, Value] = {None: "", True: phrase("vehicle outdoors"), False: phrase("vehicle indoors")}
_OPEN_PEN: dict[str | None, Value] = {
    None: "",
    "disconnection": phrase("disconnects if the PEN breaks"),
    "electrode": phrase("electrode of its own against a broken PEN"),
    "own_earth": phrase("earth of its own (TT)"),
    "separation": phrase("electrical separation"),
    "balanced_load": phrase("balanced load against a broken PEN"),
}
"""What is said of a charging point."""


@_more.register
def _(device: Apparatus, system: System, ratings: Ratings) -> list[Value]:
    block = device.given
    if (surge := device.given_as(SURGE_PROTECTION)) is not None:
        return _surge(device, surge, ratings)
    limit = ratings.get(device.key, Symbol.IS)
    said: list[Value] = (
        [phrase("selective up to {current}", current=with_mark(kilo(limit.value, "A"), limit))] if limit else []
    )
    loop = ratings.get(device.key, Symbol.ZS_MEAS)
    said += [phrase("read Zs ≤ {loop}", loop=with_mark(loop, loop))] if loop else []
    if (behind := device.given_as(BACKED_UP)) is not None:
        said += backed_up(behind)
    if device.has(DC_FUSE):
        said += [
            counted("{count} pole fused", "{count} poles fused", fused_poles_count(system, device)),
            _icn(device, ratings),
        ]
    return [*said, *(_OF_KIND[device.kind](block, device, ratings) if device.kind in _OF_KIND else ())]


def _meter(given: Meter, device: Apparatus, ratings: Ratings) -> list[Value]:
    leads = ratings.get(device.key, Symbol.SLEAD)
    return [
        phrase("counts one direction only") if given.bidirectional is False else "",
        phrase("leads {length}, {burden}", length=amount(given.ct_lead_length_m or 0, "m"), burden=leads)
        if leads
        else "",
    ]


_LIMIT_FOR = {
    "standard_conditions": phrase("Isc compared at standard test conditions"),
    "largest_current": phrase("largest Isc compared"),
}


def _optimiser(given: Optimiser, device: Apparatus, ratings: Ratings) -> list[Value]:
    """Return what the maker of power optimisers lays down for modules and strings, as far as the spec has it."""
    least, most = given.units_min, given.units_max
    into, out = (
        ((given.input_voltage_max_v, "V"), (given.input_current_max_a, "A"), (given.rated_power_w, "W")),
        (
            (given.output_voltage_max_v, "V"),
            (given.output_current_max_a, "A"),
        ),
    )
    whole = ((given.string_voltage_max_v, "V"), (given.string_power_max_w, "W"))
    said: list[Value] = [counted("one for {count} module", "one for {count} modules", given.modules_per_unit)]
    for label, limits in (
        (phrase("input up to"), into),
        (phrase("output up to"), out),
        (phrase("string up to"), whole),
    ):
        stated = [amount(value, unit) for value, unit in limits if value]
        said += [sequence([label, sequence(stated)], " ")] if stated else []
    said += [_LIMIT_FOR[given.short_circuit_limit_for]] if given.short_circuit_limit_for else []
    said += [phrase("units in a string from {least}", least=least)] if least else []
    said += [phrase("units in a string up to {most}", most=most)] if most else []
    unfused = given.parallel_unfused_max
    return [*said, phrase("strings in parallel without fuses up to {most}", most=unfused) if unfused else ""]


def _plug_connector(given: PlugConnector, device: Apparatus, ratings: Ratings) -> list[Value]:
    mated = (
        phrase("mated with {mated_with}", mated_with=given.mated_with)
        if given.mated_with
        else phrase("both halves alike")
    )
    return [mated, phrase("not to be parted under load")]


def _disconnector(given: DcDisconnector, device: Apparatus, ratings: Ratings) -> list[Value]:
    return [phrase("not for switching under load")]


_OF_KIND: dict[Kind[Any], Callable[[Any, Apparatus, Ratings], list[Value]]] = {
    BREAKER: breaker,
    RCBO: rcbo,
    RCD: direction,
    METER: _meter,
    OPTIMISER: _optimiser,
    PLUG_CONNECTOR: _plug_connector,
    DISCONNECTOR: _disconnector,
}
"""What only the schedule says of some kinds."""


def _icn(device: Apparatus, ratings: Ratings) -> Value:
    capacity = ratings.get(device.key, Symbol.ICN)
    return phrase("Icn {capacity}", capacity=capacity) if capacity else ""


def _surge(device: Apparatus, given: SurgeProtection, ratings: Ratings) -> list[Value]:
    """Return test class and currents of a surge protective device; its voltages stand on the drawing."""
    ac_given = device.given_as(AC_SURGE_PROTECTION)
    fuse_a = ac_given.backup_fuse_max_a if ac_given else None
    section, current = ratings.get(device.key, Symbol.SPE), ratings.get(device.key, Symbol.IN_SURGE)
    impulse, stands = ratings.get(device.key, Symbol.IIMP), ratings.get(device.key, Symbol.ISCPV)
    short = "T" + given.test_class.replace("+", " + T")
    return [
        phrase("type {test_class} ({short})", test_class=given.test_class, short=short),
        phrase("In {current}", current=with_mark(current, current)) if current else "",
        phrase("Iimp {impulse}", impulse=with_mark(impulse, impulse)) if impulse else "",
        phrase("Iscpv {stands}", stands=with_mark(stands, stands)) if stands else "",
        phrase("backup fuse ≤ {fuse}", fuse=amount(fuse_a, "A")) if fuse_a else "",
        phrase("leads {length}", length=amount(given.lead_length_m, "m")) if given.lead_length_m is not None else "",
        phrase("to earth ≥ {section} Cu", section=with_mark(section, section)) if section else "",
    ]


def _modules(system: System) -> Iterator[tuple[Cell, ...]]:
    """Yield a row for each type and status of module."""
    counts: Counter[tuple[str, str, str]] = Counter()
    types: dict[tuple[str, str, str], ModuleType] = {}
    for group in system.of(StringGroup):
        key = (group.type_name, group.product, group.status)
        counts[key] += group.given.count * group.given.modules_in_series
        types[key] = group.type
    for (name, product, status), count in counts.items():
        yield (
            computed(phrase("{count} ×", count=count)),
            given(phrase("PV module")),
            given(product or name),
            given(_module_ratings(types[name, product, status])),
            given(phrase("strings")),
            given(STATUSES[status]),
        )


def _module_ratings(module: ModuleType) -> Sequence:
    fuse_a, both, cell_c = module.series_fuse_max_a, module.bifaciality_percent, module.nominal_cell_temperature_c
    tolerance, plugs_a = module.voltage_tolerance_percent, module.connector_current_max_a
    words: list[Value] = [
        amount(module.rated_power_w, "Wp"),
        phrase("Uoc {voltage}", voltage=amount(module.open_circuit_voltage_v, "V")),
        phrase("Isc {current}", current=amount(module.short_circuit_current_a, "A", digits=4)),
        phrase("Umpp {voltage}", voltage=amount(module.mpp_voltage_v, "V")),
        phrase("Impp {current} at STC", current=amount(module.mpp_current_a, "A", digits=4)),
        _system_voltage(module),
        phrase("series fuse ≤ {fuse}", fuse=amount(fuse_a, "A")) if fuse_a else "",
        phrase("bifaciality {both}", both=amount(both, "%")) if both is not None else "",
        phrase("NOCT {temperature}", temperature=amount(cell_c, "°C")) if cell_c is not None else "",
        phrase("Uoc +{tolerance}", tolerance=amount(tolerance, "%")) if tolerance is not None else "",
        phrase("connectors {current}", current=amount(plugs_a, "A")) if plugs_a is not None else "",
        phrase("class {protection_class}", protection_class=module.protection_class)
        if "protection_class" in module.model_fields_set
        else "",
    ]
    return sequence(words)


def _system_voltage(module: ModuleType) -> Phrase:
    voltage = amount(module.system_voltage_max_v, "V")
    if "system_voltage_max_v" in module.model_fields_set:
        return phrase("system ≤ {voltage}", voltage=voltage)
    return phrase("system ≤ {voltage} taken, not stated", voltage=voltage)


def _boxes(system: System) -> Iterator[tuple[Cell, ...]]:
    for designation, box in system.boxes.values():
        note = "; ".join(word for word in (box.name, box.note) if word)
        yield (
            designated(designation),
            given(phrase("junction box")),
            given(f"{box.make or ''} {box.model or ''}".strip()),
            given(note),
            given(place_words(system.site.locations, box.location or "")),
            given(STATUSES[box.status]),
        )
