"""The schedule of the data side: each chain, its devices in the order of the cable, and the links outside of chains."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sld.documents.alike import Row, alike_as_one, structure
from sld.documents.cell import EMPTY, NOT_GIVEN, Cell, Designations, designated, given, of_rating
from sld.documents.section import Column, Table
from sld.layout.diagram.ranges import joined, members
from sld.model.device import InverterUnit
from sld.model.system import ChainNode, DataChain, System
from sld.model.wording import MEDIA
from sld.ratings.symbol import Symbol
from sld.steps import Ratings
from sld.words import amount, phrase, sequence

__all__ = ["data_bus", "in_order"]

_COLUMNS = (
    Column(phrase("Chain")),
    Column(phrase("No."), right=True),
    Column(phrase("Device,\nfrom – to")),
    Column(phrase("Address"), right=True),
    Column(phrase("Protocol, medium"), 1.0),
    Column(phrase("Baud rate"), behind=True, on_paper=phrase("baud rate")),
    Column(phrase("Cable"), behind=True, on_paper=phrase("cable")),
    Column(phrase("Terminated"), behind=True, on_paper=phrase("termination")),
    Column(phrase("Shield earthed at")),
    Column(phrase("Polled by")),
    Column(phrase("Cable from the one before"), right=True),
    Column(phrase("Length"), right=True),
)


def data_bus(system: System, ratings: Ratings) -> Table:
    """Return the schedule: below each chain its devices, the links last. A row has only what is its own."""
    alike: dict[object, list[list[Row]]] = {}
    for chain in system.chains:
        rows = [_chain(system, ratings, chain), *_devices(system, chain)]
        key: object = tuple(tuple(map(structure, row)) for row in rows)
        if not in_order([*alike.get(key, ()), rows]):
            key = chain.key
        alike.setdefault(key, []).append(rows)
    made = [row for chains in alike.values() for row in _rows(chains)]
    made += alike_as_one(_links(system))
    return Table("data_bus", phrase("Data bus and links"), _COLUMNS, tuple(made), sparse=True)


def _rows(chains: Sequence[Sequence[Row]]) -> Sequence[Row]:
    """Return the rows of a chain, or of some that are equal but for designations and addresses as if they were one."""
    if len(chains) == 1:
        first, *devices = chains[0]
        return [first, *alike_as_one(devices)]
    (name, number, _, *others), *devices = (_only(alike_as_one(rows)) for rows in zip(*chains, strict=True))
    return [(name, number, given(phrase("each, in this order")), *others), *devices]


def _only(rows: Sequence[Row]) -> Row:
    (row,) = rows
    return row


def in_order(chains: Sequence[Sequence[Row]]) -> bool:
    """Return whether one still sees of equal chains, told as one, which device and address is of which."""
    for rows in zip(*chains, strict=True):
        for cells in zip(*rows, strict=True):
            names = [cell.text.groups[0][0] for cell in cells if isinstance(cell.text, Designations)]
            if len(set(names)) > 1 and [m for each in joined(names).split(", ") for m in members(each)] != names:
                return False
    return True


def _chain(system: System, ratings: Ratings, chain: DataChain) -> Row:
    """Return what holds for all devices of a chain, and the length of all of it."""
    said = chain.given
    earthed = [system.devices[key].designation for name in said.shield_earthed_at for key in system.names[name]]
    remarks = [word for word in (chain.marking, said.name, said.location, said.note) if word]
    return (
        designated(chain.designation),
        *(EMPTY, EMPTY, EMPTY),
        given(said.protocol),
        given(amount(said.baud_rate_bd, "Bd", digits=6)),
        given(", ".join(remarks)),
        EMPTY,
        given(", ".join(earthed)),
        given(system.devices[chain.master].designation if chain.master else ""),
        EMPTY,
        of_rating(ratings.get(chain.key, Symbol.L_BUS)),
    )


def _devices(system: System, chain: DataChain) -> Iterator[Row]:
    """Yield the devices of a chain in the order of the cable."""
    for number, node in enumerate(chain.nodes, start=1):
        length = given(amount(node.length_m, "m")) if node.length_m is not None else NOT_GIVEN
        yield (
            designated(chain.designation),
            designated(str(number)),
            designated(system.devices[node.device].designation),
            NOT_GIVEN if node.address is None else designated(str(node.address)),
            *(EMPTY, EMPTY, EMPTY),
            _termination(system, node),
            *(EMPTY, EMPTY),
            length if number > 1 else EMPTY,
            EMPTY,
        )


def _links(system: System) -> Iterator[Row]:
    """Yield the links from one device to another."""
    for link in system.links:
        ends = [system.devices[system.names[name][0]].designation for name in (link.from_device, link.to_device)]
        length = given(amount(link.length_m, "m")) if link.length_m is not None else NOT_GIVEN
        medium = given(sequence([MEDIA[link.medium]]))
        yield EMPTY, EMPTY, designated(*ends), EMPTY, medium, *[EMPTY] * 6, length


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
