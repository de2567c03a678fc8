"""Spec -> System: types filled in, repeats expanded, circuits joined to one tree, every device designated.

The spec's names are known to be good here (`sld.spec.references` has seen them). What the spec leaves out and the drawing
cannot do without is added and said: each addition is a finding of severity `assumption`.
"""

from __future__ import annotations

from collections.abc import Sequence
from types import MappingProxyType
from typing import Any, TypeVar

from sld.finding import Finding, SpecPath
from sld.model.assumed import assumption
from sld.model.bus import data_chains, data_nodes
from sld.model.designation import Designator, numbers
from sld.model.device import (
    Apparatus,
    BatteryUnit,
    Busbar,
    Cable,
    Consumer,
    Device,
    InputTerminal,
    InverterUnit,
    Network,
    StringGroup,
    Transformer,
)
from sld.model.earth import earth_conductors
from sld.model.system import System
from sld.spec.blocks.block import Block, Placed
from sld.spec.blocks.board import Board
from sld.spec.blocks.circuit import (
    AcCable,
    Breaker,
    CableType,
    DcCable,
    DcIsolator,
    Fuse,
    Installed,
    Isolator,
    MainSwitch,
    Meter,
)
from sld.spec.blocks.earthing import Earthing
from sld.spec.blocks.inverter import Inverter, InverterType, MppInput
from sld.spec.blocks.string import Input
from sld.spec.document import Spec
from sld.spec.references import counted_names, placed_blocks

__all__ = ["build"]

AnyBlock = TypeVar("AnyBlock", bound=Block)

DEFAULT_AC_CABLE = CableType(marking=None, conductor="copper", insulation="PVC")
DEFAULT_DC_CABLE = CableType(marking="H1Z2Z2-K", insulation="EN 50618", rated_voltage=1500.0)  # type: ignore[call-arg]
DEFAULT_MAIN_BOARD = "main"


def build(spec: Spec) -> System:
    """Return the resolved system of a spec whose references are good."""
    return _Builder(spec).system()


def merged(block: AnyBlock, type_block: AnyBlock | None) -> AnyBlock:
    """Return the block with the values of its type where it gives none itself."""
    if type_block is None:
        return block
    own = block.model_fields_set
    added = {name: getattr(type_block, name) for name in type_block.model_fields_set if name not in own}
    return block.model_copy(update=added)


class _Builder:
    """Walks the spec once, from the public network to the strings, and collects devices."""

    def __init__(self, spec: Spec) -> None:
        self.spec = spec
        self.devices: dict[str, Device] = {}
        self.children: dict[str, list[str]] = {}
        self.assumptions: list[Finding] = []
        self.boards = dict(spec.boards) or {DEFAULT_MAIN_BOARD: Board()}
        self.main = next(name for name, board in self.boards.items() if board.fed_from is None)
        taken = {block.designation for _, block in placed_blocks(spec) if block.designation}
        self.designator = Designator(spec.drawing.designation_letters, taken)
        self.owners = self._owner_designations()

    def _owner_designations(self) -> dict[tuple[str, str], str]:
        """Designate boards, junction boxes, inverters, batteries and loads by their own numbers, before anything else."""
        found: dict[tuple[str, str], str] = {}
        inverter_names = [name for names in counted_names(self.spec).values() for name in names]
        groups: tuple[tuple[str, str, list[str]], ...] = (
            ("boards", "board", list(self.boards)),
            ("junction_boxes", "junction_box", list(self.spec.junction_boxes)),
            ("inverters", "inverter", inverter_names),
            ("batteries", "battery", list(self.spec.batteries)),
            ("loads", "load", list(self.spec.loads)),
        )
        for group, kind, names in groups:
            for name, number in zip(names, numbers(names), strict=True):
                block = getattr(self.spec, group).get(name)
                own = block.designation if isinstance(block, Placed) else None
                found[group, name] = own or self.designator.numbered(kind, number)
        return found

    # -- the tree ---------------------------------------------------------------------------------------------------

    def system(self) -> System:
        spec = self.spec
        voltage_v = spec.supply.voltage_v
        if voltage_v is None:
            voltage_v = 400.0 if spec.supply.phases == 3 else 230.0
            self._assume(("supply",), "", f"nominal voltage {voltage_v:.0f} V", "give `voltage` under `supply`")
        self._board(self.main, self._network())
        earthing = spec.earthing or Earthing()
        nodes = data_nodes(spec, self.designator)
        for node in nodes:
            self.devices[node.key] = node
        names = self._names()
        conductors, said = earth_conductors(spec, earthing, self.designator)
        self.assumptions += said
        return System(
            project=spec.project,
            drawing=spec.drawing,
            profile=spec.profile,
            site=spec.site,
            supply=spec.supply,
            voltage_v=voltage_v,
            devices=MappingProxyType(self.devices),
            children=MappingProxyType({key: tuple(keys) for key, keys in self.children.items()}),
            root="supply",
            chains=data_chains(spec, names, self.devices, self.designator),
            links=tuple(spec.data.links) if spec.data else (),
            earthing=earthing,
            earthing_designation=earthing.designation or self.designator.next("", "earth_terminal"),
            earth_conductors=conductors,
            enclosures=MappingProxyType(self._enclosures()),
            names=MappingProxyType(names),
            accept=tuple(spec.accept),
            assumptions=tuple(self.assumptions),
        )

    def _network(self) -> str:
        supply = self.spec.supply
        key = self._add(
            Network(
                key="supply",
                designation=self.designator.next("", "network"),
                kind="network",
                at=("supply",),
                given=supply,
                name=supply.operator or "",
                status="existing",
            )
        )
        if supply.transformer:
            key = self._add(
                Transformer(
                    key="supply.transformer",
                    designation=self.designator.next("", "transformer"),
                    kind="transformer",
                    at=("supply", "transformer"),
                    parent=key,
                    status="existing",
                )
            )
        if supply.service_fuse_a is not None:
            fuse = Fuse(kind="fuse", rated_current=supply.service_fuse_a)  # type: ignore[call-arg]
            key = self._add(
                Apparatus(
                    key="supply.service_fuse",
                    designation=self.designator.next("", "service_fuse"),
                    kind="service_fuse",
                    at=("supply", "service_fuse"),
                    parent=key,
                    given=fuse,
                    status=supply.service_fuse_status,
                )
            )
        return key

    def _board(self, name: str, parent: str) -> None:
        """Add a board, its incoming circuit, and all that it feeds, in the order of the spec."""
        board = self.boards[name]
        path: SpecPath = ("boards", name) if self.spec.boards else ()
        key = f"boards.{name}"
        circuit, assumed = board.circuit, board.circuit is None
        if circuit is None:
            is_main = name == self.main
            circuit = (
                [Meter(kind="meter", purpose="supply"), MainSwitch(kind="main_switch")]
                if is_main
                else [Breaker(kind="breaker")]
            )
            told = "an energy meter and a main switch" if is_main else "a circuit-breaker"
            self._assume(path, key, f"{told} at board `{name}`", "give its `circuit`")
        before = f"boards.{board.fed_from}" if board.fed_from else ""
        after = key if before or not any(isinstance(device, AcCable) for device in circuit) else ""
        parent = self._ac_circuit(circuit, parent, path, key, before or after, key, assumed)
        self._add(
            Busbar(
                key=key,
                designation=self.owners["boards", name],
                kind="busbar",
                at=path,
                parent=parent,
                owner=key,
                enclosure=key,
                given=board,
                assumed=not self.spec.boards,
                **_placed(board),
            )
        )
        for sub_name, sub in self.boards.items():
            if sub.fed_from == name:
                self._board(sub_name, key)
        for inverter_name, inverter in self.spec.inverters.items():
            if (inverter.connected_to or self.main) == name:
                for one in counted_names(self.spec)[inverter_name]:
                    self._inverter(inverter_name, one, inverter, key)
        self._neighbours(name, key)

    def _neighbours(self, board: str, key: str) -> None:
        """Add the batteries and loads of a board."""
        for name, battery in self.spec.batteries.items():
            if battery.inverter is None and (battery.connected_to or self.main) == board:
                unit = BatteryUnit(
                    key=f"batteries.{name}",
                    designation=self.owners["batteries", name],
                    kind="battery",
                    at=("batteries", name),
                    given=battery,
                    **_placed(battery),
                )
                self._served(unit, battery.circuit, key)
        for name, load in self.spec.loads.items():
            if (load.connected_to or self.main) == board:
                consumer = Consumer(
                    key=f"loads.{name}",
                    designation=self.owners["loads", name],
                    kind="charging_point" if load.charging_point else "load",
                    at=("loads", name),
                    given=load,
                    **_placed(load),
                )
                self._served(consumer, load.circuit, key)

    def _served(self, device: Device, circuit: Sequence[Any] | None, board: str) -> None:
        assumed = circuit is None
        if circuit is None:
            circuit = [Breaker(kind="breaker")]
            self._assume(device.at, device.key, f"a circuit-breaker for `{device.at[-1]}`", "give its `circuit`")
        parent = self._ac_circuit(circuit, board, device.at, device.key, board, "", assumed)
        self._add(_moved(device, parent))

    def _inverter(self, spec_name: str, name: str, inverter: Inverter, board: str) -> None:
        path: SpecPath = ("inverters", spec_name)
        key = f"inverters.{name}"
        type_block = self.spec.types.inverters[inverter.type]
        circuit, assumed = inverter.circuit, inverter.circuit is None
        if circuit is None:
            circuit = [Breaker(kind="breaker"), Isolator(kind="isolator")]
            self._assume(path, key, f"a circuit-breaker and an isolator for inverter `{name}`", "give its `circuit`")
        parent = self._ac_circuit(circuit, board, path, key, board, "", assumed)
        number = sum(isinstance(device, InverterUnit) for device in self.devices.values()) + 1
        self._add(
            InverterUnit(
                key=key,
                designation=self.owners["inverters", name],
                kind="inverter",
                at=path,
                parent=parent,
                owner=key,
                given=inverter,
                type=type_block,
                type_name=inverter.type,
                number=number,
                **_placed(inverter, make=type_block.make or "", model=type_block.model or inverter.type),
            )
        )
        limits = [group for group in type_block.inputs for _ in range(group.count)]
        for index, given in enumerate(inverter.inputs):
            self._input(key, path, index, given, limits[index] if index < len(limits) else None, type_block)
        for battery_name, battery in self.spec.batteries.items():
            if battery.inverter in (spec_name, name):
                self._add(
                    BatteryUnit(
                        key=f"batteries.{battery_name}",
                        designation=self.owners["batteries", battery_name],
                        kind="battery",
                        at=("batteries", battery_name),
                        parent=key,
                        owner=key,
                        dc=True,
                        given=battery,
                        **_placed(battery),
                    )
                )

    def _input(
        self, owner: str, path: SpecPath, index: int, given: Input, limits: MppInput | None, type_: InverterType
    ) -> None:
        here: SpecPath = (*path, "inputs", index)
        key = f"{owner}.inputs.{index}"
        designation = self.designator.next(self.devices[owner].designation, "input")
        parent = self._add(
            InputTerminal(
                key=key,
                designation=designation,
                kind="input",
                at=here,
                parent=owner,
                owner=owner,
                dc=True,
                given=given,
                limits=limits,
                index=index,
            )
        )
        box = f"junction_boxes.{given.junction_box}" if given.junction_box else ""
        circuit, assumed = given.circuit, given.circuit is None
        if circuit is None:
            circuit = [] if type_.dc_switch else [DcIsolator(kind="isolator")]
            if circuit:
                self._assume(
                    here, key, f"a DC isolator at input {index + 1} of `{path[-1]}`", "give the input's `circuit`"
                )
        for position in reversed(range(len(circuit))):
            device = circuit[position]
            at = here if assumed else (*here, "circuit", position)
            enclosure = (
                f"junction_boxes.{device.enclosure}" if isinstance(device, Installed) and device.enclosure else ""
            )
            parent = self._device(device, f"{key}.circuit.{position}", at, parent, owner, enclosure, True, 1, assumed)
        for position, string in enumerate(given.strings):
            self._string(owner, (*here, "strings", position), f"{key}.strings.{position}", given, string, parent, box)

    def _string(self, owner: str, at: SpecPath, key: str, given: Input, string: Any, parent: str, box: str) -> None:
        count = string.count
        if given.string_fuses:
            fuse_at = (*at[:-2], "string_fuses")
            parent = self._device(given.string_fuses, f"{key}.fuse", fuse_at, parent, owner, box, True, count, False)
        if string.cable:
            parent = self._device(string.cable, f"{key}.cable", (*at, "cable"), parent, owner, "", True, count, False)
        prefix = self.devices[owner].designation
        designations = tuple(self.designator.next(prefix, "string") for _ in range(count))
        type_block = self.spec.types.modules[string.module]
        self._add(
            StringGroup(
                key=key,
                designation=string.designation or _range(designations),
                kind="string",
                at=at,
                parent=parent,
                owner=owner,
                dc=True,
                given=string,
                type=type_block,
                type_name=string.module,
                designations=designations,
                **_placed(string, make=type_block.make or "", model=type_block.model or string.module),
            )
        )

    # -- circuits and devices ---------------------------------------------------------------------------------------

    def _ac_circuit(
        self, circuit: Sequence[Any], parent: str, path: SpecPath, owner: str, before: str, after: str, assumed: bool
    ) -> str:
        """Add the devices of an AC circuit. Those before the first cable sit in `before`, after the last in `after`."""
        cables = [position for position, device in enumerate(circuit) if isinstance(device, AcCable)]
        for position, device in enumerate(circuit):
            enclosure = ""
            if not cables or position < cables[0]:
                enclosure = before
            elif position > cables[-1]:
                enclosure = after
            if isinstance(device, Installed) and device.enclosure:
                enclosure = f"boards.{device.enclosure}"
            at = path if assumed else (*path, "circuit", position)
            key = f"{owner}.circuit.{position}"
            parent = self._device(device, key, at, parent, owner, enclosure, False, 1, assumed)
        return parent

    def _device(
        self,
        block: Any,
        key: str,
        at: SpecPath,
        parent: str,
        owner: str,
        enclosure: str,
        dc: bool,
        count: int,
        assumed: bool,
    ) -> str:
        """Add one apparatus or cable and return its key."""
        prefix = self.owners[tuple(owner.split(".", 1))]  # type: ignore[index]
        designations = [self.designator.next(prefix, block.kind) for _ in range(count)]
        designation = block.designation or _range(tuple(designations))
        common: dict[str, Any] = {
            "key": key,
            "designation": designation,
            "kind": block.kind,
            "at": at,
            "parent": parent,
            "owner": owner,
            "dc": dc,
            "enclosure": enclosure,
            "assumed": assumed,
            "count": count,
        }
        if isinstance(block, AcCable | DcCable):
            default = DEFAULT_DC_CABLE if dc else DEFAULT_AC_CABLE
            type_block = self.spec.types.cables[block.type] if block.type else default
            if block.type is None:
                what = "solar cable to EN 50618" if dc else "copper cable with PVC insulation"
                self._assume(at, key, f"{what} for {designation}", "name a cable `type`")
            marking = type_block.marking or block.type or "Cu/PVC"
            return self._add(Cable(given=block, type=type_block, marking=marking, **common, **_placed(block)))
        types: dict[str, Any] = dict(self.spec.types.dc_devices if dc else self.spec.types.ac_devices)
        given = merged(block, types.get(block.type) if block.type else None)
        return self._add(Apparatus(given=given, **common, **_placed(given, model=given.model or block.type or "")))

    def _add(self, device: Device) -> str:
        self.devices[device.key] = device
        if device.parent:
            self.children.setdefault(device.parent, []).append(device.key)
        return device.key

    def _assume(self, at: SpecPath, device: str, what: str, remedy: str) -> None:
        self.assumptions.append(assumption("AS01", at, device, what, remedy))

    def _enclosures(self) -> dict[str, str]:
        """Return key -> caption of every enclosure that holds something."""
        used = {device.enclosure for device in self.devices.values() if device.enclosure}
        found = {}
        for group, blocks in (("boards", self.boards), ("junction_boxes", self.spec.junction_boxes)):
            for name, block in blocks.items():
                if f"{group}.{name}" in used:
                    words = [self.owners[group, name], block.name or name.replace("_", " ")]
                    found[f"{group}.{name}"] = " ".join(words) + (f", {block.location}" if block.location else "")
        return found

    def _names(self) -> dict[str, tuple[str, ...]]:
        """Return the device keys that each name of the spec stands for."""
        found: dict[str, tuple[str, ...]] = {}
        for name, names in counted_names(self.spec).items():
            found[name] = tuple(f"inverters.{one}" for one in names)
            found |= {one: (f"inverters.{one}",) for one in names}
        for group in ("boards", "batteries", "loads"):
            found |= {name: (f"{group}.{name}",) for name in getattr(self.spec, group)}
        if self.spec.data:
            found |= {name: (f"data.devices.{name}",) for name in self.spec.data.devices}
        at = {device.at: device.key for device in self.devices.values()}
        found |= {block.id: (at[path],) for path, block in placed_blocks(self.spec) if block.id and path in at}
        return found


def _placed(block: Placed, make: str = "", model: str = "") -> dict[str, Any]:
    """Return the fields that a device takes over from its block as they are."""
    return {
        "name": block.name or "",
        "location": block.location or "",
        "status": block.status,
        "make": block.make or make,
        "model": block.model or model,
        "note": block.note or "",
    }


def _moved(device: Device, parent: str) -> Device:
    from dataclasses import replace

    return replace(device, parent=parent, owner=device.key)


def _range(designations: tuple[str, ...]) -> str:
    """Write several designations of one owner briefly: `-TB1-GC1…4`."""
    if len(designations) == 1:
        return designations[0]
    tail = designations[-1].rstrip("0123456789")
    return f"{designations[0]}…{designations[-1].removeprefix(tail)}"
