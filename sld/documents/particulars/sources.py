"""The sources: modules, inverters with certificates and settings, batteries."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from sld.documents.alike import alike_as_one
from sld.documents.cell import Cell, answer, computed, designated, given
from sld.documents.section import Column, Table
from sld.layout.diagram.ranges import joined
from sld.model.device import BatteryUnit, InverterUnit, StringGroup
from sld.model.places import facing
from sld.model.system import System
from sld.model.wording import STATUSES
from sld.spec.blocks.certificate import Certificate
from sld.spec.blocks.inverter import InverterType
from sld.spec.blocks.network_settings import NetworkSettings
from sld.words import NOTHING, Day, Sayable, Value, amount, phrase, sequence

__all__ = ["batteries", "certificates", "characteristics", "inverters", "modules"]


def modules(system: System) -> Table:
    """Return the modules by type, status and the way that they face."""
    columns = (
        Column(phrase("Module"), 1.0),
        Column(phrase("Number"), right=True),
        Column(phrase("Power")),
        Column(phrase("Orientation"), 1.0),
        Column(phrase("Status")),
    )
    counts: Counter[tuple[str, float, Sayable, str]] = Counter()
    for group in system.of(StringGroup):
        said = group.given
        key = (group.product or group.type_name, group.type.rated_power_w, facing(said), group.status)
        counts[key] += said.count * said.modules_in_series
    rows = tuple(
        (
            answer("module", product),
            computed(amount(count)),
            computed(amount(count * power_w / 1000, "kWp", 4)),
            answer("orientation", towards),
            given(STATUSES[status]),
        )
        for (product, power_w, towards, status), count in counts.items()
    )
    return Table("modules", phrase("Modules"), columns, rows)


def inverters(system: System) -> Table:
    """Return the inverters with what tells one from another and what they are set to."""
    columns = (
        Column(phrase("Designation")),
        Column(phrase("Make, model"), 1.0),
        Column(phrase("Power, phases"), below=True),
        Column(phrase("Serial number"), 0.8),
        Column(phrase("Firmware"), below=True),
        Column(phrase("Network settings"), 1.0),
        Column(phrase("Edition"), below=True),
        Column(phrase("Status")),
    )
    return Table("inverters", phrase("Inverters"), columns, alike_as_one(_inverter(each) for each in _units(system)))


def _units(system: System) -> Iterator[InverterUnit]:
    return system.of(InverterUnit)


def _inverter(unit: InverterUnit) -> tuple[Cell, ...]:
    said, kind, settings = unit.given, unit.type, unit.given.network_settings
    serial = said.serial_numbers[unit.copy - 1] if unit.copy <= len(said.serial_numbers) else None
    power: list[Value] = [
        amount(kind.rated_power_w / 1000, "kW", 4),
        amount(kind.apparent_power_max_va / 1000, "kVA", 4) if kind.apparent_power_max_va else "",
        phrase("{phases} ~", phases=kind.phases),
        said.line or "",
    ]
    return (
        designated(unit.designation),
        answer("inverter", unit.product or unit.type_name),
        given(sequence([each for each in power if each])),
        answer("serial_number", serial),
        answer("firmware", said.firmware),
        answer("settings", said.named_settings),
        answer("settings_edition", settings.edition if settings else None),
        given(STATUSES[unit.status]),
    )


def certificates(system: System) -> Table:
    """Return the certificates of the types of inverters in use, blank for a type without one."""
    columns = (
        Column(phrase("Inverter"), 1.0),
        Column(phrase("Standard"), 1.0),
        Column(phrase("Reference"), 1.0),
        Column(phrase("Issued by"), 0.8),
        Column(phrase("Date")),
    )
    types: dict[str, tuple[str, InverterType]] = {}
    for unit in _units(system):
        types.setdefault(unit.type_name, (unit.product or unit.type_name, unit.type))
    rows: list[tuple[Cell, ...]] = []
    for product, kind in types.values():
        rows += [_certificate(product, each) for each in kind.certificates] or [_certificate(product, None)]
    return Table("certificates", phrase("Certificates of the inverters"), columns, tuple(rows))


def _certificate(product: str, said: Certificate | None) -> tuple[Cell, ...]:
    return (
        given(product),
        answer("certificate.standard", said.standard if said else None),
        answer("certificate", said.reference if said else None),
        answer("certificate.issued_by", said.issued_by if said else None),
        answer("certificate.date", Day(said.date) if said and said.date else None),
    )


def characteristics(system: System) -> Table:
    """Return the characteristics Q(U) and cos φ(P) that inverters are set to, each once with those it is for."""
    columns = (
        Column(phrase("Designation"), 1.0),
        Column(phrase("Characteristic")),
        Column(phrase("Points"), 2.0),
    )
    found: dict[tuple[str, Sayable], list[str]] = {}
    for unit in _units(system):
        for name, points in _points(unit.given.network_settings):
            found.setdefault((name, points), []).append(unit.designation)
    rows = tuple(
        (designated(joined(units)), given(name), answer("characteristic", points))
        for (name, points), units in found.items()
    )
    return Table("characteristics", phrase("Characteristics of the inverters"), columns, rows)


def _points(said: NetworkSettings | None) -> Iterator[tuple[str, Sayable]]:
    """Yield name and points of each characteristic: Q over voltage, power factor over power; or a blank."""
    if not (said and (said.q_of_u or said.power_factor_of_power)):
        yield "", NOTHING
    if said and said.q_of_u:
        yield (
            "Q(U)",
            sequence(
                (
                    phrase(
                        "{voltage} U: {reactive} Q",
                        voltage=amount(each.voltage_percent, "%", 4),
                        reactive=amount(each.reactive_power_percent, "%", 4),
                    )
                    for each in said.q_of_u
                ),
                "; ",
            ),
        )
    if said and said.power_factor_of_power:
        yield "cos φ(P)", sequence((_power_point(each.power_percent, each.power_factor, each.reactive_power)
                                   for each in said.power_factor_of_power), "; ")  # fmt: skip


def _power_point(power_percent: float, power_factor: float, side: str | None) -> Sayable:
    values = {"power": amount(power_percent, "%", 4), "factor": amount(power_factor, "", 4)}
    if side == "supplied":
        return phrase("{power} P: {factor}, reactive power supplied", **values)
    if side == "absorbed":
        return phrase("{power} P: {factor}, reactive power absorbed", **values)
    return phrase("{power} P: {factor}", **values)


def batteries(system: System) -> Table:
    """Return the batteries with energy, power and where they are connected."""
    columns = (
        Column(phrase("Designation")),
        Column(phrase("Make, model"), 1.0),
        Column(phrase("Serial number"), below=True),
        Column(phrase("Energy")),
        Column(phrase("Converter")),
        Column(phrase("Connected to"), 1.0),
        Column(phrase("Status")),
    )
    rows = []
    for unit in system.of(BatteryUnit):
        said = unit.given
        at = system.devices[unit.owner if unit.dc else unit.parent].designation if said.inverter else ""
        rows.append(
            (
                designated(unit.designation),
                answer("battery", unit.product),
                answer("battery.serial_number", said.serial_number),
                answer("battery.energy", amount(said.energy_wh / 1000, "kWh", 4) if said.energy_wh else None),
                given(amount(said.converter_power_va / 1000, "kVA", 4) if said.converter_power_va else NOTHING),
                answer(
                    "battery.coupling",
                    phrase("DC side of {inverter}", inverter=at) if said.inverter else phrase("AC side"),
                ),
                given(STATUSES[unit.status]),
            )
        )
    return Table("batteries", phrase("Batteries"), columns, tuple(rows))
