"""The devices of a system, resolved: every reference followed, every repeat expanded, every one designated.

One class serves all apparatus of a circuit, because what tells a breaker from an RCD is the block that it was given as;
the few things with data of their own (busbar, inverter, input, string, cable ...) have a class each.
"""

from __future__ import annotations

from typing import Any, TypeVar, cast

from sld.finding import SpecPath
from sld.frozen import dataclass
from sld.model.kinds.battery import BATTERY_CABLE
from sld.model.kinds.role import AT_BATTERY
from sld.model.kinds.row import Kind, Trait
from sld.spec.blocks.battery import Battery
from sld.spec.blocks.battery_circuit import BatteryCable
from sld.spec.blocks.block import Block
from sld.spec.blocks.board import Board, Load
from sld.spec.blocks.cable import AcCable, CableType, DcCable
from sld.spec.blocks.data_bus import DataDevice
from sld.spec.blocks.generator import Generator
from sld.spec.blocks.installed import Installed
from sld.spec.blocks.inverter import Inverter, InverterType, MppInput
from sld.spec.blocks.module import ModuleType
from sld.spec.blocks.string import Input, PvString
from sld.spec.blocks.supply import Supply

__all__ = [
    "Apparatus",
    "BatteryCells",
    "BatteryUnit",
    "Busbar",
    "Cable",
    "ChargeConverter",
    "Consumer",
    "DataNode",
    "Device",
    "GeneratorUnit",
    "InputTerminal",
    "InverterUnit",
    "Network",
    "StringGroup",
    "Transformer",
]

Values = TypeVar("Values")


@dataclass(frozen=True, slots=True, kw_only=True)
class Device:
    """Anything with a symbol.

    key: unique, made from the spec's own names. kind: its row in `sld/model/kinds`. at: where the spec says it. parent:
    key of the next device towards the public network, empty at the root. owner: key of what its circuit serves. dc: on
    the DC side. enclosure: key of the board or junction box it sits in, or empty. assumed: the spec does not mention
    it. given: what the spec says, None where it has no block of its own.
    """

    key: str
    designation: str
    kind: Kind[Any]
    at: SpecPath
    parent: str = ""
    owner: str = ""
    dc: bool = False
    name: str = ""
    location: str = ""
    status: str = "new"
    enclosure: str = ""
    make: str = ""
    model: str = ""
    note: str = ""
    assumed: bool = False
    given: Block | None = None

    def has(self, *traits: Trait[Any]) -> bool:
        """Return whether the device is of one of the kinds, or has one of the roles."""
        return any(self.kind.has(trait, self.given) for trait in traits)

    def given_as(self, trait: Trait[Values]) -> Values | None:
        """Return what the spec says, typed as the kind or the role promises; None for other devices."""
        return cast(Values, self.given) if self.kind.has(trait, self.given) else None

    @property
    def in_array(self) -> bool:
        """Return whether it stands on the DC side of an array, not on that of a battery."""
        return self.dc and not self.has(AT_BATTERY, BATTERY_CABLE)

    @property
    def family(self) -> str:
        """Return the series of overcurrent devices that it is of (MCB, MCCB, gG, gPV), empty for other devices."""
        return self.kind.family_of(self.given)

    @property
    def product(self) -> str:
        """Return make and model as people write them, the make once."""
        return self.model if self.model.startswith(self.make) else f"{self.make} {self.model}".strip()


@dataclass(frozen=True, slots=True, kw_only=True)
class Network(Device):
    """The public network behind the supply point."""

    given: Supply


@dataclass(frozen=True, slots=True, kw_only=True)
class Transformer(Device):
    """The site's own transformer."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Apparatus(Device):
    """A device of a circuit; `given` holds its values, those of its type filled in. count: how many it stands for."""

    given: Installed
    count: int = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Cable(Device):
    """A stretch of cable; `type` is its resolved cable type, `marking` what is printed on it. count: cables alike."""

    given: AcCable | DcCable | BatteryCable
    type: CableType
    marking: str
    count: int = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Busbar(Device):
    """The busbar of a board; its key is the board's."""

    given: Board


@dataclass(frozen=True, slots=True, kw_only=True)
class InverterUnit(Device):
    """An inverter. copy: its number among those of one block with a count, from 1."""

    given: Inverter
    type: InverterType
    type_name: str
    copy: int = 1

    @property
    def apparent_power_va(self) -> float:
        """Return the greatest apparent power: as declared, else the rated power. [VA]"""
        return self.type.apparent_power_max_va or self.type.rated_power_w


@dataclass(frozen=True, slots=True, kw_only=True)
class InputTerminal(Device):
    """An input of an inverter, with the limits that its type states for it. index counts from 0."""

    given: Input
    limits: MppInput | None
    index: int


@dataclass(frozen=True, slots=True, kw_only=True)
class StringGroup(Device):
    """Equal strings in parallel, drawn once. designations: one for each string."""

    given: PvString
    type: ModuleType
    type_name: str
    designations: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Consumer(Device):
    """A load."""

    given: Load


@dataclass(frozen=True, slots=True, kw_only=True)
class BatteryUnit(Device):
    """A battery on the DC side of an inverter, or with its converter on the AC side.

    Where the spec gives the circuit between the two it is the converter alone, and `BatteryCells` the battery.
    """

    given: Battery


@dataclass(frozen=True, slots=True, kw_only=True)
class BatteryCells(Device):
    """The battery behind a converter on the AC side and the circuit between them; `given` is the battery's block."""

    given: Battery


@dataclass(frozen=True, slots=True, kw_only=True)
class ChargeConverter(Device):
    """The DC/DC converter between a battery and the inverter that it is at; `given` is the battery's block."""

    given: Battery


@dataclass(frozen=True, slots=True, kw_only=True)
class GeneratorUnit(Device):
    """A generator that feeds a board while the network is separated."""

    given: Generator


@dataclass(frozen=True, slots=True, kw_only=True)
class DataNode(Device):
    """A device of the data side alone."""

    given: DataDevice
