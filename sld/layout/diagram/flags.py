"""Numbers for the warning flags: one number for one thing to tell, however many equal devices it is told of."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from sld.finding import Finding, Severity
from sld.layout.diagram.line import value_of
from sld.model.system import System
from sld.quantity import Rating
from sld.words import Said, Sayable
from sld.words.names import with_names
from sld.words.phrase import Value

__all__ = ["Flag", "by_device", "numbered", "numbered_in_parts"]


_LARGEST = 99


@dataclass(frozen=True, slots=True)
class Flag:
    """A numbered warning. findings: those it stands for, equal but for the device."""

    number: int
    findings: tuple[Finding, ...]


def numbered_in_parts(parts: Sequence[tuple[System, Sequence[Finding]]]) -> tuple[tuple[Flag, ...], ...]:
    """Return the flags of the parts of a drawing behind their supply points; the numbers go on from part to part."""
    found: list[tuple[Flag, ...]] = []
    for system, findings in parts:
        found.append(numbered(system, findings, first=1 + sum(map(len, found))))
    return tuple(found)


def numbered(system: System, findings: Sequence[Finding], first: int = 1) -> tuple[Flag, ...]:
    """Return the flags in the order of the findings; assumptions get none, they are listed by themselves.

    first: the number of the first one.
    """
    groups: dict[tuple[str, Value, Value, bool], list[Finding]] = {}
    for finding in findings:
        if finding.severity is not Severity.ASSUMPTION:
            accepted = finding.accepted is not None
            key = (finding.code, _anonymous(system, finding), _as_written(finding.remedy), accepted)
            groups.setdefault(key, []).append(finding)
    return tuple(Flag(number, tuple(group)) for number, group in enumerate(groups.values(), start=first))


def by_device(flags: Sequence[Flag]) -> dict[str, tuple[int, ...]]:
    """Return the flag numbers beside each device; a number of three digits does not fit a flag and is only listed."""
    found: dict[str, list[int]] = {}
    for flag in flags:
        for finding in flag.findings:
            if finding.device and flag.number <= _LARGEST and flag.number not in found.setdefault(finding.device, []):
                found[finding.device].append(flag.number)
    return {key: tuple(numbers) for key, numbers in found.items()}


def _anonymous(system: System, finding: Finding) -> Value:
    """Return the message without the designations of device and owner, so that equal inverters share a number."""
    device = system.devices.get(finding.device)
    owner = system.devices.get(device.owner) if device else None
    own = [each.designation for each in (device, owner) if each is not None]

    def without(name: str) -> str:
        for designation in own:
            name = name.replace(designation, "*")
        return name

    return with_names(finding.message, without, _value)


def _as_written(said: Said) -> Value:
    return with_names(said, lambda name: name, _value)


def _value(said: Sayable) -> Sayable:
    """Return what is written of a rating: that two have other inputs is no other thing to tell."""
    return value_of(said) if isinstance(said, Rating) else said
