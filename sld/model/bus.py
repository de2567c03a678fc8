"""Data devices and chains, with every name followed to the devices it stands for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from sld.finding import SpecPath
from sld.model.designation import Designator, numbers
from sld.model.device import DataNode, Device
from sld.model.kinds.ac import INTERFACE_RELAY
from sld.model.kinds.table import data_kind
from sld.model.kinds.units import DATA_CABLE
from sld.model.system import ChainNode, DataChain
from sld.spec.blocks.data_bus import Chain, ChainStep, DataLink
from sld.spec.document import Spec

__all__ = ["data_chains", "data_nodes", "trip_lines"]


def data_nodes(spec: Spec, designator: Designator) -> list[DataNode]:
    """Return the loggers, routers and the like, designated in the order of the spec."""
    if spec.data is None:
        return []
    found = []
    for name, block in spec.data.devices.items():
        kind = data_kind(block)
        designation = block.designation or designator.next("", kind)
        found.append(
            DataNode(
                key=f"data.devices.{name}",
                designation=designation,
                kind=kind,
                at=("data", "devices", name),
                name=block.name or "",
                location=block.location or "",
                status=block.status,
                make=block.make or "",
                model=block.model or "",
                note=block.note or "",
                given=block,
            )
        )
    return found


def data_chains(
    spec: Spec, names: Mapping[str, tuple[str, ...]], devices: Mapping[str, Device], designator: Designator
) -> tuple[DataChain, ...]:
    """Return the chains in the order of the spec; an inverter with a count becomes that many neighbours."""
    if spec.data is None:
        return ()
    found = []
    chain_names = list(spec.data.chains)
    for name, number in zip(chain_names, numbers(chain_names), strict=True):
        chain = spec.data.chains[name]
        at: SpecPath = ("data", "chains", name)
        cable = spec.types.cables.get(chain.cable) if chain.cable else None
        nodes = tuple(
            node
            for index, step in enumerate(chain.devices)
            for node in _nodes(step, (*at, "devices", index), names, heads=index == 0)
        )
        found.append(
            DataChain(
                key=f"data.chains.{name}",
                designation=chain.designation or designator.numbered(DATA_CABLE, number),
                at=at,
                given=chain,
                nodes=nodes,
                master=_master(chain, nodes, names, devices),
                marking=(cable.marking if cable and cable.marking else chain.cable) or "",
                shielded=cable.shielded if cable else None,
            )
        )
    return tuple(found)


def _nodes(step: ChainStep, at: SpecPath, names: Mapping[str, tuple[str, ...]], heads: bool) -> list[ChainNode]:
    """Return the neighbours that a step stands for. heads: the step is the first, so its outer end is the first one."""
    keys = names[step.device]
    outer = 0 if heads else len(keys) - 1
    return [
        ChainNode(
            key,
            at,
            None if step.address is None else step.address + index,
            step.length_m,
            step.terminated and index == outer,
        )
        for index, key in enumerate(keys)
    ]


def _master(
    chain: Chain, nodes: tuple[ChainNode, ...], names: Mapping[str, tuple[str, ...]], devices: Mapping[str, Device]
) -> str:
    """Return the key of the device that polls: the one named, else the only data device of the chain, else none."""
    if chain.master is not None:
        return names[chain.master][0]
    data_devices = [node.device for node in nodes if isinstance(devices[node.device], DataNode)]
    return data_devices[0] if len(data_devices) == 1 else ""


def trip_lines(devices: Mapping[str, Device], names: Mapping[str, tuple[str, ...]]) -> Iterator[tuple[str, DataLink]]:
    """Yield the trip line of each interface relay that names what it opens, with the key that stands for the relay."""
    for device in devices.values():
        given = device.given_as(INTERFACE_RELAY)
        if given is not None and given.trips is not None and given.trips in names:
            line = {"from": device.key, "to": given.trips, "medium": "trip"}
            yield device.key, DataLink.model_validate(line)
