"""What RCDs make of an earth fault: the touch voltage that each allows along its whole way, and how fast it opens."""

from __future__ import annotations

from collections.abc import Iterator

from sld.citation import cited
from sld.frozen import replace
from sld.model.device import Apparatus, Busbar, GeneratorUnit
from sld.model.kinds.ac import RCD, SERVICE_FUSE
from sld.model.kinds.role import RESIDUAL_PROTECTION
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.ratings import disconnection, rcd
from sld.ratings.symbol import Symbol
from sld.steps.ledger import Ledger
from sld.steps.loops import C_MIN, loop_at, time_allowed, to_earth_ohm
from sld.steps.protection import protective_family, residual_devices
from sld.steps.source import Source

__all__ = ["touch_voltages"]

_LOOP_CLAUSE = cited("IEC 60364-4-41:2005+A1:2017 411.4.4")
_TT_LOOP_CLAUSE = cited("BS 7671:2018 411.5.3", "IEC 60364-4-41:2005+A1:2017 411.5.3")


def touch_voltages(system: System, ledger: Ledger, supply: Source) -> None:
    """Keep the touch voltage of every RCD, and the time in which the circuits that rely on one are switched off."""
    for device in system.apparatus(RESIDUAL_PROTECTION):
        if not isinstance(system.devices.get(device.owner), GeneratorUnit):
            _touch(system, ledger, device, supply)
            _feeder_time(system, ledger, device)
    for device in system.of(Apparatus):
        if protective_family(device) and device.kind is not SERVICE_FUSE:
            _break_time(system, ledger, device)


def _way(system: System, device: Apparatus) -> Iterator[Apparatus]:
    """Yield an RCD and the devices behind it whose circuits it protects in the same building."""
    place = system.earthed_by(device.key)
    yield device
    for each in system.downstream(device.key):
        if isinstance(each, Apparatus) and not each.dc and system.earthed_by(each.key) is place:
            yield each


def _touch(system: System, ledger: Ledger, device: Apparatus, supply: Source) -> None:
    """Keep the touch voltage that an RCD allows at the end of its longest way.

    With the loop in TN, and in TT where the loop outside is stated; else with electrode and protective conductors.
    """
    residual = ledger.get(device.key, Symbol.IDN)
    loops = [loop for each in _way(system, device) if (loop := loop_at(system, ledger, each, supply)) is not None]
    if residual is None or not loops:
        return
    longest = max(loops, key=lambda loop: loop.value)
    in_tt = system.earthing_at(device.key) == "TT"
    if in_tt:
        ledger.add(device.key, disconnection.largest_electrode_resistance(residual.value))
        electrode = system.electrode_at(device.key)
        if electrode is None or electrode.resistance_ohm is None:
            return
        if system.supply.loop_impedance_ohm is None:
            ways = [ohm for each in _way(system, device) if (ohm := to_earth_ohm(system, ledger, each)) is not None]
            ledger.add(device.key, disconnection.touch_voltage(max(ways), residual.value))
            return
    touch = disconnection.touch_voltage(longest.value, residual.value)
    given = (Given("Zs", longest.value, "Ω"), *touch.given[1:])
    clause = _TT_LOOP_CLAUSE if in_tt else _LOOP_CLAUSE
    ledger.add(device.key, replace(touch, formula="Zs · IΔn", given=given, clause=clause))


def _break_time(system: System, ledger: Ledger, device: Apparatus) -> None:
    """Keep how long the fastest RCD of a circuit takes, where its overcurrent device does not switch off in time."""
    least_a, loop = ledger.value(device.key, Symbol.IK1_MIN), ledger.value(device.key, Symbol.ZS)
    enough = ledger.value(device.key, Symbol.ZS_MAX)
    by_itself = loop is not None and enough is not None and loop <= enough
    if least_a is None or by_itself:
        return
    times = [time for each in residual_devices(system, device) if (time := _time_of(ledger, each, least_a))]
    if times:
        ledger.add(device.key, min(times, key=lambda time: time.value), symbol=Symbol.T_RCD)


def _feeder_time(system: System, ledger: Ledger, device: Apparatus) -> None:
    """Keep how long an RCD in the circuit of a board takes in TT, and the time allowed there.

    Up to the next RCD it alone sees a fault in the board.
    """
    board, rated = system.devices.get(device.owner), ledger.get(device.key, Symbol.IN)
    residual, loop_v = ledger.get(device.key, Symbol.IDN), ledger.value(device.key, Symbol.UT)
    if not isinstance(board, Busbar) or board.given.trunk or device.kind is not RCD or rated is None:
        return
    if system.earthing_at(device.key) != "TT" or residual is None or not loop_v:
        return
    fault_a = C_MIN * system.voltage_to_earth_v * residual.value / 1000 / loop_v
    ledger.add(device.key, time_allowed(system, device, rated), _time_of(ledger, device, fault_a))


def _time_of(ledger: Ledger, device: Apparatus, fault_a: float) -> Rating | None:
    rated, given = ledger.value(device.key, Symbol.IDN), device.given_as(RESIDUAL_PROTECTION)
    if rated is None or 1000 * fault_a < rated:
        return None
    set_to = device.given_as(RCD)
    delay_s = set_to.delay_s if set_to is not None else None
    return rcd.break_time(1000 * fault_a / rated, given is not None and given.selective, delay_s or 0.0)
