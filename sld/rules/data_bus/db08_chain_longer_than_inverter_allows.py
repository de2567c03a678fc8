"""Data chain longer than an inverter allows.

What it checks
    The length of each chain against the longest that the data sheets of its inverters allow.

Why
    Beyond what the maker has tested, messages are lost.

How
    L > length_max of the bus of an inverter type on the chain.

Remedy
    A shorter way, two chains, or a repeater.

Clause
    Data sheet of the inverter.

Not covered
    Stretches without a length.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InverterUnit
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DB08", "data chain longer than an inverter allows", Severity.NON_COMPLIANCE, "data of the inverter", once=True)
def chain_longer_than_inverter_allows(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for chain in system.chains:
        length = ratings.get(chain.key, Symbol.L_BUS)
        units = [unit for node in chain.nodes if isinstance(unit := system.devices[node.device], InverterUnit)]
        limits = [
            (unit.type.bus.length_max_m, unit.type_name)
            for unit in units
            if unit.type.bus and unit.type.bus.length_max_m is not None
        ]
        if length is None or not limits or not above(length.value, min(limits)[0]):
            continue
        most_m, type_name = min(limits)
        has, allowed = two(length.value, most_m, "m")
        yield Breach(
            phrase(
                "data chain {chain} is {has} long, above the {allowed} of the data sheet",
                chain=chain.designation,
                has=has,
                allowed=allowed,
            ),
            phrase("shorten the chain to at most {allowed}, or divide it", allowed=allowed),
            (*chain.at, "devices"),
            chain.key,
            ((("types", "inverters", type_name, "bus", "length_max"), phrase("limit of the inverter")),),
            (length,),
        )
