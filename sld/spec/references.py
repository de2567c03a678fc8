"""Names that refer to something: each must exist, be of the right sort, and mean one thing.

Runs after the shape of the spec is right. One finding a mistake, with the nearest name and where it is defined.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from sld.finding import Finding, SpecPath
from sld.frozen import replace
from sld.spec.blocks.battery_circuit import BatteryCable
from sld.spec.blocks.block import Placed
from sld.spec.blocks.circuit import AcCable, DcCable, Installed, Meter
from sld.spec.blocks.conduit import Drawn
from sld.spec.bus_references import bus_references, limiter_references, trip_references
from sld.spec.codes import register
from sld.spec.document import Spec, Types
from sld.spec.island_references import island_references, second_sources
from sld.spec.names import counted_boxes, counted_names, few, installed, named_blocks, told, unknown
from sld.spec.supply_points import supply_points

__all__ = ["dangling"]

_CODES = {
    "SP51": (
        "name that is not defined",
        "A type, board, box, location or device is referred to by a name that the spec does "
        "not define. Names are compared letter by letter.",
    ),
    "SP52": (
        "name given twice",
        "Boards, boxes, inverters, batteries, loads, generators, data devices and every `id` share one space of "
        "names, and every printed designation stands once, so that a reference has one meaning.",
    ),
    "SP53": ("type that does not fit", "A device refers to a type of another kind, or uses more than the type has."),
    "SP54": (
        "boards without one main board",
        "Exactly one board is fed by the supply: the one without `fed_from`. The others form a tree below it. With "
        "`further_supplies` each of these feeds one board too, with a tree of its own.",
    ),
    "SP55": (
        "connection not clear",
        "With more than one board, each inverter, load, generator and battery says which one it is connected "
        "to; a battery is connected to a board or to an inverter.",
    ),
    "SP56": (
        "boundary of ownership at nothing",
        "The boundary between network operator and customer lies behind a device that the spec does not have.",
    ),
    "SP58": (
        "two supply points joined",
        "What stands behind one supply point names something behind another: a second source, a data cable, the "
        "enclosure or junction box of a device. Two connections to the network are never joined, and a drawing has no "
        "way from the part of one into that of the other.",
    ),
    "SP57": (
        "data cables that one device cannot have",
        "A chain goes from device to device, so that each stands in it once; a device with terminating resistors has "
        "room for eight, cables and resistors together.",
    ),
}
for _code, (_title, _text) in _CODES.items():
    register(_code, _title, _text)


def dangling(spec: Spec) -> list[Finding]:
    """Return a finding for every name that is missing, of the wrong sort, given twice, or of another supply point."""
    found = _of_one(spec)
    return found if found or not spec.further_supplies else list(_behind_others(spec))


def _behind_others(spec: Spec) -> Iterator[Finding]:
    """Yield a finding for each name that is defined, but behind another supply point than where it is used."""
    for point in supply_points(spec):
        for each in _of_one(point.spec):
            if each.code != "SP51":  # of the supply itself
                yield replace(each, at=point.place(each.at))
                continue
            message = (
                f"what is named here stands behind another supply point, and not behind `{point.name or 'supply'}`"
            )
            remedy = "name something behind the same supply point: two connections to the network are never joined"
            yield told("SP58", each.at, message, remedy)


def _of_one(spec: Spec) -> list[Finding]:
    return [
        *_doubled(spec),
        *_shared(spec),
        *_types(spec),
        *_places(spec),
        *_boards(spec),
        *_boundary(spec),
        *_connections(spec),
        *island_references(spec),
        *bus_references(spec),
        *trip_references(spec),
        *limiter_references(spec),
    ]


def _doubled(spec: Spec) -> Iterator[Finding]:
    """Names and ids share one space, so that a chain or an acceptance can use any of them."""
    seen: dict[str, SpecPath] = {}
    named: list[tuple[str, SpecPath]] = []
    for group in ("further_supplies", "boards", "batteries", "loads", "generators"):
        named += [(name, (group, name)) for name in getattr(spec, group)]
    for name, names in counted_names(spec).items():
        named += [(one, ("inverters", name)) for one in dict.fromkeys([name, *names])]
    for name, names in counted_boxes(spec).items():
        named += [(one, ("junction_boxes", name)) for one in dict.fromkeys([name, *names])]
    if spec.data:
        named += [(name, ("data", "devices", name)) for name in spec.data.devices]
    named += [(device.id, (*path, "id")) for path, device in installed(spec) if device.id]
    for name, path in named:
        if name in seen:
            also = ((seen[name], "first given here"),)
            yield told(
                "SP52",
                path,
                f"the name `{name}` is given twice",
                "give every device its own name",
                also=also,
                on_key=path[-1] != "id",
            )
        seen.setdefault(name, path)
    for name, path in named:
        owner = re.sub(r"\.(circuit|inputs)\..*", "", name)
        if owner != name and owner in seen and path[0] == seen[owner][0]:
            message = f"the name `{name}` is the path of something in `{owner}`"
            yield told("SP52", path, message, "take a name without dots", on_key=path[-1] != "id")
    printed: dict[str, SpecPath] = {}
    for path, block in named_blocks(spec):
        if block.designation in printed:
            also = ((printed[block.designation], "first given here"),)
            message = f"the designation `{block.designation}` is given twice"
            yield told("SP52", (*path, "designation"), message, "give every device its own designation", also=also)
        if block.designation:
            printed.setdefault(block.designation, (*path, "designation"))


def _shared(spec: Spec) -> Iterator[Finding]:
    """Yield a finding for each name or designation at a place that stands for several devices."""
    for path, block in named_blocks(spec):
        if path[0] != "inverters":
            continue
        inverter = spec.inverters[str(path[1])]
        copies = inverter.count
        if path[-1] == "string_fuses":
            copies *= len(inverter.inputs[int(path[3])].strings)
        own_id = block.id if isinstance(block, Installed) else None
        for key, value in (("id", own_id), ("designation", block.designation)):
            if value and copies > 1:
                message = f"the {key} `{value}` would be given to {copies} devices"
                remedy = f"leave the {key} out here, or write the devices one by one"
                yield told("SP52", (*path, key), message, remedy)


def _types(spec: Spec) -> Iterator[Finding]:
    types = spec.types
    for name, inverter in spec.inverters.items():
        if inverter.type not in types.inverters:
            yield unknown(
                ("inverters", name, "type"), "inverter type", inverter.type, types.inverters, "types.inverters"
            )
        else:
            most = sum(group.count for group in types.inverters[inverter.type].inputs)
            if len(inverter.inputs) > most:
                message = f"inverter `{name}` uses {len(inverter.inputs)} inputs, its type `{inverter.type}` has {most}"
                also = ((("types", "inverters", inverter.type, "inputs"), "the inputs of the type"),)
                yield told("SP53", ("inverters", name, "inputs"), message, f"use at most {most} inputs", also=also)
        for number, given in enumerate(inverter.inputs):
            for index, string in enumerate(given.strings):
                if string.module not in types.modules:
                    here = ("inverters", name, "inputs", number, "strings", index, "module")
                    yield unknown(here, "module type", string.module, types.modules, "types.modules")
    yield from _keys_of_one_device(types)
    for path, block in named_blocks(spec):
        if isinstance(block, AcCable | DcCable | BatteryCable) and block.type and block.type not in types.cables:
            yield unknown((*path, "type"), "cable type", block.type, types.cables, "types.cables")
        elif isinstance(block, Installed) and block.type:
            where = _types_of(path)
            known: Mapping[str, Installed] = getattr(types, where)
            if block.type not in known:
                yield unknown((*path, "type"), "device type", block.type, known, f"types.{where}")
            elif type(known[block.type]) is not type(block):
                message = f"device type `{block.type}` is a {_kind(known[block.type])}, this device is a {_kind(block)}"
                there: SpecPath = ("types", where, block.type)
                remedy = "refer to a type of the same kind"
                yield told("SP53", (*path, "type"), message, remedy, also=((there, "the type"),))


def _types_of(path: SpecPath) -> str:
    """Return the key under `types` that has the types of a device of a circuit."""
    if path[0] == "batteries" and path[2] == "dc_circuit":
        return "battery_devices"
    return "dc_devices" if path[0] == "inverters" and path[2] == "inputs" else "ac_devices"


def _keys_of_one_device(types: Types) -> Iterator[Finding]:
    """Yield a finding for each key of a device type that only a device can have."""
    for where in ("ac_devices", "dc_devices", "battery_devices"):
        devices: Mapping[str, Installed] = getattr(types, where)
        for name, block in devices.items():
            for key in ("id", "designation", "enclosure", "type"):
                if key in block.model_fields_set:
                    message = f"the device type `{name}` has `{key}`, which says something about one device alone"
                    yield told("SP53", ("types", where, name, key), message, f"give `{key}` at the device")


def _kind(block: object) -> str:
    return str(getattr(block, "kind", "")).replace("_", " ")


def _places(spec: Spec) -> Iterator[Finding]:
    for path, block in named_blocks(spec):
        if block.location and spec.site.locations and block.location not in spec.site.locations:
            yield unknown((*path, "location"), "location", block.location, spec.site.locations, "site.locations")
        if isinstance(block, Drawn) and block.conduit and block.conduit not in spec.site.conduits:
            yield unknown((*path, "conduit"), "conduit", block.conduit, spec.site.conduits, "site.conduits")
        if isinstance(block, Installed) and block.enclosure:
            dc = _types_of(path) == "dc_devices"
            known: Mapping[str, Placed] = spec.junction_boxes if dc else spec.boards
            if block.enclosure not in known:
                what, where = ("junction box", "junction_boxes") if dc else ("board", "boards")
                yield unknown((*path, "enclosure"), what, block.enclosure, known, where)
    for name, inverter in spec.inverters.items():
        for number, given in enumerate(inverter.inputs):
            if given.junction_box and given.junction_box not in spec.junction_boxes:
                path = ("inverters", name, "inputs", number, "junction_box")
                yield unknown(path, "junction box", given.junction_box, spec.junction_boxes, "junction_boxes")


def _boards(spec: Spec) -> Iterator[Finding]:
    mains = [name for name, board in spec.boards.items() if board.is_main]
    feeding = [*spec.boards, *spec.further_supplies]
    for name, board in spec.boards.items():
        if board.fed_from is not None and board.fed_from not in feeding:
            where = "boards` or `further_supplies" if spec.further_supplies else "boards"
            yield unknown(("boards", name, "fed_from"), "board", board.fed_from, feeding, where)
            return
    yield from _fed_by_supplies(spec)
    if spec.boards and len(mains) != 1:
        if not mains:
            yield told(
                "SP54",
                ("boards",),
                "no board is the main board: each is fed from another",
                "leave `fed_from` out at the board that the supply feeds",
                on_key=True,
            )
        else:
            message = f"{len(mains)} boards have no `fed_from`: {few(mains)}"
            yield told("SP54", ("boards", mains[1]), message, "name the feeding board in all but one", on_key=True)
        return
    ring = _ring(spec)
    if ring:
        name = ring[0]
        message = f"board `{name}` feeds itself: {' from '.join((*ring[:8], *['...'] * (len(ring) > 8), name))}"
        remedy = "break the ring: every board is fed by one that is nearer to the supply"
        yield told("SP54", ("boards", name, "fed_from"), message, remedy)


def _fed_by_supplies(spec: Spec) -> Iterator[Finding]:
    """Yield a finding for each further supply point that feeds no board, several, or one with an earth of its own."""
    for supply in spec.further_supplies:
        fed = [name for name, board in spec.boards.items() if board.fed_from == supply]
        if len(fed) != 1:
            message = f"supply point `{supply}` feeds {len(fed) or 'no'} board{'s: ' if fed else ''}{few(fed)}"
            at: SpecPath = ("boards", fed[1]) if fed else ("further_supplies", supply)
            remedy = f"write `fed_from: {supply}` at its main board, and at no other"
            yield told("SP54", at, message, remedy, on_key=True)
        elif spec.boards[fed[0]].earthing_system is not None:
            message = f"board `{fed[0]}` has the earthing system of its supply"
            remedy = "give it as `earthing_system` of that supply, the electrode under its `earthing`"
            yield told("SP54", ("boards", fed[0], "earthing_system"), message, remedy)


def _boundary(spec: Spec) -> Iterator[Finding]:
    """Yield a finding where the boundary of ownership lies behind a service fuse or a meter that is not there."""
    at, given = ("supply", "ownership_boundary"), spec.supply.ownership_boundary
    if given == "service_fuse" and spec.supply.service_fuse_a is None:
        message = "the network operator's part is to end behind the service fuse, and no service fuse is given"
        yield told("SP56", at, message, "give `service_fuse` under `supply`, or another `ownership_boundary`")
    circuits = [board.circuit for board in spec.boards.values() if board.is_main and board.circuit is not None]
    meters = [each for circuit in circuits for each in circuit if isinstance(each, Meter) and each.purpose == "supply"]
    if given == "supply_meter" and circuits and not meters:
        message = "the network operator's part is to end behind the supply meter, and the main board has none"
        remedy = "add a `meter` with `purpose: supply` to its `circuit`, or give another `ownership_boundary`"
        yield told("SP56", at, message, remedy)


def _ring(spec: Spec) -> list[str]:
    """Return the boards of the first ring, its first board in the spec first, or nothing. Visits every board once."""
    settled: set[str] = set()
    for name in spec.boards:
        way: dict[str, None] = {}
        here: str | None = name
        while here is not None and here in spec.boards and here not in settled and here not in way:
            way[here] = None
            here = spec.boards[here].fed_from
        if here is not None and here in way:
            passed = list(way)
            ring = passed[passed.index(here) :]
            inside = set(ring)
            turn = ring.index(next(name for name in spec.boards if name in inside))
            return ring[turn:] + ring[:turn]
        settled |= way.keys()
    return []


def _connections(spec: Spec) -> Iterator[Finding]:
    users: list[tuple[SpecPath, str | None]] = []
    switched = {source for _, source in second_sources(spec)}
    for group in ("inverters", "loads", "batteries", "generators"):
        blocks: Mapping[str, Placed] = getattr(spec, group)
        for name, block in blocks.items():
            if getattr(block, "inverter", None) is None and not (group == "generators" and name in switched):
                users.append(((group, name), getattr(block, "connected_to", None)))
    for path, board in users:
        if board is not None and board not in spec.boards:
            yield unknown((*path, "connected_to"), "board", board, spec.boards, "boards")
        elif board is None and len(spec.boards) > 1:
            message = f"`{path[1]}` does not say which of {len(spec.boards)} boards it is connected to"
            yield told("SP55", path, message, f"add `connected_to:` with one of {few(spec.boards)}", on_key=True)
    names = counted_names(spec)
    single = {one: None for each in names.values() for one in each}
    for name, battery in spec.batteries.items():
        if battery.inverter is not None and battery.inverter not in single:
            if battery.inverter in names:
                copies = names[battery.inverter]
                message = f"`{battery.inverter}` stands for {len(copies)} inverters, the battery is at one"
                remedy = f"name the one, for example `{copies[0]}`"
                yield told("SP55", ("batteries", name, "inverter"), message, remedy)
            else:
                yield unknown(("batteries", name, "inverter"), "inverter", battery.inverter, single, "inverters")
        if battery.inverter is not None and battery.circuit is not None:
            message = f"battery `{name}` is on the DC side of an inverter and has an AC circuit"
            yield told("SP55", ("batteries", name, "circuit"), message, "remove `circuit`, or give `connected_to`")
        if battery.inverter is not None and battery.connected_to is not None:
            message = f"battery `{name}` is connected to a board and to an inverter"
            yield told("SP55", ("batteries", name, "inverter"), message, "keep one of `connected_to` and `inverter`")
