"""The System: the tree of devices from the public network to the strings, the overlays, and the walks over them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import field
from typing import Any, TypeVar

from sld.finding import SpecPath
from sld.frozen import dataclass, replace
from sld.grid.country import Country
from sld.model.assumed import Assumption
from sld.model.copies import Copy
from sld.model.device import Apparatus, Busbar, Cable, Device, InverterUnit
from sld.model.kinds.ac import AC_CABLE
from sld.model.kinds.dc import DC_CABLE
from sld.model.kinds.row import Kind, Trait
from sld.model.walk import Walk
from sld.spec.blocks.acceptance import Accept
from sld.spec.blocks.board import JunctionBox
from sld.spec.blocks.cable import AcCable, DcCable
from sld.spec.blocks.data_bus import Chain, DataLink
from sld.spec.blocks.earthing import EarthElectrode, Earthing
from sld.spec.blocks.notification import Notification
from sld.spec.blocks.paper import Paper
from sld.spec.blocks.project import Drawing, Project
from sld.spec.blocks.site import Site
from sld.spec.blocks.supply import Supply
from sld.spec.blocks.upkeep import Upkeep
from sld.spec.document import follows_nec
from sld.spec.doubts import Unusual
from sld.spec.supply_points import SupplyPoint
from sld.words import Language, Sayable, language

__all__ = ["ChainNode", "DataChain", "EarthConductor", "System"]

AnyDevice = TypeVar("AnyDevice", bound=Device)
Values = TypeVar("Values")

_TO_EARTH_V = {
    208.0: 120.0,
    220.0: 127.0,
    380.0: 220.0,
    400.0: 230.0,
    415.0: 240.0,
    480.0: 277.0,
    600.0: 347.0,
    690.0: 400.0,
}
"""Nominal voltage between lines -> nominal voltage to neutral, as three-phase systems are named. [V]

IEC 60038:2009 Table 1: 120/208, 230/400, 277/480, 347/600, 400/690; 127/220, 220/380 and 240/415 are older names that
are still met (from memory). The values of other standards (disconnection times, Uc) are stated for these voltages.
"""


@dataclass(frozen=True, slots=True)
class ChainNode:
    """One device of a data chain. length_m: cable from the device before it, None where the spec does not say."""

    device: str
    at: SpecPath
    address: int | None
    length_m: float | None
    terminated: bool


@dataclass(frozen=True, slots=True)
class DataChain:
    """Devices on one RS-485 cable, in the order of the cable. shielded: None where the spec does not say."""

    key: str
    designation: str
    at: SpecPath
    given: Chain
    nodes: tuple[ChainNode, ...]
    master: str
    marking: str
    shielded: bool | None


@dataclass(frozen=True, slots=True)
class EarthConductor:
    """A conductor at an earthing terminal. purpose: earthing, main_bonding, array_frame, lightning, supply, other.

    board: key of the board whose building has the terminal, empty for the main one.
    """

    key: str
    designation: str
    at: SpecPath
    to: Sayable
    purpose: str
    section_mm2: float | None
    length_m: float | None
    assumed: bool = False
    board: str = ""

    @property
    def to_electrode(self) -> bool:
        """Return whether it leads to the earth electrode of the installation."""
        return self.key.endswith("earth.electrode")

    @property
    def to_supply(self) -> bool:
        """Return whether the supply brings it, or it leads to the earthing point of the supply."""
        return self.key.endswith("earth.supply")


@dataclass(frozen=True, slots=True)
class System:
    """Everything behind one supply point, resolved. Devices are in the order of the tree, parents before children.

    point: that supply point. others: the systems behind the others of the same drawing. ownership_boundary: key of the
    last device that belongs to the network operator, empty where it is not known.
    boxes: designation and block of every junction box by the key that its contents name as their enclosure. unusual:
    values outside of their usual range. kinds: of the devices. copies: of inverters that are equal to a first one, by
    its key. whole: all devices; firsts: those but the copies; walked: one of both, which `of` and its like go
    through, see `one_of_each`. grid_rules: of the country, else
    the generic ones, with what an operator or town has otherwise.
    """

    project: Project
    drawing: Drawing
    profile: str
    site: Site
    point: SupplyPoint
    supply: Supply
    voltage_v: float
    devices: Mapping[str, Device]
    children: Mapping[str, tuple[str, ...]]
    root: str
    ownership_boundary: str
    chains: tuple[DataChain, ...]
    links: tuple[DataLink, ...]
    earthing: Earthing
    earthing_designation: str
    earth_conductors: tuple[EarthConductor, ...]
    enclosures: Mapping[str, Sayable]
    boxes: Mapping[str, tuple[str, JunctionBox]]
    names: Mapping[str, tuple[str, ...]]
    notification: Notification | None
    papers: tuple[Paper, ...]
    upkeep: Upkeep | None
    accept: tuple[Accept, ...]
    unusual: tuple[Unusual, ...]
    assumptions: tuple[Assumption, ...]
    kinds: frozenset[Kind[Any]]
    copies: Mapping[str, tuple[Copy, ...]]
    whole: Walk = field(compare=False, repr=False)
    firsts: Walk = field(compare=False, repr=False)
    walked: Walk = field(compare=False, repr=False)
    grid_rules: Country
    others: tuple[System, ...] = ()

    @property
    def earthing_key(self) -> str:
        """Return the key of the main earthing terminal."""
        return f"{self.point.prefix}earthing"

    def one_of_each(self) -> System:
        """Return the same system, of which `of`, `apparatus`, `given_as`, `ac_cables` and `dc_cables` yield of equal
        inverters the first with all that belongs to it. `every` and the ways through the tree know them all."""
        return replace(self, walked=self.firsts) if self.copies else self

    def of_copies(self) -> dict[str, tuple[str, Copy]]:
        """Return for each device of a copy the key of the same device of the first inverter, and the copy."""
        copies = {copy.key: copy for each in self.copies.values() for copy in each}
        found = {}
        for key, device in self.devices.items() if copies else ():
            if (copy := copies.get(device.owner)) is not None:
                found[key] = (f"{copy.first}{key[len(copy.key) :]}", copy)
        return found

    @property
    def voltage_to_earth_v(self) -> float:
        """Return the nominal voltage to earth U0: by name (230 V of 400 V, IEC 60038), else divided by √3; so too of
        a supply of two lines, which are of a network of three. [V]"""
        if self.supply.split_phase:
            return self.voltage_v / 2
        if self.supply.phases == 1 and self.supply.has_neutral:
            return self.voltage_v
        return _TO_EARTH_V.get(self.voltage_v, self.voltage_v / 3**0.5)

    @property
    def symbols(self) -> str:
        """Return the family of graphical symbols: the one asked for, else the one usual where the profile is used."""
        return self.drawing.symbols or ("ANSI" if self.follows_nec else "IEC")

    @property
    def language(self) -> Language:
        """Return the language that the drawing and the documents are made in."""
        return language(self.project.language)

    @property
    def follows_nec(self) -> bool:
        """Return whether the rule profile follows the National Electrical Code."""
        return follows_nec(self.profile)

    @property
    def voltage_of_one_phase_v(self) -> float:
        """Return the voltage that a single-phase circuit works at: of the supply itself if it has one phase, so between
        its lines with split phase, or no neutral; else to neutral. [V]"""
        between = self.supply.phases == 1 or not self.supply.has_neutral
        return self.voltage_v if between else self.voltage_to_earth_v

    def earthed_by(self, key: str) -> Busbar | None:
        """Return the board of the building whose own electrode earths a device, None where the main terminal does.

        The feeder belongs to the building that it comes from; what follows its last cable to the building it serves.
        """
        here = self.devices[key]
        owner = self.devices.get(here.owner)
        if isinstance(owner, Busbar) and owner.given.earthing_system and not isinstance(here, Cable):
            behind = [each for each in self.downstream(key) if each.owner == owner.key]
            if not any(isinstance(each, Cable) for each in behind):
                return owner
        boards = (each for each in self.upstream(key) if isinstance(each, Busbar))
        return next((board for board in boards if board.given.earthing_system), None)

    def bonding_at(self, key: str) -> tuple[EarthConductor, ...]:
        """Return the main bonding of the building of a board; with an empty key that at the main earthing terminal."""
        return tuple(each for each in self.earth_conductors if each.board == key and each.purpose == "main_bonding")

    def earthing_at(self, key: str) -> str:
        """Return the earthing system at a device: that of its building, else that of the supply."""
        board = self.earthed_by(key)
        return (board.given.earthing_system if board else None) or self.supply.earthing_system

    def electrode_at(self, key: str) -> EarthElectrode | None:
        """Return the earth electrode of the building that a device stands in."""
        board = self.earthed_by(key)
        return board.given.electrode if board else self.earthing.electrode

    def electrode_path(self, key: str) -> SpecPath:
        """Return where the spec gives that electrode."""
        board = self.earthed_by(key)
        return (*board.at, "electrode") if board else self.point.place(("earthing", "electrode"))

    def of(self, kind: type[AnyDevice]) -> Iterator[AnyDevice]:
        """Yield the devices of a class that are walked, in the order of the tree."""
        return self.walked.of(kind)

    def every(self, kind: type[AnyDevice]) -> Iterator[AnyDevice]:
        """Yield all devices of a class, in the order of the tree: for sums, and for what is asked of all."""
        return self.whole.of(kind)

    def apparatus(self, *traits: Trait[Any]) -> Iterator[Apparatus]:
        """Yield the apparatus of one of the kinds or with one of the roles, in the order of the tree."""
        return (device for device in self.of(Apparatus) if device.has(*traits))

    def given_as(self, trait: Trait[Values]) -> Iterator[tuple[Apparatus, Values]]:
        """Yield the apparatus of a kind or with a role, each with what the spec says, typed as the trait promises."""
        for device in self.of(Apparatus):
            if (given := device.given_as(trait)) is not None:
                yield device, given

    def ac_cables(self) -> Iterator[tuple[Cable, AcCable]]:
        """Yield the AC cables, each with what the spec says."""
        return ((cable, given) for cable in self.of(Cable) if (given := cable.given_as(AC_CABLE)) is not None)

    def dc_cables(self) -> Iterator[tuple[Cable, DcCable]]:
        """Yield the DC cables, each with what the spec says."""
        return ((cable, given) for cable in self.of(Cable) if (given := cable.given_as(DC_CABLE)) is not None)

    def upstream(self, key: str) -> Iterator[Device]:
        """Yield the devices from `key` (not included) to the public network."""
        parent = self.devices[key].parent
        while parent:
            device = self.devices[parent]
            yield device
            parent = device.parent

    def downstream(self, key: str) -> Iterator[Device]:
        """Yield the devices fed through `key` (not included), nearest first along each branch."""
        stack = list(reversed(self.children.get(key, ())))
        while stack:
            device = self.devices[stack.pop()]
            yield device
            stack.extend(reversed(self.children.get(device.key, ())))

    def main_board(self) -> Busbar:
        """Return the busbar of the main board: the first of the tree."""
        return next(self.of(Busbar))

    def inverter_of(self, device: Device) -> InverterUnit:
        """Return the inverter that a device of its DC side belongs to."""
        owner = self.devices[device.owner]
        assert isinstance(owner, InverterUnit), f"{device.key} is not on the DC side"
        return owner

    def inverters_behind(self, key: str) -> list[InverterUnit]:
        """Return the inverters at or downstream of `key`."""
        here = self.devices[key]
        found = [here] if isinstance(here, InverterUnit) else []
        return found + [device for device in self.downstream(key) if isinstance(device, InverterUnit)]
