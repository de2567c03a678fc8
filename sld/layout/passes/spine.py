"""The conductor at the left edge that bonds the module frames.

Before: all cells and the earth bar are placed. After: each bonded cell is joined to the conductor, which leads down to
the earth bar, or where the bar is on another sheet, to a symbol with the reference.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from itertools import pairwise

from sld.frozen import dataclass, replace
from sld.layout.diagram.diagram import Diagram, LineKind
from sld.layout.diagram.line import Line
from sld.layout.passes.bonding import SPINE_MM, Bonding
from sld.layout.passes.grid import CLEARANCE_MM, GAP_MM, Catalogue, up_to_grid_mm
from sld.layout.passes.lettering import lettered
from sld.layout.plan import PlacedCell, Wire
from sld.symbols.stroke import Point
from sld.symbols.typeface import ascent_mm, text_box

__all__ = ["Spine", "spine_of"]

_SYMBOL = "equipotential_bonding"


@dataclass(frozen=True, slots=True)
class Spine:
    """The conductor placed. cells: those joined to it, changed, by their place; end: its symbol where it has one."""

    cells: tuple[tuple[int, PlacedCell], ...] = ()
    wires: tuple[Wire, ...] = ()
    dots: tuple[Point, ...] = ()
    end: PlacedCell | None = None
    height_mm: float = 0.0
    right_mm: float = 0.0


def spine_of(
    bonding: Bonding, cells: Sequence[PlacedCell], foot_mm: float, diagram: Diagram, catalogue: Catalogue
) -> Spine:
    """Return the conductor down to the bar, whose y is foot_mm, or to its symbol where the diagram has no bar."""
    if bonding.line is None:
        return Spine()
    top_down = sorted(bonding.nodes, key=lambda place: cells[place].at[1])
    changed, wires = [], []
    net = diagram.earth.key if diagram.earth else f"{cells[top_down[0]].key}:earth"
    joints = []
    for place in top_down:
        cell = cells[place]
        pin = cell.at
        joint = (SPINE_MM, pin[1])
        changed.append((place, replace(cell, pins=(*cell.pins, ("earth", pin)))))
        wires.append(Wire(LineKind.EARTH, (pin, joint), ((cell.key, "earth"), ("", "")), net))
        joints.append(joint)
    end = None
    last = (SPINE_MM, foot_mm)
    finish = ("", "")
    if diagram.earth is None:
        end = _end(bonding.line, cells[bonding.nodes[0]].key, foot_mm, diagram, catalogue)
        finish, last = (end.key, "feed"), dict(end.pins)["feed"]
    for upper, lower in pairwise([*joints, last]):
        names = (("", ""), finish if lower == last else ("", ""))
        wires.append(Wire(LineKind.EARTH, (upper, lower), names, net))
    meeting = Counter(joint for joint in joints)
    meeting.update(joints[1:])
    meeting.update(joints)
    dots = tuple(joint for joint in dict.fromkeys(joints) if meeting[joint] > 2)
    ends = [end.box.right_mm, *(text_box(label).right_mm for label in end.labels)] if end else [SPINE_MM]
    bottom = max(end.box.bottom_mm, foot_mm) if end else foot_mm
    return Spine(tuple(changed), tuple(wires), dots, end, bottom, max(ends))


def _end(line: Line, first: str, foot_mm: float, diagram: Diagram, catalogue: Catalogue) -> PlacedCell:
    """Return the symbol for earth at the lower end, as that of the first cell."""
    shape = catalogue.symbol(_SYMBOL)
    pins = dict(shape.pins)
    hook = pins.get("earth") or pins.get("feed") or (0.0, 0.0)
    y = up_to_grid_mm(foot_mm + CLEARANCE_MM)
    at = (SPINE_MM - hook[0], y - hook[1])
    box = shape.box.moved(*at)
    labels = tuple(
        text.moved(box.right_mm + GAP_MM, (box.top_mm + box.bottom_mm) / 2 + ascent_mm(2.5) / 3)
        for text in lettered([line], diagram.language)
    )
    return PlacedCell(f"{first}/earth", _SYMBOL, "new", at, (0.0, 0.0), box, (("feed", (SPINE_MM, y)),), labels)
