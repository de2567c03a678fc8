"""The available fault current at each AC device, where the spec says what it is at the service.

Impedances are those of chapter 9 at 75 °C brought down to 20 °C, so that the current comes out large. The code lays
down no method; this is Ohm's law from point to point. Faults to ground, and what switches them off, are not rated.
"""

from __future__ import annotations

from math import sqrt

from sld.citation import from_memory
from sld.model.conductors import phases
from sld.model.device import Apparatus, BatteryUnit, Busbar, Cable, Consumer, Device, GeneratorUnit, InverterUnit
from sld.model.kinds.ac import AC_CABLE
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.ratings import transformer
from sld.ratings.impedance import Impedance, in_series
from sld.ratings.nec.conductor import reactance, resistance
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol
from sld.spec.blocks.supply import SupplyTransformer
from sld.steps.cable_design import conductor_material
from sld.steps.ledger import Ledger
from sld.steps.loops import unknown_way, upstream_cables
from sld.steps.unanswered import Unanswered, Why
from sld.tables.table import NoRow
from sld.wire_size import size_of
from sld.words import NOTHING, Phrase, phrase

__all__ = ["faults"]

_COLD_C = 20.0
_LEAST_OHM = 1e-9
"""No transformer has less: of 1 GVA at 1 V and 1 % it would be 1e-11 Ω, of 2.5 MVA at 480 V 5e-3 Ω."""

_CLAUSE = from_memory(phrase("Ohm's law from point to point"), "NEC 2023 110.9, 110.24")
_NOT_STATED = Unanswered(phrase("nothing says what fault current is available at the service"), Why.SILENT_SPEC)


def faults(system: System, ledger: Ledger) -> None:
    """Rate the available fault current at every AC device, and keep what boards are said to stand."""
    for board in system.of(Busbar):
        ledger.specified(board.key, Symbol.ICW, board.given.short_time_current_ka)
        ledger.specified(board.key, Symbol.ICC, board.given.conditional_current_ka)
    source = _source(system, ledger)
    for device in system.of(Device):
        if device.dc or not isinstance(
            device, Apparatus | Busbar | InverterUnit | Consumer | BatteryUnit | GeneratorUnit
        ):
            continue
        if source is not None:
            _greatest(system, ledger, device, source)


def _source(system: System, ledger: Ledger) -> Impedance | None:
    """Return the service as the impedance of one conductor's way, None where nothing says what it is.

    The stated current counts as that of a fault of all lines; of a single phase, between its two conductors.
    """
    supply = system.supply
    if supply.transformer is not None:
        return _transformer(system, ledger, supply.transformer)
    current_ka = supply.prospective_fault_current_ka
    if current_ka is None:
        ledger.unanswered("", Symbol.IPF, _NOT_STATED)
        return None
    ledger.add("", specified(Symbol.IPF, current_ka, "kA"))
    voltage_v = system.voltage_v / sqrt(3) if supply.phases == 3 else system.voltage_v
    return Impedance(0.0, voltage_v / (1000 * current_ka))


def _transformer(system: System, ledger: Ledger, given: SupplyTransformer) -> Impedance | None:
    kva = given.rated_power_va / 1000
    voltage_v = given.secondary_voltage_v or system.voltage_v
    resistive = min(100 * (given.load_losses_w or 0.0) / given.rated_power_va, given.short_circuit_voltage_percent)
    own = transformer.transformer_impedance(kva, voltage_v, given.short_circuit_voltage_percent, resistive)
    network_va = given.network_fault_power_va
    behind = Impedance(0.0, voltage_v**2 / network_va if network_va else 0.0)
    if (behind + own).magnitude_ohm < _LEAST_OHM:
        ledger.unanswered(
            "", Symbol.IPF, phrase("the transformer as stated has no impedance, so that no current is greatest")
        )
        return None
    if system.supply.phases == 3:
        ledger.add("", transformer.rated_current(kva, voltage_v), symbol=Symbol.IN_TRANSFORMER)
    return in_series([behind, own])


def _greatest(system: System, ledger: Ledger, device: Device, source: Impedance) -> None:
    """Keep the greatest of the faults that a device can see."""
    cables = upstream_cables(system, device.key)
    parts = [_cable(ledger, cable) for cable in cables]
    for cable, part in zip(cables, parts, strict=True):
        if part is None:
            return unknown_way(ledger, device.key, Symbol.IK_MAX, cable)
    known = [part for part in parts if part is not None]
    found = [_current(way, source, known, cables) for way in _ways(system, device)]
    ledger.add(device.key, max(found, key=lambda rating: rating.value))
    return None


def _ways(system: System, device: Device) -> list[tuple[str, float, int, int]]:
    """Return the faults that are looked at: what, the voltage that drives it, and how often source and cables count.

    A single-phase circuit of a three-phase supply can have a fault to neutral, at the board as great as one of all
    lines, and one between lines, which is the greater far from it.
    """
    volts = system.voltage_v
    if phases(system, device.owner or device.key) == 3:
        return [("U / √3", volts / sqrt(3), 1, 1)]
    if system.supply.phases == 3:
        return [("U / √3", volts / sqrt(3), 1, 2), ("U", volts, 2, 2)]
    return [("U", volts, 1, 2)]


def _current(
    way: tuple[str, float, int, int], source: Impedance, parts: list[Impedance], cables: list[Cable]
) -> Rating:
    what, volts, source_times, cable_times = way
    counted = [source * source_times, *(part * cable_times for part in parts)]
    named: list[Phrase | str] = [phrase("Z source"), *(f"Z({cable.designation})" for cable in cables)]
    given = [Given(name, part.magnitude_ohm, "Ω") for name, part in zip(named, counted, strict=True)]
    total = in_series(counted)
    value = volts / total.magnitude_ohm / 1000
    inputs = (Given(what, volts, "V"), Given("R", total.r_ohm, "Ω"), Given("X", total.x_ohm, "Ω"), *given)
    said = (phrase("cables at 20 °C"), phrase("fault current of the inverters not counted"))
    return Rating(Symbol.IK_MAX, value, "kA", f"{what} / |Σ Z|", inputs, _CLAUSE, NOTHING, said)


def _cable(ledger: Ledger, cable: Cable) -> Impedance | None:
    section_mm2 = ledger.value(cable.key, Symbol.S)
    given = cable.given_as(AC_CABLE)
    if section_mm2 is None or given is None:
        return None
    size = size_of(section_mm2)
    try:
        r, x = resistance(conductor_material(cable), size, _COLD_C), reactance(size)
    except NoRow:
        return None
    share = given.length_m / 1000 / given.parallel
    return Impedance(r.value * share, x.value * share)
