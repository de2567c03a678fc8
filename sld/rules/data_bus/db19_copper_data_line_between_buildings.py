"""Copper data line between buildings.

What it checks
    Chains and Ethernet links between devices whose places are in different buildings.

Why
    Two buildings have different earth potentials in a fault and at lightning; over the shield and cores of a copper
    data line the difference reaches the interfaces and destroys them.

How
    Two neighbours of a chain, or the ends of an Ethernet link, have a `location` whose `building` differs.

Remedy
    Fibre or wireless between the buildings, or surge protection of the data line at both entries and the shield
    earthed at one end.

Clause
    IEC 62305-4; IEC 61643-22 (from memory); common practice.

Not covered
    Places without a `building`. Power cables between buildings, which the rules on surge protection look at.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, SpecPath, rule
from sld.model.device import Device
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DB19", "copper data line between buildings", Severity.ADVICE, "IEC 62305-4; IEC 61643-22", once=True)
def copper_data_line_between_buildings(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for one, other, at in _lines(system):
        here, there = _building(system, one), _building(system, other)
        if here and there and here != there:
            yield Breach(
                phrase(
                    "the data line from {one} in {here} to {other} in {there} is of copper",
                    one=named(one),
                    here=here,
                    other=named(other),
                    there=there,
                ),
                phrase(
                    "use fibre or wireless, or surge protection at both buildings and the shield earthed at one end"
                ),
                at,
                other.key,
            )


def _lines(system: System) -> Iterator[tuple[Device, Device, SpecPath]]:
    for chain in system.chains:
        for before, after in zip(chain.nodes, chain.nodes[1:], strict=False):
            yield system.devices[before.device], system.devices[after.device], after.at
    for place, link in enumerate(system.links):
        if link.medium != "wireless":
            ends = (system.devices[system.names[name][0]] for name in (link.from_device, link.to_device))
            one, other = ends
            yield one, other, ("data", "links", place)


def _building(system: System, device: Device) -> str:
    """Return the building that a device stands in, by its own place or that of its enclosure; empty where unknown."""
    enclosure = system.devices.get(device.enclosure)
    location = device.location or (enclosure.location if enclosure else "")
    place = system.site.locations.get(location)
    return (place.building or "") if place else ""
