"""Cables not given.

What it checks
    Whether the spec gives the AC cable of each inverter and the cables of its strings.

Why
    Without length and section neither the voltage rise and drop nor the loop impedance and the need of surge protection
    are worked out.

How
    No cable in the AC circuit of an inverter, or no cable between a string and its input. One finding an inverter.

Remedy
    A cable with its length in the `circuit`, and a `cable` for each string.

Clause
    Common practice, no source.

Not covered
    Cables between boards, loads and batteries.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Finding, Severity, SpecPath, rule
from sld.model.device import Cable, InverterUnit, StringGroup
from sld.model.system import System
from sld.rules.naming import named
from sld.rules.ways import own_circuit
from sld.steps.ledger import Ratings


@rule("AC34", "cables not given", Severity.ADVICE, "common practice, no source")
def cable_not_given(system: System, ratings: Ratings) -> Iterator[Finding]:
    """Yield a finding for each case; see the text at the head of this file."""
    by_owner: dict[str, list[StringGroup]] = {}
    for group in system.of(StringGroup):
        by_owner.setdefault(group.owner, []).append(group)
    for unit in system.of(InverterUnit):
        no_ac = not any(isinstance(device, Cable) for device in own_circuit(system, unit.key))
        groups = by_owner.get(unit.key, [])
        bare = [each for each in groups if not _has_cable(system, each)]
        parts, unknown = [], []
        if no_ac:
            parts.append("AC cable")
            unknown.append("voltage rise")
        if bare:
            all_of_them = len(bare) == len(groups)
            parts.append(
                "DC cables" if all_of_them else f"cable for {len(bare)} of its {len(groups)} groups of strings"
            )
            unknown.append("voltage drop")
        if not parts:
            continue
        at: SpecPath = (*unit.at, "circuit") if no_ac else bare[0].at
        yield Finding(
            "AC34",
            Severity.ADVICE,
            f"{named(unit)} has no {' and no '.join(parts)} given; {' and '.join(unknown)} not computed",
            "give a `cable` with its `length`, in the `circuit` for AC and for each string for DC",
            at,
            unit.key,
        )


def _has_cable(system: System, group: StringGroup) -> bool:
    """Return whether a cable lies between strings and their inverter."""
    return any(isinstance(device, Cable) and device.dc for device in system.upstream(group.key))
