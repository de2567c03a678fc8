"""Short circuits at boards and at far ends: the peak that a board must stand, the least current of live conductors.

The peak belongs to the greatest current at a board. The least current is that of a fault between live conductors at the
far end of a circuit, which the breaker has to switch off whatever an RCD does with earth faults.
"""

from __future__ import annotations

from sld.frozen import replace
from sld.model.conductors import cores, phases
from sld.model.device import Apparatus, BatteryUnit, Busbar, Cable, InverterUnit
from sld.model.kinds.ac import AC_CABLE
from sld.model.kinds.role import BACKED_UP
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings import fault
from sld.ratings.impedance import Impedance, in_series
from sld.ratings.symbol import Symbol
from sld.steps.ledger import Ledger
from sld.steps.loops import C_MIN, cables_of_circuit, far_end, hot, hot_with_neutral, upstream_cables
from sld.steps.protection import overcurrent_devices
from sld.steps.source import Source, source
from sld.words import Phrase, phrase

__all__ = ["least_live_current", "short_circuits"]


def short_circuits(system: System, ledger: Ledger) -> None:
    """Rate every board against peak and short-time current, and every circuit with the least short-circuit current."""
    supply = source(system, ledger)
    for busbar in system.of(Busbar):
        _board(system, ledger, busbar)
    for apparatus, given in system.given_as(BACKED_UP):
        ledger.specified(apparatus.key, Symbol.INC, given.conditional_current_ka)
    for device in overcurrent_devices(system):
        ledger.add(device.key, least_live_current(system, ledger, device, supply), symbol=Symbol.IK_MIN)


def _board(system: System, ledger: Ledger, busbar: Busbar) -> None:
    given, current = busbar.given, ledger.get(busbar.key, Symbol.IK_MAX)
    for symbol, stated_ka in (
        (Symbol.ICW, given.short_time_current_ka),
        (Symbol.IPK, given.peak_current_ka),
        (Symbol.ICC, given.conditional_current_ka),
    ):
        ledger.specified(busbar.key, symbol, stated_ka)
    if current is None:
        return
    r_ohm, x_ohm = current.number("R"), current.number("X")
    if system.supply.transformer is not None and x_ohm > 0:
        ledger.add(busbar.key, fault.peak_current(current.value, r_ohm / x_ohm))
    else:
        ledger.add(busbar.key, fault.standard_peak_current(current.value))
    generation_a = sum(ledger.value(unit.key, Symbol.IB) or 0.0 for unit in _generators(system))
    if generation_a:
        ledger.add(busbar.key, fault.generation_share(generation_a, current.value))


def _generators(system: System) -> list[InverterUnit | BatteryUnit]:
    """Return everything that feeds a fault besides the network: inverters, and batteries with a converter."""
    units = [
        each for each in system.whole.among(InverterUnit, BatteryUnit) if isinstance(each, InverterUnit | BatteryUnit)
    ]
    return [unit for unit in units if not unit.dc]


def least_live_current(system: System, ledger: Ledger, device: Apparatus, supply: Source) -> Rating | None:
    """Return the least current of a short circuit between live conductors at the far end of a circuit, or None.

    Line to neutral where the circuit has a neutral, between two lines else; conductors hot, Cmin.
    """
    end = far_end(system, device.key)
    parts = [hot(ledger, cable) for cable in upstream_cables(system, end)]
    known = [part for part in parts if part is not None]
    if len(known) < len(parts):
        return None
    of_circuit = cables_of_circuit(system, device)
    said = (*supply.assumptions, phrase("cables hot"))
    three = phases(system, device.owner) == 3 and of_circuit
    if not system.supply.has_neutral or (three and not any(_has_neutral(system, each) for each in of_circuit)):
        one_line = supply.phase * (1 if system.supply.phases == 3 else 0.5)  # with one phase it is that of both lines
        total = in_series([one_line, *known])
        rating = fault.line_to_line_current(system.voltage_v, total, C_MIN, "min")
        said = (*said, phrase("supply at its greatest fault current"))
    else:
        ahead, how = _neutral_loop(system, supply)
        said = (*said, how) if how else said
        loops = [hot_with_neutral(ledger, cable) for cable in upstream_cables(system, end)]
        total = in_series([ahead, *(part for part in loops if part is not None)])
        rating = fault.earth_fault_current(system.voltage_to_earth_v, total, C_MIN, "min")
        rating = replace(rating, symbol=Symbol.IK1_MIN_NEUTRAL)
    return rating.assuming(*said)


def _has_neutral(system: System, cable: Cable) -> bool:
    """Return whether a three-phase cable has a core for a neutral beside that for a protective conductor."""
    given = cable.given_as(AC_CABLE)
    return cores(system, cable) + (given is not None and given.protective_is_no_core) >= 5


def _neutral_loop(system: System, supply: Source) -> tuple[Impedance, Phrase]:
    """Return the loop of the supply from line to neutral for the least current, and what was assumed about it.

    In a TN system the neutral of the supply is also what the earth-fault loop comes back by, or lies beside it.
    """
    if system.supply.transformer is not None:
        return supply.line_to_neutral, phrase("supply at its greatest fault current")
    if system.supply.earthing_system.startswith("TN"):
        return supply.loop, phrase("neutral of the supply as its earth-fault loop")
    if system.supply.phases == 3:
        return supply.phase * 2, phrase("neutral of the supply as its line conductor")
    return supply.phase, phrase("supply at its greatest fault current")
