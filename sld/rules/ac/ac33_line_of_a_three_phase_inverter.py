"""Line given for a three-phase inverter.

What it checks
    The key `line` of inverters whose type has three phases.

Why
    It says nothing there; either the type or the line is a mistake, and the sums by line are wrong with the wrong one.

How
    line is given and the type has three phases.

Remedy
    No `line`, or the single-phase type.

Clause
    Common practice, no source.

Not covered
    Whether the line of a single-phase inverter is the one that it is wired to.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InverterUnit
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC33", "line given for a three-phase inverter", Severity.ADVICE, "common practice, no source")
def line_of_a_three_phase_inverter(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for unit in system.of(InverterUnit):
        if unit.given.line is not None and unit.type.phases == 3:
            yield Breach(
                phrase("{unit} feeds all three lines, and `line` names {line}", unit=named(unit), line=unit.given.line),
                phrase("remove `line`, or check the `phases` of its type"),
                (*unit.at, "line"),
                unit.key,
            )
