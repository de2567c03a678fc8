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
        for copy in system.copies.get(owner, ()):
            told += (_of(copy, each) for each in findings if copy.key_of(each.device) not in here)
    return told


def _owner(system: System, key: str) -> str:
    """Return the key of the inverter that a device belongs to, or of what else its circuit serves."""
    device = system.devices.get(key)
    return device.owner if device is not None else ""


def _of(copy: Copy, finding: Finding) -> Finding:
    def named(said: Said) -> Said:
        changed = renamed(said, copy.named)
        assert not isinstance(changed, int)
        return changed

    return Finding(
        finding.code,
        finding.severity,
        named(finding.message),
        named(finding.remedy),
        finding.at,
        copy.key_of(finding.device),
        tuple((at, named(said)) for at, said in finding.also),
        tuple(rating.with_names(copy.named) for rating in finding.compared),
        finding.on_key,
    )
