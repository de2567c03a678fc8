"""Schedules of the data side: chains, the devices on them in the order of the cable, and other links."""

from __future__ import annotations

from sld.model.device import InverterUnit
from sld.model.system import ChainNode, System
from sld.model.wording import MEDIA
from sld.quantity import shown
from sld.ratings.symbol import Symbol
from sld.sheet.content.alike import alike_as_one
from sld.sheet.listings.table import Column, Table
from sld.steps import Ratings

__all__ = ["chains", "data_bus", "links"]


def chains(system: System, ratings: Ratings) -> Table:
    """Return the chains with what holds for all of their devices."""
    columns = (Column("Chain"), Column("Protocol", 0.8), Column("Baud rate"), Column("Cable", 1.0),
               Column("Shield earthed at", 1.0), Column("Polled by"), Column("Length", align="right"))  # fmt: skip
    rows = []
    for chain in system.chains:
        given = chain.given
        earthed = [system.devices[key].designation for name in given.shield_earthed_at for key in system.names[name]]
        length = ratings.get(chain.key, Symbol.L_BUS)
        master = system.devices[chain.master].designation if chain.master else "–"
        remarks = [word for word in (chain.marking, given.name, given.location, given.note) if word]
        rows.append((
            chain.designation, given.protocol, f"{shown(given.baud_rate_bd, 6)} Bd", ", ".join(remarks) or "–",
            ", ".join(earthed) or "–", master, length.quantity() if length else "–",
        ))  # fmt: skip
    return Table("Data chains", columns, tuple(rows))


def data_bus(system: System) -> Table:
    """Return the devices of every chain in the order of the cable."""
    columns = (Column("Chain"), Column("No.", align="right"), Column("Device"), Column("Address", align="right"),
               Column("Cable from the one before", 1.0), Column("Terminated"))  # fmt: skip
    rows = []
    for chain in system.chains:
        for number, node in enumerate(chain.nodes, start=1):
            length = f"{shown(node.length_m)} m" if node.length_m is not None else "–"
            rows.append((
                chain.designation, str(number), system.devices[node.device].designation,
                "–" if node.address is None else str(node.address), length if number > 1 else "",
                _termination(system, node),
            ))  # fmt: skip
    return Table("Data bus", columns, alike_as_one(rows, (1, 2, 3)))


def _termination(system: System, node: ChainNode) -> str:
    """Return the terminating resistor of a device; one that is built in has only to be switched on."""
    device = system.devices[node.device]
    bus = device.type.bus if isinstance(device, InverterUnit) else None
    built_in = ", built in" if bus is not None and bus.termination_built_in else ""
    return f"120 Ω{built_in}" if node.terminated else ""


def links(system: System) -> Table:
    """Return the links from one device to another."""
    columns = (Column("From"), Column("To"), Column("Medium", 1.0), Column("Length", align="right"))
    rows = []
    for link in system.links:
        ends = [system.devices[system.names[name][0]].designation for name in (link.from_device, link.to_device)]
        length = f"{shown(link.length_m)} m" if link.length_m is not None else "–"
        rows.append((*ends, str(MEDIA[link.medium]), length))
    return Table("Data links", columns, tuple(rows))
