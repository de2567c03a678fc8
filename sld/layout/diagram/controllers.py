"""The lines of text below a controller of the data side: what it limits, by what it measures, and on what it acts."""

from __future__ import annotations

from collections.abc import Iterable

from sld.layout.diagram.line import Line, Role, line
from sld.layout.diagram.ranges import joined
from sld.model.device import DataNode, InverterUnit
from sld.model.system import System
from sld.spec.blocks.data_bus import FeedInLimit
from sld.words import Sayable, amount, phrase, verbatim

__all__ = ["feed_in_words", "limits"]


def limits(device: DataNode | InverterUnit, system: System) -> list[Line | None]:
    """Return what a controller keeps the loads and the feed-in below."""
    loads = device.given.load_limit if isinstance(device, DataNode) else None
    feed_in = device.given.feed_in_limit
    lines: list[Line | None] = []
    if loads is not None:
        held = amount(loads.current_a, "A")
        told = phrase("load management ≤ {current}: {loads}", current=held, loads=_designations(system, loads.loads))
        lines.append(line(Role.SETTING, told))
    if feed_in is not None:
        lines += [line(Role.SETTING, said) for said in feed_in_words(feed_in, system)]
    return lines


def feed_in_words(limit: FeedInLimit, system: System) -> list[Sayable]:
    """Return sensor, actors and fail-safe time of a feed-in limiter; a time that is not stated is a blank."""
    limit_w, power_w = system.supply.export_limit_w, limit.fail_safe_power_w
    after = amount(limit.fail_safe_time_s, "s") if limit.fail_safe_time_s is not None else "____ s"
    said: list[Sayable] = []
    if limit_w is not None:
        said.append(phrase("feed-in ≤ {limit}", limit=amount(limit_w / 1000, "kW")))
    said.append(phrase("sensor {meter}", meter=_designations(system, [limit.sensor])))
    said.append(phrase("limits {inverters}", inverters=_designations(system, limit.inverters)))
    said.append(
        phrase("without sensor after {time}", time=after)
        if power_w is None
        else phrase("without sensor after {time} to {power}", time=after, power=amount(power_w / 1000, "kW"))
    )
    return said


def _designations(system: System, names: Iterable[str]) -> Sayable:
    found = joined(system.devices[key].designation for name in names for key in system.names[name])
    return verbatim(found)
