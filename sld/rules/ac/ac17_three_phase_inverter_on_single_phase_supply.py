"""Three-phase inverter on a single-phase supply.

What it checks
    The number of phases of each inverter, and that given for a battery's converter, a load or a board, against what
    feeds it.

Why
    The inverter cannot run, and connected by force it puts an unforeseen voltage on its conductors.

How
    Three phases at it, one at the supply or at a board on its way.

Remedy
    One of a single phase, or three phases to it.

Clause
    Data sheet of the inverter.

Not covered
    Inverters that can be set to one phase; give their type for that.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.conductors import phases
from sld.model.device import BatteryUnit, Busbar, Consumer, Device, InverterUnit
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC17", "three-phase inverter on a single-phase supply", Severity.DANGER, "data of the inverter")
def three_phase_inverter_on_single_phase_supply(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for unit in system.of(Device):
        stated = _stated(unit)
        if stated is None or stated[0] != 3 or phases(system, unit.key) == 3:
            continue
        ahead = next((each for each in system.upstream(unit.key) if isinstance(each, Busbar)), None)
        by_board = ahead is not None and system.supply.phases == 3
        yield Breach(
            phrase("{unit} has 3 phases, and {board} that feeds it has 1", unit=named(unit), board=named(ahead))
            if ahead is not None and by_board
            else phrase("{unit} has 3 phases, and the supply has 1", unit=named(unit)),
            phrase("use a single-phase inverter, or a three-phase supply")
            if isinstance(unit, InverterUnit)
            else phrase("use one of a single phase, or feed it by three"),
            (*unit.at, stated[1]),
            unit.key,
            ((ahead.at, phrase("what feeds it")),)
            if ahead is not None and by_board
            else ((("supply", "phases"), phrase("phases of the supply")),),
        )


def _stated(unit: Device) -> tuple[int | None, str] | None:
    """Return the number of phases that is stated of what takes or gives power, and the key that states it."""
    if isinstance(unit, InverterUnit):
        return unit.type.phases, "type"
    if isinstance(unit, BatteryUnit):
        return unit.given.converter_phases, "converter_phases"
    return (unit.given.phases, "phases") if isinstance(unit, Consumer | Busbar) else None
