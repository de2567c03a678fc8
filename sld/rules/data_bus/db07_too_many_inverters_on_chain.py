"""Too many inverters on a chain.

What it checks
    The number of inverters of one chain against the most that the data sheet of each type allows.

Why
    Beyond what the maker has tested, devices drop out or the master does not list them.

How
    Inverters of the chain > units_max of the bus of an inverter type on it.

Remedy
    Two chains.

Clause
    Data sheet of the inverter.

Not covered
    The number of devices that the logger takes.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InverterUnit
from sld.model.system import System
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DB07", "too many inverters on a chain", Severity.NON_COMPLIANCE, "data of the inverter", once=True)
def too_many_inverters_on_chain(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for chain in system.chains:
        units = [unit for node in chain.nodes if isinstance(unit := system.devices[node.device], InverterUnit)]
        limits = [
            (unit.type.bus.units_max, unit.type_name) for unit in units if unit.type.bus and unit.type.bus.units_max
        ]
        if not limits or len(units) <= min(limits)[0]:
            continue
        most, type_name = min(limits)
        yield Breach(
            phrase(
                "data chain {chain} has {count} inverters, above the {most} of the data sheet",
                chain=chain.designation,
                count=len(units),
                most=most,
            ),
            phrase("split the chain, so that each has at most {most} inverters", most=most),
            (*chain.at, "devices"),
            chain.key,
            ((("types", "inverters", type_name, "bus", "units_max"), phrase("limit of the inverter")),),
        )
