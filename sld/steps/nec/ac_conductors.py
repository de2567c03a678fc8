"""AC conductors: 125 % of the greatest current before corrections, that current after them, and the device ahead."""

from __future__ import annotations

from dataclasses import replace

from sld.citation import cited, from_memory
from sld.model.device import BatteryUnit, Busbar, Cable, InverterUnit
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.ratings import voltage_change
from sld.ratings.nec.conductor import reactance, resistance
from sld.ratings.nec.conductor_size import CONDUCTOR_C, Demand, Run, VoltageLimit, smallest_size
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol
from sld.spec.blocks.circuit import AcCable
from sld.steps.ac_cables import export_flow, incoming_device, power_factors, rise_limit_percent
from sld.steps.ledger import Ledger
from sld.steps.nec.duty import duty
from sld.steps.nec.runs import NO_FACTOR, keep_ampacity, run_of
from sld.steps.protection import load_is_unknown, overcurrent_device
from sld.steps.unanswered import UNKNOWN_CURRENT, WITHOUT_FUSE
from sld.wire_size import area_mm2
from sld.words import amount, phrase

__all__ = ["ac_conductors"]

_AHEAD = from_memory("NEC 2023 705.11")
_VOLTAGE = cited(phrase("{standard} Chapter 9 Tables 8 and 9", standard="NEC 2023"), phrase("Ohm's law"))


def ac_conductors(system: System, ledger: Ledger) -> None:
    """Rate every AC cable: demand, size, ampacity, largest device, voltage rise."""
    for cable, given in system.ac_cables():
        _cable(system, ledger, cable, given)


def _cable(system: System, ledger: Ledger, cable: Cable, given: AcCable) -> None:
    demand = _demand(system, ledger, cable)
    circuit_a = max(demand.continuous_a, demand.device_a or 0.0) if demand else 0.0
    run, said = run_of(system, ledger, cable, circuit_a)
    least = _least_ahead_of_service(system, cable, run) if run else None
    ledger.add(cable.key, least)
    if given.section_mm2 is not None:
        ledger.add(cable.key, specified(Symbol.S, given.section_mm2, "mm²"))
    elif demand is None or run is None:
        silent = WITHOUT_FUSE if load_is_unknown(system, ledger, cable) else UNKNOWN_CURRENT
        ledger.unanswered(cable.key, Symbol.S, silent if demand is None else NO_FACTOR)
    else:
        limits = _limits(system, ledger, cable, given)
        least_mm2 = least.value if least else 0.0
        why = phrase(
            "no conductor size carries {current} behind its device within the voltage rise",
            current=amount(demand.current_a, "A"),
        )
        ledger.attempt(cable.key, Symbol.S, lambda: smallest_size(run, demand, limits, least_mm2), why)
    if run is None:
        return
    size = keep_ampacity(ledger, cable, run, said, demand)
    if size:
        _voltage(system, ledger, cable, given, run, size)


def _least_ahead_of_service(system: System, cable: Cable, run: Run) -> Rating | None:
    """Return the least conductor of a source that is connected ahead of the service disconnect, else None. [mm²]"""
    board = next((each for each in system.upstream(cable.key) if isinstance(each, Busbar)), None)
    if board is None or board.given.source_connection != "supply_side" or not system.inverters_behind(cable.key):
        return None
    size = "6" if run.material == "Cu" else "4"
    given = (Given(phrase("material"), run.material),)
    return Rating(Symbol.S_LEAST, area_mm2(size), "mm²", phrase("ahead of the service disconnect"), given, _AHEAD)


def _demand(system: System, ledger: Ledger, cable: Cable) -> Demand | None:
    """Keep and return what a cable must carry; None where neither a current nor a device is known."""
    design = ledger.get(cable.key, Symbol.IB)
    device = overcurrent_device(system, cable.key) or incoming_device(system, cable)
    rated = ledger.get(device.key, Symbol.IN) if device else None
    if rated is None and (design is None or load_is_unknown(system, ledger, cable)):
        return None
    if design is None:
        assert rated is not None, "one of both is known here"
        return Demand(0.0, 0.0, rated.value)
    lasting = duty(system, ledger, cable)
    assert lasting is not None, "its design current is known"
    ledger.add(cable.key, lasting)
    clause = from_memory("NEC 2023 705.28(B), 690.8(B)(2), 215.2(A)")
    given = (Given("Ib", design.value, "A"), *design.given)
    ledger.add(cable.key, Rating(Symbol.IZ_MIN, design.value, "A", phrase("Imax after corrections"), given, clause))
    return Demand(lasting.value, design.value, rated.value if rated else None)


def _limits(system: System, ledger: Ledger, cable: Cable, given: AcCable) -> tuple[VoltageLimit, ...]:
    flow, limit_percent = export_flow(system, ledger, cable), _limit_share_percent(system, cable, given)
    if flow is None or limit_percent is None:
        return ()
    return tuple(
        VoltageLimit(flow.phase_count, flow.current_a, given.length_m, flow.base_v, limit_percent, *factor)
        for factor in power_factors(system, cable.key)
    )


def _limit_share_percent(system: System, cable: Cable, given: AcCable) -> float | None:
    """Return this cable's share of the allowed rise: by its length among the cables of the longest way through it."""
    limit = rise_limit_percent(system)
    if limit is None:
        return None
    ways = [
        sum(each.given.length_m for each in system.upstream(device.key) if isinstance(each, Cable))
        for device in system.downstream(cable.key)
        if isinstance(device, InverterUnit | BatteryUnit) and not device.dc
    ]
    total_m = max(ways, default=given.length_m)
    return limit * given.length_m / total_m if total_m else limit


def _voltage(system: System, ledger: Ledger, cable: Cable, given: AcCable, run: Run, size: str) -> None:
    """Keep the resistance of a cable and the rise at full export, the greatest over the power factors behind it."""
    r = ledger.attempt(
        cable.key,
        Symbol.R,
        lambda: resistance(run.material, size, CONDUCTOR_C),
        phrase("no resistance is tabulated for size {size} {material}", size=size, material=run.material),
    )
    flow = export_flow(system, ledger, cable)
    if r is None or flow is None:
        return
    x, n = reactance(size), run.parallel_count
    rises = [
        voltage_change.voltage_rise(flow.phase_count, flow.current_a, given.length_m, r.value / n, x.value / n, *factor)
        for factor in power_factors(system, cable.key)
    ]
    greatest = max(rises, key=lambda rise: rise.value)
    percent = voltage_change.change_percent(greatest, flow.base_v)
    ledger.add(cable.key, replace(percent, clause=_VOLTAGE).assuming(phrase("AC conductor at 75 °C")))
