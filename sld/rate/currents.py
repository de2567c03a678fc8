"""The design current of every AC device: what the inverters, batteries and loads behind it come to."""

from __future__ import annotations

from sld.model.device import Apparatus, BatteryUnit, Busbar, Cable, Consumer, Device, InverterUnit
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.rate.ledger import Ledger
from sld.ratings import inverter

__all__ = ["currents"]

_CLAUSE = "common practice: no diversity between sources; loads at their highest current"


def currents(system: System, ledger: Ledger) -> None:
    """Rate the units first, then every device between them and the network."""
    for unit in system.of(InverterUnit):
        ledger.add(unit.key, _inverter(system, unit))
    for battery in system.of(BatteryUnit):
        if not battery.dc:
            ledger.add(battery.key, _battery(system, battery))
    for load in system.of(Consumer):
        ledger.add(load.key, _load(system, load))
    for device in system.devices.values():
        if not device.dc and isinstance(device, Apparatus | Cable | Busbar):
            _between(system, ledger, device)


def _line_voltage_v(system: System, phases: int) -> float:
    """Return the voltage that the power is divided by: to neutral for one phase, between lines for three."""
    return system.voltage_v if phases == system.supply.phases else system.voltage_v / 3**0.5


def _inverter(system: System, unit: InverterUnit) -> Rating:
    type_ = unit.type
    voltage_v = type_.rated_voltage_v or _line_voltage_v(system, min(type_.phases, system.supply.phases))
    rating = inverter.design_current(
        type_.phases, voltage_v, type_.apparent_power_max_va or type_.rated_power_w, type_.current_max_a
    )
    return rating


def _battery(system: System, battery: BatteryUnit) -> Rating | None:
    given = battery.given
    if given.converter_current_max_a is None and given.converter_power_va is None:
        return None
    phases = min(given.converter_phases, system.supply.phases)
    return inverter.design_current(
        phases, _line_voltage_v(system, phases), given.converter_power_va, given.converter_current_max_a
    )


def _load(system: System, load: Consumer) -> Rating | None:
    given = load.given
    if given.current_a is not None:
        return Rating("Ib", given.current_a, "A", "as specified", (), "spec")
    if given.power_w is None:
        return None
    phases = min(given.phases or system.supply.phases, system.supply.phases)
    voltage_v = _line_voltage_v(system, phases)
    value = given.power_w / (voltage_v * (3**0.5 if phases == 3 else 1))
    formula = "P / (√3 · U)" if phases == 3 else "P / U"
    given_values = (Given("P", given.power_w, "W"), Given("U", voltage_v, "V"))
    return Rating("Ib", value, "A", formula, given_values, _CLAUSE, assumptions=("loads at power factor 1",))


def _between(system: System, ledger: Ledger, device: Device) -> None:
    """Keep the export and the import current through a device; the larger is its design current."""
    behind = list(system.downstream(device.key))
    exported = _sum(
        system, ledger, [d for d in behind if isinstance(d, InverterUnit | BatteryUnit) and not d.dc], "Iexport"
    )
    imported = _sum(
        system, ledger, [d for d in behind if isinstance(d, Consumer | BatteryUnit) and not d.dc], "Iimport"
    )
    both = [rating for rating in (exported, imported) if rating is not None]
    if not both:
        return
    ledger.add(device.key, *both)
    larger = max(both, key=lambda rating: rating.value)
    single = len(larger.given) == 1
    formula = str(larger.given[0].symbol) if single else f"larger of export and import: {larger.symbol}"
    ledger.add(
        device.key, Rating("Ib", larger.value, "A", formula, larger.given, larger.clause, "", larger.assumptions)
    )


def _sum(system: System, ledger: Ledger, units: list[Device], symbol: str) -> Rating | None:
    """Add the currents of units line by line and return the most loaded line's."""
    lines = {"L1": 0.0, "L2": 0.0, "L3": 0.0}
    given: list[Given] = []
    unplaced = False
    for unit in units:
        current_a = ledger.value(unit.key, "Ib")
        if current_a is None:
            continue
        given.append(Given(f"Ib({unit.designation})", current_a, "A"))
        chosen = _lines(system, unit)
        unplaced = unplaced or chosen is None
        for line in chosen or ("L1",):
            lines[line] += current_a
    if not given:
        return None
    assumed = ("single-phase units without a given line all on one",) if unplaced and len(given) > 1 else ()
    value = max(lines.values())
    return Rating(symbol, value, "A", "Σ Ib of the most loaded line", tuple(given), _CLAUSE, "", assumed)


def _lines(system: System, unit: Device) -> tuple[str, ...] | None:
    """Return the lines that a unit feeds: three, the one it names, or None where it does not say which."""
    if system.supply.phases == 1:
        return ("L1",)
    if isinstance(unit, InverterUnit) and unit.type.phases == 1:
        return (unit.given.line,) if unit.given.line else None
    if isinstance(unit, BatteryUnit) and unit.given.converter_phases == 1:
        return None
    if isinstance(unit, Consumer) and unit.given.phases == 1:
        return None
    return ("L1", "L2", "L3")
