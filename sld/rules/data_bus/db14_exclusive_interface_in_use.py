"""Interface in use that excludes the chain.

What it checks
    Inverters that are in a chain and have a link over a medium that cannot serve at the same time.

Why
    One of the two does not work, and monitoring or the feed-in limit fails.

How
    The medium of a link is among `exclusive` of the inverter type, and the inverter is in a chain.

Remedy
    One of the two interfaces.

Clause
    Data sheet of the inverter.

Not covered
    Interfaces of modules that are plugged in.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InverterUnit
from sld.model.system import System
from sld.model.wording import MEDIA
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DB14", "interface in use that excludes the chain", Severity.NON_COMPLIANCE, "data of the inverter", once=True)
def exclusive_interface_in_use(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    chained = {node.device for chain in system.chains for node in chain.nodes}
    for place, link in enumerate(system.links):
        for name in (link.from_device, link.to_device):
            for key in system.names[name]:
                unit = system.devices[key]
                if key not in chained or not isinstance(unit, InverterUnit) or unit.type.bus is None:
                    continue
                if link.medium in [medium.lower() for medium in unit.type.bus.exclusive]:
                    yield Breach(
                        phrase(
                            "{unit} is in a data chain and linked over {medium}, which excludes it",
                            unit=named(unit),
                            medium=MEDIA[link.medium],
                        ),
                        phrase("use the chain or the link, not both"),
                        ("data", "links", place),
                        key,
                        (
                            (
                                ("types", "inverters", unit.type_name, "bus", "exclusive"),
                                phrase("what the data sheet excludes"),
                            ),
                        ),
                    )
