"""Numbers for the warning flags: one number for one rule and cause, however many devices it is told of."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from sld.finding import Finding, Severity
from sld.frozen import dataclass
from sld.layout.diagram.series import measured_in, spanning
from sld.model.revised import revised
from sld.model.system import System
from sld.words import Said, Sayable, Span, verbatim
from sld.words.names import with_names
from sld.words.phrase import Value

__all__ = ["REVISED", "Flag", "by_device", "numbered", "numbered_in_parts", "with_revised"]


_LARGEST = 99

REVISED = 0
"""The number of the mark of a revision, which is a letter in a triangle."""


@dataclass(frozen=True, slots=True)
class Flag:
    """A numbered warning. findings: those it stands for, equal but for the device and the values at it.

    alike: their messages tell the same values too.
    """

    number: int
    findings: tuple[Finding, ...]
    alike: bool

    @property
    def message(self) -> Said:
        """Return what the first finding says, with the least and the greatest of the values of all."""
        return self.findings[0].message if self.alike else _of_all([finding.message for finding in self.findings])

    @property
    def remedy(self) -> Said:
        """Return what is to be done, with the least and the greatest of the values of all."""
        return _of_all([finding.remedy for finding in self.findings])


def _of_all(every: Sequence[Said]) -> Said:
    different = list({id(each): each for each in every}.values())
    said = [each for each in different if not isinstance(each, str)]
    return spanning(said) if len(said) == len(different) > 1 else every[0]


@dataclass(slots=True)
class _Group:
    """Findings of one cause. values: of the first one. common: the places of those that all have in common."""

    values: list[Span]
    common: set[int]
    findings: list[Finding]

    def shared(self, values: Sequence[Span]) -> set[int]:
        """Return the places of the values that these have in common with all of the group."""
        return {place for place in self.common if self.values[place] == values[place]}


def numbered_in_parts(parts: Sequence[tuple[System, Sequence[Finding]]]) -> tuple[tuple[Flag, ...], ...]:
    """Return the flags of the parts of a drawing behind their supply points; the numbers go on from part to part."""
    found: list[tuple[Flag, ...]] = []
    for system, findings in parts:
        found.append(numbered(system, findings, first=1 + sum(map(len, found))))
    return tuple(found)


def numbered(system: System, findings: Sequence[Finding], first: int = 1) -> tuple[Flag, ...]:
    """Return the flags in the order of the findings; assumptions get none, they are listed by themselves.

    Findings of one rule that say the same of devices of one kind share a number: where several values are told, one at
    least is equal, which is the cause; the others follow from where the device is. first: the number of the first flag.
    """
    groups: dict[tuple[object, ...], list[_Group]] = {}
    found: list[_Group] = []
    remedies: dict[int, Value] = {}
    for finding in findings:
        if finding.severity is Severity.ASSUMPTION:
            continue
        alike = groups.setdefault(_cause(system, finding, remedies), [])
        values = measured_in(finding.message)
        for group in alike:
            shared = group.shared(values)
            if shared or len(values) < 2:
                group.common = shared
                group.findings.append(finding)
                break
        else:
            found.append(_Group(values, set(range(len(values))), [finding]))
            alike.append(found[-1])
    return tuple(
        Flag(number, tuple(group.findings), len(group.common) == len(group.values))
        for number, group in enumerate(found, start=first)
    )


def _cause(system: System, finding: Finding, remedies: dict[int, Value]) -> tuple[object, ...]:
    """Return what must be equal of findings that share a number, values aside. remedies: without values, by `id`."""
    device = system.devices.get(finding.device)
    remedy = remedies.get(id(finding.remedy))
    if remedy is None:
        remedy = remedies[id(finding.remedy)] = with_names(finding.remedy, lambda name: name, _unmeasured)
    accepted = finding.accepted is not None
    return finding.code, finding.severity, device and device.kind, _anonymous(system, finding), remedy, accepted


def by_device(flags: Sequence[Flag], whole: str = "") -> dict[str, tuple[int, ...]]:
    """Return the flag numbers beside each device; a number of three digits does not fit a flag and is only listed.

    whole: the device that has the flags of what concerns all of the system; without one they have none.
    """
    found: dict[str, list[int]] = {}
    for flag in flags:
        for finding in flag.findings:
            place = finding.device or whole
            if place and flag.number <= _LARGEST and flag.number not in found.setdefault(place, []):
                found[place].append(flag.number)
    return {key: tuple(numbers) for key, numbers in found.items()}


def with_revised(flags: Mapping[str, tuple[int, ...]], system: System) -> dict[str, tuple[int, ...]]:
    """Return the flag numbers beside each device, with the mark of the newest revision at what it changed."""
    return {**flags, **{key: (*flags.get(key, ()), REVISED) for key in revised(system)}}


def _anonymous(system: System, finding: Finding) -> Value:
    """Return the message without the designations of device and owner, so that equal inverters share a number."""
    device = system.devices.get(finding.device)
    owner = system.devices.get(device.owner) if device else None
    own = [each.designation for each in (device, owner) if each is not None]

    def without(name: str) -> str:
        for designation in own:
            name = name.replace(designation, "*")
        return name

    return with_names(finding.message, without, _unmeasured)


def _unmeasured(said: Sayable) -> Sayable:
    """Return the unit of a value alone, all else as it is."""
    values = measured_in(said)
    return verbatim(values[0].least.unit) if values else said
