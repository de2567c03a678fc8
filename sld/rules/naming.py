"""How a message begins: the word for the device and its designation."""

from __future__ import annotations

from sld.model.device import Device
from sld.model.system import System
from sld.model.wording import device_word
from sld.words import Sequence, sequence

__all__ = ["designation_of", "named"]


def named(device: Device) -> Sequence:
    """Return the word for a device and its designation: `string -TB1-GC1`."""
    return sequence([device_word(device), device.designation], " ")


def designation_of(system: System, key: str) -> str:
    """Return the designation behind the key of a finding.

    It is that of a device, a data chain, an earthing conductor or the main earthing terminal.
    """
    if key == system.earthing_key:
        return system.earthing_designation
    if key in system.devices:
        return system.devices[key].designation
    for chain in system.chains:
        if chain.key == key:
            return chain.designation
    for conductor in system.earth_conductors:
        if conductor.key == key:
            return conductor.designation
    return ""
