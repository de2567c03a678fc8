"""AC conductors: 125 % of the greatest current before corrections, that current after them, and the device ahead."""

from __future__ import annotations

from sld.citation import cited, from_memory
from sld.frozen import dataclass, replace
from sld.model.device import Apparatus, Busbar, Cable, Device
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.ratings import voltage_change
from sld.ratings.nec.conductor import reactance, resistance
from sld.ratings.nec.conductor_size import CONDUCTOR_C, Demand, Run, smallest_size
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol
from sld.spec.blocks.circuit import AcCable
from sld.steps.ac_cables import export_flow, incoming_device, power_factors
from sld.steps.ledger import Ledger
from sld.steps.nec.duty import duty
from sld.steps.nec.runs import NO_FACTOR, keep_ampacity, run_of
from sld.steps.protection import load_is_unknown, overcurrent_device, protective_family
from sld.steps.unanswered import UNKNOWN_CURRENT, WITHOUT_FUSE
from sld.wire_size import area_mm2
from sld.words import Sayable, amount, phrase

__all__ = ["Laid", "ac_conductors", "as_laid", "laid", "rise_with"]

_AHEAD = from_memory("NEC 2023 705.11")
_VOLTAGE = cited(phrase("{standard} Chapter 9 Tables 8 and 9", standard="NEC 2023"), phrase("Ohm's law"))


def ac_conductors(system: System, ledger: Ledger) -> None:
    """Rate every AC cable: demand, size, ampacity, largest device, voltage rise."""
    for cable, given in system.ac_cables():
        _cable(system, ledger, cable, given)


def _cable(system: System, ledger: Ledger, cable: Cable, given: AcCable) -> None:
    demand = _demand(system, ledger, cable)
    run, said = _run(system, ledger, cable, demand)
    least = _least_ahead_of_service(system, cable, run) if run else None
    ledger.add(cable.key, least)
    if given.section_mm2 is not None:
        ledger.add(cable.key, specified(Symbol.S, given.section_mm2, "mm²"))
    elif demand is None or run is None:
        silent = WITHOUT_FUSE if load_is_unknown(system, ledger, cable) else UNKNOWN_CURRENT
        ledger.unanswered(cable.key, Symbol.S, silent if demand is None else NO_FACTOR)
    else:
        why = phrase("no conductor size carries {current} behind its device", current=amount(demand.current_a, "A"))
        least_mm2 = least.value if least else 0.0
        carries = ledger.attempt(cable.key, Symbol.S, lambda: smallest_size(run, demand, (), least_mm2), why)
        ledger.add(cable.key, carries, symbol=Symbol.S_CARRIES)
    if run is not None:
        as_laid(system, ledger, cable, given, Laid(run, said, demand))


@dataclass(frozen=True, slots=True)
class Laid:
    """A cable but for its size: the run, what was assumed for it, what it must carry (None: not known)."""

    run: Run
    said: tuple[Sayable, ...]
    demand: Demand | None


def laid(system: System, ledger: Ledger, cable: Cable) -> Laid | None:
    """Return a cable but for its size, None where a table has no factor for it."""
    demand = _demand(system, ledger, cable)
    run, said = _run(system, ledger, cable, demand)
    return None if run is None else Laid(run, said, demand)


def _run(system: System, ledger: Ledger, cable: Cable, demand: Demand | None) -> tuple[Run | None, tuple[Sayable, ...]]:
    circuit_a = max(demand.continuous_a, demand.device_a or 0.0) if demand else 0.0
    return run_of(system, ledger, cable, circuit_a)


def _least_ahead_of_service(system: System, cable: Cable, run: Run) -> Rating | None:
    """Return the least conductor of a source that is connected ahead of the service disconnect, up to its first
    overcurrent device, else None. [mm²]"""
    board = next((each for each in system.upstream(cable.key) if isinstance(each, Busbar) or _protects(each)), None)
    if not isinstance(board, Busbar) or board.given.source_connection != "supply_side":
        return None
    if not system.inverters_behind(cable.key):
        return None
    size = "6" if run.material == "Cu" else "4"
    given = (Given(phrase("material"), run.material),)
    return Rating(Symbol.S_LEAST, area_mm2(size), "mm²", phrase("ahead of the service disconnect"), given, _AHEAD)


def _protects(device: Device) -> bool:
    return isinstance(device, Apparatus) and bool(protective_family(device))


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


def as_laid(system: System, ledger: Ledger, cable: Cable, given: AcCable, way: Laid) -> None:
    """Rate what follows from the size of a cable: ampacity, largest device, resistance, and the rise at full export."""
    size = keep_ampacity(ledger, cable, way.run, way.said, way.demand)
    if not size:
        return
    r = ledger.attempt(
        cable.key,
        Symbol.R,
        lambda: resistance(way.run.material, size, CONDUCTOR_C),
        phrase("no resistance is tabulated for size {size} {material}", size=size, material=way.run.material),
    )
    if r is not None:
        ledger.add(cable.key, rise_with(system, ledger, cable, given, way.run, size))


def rise_with(system: System, ledger: Ledger, cable: Cable, given: AcCable, run: Run, size: str) -> Rating | None:
    """Return the rise with a size at full export in percent, the greatest over the power factors behind the cable; None
    without export. Raises NoRow."""
    flow = export_flow(system, ledger, cable)
    if flow is None:
        return None
    r, x, n = resistance(run.material, size, CONDUCTOR_C), reactance(size), run.parallel_count
    rises = [
        voltage_change.voltage_rise(flow.phase_count, flow.current_a, given.length_m, r.value / n, x.value / n, *factor)
        for factor in power_factors(system, cable.key)
    ]
    percent = voltage_change.change_percent(max(rises, key=lambda rise: rise.value), flow.base_v)
    return replace(percent, clause=_VOLTAGE).assuming(phrase("AC conductor at 75 °C"))
