"""The array of every inverter towards earth: insulation before start, leakage, and the fuse of a functional earth."""

from __future__ import annotations

from sld.model.device import InverterUnit
from sld.model.planned import without_planned
from sld.model.system import System
from sld.ratings import insulation, residual_monitor
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol
from sld.steps.inputs import inputs_of
from sld.steps.ledger import Ledger
from sld.words import amount, phrase

__all__ = ["array_earth"]

_CAPACITANCE_NF_PER_KWP = 50.0
"""A dry array; common practice, no source. A wet one has several times that."""


def array_earth(system: System, ledger: Ledger) -> None:
    """Rate the array of every inverter; the highest demands are kept for the whole system too."""
    for unit in system.of(InverterUnit):
        own = inputs_of(system, unit.key)
        power = ledger.get(unit.key, Symbol.PDC)
        if power is None or power.value <= 0:
            continue
        power_kw = power.value / 1000
        voltages = [rating for each in own if (rating := ledger.get(each.key, Symbol.UOC_MAX)) is not None]
        if voltages:
            highest = max(voltages, key=lambda rating: rating.value)
            ledger.add(unit.key, insulation.resistance_min_inverter(highest))
        ledger.add(unit.key, insulation.resistance_min_by_power(power_kw))
        threshold_ohm = unit.type.insulation_threshold_ohm
        if threshold_ohm is not None:
            ledger.add(unit.key, specified(Symbol.RISO_INVERTER, threshold_ohm / 1000, "kΩ"))
        for terminal in own:
            if terminal.given.functional_earth:
                ledger.add(terminal.key, insulation.functional_earth_fuse_max(power_kw))
                ledger.specified(terminal.key, Symbol.IN_FE, terminal.given.functional_earth_device_a)
        if not unit.type.galvanic_separation:
            _leakage(system, ledger, unit, power_kw)
    built = without_planned(system, system.of(InverterUnit))
    for symbol in (Symbol.RISO_START, Symbol.RISO_ARRAY):
        found = [rating for unit in built if (rating := ledger.get(unit.key, symbol)) is not None]
        if found:
            ledger.add("", max(found, key=lambda rating: rating.value))


def _leakage(system: System, ledger: Ledger, unit: InverterUnit, power_kw: float) -> None:
    """Keep what leaks through the capacitance of the array, and the residual current that must disconnect."""
    u_0_v, frequency_hz = system.voltage_to_earth_v, system.supply.frequency_hz
    leakage = residual_monitor.array_leakage(_CAPACITANCE_NF_PER_KWP, power_kw, u_0_v, frequency_hz)
    if not system.supply.frequency_said:
        leakage = leakage.assuming(phrase("nominal frequency {frequency}", frequency=amount(frequency_hz, "Hz")))
    ledger.add(
        unit.key,
        leakage.assuming(
            phrase(
                "{capacitance_nf_per_kwp} nF to earth for each kWp, dry",
                capacitance_nf_per_kwp=amount(_CAPACITANCE_NF_PER_KWP, digits=6),
            )
        ),
    )
    ledger.add(unit.key, residual_monitor.monitor_threshold_max(unit.apparent_power_va / 1000))
    ledger.specified(unit.key, Symbol.IDN_INVERTER, unit.type.residual_current_monitor_ma)
