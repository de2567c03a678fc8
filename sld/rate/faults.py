"""Fault levels along the AC tree: the greatest current at each device, the loop impedance at the end of each circuit.

Two runs, because they need opposite assumptions: cold cables and a reactive source give the greatest current, which a
device must break; hot cables added as plain resistances give the least, which must still trip it.
"""

from __future__ import annotations

from dataclasses import dataclass

from sld.model.conductors import phases
from sld.model.device import Apparatus, BatteryUnit, Busbar, Cable, Consumer, Device, InverterUnit
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.rate.ac_cables import conductor_class, conductor_material, hot_c
from sld.rate.ledger import Ledger, specified
from sld.rate.protection import protective_family
from sld.ratings import (
    breaker,
    conductor,
    disconnection,
    fault,
    protective_conductor,
    source_impedance,
    transformer,
)
from sld.ratings.impedance import Impedance, in_series
from sld.spec.blocks.circuit import AcCable, Breaker, Rcbo, Rcd
from sld.spec.blocks.supply import SupplyTransformer
from sld.tables.table import NoRow

__all__ = ["faults"]

_C_MIN = 0.95
_C_MAX = 1.10
_MCCB_TRIP = 10.0


@dataclass(frozen=True, slots=True)
class _Source:
    """The supply as an impedance of one phase (greatest current) and as an earth-fault loop (least current)."""

    phase: Impedance
    loop: Impedance
    assumptions: tuple[str, ...]


def faults(system: System, ledger: Ledger) -> None:
    """Rate fault currents at every AC device, then disconnection of every circuit."""
    source = _source(system, ledger)
    for cable in system.of(Cable):
        if isinstance(cable.given, AcCable):
            _protective_conductor(system, ledger, cable, cable.given)
    for device in system.devices.values():
        if not device.dc and isinstance(device, Apparatus | Busbar | InverterUnit | Consumer | BatteryUnit):
            _greatest(system, ledger, device, source)
    for device in system.of(Apparatus):
        if protective_family(device) and device.kind != "service_fuse":
            _disconnection(system, ledger, device, source)
        elif isinstance(device.given, Rcd):
            _residual(system, ledger, device, source)


def _source(system: System, ledger: Ledger) -> _Source:
    supply = system.supply
    if supply.transformer is not None:
        return _transformer_source(system, ledger, supply.transformer)
    u0_v = system.voltage_to_earth_v
    said: list[str] = []
    current_ka = supply.prospective_fault_current_ka
    if current_ka is not None:
        ledger.add("", specified("Ipf", current_ka, "kA"))
    else:
        rating = source_impedance.assumed_fault_current(_known_default(supply.earthing_system))
        current_ka = rating.value
        said += rating.assumptions
        ledger.add("", rating)
    # The stated current includes the voltage factor of whoever stated it: none is applied twice
    phase = Impedance.of_magnitude(u0_v / (1000 * current_ka), 0.0)
    if supply.loop_impedance_ohm is not None and supply.loop_impedance_ohm > 0:
        loop_ohm = supply.loop_impedance_ohm
        ledger.add("", specified("Ze", loop_ohm, "Ω"))
    else:
        assumed = source_impedance.assumed_loop_impedance(_known_default(supply.earthing_system))
        loop_ohm = assumed.value
        said += assumed.assumptions
        ledger.add("", assumed)
    return _Source(phase, Impedance(loop_ohm + _electrode_ohm(system, said), 0.0), tuple(said))


def _electrode_ohm(system: System, said: list[str]) -> float:
    """Return what the installation's own earth electrode adds to the loop: its resistance in TT, else nothing. [Ω]"""
    if system.supply.earthing_system != "TT":
        return 0.0
    electrode = system.earthing.electrode
    if electrode is None or electrode.resistance_ohm is None:
        said.append("resistance of the earth electrode not stated and not counted")
        return 0.0
    return electrode.resistance_ohm


def _known_default(earthing_system: str) -> str:
    """Return the system whose default is used: IT has no default of its own and takes that of TT."""
    return "TT" if earthing_system == "IT" else earthing_system


def _transformer_source(system: System, ledger: Ledger, given: SupplyTransformer) -> _Source:
    kva = given.rated_power_va / 1000
    between_lines_v = system.voltage_v if system.supply.phases == 3 else system.voltage_v * 3**0.5
    voltage_v = given.secondary_voltage_v or between_lines_v
    said: list[str] = []
    uk_percent = given.short_circuit_voltage_percent
    resistive_percent = 100 * (given.load_losses_w or 0.0) / given.rated_power_va
    if resistive_percent > uk_percent:
        resistive_percent = uk_percent
        said.append("load losses of the transformer do not fit its short-circuit voltage, taken as all resistance")
    correction = transformer.correction_factor(uk_percent, resistive_percent, _C_MAX).value
    impedance = transformer.transformer_impedance(kva, voltage_v, uk_percent, resistive_percent)
    network = Impedance(0.0, 0.0)
    if given.network_fault_power_va is not None:
        s_k_mva = given.network_fault_power_va / 1e6
        network = source_impedance.impedance_from_short_circuit_power(s_k_mva, voltage_v, _C_MAX)
    else:
        said.append("network behind the transformer without impedance")
    ledger.add("", transformer.rated_current(kva, voltage_v), symbol="In,transformer")
    # The correction factor belongs to the greatest current alone. In a Dyn transformer the zero-sequence impedance is
    # about its own, so the earth-fault loop is about the impedance of one phase.
    greatest = in_series([network, impedance * correction]) * (1 / _C_MAX)
    electrode = Impedance(_electrode_ohm(system, said), 0.0)
    return _Source(greatest, in_series([network, impedance, electrode]), tuple(said))


def _protective_conductor(system: System, ledger: Ledger, cable: Cable, given: AcCable) -> None:
    section = ledger.get(cable.key, "S")
    if section is None:
        return
    least = ledger.attempt(
        cable.key,
        "SPE,min",
        lambda: protective_conductor.protective_conductor_section(section.value),
        "no standard section is large enough",
    )
    if given.protective_section_mm2 is not None:
        ledger.add(cable.key, specified("SPE", given.protective_section_mm2, "mm²"))
    elif section.value <= 16:
        formula = "as the line conductors, a core of the same cable"
        given_s = (Given("S", section.value, "mm²"),)
        ledger.add(cable.key, Rating("SPE", section.value, "mm²", formula, given_s, least.clause if least else ""))
    else:
        ledger.add(cable.key, least, symbol="SPE")
    served = system.devices.get(cable.owner)
    if isinstance(served, InverterUnit) and served.type.leakage_current_ma is not None:
        leakage_ma = served.type.leakage_current_ma
        reinforced = protective_conductor.high_leakage_minimum(leakage_ma, conductor_material(cable))
        ledger.add(cable.key, reinforced, symbol="SPE,leak")


def _upstream_cables(system: System, key: str) -> list[Cable]:
    here = system.devices[key]
    own = [here] if isinstance(here, Cable) else []
    return [*own, *(device for device in system.upstream(key) if isinstance(device, Cable))]


def _cold(ledger: Ledger, cable: Cable) -> Impedance | None:
    """Return the impedance of one conductor of a cable at 20 °C, None where its section or resistance is unknown."""
    return _conductor(cable, ledger.value(cable.key, "S"), 20.0)


def _hot_loop(ledger: Ledger, cable: Cable) -> Impedance | None:
    """Return the loop of line and protective conductor of a cable at its operating temperature, or None."""
    line = _conductor(cable, ledger.value(cable.key, "S"), hot_c(cable))
    protective = _conductor(cable, ledger.value(cable.key, "SPE"), hot_c(cable))
    return None if line is None or protective is None else line + protective


def _conductor(cable: Cable, section_mm2: float | None, temperature_c: float) -> Impedance | None:
    if section_mm2 is None or not isinstance(cable.given, AcCable):
        return None
    try:
        r_20 = conductor.resistance(conductor_material(cable), section_mm2, 20.0, conductor_class(cable))
    except NoRow:
        return None
    x = conductor.reactance().value
    return fault.cable_impedance(r_20.value, x, cable.given.length_m, temperature_c, cable.given.parallel)


def _unknown_way(ledger: Ledger, key: str, symbol: str, cable: Cable) -> None:
    ledger.unanswered(key, symbol, f"the impedance of {cable.designation} is not known")


def _greatest(system: System, ledger: Ledger, device: Device, source: _Source) -> None:
    """Keep the greatest prospective fault current at a device, three-phase or line to neutral."""
    parts = [source.phase]
    for cable in _upstream_cables(system, device.key):
        part = _cold(ledger, cable)
        if part is None:
            return _unknown_way(ledger, device.key, "Ik,max", cable)
        parts.append(part)
    said = (*source.assumptions, "cables at 20 °C, supply purely reactive")
    if phases(system, device.owner or device.key) == 3:
        rating = fault.three_phase_current(system.voltage_v, in_series(parts), 1.0, "max")
    else:
        cables = in_series(parts[1:])
        rating = fault.earth_fault_current(system.voltage_to_earth_v, parts[0] + 2 * cables, 1.0, "max")
    ledger.add(device.key, rating.assuming(*said), symbol="Ik,max")
    return None


def _loop_at(system: System, ledger: Ledger, device: Device, source: _Source) -> Rating | None:
    """Return the loop impedance at the far end of the circuit of a protective device.

    None in an IT system: what flows there depends on how the source is earthed, and a first fault need not be switched
    off.
    """
    if system.supply.earthing_system == "IT":
        return None
    parts = [source.loop]
    for cable in _upstream_cables(system, _far_end(system, device.key)):
        part = _hot_loop(ledger, cable)
        if part is None:
            _unknown_way(ledger, device.key, "Zs", cable)
            return None
        parts.append(part)
    return fault.loop_impedance(parts).assuming(*source.assumptions, "cables hot, added as resistances")


def _far_end(system: System, key: str) -> str:
    """Return the key of the last AC device of the circuit that a protective device protects: a unit, or a busbar, or
    the device before the next overcurrent device."""
    end = key
    for device in system.downstream(key):
        if device.dc:
            break
        if isinstance(device, Apparatus) and protective_family(device):
            break
        end = device.key
        if isinstance(device, InverterUnit | Consumer | BatteryUnit | Busbar):
            break
    return end


def _nominal_u0_v(system: System) -> float:
    """Return the voltage to earth by which tables are read: 230 V of a 400 V system, not 400/√3 = 230.9 V. [V]

    IEC 60038 names systems by whole volts (120/208, 230/400, 277/480), and the tables have their limits at those.
    """
    return float(int(system.voltage_to_earth_v))


def _disconnection(system: System, ledger: Ledger, device: Apparatus, source: _Source) -> None:
    """Keep what decides whether a device disconnects an earth fault at the far end of its circuit."""
    rated = ledger.get(device.key, "In")
    loop = _loop_at(system, ledger, device, source)
    ledger.add(device.key, loop)
    if rated is None or loop is None:
        return
    kind = disconnection.circuit_kind(rated.value)
    ledger.attempt(
        device.key,
        "t,max",
        lambda: disconnection.disconnection_time(system.supply.earthing_system, _nominal_u0_v(system), kind),
        "no disconnection time",
    )
    curve, tripping = _tripping(ledger, device, rated, loop, system.voltage_to_earth_v)
    if curve:
        ledger.word(device.key, "curve", curve, "tripping characteristic")
    if tripping is not None:
        ledger.add(device.key, tripping, symbol="Ia")
        ledger.add(device.key, disconnection.largest_loop_impedance(system.voltage_to_earth_v, tripping.value, _C_MIN))
        current = fault.earth_fault_current(system.voltage_to_earth_v, Impedance(loop.value, 0.0), _C_MIN, "min")
        ledger.add(device.key, current.assuming(*loop.assumptions))
    if isinstance(device.given, Rcbo):
        _touch(system, ledger, device, loop)


def _tripping(ledger: Ledger, device: Apparatus, rated: Rating, loop: Rating, u0_v: float) -> tuple[str, Rating | None]:
    """Return the curve (given, else C where the loop allows it, else B) and the current sure to trip at once."""
    given = device.given
    if isinstance(given, Breaker) and (given.construction == "moulded_case" or given.trip_factor is not None):
        factor = given.trip_factor or _MCCB_TRIP
        assumed = () if given.trip_factor else (f"magnetic trip of moulded-case breakers at {_MCCB_TRIP:.0f} In",)
        values = (Given("In", rated.value, "A"), Given("Im/In", factor))
        return "", Rating(
            "Ia", factor * rated.value, "A", "Im/In · In", values, "IEC 60947-2; data of the maker", "", assumed
        )
    if isinstance(given, Breaker | Rcbo):
        if given.curve is not None:
            return given.curve, breaker.instantaneous_tripping_current(given.curve, rated.value)
        for curve in ("C", "B"):
            tripping = breaker.instantaneous_tripping_current(curve, rated.value)
            if loop.value <= disconnection.largest_loop_impedance(u0_v, tripping.value, _C_MIN).value or curve == "B":
                return curve, tripping
    return "", None


def _residual(system: System, ledger: Ledger, device: Apparatus, source: _Source) -> None:
    loop = _loop_at(system, ledger, device, source)
    if loop is not None:
        _touch(system, ledger, device, loop)


def _touch(system: System, ledger: Ledger, device: Apparatus, loop: Rating) -> None:
    """Keep the touch voltage that an RCD allows: with the electrode in TT, else with the loop."""
    residual = ledger.get(device.key, "IΔn")
    electrode = system.earthing.electrode
    if residual is None:
        return
    if system.supply.earthing_system == "TT":
        if electrode is not None and electrode.resistance_ohm is not None:
            ledger.add(device.key, disconnection.touch_voltage(electrode.resistance_ohm, residual.value))
        ledger.add(device.key, disconnection.largest_electrode_resistance(residual.value))
    else:
        ledger.add(device.key, disconnection.touch_voltage(loop.value, residual.value))
