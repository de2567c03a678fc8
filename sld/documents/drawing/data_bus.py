"""Schedules of the data side: chains, the devices on them in the order of the cable, and other links."""

from __future__ import annotations

from sld.documents.alike import alike_as_one
from sld.documents.cell import EMPTY, NOT_GIVEN, Cell, designated, given, of_rating
from sld.documents.section import Column, Table
from sld.model.device import InverterUnit
from sld.model.system import ChainNode, System
from sld.model.wording import MEDIA
from sld.ratings.symbol import Symbol
from sld.steps import Ratings
from sld.words import amount, phrase, sequence, verbatim

__all__ = ["chains", "data_bus", "links"]


def chains(system: System, ratings: Ratings) -> Table:
    """Return the chains with what holds for all of their devices."""
    columns = (
        Column(phrase("Chain")),
        Column(phrase("Protocol"), 0.8),
        Column(phrase("Baud rate")),
        Column(phrase("Cable"), 1.0),
        Column(phrase("Shield earthed at"), 1.0),
        Column(phrase("Polled by")),
        Column(phrase("Length"), right=True),
    )
    rows = []
    for chain in system.chains:
        said = chain.given
        earthed = [system.devices[key].designation for name in said.shield_earthed_at for key in system.names[name]]
        remarks = [word for word in (chain.marking, said.name, said.location, said.note) if word]
        rows.append(
            (
                designated(chain.designation),
                given(said.protocol),
                given(amount(said.baud_rate_bd, "Bd", digits=6)),
                given(", ".join(remarks)),
                given(", ".join(earthed)),
                given(system.devices[chain.master].designation if chain.master else ""),
                of_rating(ratings.get(chain.key, Symbol.L_BUS)),
            )
        )
    return Table("data_chains", phrase("Data chains"), columns, tuple(rows), sparse=True)


def data_bus(system: System) -> Table:
    """Return the devices of every chain in the order of the cable."""
    columns = (
        Column(phrase("Chain")),
        Column(phrase("No."), right=True),
        Column(phrase("Device")),
        Column(phrase("Address"), right=True),
        Column(phrase("Cable from the one before"), 1.0),
        Column(phrase("Terminated")),
    )
    rows = []
    for chain in system.chains:
        for number, node in enumerate(chain.nodes, start=1):
            length = given(amount(node.length_m, "m")) if node.length_m is not None else NOT_GIVEN
            rows.append(
                (
                    given(verbatim(chain.designation)),
                    designated(str(number)),
                    designated(system.devices[node.device].designation),
                    NOT_GIVEN if node.address is None else designated(str(node.address)),
                    length if number > 1 else EMPTY,
                    _termination(system, node),
                )
            )
    return Table("data_bus", phrase("Data bus"), columns, alike_as_one(rows), sparse=True)


def _termination(system: System, node: ChainNode) -> Cell:
    """Return the terminating resistor of a device; one that is built in has only to be switched on."""
    if not node.terminated:
        return EMPTY
    device = system.devices[node.device]
    bus = device.type.bus if isinstance(device, InverterUnit) else None
    resistor = amount(120, "Ω")
    if bus is not None and bus.termination_built_in:
        return given(phrase("{resistor}, built in", resistor=resistor))
    return given(resistor)


def links(system: System) -> Table:
    """Return the links from one device to another."""
    columns = (
        Column(phrase("From")),
        Column(phrase("To")),
        Column(phrase("Medium"), 1.0),
        Column(phrase("Length"), right=True),
    )
    rows = []
    for link in system.links:
        ends = [system.devices[system.names[name][0]].designation for name in (link.from_device, link.to_device)]
        length = given(amount(link.length_m, "m")) if link.length_m is not None else NOT_GIVEN
        rows.append((*(given(verbatim(end)) for end in ends), given(sequence([MEDIA[link.medium]])), length))
    return Table("data_links", phrase("Data links"), columns, tuple(rows), sparse=True)
