"""Distance between two neighbours of a chain too long.

What it checks
    Each stretch of a chain against the longest that the data sheet of the inverter at its ends allows.

Why
    Beyond what the maker has tested, messages are lost.

How
    length of a stretch > distance_max of the bus of the inverter type at one of its ends.

Remedy
    Another order of the devices, or a repeater.

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
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule(
    "DB06",
    "distance between two neighbours of a chain too long",
    Severity.NON_COMPLIANCE,
    "data of the inverter",
    once=True,
)
def distance_between_neighbours_too_long(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for chain in system.chains:
        for before, node in zip(chain.nodes, chain.nodes[1:], strict=False):
            ends = [system.devices[each.device] for each in (before, node)]
            limits = [
                (unit.type.bus.distance_max_m, unit.type_name)
                for unit in ends
                if isinstance(unit, InverterUnit) and unit.type.bus and unit.type.bus.distance_max_m is not None
            ]
            if not limits or node.length_m is None:
                continue
            most_m, type_name = min(limits)
            if above(node.length_m, most_m):
                has, allowed = two(node.length_m, most_m, "m")
                yield Breach(
                    phrase(
                        "{end} is {has} of cable from its neighbour, above the {allowed} of the data sheet",
                        end=named(ends[1]),
                        has=has,
                        allowed=allowed,
                    ),
                    phrase(
                        "keep the stretch to at most {allowed}, by another order of the devices or a repeater",
                        allowed=allowed,
                    ),
                    (*node.at, "length"),
                    node.device,
                    ((("types", "inverters", type_name, "bus", "distance_max"), phrase("limit of the inverter")),),
                )
