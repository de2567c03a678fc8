"""Names in data chains and links: each is a device, and stands once in a chain; no device has more cables than room."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from sld.finding import Finding, SpecPath
from sld.spec.blocks.data_bus import FeedInLimit
from sld.spec.blocks.interface_relay import InterfaceRelay
from sld.spec.document import Spec
from sld.spec.names import counted_names, installed, told, unknown

__all__ = ["bus_references", "limiter_references", "trip_references"]

_ROOM = 8
"""Data cables and terminating resistors together for which the smallest symbol has places."""


def trip_references(spec: Spec) -> Iterator[Finding]:
    """Yield a finding for each interface relay that opens a device which is not there."""
    known = {device.id for _, device in installed(spec) if device.id}
    for path, device in installed(spec):
        if isinstance(device, InterfaceRelay) and device.trips is not None and device.trips not in known:
            yield unknown((*path, "trips"), "device", device.trips, known, "an `id` in a circuit")


def limiter_references(spec: Spec) -> Iterator[Finding]:
    """Yield a finding for each sensor or actor of a feed-in limiter that is not there."""
    inverters = counted_names(spec)
    feeding = {name for names in inverters.values() for name in names} | set(inverters) | set(spec.batteries)
    sensors = {device.id for _, device in installed(spec) if device.id}
    places: list[tuple[SpecPath, FeedInLimit | None]] = []
    places += [(("inverters", name), each.feed_in_limit) for name, each in spec.inverters.items()]
    if spec.data is not None:
        places += [(("data", "devices", name), each.feed_in_limit) for name, each in spec.data.devices.items()]
    for path, limit in places:
        here: SpecPath = (*path, "feed_in_limit")
        if limit is not None and limit.sensor not in sensors:
            yield unknown((*here, "sensor"), "device", limit.sensor, sensors, "an `id` in a circuit")
        for index, actor in enumerate(limit.inverters if limit is not None else ()):
            if actor not in feeding:
                yield unknown((*here, "inverters", index), "inverter", actor, feeding, "inverters or batteries")


def bus_references(spec: Spec) -> Iterator[Finding]:
    """Yield a finding for each name in data chains and links that is unknown or used too often."""
    if spec.data is None:
        return
    inverters = counted_names(spec)
    known = {name for names in inverters.values() for name in names} | set(inverters) | set(spec.data.devices)
    known |= {device.id for _, device in installed(spec) if device.id}
    known |= set(spec.batteries) | set(spec.loads) | set(spec.generators)

    def missing(path: SpecPath, name: str) -> Iterator[Finding]:
        if name not in known:
            yield unknown(path, "device", name, known, "inverters, data.devices or an `id`")

    for key, chain in spec.data.chains.items():
        here: SpecPath = ("data", "chains", key)
        for index, step in enumerate(chain.devices):
            yield from missing((*here, "devices", index, "device"), step.device)
        for index, name in enumerate(chain.shield_earthed_at):
            yield from missing((*here, "shield_earthed_at", index), name)
        if chain.master is not None:
            yield from missing((*here, "master"), chain.master)
    for index, link in enumerate(spec.data.links):
        yield from missing(("data", "links", index, "from"), link.from_device)
        yield from missing(("data", "links", index, "to"), link.to_device)
    for name, device in spec.data.devices.items():
        for index, load in enumerate(device.load_limit.loads if device.load_limit else ()):
            if load not in spec.loads:
                yield unknown(
                    ("data", "devices", name, "load_limit", "loads", index), "load", load, spec.loads, "loads"
                )
    yield from _twice(spec, inverters)
    yield from _crowded(spec, inverters)


def _twice(spec: Spec, inverters: dict[str, list[str]]) -> Iterator[Finding]:
    """Yield a finding for each device that stands in one chain a second time."""
    assert spec.data is not None
    for key, chain in spec.data.chains.items():
        first: dict[str, SpecPath] = {}
        repeated: set[str] = set()
        for index, step in enumerate(chain.devices):
            here: SpecPath = ("data", "chains", key, "devices", index, "device")
            names = inverters.get(step.device, [step.device])
            before = next((first[name] for name in names if name in first), None)
            if before is not None and step.device not in repeated:
                repeated.add(step.device)
                also = ((before, "first listed here"),)
                message = f"`{step.device}` stands in the chain `{key}` a second time"
                yield told("SP57", here, message, "list each device once, in the order of the cable", also=also)
            first |= dict.fromkeys(names, here)


def _crowded(spec: Spec, inverters: dict[str, list[str]]) -> Iterator[Finding]:
    """Yield a finding for each device whose terminating resistors have no place beside its cables."""
    assert spec.data is not None
    cables: Counter[str] = Counter()
    resistors: dict[str, list[SpecPath]] = {}
    for key, chain in spec.data.chains.items():
        for index, step in enumerate(chain.devices):
            ends = 1 if index in (0, len(chain.devices) - 1) and len(inverters.get(step.device, "1")) == 1 else 2
            for name in inverters.get(step.device, [step.device]):
                cables[name] += ends
                if step.terminated:
                    resistors.setdefault(name, []).append(("data", "chains", key, "devices", index, "terminated"))
    cables.update(end for link in spec.data.links for end in (link.from_device, link.to_device))
    for name, at in resistors.items():
        if cables[name] + len(at) > _ROOM:
            message = (
                f"`{name}` has {cables[name]} data cables and {len(at)} terminating resistors, room is for {_ROOM}"
            )
            yield told("SP57", at[-1], message, "leave `terminated` out where the device has the resistor built in")
