"""Devices in the order of the tree, of which those of a class are looked for once."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import cached_property
from typing import TypeVar, cast

from sld.model.device import Device

__all__ = ["PLANNED", "Walk"]

AnyDevice = TypeVar("AnyDevice", bound=Device)

PLANNED = "future"
"""The status of what is only planned."""


class Walk:
    """Some devices of a system, in the order of the tree."""

    def __init__(self, devices: Iterable[Device]) -> None:
        self._devices = tuple(devices)
        self._among: dict[tuple[type[Device], ...], tuple[Device, ...]] = {}

    def __iter__(self) -> Iterator[Device]:
        return iter(self._devices)

    def of(self, kind: type[AnyDevice]) -> Iterator[AnyDevice]:
        """Yield those of a class."""
        return iter(cast(tuple[AnyDevice, ...], self.among(kind)))

    def among(self, *kinds: type[Device]) -> tuple[Device, ...]:
        """Return those of several classes."""
        found = self._among.get(kinds)
        if found is None:
            found = self._among[kinds] = tuple([each for each in self._devices if isinstance(each, kinds)])
        return found

    @cached_property
    def has_planned(self) -> bool:
        """Return whether one of them is only planned."""
        return any(each.status == PLANNED for each in self._devices)
