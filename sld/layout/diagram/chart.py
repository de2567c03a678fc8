"""System + ratings + flag numbers -> Diagram: what is to be drawn, with its texts, before anybody knows where."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from sld.layout.diagram.diagram import (
    BusChain,
    BusStep,
    Cell,
    Diagram,
    EarthBar,
    EarthTap,
    Enclosure,
    Join,
    LineKind,
)
from sld.layout.diagram.labels import LINE_WIDTHS_MM, below, wrapped
from sld.layout.diagram.reader import read_by
from sld.layout.diagram.symbol_of import OWNERSHIP_BOUNDARY, symbol_of
from sld.model.device import (
    Apparatus,
    BatteryUnit,
    Busbar,
    Consumer,
    DataNode,
    Device,
    GeneratorUnit,
    InputTerminal,
    InverterUnit,
    Network,
    StringGroup,
)
from sld.model.kinds.role import SURGE_PROTECTION
from sld.model.kinds.units import INPUT, INVERTER, STRING
from sld.model.places import place_words
from sld.model.system import DataChain, EarthConductor, System
from sld.model.wording import MEDIA
from sld.quantity import Rating, shown
from sld.ratings.symbol import Symbol
from sld.steps import Ratings

__all__ = ["chart"]

_ALIGNED = {INVERTER: "inverter", INPUT: "input", STRING: "string"}


@dataclass(frozen=True, slots=True)
class _Wording:
    """What the cells are made from.

    flags: numbers by device key. line_width_mm: of label lines. is_mixed: devices of several statuses are drawn, so
    that those that are not new say so. wireless: what a device is linked to without a wire, by its key.
    """

    system: System
    ratings: Ratings
    flags: Mapping[str, tuple[int, ...]]
    line_width_mm: float
    is_mixed: bool
    wireless: Mapping[str, tuple[str, ...]]


def chart(
    system: System,
    ratings: Ratings,
    flags: Mapping[str, tuple[int, ...]],
    line_width_mm: float = LINE_WIDTHS_MM[0],
) -> Diagram:
    """Return the diagram of a system. flags: numbers of the warning flags by device key. line_width_mm: of labels."""
    wording = _Wording(system, ratings, flags, line_width_mm, _is_mixed(system), _wireless(system))
    free = tuple(
        _leaf(wording, device, LineKind.DATA) for device in system.devices.values() if isinstance(device, DataNode)
    )
    enclosures = tuple(Enclosure(key, str(caption)) for key, caption in system.enclosures.items())
    chains = (*(_chain(chain, system.drawing.reader) for chain in system.chains), *_links(system))
    return Diagram(_tree(wording), enclosures, free, chains, _earth_bar(system, ratings, flags), system.symbols)


def _above(wording: _Wording, device: Device) -> tuple[str, ...]:
    """Return the lines above a symbol: the designation, and what else it is called by."""
    if isinstance(device, InputTerminal):
        return (device.designation, f"input {device.index + 1}")
    name = device.name
    if isinstance(device, Consumer | BatteryUnit | GeneratorUnit):
        name = name or str(device.at[-1]).replace("_", " ")
    return (device.designation, *wrapped((name,), wording.line_width_mm)) if name else (device.designation,)


def _is_mixed(system: System) -> bool:
    """Return whether the installation, apart from the supply, has devices of several statuses."""
    return len({device.status for device in system.devices.values() if device.at[0] != "supply"}) > 1


def _wireless(system: System) -> dict[str, tuple[str, ...]]:
    """Return the lines that tell of wireless links at both of their ends, by device key."""
    lines: dict[str, tuple[str, ...]] = {}
    for link in system.links:
        if link.medium != "wireless":
            continue
        first, second = (system.names[name][0] for name in (link.from_device, link.to_device))
        for here, there in ((first, second), (second, first)):
            lines[here] = (*lines.get(here, ()), f"wireless to {system.devices[there].designation}")
    return lines


def _status(wording: _Wording, device: Device) -> tuple[str, ...]:
    """Return the status as a line where it has to be told in words too."""
    told = wording.is_mixed and device.status != "new" and not isinstance(device, Network)
    return (device.status,) if told else ()


def _leaf(wording: _Wording, device: Device, kind: LineKind, earth: str = "", children: tuple[Cell, ...] = ()) -> Cell:
    span = isinstance(device, InverterUnit | Busbar)
    lines = (
        *read_by(wording.system.drawing.reader, below(device, wording.system, wording.ratings), device),
        *wording.wireless.get(device.key, ()),
        *_status(wording, device),
    )
    functional = isinstance(device, InputTerminal) and device.given.functional_earth
    return Cell(
        key=device.key,
        symbol=symbol_of(device, wording.system),
        above=_above(wording, device),
        below=wrapped(lines, wording.line_width_mm),
        flags=wording.flags.get(device.key, ()),
        enclosure=device.enclosure,
        aligned=_ALIGNED.get(device.kind, ""),
        kind=kind,
        earth="functional earth" if functional else earth,
        earth_symbol="functional_earth" if functional else "protective_earth",
        status=device.status,
        join=Join.SPAN if span else Join.TRUNK,
        children=children,
    )


def _tree(wording: _Wording) -> Cell:
    """Return the network's cell with all that it is fed by, built from the leaves so that depth is no limit."""
    system = wording.system
    frames = next((c.designation for c in system.earth_conductors if c.purpose == "array_frame"), "")
    cells: dict[str, Cell] = {}
    for device in reversed([system.devices[system.root], *system.downstream(system.root)]):
        children = tuple(cells.pop(key) for key in system.children.get(device.key, ()))
        if device.key == system.ownership_boundary:
            children = (_boundary(device, children),)
        earth = frames if isinstance(device, StringGroup) else ""
        cells[device.key] = _leaf(wording, device, LineKind.DC if device.dc else LineKind.AC, earth, children)
    return cells[system.root]


def _boundary(device: Device, children: tuple[Cell, ...]) -> Cell:
    """Return the boundary of ownership behind a device, through which all goes on that it is connected with."""
    key = f"{device.key}/{OWNERSHIP_BOUNDARY}"
    return Cell(key, OWNERSHIP_BOUNDARY, enclosure=device.enclosure, status=device.status, children=children)


def _chain(chain: DataChain, reader: str) -> BusChain:
    """Return a chain with address and termination at each device, which a network operator does not need."""
    steps = []
    for node in chain.nodes:
        parts = [f"addr. {node.address}" if node.address is not None else "", "120 Ω" if node.terminated else ""]
        told = "" if reader == "operator" else ", ".join(part for part in parts if part)
        steps.append(BusStep(node.device, told, node.terminated))
    return BusChain(chain.key, chain.designation, tuple(steps))


def _links(system: System) -> list[BusChain]:
    """Return the wired links as chains of two; a wireless one is told in words at its ends."""
    found = []
    for index, link in enumerate(system.links):
        ends = [system.names[name][0] for name in (link.from_device, link.to_device)]
        if link.medium == "wireless":
            continue
        found.append(BusChain(f"data.links.{index}", str(MEDIA[link.medium]), (BusStep(ends[0]), BusStep(ends[1]))))
    return found


_TAP_MM = 42.0
"""Longer names of what is bonded are wrapped: the bar would widen the sheet."""

_TAP_SYMBOLS = {
    "lightning": "lightning_protection",
    "array_frame": "equipotential_bonding",
    "main_bonding": "equipotential_bonding",
}


def _earth_bar(system: System, ratings: Ratings, flags: Mapping[str, tuple[int, ...]]) -> EarthBar:
    taps = []
    for conductor in system.earth_conductors:
        name = wrapped((conductor.to,), _TAP_MM)
        lines = (conductor.designation, *name, *_conductor(conductor, ratings), *_at_the_end(system, conductor))
        symbol = "earth_electrode" if _is_to_electrode(conductor) else _TAP_SYMBOLS.get(conductor.purpose, "")
        taps.append(EarthTap(conductor.designation, lines, symbol, flags.get(conductor.key, ())))
    surge = [device for device in system.of(Apparatus) if device.has(SURGE_PROTECTION)]
    if surge:
        taps.append(EarthTap("PE", ("PE", *_surge_lines(surge, ratings))))
    place = place_words(system.site.locations, system.earthing.location or "")
    location = f", {place}" if place else ""
    text = (system.earthing_designation, f"{system.earthing.name or 'main earthing terminal'}{location}")
    return EarthBar("earthing", text, tuple(taps), flags.get("earthing", ()))


def _is_to_electrode(conductor: EarthConductor) -> bool:
    return conductor.key == "earth.electrode"


def _conductor(conductor: EarthConductor, ratings: Ratings) -> list[str]:
    """Return section and length, where they are known."""
    section = ratings.get(conductor.key, Symbol.S)
    parts = [f"{section.quantity()} Cu" if section else ""]
    parts.append(f"{shown(conductor.length_m)} m" if conductor.length_m else "")
    text = ", ".join(part for part in parts if part)
    return [text] if text else []


def _at_the_end(system: System, conductor: EarthConductor) -> list[str]:
    """Return what an inspector looks for at the far end: the electrode's resistance, the lightning protection."""
    electrode, lightning = system.earthing.electrode, system.earthing.lightning_protection
    if _is_to_electrode(conductor) and electrode and electrode.resistance_ohm is not None:
        return [f"RA {shown(electrode.resistance_ohm)} Ω"]
    if conductor.purpose == "lightning" and lightning is not None:
        count = lightning.down_conductors
        return [
            f"class {lightning.level}" + (f", {count} down-conductors" if count else ""),
            "separation to the array kept" if lightning.separation_kept else "separation to the array NOT kept",
        ]
    return []


def _surge_lines(surge: Sequence[Apparatus], ratings: Ratings) -> list[str]:
    """Return the sides and types of the surge protection, and the least sections of its conductors to earth."""
    sides = " and ".join(side for side, dc in (("DC", True), ("AC", False)) if any(d.dc == dc for d in surge))
    sections: dict[str, Rating] = {}
    for device in surge:
        given, least = device.given_as(SURGE_PROTECTION), ratings.get(device.key, Symbol.SPE)
        assert given is not None, "only these were asked for"
        assert least is not None, "every surge protective device has one, see `sld.steps.surge`"
        name = f"type {given.test_class}"
        if name not in sections or least.value > sections[name].value:
            sections[name] = least
    told = [f"{name}: ≥ {section.quantity()} Cu" for name, section in sorted(sections.items())]
    return [f"surge protection, {sides}", *told]
