"""What is found of the first of equal inverters is told of its copies too, under their own names."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from sld.finding import Finding
from sld.model.copies import Copy
from sld.model.system import System
from sld.words import Said
from sld.words.names import renamed

__all__ = ["told_of_all"]


def told_of_all(system: System, found: Sequence[Finding]) -> list[Finding]:
    """Return the findings of one rule with those of the copies.

    A rule that has looked at the copies itself, along the ways through the tree, is not asked again.
    """
    here = {each.device for each in found}
    told: list[Finding] = []
    for owner, of_one in groupby(found, lambda each: _owner(system, each.device)):
        told += (findings := list(of_one))
        copies = system.copies.get(owner, ())
        again = [_Again(each, copies[0]) for each in findings] if copies else []
        for copy in copies:
            told += (each.of(copy) for each in again if copy.key_of(each.finding.device) not in here)
    return told


def _owner(system: System, key: str) -> str:
    """Return the key of the inverter that a device belongs to, or of what else its circuit serves."""
    device = system.devices.get(key)
    return device.owner if device is not None else ""


class _Again:
    """A finding of the first of equal inverters, to be told of each copy: what names nothing of it is kept."""

    def __init__(self, finding: Finding, copy: Copy) -> None:
        """copy: any of them; what its names change, those of each change."""
        self.finding = finding
        self._message, self._remedy = (_named(said, copy) is not said for said in (finding.message, finding.remedy))
        self._also = any(_named(said, copy) is not said for _, said in finding.also)
        self._compared = any(each.with_names(copy.named) is not each for each in finding.compared)

    def of(self, copy: Copy) -> Finding:
        """Return what is found of a copy."""
        first = self.finding
        return Finding(
            first.code,
            first.severity,
            _named(first.message, copy) if self._message else first.message,
            _named(first.remedy, copy) if self._remedy else first.remedy,
            first.at,
            copy.key_of(first.device),
            tuple([(at, _named(said, copy)) for at, said in first.also]) if self._also else first.also,
            tuple([each.with_names(copy.named) for each in first.compared]) if self._compared else first.compared,
            first.on_key,
        )


def _named(said: Said, copy: Copy) -> Said:
    changed = renamed(said, copy.named)
    assert not isinstance(changed, int)
    return changed
