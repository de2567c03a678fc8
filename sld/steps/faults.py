"""Fault levels along the AC tree: the greatest current at each device, the loop impedance at the end of each circuit.

Two runs, because they need opposite assumptions: cold cables and a reactive source give the greatest current, which a
device must break; hot cables added as plain resistances give the least, which must still trip it.
"""

from __future__ import annotations

from sld.citation import cited
from sld.frozen import replace
from sld.model.conductors import lines_count, phases
from sld.model.device import Apparatus, BatteryUnit, Busbar, Consumer, Device, GeneratorUnit, InverterUnit
from sld.model.kinds.ac import SERVICE_FUSE
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.ratings import disconnection, fault
from sld.ratings.impedance import Impedance, in_series
from sld.ratings.symbol import Symbol, Word
from sld.steps.ledger import Ledger
from sld.steps.loops import C_MIN, cold, earth_tripping, loop_at, time_allowed, tripping, unknown_way, upstream_cables
from sld.steps.protection import protective_family
from sld.steps.residual_faults import touch_voltages
from sld.steps.source import C_MAX, Source, between_lines_v, source
from sld.words import amount, phrase

__all__ = ["faults"]

_LEAST_CURRENT = cited("BS 7671:2018 411.4.4", remark=phrase("Cmin"))


def faults(system: System, ledger: Ledger) -> None:
    """Rate fault currents at every AC device, then disconnection of every circuit."""
    supply = source(system, ledger)
    for device in system.of(Device):
        if not device.dc and isinstance(device, Apparatus | Busbar | InverterUnit | Consumer | BatteryUnit):
            _greatest(system, ledger, device, supply)
    for device in system.of(Apparatus):
        if isinstance(system.devices.get(device.owner), GeneratorUnit):
            continue  # what a generator drives into a fault is not known, and the network feeds none there
        if protective_family(device) and device.kind is not SERVICE_FUSE:
            _disconnection(system, ledger, device, supply)
    touch_voltages(system, ledger, supply)


def _greatest(system: System, ledger: Ledger, device: Device, supply: Source) -> None:
    """Keep the greatest prospective fault current at a device: of all its lines, of two, or of one to neutral."""
    cables = []
    given = []
    for cable in upstream_cables(system, device.key):
        part = cold(ledger, cable)
        if part is None:
            return unknown_way(ledger, device.key, Symbol.IK_MAX, cable)
        cables.append(part)
        given.append((f"Z({cable.designation})", part))
    lines = lines_count(system, device.owner or device.key)
    three, found = phases(system, device.owner or device.key) == 3, list[tuple[Rating, Impedance, int]]()
    if three or (lines == 2 and system.supply.phases == 3):
        current = fault.three_phase_current if three else fault.line_to_line_current
        found.append((current(system.voltage_v, in_series([supply.phase, *cables]), C_MAX, "max"), supply.phase, 1))
    if _to_neutral(system):  # out and back: it returns through the neutral of every cable on the way
        total = in_series([supply.line_to_neutral, *(part * 2 for part in cables)])
        to_neutral_v = between_lines_v(system) / 3**0.5
        rating = fault.earth_fault_current(to_neutral_v, total, C_MAX, "max")
        found.append((rating, supply.line_to_neutral, 2))
    rating, at_supply, way = max(found, key=lambda each: each[0].value)
    reactive = system.supply.transformer is None
    to_neutral = (phrase("fault from line to neutral, here greater than three-phase"),) if three and way == 2 else ()
    said = (
        *supply.assumptions,
        *to_neutral,
        phrase("cables at 20 °C, supply purely reactive") if reactive else phrase("cables at 20 °C"),
        phrase("fault current of the inverters not counted"),
    )
    inputs = [Given(phrase("Z source"), at_supply.magnitude_ohm, "Ω", supply.said)]
    inputs += [Given(symbol, (part * way).magnitude_ohm, "Ω", amount(20, "°C")) for symbol, part in given]
    ledger.add(device.key, replace(rating, given=(*rating.given, *inputs)).assuming(*said), symbol=Symbol.IK_MAX)
    return None


def _to_neutral(system: System) -> bool:
    """Return whether a fault of one line returns through a conductor of the supply: a neutral, in TN the protective one
    too; a supply of one phase returns through its other conductor."""
    supply = system.supply
    return supply.has_neutral or supply.phases == 1 or supply.earthing_system.startswith("TN")


def _disconnection(system: System, ledger: Ledger, device: Apparatus, supply: Source) -> None:
    """Keep what decides whether a device disconnects an earth fault at the far end of its circuit."""
    rated = ledger.get(device.key, Symbol.IN)
    loop = loop_at(system, ledger, device, supply)
    ledger.add(device.key, loop)
    if rated is None or loop is None:
        return
    u0_v = system.voltage_to_earth_v
    why = phrase("no time to disconnect is laid down for {u0} to earth", u0=amount(u0_v, "V", 6))
    allowed = ledger.attempt(device.key, Symbol.T_MAX, lambda: time_allowed(system, device, rated), why)
    curve, current = tripping(system, device, rated, loop.value, allowed)
    if curve:
        ledger.word(device.key, Word.CURVE, curve, phrase("tripping characteristic"))
    ledger.add(device.key, current, symbol=Symbol.IA)
    by_earth = earth_tripping(device, allowed)
    if by_earth is not None and (current is None or by_earth.value < current.value):
        ledger.add(device.key, by_earth)
        current = by_earth
    if current is not None:
        ledger.add(device.key, disconnection.largest_loop_impedance(u0_v, current.value, C_MIN))
        if system.earthing_at(device.key).startswith("TN"):
            british = system.profile == "BS 7671"
            ledger.add(device.key, disconnection.measured_loop_limit(u0_v, current.value, british))
        least = fault.earth_fault_current(u0_v, Impedance(loop.value, 0.0), C_MIN, "min")
        # Cmin belongs with the largest loop; IEC 60909-0 has 0.90 for the ±10 % that the greatest current counts with
        ledger.add(device.key, replace(least, clause=_LEAST_CURRENT).assuming(*loop.assumptions))
