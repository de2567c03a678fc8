"""Numbers for the warning flags: one number for one thing to tell, however many equal devices it is told of."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from sld.finding import Finding, Severity
from sld.model.system import System

__all__ = ["Flag", "by_device", "numbered"]


_LARGEST = 99


@dataclass(frozen=True, slots=True)
class Flag:
    """A numbered warning. findings: those it stands for, equal but for the device."""

    number: int
    findings: tuple[Finding, ...]


def numbered(system: System, findings: Sequence[Finding]) -> tuple[Flag, ...]:
    """Return the flags in the order of the findings; assumptions get none, they are listed by themselves."""
    groups: dict[tuple[str, str, str, bool], list[Finding]] = {}
    for finding in findings:
        if finding.severity is not Severity.ASSUMPTION:
            accepted = finding.accepted is not None
            key = (finding.code, _anonymous(system, finding), str(finding.remedy), accepted)
            groups.setdefault(key, []).append(finding)
    return tuple(Flag(number, tuple(group)) for number, group in enumerate(groups.values(), start=1))


def by_device(flags: Sequence[Flag]) -> dict[str, tuple[int, ...]]:
    """Return the flag numbers beside each device; a number of three digits does not fit a flag and is only listed."""
    found: dict[str, list[int]] = {}
    for flag in flags:
        for finding in flag.findings:
            if finding.device and flag.number <= _LARGEST and flag.number not in found.setdefault(finding.device, []):
                found[finding.device].append(flag.number)
    return {key: tuple(numbers) for key, numbers in found.items()}


def _anonymous(system: System, finding: Finding) -> str:
    """Return the message without designations, so that equal inverters share a number."""
    device = system.devices.get(finding.device)
    if device is None:
        return str(finding.message)
    text = str(finding.message).replace(device.designation, "*")
    owner = system.devices.get(device.owner)
    return text.replace(owner.designation, "*") if owner else text
