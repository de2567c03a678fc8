"""Labels with the designations of devices and cables, so that whoever stands before one finds it on the drawing."""

from __future__ import annotations

from collections.abc import Iterator

from sld.documents.alike import alike_as_one
from sld.documents.cell import Cell, designated, given
from sld.documents.section import Column, Table
from sld.model.device import Cable, Device, Network, StringGroup
from sld.model.places import passage, place_of, place_words
from sld.model.system import System
from sld.model.wording import device_word
from sld.words import phrase

__all__ = ["labels"]


def labels(system: System) -> list[Table]:
    """Return the labels at devices, boards and junction boxes, and those at both ends of cables."""
    at_devices = Table(
        "device_labels",
        phrase("At devices"),
        (Column(phrase("Designation")), Column(phrase("Device"), 1.0), Column(phrase("Place"), 1.0)),
        alike_as_one(_devices(system)),
    )
    at_cables = Table(
        "cable_labels",
        phrase("At both ends of cables"),
        (Column(phrase("Designation")), Column(phrase("From – to"), 1.0), Column(phrase("Place"), 1.0)),
        alike_as_one(_cables(system)),
    )
    return [at_devices, at_cables]


def _devices(system: System) -> Iterator[tuple[Cell, ...]]:
    for device in system.devices.values():
        if device.designation and not isinstance(device, Cable | Network):
            place = place_words(system.site.locations, place_of(system, device))
            for name in _names(device):
                yield designated(name), given(device_word(device)), given(place)
    for designation, box in system.boxes.values():
        place = place_words(system.site.locations, box.location or "")
        yield designated(designation), given(phrase("junction box")), given(place)


def _names(device: Device) -> tuple[str, ...]:
    """Return the designations of a device: of strings that are drawn once, that of each."""
    return device.designations if isinstance(device, StringGroup) else (device.designation,)


def _cables(system: System) -> Iterator[tuple[Cell, ...]]:
    for cable in system.of(Cable):
        fed = system.children.get(cable.key, ())
        ends = [system.devices[cable.parent].designation, *(system.devices[key].designation for key in fed)]
        yield designated(cable.designation), designated(*ends), given(passage(system, cable))
