"""What the spec's names come to: designations of owners, device keys behind each name, captions of enclosures."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from typing import Any

from sld.model.designation import Designator, numbers
from sld.model.device import Device
from sld.model.kinds.row import Kind
from sld.model.kinds.units import BATTERY, BOARD, GENERATOR, INVERTER, JUNCTION_BOX, LOAD, TRUNK
from sld.model.places import place_words
from sld.spec.blocks.block import Named
from sld.spec.blocks.board import Board, JunctionBox
from sld.spec.document import Spec
from sld.spec.names import counted_boxes, counted_names, installed
from sld.words import Sayable, sequence

__all__ = ["boards_of", "boxes", "device_names", "enclosure_captions", "main_board", "owner_designations"]


_DEFAULT_MAIN_BOARD = "main"


def boards_of(spec: Spec) -> Mapping[str, Board]:
    """Return the boards of a spec, a main board where it gives none."""
    return dict(spec.boards) or {_DEFAULT_MAIN_BOARD: Board()}


def main_board(boards: Mapping[str, Board]) -> str:
    """Return the name of the board that the supply feeds."""
    return next(name for name, board in boards.items() if board.is_main)


def owner_designations(spec: Spec, designator: Designator) -> dict[tuple[str, str], str]:
    """Designate the owners of circuits, and junction boxes, by their own numbers, before anything else."""
    boards = boards_of(spec)
    networks_count = 1 + len(spec.further_supplies)
    inverters = [one for names in counted_names(spec).values() for one in names]
    groups: tuple[tuple[str, Kind[Any], list[str]], ...] = (
        ("boards", BOARD, list(boards)),
        ("junction_boxes", JUNCTION_BOX, [one for names in counted_boxes(spec).values() for one in names]),
        ("inverters", INVERTER, inverters),
        ("batteries", BATTERY, list(spec.batteries)),
        ("loads", LOAD, list(spec.loads)),
        ("generators", GENERATOR, list(spec.generators)),
    )
    found: dict[tuple[str, str], str] = {}
    for group, kind, names in groups:
        for name, number in zip(names, numbers(names), strict=True):
            block = boards[name] if group == "boards" else getattr(spec, group).get(name)
            own = block.designation if isinstance(block, Named) else None
            of = TRUNK if isinstance(block, Board) and block.trunk else kind
            # the networks have the letters of a generator too, and are always the first of them
            least = networks_count + 1 if group == "generators" else 1
            found[group, name] = own or designator.numbered(of, max(number, least))
    return found


def boxes(spec: Spec, owners: Mapping[tuple[str, str], str]) -> dict[str, tuple[str, JunctionBox]]:
    """Return key -> designation and block of every junction box, those of equal inverters one by one."""
    return {
        f"junction_boxes.{one}": (owners["junction_boxes", one], spec.junction_boxes[name])
        for name, names in counted_boxes(spec).items()
        for one in names
    }


def device_names(spec: Spec, devices: Collection[Device]) -> dict[str, tuple[str, ...]]:
    """Return the device keys that each name of the spec stands for; a counted inverter's stands for all of them."""
    found: dict[str, tuple[str, ...]] = {}
    for name, names in counted_names(spec).items():
        found[name] = tuple(f"inverters.{one}" for one in names)
        found |= {one: (f"inverters.{one}",) for one in names}
    for group in ("boards", "batteries", "loads", "generators"):
        found |= {name: (f"{group}.{name}",) for name in getattr(spec, group)}
    if spec.data:
        found |= {name: (f"data.devices.{name}",) for name in spec.data.devices}
    at = {device.at: device.key for device in devices}
    return found | {device.id: (at[path],) for path, device in installed(spec) if device.id and path in at}


def enclosure_captions(
    spec: Spec, boards: Mapping[str, Board], owners: Mapping[tuple[str, str], str], devices: Collection[Device]
) -> dict[str, Sayable]:
    """Return key -> caption of every enclosure that holds something."""
    locations = spec.site.locations
    used = {device.enclosure for device in devices if device.enclosure}
    own = {one: spec.junction_boxes[name] for name, names in counted_boxes(spec).items() for one in names}
    groups: tuple[tuple[str, Mapping[str, Named]], ...] = (("boards", boards), ("junction_boxes", own))
    found: dict[str, Sayable] = {}
    for group, blocks in groups:
        for name, block in blocks.items():
            if f"{group}.{name}" in used:
                caption = sequence([owners[group, name], block.name or name.replace("_", " ")], " ")
                found[f"{group}.{name}"] = sequence([caption, place_words(locations, block.location or "")])
    return found
