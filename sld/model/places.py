"""Where devices are, and which places a cable joins."""

from __future__ import annotations

from collections.abc import Mapping

from sld.model.device import Busbar, Cable, Device, InverterUnit
from sld.model.system import System
from sld.spec.blocks.site import Location
from sld.spec.blocks.string import PvString
from sld.words import NOTHING, Sayable, Value, amount, phrase, sequence, verbatim

__all__ = ["facing", "passage", "place_of", "place_words"]

_ENDS = Cable | Busbar | InverterUnit
"""Behind one of these that says no place, a cable's end is not looked for: it may be anywhere."""


def place_words(locations: Mapping[str, Location], name: str) -> Sayable:
    """Return a place, and that it is outdoors where the spec says so and its name does not."""
    place = locations.get(name)
    if place is None or not place.outdoor or "outdoor" in name.casefold():
        return verbatim(name)
    return phrase("{place} (outdoors)", place=name)


def place_of(system: System, device: Device) -> str:
    """Return the place of a device: its own, else that of the board or box it sits in, else nothing."""
    if device.location or not device.enclosure:
        return device.location
    if device.enclosure in system.boxes:
        return system.boxes[device.enclosure][1].location or ""
    return system.devices[device.enclosure].location


def facing(given: PvString) -> Sayable:
    """Return how the modules of strings face: in the words of the spec, and the angles that it gives."""
    azimuth, tilt = given.azimuth_deg, given.tilt_deg
    words: list[Value] = [
        *([given.orientation] if given.orientation else []),
        *([phrase("azimuth {angle}°", angle=amount(azimuth))] if azimuth is not None else []),
        *([phrase("tilt {angle}°", angle=amount(tilt))] if tilt is not None else []),
    ]
    return sequence(words) if words else NOTHING


def passage(system: System, cable: Cable) -> Sayable:
    """Return the two places that a cable joins, as on the drawing from left to right: `roof – meter room`.

    Nothing where both are one place, or one of them is not known. What is outdoors is told at the devices there.
    """
    far, near = _towards_the_sources(system, cable), _towards_the_supply(system, cable)
    if not far or not near or far == [near]:
        return NOTHING
    return sequence([sequence(far, " / "), near], " – ")


def _towards_the_supply(system: System, cable: Cable) -> str:
    for device in system.upstream(cable.key):
        place = "" if isinstance(device, Cable) else place_of(system, device)
        if place or isinstance(device, _ENDS):
            return place
    return ""


def _towards_the_sources(system: System, cable: Cable) -> list[str]:
    """Return the places of the first devices that say one, on every branch; nothing where a branch says none."""
    found: dict[str, None] = {}
    waiting = list(reversed(system.children.get(cable.key, ())))
    while waiting:
        device = system.devices[waiting.pop()]
        place = "" if isinstance(device, Cable) else place_of(system, device)
        below = system.children.get(device.key, ())
        if place:
            found[place] = None
        elif isinstance(device, _ENDS) or not below:
            return []
        else:
            waiting.extend(reversed(below))
    return list(found)
