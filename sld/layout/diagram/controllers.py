"""What a controller of the data side limits, by what it measures, and on what it acts: as lines and as words."""

from __future__ import annotations

from collections.abc import Iterable

from sld.layout.diagram.line import Line, Role, line
from sld.layout.diagram.ranges import joined
from sld.model.device import DataNode
from sld.model.system import System
from sld.spec.blocks.data_bus import FeedInLimit
from sld.words import Sayable, amount, phrase, verbatim

__all__ = ["feed_in_held", "feed_in_means", "feed_in_words", "limits"]


def limits(device: DataNode, system: System) -> list[Line | None]:
    """Return the lines below a controller: what it keeps the loads and the feed-in below."""
    loads, feed_in = device.given.load_limit, device.given.feed_in_limit
    lines: list[Line | None] = []
    if loads is not None:
        held = amount(loads.current_a, "A")
        told = phrase("load management ≤ {current}: {loads}", current=held, loads=_designations(system, loads.loads))
        lines.append(line(Role.SETTING, told))
    if feed_in is not None:
        lines += [line(Role.SETTING, said) for said in feed_in_words(feed_in, system)]
    return lines


def feed_in_words(limit: FeedInLimit, system: System) -> list[Sayable]:
    """Return the limit of a feed-in limiter where the supply has one, and its means."""
    held = [feed_in_held(system)] if system.supply.export_limit_w is not None else []
    return [*held, *feed_in_means(limit, system)]


def feed_in_held(system: System) -> Sayable:
    """Return what a feed-in limiter holds: the limit of the supply; that it is one, where the supply has none."""
    limit_w = system.supply.export_limit_w
    if limit_w is None:
        return phrase("feed-in limiter")
    return phrase("feed-in ≤ {limit}", limit=amount(limit_w / 1000, "kW"))


def feed_in_means(limit: FeedInLimit, system: System) -> list[Sayable]:
    """Return sensor, actors and fail-safe time of a feed-in limiter; a time that is not stated is a blank."""
    power_w = limit.fail_safe_power_w
    after = amount(limit.fail_safe_time_s, "s") if limit.fail_safe_time_s is not None else "____ s"
    return [
        phrase("sensor {meter}", meter=_designations(system, [limit.sensor])),
        phrase("limits {inverters}", inverters=_designations(system, limit.inverters)),
        phrase("without sensor after {time}", time=after)
        if power_w is None
        else phrase("without sensor after {time} to {power}", time=after, power=amount(power_w / 1000, "kW")),
    ]


def _designations(system: System, names: Iterable[str]) -> Sayable:
    found = joined(system.devices[key].designation for name in names for key in system.names[name])
    return verbatim(found)
