"""Unusual ratio of array to inverter power.

What it checks
    The ratio Pdc/Pac of the array's power at standard test conditions to the rated power of the inverter.

Why
    Far above 1 much energy is clipped, far below 1 the inverter costs more than needed and runs at low load. Often it
    is a slip in the spec.

How
    Pdc/Pac above 1.5 or below 0.8.

Remedy
    Another inverter or another number of modules; where it is meant, accept the finding.

Clause
    Common practice, no source.

Not covered
    East and west arrays, which reach their peak at different hours.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InverterUnit
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, below, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase

_LEAST = 0.8
_MOST = 1.5


@rule("DC27", "unusual ratio of array to inverter power", Severity.ADVICE, "common practice, no source")
def power_ratio_unusual(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for unit in system.of(InverterUnit):
        ratio = ratings.get(unit.key, Symbol.PDC_BY_PAC)
        if ratio is None:
            continue
        if above(ratio.value, _MOST):
            has, limit = two(ratio.value, _MOST, "")
            yield Breach(
                phrase(
                    "{unit} has an array of {has} times its rated power, above the usual {limit}",
                    unit=named(unit),
                    has=has,
                    limit=limit,
                ),
                phrase("use fewer modules or a larger inverter, for a ratio of at most {limit}", limit=limit),
                (*unit.at, "inputs"),
                unit.key,
                (),
                (ratio,),
            )
        elif below(ratio.value, _LEAST):
            has, limit = two(ratio.value, _LEAST, "")
            yield Breach(
                phrase(
                    "{unit} has an array of {has} times its rated power, below the usual {limit}",
                    unit=named(unit),
                    has=has,
                    limit=limit,
                ),
                phrase("use more modules or a smaller inverter, for a ratio of at least {limit}", limit=limit),
                (*unit.at, "inputs"),
                unit.key,
                (),
                (ratio,),
            )
