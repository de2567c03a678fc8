"""The supply points of a spec, each with a spec of what stands behind it alone.

Behind each supply point there is an installation with its own network, earthing and boards; nothing but the site, the
drawing and the types is common. What is computed, checked and drawn is so of one of them at a time.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from sld.finding import SpecPath
from sld.frozen import dataclass
from sld.spec.blocks.board import Board
from sld.spec.blocks.circuit import Installed
from sld.spec.blocks.data_bus import DataBus
from sld.spec.blocks.inverter import Inverter
from sld.spec.blocks.supply import Supply
from sld.spec.document import Spec
from sld.spec.island_references import second_sources
from sld.spec.names import counted_names, installed

__all__ = ["SupplyPoint", "supply_points"]

FIRST = ""
"""The supply point that the spec gives under `supply`."""


@dataclass(frozen=True, slots=True)
class SupplyPoint:
    """A supply point. name: among the further ones, empty for that under `supply`. spec: what stands behind it.

    title: the name that it is given for the sheet. links: for each data link of that spec its number in the whole one.
    """

    name: str
    spec: Spec
    title: str = ""
    links: tuple[int, ...] = ()

    @property
    def way(self) -> SpecPath:
        """Return where the spec has the blocks `supply` and `earthing` of it."""
        return ("further_supplies", self.name) if self.name else ()

    @property
    def called(self) -> str:
        """Return what it is called on the sheet besides its designation, empty for that under `supply`."""
        return self.title or self.name.replace("_", " ")

    @property
    def prefix(self) -> str:
        """Return what the keys of its network and of its earthing begin with, so that those of no other are alike."""
        return "".join(f"{step}." for step in self.way)

    def place(self, at: SpecPath) -> SpecPath:
        """Return where in the whole spec a place of its own spec is."""
        if at[:1] in (("supply",), ("earthing",)):
            return (*self.way, *at)
        if at[:2] == ("data", "links") and len(at) > 2 and self.links:
            return ("data", "links", self.links[int(at[2])], *at[3:])
        return at


def supply_points(spec: Spec) -> tuple[SupplyPoint, ...]:
    """Return the supply points of a spec whose names are good, that under `supply` first."""
    if not spec.further_supplies:
        return (SupplyPoint(FIRST, spec),)
    behind = _Behind(spec)
    titles = {FIRST: "", **{name: further.name or "" for name, further in spec.further_supplies.items()}}
    return tuple(SupplyPoint(name, behind.part(name), title, behind.links(name)) for name, title in titles.items())


class _Behind:
    """Which supply point each block of a spec stands behind."""

    def __init__(self, spec: Spec) -> None:
        self._spec = spec
        self._single = {one: name for name, each in counted_names(spec).items() for one in each}
        self._of: dict[tuple[str, str], str] = {("boards", name): self._of_board(name) for name in spec.boards}
        switched = {source: str(path[1]) for path, source in second_sources(spec)}
        for group in ("inverters", "loads", "batteries", "generators"):
            for name, block in getattr(spec, group).items():
                board = getattr(block, "connected_to", None) or (switched.get(name) if group == "generators" else None)
                self._of[group, name] = self._of.get(("boards", board or ""), FIRST)
        for name, battery in spec.batteries.items():
            if battery.inverter is not None:
                self._of["batteries", name] = self._of["inverters", self._single[battery.inverter]]
        for name in spec.junction_boxes:
            users = (self._of["inverters", of] for of, unit in spec.inverters.items() if _uses_box(unit, name))
            self._of["junction_boxes", name] = next(users, FIRST)
        self._named = _with_data(spec.data or DataBus(), self._by_name())

    def part(self, name: str) -> Spec:
        """Return the spec of what stands behind one supply point."""
        groups = ("boards", "junction_boxes", "inverters", "batteries", "loads", "generators")
        kept: dict[str, Any] = {group: self._kept(group, name) for group in groups}
        kept["boards"] = {key: self._as_main(board) for key, board in kept["boards"].items()}
        if name != FIRST:
            further = self._spec.further_supplies[name]
            kept |= {"supply": _of_the_site(further.supply, self._spec.supply), "earthing": further.earthing}
        return self._spec.model_copy(update={**kept, "further_supplies": {}, "data": self._kept_data(name)})

    def links(self, name: str) -> tuple[int, ...]:
        """Return the numbers of the data links behind one supply point: of those that begin there."""
        links = self._spec.data.links if self._spec.data else []
        return tuple(index for index, each in enumerate(links) if self._named[each.from_device] == name)

    def _of_board(self, name: str) -> str:
        """Return the supply point of a board, to which there is one way."""
        boards = self._spec.boards
        main = next((key for key, board in boards.items() if board.is_main), None)
        here: str | None = name
        while here is not None and here in boards:
            backed = self._single.get(boards[here].fed_from_backup or "")
            here = (self._spec.inverters[backed].connected_to or main) if backed else boards[here].fed_from
        return here or FIRST

    def _as_main(self, board: Board) -> Board:
        """Return a board as the spec of its supply point has it: fed by that, it is the main board there."""
        fed_by_supply = board.fed_from in self._spec.further_supplies
        return board.model_copy(update={"fed_from": None}) if fed_by_supply else board

    def _kept(self, group: str, supply: str) -> dict[str, Any]:
        return {name: block for name, block in getattr(self._spec, group).items() if self._of[group, name] == supply}

    def _by_name(self) -> dict[str, str]:
        """Return the supply point behind each name that a data cable may end at."""
        found = {name: supply for (_, name), supply in self._of.items()}
        found |= {one: self._of["inverters", name] for one, name in self._single.items()}
        for path, device in installed(self._spec):
            if device.id:
                found[device.id] = self._of[str(path[0]), str(path[1])]
        return found

    def _kept_data(self, supply: str) -> DataBus | None:
        """Return the data bus behind a supply point: each cable stands where its first end does."""
        data = self._spec.data
        if data is None:
            return None
        kept = {
            "devices": {name: each for name, each in data.devices.items() if self._named[name] == supply},
            "chains": {
                name: each for name, each in data.chains.items() if self._named[each.devices[0].device] == supply
            },
            "links": [data.links[index] for index in self.links(supply)],
        }
        return data.model_copy(update=kept)


_COMMON = ("country", "grid_rules", "frequency_hz")


def _of_the_site(supply: Supply, first: Supply) -> Supply:
    """Return a further supply with what a site has in common with the first: country, grid rules, frequency."""
    common = {key: getattr(first, key) for key in _COMMON if key in first.model_fields_set}
    return supply.model_copy(update={key: each for key, each in common.items() if key not in supply.model_fields_set})


def _uses_box(unit: Inverter, box: str) -> bool:
    devices = (device for given in unit.inputs for device in given.circuit or [] if isinstance(device, Installed))
    return box in {*(given.junction_box for given in unit.inputs), *(device.enclosure for device in devices)}


def _with_data(data: DataBus, known: Mapping[str, str]) -> dict[str, str]:
    """Return the supply point of each name, for data devices too: that of what they are connected with, however far."""
    groups = [[step.device for step in chain.devices] for chain in data.chains.values()]
    groups += [[link.from_device, link.to_device] for link in data.links]
    for name, device in data.devices.items():
        groups.append([name, *(device.load_limit.loads if device.load_limit else ())])
        if device.feed_in_limit is not None:
            groups.append([name, device.feed_in_limit.sensor])
    found, grown = dict(known), True
    while grown:
        grown = False
        for names in groups:
            supply = next((found[name] for name in names if name in found), None)
            missing = [name for name in names if name not in found]
            if supply is not None and missing:
                found |= dict.fromkeys(missing, supply)
                grown = True
    return {**dict.fromkeys(data.devices, FIRST), **found}
