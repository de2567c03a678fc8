"""System + ratings + flag numbers -> Diagram: what is to be drawn, with its texts, before anybody knows where."""

from __future__ import annotations

from collections.abc import Mapping

from sld.frozen import dataclass
from sld.layout.diagram.bus_words import MEDIUM_WORDS
from sld.layout.diagram.capacity import capacity_of
from sld.layout.diagram.diagram import (
    BusChain,
    BusStep,
    Cell,
    Diagram,
    Enclosure,
    Join,
    LineKind,
    Medium,
)
from sld.layout.diagram.earth_bar import earth_bar
from sld.layout.diagram.labels import along, below
from sld.layout.diagram.line import Line, Role, designation, joined
from sld.layout.diagram.reader import read_by, reads
from sld.layout.diagram.symbol_of import OWNERSHIP_BOUNDARY, symbol_of
from sld.model.device import (
    BatteryCells,
    BatteryUnit,
    Busbar,
    Cable,
    Consumer,
    DataNode,
    Device,
    GeneratorUnit,
    InputTerminal,
    InverterUnit,
    Network,
    StringGroup,
)
from sld.model.kinds.ac import CHANGEOVER
from sld.model.kinds.units import BATTERY_CONVERTER, INPUT, INVERTER, STRING
from sld.model.system import DataChain, System
from sld.model.wording import status_word
from sld.steps import Ratings
from sld.words import NOTHING, Sayable, phrase, sequence, unbroken, verbatim

__all__ = ["chart"]

_ALIGNED = {INVERTER: "inverter", INPUT: "input", STRING: "string"}


@dataclass(frozen=True, slots=True)
class _Wording:
    """What the cells are made from. flags: numbers by device key."""

    system: System
    ratings: Ratings
    flags: Mapping[str, tuple[int, ...]]


def chart(system: System, ratings: Ratings, flags: Mapping[str, tuple[int, ...]]) -> Diagram:
    """Return the diagram of a system, its lines whole. flags: numbers of the warning flags by device key."""
    wording = _Wording(system, ratings, _at_devices(system, flags))
    free = tuple(_leaf(wording, device, LineKind.DATA) for device in system.every(DataNode))
    enclosures = tuple(Enclosure(key, _caption(caption, wording, key)) for key, caption in system.enclosures.items())
    chains = (*(_chain(chain, system) for chain in system.chains), *_links(system))
    return Diagram(
        _tree(wording), enclosures, free, chains, earth_bar(system, ratings, flags), system.symbols,
        language=system.language,
    )  # fmt: skip


def _at_devices(system: System, flags: Mapping[str, tuple[int, ...]]) -> dict[str, tuple[int, ...]]:
    """Return the flags by devices: those of a data chain stand at its first one, where its name does."""
    found = dict(flags)
    for chain in system.chains:
        first = chain.nodes[0].device
        numbers = (*found.get(first, ()), *found.pop(chain.key, ()))
        if numbers:
            found[first] = tuple(sorted(set(numbers)))
    return found


def _caption(caption: Sayable, wording: _Wording, key: str) -> Sayable:
    """Return the caption of an enclosure: of a board with the ratings of its busbar and its status."""
    device = wording.system.devices.get(key)
    if not isinstance(device, Busbar):
        return caption
    lines = read_by(wording.system.drawing.reader, below(device, wording.system, wording.ratings), device)
    told = sequence([each.said for each in (*lines, *_status(device))])
    return sequence([caption, told], ": ") if told else caption


def _above(device: Device) -> tuple[Line, ...]:
    """Return the lines above a symbol: the designation, and what else it is called by."""
    name: Sayable = verbatim(device.name)
    if device.kind is BATTERY_CONVERTER:
        name = NOTHING
    elif isinstance(device, Consumer | BatteryUnit | BatteryCells | GeneratorUnit):
        name = verbatim(device.name or str(device.at[-1]).replace("_", " "))
    elif isinstance(device, Cable):
        marking = [Line(Role.TYPE, verbatim(device.marking), after=" ")] if device.marking else []
        return (designation(device.designation), *marking)
    return (designation(device.designation), *([Line(Role.NAME, name)] if name else []))


def _status(device: Device) -> tuple[Line, ...]:
    """Return the status as a line wherever the ink tells of it, and of a device that the spec does not mention."""
    told = device.assumed or device.status != "new"
    return (Line(Role.STATUS, status_word(device)),) if told else ()


def _at_backup_output(system: System, device: Device) -> tuple[Line, ...]:
    """Return the line that tells the terminal of a backup output from the others of its inverter."""
    parent = system.devices.get(device.parent)
    told = not device.dc and isinstance(parent, InverterUnit)
    return (Line(Role.SETTING, phrase("from the backup output")),) if told else ()


def _leaf(
    wording: _Wording, device: Device, kind: LineKind, earth: Line | None = None, children: tuple[Cell, ...] = ()
) -> Cell:
    span = isinstance(device, InverterUnit | Busbar) or device.kind is CHANGEOVER
    lines = (
        *joined(read_by(wording.system.drawing.reader, below(device, wording.system, wording.ratings), device)),
        *_status(device),
        *_at_backup_output(wording.system, device),
    )
    if isinstance(device, Busbar) and device.enclosure:
        lines = ()
    functional = isinstance(device, InputTerminal) and device.given.functional_earth
    return Cell(
        key=device.key,
        symbol=symbol_of(device, wording.system),
        above=_above(device),
        below=lines,
        along=along(device, wording.system, wording.ratings) if isinstance(device, Cable) else None,
        flags=wording.flags.get(device.key, ()),
        enclosure=device.enclosure,
        aligned=_ALIGNED.get(device.kind, ""),
        kind=kind,
        earth=Line(Role.NAME, phrase("functional earth")) if functional else earth,
        earth_symbol="functional_earth" if functional else "protective_earth",
        status=device.status,
        join=Join.SPAN if span else Join.TRUNK,
        children=children,
        boxed=isinstance(device, Network),
        capacity=capacity_of(device, wording.ratings),
    )


def _tree(wording: _Wording) -> Cell:
    """Return the network's cell with all that it is fed by, built from the leaves so that depth is no limit."""
    system = wording.system
    frames = next((designation(c.designation) for c in system.earth_conductors if c.purpose == "array_frame"), None)
    cells: dict[str, Cell] = {}
    for device in reversed([system.devices[system.root], *system.downstream(system.root)]):
        children = tuple(cells.pop(key) for key in system.children.get(device.key, ()))
        if device.key == system.ownership_boundary:
            children = (_boundary(device, children),)
        earth = frames if isinstance(device, StringGroup) else None
        cells[device.key] = _leaf(wording, device, LineKind.DC if device.dc else LineKind.AC, earth, children)
    return cells[system.root]


def _boundary(device: Device, children: tuple[Cell, ...]) -> Cell:
    """Return the boundary of ownership behind a device, through which all goes on that it is connected with.

    Above it stands whose the installation is on either side.
    """
    key = f"{device.key}/{OWNERSHIP_BOUNDARY}"
    sides = (Line(Role.NAME, unbroken(phrase("← customer"))), Line(Role.NAME, unbroken(phrase("network →"))))
    return Cell(key, OWNERSHIP_BOUNDARY, sides, enclosure=device.enclosure, status=device.status, children=children)


def _chain(chain: DataChain, system: System) -> BusChain:
    """Return a chain with address and termination at each device, which a network operator does not need."""
    steps = (
        BusStep(node.device, system.devices[node.device].designation, node.address, node.terminated)
        for node in chain.nodes
    )
    told = reads(system.drawing.reader, Role.ADDRESS)
    protocol = chain.given.protocol
    how = sequence([protocol] if "485" in protocol else [MEDIUM_WORDS[Medium.RS485], protocol], " ")
    return BusChain(chain.key, verbatim(chain.designation), tuple(steps), told, how)


def _links(system: System) -> list[BusChain]:
    """Return the links as chains of two."""
    found = []
    for index, link in enumerate(system.links):
        steps = tuple(BusStep(system.names[name][0]) for name in (link.from_device, link.to_device))
        key, medium = f"{system.point.prefix}data.links.{index}", Medium(link.medium)
        found.append(BusChain(key, MEDIUM_WORDS[medium], steps, medium=medium))
    return found
