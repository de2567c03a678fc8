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

from sld.finding import Breach, Severity, SpecPath, rule
from sld.model.device import Cable, InverterUnit, StringGroup
from sld.model.system import System
from sld.rules.naming import named
from sld.rules.ways import own_circuit
from sld.steps.ledger import Ratings
from sld.words import Phrase, Sayable, phrase


@rule("AC34", "cables not given", Severity.ADVICE, "common practice, no source")
def cable_not_given(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    by_owner: dict[str, list[StringGroup]] = {}
    for group in system.of(StringGroup):
        by_owner.setdefault(group.owner, []).append(group)
    for unit in system.of(InverterUnit):
        no_ac = not any(isinstance(device, Cable) for device in own_circuit(system, unit.key))
        groups = by_owner.get(unit.key, [])
        bare = [each for each in groups if not _has_cable(system, each)]
        if not no_ac and not bare:
            continue
        at: SpecPath = (*unit.at, "circuit") if no_ac else bare[0].at
        yield Breach(
            _message(named(unit), no_ac, len(bare), len(groups)),
            phrase("give a `cable` with its `length`, in the `circuit` for AC and for each string for DC"),
            at,
            unit.key,
        )


def _message(unit: Sayable, no_ac: bool, bare_count: int, groups_count: int) -> Phrase:
    """Return which cables are not given, and what is not computed for want of them."""
    if not bare_count:
        return phrase("{unit} has no AC cable given; voltage rise not computed", unit=unit)
    if bare_count == groups_count:
        if no_ac:
            return phrase(
                "{unit} has no AC cable and no DC cables given; voltage rise and voltage drop not computed", unit=unit
            )
        return phrase("{unit} has no DC cables given; voltage drop not computed", unit=unit)
    if no_ac:
        return phrase(
            "{unit} has no AC cable and no cable for {bare} of its {groups} groups of strings given; voltage rise and "
            "voltage drop not computed",
            unit=unit,
            bare=bare_count,
            groups=groups_count,
        )
    return phrase(
        "{unit} has no cable for {bare} of its {groups} groups of strings given; voltage drop not computed",
        unit=unit,
        bare=bare_count,
        groups=groups_count,
    )


def _has_cable(system: System, group: StringGroup) -> bool:
    """Return whether a cable lies between strings and their inverter."""
    return any(isinstance(device, Cable) and device.dc for device in system.upstream(group.key))
