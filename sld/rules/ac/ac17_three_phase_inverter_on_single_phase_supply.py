"""Three-phase inverter on a single-phase supply.

What it checks
    The number of phases of each inverter, and that given for a load or a board, against what feeds it.

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
from sld.model.device import Busbar, Consumer, Device, InverterUnit
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC17", "three-phase inverter on a single-phase supply", Severity.DANGER, "data of the inverter")
def three_phase_inverter_on_single_phase_supply(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for unit in system.of(Device):
        own = unit.type.phases if isinstance(unit, InverterUnit) else getattr(unit.given, "phases", None)
        if own != 3 or not isinstance(unit, InverterUnit | Consumer | Busbar) or phases(system, unit.key) == 3:
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
            (*unit.at, "type" if isinstance(unit, InverterUnit) else "phases"),
            unit.key,
            ((ahead.at, phrase("what feeds it")),)
            if ahead is not None and by_board
            else ((("supply", "phases"), phrase("phases of the supply")),),
        )
