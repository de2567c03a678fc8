"""System + ratings + findings -> Diagram: what is to be drawn, with its texts, before anybody knows where."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from sld.layout.diagram import BusChain, BusStep, Cell, Diagram, EarthBar, EarthTap, Enclosure, Join, LineKind
from sld.layout.labels import LINE_WIDTHS_MM, below, wrapped
from sld.layout.symbol_of import symbol_of
from sld.model.device import Apparatus, Busbar, DataNode, Device, InputTerminal, InverterUnit, StringGroup
from sld.model.system import DataChain, System
from sld.quantity import shown
from sld.rate import Ratings
from sld.spec.blocks.circuit import DcSurgeProtection

__all__ = ["chart"]

_ALIGNED = {"inverter": "inverter", "input": "input", "string": "string"}


@dataclass(frozen=True, slots=True)
class _Wording:
    """What the cells are made from: the system, its ratings, flag numbers by device key, the width of label lines."""

    system: System
    ratings: Ratings
    flags: Mapping[str, tuple[int, ...]]
    line_width_mm: float


def chart(
    system: System,
    ratings: Ratings,
    flags: Mapping[str, tuple[int, ...]],
    line_width_mm: float = LINE_WIDTHS_MM[0],
) -> Diagram:
    """Return the diagram of a system. flags: numbers of the warning flags by device key. line_width_mm: of labels."""
    wording = _Wording(system, ratings, flags, line_width_mm)
    free = tuple(
        _leaf(wording, device, LineKind.DATA) for device in system.devices.values() if isinstance(device, DataNode)
    )
    enclosures = tuple(Enclosure(key, caption) for key, caption in system.enclosures.items())
    chains = (*(_chain(system, chain) for chain in system.chains), *_links(system))
    return Diagram(_tree(wording), enclosures, free, chains, _earth_bar(system, ratings, flags))


def _above(wording: _Wording, device: Device) -> tuple[str, ...]:
    """Return the lines above a symbol: the designation, and what else it is called by."""
    if isinstance(device, InputTerminal):
        return (device.designation, f"input {device.index + 1}")
    if isinstance(device, InverterUnit | Busbar) and device.name:
        return (device.designation, *wrapped((device.name,), wording.line_width_mm))
    return (device.designation,)


def _leaf(wording: _Wording, device: Device, kind: LineKind, earth: str = "", children: tuple[Cell, ...] = ()) -> Cell:
    span = isinstance(device, InverterUnit | Busbar)
    lines = below(device, wording.system, wording.ratings)
    return Cell(
        key=device.key,
        symbol=symbol_of(device, wording.system),
        above=_above(wording, device),
        below=wrapped(lines, wording.line_width_mm),
        flags=wording.flags.get(device.key, ()),
        enclosure=device.enclosure,
        aligned=_ALIGNED.get(device.kind, ""),
        kind=kind,
        earth=earth,
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
        earth = frames if isinstance(device, StringGroup) else ""
        cells[device.key] = _leaf(wording, device, LineKind.DC if device.dc else LineKind.AC, earth, children)
    return cells[system.root]


def _chain(system: System, chain: DataChain) -> BusChain:
    steps = []
    for node in chain.nodes:
        parts = [f"addr. {node.address}" if node.address is not None else "", "120 Ω" if node.terminated else ""]
        steps.append(BusStep(node.device, ", ".join(part for part in parts if part)))
    return BusChain(chain.key, chain.designation, tuple(steps))


def _links(system: System) -> list[BusChain]:
    """Return the wired links as chains of two; a wireless one is drawn as a note only."""
    found = []
    for index, link in enumerate(system.links):
        ends = [system.names[name][0] for name in (link.from_device, link.to_device)]
        if link.medium == "wireless":
            continue
        medium = {"ethernet": "Ethernet", "pulse": "pulse output"}[link.medium]
        found.append(BusChain(f"data.links.{index}", medium, (BusStep(ends[0]), BusStep(ends[1]))))
    return found


def _earth_bar(system: System, ratings: Ratings, flags: Mapping[str, tuple[int, ...]]) -> EarthBar:
    taps = []
    for conductor in system.earth_conductors:
        section = ratings.get(conductor.key, "S")
        lines = [conductor.designation, conductor.to]
        if section:
            lines.append(
                f"{shown(section.value)} mm² Cu" + (f", {shown(conductor.length_m)} m" if conductor.length_m else "")
            )
        if conductor.purpose == "earthing":
            electrode = system.earthing.electrode
            if electrode and electrode.resistance_ohm is not None:
                lines.append(f"RA {shown(electrode.resistance_ohm)} Ω")
        symbol = {
            "earthing": "earth_electrode",
            "lightning": "lightning_protection",
            "array_frame": "equipotential_bonding",
            "main_bonding": "equipotential_bonding",
        }.get(conductor.purpose, "")
        taps.append(EarthTap(conductor.designation, tuple(lines), symbol, flags.get(conductor.key, ())))
    surge = [d for d in system.of(Apparatus) if d.kind == "surge_protection"]
    if surge:
        dc = any(isinstance(device.given, DcSurgeProtection) for device in surge)
        sections = "6 mm² (type 2), 16 mm² (type 1)"
        what = "surge protection, DC and AC" if dc else "surge protection"
        taps.append(EarthTap("PE", ("PE", what, sections)))
    location = f", {system.earthing.location}" if system.earthing.location else ""
    text = (system.earthing_designation, f"main earthing terminal{location}")
    return EarthBar("earthing", text, tuple(taps), flags.get("earthing", ()))
