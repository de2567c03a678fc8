"""Strings of different orientation in parallel.

What it checks
    Strings joined at one input: their orientation.

Why
    Strings that face different ways have their maximum power at different currents; they share one tracker and lose
    some energy.

How
    The orientation texts of the strings of an input differ. A string without one is not compared, nor one
    with optimisers, where each module has its own operating point.

Remedy
    One input for each orientation.

Clause
    Common practice, no source.

Not covered
    Strings of one input that are shaded differently.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InputTerminal
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.inputs import groups_behind
from sld.steps.ledger import Ratings
from sld.steps.optimisers import optimiser_of
from sld.words import phrase


@rule("DC11", "strings of different orientation in parallel", Severity.ADVICE, "common practice, no source")
def orientations_in_parallel(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for terminal in system.of(InputTerminal):
        plain = (group for group in groups_behind(system, terminal.key) if optimiser_of(system, group) is None)
        groups = [group for group in plain if group.given.orientation]
        for other in groups[1:]:
            here, there = groups[0].given.orientation or "", other.given.orientation or ""
            if here != there:
                yield Breach(
                    phrase(
                        "{other} faces {there}, {group} in parallel with it {here}",
                        other=named(other),
                        there=there,
                        group=groups[0].designation,
                        here=here,
                    ),
                    phrase("connect strings of one orientation to one input"),
                    (*other.at, "orientation"),
                    other.key,
                    (((*groups[0].at, "orientation"), phrase("the string beside it")),),
                )
